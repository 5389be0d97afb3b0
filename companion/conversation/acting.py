"""SpeechAct on what a message does: answer, correct, ask, wish, wait. See ``language.acts``."""

from __future__ import annotations

import re
from typing import Final

from companion.conversation.amending import amend
from companion.conversation.answers import help_with, tell
from companion.conversation.asking import ask_again, ask_aside, describe
from companion.conversation.corrections import Elsewhere, beside, changes, correction, corrections, tells_otherwise
from companion.conversation.draft import Draft
from companion.conversation.flow import Ask
from companion.conversation.hearing import DOES, heard_at
from companion.conversation.kinds import Answer
from companion.conversation.moves import answer, back, skip
from companion.conversation.parking import park, start
from companion.conversation.prompt import skippable
from companion.conversation.slots import likely_at, offers, rules_at, slot_words, torn, understand
from companion.conversation.wishes import mentions, wants_of
from companion.language.act_rules import matches, tables_in
from companion.language.acts import Asks, SpeechAct, Spoken, hear_act
from companion.language.clauses import Mood, clauses, flat
from companion.language.learnt import OWN_WORDS, TO_START, behind
from companion.language.phrases import Phrase, hear

CONTROLS_BUT_HELP: Final = (Phrase.STOP, Phrase.BACK, Phrase.AGAIN, Phrase.SKIP, Phrase.DESCRIBE)
CONTROLS: Final = (*CONTROLS_BUT_HELP, Phrase.HELP)
"""Control words."""


def control(draft: Draft, heard: Phrase) -> None:
    """Do what a control word says."""
    match heard:
        case Phrase.STOP if draft.works:
            ask_aside(draft, "stop")
        case Phrase.STOP:
            park(draft)
        case Phrase.BACK:
            back(draft)
        case Phrase.SKIP:
            skip(draft)
        case Phrase.AGAIN:
            ask_again(draft)
        case Phrase.DESCRIBE:
            describe(draft)
        case _:
            help_with(draft)


def fill(draft: Draft, text: str, sure: bool = False, spoken: Spoken | None = None) -> None:
    """Take the answers that a message gives, to the open question and to those still to come. ``sure``: they were confirmed; ``spoken``:
    the message as it is heard there, if that is known."""
    if draft.ask.free:
        read = draft.ask.kind.read(text, draft.context)
        answer(draft, read, sure=True) if isinstance(read, Answer) else ask_again(draft)
        return
    understood = understand(draft, text, spoken or heard_at(draft, text))
    if understood is None:
        ask_again(draft)
        return
    first, *rest = understood.slots
    draft.top = draft.top._replace(noted={**draft.top.noted, **{slot.key: slot.value for slot in rest}})
    answer(draft, Answer(first.value, text, first.unit), sure)


_HEARD_AS: Final = {name: Phrase(name) for name in ("stop", "back", "skip", "again", "help")}
NOT_KNOWN: Final = "Not knowing is fine: “skip” leaves it out, and it counts as not told."
WAITS: Final = "Take your time: the question stays open. “Stop” leaves it for today."


def act_on(draft: Draft, text: str) -> bool:
    """SpeechAct on what a message says at a choice or a number; return False if it is an answer that is not understood."""
    ask, spoken = draft.ask, heard_at(draft, text)
    read = ask.kind.read(text, draft.context)
    if isinstance(read, Answer) and ask.safety:
        return False
    if spoken.between:
        ask_aside(draft, "which", text)
        return True
    agreed = isinstance(read, Answer) and spoken.chosen.values in ((), (read.value,))
    if agreed and spoken.act in (SpeechAct.ANSWER, SpeechAct.UNSURE, SpeechAct.CHAT) and not spoken.asks:
        if _earlier(draft, text):
            return _put_right(draft, text)
        return isinstance(read, Answer) and _says_otherwise(draft, text, read)
    match spoken.act:
        case SpeechAct.CORRECTION:
            return _put_right(draft, text)
        case SpeechAct.COMMAND if wants_of(draft, text):
            ask_aside(draft, "wish", text)
        case SpeechAct.COMMAND:
            return not (ask.safety and mentions(spoken, text)) and _wanted(draft, spoken.wants, text)
        case SpeechAct.QUESTION:
            tell(draft, text)
        case SpeechAct.NOT_YET:
            draft.say(WAITS)
        case SpeechAct.UNSURE:
            return not (ask.safety or matches("degree", " ".join(clause.text for clause in clauses(text)))) and _untold(draft, text)
        case SpeechAct.CHAT:
            return False
        case SpeechAct.ANSWER if _earlier(draft, text):
            return _put_right(draft, text)
        case SpeechAct.ANSWER if understood := understand(draft, text, spoken):
            if understood.sure:
                fill(draft, text)
            else:
                ask_aside(draft, "understood", text)
        case SpeechAct.ANSWER if between := torn(draft, text, spoken):
            ask_again(draft, f"Which one: {' or '.join(slot_words(draft, ask, slot) for slot in between)}?")
        case _:
            return False
    return True


