"""Events of a conversation: those a person sends, and those the companion starts itself."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Typed:
    """A text message."""

    text: str


@dataclass(frozen=True, slots=True)
class Tapped:
    """A button; ``data`` is its payload as it came back, which anybody may have forged."""

    data: str


@dataclass(frozen=True, slots=True)
class Sent:
    """Something that is not text: photo, video, voice, audio, document, sticker, location, contact or other; with the
    words under it, if any."""

    kind: str
    ref: str = ""
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Edited:
    """A message changed after it was sent, with its new text."""

    text: str


@dataclass(frozen=True, slots=True)
class Invite:
    """A reminder is due: offer its flow, without disturbing what is going on. ``asked``: what the flow would be asked for;
    ``missed``: it came too late, and only that is said."""

    flow: str
    asked: str = ""
    missed: bool = False


@dataclass(frozen=True, slots=True)
class Settle:
    """The effects so far are kept: go on to where the conversation waits for the person again."""


Event = Typed | Tapped | Sent | Edited
Happening = Event | Invite | Settle


def words_in(event: Happening) -> str:
    """Return what a person wrote in an event: a text, a changed text or the words under a picture; "" where there is none."""
    match event:
        case Typed(text) | Edited(text) | Sent(caption=text):
            return text
    return ""
