"""Hand-on-back squat, lived through."""

import pytest

from flows.hand_on_back_squat import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk


def test_a_curve_that_moves_is_asked_its_depth_as_usual_and_when_kept_still():
    talk = Talk(FLOW).say("ready", "done", "it moved", "a little above", "done", "moved", "parallel")
    assert (talk.answers["usual_moves"], talk.answers["usual_depth"]) == ("yes", "a_little_above")
    assert (talk.answers["cued_moves"], talk.answers["cued_depth"]) == ("yes", "parallel")
    assert talk.state == "home.pick"


def test_a_curve_kept_still_has_no_depth():
    talk = Talk(FLOW).say("ready", "done", "yes", "parallel", "done", "no")
    assert talk.answers["cued_moves"] == "no"
    assert "cued_depth" not in talk.answers
    assert talk.state == "home.pick"


@pytest.mark.parametrize(("reply", "kept", "told"), [
    ("it didnt move", "no", "nothing to compare"), ("not sure", "cant_tell", "not tested")])
def test_without_a_movement_there_is_no_second_set(reply: str, kept: str, told: str):
    talk = Talk(FLOW).say("ready", "done", reply)
    assert talk.answers["usual_moves"] == kept
    assert "cued_do" not in talk.answers
    assert any(told in say.text for say in talk.says)
    assert talk.state == "home.pick"


@pytest.mark.parametrize("reply", ["not moved", "did not move", "didn't move", "stayed still"])
def test_no_movement_in_other_words_is_never_taken_for_one(reply: str):
    assert Talk(FLOW).say("ready", "done", reply).answers["usual_moves"] == "no"


def test_a_depth_nobody_can_tell_is_skipped_and_the_second_set_still_comes():
    talk = Talk(FLOW).say("ready", "done", "yes", "skip")
    assert talk.answers["usual_depth"] is None
    assert talk.state == "hand_on_back_squat.cued_do"


def test_squats_that_were_not_done_are_not_asked_about():
    assert "usual_moves" not in Talk(FLOW).say("ready", "skip").answers
    assert "cued_moves" not in Talk(FLOW).say("ready", "done", "yes", "parallel", "skip").answers


def test_both_sets_show_their_caution():
    talk = Talk(FLOW).say("ready", "done", "yes", "parallel")
    assert sum("Stop at once if anything hurts" in say.text for say in talk.says) == 2


def test_pain_in_the_second_set_ends_the_test():
    talk = Talk(FLOW).say("ready", "done", "yes", "parallel", "tingling in my foot")
    assert talk.state == "pain.bad"
    assert talk.answers["cued_do"] is None


def test_on_a_day_without_load_it_stays_shut():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "home.pick"


def test_it_wants_the_safety_check_and_then_the_warm_up():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"
    assert Talk(FLOW, known={**CHECKED, "warm": "no"}).state == "warm_up.ok"
