"""Reads of a person's facts, findings and answer log."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from datetime import datetime
from typing import Final, NamedTuple

from companion.record.timestamps import moment_of
from companion.record.unanswered import TOLD_SINCE
from companion.screening.screen import LoggedAnswer

Value = float | str
LIMIT_NAMES: Final = "('load.limit', 'load.raised', 'load.pin', 'load.told')"
_LIMITS: Final = ("select json_group_array(json_array(at, name, value)) as limits from findings where person = :person and name in "
                  f"{LIMIT_NAMES} having count(*)")
REMINDERS_PAUSED: Final = "reminders.paused"
"""The fact that is "open" from thoughts of self-harm until the lifter begins again, and "asked" while it is asked whether there are any."""
_PAUSED: Final = "select value as paused from facts where person = :person and name = 'crisis' and value in ('open', 'asked')"
PAIN_OPEN: Final = "pain.open_since"
_PAIN_OPEN: Final = "select told as began_at from (select " + TOLD_SINCE.format(at=(
    "select began_at from runs where person = :person and flow = 'pain' and ifnull(ending, 'left') <> 'done' and "
    "began_at > ifnull((select at from facts where person = :person and name = 'pain.hurt'), '') order by began_at desc limit 1"),
    person=":person") + " as told) where told is not null"


class KeptFact(NamedTuple):
    """A fact's value and time. ``found``: true if it was concluded rather than answered."""

    value: Value
    found: bool
    since: str

    @property
    def at(self) -> datetime:
        """The time as a datetime; parsed on demand, as few callers need it."""
        return moment_of(self.since)


class KeptFinding(NamedTuple):
    """A finding: its value, the rule that made it, the evidence in words, and its time."""

    value: str
    rule: str
    because: str
    at: datetime


class LogRow(NamedTuple):
    """One row of the answer log. ``ending``: of its run, None while open; ``asked``: the run's subject, such as a day."""

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


def as_answer(row: LogRow) -> LoggedAnswer:
    """Return a row of the log as a screening answer."""
    return LoggedAnswer(row.flow, row.run, row.key, row.value, row.status, row.ending, row.method, row.placement, row.at, row.asked)


def facts_of(db: sqlite3.Connection, person: int) -> dict[str, KeptFact]:
    """Return a person's facts by name; "flow.key" for answers."""
    return {name: KeptFact(value, bool(found), at) for name, value, found, at in
            db.execute("select name, value, found, at from facts where person = ?", (person,))}


def findings_of(db: sqlite3.Connection, person: int) -> dict[str, KeptFinding]:
    """Return a person's latest findings by name."""
    return {name: KeptFinding(value, rule, because, moment_of(at)) for name, value, rule, because, at in db.execute(
        "select name, value, rule, because, at from findings where id in (select max(id) from findings where person = ? "
        "group by name)", (person,))}


def finding_history(db: sqlite3.Connection, person: int, name: str) -> list[KeptFinding]:
    """Return every value a finding has had, oldest first."""
    return [KeptFinding(value, rule, because, moment_of(at)) for value, rule, because, at in db.execute(
        "select value, rule, because, at from findings where person = ? and name = ? order by id", (person, name))]


def concluded_of(db: sqlite3.Connection, person: int) -> list[tuple[int, str, str, str, str, str]]:
    """Return every finding, alert and listed act of a coach, oldest first: (number, name, value, rule or person, grounds, time as
    stored)."""
    return db.execute(
        "select id, name, value, rule, because, at from findings where person = :person union all select id, 'alert', level, '', because, "
        "at from alerts where person = :person union all select id, 'act.' || what, iif(what = 'private', 'not shown', value), coach_name, "
        "reason, at from acts where person = :person and what not in ('reviewed', 'unreviewed', 'seen', 'snooze', 'dismiss', 'settle', "
        "'group', 'guess') order by at, id",
        {"person": person}).fetchall()


def load_limits_of(db: sqlite3.Connection, person: int) -> str:
    """Return the values the load limit has had, as JSON that ``screening.load_limit.limits_in`` reads; "" for none."""
    row = db.execute(_LIMITS, {"person": person}).fetchone()
    return row[0] if row else ""


def pain_open_of(db: sqlite3.Connection, person: int) -> datetime | None:
    """Return the start of pain questions that were left unfinished, with no finished ones since; None where there are none."""
    row = db.execute(_PAIN_OPEN, {"person": person}).fetchone()
    return moment_of(row[0]) if row else None


def paused_of(db: sqlite3.Connection, person: int) -> str:
    """Return "open" or "asked" (``REMINDERS_PAUSED``) while no reminder goes out to a person; "" where they may."""
    row = db.execute(_PAUSED, {"person": person}).fetchone()
    return row[0] if row else ""


def known_rows(db: sqlite3.Connection, person: int) -> list[tuple[str, Value, str]]:
    """Return (name, value, time) of everything known about a person, in one query; the time is "" but for findings. Beside the
    facts: "due.KIND" for each open reminder; "coach" where they have one, or a clinician, who both answer for somebody under 18 as a
    reader does not, and "coach.gone" where no message reaches any of them; "is_coach" where they are one; "load.limits", the values
    the load limit has had (``screening.load_limit.limits_in``); "pain.open_since" while pain questions are unfinished; and
    "reminders.paused"."""
    return db.execute(
        "select name, value, iif(found, at, '') from facts where person = :person "
        "union all select 'due.' || kind, wall, '' from reminders where person = :person and state = 'open' "
        "union all select 'coach', 'yes', '' where exists (select 1 from coaches k join coach_roles c on c.person = k.coach and "
        "c.until is null and c.role <> 'read_only' where k.person = :person and k.until is null) "
        "union all select 'coach.gone', 'yes', '' where exists (select 1 from coaches where person = :person and until is null) and not "
        "exists (select 1 from coaches k join coach_roles c on c.person = k.coach and c.until is null and c.role <> 'read_only' join "
        "addresses a on a.person = k.coach and a.gone_at is null where k.person = :person and k.until is null) "
        "union all select 'is_coach', 'yes', '' where exists (select 1 from coach_roles where person = :person and until is null) "
        f"union all select 'load.limits', limits, '' from ({_LIMITS}) "
        f"union all select '{PAIN_OPEN}', began_at, '' from ({_PAIN_OPEN}) "
        f"union all select '{REMINDERS_PAUSED}', paused, '' from ({_PAUSED})",
        {"person": person}).fetchall()


def answers_of(db: sqlite3.Connection, person: int) -> Iterator[LogRow]:
    """Return an iterator over a person's answer log, oldest first."""
    rows = db.execute("select id, at, flow, version, run, key, side, raw, value, unit, status, method, placement, replaces, "
                      "ending, asked from (select a.*, r.ending, r.asked from answers a join runs r on r.person = a.person and "
                      "r.run = a.run where a.person = ?) order by id", (person,))
    return (LogRow(row[0], moment_of(row[1]), *row[2:]) for row in rows)
