"""The full screen, lived through: which tests come, in what order, and when the rest is optional, shut or another day's."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict
from datetime import timedelta
from typing import Any

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Began
from companion.conversation.flow import Ask, Flow, Tell
from companion.conversation.kinds import Ready
from companion.conversation.registry import Book, bind
from companion.screening.protocols import protocol, route
from companion.screening.protocols.arms_forward_squat import ArmsForwardSquat
from companion.screening.protocols.pause_squat import PauseSquat
from companion.screening.protocols.squat_look import SquatLook
from companion.screening.safety import BodyPosition, Level
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK, flows
from flows.full_screen import FLOW
from tests.drive import CHECKED, NOW, UNCHECKED, Talk
from tests.screening.build import open_tests

EARNED: Mapping[str, Value] = {"about_you.years": 3.0, "arms_forward_squat.fault": "clean", "pause_squat.shape": "clean"}
ROUNDS: Mapping[str, Value] = {"squat_look.plain_rounds": "clearly", "squat_look.plain_depth": "parallel"}
GO_ON, LEAVE_OUT, LATER = "Go on", "Leave this one out", "Stop for today"


def book(**changed: Flow) -> Book:
    """The real book, but the tests, which have tests of their own, end at once with a word."""
    stubs = {test: Flow(test, 1, test, steps=(Tell(f"({test})"),)) for test in route()}
    return bind([{**stubs, **changed}.get(flow.name, flow) for flow in flows()], "home", "pain")


STUBS = book()


def begun(known: Mapping[str, Value] | None = None, answers: Sequence[LoggedAnswer] = (), within: Book = STUBS) -> Talk:
    return Talk(FLOW, known={**CHECKED, **ROUNDS, **(known or {})}, book=within, answers=answers)


def all_through(talk: Talk, choice: str = GO_ON) -> list[str]:
    """The tests that were offered, each answered the same way."""
    offered = []
    while talk.state.startswith("full_screen.go_"):
        offered.append(talk.state.removeprefix("full_screen.go_"))
        talk.tap(choice)
    return offered


def done(*tests: str, days: float = 1, ending: str = "done") -> list[LoggedAnswer]:
    return [LoggedAnswer(test, f"{test} {days}", "x", "y", "ok", ending, "", "", NOW - timedelta(days=days)) for test in tests]


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def run_flows(talk: Talk) -> list[str]:
    return [effect.flow for effect in talk.effects if isinstance(effect, Began)]


# routes ---------------------------------------------------------------------------------------------------------


def test_the_full_screen_has_every_test_in_its_order_and_then_the_results():
    talk = begun(known=EARNED)
    assert all_through(talk) == list(route())
    assert run_flows(talk)[-2:] == ["outcome", "home"]


def test_each_test_says_how_many_are_left_and_how_long_it_takes():
    talk = begun()
    assert talk.last.startswith("Next: squat look, about 6 minutes. At most 10 left.")
    assert "At most 9 left" in talk.tap(GO_ON).last


def test_how_many_are_left_never_grows():
    left, talk = [], begun(known=EARNED)
    while talk.state.startswith("full_screen.go_"):
        left.append(int(talk.last.split("At most ")[1].split(" left")[0]))
        talk.tap(GO_ON)
    assert left == sorted(left, reverse=True)
    assert left[-1] == 1


@pytest.mark.parametrize(("years", "asked"), [(None, True), (3.0, False)])
def test_the_years_are_asked_only_before_the_test_that_needs_them(years: float | None, asked: bool):
    known = {**EARNED, "about_you.years": years} if years else {name: value for name, value in EARNED.items() if "years" not in name}
    talk = begun(known=known)
    all_through(talk)
    assert (talk.state == "about_you.years") is asked
    assert not asked or "hinge_to_squat" not in run_flows(talk)


def test_a_test_can_be_left_out():
    talk = begun().tap(LEAVE_OUT)
    assert talk.state == "full_screen.go_rock_back"
    assert "squat_look" not in run_flows(talk)


# parts on several days --------------------------------------------------------------------------------------------


def test_stopping_for_today_keeps_what_is_done_and_tells_no_results():
    talk = begun().tap(GO_ON, LATER)
    assert "It is all kept" in heard(talk)
    assert talk.state == "home.pick"
    assert "outcome" not in run_flows(talk)


def test_what_is_done_already_counts_on_another_day():
    talk = begun(answers=done("squat_look", "rock_back"))
    assert "Tests done already: 2" in heard(talk)
    assert talk.state == "full_screen.go_hip_fold"
    assert "At most 8 left" in talk.last


def test_one_test_done_is_one_test():
    assert "1 tests" not in heard(begun(answers=done("squat_look")))


@pytest.mark.parametrize(("days", "ending", "counts"), [
    (13.9, "done", True), (14.1, "done", False), (1, "left", False), (1, "pain", False)])
def test_a_test_counts_for_two_weeks_where_it_was_done_to_its_end(days: float, ending: str, counts: bool):
    talk = begun(answers=done("squat_look", days=days, ending=ending))
    assert talk.state == ("full_screen.go_rock_back" if counts else "full_screen.go_squat_look")


def test_after_results_of_a_whole_screen_a_new_one_begins_at_its_beginning():
    talk = begun(known={"screen.told": NOW.isoformat()}, answers=done(*route()))
    assert talk.state == "full_screen.go_squat_look"


# normal first -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("look", "words"), [
    ({"squat_look.plain_rounds": "no"}, "no rounding without load"),
    ({"squat_look.plain_rounds": "little", "squat_look.plain_depth": "parallel"}, "A little rounding that deep is common"),
    ({"squat_look.plain_rounds": "little", "squat_look.plain_depth": "below"}, "A little rounding that deep is common")])
def test_little_or_no_rounding_makes_the_rest_optional(look: dict[str, Value], words: str):
    talk = begun(known={**look, "safety_check.pain": 0.0}).tap(GO_ON)
    assert talk.state == "full_screen.all_the_same"
    assert words in heard(talk)
    assert talk.tap("Yes, go on").state == "full_screen.go_rock_back"


def test_who_wants_no_more_gets_the_results():
    talk = begun(known={"squat_look.plain_rounds": "no"}).tap(GO_ON, "No, show results")
    assert run_flows(talk)[-2:] == ["outcome", "home"]


@pytest.mark.parametrize("look", [
    {"squat_look.plain_rounds": "clearly", "squat_look.plain_depth": "below"},
    {"squat_look.plain_rounds": "little", "squat_look.plain_depth": "a_little_above"},
    {"squat_look.plain_rounds": "little", "squat_look.plain_depth": "well_above"}, {"squat_look.plain_rounds": "cant_tell"}])
def test_other_rounding_goes_straight_on(look: dict[str, Value]):
    assert begun(known={**look, "safety_check.pain": 0.0}).tap(GO_ON).state == "full_screen.go_rock_back"


def test_a_look_that_was_left_out_makes_nothing_optional():
    assert begun(known={"squat_look.plain_rounds": "no"}).tap(LEAVE_OUT).state == "full_screen.go_rock_back"


@pytest.mark.parametrize("pain", [1.0, 2.0])
def test_rounding_with_pain_is_not_called_common(pain: float):
    """Normal first (common practice): a little rounding at or below parallel without pain."""
    look = {"squat_look.plain_rounds": "little", "squat_look.plain_depth": "parallel", "safety_check.pain": pain}
    talk = begun(known=look).tap(GO_ON)
    assert "is common" not in heard(talk)
    assert talk.state == "full_screen.go_rock_back"


@pytest.mark.parametrize("plain", ["no", "little"])
def test_rounding_on_film_under_load_makes_nothing_optional(plain: str):
    """Common practice: clean unloaded with rounding on film under the working load asks about load, strength first."""
    look: dict[str, Value] = {"squat_look.plain_rounds": plain, "squat_look.plain_depth": "parallel", "squat_look.load_film": "yes",
                              "squat_look.load_rounds": "clearly", "squat_look.load_depth": "parallel", "safety_check.pain": 0.0}
    talk = begun(known=look).tap(GO_ON)
    assert "optional" not in heard(talk)
    assert talk.state == "full_screen.go_rock_back"


# what is shut -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("level", ["not_today", "clinician", "same_day", "emergency"])
def test_a_level_that_bars_tests_bars_it_before_anything_is_asked(level: str):
    talk = begun(known={"safety.level": level})
    assert talk.state == "home.pick"
    assert talk.answers == {}


def test_at_no_load_only_floor_tests_come():
    talk = begun(known={**EARNED, "safety.level": "no_load", "safety.level.today": "yes"})
    assert set(all_through(talk)) == open_tests(Level.NO_LOAD)
    assert "outcome" in run_flows(talk)


@pytest.mark.parametrize("pregnant", ["yes", "unsure"])
def test_in_pregnancy_nothing_lies_on_the_back_or_folds_deeply(pregnant: str):
    offered = all_through(begun(known={**EARNED, "safety_check.pregnant": pregnant}))
    assert offered == [test for test in route() if test in open_tests(Level.GO, no_lying=True)]


@pytest.mark.parametrize("known", [{"warm": "later", "warm.today": "yes"}, {"safety.sore": "yes", "safety.sore.today": "yes"}])
def test_tired_or_sore_muscles_put_the_whole_screen_off(known: dict[str, Value]):
    talk = begun(known={**known, "safety.level.today": "yes"})
    assert all_through(talk) == []
    assert "That is as far as it goes today" in heard(talk)
    assert "outcome" not in run_flows(talk)


def test_without_a_floor_only_standing_tests_come():
    offered = all_through(begun(known={**EARNED, "at_hand.floor": "no", "at_hand.floor.today": "yes"}))
    assert offered == [test for test in route() if protocol(test).posture is BodyPosition.STANDING]
    assert "rock_back" in all_through(begun(known={**EARNED, "at_hand.floor": "no"}))  # said on another day


def test_soreness_of_another_day_puts_nothing_off():
    assert begun(known={"safety.sore": "yes"}).state == "full_screen.go_squat_look"


@pytest.mark.parametrize("known", [
    {"about_you.years": 0.9}, {"arms_forward_squat.fault": "rolled"}, {"pause_squat.shape": "rounds"}, {"pause_squat.again": "rounds"}])
def test_the_hinge_comes_only_where_it_is_earned(known: dict[str, Value]):
    """One year of squatting, and the two before it clean, also the second time where there was one."""
    assert "hinge_to_squat" in all_through(begun(known=EARNED))
    assert "hinge_to_squat" not in all_through(begun(known={**EARNED, **known}))


def test_before_todays_check_the_tests_are_offered_and_the_check_comes_with_the_first():
    talk = Talk(FLOW, known={**UNCHECKED, **ROUNDS}, book=BOOK).tap(GO_ON)
    assert talk.state == "safety_check.bladder"


def test_a_check_that_bars_tests_ends_the_screen():
    talk = Talk(FLOW, known={**UNCHECKED, **ROUNDS}, book=BOOK).tap(GO_ON).say("no", "no", "no", "no", "no", "no", "5", "no", "no")
    assert talk.known["safety.level"] == "not_today"
    assert talk.state == "home.pick"
    assert "That is as far as it goes today" in heard(talk)


@pytest.mark.parametrize("known", [{"welcome.zone_right": "no"}, {"welcome.adult": "no", "coach": "no"}])
def test_it_comes_after_the_welcome_and_under_18_only_with_a_coach(known: dict[str, Value]):
    assert not begun(known=known).state.startswith("full_screen.")


# pain -------------------------------------------------------------------------------------------------------------

SQUATS = Flow("squat_look", 1, "Squat look", steps=(Ask("squat", "Squat.", Ready("Done"), caution="Stop if it hurts."),))


def after_pain(*replies: str) -> Talk:
    return begun(known=EARNED, within=book(squat_look=SQUATS)).tap(GO_ON).say("that hurt my back", *replies)


def test_after_a_small_pain_only_floor_tests_come():
    talk = after_pain("Lower back", "1", "no", "no", "no")
    assert talk.known["safety.level"] == "no_load"
    assert set(all_through(talk)) == open_tests(Level.NO_LOAD)


@pytest.mark.parametrize(("replies", "level"), [
    (("Lower back", "5", "no", "no", "no"), "not_today"), (("Leg", "1", "no", "yes", "no", "no", "no"), "clinician"),
    (("Lower back", "1", "no", "no", "yes", "yes", "no"), "emergency")])
def test_after_worse_pain_nothing_more_comes(replies: tuple[str, ...], level: str):
    talk = after_pain(*replies)
    assert talk.known["safety.level"] == level
    assert talk.state == "home.pick"


def test_after_a_false_alarm_the_test_goes_on():
    assert after_pain("Nothing hurts", "Right, nothing").state == "squat_look.squat"


def test_stopping_a_test_parks_the_screen_and_go_on_takes_it_up():
    talk = begun(within=book(squat_look=SQUATS)).tap(GO_ON, "Stop", "No")
    assert talk.session.idle
    assert talk.say("go on").state == "squat_look.squat"


# what the results rest on -----------------------------------------------------------------------------------------


def rows_of(**tests: Any) -> list[LoggedAnswer]:
    return [LoggedAnswer(flow, flow, "with" if key == "with_" else key, value, "ok", "done", "", "", NOW - timedelta(hours=1))
            for flow, record in tests.items() for key, value in asdict(record).items() if value is not None]


def test_the_results_at_the_end_are_those_of_the_tests_that_were_done():
    rows = rows_of(squat_look=SquatLook("film", "clearly", "parallel"), arms_forward_squat=ArmsForwardSquat("stick", "clean"),
                   pause_squat=PauseSquat("body", "clean", "none", "clean"))
    talk = begun(answers=rows)
    assert all_through(talk, LEAVE_OUT) == [
        test for test in route() if test not in ("squat_look", "arms_forward_squat", "pause_squat", "hinge_to_squat")]
    assert talk.state == "outcome.why"
    assert talk.found["overall"] == "open"
