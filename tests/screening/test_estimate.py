"""The depth at which length alone would start the tuck: its calibration, its draws, and what a lifter is told."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from itertools import pairwise
from time import process_time
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from companion.screening.about import About
from companion.screening.conclusion import conclude
from companion.screening.depth import Band
from companion.screening.errors import Errors, Repeats
from companion.screening.estimate import BAND_EDGES, ESTIMATE_CAUTION, DepthEstimate, NoEstimate, depth_estimate
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.protocols.squat_look import SquatLook
from companion.screening.screen import Screen, screen_of
from companion.screening.tuck import (
    DRAW_COUNT,
    SHARE_MOST,
    Depths,
    Lifter,
    Spread,
    Squat,
    depths_of,
    draws_of,
    explained,
    gained,
)
from tests.table import each_row

from .build import ABOUT, LOOK, SCREENS, made, screen

# Ankle 40.0 deg: Calatayud 2015 IJSPT 10:197 (read); hip 121 deg: Roach & Miles 1991 (memory); the rest a choice.
AVERAGE = Lifter(175, Spread(40.0, 1.7), Spread(121.0, 5.0), Spread(75.0))
WALL = KneeToWall(method="level", placement="mid_shin", left_deg_1=34, right_deg_1=38)
FOLD = HipFold("back", "no", 108.0, "back", "no", 112.0)
TALL = About(height=180, mass=80, sex="man", load=90, bar="low", usual_depth="below")
TESTS: dict[str, Any] = {"knee_to_wall": WALL, "hip_fold": FOLD}


def told(about: About = TALL, **tests: Any) -> DepthEstimate:
    estimate = depth_estimate(screen(TESTS, tests), about)
    assert isinstance(estimate, DepthEstimate)
    return estimate


def refused(about: About = TALL, **tests: Any) -> str:
    estimate = depth_estimate(screen(TESTS, tests), about)
    assert isinstance(estimate, NoEstimate)
    assert 0 < len(estimate.words) <= 160
    assert estimate.words.startswith("I can't estimate")
    return estimate.reason


@pytest.mark.parametrize("squat", [Squat("high", 60), Squat("low", 60), Squat("high", 120), Squat("front", 60), Squat()],
                         ids=lambda squat: f"{squat.bar} {squat.load:g} kg")
def test_the_published_average_adult_is_not_predicted_to_tuck_well_above_parallel(squat: Squat) -> None:
    """The calibration: ankle 40.0 (Calatayud 2015, read) and hip 121 degrees (Roach & Miles 1991, memory), bar on the back."""
    depths = depths_of(draws_of(AVERAGE, squat))
    assert depths.median > BAND_EDGES[Band.WELL_ABOVE][1]
    assert depths.median > BAND_EDGES[Band.A_LITTLE_ABOVE][1]  # in fact at parallel or below


def test_the_average_adult_comes_below_parallel_with_the_drawn_share_and_to_parallel_without() -> None:
    """Ankle 40.0 degrees (Calatayud 2015, read), hip 121 (Roach & Miles 1991, memory), 175 cm, 75 kg and 60 kg on the back (choice). Lumbar
    flexion seen in trained squatters, 13 to 26 degrees (McKean 2010, read), is of the size the share gives: 0 to 27."""
    drawn = depths_of(draws_of(AVERAGE, Squat("high", 60)))
    assert drawn.median == pytest.approx(15, abs=2)
    without = replace(AVERAGE, fold=Spread(121.0 * (1 - SHARE_MOST / 2), 5.0))  # undoes the mean of the share
    assert abs(depths_of(draws_of(without, Squat("high", 60))).median) <= 5
    assert pytest.approx(26.7, abs=0.1) == 121 / (1 - SHARE_MOST) - 121


def test_at_least_ten_thousand_draws_in_at_most_50_ms() -> None:
    assert DRAW_COUNT >= 10_000
    draws_of(AVERAGE, Squat("high", 60))
    took = []
    for _ in range(5):
        start = process_time()
        drawn = draws_of(AVERAGE, Squat("high", 60))
        depths_of(drawn)
        explained(drawn, -5, 5)
        took.append(process_time() - start)
    assert len(drawn[0]) == DRAW_COUNT
    assert min(took) <= 0.050


def test_a_chat_starts_without_numpy_and_scipy() -> None:
    code = ("import sys, companion.screening.estimate, companion.screening.trend, companion.screening.priming_trial, "
            "companion.screening.conclusion, companion.screening.retest; "
            "print([name for name in ('numpy', 'scipy') if name in sys.modules])")
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.strip() == "[]"


def test_the_same_answers_give_the_same_estimate() -> None:
    assert told() == told()


def test_the_interval_holds_the_median_and_four_fifths_of_the_draws() -> None:
    drawn = draws_of(Lifter(175, Spread(36, 3), Spread(110, 5)), Squat())
    depths = depths_of(drawn)
    assert depths.low < depths.median < depths.high
    counted = np.minimum(*drawn)
    assert np.mean((counted >= depths.low) & (counted <= depths.high)) == pytest.approx(0.8, abs=0.01)


def test_more_measurement_error_widens_the_interval() -> None:
    exact, rough = (depths_of(draws_of(Lifter(175, Spread(36, sd), Spread(110, sd)), Squat())) for sd in (1, 8))
    assert rough.high - rough.low > exact.high - exact.low


def test_measured_lengths_narrow_the_interval_and_a_long_thigh_starts_it_earlier() -> None:
    near = Lifter(175, Spread(40), Spread(110), Spread(75.0), Spread(15.0), (0.0, 0.0))
    taped = replace(near, shank=43.0, thigh=43.0, trunk=50.4)
    by_table, by_tape, long = (depths_of(draws_of(one, Squat())) for one in (near, taped, replace(taped, thigh=48.0)))
    assert by_tape.high - by_tape.low < by_table.high - by_table.low
    assert long.median < by_tape.median
    assert told().depths != depth_estimate(screen(TESTS), replace(TALL, shin=44.0, thigh=48.0, trunk=50.0)).depths  # type: ignore[union-attr]


@settings(max_examples=25, deadline=None)
@given(st.floats(150, 200), st.floats(15, 45), st.floats(85, 130))
def test_what_would_help_never_makes_it_earlier(height: float, ankle: float, fold: float) -> None:
    lifter = Lifter(height, Spread(ankle, 2), Spread(fold, 5))
    plain = draws_of(lifter, Squat(), draws=500)
    for squat in (Squat(lift=2), Squat(turned=10), Squat("arms", 3.5), Squat(ankle=3), Squat(fold=5)):
        assert gained(plain, draws_of(lifter, squat, draws=500)) >= -1e-9


@settings(max_examples=25, deadline=None)
@given(st.floats(20, 45), st.floats(90, 125))
def test_a_deeper_tuck_is_always_more_likely_explained_by_length(ankle: float, fold: float) -> None:
    drawn = draws_of(Lifter(175, Spread(ankle, 2), Spread(fold, 5)), Squat(), draws=500)
    chances = [explained(drawn, *edges) for edges in BAND_EDGES.values()]
    assert chances == sorted(chances)
    assert all(0 <= chance <= 1 for chance in chances)


def test_bands_leave_no_gap() -> None:
    edges = [BAND_EDGES[band] for band in Band]
    assert all(one[1] == other[0] for one, other in pairwise(edges))


def test_draws_in_which_length_never_starts_it_explain_nothing() -> None:
    free = draws_of(Lifter(175, Spread(45), Spread(150)), Squat())
    assert depths_of(free).never > 0.95
    assert explained(free, 5, 25) < 0.05


def test_where_every_draw_is_out_of_balance_nothing_is_summed_up() -> None:
    nan = np.full(5, np.nan)
    assert depths_of((nan, np.zeros(5))) == Depths(-60, -60, -60, 0.0, 1.0)
    assert gained((nan, nan), (nan, nan)) == 0.0


@each_row(("about", "tests", "reason"), [
    (replace(TALL, height=None), {}, "height"), (replace(TALL, height=300), {}, "height"),
    (TALL, {"knee_to_wall": None}, "ankle"), (TALL, {"knee_to_wall": KneeToWall(method="tape")}, "ankle"),
    (TALL, {"knee_to_wall": KneeToWall(method="tape", left_1=29.0)}, "ankle"),
    (replace(TALL, height=120.0), {"knee_to_wall": KneeToWall(method="tape", left_1=20.5)}, "ankle"),
    (TALL, {"hip_fold": None}, "fold"), (TALL, {"hip_fold": HipFold("back", "no", None)}, "fold"),
    (TALL, {"hip_fold": HipFold("back", "yes", 100.0)}, "fold"),
    (TALL, {"hip_fold": HipFold("cant_tell", "no", 100.0)}, "fold"),
    (TALL, {"knee_to_wall": KneeToWall(method="level", left_deg_1=0)}, "balance")])
def test_without_what_it_needs_it_says_it_cant_estimate(about: About, tests: dict[str, Any], reason: str) -> None:
    assert refused(about, **tests) == reason


def test_the_stiffer_ankle_and_the_hip_that_folds_less_count() -> None:
    assert told().depths == told(knee_to_wall=replace(WALL, right_deg_1=None), hip_fold=replace(FOLD, right_angle=None)).depths
    freer = told(knee_to_wall=replace(WALL, left_deg_1=38), hip_fold=replace(FOLD, left_angle=112.0))
    assert freer.depths.median > told().depths.median


def test_an_ankle_angle_is_estimated_from_the_tape_with_more_doubt() -> None:
    """Only where no angle was measured. 9 cm at 180 cm of height is about 35 deg."""
    taped, level = told(knee_to_wall=KneeToWall(method="tape", left_1=9.0)), told(
        knee_to_wall=KneeToWall(method="level", left_deg_1=35))
    assert taped.depths.median == pytest.approx(level.depths.median, abs=3)
    assert taped.depths.high - taped.depths.low > level.depths.high - level.depths.low


def test_repeating_the_ankle_within_a_minute_does_not_narrow_it() -> None:
    once = told(knee_to_wall=KneeToWall(method="level", left_deg_1=35))
    thrice = told(knee_to_wall=KneeToWall(method="level", left_deg_1=35, left_deg_2=35, left_deg_3=35))
    assert (thrice.depths.low, thrice.depths.high) == (once.depths.low, once.depths.high)


def test_words_round_to_five_degrees_and_five_per_cent() -> None:
    estimate = told(squat_look=replace(LOOK, plain_depth="parallel"))
    assert estimate.explains is not None
    deep, chance = 5 * round(estimate.depths.median / 5), 5 * round(20 * estimate.explains)
    assert deep < 0
    assert f"start the tuck at about {-deep}° above parallel. 80 % range: " in estimate.words[0]
    assert f"You saw it start at parallel. The estimated chance that length alone explains that is about {chance} %." in (
        estimate.words[2])


def test_a_hip_that_folds_far_is_told_that_length_may_start_no_tuck() -> None:
    free = told(hip_fold=HipFold("back", "no", 145.0), knee_to_wall=KneeToWall(method="level", left_deg_1=45))
    assert free.depths.never > 0.5
    assert free.words[0].startswith("Estimate: length alone would probably not start a tuck at all")


def test_the_lifters_own_error_widens_it() -> None:
    shaky = depth_estimate(screen(TESTS), TALL, Errors("man", (Repeats("knee_to_wall", "level", 900.0, 10),)))
    assert isinstance(shaky, DepthEstimate)
    assert shaky.depths.high - shaky.depths.low > told().depths.high - told().depths.low


@pytest.mark.parametrize(("depth", "points_at"), [
    ("well_above", "strength_or_control"), ("below", "length"), ("a_little_above", "open")])
def test_earlier_than_predicted_points_away_from_length_and_later_at_it(depth: str, points_at: str) -> None:
    estimate = told(squat_look=replace(LOOK, plain_depth=depth, again_depth=depth))
    assert (estimate.seen, estimate.points_at) == (Band(depth), points_at)
    assert estimate.explains is not None


def test_a_hip_that_reached_the_squats_fold_may_have_more_so_length_is_not_said_to_explain_it() -> None:
    reached = replace(FOLD, left_first="fold", right_first="fold")
    look = replace(LOOK, plain_depth="below", again_depth="below")
    estimate = told(hip_fold=reached, squat_look=look)
    assert (estimate.at_least, estimate.points_at) == (True, "open")
    assert "at the earliest" in estimate.words[0]
    assert "at most" in estimate.words[2]
    assert told(hip_fold=replace(reached, right_first="back")).at_least is False


def test_no_rounding_seen_leaves_nothing_to_explain() -> None:
    for look in (replace(LOOK, plain_rounds="no"), replace(LOOK, plain_rounds="cant_tell"), None):
        estimate = told(squat_look=look)
        assert (estimate.seen, estimate.explains, estimate.points_at) == (None, None, "open")


def test_a_depth_told_by_feel_is_less_sure() -> None:
    filmed, felt = (told(squat_look=replace(LOOK, seen_by=seen, plain_depth="well_above")).explains
                    for seen in ("film", "feel"))
    assert filmed is not None
    assert felt is not None
    assert filmed < felt < 0.5


def test_helps_are_ranked_and_compared_with_the_trials_by_name() -> None:
    """Two bands later with wider feet, none later with heels up: held against the model's gains."""
    look = replace(LOOK, heels_rounds="clearly", heels_depth="parallel", front_rounds="clearly",
                   front_depth="a_little_above", wide_rounds="no")
    estimate = told(squat_look=look)
    gains = [one.gain for one in estimate.helps]
    assert gains == sorted(gains, reverse=True)
    by = {one.squat: one for one in estimate.helps if one.squat}
    assert {name: one.trial for name, one in by.items()} == {"heels": 0, "front": -1, "wide": 2}
    assert (by["front"].agrees, by["wide"].agrees) == (False, False)
    assert by["heels"].agrees == (by["heels"].gain < 7.5)
    said = [words for words in estimate.words if "Your trial counts for more" in words]
    assert len(said) == sum(one.agrees is False for one in estimate.helps)
    assert any(words.startswith("A light weight held in front") and "1 step earlier" in words for words in said)
    assert {one.name for one in estimate.helps if not one.squat} == {"3° more ankle", "5° more in the hip"}
    assert by["wide"].name == "feet 10° further out"


