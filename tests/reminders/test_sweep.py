"""The sweep on a real file: what comes late, once, or not at all; clocks that jump; people who are gone; two sweeps at once.

The first lifter is in Lisbon and squats on Tuesdays at 18:00 (17:00 UTC in summer); the prompt comes on Monday at 18:00.
"""

from __future__ import annotations

import asyncio
from datetime import date, time, timedelta

import pytest

from companion.app.outbox_store import CompanionOutbox
from companion.calendar.plan import Away, EveryNDays, MoveDay, On, Pause, Plan, Skip, StopAll
from companion.calendar.prompts import Preferences
from companion.port import Address
from companion.record import log, people, reminders
from companion.record.timestamps import text_of
from companion.reminders.sweep import FixedDelayTrigger, start_sweeping
from companion.screening.limits import Limit, LimitPart, as_text
from tests.by_night import BY_NIGHT
from tests.reminders.build import DAILY, MONDAY, NEVER_QUIET, TUESDAYS, at, day, weekly

PROMPT, SQUAT, AFTER = at("2026-06-01 17:00"), at("2026-06-02 17:00"), at("2026-06-03 08:00")
"""The first prompt, its squats, and the follow-up the morning after at nine."""
MISSED = "I could not message you in time"


def missed(heard: list[str]) -> list[str]:
    return [text for text in heard if MISSED in text]


def prompts(heard: list[str]) -> list[str]:
    return [text for text in heard if text.startswith("Squat day ")]


def follow_ups(heard: list[str]) -> list[str]:
    return [text for text in heard if text.startswith("How did ")]


HARM_ASKED = "Are you thinking of harming yourself"


async def at_moment(gym, moment) -> list[str]:
    gym.clock.at = moment
    return await gym.sweep()


# paused ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("parked", [False, True])
async def test_while_it_is_asked_about_harming_oneself_nothing_is_sent_until_that_is_answered(gym, parked):
    person = gym.lifter()
    await gym.write("sam", "kill me")
    assert any(HARM_ASKED in text for text in await gym.listen())
    if parked:
        await gym.write("sam", "stop")
        await gym.write("sam", "my reminders")
        assert "Your reminders are paused until you have answered what I asked. Say “go on” to answer it." in await gym.listen()
    assert await gym.sweep_until(SQUAT + timedelta(days=2)) == []
    assert log.paused_of(gym.db, person) == "asked"
    await gym.write("sam", "go on" if parked else "no")
    if parked:
        await gym.write("sam", "no")
    await gym.listen()
    assert log.paused_of(gym.db, person) == ""
    assert prompts(await gym.sweep_until(PROMPT + timedelta(days=7)))


async def test_reminders_are_said_to_be_paused_while_they_are_and_are_sent_again_after_beginning_again(gym):
    gym.lifter()
    await gym.write("sam", "i want to kill myself")
    await gym.write("sam", "my reminders")
    heard = await gym.listen()
    assert any(text.startswith("Your reminders are paused, and none is sent. Say “begin again”") for text in heard)
    assert not any("squat day" in text for text in heard)
    assert await gym.sweep_until(SQUAT + timedelta(days=2)) == []
    await gym.write("sam", "begin again")
    await gym.write("sam", "yes")
    await gym.listen()
    assert prompts(await gym.sweep_until(PROMPT + timedelta(days=7)))


# on time ----------------------------------------------------------------------------------------------------


async def test_one_prompt_the_evening_before_and_one_follow_up_the_morning_after(gym):
    gym.lifter()
    heard = await gym.sweep_until(PROMPT - timedelta(minutes=1))
    assert heard == []
    (prompt,) = await at_moment(gym, PROMPT)
    assert prompt.startswith("Squat day tomorrow, 18:00.")
    assert await gym.sweep_until(AFTER - timedelta(minutes=1)) == []
    (follow_up,) = await at_moment(gym, AFTER)
    assert follow_up.startswith("How did yesterday's squats go?")
    assert await gym.sweep_until(PROMPT + timedelta(days=7) - timedelta(minutes=1)) == []
    assert gym.next().day == "2026-06-09"


async def test_who_squats_every_day_before_nine_is_asked_about_every_day(gym):
    gym.lifter(plan=Plan(weekly=tuple((one, time(7)) for one in range(7))))
    heard = await gym.sweep_until(MONDAY + timedelta(days=6))
    assert [len(prompts(heard)), len(follow_ups(heard))] == [6, 5]
    assert gym.sent("squat_after") == ["2026-06-02", "2026-06-03", "2026-06-04", "2026-06-05", "2026-06-06"]


