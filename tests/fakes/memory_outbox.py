"""An outbox in memory, as its drainer sees one."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from companion.port import Address, Button, Outgoing, Rank
from tests.fakes.clock import START


class MemoryOutbox:
    """Messages in the order they were put."""

    def __init__(self) -> None:
        self.waiting: list[tuple[datetime, Outgoing]] = []
        self.sent: dict[int, str] = {}
        self.dropped: dict[int, str] = {}
        self.tried: list[int] = []
        self.gone: dict[Address, str] = {}
        self.looks = 0
        self.broken: Exception | None = None
        self._count = 0

    def put(self, chat: int, text: str = "hello", at: datetime = START, rank: Rank = Rank.ANSWER,
            buttons: tuple[tuple[Button, ...], ...] = (), document: str | None = None,
            picture: str | None = None) -> int:
        """Put a message; gives its id."""
        self._count += 1
        message = Outgoing(self._count, Address("telegram", str(chat)), text, buttons, picture, document, rank=rank)
        self.waiting.append((at, message))
        return self._count

    async def due(self, now: datetime) -> Sequence[Outgoing]:
        """The oldest of each address, if its time has come."""
        self.looks += 1
        oldest: dict[Address, tuple[datetime, Outgoing]] = {}
        for at, message in self.waiting:
            oldest.setdefault(message.address, (at, message))
        return [message for at, message in oldest.values() if at <= now]

    async def next_due(self, now: datetime) -> datetime | None:
        """The earliest moment after now."""
        return min((at for at, _ in self.waiting if at > now), default=None)

    async def mark_sent(self, id: int, at: datetime, message_id: str) -> None:
        """It arrived."""
        self._take(id)
        self.sent[id] = message_id

    async def mark_dropped(self, id: int, at: datetime, reason: str) -> None:
        """It is given up."""
        self._take(id)
        self.dropped[id] = reason

    async def mark_tried(self, id: int, at: datetime) -> None:
        """One more try."""
        self.tried.append(id)
        self.waiting = [(due, one._replace(attempt=one.attempt + 1) if one.id == id else one)
                        for due, one in self.waiting]

    async def mark_gone(self, address: Address, at: datetime, reason: str) -> None:
        """Nobody is there."""
        self.gone[address] = reason
        self.waiting = [one for one in self.waiting if one[1].address != address]

    def _take(self, id: int) -> None:
        if self.broken:
            raise self.broken
        self.waiting = [one for one in self.waiting if one[1].id != id]
