"""Slips in words of training and days are put right, words of their own are not."""

from __future__ import annotations

import pytest

from companion.language.slips import NEVER, nearest_word, put_right


@pytest.mark.parametrize(("typed", "meant"), [
    ("i sqauted 70 yesterday", "i squatted 70 yesterday"), ("sqauts today", "squats today"),
    ("trianing on wendsday", "training on wednesday"),
    ("squated yestrday", "squatted yesterday"), ("skip tommorow", "skip tomorrow"),
    ("sqauts 2day", "squats today"), ("rest 2moro", "rest tomorrow")])
def test_a_slip_is_put_right(typed: str, meant: str) -> None:
    assert put_right(typed) == meant


@pytest.mark.parametrize("typed", ["my squad is in", "my trainer", "squashed", "fridays", "toady", "sat on the mat",
                                  "2days off", "day 2", "12day"])
def test_a_word_of_its_own_stays(typed: str) -> None:
    assert put_right(typed) == typed


@pytest.mark.parametrize(("word", "words", "two_from", "meant"), [
    ("tusday", ("tuesday", "thursday"), 8, "tuesday"), ("thrsdy", ("tuesday", "thursday"), 8, "thursday"),
    ("thrsdy", ("tuesday", "thursday"), NEVER, None), ("firty", ("forty", "fifty"), NEVER, None), ("sunday", ("monday",), 8, None),
    ("five", ("five", "nine"), NEVER, "five"), ("anything", (), 8, None)])
def test_the_nearest_word_is_one_slip_off_or_two_where_it_is_long(word, words, two_from, meant) -> None:
    assert nearest_word(word, words, two_from) == meant
