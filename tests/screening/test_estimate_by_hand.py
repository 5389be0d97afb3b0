"""The estimate against the printed and chosen numbers, typed here."""

from __future__ import annotations

from dataclasses import replace

import pytest

from companion.screening import estimate as model
from companion.screening.estimate import HALF, DepthEstimate, NoEstimate, depth_estimate
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.tuck import Depths, Lifter, Spread, Squat, draws_of, explained, gained

from .build import LOOK, screen
from .test_estimate import TALL, TESTS, told


def chance(angles: tuple[float, float], low: float, high: float, blur: float = 0.0) -> float:
    """The chance for the lifter of ``TALL`` with this shin and fold: the level's error is 4.7/2.772 (Powden 2015, read) with 3 degrees for
    where it lies, the fold's 5 (choices)."""
    shin, fold = angles
    lifter = Lifter(180, Spread(shin, (1.696**2 + 3.0**2) ** .5), Spread(fold, 5.0), Spread(80.0))
    return explained(draws_of(lifter, Squat()), low, high, blur=blur)


@pytest.mark.parametrize(("depth", "low", "high"), [("well_above", -45, -20), ("a_little_above", -20, -5), ("parallel", -5, 5),
                                                    ("below", 5, 25)])
@pytest.mark.parametrize(("seen_by", "blur"), [("film", 0.0), ("feel", 10.0)])
def test_a_depth_by_eye_stands_for_these_angles_of_the_thigh(depth: str, low: float, high: float, seen_by: str, blur: float) -> None:
    """Parallel is 5 degrees either way, felt depths are 10 off (choices)."""
    estimate = told(squat_look=replace(LOOK, seen_by=seen_by, plain_depth=depth, again_depth=depth))
    assert estimate.explains == pytest.approx(chance((34, 108), low, high, blur), abs=1e-3)


def test_a_shin_reckoned_from_a_tape_may_be_five_degrees_off() -> None:
    """10 cm at 180 cm: (10 + .75 · .152 · 180 − 4) / (.246 · 180) = .599, so 36.8 degrees; 5 either way (choice)."""
    estimate = told(knee_to_wall=KneeToWall(method="tape", left_1=10, right_1=10))
    by_hand = draws_of(Lifter(180, Spread(36.796, 5.0), Spread(108, 5.0), Spread(80.0)), Squat())
    assert estimate.explains == pytest.approx(explained(by_hand, -5, 5), abs=1e-3)


@pytest.mark.parametrize("fold", [95, 99, 103, 107, 111, 115])
@pytest.mark.parametrize("depth", ["well_above", "parallel"])
def test_length_explains_a_depth_from_four_draws_in_five_on(fold: float, depth: str) -> None:
    look = replace(LOOK, plain_depth=depth, again_depth=depth)
    estimate = told(hip_fold=HipFold("back", "no", fold, "back", "no", fold), squat_look=look)
    assert estimate.explains is not None
    assert estimate.points_at == ("length" if estimate.explains >= 0.8 else "strength_or_control" if estimate.explains < 0.2 else "open")


@pytest.mark.parametrize(("shin", "balances"), [(9, False), (10, True)])
def test_an_estimate_is_told_where_nine_draws_in_ten_balance(shin: float, balances: bool) -> None:
    """At 9 degrees 10.9 % of the draws can't balance, at 10 8.7 %."""
    tests = {"knee_to_wall": KneeToWall(method="level", placement="mid_shin", left_deg_1=shin, right_deg_1=shin)}
    assert isinstance(depth_estimate(screen(TESTS, tests), TALL), DepthEstimate if balances else NoEstimate)


