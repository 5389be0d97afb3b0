"""From a person's plan to their open reminders: one prompt before the next squat day, one follow-up after it.

Worked out anew, in the same commit, whenever the plan, the wishes or the zone change and whenever one was settled; so a row
is only ever the next of its kind, and a plan changed a hundred times leaves two. Who is away until a date has a third, which
is due when that date is over: the zone changes by itself then.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from datetime import date, datetime, time, timedelta
from itertools import islice
from typing import Final

from companion.base.clock import instant, local_date, zone_of
from companion.calendar.plan import Plan, SquatDay, is_squat_day, next_days, squat_days
from companion.calendar.preferences import Value, answered_until, away_until, plan_from, preferences_from, prompted, zone_from
from companion.calendar.prompts import Preferences, follow_up_at, follow_up_stale_at, prompt_at, prompts, stale_at
from companion.record import reminders
from companion.record.reminders import Reminder
from companion.reminders.digest import DIGEST, plan_digest
from companion.reminders.kinds import KINDS

BEFORE: Final = "squat_day"
AFTER: Final = "squat_after"
HOME: Final = "home_again"
LOOKED_AT: Final = 60
"""Squat days looked at for one that still wants a prompt or a follow-up."""

LONGEST_AHEAD: Final = timedelta(days=3)
"""No prompt comes so long before its squat day: what a late one follows is looked for so far back."""


def replan(db: sqlite3.Connection, person: int, facts: Mapping[str, Value], now: datetime, settled: Reminder | None = None) -> None:
    """Bring a person's open reminders in line with their plan, wishes and zone. ``settled``: the one that has just been
    decided on, if so: the next of its kind is the one that follows it, also where that has been due since."""
    zone, plan, wishes = zone_from(facts, now), plan_from(facts), preferences_from(facts)
    open_now = {one.kind: one for one in reminders.open_of(db, person)}
    done, wanted = answered_until(facts), prompted(facts)
    before = _before(db, person, plan, wishes, zone, now, open_now.get(BEFORE), done, settled) if wanted else None
    after = _after(db, person, plan, zone, now, open_now.get(AFTER), done, settled) if wanted else None
    if before:
        squat, at, said = before
        reminders.add(db, person, BEFORE, BEFORE, said, zone, at, now, squat.day.isoformat(), stale_at(squat, zone))
    else:
        reminders.take_away(db, person, BEFORE, now)
    if after:
        at = follow_up_at(after, wishes, zone)
        reminders.add(db, person, AFTER, AFTER, wall(at, zone), zone, at, now, after.day.isoformat(), follow_up_stale_at(after, zone))
    else:
        reminders.take_away(db, person, AFTER, now)
    if (home := away_until(facts, now)) is not None:
        reminders.add(db, person, HOME, "", wall(home, zone), zone, home, now, stale_at=home)
    else:
        reminders.take_away(db, person, HOME, now)
    plan_digest(db, person, facts, zone, now)
    for one in open_now.values():
        if one.kind not in (BEFORE, AFTER, HOME, DIGEST):
            _moved(db, one, zone, now)


def _before(db: sqlite3.Connection, person: int, plan: Plan, wishes: Preferences, zone: str, now: datetime, standing: Reminder | None,
            done: date | None, settled: Reminder | None) -> tuple[SquatDay, datetime, str] | None:
    """The squat day to tell of next, and when, as a moment and as wall time."""
    told = reminders.told(db, person, BEFORE, now) | ({done} if done else frozenset())
    if standing and (held := _held(standing, plan, wishes, zone, now, told)):
        return held
    late = settled is not None and settled.kind == BEFORE
    since = max(settled.due_at, now - LONGEST_AHEAD) if late and settled else now
    coming = (one for one in prompts(plan, wishes, zone, since, told) if stale_at(one[0], zone) > now)
    found = min(islice(coming, 2), key=lambda one: one[1], default=None)
    return (*found, wall(found[1], zone)) if found else None


def _held(standing: Reminder, plan: Plan, wishes: Preferences, zone: str, now: datetime,
          told: frozenset[date]) -> tuple[SquatDay, datetime, str] | None:
    """A prompt that is on its way though its moment has passed: it is due this minute, was put off to the end of quiet hours,
    or its moment is over already where they are now."""
    day = date.fromisoformat(standing.day)
    if day in told or not is_squat_day(plan, day):
        return None
    (squat,) = next_days(plan, day, 1)
    at, late = prompt_at(squat, wishes, zone), standing.due_at <= now
    if at >= now or not (late or _put_off(standing) or (standing.zone != zone and stale_at(squat, zone) > now)):
        return None
    return (squat, standing.due_at, standing.wall) if standing.zone == zone else (squat, at, wall(at, zone))


def _put_off(standing: Reminder) -> bool:
    """Whether a reminder waits for longer than it was planned to."""
    return wall(standing.due_at, standing.zone) > standing.wall


def _after(db: sqlite3.Connection, person: int, plan: Plan, zone: str, now: datetime, standing: Reminder | None, done: date | None,
           settled: Reminder | None) -> SquatDay | None:
    """The squat day to ask about next: the one that waits already, else the first whose squat time is still to come, or that
    follows the one before. A day that has come is asked about whatever the plan says since: who pauses or stops after
    squatting may have been hurt."""
    told, today = reminders.told(db, person, AFTER, now), local_date(now, zone)
    held = date.fromisoformat(standing.day) if standing else None
    if held and held <= today and not (done and held <= done) and dict(plan.single).get(held, time()) is not None:
        return SquatDay(held, time())
    if settled and settled.kind == AFTER:
        held = date.fromisoformat(settled.day)
    for squat in islice(squat_days(plan, today - timedelta(days=1)), LOOKED_AT):
        if squat.day in told or (done and squat.day <= done) or follow_up_stale_at(squat, zone) <= now:
            continue
        if instant(squat.day, squat.at, zone) > now or (held and squat.day > held):
            return squat
    return None


def _moved(db: sqlite3.Connection, one: Reminder, zone: str, now: datetime) -> None:
    """Another zone: the same wall time there."""
    if one.zone != zone and one.round == 1:
        _at_wall(db, one, zone, now)


def _at_wall(db: sqlite3.Connection, one: Reminder, zone: str, now: datetime) -> None:
    after = date.fromisoformat(one.wall[:10]) + timedelta(days=1)
    stale = instant(after, time(), zone) if one.stale_at else None
    reminders.add(db, one.person, one.kind, one.flow, one.wall, zone, _instant(one, zone), now, one.day, stale)


def _instant(one: Reminder, zone: str) -> datetime:
    """The moment of a reminder's wall time in a zone."""
    local = datetime.fromisoformat(one.wall)
    return instant(local.date(), local.time(), zone)


