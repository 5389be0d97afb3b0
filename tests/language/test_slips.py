"""Slips in words of training and days are put right, words of their own are not."""

from __future__ import annotations

import pytest

from companion.language.slips import put_right


@pytest.mark.parametrize(("typed", "meant"), [
    ("i sqauted 70 yesterday", "i squatted 70 yesterday"), ("sqauts today", "squats today"),
    ("trianing on wendsday", "training on wednesday"),
    ("squated yestrday", "squatted yesterday"), ("skip tommorow", "skip tomorrow")])
def test_a_slip_is_put_right(typed: str, meant: str) -> None:
    assert put_right(typed) == meant


@pytest.mark.parametrize("typed", ["my squad is in", "my trainer", "squashed", "fridays", "toady", "sat on the mat"])
def test_a_word_of_its_own_stays(typed: str) -> None:
    assert put_right(typed) == typed