@pytest.mark.parametrize(("unbalanced", "balances"), [(.1, True), (.1001, False)])
def test_one_draw_in_ten_may_be_out_of_balance_without_a_load_and_under_the_bar(
        unbalanced: float, balances: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(model, "depths_of", lambda _: Depths(0.0, -5.0, 5.0, 0.0, unbalanced))
    estimate = depth_estimate(screen(TESTS), TALL)
    assert isinstance(estimate, DepthEstimate if balances else NoEstimate)
    assert not isinstance(estimate, DepthEstimate) or estimate.under_bar is not None


@pytest.mark.parametrize(("never", "starts"), [(.5, "would start the tuck"), (.5001, "would probably not start a tuck at all")])
def test_length_starts_no_tuck_where_it_does_not_in_more_than_half_the_draws(
        never: float, starts: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(model, "depths_of", lambda _: Depths(0.0, -5.0, 5.0, never, 0.0))
    assert starts in told().words[0]


@pytest.mark.parametrize(("share", "points_at"), [(.8, "length"), (.7999, "open"), (.2, "open"), (.1999, "strength_or_control")])
def test_four_draws_in_five_are_enough_for_length_and_one_in_five_leaves_it_open(
        share: float, points_at: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(model, "explained", lambda *_, **__: share)
    assert told().points_at == points_at


@pytest.mark.parametrize(("gain", "earlier", "same", "later", "two_later"), [
    (1.99, True, True, False, False), (2.0, False, True, True, False), (7.49, False, True, True, False),
    (7.5, False, False, True, True)])
def test_a_trial_is_held_against_a_gain_of_two_degrees_and_of_half_a_band(
        gain: float, earlier: bool, same: bool, later: bool, two_later: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    """2 and 7.5 degrees, from the very limit on (choices); a gain that is told as a help is one that a trial the other way contradicts."""
    monkeypatch.setattr(model, "gained", lambda *_: gain)
    for trial, agrees, moved in ((("clearly", "a_little_above"), earlier, -1), (("clearly", "parallel"), same, 0),
                                 (("clearly", "below"), later, 1), (("no", None), two_later, 2)):
        estimate = told(squat_look=replace(LOOK, wide_rounds=trial[0], wide_depth=trial[1]))
        wide = next(one for one in estimate.helps if one.squat == "wide")
        assert (wide.trial, wide.agrees) == (moved, agrees)
        assert any(words.startswith("By the estimate") for words in estimate.words) is (gain >= 2)
        against = [words for words in estimate.words if "Your trial counts for more" in words]
        assert [f"about {gain:.0f}° deeper" in words for words in against] == ([] if agrees else [gain >= 2])


@pytest.mark.parametrize(("height", "known"), [(119.9, False), (120.0, True), (230.0, True), (230.1, False)])
def test_a_height_from_120_to_230_cm_is_taken(height: float, known: bool) -> None:
    estimate = depth_estimate(screen(TESTS), replace(TALL, height=height))
    assert isinstance(estimate, DepthEstimate if known else NoEstimate)


def with_angles(shin: float, fold: float, **look: str) -> DepthEstimate:
    """The estimate of TALL with both shins and both folds alike."""
    return told(knee_to_wall=KneeToWall(method="level", placement="mid_shin", left_deg_1=shin, right_deg_1=shin),
                hip_fold=HipFold("back", "no", fold, "back", "no", fold), squat_look=replace(LOOK, **look))


@pytest.mark.parametrize(("fold", "gain", "agrees"), [(105, 7.2, True), (108, 7.7, False)])
def test_heels_up_that_showed_nothing_contradict_an_estimate_of_half_a_band_or_more(fold: float, gain: float, agrees: bool) -> None:
    """Half a band is 7.5 degrees (choice)."""
    estimate = with_angles(34, fold, heels_rounds="clearly", heels_depth="parallel", plain_depth="parallel", again_depth="parallel")
    heels = next(one for one in estimate.helps if one.squat == "heels")
    assert (round(heels.gain, 1), heels.agrees) == (gain, agrees)


def test_changes_of_less_than_two_degrees_are_not_told_as_a_help() -> None:
    """Heels up 2.2 degrees, more hip fold 1.7 (choice: 2)."""
    estimate = with_angles(45, 118)
    (helps,) = [words for words in estimate.words if words.startswith("By the estimate")]
    assert "2 cm under the heels (2°)" in helps
    assert "more hip fold" not in helps


def test_what_ranges_explain_is_told_as_the_paper_prints_it() -> None:
    """Kim 2015 J Hum Kinet 45:59 (read): R² .435 in men by ankle and hip; .324 in women by ankle and dorsiflexor strength."""
    assert "ankle and hip range made up 43.5 % of squat depth in men" in HALF
    assert "In women, ankle range and shin strength made up 32.4 %" in HALF


@pytest.mark.parametrize(("distance", "reaches"), [(25.0, True), (26.0, False)])
def test_no_shin_is_taken_to_reach_past_25_cm(distance: float, reaches: bool) -> None:
    """At 200 cm of height the triangle itself closes up to 27.4 cm; the table of shins ends at 25 (choice)."""
    tests = {"knee_to_wall": KneeToWall(method="tape", left_1=distance)}
    assert isinstance(depth_estimate(screen(TESTS, tests), replace(TALL, height=200.0)), DepthEstimate if reaches else NoEstimate)


def test_heels_go_on_two_cm_and_a_weight_in_front_is_three_and_a_half_kilos() -> None:
    """The middle of 2 to 5 kg, the smaller of 2 to 3 cm (choices)."""
    lifter = Lifter(180, Spread(34, (1.696**2 + 3.0**2) ** .5), Spread(108, 5.0), Spread(80.0))
    gains = {one.squat: one.gain for one in told().helps}
    for squat, changed in (("heels", Squat(lift=2)), ("front", Squat("arms", 3.5))):
        assert gains[squat] == pytest.approx(gained(draws_of(lifter, Squat()), draws_of(lifter, changed)), abs=.02)
