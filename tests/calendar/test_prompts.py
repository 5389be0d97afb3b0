"""When somebody hears of a squat day: by hand at the clock changes of 2026 (IANA time zone database), and what always holds."""

from datetime import date, datetime, time, timedelta
from itertools import islice

from hypothesis import example, given
from hypothesis import strategies as st

from companion.base.clock import instant, local_date, zone_of
from companion.calendar.plan import Plan, SquatDay
from companion.calendar.prompts import (
    LAST_QUARTER,
    LEAST_NOTICE,
    Preferences,
    after_quiet,
    follow_up_at,
    follow_up_stale_at,
    is_quiet,
    next_prompt,
    prompt_at,
    prompts,
    stale_at,
)
from companion.calendar.words import date_words, day_words, plan_words
from tests.calendar.plans import DAYS, PLANS, TIMES, WISHES, ZONES, utc
from tests.table import each_row

NEVER_QUIET = (time(0), time(0))
MIDNIGHT_CHANGES = ("Africa/Cairo", "America/Havana", "Asia/Beirut", "Atlantic/Azores", "America/Nuuk", "America/Scoresbysund")
"""Zones whose clocks change at or over midnight."""

ANYWHERE = st.sampled_from(ZONES + MIDNIGHT_CHANGES)
CHANGE_DAYS = st.builds(lambda day, by: day + timedelta(days=by), st.sampled_from([date(2026, month, day) for month, day in (
    (2, 15), (3, 8), (3, 22), (3, 28), (3, 29), (4, 5), (4, 24), (10, 4), (10, 24), (10, 25), (10, 29), (11, 1))]), st.integers(-1, 1))
SQUATS = st.builds(SquatDay, CHANGE_DAYS | DAYS, TIMES)


def shows_quiet(moment: datetime, wishes: Preferences, zone: str) -> bool:
    """Whether the clock on the wall shows a time in quiet hours: the plainest reading of them."""
    at, (begin, end) = moment.astimezone(zone_of(zone)).time(), wishes.quiet
    return begin <= at < end if begin <= end else at >= begin or at < end