async def test_a_message_of_a_reminder_goes_to_every_address_once(gym):
    person = gym.lifter()
    gym.db.execute("insert into addresses (channel, address, person, name) values ('terminal', 'sam2', ?, 'sam')", (person,))
    assert len(prompts(await at_moment(gym, PROMPT))) == 2
    assert len(gym.sent("squat_day")) == 1


# the bot was off --------------------------------------------------------------------------------------------


async def test_off_for_an_hour_the_prompt_comes_late_and_once(gym):
    gym.lifter()
    await gym.close()
    gym.clock.at = PROMPT + timedelta(hours=1)
    await gym.open()
    heard = await gym.sweep()
    assert len(prompts(heard)) == 1
    await gym.reopen()
    assert await gym.sweep() == []
    assert gym.next().day == "2026-06-09"


async def test_off_overnight_the_prompt_waits_for_the_end_of_quiet_hours(gym):
    gym.lifter()
    assert await at_moment(gym, at("2026-06-01 21:00")) == []
    assert await at_moment(gym, at("2026-06-02 07:59")) == []
    assert prompts(await at_moment(gym, at("2026-06-02 08:00")))[0].startswith("Squat day today, 18:00")


async def test_a_prompt_that_waits_for_the_end_of_quiet_hours_outlives_a_change_of_something_else(gym):
    person = gym.lifter()
    await at_moment(gym, at("2026-06-01 21:00"))
    gym.change(person, On(date(2026, 6, 4), time(18)))
    gym.tell(person, squat__goal="parallel")
    assert len(prompts(await at_moment(gym, at("2026-06-02 08:00")))) == 1


async def test_off_for_a_day_what_is_too_late_is_said_once_and_the_rest_goes_on(gym):
    gym.lifter()
    heard = await at_moment(gym, SQUAT)
    assert missed(heard) == heard
    assert "Tuesday 9 June" in heard[0]
    assert await gym.sweep_until(SQUAT + timedelta(hours=1), timedelta(minutes=10)) == []
    assert gym.rows("squat_day", "stale")[0].day == "2026-06-02"
    assert gym.next().day == "2026-06-09"
    assert len(follow_ups(await at_moment(gym, AFTER))) == 1


async def test_off_over_a_squat_day_and_the_prompt_of_the_next_day_that_one_still_comes(gym):
    gym.lifter(plan=DAILY)
    await gym.sweep_until(at("2026-06-02 08:30"))
    heard = await at_moment(gym, at("2026-06-03 17:30"))  # the prompt for the 3rd is too late, that for the 4th was due at 17:00
    assert [len(missed(heard)), len(prompts(heard))] == [1, 1]
    assert "today" in missed(heard)[0]
    assert "tomorrow" in prompts(heard)[0]


async def test_off_for_a_month_it_is_said_once_not_eight_times(gym):
    gym.lifter(plan=Plan(weekly=((1, time(18)), (4, time(18)))))
    heard = await at_moment(gym, MONDAY + timedelta(days=30, hours=4))
    assert [len(missed(heard)), len(follow_ups(heard)), len(heard)] == [1, 1, 2]  # that of yesterday is not too late
    assert "Tuesday 2 June" in missed(heard)[0]
    assert "Friday 3 July" in missed(heard)[0]
    assert await gym.sweep() == []
    assert len(gym.rows("squat_day", "stale")) == 1
    assert gym.next().day == "2026-07-03"


async def test_off_for_a_month_and_on_again_by_night_it_is_said_in_the_morning(gym):
    gym.lifter()
    assert await at_moment(gym, at("2026-07-01 02:00")) == []
    assert len(missed(await at_moment(gym, at("2026-07-01 08:00")))) == 1


async def test_a_follow_up_that_is_too_late_is_dropped_without_a_word(gym):
    gym.lifter()
    assert len(prompts(await at_moment(gym, PROMPT))) == 1
    assert await at_moment(gym, at("2026-06-04 12:00")) == []
    assert [row.state for row in gym.rows("squat_after") if row.state != "replaced"] == ["stale", "open"]


@pytest.mark.parametrize("kind", ["retest", "screen"])
async def test_an_invitation_to_test_comes_once_however_late(gym, kind):
    person = gym.lifter(plan=Plan(), retest__tests="knee_to_wall")
    gym.invite(person, kind, at("2026-06-10 09:00"))
    assert len(await at_moment(gym, at("2027-01-10 12:00"))) == 1
    await gym.reopen()
    assert await gym.sweep() == []


# clocks that jump -------------------------------------------------------------------------------------------


JUMPS = [timedelta(hours=1), timedelta(hours=10), timedelta(days=1), timedelta(days=2), timedelta(days=365)]
BEGUN = [PROMPT - timedelta(minutes=30), PROMPT - timedelta(minutes=5), PROMPT + timedelta(minutes=5), SQUAT - timedelta(hours=6),
         AFTER - timedelta(minutes=5)]
