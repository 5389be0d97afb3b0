"""Topics of "why?": a button and words for each, the rows of the tables it is answered from, and the answers.

For a cause the answer begins with the findings that decided it. Chat, a coach's page and the report read these rows alike.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import Finding
from companion.screening.protocols import protocol, protocols
from companion.screening.readings import NumberFormat, metric
from companion.screening.rulings import Ruling, Verdict
from companion.screening.sources import LETTERS_MOST, WORDS_MOST, sources_on, why
from companion.screening.sureness import contrary_studies


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
    Topic("drill", "The drill", ("drill", "priming"), r"drill|prim(?:e|ing)|sets?(?!.?up)|reps|repetitions|[1-3] ?seconds?", ("drill",)),
    Topic("home", "Homework", ("homework", "home work"), r"home ?work|stretch(?:es|ing)?|plank|(?:15|30) ?seconds|3 days|three days",
          ("home",)),
    Topic("retest", "The retest date", ("retest", "date"), r"retest|test again|weeks?|trend|sessions?|date", ("retest",)),
    *(Topic(one.id, f"The {one.title.lower()} lines", (one.title.lower(),), one.lines_named, (one.id,))
      for one in protocols().values() if one.lines_named),
    Topic("error", "Measurement error", ("error", "measurement error"), r"errors?|mdc|sem|off", ("error",)),
    Topic("pain", "What counts in pain", ("what counts in pain", "points"), r"1\.77|points?|important", ("pain",)),
    Topic("estimate", "The depth estimate", ("estimate",), r"estimate|43\.5|32\.4", ("estimate",)),
    Topic("warm_up", "Warm-up sets", ("warm-up sets", "warm up sets"), r"warm.?up|40|60|easy squats|on the spot", ("warm_up",)),
    Topic("minutes", "The minutes", ("minutes", "how long"), r"minutes?|how long|so long", ("minutes",)),
    Topic("reminders", "Reminders", ("reminders",), r"reminders?|messages?|so (?:often|seldom)|quiet hours", ("reminders",)),
    *(Topic(name, label, (label.lower(),), named, rows, listed=False) for name, label, named, rows in (
        ("body", "Body measures", r"body measures?|segments?|height", ("body",)),
        ("model", "The estimate's numbers", r"estimate'?s numbers|model", ("model",)),
        ("readings", "Readings that are doubted", r"doubted?|readings?|apart|upright",
         ("readings", *(one.id for one in protocols().values() if not one.lines_named))),
        ("draws", "The draws behind a ruling", r"draws?|same in|9 of 10", ("draws",)),
        ("doing", "How a test is done", r"squats|slow(?:ly)?|steps away|stops?|times|twice|still|place", ("doing",)),
        ("squat_days", "Squat days told", r"squat days?|over the limit|film", ("squat_days",)),
        ("gym", "Bars and plates", r"plates?|bars?", ("gym",)),
        ("safety", "Safety dates", r"clearance|cleared|referral|undo|wrong tap|disc|months", ("safety",)),
        ("dates", "Other dates", r"month(?:ly)?|fourteen|14|quiet|late|overdue", ("dates",)),
        ("set_up", "Set-ups", r"set.?ups?|heels?", ("set_up",)),
        ("outcomes", "Outcomes counted", r"outcomes?|counted", ("outcomes",)))),
)
TOPIC_BY_NAME: Final = {one.name: one for one in TOPICS}


def answers(topic: Topic, verdicts: Iterable[Verdict] = (), show: NumberFormat = metric) -> tuple[str, ...]:
    """Return the answers to "why?" about a topic, a message each, in the reader's units; a cause is answered from its verdict."""
    rows = [row for name in topic.rows for row in sources_on(name)]
    verdict = next((one for one in verdicts if one.cause == topic.name), None)
    rows += () if verdict is None else contrary_studies(verdict)
    return (*(() if verdict is None else (ruling_words(verdict),)), *(why(row, show) for row in rows))


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