@each_row(("zone", "day", "at", "evening", "hour_before"), [
    # The clocks go forward: 18:00 on both sides, then a squat time that does not exist.
    ("Europe/Lisbon", "2026-03-29", "18:00", "2026-03-28 18:00", "2026-03-29 16:00"),
    ("Europe/Lisbon", "2026-03-30", "18:00", "2026-03-29 17:00", "2026-03-30 16:00"),
    ("Europe/Lisbon", "2026-03-29", "01:30", "2026-03-28 18:00", "2026-03-29 00:00"),
    ("America/New_York", "2026-03-08", "18:00", "2026-03-07 23:00", "2026-03-08 21:00"),
    ("America/New_York", "2026-03-09", "18:00", "2026-03-08 22:00", "2026-03-09 21:00"),
    ("America/New_York", "2026-03-08", "02:30", "2026-03-07 23:00", "2026-03-08 06:00"),
    ("Australia/Lord_Howe", "2026-10-04", "18:00", "2026-10-03 07:30", "2026-10-04 06:00"),
    ("Australia/Lord_Howe", "2026-10-05", "18:00", "2026-10-04 07:00", "2026-10-05 06:00"),
    ("Australia/Lord_Howe", "2026-10-04", "02:15", "2026-10-03 07:30", "2026-10-03 14:30"),
    ("Africa/Casablanca", "2026-03-22", "18:00", "2026-03-21 18:00", "2026-03-22 16:00"),
    ("Africa/Casablanca", "2026-03-23", "18:00", "2026-03-22 17:00", "2026-03-23 16:00"),
    ("Africa/Casablanca", "2026-03-22", "02:30", "2026-03-21 18:00", "2026-03-22 01:00"),
    # The clocks go back: the same, then a squat time that comes twice (the first), then one an hour after it.
    ("Europe/Lisbon", "2026-10-25", "18:00", "2026-10-24 17:00", "2026-10-25 17:00"),
    ("Europe/Lisbon", "2026-10-26", "18:00", "2026-10-25 18:00", "2026-10-26 17:00"),
    ("Europe/Lisbon", "2026-10-25", "01:30", "2026-10-24 17:00", "2026-10-24 23:30"),
    ("Europe/Lisbon", "2026-10-25", "02:30", "2026-10-24 17:00", "2026-10-25 01:30"),
    ("America/New_York", "2026-11-01", "18:00", "2026-10-31 22:00", "2026-11-01 22:00"),
    ("America/New_York", "2026-11-02", "18:00", "2026-11-01 23:00", "2026-11-02 22:00"),
    ("America/New_York", "2026-11-01", "01:30", "2026-10-31 22:00", "2026-11-01 04:30"),
    ("Australia/Lord_Howe", "2026-04-05", "18:00", "2026-04-04 07:00", "2026-04-05 06:30"),
    ("Australia/Lord_Howe", "2026-04-06", "18:00", "2026-04-05 07:30", "2026-04-06 06:30"),
    ("Australia/Lord_Howe", "2026-04-05", "01:45", "2026-04-04 07:00", "2026-04-04 13:45"),
    ("Africa/Casablanca", "2026-02-15", "18:00", "2026-02-14 17:00", "2026-02-15 17:00"),
    ("Africa/Casablanca", "2026-02-16", "18:00", "2026-02-15 18:00", "2026-02-16 17:00"),
    ("Africa/Casablanca", "2026-02-15", "02:30", "2026-02-14 17:00", "2026-02-15 00:30"),
    ("UTC+05:30", "2026-03-29", "18:00", "2026-03-28 12:30", "2026-03-29 11:30"),
    ("UTC+05:30", "2026-10-25", "18:00", "2026-10-24 12:30", "2026-10-25 11:30"),
])
def test_a_prompt_comes_the_evening_before_by_the_wall_clock_or_an_hour_before(zone, day, at, evening, hour_before):
    squat = SquatDay(date.fromisoformat(day), time.fromisoformat(at))
    assert prompt_at(squat, Preferences(quiet=NEVER_QUIET), zone) == utc(evening)
    assert prompt_at(squat, Preferences(before=1, quiet=NEVER_QUIET), zone) == utc(hour_before)


@each_row(("zone", "squatted", "asked", "over"), [
    ("Europe/Lisbon", "2026-03-28", "2026-03-29 08:00", "2026-03-29 23:00"),
    ("Europe/Lisbon", "2026-10-24", "2026-10-25 09:00", "2026-10-26 00:00"),
    ("America/New_York", "2026-03-07", "2026-03-08 13:00", "2026-03-09 04:00"),
    ("America/New_York", "2026-10-31", "2026-11-01 14:00", "2026-11-02 05:00"),
    ("Australia/Lord_Howe", "2026-04-04", "2026-04-04 22:30", "2026-04-05 13:30"),
    ("Australia/Lord_Howe", "2026-10-03", "2026-10-03 22:00", "2026-10-04 13:00"),
    ("Africa/Casablanca", "2026-02-14", "2026-02-15 09:00", "2026-02-16 00:00"),
    ("Africa/Casablanca", "2026-03-21", "2026-03-22 08:00", "2026-03-22 23:00"),
    ("UTC+05:30", "2026-03-21", "2026-03-22 03:30", "2026-03-22 18:30"),
])
def test_a_follow_up_comes_at_nine_next_morning_and_is_stale_at_that_days_end(zone, squatted, asked, over):
    squat = SquatDay(date.fromisoformat(squatted), time(18))
    assert follow_up_at(squat, Preferences(), zone) == utc(asked)
    assert follow_up_stale_at(squat, zone) == utc(over)


