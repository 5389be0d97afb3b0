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
        self.at = at
        self._sleepers: list[tuple[datetime, asyncio.Future[None]]] = []

    def now(self) -> datetime:
        """The time now."""
        return self.at

    async def sleep(self, seconds: float) -> None:
        """Come back once the time has been moved so many seconds on."""
        woken: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._sleepers.append((self.at + timedelta(seconds=seconds), woken))
        await woken

    async def advance(self, seconds: float) -> None:
        """Move on so many seconds, stopping wherever somebody wakes."""
        await settle()
        end = self.at + timedelta(seconds=seconds)
        while due := [one for one in self._sleepers if one[0] <= end and not one[1].done()]:
            first = min(due, key=lambda one: one[0])
            self._sleepers.remove(first)
            self.at = max(self.at, first[0])
            first[1].set_result(None)
            await settle()
        self._sleepers = [one for one in self._sleepers if not one[1].done()]
        self.at = end
        await settle()
