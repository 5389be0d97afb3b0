"""Which days are squat days: by hand, and against dateutil's recurrence sets."""

from datetime import date, datetime, time, timedelta

from dateutil.rrule import DAILY, FR, MO, SA, SU, TH, TU, WE, WEEKLY, rrule, rruleset
from hypothesis import given
from hypothesis import strategies as st

from companion.calendar.plan import (
    LONGEST_GAP,
    PAUSES_KEPT,
    SINGLE_DAYS_KEPT,
    Away,
    EveryNDays,
    MoveDay,
    On,
    Pause,
    Plan,
    Skip,
    SquatDay,
    Stay,
    StopAll,
    Weekly,
    change_of,
    changed,
    is_squat_day,
    next_days,
    squat_days,
)
from tests.calendar.plans import DAYS, END, PLANS, START, TEN_YEARS, TIMES, until
from tests.table import each_row

TUESDAYS_AND_FRIDAYS = Plan(weekly=((1, time(18)), (4, time(18))))
TUESDAY = date(2026, 12, 1)

CHANGES = (st.dictionaries(st.integers(0, 6), TIMES, min_size=1).map(lambda days: Weekly(tuple(sorted(days.items()))))
           | st.builds(EveryNDays, st.integers(1, LONGEST_GAP), TIMES, DAYS) | st.builds(On, DAYS, TIMES) | st.builds(Skip, DAYS)
           | st.builds(MoveDay, DAYS, DAYS, TIMES) | st.builds(Pause, DAYS) | st.builds(Away, DAYS, DAYS) | st.builds(Stay, DAYS)
           | st.just(StopAll()))


def by_dateutil(plan: Plan) -> list[SquatDay]:
    """The same plan as a recurrence set of dateutil, an rrule a weekday, times in it (not only dates)."""
    rules, single = rruleset(), rruleset()
    given_by_rule = {}
    if plan.every:
        rules.rrule(rrule(DAILY, interval=plan.every, dtstart=datetime.combine(plan.start, plan.at)))
        given_by_rule = dict.fromkeys(range(7), plan.at)
    for day, at in plan.weekly:
        rules.rrule(rrule(WEEKLY, byweekday=(MO, TU, WE, TH, FR, SA, SU)[day], dtstart=datetime.combine(START - timedelta(40), at)))
        given_by_rule[day] = at
    for day, _ in plan.single:
        if day.weekday() in given_by_rule:
            rules.exdate(datetime.combine(day, given_by_rule[day.weekday()]))
    for day, at in plan.single:
        if at:
            single.rdate(datetime.combine(day, at))
    for first, over in plan.away:
        for at in {*given_by_rule.values(), *(at for _, at in plan.single if at)}:
            gone = rrule(DAILY, dtstart=datetime.combine(first, at), until=datetime.combine(over, time()) - timedelta(minutes=1))
            rules.exrule(gone)
            single.exrule(gone)
    span = datetime.combine(max(START, plan.back_on or START), time()), datetime.combine(END, time())
    rows = [*rules.between(*span, inc=True), *single.between(*span, inc=True)]
    return [SquatDay(row.date(), row.time()) for row in sorted(rows) if row.date() < END]


@given(PLANS)
@TEN_YEARS
def test_ten_years_of_any_plan_are_those_of_a_dateutil_recurrence_set(plan):
    assert until(plan, END) == by_dateutil(plan)


@given(PLANS, DAYS)
def test_the_days_from_any_date_on_are_the_rest_of_them_and_each_comes_once(plan, since):
    found = next_days(plan, since, 30)
    assert [squat.day for squat in found] == sorted({squat.day for squat in found})
    assert all(squat.day >= since for squat in found)
    if len(found) > 3:
        assert next_days(plan, found[2].day, 28) == found[2:]
        assert is_squat_day(plan, found[2].day)


@given(PLANS)
def test_a_plan_is_kept_as_text_whole(plan):
    assert Plan.loads(plan.dumps()) == plan


