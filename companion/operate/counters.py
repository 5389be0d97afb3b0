"""What happens in the bot, told to whoever counts. Called on the loop, so each must be cheap."""

from __future__ import annotations

from datetime import datetime
from typing import Final

REASONS: Final = ("may_have_arrived", "gone", "wrote_first", "too_late", "replaced", "refused")
"""Why a message was given up, in classes: a reason's own text may hold a name."""

_CLASSES: Final = {
    "may have arrived": "may_have_arrived", "the person wrote first": "wrote_first", "too late": "too_late",
    "said anew": "replaced", "withdrawn": "replaced",
}
"""The texts of our own that are not refusals (channels.outbox, record)."""


def reason_class(reason: str) -> str:
    """The class of a reason for which one message was dropped."""
    return _CLASSES.get(reason, "refused")


class Watch:
    """Counts nothing: what the companion tells where nobody asked for numbers."""

    def turn_taken(self) -> None:
        """A turn was committed."""

    def turn_failed(self) -> None:
        """A turn could not be handled, and was answered kindly."""

    def message_sent(self) -> None:
        """A message arrived."""

    def message_dropped(self, why: str, count: int = 1) -> None:
        """Messages were given up; ``why`` is one of REASONS."""

    def reminder_offered(self) -> None:
        """A reminder went out."""

    def committed(self, seconds: float) -> None:
        """A commit took so long, with the turns in it."""

    def polled(self, at: datetime) -> None:
        """A poll was answered."""
