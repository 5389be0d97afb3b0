"""Pause squat, lived through."""

import pytest

from flows.pause_squat import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk

MOVED_CLEAN = ("film", "body", "ready", "done", "clean")


def test_easy_clean_stops_need_no_second_go():
    talk = Talk(FLOW).say(*MOVED_CLEAN, "done", "none", "it kept its shape")
    assert (talk.answers["with"], talk.answers["moving"]) == ("body", "clean")
    assert (talk.answers["hard"], talk.answers["shape"]) == ("none", "clean")
    assert "again" not in talk.answers
    assert talk.state == "home.pick"


@pytest.mark.parametrize("stop", ["top", "middle", "bottom"])
def test_a_hard_stop_is_practised_again_and_may_get_stops_around_it(stop: str):
    talk = Talk(FLOW).say(*MOVED_CLEAN, "done", stop, "clean")
    assert talk.state == "pause_squat.again_do"
    assert f"the {stop} stop" in talk.last
    talk.say("done", "it rounded")
    assert talk.answers["again"] == "rounds"
    assert any(f"The {stop} stop" in say.text and "add a stop" in say.text for say in talk.says)


def test_rounding_without_a_hard_stop_is_seen_twice_too():
    """Only a pause squat that fails twice is evidence (the table of findings)."""
    talk = Talk(FLOW).say(*MOVED_CLEAN, "done", "none", "rounded")
    assert talk.state == "pause_squat.again_all"
    assert talk.say("done", "rounded").answers["again"] == "rounds"
    assert not any("add a stop" in say.text for say in talk.says)


def test_rounding_while_moving_asks_once_for_less_depth():
    talk = Talk(FLOW).say("film", "body", "ready", "done", "rounds")
    assert talk.state == "pause_squat.less_deep"
    talk.say("done", "clean")
    assert talk.answers["moving"] == "clean"
    assert talk.state == "pause_squat.stops_do"


def test_rounding_while_moving_at_less_depth_too_leaves_the_stops_out():
    talk = Talk(FLOW).say("film", "body", "ready", "done", "rounds", "done", "rounds")
    assert talk.answers["moving"] == "rounds"
    assert "stops_do" not in talk.answers
    assert any("leave the stops out" in say.text for say in talk.says)
    assert talk.state == "home.pick"


def test_going_back_from_the_stops_asks_for_the_moving_squat_again():
    talk = Talk(FLOW).say("film", "body", "ready", "done", "rounds", "done", "clean", "back", "rounds")
    assert talk.answers["moving"] == "rounds"
    assert talk.state == "home.pick"


def test_squats_that_were_not_done_are_not_asked_about():
    assert Talk(FLOW).say("film", "body", "ready", "skip").state == "pause_squat.stops_do"
    assert Talk(FLOW).say("film", "body", "ready", "done", "rounds", "skip").state == "home.pick"
    assert "hard" not in Talk(FLOW).say(*MOVED_CLEAN, "skip").answers
    assert "again" not in Talk(FLOW).say(*MOVED_CLEAN, "done", "bottom", "clean", "skip").answers


@pytest.mark.parametrize("reply", ["not rounded", "it didnt round", "no rounding"])
def test_no_rounding_in_other_words_is_never_taken_for_rounding(reply: str):
    assert Talk(FLOW).say(*MOVED_CLEAN, "done", "none", reply).answers["shape"] == "clean"


def test_the_bar_is_empty_and_has_safety_arms():
    talk = Talk(FLOW).say("mirror", "empty bar")
    assert "No plates" in talk.last
    assert "safety arms" in talk.last
    assert talk.say("back", "body weight").state == "pause_squat.setup"


def test_pain_in_the_stops_ends_the_test():
    talk = Talk(FLOW).say(*MOVED_CLEAN, "done but it hurt at the bottom")
    assert talk.state == "pain.bad"
    assert talk.answers["stops_do"] is None


def test_on_a_day_without_load_it_stays_shut():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "home.pick"


def test_it_wants_the_safety_check_and_then_the_warm_up():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"
    assert Talk(FLOW, known={**CHECKED, "warm": "no"}).state == "warm_up.ok"
