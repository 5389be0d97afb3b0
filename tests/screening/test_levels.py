"""The words of the safety levels, and that they stand once."""

from __future__ import annotations

import pytest

from companion.screening.levels import (
    CALL,
    CALL_WORDS,
    LEVEL_WORDS,
    OPEN_LEVELS,
    PASSING,
    REFERRED,
    UNCHECKED_WORDS,
    URGENT_LEVELS,
    WENT_WORDS,
    words_of,
)
from companion.screening.safety import Level
from tests.house.source import modules, texts


def test_every_level_has_words_for_each_reader():
    assert set(LEVEL_WORDS) == set(Level)
    assert [level for level, words in LEVEL_WORDS.items() if not (words.coach and words.report)] == []
    assert [level for level, words in LEVEL_WORDS.items() if not words.lifter] == [Level.GO]


def test_no_two_levels_read_alike():
    for reader in ("coach", "report", "lifter"):
        said = [getattr(words, reader) for words in LEVEL_WORDS.values()]
        assert len(set(said)) == len(said)


def test_the_levels_fall_into_those_that_pass_and_those_somebody_else_opens():
    assert tuple(level.value for level in Level) == PASSING + REFERRED
    assert OPEN_LEVELS == ("go", "no_load")
    assert PASSING == ("go", "no_load", "not_today")
    assert REFERRED == ("clinician", "same_day", "emergency")
    assert URGENT_LEVELS == ("same_day", "emergency")


def test_a_coach_reads_whether_somebody_was_seen_and_that_a_call_was_asked_for():
    assert WENT_WORDS == {"yes": "yes", "booked": "not yet, booked", "no": "not yet"}
    assert words_of(CALL) is CALL_WORDS


@pytest.mark.parametrize(("kept", "words"), [("", UNCHECKED_WORDS.coach), (None, UNCHECKED_WORDS.coach), ("no_load", "no load today"),
                                             ("emergency", "sent to emergency care"), ("=1+1", "=1+1")])
def test_a_level_as_it_is_kept_in_words(kept: str | None, words: str):
    assert words_of(kept).coach == words


def test_no_other_module_has_words_for_a_level():
    said = {text for words in (*LEVEL_WORDS.values(), UNCHECKED_WORDS) for text in (words.coach, words.report, words.lifter) if text}
    said -= {"open"}  # a ruling is called so too
    found = [f"{path}:{line}: take “{text}” from companion/screening/levels.py" for path, tree in modules("companion", "flows")
             if path != "companion/screening/levels.py" for line, text in texts(tree) if text in said]
    assert found == []


@pytest.mark.parametrize(("level", "where", "soon"), [
    (Level.CLINICIAN, "a doctor or physiotherapist", "within a week"),
    (Level.SAME_DAY, "your doctor, an urgent care line or a clinic", "today"),
    (Level.EMERGENCY, "an emergency department", "now")])
def test_every_referral_says_where_to_go_and_how_soon(level, where, soon):
    """A week: choice."""
    words = LEVEL_WORDS[level].lifter
    assert where in words
    assert soon in words
