"""Planning: from a person's plan to their open reminders, one of each planned kind.

Done again, in the same commit, whenever the plan, the preferences or the zone change and whenever a reminder is settled. So only the
next of each kind is open, and a plan changed a hundred times leaves one prompt and one follow-up. Somebody away in another zone has
one more, due on the day they are back, when the zone changes.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Mapping
from datetime import date, datetime, time, timedelta
from typing import Final

from companion.base.clock import instant, local_date
from companion.calendar.preferences import Value, away_until, preferences_from, prompted, zone_from
from companion.calendar.prompts import after_quiet
from companion.record import outbox, reminders
from companion.record.reminders import Reminder
from companion.reminders import squat_days
from companion.reminders.basis import PlannedReminder, PlanningBasis, wall_time, was_postponed
from companion.reminders.kinds import REMINDER_KINDS, STOP_ALL, When, ended_by_stop_all


def _zone_over(kind: str, of: PlanningBasis) -> PlannedReminder | None:
    """Return the end of somebody's stay in another zone; None where they are not away."""
    over = away_until(of.facts, of.now)
    return PlannedReminder(over, wall_time(over, of.zone), stale=over) if over else None


def _digest_hour(kind: str, of: PlanningBasis) -> PlannedReminder | None:
    """Return a coach's next digest, daily or on Mondays at their hour; None for anybody else or a coach who wants none."""
    often, at = str(of.facts.get("coach.digest", "none")), str(of.facts.get("coach.digest_at", ""))
    if often == "none" or not at or of.facts.get("is_coach") != "yes":
        return None
    hour, day = time.fromisoformat(at), local_date(of.now, of.zone)
    while instant(day, hour, of.zone) <= of.now or (often == "weekly" and day.weekday()):
        day += timedelta(days=1)
    stale = instant(day + timedelta(days=1), time(), of.zone)
    return PlannedReminder(instant(day, hour, of.zone), f"{day} {hour:%H:%M}", day.isoformat(), stale)


PLANNERS: Final[Mapping[When, Callable[[str, PlanningBasis], PlannedReminder | None]]] = {
    "before_squat_day": squat_days.before, "after_squat_day": squat_days.after, "zone_over": _zone_over, "digest_hour": _digest_hour}
"""The planners by source of the moment; each is called with the kind's name."""


def replan(db: sqlite3.Connection, person: int, facts: Mapping[str, Value], now: datetime, settled: Reminder | None = None) -> None:
    """Bring a person's open reminders in line with their plan, preferences and zone. ``settled``: the one just decided on, if
    any."""
    of = PlanningBasis(db, person, facts, now, settled)
    open_now = of.standing
    for kind in REMINDER_KINDS.values():
        if not kind.planned:
            continue
        off = kind.ended_by == STOP_ALL and not prompted(facts)
        wanted = None if off else PLANNERS[kind.when](kind.name, of)
        if wanted is None:
            reminders.cancel(db, person, kind.name, now)
        else:
            offers = kind.name if kind.sent else ""
            reminders.add(db, person, kind.name, offers, wanted.said, of.zone, wanted.at, now, wanted.day, wanted.stale)
    for one in open_now.values():
        if not _planned(one) and one.zone != of.zone and one.round == 1:
            _at_wall(db, one, of.zone, now)  # another zone: the same wall time there


def stop_all(db: sqlite3.Connection, person: int, now: datetime) -> None:
    """Cancel every open reminder of a kind that "stop all reminders" ends."""
    for one in reminders.open_reminders(db, person):
        if ended_by_stop_all(one.kind):
            reminders.cancel(db, person, one.kind, now)


def _planned(one: Reminder) -> bool:
    return one.kind in REMINDER_KINDS and REMINDER_KINDS[one.kind].planned


def _at_wall(db: sqlite3.Connection, one: Reminder, zone: str, now: datetime) -> None:
    after = date.fromisoformat(one.wall[:10]) + timedelta(days=1)
    stale = instant(after, time(), zone) if one.stale_at else None
    reminders.add(db, one.person, one.kind, one.flow, one.wall, zone, _instant(one, zone), now, one.day, stale)


def _instant(one: Reminder, zone: str) -> datetime:
    """Return the moment in UTC of a reminder's wall time in a zone."""
    local = datetime.fromisoformat(one.wall)
    return instant(local.date(), local.time(), zone)


def replan_as_of(db: sqlite3.Connection, person: int, facts: Mapping[str, Value], now: datetime) -> None:
    """Plan again all reminders that were planned, postponed or given up after ``now``, as when the clock was ahead. What was said too
    early and has not left is withdrawn, and counts as given up; what is due all the same stays, since it may have arrived, and waits for
    the end of quiet hours."""
    if (until := after_quiet(now, preferences_from(facts), zone_from(facts, now))) > now:
        outbox.hold_offers(db, person, until)
    for early in reminders.settled_after(db, person, now):
        if outbox.withdraw_offer(db, person, early, now):
            reminders.mark_unsent(db, early)
    for one in reminders.planned_after(db, person, now):
        if _planned(one) and was_postponed(one):
            reminders.postpone(db, one.id, _instant(one, one.zone), now)
        elif _planned(one):
            reminders.cancel(db, person, one.kind, now)
        elif one.round == 1:
            _at_wall(db, one, one.zone, now)
        else:
            add_round(db, one, now, one.round)
    reminders.reopen(db, person, now)
    replan(db, person, facts, now)


def begin_anew(db: sqlite3.Connection, given_up: Reminder, now: datetime) -> None:
    """Open a reminder that nobody answered from its first round, where its kind begins again."""
    if (anew := REMINDER_KINDS[given_up.kind].anew) is not None:
        at = now + anew
        reminders.add(db, given_up.person, given_up.kind, given_up.flow, wall_time(at, given_up.zone), given_up.zone, at, now)


def add_round(db: sqlite3.Connection, sent: Reminder, now: datetime, round: int) -> None:
    """Open the next round of a kind that is sent again if nobody answers."""
    kind = REMINDER_KINDS[sent.kind]
    if kind.rounds > 1:
        at = now + kind.gap
        reminders.add(db, sent.person, sent.kind, sent.flow, wall_time(at, sent.zone), sent.zone, at, now, round=round)
