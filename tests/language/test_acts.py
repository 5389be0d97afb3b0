"""Speech acts: what a message does, before anything in it may fill a slot."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.language.acts import Asks, SpeechAct, hear_act
from companion.language.choosing import named
from tests.table import each_row

ROUNDS = named([("no", ("no", "no rounding", "it kept")), ("little", ("a little", "a bit")), ("clearly", ("clearly",)),
                ("cant_tell", ("can't tell", "not sure"))])
FOLD = named([("fold", ("reached the fold", "reached", "fold")), ("back", ("pressure changed first", "changed")),
              ("cant_tell", ("can't tell",))])
DONE = named([("ready", ("done", "ready"))])


@each_row(("text", "options", "asks"), [
    ("what does clearly mean?", ROUNDS, Asks.MEANS), ("what is the tail", ROUNDS, Asks.MEANS), ("what does that mean?", ROUNDS, Asks.MEANS),
    ("how do i know i reached the fold", FOLD, Asks.HOW), ("why do you ask", ROUNDS, Asks.WHY),
    ("is the priming drill safe", DONE, Asks.GENERAL), ("why does my back do this", ROUNDS, Asks.GENERAL),
    ("is it dangerous", ROUNDS, Asks.GENERAL), ("how long will it take", DONE, Asks.GENERAL), ("can I deadlift", ROUNDS, Asks.GENERAL),
    ("should i see someone", ROUNDS, Asks.GENERAL), ("so whats wrong with me", DONE, Asks.GENERAL),
    ("with shoes or barefoot?", DONE, Asks.GENERAL)])
def test_a_question_is_a_question_whatever_words_of_an_option_are_in_it(text, options, asks):
    heard = hear_act(text, options)
    assert (heard.act, heard.asks) == (SpeechAct.QUESTION, asks)


@pytest.mark.parametrize(("text", "options"), [
    ("havent done it yet", DONE), ("almost done", DONE), ("wait before you start", DONE), ("I'll be done tomorrow", DONE)])
def test_what_is_still_to_come_is_no_answer(text, options):
    heard = hear_act(text, options)
    assert heard.act is SpeechAct.NOT_YET
    assert not heard.chosen.sure


@pytest.mark.parametrize("text", ["pressure hardly changed", "it never changed", "the pressure not changed"])
def test_an_option_that_is_only_denied_is_not_chosen(text):
    heard = hear_act(text, FOLD)
    assert heard.chosen.values == ()
    assert heard.chosen.denied == ("back",)


@pytest.mark.parametrize(("text", "wants"), [
    ("delete me", "erase"), ("stop all", "stop_reminders"), ("unsubscribe", "stop_reminders"), ("what do you know about me", "my_data"),
    ("can we go back", "back"), ("skip this one please", "skip"), ("lets stop for today", "stop")])
def test_a_wish_is_a_command(text, wants):
    heard = hear_act(text, ROUNDS)
    assert (heard.act, heard.wants) == (SpeechAct.COMMAND, wants)


@pytest.mark.parametrize("text", ["actually right was 9 not 9.5", "left was wrong", "change my weight to 86", "I meant ten"])
def test_what_puts_right_an_earlier_answer_is_a_correction(text):
    assert hear_act(text, (), number=True).act is SpeechAct.CORRECTION


@pytest.mark.parametrize("text", ["it kept its shape, i think it kept", "my mate says it kept"])
def test_a_hedged_answer_and_somebody_elses_are_doubtful(text):
    heard = hear_act(text, ROUNDS)
    assert heard.chosen.values == ("no",)
    assert not heard.chosen.sure


@given(st.text(max_size=300), st.sampled_from([ROUNDS, FOLD, DONE, ()]), st.booleans())
def test_anything_typed_has_one_act_and_never_raises(text, options, number):
    heard = hear_act(text, options, number)
    assert heard.asks is None or heard.about
    assert (heard.act is SpeechAct.COMMAND) == bool(heard.wants)


@pytest.mark.parametrize("text", ["parallel?", "the fold?"])
def test_an_answer_with_a_question_mark_is_doubtful_and_no_question(text):
    heard = hear_act(text, named([("parallel", ("parallel",)), ("fold", ("the fold",))]))
    assert heard.act is SpeechAct.ANSWER
    assert heard.doubtful


@pytest.mark.parametrize(("text", "wants"), [
    ("why would that help", ""), ("what does skip do to the rest of the week", ""), ("can you say that again", "again"),
    ("ill be done tomorrow", ""), ("enough for tonight i want to stop", "stop"), ("show me what you found", "results")])
def test_a_command_that_is_only_mentioned_is_none(text, wants):
    assert hear_act(text, ROUNDS).wants == wants
