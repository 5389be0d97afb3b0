"""What somebody who was sent to be seen says of it: seen, booked, on the way, not yet, or that they won't go."""

from __future__ import annotations

import re
from datetime import date
from time import perf_counter

import pytest

from companion.language.being_seen import SEEN_PLAINLY, appointment, been_seen, only_says_seen, saw_somebody, will_not_go
from companion.language.phrases import normalise


def first(text: str) -> bool:
    return any(re.fullmatch(pattern, normalise(text).strip(" .!")) for pattern in SEEN_PLAINLY)


@pytest.mark.parametrize("text", [
    "i dont want to go", "im not going", "no way im going to hospital", "i dont need to", "cant afford it", "not sure if i have to",
    "not yet, too busy", "no its gone anyway", "i didnt go, it went away", "not going, too far"])
def test_who_will_not_go_says_no_and_is_heard_before_any_sign(text: str):
    assert (been_seen(text), will_not_go(text), first(text)) == ("no", True, True)


@pytest.mark.parametrize("text", [
    "just got out of hospital", "they kept me in, im still here", "they sent me home with painkillers", "i went. nothing serious",
    "all clear from the hospital", "i went to a&e, ecg normal, they said come back if it happens again", "got checked all good",
    "back from the gp", "went today", "yes went, mri next week, wait for it", "i went. they want another scan",
    "yes i went and they referred me to a neurologist"])
def test_who_was_there_says_yes_in_words_that_name_no_sign(text: str):
    assert (been_seen(text), only_says_seen(text), first(text)) == ("yes", True, True)


@pytest.mark.parametrize("text", [
    "ambulance is here", "in a&e now waiting", "ok going", "my wife is driving me", "i called 999", "going to hospital now"])
def test_who_is_on_the_way_says_so(text: str):
    assert (been_seen(text), first(text)) == ("going", True)


@pytest.mark.parametrize("text", [
    "went, gp says its fine, just a tight hip flexor", "went, nothing above 60 kg for two weeks",
    "er visit done. nerve pinched. no lifting 4 weeks", "rang 111 they said its not urgent",
    "hospital kept me overnight, muscle strain", "got it checked, all good", "was seen this morning and they said no squats",
    "been, doctor wasn't worried"])
def test_who_was_there_says_so_in_a_few_words_and_with_what_was_said(text: str):
    assert (been_seen(text), saw_somebody(text), first(text)) == ("yes", True, False)


@pytest.mark.parametrize(("text", "what"), [("no appointments till next month", "no"),
                                            ("gp receptionist said call back tomorrow", "booked"),
                                            ("they said come back tomorrow", ""), ("they said its fine", ""),
                                            ("went for a run", ""), ("went, legs are dead", "")])
def test_who_got_no_further_than_the_desk_was_not_seen(text: str, what: str):
    assert been_seen(text) == what


@pytest.mark.parametrize("text", ["i called, they said tomorrow 10am", "not yet, appointment on friday", "nah, booked for tues"])
def test_an_appointment_is_one(text: str):
    assert been_seen(text) == "booked"


@pytest.mark.parametrize("text", [
    "i dont want to live", "i dont want to be here", "i dont want to", "im not going on", "im not going to make it", "i wont be here",
    "i cant go", "i cant go on", "out of hospital, cant pee", "they sent me home and i cant go on", "going to the gym", "went for a run",
    "home from work", "am i going to die", "no appointment on friday"])
def test_what_may_be_a_sign_or_something_else_is_not_read(text: str):
    assert (been_seen(text), first(text)) == ("", False)


@pytest.mark.parametrize("text", ["they sent me home, rest and take it easy",
                                  "yes i went. they want an mri and said rest till then", "my doctor said no squats"])
def test_what_may_limit_says_more_than_that_they_were_seen(text: str):
    assert not only_says_seen(text)


@pytest.mark.parametrize("text", ["they sent me home " * 200, "not yet, too busy, " * 200, "ok, " * 1000, "i'm going now " * 300])
def test_no_text_takes_long(text: str):
    began = perf_counter()
    been_seen(text)
    will_not_go(text)
    only_says_seen(text)
    assert perf_counter() - began < 0.5


@pytest.mark.parametrize(("text", "day"), [
    ("rang the gp today, appointment on friday", date(2026, 3, 13)), ("called this morning, they can see me tomorrow", date(2026, 3, 10)),
    ("booked for today 4pm", date(2026, 3, 9)), ("seeing my doctor this afternoon", date(2026, 3, 9)),
    ("booked for thursday", date(2026, 3, 12)),
    ("it is booked", None)])
def test_the_day_of_an_appointment_is_not_that_on_which_it_was_made(text: str, day: date | None):
    assert appointment(text, date(2026, 3, 9)) == day