def look_again(db: sqlite3.Connection, person: int, facts: Mapping[str, Value], now: datetime) -> None:
    """The clock has been ahead of ``now``: what was planned, put off or given up then is planned as of now."""
    for one in reminders.made_later(db, person, now):
        if one.kind in (BEFORE, AFTER) and _put_off(one):
            reminders.put_off(db, one.id, _instant(one, one.zone), now)
        elif one.kind in (BEFORE, AFTER, HOME):
            reminders.take_away(db, person, one.kind, now)
        elif one.round == 1:
            _at_wall(db, one, one.zone, now)
        else:
            again(db, one, now, one.round)
    reminders.reopen(db, person, now)
    replan(db, person, facts, now)


def again(db: sqlite3.Connection, sent: Reminder, now: datetime, round: int) -> None:
    """After a kind that is told more than once: when it is looked at next, if nobody answers."""
    kind = KINDS[sent.kind]
    if kind.rounds > 1:
        at = now + kind.gap
        reminders.add(db, sent.person, sent.kind, sent.flow, wall(at, sent.zone), sent.zone, at, now, round=round)


def wall(moment: datetime, zone: str) -> str:
    """A moment as wall time: "2026-12-01 18:00"."""
    return moment.astimezone(zone_of(zone)).strftime("%Y-%m-%d %H:%M")
