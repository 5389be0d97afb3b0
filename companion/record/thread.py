"""The thread of a lifter: what coaches wrote to them and they wrote back, and the private notes of whoever reads it."""

from __future__ import annotations

import sqlite3
from typing import Final, NamedTuple

HIDDEN: Final = "not shown: only whoever wrote it reads it"
"""Stands in a lifter's copy for the words of a private note."""


class ThreadRow(NamedTuple):
    """One entry: when (stored text), by whom ("" for the lifter), the words, and whether only its author reads it."""

    at: str
    coach: str
    words: str
    private: bool


def thread_of(db: sqlite3.Connection, lifter: int, reader: int | None, most: int) -> list[ThreadRow]:
    """Return the latest entries, newest first. ``reader``: the coach whose private notes are among them, None for the lifter."""
    rows = db.execute(
        "select at, coach_name, value, what = 'private' from acts where person = :lifter and (what = 'note' or what = 'private' and "
        "coach = :reader) union all select at, '', value, 0 from answers a where person = :lifter and flow = 'note_to_coach' and "
        "key = 'text' and status = 'ok' and value is not null and not exists (select 1 from answers l where l.replaces = a.id) "
        "order by at desc limit :most", {"lifter": lifter, "reader": reader, "most": most})
    return [ThreadRow(at, coach, str(words), bool(private)) for at, coach, words, private in rows]


def private_notes_of(db: sqlite3.Connection, lifter: int) -> list[tuple[str, int]]:
    """Return who keeps private notes on a lifter, and how many."""
    return db.execute("select coach_name, count(*) from acts where person = ? and what = 'private' group by coach_name order by coach_name",
                      (lifter,)).fetchall()
