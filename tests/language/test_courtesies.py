"""Greetings, thanks, praise and fright are known as whole replies, and as nothing more."""

from __future__ import annotations

from time import perf_counter

import pytest

from companion.language.courtesies import frightened, greets, nods, praises


@pytest.mark.parametrize("text", ["hi", "Hello there!", "good morning", "heyy", "hey mate"])
def test_a_greeting_is_one(text: str):
    assert greets(text)
    assert not nods(text)


@pytest.mark.parametrize("text", [
    "thanks", "thank you so much", "ok thanks", "ok, got it", "cheers mate", "great, thanks a lot", "thx for the tip", "will do", "👍"])
def test_thanks_and_nods_are_such(text: str):
    assert nods(text)
    assert not praises(text)


@pytest.mark.parametrize("text", ["good", "nice", "perfect"])
def test_praise_nods_too(text: str):
    assert praises(text)
    assert nods(text)


@pytest.mark.parametrize("text", ["im scared", "I'm so scared right now", "this is really scary", "oh god i'm panicking", "scared!",
                                  "you're scaring me", "ok now I'm a bit frightened"])
def test_a_fright_is_one(text: str):
    assert frightened(text)


@pytest.mark.parametrize("text", ["hi, my back hurts", "thanks but no", "good squat", "right leg", "ok go on", "", "no thanks",
                                  "not scared", "im scared of the bottom of a squat", "scared my leg is weak"])
def test_more_than_that_is_none(text: str):
    assert not frightened(text)
    assert not greets(text)
    assert not nods(text)


@pytest.mark.parametrize("text", ["ok " * 1300 + "x", "k" * 4000, "thanks for " * 400, "good " * 800 + "!?"])
def test_no_text_takes_long(text: str):
    begun = perf_counter()
    nods(text)
    frightened(text)
    greets(text)
    assert perf_counter() - begun < 0.5
