"""The questions behind the answer log: each row's question as asked, and the run it belongs to."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from string import Formatter
from typing import Final

from companion.conversation.condition import Value
from companion.conversation.flow import END, Ask, Known
from companion.conversation.machine import Compiled
from companion.conversation.registry import Book
from companion.conversation.table import EARLY_END
from companion.conversation.wording import render
from companion.language.units import METRIC, spoken_unit
from companion.record.log import LogRow

_SOMEBODY: Final = Known({"today": "2000-01-01", "person": "", "coach": "no"}, datetime(2000, 1, 1, tzinfo=UTC))
"""For facts drawn at a run's start, which only name keys here: the same ones at every export."""
FIELD_LEFT_OUT: Final = "…"


@dataclass(frozen=True, slots=True)
class Question:
    """A question of a flow as the log knows it: the name its answers are kept under, its step, and its wording, with what
    only one conversation knew left out."""

    key: str
    ask: Ask
    text: str


Questions = Mapping[str, Mapping[str, Question]]
"""By flow, then by the name in the log, in the order of the flow."""


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


def stem_of(key: str, side: str) -> str:
    """Return a key without its side and its count, so that left and right and repeats are one measure: "left_deg_2" → "deg"."""
    parts = [part for part in key.split("_") if part != side and not part.isdecimal()]
    return "_".join(parts)


def _wording(ask: Ask) -> str:
    said = ""
    for text, field, _, _ in Formatter().parse(ask.say):
        said += text + ("" if field is None else spoken_unit(ask.kind.unit, METRIC) if field == "unit" else FIELD_LEFT_OUT)
    return " ".join(said.split()) if any(map(str.isalpha, said)) else in_words(ask.key)


@dataclass(frozen=True, slots=True)
class RunAnswers:
    """One run of one flow with its rows, the oldest first; at least one. Its version and ending are the last row's."""

    flow: str
    run: str
    rows: tuple[LogRow, ...]

    @property
    def version(self) -> int:
        """The flow's version at the run's last answer."""
        return self.rows[-1].version

    @property
    def ending(self) -> str | None:
        """The ending of the run; None while it is open."""
        return self.rows[-1].ending

    @property
    def latest(self) -> dict[str, LogRow]:
        """The latest row of each key, in the order the keys were first asked."""
        return {row.key: row for row in self.rows}

    @property
    def standing(self) -> dict[str, LogRow]:
        """The rows that stand: the latest of each key, where it is an answer."""
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
    """True if a run that is done was ended early by its last answer ("stop for today"), or has no answer at all."""
    return not one.standing or _led_to(one.rows[-1].key, one.standing, one, book, questions) == EARLY_END


def corrected(one: RunAnswers, book: Book, questions: Questions) -> frozenset[str]:
    """Return the keys whose answer was taken back after it had ended the run, and those taken back from then on.

    The log does not say when a run was reopened; it was where the answer taken back is one that ends the run by the
    answers alone. What also hangs on something outside them is not counted.
    """
    found: set[str] = set()
    for at, row in enumerate(one.rows):
        if row.status == "withdrawn" and (found or _led_to(row.key, _standing(one.rows[:at]), one, book, questions)
                                          in (END, EARLY_END)):
            found.add(row.key)
    return frozenset(found)


def _led_to(key: str, said: Mapping[str, LogRow], one: RunAnswers, book: Book, questions: Questions) -> str:
    """Return where the answer of a key leads, by the answers of its run alone; "" where that can't be told from them."""
    compiled, asked = book.flows.get(one.flow), questions.get(one.flow, {})
    if compiled is None or compiled.flow.version != one.version or key not in asked:
        return ""
    values: dict[str, Value] = {name: row.value for name, row in said.items() if row.value is not None}
    for arrow in compiled.leaving[asked[key].ask.key]:
        if arrow.when.holds(values) and all(part.fact in asked for part in arrow.when.compares()):
            return arrow.target
    return ""
