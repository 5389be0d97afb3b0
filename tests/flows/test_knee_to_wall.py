"""Knee to wall, lived through."""

from flows.knee_to_wall import FLOW
from tests.drive import UNCHECKED, Talk


def test_two_readings_close_together_need_no_third():
    talk = Talk(FLOW).say("tape", "ready", "11", "11.5", "calf", "10", "10.5", "neither")
    assert talk.answers["left_2"] == 11.5
    assert "left_3" not in talk.answers
    assert talk.answers["right_limit"] == "neither"


def test_a_third_reading_is_asked_at_the_detectable_change_of_1_9_cm():
    """Powden 2015 Man Ther 20:524 (read): MDC 1.9 cm."""
    assert Talk(FLOW).say("tape", "ready", "10", "11.8").state == "knee_to_wall.left_limit"
    assert Talk(FLOW).say("tape", "ready", "10", "11.9").state == "knee_to_wall.left_3"


def test_inches_are_read_and_kept_in_centimetres():
    talk = Talk(FLOW, known={**Talk(FLOW).known, "welcome.units": "imperial"}).say("tape", "ready", "4 1/2")
    assert talk.answers["left_1"] == 11.43


def test_pain_in_the_answer_ends_the_test_and_scores_nothing():
    talk = Talk(FLOW).say("tape", "ready", "11 but that really hurt")
    assert talk.state == "pain.bad"
    assert talk.answers["left_1"] is None


def test_without_todays_safety_check_it_does_not_open():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"
