"""Events of a conversation: messages from the person, and events the bot starts itself."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Typed:
    """A text message."""

    text: str


@dataclass(frozen=True, slots=True)
class Tapped:
    """A tapped button; ``data``: its payload, unchecked, as anybody can forge it."""

    data: str


@dataclass(frozen=True, slots=True)
class Sent:
    """A message that is not text: photo, video, voice, audio, document, sticker, location, contact or other; with its caption, if any."""

    kind: str
    ref: str = ""
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Edited:
    """A message changed after it was sent, with its new text."""

    text: str


@dataclass(frozen=True, slots=True)
class Invite:
    """A reminder is due: offer its flow without disturbing the current one. ``asked``: the request the flow would begin with; ``missed``:
    true if it came too late, which is then all that is said."""

    flow: str
    asked: str = ""
    missed: bool = False


@dataclass(frozen=True, slots=True)
class Settle:
    """The effects so far are stored: continue until the conversation waits for the person again."""


@dataclass(frozen=True, slots=True)
class FilmRead:
    """A film has been read. ``run`` and ``squat`` are those of its ``effects.ReadFilm``; ``outcome``: an answer of ``kinds.BeingRead``;
    ``numbers``: degrees by name, None for those it does not give; ``says``: the outcome in words; ``curve``:
    what its chart is drawn from, "" for none."""

    run: str
    squat: str
    outcome: str
    numbers: tuple[tuple[str, float | None], ...] = ()
    says: str = ""
    curve: str = ""


Event = Typed | Tapped | Sent | Edited
Happening = Event | Invite | Settle | FilmRead


def words_in(event: Happening) -> str:
    """Return what a person wrote in an event: a text, a changed text or the words under a picture; "" where there is none."""
    match event:
        case Typed(text) | Edited(text) | Sent(caption=text):
            return text
    return ""
