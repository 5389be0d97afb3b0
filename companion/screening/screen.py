"""A screen: which answers of the log count, test by test. Nothing else is judged here."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, fields
from datetime import datetime
from typing import Any, TypeVar

from companion.screening.about import About
from companion.screening.protocols import protocol, protocols, route
from companion.screening.readings import SIDES

Value = float | str
R = TypeVar("R")


@dataclass(frozen=True, slots=True)
class Answer:
    """One row of the answer log: status ok, skipped, withdrawn, in_pain or no_pain; ending of its run done, left, pain, None;
    asked: what its run was begun with."""

    flow: str
    run: str
    key: str
    value: Value | None
    status: str
    ending: str | None
    method: str
    placement: str
    at: datetime
    asked: str = ""


@dataclass(frozen=True, slots=True)
class Run:
    """One pass through a test: when it began, and its record."""

    run: str
    at: datetime
    record: Any


@dataclass(frozen=True, slots=True)
class Screen(Mapping[str, Any]):
    """All that counts of a lifter's tests: the record of each that was done, by the test's id, in the order of the route.

    ``stopped``: tests that pain ended last. ``notes``: what the results say of how the answers were taken.
    """

    records: Mapping[str, Any] = field(default_factory=dict)
    stopped: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    def __getitem__(self, test: str) -> Any:
        return self.records[test]

    def __iter__(self) -> Iterator[str]:
        return iter(self.records)

    def __len__(self) -> int:
        return len(self.records)

    def of(self, record: type[R]) -> R | None:
        """The record of this kind; None where its test was not done."""
        return next((one for one in self.records.values() if isinstance(one, record)), None)

    @property
    def done(self) -> tuple[str, ...]:
        """The tests with at least one answer that counts, in the order of the route."""
        return tuple(self.records)


def screen_of(*records: Any, stopped: tuple[str, ...] = (), notes: tuple[str, ...] = ()) -> Screen:
    """Return the screen of these records, whichever tests they are of."""
    tests = {one.record: test for test, one in protocols().items()}
    by_test = {tests[type(record)]: record for record in records}
    return Screen({test: by_test[test] for test in route() if test in by_test}, stopped, notes)


def screen_from(answers: Iterable[Answer]) -> Screen:
    """The screen that a log of answers amounts to; their order does not matter, their times do.

    A test is its latest run that is done or left and has an answer that counts. Of a key the latest row counts, and
    only where its status is ok. A run that pain ended counts as untested, and so does everything before it. A side
    that the latest run left out is taken from an older run only where both were measured the same way.
    """
    tests = protocols()
    rows: dict[str, dict[str, list[Answer]]] = {}
    for answer in answers:
        if answer.flow in tests:
            rows.setdefault(answer.flow, {}).setdefault(answer.run, []).append(answer)
    records: dict[str, Any] = {}
    stopped, notes = [], []
    for test, one in tests.items():
        runs = sorted(rows.get(test, {}).values(), key=lambda run: max((row.at, in_order(row.run)) for row in run), reverse=True)
        record, pain = _gathered(one.record, runs)
        if record is not None:
            records[test] = record
            notes.append(one.note(record) if one.note else "")
        elif pain:
            stopped.append(test)
    halted = [f"The {tests[test].short_name} was stopped for pain: it counts as not tested." for test in stopped]
    return Screen(records, tuple(stopped), (*halted, *filter(None, notes)))


def runs_of(answers: Iterable[Answer], flow: str) -> tuple[Run, ...]:
    """Every run of one test that was done or left and has an answer that counts, the oldest first.

    KeyError for a flow that is no test.
    """
    rows: dict[str, list[Answer]] = {}
    for answer in answers:
        if answer.flow == flow and answer.ending in ("done", "left"):
            rows.setdefault(answer.run, []).append(answer)
    record = protocol(flow).record
    runs = [Run(run, min(row.at for row in taken), record(**values)) for run, taken in rows.items()
            if (values := _fitting(record, _standing(taken)))]
    return tuple(sorted(runs, key=lambda run: (run.at, in_order(run.run))))


def about_from(answers: Iterable[Answer]) -> About:
    """What the lifter said of themself: the latest ok answer to each question of about_you, in whatever run."""
    runs: dict[str, list[Answer]] = {}
    for answer in answers:
        if answer.flow == "about_you":
            runs.setdefault(answer.run, []).append(answer)
    standing = sorted((row for run in runs.values() for row in _standing(run)), key=_later)
    return About(**_fitting(About, standing))


def _gathered(record: type, runs: Iterable[list[Answer]]) -> tuple[Any, bool]:
    """The record of one test from its runs, the newest first, and whether a run that pain ended closed the door."""
    common: dict[str, Value] = {}
    got: dict[str, Value] = {}
    missing = {side for side in SIDES if any(field.name.startswith(side) for field in fields(record))}
    for run in runs:
        ending = run[0].ending
        if ending == "pain":
            return (record(**got) if got else None), True
        values = _fitting(record, _standing(run)) if ending in ("done", "left") else {}
        if not values:
            continue
        unsided = {name: value for name, value in values.items() if not name.startswith(SIDES)}
        if not got:
            common, got = unsided, values
        elif unsided == common:
            got |= {name: value for name, value in values.items() if name.startswith(tuple(missing))}
        missing -= {side for side in SIDES if any(name.startswith(side) for name in got)}
        if not missing:
            break
    return (record(**got) if got else None), False


def in_order(run: str) -> tuple[int, str]:
    """Orders the names of runs, which are counted: "8" before "10"."""
    return len(run), run


def _later(row: Answer) -> tuple[datetime, bool, str]:
    """Orders rows by time; of two at the same moment the one that does not count is the later."""
    return row.at, row.status != "ok", str(row.value)


def _standing(run: Iterable[Answer]) -> list[Answer]:
    """The rows of one run that stand: the latest of each key, where it is ok."""
    latest = {row.key: row for row in sorted(run, key=_later)}
    return [row for row in latest.values() if row.status == "ok" and row.value is not None]


def _fitting(record: type, rows: Iterable[Answer]) -> dict[str, Any]:
    """Field values of a record from rows: words for choices, numbers for measures; anything else is left out."""
    wanted = {field.name: "float" in str(field.type) for field in fields(record)}
    values: dict[str, Any] = {}
    aside: dict[str, Value] = {}
    for row in rows:
        name = "with_" if row.key == "with" else row.key
        if wanted.get(name) == isinstance(row.value, (int, float)) and row.value is not None:
            values[name] = float(row.value) if wanted[name] else str(row.value)
            aside |= {key: said for key, said in (("method", row.method), ("placement", row.placement)) if said}
    measured = any(wanted[name] for name in values)
    return values | {key: said for key, said in aside.items() if measured and key in wanted and key not in values}
