"""Planning the prompt before a squat day and the follow-up after it."""

from __future__ import annotations

from datetime import date, time, timedelta
from itertools import islice
from typing import Final

from companion.base.clock import instant, local_date
from companion.calendar.plan import SquatDay, is_squat_day, next_days, squat_days
from companion.calendar.prompts import follow_up_at, follow_up_stale_at, prompt_at, prompts, stale_at
from companion.record.reminders import Reminder
from companion.reminders.basis import PlannedReminder, PlanningBasis, wall_time, was_postponed

LOOKED_AT: Final = 60
"""Squat days searched for one that still needs a follow-up."""

LONGEST_AHEAD: Final = timedelta(days=3)
"""Limit that no prompt reaches ahead of its squat day: how far back the search for the next one starts."""


def before(kind: str, of: PlanningBasis) -> PlannedReminder | None:
    """Return the prompt for the next squat day; None where there is none."""
    told = of.told(kind) | ({of.answered} if of.answered else frozenset())
    standing = of.standing.get(kind)
    if standing and (held := _held(standing, of, told)):
        return held
    since = max(of.settled.due_at, of.now - LONGEST_AHEAD) if of.settled is not None and of.settled.kind == kind else of.now
    coming = (one for one in prompts(of.plan, of.wishes, of.zone, since, told) if stale_at(one[0], of.zone) > of.now)
    found = min(islice(coming, 2), key=lambda one: one[1], default=None)
    return PlannedReminder(found[1], wall_time(found[1], of.zone), found[0].day.isoformat(), stale_at(found[0], of.zone)) if found else None


def _held(standing: Reminder, of: PlanningBasis, told: frozenset[date]) -> PlannedReminder | None:
    """Return the open prompt if its moment has passed and it is still to be sent: it is due now, was postponed to the end of quiet
    hours, or its moment is over already in the zone they are in now; else None."""
    day = date.fromisoformat(standing.day)
    if day in told or not is_squat_day(of.plan, day):
        return None
    (squat,) = next_days(of.plan, day, 1)
    at, stale = prompt_at(squat, of.wishes, of.zone), stale_at(squat, of.zone)
    late = standing.due_at <= of.now or was_postponed(standing) or (standing.zone != of.zone and stale > of.now)
    if at >= of.now or not late:
        return None
    due, said = (standing.due_at, standing.wall) if standing.zone == of.zone else (at, wall_time(at, of.zone))
    return PlannedReminder(due, said, standing.day, stale)


def after(kind: str, of: PlanningBasis) -> PlannedReminder | None:
    """Return the follow-up for the next squat day; None where there is none."""
    squat = _asked_next(kind, of)
    if squat is None:
        return None
    at = follow_up_at(squat, of.wishes, of.zone)
    return PlannedReminder(at, wall_time(at, of.zone), squat.day.isoformat(), follow_up_stale_at(squat, of.zone))


def _asked_next(kind: str, of: PlanningBasis) -> SquatDay | None:
    """Return the squat day of the open follow-up, else the first one that is still to come or follows the last one asked about. A day
    that has begun is asked about even if the plan has changed since: somebody who pauses or stops after squatting may have been
    hurt."""
    told, today, done = of.told(kind), local_date(of.now, of.zone), of.answered
    standing = of.standing.get(kind)
    held = date.fromisoformat(standing.day) if standing else None
    if held and held <= today and not (done and held <= done) and dict(of.plan.single).get(held, time()) is not None:
        return SquatDay(held, time())
    if of.settled and of.settled.kind == kind:
        held = date.fromisoformat(of.settled.day)
    for squat in islice(squat_days(of.plan, today - timedelta(days=1)), LOOKED_AT):
        if squat.day in told or (done and squat.day <= done) or follow_up_stale_at(squat, of.zone) <= of.now:
            continue
        if instant(squat.day, squat.at, of.zone) > of.now or (held and squat.day > held):
            return squat
    return None
