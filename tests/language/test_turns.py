"""What people type at a question, through the real step: the figures of ``python -m tests.corpus.turns``, held as floors."""

from __future__ import annotations

from collections import Counter

import pytest

from tests.corpus.turns import NOT_ASKED, Turn, counted, gone, play, turns

RIGHT = ("right", "confirmed", "asked")


@pytest.mark.parametrize(("name", "silent_most", "right_least"), [("seen", 6, 0.935), ("unseen", 8, 0.885)])
def test_what_people_type_is_read_right_asked_about_or_refused_and_hardly_ever_misread(name, silent_most, right_least):
    """Silent: a slot was filled wrongly and nobody asked. The lines themselves are not shown."""
    verdicts = Counter(outcome.verdict for _, outcome in counted(name))
    assert verdicts["silent"] <= silent_most
    assert sum(verdicts[one] for one in RIGHT) / verdicts.total() >= right_least


def test_every_line_names_a_state_and_an_act():
    acts = {turn.act for name in ("seen", "unseen") for turn in turns(name)}
    assert acts == {"answer", "question", "unsure", "not_yet", "correction", "pain", "flag", "command", "chat", "nothing"}


@pytest.mark.parametrize(("name", "most"), [("seen", 26), ("unseen", 12)])
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
