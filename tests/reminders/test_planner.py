"""From plan to open reminders, on a real file: by example, and by whatever a lifter may do in any order."""

from __future__ import annotations

import asyncio
import tempfile
from datetime import date, time, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from companion.base.clock import local_date
from companion.calendar.plan import Away, EveryNDays, MoveDay, On, Pause, Plan, Skip, StopAll, Weekly, is_squat_day, next_days
from companion.calendar.preferences import answered_until, away_until, plan_from, preferences_from, prompted, zone_from
from companion.calendar.prompts import Preferences, follow_up_at, is_quiet, next_prompt, prompt_at
from companion.conversation.effects import Remind
from companion.record import reminders
from companion.record.timestamps import moment_of
from tests.reminders.build import LISBON, MONDAY, NEVER_QUIET, TUESDAYS, Gym, at, weekly
from tests.rows import keep

# by example -------------------------------------------------------------------------------------------------


async def test_a_plan_has_one_prompt_and_one_follow_up_open(gym):
    gym.lifter()
    assert [(row.kind, row.day, row.due) for row in gym.rows(state="open")] == [
        ("squat_day", "2026-06-02", at("2026-06-01 17:00")), ("squat_after", "2026-06-02", at("2026-06-03 08:00"))]


async def test_a_reminder_for_a_date_comes_at_ten_unless_an_hour_is_named(gym):
    person = gym.lifter(plan=Plan())
    wanted = [Remind("retest", "retest", "2026-06-20"), Remind("morning", "morning", "2026-06-03", hour=9)]
    keep(gym.db, person, wanted, gym.clock.at, LISBON)
    assert sorted((row.kind, row.due) for row in gym.rows(state="open")) == [
        ("morning", at("2026-06-03 08:00")), ("retest", at("2026-06-20 09:00"))]  # Lisbon is an hour ahead in June


async def test_a_plan_changed_a_hundred_times_leaves_two_open(gym):
    person = gym.lifter()
    for time_of_day in range(100):
        gym.change(person, weekly("14", f"{time_of_day % 24:02}:00"))
    assert len(gym.rows(state="open")) == 2


async def test_planning_the_same_again_writes_nothing(gym):
    person = gym.lifter(zone__away="America/New_York", zone__until="2026-06-07")
    before = gym.rows()
    gym.clock.at += timedelta(minutes=5)
    gym.tell(person)
    assert gym.rows() == before


async def test_without_a_plan_nothing_is_open(gym):
    gym.lifter(plan=Plan())
    assert gym.rows() == []


async def test_who_sets_up_after_the_moment_of_the_prompt_has_none_for_that_day_but_a_follow_up(gym):
    gym.clock.at = at("2026-06-01 18:00")
    gym.lifter()
    assert gym.next().day == "2026-06-09"
    assert gym.next("squat_after").day == "2026-06-02"


async def test_a_day_that_was_over_when_the_plan_was_made_is_not_asked_about(gym):
    gym.clock.at = at("2026-06-02 18:00")
    gym.lifter()
    assert gym.next("squat_after").day == "2026-06-09"


async def test_told_early_in_the_day_its_prompt_and_follow_up_go(gym):
    person = gym.lifter(wishes=Preferences(before=2))
    gym.clock.at = at("2026-06-02 10:00")
    gym.tell(person, squat__answered="2026-06-02")
    assert {row.day for row in gym.rows(state="open")} == {"2026-06-09"}


@pytest.mark.parametrize(("change", "prompt"), [
    (Skip(date(2026, 6, 2)), "2026-06-08 17:00"), (MoveDay(date(2026, 6, 2), date(2026, 6, 5), time(10)), "2026-06-04 17:00"),
    (On(date(2026, 6, 4), time(12)), "2026-06-01 17:00"), (On(date(2026, 6, 2), time(7)), "2026-06-01 17:00"),
    (Away(date(2026, 6, 2), date(2026, 7, 1)), "2026-07-06 17:00"), (Away(date(2026, 6, 3), date(2026, 7, 1)), "2026-06-01 17:00"),
    (Pause(date(2026, 7, 1)), "2026-07-06 17:00"), (EveryNDays(2, time(18), date(2026, 6, 3)), "2026-06-02 17:00"), (StopAll(), None)])
async def test_a_change_of_plan_moves_the_prompt_at_once(gym, change, prompt):
    person = gym.lifter()
    gym.change(person, change)
    assert [row.due for row in gym.rows("squat_day", "open")] == ([at(prompt)] if prompt else [])


async def test_a_change_of_wishes_moves_the_prompt_at_once(gym):
    person = gym.lifter()
    gym.tell(person, squat__wishes=Preferences(before=4).dumps())
    assert gym.next().due == at("2026-06-02 13:00")


async def test_of_two_days_the_file_holds_that_each_is_told_of_once(gym):
    person = gym.lifter()
    one = gym.next()
    assert reminders.settle(gym.db, one.id, "sent", gym.now())
    reminders.add(gym.db, person, "squat_day", "squat_day", "2026-06-01 17:00", "UTC", gym.now(), gym.now(), "2026-06-02")
    assert not reminders.settle(gym.db, gym.next().id, "sent", gym.now())
    assert [row.state for row in gym.rows("squat_day")] == ["sent", "replaced"]


