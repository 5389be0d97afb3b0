"""AnswerBook to what people ask back: words, cards for the questions, and frequent questions, read from the tables beside."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import cache, partial
from pathlib import Path
from typing import Any, Final

from companion.conversation.cards import CARD_WORDS_MOST, AnswerBook, read_cards
from companion.conversation.condition import Condition, Facts, Value
from companion.conversation.flow import Known
from companion.conversation.wording import render
from companion.language.questions import is_question, plain
from companion.language.units import METRIC, shown
from companion.screening.depth import BAND_WORDS, band_of
from companion.screening.levels import LEVEL_WORDS, SEEN, SEEN_TOMORROW, URGENT_LEVELS
from companion.screening.limits import Work
from companion.screening.load_limit import at_most
from companion.screening.safety import Level
from companion.screening.sources import SOURCES, with_numbers
from flows.shared import closes

TABLES: Final = Path(__file__).parent

PERMITS: Final[Mapping[str, tuple[Level, tuple[Work, ...]]]] = {
    "move": (Level.NO_LOAD, ()), "squat": (Level.GO, (Work.SQUAT,)), "load": (Level.GO, (Work.SQUAT, Work.LOAD))}
"""By what an answer permits: the least open level at which it may be given, and the work that no limit may close."""

LIMITED: Final = "You were told to leave that out: {limit.words}. I keep to that, and say nothing else on it."
AT_MOST: Final = "You were told: {limit.words}. I keep to that, and say nothing else on it."
STANDINGS: Final = ("common practice", "choice", "fact")


@dataclass(frozen=True, slots=True)
class FrequentQuestion:
    """A frequent question: its patterns, its answer, the answer with the person's own result where the fact ``needs`` is known, what the
    answer permits ("" for nothing), and the rows of sources, or else the standing, that it rests on."""

    id: str
    asked: tuple[str, ...]
    says: str
    found: str = ""
    needs: str = ""
    permits: str = ""
    sources: tuple[str, ...] = ()
    standing: str = ""


def read_topics(text: str) -> Mapping[str, FrequentQuestion]:
    """Return the topics of a table in TOML, by name. Raises ValueError, which names the row, for one that is not whole."""
    return {name: _topic(name, row) for name, row in tomllib.loads(text).items()}


def _topic(name: str, row: Mapping[str, Any]) -> FrequentQuestion:
    if wrong := row.keys() - {field.name for field in fields(FrequentQuestion)}:
        raise ValueError(f"{name}: {', '.join(sorted(wrong))} is no field of a frequent question")
    made = FrequentQuestion(**{"id": name, **row, "asked": tuple(row["asked"]), "sources": tuple(row["sources"])})
    for words in (made.says, made.found):
        if len(words.split()) > CARD_WORDS_MOST:
            raise ValueError(f"{name}: an answer has {len(words.split())} words")
    if missing := [source for source in made.sources if source not in SOURCES]:
        raise ValueError(f"{name}: {', '.join(missing)} is no row of the sources")
    if bool(made.sources) == bool(made.standing) or made.standing not in ("", *STANDINGS):
        raise ValueError(f"{name}: it needs sources, or one standing of {', '.join(STANDINGS)}")
    if made.permits not in ("", *PERMITS) or bool(made.found) != bool(made.needs):
        raise ValueError(f"{name}: {made.permits or 'found without needs'} is not possible")
    return made


FREQUENT: Final = read_topics(with_numbers((TABLES / "frequent.toml").read_text("utf-8")))
_ASKED: Final = tuple((re.compile("|".join(one.asked)), one.id) for one in FREQUENT.values())


def topic_of(text: str) -> str:
    """Return the frequent question in a text: the one named by the most letters, the first of equals; "" for none."""
    said = plain(text)
    named = [(max(len(found[0]) for found in pattern.finditer(said)), topic) for pattern, topic in _ASKED if pattern.search(said)]
    return max(named, key=lambda one: one[0])[1] if named else ""


def sent_words(level: Level, facts: Facts) -> str:
    """Return what a level says to a lifter: to somebody who has been seen since, no more where to go."""
    if level.value in URGENT_LEVELS and facts.get("safety.seen") == "yes":
        return SEEN_TOMORROW if facts.get("safety.may_open") == "no" else SEEN
    return LEVEL_WORDS[level].lifter


def closed_words(permits: str, known: Known) -> str:
    """Return what is said instead where a safety level or a clinician's limit closes what an answer permits; "" where it is open."""
    if not permits:
        return ""
    least, works = PERMITS[permits]
    told = known.facts.get("safety.level")
    level = Level(str(told)) if told else None
    if level is not None and level.rank > least.rank:
        return sent_words(level, known.facts)
    limit: Condition = closes(*works)
    return LIMITED if limit.holds(known.facts) else AT_MOST if Work.LOAD in works and "limit.kg" in known.facts else ""


