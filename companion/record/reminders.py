"""Reminders as rows: which are due, and what became of them.

A row is open until it is settled as sent, replaced, stale (its time had passed), dropped (something stood against it),
ignored (it was sent often enough) or failed. A day is told of at most once a kind, which an index holds.
"""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from datetime import date, datetime
from typing import Final

from companion.record.timestamps import moment_of, text_of


@dataclass(frozen=True, slots=True)
class Reminder:
    """One open reminder: to offer a flow to a person at a moment, said as wall time in a zone. ``day``: the local date it is
    about, "" for none; ``stale_at``: when it is too late for it (None: never); ``round``: which time it is told."""

    id: int
    person: int
    kind: str
    flow: str
    wall: str
    zone: str
    due_at: datetime
    day: str = ""
    stale_at: datetime | None = None
    round: int = 1


FEW: Final = 10
"""Reminders offered together; our choice: each takes some milliseconds, and sends under way that are held up for longer than
the 30 ms that the drainer leaves at its window arrive as too many in a second."""

_COLUMNS = "id, person, kind, flow, wall, zone, due_at, day, stale_at, round"


def due(db: sqlite3.Connection, now: datetime, most: int = FEW) -> list[int]:
    """Return the numbers of open reminders whose time has come, oldest first, of people who can be reached."""
    return [row[0] for row in db.execute(
        "select id from reminders r where state = 'open' and due_at <= ? and exists "
        "(select 1 from addresses a where a.person = r.person and gone_at is null) order by due_at limit ?",
        (text_of(now), most))]


def open_one(db: sqlite3.Connection, id: int) -> Reminder | None:
    """Return a reminder, while it is open."""
    row = db.execute(f"select {_COLUMNS} from reminders where id = ? and state = 'open'", (id,)).fetchone()
    return _reminder(row) if row else None


def open_of(db: sqlite3.Connection, person: int) -> list[Reminder]:
    """Return a person's reminders to come, soonest first."""
    return [_reminder(row) for row in db.execute(
        f"select {_COLUMNS} from reminders where person = ? and state = 'open' order by due_at", (person,))]


def told(db: sqlite3.Connection, person: int, kind: str, now: datetime) -> frozenset[date]:
    """Return the days for which a kind has been settled by something other than a change of plan."""
    return frozenset(date.fromisoformat(row[0]) for row in db.execute(
        "select day from reminders where person = ? and kind = ? and day <> '' and (state = 'sent' or "
        "state in ('stale', 'dropped', 'failed') and settled_at <= ?) order by id desc limit 60", (person, kind, text_of(now))))


def asked_since(db: sqlite3.Connection, person: int, kind: str, since: datetime) -> bool:
    """True if a kind was sent since a moment, or is open and for about now."""
    return db.execute("select 1 from reminders where person = ? and kind = ? and (state = 'sent' and settled_at >= ? or "
                      "state = 'open' and due_at >= ? and due_at <= strftime('%Y-%m-%dT%H:%M:%fZ', ?, '+1 day'))",
                      (person, kind, text_of(since), text_of(since), text_of(since))).fetchone() is not None


def add(db: sqlite3.Connection, person: int, kind: str, flow: str, wall: str, zone: str, due_at: datetime, now: datetime,
        day: str = "", stale_at: datetime | None = None, round: int = 1) -> None:
    """Open a reminder, in the place of an open one of its kind; one that stands already as it is stays."""
    new = (flow, wall, zone, text_of(due_at), day, text_of(stale_at) if stale_at else None, round)
    if db.execute("select flow, wall, zone, due_at, day, stale_at, round from reminders where person = ? and kind = ? and "
                  "state = 'open' and made_at <= ?", (person, kind, text_of(now))).fetchall() == [new]:
        return
    take_away(db, person, kind, now)
    db.execute("insert into reminders (person, kind, flow, wall, zone, due_at, state, made_at, day, stale_at, round) "
               "values (?, ?, ?, ?, ?, ?, 'open', ?, ?, ?, ?)",
               (person, kind, flow, wall, zone, text_of(due_at), text_of(now), day, text_of(stale_at) if stale_at else None, round))


def take_away(db: sqlite3.Connection, person: int, kind: str, now: datetime) -> None:
    """Close an open reminder of a kind as replaced, where there is one."""
    db.execute("update reminders set state = 'replaced', settled_at = ? where person = ? and kind = ? and state = 'open'",
               (text_of(now), person, kind))


def settle(db: sqlite3.Connection, id: int, state: str, at: datetime) -> bool:
    """Close an open reminder; returns False where something else had closed it already, or its day has been told of before."""
    if state == "sent" and db.execute(
            "select 1 from reminders r join reminders o on o.person = r.person and o.kind = r.kind and o.day = r.day "
            "where r.id = ? and r.day <> '' and o.state = 'sent'", (id,)).fetchone():
        db.execute("update reminders set state = 'replaced', settled_at = ? where id = ? and state = 'open'", (text_of(at), id))
        return False
    return db.execute("update reminders set state = ?, settled_at = ? where id = ? and state = 'open'",
                      (state, text_of(at), id)).rowcount == 1


def put_off(db: sqlite3.Connection, id: int, until: datetime, now: datetime) -> None:
    """Look at an open reminder again at a later moment. It counts as made now: where the clock was wrong, it is made anew."""
    db.execute("update reminders set due_at = ?, made_at = ? where id = ? and state = 'open'", (text_of(until), text_of(now), id))


def settled_one(db: sqlite3.Connection, id: int) -> tuple[Reminder, str] | None:
    """Return a reminder that is settled, and as what."""
    row = db.execute(f"select {_COLUMNS}, state from reminders where id = ? and state <> 'open'", (id,)).fetchone()
    return (_reminder(row[:-1]), row[-1]) if row else None


def never_left(db: sqlite3.Connection, id: int, at: datetime) -> None:
    """Note that a reminder which counted as sent has not left in time."""
    db.execute("update reminders set state = 'stale', settled_at = ? where id = ? and state = 'sent'", (text_of(at), id))


def from_later(db: sqlite3.Connection, now: datetime) -> list[int]:
    """Return the people with reminders that were made or given up after ``now``: the clock has been ahead."""
    return [row[0] for row in db.execute(
        "select distinct person from reminders where state = 'open' and made_at > :now or "
        "state in ('stale', 'dropped', 'ignored', 'failed') and settled_at > :now", {"now": text_of(now)})]


def made_later(db: sqlite3.Connection, person: int, now: datetime) -> list[Reminder]:
    """Return a person's open reminders that were made or put off after ``now``."""
    return [_reminder(row) for row in db.execute(
        f"select {_COLUMNS} from reminders where person = ? and state = 'open' and made_at > ?", (person, text_of(now)))]


def reopen(db: sqlite3.Connection, person: int, now: datetime) -> None:
    """Open again what was given up later than ``now`` and is not too late for it: of each kind the first, where none is open."""
    db.execute("update reminders set state = 'open', settled_at = null where id in (select min(id) from reminders r where "
               "person = ? and state in ('stale', 'dropped', 'ignored', 'failed') and settled_at > ? and ifnull(stale_at > ?, 1) and "
               "not exists (select 1 from reminders o where o.person = r.person and o.kind = r.kind and o.state = 'open') group by kind)",
               (person, text_of(now), text_of(now)))


def _reminder(row: tuple[int, int, str, str, str, str, str, str, str | None, int]) -> Reminder:
    return Reminder(*row[:6], moment_of(row[6]), row[7], moment_of(row[8]) if row[8] else None, row[9])
