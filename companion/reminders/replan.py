"""From a person's plan to their open reminders: one prompt before the next squat day, one follow-up after it.

Worked out anew, in the same commit, whenever the plan, the wishes or the zone change and whenever one was settled; so a row
is only ever the next of its kind, and a plan changed a hundred times leaves two.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from datetime import date, datetime, time, timedelta
from itertools import islice
from typing import Final

from companion.calendar.plan import Plan, SquatDay, is_squat_day, squat_days
from companion.calendar.prompts import Wishes, follow_up_at, follow_up_stale_at, next_prompt, stale_at
from companion.calendar.wishes import Value, answered_until, plan_from, prompted, wishes_from, zone_from
from companion.clock import instant, local_date, zone_of
from companion.record import reminders
from companion.record.reminders import Reminder
from companion.reminders.kinds import KINDS

BEFORE: Final = "squat_day"
AFTER: Final = "squat_after"
LOOKED_AT: Final = 60
"""Squat days looked at for one that still wants a follow-up."""


def replan(db: sqlite3.Connection, person: int, facts: Mapping[str, Value], now: datetime, since: datetime | None = None) -> None:
    """Bring a person's open reminders in line with their plan, wishes and zone. ``since``: the moment of the prompt that has
    just been sent, where that was a little before now: two days may share one."""
    zone, plan, wishes = zone_from(facts, now), plan_from(facts), wishes_from(facts)
    open_now = {one.kind: one for one in reminders.open_of(db, person)}
    done = answered_until(facts)
    if not prompted(facts):
        plan = Plan()
    _before(db, person, plan, wishes, zone, now, open_now.get(BEFORE), done, since or now)
    _after(db, person, plan, wishes, zone, now, open_now.get(AFTER), done)
    for one in open_now.values():
        if one.kind not in (BEFORE, AFTER):
            _moved(db, one, zone, now)


def _before(db: sqlite3.Connection, person: int, plan: Plan, wishes: Wishes, zone: str, now: datetime, standing: Reminder | None,
            done: date | None, since: datetime) -> None:
    if standing and standing.due_at <= now and standing.zone == zone and _still(plan, standing):
        return  # due this minute: the sweep decides
    told = reminders.told(db, person, BEFORE, now)
    found = next_prompt(plan, wishes, zone, since, told | ({done} if done else frozenset()))
    if found is None:
        reminders.take_away(db, person, BEFORE, now)
        return
    squat, at = found
    reminders.add(db, person, BEFORE, BEFORE, wall(at, zone), zone, at, now, squat.day.isoformat(), stale_at(squat, zone))


def _after(db: sqlite3.Connection, person: int, plan: Plan, wishes: Wishes, zone: str, now: datetime, standing: Reminder | None,
           done: date | None) -> None:
    squat = _to_follow(db, person, plan, zone, now, standing, done)
    if squat is None:
        reminders.take_away(db, person, AFTER, now)
        return
    at = follow_up_at(squat, wishes, zone)
    reminders.add(db, person, AFTER, AFTER, wall(at, zone), zone, at, now, squat.day.isoformat(), follow_up_stale_at(squat, zone))


def _to_follow(db: sqlite3.Connection, person: int, plan: Plan, zone: str, now: datetime, standing: Reminder | None,
               done: date | None) -> SquatDay | None:
    """The squat day to ask about next: the one that waits already, else the first whose squat time is still to come. A day
    that has come is asked about whatever the plan says since: who pauses or stops after squatting may have been hurt."""
    told, today = reminders.told(db, person, AFTER, now), local_date(now, zone)
    held = date.fromisoformat(standing.day) if standing else None
    if held and held <= today and not (done and held <= done) and dict(plan.single).get(held, time()) is not None:
        return SquatDay(held, time())
    since = today - timedelta(days=1)
    for squat in islice(squat_days(plan, since), LOOKED_AT):
        if squat.day in told or (done and squat.day <= done):
            continue
        if squat.day == held or instant(squat.day, squat.at, zone) > now:
            return squat
    return None


def _still(plan: Plan, reminder: Reminder) -> bool:
    return is_squat_day(plan, date.fromisoformat(reminder.day))


def _moved(db: sqlite3.Connection, one: Reminder, zone: str, now: datetime) -> None:
    """Another zone: the same wall time there."""
    if one.zone == zone or one.round > 1:
        return
    local = datetime.fromisoformat(one.wall)
    stale = instant(local.date() + timedelta(days=1), time(), zone) if one.stale_at else None
    reminders.add(db, one.person, one.kind, one.flow, one.wall, zone, instant(local.date(), local.time(), zone), now, one.day, stale)


def again(db: sqlite3.Connection, sent: Reminder, now: datetime) -> None:
    """After a kind that is told more than once: when it is looked at next, if nobody answers."""
    kind = KINDS[sent.kind]
    if kind.rounds > 1:
        at = now + kind.gap
        reminders.add(db, sent.person, sent.kind, sent.flow, wall(at, sent.zone), sent.zone, at, now, round=sent.round + 1)


def wall(moment: datetime, zone: str) -> str:
    """A moment as wall time: "2026-12-01 18:00"."""
    return moment.astimezone(zone_of(zone)).strftime("%Y-%m-%d %H:%M")