JUMPED = [(jump, begin, stopped) for n, jump in enumerate(JUMPS) for m, begin in enumerate(BEGUN) for stopped in (False, True)
          if BY_NIGHT or stopped == bool((n + m) % 2)]
"""By day each jump from each beginning once, every other one with a stop."""


@pytest.mark.parametrize(("jump", "begin", "stopped"), JUMPED)
async def test_a_clock_that_jumps_ahead_and_back_doubles_nothing_and_loses_nothing(gym, jump, begin, stopped):
    gym.lifter()
    gym.lifter("once", Plan(single=((date(2026, 6, 2), time(18)), (date(2026, 6, 5), time(18)))))
    await gym.sweep_until(begin, timedelta(minutes=30))
    gym.clock.at = begin + jump
    for _ in range(3):
        await gym.sweep(minutes=10)
    gym.clock.at = begin + timedelta(minutes=30)
    if stopped:
        await gym.reopen()
    await gym.sweep_until(MONDAY + timedelta(days=16), timedelta(minutes=30))
    for person, days in ((1, ["2026-06-02", "2026-06-09", "2026-06-16"]), (2, ["2026-06-02", "2026-06-05"])):
        for kind in ("squat_day", "squat_after"):
            sent = gym.sent(kind, person)
            assert len(sent) == len(set(sent))
            due = [one for one in days if kind == "squat_day" or one != "2026-06-16"]
            assert set(due) <= set(sent), (kind, person, gym.rows(kind, "", person))


@pytest.mark.parametrize("ahead", [PROMPT, SQUAT, PROMPT + timedelta(days=365)])
async def test_what_a_clock_ahead_had_said_and_has_not_left_is_taken_back_and_said_in_its_time(gym, monkeypatch, ahead):
    gym.lifter()
    monkeypatch.setattr(gym.clock, "monotonic", lambda: 0.0)  # any other time is a clock that was set
    await gym.reopen()
    gym.clock.at = ahead
    await gym.companion.sweep()  # nothing can be sent
    assert await at_moment(gym, MONDAY) == []
    assert len(prompts(await at_moment(gym, PROMPT))) == 1
    assert len(follow_ups(await at_moment(gym, AFTER))) == 1


@pytest.mark.parametrize(("ahead", "back", "leaves"), [
    (PROMPT + timedelta(hours=1), PROMPT + timedelta(minutes=30), PROMPT + timedelta(minutes=30)),
    (at("2026-06-02 08:30"), at("2026-06-01 22:00"), at("2026-06-02 08:00"))])
async def test_what_a_clock_ahead_had_said_and_is_due_all_the_same_stays_what_it_was(gym, monkeypatch, ahead, back, leaves):
    gym.lifter()
    monkeypatch.setattr(gym.clock, "monotonic", lambda: 0.0)
    await gym.reopen()
    gym.clock.at = ahead
    await gym.companion.sweep()
    (number, text), = gym.db.execute("select id, text from outbox where settled_at is null").fetchall()  # it may have arrived
    gym.clock.at = back
    await gym.companion.sweep()
    assert gym.db.execute("select id, text, due_at from outbox where settled_at is null").fetchall() == [(number, text, text_of(leaves))]


async def test_a_year_ahead_by_night_and_back_the_put_off_prompt_is_not_a_year_away(gym):
    gym.lifter()
    gym.clock.at = at("2027-06-02 23:00")
    await gym.sweep()
    gym.clock.at = MONDAY
    await gym.sweep()
    assert gym.next().due == PROMPT
    assert len(prompts(await at_moment(gym, PROMPT))) == 1


async def test_a_year_ahead_and_back_the_morning_question_and_a_put_off_retest_come_in_their_time(gym):
    person = gym.lifter(plan=Plan(), safety__level="clinician", retest__tests="knee_to_wall")
    gym.invite(person, "retest", at("2026-06-20 09:00"))
    gym.invite(person, "morning", at("2026-06-02 08:00"), stale=at("2026-06-02 23:00"))
    gym.clock.at = MONDAY + timedelta(days=365)
    await gym.sweep()
    gym.clock.at = MONDAY
    await gym.sweep()
    assert gym.next("morning").due == at("2026-06-02 08:00")
    assert gym.next("retest").due == at("2026-06-20 08:00")  # nine in Lisbon


async def test_a_clock_set_back_by_minutes_says_nothing_twice(gym):
    gym.lifter()
    assert len(missed(await at_moment(gym, SQUAT + timedelta(hours=1)))) == 1
    gym.clock.at -= timedelta(minutes=10)
    assert await gym.sweep() == []
    await gym.reopen()
    assert await gym.sweep_until(SQUAT + timedelta(hours=2), timedelta(minutes=5)) == []