@given(CHANGES)
def test_a_change_is_kept_as_text_whole(change):
    assert change_of(str(change)) == change


@given(st.text() | CHANGES.map(str).flatmap(lambda text: st.integers(0, len(text)).map(lambda cut: text[:cut] + text[cut + 1:])))
def test_a_text_from_anywhere_is_a_change_that_can_be_kept_or_none(text):
    change = change_of(text)
    assert change is None or change_of(str(change)) == change


@each_row("text", ["", "weekly", "weekly MO", "weekly XX=18:00", "every 0 18:00 2026-12-01", "every 15 18:00 2026-12-01",
                                  "on 2026-02-30 18:00", "skip", "move 2026-12-01", "pause tomorrow",
                                  "away 2026-12-01", "away 9999-12-30 9999-12-31", "stay", "stop it", "weekly MO=25:00",
                                  "on 2026-12-01 18:00+01:00", "weekly MO=18:00Z", "every 2 18:00+01:00 2026-12-01",
                                  "skip 0001-01-01", "pause 9999-12-31", "on 2026-12-01 18:00:30"])
def test_a_text_that_is_no_change_is_none(text):
    assert change_of(text) is None


def test_a_day_left_out_moved_added_or_at_another_time():
    plan = TUESDAYS_AND_FRIDAYS
    for change in (Skip(date(2026, 12, 4)), MoveDay(date(2026, 12, 8), date(2026, 12, 9), time(7)), On(date(2026, 12, 12), time(10)),
                   On(date(2026, 12, 11), time(19))):
        plan = changed(plan, change)
    assert next_days(plan, TUESDAY, 5) == [
        SquatDay(TUESDAY, time(18)), SquatDay(date(2026, 12, 9), time(7)), SquatDay(date(2026, 12, 11), time(19)),
        SquatDay(date(2026, 12, 12), time(10)), SquatDay(date(2026, 12, 15), time(18))]


def test_a_day_moved_to_itself_is_at_the_new_time():
    plan = changed(TUESDAYS_AND_FRIDAYS, MoveDay(TUESDAY, TUESDAY, time(7)))
    assert next_days(plan, TUESDAY, 1) == [SquatDay(TUESDAY, time(7))]


def test_midnight_is_a_time():
    plan = Plan.loads(changed(TUESDAYS_AND_FRIDAYS, On(date(2026, 12, 2), time(0))).dumps())
    assert next_days(plan, TUESDAY, 2)[1] == SquatDay(date(2026, 12, 2), time(0))


def test_every_other_day_keeps_its_beat_across_a_pause():
    plan = changed(Plan(every=2, start=TUESDAY, at=time(18)), Pause(date(2026, 12, 10)))
    assert [squat.day.day for squat in next_days(plan, TUESDAY, 3)] == [11, 13, 15]


def test_a_pause_that_has_passed_changes_nothing():
    assert next_days(changed(TUESDAYS_AND_FRIDAYS, Pause(TUESDAY)), TUESDAY, 9) == next_days(TUESDAYS_AND_FRIDAYS, TUESDAY, 9)


def test_a_pause_that_begins_later_takes_its_days_and_no_other():
    plan = changed(TUESDAYS_AND_FRIDAYS, Away(date(2026, 12, 8), date(2026, 12, 15)))
    assert [squat.day.day for squat in next_days(plan, TUESDAY, 4)] == [1, 4, 15, 18]
    assert not is_squat_day(plan, date(2026, 12, 8))
    assert is_squat_day(plan, date(2026, 12, 15))
    assert plan.paused_until(date(2026, 12, 10)) == date(2026, 12, 15)
    assert plan.paused_until(date(2026, 12, 15)) is None


def test_pauses_that_meet_are_one():
    plan = Plan(back_on=date(2026, 12, 3), away=((date(2026, 12, 3), date(2026, 12, 9)), (date(2026, 12, 8), date(2026, 12, 20))))
    assert plan.paused_until(TUESDAY) == date(2026, 12, 20)


