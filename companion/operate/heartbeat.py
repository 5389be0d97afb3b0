"""Marks the running bot leaves in its file, so that somebody who looks later knows when it was last well."""

from __future__ import annotations

import asyncio
import contextlib
import sqlite3
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from companion.base.clock import Clock
from companion.operate.counters import Watch
from companion.record.status import note
from companion.record.timestamps import moment_of
from companion.record.writer import CommitFailed, Writer

POLL: Final = "poll.good"
"""When a poll was last answered; its value says nothing."""

OFFSET: Final = "clock.offset"
"""Seconds by which the chat's clock is ahead of ours."""

EVERY: Final = timedelta(minutes=1)
"""At most one mark a minute, so that a quiet bot writes little: our choice."""

POLL_LATE: Final = timedelta(minutes=5)
"""After so long without a good poll the bot is not well: our choice; a poll is answered within 25 s, and marked once a
minute."""

HALF_SECOND: Final = timedelta(seconds=0.5)
"""An HTTP date is cut to whole seconds, so half of one is added: what is left is at most half a second wrong."""


@dataclass(frozen=True, slots=True)
class Mark:
    """One thing that was so at a moment."""

    value: float | str
    at: datetime


def marks_of(db: sqlite3.Connection) -> Mapping[str, Mark]:
    """Every mark by its name; none in a file too old for them."""
    if db.execute("select 1 from sqlite_master where type = 'table' and name = 'marks'").fetchone() is None:
        return {}
    return {name: Mark(value, moment_of(at)) for name, value, at in db.execute("select name, value, at from marks")}


class Beat:
    """Told of every good poll; marks one a minute, without keeping the poll waiting."""

    def __init__(self, writer: Writer, clock: Clock, watch: Watch) -> None:
        self._writer, self._clock, self._watch = writer, clock, watch
        self._at: datetime | None = None
        self._noting: asyncio.Task[None] | None = None

    def polled(self, theirs: datetime | None) -> None:
        """A poll was answered just now; ``theirs`` is the date in the answer's head, to the second."""
        now = self._clock.now()
        self._watch.polled(now)
        soon = self._at is not None and timedelta(0) <= now - self._at < EVERY
        if soon or (self._noting is not None and not self._noting.done()):
            return
        self._at = now
        self._noting = asyncio.get_running_loop().create_task(self._note(now, theirs))

    async def _note(self, now: datetime, theirs: datetime | None) -> None:
        def both(db: sqlite3.Connection) -> None:
            note(db, POLL, 1.0, now)
            if theirs is not None:
                note(db, OFFSET, (theirs + HALF_SECOND - now).total_seconds(), now)
        with contextlib.suppress(CommitFailed):  # the writer itself ends the bot for that
            await self._writer.do(both)
