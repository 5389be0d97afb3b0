"""The readings of one test and side, session by session, each with the warm-up before it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final

from companion.screening.protocols import measured, protocol
from companion.screening.readings import SIDES, Reading
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
    readings_of = protocol(test).readings
    assert readings_of is not None, f"{test} is not measured"
    log = [row for row in answers if row.flow in (test, "warm_up")]  # once: a log of thousands is read for each session otherwise
    warm = [row for row in log if row.flow == "warm_up" and row.ending == "done"]
    taken = ((run.at, readings_of(run.record, side)) for run in runs_of(log, test))
    return tuple(ReadingSession(at, tuple(replace(reading, warm_up=_warm_up(warm, at)) for reading in readings))
                 for at, readings in taken if readings)


def all_sessions(answers: Iterable[LoggedAnswer]) -> dict[tuple[str, str], tuple[ReadingSession, ...]]:
    """Return the sessions of each measured test and side, the oldest first."""
    flows = {"warm_up", *(one.id for one in measured())}
    log = [row for row in answers if row.flow in flows]
    return {(one.id, side): sessions_of(log, one.id, side) for one in measured() for side in SIDES}


def _warm_up(warm: Sequence[LoggedAnswer], at: datetime) -> str:
    """Return the parts of the fixed warm-up done before a moment, as their names; "" if none is known."""
    before = [row for row in warm if at - WARM_FOR <= row.at <= at]
    if not before:
        return ""
    last = max(before, key=lambda row: (row.at, in_order(row.run))).run
    return " ".join(sorted({row.key for row in before
                            if row.run == last and row.status == "ok" and row.key != "heavy"}))