def test_a_day_added_by_hand_within_a_pause_is_none():
    plan = changed(changed(TUESDAYS_AND_FRIDAYS, On(date(2026, 12, 9), time(7))), Away(date(2026, 12, 8), date(2026, 12, 15)))
    assert not is_squat_day(plan, date(2026, 12, 9))


def test_a_pause_told_again_has_its_new_end_and_one_taken_back_is_gone():
    plan = changed(TUESDAYS_AND_FRIDAYS, Away(date(2026, 12, 8), date(2026, 12, 15)))
    assert changed(plan, Away(date(2026, 12, 8), date(2026, 12, 10))).away == ((date(2026, 12, 8), date(2026, 12, 10)),)
    assert changed(plan, Stay(date(2026, 12, 8))) == TUESDAYS_AND_FRIDAYS
    assert changed(plan, Stay(date(2026, 12, 9))) == plan
    assert changed(plan, Away(date(2026, 12, 8), date(2026, 12, 8))) == TUESDAYS_AND_FRIDAYS


def test_a_pause_that_ends_takes_the_pauses_that_have_begun_and_leaves_those_to_come():
    plan = changed(changed(TUESDAYS_AND_FRIDAYS, Away(TUESDAY, date(2026, 12, 15))), Away(date(2027, 1, 5), date(2027, 1, 9)))
    ended = changed(plan, Pause(TUESDAY))
    assert is_squat_day(ended, TUESDAY)
    assert ended.away == ((date(2027, 1, 5), date(2027, 1, 9)),)


def test_a_new_rule_keeps_the_pauses_to_come_and_stopping_none():
    plan = changed(TUESDAYS_AND_FRIDAYS, Away(date(2026, 12, 8), date(2026, 12, 15)))
    for rule in (Weekly(((0, time(7)),)), EveryNDays(2, time(18), TUESDAY)):
        assert changed(plan, rule).away == plan.away
    assert changed(plan, StopAll()) == Plan()


def test_a_plan_kept_before_pauses_had_a_beginning_is_read_as_it_was():
    kept = '{"weekly":{"TU":"18:00","FR":"18:00"},"single":{"2026-12-04":""},"back_on":"2026-12-03"}'
    assert Plan.loads(kept) == Plan(TUESDAYS_AND_FRIDAYS.weekly, single=((date(2026, 12, 4), None),), back_on=date(2026, 12, 3))
    assert Plan.loads(kept).dumps() == kept


def test_old_pauses_make_room_for_new_ones():
    plan = Plan()
    for week in range(PAUSES_KEPT + 3):
        plan = changed(plan, Away(TUESDAY + timedelta(weeks=week), TUESDAY + timedelta(weeks=week, days=2)))
    assert len(plan.away) == PAUSES_KEPT
    assert plan.away[0][0] == TUESDAY + timedelta(weeks=3)


def test_a_new_rule_and_stopping_take_all_before_away():
    plan = changed(changed(TUESDAYS_AND_FRIDAYS, On(TUESDAY, time(7))), Pause(date(2027, 1, 1)))
    assert changed(plan, EveryNDays(2, time(18), TUESDAY)) == Plan(every=2, start=TUESDAY, at=time(18))
    assert changed(plan, StopAll()) == Plan()
    assert list(squat_days(Plan(), TUESDAY)) == []
    assert Plan.loads("") == Plan()


def test_single_days_alone_end_and_no_rule_stands_behind_them():
    plan = changed(Plan(), On(TUESDAY, time(18)))
    assert plan.empty
    assert list(squat_days(plan, START)) == [SquatDay(TUESDAY, time(18))]
    assert not is_squat_day(plan, TUESDAY - timedelta(days=1))


def test_old_single_days_make_room_for_new_ones():
    plan = Plan()
    for ahead in range(SINGLE_DAYS_KEPT + 5):
        plan = changed(plan, On(TUESDAY + timedelta(days=ahead), time(18)))
    assert len(plan.single) == SINGLE_DAYS_KEPT
    assert plan.single[0][0] == TUESDAY + timedelta(days=5)
