"""The depth estimate, as it is told: called one, with its uncertainty, or the reason why there is none."""

from collections.abc import Mapping
from dataclasses import asdict, replace
from datetime import timedelta
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.conversation.condition import Value
from companion.conversation.wording import MOST_CHARACTERS, MOST_WORDS
from companion.screening.about import About
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.protocols.squat_look import SquatLook
from companion.screening.screen import LoggedAnswer
from flows.depth_estimate import FLOW, in_messages
from tests.drive import CHECKED, NOW, Talk
from tests.screening.build import ABOUT, LOOK

FOLDED = HipFold("back", "no", 100, "back", "no", 105)
ANKLES = KneeToWall("tape", left_1=11, right_1=11, left_limit="calf", right_limit="calf")
ALL: dict[str, Any] = {"about_you": ABOUT, "squat_look": LOOK, "hip_fold": FOLDED, "knee_to_wall": ANKLES}


def told(known: Mapping[str, Value] | None = None, **tests: Any) -> Talk:
    rows = [LoggedAnswer(flow, flow, key, value, "ok", "done", "", "", NOW - timedelta(hours=1))
            for flow, record in {**ALL, **tests}.items() if record for key, value in asdict(record).items() if value is not None]
    return Talk(FLOW, known={**CHECKED, **(known or {})}, answers=rows)


def heard(talk: Talk) -> str:
    return " ".join(say.text for say in talk.says[:-1])


def test_it_is_called_an_estimate_with_an_80_percent_interval_and_never_a_reason_to_go_deeper():
    said = heard(told())
    assert said.startswith("Estimate: length alone would start the tuck at about")
    assert "80 % range:" in said
    assert "Only an estimate" in said
    assert "never a reason to go deeper or heavier" in said


def test_the_picture_of_one_s_own_squat_goes_with_the_words_that_it_is_no_reason_to_go_deeper():
    say, = (say for say in told().says if say.picture)
    assert "never a reason to go deeper or heavier" in say.text


def test_it_is_set_against_the_depth_that_was_seen():
    assert "You saw it start at parallel. The estimated chance that length alone explains that is" in heard(told())
    assert "You saw it start" not in heard(told(squat_look=SquatLook(seen_by="film", plain_rounds="no")))


def test_what_would_help_most_is_named_with_its_size():
    assert "By the estimate, some things would make it start later. First " in heard(told())


def test_where_a_trial_says_otherwise_the_trial_counts_for_more():
    looked = replace(LOOK, heels_rounds="clearly", heels_depth="well_above")
    assert "your trial showed 2 steps earlier. Your trial counts for more." in heard(told(squat_look=looked))


def test_a_fold_that_was_reached_is_only_the_least():
    assert "at the earliest" in heard(told(hip_fold=HipFold("fold", "no", 100, "fold", "no", 105)))


@pytest.mark.parametrize(("missing", "why"), [
    ({"about_you": None}, "your height is not known"), ({"about_you": About(height=100)}, "your height is not known"),
    ({"knee_to_wall": None}, "that takes the knee to wall"), ({"hip_fold": None}, "that takes the hip's angle from film"),
    ({"hip_fold": HipFold("back", "no", None, "back", "no")}, "that takes the hip's angle from film"),
    ({"hip_fold": HipFold("back", "yes", 100, "back", "yes", 100)}, "without a pinch")])
def test_what_is_missing_is_told_instead(missing: dict[str, Any], why: str):
    said = heard(told(**missing))
    assert said.startswith("I can't estimate the depth:")
    assert why in said


def test_numbers_that_balance_in_no_posture_give_no_estimate():
    stiff = KneeToWall("level", "mid_shin", left_deg_1=0, right_deg_1=0, left_limit="calf", right_limit="calf")
    said = heard(told(knee_to_wall=stiff, hip_fold=HipFold("back", "no", 140, "back", "no", 140)))
    assert "no posture in balance" in said


def test_in_inches_the_heel_lift_is_in_inches():
    said = heard(told({"welcome.units": "imperial"}))
    assert "0.8 in under the heels" in said
    assert " cm" not in said


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_no_message_is_longer_than_a_phone_shows_at_once(units: str):
    looked = replace(LOOK, seen_by="feel", heels_rounds="no", front_rounds="clearly", front_depth="well_above", wide_rounds="no")
    talk = told({"welcome.units": units}, squat_look=looked)
    assert all(len(say.text) <= MOST_CHARACTERS for say in talk.says)
    assert "Only an estimate" in heard(talk)


SENTENCES = st.lists(st.integers(1, 40).flatmap(lambda count: st.text("abc", min_size=1, max_size=7).map(lambda word: f"{word} " * count)))


@given(SENTENCES.map(lambda every: [" ".join(one.split()) for one in every]))
def test_no_message_is_longer_than_is_read_at_once_and_no_sentence_is_lost(sentences: list[str]):
    messages = in_messages(sentences)
    assert all(len(text.split()) <= MOST_WORDS and len(text) <= MOST_CHARACTERS for text in messages)
    assert " ".join(messages).split() == " ".join(sentences).split()
    assert all(len(f"{one} {after}".split()) > 20 for one, after in pairwise(messages))


def test_the_same_answers_give_the_same_estimate():
    assert heard(told()) == heard(told())


def test_measured_lengths_change_the_estimate_and_a_button_asks_for_them():
    """A thigh 5 cm longer than the table's, the same height: the tuck starts earlier."""
    plain, long = (told(about_you=replace(ABOUT, **lengths)) for lengths in ({}, {"shin": 43.0, "thigh": 48.0, "trunk": 50.0}))
    assert heard(plain) != heard(long)
    assert ("My proportions", "about_you", "proportions") in [
        (offer.label, offer.flow, offer.asked) for step in FLOW.steps for offer in getattr(step, "offers", ())]