def test_trials_that_do_not_count_are_not_compared() -> None:
    drifted = replace(LOOK, heels_rounds="no", again_depth="well_above")
    assert all(one.agrees is None for one in told(squat_look=drifted).helps)


def test_a_trial_that_went_as_expected_agrees() -> None:
    one = {h.squat: h for h in told(squat_look=replace(LOOK, heels_rounds="clearly", heels_depth="below")).helps}["heels"]
    assert (one.trial, one.agrees) == (1, True)


@pytest.mark.parametrize(("squat", "agrees"), [
    ({"wide_rounds": "clearly", "wide_depth": "parallel"}, True), ({"wide_rounds": "clearly", "wide_depth": "below"}, True),
    ({"wide_rounds": "clearly", "wide_depth": "a_little_above"}, False), ({"wide_rounds": "no"}, False)])
def test_a_small_gain_may_show_as_a_band_or_as_none_but_not_as_two_nor_the_other_way(squat: dict[str, str],
                                                                                     agrees: bool) -> None:
    """Between 2 and 7.5 degrees, about a third of a band (choice)."""
    wide = next(one for one in told(squat_look=replace(LOOK, **squat)).helps if one.squat == "wide")
    assert 2 < wide.gain < 7.5
    assert wide.agrees is agrees


def test_the_own_bar_and_load_are_looked_at_where_they_are_known() -> None:
    assert told().under_bar is not None
    for about in (replace(TALL, bar="none"), replace(TALL, load=None), replace(TALL, mass=None)):
        assert told(about).under_bar is None