def the_prompt(squat: str, quiet: tuple[time, time] = Preferences().quiet, before: int = 0, evening: time = time(18)) -> str:
    """The prompt for a squat on Wednesday 10 June 2026, in UTC, as "day hour:minute"."""
    at = prompt_at(SquatDay(date(2026, 6, 10), time.fromisoformat(squat)), Preferences(before, evening, quiet), "UTC")
    return f"{at:%a %H:%M}"


def test_quiet_hours_hold_a_prompt_back_to_their_end():
    assert the_prompt("10:00", before=2) == "Wed 09:00"
    assert the_prompt("09:30", before=2) == "Wed 09:00"
    assert the_prompt("18:00", evening=time(21)) == "Wed 09:00"
    assert the_prompt("18:00", before=2) == "Wed 16:00"


def test_who_squats_before_quiet_hours_are_over_hears_of_it_before_they_begin():
    assert the_prompt("06:30", before=2) == "Tue 19:45"
    assert the_prompt("09:29", before=2) == "Tue 19:45"
    assert the_prompt("06:30", evening=time(22)) == "Tue 19:45"
    assert the_prompt("23:30", before=1) == "Wed 19:45"


def test_quiet_hours_that_leave_little_open_leave_a_prompt_in_it():
    almost_all = (time(0), time(23))
    assert the_prompt("18:00", almost_all) == "Tue 23:00"
    assert the_prompt("18:00", almost_all, before=2) == "Tue 23:45"
    assert the_prompt("18:00", (time(0), time(23, 55)), before=2) == "Tue 23:55"
    assert the_prompt("23:58", (time(0), time(23, 55))) == "Tue 23:55"


def test_quiet_hours_hold_a_follow_up_back_or_bring_it_forward_within_the_next_day():
    squat = SquatDay(date(2026, 6, 10), time(18))
    for quiet, asked in (((20, 9), "Thu 09:00"), ((20, 11), "Thu 11:00"), ((0, 0), "Thu 09:00"), ((0, 23), "Thu 23:00"),
                         ((8, 7), "Thu 07:45"), ((9, 0), "Thu 08:45")):
        at = follow_up_at(squat, Preferences(quiet=(time(quiet[0]), time(quiet[1]))), "UTC")
        assert f"{at:%a %H:%M}" == asked


def test_a_follow_up_that_a_clock_change_leaves_no_time_for_comes_out_stale():
    """Cairo's clocks skip 00:00-01:00 on 24 April 2026, the only hour these quiet hours would leave open."""
    squat, wishes = SquatDay(date(2026, 4, 23), time(18)), Preferences(quiet=(time(1), time(0)))
    assert follow_up_at(squat, wishes, "Africa/Cairo") >= follow_up_stale_at(squat, "Africa/Cairo")


@each_row(("begin", "end", "moment", "over"), [
    ("20:00", "01:30", "2026-10-25 00:15", "2026-10-25 01:30"),  # 01:15 comes twice: quiet until the second 01:30
    ("20:00", "01:30", "2026-10-25 00:45", "2026-10-25 01:30"),
    ("01:30", "09:00", "2026-10-25 01:15", "2026-10-25 09:00"),  # they have begun with the first 01:30
    ("20:00", "01:30", "2026-03-29 00:30", "2026-03-29 01:00"),  # their end does not exist: the first time that does
    ("20:00", "09:00", "2026-03-28 20:00", "2026-03-29 08:00"),
    ("20:00", "09:00", "2026-03-29 08:00", "2026-03-29 08:00"),
    ("20:00", "09:00", "2026-03-28 19:59", "2026-03-28 19:59"),
    ("08:00", "08:00", "2026-03-28 08:00", "2026-03-28 08:00"),  # the same time twice: never quiet
    ("01:30", "01:30", "2026-10-25 00:45", "2026-10-25 00:45"),
])
def test_quiet_hours_end_by_the_wall_clock(begin, end, moment, over):
    wishes = Preferences(quiet=(time.fromisoformat(begin), time.fromisoformat(end)))
    assert after_quiet(utc(moment), wishes, "Europe/Lisbon") == utc(over)
    assert is_quiet(utc(moment), wishes, "Europe/Lisbon") == (moment != over)


