"""What becomes of a reminder whose time has come, kind by kind, as tables."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.calendar.prompts import Preferences, is_quiet
from companion.record.reminders import Reminder
from companion.reminders.decision import POSTPONED_BY, decide, leaves_until, quiet_from
from companion.reminders.kinds import REMINDER_KINDS
from tests.reminders.build import LISBON, NEVER_QUIET, USUAL, at
from tests.table import each_row

NOON = at("2026-06-02 11:00")
NIGHT = at("2026-06-02 20:30")
MORNING = at("2026-06-03 08:00")
"""Noon, half past nine in the evening and the end of quiet hours, in Lisbon."""

LEVELS = ("go", "no_load", "not_today", "clinician", "same_day", "emergency")
PASSES = {  # kind: at each of LEVELS, whether it is sent (+), dropped (-) or put off (.)
    "squat_day": "+++---",  # of tomorrow
    "squat_after": "+++---",
    "morning": "++++++",
    "unanswered": "++++++",
    "hurt": "++++++",
    "setup": "+++---",
    "referral": "---+++",
    "limit": "++++++",
    "retest": "++....",
    "screen": "++....",
}
SPOKEN_OF = {"squat_day"}


def reminder(kind: str, stale: datetime | None = None, round: int = 1, day: str = "2026-06-03") -> Reminder:
    return Reminder(1, 1, kind, kind, "2026-06-01 18:00", LISBON, at("2026-06-01 17:00"), day, stale, round)


@each_row("kind, level, stale, quiet",
          list(product(PASSES, LEVELS, (None, "later", "over"), ("day", "night", "night, none quiet"))))
def test_each_kind_at_each_level_by_day_and_night_in_time_and_too_late(kind, level, stale, quiet):
    now = NOON if quiet == "day" else NIGHT
    wishes = Preferences(quiet=NEVER_QUIET) if quiet.endswith("none quiet") else USUAL
    stale_at = {None: None, "later": now + timedelta(minutes=1), "over": now}[stale]
    what = {"+": "send", "-": "drop", ".": "wait"}[PASSES[kind][LEVELS.index(level)]]
    found = decide(reminder(kind, stale_at), now, wishes, LISBON, level)
    if stale == "over" and kind not in SPOKEN_OF:
        assert (found.what, found.until) == ("stale", None)
    elif quiet == "night":
        assert (found.what, found.until) == ("wait", MORNING)
    elif stale == "over":
        assert (found.what, found.until) == ("stale" if what == "send" else "drop", None)
    elif what == "wait":
        assert (found.what, found.until) == ("wait", now + POSTPONED_BY)
    else:
        assert (found.what, found.until) == (what, None)


@pytest.mark.parametrize("stale", [None, NOON])
@pytest.mark.parametrize(("level", "what"), [("go", "send"), *((level, "drop") for level in LEVELS[1:])])
def test_on_a_day_that_is_closed_to_squats_nobody_is_told_of_a_squat_day_today(level, what, stale):
    """Who wants to hear two hours before, and was told this morning not to squat today."""
    found = decide(reminder("squat_day", stale, day="2026-06-02"), NOON, USUAL, LISBON, level)
    assert found.what == ("stale" if stale and what == "send" else what)


@pytest.mark.parametrize(("kind", "asked", "what"), [("squat_after", True, "drop"), ("squat_after", False, "send"),
                                                     ("morning", False, "send"), ("squat_day", False, "send")])
def test_a_kind_that_has_given_way_is_dropped(kind, asked, what):
    assert decide(reminder(kind), NOON, USUAL, LISBON, "go", given_way=asked).what == what


@pytest.mark.parametrize(("round", "what"), [(1, "send"), (2, "send"), (3, "ignored"), (4, "ignored")])
def test_a_retest_is_told_twice_and_then_left_also_by_night(round, what):
    assert decide(reminder("retest", round=round), NOON, USUAL, LISBON, "go").what == what
    assert decide(reminder("retest", round=round), NIGHT, USUAL, LISBON, "go").what == ("wait" if what == "send" else what)


def test_coming_home_is_never_sent_and_never_spoken_of():
    for now in (NOON, NIGHT):
        for level in LEVELS:
            assert decide(reminder("home_again", stale=now), now, USUAL, LISBON, level).what == "stale"
    assert not REMINDER_KINDS["home_again"].says_missed


def test_every_kind_that_is_listed_has_a_row_here():
    assert set(PASSES) | {"home_again"} == {kind.name for kind in REMINDER_KINDS.values() if not kind.shows}


def test_whether_a_limit_until_somebody_is_cleared_is_over_is_asked_every_four_weeks():
    assert REMINDER_KINDS["limit"].anew == timedelta(weeks=4)


@pytest.mark.parametrize(("moment", "quiet", "begins"), [
    ("2026-06-02 11:00", (time(20), time(9)), "2026-06-02 19:00"),
    ("2026-06-02 18:59", (time(20), time(9)), "2026-06-02 19:00"),
    ("2026-06-02 19:00", (time(20), time(9)), "2026-06-03 19:00"),
    ("2026-06-02 23:30", (time(1), time(6)), "2026-06-03 00:00"),
    ("2026-03-28 20:00", (time(1, 30), time(9)), "2026-03-29 01:00"),  # half past one does not exist on the 29th
    ("2026-06-02 11:00", NEVER_QUIET, None),
])
def test_when_the_next_quiet_hours_begin(moment, quiet, begins):
    assert quiet_from(at(moment), Preferences(quiet=quiet), LISBON) == (at(begins) if begins else None)


@given(st.integers(0, 60 * 24 * 400), st.integers(0, 95), st.integers(0, 95), st.none() | st.integers(1, 3000),
       st.sampled_from([LISBON, "America/New_York", "Australia/Lord_Howe", "Africa/Casablanca", "UTC+05:30"]))
def test_a_message_may_leave_until_it_is_stale_or_quiet_and_not_a_minute_into_either(minutes, begin, end, stale, zone):
    wishes = Preferences(quiet=(time(begin // 4, begin % 4 * 15), time(end // 4, end % 4 * 15)))
    now = at("2026-01-01 00:00") + timedelta(minutes=minutes)
    until = leaves_until(reminder("squat_day", now + timedelta(minutes=stale) if stale else None), now, wishes, zone).stale_at
    if until is None:
        assert begin == end
        assert stale is None
        return
    assert until > now
    assert is_quiet(until, wishes, zone) or (stale and until == now + timedelta(minutes=stale))
    if not is_quiet(now, wishes, zone):
        step = (until - now) / 50
        assert not any(is_quiet(now + step * part, wishes, zone) for part in range(50))


@pytest.mark.parametrize(("kind", "what"), [
    ("squat_day", "drop"), ("squat_after", "drop"), ("retest", "wait"), ("screen", "wait")])
def test_nothing_invites_to_what_a_clinician_closed(kind, what):
    assert decide(reminder(kind), NOON, USUAL, LISBON, "go", limited=True).what == what
    assert decide(reminder(kind), NOON, USUAL, LISBON, "go").what == "send"
    late = decide(reminder(kind, NOON), NOON, USUAL, LISBON, "go", limited=True).what
    assert late == ("drop" if kind in SPOKEN_OF else "stale"), "nor is it spoken of afterwards"