def test_words_use_the_units_they_are_given() -> None:
    estimate = depth_estimate(screen(TESTS), TALL, show=lambda value, unit: f"{value / 2.54:.1f} in")
    assert isinstance(estimate, DepthEstimate)
    assert any("0.8 in under the heels" in words for words in estimate.words)


@settings(max_examples=25, deadline=None)
@given(SCREENS, st.floats(150, 200), st.sampled_from(["high", "low", "front", "none"]))
def test_it_is_called_an_estimate_fits_messages_and_is_never_a_reason_to_go_deeper(done: Screen, height: float,
                                                                                  bar: str) -> None:
    estimate = depth_estimate(made(**{"knee_to_wall": WALL, **done, "hip_fold": FOLD}),
                              About(height=height, mass=75, bar=bar, load=100))
    words = estimate.words if isinstance(estimate, DepthEstimate) else (estimate.words,)
    assert all(0 < len(said) <= 160 for said in words)
    assert "stimate" in words[0]
    if isinstance(estimate, DepthEstimate):
        assert words[1] == ESTIMATE_CAUTION, "beside the depth, not behind what may wait for “more”"
        assert "never a reason to go deeper or heavier" in ESTIMATE_CAUTION
        assert estimate.standing == "choice"
        assert not any("!" in said or "you can go" in said or "likely length" in said for said in words)


def test_alone_it_never_makes_length_likely() -> None:
    """Length that the model holds to explain the depth all but surely changes no verdict: it is no row of the table."""
    tests = {"squat_look": replace(LOOK, plain_depth="below", again_depth="below"),
             "knee_to_wall": replace(WALL, left_deg_1=35, right_deg_1=35, left_limit="neither", right_limit="neither"),
             "hip_fold": HipFold("cant_tell", "no", 80.0, "back", "no", 80.0)}
    estimate = depth_estimate(screen(tests), ABOUT)
    assert isinstance(estimate, DepthEstimate)
    assert estimate.explains is not None
    assert estimate.explains > 0.95
    assert conclude(screen(tests), ABOUT, 0).verdict("length").ruling.value == "too_close"  # one moderate finding


def test_an_untold_squat_look_is_no_error() -> None:
    assert isinstance(depth_estimate(screen_of(WALL, FOLD, SquatLook()), TALL), DepthEstimate)
