"""Answers of the safety check that words put right, and what only sounds like that."""

from __future__ import annotations

from time import perf_counter

import pytest

from companion.language.flags import Flag
from companion.language.flags.put_right import hurt_more, of_the_check, puts_right


@pytest.mark.parametrize(("words", "flags"), [
    ("i answered no but actually yes about cancer", {Flag.CANCER_BONE}), ("actually yes about the fall", {Flag.FALL}),
    ("i meant yes on the cancer question", {Flag.CANCER_BONE}), ("i should have said yes to the one about steroids", {Flag.CANCER_BONE}),
    ("change my answer about the operation to yes", {Flag.SPINE_HISTORY}),
    ("actually i meant yes to the first question", {Flag.BLADDER_BOWEL, Flag.SADDLE}),
    ("i meant yes for the second question", {Flag.CHEST}),
    ("third one should be yes", {Flag.WEAKNESS, Flag.FALL, Flag.FEVER}),
    ("i put no for pregnant but thats wrong", {Flag.PREGNANCY}), ("wait i meant yes to the chest one", {Flag.CHEST}),
    ("i said no to the heart thing, not true", {Flag.HEART_HISTORY}), ("the weight loss one was actually yes", {Flag.WEIGHT_LOSS}),
    ("bladder should be yes", {Flag.BLADDER_BOWEL}), ("oops the one about between the legs should be yes", {Flag.SADDLE}),
    ("i meant yes to foot drop", {Flag.WEAKNESS}), ("i put no to fever by mistake", {Flag.FEVER})])
def test_the_sign_that_is_named_is_the_one_that_is_put_right(words: str, flags: set[Flag]):
    assert set(puts_right(words) or ()) == flags


@pytest.mark.parametrize(("words", "named_the_check"), [
    ("i need to change a safety answer", True), ("i answered something wrong in the safety check", True),
    ("i said no but should be yes", True), ("sorry the one before was yes", False), ("no i meant yes", False), ("it was yes", False)])
def test_an_answer_that_was_wrong_may_be_any(words: str, named_the_check: bool):
    assert (puts_right(words), of_the_check(words)) == ((), named_the_check)


@pytest.mark.parametrize("words", [
    "yes", "no", "i meant 12", "i meant the left was 11", "right was 9 not 11", "change my weight to 86", "my knee to wall was wrong",
    "i meant no on the cancer question", "i said yes to cancer but i meant no", "i tapped yes by mistake", "change it to yes",
    "no, it should be no", "actually no pain", "i made a mistake", "chest is fine", "the first set was easy", "is a fall bad?",
    "i said no to the bar and i meant the 15 kg one, chest day was fun and " + "so on and " * 10])
def test_other_words_put_no_answer_about_safety_right(words: str):
    assert puts_right(words) is None


@pytest.mark.parametrize(("words", "worse"), [
    ("i said 0 pain but it was more like 5", True), ("i put no to pain but its actually a 3", True),
    ("said none for pain, should be worse", True),
    ("i said 0 but left was 5", False), ("no pain", False), ("i said 3 pain but it was 2", False)])
def test_pain_that_was_worse_than_it_was_answered_is_heard(words: str, worse: bool):
    assert hurt_more(words) is worse


@pytest.mark.parametrize("text", ["said 0 pain but " * 250, "i meant yes and no, " * 200, "a" * 4000, "safety one " * 350,
                                  "pain but" * 500])
def test_no_text_takes_long(text: str):
    began = perf_counter()
    puts_right(text), hurt_more(text), of_the_check(text)
    assert perf_counter() - began < 1
