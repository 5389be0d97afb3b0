"""Pause squat, lived through."""

import pytest

from flows.pause_squat import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk

MOVED_CLEAN = ("film", "body", "done", "clean")


def test_easy_clean_stops_need_no_second_go():
    talk = Talk(FLOW).say(*MOVED_CLEAN, "none", "it kept its shape")
    assert (talk.answers["with"], talk.answers["moving"]) == ("body", "clean")
    assert (talk.answers["hard"], talk.answers["shape"]) == ("none", "clean")
    assert "again" not in talk.answers
    assert talk.state == "home.pick"


@pytest.mark.parametrize("told", ["about_you.bar", "bar.bar"])
def test_somebody_without_a_bar_is_offered_none_wherever_they_said_so(told: str):
    for known, labels in (({}, {"Empty bar"}), ({told: "none"}, set()), ({told: "standard"}, {"Empty bar"})):
        offered = {tap.label for row in Talk(FLOW, known={**CHECKED, **known}).say("film").says[-1].buttons for tap in row}
        assert offered & {"Empty bar"} == labels


@pytest.mark.parametrize("stop", ["top", "middle", "bottom"])
def test_a_hard_stop_is_practised_again_and_may_get_stops_around_it(stop: str):
    talk = Talk(FLOW).say(*MOVED_CLEAN, stop, "clean")
    assert talk.state == "pause_squat.again_do"
    assert f"the {stop} stop" in talk.last
    talk.say("done", "it rounded")
    assert talk.answers["again"] == "rounds"
    assert any(f"The {stop} stop" in say.text and "add a stop" in say.text for say in talk.says)


def test_rounding_without_a_hard_stop_is_seen_twice_too():
    """Only a pause squat that fails twice is evidence (the table of findings)."""
    talk = Talk(FLOW).say(*MOVED_CLEAN, "none", "rounded")
    assert talk.state == "pause_squat.again_all"
    assert talk.say("done", "rounded").answers["again"] == "rounds"
    assert not any("add a stop" in say.text for say in talk.says)


def test_rounding_while_moving_leaves_the_stops_out():
    """They only tell something at a depth that is clean while moving."""
    talk = Talk(FLOW).say("film", "body", "done", "rounds")
    assert talk.answers["moving"] == "rounds"
    assert not {"hard", "shape"} & talk.answers.keys()
    assert any("the stops say nothing" in say.text for say in talk.says)
    assert talk.state == "home.pick"


def test_both_sets_are_done_in_one_go_each_with_its_caution():
    talk = Talk(FLOW).say("film", "body")
    assert talk.state == "pause_squat.did"
    assert "First: three slow squats without stops" in talk.says[-2].text
    assert all("hurts" in say.text for say in talk.says[-2:])


@pytest.mark.parametrize("label", ["Without stops hurt", "With stops hurt"])
def test_a_set_that_hurt_ends_the_test(label: str):
    assert Talk(FLOW).say("film", "body").tap(label).state == "pain.bad"


def test_squats_that_were_not_done_are_not_asked_about():
    assert "moving" not in Talk(FLOW).say("film", "body", "leave it out").answers
    assert "again" not in Talk(FLOW).say(*MOVED_CLEAN, "bottom", "clean", "leave it out").answers


@pytest.mark.parametrize("reply", ["not rounded", "it didnt round", "no rounding"])
def test_no_rounding_in_other_words_is_never_taken_for_rounding(reply: str):
    assert Talk(FLOW).say(*MOVED_CLEAN, "none", reply).answers["shape"] == "clean"


def test_the_bar_is_empty_and_has_safety_arms():
    talk = Talk(FLOW).say("mirror", "empty bar")
    assert "No plates" in talk.says[-2].text
    assert "safety arms" in talk.says[-2].text
    assert talk.say("back", "body weight").state == "pause_squat.did"


def test_pain_in_the_stops_ends_the_test():
    talk = Talk(FLOW).say("film", "body", "done but it hurt at the bottom")
    assert talk.state == "pain.bad"
    assert talk.answers["did"] is None


def test_on_a_day_without_load_it_stays_shut():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "home.pick"


def test_it_wants_the_safety_check_and_then_the_warm_up():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"
    assert Talk(FLOW, known={**CHECKED, "warm": "no"}).state == "warm_up.ok"
