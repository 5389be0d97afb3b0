"""Reminders as rows: which are due, and what became of them."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from datetime import datetime

from companion.record.moments import moment_of, text_of


@dataclass(frozen=True, slots=True)
class Reminder:
    """One open reminder: to offer a flow to a person at a moment, said as wall time in a zone."""

    id: int
    person: int
    kind: str
    flow: str
    wall: str
    zone: str
    due_at: datetime


def due(db: sqlite3.Connection, now: datetime, most: int = 500) -> list[Reminder]:
    """Open reminders whose time has come, oldest first, of people who can be reached."""
    return [_reminder(row) for row in db.execute(
        "select id, person, kind, flow, wall, zone, due_at from reminders r where state = 'open' and due_at <= ? and exists "
        "(select 1 from addresses a where a.person = r.person and gone_at is null) order by due_at limit ?",
        (text_of(now), most))]


def open_of(db: sqlite3.Connection, person: int) -> list[Reminder]:
    """A person's reminders to come, soonest first."""
    return [_reminder(row) for row in db.execute(
        "select id, person, kind, flow, wall, zone, due_at from reminders where person = ? and state = 'open' "
        "order by due_at", (person,))]


def settle(db: sqlite3.Connection, id: int, state: str, at: datetime) -> bool:
    """Close an open reminder as "sent", "dropped" or "replaced"; False where something else had closed it already."""
    return db.execute("update reminders set state = ?, settled_at = ? where id = ? and state = 'open'",
                      (state, text_of(at), id)).rowcount == 1


def put_off(db: sqlite3.Connection, id: int, until: datetime) -> None:
    """Look at an open reminder again at a later moment."""
    db.execute("update reminders set due_at = ? where id = ? and state = 'open'", (text_of(until), id))


def _reminder(row: tuple[int, int, str, str, str, str, str]) -> Reminder:
    return Reminder(*row[:6], moment_of(row[6]))
