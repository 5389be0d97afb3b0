"""Test again: only what was wanted, with the last numbers, and what the homework was."""

from collections.abc import Mapping, Sequence
from datetime import timedelta

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Began, Remind, Say
from companion.conversation.events import Invite, Tapped
from companion.conversation.flow import Ask, Flow, Tell
from companion.conversation.kinds import Ready
from companion.conversation.registry import Book, bind
from companion.conversation.step import step
from companion.screening.protocols import route
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK, flows
from flows.retest import FLOW
from tests.drive import CHECKED, NOW, Talk

WANTED: Mapping[str, Value] = {"retest.tests": "squat_look,knee_to_wall", "outcome.at": (NOW - timedelta(days=20)).isoformat()}
AS_PLANNED = "About 3 days a week"


def wall(days: int, left: float, right: float, run: str = "") -> list[LoggedAnswer]:
    """A knee to wall by tape, so many days ago."""
    return [LoggedAnswer("knee_to_wall", run or f"wall {days}", key, value, "ok", "done", "", "", NOW - timedelta(days=days))
            for key, value in (("method", "tape"), ("left_1", left), ("right_1", right))]


def stubs() -> Book:
    """The real book, but every test ends at once with a word: what comes after which is what is looked at here."""
    return bind([Flow(flow.name, 1, flow.title, steps=(Tell(f"({flow.name})"),)) if flow.name in route() else flow for flow in flows()],
                "home", "pain")


def begun(known: Mapping[str, Value] | None = None, answers: Sequence[LoggedAnswer] = (), book: Book | None = None) -> Talk:
    return Talk(FLOW, known={**CHECKED, **WANTED, **(known or {})}, book=book or stubs(), answers=answers)


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def run_flows(talk: Talk) -> list[str]:
    return [effect.flow for effect in talk.effects if isinstance(effect, Began)]


def test_only_what_was_not_ruled_out_is_asked_again_in_the_order_of_the_screen():
    talk = begun(answers=wall(21, 8, 13)).tap(AS_PLANNED)
    assert talk.state == "retest.go_squat_look"
    assert talk.tap("Go on").state == "retest.go_knee_to_wall"
    talk.tap("Go on")
    assert [name for name in run_flows(talk) if name in route()] == ["squat_look", "knee_to_wall"]


def test_the_last_numbers_stand_beside_the_tests():
    assert "Last time: knee to wall left 8 cm, knee to wall right 13 cm." in heard(begun(answers=wall(21, 8, 13)))


def test_the_last_numbers_are_in_the_lifters_own_units():
    assert "knee to wall left 3.1 in" in heard(begun({"welcome.units": "imperial"}, wall(21, 8, 13)))


def test_numbers_of_tests_that_are_not_repeated_are_left_out():
    assert "Last time" not in heard(begun({"retest.tests": "squat_look"}, wall(21, 8, 13)))


def test_afterwards_the_changes_and_the_results_are_told():
    talk = begun(answers=[*wall(21, 8, 13), *wall(0, 9, 13)]).tap(AS_PLANNED, "Leave this one out", "Leave this one out")
    assert [name for name in run_flows(talk) if name in ("changes", "outcome")] == ["changes", "outcome"]
    assert talk.found["home_work"] == "as_planned"
    assert talk.state == "outcome.why"


def test_home_work_that_was_hardly_done_cannot_be_judged_and_is_not_blamed():
    talk = begun(answers=wall(21, 8, 13)).tap("Hardly or not", "Leave this one out", "Leave this one out")
    assert "these numbers can't show whether it helps" in heard(talk)
    assert "should" not in heard(talk)


@pytest.mark.parametrize("often", ["About 3 days a week", "Once or twice a week", "I had none"])
def test_other_home_work_gets_no_such_word(often: str):
    talk = begun(answers=wall(21, 8, 13)).tap(often, "Leave this one out", "Leave this one out")
    assert "can't show whether it helps" not in heard(talk)


def test_where_nothing_is_open_nothing_is_asked():
    talk = begun({"retest.tests": ""})
    assert "Nothing needs testing again" in heard(talk)
    assert talk.answers == {}


def test_without_results_there_is_nothing_to_repeat():
    talk = Talk(FLOW, known=CHECKED, book=BOOK)
    assert "nothing to test again yet" in heard(talk)


@pytest.mark.parametrize("level", ["not_today", "clinician", "same_day", "emergency"])
def test_a_level_that_bars_tests_bars_it(level: str):
    assert begun({"safety.level": level}).state == "home.pick"


def test_under_18_without_a_coach_it_stays_shut():
    assert begun({"welcome.adult": "no", "coach": "no"}).state == "home.pick"
    assert begun({"welcome.adult": "no", "coach": "yes"}).state == "retest.home_done"


def test_the_invitation_names_the_tests_and_the_last_numbers():
    talk = begun(answers=wall(21, 8, 13))
    taken = step(talk.book, talk.session, Invite("retest"), talk._known())
    (say,) = taken.effects
    assert "time to test again: squat look, knee to wall. Last time: knee to wall left 8 cm" in say.text
    assert "heavy squats" in say.text
    assert say.buttons


def test_an_invitation_that_later_results_made_empty_names_no_tests():
    """Results without anything to repeat leave the earlier reminder standing; what it says then must still make sense."""
    talk = begun({"retest.tests": ""})
    (say,) = step(talk.book, talk.session, Invite("retest"), talk._known()).effects
    assert "again: ." not in say.text


