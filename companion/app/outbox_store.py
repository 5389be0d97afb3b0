"""The outbox as a channel's drainer sees it: messages in the database and those held in memory."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from datetime import datetime

from companion.app.service import Companion
from companion.operate.counters import reason_class
from companion.port import Address, Outgoing
from companion.record import outbox, owed, people
from companion.record.writer import reading


class CompanionOutbox:
    """The outbox of one channel for its drainer; each mark is committed before the call returns. ``only``: a single address, for a
    terminal; ``busy``: marks wait a few milliseconds to share commits, as many messages are sent at once."""

    def __init__(self, companion: Companion, channel: str, only: Address | None = None, busy: bool = False) -> None:
        self._companion, self._channel, self._only = companion, channel, only
        self._note = companion.writer.note if busy else companion.writer.do

    async def due(self, now: datetime) -> Sequence[Outgoing]:
        """Return the next due message of each address, by rank; those in memory before those of the same rank in the database. A
        clock that was set is followed first."""
        await self._companion.follow_clock()
        held = self._companion.unsaved.heads(self._channel, outbox.MOST_AT_ONCE, self._only)
        there = {message.address for message in held}
        with reading():
            kept = outbox.due(self._companion.db.conn, self._channel, now, self._only.id if self._only else None)
        return sorted([*held, *(message for message in kept if message.address not in there)], key=lambda one: one.rank)

    async def next_due(self, now: datetime) -> datetime | None:
        """Return the time of the next message; None where there is none."""
        if self._companion.unsaved.heads(self._channel, 1, self._only):
            return now
        with reading():
            return outbox.next_due(self._companion.db.conn, self._channel, now)

    async def mark_sent(self, id: int, at: datetime, message_id: str) -> None:
        """Mark a message as sent; ``message_id``: the channel's own."""
        if id > 0:
            await self._note(lambda db: outbox.mark_sent(db, id, at, message_id))
        else:
            await self._settled(id)
        self._companion.watch.message_sent()

    async def mark_dropped(self, id: int, at: datetime, reason: str) -> None:
        """Mark a message as dropped, with the reason."""
        if id > 0:
            await self._companion.writer.do(lambda db: outbox.mark_dropped(db, id, at, reason))
        else:
            await self._settled(id)
        self._companion.watch.message_dropped(reason_class(reason))

    async def _settled(self, id: int) -> None:
        """Remove a message from memory; with the last to its address goes the note that something is owed."""
        where = self._companion.unsaved.pop(id)
        if where is not None and self._companion.unsaved.to(where):
            await self._note(lambda db: owed.go_on(db, *where, self._companion.clock.now()))
        elif where is not None:
            kind = await self._note(lambda db: owed.settle(db, *where))
            self._companion.erased = self._companion.erased or kind == owed.OWES_ERASED  # the chat of who was erased is the last of them

    async def mark_tried(self, id: int, at: datetime) -> None:
        """Count a failed attempt."""
        if id > 0:
            await self._companion.writer.do(lambda db: outbox.mark_tried(db, id, at))

    async def mark_gone(self, address: Address, at: datetime, reason: str) -> None:
        """Mark an address as unreachable and drop its messages; nothing is sent until the person writes again."""
        unkept = self._companion.unsaved.drop(address)

        def gone(db: sqlite3.Connection) -> int:
            """Mark and drop in one transaction; returns the number of messages dropped."""
            owed.settle(db, *address)
            people.mark_gone(db, address.channel, address.id, at, reason)
            return outbox.drop_for(db, address.channel, address.id, at, reason)
        self._companion.watch.message_dropped("gone", unkept + await self._companion.writer.do(gone))
