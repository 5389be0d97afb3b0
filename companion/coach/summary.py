"""The data of one lifter's page: causes, readings, squat days, pinned values and the plan. ``page_of`` is pure.

Numbers are in the lifter's units and days in their calendar, so that coach and lifter see the same ones.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Final, NamedTuple

from companion.base.clock import local_date
from companion.calendar.plan import Plan, SquatDay, next_days
from companion.calendar.preferences import plan_from, zone_from
from companion.calendar.words import plan_words
from companion.coach.holding import Held, holding
from companion.export.table import plain
from companion.language.units import METRIC, shown
from companion.pictures.personal import owner_of
from companion.pictures.series import ChartOwner, days_kept
from companion.record import caseload, coaching, log, orders, people, reminders
from companion.record.caseload import KeptAlert
from companion.record.context import LIMITS, SAFETY_LEVEL, standing_in
from companion.record.log import KeptFact, KeptFinding, LogRow
from companion.record.reminders import Reminder
from companion.record.timestamps import moment_of, text_of
from companion.screening.compliance import compliance_words
from companion.screening.errors import errors_in
from companion.screening.limits import limits_in as limits_told
from companion.screening.limits import words_of
from companion.screening.load_limit import LimitSet, limit_at, limits_in, over_limit
from companion.screening.priming_trial import verdict_of
from companion.screening.protocols import measured, protocol
from companion.screening.readings import STANDING_WORDS, Error, NumberFormat, against_threshold, mean_of
from companion.screening.screen import LoggedAnswer, about_from
from companion.screening.sessions import ReadingSession, all_sessions
from companion.screening.squat_days import ToldDay, days_told, trial_days, trial_seed
from companion.screening.standing import SafetyStanding

CAUSE_NAMES: Final = ("length", "strength", "control")
OVERRULED_PREFIX: Final = "overruled."
DAYS_SHOWN: Final = 5
ALERTS_SHOWN: Final = 5
ACTS_SHOWN: Final = 5
MEDIA_KINDS: Final = ("photo", "video")
DAY_FLOWS: Final = ("squat_day", "squat_after", "about_you", "prime", "trial")
"""The flows whose answers say how a squat day stands against what was set."""


@dataclass(frozen=True, slots=True)
class OverruledFinding:
    """A coach's ruling on a finding, shown beside the computed one; ``rule`` names the coach."""

    name: str
    value: str
    because: str
    rule: str
    at: datetime


@dataclass(frozen=True, slots=True)
class CauseSummary:
    """A cause: its ruling ("likely", "ruled_out", "too_close", "not_tested"; "" before any results), the evidence in words, and a
    coach's ruling beside it."""

    name: str
    ruling: str
    because: str
    overruled: OverruledFinding | None = None


@dataclass(frozen=True, slots=True)
class LatestReading:
    """The latest reading of a test on a side. ``shown``: the mean of its repeats, in words; ``method``: with the placement;
    ``lines``: the comparison with each line; ``error``: the measurement error, in words."""

    test: str
    side: str
    at: datetime
    shown: str
    repeats: int
    method: str
    lines: tuple[str, ...]
    error: str


@dataclass(frozen=True, slots=True)
class SentMedia:
    """A photo or video. ``ref``: the channel's own reference; ``flow`` and ``key``: the question it answers."""

    kind: str
    ref: str
    flow: str
    key: str
    at: datetime


@dataclass(frozen=True, slots=True)
class CoachAction:
    """An act of a coach for the lifter, from the audit log."""

    at: datetime
    coach: str
    what: str
    value: str
    reason: str


@dataclass(frozen=True, slots=True)
class AlertDetail:
    """An alert and the answers of its run: (key, text as written)."""

    alert: KeptAlert
    answers: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class LifterPage:
    """The data of one lifter's page. Texts are unchanged from the record, so the views make them plain.

    ``safety``: the standing now. ``told``: what clinicians told them to leave out, in words. ``went``: the latest answer on whether they
    were seen after a referral. ``over``: on how many of the latest squat days the load was over the limit, in words; ``kept``: how the
    latest days stand against all that was set. ``overall``: the kind of result. ``held``: what holds for them now. ``change``: the
    change at the last retest, with its error; ``trial``: the priming trial's result so far. ``days``, ``media``, ``alarms`` and ``acts``:
    newest first.
    """

    person: int
    name: str
    zone: str
    system: str
    gone: tuple[datetime, str] | None
    safety: SafetyStanding
    told: str
    went: KeptFinding | None
    told_at: str
    overall: str
    overall_words: str
    causes: tuple[CauseSummary, ...]
    overruled: tuple[OverruledFinding, ...]
    numbers: tuple[LatestReading, ...]
    days: tuple[ToldDay, ...]
    over: str
    kept: str
    held: tuple[Held, ...]
    change: KeptFinding | None
    trial: str
    goal: str
    plan: Plan
    plan_words: str
    coming: tuple[SquatDay, ...]
    next_reminder: Reminder | None
    retest_to_come: bool
    media: tuple[SentMedia, ...]
    alarms: tuple[AlertDetail, ...]
    acts: tuple[CoachAction, ...]
    reviewed_at: str
    answers: int
    answered_at: datetime | None


