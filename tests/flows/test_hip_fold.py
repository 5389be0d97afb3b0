"""Hip fold, lived through."""

import pytest

from companion.screening.protocols.hip_fold import HipFold
from flows.hip_fold import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk


def ready(film: str = "No") -> Talk:
    talk = Talk(FLOW).tap(film)
    return talk.tap("Ready", "Ready", "Ready") if film == "Yes" else talk.tap("Ready", "Ready")


def test_both_sides_are_told_by_what_came_first():
    talk = ready().tap("Done", "Reached the fold", "No", "Done", "Pressure changed first", "No")
    assert {key: talk.answers[key] for key in ("left_first", "left_pinch", "right_first", "right_pinch")} == {
        "left_first": "fold", "left_pinch": "no", "right_first": "back", "right_pinch": "no"}
    assert talk.state == "home.pick"


def test_without_film_no_angle_is_asked_for():
    assert ready().tap("Done", "Reached the fold", "No").state == "hip_fold.right_do"


def test_with_film_the_angle_is_asked_after_the_movement_and_may_be_skipped():
    talk = ready("Yes").tap("Done", "Reached the fold", "No")
    assert talk.state == "hip_fold.left_angle"
    assert talk.say("118").answers["left_angle"] == 118
    assert talk.tap("Done", "Can't tell", "No", "Skip").answers["right_angle"] is None


@pytest.mark.parametrize(("typed", "asked_about"), [("59", True), ("60", False), ("145", False), ("146", True)])
def test_an_unusual_angle_is_asked_about_once_then_kept(typed: str, asked_about: bool):
    talk = ready("Yes").tap("Done", "Reached the fold", "No").say(typed)
    assert ("unusual" in talk.last) is asked_about
    if asked_about:
        talk.say("yes")
    assert talk.answers["left_angle"] == float(typed)


def test_a_pinch_is_kept_and_said_to_get_no_stretch():
    talk = ready().tap("Done", "Can't tell", "Yes")
    assert talk.answers["left_pinch"] == "yes"
    assert any("no stretch" in say.text for say in talk.says)


def test_no_pinch_gets_no_word_about_it():
    talk = ready().tap("Done", "Can't tell", "No")
    assert not any("no stretch" in say.text for say in talk.says)


def test_nothing_is_typed_while_the_hands_are_under_the_back():
    talk = ready()
    assert talk.state == "hip_fold.left_do"
    assert talk.says[-1].buttons[0][0].label == "Done"
    assert "Stop at a pinch" in talk.last


def test_a_side_that_is_skipped_is_not_asked_about():
    talk = ready().say("skip")
    assert talk.state == "hip_fold.right_do"
    assert talk.say("skip").state == "home.pick"


def test_shooting_pain_ends_it_unscored():
    talk = ready().tap("Done").say("pressure changed but it shot down my leg")
    assert talk.state == "pain.bad"
    assert talk.answers["left_first"] is None
    assert talk.say("5").state == "home.pick"


@pytest.mark.parametrize("pregnant", ["yes", "unsure"])
def test_in_pregnancy_it_stays_shut(pregnant: str):
    talk = Talk(FLOW, known={**CHECKED, "safety_check.pregnant": pregnant})
    assert talk.state == "home.pick"
    assert any("pregnancy" in say.text for say in talk.says)


def test_it_is_open_where_only_floor_tests_are_allowed():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "hip_fold.filming"


def test_without_todays_safety_check_it_does_not_open():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"


def test_without_a_warm_up_it_goes_there_first():
    cold = {key: value for key, value in CHECKED.items() if not key.startswith("warm")}
    assert Talk(FLOW, known=cold).state == "warm_up.ok"


def test_a_belly_in_the_way_is_no_stiff_hip():
    talk = Talk(FLOW).say("no", "ready", "ready", "done").tap("My belly stopped it")
    assert "it counts as not tested" in "".join(say.text for say in talk.says)
    assert HipFold(left_first="belly", left_pinch="no").reached("left") is None
