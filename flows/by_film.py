"""A film with cards within a test: sent, read beside the turn, and sent again where something is to mend."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from companion.conversation.condition import ALWAYS, Condition, Fact, Value, fact
from companion.conversation.effects import FilmOf, ReadFilm
from companion.conversation.flow import Ask, Do, Jump, Known, Step, Tell
from companion.conversation.kinds import BeingRead, Film, Option

FILMS_READ: Final = fact("films").is_("yes")
WAIT: Final = "I am reading it: some seconds, a long film a minute. Nothing to tap."
BY_CARDS: Final = Option("film", "Film or photo, with a card", (
    "film with a card", "photo", "photo with a card", "card", "cards", "film it", "video"), only_if=FILMS_READ)
"""The way of measuring that is offered only where films can be read."""

READ_SAYS: Final[Mapping[str, Value]] = {f"{side}_film_says": "That is read." for side in ("left", "right")}
"""What the flow begins with, in place of words for films not read yet."""


def films_unread(known: Known) -> dict[str, Value]:
    """Return words for films not read yet."""
    return dict(READ_SAYS)


def reading(film: str, what: FilmOf, *then: Jump, picture: str = "") -> tuple[Step, ...]:
    """Return the steps that read a film once it was sent, and tell its outcome; with a picture where it could be read."""
    sent, read = fact(f"{film}_video").known, fact(f"{film}_reading")
    return (Do(ReadFilm(f"{{{film}_video}}", film, what=what), sent),
            Ask(f"{film}_reading", WAIT, BeingRead(), only_if=sent, then=then),
            *((Tell(f"{{{film}_says}}", sent & read.one_of("onset", "none"), picture=picture),
               Tell(f"{{{film}_says}}", sent & read.is_("mend"))) if picture else (Tell(f"{{{film}_says}}", sent & read.known),)))


def side_film(say: str, what: FilmOf, side: str, only_if: Condition = ALWAYS,
              caution: str = "", picture: str = "") -> tuple[Step, ...]:
    """Return the film of one side: where it can't be read it is asked for again, until it is sent well or skipped."""
    film = f"{side}_film"
    return (Ask(f"{film}_video", f"{say} Not now? Tap Skip.", Film(("video", "photo", "document")), only_if=only_if, caution=caution,
                picture=picture),
            *reading(film, what, Jump(fact(f"{film}_reading").is_("mend"), f"{film}_video", f"{{{film}_says}}")))


def turns(most: float) -> tuple[Fact, ...]:
    """Return the degrees that a film may give, of up to three tries a side, or of one photo."""
    return tuple(Fact(f"{side}_film_{n}", 0, most, step=.1) for side in ("left", "right") for n in (1, 2, 3, "photo"))
