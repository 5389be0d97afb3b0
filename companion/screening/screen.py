"""A screen: the valid answers of the log, test by test. No finding is judged here."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from datetime import datetime
from typing import Any, Final, TypeVar

from companion.screening.about import About
from companion.screening.protocol import Protocol
from companion.screening.protocols import protocol, protocols, route
from companion.screening.readings import SIDES

Value = float | str
R = TypeVar("R")


@dataclass(frozen=True, slots=True)
class LoggedAnswer:
    """One row of the answer log. ``status``: ok, skipped, withdrawn or in_pain; ``ending`` of its run: done, left, pain or
    None; ``asked``: the text its run was begun with."""

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
class ScreeningRun:
    """One pass through a test: its id, its beginning, and its record."""

    run: str
    at: datetime
    record: Any


@dataclass(frozen=True, slots=True)
class Outdone:
    """The newest record of a test, which does not count since it was taken by a rougher method (``by``) than the one that does
    (``than``)."""

    record: Any
    by: str
    than: str


@dataclass(frozen=True, slots=True)
class Screen(Mapping[str, Any]):
    """A lifter's valid test records by test id, in the order of the route.

    ``stopped``: tests whose last run pain ended. ``notes``: remarks for the results on how answers were taken. ``outdone``: by test, what
    a rougher method said since.
    """

    records: Mapping[str, Any] = field(default_factory=dict)
    stopped: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    outdone: Mapping[str, Outdone] = field(default_factory=dict)

    def __getitem__(self, test: str) -> Any:
        return self.records[test]

    def __iter__(self) -> Iterator[str]:
        return iter(self.records)

    def __len__(self) -> int:
        return len(self.records)

    def of(self, record: type[R]) -> R | None:
        """Return the record of this type; None if its test was not done."""
        return next((one for one in self.records.values() if isinstance(one, record)), None)

    @property
    def done(self) -> tuple[str, ...]:
        """The tests with at least one valid answer, in the order of the route."""
        return tuple(self.records)


def screen_of(*records: Any, stopped: tuple[str, ...] = (), notes: tuple[str, ...] = ()) -> Screen:
    """Return the screen of these records, in the order of the route."""
    tests = {one.record: test for test, one in protocols().items()}
    by_test = {tests[type(record)]: record for record in records}
    return Screen({test: by_test[test] for test in tests.values() if test in by_test}, stopped, notes)


def screen_from(answers: Iterable[LoggedAnswer]) -> Screen:
    """Return the screen from an answer log; the rows' times matter, not their order.

    A test's record is its latest run that is done or left and has a valid answer. Of each key the latest row counts, and
    only if its status is ok. A run that pain ended counts as untested, and so does every run before it. A side missing from
    the latest run is taken from an older one only if both were measured the same way. A run by a rougher method than one before
    it does not count: it undoes nothing, and a note says which method to take.
    """
    tests = protocols()
    rows: dict[str, dict[str, list[LoggedAnswer]]] = {}
    for answer in answers:
        if answer.flow in tests:
            rows.setdefault(answer.flow, {}).setdefault(answer.run, []).append(answer)
    records: dict[str, Any] = {}
    stopped, notes, outdone = [], [], {}
    for test, one in tests.items():
        runs = sorted(rows.get(test, {}).values(), key=lambda run: max((row.at, in_order(row.run)) for row in run), reverse=True)
        runs, rougher = _most_exact(one, runs)
        if rougher:
            outdone[test] = rougher
            counts = METHOD_WORDS[rougher.than]
            notes.append(f"The {one.short_name} was last taken by {METHOD_WORDS[rougher.by]}, which is rougher than {counts} and does not "
                         f"undo it. Measure by {counts} again.")
        record, pain = _gathered(one.record, runs)
        if record is not None:
            records[test] = record
            notes.append(one.note(record) if one.note else "")
        elif pain:
            stopped.append(test)
    _watched_alike(records)
    halted = [f"The {tests[test].short_name} was stopped for pain: it counts as not tested." for test in stopped]
    return Screen(records, tuple(stopped), (*halted, *filter(None, notes)), outdone)


def runs_of(answers: Iterable[LoggedAnswer], flow: str) -> tuple[ScreeningRun, ...]:
    """Return every run of one test that is done or left and has a valid answer, the oldest first.

    Raises KeyError for a flow that is no test.
    """
    rows: dict[str, list[LoggedAnswer]] = {}
    for answer in answers:
        if answer.flow == flow and answer.ending in ("done", "left"):
            rows.setdefault(answer.run, []).append(answer)
    record = protocol(flow).record
    runs = [ScreeningRun(run, min(row.at for row in taken), record(**values)) for run, taken in rows.items()
            if (values := _fitting(record, _standing(taken)))]
    return tuple(sorted(runs, key=lambda run: (run.at, in_order(run.run))))


def about_from(answers: Iterable[LoggedAnswer]) -> About:
    """Return the lifter's details: the latest ok answer to each question of about_you, over all runs."""
    runs: dict[str, list[LoggedAnswer]] = {}
    for answer in answers:
        if answer.flow == "about_you":
            runs.setdefault(answer.run, []).append(answer)
    standing = sorted((row for run in runs.values() for row in _standing(run)), key=_later)
    return About(**_fitting(About, standing))