@dataclass(frozen=True, slots=True)
class LifterRecords:
    """The records a lifter's page is made from; the answer log and reminders oldest first, alerts and acts newest first."""

    person: int
    name: str
    facts: Mapping[str, KeptFact]
    concluded: Mapping[str, KeptFinding]
    log: Sequence[LogRow]
    alerts: Sequence[KeptAlert]
    acts: Sequence[CoachAction]
    reminders: Sequence[Reminder]
    gone: tuple[datetime, str] | None = None
    reviewed_at: str = ""
    pain_open: datetime | None = None
    limits: Sequence[LimitSet] = ()
    standing: Mapping[str, orders.Holding] = field(default_factory=dict)
    whose: ChartOwner = field(default_factory=ChartOwner)


def lifter_page(db: sqlite3.Connection, coach: int, lifter: int, now: datetime) -> LifterPage:
    """Return the page of a lifter for a coach. The caller has checked that the coach may see it."""
    return page_of(lifter_records(db, coach, lifter), now)


def lifter_records(db: sqlite3.Connection, coach: int, lifter: int) -> LifterRecords:
    """Read the records of a lifter's page."""
    acts = tuple(CoachAction(moment_of(at), *rest) for at, *rest in coaching.latest_acts(db, lifter, ACTS_SHOWN))
    facts = log.facts_of(db, lifter)
    system = str(facts["welcome.units"].value) if "welcome.units" in facts else METRIC
    return LifterRecords(lifter, people.name_of(db, lifter), facts, log.findings_of(db, lifter),
                tuple(log.answers_of(db, lifter)), caseload.alerts_of(db, lifter, ALERTS_SHOWN), acts,
                reminders.open_reminders(db, lifter), caseload.unreachable_since(db, lifter), coaching.reviewed_at(db, lifter, coach),
                log.pain_open_of(db, lifter), limits_in(log.load_limits_of(db, lifter)), orders.held_of(db, lifter, system),
                owner_of(db, lifter))


class SquatsTold(NamedTuple):
    """A lifter's squats in a few words: how the days stand against what was set, the last day, and the most load for now; "" where there
    is none. ``last_day``: its date."""

    kept: str
    last: str
    last_day: date | None
    most: str


def squats_of(db: sqlite3.Connection, lifter: int, now: datetime) -> SquatsTold:
    """Return a lifter's squats for a line of a caseload."""
    whose = owner_of(db, lifter)
    answers = answers_in(log.answers_of(db, lifter), DAY_FLOWS)
    days = [day for day in days_told(answers, whose.zone) if day.squatted]
    last, most = days[-1] if days else None, limit_at(whose.limits, now)
    told = "" if last is None else f"{last.day:%a} {last.day.day} {last.day:%b}" + (
        f", {shown(last.load, 'kg', whose.system)}" if last.load else "")
    return SquatsTold(compliance_words(days_kept(answers, whose, days)), told, last.day if last else None,
                      "" if most is None else f"at most {shown(most, 'kg', whose.system)}")


