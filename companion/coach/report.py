"""The report of one lifter as a self-contained HTML page without scripts."""

from __future__ import annotations

import sqlite3
from datetime import datetime

from companion.coach.page import POLICY, picture_of, rendered
from companion.coach.report_sections import report_content
from companion.conversation.registry import Book


def report_html(db: sqlite3.Connection, person: int, now: datetime, book: Book, for_coach: bool = True,
                with_log: bool = True, only: str = "") -> str:
    """Return the report of one lifter as an HTML page; ``for_coach``: false for the lifter's own copy; ``with_log``: false leaves
    out the answer log, which is most of the pages on paper; ``only``: the part of the log to show, "" for all. Slow if there are charts,
    so it is run off the loop."""
    of = report_content(db, person, now, book, for_coach, only)
    charts = [(chart.title, chart.words.removeprefix("Picture: "), picture_of(chart), chart.name == "chart_kept") for chart in of.charts]
    return rendered("report.html.jinja", {"of": of, "charts": charts, "policy": POLICY, "with_log": with_log, "free": of.safety.go,
                                          "open": of.safety.opens_floor})
