"""The catalogue: a flow is picked up by its file, a module here with a ``FLOW`` of its name. Nothing else has to name it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import import_module
from pkgutil import iter_modules

import flows as here
from companion.conversation.catalogue import Catalogue, Consent
from companion.conversation.flow import Flow
from companion.conversation.registry import Book, Flows
from flows.consent import COACH_TEXT, CONSENT_AGAIN, DUE, LIFTER_TEXT


class FlowFiles(Mapping[str, Flow]):
    """The flows of this folder, by name. A file is imported when its flow is first asked for, all of them when they are counted or
    looked through; so the first words to a stranger wait for the two files they stand in only."""

    def __init__(self) -> None:
        self._files = sorted(file.name for file in iter_modules(here.__path__) if file.name != "catalogue")

    def __getitem__(self, name: str) -> Flow:
        flow: Flow | None = getattr(import_module(f"{here.__name__}.{name}"), "FLOW", None) if name in self._files else None
        if flow is None:
            raise KeyError(name)
        return flow

    def __iter__(self) -> Iterator[str]:
        return (name for name in self._files if name in self)

    def __len__(self) -> int:
        return sum(1 for _ in self)


def flows() -> list[Flow]:
    """All flows, by name."""
    return list(FlowFiles().values())


COACH_WELCOME = "coach_welcome"
LINK = "link"
BOOK: Book = Book(Flows(FlowFiles()), home="home", pain="pain", link=LINK)
CATALOGUE = Catalogue(
    BOOK, tuple(Consent(flow, text.key, text.version) for flow, text in (("welcome", LIFTER_TEXT), (COACH_WELCOME, COACH_TEXT))),
    CONSENT_AGAIN, DUE, COACH_WELCOME)
"""All that the bot needs to know of the flows."""
