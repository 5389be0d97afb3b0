"""Plans to try: by hypothesis, and the zones they are tried in."""

from datetime import UTC, date, datetime, time, timedelta
from itertools import takewhile

from hypothesis import settings
from hypothesis import strategies as st

from companion.calendar.plan import Plan, SquatDay, squat_days
from companion.calendar.prompts import Preferences

ZONES = ("Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "Africa/Casablanca", "UTC+05:30")
"""An hour's change, the other side of the world, half an hour's, Ramadan's (an hour less in winter), and none."""

START = date(2026, 2, 1)
END = date(2036, 2, 1)

NIGHT = st.sampled_from((time(0), time(0, 30), time(1), time(1, 30), time(2), time(2, 15), time(2, 30), time(2, 59), time(3)))
"""Wall-clock times that clock changes skip or repeat."""

DAYTIME = st.builds(time, st.integers(0, 23), st.integers(0, 59))
TIMES = DAYTIME | NIGHT
DAYS = st.dates(START - timedelta(days=20), END)

WEEKLY = st.dictionaries(st.integers(0, 6), TIMES, min_size=1).map(lambda days: Plan(weekly=tuple(sorted(days.items()))))
EVERY = st.builds(lambda every, start, at: Plan(every=every, start=start, at=at), st.integers(1, 14), DAYS, TIMES)
SINGLE = st.dictionaries(DAYS | st.dates(START, START + timedelta(days=70)), st.none() | TIMES, max_size=60)


TEN_YEARS = settings(max_examples=settings().max_examples // 12)
"""For what walks through ten years: fewer plans, by night as by day."""


PAUSES = st.dictionaries(DAYS | st.dates(START, START + timedelta(days=70)), st.integers(1, 60), max_size=4).map(
    lambda rows: tuple(sorted((first, first + timedelta(days=days)) for first, days in rows.items())))
"""Pauses with a beginning; they may meet and overlap."""


def with_singles(plan, single, back_on, away):
    return Plan(plan.weekly, plan.every, plan.start, plan.at, tuple(sorted(single.items())), back_on, away)


PLANS = st.builds(with_singles, WEEKLY | EVERY | st.just(Plan()), SINGLE, st.none() | DAYS, st.just(()) | PAUSES)

WISHES = st.builds(Preferences, st.integers(0, 24), TIMES, st.just(Preferences().quiet) | st.tuples(TIMES, TIMES))


def until(plan: Plan, end: date, since: date = START) -> list[SquatDay]:
    """The squat days before a date."""
    return list(takewhile(lambda squat: squat.day < end, squat_days(plan, since)))


def utc(text: str):
    """A moment written out by hand: "2026-03-29 01:00"."""
    return datetime.strptime(text, "%Y-%m-%d %H:%M").replace(tzinfo=UTC)
