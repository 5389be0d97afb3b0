"""Every question takes the ways people say yes, no, a bit, the same, and nothing."""

import pytest

from companion.conversation.effects import Record, Say
from companion.conversation.events import Typed
from companion.conversation.flow import Known
from companion.conversation.step import step
from flows.catalogue import BOOK
from tests.conversation.test_cards import GROWN, NOW, at
from tests.table import each_row

pytestmark = pytest.mark.unit


def logged(flow: str, key: str, text: str, got: dict | None = None) -> tuple[str, object]:
    session = at(flow, key)
    session = session.with_top(session.top._replace(got=got or {}, trail=tuple(got or ())))
    taken = step(BOOK, session, Typed(text), Known(GROWN, NOW))
    row = next(effect for effect in taken.effects if isinstance(effect, Record))
    return row.status, row.value


@each_row(("text", "value"), [
    ("yes", "clearly"), ("yep", "clearly"), ("no rounding", "no"), ("it kept", "no"), ("nope", "no"), ("kinda", "little"),
    ("a bit", "little"), ("only in the last one", "some"), ("in some of them", "some"), ("sometimes", "some"), ("dunno", "cant_tell"),
    ("can't see", "cant_tell")])
def test_whether_the_back_rounds_is_told_as_people_tell_it(text, value):
    assert logged("squat_look", "plain_rounds", text) == ("ok", value)


@each_row(("flow", "key", "text", "value"), [
    ("squat_after", "back", "it kept", "still"), ("squat_after", "back", "a bit", "moved"),
    ("squat_after", "kept", "same as before", "kept"),
    ("hinge_to_squat", "hinge", "it kept", "clean"), ("pause_squat", "shape", "kinda", "rounds"),
    ("hip_fold", "pinched", "a bit", "both"), ("hip_fold", "pinched", "not sure", "both"),
    ("hip_fold", "pinched", "a bit on the left", "left"),
    ("hand_on_back_squat", "usual_depth", "it kept", "no"), ("hand_on_back_squat", "usual_depth", "dunno", "cant_tell"),
    ("arms_forward_squat", "heels_help", "it kept", "yes"),
    ("arms_forward_squat", "heels_help", "sort of", "no"), ("warm_up", "heavy", "kind of", "yes"),
    ("squat_look", "plain_depth", "ass to grass", "below")])
def test_a_bit_takes_the_careful_side_and_kept_is_kept(flow, key, text, value):
    assert logged(flow, key, text) == ("ok", value)


@pytest.mark.parametrize(("key", "text", "got"), [
    ("left_2", "same as before", {"method": "tape", "left_1": 11.0}), ("right_1", "both the same", {"method": "tape", "left_1": 11.0}),
    ("right_1", "same as left", {"method": "tape", "left_1": 11.0})])
def test_the_same_is_the_number_before(key, text, got):
    assert logged("knee_to_wall", key, text, got) == ("ok", 11.0)


@pytest.mark.parametrize(("flow", "key"), [("squat_after", "video"), ("film", "video"), ("squat_after", "note"),
                                           ("film", "note"), ("squat_days", "goal")])
@pytest.mark.parametrize("text", ["nope", "no", "none"])
def test_what_need_not_be_sent_takes_no_for_an_answer(flow, key, text):
    assert logged(flow, key, text) == ("skipped", None)


LOOK = {"seen_by": "film", "plain_rounds": "clearly", "plain_depth": "parallel"}


@pytest.mark.parametrize(("flow", "key", "got", "text", "value"), [
    ("squat_look", "change_1_depth", LOOK, "no change", "parallel"), ("squat_look", "change_1_depth", LOOK, "no difference", "parallel"),
    ("squat_look", "change_1_depth", LOOK, "same", "parallel"), ("squat_look", "change_1_depth", LOOK, "it didn't change", "parallel"),
    ("squat_look", "change_2_depth", {**LOOK, "change_1_depth": "below"}, "no change", "parallel"),
    ("hand_on_back_squat", "cued_depth", {"usual_depth": "below"}, "same as usual", "below"),
    ("leg_raise", "right_level", {"method": "level", "left_level": 70.0}, "same", 70.0)])
