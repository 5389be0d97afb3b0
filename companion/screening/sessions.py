"""The readings of one test and side, session by session, each with the warm-up that came before it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final

from companion.screening.protocols import protocol
from companion.screening.readings import Reading
from companion.screening.screen import LoggedAnswer, in_order, runs_of

WARM_FOR: Final = timedelta(hours=6)  # how long before a test its warm-up may have been (choice)


@dataclass(frozen=True, slots=True)
class ReadingSession:
    """The repeats of one test on one side in one run of it, and when it began."""

    at: datetime
    readings: tuple[Reading, ...]


def sessions_of(answers: Iterable[LoggedAnswer], test: str, side: str) -> tuple[ReadingSession, ...]:
    """The sessions of a measured test on one side, the oldest first; runs that pain ended are left out.

    Nothing is left out for its method: readings taken in different ways are refused where they are compared.
    """
    log, readings_of = tuple(answers), protocol(test).readings
    assert readings_of is not None, f"{test} is not measured"
    taken = ((run.at, readings_of(run.record, side)) for run in runs_of(log, test))
    return tuple(ReadingSession(at, tuple(replace(reading, warm_up=_warm_up(log, at)) for reading in readings))
                 for at, readings in taken if readings)


def _warm_up(log: Sequence[LoggedAnswer], at: datetime) -> str:
    """What was done of the fixed warm-up before a moment, as its parts' names; "" where nothing is known of it."""
    before = [row for row in log if row.flow == "warm_up" and row.ending == "done" and at - WARM_FOR <= row.at <= at]
    if not before:
        return ""
    last = max(before, key=lambda row: (row.at, in_order(row.run))).run
    return " ".join(sorted({row.key for row in before
                            if row.run == last and row.status == "ok" and row.key != "heavy"}))
