"""How it is since something hurt, told unasked: heard on every day until it is back to usual, and opening nothing."""

from __future__ import annotations

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Alert
from flows.catalogue import BOOK
from tests.drive import CHECKED, UNCHECKED, Talk

NEXT_DAY: dict[str, Value] = {**UNCHECKED, "pain.where": "knee", "pain.follow": "open", "safety.level": "not_today",
                              "safety.may_open": "yes"}
SAME_DAY: dict[str, Value] = {**CHECKED, "pain.where": "knee", "pain.follow": "open", "pain.follow.today": "yes",
                              "safety.level": "not_today"}


def at_home(known: dict[str, Value], words: str) -> Talk:
    return Talk(BOOK["home"].flow, known=known, book=BOOK).say(words)


def alerts(talk: Talk) -> list[str]:
    return [effect.because for effect in talk.effects if isinstance(effect, Alert)]


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


@pytest.mark.parametrize(("words", "follow", "says"), [
    ("its gone now", "over", "Today's safety check still comes first"),
    ("the pain is gone", "over", "Today's safety check still comes first"),
    ("nothing hurts", "over", "Today's safety check still comes first"), ("much better", "open", "no squats and no loaded drill today"),
    ("same as yesterday", "open", "no squats, no tests and no drills today")])
def test_on_another_day_it_is_the_answer_to_what_is_asked_each_morning(words: str, follow: str, says: str):
    talk = at_home(NEXT_DAY, words)
    assert (talk.found["pain.follow"], talk.state) == (follow, "home.pick")
    assert says in heard(talk)
    assert talk.found.get("safety.level", "not_today") == "not_today", "it opens nothing"


@pytest.mark.parametrize("known", [NEXT_DAY, SAME_DAY])
def test_worse_is_asked_about_on_any_day_and_told(known: dict[str, Value]):
    talk = at_home(known, "its worse")
    assert talk.state == "pain.where"
    assert alerts(talk)


@pytest.mark.parametrize(("words", "says"), [
    ("its gone now", "Good that it eases. What I said for today stands all the same"), ("better", "Good that it eases."),
    ("knee is fine again", "Good that it eases."), ("no change", "What I said for today stands")])
def test_on_the_same_day_what_was_said_for_it_stands(words: str, says: str):
    talk = at_home(SAME_DAY, words)
    assert says in heard(talk)
    assert "I ask again tomorrow morning" in heard(talk)
    assert not {"safety.level", "pain.follow"} & talk.found.keys()


@pytest.mark.parametrize("words", ["its gone now", "no change"])
def test_who_was_sent_to_be_seen_hears_that_this_holds(words: str):
    talk = at_home({**SAME_DAY, "safety.level": "clinician"}, words)
    assert "being seen still holds" in heard(talk)
    assert "tomorrow" not in heard(talk)


def test_nothing_hurts_takes_back_the_pain_of_the_same_day_as_before():
    pain = Talk(BOOK["home"].flow, CHECKED, BOOK).say("my knee hurts", "knee", "5", "no", "no", "menu", "nothing hurts")
    assert pain.state == "pain.mistake"


@pytest.mark.parametrize("words", ["its worse", "its gone now", "better"])
def test_where_nothing_hurt_such_words_begin_nothing_of_it(words: str):
    assert at_home(CHECKED, words).state == "home.pick"


def test_over_an_open_question_they_are_left_to_it():
    talk = Talk(BOOK["about_you"].flow, SAME_DAY, BOOK)
    state = talk.state
    assert talk.say("no change").state.startswith(state.split(".")[0])


@pytest.mark.parametrize("words", ["not better at all", "not fine", "its not gone"])
def test_who_was_sent_to_be_seen_and_is_no_better_hears_that_this_holds_and_is_offered_no_squats(words: str):
    talk = at_home({**SAME_DAY, "safety.level": "clinician"}, words)
    assert "Thank you for telling me. What I said about being seen still holds." in heard(talk)
    assert "Which do you mean?" not in heard(talk)


def test_a_leg_that_is_gone_is_no_pain_that_is_gone():
    talk = at_home(NEXT_DAY, "my leg is gone")
    assert talk.state.startswith("pain.")
    assert "pain.follow" not in talk.found


@pytest.mark.parametrize("words", ["but its only my knee", "its not that bad", "but it doesnt even hurt"])
def test_who_was_sent_within_a_week_and_plays_it_down_hears_that_it_holds(words: str):
    talk = at_home({**SAME_DAY, "safety.level": "clinician"}, words)
    assert "What I said about being seen still holds, however small it seems." in heard(talk)
    assert talk.session.aside is None
    assert not {"safety.level", "pain.follow", "pain.morning"} & talk.found.keys()


@pytest.mark.parametrize("words", ["its just my foot", "only my feet"])
def test_another_place_than_the_one_told_is_not_taken_for_it(words: str):
    assert "however small" not in heard(at_home({**SAME_DAY, "safety.level": "clinician"}, words))
