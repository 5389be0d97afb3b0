"""The catalogue: a flow is picked up by its file, a module here with a ``FLOW`` of its name. Nothing else has to name it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib import import_module
from pkgutil import iter_modules

import flows as here
from companion.conversation.condition import Condition
from companion.conversation.flow import Flow
from companion.conversation.registry import Book, Flows
from flows.consent import AGAIN, COACH, DUE, LIFTER, Text


class Written(Mapping[str, Flow]):
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
    return list(Written().values())


@dataclass(frozen=True, slots=True)
class Consent:
    """The question whose yes makes a stranger a person with rows of their own."""

    flow: str
    text: Text

    @property
    def key(self) -> str:
        """What its answer is called in the log."""
        return self.text.key

    @property
    def payload(self) -> str:
        """How the payloads of its buttons begin."""
        return f"{self.flow}.{BOOK[self.flow].flow.version}.{self.key}."

    @property
    def version(self) -> int:
        """That of its text."""
        return self.text.version


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All that the bot needs to know of the flows (``companion.conversation.catalogue``)."""

    book: Book
    consents: tuple[Consent, ...]
    consent_again: str
    consent_due: Condition
    coach_welcome: str


COACH_WELCOME = "coach_welcome"
LINK = "link"
BOOK: Book = Book(Flows(Written()), home="home", pain="pain", link=LINK)
CATALOGUE = Catalogue(BOOK, (Consent("welcome", LIFTER), Consent(COACH_WELCOME, COACH)), AGAIN, DUE, COACH_WELCOME)
