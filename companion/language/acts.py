"""The speech act of a message: what it does, before anything in it may fill a slot.

Pain and red flags are heard before this (``language.pain``, ``language.flags``). Only an answer may fill a slot. The tables are in
``acts.toml``; the moods of clauses in ``clauses``.
"""

from __future__ import annotations

import re
from enum import Enum
from functools import lru_cache
from typing import Final, NamedTuple

from companion.language.act_rules import matches, tables_in, words_of
from companion.language.choosing import ASSERTING, NO_OPTIONS, Chosen, Options, choose
from companion.language.clauses import WHOLE_ANSWER, Clause, Mood, clauses, flat
from companion.language.phrases import Phrase, hear
from companion.language.questions import is_question


class SpeechAct(Enum):
    """An act of speech."""

    ANSWER = "answer"
    QUESTION = "question"
    UNSURE = "unsure"
    NOT_YET = "not_yet"
    CORRECTION = "correction"
    COMMAND = "command"
    CHAT = "chat"
    NOTHING = "nothing"


class Asks(Enum):
    """A kind of question: what a word or the question means, why it is asked, how to do it or tell, what to do if it can't be done, or
    something in general."""

    MEANS = "means"
    WHY = "why"
    HOW = "how"
    CANT = "cant"
    GENERAL = "general"


class Spoken(NamedTuple):
    """A message as it is heard. ``asks`` and ``about``: of a question, its kind and its own words, flat; ``wants``: of a command, its name
    in acts.toml; ``chosen``: the options asserted; ``asserted``: the clauses that may fill a slot; ``doubtful``: true if what they say
    is to be confirmed; ``exact``: true if it is an option's own words; ``guessed``: true if it is the likeliest, not what a rule heard;
    ``between``: the two or three things it may be, by the names of ``learnt``, where that is to be asked."""

    act: SpeechAct
    asks: Asks | None = None
    about: str = ""
    wants: str = ""
    chosen: Chosen = Chosen()
    asserted: tuple[Clause, ...] = ()
    doubtful: bool = False
    exact: bool = False
    guessed: bool = False
    between: tuple[str, ...] = ()


_CONTROLS: Final = {Phrase.STOP: "stop", Phrase.BACK: "back", Phrase.SKIP: "skip", Phrase.AGAIN: "again", Phrase.HELP: "help"}
_PLAIN_ANSWERS: Final = (Phrase.YES, Phrase.NO, Phrase.READY)
_NOT_ASKED: Final = ("stop", "back", "skip", "again", "help", "results", "menu", "erase", "stop_reminders")
"""Commands that a question why, or what something means, only mentions."""

_SHORT: Final = 10
"""Most words of a question that is a wish ("can we skip this one"); our choice."""

_DIGIT: Final = re.compile(r"\d|\b(?:zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thir\w+|four\w+|fif\w+|six\w+|"
    r"seven\w+|"
                           r"eigh\w+|nine\w+|twen\w+|fort\w+|hundred|half)\b")
_VOWEL: Final = re.compile(r"[aeiouy]")


