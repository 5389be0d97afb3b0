"""Types that cross the border between a channel and the rest: inbound events, outgoing messages and delivery outcomes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import IntEnum
from typing import NamedTuple, Protocol

from companion.conversation.effects import DESCRIBE as DESCRIBE
from companion.conversation.events import Edited, Event, Sent, Tapped, Typed

__all__ = [
    "Address", "Button", "Delivered", "Delivery", "Edited", "Event", "Gone", "Inbound", "Later", "Outgoing", "Post", "Rank",
    "Refused", "Sent", "Store", "Take", "Tapped", "Typed", "Unreachable", "Unsure",
]


class Address(NamedTuple):
    """A person's address on a channel: ("telegram", "12345") or ("terminal", "sam")."""

    channel: str
    id: str


@dataclass(frozen=True, slots=True)
class Inbound:
    """One event from a person. ``update_id``: the channel's id of the event, None where it has none; ``name``: the person's name on the
    channel; ``sent_at``: time of sending, None where the channel does not tell."""

    address: Address
    event: Event
    update_id: int | None = None
    name: str = ""
    sent_at: datetime | None = None


class Button(NamedTuple):
    """A button: its label, and the payload of at most 64 bytes that comes back when it is tapped."""

    label: str
    data: str


class Rank(IntEnum):
    """The class of a message: a lower one leaves first, fairly between chats within one class. Stored with the message."""

    PAIN = 0
    """Pain, a red flag, self-harm, an emergency: the answers of such a turn, and what a coach hears of it."""
    PAIN_OF_STRANGER = 1
    """The same, to somebody who has not given consent: after lifters, since anybody can be a stranger a thousand times."""
    MOVEMENT = 2
    """A question asked while the body is at work."""
    ANSWER = 3
    REMINDER = 4
    COURTESY = 5
    """The only class that may be dropped when it may have arrived."""
    STRANGER = 6


class Outgoing(NamedTuple):
    """One message in the outbox.

    ``id``: its outbox row; ``buttons``: rows of buttons; ``picture``: a picture's name; ``document``: text sent as a file named
    ``document_name``; ``attempt``: tries so far; ``rank``: its class.
    """

    id: int
    address: Address
    text: str
    buttons: tuple[tuple[Button, ...], ...] = ()
    picture: str | None = None
    document: str | None = None
    attempt: int = 0
    document_name: str = ""
    rank: Rank = Rank.ANSWER


@dataclass(frozen=True, slots=True)
class Delivered:
    """Delivered. ``message_id`` is the channel's own id."""

    message_id: str


@dataclass(frozen=True, slots=True)
class Later:
    """The channel asks for a pause of so many seconds in this chat."""

    seconds: float


@dataclass(frozen=True, slots=True)
class Unsure:
    """The request timed out: the message may have been delivered."""

    reason: str


@dataclass(frozen=True, slots=True)
class Gone:
    """The person blocked the bot or the chat does not exist; nothing arrives until they write again."""

    reason: str


@dataclass(frozen=True, slots=True)
class Refused:
    """The channel rejects this message for good."""

    reason: str


@dataclass(frozen=True, slots=True)
class Unreachable:
    """The channel could not be reached: not delivered, try again."""

    reason: str


Delivery = Delivered | Later | Unsure | Gone | Refused | Unreachable


class Post(Protocol):
    """Sends one message."""

    async def send(self, message: Outgoing) -> Delivery:
        """Send a message and return the outcome. A failure is an outcome too; it never raises."""
        ...


class Take(Protocol):
    """Handles one inbound event. Returns once its turn is committed or recorded as failed; a single bad update never raises."""

    async def __call__(self, inbound: Inbound) -> None: ...


class Store(Protocol):
    """The outbox as the drainer sees it. Each method commits before it returns."""

    async def due(self, now: datetime) -> Sequence[Outgoing]:
        """Return the next unsent message of each address whose not-before time has come, the best ranks first and then the oldest."""
        ...

    async def mark_sent(self, id: int, at: datetime, message_id: str) -> None:
        """Record a message as sent, with the channel's id of it."""
        ...

    async def mark_dropped(self, id: int, at: datetime, reason: str) -> None:
        """Give a message up, with the reason."""
        ...

    async def mark_tried(self, id: int, at: datetime) -> None:
        """Count one more attempt; the message stays due."""
        ...

    async def mark_gone(self, address: Address, at: datetime, reason: str) -> None:
        """Drop this address's waiting messages and stop its reminders until the person writes again."""
        ...

    async def next_due(self, now: datetime) -> datetime | None:
        """Return when the next message that is not due yet becomes due; None if there is none."""
        ...
