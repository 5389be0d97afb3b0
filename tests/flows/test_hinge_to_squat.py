"""Hinge to squat, lived through."""

from collections.abc import Mapping
from datetime import timedelta

import pytest

from companion.conversation.condition import Value
from companion.screening.screen import LoggedAnswer
from flows.hinge_to_squat import FLOW
from tests.drive import CHECKED, NOW, UNCHECKED, Talk


def row(name: str, value: Value, run: str, ending: str = "done") -> LoggedAnswer:
    """One answer of an earlier run."""
    flow, _, key = name.partition(".")
    return LoggedAnswer(flow, run, key, value, "ok", ending, "", "", NOW - timedelta(hours=1))


EARNED: Mapping[str, Value] = {
    "about_you.years": 3.0, "arms_forward_squat.fault": "clean", "pause_squat.shape": "clean"}


def earned(ending: str = "done", **changed: Value | None) -> Talk:
    """A talk with somebody who may do it, but for what is changed ("flow__key"); None takes an answer away."""
    said = {**EARNED, **{name.replace("__", "."): value for name, value in changed.items()}}
    answers = [row(name, value, name.partition(".")[0], ending if name.startswith("pause") else "done")
               for name, value in said.items() if value is not None]
    known = {**CHECKED, **{name: value for name, value in said.items() if value is not None}}
    return Talk(FLOW, known=known, answers=answers)


def test_clean_in_the_hinge_and_in_the_squat_asks_no_depth():
    talk = earned().say("film", "done", "clean", "clean")
    assert (talk.answers["hinge"], talk.answers["sink"]) == ("clean", "clean")
    assert "depth" not in talk.answers
    assert talk.state == "home.pick"


def test_a_shape_lost_while_sinking_is_asked_its_depth():
    talk = earned().say("film", "done", "it kept its shape", "no", "well above")
    assert (talk.answers["sink"], talk.answers["depth"]) == ("breaks", "well_above")


def test_rounding_in_the_hinge_is_kept_and_the_squat_still_asked_about():
    talk = earned().say("mirror", "done", "rounded")
    assert talk.answers["hinge"] == "rounds"
    assert talk.state == "hinge_to_squat.sink"


@pytest.mark.parametrize(("years", "state"), [
    (0.9, "home.pick"), (1.0, "hinge_to_squat.seen_by"), (1.1, "hinge_to_squat.seen_by"), (None, "home.pick")])
def test_it_opens_from_one_year_of_squatting(years: float | None, state: str):
    assert earned(about_you__years=years).state == state


def test_who_has_not_said_their_years_is_told_where_to():
    assert any("about you" in say.text for say in earned(about_you__years=None).says)


@pytest.mark.parametrize("fault", [None, "rolled", "chest", "back"])
def test_it_waits_for_a_clean_arms_forward_squat(fault: str | None):
    talk = earned(arms_forward_squat__fault=fault)
    assert talk.state == "home.pick"
    assert any("arms-forward squat" in say.text for say in talk.says)


@pytest.mark.parametrize(("shape", "again", "opens"), [
    ("clean", None, True), ("clean", "rounds", False), ("rounds", "clean", False), ("rounds", None, False),
    (None, None, False)])
def test_it_waits_for_a_pause_squat_that_was_clean(shape: str | None, again: str | None, opens: bool):
    talk = earned(pause_squat__shape=shape, pause_squat__again=again)
    assert (talk.state == "hinge_to_squat.seen_by") is opens


def test_a_pause_squat_that_pain_ended_does_not_open_it():
    assert earned(ending="pain").state == "home.pick"


def test_nobody_warms_up_for_a_test_that_stays_shut():
    assert earned(warm="no").state == "warm_up.ok"
    assert earned(warm="no", about_you__years=0.5).state == "home.pick"


def test_an_emergency_is_told_before_anything_else():
    talk = earned(safety__level="emergency", safety__may_open="no", about_you__years=None)
    assert "emergency" in talk.says[0].text


def test_a_movement_that_was_not_done_is_not_asked_about():
    assert "hinge" not in earned().say("film", "leave it out").answers


def test_pain_in_the_movement_ends_the_test():
    talk = earned().say("film", "sharp pain in my back")
    assert talk.state == "pain.bad"
    assert talk.answers["did"] is None


def test_on_a_day_without_load_it_stays_shut():
    assert earned(safety__level="no_load").state == "home.pick"


def test_it_wants_the_safety_check_first():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"
