"""Quotes of what was typed."""

from companion.conversation.wording import cut


def test_a_quote_has_whole_words_and_says_that_some_are_left_out():
    assert cut("my squats yesterday were fine", 18) == "my squats…"
    assert cut("my squats yesterday", 10) == "my squats…"
    assert cut("my squats, yesterday", 11) == "my squats…"
    assert cut("my squats", 9) == "my squats"
    assert cut("x" * 30, 10) == "x" * 9 + "…"
