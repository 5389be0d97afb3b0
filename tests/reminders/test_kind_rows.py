"""The kinds of reminder as they are meant to be, row by row: at which levels each goes out, how often, and what is said of it."""

from __future__ import annotations

from datetime import timedelta

from companion.record.reminders import Reminder
from companion.reminders.decision import POSTPONED_BY, decide
from companion.reminders.kinds import REMINDER_KINDS, ReminderKind, coach_words, ended_by_stop_all
from tests.reminders.build import LISBON, USUAL, at
from tests.table import each_row

MEANT = {  # kind: levels it needs (LETTERS below; "": all), those on its day, otherwise, rounds, in quiet hours,
    # and: m says missed, s stop all reminders ends it, d "digest" does, - never sent,
    # v shows a view, y gives way to the morning, p puts an open question again
    "squat_day": ("gnt", "g", "drop", 1, "wait", "ms"),
    "squat_after": ("gnt", "", "drop", 1, "wait", "sy"),
    "morning": ("", "", "drop", 1, "wait", ""),
    "unanswered": ("", "", "drop", 3, "wait", "w"),
    "hurt": ("", "", "drop", 3, "wait", "p"),
    "setup": ("gnt", "", "drop", 1, "wait", "s"),
    "referral": ("cse", "", "drop", 10, "wait", ""),
    "limit": ("", "", "drop", 3, "wait", ""),
    "retest": ("gn", "", "put_off", 2, "wait", "s"),
    "screen": ("gn", "", "put_off", 1, "wait", "s"),
    "digest": ("", "", "drop", 1, "send", "dv"),
    "home_again": ("", "", "drop", 1, "wait", "-"),
}
LETTERS = {"g": "go", "n": "no_load", "t": "not_today", "c": "clinician", "s": "same_day", "e": "emergency"}


def levels(letters: str) -> tuple[str, ...]:
    return tuple(LETTERS[letter] for letter in letters)


def marks(kind: ReminderKind) -> str:
    ends = {"stop all reminders": "s", "digest": "d", "": ""}[kind.ended_by]
    gives = "y" * (kind.gives_way_to == "morning")
    waits = "w" * (kind.gives_way_to == "referral" and bool(kind.says))
    again = "p" * (kind.puts_again and "Nothing begins here before I know" in kind.says)
    return again + waits + "m" * kind.says_missed + ends + "-" * (not kind.sent) + "v" * (kind.shows == "since") + gives


def test_a_kind_that_is_no_longer_known_is_told_by_its_key_and_ended_with_all_others() -> None:
    assert (coach_words("squat_day"), coach_words("old_kind")) == (REMINDER_KINDS["squat_day"].coach, "old kind")
    ended = {name: ended_by_stop_all(name) for name in ("squat_day", "digest", "home_again", "old_kind")}
    assert ended == {"squat_day": True, "digest": False, "home_again": False, "old_kind": True}


def test_each_kind_is_as_it_is_meant_to_be() -> None:
    assert list(REMINDER_KINDS) == list(MEANT)
    for name, (needs, that_day, closed, rounds, quiet, marked) in MEANT.items():
        kind = REMINDER_KINDS[name]
        assert (kind.name, kind.levels, kind.that_day, kind.closed) == (name, levels(needs), levels(that_day), closed), name
        gap = timedelta(days=1 if name == "hurt" else 3)
        assert (kind.rounds, kind.gap, kind.quiet, marks(kind)) == (rounds, gap, quiet, marked), name


def test_an_invitation_to_test_waits_a_day_at_a_time() -> None:
    assert timedelta(days=1) == POSTPONED_BY


@each_row(("kind", "level", "what"), [
    ("retest", "clinician", "wait"), ("retest", "no_load", "send"), ("screen", "not_today", "wait"), ("squat_after", "same_day", "drop"),
    ("squat_after", "not_today", "send"), ("morning", "emergency", "send"), ("squat_day", "no_load", "drop"), ("squat_day", "go", "send")])
def test_on_the_day_it_is_about_a_kind_needs_no_less_than_before(kind: str, level: str, what: str) -> None:
    now = at("2026-06-02 11:00")
    due = Reminder(1, 1, kind, kind, "2026-06-02 11:00", LISBON, now, "2026-06-02", None, 1)
    assert decide(due, now, USUAL, LISBON, level).what == what


@each_row(("kind", "what"), [("squat_day", "drop"), ("digest", "drop"), ("referral", "wait"), ("limit", "wait"), ("retest", "wait")])
def test_while_all_is_suspended_what_has_a_date_waits_and_the_rest_is_dropped(kind: str, what: str) -> None:
    now = at("2026-06-02 11:00")
    due = Reminder(1, 1, kind, kind, "2026-06-02 11:00", LISBON, now, "2026-06-02", None, 1)
    decided = decide(due, now, USUAL, LISBON, "go", suspended=True)
    assert (decided.what, decided.until) == (what, now + POSTPONED_BY if what == "wait" else None)


@each_row(("kind", "what"), [("squat_day", "wait"), ("digest", "send")])
def test_only_a_digest_is_sent_in_quiet_hours(kind: str, what: str) -> None:
    now = at("2026-06-02 23:30")
    due = Reminder(1, 1, kind, kind, "2026-06-02 23:30", LISBON, now, "2026-06-02", None, 1)
    assert decide(due, now, USUAL, LISBON, "go").what == what