def _says_otherwise(draft: Draft, text: str, read: Answer) -> bool:
    """Ask whether a message is understood that names several questions, where they make of it another answer than the open one alone
    does: "65 on the left, 75 on the right"."""
    understood = understand(draft, text, heard_at(draft, text)) if len(clauses(text)) > 1 else None
    if understood is None or understood.slots[0].value == read.value:
        return False
    ask_aside(draft, "understood", text)
    return True


MAY_CORRECT: Final = 30
"""By how many tenths of a log-odds a correction may be less likely than what is likeliest where a message names an earlier answer; chosen
on writers left out."""


def _earlier(draft: Draft, text: str) -> bool:
    """True if a message names an earlier answer of this run more clearly than the open question, or that one can't take what it says:
    "first was 72", "height is 181"."""
    if draft.ask.safety or ((likely := likely_at(draft, text)) and behind(likely, "@correction") > MAY_CORRECT):
        return False
    found = correction(draft, text)
    if found is None or found.key == draft.ask.key or not found.named:
        return False
    return found.points > 1.5 + max(beside(draft, text), 0) or not _fits(draft, text)


def _fits(draft: Draft, text: str) -> bool:
    return understand(draft, text, heard_at(draft, text)) is not None


def other_than_answer(draft: Draft, text: str) -> bool:
    """SpeechAct on a reply that is no place, date, picture or number: a question, a wish, not yet; return False for anything else."""
    if about := _about(draft, text):
        ask_aside(draft, about, text)
        return True
    spoken = hear_act(text)
    answers = draft.ask.kind.options and spoken.act not in (SpeechAct.QUESTION, SpeechAct.COMMAND)
    if answers and understand(draft, text, heard_at(draft, text)):
        ask_aside(draft, "understood", text)
        return True
    match spoken.act:
        case SpeechAct.QUESTION:
            tell(draft, text)
        case SpeechAct.NOT_YET if _waits(text):
            draft.say(WAITS)
        case SpeechAct.COMMAND:
            return _wanted(draft, spoken.wants, text)
        case _:
            return False
    return True


def _waits(text: str) -> bool:
    """True if a message says that something is not done yet, not only that it is planned."""
    return hear_act(text).act is SpeechAct.NOT_YET and any(clause.mood is Mood.WAITS for clause in clauses(text))


_NOTHING_TO_SAY: Final = re.compile(
    r"(?:no|nah|nope)?,? ?(?:nothing|none|no notes?|not really|no comment)(?: to add| really| else| special| much| to say)*[ .!]*")
_ASIDES_LONGEST: Final = 14
"""Most words of a message that is asked about where words of one's own are expected; our choice."""


RIGHTS: Final = ("erase", "stop_reminders", "my_data")
"""Commands that are carried out wherever they are said; what can't be undone is asked about by its own flow."""

RIGHTS_LONGEST: Final = 9
"""Most words of such a command where words of one's own are expected; our choice."""


NO_WORDS, SURELY_WORDS = 0.55, 0.85
"""Part of all that is likely from which something else than words of one's own is asked about, and from which these are taken although a
rule hears "stop", "back", "skip", "again" or "help" in them; our choice."""


def not_words(draft: Draft, text: str) -> bool:
    """Ask whether what is likely something else is meant as words of one's own: a wish, a question, a "not yet", a correction, chat or,
    about health, a "don't know". Skip where there is nothing to say."""
    if not draft.ask.safety and _NOTHING_TO_SAY.fullmatch(flat(text)):
        skip(draft)
        return True
    spoken = hear_act(text)
    if spoken.wants in RIGHTS and len(text.split()) <= RIGHTS_LONGEST and not draft.ask.safety:
        return _wanted(draft, spoken.wants)
    if len(text.split()) <= _ASIDES_LONGEST and (about := _about(draft, text)):
        ask_aside(draft, about, text)
        return True
    known = isinstance(draft.ask.kind.read(text, draft.context), Answer)
    if known and len(text.split()) <= _ASIDES_LONGEST and _may_be_no_words(draft, text, spoken):
        ask_aside(draft, "understood", text)
        return True
    return False


