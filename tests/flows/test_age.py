"""Age put right: who was taken to be under 18 by mistake, or has come of age, is not shut out for ever."""

from __future__ import annotations

import pytest

from flows.catalogue import BOOK
from tests.drive import CHECKED, Talk

YOUNG = {**CHECKED, "safety.age": "under_18"}


def at_menu(known: dict, *replies: str) -> Talk:
    return Talk(BOOK["home"].flow, known, BOOK).say(*replies)


@pytest.mark.parametrize("said", ["my age", "no i am 34", "im 18 now", "i turned 18 today", "actually i meant my brother is 16",
                                  "i'm over 18"])
def test_who_is_taken_to_be_under_18_can_say_otherwise_in_their_own_words(said: str):
    talk = at_menu(YOUNG, said)
    assert talk.state == "age.age"
    assert talk.tap("Yes, 18 or over").found["safety.age"] == "grown"
    assert talk.say("squatting").state.startswith("bar.")


@pytest.mark.parametrize("said", ["no", "No, under 18"])
def test_who_is_under_18_stays_so(said: str):
    talk = at_menu(YOUNG, "my age", said)
    assert "safety.age" not in talk.found
    assert "works with a coach" in " ".join(say.text for say in talk.says)
    assert talk.say("squatting").state == "home.pick"


def test_said_at_the_welcome_it_is_put_right_as_well():
    talk = at_menu({**CHECKED, "welcome.adult": "no", "coach": "no"}, "im 18 now", "yes")
    assert talk.say("squatting").state.startswith("bar.")


@pytest.mark.parametrize("said", ["i am 34", "i meant my brother"])
def test_nobody_else_is_asked_of_their_age_by_such_words(said: str):
    assert not at_menu(CHECKED, said).state.startswith("age.")


def test_who_asks_and_is_noted_as_grown_is_told_so_and_nothing_changes():
    talk = at_menu(CHECKED, "my age")
    assert "You are noted as 18 or over" in " ".join(say.text for say in talk.says)
    assert "safety.age" not in talk.found


def test_a_wrong_tap_at_the_welcome_is_taken_back_with_back():
    talk = Talk(BOOK["welcome"].flow, {}, BOOK).say("yes").tap("No, under 18")
    assert talk.state == "welcome.coach_first"
    assert talk.say("back").state == "welcome.adult"
