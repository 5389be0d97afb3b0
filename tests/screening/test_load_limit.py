"""The load limit: the one that stood when a load was told, and how often the latest days went over it."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import partial

import pytest

from companion.language.units import IMPERIAL, METRIC, shown
from companion.screening.load_limit import LimitSet, OverLimit, at_most, limit_at, limits_in, load_kept, over_by, over_limit
from companion.screening.squat_days import ToldDay
from tests.table import each_row

DAYS_JUDGED = 12
ROUNDING = 0.25
"""As the tables of numbers have it, typed here: choices."""

FIRST = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
LIMIT = (LimitSet(FIRST - timedelta(days=9), "load.limit", 112.0),)


def day(at: int, load: float | None) -> ToldDay:
    told = FIRST + timedelta(days=2 * at)
    return ToldDay(told.date(), "still", "kept", load=load, load_at=told if load is not None else None)


@each_row(("load", "limit", "by"), [
    (152.0, 112.0, 40.0), (112.0, 112.0, 0.0), (112.0 + ROUNDING, 112.0, 0.0), (112.26, 112.0, 0.26), (80.0, 112.0, 0.0),
    (None, 112.0, 0.0), (152.0, None, 0.0), (0.0, 112.0, 0.0)])
def test_a_load_is_over_by_what_passes_the_limit_and_the_rounding_of_pounds(load, limit, by):
    """0.25 kg: half a pound, choice."""
    assert over_by(load, limit) == pytest.approx(by)


def test_a_load_in_whole_pounds_that_reads_as_the_limit_is_within_it():
    limit = 99.7
    assert shown(limit, "kg", IMPERIAL) == "220 lb"
    assert not over_by(220 * 0.45359237, limit)


def test_a_day_is_judged_by_the_limit_that_stood_when_it_was_told():
    limits = (*LIMIT, LimitSet(FIRST + timedelta(days=3), "load.limit", 160.0))
    assert [load_kept(day(at, 152.0), limits, bar=True) for at in (0, 2)] == ["over", ""], "a higher limit later excuses nothing"
    assert load_kept(day(0, 152.0), LIMIT[:0], bar=True) == ""


def test_a_day_told_later_is_judged_by_the_limit_that_stood_on_it():
    begun, ended = LimitSet(FIRST + timedelta(days=3), "load.told", 60.0), LimitSet(FIRST + timedelta(days=3), "load.told", None)
    late = ToldDay(FIRST.date(), "still", "kept", load=100.0, load_at=FIRST + timedelta(days=4),
                   over_at=datetime(2026, 3, 3, tzinfo=UTC))
    assert (load_kept(late, (begun,), bar=True), over_limit([late], (begun,)).days) == ("", 0)
    since = (LimitSet(FIRST - timedelta(days=1), "load.told", 60.0), ended)
    assert (load_kept(late, since, bar=True), over_limit([late], since)) == ("over", OverLimit(1, 1, 40.0, late.load_at))
    there_and_then = replace(late, load_at=FIRST)
    assert load_kept(there_and_then, (replace(begun, at=FIRST + timedelta(hours=1)),), bar=True) == "", "told before it began that day"
    assert load_kept(late, (replace(begun, at=FIRST + timedelta(hours=1)),), bar=True) == "over", "it may have been lifted after it"


def test_the_lower_of_the_tests_and_a_coach_holds_until_it_is_taken_back():
    limits = (*LIMIT, LimitSet(FIRST, "load.pin", 90.0), LimitSet(FIRST + timedelta(days=2), "load.pin", None))
    assert [limit_at(limits, FIRST + timedelta(days=n)) for n in (-10, -1, 0, 1, 2)] == [None, 112.0, 90.0, 90.0, 112.0]


def test_a_load_nobody_told_is_untold_only_where_there_is_a_bar_and_a_limit():
    assert load_kept(day(0, None), LIMIT, bar=True) == "untold"
    assert load_kept(day(0, None), LIMIT, bar=False) == load_kept(day(0, None), (), bar=True) == ""
    assert load_kept(day(0, 0.0), LIMIT, bar=True) == "", "without a bar that day is within any limit"


def test_the_last_twelve_squat_days_are_counted_in_the_lifter_s_units():
    """Twelve: about four weeks of three squat days (choice)."""
    days = [day(at, 152.0 if at == 20 else 137.0 if at % 7 else 100.0) for at in range(22)]
    found = over_limit(days, LIMIT)
    assert found == OverLimit(DAYS_JUDGED - 2, DAYS_JUDGED, 40.0, days[20].load_at)
    assert found.words(partial(shown, system=METRIC)) == "over the load limit on 10 of the last 12 squat days, by up to 40 kg"
    assert found.words(partial(shown, system=IMPERIAL)).endswith("by up to 88 lb")
    assert over_limit(days[:1], LIMIT).words(partial(shown, system=METRIC)) == ""
    assert over_limit(days[1:2], LIMIT).words(partial(shown, system=METRIC)) == "over the load limit on the last squat day, by 25 kg"


def test_a_limit_of_nothing_is_said_in_words_and_the_empty_bar_is_over_it():
    assert (at_most(60.0, partial(shown, system=METRIC)), at_most(0.0, partial(shown, system=METRIC))) == ("at most 60 kg", "no added load")
    assert over_by(20.0, 0.0) == 20.0
    assert over_by(0.0, 0.0) == 0.0


def test_a_day_nobody_squatted_on_is_not_among_them():
    assert over_limit([ToldDay(FIRST.date(), load=152.0, load_at=FIRST)], LIMIT).of == 0


def test_limits_are_read_from_the_record_s_rows_and_what_is_no_number_is_none():
    at = FIRST.isoformat()
    assert limits_in(json.dumps([[at, "load.limit", "112"], [at, "load.pin", ""], [at, "load.pin", "; x"]])) == (
        LimitSet(FIRST, "load.limit", 112.0), LimitSet(FIRST, "load.pin", None), LimitSet(FIRST, "load.pin", None))
    assert limits_in("") == ()
