"""How it is since something hurt is read from whole messages that say no more."""

from __future__ import annotations

import pytest

from companion.language.how_it_is import how_it_is


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
