"""Rock back, lived through."""

import pytest

from flows.rock_back import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk


def test_three_widths_in_one_go_and_then_one_card():
    talk = Talk(FLOW).tap("Done, nothing hurt", "Before the squat's fold", "About at the fold", "Later, or not at all")
    assert {key: talk.answers[key] for key in ("narrow", "middle", "wide")} == {
        "narrow": "early", "middle": "at_fold", "wide": "past"}
    assert talk.state == "home.pick"


def test_each_width_has_its_caution_before_it_and_the_card_begins_with_what_hurt():
    talk = Talk(FLOW)
    assert "Each time: stop if" in talk.last
    assert "did any set hurt? Which?" in talk.last
    assert "stop if" not in talk.tap("Done, nothing hurt").last


@pytest.mark.parametrize(("view", "filmed"), [("phone", True), ("mirror", False), ("neither", False), (None, True)])
def test_where_there_is_no_phone_at_hand_nobody_is_told_to_film(view: str | None, filmed: bool):
    told = "\n".join(say.text for say in Talk(FLOW, known={**CHECKED, "about_you.view": view} if view else CHECKED).says)
    assert ("Prop the phone" in told) is filmed


@pytest.mark.parametrize("label", ["Together hurt", "Hip-wide hurt", "Wide hurt", "It hurt, not sure which"])
def test_a_width_that_hurt_leads_to_the_pain_questions_and_scores_nothing(label: str):
    talk = Talk(FLOW).tap(label)
    assert talk.state == "pain.bad"
    assert talk.answers == {"did": None}
    assert talk.say("5").state == "home.pick"


@pytest.mark.parametrize(("view", "film"), [("neither", False), ("mirror", False), ("film", True)])
def test_who_has_no_phone_at_hand_is_not_told_to_prop_one(view: str, film: bool):
    told = "".join(say.text for say in Talk(FLOW, known={**CHECKED, "about_you.view": view}).says)
    assert ("Prop the phone" in told) is film
    assert "friend watch from the side" in told


def test_left_out_it_asks_nothing():
    assert Talk(FLOW).tap("Leave it out").answers == {"did": "left_out"}


def test_without_a_floor_something_useful_is_said_and_the_floor_is_closed_for_today():
    talk = Talk(FLOW).tap("I can't get down there")
    assert talk.found["at_hand.floor"] == "no"
    assert "firm bed" in "".join(say.text for say in talk.says)


def test_an_answer_that_is_skipped_leaves_the_next_width():
    talk = Talk(FLOW).tap("Done, nothing hurt", "Skip")
    assert talk.answers["narrow"] is None
    assert talk.state == "rock_back.middle"


@pytest.mark.parametrize(("typed", "value"), [("later", "past"), ("never", "past"), ("early", "early"),
                                              ("about there", "at_fold"), ("dunno", "cant_tell")])
def test_typed_answers_are_read(typed: str, value: str):
    assert Talk(FLOW).say("done", typed).answers["narrow"] == value


def test_pain_told_on_the_card_ends_it_unscored():
    talk = Talk(FLOW).say("done", "later, my knee hurts")
    assert talk.state == "pain.bad"
    assert talk.answers["narrow"] is None


@pytest.mark.parametrize("pregnant", ["yes", "unsure"])
def test_in_pregnancy_it_stays_shut(pregnant: str):
    assert Talk(FLOW, known={**CHECKED, "safety_check.pregnant": pregnant}).state == "home.pick"


def test_it_is_open_where_only_floor_tests_are_allowed():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "rock_back.did"


def test_without_todays_safety_check_it_does_not_open():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"


def test_without_a_warm_up_it_goes_there_first():
    cold = {key: value for key, value in CHECKED.items() if not key.startswith("warm")}
    assert Talk(FLOW, known=cold).state == "warm_up.ok"
