"""Hand-on-back squat, lived through."""

import pytest

from companion.screening.depth import NEVER_STARTS
from companion.screening.protocols.hand_on_back_squat import HandOnBackSquat
from flows.hand_on_back_squat import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk


def kept(talk: Talk) -> HandOnBackSquat:
    return HandOnBackSquat(**{key: value for key, value in talk.answers.items() if key in HandOnBackSquat.__dataclass_fields__})


def test_both_sets_are_done_in_one_go_and_their_depths_asked_afterwards():
    talk = Talk(FLOW).say("done", "a little above", "parallel")
    assert (kept(talk).start("usual"), kept(talk).start("cued")) == (1, 2)
    assert talk.state == "home.pick"


def test_a_curve_kept_still_never_starts_to_move():
    assert kept(Talk(FLOW).say("done", "parallel", "not at all")).start("cued") == NEVER_STARTS


def test_answers_from_before_one_question_told_both_still_count():
    assert HandOnBackSquat("yes", "parallel", "no").start("cued") == NEVER_STARTS
    assert HandOnBackSquat("cant_tell").start("usual") is None


@pytest.mark.parametrize(("reply", "value", "told"), [
    ("it stayed still", "no", "nothing to compare"), ("not sure", "cant_tell", "not tested")])
def test_without_a_movement_the_second_set_is_not_asked_about(reply: str, value: str, told: str):
    talk = Talk(FLOW).say("done", reply)
    assert talk.answers["usual_depth"] == value
    assert any(told in say.text for say in talk.says)
    assert talk.state == "home.pick"


def test_squats_that_were_not_done_are_not_asked_about():
    assert Talk(FLOW).tap("Leave it out").answers == {"did": "left_out"}


def test_both_sets_show_their_caution_before_them():
    assert sum("stop" in say.text.lower() and "hurts" in say.text for say in Talk(FLOW).says) == 2


@pytest.mark.parametrize("label", ["As usual hurt", "Kept still hurt"])
def test_a_set_that_hurt_ends_the_test(label: str):
    talk = Talk(FLOW).tap(label)
    assert talk.state == "pain.bad"
    assert "usual_depth" not in talk.answers


def test_on_a_day_without_load_it_stays_shut():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "home.pick"


def test_it_wants_the_safety_check_and_then_the_warm_up():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"
    assert Talk(FLOW, known={**CHECKED, "warm": "no"}).state == "warm_up.ok"
