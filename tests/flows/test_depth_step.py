"""The depth to keep on the next squat day, as a lifter hears it."""

import json
from datetime import timedelta

import pytest

from flows.depth_step import FLOW
from tests.drive import CHECKED, NOW, Talk
from tests.flows.squatting import Lifter, squatted

CLEAN = {"back": "still", "kept": "kept", "seen_by": "film", "hurt": "no"}
MOVED = {**CLEAN, "back": "moved"}


def test_without_days_it_is_the_depth_of_the_results():
    talk = Lifter(FLOW)
    assert "Keep to a little above parallel for now" in talk.heard
    assert talk.found["depth.step"] == "a_little_above"


def test_without_results_the_tests_come_first():
    talk = Talk(FLOW, {**CHECKED})
    assert "that comes from the tests" in talk.says[0].text
    assert "depth.step" not in talk.found


def test_two_clean_days_lead_a_step_deeper():
    assert Lifter(FLOW, answers=squatted(2, "1", **CLEAN)).found["depth.step"] == "a_little_above"
    talk = Lifter(FLOW, answers=[*squatted(4, "1", **CLEAN), *squatted(2, "2", **CLEAN)])
    assert talk.found["depth.step"] == "parallel"
    assert "a step deeper, to parallel" in talk.heard


@pytest.mark.parametrize("second", [
    {**CLEAN, "kept": "deeper"}, {**CLEAN, "kept": "higher"}, {**CLEAN, "back": "cant_tell"}, {**CLEAN, "hurt": "yes"}])
def test_a_day_that_was_not_clean_at_the_depth_set_leads_no_deeper(second: dict[str, str]):
    talk = Lifter(FLOW, answers=[*squatted(4, "1", **CLEAN), *squatted(2, "2", **second)])
    assert talk.found["depth.step"] == "a_little_above"


def test_movement_leads_a_step_back_but_not_where_they_went_deeper_than_set():
    assert Lifter(FLOW, answers=squatted(2, "1", **MOVED)).found["depth.step"] == "well_above"
    assert Lifter(FLOW, answers=squatted(2, "1", **{**MOVED, "kept": "deeper"})).found["depth.step"] == "a_little_above"


def test_days_before_the_results_count_for_nothing():
    assert Lifter(FLOW, answers=squatted(31, "1", **MOVED)).found["depth.step"] == "a_little_above"


def test_days_of_the_trial_lead_no_deeper():
    days = [*squatted(4, "1", lot="draw", **CLEAN), *squatted(2, "2", lot="draw", **CLEAN)]
    assert Lifter(FLOW, answers=days).found["depth.step"] == "a_little_above"
    assert Lifter(FLOW, answers=squatted(4, "1", lot="draw", **MOVED)).found["depth.step"] == "well_above"


def test_a_pin_of_the_coach_begins_anew_and_is_the_deepest():
    pinned = {"depth.pin": "parallel", "depth.pinned_on": (NOW - timedelta(days=5)).date().isoformat()}
    assert Lifter(FLOW, pinned, squatted(9, "1", **MOVED)).found["depth.step"] == "parallel", "before the pin"
    days = [*squatted(4, "1", **CLEAN), *squatted(2, "2", **CLEAN)]
    assert Lifter(FLOW, pinned, days).found["depth.step"] == "parallel"
    assert Lifter(FLOW, pinned, squatted(2, "1", **MOVED)).found["depth.step"] == "a_little_above"


def test_where_nobody_has_said_how_deep_they_usually_go_it_goes_no_deeper():
    days = [*squatted(4, "1", **CLEAN), *squatted(2, "2", **CLEAN)]
    assert Lifter(FLOW, {"about_you.usual_depth": ""}, days).found["depth.step"] == "a_little_above"


def test_after_pain_it_is_closed_until_a_check_passes_on_another_day():
    hurt = squatted(2, "1", **{**CLEAN, "hurt": "yes"})
    unchecked = {"safety.checked": "go", "safety.checked.today": "no"}
    assert "no loaded squats before a safety check" in Lifter(FLOW, unchecked, hurt).heard
    assert "loaded squats are open again" in Lifter(FLOW, answers=hurt).heard
    assert "no loaded squats before a safety check" in Lifter(FLOW, {"safety.checked": "not_today"}, hurt).heard
    today = squatted(0, "1", **{**CLEAN, "hurt": "yes"})
    assert "no loaded squats before a safety check" in Lifter(FLOW, answers=today).heard, "the check came before the pain"


HEAVY = [137.0, 140.0, 145.0, 152.0]
"""Loads over the limit of 112 kg: the figures of the case that led here."""


def test_a_lifter_over_the_load_limit_on_19_of_22_days_earns_no_step():
    days = [squatted(44 - 2 * at, str(at), **CLEAN, load=110.0 if at in (3, 9, 15) else HEAVY[at % 4]) for at in range(22)]
    recent = {"outcome.at": (NOW - timedelta(days=60)).isoformat()}
    answers = [row for one in days for row in one]
    talk = Lifter(FLOW, {**recent, "load.limit": "112"}, answers)
    assert talk.found["depth.step"] == "a_little_above"
    assert "over the load limit" in talk.heard
    assert Lifter(FLOW, {**recent, "load.limit": ""}, answers).found["depth.step"] == "below", "without a limit they would"


def test_days_within_both_limits_earn_a_step_and_a_load_nobody_told_does_not():
    for load, step in ((100.0, "parallel"), (112.0, "parallel"), (113.0, "a_little_above"), (None, "a_little_above")):
        said = CLEAN if load is None else {**CLEAN, "load": load}
        talk = Lifter(FLOW, {"load.limit": "112"}, [*squatted(4, "1", **said), *squatted(2, "2", **said)])
        assert talk.found["depth.step"] == step, load


def test_a_limit_that_a_coach_raises_later_earns_no_step_for_days_over_the_old_one():
    had = json.dumps([[(NOW - timedelta(days=20)).isoformat(), "load.limit", "112"], [NOW.isoformat(), "load.limit", "160"]])
    days = [*squatted(4, "1", **CLEAN, load=152.0), *squatted(2, "2", **CLEAN, load=152.0)]
    assert Lifter(FLOW, {"load.limit": "160", "load.limits": had}, days).found["depth.step"] == "a_little_above"
    assert Lifter(FLOW, {"load.limit": "160"}, days).found["depth.step"] == "parallel"


def test_who_squats_without_a_bar_needs_no_load_told():
    talk = Lifter(FLOW, {"load.limit": "112", "bar.bar": "none"}, [*squatted(4, "1", **CLEAN), *squatted(2, "2", **CLEAN)])
    assert talk.found["depth.step"] == "parallel"
