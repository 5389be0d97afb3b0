"""Trends over sessions against plain counting and scipy, and pain against the points that count."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from itertools import combinations
from statistics import median
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import kendalltau, theilslopes

from companion.screening.readings import Reading
from companion.screening.sessions import ReadingSession
from companion.screening.trend import pain_change, trend
from tests.table import each_row

from .build import START

SESSIONS = 5
"""As the tables of numbers have it, typed here: a choice."""


def sessions(*values: float, every: float = 7, **more: Any) -> list[ReadingSession]:
    how = {"method": "level_own", "placement": "shin", "warm_up": "walk"} | more
    return [ReadingSession(START + timedelta(days=every * n), (Reading("leg_raise", value, "deg", "left", **how),))
            for n, value in enumerate(values)]


@given(st.lists(st.floats(40, 100), min_size=5, max_size=12), st.randoms(use_true_random=False))
def test_the_slope_and_its_interval_are_theil_and_sens(values: list[float], random: Any) -> None:
    """The median of all pairwise slopes, by plain counting; the interval as scipy gives it, on random days."""
    days = sorted(random.sample(range(200), len(values)))
    taken = [replace(session, at=START + timedelta(days=day))
             for session, day in zip(sessions(*values), days, strict=True)]
    seen = trend(taken)
    weeks = [(day - days[0]) / 7 for day in days]
    slopes = [(b - a) / (y - x) for (x, a), (y, b) in combinations(zip(weeks, values, strict=True), 2)]
    assert seen.slope == pytest.approx(median(slopes), abs=1e-9)
    slope, _, low, high = theilslopes(values, weeks, 0.95)
    assert (seen.slope, seen.low, seen.high) == pytest.approx((slope, low, high), abs=1e-9)
    assert (seen.kind == "better") == (low > 0)
    assert (seen.kind == "worse") == (high < 0)
    assert len(seen.words) <= 160


def test_five_sessions_are_the_fewest_whose_order_alone_can_be_told_from_chance() -> None:
    """Kendall's exact two-sided p of a perfect order, by scipy: .083 for four, .017 for five."""
    assert [round(kendalltau(range(n), range(n), method="exact").pvalue, 3) for n in (4, 5)] == [0.083, 0.017]
    assert SESSIONS == 5
    few = trend(sessions(60, 62, 64, 66))
    assert (few.kind, few.slope, few.low, few.high, few.sessions) == ("cannot_say", 0, 0, 0, 4)
    assert trend(sessions(60, 62, 64, 66, 68)).kind == "better"


def test_a_trend_says_its_size_over_four_weeks_and_its_interval() -> None:
    seen = trend(sessions(60, 62, 64, 66, 68))
    assert (seen.slope, seen.low, seen.high, seen.sessions) == (2, 2, 2, 5)
    assert seen.words == "Over 5 days of testing: about 8° more in four weeks (95 %: +8° to +8° in four weeks)."
    assert trend(sessions(68, 66, 64, 62, 60)).kind == "worse"
    assert "-8°" in trend(sessions(68, 66, 64, 62, 60)).words


def test_one_poor_session_does_not_carry_a_trend() -> None:
    assert trend(sessions(60, 61, 62, 20, 64, 65, 66, 67)).slope == pytest.approx(1, abs=0.3)


def test_readings_that_go_nowhere_have_no_trend() -> None:
    assert trend(sessions(60, 63, 59, 62, 60, 61)).kind == "within_error"


def test_the_mean_of_a_sessions_repeats_counts() -> None:
    def twice(value: float) -> tuple[Reading, ...]:
        return tuple(Reading("leg_raise", value + off, "deg", "left", "level_own", "shin") for off in (-3, 3))

    taken = [ReadingSession(START + timedelta(days=7 * n), twice(60 + n)) for n in range(6)]
    assert trend(taken).slope == pytest.approx(1)


@given(st.permutations(sessions(60, 61, 64, 63, 66, 69)))
def test_the_order_in_which_sessions_come_does_not_matter(mixed: list[ReadingSession]) -> None:
    assert trend(mixed) == trend(sessions(60, 61, 64, 63, 66, 69))


@pytest.mark.parametrize(("other", "why"), [
    ({"warm_up": "walk squats"}, "warm-up"), ({"method": "level_strap"}, "method"), ({"placement": "thigh"}, "placement")])
