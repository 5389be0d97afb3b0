"""How it is since something hurt is read from whole messages that say no more."""

from __future__ import annotations

import pytest

from companion.language.how_it_is import how_it_is, how_it_is_asked


@pytest.mark.parametrize(("text", "how"), [
    ("its gone now", "usual"), ("the pain is gone", "usual"), ("Back to normal, thanks", "usual"), ("knee is fine again", "usual"),
    ("it doesnt hurt anymore", "usual"), ("no pain today", "usual"), ("all good now", "usual"), ("my back feels good today", "usual"),
    ("much better today", "better"), ("it is easing off", "better"), ("almost gone", "better"), ("better but not gone", "better"),
    ("a bit better", "better"), ("same as yesterday", "same"), ("no change", "same"), ("not better", "same"), ("not gone yet", "same"),
    ("its worse", "worse"), ("a lot worse this morning", "worse"), ("its gotten worse", "worse")])
def test_whole_messages_say_how_it_is(text: str, how: str):
    assert how_it_is(text) == how


@pytest.mark.parametrize("text", [
    "fine", "good", "ok", "my squat is better", "my grip got worse", "better shoes arrived", "is it normal?", "gone to work", "same weight",
    "better, but now my foot is numb", "it was better", ""])
def test_what_says_more_or_less_is_not_read(text: str):
    assert how_it_is(text) == ""


@pytest.mark.parametrize(("text", "how"), [
    ("about 80%", "better"), ("80 %", "better"), ("its 80% better", "better"), ("maybe 90 percent", "better"), ("not 100%", "better"),
    ("100% better", "better"), ("100%", "usual"), ("20%", "same"), ("20% better", "better"), ("only 30% there", "same")])
def test_per_cents_are_read_and_less_than_all_is_not_usual(text: str, how: str):
    assert how_it_is(text) == how


@pytest.mark.parametrize("text", [
    "not fine", "not good", "not great", "not better at all", "no better", "its not gone", "isn't any better", "not really easing",
    "no worse", "no worse, no better", "nope, still the same", "no its the same", "still there", "hasnt changed",
    "the same, but i slept badly"])
def test_what_is_no_better_is_the_same(text: str):
    assert how_it_is(text) == "same"


@pytest.mark.parametrize("text", [
    "about the same, worse on stairs", "worse but i slept badly", "better sitting, worse standing", "a bit better, worse at night",
    "didnt sleep because of it", "it kept me awake", "no, worse", "it came back"])
def test_what_is_worse_in_part_is_worse(text: str):
    assert how_it_is(text) == "worse"


@pytest.mark.parametrize("text", [
    "i think its gone", "gone with ibuprofen", "its gone, but i took ibuprofen", "no pain when i sit", "better but still a bit sore",
    "much better but still not gone", "back to normal, mostly gone", "not quite right"])
def test_what_is_usual_only_in_part_is_better(text: str):
    assert how_it_is(text) == "better"


@pytest.mark.parametrize("text", [
    "same as before but now my foot tingles", "my leg is gone", "my foot has gone", "better but i wet myself", "no, its fine now",
    "gone for a walk", "still hurts", "fine but it hurts when i bend", "is it worse at night?", "worse, i cant go on"])
def test_a_new_sign_or_two_answers_in_one_are_left_to_be_heard(text: str):
    assert how_it_is(text) == ""
    assert how_it_is_asked(text) == ""


@pytest.mark.parametrize(("text", "how"), [
    ("its fine", "usual"), ("fine thanks", "usual"), ("feels good", "usual"), ("fine when i sit", "better"), ("pretty good", "better"),
    ("my other knee is worse", "worse"), ("had to sit down all day, much worse", "worse")])
def test_where_it_is_asked_fine_is_an_answer_and_worse_is_heard_beside_anything(text: str, how: str):
    assert (how_it_is(text), how_it_is_asked(text)) == ("", how)


def test_a_long_message_is_left_unread():
    assert how_it_is("worse and " * 40 + "worse") == ""


@pytest.mark.parametrize(("text", "how"), [
    ("still a bit sore", "better"), ("bit stiff", "better"), ("still sore", "same"), ("sore, slept badly", "same"),
    ("sore and my foot is numb", ""), ("my knee is sore too", ""), ("it hurts", "")])
def test_soreness_says_how_it_is_only_where_that_is_asked(text: str, how: str):
    assert how_it_is_asked(text) == how
    assert how_it_is(text) == ""
