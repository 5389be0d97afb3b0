"""Hip fold, lived through."""

import pytest

from companion.conversation.events import FilmRead, Sent
from companion.screening.pairs import folds
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.screen import screen_of
from flows.hip_fold import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk


def test_both_sides_are_told_afterwards_by_what_came_first():
    talk = Talk(FLOW).tap("Done, nothing hurt", "Reached the fold", "Pressure changed first", "No")
    assert {key: talk.answers[key] for key in ("left_first", "right_first", "pinched")} == {
        "left_first": "fold", "right_first": "back", "pinched": "none"}
    assert talk.state == "home.pick"


def test_without_film_no_angle_is_asked_for():
    assert Talk(FLOW).tap("Done, nothing hurt", "Reached the fold").state == "hip_fold.right_first"


def test_with_film_the_angle_is_asked_after_the_movement_and_may_be_skipped():
    talk = Talk(FLOW).tap("Done and filmed, nothing hurt", "Reached the fold")
    assert talk.state == "hip_fold.left_angle"
    assert talk.say("118").answers["left_angle"] == 118
    assert talk.tap("Can't tell", "Skip").answers["right_angle"] is None


@pytest.mark.parametrize(("typed", "asked_about"), [("59", True), ("60", False), ("145", False), ("146", True)])
def test_an_unusual_angle_is_asked_about_once_then_kept(typed: str, asked_about: bool):
    talk = Talk(FLOW).tap("Done and filmed, nothing hurt", "Reached the fold").say(typed)
    assert ("unusual" in talk.last) is asked_about
    if asked_about:
        talk.say("yes")
    assert talk.answers["left_angle"] == float(typed)


@pytest.mark.parametrize(("label", "sides"), [("No", ()), ("Left", ("left",)), ("Right", ("right",)), ("Both", ("left", "right"))])
def test_a_pinch_is_kept_for_its_side_and_said_to_get_no_stretch(label: str, sides: tuple[str, ...]):
    talk = Talk(FLOW).tap("Done, nothing hurt", "Reached the fold", "Reached the fold", label)
    assert any("no stretch" in say.text for say in talk.says) is bool(sides)
    fold = HipFold(**{key: value for key, value in talk.answers.items() if key in HipFold.__dataclass_fields__})
    assert tuple(side for side in ("left", "right") if fold.reached(side) is None) == sides


def test_nothing_is_tapped_while_the_hands_are_under_the_back_and_each_side_is_cautioned():
    talk = Talk(FLOW)
    assert "Left knee bent" in talk.last
    assert "Then the right" in talk.last
    assert "Either side: stop at a pinch" in talk.last
    assert not any(word in talk.tap("Done, nothing hurt").last for word in ("knee bent", "stop at"))


@pytest.mark.parametrize("label", ["Left hurt", "Right hurt"])
def test_a_side_that_hurt_ends_it_unscored(label: str):
    talk = Talk(FLOW).tap(label)
    assert talk.state == "pain.bad"
    assert talk.say("5").state == "home.pick"


def test_a_floor_nobody_gets_down_to_closes_lying_tests_for_today():
    assert Talk(FLOW).say("no room").found["at_hand.floor"] == "no"


def test_shooting_pain_ends_it_unscored():
    talk = Talk(FLOW).say("done", "pressure changed but it shot down my leg")
    assert talk.state == "pain.bad"
    assert talk.answers["left_first"] is None


@pytest.mark.parametrize("pregnant", ["yes", "unsure"])
def test_in_pregnancy_it_stays_shut(pregnant: str):
    talk = Talk(FLOW, known={**CHECKED, "safety_check.pregnant": pregnant})
    assert talk.state == "home.pick"
    assert any("pregnancy" in say.text for say in talk.says)


def test_it_is_open_where_only_floor_tests_are_allowed():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "hip_fold.did"


def test_without_todays_safety_check_it_does_not_open():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"


def test_without_a_warm_up_it_goes_there_first():
    cold = {key: value for key, value in CHECKED.items() if not key.startswith("warm")}
    assert Talk(FLOW, known=cold).state == "warm_up.ok"


def test_a_belly_in_the_way_is_no_stiff_hip():
    talk = Talk(FLOW).say("done").tap("My belly stopped it", "Can't tell", "No")
    assert "it counts as not tested" in "".join(say.text for say in talk.says)
    assert HipFold(left_first="belly", left_pinch="no").reached("left") is None


def test_a_film_with_cards_gives_the_angle_and_none_is_asked_for():
    talk = Talk(FLOW, known={**CHECKED, "films": "yes"}).tap("Done and filmed, nothing hurt", "Pressure changed first")
    talk.send(Sent("video", "v1"))
    talk.send(FilmRead("1", "left_film", "good", (("angle", 96.5),), "The pelvis begins to turn at 96°."))
    assert talk.state == "hip_fold.right_first"
    assert talk.tap("Pressure changed first", "Skip").state == "hip_fold.right_angle"  # without cards it is asked for


def test_the_angle_by_cards_counts_before_the_one_by_eye():
    both = HipFold(left_first="back", left_pinch="no", left_angle=110.0, left_film_angle=97.0)
    assert folds(screen_of(both)) == {"back": [97.0], "fold": []}
