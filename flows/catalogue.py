"""The catalogue of flows: each module here holds one, as ``FLOW``. No registration is needed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from importlib import import_module
from pkgutil import iter_modules

import flows as here
from companion.conversation.cards import AnswerBook
from companion.conversation.catalogue import Catalogue, Consent
from companion.conversation.condition import fact
from companion.conversation.flow import Flow
from companion.conversation.registry import Book, Flows
from flows.consent import COACH_TEXT, CONSENT_AGAIN, DUE, LIFTER_TEXT
from flows.crisis import CRISIS


class FlowFiles(Mapping[str, Flow]):
    """The flows of this folder, by name. A file is imported on first use of its flow, all of them when they are counted or
    iterated; so the first message to a new person waits for two files only."""

    def __init__(self) -> None:
        self._files = sorted(file.name for file in iter_modules(here.__path__) if file.name != "catalogue")
        self._read: dict[str, Flow | None] = {}

    def __getitem__(self, name: str) -> Flow:
        if name not in self._read:
            self._read[name] = getattr(import_module(f"{here.__name__}.{name}"), "FLOW", None) if name in self._files else None
        if (flow := self._read[name]) is None:
            raise KeyError(name)
        return flow

    def __iter__(self) -> Iterator[str]:
        return (name for name in self._files if name in self)

    def __len__(self) -> int:
        return sum(1 for _ in self)


def flows() -> list[Flow]:
    """Return all flows, in the order of their names."""
    return list(FlowFiles().values())


@cache
def _answers() -> AnswerBook:
    from flows.frequent import ANSWERS

    return ANSWERS


COACH_WELCOME = "coach_welcome"
LINK = "link"
BOOK: Book = Book(Flows(FlowFiles()), home="home", pain="pain", link=LINK, signs="signs", crisis="crisis",
                  instead=((fact("crisis").is_("asked"), "crisis"), (CRISIS, "begin_again")), answers=_answers)
CATALOGUE = Catalogue(
    BOOK, tuple(Consent(flow, text.key, text.version) for flow, text in (("welcome", LIFTER_TEXT), (COACH_WELCOME, COACH_TEXT))),
    CONSENT_AGAIN, DUE, COACH_WELCOME)
"""The flows as the bot uses them, with the consent they need."""