def _may_be_no_words(draft: Draft, text: str, spoken: Spoken) -> bool:
    """True if a message where words of one's own are expected is a command, or more likely something else than these words."""
    likely, safety = likely_at(draft, text), draft.ask.safety
    corrects = spoken.act is SpeechAct.CORRECTION
    asks = spoken.act is SpeechAct.QUESTION and spoken.asks is not Asks.CANT
    if asks and not draft.compiled.flow.policy.hears_pain:  # a coach asks a lifter, and sees it once more before it goes out
        return False
    words = likely[0].share if likely and likely[0].name == OWN_WORDS else 0.0
    if not safety and (spoken.act is SpeechAct.COMMAND or words):
        return spoken.act is SpeechAct.COMMAND and (words < SURELY_WORDS or spoken.wants not in _HEARD_AS)
    if safety:
        told = any(isinstance(stop, Ask) and stop.free for stop in map(draft.compiled.stops.get, draft.top.trail))
        corrects = told and (corrects or bool(likely and likely[0].name == "@correction"))
        return asks or corrects or spoken.act is SpeechAct.UNSURE or hear(text, strict=True) in CONTROLS
    return asks or corrects or _waits(text) or bool(likely and likely[0].share >= NO_WORDS) or draft.book.near_command(text) in RIGHTS


def _about(draft: Draft, text: str) -> str:
    """Return which side question a message in words of one's own raises: a wish, a correction, or "" for none."""
    return "wish" if wants_of(draft, text) else "corrected" if _puts_right(draft, text) else ""


def _puts_right(draft: Draft, text: str) -> bool:
    """True if a message, where words of one's own are expected, puts an earlier answer right: by name with the new one, or most likely."""
    likely = likely_at(draft, text)
    corrects = bool(likely) and likely[0].name == "@correction" and behind(likely, OWN_WORDS) >= MAY_CORRECT
    if not (corrects or hear_act(text).act is SpeechAct.CORRECTION) or draft.ask.safety:
        return draft.ask.doubts and tells_otherwise(draft, text)
    found = correction(draft, text)
    return found is not None and found.new is not None and found.key != draft.ask.key and (found.named or corrects)


def _put_right(draft: Draft, text: str) -> bool:
    """Ask whether a correction is understood; return False if it is none of an earlier answer."""
    those = changes(draft, text) if not draft.ask.safety else corrections(draft, text)
    if isinstance(those, Elsewhere):
        ask_aside(draft, "corrected", text)
        return True
    found = those[0] if those else None
    if found is None and draft.ask.safety:
        return False
    if found is None:
        ask_again(draft, "Which answer should change, and to what? Say it with its name, such as “left 11”.")
    elif found.new is None and len(those) == 1:
        amend(draft, text)
    else:
        ask_aside(draft, "corrected", text)
    return True


def do_meant(draft: Draft, text: str, name: str) -> None:
    """Do what a message was said to mean, by its name in the learnt layer."""
    match name[:1], name[1:]:
        case "!", wants if wants.startswith(TO_START):
            start(draft, wants.removeprefix(TO_START))
        case "!", wants if not _wanted(draft, wants):
            ask_again(draft)
        case "!", _:
            pass
        case "@", "question":
            tell(draft, text, surely=True)
        case "@", "not_yet":
            draft.say(WAITS)
        case "@", "correction":
            _put_right(draft, text)
        case "@", _ if not _untold(draft, text):
            help_with(draft)
        case "@", _:
            pass
        case "#", _:
            fill(draft, text, sure=True, spoken=rules_at(draft, text))
        case _:
            answer(draft, Answer(name, text), sure=True)


def _untold(draft: Draft, text: str) -> bool:
    """Take it that somebody doesn't know: by the answer that says so, else by saying how to leave it out; return False where neither is."""
    unsure = [option.value for option in draft.ask.kind.options if option.value in DOES["@unsure"]]
    if unsure:
        answer(draft, Answer(unsure[0], text))
    elif skippable(draft.compiled.flow, draft.ask):
        ask_again(draft, NOT_KNOWN)
    else:
        return False
    return True


def _wanted(draft: Draft, name: str, text: str = "") -> bool:
    """Do what a command in words of one's own asks for."""
    if does := [option.value for option in offers(draft, draft.ask) if option.value in DOES.get(f"!{name}", ())]:
        answer(draft, Answer(does[0], text))
        return True
    if (heard := _HEARD_AS.get(name)) and not (draft.ask.safety and heard is Phrase.SKIP):
        control(draft, heard)
        return True
    words = str(tables_in("does").get(name, name))
    said = draft.book.sentence(words, draft.known.facts) or ((flow, "") if (flow := draft.book.command(words)) else None)
    if said:
        start(draft, *said)
    return bool(said)
