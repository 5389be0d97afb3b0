"""The kinds of reminder as they are meant to be, row by row: at which levels each goes out, how often, and what is said of it."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.record.reminders import Reminder
from companion.reminders.kinds import KINDS, PUT_OFF, Kind, decide
from tests.reminders.build import LISBON, USUAL, at

MEANT = {  # kind: levels it needs (g go, n no load, t not today; "": all), those on its day, otherwise, rounds, says missed, title, shows
    "squat_day": ("gnt", "g", "drop", 1, True, "", ""),
    "squat_after": ("gnt", "", "drop", 1, False, "", ""),
    "morning": ("", "", "drop", 1, False, "How it is the morning after", ""),
    "retest": ("gn", "", "put_off", 2, False, "Test again", ""),
    "digest": ("", "", "drop", 1, False, "", "caseload"),
    "screen": ("gn", "", "put_off", 1, False, "Tests, when rested", ""),
    "home_again": ("", "", "drop", 1, False, "", ""),
}
LETTERS = {"g": "go", "n": "no_load", "t": "not_today"}


def levels(letters: str) -> tuple[str, ...]:
    return tuple(LETTERS[letter] for letter in letters)


def test_each_kind_is_as_it_is_meant_to_be() -> None:
    assert list(KINDS) == list(MEANT)
    for name, (needs, that_day, else_, rounds, missed, title, shows) in MEANT.items():
        kind = KINDS[name]
        assert (kind.name, kind.needs, kind.that_day, kind.else_) == (name, levels(needs), levels(that_day), else_), name
        assert (kind.rounds, kind.gap, kind.says_missed) == (rounds, timedelta(days=3), missed), name
        assert (kind.title, kind.shows) == (title, shows), name


def test_a_kind_of_which_nothing_is_said_goes_out_once_at_every_level() -> None:
    kind = Kind("new")
    assert (kind.needs, kind.that_day, kind.else_, kind.rounds) == ((), (), "drop", 1)
    assert (kind.gap, kind.says_missed, kind.title, kind.shows) == (timedelta(days=3), False, "", "")


def test_an_invitation_to_test_waits_a_day_at_a_time() -> None:
    assert timedelta(days=1) == PUT_OFF


@pytest.mark.parametrize(("kind", "level", "what"), [
    ("retest", "clinician", "wait"), ("retest", "no_load", "send"), ("screen", "not_today", "wait"), ("squat_after", "same_day", "drop"),
    ("squat_after", "not_today", "send"), ("morning", "emergency", "send"), ("squat_day", "no_load", "drop"), ("squat_day", "go", "send")])
def test_on_the_day_it_is_about_a_kind_needs_no_less_than_before(kind: str, level: str, what: str) -> None:
    now = at("2026-06-02 11:00")
    due = Reminder(1, 1, kind, kind, "2026-06-02 11:00", LISBON, now, "2026-06-02", None, 1)
    assert decide(due, now, USUAL, LISBON, level).what == what
