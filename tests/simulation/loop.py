"""An event loop in which no time passes but that waited for, and a clock on it whose wall time can be set."""

from __future__ import annotations

import asyncio
import selectors
from datetime import datetime, timedelta


class _Selector(selectors.DefaultSelector):  # type: ignore[valid-type, misc]
    """Waits for nothing: the loop's time moves on instead."""

    loop: VirtualLoop

    def select(self, timeout: float | None = None) -> list[tuple[selectors.SelectorKey, int]]:
        events = super().select(0)
        if not events:
            if timeout is None:
                raise RuntimeError("nothing will ever happen again")
            self.loop.passed += max(0.0, timeout)
        return events


class VirtualLoop(asyncio.SelectorEventLoop):
    """Runs everything at once; sleeping costs nothing."""

    def __init__(self) -> None:
        self.passed = 0.0
        selector = _Selector()
        selector.loop = self
        super().__init__(selector)

    def time(self) -> float:
        return self.passed


class SetClock:
    """The clock of the simulated machine."""

    def __init__(self, loop: VirtualLoop, begins: datetime) -> None:
        self._loop, self._begins, self.offset = loop, begins, timedelta()

    def now(self) -> datetime:
        return self._begins + timedelta(seconds=self._loop.passed) + self.offset

    def monotonic(self) -> float:
        return self._loop.passed

    async def sleep(self, seconds: float) -> None:
        await asyncio.sleep(seconds)
