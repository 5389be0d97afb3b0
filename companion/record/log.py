"""Reading: what is known of a person and their answer log."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple

from companion.record.timestamps import moment_of
from companion.screening.screen import Answer

Value = float | str


class Kept(NamedTuple):
    """One fact as kept: its value, whether it was concluded rather than answered, and since when."""

    value: Value
    found: bool
    since: str

    @property
    def at(self) -> datetime:
        """Since when, as a moment; of few it is asked."""
        return moment_of(self.since)


class Concluded(NamedTuple):
    """A conclusion as kept last: its value, the rule that made it, what it rests on, and when."""

    value: str
    rule: str
    because: str
    at: datetime


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the answer log, with how its run ended (None: still open)."""

    id: int
    at: datetime
    flow: str
    version: int
    run: str
    key: str
    side: str
    raw: str
    value: Value | None
    unit: str
    status: str
    method: str
    placement: str
    replaces: int | None
    ending: str | None
    asked: str


def as_answer(row: Row) -> Answer:
    """Return a row of the log as the screening reads it."""
    return Answer(row.flow, row.run, row.key, row.value, row.status, row.ending, row.method, row.placement, row.at, row.asked)


def facts_of(db: sqlite3.Connection, person: int) -> dict[str, Kept]:
    """Return the latest of every fact about a person, by name: "flow.key" for answers."""
    return {name: Kept(value, bool(found), at) for name, value, found, at in
            db.execute("select name, value, found, at from facts where person = ?", (person,))}


def concluded_of(db: sqlite3.Connection, person: int) -> dict[str, Concluded]:
    """Return what was concluded last, by name."""
    return {name: Concluded(value, rule, because, moment_of(at)) for name, value, rule, because, at in db.execute(
        "select name, value, rule, because, at from findings where id in (select max(id) from findings where person = ? "
        "group by name)", (person,))}


def history_of(db: sqlite3.Connection, person: int, name: str) -> list[Concluded]:
    """Return every value a finding has had, oldest first."""
    return [Concluded(value, rule, because, moment_of(at)) for value, rule, because, at in db.execute(
        "select value, rule, because, at from findings where person = ? and name = ? order by id", (person, name))]


def known_of(db: sqlite3.Connection, person: int) -> list[tuple[str, Value, str]]:
    """Return all that is known of a person, in one query: name, value, and since when where it was concluded ("" else). The
    facts, "due.KIND" for each reminder to come, and "coach" and "is_coach" where a coach looks after them, and where they are
    one."""
    return db.execute(
        "select name, value, iif(found, at, '') from facts where person = :person "
        "union all select 'due.' || kind, wall, '' from reminders where person = :person and state = 'open' "
        "union all select 'coach', 'yes', '' where exists (select 1 from coaches k join coach_roles c on c.person = k.coach and "
        "c.until is null where k.person = :person and k.until is null) "
        "union all select 'is_coach', 'yes', '' where exists (select 1 from coach_roles where person = :person and until is null)",
        {"person": person}).fetchall()


def answers_of(db: sqlite3.Connection, person: int) -> Iterator[Row]:
    """Yield a person's answer log, oldest first."""
    rows = db.execute("select id, at, flow, version, run, key, side, raw, value, unit, status, method, placement, replaces, "
                      "ending, asked from (select a.*, r.ending, r.asked from answers a join runs r on r.person = a.person and "
                      "r.run = a.run where a.person = ?) order by id", (person,))
    return (Row(row[0], moment_of(row[1]), *row[2:]) for row in rows)
