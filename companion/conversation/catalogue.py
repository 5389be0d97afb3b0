"""The catalogue: all that the bot needs to know of its flows, whoever wrote them."""

from __future__ import annotations

from dataclasses import dataclass

from companion.conversation.condition import Condition
from companion.conversation.registry import Book


@dataclass(frozen=True, slots=True)
class Consent:
    """The question whose yes makes a stranger a person with rows of their own: its flow, the name of its answer in the log, and the
    version of its text."""

    flow: str
    key: str
    version: int


@dataclass(frozen=True, slots=True)
class Catalogue:
    """The flows as a book; the questions of consent, the flow that asks again and when; the welcome of who brings a coach's code."""

    book: Book
    consents: tuple[Consent, ...]
    consent_again: str
    consent_due: Condition
    coach_welcome: str

    def payload(self, consent: Consent) -> str:
        """Return how the payloads of a consent's buttons begin."""
        return f"{consent.flow}.{self.book[consent.flow].flow.version}.{consent.key}."