@lru_cache(maxsize=256)
def hear_act(text: str, options: Options = NO_OPTIONS, number: bool = False) -> Spoken:
    """Return the speech act of a message. ``options``: those of the open question (``choosing.named``); ``number``: true if it takes a
    number. Pure; never raises."""
    whole, plain = clauses(text), flat(text)
    asserted = tuple(clause for clause in whole if clause.mood in ASSERTING)
    chosen = choose(whole, options)
    told = any("?" not in whole[hit.clause].ends for hit in chosen.hits)
    answers = bool(chosen.values) or (number and any(_DIGIT.search(clause.text) for clause in asserted))
    doubtful = any(clause.mood is not Mood.SAID for clause in whole)
    spoken = Spoken(SpeechAct.ANSWER, chosen=chosen, asserted=asserted, doubtful=doubtful)
    asked = next((clause for clause in whole if clause.mood is Mood.ASKED or ("?" in clause.ends and not answers)), None)
    line = " ".join(clause.text for clause in whole)
    if not whole:
        return spoken._replace(act=SpeechAct.ANSWER if hear(text) in _PLAIN_ANSWERS else SpeechAct.NOTHING)
    heard = hear(text)
    exact = next((value for value, phrases in options if plain.strip(" .!") in phrases), None)
    if exact is not None:
        return spoken._replace(chosen=Chosen((exact,), True, (), chosen.hits), doubtful=False, exact=True)
    if heard in _PLAIN_ANSWERS and not asked:
        return spoken
    if matches("lost", line):
        return spoken._replace(act=SpeechAct.QUESTION, asks=Asks.MEANS, about=line)
    covered = sum(hit.end - hit.start for hit in chosen.hits)
    if chosen.sure and not asked and not matches("corrects", plain) and 2 * covered >= sum(len(clause.words) for clause in whole):
        return spoken
    if (heard in _CONTROLS and not (asked and heard in (Phrase.AGAIN, Phrase.HELP)) and not matches("asked.means", line)
            and not chosen.sure):
        return spoken._replace(act=SpeechAct.COMMAND, wants=_CONTROLS[heard])
    name = _command(line)
    if asked and name in _NOT_ASKED and (
            matches("asked.why", line) or matches("moods.meaning", line) or (name in _NOT_ASKED[:3] and len(line.split()) > _SHORT)):
        name = ""
    if name in {**tables_in("starts"), **tables_in("topics")} and chosen.values and whole[0].words[0] in WHOLE_ANSWER:
        name = ""  # "yep, squatting tonight" is a yes
    if name and not (name == "again" and matches("moods.waits", line)):
        return spoken._replace(act=SpeechAct.COMMAND, wants=name)
    if chosen.sure and not asked and not matches("corrects", plain):
        return spoken
    if matches("corrects", plain) and not (asked and not answers):
        return spoken._replace(act=SpeechAct.CORRECTION)
    if chosen.weak and (asked or any(matches(name, line) for name in ("chat", "unsure", "asked.cant"))):
        answers = False
    if asked is None and not answers and is_question(text):
        asked = whole[0]
    if asked:
        about = asked.text if len(whole) > 1 and answers else line
        return spoken._replace(act=SpeechAct.ANSWER if answers and (told or number) else SpeechAct.QUESTION, asks=_asks(about), about=about)
    waits = any(clause.mood in (Mood.WAITS, Mood.PLANNED) for clause in whole)
    if answers and not (waits and all(value == "ready" for value, _ in options) and not number):
        return spoken
    if waits:
        return spoken._replace(act=SpeechAct.NOT_YET)
    if matches("unsure", line) or heard is Phrase.UNSURE:
        return spoken._replace(act=SpeechAct.UNSURE)
    if matches("asked.cant", line):
        return spoken._replace(act=SpeechAct.QUESTION, asks=Asks.CANT, about=line)
    if matches("asked.means", line):
        return spoken._replace(act=SpeechAct.QUESTION, asks=Asks.MEANS, about=line)
    if matches("chat", line):
        return spoken._replace(act=SpeechAct.CHAT)
    return spoken._replace(act=SpeechAct.NOTHING) if _gibberish(whole) else spoken


def heard_as(spoken: Spoken, act: SpeechAct, text: str) -> Spoken:
    """Return a message as another act than the rules heard."""
    asks = _asks(flat(text)) if act is SpeechAct.QUESTION else None
    return spoken._replace(act=act, asks=asks, about=flat(text) if asks else "")


def _asks(about: str) -> Asks:
    """Return the kind of a question."""
    if matches("general", about) and not re.search(r"\bmean(?:s|t|ing)?\b|\bwhy (?:do|are) you\b", about):
        return Asks.GENERAL
    return next((Asks(kind) for kind in tables_in("asked") if matches(f"asked.{kind}", about)), Asks.GENERAL)


def _command(line: str) -> str:
    """Return the name of the command in a message, or the words that begin the flow it asks for; "" for none."""
    found = next((name for section in ("starts", "commands") for name in tables_in(section) if matches(f"{section}.{name}", line)), "")
    return found or topic_wished(line)


def topic_wished(line: str) -> str:
    """Return the words that begin the flow whose name a message wishes for, or says alone; "" for none."""
    if matches("wish.never", line):
        return ""
    for name, words in tables_in("topics").items():
        for found in re.finditer(rf"\b(?:{words})\b", line):
            before, after = line[:found.start()], line[found.end():]
            if matches("wish.words", before) or (matches("wish.alone", before) and matches("wish.after", after)):
                return str(name)
    return ""


def _gibberish(whole: tuple[Clause, ...]) -> bool:
    """True if no word of a message looks like one."""
    words = [word for clause in whole for word in clause.words]
    return len(words) <= 3 and all(
        len(word) == 1 or (word not in words_of("lead_in") and len(word) > 3 and not _VOWEL.search(word)) for word in words)
