"""Which day's squats are told of: asked, or read, and never taken to be today."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.conversation.events import Invite
from companion.screening.squat_days import days_told
from flows.catalogue import BOOK
from flows.squats_told import FLOW
from tests.drive import CHECKED, NOW, Talk
from tests.flows.squatting import RESULTS, Lifter, squatted

TODAY = NOW.date()
MONDAY = TODAY.isoformat()
SUNDAY, FRIDAY = (TODAY - timedelta(days=back) for back in (1, 3))
REST = ("yes", "feel", "kept", "no", "80", "skip", "skip")


@pytest.mark.parametrize("words", ["done squatting", "how it went", "after squats", "/squats_told"])
def test_it_is_begun_by_saying_so_and_asks_for_the_day(words: str):
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say(words)
    assert talk.state == "squats_told.day", "“how it went” is no question of pain"


@pytest.mark.parametrize(("words", "day"), [
    ("today", TODAY), ("yesterday", SUNDAY), ("i squatted 90 kg on friday", FRIDAY), ("on Sunday", SUNDAY), ("3 days ago", FRIDAY),
    ("last night", SUNDAY)])
def test_the_day_that_is_named_is_the_one_in_the_log(words: str, day):
    talk = Lifter(FLOW).say(words)
    assert talk.state == "squat_after.back", "that they squatted is said with the day"
    talk.say(*REST)
    (told,) = [one for one in days_told(talk.kept, "UTC+00:00") if one.back]
    assert (told.day, told.load) == (day, 80.0)
    assert talk.found["squat.answered"] == MONDAY if day == TODAY else talk.found["squat.answered"] == day.isoformat()


@pytest.mark.parametrize(("label", "day"), [("Today", TODAY), ("Yesterday", SUNDAY), ("Three days ago", FRIDAY)])
def test_a_day_is_tapped_too(label: str, day):
    assert Lifter(FLOW).tap(label).session.top.asked == day.isoformat()


@pytest.mark.parametrize(("words", "why"), [
    ("last thursday", "too long ago"), ("friday and sunday", "One day at a time"), ("whenever", "I need the day")])
def test_what_is_no_day_that_can_be_told_of_is_asked_for_again(words: str, why: str):
    talk = Lifter(FLOW).say(words)
    assert why in talk.heard or talk.session.aside is not None
    assert talk.state == "squats_told.day"


@pytest.mark.parametrize("words", [
    "i squatted 90 kg on friday", "I did my squats three days ago", "ok i squatted on fri",
    "squatted 90 on friday", "i sqauted 90 on firday"])
def test_a_sentence_that_names_the_day_begins_it_and_has_it_confirmed(words: str):
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say(words)
    assert talk.last == "Did you squat on Friday 27 February?"


def test_another_days_squats_told_in_a_squat_day_are_no_load_of_today_and_todays_are_its_own():
    of_today = Talk(BOOK["squat_day"].flow, RESULTS, BOOK)
    assert of_today.state == "squat_day.load"
    assert of_today.say("i squatted 90 kg on friday").last == "Did you squat on Friday 27 February?"
    begun = Talk(BOOK["squat_day"].flow, RESULTS, BOOK)
    assert begun.say("i squatted 90 kg today").state.startswith("squat_day.")


def test_another_day_named_where_a_day_is_asked_about_is_no_yes_to_it():
    talk = Lifter(BOOK["home"].flow)
    talk.send(Invite("squat_after", SUNDAY.isoformat()))
    assert talk.tap("How it went").last == "Did you squat yesterday?"
    assert talk.say("i squatted 90 kg on friday").last == "Did you squat on Friday 27 February?"


def test_a_squat_day_begun_here_today_is_the_one_that_is_told_of():
    assert Lifter(FLOW, answers=squatted(0.1, "0")).state == "squat_after.back"


def test_a_day_left_open_is_asked_about_the_next_day_and_not_taken_for_today():
    talk = Lifter(FLOW, answers=squatted(1, "0"))
    assert talk.state == "squats_told.day"


def test_no_squats_is_an_answer_too():
    talk = Lifter(FLOW, {"squat.answered": "2026-02-20"}).say("no")
    assert talk.state == "home.pick"
    assert "no squats then" in talk.heard
    assert talk.found["squat.answered"] == MONDAY


def test_what_is_an_answer_to_another_question_begins_nothing():
    talk = Talk(BOOK["warm_up"].flow, {**CHECKED, "warm": "", "warm.today": ""}, BOOK)
    before = talk.state
    assert before.startswith("warm_up.")
    assert not talk.say("i squatted yesterday").state.startswith("squats_told")