async def test_who_was_put_off_to_the_morning_keeps_the_prompt_however_often_it_is_planned_anew(gym):
    person = gym.lifter()
    gym.clock.at = at("2026-06-01 21:00")
    await gym.sweep()
    for _ in range(3):
        gym.clock.at += timedelta(hours=1)
        gym.change(person, On(date(2026, 7, 4), time(18)))
    assert (gym.next().day, gym.next().due) == ("2026-06-02", at("2026-06-02 08:00"))
    gym.change(person, Skip(date(2026, 6, 2)))
    assert gym.next().day == "2026-06-09"


# whatever they do -------------------------------------------------------------------------------------------

CLOCK = st.sampled_from([time(0), time(0, 30), time(6, 30), time(7), time(12), time(18), time(21), time(23, 59)])
ZONES = ("Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "Africa/Casablanca")
WISHES = st.builds(Preferences, st.sampled_from([0, 0, 2, 12, 24]), CLOCK,
                   st.sampled_from([Preferences().quiet, NEVER_QUIET, (time(22), time(6)), (time(1), time(23))]))
DOES = st.one_of(
    st.tuples(st.just("time"), st.sampled_from([0.1, 0.5, 1, 3, 5, 8, 11, 14, 26, 50, 200])),
    st.tuples(st.just("time"), st.sampled_from([0.5, 1, 2, 3, 5])),
    st.tuples(st.just("weekly"), st.dictionaries(st.integers(0, 6), CLOCK, min_size=1, max_size=7)),
    st.tuples(st.just("every"), st.tuples(st.integers(1, 3), CLOCK, st.integers(-3, 3))),
    st.tuples(st.just("on"), st.tuples(st.integers(0, 4), CLOCK)),
    st.tuples(st.sampled_from(["skip", "undo", "stop", "sweeps", "hurt", "told", "told yesterday", "blocked", "writes"]), st.none()),
    st.tuples(st.just("move"), st.tuples(st.integers(-1, 3), CLOCK)),
    st.tuples(st.just("pause"), st.integers(0, 6)),
    st.tuples(st.just("pause later"), st.tuples(st.integers(-1, 9), st.integers(0, 9))),
    st.tuples(st.just("away"), st.tuples(st.sampled_from(ZONES), st.none() | st.integers(0, 5))),
    st.tuples(st.just("wishes"), WISHES),
    st.tuples(st.just("level"), st.sampled_from(["go", "no_load", "not_today", "clinician"])),
    st.tuples(st.just("prompts"), st.sampled_from(["yes", "no", "no"])),
)


class Watched:
    """One lifter whose every move is checked."""

    def __init__(self, gym: Gym, zone: str, plan: Plan, wishes: Preferences) -> None:
        self.gym, self.seen, self.before = gym, 0, plan
        self.person = gym.lifter("sam", plan, wishes, welcome__zone=zone)

    async def does(self, what: str, how) -> None:
        gym, person = self.gym, self.person
        today, plan = local_date(gym.now(), self.zone), plan_from(gym.facts(person))
        following = next_days(plan, today, 1)
        match what:
            case "time":
                gym.clock.at += timedelta(hours=how)
                await gym.companion.sweep()
                assert not [row for row in gym.rows(state="open") if row.due <= gym.now()] or self.gone
            case "sweeps":
                await asyncio.gather(gym.companion.sweep(), gym.companion.sweep())
            case "weekly":
                gym.change(person, Weekly(tuple(sorted(how.items()))))
            case "every":
                gym.change(person, EveryNDays(how[0], how[1], today + timedelta(days=how[2])))
            case "on":
                gym.change(person, On(today + timedelta(days=how[0]), how[1]))
            case "skip" if following:
                gym.change(person, Skip(following[0].day))
            case "move" if following:
                gym.change(person, MoveDay(following[0].day, following[0].day + timedelta(days=how[0]), how[1]))
            case "undo":
                gym.tell(person, squat__plan=self.before.dumps())
            case "stop":
                gym.change(person, StopAll())
            case "pause":
                gym.change(person, Pause(today + timedelta(days=how)))
            case "pause later":
                gym.change(person, Away(today + timedelta(days=how[0]), today + timedelta(days=how[0] + how[1])))
            case "away":
                zone, days = how
                gym.tell(person, zone__away=zone, zone__until="" if days is None else (today + timedelta(days=days)).isoformat())
            case "wishes":
                gym.tell(person, squat__wishes=how.dumps())
            case "level":
                gym.tell(person, safety__level=how)
            case "prompts":
                gym.tell(person, squat__no_prompts=how)
            case "told" | "told yesterday":
                gym.tell(person, squat__answered=(today - timedelta(days=what != "told")).isoformat())
            case "hurt":
                gym.tell(person, safety__level="not_today")
                gym.invite(person, "morning", gym.now() + timedelta(hours=15), gym.now() + timedelta(hours=30))
            case "blocked":
                gym.db.execute("update addresses set gone_at = 'now'")
            case "writes":
                await gym.write("sam", "menu")
                await gym.listen()
        if what in ("weekly", "every", "on", "skip", "move", "pause", "pause later"):
            self.before = plan
        self.check()

    @property
    def zone(self) -> str:
        return zone_from(self.gym.facts(self.person), self.gym.now())

    @property
    def gone(self) -> bool:
        return self.gym.db.execute("select 1 from addresses where gone_at is not null").fetchone() is not None

    def check(self) -> None:
        facts, now = self.gym.facts(self.person), self.gym.now()
        plan, wishes, zone = plan_from(facts), preferences_from(facts), zone_from(facts, now)
        rows = self.gym.rows()
        for kind in ("squat_day", "squat_after"):
            sent = [row.day for row in rows if (row.kind, row.state) == (kind, "sent")]
            assert len(sent) == len(set(sent))
        self._messages(plan, wishes, zone)
        opened = {row.kind: row for row in rows if row.state == "open"}
        assert len(opened) == len([row for row in rows if row.state == "open"])
        home = opened.get("home_again")
        assert (home and home.due) == away_until(facts, now) or (home and home.due <= now and self.gone)
        if not prompted(facts):
            assert not opened.keys() & {"squat_day", "squat_after"}
            return
        self._before(opened.get("squat_day"), plan, wishes, zone)
        if after := opened.get("squat_after"):
            (squat, *_) = [*next_days(plan, date.fromisoformat(after.day), 1)] or [None]
            on_plan = squat is not None and squat.day.isoformat() == after.day
            assert on_plan or after.day <= local_date(now, zone).isoformat()
            assert not (done := answered_until(facts)) or after.day > done.isoformat()
            if squat and on_plan and after.due > now and not is_put_off(after, self.gym):
                assert after.due == follow_up_at(squat, wishes, zone)

    def _before(self, row, plan: Plan, wishes: Preferences, zone: str) -> None:
        """The open prompt is the one that the plan gives, or one whose moment is over and that still waits."""
        now, done = self.gym.now(), answered_until(self.gym.facts(self.person))
        told = reminders.settled_days(self.gym.db, self.person, "squat_day", now) | ({done} if done else set())
        following = next_prompt(plan, wishes, zone, now, told)
        if row is None:
            assert following is None
            return
        day = date.fromisoformat(row.day)
        assert is_squat_day(plan, day)
        assert day not in told
        (squat,) = next_days(plan, day, 1)
        if prompt_at(squat, wishes, zone) >= now:
            assert following is not None
            assert (squat.day, row.due) == (following[0].day, following[1])

    def _messages(self, plan: Plan, wishes: Preferences, zone: str) -> None:
        """What went into the outbox since is in no quiet hours, and a prompt is of a squat day that has not come yet."""
        for id, made, kind, day, state, stale in self.gym.db.execute(
                "select o.id, o.made_at, r.kind, r.day, r.state, r.stale_at from outbox o join reminders r on r.id = o.reminder "
                "where o.id > ?", (self.seen,)).fetchall():
            self.seen = id
            assert not is_quiet(moment_of(made), wishes, zone)
            if kind == "squat_day":
                assert is_squat_day(plan, date.fromisoformat(day))
            if state == "sent" and stale:
                assert made < stale


def is_put_off(row, gym: Gym) -> bool:
    """Whether a reminder waits for longer than it was planned to."""
    wall, zone = gym.db.execute("select wall, zone from reminders where id = ?", (row.id,)).fetchone()
    from companion.reminders.basis import wall_time as wall_of

    return wall_of(row.due, zone) > wall


@settings(max_examples=settings().max_examples // 2)
@given(st.sampled_from(ZONES), st.dictionaries(st.integers(0, 6), CLOCK, min_size=1), WISHES, st.lists(DOES, min_size=5, max_size=30),
       st.integers(0, 200))
def test_whatever_they_do_a_day_has_at_most_one_prompt_and_one_follow_up_never_by_night(zone, days, wishes, does, start):
    async def run() -> None:
        with tempfile.TemporaryDirectory() as folder:
            gym = Gym(Path(folder), MONDAY + timedelta(days=start))
            await gym.open()
            watched = Watched(gym, zone, Plan(weekly=tuple(sorted(days.items()))), wishes)
            for what, how in does:
                await watched.does(what, how)
            await gym.close()

    asyncio.run(run())


async def test_in_a_year_every_squat_day_is_told_of_and_asked_about_once(gym):
    gym.lifter(plan=TUESDAYS)
    await gym.sweep_until(at("2027-05-27 12:00"), timedelta(hours=3))
    tuesdays = [(date(2026, 6, 2) + timedelta(days=7 * week)).isoformat() for week in range(52)]
    assert gym.sent("squat_day") == tuesdays
    assert gym.sent("squat_after") == tuesdays
