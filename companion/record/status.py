"""Marks of the running bot for the operator: name, value, time. No personal data."""

from __future__ import annotations

import sqlite3
from datetime import datetime
from typing import Final

from companion.record.timestamps import moment_of, text_of

CLOCK_JUMP: Final = "clock.jump"
"""Name of the mark of the last time the clock of the machine was set; its value is by how many seconds."""

STARTED: Final = "started"
"""Name of the mark of the last start; its value means nothing."""

LOG_CUT: Final = "log.cut"
"""Name of the mark of the last start that found answers lost; its value says which."""


def set_mark(db: sqlite3.Connection, name: str, value: float | str, at: datetime) -> None:
    """Store a mark in place of the one of the same name."""
    db.execute("insert into marks (name, value, at) values (?, ?, ?) on conflict (name) do update set value = excluded.value, "
               "at = excluded.at", (name, value, text_of(at)))


def mark_of(db: sqlite3.Connection, name: str) -> tuple[float | str, datetime] | None:
    """Return a mark's value and time; None where there is none."""
    row = db.execute("select value, at from marks where name = ?", (name,)).fetchone()
    return (row[0], moment_of(row[1])) if row else None
