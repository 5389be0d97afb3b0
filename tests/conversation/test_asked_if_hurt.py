"""At the side question whether something hurt nothing that is typed is swallowed, and the question stands until it is answered."""

from __future__ import annotations

import pytest

from companion.conversation.condition import Value
from flows.catalogue import BOOK
from tests.drive import CHECKED, Talk

SENT: dict[str, Value] = {**CHECKED, "safety.level": "same_day", "safety.level.today": "yes", "safety.may_open": "no"}
STANDS = "What you told me should be looked at today: call your doctor"
HURT = "Did something hurt?"


def asked(known: dict[str, Value]) -> Talk:
    talk = Talk(BOOK["home"].flow, known, BOOK).say("it happened again")
    assert about(talk) == "ache"
    return talk


def about(talk: Talk) -> str:
    return talk.session.aside.about if talk.session.aside else ""


def answer(talk: Talk, words: str) -> str:
    before = len(talk.says)
    talk.say(words)
    return "\n".join(say.text for say in talk.says[before:])


@pytest.mark.parametrize("words", ["but its only my foot", "its just my foot", "its not that bad", "but it doesnt even hurt"])
def test_who_was_sent_today_and_plays_it_down_hears_what_stands_and_is_not_asked_whether_something_hurt(words: str):
    talk = Talk(BOOK["home"].flow, SENT, BOOK)
    assert STANDS in answer(talk, words)
    assert (talk.state, about(talk)) == ("home.pick", "")


@pytest.mark.parametrize("words", ["is it serious", "can i train upper body at least", "hm well", "what should i do", "squat days"])
def test_to_who_was_sent_today_what_stands_is_said_again_and_the_question_stands(words: str):
    talk = asked(dict(SENT))
    said = answer(talk, words)
    assert STANDS in said
    assert said.endswith(HURT)
    assert about(talk) == "ache"


@pytest.mark.parametrize("known", [SENT, {**SENT, "safety.level": "clinician"}])
def test_what_somebody_sent_tells_of_being_seen_is_taken(known: dict[str, Value]):
    talk = asked(dict(known))
    assert "Good that it is booked." in answer(talk, "i booked an appointment for tuesday")
    assert talk.found["safety.seen"] == "booked"


@pytest.mark.parametrize(("words", "says"), [
    ("can i train upper body at least", "Other training can go on as long as nothing hurts in it"),
    ("why do you ask", "Something in your words may be pain."), ("does stiffness count?", "A little of it counts too"),
    ("who won the match?", "I can't answer that one")])
def test_a_question_is_answered_and_the_side_question_asked_again_in_one_line(words: str, says: str):
    talk = asked(dict(CHECKED))
    said = answer(talk, words)
    assert says in said
    assert said.endswith(HURT)
    assert about(talk) == "ache"


@pytest.mark.parametrize("words", ["squatting today", "i want to squat today", "my doctor cleared me"])
def test_nothing_else_begins_before_it_is_known_whether_something_hurt(words: str):
    talk = asked(dict(CHECKED))
    assert answer(talk, words).endswith(HURT)
    assert (talk.state, about(talk)) == ("home.pick", "ache")


def test_ones_own_data_is_open_over_it_too():
    assert asked(dict(CHECKED)).say("my data").state.startswith("my_data.")


@pytest.mark.parametrize("known", [SENT, CHECKED])
def test_pain_and_signs_typed_there_are_heard_first(known: dict[str, Value]):
    assert asked(dict(known)).say("my knee hurts, is it serious").state.startswith("pain.")
    assert asked(dict(known)).say("i wet myself, what should i do").state.split(".")[0] in ("signs", "pain")


def test_words_that_say_nothing_are_met_in_other_words_each_time():
    talk = asked(dict(CHECKED))
    said = [answer(talk, words) for words in ("well then", "hm well", "you tell me")]
    assert len(set(said)) == len(said)
    assert all(one.endswith(HURT) and "Only these count" not in one for one in said)
