"""Across clock changes every squat day gets its one prompt and its one follow-up at the wall time asked for.

What is right is worked out here by dateutil alone: its zones and its rrule.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta

import pytest
from dateutil import tz
from dateutil.rrule import DAILY, rrule

from companion.calendar.plan import Plan
from companion.calendar.prompts import Preferences
from tests.by_night import BY_NIGHT
from tests.reminders.build import NEVER_QUIET

CHANGES = {
    "Europe/Lisbon": ("2026-03-29", "2026-10-25", "2027-03-28", "2027-10-31"),
    "America/New_York": ("2026-03-08", "2026-11-01", "2027-03-14", "2027-11-07"),
    "Australia/Lord_Howe": ("2026-04-05", "2026-10-04", "2027-04-04", "2027-10-03"),
    "Africa/Casablanca": ("2026-02-15", "2026-03-22", "2027-02-07", "2027-03-14"),
}
"""By day each zone's first two alone: one ahead, one back."""

AROUND = timedelta(days=7)
SWEEP = timedelta(minutes=10)

LIFTERS = {  # squat time, hours before or when the evening before, quiet hours
    "evening": (time(18), time(18), None),
    "four hours before, as quiet hours end": (time(13), 4, None),
    "evening before squats by night": (time(2, 15), time(18), NEVER_QUIET),
    "by night": (time(12), time(2, 15), NEVER_QUIET),
    "two hours before squats by night": (time(3, 30), 2, NEVER_QUIET),
}
"""Night times are those that a clock change skips or repeats in one of the zones."""


def wishes_of(name: str) -> Preferences:
    _, when, quiet = LIFTERS[name]
    return Preferences(when if isinstance(when, int) else 0, when if isinstance(when, time) else time(18), quiet or Preferences().quiet)


def moment(day: date, at: time, zone: str) -> datetime:
    """A wall-clock time by dateutil: the first moment that exists, the first of two."""
    there, wall = tz.gettz(zone), datetime.combine(day, at)
    tried = datetime.combine(day, at, UTC) - timedelta(hours=15)
    while tried.astimezone(there).replace(tzinfo=None) < wall:  # from UTC: the other way it is wrong where summer time is negative
        tried += timedelta(minutes=15)
    return tried


def asked_for(name: str, squat: date, zone: str) -> datetime:
    """When the prompt of a squat day is wanted."""
    at, when, _ = LIFTERS[name]
    if isinstance(when, int):
        return moment(squat, at, zone) - timedelta(hours=when)
    return moment(squat - timedelta(days=1), when, zone)


@pytest.mark.parametrize(("zone", "change"), [(zone, change) for zone, changes in CHANGES.items()
                                            for change in (changes if BY_NIGHT else changes[:2])])
async def test_each_squat_day_has_one_prompt_and_one_follow_up_at_its_wall_time(gym, zone, change):
    around = datetime.fromisoformat(change).replace(tzinfo=UTC)
    offsets = {(around + shift).astimezone(tz.gettz(zone)).utcoffset() for shift in (-timedelta(days=1), timedelta(days=2))}
    assert len(offsets) == 2  # there is a change
    gym.clock.at = around - AROUND
    of = {name: gym.lifter(name, Plan(weekly=tuple((day, at) for day in range(7))), wishes_of(name), welcome__zone=zone)
          for name, (at, *_) in LIFTERS.items()}
    await gym.sweep_until(around + AROUND, SWEEP)
    days = [day.date() for day in rrule(DAILY, dtstart=datetime.combine(around - AROUND, time()), count=15)]
    for name, person in of.items():
        told = {row.day: row.settled for row in gym.rows("squat_day", "sent", person)}
        asked = {row.day: row.settled for row in gym.rows("squat_after", "sent", person)}
        assert len(told) == len(gym.sent("squat_day", person))
        assert len(asked) == len(gym.sent("squat_after", person))
        for day in days[2:-2]:
            for found, wanted in ((told, asked_for(name, day, zone)), (asked, moment(day + timedelta(days=1), time(9), zone))):
                assert timedelta() <= found[day.isoformat()] - wanted < SWEEP, (name, day)
    assert not gym.rows(state="stale")
    assert not gym.rows(state="dropped")
