"""How to reach Telegram, and the two ways in which it ends for good."""

from __future__ import annotations

from dataclasses import dataclass, field

from companion.base.settings import Webhook


class WrongToken(Exception):
    """Telegram does not know the token; the text never holds it."""


class SecondInstance(Exception):
    """Somebody else polls with the same token."""


class CannotHook(Exception):
    """The port at which Telegram should bring updates can't be used; the text says why, in one line."""


@dataclass(frozen=True, slots=True)
class TelegramSettings:
    """How to reach Telegram. Times are seconds; all but the token and the address are our choices.

    ``patience`` is how many refused polls in a row (a token not known, another instance) end the channel.
    With ``webhook`` Telegram brings updates there, and nothing is polled.
    """

    token: str = field(repr=False)
    api_url: str = "https://api.telegram.org"
    poll_seconds: int = 25
    answer_seconds: float = 15.0
    settle_seconds: float = 10.0
    patience: int = 3
    webhook: Webhook | None = None


def wrong_token() -> WrongToken:
    """What to tell somebody whose token Telegram does not know."""
    return WrongToken("Telegram does not know this token: check COMPANION_TOKEN, and COMPANION_API_URL if it is set")