async def test_a_file_made_while_the_clock_was_ahead_is_planned_anew_at_the_start(gym):
    gym.clock.at = MONDAY + timedelta(days=800)
    gym.lifter()
    gym.lifter("once", Plan(every=2, start=date(2026, 6, 2), at=time(18)))
    await gym.close()
    gym.clock.at = MONDAY
    await gym.open()
    await gym.sweep()
    assert [gym.next(person=person).due for person in (1, 2)] == [PROMPT, PROMPT]


@pytest.mark.parametrize("looks", [1, 2, 3])
async def test_a_clock_set_back_in_the_middle_of_a_sweep_does_not_keep_it_for_ever(gym, monkeypatch, looks):
    gym.lifter()
    gym.clock.at = PROMPT
    real, calls = gym.clock.now, 0

    def back_an_hour():
        nonlocal calls
        calls += 1
        return real() if calls <= looks else real() - timedelta(hours=1)

    monkeypatch.setattr(gym.clock, "now", back_an_hour)
    async with asyncio.timeout(5):
        await gym.companion.sweep()
    monkeypatch.undo()
    assert len(prompts(await gym.listen() + await gym.sweep())) == 1


def test_the_next_sweep_is_counted_from_now_so_that_a_year_is_not_walked_through():
    every = FixedDelayTrigger(timedelta(seconds=20))
    assert every.get_next_fire_time(None, MONDAY) == MONDAY + timedelta(seconds=20)
    assert every.get_next_fire_time(MONDAY - timedelta(days=365), MONDAY) == MONDAY + timedelta(seconds=20)


async def test_sweeps_go_on_when_the_clock_is_set_back_a_year(monkeypatch):
    from apscheduler.schedulers import base

    swept, ahead = asyncio.Semaphore(0), timedelta(days=365)

    class Real(base.datetime):
        @classmethod
        def now(cls, tz=None):
            return base_now(tz) + ahead

    class Clock:
        def now(self):
            return base_now(MONDAY.tzinfo) + ahead

        def monotonic(self):
            raise AssertionError

        async def sleep(self, seconds):
            raise AssertionError

    base_now = base.datetime.now
    monkeypatch.setattr(base, "datetime", Real)

    async def sweep():
        swept.release()

    scheduler = start_sweeping(sweep, 0.01, Clock())
    async with asyncio.timeout(5):
        await swept.acquire()
        await swept.acquire()
        ahead = timedelta()
        for _ in range(3):
            await swept.acquire()
    scheduler.shutdown(wait=False)


# two at once, and one that fails ----------------------------------------------------------------------------


async def test_two_sweeps_at_once_send_once(gym):
    for name in ("ann", "bo", "cy"):
        gym.lifter(name)
    gym.clock.at = PROMPT
    await asyncio.gather(gym.companion.sweep(), gym.companion.sweep())
    assert len(await gym.listen()) == 3
    gym.clock.at = SQUAT + timedelta(days=7)
    await asyncio.gather(gym.companion.sweep(), gym.companion.sweep())
    assert len(missed(await gym.listen())) == 3


async def test_one_offer_that_fails_holds_up_no_other_is_not_tried_again_and_the_next_of_that_lifter_comes(gym, monkeypatch):
    lifters = [gym.lifter(name) for name in ("ann", "bo", "cy")]
    advance = gym.companion.advance

    def broken(turn, *rest):
        if turn.person == lifters[1]:
            raise RuntimeError("a fault of ours")
        return advance(turn, *rest)

    with monkeypatch.context() as patch:
        patch.setattr(gym.companion, "advance", broken)
        assert len(prompts(await at_moment(gym, PROMPT))) == 2
        assert await gym.sweep() == []
    assert gym.rows("squat_day", "failed")[0].person == lifters[1]
    assert [gym.next(person=person).day for person in lifters] == ["2026-06-09"] * 3
    assert await gym.sweep_until(AFTER - timedelta(minutes=1)) == []
    assert len(follow_ups(await at_moment(gym, AFTER))) == 3
    assert len(prompts(await at_moment(gym, PROMPT + timedelta(days=7)))) == 3


async def test_a_sweep_cut_off_in_the_middle_goes_on_where_it_was(gym):
    for name in ("ann", "bo", "cy"):
        gym.lifter(name)
    gym.clock.at = PROMPT
    one = asyncio.create_task(gym.companion.sweep())
    for _ in range(3):
        await asyncio.sleep(0)
    one.cancel()
    await asyncio.gather(one, return_exceptions=True)
    await gym.reopen()
    await gym.companion.sweep()
    assert len(await gym.listen()) == 3


