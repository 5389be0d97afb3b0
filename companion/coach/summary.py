"""The data of one lifter's page: causes, squat days, pinned values and the plan.

Numbers are in the lifter's units and days in their calendar, so that coach and lifter see the same ones.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final, NamedTuple

from companion.base.clock import zone_of
from companion.calendar.plan import SquatDay, days_to_come
from companion.calendar.preferences import plan_from, prompted, zone_from
from companion.calendar.words import plan_words
from companion.coach.holding import Held, holding
from companion.export.table import plain
from companion.language.units import METRIC, shown
from companion.pictures.personal import owner_of
from companion.pictures.series import days_kept
from companion.record import access, caseload, coaching, log, orders, reminders
from companion.record.caseload import KeptAlert
from companion.record.coaching import ActRow
from companion.record.context import LIMITS, standing_now
from companion.record.load_over import over_load_of
from companion.record.log import KeptFinding, LogRow
from companion.record.reminders import Reminder
from companion.screening.compliance import compliance_words
from companion.screening.limits import limits_in as limits_told
from companion.screening.limits import words_of
from companion.screening.priming_trial import verdict_of
from companion.screening.screen import LoggedAnswer
from companion.screening.squat_days import ToldDay, days_told, trial_days, trial_seed
from companion.screening.standing import SafetyStanding

PAUSED_WORDS: Final = "Reminders are paused for now, and none is sent."
"""Said alike of whoever has stopped all reminders and of whoever is not sent any: why is theirs to tell."""

CAUSE_NAMES: Final = ("length", "strength", "control")
DAYS_SHOWN: Final = 5
ALERTS_SHOWN: Final = 5
ACTS_SHOWN: Final = 5
MEDIA_KINDS: Final = ("photo", "video")
DAY_FLOWS: Final = ("squat_day", "squat_after", "about_you", "prime", "trial")
"""The flows whose answers say how a squat day stands against what was set."""


@dataclass(frozen=True, slots=True)
class CauseSummary:
    """A cause: its ruling ("likely", "ruled_out", "too_close", "not_tested"; "" before any results), the evidence in words, and a
    coach's ruling beside it, whose rule names the coach."""

    name: str
    ruling: str
    because: str
    overruled: KeptFinding | None = None


class SentMedia(NamedTuple):
    """A photo or video: its kind, the flow whose question it answers, and when."""

    kind: str
    flow: str
    at: datetime


class AlertDetail(NamedTuple):
    """An alert and the answers of its run: (key, text as written)."""

    alert: KeptAlert
    answers: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class LifterPage:
    """The data of one lifter's page. Texts are unchanged from the record, so the views make them plain.

    ``safety``: the standing now. ``told``: what clinicians told them to leave out, in words. ``went``: the latest answer on whether they
    were seen after a referral. ``over``: on how many of the latest squat days the load was over the limit, in words; ``kept``: how the
    latest days stand against all that was set. ``overall``: the kind of result. ``held``: what holds for them now. ``change``: the
    change at the last retest, with its error; ``waiting``: the reminders that go out, the soonest first; ``paused``: none does, for
    whatever reason, which is not told; ``trial``: the priming trial's result so far. ``days``, ``media``, ``alarms`` and ``acts``:
    newest first.
    """

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
    days: tuple[ToldDay, ...]
    over: str
    kept: str
    held: tuple[Held, ...]
    change: KeptFinding | None
    trial: str
    goal: str
    plan_words: str
    coming: tuple[SquatDay, ...]
    waiting: tuple[Reminder, ...]
    paused: bool
    retest_to_come: bool
    media: tuple[SentMedia, ...]
    alarms: tuple[AlertDetail, ...]
    acts: tuple[ActRow, ...]
    reviewed_at: str
    answers: int
    answered_at: datetime | None


def lifter_page(db: sqlite3.Connection, coach: int, lifter: int, now: datetime) -> LifterPage:
    """Return the page of a lifter for a coach. The caller has checked that the coach may see it."""
    kept, found, rows = access.facts_of(db, lifter), access.findings_of(db, lifter), tuple(access.answers_of(db, lifter))
    facts, waiting, whose = {name: one.value for name, one in kept.items()}, reminders.open_reminders(db, lifter), owner_of(db, lifter)
    zone, system = zone_from(facts, now), str(facts.get("welcome.units", METRIC))
    plan, told = plan_from(facts), answers_in(rows, DAY_FLOWS)
    days = [day for day in days_told(told, zone) if day.squatted]
    seed = trial_seed(told, str(lifter))
    suspended = log.paused_of(db, lifter) != ""
    paused = suspended or not (waiting or prompted(facts))

    def show(value: float, unit: str) -> str:
        """Return a number in the lifter's units."""
        return shown(value, unit, system)

    return LifterPage(
        zone, system, caseload.unreachable_since(db, lifter), standing_now(db, lifter, now),
        words_of(limits_told(facts.get(LIMITS)), show), found.get("referral.went"), str(facts.get("outcome.at", "")),
        str(facts.get("overall", "")), found["overall"].because if "overall" in found else "",
        tuple(_cause(name, facts, found) for name in CAUSE_NAMES), tuple(reversed(days[-DAYS_SHOWN:])),
        over.words if (over := over_load_of(db, lifter)) else "", compliance_words(days_kept(told, whose, days)),
        holding(kept, found, orders.held_of(db, lifter, system), zone, show), found.get("retest.change"),
        verdict_of(seed, trial_days(days)).words if seed else "", str(facts.get("squat.goal", "")), plan_words(plan),
        tuple(days_to_come(plan, now.astimezone(zone_of(zone)), 2)), () if suspended else tuple(waiting), paused,
        any(one.kind == "retest" for one in waiting),
        media_in(rows), tuple(_alarm(one, rows) for one in caseload.alerts_of(db, lifter, ALERTS_SHOWN)),
        tuple(coaching.latest_acts(db, lifter, ACTS_SHOWN)), coaching.reviewed_at(db, lifter, coach), len(rows),
        rows[-1].at if rows else None)


def answers_in(rows: Iterable[LogRow], flows: Iterable[str]) -> list[LoggedAnswer]:
    """Return the rows of some flows as screening answers."""
    wanted = frozenset(flows)
    return [log.as_answer(row) for row in rows if row.flow in wanted]


def media_in(rows: Sequence[LogRow]) -> tuple[SentMedia, ...]:
    """Return photos and videos that were not withdrawn, newest first."""
    latest = {(row.run, row.key): row for row in rows if row.key.startswith(MEDIA_KINDS)}
    return tuple(SentMedia(row.raw, row.flow, row.at) for row in reversed(latest.values())
                 if row.status == "ok" and row.raw in MEDIA_KINDS and isinstance(row.value, str))


def _cause(name: str, facts: Mapping[str, float | str], found: Mapping[str, KeptFinding]) -> CauseSummary:
    overruled = found.get(f"overruled.{name}")
    return CauseSummary(name, str(facts.get(name, "")), found[name].because if name in found else "",
                        overruled if overruled and overruled.value else None)


def _alarm(alert: KeptAlert, rows: Sequence[LogRow]) -> AlertDetail:
    said = {row.key: row for row in rows if alert.run and row.run == alert.run}
    return AlertDetail(alert, tuple((key, plain(row.raw)) for key, row in said.items() if row.status == "ok"))
