"""The answer to "why?" about one topic: a message for each row of the table of sources, and for a cause the findings that decided."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Flow, Known, Tell
from companion.conversation.policy import Policy
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import normalise
from companion.screening.evidence import Finding
from companion.screening.protocols import protocol, protocols
from companion.screening.rulings import Ruling, Verdict
from companion.screening.sources import LETTERS_MOST, WORDS_MOST, sources_on, why
from companion.screening.sureness import contrary_studies
from flows.outcome_facts import concluded, showing


@dataclass(frozen=True, slots=True)
class Topic:
    """A thing that may be asked about: its button, the words for it, what of a longer question names it, the rows it is answered from, and
    the fact without which it was not told ("": always offered). ``listed``: false for one that is found by its words only."""

    name: str
    label: str
    words: tuple[str, ...]
    named: str
    rows: tuple[str, ...] = ()
    told: str = ""
    listed: bool = True


TOPICS: Final = (
    Topic("length", "Length", ("length",), r"length|hips?|hamstrings?|cal(?:f|ves)|ankles?", ("causes",), "length"),
    Topic("strength", "Strength", ("strength",), r"strength|trunk", ("causes",), "strength"),
    Topic("control", "Control", ("control",), r"control", ("causes",), "control"),
    Topic("load", "The load", ("load", "weight"), r"loads?|80 ?(?:%|percent)|how heavy", ("load",)),
    Topic("depth", "The depth", ("depth",), r"depth|deep(?:er)?|bands?|parallel", ("depth",)),
    Topic("drill", "The drill", ("drill", "priming"), r"drill|prim(?:e|ing)|sets?|reps|repetitions", ("drill",)),
    Topic("home", "Home work", ("home work", "homework"), r"home ?work|stretch(?:es|ing)?|3 days|three days", ("home",)),
    Topic("retest", "The retest date", ("retest", "date"), r"retest|test again|weeks?|trend|sessions?|date", ("retest",)),
    *(Topic(one.id, f"The {one.title.lower()} lines", (one.title.lower(),), one.lines_named, (one.id,))
      for one in protocols().values() if one.lines_named),
    Topic("error", "Measurement error", ("error", "measurement error"), r"errors?|mdc|sem|off", ("error",)),
    Topic("pain", "What counts in pain", ("what counts in pain", "points"), r"1\.77|points?|important", ("pain",)),
    Topic("estimate", "The depth estimate", ("estimate",), r"estimate|43\.5|32\.4", ("estimate",)),
    Topic("warm_up", "Warm-up sets", ("warm-up sets", "warm up sets"), r"warm.?up|40|60", ("warm_up",)),
    Topic("minutes", "The minutes", ("minutes", "how long"), r"minutes?|how long|so long", ("minutes",)),
    Topic("reminders", "Reminders", ("reminders",), r"reminders?|messages?|so (?:often|seldom)", ("reminders",)),
    *(Topic(name, label, (label.lower(),), named, rows, listed=False) for name, label, named, rows in (
        ("body", "Body measures", r"body measures?|segments?|height", ("body",)),
        ("model", "The estimate's numbers", r"estimate'?s numbers|model", ("model",)),
        ("readings", "Readings that are doubted", r"doubted?|readings?|apart|upright",
         ("readings", *(one.id for one in protocols().values() if not one.lines_named))),
        ("draws", "The draws behind a ruling", r"draws?|same in|9 of 10", ("draws",)),
        ("squat_days", "Squat days told", r"squat days?|over the limit|film", ("squat_days",)),
        ("gym", "Bars and plates", r"plates?|bars?", ("gym",)),
        ("safety", "Safety dates", r"clearance|cleared|referral", ("safety",)),
        ("dates", "Other dates", r"month(?:ly)?|fourteen|14", ("dates",)),
        ("set_up", "Set-ups", r"set.?up|heels?", ("set_up",)),
        ("outcomes", "Outcomes counted", r"outcomes?|counted", ("outcomes",)))),
)
_BY_NAME: Final = {one.name: one for one in TOPICS}
MESSAGES_MOST: Final = 13
"""The most messages of one topic."""


def topic_of(asked: str) -> str:
    """Return the topic that a question is about, the first of those named in it; "" for none."""
    said = normalise(asked).strip(" .!?")
    if said in _BY_NAME:
        return said
    return next((one.name for one in TOPICS if re.search(rf"(?<![\w.])(?:{one.named})(?![\w])", said)), "")


def why_facts(known: Known) -> dict[str, Value]:
    """Return the answers about the topic asked for, one message each."""
    topic = _BY_NAME.get(topic_of(known.asked))
    if topic is None:
        return {}
    said: list[str] = []
    rows = [row for name in topic.rows for row in sources_on(name)]
    if topic.rows == ("causes",):
        verdict = concluded(known)[1].verdict(topic.name)
        said.append(ruling_words(verdict))
        rows += contrary_studies(verdict)
    show = showing(known)
    return {f"say_{n}": text for n, text in enumerate((*said, *(why(row, show) for row in rows)), 1)}


def ruling_words(verdict: Verdict) -> str:
    """Return the rows that decided a ruling, the test and the weight of each, as many as a message holds."""
    against = verdict.ruling is Ruling.RULED_OUT
    about = verdict.left_by if verdict.by_elimination else verdict.because
    carrying = [one for one in about if (verdict.ruling in (Ruling.TOO_CLOSE, Ruling.NOT_TESTED) and not verdict.by_elimination)
                or one.row.direction == ("against" if against or verdict.by_elimination else "for")]
    rows = list(dict.fromkeys(map(_row_words, carrying)))
    if not rows:
        return f"{verdict.cause.capitalize()}: no finding speaks about it yet."
    tail = " The weights are this project's choice."
    text = f"{verdict.cause.capitalize()}, decided by: {rows[0]}"
    for n, row in enumerate(rows[1:], 1):
        if len(f"{text}; {row}{tail} And 99 more.") > LETTERS_MOST or len(f"{text}; {row}{tail} And 9 more.".split()) > WORDS_MOST:
            return f"{text}. And {len(rows) - n} more.{tail}"
        text += f"; {row}"
    return f"{text}.{tail}"


def _row_words(finding: Finding) -> str:
    said = finding.row.finding
    side = f", {finding.side}" if finding.side else ""
    weight = "no weight" if finding.grade.value == "none" else finding.grade.value
    return f"{said[:1].lower()}{said[1:]} ({protocol(finding.row.test).short_name}{side}; {weight})"


FLOW = Flow(
    "why_told", version=1, title="Why that", policy=replace(Policy.BESIDE, pages=True), command=None, at_start=why_facts,
    sentences=(r"(?:but |and |so )?why (?P<asked>.{1,60})",), fits=lambda asked: bool(topic_of(asked)) and hear_pain(asked) is Pain.NO,
    steps=(
        *(Tell(f"{{say_{n}}}", fact(f"say_{n}").known) for n in range(1, MESSAGES_MOST + 1)),
        Tell("I have nothing on that. Say “why” for what I can answer.", ~fact("say_1").known),
    ),
)