def page_of(held: LifterRecords, now: datetime) -> LifterPage:
    """Return the page of these records."""
    facts = {name: kept.value for name, kept in held.facts.items()}
    zone, system = zone_from(facts, now), str(facts.get("welcome.units", METRIC))
    today = local_date(now, zone)
    found = held.concluded
    overruled = {(name := key.removeprefix(OVERRULED_PREFIX)): OverruledFinding(name, one.value, one.because, one.rule, one.at)
                 for key, one in found.items() if key.startswith(OVERRULED_PREFIX) and one.value}
    plan = plan_from(facts)
    told = answers_in(held.log, DAY_FLOWS)
    days = [day for day in days_told(told, zone) if day.squatted]
    return LifterPage(
        held.person, held.name, zone, system, held.gone, safety_of(held, facts, now),
        words_of(limits_told(facts.get(LIMITS)), lambda value, unit: shown(value, unit, system)), found.get("referral.went"),
        str(facts.get("outcome.at", "")), str(facts.get("overall", "")), found["overall"].because if "overall" in found else "",
        tuple(_cause(name, facts, found, overruled) for name in CAUSE_NAMES), tuple(overruled.values()),
        latest_readings(held.log, lambda value, unit: shown(value, unit, system)), tuple(reversed(days[-DAYS_SHOWN:])),
        over_limit(days, held.limits).words(lambda value, unit: shown(value, unit, system)),
        compliance_words(days_kept(told, held.whose, days)),
        holding(held.facts, found, held.standing, zone, lambda value, unit: shown(value, unit, system)), found.get("retest.change"),
        verdict_of(seed, trial_days(days)).words if (seed := trial_seed(told, str(held.person))) else "",
        str(facts.get("squat.goal", "")), plan, plan_words(plan), tuple(next_days(plan, today, 2)),
        held.reminders[0] if held.reminders else None, any(one.kind == "retest" for one in held.reminders),
        media_in(held.log), tuple(_alarm(one, held.log) for one in held.alerts),
        tuple(held.acts), held.reviewed_at, len(held.log), held.log[-1].at if held.log else None)


def safety_of(held: LifterRecords, facts: Mapping[str, float | str], now: datetime) -> SafetyStanding:
    """Return the lifter's safety standing."""
    pain = {log.PAIN_OPEN: text_of(held.pain_open)} if held.pain_open else {}
    return standing_in({**facts, **pain}, held.facts[SAFETY_LEVEL].at if SAFETY_LEVEL in held.facts else None, now)


def answers_in(rows: Iterable[LogRow], flows: Iterable[str]) -> list[LoggedAnswer]:
    """Return the rows of some flows as screening answers."""
    wanted = frozenset(flows)
    return [log.as_answer(row) for row in rows if row.flow in wanted]


def latest_readings(rows: Iterable[LogRow], show: NumberFormat) -> tuple[LatestReading, ...]:
    """Return the latest reading of each measured test and side, compared with its lines."""
    answers = answers_in(rows, (*(one.id for one in measured()), "warm_up", "about_you"))
    sessions = all_sessions(answers)
    errors = errors_in(sessions.values(), about_from(answers).sex)
    return tuple(_number(taken[-1], errors.of(test, taken[-1].readings[0].method), show) for (test, _), taken in sessions.items() if taken)


def _number(session: ReadingSession, error: Error, show: NumberFormat) -> LatestReading:
    readings, first = session.readings, session.readings[0]
    seen = show(round(mean_of(readings), 1), first.unit)
    lines = []
    for line in protocol(first.test).thresholds_in(first.unit):
        answer = against_threshold(readings, line, error, show)
        lines.append(f"{line.name}: {answer.compared}")
        seen = answer.seen if first.width else seen
    if first.width:
        told = f"by eye, a band of {show(first.width, first.unit)}"
    else:
        own = f", with {error.own} of their own repeats" if error.own else ""
        told = (f"{show(error.sem, first.unit)} (SEM); a change counts from "
                f"{show(error.mdc, first.unit)} ({STANDING_WORDS[error.standing]}{own})")
    how = " ".join(filter(None, (first.method.replace("_", " "), first.placement)))
    return LatestReading(first.test, first.side, session.at, seen, len(readings), how, tuple(lines), told)


def media_in(rows: Sequence[LogRow]) -> tuple[SentMedia, ...]:
    """Return photos and videos that were not withdrawn, newest first; as the channel's own references, which work only there."""
    latest = {(row.run, row.key): row for row in rows if row.key.startswith(MEDIA_KINDS)}
    return tuple(SentMedia(row.raw, row.value, row.flow, row.key, row.at) for row in reversed(latest.values())
                 if row.status == "ok" and row.raw in MEDIA_KINDS and isinstance(row.value, str))


def _cause(name: str, facts: Mapping[str, float | str], found: Mapping[str, KeptFinding],
           overruled: Mapping[str, OverruledFinding]) -> CauseSummary:
    return CauseSummary(name, str(facts.get(name, "")), found[name].because if name in found else "", overruled.get(name))


def _alarm(alert: KeptAlert, rows: Sequence[LogRow]) -> AlertDetail:
    said = {row.key: row for row in rows if alert.run and row.run == alert.run}
    return AlertDetail(alert, tuple((key, plain(row.raw)) for key, row in said.items() if row.status == "ok"))
