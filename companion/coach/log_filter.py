"""Parts of an answer log: one test, one day, or the corrections with what they replaced."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime
from typing import Final

from companion.base.clock import local_date
from companion.conversation.registry import Book
from companion.record.access import WITHHELD_FLOWS
from companion.record.log import LogRow

CORRECTIONS: Final = "corrections"
DAY_ASKED: Final = "%Y%m%d"
"""How a button names a day."""


def log_filter(what: str, zone: str, book: Book) -> tuple[Callable[[LogRow], bool], str]:
    """Return what a row must be for a part of the log, and the part in words; any and "" where ``what`` names none. ``what``:
    "corrections", the name or title of a conversation, or a day of ``zone`` as "20260310" or "2026-03-10"."""
    if what.casefold() == CORRECTIONS:
        return lambda row: row.replaces is not None, CORRECTIONS
    titles = {name: compiled.flow.title for name, compiled in book.flows.items() if name not in WITHHELD_FLOWS}
    if flow := next((name for name, title in titles.items() if what.casefold() in (name, title.casefold())), ""):
        return lambda row: row.flow == flow, titles[flow].lower()
    day = _day(what)
    return (lambda row: True, "") if day is None else (lambda row: local_date(row.at, zone) == day, f"{day:%a} {day.day} {day:%b}")


def _day(what: str) -> date | None:
    try:
        return datetime.strptime(what.replace("-", ""), DAY_ASKED).date()  # noqa: DTZ007 - a date without a time
    except ValueError:
        return None
