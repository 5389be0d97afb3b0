"""What a clinician found is told apart from what hurts and from what to leave out; what is grave, or unknown, is asked about."""

from __future__ import annotations

import pytest

from companion.language.findings import beside_the_found, tells_no_limit, without_the_found
from companion.language.pain import Pain, hear_pain


@pytest.mark.parametrize("words", [
    "sciatica", "its a trapped nerve", "just a muscle strain, carry on", "they said its nothing", "a slipped disc at l5", "nothing torn",
    "the mri showed a bulging disc", "its muscular, keep moving", "they said i pulled a muscle", "they cleared me", "nothing serious",
    "i went, the doctor said its fine", "just a cramp", "the scan was clear", "i saw the gp, its nothing",
    "they did an ecg and bloods, all normal", "hospital said panic attack, all fine", "gp says vasovagal, cleared", "nerve is pinched",
    "nothing serious, just low blood sugar", "ecg normal, go home"])
def test_what_was_found_sets_no_limit(words: str):
    assert tells_no_limit(words)


@pytest.mark.parametrize("words", [
    "", "a disc, no lifting", "sciatica, rest", "a disc, avoid it", "sciatica, take it easy", "a strain, a week off", "it's cancer",
    "a stress fracture", "they think cauda equina", "a clot", "an infection", "no idea", "more tests", "a disc, nothing over 40 kg",
    "just a disc but don't lift", "they cleared me but no heavy stuff",
    "panic attack, avoid exercise", "reflux, no bending after meals", "vasovagal, sit down if dizzy", "go home and rest",
    "i went", "yes", "the scan is not clear", "its fine but no weights", "fine for now, light only", "ok for body weight",
    "all normal, rest a week"])
def test_words_that_may_set_a_limit_or_name_what_is_grave_are_asked_about(words: str):
    assert not tells_no_limit(words)


@pytest.mark.parametrize(("words", "pain"), [
    ("sciatica", Pain.NO), ("a slipped disc", Pain.NO), ("my sciatica hurts a lot", Pain.YES), ("a disc, and my foot is numb", Pain.YES)])
def test_the_name_of_what_was_found_is_no_pain_and_what_hurts_beside_it_is(words: str, pain: Pain):
    assert hear_pain(words) is Pain.YES
    assert hear_pain(beside_the_found(words)) is pain


def test_without_what_was_found_what_to_leave_out_is_left():
    assert without_the_found("sciatica, no lifting").strip(" ,") == "no lifting"
