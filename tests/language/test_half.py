"""Half an admission is heard as one, alone and beside other words; a denial and another answer are not."""

from __future__ import annotations

import pytest

from companion.language.half import half_denied, half_of_it, half_said, in_doubt

ALONE = ["well sort of", "since the weekend a bit", "it was only a drop haha", "a bit, from the bike", "yeah a little", "Yeah, sometimes.",
         "only when i lift", "only a few drops when i lift", "now and then", "maybe a tiny bit on the left", "once or twice last week",
         "i think so", "kinda", "a bit when i am tired", "on and off since monday"]
NOT_KNOWN = ["dunno", "idk", "not sure really", "really not sure", "hmm hard to say really", "couldnt say tbh", "no idea"]
HALF_DENIED = ["nah not really", "nah not realy", "no not really", "dont think so", "no, only a bit",
               "nothing much", "not too bad", "hardly"]
OTHER = ["no", "yes", "not at all", "not a bit", "not even a little", "is it a bit?", "only the left one", "just my apixaban", "ok",
         "12 cm", "i was joking", "my legs are tired", ""]


@pytest.mark.parametrize("text", ALONE)
def test_half_an_admission_alone_is_a_doubt(text: str):
    assert half_said(text)
    assert in_doubt(text)
    assert half_of_it(text)
    assert not half_denied(text)


@pytest.mark.parametrize("text", NOT_KNOWN)
def test_not_knowing_is_a_doubt_in_any_words(text: str):
    assert in_doubt(text)


@pytest.mark.parametrize("text", HALF_DENIED)
def test_half_a_denial_is_no_doubt_and_no_denial(text: str):
    assert half_denied(text)
    assert not in_doubt(text)


@pytest.mark.parametrize("text", ["bit stiff", "my legs are a bit tired", "kinda numb", "the bar is a bit heavy"])
def test_beside_words_of_another_meaning_it_is_heard_but_says_not_all(text: str):
    assert half_said(text)
    assert not in_doubt(text)


@pytest.mark.parametrize("text", OTHER)
def test_a_denial_or_another_answer_is_none(text: str):
    assert not half_of_it(text)
