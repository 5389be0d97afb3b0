"""Reminders: rows that are open, then settled.

Settled as: sent, replaced, stale (too late), dropped (not allowed at this safety level, or replaced by another kind), ignored
(sent often enough without an answer) or failed. Each kind is sent at most once about a day, which a unique index enforces.
"""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from datetime import date, datetime
from typing import Final

from companion.record.timestamps import moment_of, text_of


@dataclass(frozen=True, slots=True)
class Reminder:
    """A reminder that offers a flow to a person. ``due_at``: its moment, which is ``wall`` ("2026-03-10 18:00") in ``zone``;
    ``day``: the local date it is about, "" for none; ``stale_at``: the moment it becomes too late (None: never); ``round``: 1 for
    the first time it is sent."""

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


BATCH: Final = 10
"""Reminders offered together; our choice: each takes some milliseconds, and sends that are delayed by more than the 30 ms margin
of the drainer would arrive as too many in one second."""

_COLUMNS = "id, person, kind, flow, wall, zone, due_at, day, stale_at, round"


def due(db: sqlite3.Connection, now: datetime, most: int = BATCH) -> list[int]:
    """Return the numbers of due reminders of reachable people, oldest first."""
    return [row[0] for row in db.execute(
        "select id from reminders r where state = 'open' and due_at <= ? and exists "
        "(select 1 from addresses a where a.person = r.person and gone_at is null) order by due_at limit ?",
        (text_of(now), most))]


def open_reminder(db: sqlite3.Connection, id: int) -> Reminder | None:
    """Return a reminder; None where it is not open."""
    row = db.execute(f"select {_COLUMNS} from reminders where id = ? and state = 'open'", (id,)).fetchone()
    return _reminder(row) if row else None


def open_reminders(db: sqlite3.Connection, person: int) -> list[Reminder]:
    """Return a person's open reminders, soonest first."""
    return [_reminder(row) for row in db.execute(
        f"select {_COLUMNS} from reminders where person = ? and state = 'open' order by due_at", (person,))]


def settled_days(db: sqlite3.Connection, person: int, kind: str, now: datetime) -> frozenset[date]:
    """Return the days for which a kind is settled: sent, or given up by ``now``; the latest 60."""
    return frozenset(date.fromisoformat(row[0]) for row in db.execute(
        "select day from reminders where person = ? and kind = ? and day <> '' and (state = 'sent' or "
        "state in ('stale', 'dropped', 'failed') and settled_at <= ?) order by id desc limit 60", (person, kind, text_of(now))))


def open_of_kind(db: sqlite3.Connection, kind: str) -> set[int]:
    """Return the people who have an open reminder of a kind."""
    return {row[0] for row in db.execute("select person from reminders where kind = ? and state = 'open'", (kind,))}


def made_since(db: sqlite3.Connection, person: int, kind: str, since: datetime) -> bool:
    """True if a reminder of a kind was opened since a moment, whatever became of it."""
    return db.execute("select 1 from reminders where person = ? and kind = ? and made_at >= ?",
                      (person, kind, text_of(since))).fetchone() is not None


def sent_since(db: sqlite3.Connection, person: int, kind: str, since: datetime) -> bool:
    """True if a kind was sent since a moment, or is due within a day of it."""
    return db.execute("select 1 from reminders where person = ? and kind = ? and (state = 'sent' and settled_at >= ? or "
                      "state = 'open' and due_at >= ? and due_at <= strftime('%Y-%m-%dT%H:%M:%fZ', ?, '+1 day'))",
                      (person, kind, text_of(since), text_of(since), text_of(since))).fetchone() is not None


def add(db: sqlite3.Connection, person: int, kind: str, flow: str, wall: str, zone: str, due_at: datetime, now: datetime,
        day: str = "", stale_at: datetime | None = None, round: int = 1) -> None:
    """Open a reminder in place of the open one of its kind; an identical one stays."""
    new = (flow, wall, zone, text_of(due_at), day, text_of(stale_at) if stale_at else None, round)
    if db.execute("select flow, wall, zone, due_at, day, stale_at, round from reminders where person = ? and kind = ? and "
                  "state = 'open' and made_at <= ?", (person, kind, text_of(now))).fetchall() == [new]:
        return
    cancel(db, person, kind, now)
    db.execute("insert into reminders (person, kind, flow, wall, zone, due_at, state, made_at, day, stale_at, round) "
               "values (?, ?, ?, ?, ?, ?, 'open', ?, ?, ?, ?)",
               (person, kind, flow, wall, zone, text_of(due_at), text_of(now), day, text_of(stale_at) if stale_at else None, round))


