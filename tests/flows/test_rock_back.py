"""Rock back, lived through."""

import pytest

from flows.rock_back import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk


def ready() -> Talk:
    return Talk(FLOW).tap("Ready", "Ready")


def test_three_widths_each_answered_after_its_movement():
    talk = ready().tap("Done", "Before the squat's fold", "Done", "About at the fold", "Done", "Later, or not at all")
    assert {key: talk.answers[key] for key in ("narrow", "middle", "wide")} == {
        "narrow": "early", "middle": "at_fold", "wide": "past"}
    assert talk.state == "home.pick"


@pytest.mark.parametrize("width", range(3))
def test_every_movement_shows_what_would_make_the_lifter_stop(width: int):
    talk = ready()
    for _ in range(width):
        talk.tap("Done", "Can't tell")
    assert "Stop if" in talk.last
    talk.tap("Done")
    assert "Stop if" not in talk.last


def test_a_width_that_is_skipped_is_not_asked_about():
    talk = ready().say("skip")
    assert talk.state == "rock_back.middle_do"
    talk.say("skip")
    assert talk.state == "rock_back.wide_do"
    assert talk.say("skip").state == "home.pick"


def test_an_answer_that_is_skipped_leaves_the_next_width():
    talk = ready().tap("Done", "Skip")
    assert talk.answers["narrow"] is None
    assert talk.state == "rock_back.middle_do"


@pytest.mark.parametrize(("typed", "value"), [("later", "past"), ("never", "past"), ("early", "early"),
                                              ("about there", "at_fold"), ("dunno", "cant_tell")])
def test_typed_answers_are_read(typed: str, value: str):
    assert ready().tap("Done").say(typed).answers["narrow"] == value


def test_pain_ends_it_unscored():
    talk = ready().tap("Done").say("later, my knee hurts")
    assert talk.state == "pain.bad"
    assert talk.answers["narrow"] is None


@pytest.mark.parametrize("pregnant", ["yes", "unsure"])
def test_in_pregnancy_it_stays_shut(pregnant: str):
    assert Talk(FLOW, known={**CHECKED, "safety_check.pregnant": pregnant}).state == "home.pick"


def test_it_is_open_where_only_floor_tests_are_allowed():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "rock_back.setup_fold"


def test_without_todays_safety_check_it_does_not_open():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"


def test_without_a_warm_up_it_goes_there_first():
    cold = {key: value for key, value in CHECKED.items() if not key.startswith("warm")}
    assert Talk(FLOW, known=cold).state == "warm_up.ok"
