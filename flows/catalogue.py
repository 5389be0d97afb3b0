"""The catalogue: a flow is picked up by its file, a module here with a ``FLOW``. Nothing else has to name it."""

from __future__ import annotations

from dataclasses import dataclass
from importlib import import_module
from pkgutil import iter_modules

import flows as here
from companion.conversation.book import Book, bind
from companion.conversation.flow import Flow


def flows() -> list[Flow]:
    """All flows, by name."""
    modules = (import_module(f"{here.__name__}.{module.name}") for module in iter_modules(here.__path__)
               if module.name != "catalogue")
    return sorted((module.FLOW for module in modules if hasattr(module, "FLOW")), key=lambda flow: flow.name)


@dataclass(frozen=True, slots=True)
class Consent:
    """The question whose yes makes a stranger a person with rows of their own."""

    flow: str
    key: str
    version: int

    @property
    def payload(self) -> str:
        """How the payloads of its buttons begin."""
        return f"{self.flow}.{self.version}.{self.key}."


BOOK: Book = bind(flows(), home="home", pain="pain")
COACH_WELCOME = "coach_welcome"
LINK = "link"
CONSENTS = tuple(Consent(name, "consent", BOOK[name].flow.version) for name in ("welcome", COACH_WELCOME))
