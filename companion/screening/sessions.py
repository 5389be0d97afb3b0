"""The readings of one test and side, session by session, each with the warm-up before it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final

from companion.screening.protocols import protocol
from companion.screening.readings import Reading
from companion.screening.screen import LoggedAnswer, in_order, runs_of
from companion.screening.sources import value

WARM_FOR: Final = timedelta(hours=value("warm_for"))  # the longest time from a warm-up to the test it counts for


@dataclass(frozen=True, slots=True)
class ReadingSession:
    """The repeats of one test on one side in one run, and the run's beginning."""

    at: datetime
    readings: tuple[Reading, ...]


def sessions_of(answers: Iterable[LoggedAnswer], test: str, side: str) -> tuple[ReadingSession, ...]:
    """Return the sessions of a measured test on one side, the oldest first; runs that pain ended are left out.

    Sessions by different methods are all included: comparing them raises the error.
    """
    log, readings_of = tuple(answers), protocol(test).readings
    assert readings_of is not None, f"{test} is not measured"
    taken = ((run.at, readings_of(run.record, side)) for run in runs_of(log, test))
    return tuple(ReadingSession(at, tuple(replace(reading, warm_up=_warm_up(log, at)) for reading in readings))
                 for at, readings in taken if readings)


def _warm_up(log: Sequence[LoggedAnswer], at: datetime) -> str:
    """Return the parts of the fixed warm-up done before a moment, as their names; "" if none is known."""
    before = [row for row in log if row.flow == "warm_up" and row.ending == "done" and at - WARM_FOR <= row.at <= at]
    if not before:
        return ""
    last = max(before, key=lambda row: (row.at, in_order(row.run))).run
    return " ".join(sorted({row.key for row in before
                            if row.run == last and row.status == "ok" and row.key != "heavy"}))
