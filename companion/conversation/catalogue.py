"""What the bot needs to know of its flows, whoever wrote them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from companion.conversation.condition import Condition
from companion.conversation.registry import Book


class Consent(Protocol):
    """The question whose yes makes a stranger a person with rows of their own: its flow, what its answer is called in the log, how the
    payloads of its buttons begin, and the version of the text."""

    @property
    def flow(self) -> str: ...
    @property
    def key(self) -> str: ...
    @property
    def payload(self) -> str: ...
    @property
    def version(self) -> int: ...


class Catalogue(Protocol):
    """The flows as a book; the questions of consent, the flow that asks again and when; the welcome of who brings a coach's code."""

    @property
    def book(self) -> Book: ...
    @property
    def consents(self) -> Sequence[Consent]: ...
    @property
    def consent_again(self) -> str: ...
    @property
    def consent_due(self) -> Condition: ...
    @property
    def coach_welcome(self) -> str: ...
