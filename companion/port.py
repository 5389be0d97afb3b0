"""What crosses the border between a channel and the rest: an inbound event, an outgoing message, what became of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple, Protocol

from companion.conversation.events import Edited, Event, Sent, Tapped, Typed

__all__ = [
    "Address", "Button", "Delivered", "Delivery", "Edited", "Event", "Gone", "Inbound", "Later", "Outgoing", "Post",
    "Refused", "Sent", "Store", "Take", "Tapped", "Typed", "Unreachable", "Unsure",
]


class Address(NamedTuple):
    """Where a person can be reached: ("telegram", "12345") or ("terminal", "sam")."""

    channel: str
    id: str


@dataclass(frozen=True, slots=True)
class Inbound:
    """One thing a person did. `update_id` is the channel's id of it (None where the channel has none); `name` is
    what the channel calls the person; `sent_at` when it was sent, where the channel says so."""

    address: Address
    event: Event
    update_id: int | None = None
    name: str = ""
    sent_at: datetime | None = None


class Button(NamedTuple):
    """A label, and at most 64 bytes that come back when it is tapped."""

    label: str
    data: str


class Outgoing(NamedTuple):
    """One message on its way. `id` is its place in the outbox; `buttons` are rows; `picture` names one;
    `document` is the text of a file that goes with it, called `document_name`; `must_arrive` means that twice is better than never;
    `attempt` counts the tries so far."""

    id: int
    address: Address
    text: str
    buttons: tuple[tuple[Button, ...], ...] = ()
    picture: str | None = None
    document: str | None = None
    must_arrive: bool = False
    attempt: int = 0
    document_name: str = ""


@dataclass(frozen=True, slots=True)
class Delivered:
    """It is there; the channel's own id of the message."""

    message_id: str


@dataclass(frozen=True, slots=True)
class Later:
    """The channel asks to wait so many seconds before this chat is written to again."""

    seconds: float


@dataclass(frozen=True, slots=True)
class Unsure:
    """No answer came in time: it may have been delivered."""

    reason: str


@dataclass(frozen=True, slots=True)
class Gone:
    """The person has blocked the bot or the chat does not exist; nothing will arrive until they write again."""

    reason: str


@dataclass(frozen=True, slots=True)
class Refused:
    """The channel will never take this message as it is."""

    reason: str


@dataclass(frozen=True, slots=True)
class Unreachable:
    """The channel could not be reached, so it was not delivered; try again."""

    reason: str


Delivery = Delivered | Later | Unsure | Gone | Refused | Unreachable


class Post(Protocol):
    """Carries one message out; every failure is an outcome, never an exception."""

    async def send(self, message: Outgoing) -> Delivery: ...


class Take(Protocol):
    """Takes one inbound event: returns once its turn is committed, or recorded as failed; never raises for one bad
    update."""

    async def __call__(self, inbound: Inbound) -> None: ...


class Store(Protocol):
    """The outbox as its drainer sees it. Each method commits before it returns."""

    async def due(self, now: datetime) -> Sequence[Outgoing]:
        """At most one message per address, the oldest unsent, and only if its not-before time has come."""
        ...

    async def mark_sent(self, id: int, at: datetime, message_id: str) -> None: ...

    async def mark_dropped(self, id: int, at: datetime, reason: str) -> None: ...

    async def mark_tried(self, id: int, at: datetime) -> None:
        """One more attempt was made; the message stays due."""
        ...

    async def mark_gone(self, address: Address, at: datetime, reason: str) -> None:
        """Drops what waits for this address and ends its reminders until the person writes again."""
        ...

    async def next_due(self, now: datetime) -> datetime | None:
        """When to look again: the moment at which the next message that is not due yet becomes due."""
        ...
