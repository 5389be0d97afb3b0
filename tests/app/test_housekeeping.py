"""What the running bot does once a night: rows that are needed no more, answers that are too old, the backup."""

from __future__ import annotations

import asyncio
import io
from collections.abc import AsyncIterator
from datetime import timedelta
from pathlib import Path

import pytest

from companion.app import housekeeping, run
from companion.app.housekeeping import LOOK_SECONDS, nightly, tidy
from companion.app.run import picture_store
from companion.operate.integrity import damage_of
from companion.record import log, people, status
from companion.record.timestamps import text_of
from companion.record.writer import CommitFailed
from tests.app.test_service import CHECK, START, WARM
from tests.coach.gym import KIM, SAM, Gym
from tests.fakes.clock import FakeClock

WALL = ("tape", "Ready", "6", "6.5", "Pull in the calf", "15", "15", "Pull in the calf")
YEAR = timedelta(days=366)


@pytest.fixture
async def gym(tmp_path: Path) -> AsyncIterator[Gym]:
    one = Gym(tmp_path / "companion.sqlite")
    await one.start()
    yield one
    await one.stop()


async def two_notes(gym: Gym) -> None:
    """A coach and a lifter, and two notes, of which only the newer has to stay."""
    await gym.linked()
    await gym.say("write to my coach", "quillonvex squats again")
    await gym.say("write to my coach", "all well")


def at(gym: Gym) -> str:
    """Where the lifter is in the conversation."""
    stack = people.load_session(gym.db, gym.id_of(SAM)).stack
    return f"{stack[-1].flow}.{stack[-1].state}" if stack else ""


def raws(gym: Gym) -> list[str]:
    return [row.raw for row in log.answers_of(gym.db, gym.id_of(SAM))]


async def test_nothing_is_thinned_where_nothing_is_set(gym):
    await two_notes(gym)
    gym.clock.at += 10 * YEAR
    before = gym.count("answers")
    await tidy(gym.companion)
    assert gym.count("answers") == before
    assert status.mark_of(gym.db, housekeeping.OLD_ANSWERS_REMOVED) is None


async def test_answers_older_than_the_setting_are_gone_from_the_file_and_the_rest_stays(gym, caplog):
    caplog.set_level("INFO")
    await two_notes(gym)
    gym.companion.keep_months = 6
    kept = {table: gym.count(table) for table in ("runs", "findings", "facts", "alerts", "looks", "acts")}
    before = gym.count("answers")
    await tidy(gym.companion)
    assert gym.count("answers") == before
    gym.clock.at += YEAR
    await tidy(gym.companion)
    gone = before - gym.count("answers")
    assert "quillonvex squats again" not in raws(gym)
    assert "all well" in raws(gym)
    assert {"Yes, keep them", "Yes, I agree"} <= set(raws(gym))
    assert {table: gym.count(table) for table in kept} == kept
    assert damage_of(gym.db) == ""
    for file in gym.path.parent.glob("companion.sqlite*"):
        assert b"quillonvex" not in file.read_bytes(), file
    told = [record.getMessage() for record in caplog.records if record.name == housekeeping.__name__]
    assert told == [f"answers older than 6 months were removed; answers: {gone}, persons: 1"]


async def test_words_that_came_to_nothing_are_gone_the_night_after(gym):
    await gym.linked()
    await gym.say("quillonvex so today")
    assert people.load_session(gym.db, gym.id_of(SAM)).unread == ("quillonvex so today",)
    gym.clock.at += timedelta(hours=12)
    await tidy(gym.companion)
    assert people.load_session(gym.db, gym.id_of(SAM)).unread == ()


async def test_a_night_that_was_missed_is_made_up_for_and_one_a_day_is_enough(gym, monkeypatch):
    clock, done = FakeClock(START), []
    gym.companion.clock, gym.companion.keep_months = clock, 6
    real = housekeeping.removable_runs
    monkeypatch.setattr(housekeeping, "removable_runs", lambda db, person, cut: done.append(clock.at) or real(db, person, cut))
    await two_notes(gym)
    clock.at += YEAR
    working = asyncio.create_task(nightly(gym.companion, None))
    await clock.advance(5 * LOOK_SECONDS)
    assert set(done) == {START + YEAR}
    done.clear()
    await clock.advance(48 * LOOK_SECONDS)
    assert done == []  # nothing new: nobody is looked at again
    working.cancel()
    await asyncio.wait([working])


