"""Events of the running bot, for metrics. Called on the loop, so each method must be cheap."""

from __future__ import annotations

from typing import Final

REASONS: Final = ("may_have_arrived", "gone", "wrote_first", "too_late", "replaced", "refused")
"""Classes of reasons for giving a message up; a reason's own text may hold a name."""

_CLASSES: Final = {
    "may have arrived": "may_have_arrived", "the person wrote first": "wrote_first", "too late": "too_late",
    "said anew": "replaced", "withdrawn": "replaced",
}
"""Reasons of our own that are not refusals (channels.drainer, record)."""


def reason_class(reason: str) -> str:
    """Return the class of the reason a message was dropped for."""
    return _CLASSES.get(reason, "refused")


class Counters:
    """Does nothing; used when metrics are off."""

    def turn_taken(self) -> None:
        """Count a committed turn."""

    def turn_failed(self) -> None:
        """Count a turn that failed and was answered kindly."""

    def message_sent(self) -> None:
        """Count a delivered message."""

    def message_dropped(self, why: str, count: int = 1) -> None:
        """Count messages given up; ``why`` is one of REASONS."""

    def reminder_offered(self) -> None:
        """Count a reminder sent."""

    def committed(self, seconds: float) -> None:
        """Record the seconds of a commit with all its turns."""

    def polled(self) -> None:
        """Note an answered poll."""

    def clock_jumped(self, seconds: float) -> None:
        """Note that the wall clock was set by so many seconds."""
