"""A coach's look at one lifter, and the shared parts of its messages."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property
from typing import Final

from companion.coach.caseload import day_namer, utf16_length
from companion.coach.letters import Rows, tap
from companion.coach.names import display_name
from companion.coach.summary import LifterPage, lifter_page
from companion.coach.triage import DayNamer
from companion.conversation.prompt import in_rows

TEXT_MOST: Final = 4096
"""Bot API: a message has 1 to 4,096 characters; counted as UTF-16 units here, which is never fewer."""
LINE_MOST: Final = 360
"""UTF-16 units of a line of a list; ten of them fit a message. Our choice."""


@dataclass(frozen=True)
class LifterView:
    """A coach's view of a lifter. ``zone``: the coach's."""

    db: sqlite3.Connection
    coach: int
    lifter: int
    now: datetime
    zone: str

    @cached_property
    def day_name(self) -> DayNamer:
        """The function that names days in the coach's zone."""
        return day_namer(self.zone, self.now)

    @cached_property
    def name(self) -> str:
        """The lifter's name for this coach."""
        return display_name(self.db, self.coach, self.lifter)

    @cached_property
    def page(self) -> LifterPage:
        """The data of the lifter's page."""
        return lifter_page(self.db, self.coach, self.lifter, self.now)


def back_rows(lifter: int, *views: tuple[str, str]) -> Rows:
    """Return buttons to other views of a lifter (label, view), to the summary and to the list."""
    taps = [tap(label, "lifter", f"{lifter}-{what}" if what else lifter) for label, what in (*views, ("Summary", ""))]
    return in_rows([*taps, tap("My lifters", "caseload")], 2)


def paged(count: int, page: int, each: int) -> tuple[int, int]:
    """Return the page to show (the last, if it is past the end) and the number of pages."""
    pages = max(1, -(-count // each))
    return min(page, pages - 1), pages


def fitting(lines: Iterable[str], most: int = TEXT_MOST) -> str:
    """Return lines as one text of at most ``most`` UTF-16 units; lines that don't fit are replaced by "…"."""
    kept: list[str] = []
    left = most - 2
    for line in lines:
        left -= utf16_length(line) + 1
        if left < 0:
            return "\n".join([*kept, "…"])
        kept.append(line)
    return "\n".join(kept)
