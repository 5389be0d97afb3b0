"""Rows for a coach's pages: the whole caseload in one query, and the parts of one lifter's page."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable
from datetime import datetime
from typing import Any, Final, NamedTuple

from companion.calendar.preferences import zone_from
from companion.record.access import ANSWER_SHARED
from companion.record.coaching import CLINICIANS_WORD, NOT_TAKEN_BACK, REVIEW_STANDS, coach_name
from companion.record.load_over import OverLoad, over_load_of
from companion.record.log import LIMIT_NAMES, Value
from companion.record.timestamps import moment_of, text_of
from companion.record.unanswered import TOLD_SINCE, open_questions
from companion.screening.standing import OpenQuestions, SafetyStanding, standing_of


class CaseloadRow(NamedTuple):
    """One lifter in the caseload query. Moments are stored text; None where there is nothing.

    ``linked``: start of the link to the coach. ``reviewed``: the coach's last review. ``gone``: the time since which no address of
    theirs can be reached, a space, and the reason. ``hurt_*``: the latest alert since the review from the pain questions or the morning
    after; ``where``, ``bad`` and ``how`` are the answers there; ``hurt_told``: since when the pain is told. ``open_at``: start of pain
    questions that were left unfinished, with no finished ones and no review since. ``change``: result of the last retest (better,
    within_error, worse, cannot_say). ``back``: the lower back on the last squat day; ``step_why``: its effect on the depth, where the
    back moved. ``retest_*``: the latest retest reminder. ``answered``: the latest answer. ``why``: the answers that led to the safety
    level. ``pain_open``: like ``open_at``, regardless of reviews. ``zones``: the facts about their time zone, as JSON. ``limits``: what
    clinicians told them to leave out, as stored. ``plan``: their squat days, as stored. ``pin`` and ``keep``: the depth a coach has
    set, and the tests. ``close``: the causes too close to call. ``note``: time, a space and words of the last note to this coach who
    has not looked since. ``looked``: the coach's last look at this lifter, or act for them, "" for none; ``snoozed``: the day until
    which they put this lifter aside, told at ``snoozed_at``; ``dismissed``: up to when they have put aside what was new. ``asks``:
    time, a space and words of the alert since the review by which they asked for a call; ``told``: the same of the latest alert that no
    coach has seen of what a clinician told them. ``on_their_own``: 1 for a coach whom nobody coaches. ``undone``: 1 if a wrong
    tap was taken back since that alert. ``asked``: questions not
    answered, beside those about pain. ``over``: on how many of the latest squat days the load was over the limit.
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
    retest_made: str | None
    retest_wall: str | None
    answered: str | None
    why: Value | None
    pain_open: str | None
    zones: str
    limits: Value | None
    plan: Value | None
    step_at: str | None
    pin: Value | None
    pin_at: str | None
    keep: Value | None
    close: str | None
    note: str | None
    looked: str
    snoozed: str | None
    snoozed_at: str | None
    dismissed: str | None
    asks: str | None = None
    told: str | None = None
    hurt_told: str | None = None
    on_their_own: int = 0
    undone: int = 0
    asked: OpenQuestions | None = None
    over: OverLoad | None = None

    def safety(self, now: datetime) -> SafetyStanding:
        """Return their safety standing, as every page has it."""
        return standing_of(self.level, moment_of(self.level_at) if self.level_at else None, str(self.why or ""),
                           moment_of(self.pain_open) if self.pain_open else None, now, zone_from(json.loads(self.zones), now),
                           self.limits, self.asked)


HURT_ASKED: Final = "was asked whether something hurt"
"""The beginning of an alert about that question left unanswered; from whichever flow, it counts as from the pain questions."""

_SAID: Final = ("(select value from answers where person = m.person and run = h.run and key = '{0}' and status = 'ok' "
                "order by id desc limit 1)")
_BECAUSE: Final = "(select because from findings where person = m.person and name = '{0}' order by id desc limit 1)"
_FACT: Final = "left join facts {0} on {0}.person = m.person and {0}.name = '{1}'"
_ALERT: Final = ("(select a.at || ' ' || a.because from alerts a join runs u on u.person = a.person and u.run = a.run "
                 "where a.person = m.person and {0} order by a.id desc limit 1)")
_OPEN: Final = TOLD_SINCE.format(
    at="select max(u.began_at) from runs u where u.person = m.person and u.flow = 'pain' and ifnull(u.ending, 'left') <> 'done' and "
       "u.began_at > {0}", person="m.person")
_LOOKED: Final = ("max(ifnull((select max(at) from looks l where l.person = {0} and {1} and l.what not in ('caseload', 'agreed', "
                  "'withdrawn', 'the coach is none any more')), ''), ifnull((select max(at) from acts l where l.person = {0} and {1} and "
                  "l.what not in ('snooze', 'dismiss', 'unreviewed', 'group') and l.several = 0), ''))")
