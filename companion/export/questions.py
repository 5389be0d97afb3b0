"""The questions and runs behind the answer log."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from string import Formatter
from typing import Final

from companion.base.clock import local_date
from companion.conversation.condition import Value
from companion.conversation.flow import END, Ask, Known
from companion.conversation.machine import Compiled
from companion.conversation.registry import Book
from companion.conversation.table import EARLY_END
from companion.conversation.wording import render
from companion.language.units import METRIC, spoken_unit
from companion.record.log import LogRow, as_answer
from companion.screening.squat_days import AFTER, DAY, about, days_told

_SOMEBODY: Final = Known({"today": "2000-01-01", "person": "", "coach": "no"}, datetime(2000, 1, 1, tzinfo=UTC))
"""A fixed context for facts drawn at a run's start, which appear in keys here, so that every export has the same keys."""
FIELD_LEFT_OUT: Final = "…"
"""Text in place of a template's field whose value only one conversation knew."""


@dataclass(frozen=True, slots=True)
class Question:
    """A question of a flow: the key of its answers in the log, its step, and its wording without values from a conversation."""

    key: str
    ask: Ask
    text: str


Questions = Mapping[str, Mapping[str, Question]]
"""Questions by flow and by key in the log, in the order of the flow."""


def questions_in(book: Book) -> Questions:
    """Return every question of every flow."""
    return {name: _questions(compiled) for name, compiled in book.flows.items()}


def _questions(compiled: Compiled) -> dict[str, Question]:
    flow = compiled.flow
    drawn = any(isinstance(ask, Ask) and "{" in ask.log_as for ask in compiled.stops.values())
    fixed = flow.at_start(_SOMEBODY) if drawn and flow.at_start else {}
    found: dict[str, Question] = {}
    for ask in compiled.stops.values():
        if isinstance(ask, Ask):
            key = render(ask.log_as, fixed, _SOMEBODY.now, ask.side) if ask.log_as else ask.key
            found.setdefault(key, Question(key, ask, _wording(ask)))
    return found


def in_words(key: str) -> str:
    """Return a key as words."""
    return key.replace("_", " ")


def planned_loads(rows: Iterable[LogRow]) -> dict[int, float]:
    """Return the load in kg of each answer "as planned", by row: that of its squat day."""
    log = list(rows)
    zone = next((str(row.value) for row in reversed(log) if row.key == "zone" and isinstance(row.value, str)), "UTC+00:00")
    days = {day.day: {DAY: day.planned, AFTER: day.load} for day in days_told(map(as_answer, log), zone)}
    same = {row.id: days.get(about(row.asked, row.at, local_date(row.at, zone)), {}).get(row.flow) for row in log
            if row.flow in (DAY, AFTER) and row.key == "load" and row.value == "same"}
    return {row: load for row, load in same.items() if load}


def stem_of(key: str, side: str) -> str:
    """Return a key without side and number, so that both sides and all repeats are one measure: "left_deg_2" → "deg"."""
    parts = [part for part in key.split("_") if part != side and not part.isdecimal()]
    return "_".join(parts)


def _wording(ask: Ask) -> str:
    said = ""
    for text, field, _, _ in Formatter().parse(ask.say):
        said += text + ("" if field is None else spoken_unit(ask.kind.unit, METRIC) if field == "unit" else FIELD_LEFT_OUT)
    return " ".join(said.split()) if any(map(str.isalpha, said)) else in_words(ask.key)


@dataclass(frozen=True, slots=True)
class RunAnswers:
    """One run of a flow with its rows, oldest first; at least one."""

    flow: str
    run: str
    rows: tuple[LogRow, ...]

    @property
    def version(self) -> int:
        """The flow's version at the last row."""
        return self.rows[-1].version

    @property
    def ending(self) -> str | None:
        """The run's ending ("done", "left", "pain"); None while it is open."""
        return self.rows[-1].ending

    @property
    def latest(self) -> dict[str, LogRow]:
        """The latest row of each key, in the order of the first answers."""
        return {row.key: row for row in self.rows}

    @property
    def standing(self) -> dict[str, LogRow]:
        """The current answers: the latest row of each key, unless skipped, withdrawn or given in pain."""
        return _standing(self.rows)


def runs_in(rows: Iterable[LogRow]) -> tuple[RunAnswers, ...]:
    """Return the runs of a log, in the order they began; ``rows`` in any order."""
    runs: dict[tuple[str, str], list[LogRow]] = {}
    for row in sorted(rows, key=lambda row: row.id):
        runs.setdefault((row.flow, row.run), []).append(row)
    return tuple(RunAnswers(flow, run, tuple(taken)) for (flow, run), taken in runs.items())


def _standing(rows: Iterable[LogRow]) -> dict[str, LogRow]:
    return {key: row for key, row in {row.key: row for row in rows}.items() if row.status == "ok" and row.value is not None}


def ended_early(one: RunAnswers, book: Book, questions: Questions) -> bool:
    """True if a run was ended early by its last answer ("stop for today"), or has no answers."""
    return not one.standing or _led_to(one.rows[-1].key, one.standing, one, book, questions) == EARLY_END


def corrected(one: RunAnswers, book: Book, questions: Questions) -> frozenset[str]:
    """Return the keys of answers that were taken back after the run had ended.

    The log does not hold when a run was reopened. It must have been where the answer taken back is one that ends the run, judged by
    the run's answers alone; ends that depend on other facts are not counted.
    """
    found: set[str] = set()
    for at, row in enumerate(one.rows):
        if row.status == "withdrawn" and (found or _led_to(row.key, _standing(one.rows[:at]), one, book, questions)
                                          in (END, EARLY_END)):
            found.add(row.key)
    return frozenset(found)


def _led_to(key: str, said: Mapping[str, LogRow], one: RunAnswers, book: Book, questions: Questions) -> str:
    """Return the step after a key's answer, judged by the answers of its run alone; "" where they don't decide it."""
    compiled, asked = book.flows.get(one.flow), questions.get(one.flow, {})
    if compiled is None or compiled.flow.version != one.version or key not in asked:
        return ""
    values: dict[str, Value] = {name: row.value for name, row in said.items() if row.value is not None}
    for arrow in compiled.leaving[asked[key].ask.key]:
        if arrow.when.holds(values) and all(part.fact in asked for part in arrow.when.compares()):
            return arrow.target
    return ""
