"""Wall-clock time: once a day at the time asked for, whatever the clocks do."""

from datetime import UTC, date, datetime, time

import pytest
from dateutil import tz
from hypothesis import given
from hypothesis import strategies as st

from companion.base.clock import instant, zone_of

ZONES = ("Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "Africa/Casablanca", "UTC+05:30")


@pytest.mark.parametrize(("zone", "day", "wall", "utc"), [
    # Spring changes, from the IANA time zone database: the skipped time moves to the first that exists.
    ("Europe/Lisbon", date(2026, 3, 29), time(1, 30), datetime(2026, 3, 29, 1, 0, tzinfo=UTC)),
    ("America/New_York", date(2026, 3, 8), time(2, 30), datetime(2026, 3, 8, 7, 0, tzinfo=UTC)),
    ("Australia/Lord_Howe", date(2026, 10, 4), time(2, 15), datetime(2026, 10, 3, 15, 30, tzinfo=UTC)),
    # Autumn changes: the repeated time means the first.
    ("Europe/Lisbon", date(2026, 10, 25), time(1, 30), datetime(2026, 10, 25, 0, 30, tzinfo=UTC)),
    ("America/New_York", date(2026, 11, 1), time(1, 30), datetime(2026, 11, 1, 5, 30, tzinfo=UTC)),
    ("Europe/Lisbon", date(2026, 7, 1), time(18, 0), datetime(2026, 7, 1, 17, 0, tzinfo=UTC)),
])
def test_a_wall_time_means_one_moment(zone, day, wall, utc):
    assert instant(day, wall, zone) == utc


@given(st.dates(date(2024, 1, 1), date(2034, 12, 31)), st.times(), st.sampled_from(ZONES[:4]))
def test_a_wall_time_that_exists_reads_back_the_same(day, wall, zone):
    """Against dateutil's own zones (python-dateutil, tz.datetime_exists)."""
    wall = wall.replace(microsecond=0)
    there = datetime.combine(day, wall, tz.gettz(zone))
    moment = instant(day, wall, zone)
    if tz.datetime_exists(there):
        assert moment.astimezone(zone_of(zone)).replace(tzinfo=None) == there.replace(tzinfo=None)
    else:
        assert moment.astimezone(zone_of(zone)).replace(tzinfo=None) > there.replace(tzinfo=None)


def test_an_unknown_zone_is_utc_and_a_kept_offset_is_itself():
    assert zone_of("Nowhere/Land") is UTC
    assert zone_of("UTC-03:30").utcoffset(None).total_seconds() == -3.5 * 3600
