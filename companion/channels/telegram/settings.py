"""Settings of the Telegram channel, and the errors that end it for good."""

from __future__ import annotations

from dataclasses import dataclass, field

from companion.base.settings import Webhook


class WrongToken(Exception):
    """Telegram does not know the token. The message never holds it."""


class SecondInstance(Exception):
    """Another process polls with the same token."""


class CannotHook(Exception):
    """The webhook's port can't be used; the message says why, in one line."""


@dataclass(frozen=True, slots=True)
class TelegramSettings:
    """Settings of the Telegram channel. Times are seconds; all but the token and the address are our choices.

    ``patience``: refused polls in a row (unknown token, another instance) that end the channel. ``webhook``: Telegram delivers updates
    there, and nothing is polled.
    """

    token: str = field(repr=False)
    api_url: str = "https://api.telegram.org"
    poll_seconds: int = 25
    answer_seconds: float = 15.0
    settle_seconds: float = 10.0
    patience: int = 3
    webhook: Webhook | None = None


def wrong_token() -> WrongToken:
    """Return the error for an unknown token."""
    return WrongToken("Telegram does not know this token: check COMPANION_TOKEN, and COMPANION_API_URL if it is set")
