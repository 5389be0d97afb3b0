"""Buttons typed by their words: those below one of the last messages that begin a conversation."""

from __future__ import annotations

from typing import Final

from companion.conversation.draft import Draft
from companion.conversation.kinds import Answer, Choice, Option, ReadingContext
from companion.conversation.prompt import read_start
from companion.language.phrases import label_key

LABEL_LONGEST: Final = 40
"""Most characters of a message that may be the label of a button; our choice."""


def labelled(draft: Draft, text: str) -> str:
    """Return the data of a button that begins a conversation below one of the last messages, if a text is its label; "" for none."""
    offered = draft.known.offered() if len(text) <= LABEL_LONGEST else {}
    said = (label_key(text).removesuffix(" please"), label_key(_taken_up(draft, text))) if offered else ()
    data = next((offered[one] for one in said if one in offered), "")
    return data if read_start(data) else ""


def _taken_up(draft: Draft, text: str) -> str:
    """Return the label of the button of the last message, an invitation, that a message is another word for; "" for none."""
    begun = next((one for data in draft.known.invited() if (one := read_start(data))), None)
    offers = draft.book[begun[0]].flow.invites if begun and begun[0] in draft.book.flows else ()
    read = Choice(tuple(Option(one.label, one.label, one.also) for one in offers)).read(text, ReadingContext(strict=True))
    return str(read.value) if isinstance(read, Answer) else ""
