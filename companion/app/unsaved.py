"""Messages held in memory only: to people who have not given consent, or were erased."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from itertools import islice

from companion.conversation.effects import Say
from companion.port import Address, Outgoing, Rank
from companion.record import outbox


class UnsavedMessages:
    """Messages by rank and address, each address's in order. Their numbers are below zero: never the number of a row."""

    def __init__(self) -> None:
        self._lines: defaultdict[Rank, dict[Address, list[Outgoing]]] = defaultdict(dict)
        self._where: dict[int, tuple[Rank, Address]] = {}
        self._count = 0

    def put(self, to: Address, said: Iterable[Say], rank: Rank) -> None:
        """Add messages to an address. One that waits already is said once, the later time."""
        for say in said:
            self._count -= 1
            message = outbox.unsaved(self._count, to, say, rank)
            line = self._lines[rank].setdefault(to, [])
            for same in [one for one in line if (one.text, one.buttons) == (message.text, message.buttons)]:
                self.pop(same.id)
            self._lines[rank].setdefault(to, []).append(message)
            self._where[message.id] = rank, to

    def heads(self, channel: str, most: int, only: Address | None = None) -> list[Outgoing]:
        """Return the next message of each address, the best ranks first, ``most`` of each rank."""
        first: dict[Address, Outgoing] = {}
        for rank in sorted(self._lines):
            there = self._lines[rank]
            mine = ((only, there[only]),) if only in there else () if only else (
                islice((one for one in there.items() if one[0].channel == channel), most))
            for address, line in mine:
                first.setdefault(address, line[0])
        return list(first.values())

    def to(self, address: Address) -> Sequence[Outgoing]:
        """Return what waits for an address."""
        return [one for line in self._lines.values() for one in line.get(address, ())]

    def drop(self, address: Address) -> int:
        """Remove all that waits for an address; returns the count."""
        there = self.to(address)
        for message in there:
            self.pop(message.id)
        return len(there)

    def __len__(self) -> int:
        return len(self._where)

    def pop(self, id: int) -> Address | None:
        """Remove a message; returns where it was to go, None where it is not here."""
        place = self._where.pop(id, None)
        if place is None:
            return None
        rank, address = place
        line = [one for one in self._lines[rank][address] if one.id != id]
        if line:
            self._lines[rank][address] = line
        else:
            del self._lines[rank][address]
        return address
