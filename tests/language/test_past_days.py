"""Days gone by, as they are named."""

from __future__ import annotations

from datetime import date, timedelta

from companion.language.days.past import past_days
from tests.table import each_row

TODAY = date(2026, 3, 5)
"""A Thursday."""


@each_row(("words", "back"), [
    ("today", {0}), ("this morning", {0}), ("yesterday", {1}), ("last night", {1}), ("the day before yesterday", {2}), ("2 days ago", {2}),
    ("a couple of days ago", {2}), ("three days ago", {3}), ("on monday", {3}), ("monday", {3}), ("Mon", {3}), ("on tues", {2}),
    ("last wednesday", {1}), ("thursday", {0}), ("friday", {6}), ("10 days ago", {10}), ("monday and yesterday", {3, 1}),
    ("2026-03-02", {3}), ("on 2 March", {3}), ("the 2nd of march", {3}), ("March 4th", {1}), ("2026-03-06", set()), ("31 feb", set()),
    ("80 kg 5 reps", set()), ("6 march", {364}), ("", set()),
    ("whenever", set()), ("not on monday", set()), ("i didn't squat yesterday", set()), ("i sat down", set()),
    ("in two days", set()), ("90 kg", set())])
def test_a_day_is_read_as_the_last_of_its_name(words: str, back: set[int]):
    assert past_days(words, TODAY) == {TODAY - timedelta(days=days) for days in back}