_PUT_ASIDE: Final = (f"(select a.{{0}} from acts a where a.person = k.person and a.coach = :coach and a.what = '{{1}}' and "
                     f"{NOT_TAKEN_BACK} order by a.id desc limit 1)")
_LINKED: Final = f"""
with m as materialized (
    select k.person, k.since,
        (select max(at) from acts a where a.person = k.person and a.coach = :coach and {REVIEW_STANDS}) as reviewed,
        {_LOOKED.format('k.person', 'l.coach = :coach')} as looked,
        {_PUT_ASIDE.format('value', 'snooze')} as snoozed,
        {_PUT_ASIDE.format('at', 'snooze')} as snoozed_at, {_PUT_ASIDE.format('at', 'dismiss')} as dismissed
    from coaches k join coach_roles c on c.person = k.coach and c.until is null
    where k.coach = :coach and k.until is null)
"""
_EVERYONE: Final = f"""
with m as materialized (
    select p.id as person, p.created_at as since,
        (select max(at) from acts a where a.person = p.id and {REVIEW_STANDS}) as reviewed,
        {_LOOKED.format('p.id', 'l.coach is not null')} as looked, null as snoozed, null as snoozed_at, null as dismissed
    from persons p where not exists (select 1 from coach_roles c where c.person = p.id)
        or exists (select 1 from runs r where r.person = p.id and r.flow = 'welcome' and r.ending = 'done'))
"""
CASELOAD_QUERY: Final = f"""
select m.person, (select min(name) from addresses a where a.person = m.person), m.since, m.reviewed,
    (select max(gone_at || ' ' || ifnull(gone_reason, '')) from addresses a where a.person = m.person
     having count(*) = count(gone_at)),
    h.at, hr.flow, h.level,
    case when h.id is not null then {_SAID.format('where')} end, case when h.id is not null then {_SAID.format('bad')} end,
    case when h.id is not null then {_SAID.format('how')} end,
    {_OPEN.format("max(ifnull(m.reviewed, ''), ifnull(p.at, ''))")},
    s.value, s.at, o.value, w.value, d.value, c.value, c.at,
    case when c.value is not null then {_BECAUSE.format('retest.change')} end, b.value, b.at,
    case when b.value = 'moved' then {_BECAUSE.format('depth.step')} end,
    r.state, r.due_at, r.settled_at, r.made_at, r.wall || ' ' || r.zone,
    (select at from answers a where a.person = m.person order by id desc limit 1),
    y.value, {_OPEN.format("ifnull(p.at, '')")},
    (select json_group_object(name, value) from facts z where z.person = m.person and z.name in
     ('welcome.zone', 'coach_welcome.zone', 'zone.away', 'zone.until')),
    q.value, l.value,
    d.at, e.value, e.at, k.value,
    (select group_concat(name) from facts z where z.person = m.person and z.name in ('length', 'strength', 'control') and
     z.value = 'too_close'),
    case when t.at > m.looked then (select n.at || ' ' || n.value from answers n
     join runs u on u.person = n.person and u.run = n.run where n.person = m.person and
     n.flow = 'note_to_coach' and n.key = 'text' and n.status = 'ok' and n.at > m.looked and (:coach is null or not exists (select 1
     from coach_roles c where c.person <> :coach and cast(c.person as text) = u.asked)) order by n.id desc limit 1) end,
    m.looked, m.snoozed, m.snoozed_at, m.dismissed,
    {_ALERT.format("u.flow in ('crisis', 'begin_again') and a.at > ifnull(m.reviewed, '')")},
    {_ALERT.format(f"u.flow in {CLINICIANS_WORD} and a.seen_at is null")},
    case when hr.flow = 'pain' then {TOLD_SINCE.format(at='hr.began_at', person='m.person')} end,
    exists (select 1 from coach_roles c where c.person = m.person and c.until is null) and not exists (
        select 1 from coaches k where k.person = m.person and k.until is null),
    exists (select 1 from facts f where f.person = m.person and f.name = 'safety.undone' and f.value = 'yes' and f.at >= h.at),
    exists (select 1 from facts f where f.person = m.person and f.name = 'squat.answered') and exists (
        select 1 from findings f where f.person = m.person and f.name in {LIMIT_NAMES} and f.value <> '')
from m
left join alerts h on h.id = (
    select a.id from alerts a join runs u on u.person = a.person and u.run = a.run and (u.flow in ('pain', 'morning')
        or substr(a.because, 1, {len(HURT_ASKED)}) = '{HURT_ASKED}')
    where a.person = m.person and a.at > ifnull(m.reviewed, '') and not exists (select 1 from findings f where f.person = a.person
        and f.name = 'pain.taken_back' and a.at between f.value and f.at) order by a.id desc limit 1)
left join runs hr on hr.person = m.person and hr.run = h.run
{_FACT.format('p', 'pain.hurt')} {_FACT.format('s', 'safety.level')} {_FACT.format('o', 'outcome.at')}
{_FACT.format('w', 'overall')} {_FACT.format('d', 'depth.step')} {_FACT.format('c', 'retest.change')}
{_FACT.format('b', 'squat_after.back')} {_FACT.format('y', 'safety.why')}
{_FACT.format('q', 'safety.limits')} {_FACT.format('l', 'squat.plan')}
{_FACT.format('e', 'depth.pin')} {_FACT.format('k', 'depth.keep')} {_FACT.format('t', 'note_to_coach.text')}
left join reminders r on r.id = (select id from reminders t where t.person = m.person and t.kind = 'retest' order by id desc limit 1)
"""
"""The rows of the lifters in ``m`` (person, since, reviewed), which the start of the query selects."""


