"""The rate limit: messages beyond it are dropped with one warning; pain and stop always pass."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import Enum
from typing import Final

from companion.conversation.prompt import STOP
from companion.language.flags import hear_flags
from companion.language.pain import Pain, hear_pain
from companion.language.phrases import Phrase, hear
from companion.port import Address, Edited, Event, Inbound, Sent, Tapped, Typed

WINDOW: Final = timedelta(minutes=1)
"""Time after which a count starts again; our choice."""

ACCEPTED_MOST: Final = 40
"""Messages accepted per address in a window; our choice. Answering a questionnaire by taps as fast as it can be read stays below."""

COUNTED_MOST: Final = 10_000
"""Addresses counted at once; beyond it the oldest count is forgotten. Our choice."""

SLOW_DOWN: Final = "That's a lot at once. I'll pause for a minute. If something hurts, say so; I always read that."


class Admission(Enum):
    """The decision on a message: accepted, dropped with a warning, or dropped."""

    ACCEPT = "accept"
    WARN = "warn"
    DROP = "drop"


@dataclass(frozen=True, slots=True)
class MessageCount:
    """The number of messages an address has sent since the start of its window."""

    since: datetime
    sent: int


def counted(before: MessageCount | None, at: datetime) -> MessageCount:
    """Return the count with one message more, or a new count where the window is over or the clock went back."""
    if before is None or not before.since <= at < before.since + WINDOW:
        return MessageCount(at, 1)
    return MessageCount(before.since, before.sent + 1)


def admission_of(count: MessageCount) -> Admission:
    """Return the decision on the latest message of a count."""
    if count.sent <= ACCEPTED_MOST:
        return Admission.ACCEPT
    return Admission.WARN if count.sent == ACCEPTED_MOST + 1 else Admission.DROP


def always_heard(event: Event) -> Pain | Phrase | None:
    """Return Pain.YES for a message that clearly reports pain or another sign, Phrase.STOP for a stop; None otherwise."""
    match event:
        case Tapped(data):
            return Phrase.STOP if data.rpartition(".")[2] == STOP else None
        case Typed(text) | Edited(text) | Sent(caption=text):
            if hear_pain(text) is Pain.YES or any(one.sure for one in hear_flags(text, weigh=False)):
                return Pain.YES
            return Phrase.STOP if hear(text, strict=True) is Phrase.STOP else None


class RateLimit:
    """Message counts per address, in memory only. Messages that waited while the bot was down count at the time they were sent."""

    def __init__(self) -> None:
        self._counts: OrderedDict[Address, MessageCount] = OrderedDict()

    def admit(self, inbound: Inbound, now: datetime) -> Admission:
        """Count a message and return the decision. Pain starts a new count, so that the questions about it can be answered."""
        waited = inbound.sent_at is not None and inbound.sent_at < now - WINDOW
        before, at = self._counts.get(inbound.address), inbound.sent_at if waited and inbound.sent_at is not None else now
        count = counted(before, at)
        admission = admission_of(count)
        if admission is not Admission.ACCEPT and (heard := always_heard(inbound.event)):
            admission = Admission.ACCEPT
            count = before if before is not None and heard is not Pain.YES else MessageCount(at, 1)
        if count.sent == 1:
            self._counts.pop(inbound.address, None)
        self._counts[inbound.address] = count
        if len(self._counts) > COUNTED_MOST:
            self._counts.popitem(last=False)
        return admission
