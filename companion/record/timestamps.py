"""Moments as text: RFC 3339 in UTC with milliseconds, so that text order is time order."""

from __future__ import annotations

from datetime import UTC, datetime
from functools import lru_cache


def text_of(moment: datetime) -> str:
    """An aware moment as kept: "2026-03-07T17:30:00.000Z"."""
    return _text_of(moment.astimezone(UTC))  # before it is looked for: an hour that comes twice is equal to itself by its wall time


@lru_cache(16)  # a turn writes its own moment ten times
def _text_of(moment: datetime) -> str:
    return moment.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def moment_of(text: str) -> datetime:
    """The moment a kept text stands for."""
    return datetime.fromisoformat(text)
