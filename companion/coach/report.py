"""The report of one lifter as a web page of one file, without any script."""

from __future__ import annotations

import sqlite3
from datetime import datetime

from companion.coach.page import POLICY, picture_of, rendered
from companion.coach.report_sections import ReportContent, report_content
from companion.conversation.registry import Book


def report_html(db: sqlite3.Connection, person: int, now: datetime, book: Book, for_coach: bool = True) -> str:
    """Return the report of one lifter as one page of HTML."""
    return page_of(report_content(db, person, now, book, for_coach))


def page_of(account: ReportContent) -> str:
    """Return the page of an account. Pure; slow where there are charts, so it can run beside the loop."""
    charts = [(chart.title, chart.words.removeprefix("Picture: "), picture_of(chart)) for chart in account.charts]
    return rendered("report.html.jinja", {"of": account, "charts": charts, "policy": POLICY, "free": account.safety.go,
                                          "open": account.safety.opens_floor})