async def test_a_message_that_fails_to_be_taken_back_holds_up_no_other(gym, monkeypatch):
    lifters = [gym.lifter(name) for name in ("ann", "bo")]
    gym.clock.at = PROMPT
    await gym.companion.sweep()
    say = gym.companion._sweep._say_missed

    def broken(db, reminder, *rest):
        if reminder.person == lifters[0]:
            raise RuntimeError("a fault of ours")
        return say(db, reminder, *rest)

    monkeypatch.setattr(gym.companion._sweep, "_say_missed", broken)
    assert len(missed(await at_moment(gym, SQUAT))) == 1


# the way out is shut ----------------------------------------------------------------------------------------


async def shut(gym, moment) -> None:
    """Sweep with nobody to take what is in the outbox."""
    gym.clock.at = moment
    await gym.companion.sweep()


async def test_a_prompt_that_could_not_leave_before_its_squats_is_dropped_and_said_once(gym):
    gym.lifter()
    await shut(gym, PROMPT)
    for minutes in (0, 1, 30):
        await shut(gym, SQUAT + timedelta(minutes=minutes))
    heard = await gym.listen()
    assert heard == missed(heard)
    assert len(heard) == 1
    assert gym.rows("squat_day", "stale")[0].day == "2026-06-02"
    assert gym.sent("squat_day") == []
    assert await gym.sweep_until(AFTER - timedelta(minutes=1)) == []


async def test_shut_for_a_month_one_is_said_to_be_missed_when_it_opens(gym):
    gym.lifter()
    for hours in range(0, 24 * 30, 3):
        await shut(gym, PROMPT + timedelta(hours=hours))
    heard = await at_moment(gym, MONDAY + timedelta(days=30, hours=3))
    assert [len(missed(heard)), len(follow_ups(heard)), len(heard)] == [1, 1, 2]


async def test_what_waits_as_quiet_hours_begin_leaves_when_they_end_and_not_in_them(gym):
    gym.lifter(plan=Plan(weekly=((1, time(18)),)), wishes=Preferences(evening=time(19, 50)))
    await shut(gym, at("2026-06-01 18:50"))
    assert gym.waiting()
    for moment in ("2026-06-01 19:00", "2026-06-01 23:00", "2026-06-02 07:59"):
        assert await at_moment(gym, at(moment)) == []
    assert len(prompts(await at_moment(gym, at("2026-06-02 08:00")))) == 1
    assert missed(await at_moment(gym, SQUAT)) == []


async def test_what_is_too_late_within_quiet_hours_is_said_when_they_end(gym):
    gym.lifter(plan=Plan(weekly=((1, time(22)),)))
    await shut(gym, PROMPT)
    assert await at_moment(gym, at("2026-06-02 21:30")) == []
    assert len(missed(await at_moment(gym, at("2026-06-03 08:00")))) == 1


async def test_a_prompt_that_arrived_at_one_address_was_not_missed(gym):
    person = gym.lifter()
    gym.db.execute("insert into addresses (channel, address, person, name) values ('other', 'sam', ?, 'sam')", (person,))
    assert len(prompts(await at_moment(gym, PROMPT))) == 1
    assert await at_moment(gym, SQUAT) == []
    assert gym.waiting() == []
    assert gym.sent("squat_day") == ["2026-06-02"]


async def test_a_prompt_that_waits_holds_up_no_reply_not_even_stale(gym):
    gym.lifter()
    await shut(gym, PROMPT)
    await gym.write("sam", "help")
    store = CompanionOutbox(gym.companion, "terminal")
    (first,) = await store.due(gym.now())
    assert not first.text.startswith("Squat day")
    await store.mark_tried(first.id, gym.now())
    gym.clock.at = SQUAT
    assert [one.id for one in await store.due(gym.now())] == [first.id]


async def test_a_day_that_was_skipped_meanwhile_is_not_said_to_be_missed(gym):
    person = gym.lifter()
    await shut(gym, PROMPT)
    gym.change(person, Skip(date(2026, 6, 2)))
    assert missed(await at_moment(gym, SQUAT)) == []


# people who are gone ----------------------------------------------------------------------------------------


async def test_who_blocks_the_bot_hears_nothing_and_who_writes_again_hears_once_what_was_missed(gym):
    gym.lifter()
    store = CompanionOutbox(gym.companion, "terminal")
    await store.mark_gone(Address("terminal", "sam"), gym.now(), "blocked")
    for days in range(1, 30):
        assert await at_moment(gym, MONDAY + timedelta(days=days, hours=10)) == []
    assert not gym.rows("squat_day", "sent")
    await gym.write("sam", "menu")
    await gym.listen()
    heard = await gym.sweep(minutes=1)
    assert len(missed(heard)) == 1
    assert heard == missed(heard) + prompts(heard)
    assert await gym.sweep() == []
    assert len(prompts(await at_moment(gym, PROMPT + timedelta(days=35)))) == 1


