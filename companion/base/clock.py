"""The only place that reads the time; and wall-clock arithmetic, which is pure."""

from __future__ import annotations

import asyncio
import re
from collections.abc import Callable
from datetime import UTC, date, datetime, time, timedelta, timezone, tzinfo
from functools import cache
from time import monotonic
from typing import Protocol
from zoneinfo import ZoneInfo, available_timezones


class Clock(Protocol):
    """The time, and waiting. Tests pass one whose time they set."""

    def now(self) -> datetime:
        """The time now, aware, in UTC."""
        ...

    async def sleep(self, seconds: float) -> None:
        """Come back after so many seconds."""
        ...


class SystemClock:
    """The machine's clock."""

    def now(self) -> datetime:
        return datetime.now(UTC)

    async def sleep(self, seconds: float) -> None:
        await asyncio.sleep(seconds)


def stopwatch() -> Callable[[], float]:
    """Seconds since this call, each time it is asked, whatever the clock is set to meanwhile."""
    began = monotonic()
    return lambda: monotonic() - began


_KEPT_OFFSET = re.compile(r"UTC([+-])(\d{2}):(\d{2})")


@cache
def zone_of(name: str) -> tzinfo:
    """The zone a kept name stands for: an IANA name or "UTC±hh:mm"; UTC where the name is neither."""
    offset = _KEPT_OFFSET.fullmatch(name)
    if offset:
        minutes = int(offset[2]) * 60 + int(offset[3])
        return timezone(timedelta(minutes=-minutes if offset[1] == "-" else minutes))
    return ZoneInfo(name) if name in available_timezones() else UTC


def local_date(moment: datetime, zone: str) -> date:
    """The calendar date of a moment where the person is."""
    return moment.astimezone(zone_of(zone)).date()


def instant(day: date, at: time, zone: str) -> datetime:
    """The moment, in UTC, of a wall-clock time on a date. A time that the clocks skip moves to the first that exists;
    one that comes twice means the first."""
    there = zone_of(zone)
    first = datetime.combine(day, at, there)
    if first.astimezone(UTC).astimezone(there).replace(tzinfo=None) == first.replace(tzinfo=None):
        return first.astimezone(UTC)
    before = first.utcoffset()  # fold 0 in a gap: the offset from before the change
    after = first.replace(fold=1).utcoffset()
    assert before is not None
    assert after is not None
    low, high = (first - (after - before)).astimezone(UTC), first.astimezone(UTC)
    while high - low > timedelta(seconds=1):  # find the change itself: the first moment with the later offset
        middle = low + (high - low) / 2
        if middle.astimezone(there).utcoffset() == before:
            low = middle
        else:
            high = middle
    return high.replace(microsecond=0)
