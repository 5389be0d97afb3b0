"""The screen, lived through: the squat look, then whichever open test could change most, until nothing open could."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from companion.conversation.condition import Value
from companion.conversation.events import Invite
from companion.conversation.flow import Known, Tell
from companion.conversation.step import step
from companion.screening.protocols import protocol, protocols, route
from companion.screening.protocols.squat_look import SquatLook
from companion.screening.safety import BodyPosition, Level
from companion.screening.screen import LoggedAnswer
from flows import screen_facts
from flows.screen import FLOW
from flows.screen_facts import wanted
from tests.drive import CHECKED, NOW, Talk
from tests.flows.test_full_screen import SQUATS, STUBS, book, done, heard, rows_of, run_flows
from tests.screening.build import START, open_tests, rows
from tests.table import each_row

LOOK = SquatLook("film", "clearly", "a_little_above", heels_depth="below", front_depth="a_little_above", slow_depth="a_little_above",
                 wide_depth="a_little_above", again_depth="a_little_above", load_film="no")
SEEN: Mapping[str, Value] = {f"squat_look.{key}": value for key, value in (("plain_rounds", "clearly"), ("plain_depth", "a_little_above"))}
YEARS: Mapping[str, Value] = {"about_you.years": 3.0}


def begun(known: Mapping[str, Value] | None = None, answers: Sequence[LoggedAnswer] | None = None, **more: Any) -> Talk:
    """A screen whose squat look was done; the other tests end at once with a word."""
    return Talk(FLOW, known={**CHECKED, **SEEN, **YEARS, **(known or {})}, book=STUBS,
                answers=rows_of(squat_look=LOOK) if answers is None else answers, **more)


def followed(talk: Talk) -> list[str]:
    return [flow for flow in run_flows(talk) if flow in protocols() and flow != "squat_look"]


def test_the_squat_comes_first_and_what_it_shows_decides_what_follows():
    talk = begun(answers=())
    assert run_flows(talk)[:2] == ["screen", "squat_look"]
    assert "what it shows decides which tests follow" in heard(talk)


def test_it_goes_from_test_to_test_by_itself_and_ends_with_the_results():
    talk = begun()
    tests = followed(talk)
    assert 1 < len(tests) == len(set(tests))
    assert talk.found["screen.state"] == "decided"
    assert "outcome" in run_flows(talk)


@pytest.mark.parametrize(("stick", "comes"), [("bar", True), ("none", False)])
def test_no_test_with_a_stick_comes_where_there_is_neither_stick_nor_bar(stick: str, comes: bool):
    offered = followed(begun({"about_you.stick": stick}))
    assert len(offered) > 1
    assert any("stick" in protocol(test).needs for test in offered) is comes


def test_each_test_comes_with_what_is_still_open_and_in_how_many_minutes():
    told = next(say for say in begun().says if say.text.startswith("Next: "))
    assert "Still to find out: " in told.text
    assert "it tells the most now" in told.text
    assert [tap.label for row in told.buttons for tap in row] == ["Show results now", "All the tests"]


def test_how_many_are_left_never_grows():
    left = [int(say.text.split("At most ")[1].split(" tests left")[0]) for say in begun().says if say.text.startswith("Next: ")]
    assert left == sorted(left, reverse=True)
    assert len(left) <= left[0] < len(route())


def test_it_ends_where_nothing_open_could_change_the_outcome():
    """Strong against every part of length, moderate and weak ones against control: whatever the rest shows."""
    settled = replace(LOOK, heels_depth="a_little_above", load_film="yes", load_rounds="clearly",
                      load_depth="a_little_above", load_kg=100.0)
    answers = [*rows_of(squat_look=settled),
               *done_as("hip_fold", left_first="fold", right_first="fold", pinched="none"),
               *done_as("leg_raise", method="level", effort="own", left_level=88.0, left_lean="short",
                         right_level=88.0, right_lean="short"),
               *done_as("rock_back", narrow="past", middle="past", wide="past"),
               *done_as("knee_to_wall", method="tape", left_1=14.0, left_limit="neither", right_1=14.0, right_limit="neither"),
               *done_as("hand_on_back_squat", usual_depth="parallel", cued_depth="parallel"),
               *done_as("bird_dog", seen_by="film", left_hold=10.0, left_slow="clean", right_hold=10.0, right_slow="clean"),
               *done_as("arms_forward_squat", seen_by="film", bar="empty", fault="clean"),
               *done_as("pause_squat", **{"seen_by": "film", "with": "bar", "moving": "clean", "hard": "none", "shape": "clean"})]
    talk = begun(answers=answers)
    assert followed(talk) == []
    assert "nothing that is left could change the outcome" in heard(talk)


def done_as(flow: str, **answers: float | str) -> list[LoggedAnswer]:
    ways = {"leg_raise": ("level_own", "shin")}.get(flow, ("", ""))
    return [LoggedAnswer(flow, flow, key, value, "ok", "done", *ways, NOW) for key, value in answers.items()]


@pytest.mark.parametrize(("known", "open_"), [
    ({"safety.level": "no_load", "safety.level.today": "yes"}, open_tests(Level.NO_LOAD)),
    ({"safety_check.pregnant": "yes"}, open_tests(Level.GO, no_lying=True)),
    ({"at_hand.floor": "no", "at_hand.floor.today": "yes"},
     {test for test in route() if protocol(test).posture is BodyPosition.STANDING})])
def test_no_test_is_offered_that_is_locked(known: Mapping[str, Value], open_: set[str]):
    talk = begun(known)
    assert set(followed(talk)) <= open_
    assert followed(talk)


@pytest.mark.parametrize(("years", "state"), [(0.5, "nothing"), (None, "asked"), (3.0, "run")])
def test_a_test_that_needs_years_is_offered_only_to_who_has_them_and_asks_there(years: float | None, state: str):
    """The last test left: after two that were clean."""
    earned = {"arms_forward_squat.fault": "clean", "pause_squat.shape": "clean", "about_you.years": years}
    known = {**CHECKED, **SEEN, **{name: value for name, value in earned.items() if value is not None}}
    helped = replace(LOOK, heels_depth="a_little_above", slow_depth="below")  # for control, so that one more test may decide
    others = (row for test in route() if test not in ("squat_look", "hinge_to_squat") for row in done(test, days=0.1))
    talk = Talk(FLOW, known=known, book=STUBS, answers=[*rows_of(squat_look=helped), *others])
    assert ("hinge_to_squat" in followed(talk)) is (state == "run")
    assert (talk.state == "about_you.years") is (state == "asked")
    assert ("hinge to squat" in heard(talk)) is (state == "run")


@each_row("test", route())
def test_a_test_that_is_done_is_not_wanted(test: str):
    known = {**CHECKED, **YEARS, "arms_forward_squat.fault": "clean", "pause_squat.shape": "clean"}
    assert wanted(protocol(test)).holds(known)
    assert not wanted(protocol(test)).holds({**known, f"done_{test}": "yes"})


def test_what_is_done_already_counts_on_another_day():
    talk = begun(answers=[*rows_of(squat_look=LOOK), *done("hand_on_back_squat")])
    assert "Tests done already: 2" in heard(talk)
    assert not {"squat_look", "hand_on_back_squat"} & set(run_flows(talk))


def test_the_invitation_says_what_it_takes():
    talk = begun()
    taken = step(talk.book, talk.session, Invite("screen"), talk._known())
    assert "safety check and warm-up first" in taken.effects[0].text  # type: ignore[union-attr]


@pytest.mark.parametrize(("reply", "more"), [("Yes, go on", True), ("No, show results", False)])
def test_little_or_no_rounding_makes_the_rest_optional(reply: str, more: bool):
    talk = begun({"squat_look.plain_rounds": "no"}, answers=()).tap(reply)
    assert bool(followed(talk)) is more
    assert "outcome" in run_flows(talk)


@pytest.mark.parametrize("known", [{"warm": "later", "warm.today": "yes"}, {"safety.sore": "yes", "safety.sore.today": "yes"}])
def test_tired_or_sore_muscles_put_the_whole_screen_off(known: dict[str, Value]):
    talk = begun({**known, "safety.level.today": "yes"})
    assert followed(talk) == []
    assert "That is as far as it goes today" in heard(talk)
    assert "outcome" not in run_flows(talk)


def test_stopping_a_test_parks_the_screen_and_go_on_takes_it_up():
    talk = Talk(FLOW, known={**CHECKED, **SEEN}, book=book(squat_look=SQUATS)).tap("Stop", "No")
    assert talk.session.idle
    assert talk.say("go on").state == "squat_look.squat"


def test_after_a_small_pain_only_floor_tests_come():
    talk = Talk(FLOW, known={**CHECKED, **SEEN, **YEARS}, book=book(squat_look=SQUATS)).say(
        "that hurt my back", "Lower back", "1", "no", "no", "no")
    assert talk.known["safety.level"] == "no_load"
    assert set(followed(talk)) <= open_tests(Level.NO_LOAD)


def test_the_stubs_say_nothing_that_a_test_here_looks_for():
    assert all(isinstance(step, Tell) for step in STUBS["rock_back"].flow.steps)


@pytest.mark.parametrize(("days", "counts"), [(13.9, True), (14.1, False)])
def test_a_test_done_counts_for_a_screen_for_a_fortnight(days: float, counts: bool):
    """Fourteen days: our choice."""
    now = START + timedelta(days=days, minutes=1)
    known = Known({}, now, lambda: rows("rock_back", {"narrow": "past", "middle": "past"}))
    assert ("rock_back" in screen_facts.tests_done(known, None)) is counts
