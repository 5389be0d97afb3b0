"""Moments as they are kept."""

from datetime import datetime
from zoneinfo import ZoneInfo

from companion.record.timestamps import text_of


def test_the_hour_that_comes_twice_is_two_moments_in_the_file():
    """Clocks in Lisbon went back on 25 October 2026 at 01:00 UTC (IANA time zone database)."""
    twice = datetime(2026, 10, 25, 1, 30, tzinfo=ZoneInfo("Europe/Lisbon"))
    assert [text_of(twice), text_of(twice.replace(fold=1))] == ["2026-10-25T00:30:00.000Z", "2026-10-25T01:30:00.000Z"]
