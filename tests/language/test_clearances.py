"""Who cleared somebody, and when, is read from words; what is not said for certain is asked."""

from __future__ import annotations

import re
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.language.clearances import (
    CLEARANCES,
    and_limit,
    is_ahead,
    names_clinician,
    names_when,
    only_clears,
    read_clearance,
    says_cleared,
    says_clinician,
)
from tests.table import each_row


@each_row(("words", "clinician", "when"), [
    ("my physio, yesterday", True, True), ("docter", True, False), ("surgoen, monday", True, True), ("dr. patel last week", True, True),
    ("the orthopaedic guy in may", True, True), ("i saw my gp two days ago", True, True), ("physio cleared me", True, False),
    ("my mate, yesterday", False, True), ("me, today", False, True), ("i did", False, False), ("Sarah", False, False),
    ("max 50 kg", False, False), ("no more than 40kg", False, False), ("nothing over 100 lbs", False, False), ("50 %", False, False),
    ("my doctor in 2023", True, True), ("physio, 3 weeks ago", True, True), ("my gp on 3 march", True, True),
    ("dr lee on the 3rd", True, True),
    ("not the doctor, me", False, False), ("no doctor did", False, False), ("maybe a nurse", False, False),
    ("my wife, she's a nurse", False, False), ("dr google", False, False)])
def test_who_cleared_somebody_is_a_clinician_by_name_alone_and_the_rest_is_asked(words: str, clinician: bool, when: bool):
    assert (names_clinician(words), names_when(words)) == (clinician, when)


@each_row(("words", "says"), [
    ("my physio", True), ("yes, dr smith on monday", True), ("no, the coach", False), ("no, a massage therapist", False), ("yes", False),
    ("is a chiropractor a doctor?", False), ("does my nurse count", False), ("not sure, a doctor i think", False), ("Sarah", False)])
def test_who_it_was_answers_whether_that_is_a_clinician(words: str, says: bool):
    assert says_clinician(words) is says


@each_row(("words", "ahead"), [
    ("tomorrow", True), ("next friday", True), ("in two weeks", True), ("when i see them", True), ("not yet", True), ("yesterday", False),
    ("last friday", False), ("in May", False), ("my physio, on Tuesday", False), ("two weeks ago", False)])
def test_a_day_to_come_is_told_from_one_that_was(words: str, ahead: bool):
    assert is_ahead(words) is ahead


@each_row(("words", "who", "day"), [
    ("dr okafor cleared me on friday", "dr okafor", "said"), ("my physio has just cleared me", "my physio", "none"),
    ("my physio cleared me for 60 kg", "my physio", "none"), ("my doctor says i may train", "my doctor", "none"),
    ("they cleared me yesterday", "", "said"), ("i got the all clear from the surgeon in may", "the surgeon in may", "said"),
    ("i've been cleared", "", "none"), ("my doctor cleared me to lift from monday", "my doctor", "ahead"),
    ("my doctor cleared me tomorrow", "my doctor", "ahead"), ("my coach cleared me", "my coach", "none"),
    ("physio cleared me yesterday and i start next week", "physio", "none"), ("my back is fine", "", "none"),
    ("saw my physio yesterday, she cleared me", "my physio", "said"), ("i just saw the doctor and he's cleared me", "the doctor", "none"),
    ("went to my surgeon last week she said i can train again", "my surgeon", "said"),
    ("saw my mate yesterday, she cleared me", "", "said")])
def test_a_sentence_says_who_cleared_somebody_and_on_which_day(words: str, who: str, day: str):
    assert read_clearance(words) == (who, day)


@each_row(("words", "cleared", "beside"), [
    ("she cleared me but nothing over 60 kg until friday", "she cleared me", "nothing over 60 kg until friday"),
    ("My physio cleared me for squats, no bending for 2 weeks.", "my physio cleared me for squats", "no bending for 2 weeks"),
    ("physio cleared me to lift up to 60 kg", "physio cleared me to lift", "up to 60 kg"),
    ("saw my physio yesterday, she cleared me, but no squats", "saw my physio yesterday, she cleared me", "no squats"),
    ("i've been cleared by my doctor though max 40kg", "i've been cleared by my doctor", "max 40kg"),
    ("my physio cleared me for squats and bending", "my physio cleared me for squats and bending", ""),
    ("my physio cleared me, just now", "my physio cleared me, just now", ""), ("my physio cleared me", "my physio cleared me", ""),
    ("my back hurts but no squats for 2 weeks", "my back hurts but no squats for 2 weeks", ""), ("", "", "")])
def test_a_clearance_is_told_from_the_limit_beside_it(words: str, cleared: str, beside: str):
    assert and_limit(words, date(2026, 11, 28)) == (cleared, beside)


@pytest.mark.parametrize("words", [
    "my physio hasn't cleared me", "my physio has not cleared me", "nobody cleared me", "has dr okafor cleared me?", "i'm not cleared",
    "my physio will clear me", "i cleared 100 kg today", "all clear", "my coach said i can lift again", "my mate lifted it",
    "my doctor says i can squat but not below parallel", "if my physio cleared me i would lift"])
def test_what_says_no_clearance_is_none(words: str):
    assert not any(re.fullmatch(pattern, words) for pattern in CLEARANCES)


@pytest.mark.parametrize(("words", "only"), [
    ("my physio cleared me last week", True), ("they cleared me to train", True), ("my doctor cleared me but no heavy stuff", False),
    ("cleared for squats only", False), ("no lifting", False)])
def test_a_clearance_that_may_be_limited_is_not_one_alone(words: str, only: bool):
    assert only_clears(words) is only


@each_row(("words", "says", "who", "day"), [
    ("yes, dr okafor on friday", True, "dr okafor on friday", "said"), ("yes my physio", True, "my physio", "none"),
    ("yes, last week", True, "", "said"), ("my physio cleared me yesterday", True, "my physio", "said"),
    ("yes, my coach yesterday", True, "", "said"), ("yes, my doctor will on friday", False, "my doctor will on friday", "said"),
    ("yes but my doctor isn't sure", False, "", "none"), ("my physio cleared me for walking", False, "my physio", "none"),
    ("my physio cleared me for lifting in 2020", True, "my physio", "said"), ("my gp cleared me two years ago", True, "my gp", "said"),
    ("no, my physio on friday", False, "", "said"), ("yes", False, "", "none")])
def test_an_answer_to_whether_they_were_cleared_may_say_who_and_when(words: str, says: bool, who: str, day: str):
    assert says_cleared(words) is says
    assert read_clearance(words) == (who, day)


@given(st.text(max_size=120))
def test_whatever_is_typed_is_read_without_fail(text: str):
    assert read_clearance(text).day in ("said", "ahead", "none")