async def test_who_is_erased_is_left_nothing(gym):
    gym.lifter()
    gym.lifter("ann")
    await shut(gym, PROMPT)
    people.erase(gym.db, 1, gym.now())
    assert {row.person for row in gym.rows()} == {2}
    assert len(missed(await at_moment(gym, SQUAT + timedelta(minutes=1)))) == 1
    assert gym.db.execute("select count(*) from outbox where person = 1").fetchone() == (0,)


# pain, levels, retests --------------------------------------------------------------------------------------


async def test_after_pain_the_morning_question_comes_in_place_of_the_follow_up(gym):
    person = gym.lifter()
    await gym.sweep_until(SQUAT)
    gym.invite(person, "morning", AFTER, stale=at("2026-06-03 23:00"))
    heard = await at_moment(gym, AFTER)
    assert heard == ["Something hurt lately. How is it this morning?"]
    assert await gym.sweep_until(AFTER + timedelta(days=1)) == []
    assert gym.rows("squat_after", "dropped")[0].day == "2026-06-02"


async def test_pain_told_on_a_squat_day_by_talking_is_asked_about_in_the_morning_and_then_there_is_silence(gym):
    gym.lifter()
    await gym.sweep_until(SQUAT)
    for words in ("my back hurts", "Lower back", "4", "no", "no", "no"):
        await gym.write("sam", words)
    await gym.listen()
    assert await at_moment(gym, AFTER) == ["Something hurt lately. How is it this morning?"]
    assert await gym.sweep_until(PROMPT + timedelta(days=7, minutes=-1)) == []


async def test_not_answered_there_is_one_follow_up_and_then_silence(gym):
    gym.lifter()
    heard = await gym.sweep_until(PROMPT + timedelta(days=7, minutes=-1))
    assert [len(prompts(heard)), len(follow_ups(heard)), len(heard)] == [1, 1, 2]


async def test_told_before_the_morning_nothing_is_asked(gym):
    person = gym.lifter()
    await gym.sweep_until(SQUAT + timedelta(hours=2))
    gym.tell(person, squat__answered="2026-06-02")
    assert await at_moment(gym, AFTER) == []


async def test_a_retest_is_told_twice_three_days_apart_and_then_ignored(gym):
    person = gym.lifter(plan=Plan(), retest__tests="knee_to_wall")
    first = at("2026-06-10 09:00")
    gym.invite(person, "retest", first)
    heard = [(gym.now(), text) for _ in range(24 * 30) for text in await gym.sweep(hours=1)]
    assert [moment.date() for moment, _ in heard] == [date(2026, 6, 10), date(2026, 6, 13)]
    assert all("time to test again" in text for _, text in heard)
    assert [row.state for row in gym.rows("retest")] == ["sent", "sent", "ignored"]


async def test_not_now_begins_the_count_anew(gym):
    person = gym.lifter(plan=Plan(), retest__tests="knee_to_wall")
    gym.invite(person, "retest", at("2026-06-10 09:00"))
    await at_moment(gym, at("2026-06-10 09:00"))
    gym.invite(person, "retest", at("2026-06-17 09:00"))
    heard = [text for _ in range(24 * 30) for text in await gym.sweep(hours=1)]
    assert len(heard) == 2
    assert gym.rows("retest")[-1].state == "ignored"


@pytest.mark.parametrize("level", ["clinician", "same_day", "emergency"])
async def test_while_somebody_is_to_be_seen_first_no_word_of_squat_days_comes(gym, level):
    person = gym.lifter(safety__level=level)
    assert await gym.sweep_until(PROMPT + timedelta(days=6)) == []
    assert await at_moment(gym, SQUAT + timedelta(days=7)) == []  # not that one was missed either
    gym.tell(person, safety__level="go")
    assert len(prompts(await gym.sweep_until(PROMPT + timedelta(days=14)))) == 1


@pytest.mark.parametrize("part", ["squats", "bending", "training", "other"])
async def test_while_a_clinician_closed_squats_no_word_of_squat_days_comes(gym, part):
    person = gym.lifter(safety__level="go", safety__limits=as_text((Limit(frozenset((LimitPart(part),))),)))
    assert await gym.sweep_until(PROMPT + timedelta(days=6)) == []
    gym.tell(person, safety__limits="")
    assert len(prompts(await gym.sweep_until(PROMPT + timedelta(days=8)))) == 1


