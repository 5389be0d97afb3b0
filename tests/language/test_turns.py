"""What people type at a question, through the real step: the figures of ``python -m tests.corpus.turns``, held as floors."""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest

from companion.conversation.effects import Say
from companion.conversation.events import Typed
from companion.conversation.flow import Known
from companion.conversation.step import step
from flows.catalogue import BOOK
from tests.by_night import BY_NIGHT
from tests.corpus.turns import NOT_ASKED, Turn, gone, play, session_at
from tests.corpus.turns import turns as read_turns
from tests.drive import NOW

turns = cache(read_turns)

RIGHT = ("right", "confirmed", "asked")


@pytest.mark.parametrize(("name", "every", "silent_most", "right_least"), [("seen", 40, 0, 0.94), ("unseen", 3, 0.006, 0.92)])
def test_what_people_type_is_read_right_asked_about_or_refused_and_hardly_ever_misread(name, every, silent_most, right_least):
    """Silent: a slot was filled wrongly and nobody asked. The lines themselves are not shown. By day one line in so many."""
    some = turns(name)[::1 if BY_NIGHT else every]
    verdicts = Counter(play(turn).verdict for turn in some)
    assert verdicts["silent"] <= silent_most * len(some)
    assert sum(verdicts[one] for one in RIGHT) / len(some) >= right_least


def test_every_line_names_a_state_and_an_act():
    acts = {turn.act for name in ("seen", "unseen") for turn in turns(name)}
    assert acts == {"answer", "question", "unsure", "not_yet", "correction", "pain", "flag", "command", "chat", "nothing"}


@pytest.mark.parametrize(("name", "most"), [("seen", 28), ("unseen", 12)])
def test_lines_are_left_out_only_where_their_question_is_gone(name, most):
    """Few lines, of few questions, and of no question that is still asked somewhere."""
    assert len(gone(name)) <= most
    assert {turn.state for turn in gone(name) if turn.act != "correction"} <= NOT_ASKED


@pytest.mark.parametrize("text", ["a little", "a bit", "yes a little bit", "sorta, a bit", "sometimes", "a smidge", "a tad"])
def test_how_much_it_rounds_is_no_depth_and_not_that_it_cannot_be_told(text):
    assert play(Turn("squat_look/change_1_depth", "answer", "", text, ask=True)).verdict == "asked"


@pytest.mark.parametrize("text", ["hard to say", "not sure", "dunno", "couldn't see it"])
def test_what_cannot_be_told_is_taken_as_that(text):
    assert play(Turn("squat_look/change_1_depth", "unsure", "cant_tell", text, ask=False)).verdict == "right"


def test_words_of_an_answer_count_where_the_other_answers_are_not_on_offer():
    assert play(Turn("squat_after/load", "answer", "none", "no barbell at all", ask=False)).verdict in ("right", "confirmed")


@pytest.mark.parametrize(("state", "value", "text"), [
    ("squat_look/plain_depth", "plain_rounds=little", "I said clearly but it was a little"),
    ("best_squat/changed_1", "plain_1=a_little_above", "set one was a bit above, not level")])
def test_a_correction_is_said_back_for_the_answer_it_names(state, value, text):
    assert play(Turn(state, "correction", value, text, ask=False)).verdict == "confirmed"


@pytest.mark.parametrize(("state", "value", "text"), [
    ("hinge_to_squat/hinge", "hinge=clean; sink=breaks", "flat in the hinge, lost it sinking"),
    ("rock_back/narrow", "narrow=early; middle=at_fold; wide=past", "together it rounds early, hip width at the fold, wide not at all"),
    ("leg_raise/left_eye", "left_eye=60_70; right_eye=70_80", "65 on the left, 75 on the right"),
    ("leg_raise/left_heel", "left_heel=66 cm; right_heel=68 cm", "66 and 68 on the other")])
def test_a_clause_that_names_a_question_to_come_answers_that_one(state, value, text):
    assert play(Turn(state, "answer", value, text, ask=False)).verdict == "confirmed"


@pytest.mark.parametrize(("text", "day"), [
    ("the one after wednesday", "TH"), ("day before sunday", "SA"), ("first day of the weekend", "SA"), ("wednesday", "WE")])
def test_a_day_told_by_another_is_the_day_it_is(text, day):
    assert play(Turn("squat_days/day_2", "answer", day, text, ask=False)).verdict == "right"


@pytest.mark.parametrize("text", ["bout 65ish", "about 65", "sixty five i think"])
def test_a_number_is_the_range_that_holds_it(text):
    assert play(Turn("leg_raise/left_eye", "answer", "60_70", text, ask=False)).verdict in ("right", "confirmed")


@pytest.mark.parametrize("text", ["will it hurt", "is it going to hurt?", "will the hip fold hurt"])
def test_a_question_whether_it_will_hurt_reports_nothing(text):
    assert play(Turn("hip_fold/did", "question", "general:sore_or_hurt", text, ask=False)).verdict == "right"


@pytest.mark.parametrize("text", ["next one, not this", "no it was true"])
def test_what_denies_beside_an_option_fills_nothing(text):
    assert play(Turn("retest/go_bird_dog", "command", "skip", text, ask=True)).verdict != "silent"


def test_health_words_that_say_nothing_is_known_are_asked_about():
    assert play(Turn("clearance/cleared_at", "unsure", "", "cant remember the day", ask=True)).verdict != "silent"
    assert play(Turn("safety_check/chest", "question", "means", "does being out of breath from stairs count", ask=False)).verdict == "right"


def test_how_much_longer_in_a_test_is_what_is_left_of_it():
    session, facts = session_at("leg_raise/left_level")
    said = " ".join(one.text for one in step(BOOK, session, Typed("how much longer"), Known(facts, NOW)).effects if isinstance(one, Say))
    assert said.startswith("Leg raise: at most")
    assert "minutes" not in said