_ASKS_OF_IT: Final = re.compile(
    r"^(?:(?:so|but|and|ok|okay|oh|oh god|then|please|wait|hm+|um+|really|sorry|well)[,. ]+)*(?:"
    r"(?:is|could|can) (?:it|this|that) (?:be )?(?:really |that |very |so |actually )*"
    r"(?:serious|bad|danger\w*|urgent|an emergency|life|wait|fatal|ok|okay)|"
    r"how (?:serious|bad|urgent|dangerous|soon|long can (?:i|it) wait)|"
    r"what (?:do|should|can|must|am|shall) i (?:do|supposed to do|meant to do)(?: now| next| then| about (?:it|this|that))?$|"
    r"(?:now what|what now|what next|what then|and now)$|(?:so )?what happens (?:now|next)|"
    r"(?:should|can|could|may|shall|must|do|would) i (?:just |really |still |not |rather |better |have to |need to |got to )*"
    r"(?:wait|go\b(?! deep| low| heav| below| all the)|call|ring|phone|worr|be worried|panic|drive|sleep|rest|lie|see|"
    r"get (?:help|seen|there)|take (?:a|an|the|my)? ?(?:taxi|cab|bus|ambulance|car)|ignore|leave it|be seen)|"
    r"(?:who|whom|where|which (?:hospital|number|doctor)|what number) (?:(?:do|should|can|shall|must) )?(?:i|we|to) "
    r"(?:call|ring|phone|go|see)|"
    r"do i (?:need|have|want) (?:an?|to) (?:ambulance|go|call|be seen|doctor|hospital|drive)|"
    r"(?:can|could|should) (?:my|a|an|some|she|he|they|\w+) ?\w* ?(?:drive|take|bring) me|"
    r"am i (?:ok|okay|dying|in danger|going to|gonna|safe|paraly)|(?:will|would) i (?:die|be (?:ok|okay|paraly\w+))|"
    r"are you (?:sure|serious)|do you mean it)")
"""What is asked of having to be seen at once, in small letters without apostrophes."""
_OF_IT_TOO: Final = ("dangerous", "see_someone", "diagnosis")


def stands(text: str, known: Known) -> str:
    """Return what a person was told who has to be seen at once, where they ask about that (or say anything, for ""); "" at other levels
    and for other questions."""
    told = str(known.facts.get("safety.level", ""))
    said = plain(text).strip(" ?!.")
    asks = told in URGENT_LEVELS and (not text or _ASKS_OF_IT.search(said) or (is_question(text) and topic_of(text) in _OF_IT_TOO))
    return sent_words(Level(told), known.facts) if asks else ""


def says(topic: str, known: Known) -> str:
    """Return the answer to a frequent question for this person, now: nothing in it permits what is closed."""
    one = FREQUENT[topic]
    facts = {**known.facts, **own_results(known)}
    text = closed_words(one.permits, known) or (one.found if one.needs and one.needs in facts else one.says)
    return render(text, facts, known.now)


def own_results(known: Known) -> dict[str, Value]:
    """Return what the answers use of a person's own results: the rulings, the retest's day, the depth and load for now."""
    from flows.screen_facts import FULL_MINUTES, SCREEN_MINUTES

    facts: dict[str, Value] = {"full_minutes": float(FULL_MINUTES), "short_minutes": float(SCREEN_MINUTES)}
    ruled = {cause: str(known.facts[cause]).replace("_", " ") for cause in ("length", "strength", "control") if cause in known.facts}
    if ruled and "outcome.at" in known.facts:
        facts |= {"ruled": ", ".join(f"{cause} {ruling}" for cause, ruling in ruled.items()), **ruled}
    if due := known.facts.get("due.retest"):
        facts["retest"] = render("{due:date}", {"due": str(due)[:10]}, known.now)
    if band := band_of(str(known.facts.get("depth.pin") or known.facts.get("depth.keep") or "")):
        facts["keep"] = BAND_WORDS[band]
    limits = [float(str(kg)) for name in ("load.limit", "load.pin", "load.told") if (kg := known.facts.get(name, "")) not in ("", "none")]
    if limits:
        facts["limit"] = at_most(min(limits), partial(shown, system=str(known.facts.get("welcome.units", METRIC))))
    if known.facts.get("coach") == "yes":
        facts["coached"] = "yes"
    return facts


@cache
def _words() -> Mapping[str, str]:
    rows = tomllib.loads((TABLES / "words.toml").read_text("utf-8"))["word"]
    return {"|".join(row["named"]): row["says"] for row in rows}


ANSWERS: Final = AnswerBook(read_cards(with_numbers((TABLES / "cards.toml").read_text("utf-8"))), _words(), topic_of, says, "note_to_coach",
                                  stands)
"""The answers as the bot uses them."""