def test_drift_from_another_warm_up_or_method_is_refused_not_smoothed(other: dict[str, str], why: str) -> None:
    with pytest.raises(ValueError, match=f"different {why}"):
        trend([*sessions(60, 61, 62, 63, 64), *sessions(70, every=40, **other)])


def test_two_sides_or_nothing_make_no_trend() -> None:
    with pytest.raises(ValueError, match="not averaged"):
        trend([*sessions(60), replace(sessions(60)[0], readings=(replace(sessions(60)[0].readings[0], side="right"),))])
    with pytest.raises(ValueError, match="no reading"):
        trend([])
    with pytest.raises(ValueError, match="needs a reading"):
        trend([*sessions(60), ReadingSession(START, ())])


def test_five_readings_of_one_day_are_one_day() -> None:
    assert trend(sessions(60, 62, 64, 66, 68, every=0.01)).kind == "cannot_say"


def test_by_eye_there_is_no_trend() -> None:
    by_eye = [replace(s, readings=(replace(s.readings[0], width=10.0),)) for s in sessions(55, 65, 75, 85, 95)]
    seen = trend(by_eye)
    assert (seen.kind, seen.slope, seen.low, seen.high, seen.sessions) == ("cannot_say", 0, 0, 0, 5)


@each_row(("before", "after", "detectable", "important"), [
    (3, 2, False, True), (1, 0, False, True), (4, 3, False, True), (3, 1, True, True), (3, 4, False, True),  # 1 point at 1-4
    (4, 3.1, False, False), (0, 1, False, True), (0, 0, False, False),
    (5, 4, False, False), (5, 3, True, True), (7, 5.2, True, False), (7, 5.3, False, False), (6, 7, False, False),  # 2 at 5-7
    (9, 6, True, True), (8, 5, True, True), (8, 6, True, False), (10, 6, True, True), (9, 8, False, False)])  # 3-4 at 8-10
def test_a_detectable_change_of_pain_is_not_an_important_one(before: float, after: float, detectable: bool, important: bool) -> None:
    """doi 10.1055/a-1304-3677, n = 1,232 (read): detectable 1.77 points; important 1 from 1-4, 2 from 5-7, 3-4 from 8-10; a start of
    0 as 1-4 (choice)."""
    seen = pain_change(before, after)
    assert (seen.detectable, seen.important) == (detectable, important)


@each_row(("before", "after", "kind"), [
    (3, 2, "same"), (3, 1, "better"), (9, 6, "better"), (8, 6, "better"), (6, 5, "same"), (4, 4, "same"),
    (3, 4, "worse"), (0, 1, "worse"), (6, 7, "same"), (6, 8, "worse"), (8, 10, "worse")])
def test_better_is_beyond_error_and_worse_is_taken_seriously_sooner(before: float, after: float, kind: str) -> None:
    assert pain_change(before, after).kind == kind


@given(st.floats(0, 10), st.floats(0, 10))
def test_less_pain_is_never_worse_and_more_never_better(before: float, after: float) -> None:
    seen = pain_change(before, after)
    assert not (seen.kind == "worse" and after <= before)
    assert not (seen.kind == "better" and after >= before)
    assert len(pain_change(round(before, 1), round(after, 1)).words) <= 160


@pytest.mark.parametrize(("before", "after"), [(-1, 3), (3, 11)])
def test_pain_is_told_from_0_to_10(before: float, after: float) -> None:
    with pytest.raises(ValueError, match="0 to 10"):
        pain_change(before, after)


def test_pain_words() -> None:
    assert pain_change(9, 6).words == (
        "Pain was 9 and is 6 now: 3 points less, beyond measurement error (1.77); from 9 people call 3 to 4 points important.")
    assert pain_change(3, 2).words == (
        "Pain was 3 and is 2 now: 1 point less, within measurement error (1.77), though from 3 people call 1 point important.")
    assert pain_change(9, 7).words == (
        "Pain was 9 and is 7 now: 2 points less, beyond measurement error (1.77), but from 9 people call 3 to 4 points important.")
    assert pain_change(2, 3).words == ("Pain was 2 and is 3 now: 1 point more, within measurement error (1.77); from 2 people call 1 point "
                                       "important, so I count it as worse (our choice).")
    assert pain_change(6, 5).words == "Pain was 6 and is 5 now: 1 point less, within measurement error (1.77)."
    assert pain_change(2, 2).words == "Pain was 2 and is 2 now: the same."
