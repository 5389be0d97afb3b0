"""The catalogue: the flows of a bot and the roles of some of them."""

from __future__ import annotations

from dataclasses import dataclass

from companion.conversation.condition import Condition
from companion.conversation.registry import Book


@dataclass(frozen=True, slots=True)
class Consent:
    """A consent question. ``flow``: the flow that asks it; ``key``: the name of its answer in the log; ``version``: of its text."""

    flow: str
    key: str
    version: int


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All flows, with the questions of consent. ``consent_again``: the flow that asks for consent again, when ``consent_due`` holds;
    ``coach_welcome``: the flow for a new person who comes with a code for a coach."""

    book: Book
    consents: tuple[Consent, ...]
    consent_again: str
    consent_due: Condition
    coach_welcome: str

    def payload(self, consent: Consent) -> str:
        """Return the beginning of the payloads of a consent's buttons."""
        return f"{consent.flow}.{self.book[consent.flow].flow.version}.{consent.key}."