def test_stopping_for_today_keeps_the_rest_for_another_day():
    talk = begun(answers=wall(21, 8, 13)).tap(AS_PLANNED, "Stop for today")
    assert "The rest is kept for another day" in heard(talk)
    assert "changes" not in run_flows(talk)


def test_what_was_repeated_on_an_earlier_day_is_not_asked_for_again():
    """The rest is kept for another day: so what is done already is not the rest."""
    looked = [LoggedAnswer("squat_look", "look 1", "plain_rounds", "no", "ok", "done", "", "", NOW - timedelta(days=1))]
    talk = begun(answers=[*wall(21, 8, 13), *looked]).tap(AS_PLANNED)
    assert talk.state == "retest.go_knee_to_wall"


@pytest.mark.parametrize(("level", "replies"), [("not_today", ("8", "yes")), ("no_load", ("1", "no"))])
def test_after_pain_no_further_squat_is_offered(level: str, replies: tuple[str, str]):
    """Nothing in the bot talks anyone into going on."""
    squats = Flow("squat_look", 1, "Squat look", steps=(Ask("squat", "Squat.", Ready("Done"), caution="Stop if it hurts."),))
    book = bind([squats if flow.name == "squat_look" else flow for flow in flows()], "home", "pain")
    talk = begun(answers=wall(21, 8, 13), book=book).tap(AS_PLANNED, "Go on").say("that hurt my back", "Lower back", *replies, "no", "no")
    assert talk.known["safety.level"] == level
    assert talk.state != "retest.go_knee_to_wall"


def invited(known: Mapping[str, Value] | None = None) -> Say:
    talk = begun(known, answers=wall(21, 8, 13))
    (say,) = step(talk.book, talk.session, Invite("retest"), talk._known()).effects
    assert isinstance(say, Say)
    return say


def reminds(talk: Talk) -> list[tuple[str, str]]:
    return [(effect.kind, effect.date) for effect in talk.effects if isinstance(effect, Remind)]


def test_the_invitation_restates_the_goal_and_the_last_number():
    text = invited({"squat.goal": "parallel with a still back, at 90 kg"}).text
    assert "Your goal: parallel with a still back, at 90 kg." in text
    assert "Last time: knee to wall left 8 cm" in text


def test_without_a_goal_nothing_is_said_of_one():
    assert "goal" not in invited().text


def test_the_invitation_with_the_longest_goal_fits_one_message():
    text = invited({"squat.goal": "x" * 80, "retest.tests": "squat_look,knee_to_wall,hip_fold,rock_back,leg_raise"}).text
    assert len(text) <= 700
    assert "!" not in text


def test_not_now_offers_three_later_times():
    say = invited()
    assert [tap.label for row in say.buttons for tap in row] == ["Retest", "Not now"]
    talk = Talk(BOOK["home"].flow, known={**CHECKED, **WANTED}, book=BOOK)
    talk.send(Tapped(say.buttons[0][1].data))
    assert talk.state == "retest_later.when"
    talk.tap("In three days")
    assert reminds(talk) == [("retest", "2026-03-05")]


def test_once_begun_it_is_not_asked_for_again_for_a_week():
    talk = begun(answers=wall(21, 8, 13))
    assert reminds(talk) == [("retest", "2026-03-09")]
    assert reminds(talk.tap(AS_PLANNED, "Stop for today")) == [("retest", "2026-03-09")]


def test_where_nothing_is_open_the_reminder_is_taken_away():
    assert reminds(begun({"retest.tests": ""})) == [("retest", "")]


def test_shut_by_a_level_it_leaves_the_reminder_as_it_is():
    assert reminds(begun({"safety.level": "not_today"})) == []


def test_told_results_set_the_next_time_after_that():
    """The week is only for one that is not finished."""
    talk = begun(answers=[*wall(21, 8, 13), *wall(0, 9, 13)]).tap(AS_PLANNED, "Leave this one out", "Leave this one out")
    assert reminds(talk) == [("retest", "2026-03-09")]
    talk.tap("What to do now")
    assert len(reminds(talk)) == 2
    assert reminds(talk)[-1][1] != "2026-03-09"


@pytest.mark.parametrize(("pinned", "date"), [("2999-04-20", "2999-04-20"), ("2020-01-01", (NOW + timedelta(days=7)).date().isoformat())])
def test_a_coachs_date_to_come_stands_over_a_retest_that_is_only_begun(pinned, date):
    talk = begun({"retest.pin": pinned}, wall(21, 8, 13))
    assert [one.date for one in talk.effects if isinstance(one, Remind)] == [date]


def test_a_retest_done_ends_the_coachs_date_and_the_computed_one_follows():
    talk = begun({"retest.pin": "2999-04-20"}, [*wall(21, 8, 13), *wall(0, 9, 13)]).tap(AS_PLANNED, "Go on", "Leave this one out",
                                                                                      "What to do now")
    assert talk.found["retest.pin"] == ""
    assert [one.date for one in talk.effects if isinstance(one, Remind)][-1] < "2999"


def test_a_retest_of_which_everything_is_left_out_leaves_the_coachs_date():
    talk = begun({"retest.pin": "2999-04-20"}, wall(21, 8, 13)).tap(AS_PLANNED, "Leave this one out", "Leave this one out")
    assert "retest.pin" not in talk.found


@pytest.mark.parametrize(("days", "early"), [(5, True), (90, False)])
def test_a_retest_before_its_date_says_that_it_is_early_and_from_when_it_is_not(days: int, early: bool):
    talk = begun(answers=wall(days, 6, 6))
    assert ("It is early: a change could show from " in heard(talk)) is early
