"""The rows a coach's pages rest on: how each of a coach's lifters stands, in one query, and the parts of one lifter's page."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from datetime import datetime
from typing import Final, NamedTuple

from companion.record.coaching import STANDS_REVIEWED, coach_name
from companion.record.log import Value
from companion.record.timestamps import moment_of, text_of


class Standing(NamedTuple):
    """One lifter's standing; moments are text as kept, None where there is nothing.

    ``linked``: since when the coach sees them. ``reviewed``: the coach's last review. ``gone``: since when nobody can be
    reached at any address, a space, and why. ``hurt_*``: the latest alert since the review that comes from the pain questions
    or the morning after, with what was answered there; none of pain that was taken back. ``open_at``: when pain questions began
    that are not done, where none have been answered to the end and nothing was reviewed since. ``change``: of the last retest
    (better, within_error, worse, cannot_say). ``back``: the lower back on the last squat day told of; ``step_why``: what that
    did to the depth, where it moved.
    ``retest_*``: the latest reminder to test again. ``answered``: the latest answer.
    """

    person: int
    name: str | None
    linked: str
    reviewed: str | None
    gone: str | None
    hurt_at: str | None
    hurt_flow: str | None
    hurt_level: str | None
    where: Value | None
    bad: Value | None
    how: Value | None
    open_at: str | None
    level: Value | None
    level_at: str | None
    outcome_at: Value | None
    overall: Value | None
    step: Value | None
    change: Value | None
    change_at: str | None
    change_because: str | None
    back: Value | None
    back_at: str | None
    step_why: str | None
    retest_state: str | None
    retest_due: str | None
    retest_settled: str | None
    answered: str | None


_SAID: Final = ("(select value from answers where person = m.person and run = h.run and key = '{0}' and status = 'ok' "
                "order by id desc limit 1)")
_BECAUSE: Final = "(select because from findings where person = m.person and name = '{0}' order by id desc limit 1)"
_FACT: Final = "left join facts {0} on {0}.person = m.person and {0}.name = '{1}'"
_LINKED: Final = f"""
with m as materialized (
    select k.person, k.since,
        (select max(at) from acts a where a.person = k.person and a.coach = :coach and {STANDS_REVIEWED}) as reviewed
    from coaches k join coach_roles c on c.person = k.coach and c.until is null
    where k.coach = :coach and k.until is null)
"""
STANDING: Final = f"""
select m.person, (select min(name) from addresses a where a.person = m.person), m.since, m.reviewed,
    (select max(gone_at || ' ' || ifnull(gone_reason, '')) from addresses a where a.person = m.person
     having count(*) = count(gone_at)),
    h.at, hr.flow, h.level,
    case when h.id is not null then {_SAID.format('where')} end, case when h.id is not null then {_SAID.format('bad')} end,
    case when h.id is not null then {_SAID.format('how')} end,
    (select max(u.began_at) from runs u where u.person = m.person and u.flow = 'pain' and ifnull(u.ending, 'left') <> 'done'
     and u.began_at > max(ifnull(m.reviewed, ''), ifnull(p.at, ''))),
    s.value, s.at, o.value, w.value, d.value, c.value, c.at,
    case when c.value = 'worse' then {_BECAUSE.format('retest.change')} end, b.value, b.at,
    case when b.value = 'moved' then {_BECAUSE.format('depth.step')} end,
    r.state, r.due_at, r.settled_at, (select at from answers a where a.person = m.person order by id desc limit 1)
from m
left join alerts h on h.id = (
    select a.id from alerts a join runs u on u.person = a.person and u.run = a.run and u.flow in ('pain', 'morning')
    where a.person = m.person and a.at > ifnull(m.reviewed, '') and not exists (select 1 from findings f where f.person = a.person
        and f.name = 'pain.taken_back' and a.at between f.value and f.at) order by a.id desc limit 1)
