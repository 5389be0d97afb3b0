"""Squats left out for a time: a clinician's limit closes them, a break of one's own pauses the squat days."""

from __future__ import annotations

import pytest

from companion.screening.limits import LimitPart, limits_in
from flows.catalogue import BOOK
from flows.home import FLOW as HOME
from tests.drive import CHECKED, Talk

PLAN = {"squat.plan": '{"weekly":{"TU":"18:00"}}'}


def said(words: str) -> Talk:
    return Talk(HOME, known={**CHECKED, **PLAN}, book=BOOK).say(words)


@pytest.mark.parametrize("words", [
    "no squats for 3 weeks", "No squats for 3 weeks please", "not squatting until july", "i can't squat for a fortnight",
    "i wont train for ten days", "no training until 1 july", "no squats or deadlifts till friday", "no deadlifts or squats for 3 weeks"])
def test_who_leaves_squats_out_for_a_time_is_asked_whether_they_were_told_to(words: str):
    talk = said(words)
    assert talk.state == "time_off.whose"
    assert "squat.plan" not in talk.found


def test_until_it_is_known_nothing_that_moves_opens():
    talk = said("no squats for 3 weeks").say("menu")
    assert [one.parts for one in limits_in(talk.found["safety.limits"])] == [{LimitPart.OTHER}]
    assert not talk.say("squatting today").state.startswith("squat_day")


@pytest.mark.parametrize("whose", ["I was told", "Not sure"])
def test_what_they_were_told_or_may_have_been_is_kept_as_a_limit_until_it_is_known(whose: str):
    talk = said("no squats for 3 weeks").tap(whose)
    assert talk.state == "limits.by"
    assert len(limits_in(talk.found["safety.limits"])) == 1


def test_a_break_of_their_own_pauses_the_squat_days_and_sets_no_limit():
    talk = said("no squats for 3 weeks").tap("My own break")
    assert any(say.text.startswith("Paused until Monday 23 March") for say in talk.says)
    assert limits_in(talk.found["safety.limits"]) == ()


@pytest.mark.parametrize(("words", "state"), [("no squats on friday", "squat_days.change"), ("pause for 3 weeks", "home.pick"),
                                              ("my physio said no squats for 3 weeks", "signs.so")])
def test_what_says_itself_which_it_is_is_not_asked(words: str, state: str):
    assert said(words).state == state


@pytest.mark.parametrize("words", ["no squats until monday, says my physio", "no squats until friday, says my physio"])
def test_who_names_a_clinician_is_not_asked_whether_it_is_a_break_of_their_own(words: str):
    talk = said(words)
    assert talk.state.startswith("limits.")
    assert len(limits_in(talk.found["safety.limits"])) == 1
