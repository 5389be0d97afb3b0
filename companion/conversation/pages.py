"""At most three messages at once: short ones are joined, and what may wait is kept in the session and shown on "more"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import groupby
from typing import Final

from companion.conversation.asking import stand_again
from companion.conversation.draft import Draft
from companion.conversation.effects import Say, Tap
from companion.conversation.session import Page
from companion.conversation.wording import MOST_CHARACTERS, MOST_WORDS
from companion.language.phrases import normalise

AT_ONCE_MOST: Final = 3
"""Most messages at one moment after one reply; our choice."""
MORE_PAGES: Final = "more"
"""The payload of the button that shows what waits."""
MORE_WORDS: Final = frozenset((MORE_PAGES, "show more", "more please", "tell me more", "and more", "the rest", "show the rest"))


def few(said: Sequence[Say]) -> tuple[tuple[Say, ...], tuple[Say, ...]]:
    """Return the messages to send and those that wait: at each moment at most three where the rest may wait, of which the last asks."""
    sent: list[Say] = []
    held: list[Say] = []
    for _, moment in groupby(said, key=lambda one: one.after):
        now = list(moment)
        if len(now) > AT_ONCE_MOST:
            now = joined(now)
        if len(now) > AT_ONCE_MOST:
            pages = [one for one in now[:-1] if one.page]
            waits = pages[max(AT_ONCE_MOST - 1 - (len(now) - 1 - len(pages)), 0):]
            held += waits
            now = [one for one in now if not any(one is page for page in waits)]
        sent += now
    if held and sent:
        label = f"More ({len(held)})" if len(held) > 1 else "More"
        sent[-1] = replace(sent[-1], buttons=(*sent[-1].buttons, (Tap(label, MORE_PAGES),)))
    return tuple(sent), tuple(held)


def joined(said: Sequence[Say]) -> list[Say]:
    """Return messages with neighbours joined where they have neither buttons nor pictures and fit one message; the last stays alone."""
    out: list[Say] = []
    for one in said[:-1]:
        before = out[-1] if out else None
        plain = before is not None and not (before.buttons or before.picture or one.buttons or one.picture)
        both = f"{before.text}\n\n{one.text}" if before is not None else ""
        if before is not None and plain and before.page == one.page and len(both) <= MOST_CHARACTERS and len(both.split()) <= MOST_WORDS:
            out[-1] = replace(before, text=both, must_arrive=before.must_arrive or one.must_arrive)
        else:
            out.append(one)
    return [*out, *said[-1:]]


def kept(held: Sequence[Say]) -> tuple[Page, ...]:
    """Return what waits as the session keeps it."""
    return tuple(Page(one.text, one.picture, one.buttons) for one in held)


def asks_for_more(draft: Draft, text: str) -> bool:
    """True if a message asks for what waits."""
    return bool(draft.session.more) and not draft.session.aside and normalise(text).strip(" .!?") in MORE_WORDS


def show_more(draft: Draft) -> None:
    """Show what waits; the open question stands again after it."""
    pages = draft.session.more
    draft.session = draft.session._replace(more=())
    draft.effects.extend(Say(one.text, one.buttons, one.picture, page=True) for one in pages)
    if not pages:
        draft.say("That was all.")
    if draft.session.stack and draft.top.state in draft.compiled.stops:
        stand_again(draft, "")