def caseload_rows(db: sqlite3.Connection, coach: int) -> list[CaseloadRow]:
    """Return a row for each lifter linked to this coach now; none if the person is not a coach."""
    return _with_questions(db, db.execute(_LINKED + CASELOAD_QUERY, {"coach": coach}))


def all_caseload_rows(db: sqlite3.Connection) -> list[CaseloadRow]:
    """Return a row for every lifter, linked to a coach or not, for the operator; coaches who test themselves included.
    ``linked`` is the time they joined, ``reviewed`` the last review by any coach."""
    return _with_questions(db, db.execute(f"{_EVERYONE}{CASELOAD_QUERY}", {"coach": None}))


def _with_questions(db: sqlite3.Connection, rows: Iterable[tuple[Any, ...]]) -> list[CaseloadRow]:
    asked = open_questions(db)
    return [CaseloadRow._make((*row, asked.get(row[0]), over_load_of(db, row[0]) if limited else None)) for *row, limited in rows]


def latest_answers(db: sqlite3.Connection, person: int, flows: Iterable[str], keys: Iterable[str], most: int,
                   before: str = "9") -> list[tuple[str, str]]:
    """Return the latest answers of a lifter to questions of these flows and keys (none named: any), of one run: (key, words as written,
    or the value where it was picked), oldest first. ``before``: none that was given later than that moment."""
    rows = db.execute(
        "select key, raw from (select key, iif(raw <> '', raw, cast(value as text)) as raw, run, id, "
        f"first_value(run) over (order by id desc) as last from answers where person = :person and {ANSWER_SHARED} and status = 'ok' and "
        "at <= :before and "
        "(json_array_length(:flows) = 0 or flow in (select value from json_each(:flows))) and "
        "(json_array_length(:keys) = 0 or key in (select value from json_each(:keys)))) where run = last order by id desc limit :most",
        {"person": person, "flows": json.dumps(list(flows)), "keys": json.dumps(list(keys)), "most": most, "before": before}).fetchall()
    return rows[::-1]


def audit_caseload(db: sqlite3.Connection, coach: int, lifters: Iterable[int], since: datetime, at: datetime) -> None:
    """Add a caseload look at each of these lifters to the audit log, unless this coach has one there since ``since``."""
    name = coach_name(db, coach) or ""
    db.executemany(
        "insert into looks (person, coach, coach_name, what, at) select :person, :coach, :name, 'caseload', :at where not exists "
        "(select 1 from looks where person = :person and coach = :coach and what = 'caseload' and at >= :since)",
        [{"person": one, "coach": coach, "name": name, "at": text_of(at), "since": text_of(since)} for one in lifters])


# one lifter -------------------------------------------------------------------------------------------------


class KeptAlert(NamedTuple):
    """An alert, the run it came from and that run's flow ("" where there is none); when and by whom it was seen, None and "" for nobody."""

    at: datetime
    level: str
    because: str
    run: str
    flow: str
    seen_at: datetime | None
    seen_by: str


def alerts_of(db: sqlite3.Connection, person: int, most: int = -1) -> list[KeptAlert]:
    """Return a lifter's latest alerts, the newest first; all of them where ``most`` is negative."""
    return [KeptAlert(moment_of(at), level, because, run, flow, moment_of(seen) if seen else None, by)
            for at, level, because, run, flow, seen, by in db.execute(
        "select a.at, a.level, a.because, a.run, ifnull(r.flow, ''), a.seen_at, coalesce("
        "(select coach_name from acts where person = a.person and at = a.seen_at limit 1), "
        "(select coach_name from looks where person = a.person and at = a.seen_at limit 1), '') "
        "from alerts a left join runs r on r.person = a.person and r.run = a.run where a.person = ? order by a.id desc limit ?",
        (person, most))]


def unreachable_since(db: sqlite3.Connection, person: int) -> tuple[datetime, str] | None:
    """Return the time since which no address of a person can be reached, and the reason; None where one can."""
    at, why = db.execute("select case when count(*) = count(gone_at) then max(gone_at) end, max(gone_reason) from addresses "
                         "where person = ?", (person,)).fetchone()
    return (moment_of(at), why or "") if at else None
