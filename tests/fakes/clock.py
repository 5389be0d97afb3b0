"""A clock that stands still until a test moves it."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime, timedelta

START = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)


async def settle(turns: int = 30) -> None:
    """Let everything that can run without waiting run."""
    for _ in range(turns):
        await asyncio.sleep(0)


class FakeClock:
    """The time a test sets; who sleeps wakes when the time is moved past."""

    def __init__(self, at: datetime = START) -> None:
        self.at = self._then = at
        self._passed = 0.0
        self._sleepers: list[tuple[float, asyncio.Future[None]]] = []

    def now(self) -> datetime:
        """The time now."""
        return self.at

    def monotonic(self) -> float:
        """The seconds that have passed, whatever the clock was set to."""
        return self._passed + (self.at - self._then).total_seconds()

    def jump(self, by: timedelta) -> None:
        """Set the clock: no time passes."""
        self._passed, self._then = self.monotonic(), self.at + by
        self.at += by

    async def sleep(self, seconds: float) -> None:
        """Come back once the time has been moved so many seconds on."""
        woken: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._sleepers.append((self.monotonic() + seconds, woken))
        await woken

    async def advance(self, seconds: float) -> None:
        """Move on so many seconds, stopping wherever somebody wakes."""
        await settle()
        end = self.monotonic() + seconds
        while due := [one for one in self._sleepers if one[0] <= end and not one[1].done()]:
            first = min(due, key=lambda one: one[0])
            self._sleepers.remove(first)
            self._pass_until(first[0])
            first[1].set_result(None)
            await settle()
        self._sleepers = [one for one in self._sleepers if not one[1].done()]
        self._pass_until(end)
        await settle()

    def _pass_until(self, moment: float) -> None:
        passed = self.monotonic()
        if moment > passed:
            self.at += timedelta(seconds=moment - passed)
            self._passed, self._then = moment, self.at