async def test_the_backup_of_the_day_comes_after_the_tidying(gym, monkeypatch, tmp_path):
    order, clock = [], FakeClock()
    gym.companion.clock = clock

    async def tidied(companion):
        order.append(("tidy", clock.at))

    async def backed_up(database, folder, clock):
        order.append((folder.name, clock.at))
    monkeypatch.setattr(housekeeping, "tidy", tidied)
    monkeypatch.setattr(housekeeping, "tonight", backed_up)
    working = asyncio.create_task(nightly(gym.companion, tmp_path / "backups"))
    await clock.advance(LOOK_SECONDS)
    working.cancel()
    await asyncio.wait([working])
    assert order == [(what, START + timedelta(seconds=seconds)) for seconds in (0, LOOK_SECONDS) for what in ("tidy", "backups")]


async def test_a_shorter_time_is_taken_up_the_same_day_and_a_longer_one_brings_nothing_back(gym):
    await two_notes(gym)
    gym.companion.keep_months = 36
    gym.clock.at += YEAR
    await tidy(gym.companion)
    assert "quillonvex squats again" in raws(gym)
    gym.companion.keep_months = 6
    await tidy(gym.companion)
    assert "quillonvex squats again" not in raws(gym)
    gym.companion.keep_months = 36
    await tidy(gym.companion)


async def test_what_is_superseded_by_something_new_goes_the_night_after(gym):
    await two_notes(gym)
    gym.companion.keep_months = 6
    gym.clock.at += YEAR
    await tidy(gym.companion)
    assert "all well" in raws(gym)
    gym.clock.at += timedelta(days=1)
    await gym.say("write to my coach", "back again")
    gym.clock.at += timedelta(days=1)
    await tidy(gym.companion)
    assert "all well" not in raws(gym)
    assert "back again" in raws(gym)


async def test_pictures_made_of_thinned_answers_are_removed(gym):
    await two_notes(gym)
    gym.companion.keep_months = 6
    with picture_store(gym.companion, gym.clock) as shelf:
        shelf.cache.folder.mkdir(parents=True, exist_ok=True)
        mine, other = (shelf.cache.folder / f"own-{number}-chart_pain.png" for number in (gym.id_of(SAM), 99))
        mine.write_bytes(b"x")
        other.write_bytes(b"x")
        gym.clock.at += YEAR
        await tidy(gym.companion)
        assert not mine.exists()
        assert other.exists()


async def test_one_that_fails_takes_nothing_of_the_others_with_it_and_is_tried_again(gym, monkeypatch, caplog):
    await two_notes(gym)
    gym.companion.keep_months = 6
    gym.clock.at += YEAR
    real, coach = housekeeping.removable_runs, gym.id_of(KIM)

    def failing(db, person, cut):
        if person == coach:
            raise ValueError("quillonvex")
        return real(db, person, cut)
    monkeypatch.setattr(housekeeping, "removable_runs", failing)
    await tidy(gym.companion)
    assert "quillonvex squats again" not in raws(gym)
    assert status.mark_of(gym.db, housekeeping.OLD_ANSWERS_REMOVED) is None
    monkeypatch.setattr(housekeeping, "removable_runs", real)
    await tidy(gym.companion)
    assert status.mark_of(gym.db, housekeeping.OLD_ANSWERS_REMOVED) == (6.0, gym.clock.at)


async def test_a_turn_is_taken_between_the_persons_that_are_thinned(gym):
    await two_notes(gym)
    gym.companion.keep_months = 6
    gym.clock.at += YEAR
    commits = []
    gym.companion.writer.on_commit = commits.append
    tidying = asyncio.create_task(tidy(gym.companion))
    await asyncio.sleep(0)
    await gym.say("menu")
    assert not tidying.done()
    await tidying
    assert len(commits) > 5


async def test_who_comes_back_after_thinning_can_go_on_and_their_coach_sees_them(gym):
    await gym.linked()
    await gym.say("safety check", *CHECK)
    await gym.say("knee to wall", *WARM, *WALL)
    assert gym.db.execute("select ending from runs where flow = 'knee_to_wall'").fetchall() == [("done",)]
    await gym.say("hip fold", "start")
    assert at(gym).startswith("hip_fold.")
    gym.companion.keep_months = 6
    gym.clock.at += YEAR
    await tidy(gym.companion)
    assert at(gym) == ""
    number = gym.id_of(SAM)
    for view in ("lifter", "lifter_log", "lifter_report"):
        await gym.tap(KIM, f"go.{view}.{number}")
    await gym.companion.background_done()
    for part in ("numbers", "more", "charts", "log"):
        await gym.tap(KIM, f"go.lifter.{number}-{part}")
    for words in ("hello", "menu", "results", "changes", "progress", "/export", "my reminders", "knee to wall"):
        assert await gym.say(words), words
    assert not gym.db.execute("select 1 from updates where failed is not null").fetchall()
    assert not [text for text in gym.heard(SAM) + gym.heard(KIM) if text.startswith("Something went wrong")]


