"""What was told of each squat day, from the answer log: worked by hand."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest

from companion.screening.priming_trial import TrialDay
from companion.screening.screen import LoggedAnswer
from companion.screening.squat_days import AFTER, DAY, ToldDay, about, days_told, trial_days, trial_seed
from tests.table import each_row

BEGAN = datetime(2026, 3, 2, 18, tzinfo=UTC)
FIRST, SECOND, THIRD = date(2026, 3, 2), date(2026, 3, 3), date(2026, 3, 4)
ABOUT = LoggedAnswer("about_you", "0", "load", 60.0, "ok", "done", "", "", BEGAN - timedelta(days=9))


def run(flow: str, name: str, at: float = 0, asked: str = "", ending: str | None = "done", status: str = "ok",
        **said: float | str | None) -> list[LoggedAnswer]:
    """The log of one run, some days after the first."""
    return [LoggedAnswer(flow, name, key, value, status, ending, "", "", BEGAN + timedelta(days=at), asked) for key, value in said.items()]


def one(*rows: list[LoggedAnswer]) -> ToldDay:
    """The only day these rows tell of."""
    found, = days_told([ABOUT, *(row for some in rows for row in some)], "UTC+00:00")
    return found


def test_before_and_after_the_squats_are_one_day():
    told = one(run(DAY, "1", load=80.0, squatted="ready"),
               run(AFTER, "2", 0.1, back="still", seen_by="film", kept="kept", hurt="no", load=82.5, note="light", video="file-1"))
    assert told == ToldDay(FIRST, "still", "kept", None, True, False, 82.5, None, None, "light", "file-1", planned=80.0)
    assert told.squatted


def test_a_load_was_lifted_by_the_time_it_was_told_or_by_the_end_of_its_day_where_they_live():
    zone = "America/New_York"
    rows = [*run(AFTER, "1", 0.1, asked="2026-03-02", load=80.0), *run(AFTER, "2", 4, asked="2026-03-03", load=90.0)]
    assert [day.lifted_by for day in days_told(rows, zone)] == [BEGAN + timedelta(days=0.1), datetime(2026, 3, 4, 5, tzinfo=UTC)]
    assert one(run(DAY, "1", load=80.0)).lifted_by is None


@each_row(("rows", "load", "planned"), [
    ((run(DAY, "1", load="same"),), None, 60.0),
    ((run(AFTER, "1", load="same"),), 60.0, None),
    ((run(DAY, "1", load=80.0), run(AFTER, "2", load="same")), 80.0, 80.0),
    ((run(DAY, "1", load="same"), run(AFTER, "2", load="same")), 60.0, 60.0),
    ((run(DAY, "1", load="none"), run(AFTER, "2", load="same")), 0.0, 0.0),
    ((run(DAY, "1", load=80.0), run(AFTER, "2", load=75.0)), 75.0, 80.0),
    ((run(DAY, "1", load=80.0), run(AFTER, "2", load="none")), 0.0, 80.0),
    ((run(DAY, "1", squatted="ready"),), None, None),
    ((run(DAY, "1", load=80.0), run(AFTER, "2", 1, asked="2026-03-02", done="no")), None, None)])
def test_the_load_is_what_was_told_afterwards_as_planned_or_the_same_as_before(
        rows: tuple[list[LoggedAnswer], ...], load: float | None, planned: float | None):
    assert (one(*rows).load, one(*rows).planned) == (load, planned)


def test_a_load_that_was_planned_and_not_told_afterwards_is_not_known():
    told = one(run(DAY, "1", load=80.0), run(AFTER, "2", back="still"), run(AFTER, "2", load=None, status="skipped"))
    assert (told.load, told.load_at, told.planned) == (None, None, 80.0)


def test_the_same_again_means_the_last_day_with_a_bar():
    rows = [*run(DAY, "1", load=80.0), *run(DAY, "2", 1, load="none"), *run(DAY, "3", 2, load="same")]
    assert [day.planned for day in days_told(rows, "UTC+00:00")] == [80.0, 0.0, 80.0]


def test_what_was_skipped_or_taken_back_is_not_told():
    told = one(run(AFTER, "1", back="moved", kept="kept", load=80.0), run(AFTER, "1", back=None, status="withdrawn"),
               run(AFTER, "1", load=None, status="skipped"))
    assert (told.back, told.kept, told.load) == (None, "kept", None)


def test_what_was_said_again_after_it_was_taken_back_is_told():
    assert one(run(AFTER, "1", back="moved"), run(AFTER, "1", back=None, status="withdrawn"), run(AFTER, "1", back="still")).back == "still"


@pytest.mark.parametrize("rows", [
    (run(AFTER, "1", back="still", hurt="yes"),),
    (run(DAY, "1", load=80.0, ending="pain"), run(AFTER, "2", back="still", hurt="no")),
    (run(AFTER, "1", back=None, status="in_pain"), run(AFTER, "1", back="still", hurt="no")),
    (run(DAY, "1", ending="pain", squatted="ready"),)])
def test_pain_then_or_afterwards_stays_with_the_day(rows: tuple[list[LoggedAnswer], ...]):
    assert one(*rows).hurt


def test_a_day_told_of_the_next_morning_is_the_day_before():
    told = one(run(DAY, "1", load=80.0), run(AFTER, "2", 0.6, asked="2026-03-02", done="yes", back="moved"))
    assert (told.day, told.back, told.planned) == (FIRST, "moved", 80.0)


@each_row(("asked", "day"), [
    ("", THIRD), ("2026-03-04", THIRD), ("2026-03-02", FIRST), ("2026-03-01", date(2026, 3, 1)), ("2026-02-28", THIRD),
    ("2026-03-05", THIRD), ("yesterday", THIRD), ("2026-13-45", THIRD)])
def test_only_a_day_of_the_last_three_can_be_told_of(asked: str, day: date):
    assert about(asked, BEGAN, THIRD) == day


def test_squats_told_of_after_midnight_are_those_of_the_day_they_were_asked_about():
    late = run(AFTER, "2", 0.3, asked="2026-03-02", back="still")  # 01:12 the next day
    assert one(run(DAY, "1", load=80.0), late).day == FIRST


def test_days_are_those_where_the_lifter_is():
    rows = run(AFTER, "1", 0.2, back="still")  # 22:48 in UTC
    assert days_told(rows, "Asia/Tokyo")[0].day == SECOND


def test_of_two_runs_on_a_day_what_was_told_last_counts_and_the_rest_stays():
    told = one(run(AFTER, "1", back="moved", kept="kept", note="early"), run(AFTER, "2", 0.1, back="still"))
    assert (told.back, told.kept, told.note) == ("still", "kept", "early")


def test_days_come_in_order_however_they_were_told():
    rows = [*run(AFTER, "1", 1, back="still"), *run(AFTER, "2", 1, asked="2026-03-02", back="moved")]
    assert [(day.day, day.back) for day in days_told(rows, "UTC+00:00")] == [(FIRST, "moved"), (SECOND, "still")]


def test_a_day_that_was_only_begun_or_not_squatted_tells_nothing():
    assert not one(run(DAY, "1", load=80.0, prime_now="yes")).squatted
    assert not one(run(AFTER, "1", done="no")).squatted


def test_other_flows_tell_nothing_of_squat_days():
    assert days_told([ABOUT, *run("squat_look", "1", back="still"), *run("trial", "2", join="yes")], "UTC+00:00") == ()


# the trial --------------------------------------------------------------------------------------------------------


def test_lots_are_counted_by_day_whatever_came_after():
    rows = [*run(DAY, "1", lot="draw", ending="left"), *run(DAY, "2", 1, lot="later"), *run(DAY, "3", 2, lot="draw")]
    assert [day.lot for day in days_told(rows, "UTC+00:00")] == [0, None, 1]


def test_two_lots_on_one_day_are_one():
    rows = [*run(DAY, "1", lot="draw"), *run(DAY, "2", 0.1, lot="draw"), *run(DAY, "3", 1, lot="draw")]
    assert [day.lot for day in days_told(rows, "UTC+00:00")] == [0, 1]


def test_a_lot_that_was_taken_back_is_none():
    assert one(run(DAY, "1", lot="draw"), run(DAY, "1", lot=None, status="withdrawn")).lot is None


def test_the_lots_come_from_who_they_are_and_when_they_first_joined():
    joined = [*run("trial", "1", join="yes"), *run("trial", "2", 5, join="yes")]
    assert trial_seed(joined, "7") == "7 2026-03-02T18:00:00+00:00"
    assert trial_seed(run("trial", "1", join="no"), "7") is None
    assert trial_seed(run("trial", "1", join="yes", status="withdrawn"), "7") is None


TOLD = ToldDay(FIRST, "still", "kept", None, load=80.0, felt=3.0, lot=4)


def test_a_day_of_the_trial_tells_movement_and_load_at_a_depth():
    assert trial_days([TOLD]) == [TrialDay(4, 3.0, True, "kept ", 80.0)]
    assert trial_days([ToldDay(FIRST, depth="parallel", load=0.0, felt=3.0, lot=0)]) == [TrialDay(0, 3.0, None, "parallel", 0.0)]


def test_days_that_kept_to_different_depths_are_not_alike():
    high, low = trial_days([TOLD, ToldDay(SECOND, "still", "kept", load=80.0, felt=3.0, lot=5)],
                           {FIRST: "parallel", SECOND: "a_little_above"})
    assert high.depth != low.depth


@pytest.mark.parametrize("told", [
    ToldDay(FIRST, load=80.0, felt=3.0), ToldDay(FIRST, load=80.0, lot=0), ToldDay(FIRST, felt=3.0, lot=0),
    ToldDay(FIRST, load=80.0, felt=3.0, lot=0, hurt=True)])
def test_without_a_lot_a_load_or_the_movement_felt_or_in_pain_a_day_shows_nothing(told: ToldDay):
    assert trial_days([told]) == []
