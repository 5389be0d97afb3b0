"""Quotes of what was typed."""

from companion.language.passed_on import in_whole_words


def test_a_quote_has_whole_words_and_says_that_some_are_left_out():
    assert in_whole_words("my squats yesterday were fine", 18) == "my squats…"
    assert in_whole_words("my squats yesterday", 10) == "my squats…"
    assert in_whole_words("my squats, yesterday", 11) == "my squats…"
    assert in_whole_words("my squats", 9) == "my squats"
    assert in_whole_words("x" * 30, 10) == "x" * 9 + "…"
