"""The reading of a film, held back while turns are taken: both want the same caches and memory, and for a turn somebody waits."""

from __future__ import annotations

import asyncio
import os
import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from typing import Final

from companion.base.clock import Clock

SENDING: Final = 0.004
"""Seconds after a turn in which its message leaves (measured: half of them within 2 ms); choice."""
AT_ONCE: Final = 0.25
"""Seconds after which a film goes on, whatever is still being taken (choice)."""


class HeldBack:
    """Stops the processes that read a film during a turn and until its message has left, but in all never for longer than they have run:
    a flood makes a film take twice as long, and no more. They die with this process (``films.apart_and_last``), stopped or not."""

    def __init__(self, clock: Clock, send: Callable[[int, int], None] = os.killpg) -> None:
        """``send``: sends a group of processes a signal."""
        self._clock, self._send = clock, send
        self._group: int | None = None
        self._began = self._stopped = 0.0
        self._since: float | None = None
        self._turns = 0
        self._later: asyncio.TimerHandle | None = None

    @contextmanager
    def reading(self, group: int) -> Iterator[None]:
        """While this lasts, turns hold back a group of processes; after it, it has been let go on."""
        self._group, self._began, self._stopped = group, self._clock.monotonic(), 0.0
        try:
            yield
        finally:
            self._go_on()
            self._group = None

    @contextmanager
    def turn(self) -> Iterator[None]:
        """Hold back what reads a film while this lasts, and a moment longer."""
        self._turns += 1
        self._stop()
        try:
            yield
        finally:
            self._turns -= 1
            if self._since is not None and not self._turns:
                self._go_on_in(SENDING)

    def _stop(self) -> None:
        now = self._clock.monotonic()
        since = now if self._since is None else self._since
        if self._group is None or 2 * (self._stopped + now - since) >= now - self._began:
            return
        if self._since is None:
            try:
                self._send(self._group, signal.SIGSTOP)
            except ProcessLookupError:  # it has just ended
                return
        self._since = since
        self._go_on_in(max(0.0, since + AT_ONCE - now))

    def _go_on_in(self, seconds: float) -> None:
        if self._later is not None:
            self._later.cancel()
        self._later = asyncio.get_running_loop().call_later(seconds, self._go_on)

    def _go_on(self) -> None:
        if self._later is not None:
            self._later.cancel()
        if self._since is None or self._group is None:
            return
        self._stopped += self._clock.monotonic() - self._since
        self._since = None
        with suppress(ProcessLookupError):
            self._send(self._group, signal.SIGCONT)
