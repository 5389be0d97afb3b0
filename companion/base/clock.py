"""The only module that reads the time, and pure wall-clock arithmetic."""

from __future__ import annotations

import asyncio
import re
from collections.abc import Callable, Coroutine
from datetime import UTC, date, datetime, time, timedelta, timezone, tzinfo
from functools import cache
from time import monotonic
from typing import Any, Final, Protocol
from zoneinfo import ZoneInfo, available_timezones

_EPOCH: Final = datetime(1970, 1, 1, tzinfo=UTC)


class Clock(Protocol):
    """Reads the time and waits. Tests pass one they control."""

    def now(self) -> datetime:
        """Return the current time, timezone-aware, in UTC."""
        ...

    def monotonic(self) -> float:
        """Return seconds since some moment, unaffected by changes of the system clock."""
        ...

    async def sleep(self, seconds: float) -> None:
        """Wait for so many seconds."""
        ...


class SystemClock:
    """The operating system's clock."""

    def now(self) -> datetime:
        """Return the current time, timezone-aware, in UTC."""
        return datetime.now(UTC)

    def monotonic(self) -> float:
        """Return seconds since some moment, unaffected by changes of the system clock."""
        return monotonic()

    async def sleep(self, seconds: float) -> None:
        """Wait for so many seconds."""
        await asyncio.sleep(seconds)


async def first_of(*waits: Coroutine[Any, Any, object]) -> None:
    """Wait until one of them has ended, and cancel the others."""
    tasks = [asyncio.ensure_future(one) for one in waits]
    try:
        await asyncio.wait(tasks, return_when=asyncio.FIRST_COMPLETED)
    finally:
        for task in tasks:
            task.cancel()


JUMP: Final = timedelta(seconds=1)
"""Least change of the wall clock against the monotonic one that counts as a jump; our choice, above what network time slews between two
looks (500 ppm: 30 ms in a minute) and below what anybody would notice."""


class JumpWatch:
    """Notices when the wall clock is set. Small changes between two looks are slewing and add up to no jump."""

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._offset = self._measured()

    def moved(self) -> timedelta:
        """Return by how much the wall clock was set since the last look; zero where it was not."""
        before, self._offset = self._offset, self._measured()
        by = self._offset - before
        return by if abs(by) >= JUMP else timedelta()

    def _measured(self) -> timedelta:
        return self._clock.now() - _EPOCH - timedelta(seconds=self._clock.monotonic())


def stopwatch() -> Callable[[], float]:
    """Return a function giving the seconds since this call, unaffected by changes of the system clock."""
    began = monotonic()
    return lambda: monotonic() - began


_KEPT_OFFSET = re.compile(r"UTC([+-])(\d{2}):(\d{2})")


@cache
def zone_of(name: str) -> tzinfo:
    """Return the time zone for an IANA name or "UTC±hh:mm"; UTC for any other text."""
    offset = _KEPT_OFFSET.fullmatch(name)
    if offset:
        minutes = int(offset[2]) * 60 + int(offset[3])
        return timezone(timedelta(minutes=-minutes if offset[1] == "-" else minutes))
    return ZoneInfo(name) if name in available_timezones() else UTC


def local_date(moment: datetime, zone: str) -> date:
    """Return the local calendar date of a moment in a zone."""
    return moment.astimezone(zone_of(zone)).date()


def instant(day: date, at: time, zone: str) -> datetime:
    """Return the moment, in UTC, of a wall-clock time on a date.

    A time skipped by a clock change becomes the first that exists; a repeated one means its first occurrence.
    """
    there = zone_of(zone)
    first = datetime.combine(day, at, there)
    if first.astimezone(UTC).astimezone(there).replace(tzinfo=None) == first.replace(tzinfo=None):
        return first.astimezone(UTC)
    before = first.utcoffset()  # fold 0 in a gap: the offset before the change
    after = first.replace(fold=1).utcoffset()
    assert before is not None
    assert after is not None
    low, high = (first - (after - before)).astimezone(UTC), first.astimezone(UTC)
    while high - low > timedelta(seconds=1):  # bisect to the change itself: the first moment with the later offset
        middle = low + (high - low) / 2
        if middle.astimezone(there).utcoffset() == before:
            low = middle
        else:
            high = middle
    return high.replace(microsecond=0)
