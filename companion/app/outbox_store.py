"""The outbox of a companion as a channel's drainer sees it: what is kept in the file, and what is held in memory only."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from datetime import datetime

from companion.app.service import Companion
from companion.operate.counters import reason_class
from companion.port import Address, Outgoing
from companion.record import outbox, people
from companion.record.writer import reading


class CompanionOutbox:
    """The outbox of one channel, as its drainer wants it: each mark is committed before it returns. ``only``: one address
    of it, for a screen that belongs to one person. ``busy``: many are written to side by side, and marks may share commits."""

    def __init__(self, companion: Companion, channel: str, only: Address | None = None, busy: bool = False) -> None:
        self._companion, self._channel, self._only = companion, channel, only
        self._note = companion.writer.note if busy else companion.writer.do

    async def due(self, now: datetime) -> Sequence[Outgoing]:
        """Return the oldest waiting message of each address, what is held in memory first."""
        unkept = self._companion.unkept
        first: dict[Address, Outgoing] = {}
        for message in unkept.values():
            if self._mine(message):
                first.setdefault(message.address, message)
        with reading():
            kept = outbox.due(self._companion.db.conn, self._channel, now, self._only.id if self._only else None)
        return [*first.values(), *(message for message in kept if message.address not in first)]

    def _mine(self, message: Outgoing) -> bool:
        return message.address == self._only if self._only else message.address.channel == self._channel

    async def next_due(self, now: datetime) -> datetime | None:
        """Return the moment to look again; None where nothing waits."""
        if any(map(self._mine, self._companion.unkept.values())):
            return now
        with reading():
            return outbox.next_due(self._companion.db.conn, self._channel, now)

    async def mark_sent(self, id: int, at: datetime, message_id: str) -> None:
        """Note that a message arrived."""
        if self._companion.unkept.pop(id, None) is None:
            await self._note(lambda db: outbox.mark_sent(db, id, at, message_id))
        self._companion.watch.message_sent()

    async def mark_dropped(self, id: int, at: datetime, reason: str) -> None:
        """Note that a message is given up."""
        if self._companion.unkept.pop(id, None) is None:
            await self._companion.writer.do(lambda db: outbox.mark_dropped(db, id, at, reason))
        self._companion.watch.message_dropped(reason_class(reason))

    async def mark_tried(self, id: int, at: datetime) -> None:
        """Note that a try failed."""
        if id > 0:
            await self._companion.writer.do(lambda db: outbox.mark_tried(db, id, at))

    async def mark_gone(self, address: Address, at: datetime, reason: str) -> None:
        """Note that nobody is there any more: nothing more is sent until they write again."""
        unkept = [id for id, message in self._companion.unkept.items() if message.address == address]
        for id in unkept:
            del self._companion.unkept[id]

        def gone(db: sqlite3.Connection) -> int:
            people.mark_gone(db, address.channel, address.id, at, reason)
            return outbox.drop_for(db, address.channel, address.id, at, reason)
        self._companion.watch.message_dropped("gone", len(unkept) + await self._companion.writer.do(gone))