async def test_a_limit_is_asked_about_on_its_date(gym):
    person = gym.lifter(plan=Plan(), safety__level="go", safety__limits=as_text((
        Limit(frozenset((LimitPart.LOAD,)), None, date(2026, 6, 3), "a doctor"),)))
    reminders.add(gym.db, person, "limit", "limit_over", "2026-06-03 10:00", "Europe/Lisbon", at("2026-06-03 09:00"), gym.now(), "", None)
    said = await gym.sweep_until(at("2026-06-03 12:00"))
    assert len(said) == 1
    assert "no added load, until 3 June 2026, said by a doctor. Is it over?" in str(said[0])


async def test_while_the_way_out_is_shut_and_somebody_is_to_be_seen_first_nothing_is_said_to_be_missed(gym):
    person = gym.lifter()
    await shut(gym, PROMPT)
    gym.tell(person, safety__level="clinician")
    assert await at_moment(gym, SQUAT) == []


@pytest.mark.parametrize("level", ["not_today", "no_load"])
async def test_a_day_that_is_closed_the_evening_before_does_not_hold_up_tomorrows_prompt(gym, level):
    gym.lifter(safety__level=level)
    assert len(prompts(await at_moment(gym, PROMPT))) == 1


@pytest.mark.parametrize(("level", "told"), [("go", 1), ("no_load", 0), ("not_today", 0)])
async def test_who_hears_of_it_on_the_day_itself_is_not_told_to_squat_on_a_day_that_is_closed(gym, level, told):
    person = gym.lifter(wishes=Preferences(before=2))
    await gym.sweep_until(SQUAT - timedelta(hours=6))
    gym.tell(person, safety__level=level)
    assert len(prompts(await gym.sweep_until(SQUAT + timedelta(hours=1)))) == told
    assert len(prompts(await gym.sweep_until(SQUAT + timedelta(days=7)))) == 1, "a level lapses, and the next day is told of"


# changes of plan --------------------------------------------------------------------------------------------


async def test_after_not_at_all_nothing_comes_not_even_of_today(gym):
    person = gym.lifter()
    await gym.sweep_until(SQUAT - timedelta(hours=1))
    gym.tell(person, squat__no_prompts="yes")
    assert await gym.sweep_until(PROMPT + timedelta(days=8)) == []


@pytest.mark.parametrize("change", [Pause(date(2026, 8, 1)), Away(date(2026, 6, 2), date(2026, 8, 1)), StopAll(), weekly("4")])
async def test_who_pauses_or_stops_after_squatting_is_still_asked_how_it_went(gym, change):
    person = gym.lifter()
    await gym.sweep_until(SQUAT + timedelta(hours=1))
    gym.change(person, change)
    assert len(follow_ups(await at_moment(gym, AFTER))) == 1


@pytest.mark.parametrize("change", [Skip(date(2026, 6, 2)), MoveDay(date(2026, 6, 2), date(2026, 6, 6), time(18)), Pause(date(2026, 6, 3)),
                                    Away(date(2026, 6, 2), date(2026, 6, 3)), StopAll(), EveryNDays(7, time(18), date(2026, 6, 3))])
async def test_a_day_that_is_none_any_more_has_no_prompt_and_no_follow_up(gym, change):
    person = gym.lifter()
    gym.change(person, change)
    await gym.sweep_until(AFTER)
    assert "2026-06-02" not in gym.sent("squat_day") + gym.sent("squat_after")


async def test_moved_away_and_back_a_day_is_told_of_once(gym):
    person = gym.lifter()
    await at_moment(gym, PROMPT)
    gym.change(person, MoveDay(date(2026, 6, 2), date(2026, 6, 6), time(10)))
    gym.change(person, MoveDay(date(2026, 6, 6), date(2026, 6, 2), time(19)))
    heard = await gym.sweep_until(PROMPT + timedelta(days=6))
    assert prompts(heard) == []
    assert len(follow_ups(heard)) == 1


async def test_another_time_on_a_day_that_is_due_counts_for_when_it_is_too_late(gym):
    person = gym.lifter()
    gym.clock.at = at("2026-06-02 14:00")  # the bot was off, the prompt is overdue
    gym.change(person, On(date(2026, 6, 2), time(16)))
    heard = await at_moment(gym, at("2026-06-02 16:00"))
    assert prompts(heard) == []


# zones ------------------------------------------------------------------------------------------------------