def _most_exact(one: Protocol[Any], runs: Sequence[list[LoggedAnswer]]) -> tuple[list[list[LoggedAnswer]], Outdone | None]:
    """Return the runs, the newest first, without those by a rougher method than an older one since pain last ended a run; and the newest
    if it was left out. The methods of a test are listed with the most exact first."""
    ways = [error.method for error in one.errors]
    since = next((n for n, run in enumerate(runs) if run[0].ending == "pain"), len(runs))
    exactness = {n: ways.index(way) for n, run in enumerate(runs[:since]) if run[0].ending in ("done", "left")
                 and (way := _method(one.record, run)) in ways}
    best = min(exactness.values(), default=0)
    left_out = {n for n, way in exactness.items() if way > best and any(
        older > n and other < way for older, other in exactness.items())}
    kept = [run for n, run in enumerate(runs) if n not in left_out]
    newest = min(exactness, default=None)
    if newest is None or newest not in left_out:
        return kept, None
    counts = ways[next(way for n, way in sorted(exactness.items()) if n not in left_out)]
    return kept, Outdone(one.record(**_fitting(one.record, _standing(runs[newest]))), ways[exactness[newest]], counts)


def _watched_alike(records: dict[str, Any]) -> None:
    """Give a squat of which was not asked how it was watched the answer of the squat look: the phone still stood there."""
    seen = getattr(records.get(route()[0]), "seen_by", None)
    for test, one in records.items():
        if seen is not None and getattr(one, "seen_by", "") is None:
            records[test] = replace(one, seen_by=seen)


METHOD_WORDS: Final = {"tape": "tape", "level": "phone level", "heel": "heel height", "eye": "eye", "film": "film with a card"}


def _method(record: type, run: Iterable[LoggedAnswer]) -> str:
    """Return the method of a run that has a reading, "" without one."""
    values = _fitting(record, _standing(run))
    return str(values.get("method", "")) if any(name.startswith(SIDES) for name in values) else ""


def _gathered(record: type, runs: Iterable[list[LoggedAnswer]]) -> tuple[Any, bool]:
    """Return the record of one test from its runs, the newest first, and True if a run that pain ended cut it short."""
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
    """Return the sort key of a run's name, which is a count: "8" before "10"."""
    return len(run), run


def _later(row: LoggedAnswer) -> tuple[datetime, bool, str]:
    """Return the sort key of a row by time; of two at the same moment, the one that is not ok is the later."""
    return row.at, row.status != "ok", str(row.value)


def _standing(run: Iterable[LoggedAnswer]) -> list[LoggedAnswer]:
    """Return the valid rows of one run: the latest of each key, if its status is ok."""
    latest = {row.key: row for row in sorted(run, key=_later)}
    return [row for row in latest.values() if row.status == "ok" and row.value is not None]


def _fitting(record: type, rows: Iterable[LoggedAnswer]) -> dict[str, Any]:
    """Return field values of a record from rows: words for choices, numbers for measures; anything else is left out."""
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
