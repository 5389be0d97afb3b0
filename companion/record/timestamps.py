"""Moments as text: RFC 3339 in UTC with milliseconds, so that text order is time order."""

from __future__ import annotations

from datetime import UTC, datetime
from functools import lru_cache


def text_of(moment: datetime) -> str:
    """Return an aware moment as stored text: "2026-03-07T17:30:00.000Z"."""
    return _text_of(moment.astimezone(UTC))  # in UTC before the cache: the two moments of a repeated hour compare equal otherwise


@lru_cache(16)  # a turn writes the same moment ten times
def _text_of(moment: datetime) -> str:
    return moment.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def moment_of(text: str) -> datetime:
    """Return the moment of a stored text."""
    return datetime.fromisoformat(text)