async def test_in_another_zone_this_week_and_at_home_again_after_sunday(gym):
    person = gym.lifter(plan=DAILY)
    assert len(prompts(await at_moment(gym, PROMPT))) == 1
    gym.clock.at = at("2026-06-02 10:00")
    gym.tell(person, zone__away="America/New_York", zone__until="2026-06-07")
    await gym.sweep_until(at("2026-06-12 00:00"), timedelta(minutes=15))
    told = {row.day: row.settled for row in gym.rows("squat_day", "sent")}
    assert [told[f"2026-06-{one:02}"] for one in range(3, 9)] == [at(f"2026-06-{one - 1:02} 22:00") for one in range(3, 9)]
    assert [told[f"2026-06-{one:02}"] for one in range(9, 12)] == [at(f"2026-06-{one - 1:02} 17:00") for one in range(9, 12)]
    assert len(told) == len(gym.sent("squat_day"))
    assert len(gym.sent("squat_after")) == len(set(gym.sent("squat_after")))
    assert not gym.rows("home_again", "open")


@pytest.mark.parametrize("off", [False, True])
@pytest.mark.parametrize(("home", "away"), [("Europe/Lisbon", "America/New_York"), ("America/New_York", "Europe/Lisbon"),
                                            ("Australia/Lord_Howe", "America/New_York"), ("America/New_York", "Australia/Lord_Howe")])
async def test_the_first_prompt_at_home_comes_at_the_wall_time_there_whatever_was_planned_abroad(gym, home, away, off):
    from companion.base.clock import instant

    gym.lifter(plan=weekly_plan("3"), welcome__zone=home, zone__away=away, zone__until="2026-06-07")
    await gym.sweep_until(at("2026-06-05 20:00"))
    assert gym.next().day == "2026-06-11"
    if off:
        await gym.close()
        gym.clock.at = at("2026-06-10 00:00")
        await gym.open()
    await gym.sweep_until(at("2026-06-11 12:00"), timedelta(minutes=15))
    (row,) = [one for one in gym.rows("squat_day", "sent") if one.day == "2026-06-11"]
    assert row.settled == instant(day("2026-06-10"), time(18), home)


async def test_a_prompt_whose_moment_is_over_in_the_new_zone_comes_at_once_if_the_squats_are_to_come(gym):
    person = gym.lifter(wishes=Preferences(quiet=NEVER_QUIET), welcome__zone="America/New_York")
    gym.clock.at = at("2026-06-01 18:30")  # 14:30 in New York, 19:30 in Lisbon: the evening before has come there
    gym.tell(person, zone__away="Europe/Lisbon", zone__until="2026-06-07")
    assert len(prompts(await gym.sweep())) == 1
    assert await gym.sweep_until(SQUAT + timedelta(hours=6)) == []


async def test_a_retest_moves_to_the_same_wall_time_in_the_new_zone_and_back(gym):
    person = gym.lifter(plan=Plan(), retest__tests="knee_to_wall")
    gym.invite(person, "retest", at("2026-06-20 08:00"), wall="2026-06-20 09:00")
    gym.tell(person, zone__away="America/New_York", zone__until="2026-06-07")
    assert gym.next("retest").due == at("2026-06-20 13:00")
    await gym.sweep_until(at("2026-06-08 05:00"))
    assert gym.next("retest").due == at("2026-06-20 08:00")


async def test_another_week_away_takes_the_place_of_the_first(gym):
    person = gym.lifter(plan=TUESDAYS, zone__away="America/New_York", zone__until="2026-06-07")
    gym.tell(person, zone__until="2026-06-14")
    assert gym.next("home_again").due == at("2026-06-15 04:00")
    gym.tell(person, zone__until="")
    assert not gym.rows("home_again", "open")


def weekly_plan(days: str) -> Plan:
    return Plan(weekly=weekly(days).days)


# a clinician's limit ----------------------------------------------------------------------------------------

NO_LIFTING = as_text((Limit(frozenset((LimitPart.LOAD,)), by="a surgeon", words="no lifting"),))


async def test_a_limit_that_was_asked_about_in_vain_is_asked_about_again_in_four_weeks(gym):
    person = gym.lifter(safety__limits=NO_LIFTING)
    reminders.cancel(gym.db, person, "squat_day", gym.now())
    gym.invite(person, "limit", gym.now())
    gym.db.execute("update reminders set flow = 'limit_over' where kind = 'limit'")
    asked = [day for day in range(70) if any(
        "Is it over?" in text for text in await at_moment(gym, MONDAY + timedelta(days=day, hours=5)))]
    assert (asked[:3], asked[3:6]) == ([0, 3, 6], [37, 40, 43])


async def test_stop_all_reminders_leaves_the_question_of_a_limit(gym):
    person = gym.lifter(safety__limits=NO_LIFTING)
    gym.invite(person, "limit", MONDAY + timedelta(days=5))
    await gym.write("sam", "stop all reminders")
    heard = await gym.listen()
    assert any("Of what a clinician told you to leave out I still ask whether it is over." in text for text in heard)
    assert [one.kind for one in reminders.open_reminders(gym.db, person)] == ["limit"]
