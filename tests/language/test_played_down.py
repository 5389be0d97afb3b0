"""Words that only play down what was told before, and none that name more."""

from __future__ import annotations

import pytest

from companion.language.played_down import plays_down


@pytest.mark.parametrize("text", [
    "but its only my foot", "its just my foot", "only the left leg", "it's just one foot though", "its not that bad", "no big deal",
    "but it doesn't even hurt", "probably nothing", "I'm sure it's nothing serious", "its only a bit"])
def test_what_only_plays_down_is_heard_as_that(text: str):
    assert plays_down(text)


@pytest.mark.parametrize("text", [
    "its only my feet", "only both legs", "only the other foot", "its just my chest", "only my foot is numb now", "its only a bit weak",
    "it doesnt hurt that much", "just my back hurts", "is it not that bad?", "its nothing", "fine", ""])
def test_what_names_a_sign_another_place_or_pain_is_not(text: str):
    assert not plays_down(text)


def test_a_place_has_to_be_the_one_told_where_that_is_asked():
    assert plays_down("its only my knee", "knee")
    assert not plays_down("its only my foot", "knee")
    assert plays_down("its not that bad", "knee")