async def test_what_is_being_asked_keeps_its_answers_while_somebody_writes(gym):
    await gym.linked()
    await gym.say("safety check", *CHECK)
    await gym.say("knee to wall", *WARM, *WALL[:4])
    assert at(gym).startswith("knee_to_wall.")
    gym.companion.keep_months = 6
    gym.clock.at += timedelta(days=150)
    await gym.say("what is this")
    gym.clock.at += timedelta(days=60)
    await tidy(gym.companion)
    assert ("knee_to_wall", "left_1") in {(row.flow, row.key) for row in log.answers_of(gym.db, gym.id_of(SAM))}


async def test_the_answers_that_what_stands_was_concluded_from_stay(gym):
    await two_notes(gym)
    number = gym.id_of(SAM)
    run = gym.db.execute("select run from answers where raw = 'quillonvex squats again'").fetchone()[0]
    gym.db.execute("insert into findings (person, run, name, value, rule, because, at) values (?, ?, 'stands', 'x', '', '', ?)",
                   (number, run, text_of(START)))
    gym.companion.keep_months = 6
    gym.clock.at += YEAR
    await tidy(gym.companion)
    assert "quillonvex squats again" in raws(gym)


async def test_my_data_says_how_long_answers_are_kept(gym):
    await gym.linked()
    assert "Everything you answered is kept" in (await gym.say("my data"))[-1]
    await gym.say("Nothing")
    gym.companion.keep_months = 12
    said = (await gym.say("my data"))[-1]
    assert "of the last 12 months" in said
    assert "Everything" not in said


# what else grows --------------------------------------------------------------------------------------------


async def test_update_ids_go_after_a_fortnight_and_messages_after_ninety_days(gym):
    await gym.linked()
    await gym.say("hello")
    gym.db.execute("update outbox set settled_at = made_at, message = '1'")
    for channel, id in (("telegram", 7), ("telegram", 2**40), ("other", 1)):
        gym.db.execute("insert into updates values (?, ?, ?, ?)", (channel, id, text_of(START), "ValueError" if id == 7 else None))
    gym.db.execute("insert into outbox (id, person, channel, address, text, buttons, must_arrive, timed, unasked, due_at, made_at) "
                   "select 100000, person, channel, address, text, buttons, must_arrive, timed, unasked, due_at, made_at from outbox "
                   "limit 1")
    before = gym.count("outbox")
    gym.clock.at += timedelta(days=13)
    await tidy(gym.companion)
    assert (gym.count("updates"), gym.count("outbox")) == (3, before)
    gym.clock.at += timedelta(days=2)
    await tidy(gym.companion)
    assert (gym.count("updates"), gym.count("outbox")) == (0, before)
    gym.clock.at += timedelta(days=76)
    await tidy(gym.companion)
    assert gym.db.execute("select id from outbox").fetchall() == [(100000,)]  # what waits stays


async def test_messages_do_not_outlive_the_answers_they_repeat(gym):
    await gym.linked()
    gym.db.execute("update outbox set settled_at = made_at, message = '1'")
    gym.companion.keep_months = 1
    gym.clock.at += timedelta(days=40)
    await tidy(gym.companion)
    assert gym.count("outbox") == 0


async def test_a_file_that_can_not_be_written_ends_the_bot_and_is_no_error_of_the_night(gym, caplog):
    gym.companion.db.conn.execute("pragma query_only=on").fetchall()
    gym.companion.keep_months = 6
    await tidy(gym.companion)
    assert gym.companion.writer.broken
    assert caplog.records == []
    with pytest.raises(CommitFailed):
        await gym.stop()
    gym.companion.close()
    await gym.start()


async def test_a_screen_that_opens_thins_first_so_that_what_my_data_says_is_true(gym, monkeypatch):
    await two_notes(gym)
    gym.companion.keep_months = 6
    gym.clock.at += YEAR
    await gym.stack.aclose()
    monkeypatch.setattr(run.terminal, "is_interactive", lambda: False)
    monkeypatch.setattr(run.sys, "stdin", io.StringIO(""))
    chart = run.folder_beside(gym.path) / f"own-{gym.id_of(SAM)}-chart_pain.png"
    chart.parent.mkdir()
    chart.write_bytes(b"drawn from what goes")
    await run.chat_here(gym.companion, "sam", asyncio.Event())
    assert "quillonvex squats again" not in raws(gym)
    assert not chart.exists()
