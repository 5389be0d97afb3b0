"""The rate limit: who sends very much at once is slowed and told so once; pain and stop are always heard."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import Enum
from typing import Final

from companion.conversation.prompt import STOP
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import Phrase, hear
from companion.port import Address, Edited, Event, Inbound, Sent, Tapped, Typed

WITHIN: Final = timedelta(minutes=1)
"""Time for which messages are counted before the count begins anew; our choice."""

TAKEN_MOST: Final = 40
"""Messages of one person taken within that time: our choice. A questionnaire answered by taps as fast as they can be read
stays below it."""

COUNTED_MOST: Final = 10_000
"""Addresses counted at a time; the one counted longest is forgotten first. Our choice."""

SLOWER: Final = "That's a lot at once. I'll pause for a minute. If something hurts, say so; I always read that."


class Pace(Enum):
    """The fate of a message: taken; not taken and told so; not taken."""

    TAKE = "take"
    TELL = "tell"
    HUSH = "hush"


@dataclass(frozen=True, slots=True)
class Count:
    """The number of messages an address has sent since a moment."""

    since: datetime
    sent: int


def counted(before: Count | None, at: datetime) -> Count:
    """The count with one message more, or a new one where the time is over or the clock went back."""
    if before is None or not before.since <= at < before.since + WITHIN:
        return Count(at, 1)
    return Count(before.since, before.sent + 1)


def pace_of(count: Count) -> Pace:
    """Return the fate of the latest message of a count."""
    if count.sent <= TAKEN_MOST:
        return Pace.TAKE
    return Pace.TELL if count.sent == TAKEN_MOST + 1 else Pace.HUSH


def always_heard(event: Event) -> Pain | Phrase | None:
    """Pain where a message speaks of it for certain, STOP where it says stop; None for all else."""
    match event:
        case Tapped(data):
            return Phrase.STOP if data.rpartition(".")[2] == STOP else None
        case Typed(text) | Edited(text) | Sent(caption=text):
            return Pain.YES if hear_pain(text) is Pain.YES else Phrase.STOP if hear(text, strict=True) is Phrase.STOP else None


class Flood:
    """The counts of those who write, in memory only. What waited while the bot was away is judged by when it was sent."""

    def __init__(self) -> None:
        self._counts: OrderedDict[Address, Count] = OrderedDict()

    def meet(self, inbound: Inbound, now: datetime) -> Pace:
        """Count a message; what becomes of it. Pain begins a new count, so that the questions about it can be answered."""
        waited = inbound.sent_at is not None and inbound.sent_at < now - WITHIN
        before, at = self._counts.get(inbound.address), inbound.sent_at if waited and inbound.sent_at is not None else now
        count = counted(before, at)
        pace = pace_of(count)
        if pace is not Pace.TAKE and (heard := always_heard(inbound.event)):
            pace = Pace.TAKE
            count = before if before is not None and heard is not Pain.YES else Count(at, 1)
        if count.sent == 1:
            self._counts.pop(inbound.address, None)
        self._counts[inbound.address] = count
        if len(self._counts) > COUNTED_MOST:
            self._counts.popitem(last=False)
        return pace
