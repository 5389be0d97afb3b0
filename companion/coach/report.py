"""The report of one lifter as a self-contained HTML page without scripts."""

from __future__ import annotations

import sqlite3
from datetime import datetime

from companion.coach.page import POLICY, picture_of, rendered
from companion.coach.report_sections import ReportContent, report_content
from companion.conversation.registry import Book


def report_html(db: sqlite3.Connection, person: int, now: datetime, book: Book, for_coach: bool = True) -> str:
    """Return the report of one lifter as an HTML page; ``for_coach``: false for the lifter's own copy."""
    return page_of(report_content(db, person, now, book, for_coach))


def page_of(account: ReportContent) -> str:
    """Return the HTML page of a report. Pure; slow if there are charts, so it is run off the loop."""
    charts = [(chart.title, chart.words.removeprefix("Picture: "), picture_of(chart)) for chart in account.charts]
    return rendered("report.html.jinja", {"of": account, "charts": charts, "policy": POLICY, "free": account.safety.go,
                                          "open": account.safety.opens_floor})