left join runs hr on hr.person = m.person and hr.run = h.run
{_FACT.format('p', 'pain.hurt')} {_FACT.format('s', 'safety.level')} {_FACT.format('o', 'outcome.at')}
{_FACT.format('w', 'overall')} {_FACT.format('d', 'depth.step')} {_FACT.format('c', 'retest.change')}
{_FACT.format('b', 'squat_after.back')}
left join reminders r on r.id = (select id from reminders t where t.person = m.person and t.kind = 'retest' order by id desc limit 1)
"""
"""The standing of each lifter of ``m`` (person, since, reviewed): the end of a query that says who those are."""


def standings(db: sqlite3.Connection, coach: int) -> list[Standing]:
    """Return the standing of each lifter linked now to an active coach, in one query; nobody for somebody who is no coach."""
    return list(map(Standing._make, db.execute(_LINKED + STANDING, {"coach": coach})))


def pain_untold(db: sqlite3.Connection, before: datetime, after: datetime) -> list[tuple[int, str]]:
    """Return the conversations about pain begun between the two moments and not answered to the end, of which no alert has been raised, the
    latest of each person: (person, run)."""
    return db.execute(
        "select u.person, u.run from runs u where u.flow = 'pain' and u.began_at between ? and ? and ifnull(u.ending, 'left') <> 'done' "
        "and not exists (select 1 from alerts a where a.person = u.person and a.run = u.run) and not exists (select 1 from runs l "
        "where l.flow = 'pain' and l.person = u.person and l.began_at > u.began_at)", (text_of(after), text_of(before))).fetchall()


def said_in(db: sqlite3.Connection, person: int, run: str) -> list[tuple[str, str]]:
    """Return what stands answered in a run: (key, as written)."""
    return db.execute("select key, raw from answers a where person = ? and run = ? and status = 'ok' and not exists (select 1 from "
                      "answers l where l.person = a.person and l.run = a.run and l.key = a.key and l.id > a.id) order by id",
                      (person, run)).fetchall()


def note_caseload(db: sqlite3.Connection, coach: int, lifters: Iterable[int], since: datetime, at: datetime) -> None:
    """Note that a coach looked at these lines of the caseload: a row for each lifter, where there is none of it since ``since``."""
    name = coach_name(db, coach) or ""
    db.executemany(
        "insert into looks (person, coach, coach_name, what, at) select :person, :coach, :name, 'caseload', :at where not exists "
        "(select 1 from looks where person = :person and coach = :coach and what = 'caseload' and at >= :since)",
        [{"person": one, "coach": coach, "name": name, "at": text_of(at), "since": text_of(since)} for one in lifters])


# one lifter -------------------------------------------------------------------------------------------------


class Concluded(NamedTuple):
    """A conclusion as kept last: its value, the rule that made it, what it rests on, and when."""

    value: str
    rule: str
    because: str
    at: datetime


class Alerted(NamedTuple):
    """An alert, with the run it came from and that run's flow ("" where it came from none)."""

    at: datetime
    level: str
    because: str
    run: str
    flow: str


class LogRow(NamedTuple):
    """A row of the answer log as a page shows it. ``instead_of``: what was answered before it, where it replaced a row;
    ``later``: whether another has replaced it since."""

    id: int
    at: datetime
    flow: str
    key: str
    side: str
    raw: str
    value: Value | None
    unit: str
    status: str
    replaces: int | None
    instead_of: str | None
    later: bool


def concluded_of(db: sqlite3.Connection, person: int) -> dict[str, Concluded]:
    """Return what was concluded last, by name."""
    return {name: Concluded(value, rule, because, moment_of(at)) for name, value, rule, because, at in db.execute(
        "select name, value, rule, because, at from findings where id in (select max(id) from findings where person = ? "
        "group by name)", (person,))}


def alerted_of(db: sqlite3.Connection, person: int, most: int) -> list[Alerted]:
    """Return the latest alerts, the newest first."""
    return [Alerted(moment_of(at), level, because, run, flow or "") for at, level, because, run, flow in db.execute(
        "select a.at, a.level, a.because, a.run, r.flow from alerts a left join runs r on r.person = a.person and r.run = a.run "
        "where a.person = ? order by a.id desc limit ?", (person, most))]


def gone_of(db: sqlite3.Connection, person: int) -> tuple[datetime, str] | None:
    """Return since when a person can't be reached at any address, and why; None where they can."""
    at, why = db.execute("select case when count(*) = count(gone_at) then max(gone_at) end, max(gone_reason) from addresses "
                         "where person = ?", (person,)).fetchone()
    return (moment_of(at), why or "") if at else None


def log_count(db: sqlite3.Connection, person: int) -> int:
    """Return the number of rows of the answer log."""
    return int(db.execute("select count(*) from answers where person = ?", (person,)).fetchone()[0])


def log_rows(db: sqlite3.Connection, person: int, most: int, skip: int) -> list[LogRow]:
    """Return rows of the answer log, the newest first, with what each replaced and whether it was replaced."""
    rows = db.execute(
        "select a.id, a.at, a.flow, a.key, a.side, a.raw, a.value, a.unit, a.status, a.replaces, b.raw, exists (select 1 from "
        "answers l where l.person = a.person and l.run = a.run and l.key = a.key and l.id > a.id) from (select * from answers "
        "where person = ? order by id desc limit ? offset ?) a left join answers b on b.id = a.replaces order by a.id desc",
        (person, most, skip))
    return [LogRow._make((row[0], moment_of(row[1]), *row[2:-1], bool(row[-1]))) for row in rows]
