"""Rows for a coach's pages: the whole caseload in one query, and the parts of one lifter's page."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from datetime import datetime
from typing import Final, NamedTuple

from companion.record.coaching import REVIEW_STANDS, coach_name
from companion.record.log import Value
from companion.record.timestamps import moment_of, text_of


class CaseloadRow(NamedTuple):
    """One lifter in the caseload query. Moments are stored text; None where there is nothing.

    ``linked``: start of the link to the coach. ``reviewed``: the coach's last review. ``gone``: the time since which no address
    of theirs can be reached, a space, and the reason. ``hurt_*``: the latest alert since the review from the pain questions or
    the morning after; ``where``, ``bad`` and ``how`` are the answers there. ``open_at``: start of pain questions that were left
    unfinished, with no finished ones and no review since. ``change``: result of the last retest (better, within_error, worse,
    cannot_say). ``back``: the lower back on the last squat day; ``step_why``: its effect on the depth, where the back moved.
    ``retest_*``: the latest retest reminder. ``answered``: the latest answer.
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
        (select max(at) from acts a where a.person = k.person and a.coach = :coach and {REVIEW_STANDS}) as reviewed
    from coaches k join coach_roles c on c.person = k.coach and c.until is null
    where k.coach = :coach and k.until is null)
"""
_EVERYONE: Final = f"""
with m as materialized (
    select p.id as person, p.created_at as since,
        (select max(at) from acts a where a.person = p.id and {REVIEW_STANDS}) as reviewed
    from persons p where not exists (select 1 from coach_roles c where c.person = p.id)
        or exists (select 1 from runs r where r.person = p.id and r.flow = 'about_you'))
"""
CASELOAD_QUERY: Final = f"""
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
    where a.person = m.person and a.at > ifnull(m.reviewed, '') order by a.id desc limit 1)
left join runs hr on hr.person = m.person and hr.run = h.run
{_FACT.format('p', 'pain.hurt')} {_FACT.format('s', 'safety.level')} {_FACT.format('o', 'outcome.at')}
{_FACT.format('w', 'overall')} {_FACT.format('d', 'depth.step')} {_FACT.format('c', 'retest.change')}
{_FACT.format('b', 'squat_after.back')}
left join reminders r on r.id = (select id from reminders t where t.person = m.person and t.kind = 'retest' order by id desc limit 1)
"""
"""The rows of the lifters in ``m`` (person, since, reviewed), which the start of the query selects."""


def caseload_rows(db: sqlite3.Connection, coach: int) -> list[CaseloadRow]:
    """Return a row for each lifter linked to this coach now; none if the person is not a coach."""
    return list(map(CaseloadRow._make, db.execute(_LINKED + CASELOAD_QUERY, {"coach": coach})))


def all_caseload_rows(db: sqlite3.Connection) -> list[CaseloadRow]:
    """Return a row for every lifter, linked to a coach or not, for the operator; coaches who test themselves included.
    ``linked`` is the time they joined, ``reviewed`` the last review by any coach."""
    return list(map(CaseloadRow._make, db.execute(f"{_EVERYONE}{CASELOAD_QUERY}")))


def unreported_pain(db: sqlite3.Connection, before: datetime, after: datetime) -> list[tuple[int, str]]:
    """Return (person, run) of pain conversations begun between two moments, unfinished and without an alert; the latest of each person."""
    return db.execute(
        "select u.person, u.run from runs u where u.flow = 'pain' and u.began_at between ? and ? and ifnull(u.ending, 'left') <> 'done' "
        "and not exists (select 1 from alerts a where a.person = u.person and a.run = u.run) and not exists (select 1 from runs l "
        "where l.flow = 'pain' and l.person = u.person and l.began_at > u.began_at)", (text_of(after), text_of(before))).fetchall()


def answers_in_run(db: sqlite3.Connection, person: int, run: str) -> list[tuple[str, str]]:
    """Return the current answers of a run: (key, text as written)."""
    return db.execute("select key, raw from answers a where person = ? and run = ? and status = 'ok' and not exists (select 1 from "
                      "answers l where l.person = a.person and l.run = a.run and l.key = a.key and l.id > a.id) order by id",
                      (person, run)).fetchall()


def audit_caseload(db: sqlite3.Connection, coach: int, lifters: Iterable[int], since: datetime, at: datetime) -> None:
    """Add a caseload look at each of these lifters to the audit log, unless this coach has one there since ``since``."""
    name = coach_name(db, coach) or ""
    db.executemany(
        "insert into looks (person, coach, coach_name, what, at) select :person, :coach, :name, 'caseload', :at where not exists "
        "(select 1 from looks where person = :person and coach = :coach and what = 'caseload' and at >= :since)",
        [{"person": one, "coach": coach, "name": name, "at": text_of(at), "since": text_of(since)} for one in lifters])


# one lifter -------------------------------------------------------------------------------------------------


class KeptAlert(NamedTuple):
    """An alert, the run it came from and that run's flow ("" where there is none)."""

    at: datetime
    level: str
    because: str
    run: str
    flow: str


class LogPageRow(NamedTuple):
    """A row of the answer log as a page shows it. ``instead_of``: the text of the answer it replaced; ``later``: true if it was
    replaced in turn."""

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


def alerts_of(db: sqlite3.Connection, person: int, most: int = -1) -> list[KeptAlert]:
    """Return a lifter's latest alerts, the newest first; all of them where ``most`` is negative."""
    return [KeptAlert(moment_of(at), level, because, run, flow or "") for at, level, because, run, flow in db.execute(
        "select a.at, a.level, a.because, a.run, r.flow from alerts a left join runs r on r.person = a.person and r.run = a.run "
        "where a.person = ? order by a.id desc limit ?", (person, most))]


def unreachable_since(db: sqlite3.Connection, person: int) -> tuple[datetime, str] | None:
    """Return the time since which no address of a person can be reached, and the reason; None where one can."""
    at, why = db.execute("select case when count(*) = count(gone_at) then max(gone_at) end, max(gone_reason) from addresses "
                         "where person = ?", (person,)).fetchone()
    return (moment_of(at), why or "") if at else None


def log_count(db: sqlite3.Connection, person: int) -> int:
    """Return the number of rows of the answer log."""
    return int(db.execute("select count(*) from answers where person = ?", (person,)).fetchone()[0])


def log_rows(db: sqlite3.Connection, person: int, most: int, skip: int) -> list[LogPageRow]:
    """Return at most ``most`` rows of the answer log after the first ``skip``, newest first."""
    rows = db.execute(
        "select a.id, a.at, a.flow, a.key, a.side, a.raw, a.value, a.unit, a.status, a.replaces, b.raw, exists (select 1 from "
        "answers l where l.person = a.person and l.run = a.run and l.key = a.key and l.id > a.id) from (select * from answers "
        "where person = ? order by id desc limit ? offset ?) a left join answers b on b.id = a.replaces order by a.id desc",
        (person, most, skip))
    return [LogPageRow._make((row[0], moment_of(row[1]), *row[2:-1], bool(row[-1]))) for row in rows]