def test_where_a_clock_change_skips_all_that_is_open_the_day_before_or_after_serves():
    """Cairo's clocks skip 00:00-01:00 on 24 April 2026; these quiet hours leave open 00:00-00:30."""
    wishes, zone = Preferences(before=2, quiet=(time(0, 30), time(0))), "Africa/Cairo"
    assert after_quiet(utc("2026-04-23 09:00"), wishes, zone) == utc("2026-04-24 21:00")
    assert prompt_at(SquatDay(date(2026, 4, 24), time(18)), wishes, zone) == utc("2026-04-22 22:15")


def test_an_evening_just_before_a_squat_at_midnight_leaves_a_quarter_hour():
    assert the_prompt("00:00", NEVER_QUIET, evening=time(23, 59)) == "Tue 23:45"


@given(SQUATS, WISHES, ANYWHERE)
@example(SquatDay(date(2026, 3, 29), time(1, 30)), Preferences(1, time(18), (time(1, 30), time(1))), "Europe/Lisbon")
@example(SquatDay(date(2026, 4, 24), time(0, 30)), Preferences(1, time(0, 30), (time(1), time(0))), "Africa/Cairo")
@example(SquatDay(date(2026, 3, 29), time(0)), Preferences(0, time(23, 30), NEVER_QUIET), "America/Scoresbysund")
def test_a_prompt_is_never_in_quiet_hours_and_always_before_the_squat_time(squat, wishes, zone):
    at = prompt_at(squat, wishes, zone)
    assert at < stale_at(squat, zone)
    assert not is_quiet(at, wishes, zone)
    assert wishes.quiet[0] == wishes.quiet[1] or not shows_quiet(at, wishes, zone)


@given(SQUATS, WISHES, ANYWHERE)
def test_a_prompt_is_at_the_time_asked_for_or_as_quiet_hours_allow(squat, wishes, zone):
    at, starts = prompt_at(squat, wishes, zone), stale_at(squat, zone)
    evening = min(instant(squat.day - timedelta(days=1), wishes.evening, zone), starts - LAST_QUARTER)
    asked = starts - timedelta(hours=wishes.before) if wishes.before else evening
    if not is_quiet(asked, wishes, zone):
        assert at == asked
    elif at > asked:
        assert is_quiet(at - timedelta(seconds=1), wishes, zone)
        assert starts - at >= LEAST_NOTICE
    else:
        assert is_quiet(at + LAST_QUARTER, wishes, zone)
        assert starts - after_quiet(asked, wishes, zone) < LEAST_NOTICE


@given(SQUATS, WISHES, ANYWHERE)
def test_a_follow_up_is_after_squatting_and_never_in_quiet_hours(squat, wishes, zone):
    at = follow_up_at(squat, wishes, zone)
    assert at > stale_at(squat, zone)
    assert not is_quiet(at, wishes, zone)
    assert local_date(at, zone) == squat.day + timedelta(days=1) or at >= follow_up_stale_at(squat, zone)


@given(CHANGE_DAYS, TIMES, WISHES, ANYWHERE)
def test_quiet_hours_hold_all_that_the_clock_shows_in_them_and_end_once(day, at, wishes, zone):
    moment = instant(day, at, zone)
    over = after_quiet(moment, wishes, zone)
    assert (over == moment) == (not is_quiet(moment, wishes, zone))
    assert not is_quiet(over, wishes, zone)
    if over > moment:
        assert is_quiet(over - timedelta(seconds=1), wishes, zone)
        assert is_quiet(moment + (over - moment) / 2, wishes, zone)
    if wishes.quiet[0] != wishes.quiet[1] and shows_quiet(moment, wishes, zone):
        assert is_quiet(moment, wishes, zone)