def test_no_change_is_the_answer_before_and_no_no(flow, key, got, text, value):
    """With heels up, "no change" read as "not at all" would say that the heels took the rounding away."""
    assert logged(flow, key, text, got) == ("ok", value)


def test_the_same_as_one_of_two_is_asked_about():
    session = at("squat_look", "change_2_depth")
    got = {**LOOK, "change_1_depth": "below"}
    taken = step(BOOK, session.with_top(session.top._replace(got=got, trail=tuple(got))), Typed("same"), Known(GROWN, NOW))
    assert not any(isinstance(effect, Record) for effect in taken.effects)


@pytest.mark.parametrize("text", ["nope", "nah", "no, nope", "no"])
def test_nope_says_that_no_set_hurt(text):
    assert logged("squat_look", "did", text) == ("ok", "none")


@pytest.mark.parametrize("text", ["i didn't", "i haven't", "no thanks", "not yet"])
def test_a_set_that_was_not_done_is_no_set_that_did_not_hurt(text):
    taken = step(BOOK, at("squat_look", "did"), Typed(text), Known(GROWN, NOW))
    assert not any(isinstance(effect, Record) and effect.value == "none" for effect in taken.effects)


@pytest.mark.parametrize("text", ["a bit", "maybe", "not sure", "dunno", "kinda"])
def test_a_doubt_whether_squats_hurt_is_taken_as_hurt(text):
    assert logged("squat_after", "hurt", text) == ("ok", "yes")


@pytest.mark.parametrize(("flow", "key"), [("bird_dog", "left_do"), ("warm_up", "squats"), ("film_measure", "taped")])
@pytest.mark.parametrize(("text", "said"), [("no", "Take your time"), ("nope", "Take your time"), ("not sure", "when you are")])
def test_not_ready_waits_and_unsure_gets_help(flow, key, text, said):
    taken = step(BOOK, at(flow, key), Typed(text), Known(GROWN, NOW))
    assert said in "\n".join(effect.text for effect in taken.effects if isinstance(effect, Say))
    assert taken.session.top.state == key


@pytest.mark.parametrize(("flow", "key"), [("squat_after", "video"), ("film_measure", "shot_video"), ("about_you", "tape"),
                                           ("squat_look", "load_film"), ("signs", "meant"), ("warm_up", "heavy")])
@pytest.mark.parametrize("text", ["i dont understand the question", "can you explain that", "wdym"])
def test_somebody_who_does_not_understand_has_not_answered(flow, key, text):
    taken = step(BOOK, at(flow, key), Typed(text), Known(GROWN, NOW))
    assert not any(isinstance(effect, Record) for effect in taken.effects)


@pytest.mark.parametrize("flow", ["squat_look", "hip_fold", "leg_raise", "rock_back", "hand_on_back_squat"])
@pytest.mark.parametrize("text", ["a bit", "maybe", "not sure", "both", "yes"])
def test_a_doubt_whether_a_set_hurt_is_taken_as_hurt(flow, text):
    assert logged(flow, "did", text) == ("in_pain", None)


def test_a_safety_question_takes_no_guess():
    taken = step(BOOK, at("safety_check", "bladder"), Typed("a bit"), Known(GROWN, NOW))
    assert not any(isinstance(effect, Record) and effect.value == "no" for effect in taken.effects)


@pytest.mark.parametrize("text", ["kinda", "a bit"])
def test_how_much_it_moved_is_no_depth_and_is_asked_again(text):
    taken = step(BOOK, at("hand_on_back_squat", "usual_depth"), Typed(text), Known(GROWN, NOW))
    assert not any(isinstance(effect, Record) for effect in taken.effects)
