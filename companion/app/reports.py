"""Reports asked for by a coach: rendered off the loop after the turn is committed, since it takes up to seconds."""

from __future__ import annotations

import sqlite3
from datetime import datetime
from pathlib import Path

from companion.conversation.effects import Say
from companion.conversation.registry import Book
from companion.record import coaching
from companion.record.coaching import ReportWanted
from companion.record.file import open_for_reading
from companion.record.persist import Document, put_message


def render(wanted: ReportWanted, database: Path, now: datetime, book: Book) -> str:
    """Return a report's page, read through a connection of its own. Raises CannotOpen."""
    from companion.coach.report import report_html

    db = open_for_reading(database)
    try:
        return report_html(db.conn, wanted.lifter, now, book, with_log=False)
    finally:
        db.close()


def send(db: sqlite3.Connection, wanted: ReportWanted, page: str, now: datetime) -> None:
    """Add a report to the outbox if the coach still sees the lifter."""
    from companion.coach.names import display_name

    if coaching.sees(db, wanted.coach, wanted.lifter):
        say = Say(f"The report of {display_name(db, wanted.coach, wanted.lifter)}, as it stands now.")
        put_message(db, wanted.coach, say, now, wanted.to, Document(coaching.REPORT_NAME, page), about=wanted.lifter)