def cancel(db: sqlite3.Connection, person: int, kind: str, now: datetime) -> None:
    """Settle the open reminder of a kind as replaced, where there is one."""
    db.execute("update reminders set state = 'replaced', settled_at = ? where person = ? and kind = ? and state = 'open'",
               (text_of(now), person, kind))


def settle(db: sqlite3.Connection, id: int, state: str, at: datetime) -> bool:
    """Settle an open reminder; returns False where it was not open, or its kind was sent about that day before."""
    if state == "sent" and db.execute(
            "select 1 from reminders r join reminders o on o.person = r.person and o.kind = r.kind and o.day = r.day "
            "where r.id = ? and r.day <> '' and o.state = 'sent'", (id,)).fetchone():
        db.execute("update reminders set state = 'replaced', settled_at = ? where id = ? and state = 'open'", (text_of(at), id))
        return False
    return db.execute("update reminders set state = ?, settled_at = ? where id = ? and state = 'open'",
                      (state, text_of(at), id)).rowcount == 1


def postpone(db: sqlite3.Connection, id: int, until: datetime, now: datetime) -> None:
    """Move an open reminder to a later moment. It counts as made now, so that it is planned again where the clock was wrong."""
    db.execute("update reminders set due_at = ?, made_at = ? where id = ? and state = 'open'", (text_of(until), text_of(now), id))


def settled_reminder(db: sqlite3.Connection, id: int) -> tuple[Reminder, str] | None:
    """Return a settled reminder and its state; None where it is open."""
    row = db.execute(f"select {_COLUMNS}, state from reminders where id = ? and state <> 'open'", (id,)).fetchone()
    return (_reminder(row[:-1]), row[-1]) if row else None


def mark_unsent(db: sqlite3.Connection, id: int) -> None:
    """Settle a reminder as stale whose message never left the outbox."""
    db.execute("update reminders set state = 'stale' where id = ? and state = 'sent'", (id,))


def people_planned_after(db: sqlite3.Connection, now: datetime) -> list[int]:
    """Return the people with reminders made, given up or sent after ``now``, as when the clock was ahead."""
    return [row[0] for row in db.execute(
        "select distinct person from reminders where state = 'open' and made_at > :now or "
        "state in ('sent', 'stale', 'dropped', 'ignored', 'failed') and settled_at > :now", {"now": text_of(now)})]


def planned_after(db: sqlite3.Connection, person: int, now: datetime) -> list[Reminder]:
    """Return a person's open reminders that were made or postponed after ``now``."""
    return [_reminder(row) for row in db.execute(
        f"select {_COLUMNS} from reminders where person = ? and state = 'open' and made_at > ?", (person, text_of(now)))]


def settled_after(db: sqlite3.Connection, person: int, now: datetime) -> list[int]:
    """Return the numbers of a person's reminders that were sent, or told of as missed, after ``now`` and for which it is too early."""
    return [row[0] for row in db.execute(
        "select id from reminders where person = :person and settled_at > :now and (state = 'sent' and due_at > :now or "
        "state = 'stale' and ifnull(stale_at > :now, 1))", {"person": person, "now": text_of(now)})]


def reopen(db: sqlite3.Connection, person: int, now: datetime) -> None:
    """Reopen reminders that were given up after ``now`` and are not stale: the first of each kind that has none open."""
    db.execute("update reminders set state = 'open', settled_at = null where id in (select min(id) from reminders r where "
               "person = ? and state in ('stale', 'dropped', 'ignored', 'failed') and settled_at > ? and ifnull(stale_at > ?, 1) and "
               "not exists (select 1 from reminders o where o.person = r.person and o.kind = r.kind and o.state = 'open') group by kind)",
               (person, text_of(now), text_of(now)))


def _reminder(row: tuple[int, int, str, str, str, str, str, str, str | None, int]) -> Reminder:
    return Reminder(*row[:6], moment_of(row[6]), row[7], moment_of(row[8]) if row[8] else None, row[9])
