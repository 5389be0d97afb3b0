"""Marks the running bot leaves for whoever looks after it: a name, a value, when. Never anything of a person."""

from __future__ import annotations

import sqlite3
from datetime import datetime

from companion.record.timestamps import moment_of, text_of


def note(db: sqlite3.Connection, name: str, value: float | str, at: datetime) -> None:
    """Keep a value under a name, in the place of the one before."""
    db.execute("insert into marks (name, value, at) values (?, ?, ?) on conflict (name) do update set value = excluded.value, "
               "at = excluded.at", (name, value, text_of(at)))


def noted(db: sqlite3.Connection, name: str) -> tuple[float | str, datetime] | None:
    """Return what stands under a name, and since when; None where nothing does."""
    row = db.execute("select value, at from marks where name = ?", (name,)).fetchone()
    return (row[0], moment_of(row[1])) if row else None
