"""Status marks the running bot stores in its file, to show later when it was last well."""

from __future__ import annotations

import asyncio
import contextlib
import sqlite3
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from companion.base.clock import Clock
from companion.operate.counters import Counters
from companion.record.status import set_mark
from companion.record.timestamps import moment_of
from companion.record.writer import CommitFailed, Writer

POLL: Final = "poll.good"
"""Name of the mark for the last answered poll; its value means nothing."""

OFFSET: Final = "clock.offset"
"""Name of the mark for the seconds by which Telegram's clock is ahead of ours."""

EVERY: Final = timedelta(minutes=1)
"""Least time between marks, so that an idle bot writes little: our choice."""

POLL_LATE: Final = timedelta(minutes=5)
"""Time without a good poll after which the bot counts as unwell: our choice; a poll is answered within 25 s, and marked once a minute."""

UNSENT_LATE: Final = timedelta(minutes=10)
"""Time after which a message that is due and not sent is told of: our choice; an hour's outage is then seen, a busy minute is not."""

PAIN_LATE: Final = timedelta(seconds=30)
"""The same for an answer to pain, which leaves within two seconds unless something is wrong: our choice, above the longest wait between
two tries."""

HALF_SECOND: Final = timedelta(seconds=0.5)
"""Added to an HTTP date, which is cut to whole seconds: the error is then at most half a second."""


@dataclass(frozen=True, slots=True)
class StatusMark:
    """A status value and when it was stored."""

    value: float | str
    at: datetime


def marks_of(db: sqlite3.Connection) -> Mapping[str, StatusMark]:
    """Return every mark by name; empty if the file is too old to have them."""
    if db.execute("select 1 from sqlite_master where type = 'table' and name = 'marks'").fetchone() is None:
        return {}
    return {name: StatusMark(value, moment_of(at)) for name, value, at in db.execute("select name, value, at from marks")}


class Heartbeat:
    """Stores a mark at good polls, at most one a minute, without delaying the poll."""

    def __init__(self, writer: Writer, clock: Clock, watch: Counters) -> None:
        self._writer, self._clock, self._watch = writer, clock, watch
        self._at: datetime | None = None
        self._noting: asyncio.Task[None] | None = None

    def polled(self, theirs: datetime | None) -> None:
        """Note an answered poll; ``theirs`` is the response's date, to the second."""
        now = self._clock.now()
        self._watch.polled()
        soon = self._at is not None and timedelta(0) <= now - self._at < EVERY
        if soon or (self._noting is not None and not self._noting.done()):
            return
        self._at = now
        self._noting = asyncio.get_running_loop().create_task(self._note(now, theirs))

    async def _note(self, now: datetime, theirs: datetime | None) -> None:
        def both(db: sqlite3.Connection) -> None:
            """Store the poll and clock marks."""
            set_mark(db, POLL, 1.0, now)
            if theirs is not None:
                set_mark(db, OFFSET, (theirs + HALF_SECOND - now).total_seconds(), now)
        with contextlib.suppress(CommitFailed):  # the writer itself stops the bot for that
            await self._writer.do(both)