@given(PLANS, WISHES, ANYWHERE, st.sampled_from((utc("2026-02-10 12:00"), utc("2026-03-25 17:30"), utc("2026-10-20 20:00"))))
@example(Plan(weekly=((0, time(22)), (1, time(6, 30)), (2, time(21, 50)), (3, time(6)))), Preferences(before=2), "UTC",
         utc("2026-06-06 12:00"))
def test_going_from_prompt_to_prompt_tells_of_each_day_once(plan, wishes, zone, now):
    wanted = list(islice(prompts(plan, wishes, zone, now), 12))
    told: list[date] = []
    moments: list[datetime] = []
    while len(told) < len(wanted) + 1 and (found := next_prompt(plan, wishes, zone, now, frozenset(told))):
        squat, now = found
        told.append(squat.day)
        moments.append(now)
    assert len(set(told)) == len(told)
    assert moments == sorted(moments)
    assert {squat.day for squat, _ in wanted[:-1]} <= set(told)


def test_a_day_whose_prompt_time_has_passed_is_not_told_of():
    plan, noon = Plan(weekly=((1, time(18)), (4, time(18)))), utc("2026-12-01 12:00")  # a Tuesday
    assert next_prompt(plan, Preferences(), "UTC", noon) == (SquatDay(date(2026, 12, 4), time(18)), utc("2026-12-03 18:00"))
    assert next_prompt(plan, Preferences(before=2), "UTC", noon) == (SquatDay(date(2026, 12, 1), time(18)), utc("2026-12-01 16:00"))
    assert next_prompt(plan, Preferences(before=2), "UTC", noon, {date(2026, 12, 1)}) == (
        SquatDay(date(2026, 12, 4), time(18)), utc("2026-12-04 16:00"))
    assert next_prompt(Plan(single=((date(2026, 12, 1), time(18)),)), Preferences(), "UTC", noon) is None


@given(WISHES)
def test_wishes_are_kept_as_text_whole(wishes):
    assert Preferences.loads(wishes.dumps()) == wishes


@each_row("text", ["", "0", "25 18:00 20:00 09:00", "-1 18:00 20:00 09:00", "0 18:00 20:00", "0 18:00 20:00 9am",
                                  "0 18:00+01:00 20:00 09:00", "0 18:00 20:00 09:00 10:00"])
def test_a_text_that_is_no_wishes_keeps_the_night_quiet(text):
    assert Preferences.loads(text) == Preferences()


@each_row(("plan", "words"), [
    (Plan(weekly=((1, time(18)), (4, time(18)))), "Every Tuesday and Friday at 18:00"),
    (Plan(weekly=((0, time(7)), (2, time(7)), (4, time(7)))), "Every Monday, Wednesday and Friday at 07:00"),
    (Plan(weekly=((1, time(18)), (5, time(10)))), "Tuesday at 18:00, Saturday at 10:00"),
    (Plan(weekly=((0, time(18)), (2, time(10)), (4, time(18)))), "Monday and Friday at 18:00, Wednesday at 10:00"),
    (Plan(weekly=tuple((day, time(18)) for day in range(7))), "Every day at 18:00"),
    (Plan(every=1, start=date(2026, 12, 1), at=time(18)), "Every day at 18:00"),
    (Plan(every=2, start=date(2026, 12, 1), at=time(18)), "Every other day at 18:00"),
    (Plan(every=3, start=date(2026, 12, 1), at=time(18)), "Every 3 days at 18:00"),
    (Plan(single=((date(2026, 12, 1), time(18)),)), "No regular squat days"),
])
def test_a_plan_in_words(plan, words):
    assert plan_words(plan) == words


def test_a_day_in_words():
    squat = SquatDay(date(2026, 12, 1), time(18))
    assert day_words(squat, date(2026, 12, 1)) == "today, 18:00"
    assert day_words(squat, date(2026, 11, 30)) == "tomorrow, 18:00"
    assert day_words(squat, date(2026, 11, 29)) == "Tuesday 1 December, 18:00"
    assert date_words(squat.day, date(2026, 1, 1)) == "Tuesday 1 December 2026"
