"""About you, lived through: body, squat and what is at hand."""

import pytest

from companion.conversation.flow import Known, Run
from flows.about_you import FLOW, asked_for
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW, Talk

ALL = ("175", "78", "Man", "3", "100", "Low on the back", "Below parallel", "yes", "yes", "Broomstick", "Phone on a stand, filming",
       "43", "44.5", "50")


def begun(*replies: str, units: str = "metric") -> Talk:
    return Talk(FLOW, known={**CHECKED, "welcome.units": units}).say(*replies)


def test_every_answer_is_kept():
    assert begun(*ALL).answers == {
        "height": 175, "mass": 78, "sex": "man", "years": 3, "load": 100, "bar": "low", "usual_depth": "below", "tape": "yes",
        "level": "yes", "stick": "broomstick", "view": "film", "shin": 43, "thigh": 44.5, "trunk": 50}


def test_it_ends_at_the_menu():
    assert begun(*ALL).state == "home.pick"


@pytest.mark.parametrize(("reply", "cm"), [("5'10", 177.8), ("5 ft 10", 177.8), ("70 in", 177.8), ("178 cm", 178)])
def test_height_is_read_as_it_is_written(reply: str, cm: float):
    assert begun(reply, units="imperial").answers["height"] == cm


def test_pounds_are_kept_in_kilograms():
    assert begun("70", "170", units="imperial").answers["mass"] == 77.11


@pytest.mark.parametrize(("reply", "asked_again"), [
    ("119.9", True), ("120", False), ("230", False), ("230.1", True), ("-170", True), ("tall", True)])
def test_a_height_that_cannot_be_is_asked_again(reply: str, asked_again: bool):
    talk = begun(reply)
    assert talk.state == "about_you.height"
    assert ("For example" in talk.last) == asked_again


@pytest.mark.parametrize(("reply", "unusual"), [("144", True), ("145", False), ("205", False), ("206", True)])
def test_an_unusual_height_is_asked_about_once_and_then_kept(reply: str, unusual: bool):
    talk = begun(reply)
    assert ("would be unusual" in talk.last) == unusual
    if unusual:
        talk.say("yes")
    assert talk.answers["height"] == float(reply)


def test_weight_and_sex_can_be_left_unsaid():
    talk = begun("175", "skip", "Rather not say")
    assert talk.answers["mass"] is None
    assert talk.answers["sex"] == "unsaid"


def test_without_a_load_the_bar_is_not_asked():
    talk = begun("175", "78", "Man", "0", "skip")
    assert talk.state == "about_you.usual_depth"
    assert begun("175", "78", "Man", "3", "100").state == "about_you.bar"


def test_months_of_squatting_are_a_part_of_a_year():
    assert begun("175", "78", "Man", "6 months").answers["years"] == 0.5


def test_every_question_can_be_skipped():
    talk = begun(*("skip",) * 10)
    assert talk.state == "home.pick"
    assert set(talk.answers.values()) == {None}


def test_without_a_tape_the_lengths_are_not_asked_and_with_one_each_can_be_skipped():
    begin = ALL[:7]
    assert begun(*begin, "no", "yes", "Broomstick", "Mirror").state == "home.pick"
    talk = begun(*begin, "yes", "yes", "Broomstick", "Mirror")
    assert talk.state == "about_you.shin"
    assert talk.say("skip", "17.5 in", "skip").answers | {"shin": None, "thigh": 44.45, "trunk": None} == talk.answers


def test_only_about_me_and_the_estimate_s_button_ask_for_the_lengths():
    """What runs this flow in a screen or a test names what it needs, and that is no length."""
    runs = [step for name in BOOK.flows if name != "home" for step in BOOK[name].flow.steps
            if isinstance(step, Run) and step.flow == "about_you"]
    assert len(runs) > 3
    assert {part for run in runs for part in run.asked.split(",")} <= {"height", "load", "years", "usual_depth"}
    (button,) = [offer for step in BOOK["depth_estimate"].flow.steps for offer in step.offers if offer.flow == "about_you"]
    assert (button.label, button.asked) == ("My proportions", "proportions")
    assert BOOK.sentence("my proportions") == ("about_you", "proportions")
    assert asked_for(Known({}, NOW, asked="proportions")) == {f"asks_{key}": "yes" for key in ("tape", "shin", "thigh", "trunk")}


def test_an_answer_can_be_taken_back():
    talk = begun("175", "back", "180")
    assert talk.answers["height"] == 180


@pytest.mark.parametrize("asked", ["height", "load", "years,usual_depth"])
def test_a_test_that_needs_some_of_it_asks_for_that_alone(asked: str):
    talk = Talk(FLOW)
    assert asked_for(Known({}, NOW, asked=asked)) == {f"asks_{key}": "yes" for key in asked.split(",")}
    assert asked_for(Known({}, NOW, asked="no such thing")) == asked_for(Known({}, NOW))
    assert talk.state == "about_you.height"
