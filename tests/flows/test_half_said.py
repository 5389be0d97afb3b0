"""Half an admission of a red flag or of pain counts, and where it may be either both answers are named."""

from __future__ import annotations

import pytest

from companion.conversation.cards import card_of
from companion.conversation.flow import Ask
from companion.conversation.kinds import HALF_COUNTS, HALF_IS_YES, NO_TO_ALL, Choice, ReadingContext, YesNo
from companion.conversation.refusing import within
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW, UNCHECKED, Talk

CHECK, TEST = BOOK["safety_check"].flow, BOOK["knee_to_wall"].flow
STRICT = ReadingContext(now=NOW, strict=True, facts=lambda: dict(CHECKED))
NOT_SURE = [(name, key, stop.kind) for name in sorted(BOOK.flows) for key, stop in BOOK[name].stops.items()
            if isinstance(stop, Ask) and stop.safety and isinstance(stop.kind, YesNo | Choice)
            and "unsure" in {option.value for option in stop.kind.options}]


def in_a_test(*replies: str) -> Talk:
    return Talk(TEST, known={**CHECKED, "about_you.height": 180.0}, book=BOOK).say("tape", *replies)


def hurt_after(*replies: str) -> Talk:
    """Where it is asked whether anything hurt in the squats."""
    talk = Talk(BOOK["squat_day"].flow, {**CHECKED, "bar.bar": "none"}, BOOK)
    return talk.tap("Done squatting", "Yes, I did", "Yes, still", "Mirror", "About parallel").say(*replies)


@pytest.mark.parametrize("words", ["well sort of", "since the weekend a bit", "a bit, from the bike", "sometimes", "yeah a little",
                                   "dunno", "idk", "not sure really", "it was only a drop haha"])
def test_not_sure_in_any_words_is_not_sure_wherever_it_is_offered(words: str):
    for name, key, kind in NOT_SURE:
        read = kind.read(words, STRICT)
        assert getattr(read, "value", read) == "unsure", (name, key)


@pytest.mark.parametrize("words", ["well sort of", "since the weekend a bit", "dunno"])
def test_half_an_admission_of_a_red_flag_counts_as_one(words: str):
    assert Talk(CHECK, known=UNCHECKED, book=BOOK).say(words).known["safety.level"] == "emergency"


@pytest.mark.parametrize("words", ["nah not really", "no not really", "dont think so", "my legs are a bit tired", "no, only a bit",
                                   "pretty sure not", "no, none that i know of", "not that i can think of"])
def test_half_a_denial_and_a_little_beside_other_words_are_asked_about_with_both_answers_named(words: str):
    talk = Talk(CHECK, known=UNCHECKED, book=BOOK).say(words)
    assert talk.state == "safety_check.bladder"
    assert talk.last.startswith(HALF_COUNTS)
    assert "no" in talk.last


@pytest.mark.parametrize("words", ["no cancer", "no cancr", "no fever", "never had fits", "not any more", "no im not fine", "no i cant"])
def test_a_denial_of_something_named_is_asked_about_as_no_to_all_of_it(words: str):
    talk = Talk(CHECK, known=UNCHECKED, book=BOOK).say(words)
    assert talk.state == "safety_check.bladder"
    assert talk.last.startswith(NO_TO_ALL)


@pytest.mark.parametrize("words", ["no", "nope", "not at all", "none of these", "never had any of that", "no thank god", "nah im healthy",
                                   "nope, all good", "no im sure", "no im fine"])
def test_a_plain_no_is_still_one(words: str):
    assert Talk(CHECK, known=UNCHECKED, book=BOOK).say(words).answers["bladder"] == "no"


@pytest.mark.parametrize("words", ["bit stiff", "yeah a little", "dunno", "not sure really", "sort of", "a bit, from the bike"])
def test_a_little_pain_in_the_squats_is_pain(words: str):
    assert hurt_after(words).state == "pain.where"


def test_half_a_denial_of_pain_in_the_squats_is_asked_about():
    assert hurt_after("not really").last.startswith(HALF_IS_YES)
    assert hurt_after("not really", "no").state == "squat_after.note"


@pytest.mark.parametrize("words", ["bit stiff", "yeah a little", "dunno", "idk", "not sure really", "lower back", "knee", "4"])
def test_whether_something_hurt_is_answered_by_a_doubt_a_little_a_place_or_how_bad(words: str):
    talk = in_a_test("9", "felt something")
    assert "Did something hurt?" in talk.last
    assert talk.say(words).state == "pain.where"


@pytest.mark.parametrize("words", ["0", "nothing hurts", "no"])
def test_and_not_by_what_says_that_nothing_did(words: str):
    assert in_a_test("9", "felt something", words).state.startswith("knee_to_wall")


def test_half_a_denial_there_is_asked_about():
    assert HALF_IS_YES in in_a_test("9", "felt something", "not really").last


@pytest.mark.parametrize("words", ["idk", "dunno", "not sure really", "hard to say", "all over"])
def test_a_place_nobody_can_name_is_somewhere_else(words: str):
    talk = in_a_test("9", "my back hurts", words)
    assert talk.state == "pain.bad"
    assert talk.answers["where"] == "other"


def test_a_side_is_asked_of_what_and_the_way_on_is_named():
    talk = in_a_test("9", "my back hurts", "left side", "left side")
    assert "of the back, the hip, a leg or the chest" in talk.last


@pytest.mark.parametrize("key", ["safety_check/bladder", "safety_check/chest", "safety_check/urgent", "safety_check/leg_signs",
                                 "squat_after/hurt", "pain/bladder", "wrong_tap/bladder"])
def test_how_to_tell_names_what_would_be_a_yes_before_what_is_a_no(key: str):
    flow, name = key.split("/")
    how = card_of(BOOK.answers().cards, BOOK[flow].flow, BOOK[flow].stops[name]).how
    assert "yes" in within(how, 110)
