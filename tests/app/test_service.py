"""The whole companion on a real file: what is kept, what is not, and what survives a stop."""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import ScriptClock, opening, running_writer
from companion.app.service import SORRY, Companion
from companion.channels.terminal import waiting_messages
from companion.port import Address, Inbound, Outgoing, Sent, Tapped, Typed
from companion.record import coaching, log, people, reminders
from companion.record.file import AlreadyRunning, CannotOpen, open_for_reading

START = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)
SAM = Address("terminal", "sam")
WELCOME = ("Yes, keep them", "yes", "cm and kg", "UTC", "yes")
ABOUT = ("about you", "175", "skip", "man", "3", "100", "high", "below", "yes", "yes", "broomstick", "film", "43", "44", "50")
CHECK = ("no", "no", "no", "no", "no", "no", "0", "no")
WARM = ("no", "start", "done", "start")


class Life:
    """One companion and one person, with a clock that stands still; may be stopped and started again."""

    def __init__(self, path: Path) -> None:
        self.path, self.clock = path, ScriptClock(START)
        self.shown: list[Outgoing] = []
        self.stack = contextlib.AsyncExitStack()
        self.updates = 0

    async def start(self) -> None:
        self.companion = Companion(self.path, self.clock)
        await self.stack.enter_async_context(running_writer(self.companion))

    async def stop(self) -> None:
        await self.stack.aclose()
        self.companion.close()
        self.stack = contextlib.AsyncExitStack()

    async def restart(self) -> None:
        await self.stop()
        await self.start()

    async def say(self, *replies: str, who: Address = SAM) -> list[str]:
        """Type replies, or tap the button of that label; gives what the bot said to the last."""
        said: list[str] = []
        for reply in replies:
            data = next((button.data for message in reversed(self.shown[-3:]) for row in message.buttons for button in row
                         if button.label == reply), None)
            await self.companion.take(Inbound(who, Tapped(data) if data else Typed(reply), name=who.id))
            said = await self.listen(who)
        return said

    async def listen(self, who: Address = SAM) -> list[str]:
        new = await waiting_messages(CompanionOutbox(self.companion, who.channel), self.clock.now())
        self.shown += new
        return [message.text for message in new]

    @property
    def db(self):
        return self.companion.db.conn

    def count(self, table: str) -> int:
        return self.db.execute(f"select count(*) from {table}").fetchone()[0]

    def state(self) -> str:
        session = people.load_session(self.db, 1)
        return f"{session.top.flow}.{session.top.state}" if session.stack else ""


@pytest.fixture
async def life(tmp_path: Path) -> AsyncIterator[Life]:
    one = Life(tmp_path / "companion.sqlite")
    await one.start()
    yield one
    await one.stop()


async def settled(life: Life) -> None:
    await life.say("hello", *WELCOME, *ABOUT)


async def test_before_consent_nothing_of_a_person_is_kept(life):
    await life.say("hello", "my name is Quillon Vex", "what is this")
    for table in ("persons", "addresses", "sessions", "answers", "outbox"):
        assert life.count(table) == 0
    assert b"Quillon" not in life.path.read_bytes()


async def test_a_refusal_keeps_that_somebody_refused_and_no_more(life):
    said = await life.say("hello", "No")
    assert "keep nothing" in said[-1]
    assert life.count("refusals") == 1
    assert life.count("persons") + life.count("answers") + life.count("outbox") == 0


async def test_a_first_message_is_never_taken_for_consent(life):
    await life.say("yes")
    assert life.count("persons") == 0


async def test_a_consent_button_still_counts_after_a_restart(life):
    await life.say("hello")
    await life.restart()
    await life.say("Yes, keep them")
    assert life.count("persons") == 1
    assert [row.key for row in log.answers_of(life.db, 1)] == ["consent"]


async def test_consent_keeps_the_answer_and_goes_on(life):
    said = await life.say("hello", "Yes, keep them")
    assert "18" in said[-1]
    assert [(row.key, row.value) for row in log.answers_of(life.db, 1)] == [("consent", "yes")]


async def test_before_consent_help_can_be_followed_by_beginning_again_and_nothing_is_kept(life):
    said = await life.say("hello", "i want to end my life")
    assert "begin again" in said[-1]
    assert "Are you safe just now" in (await life.say("hello"))[-1]
    assert await life.say("Yes, begin again") == ["Good to have you back."]
    assert "find out why your lower back rounds" in (await life.say("hello"))[0]
    assert life.count("persons") == 0


async def test_under_18_nothing_opens_without_a_coach(life):
    await life.say("hello", "Yes, keep them", "No, under 18")
    assert life.state() == "welcome.coach_first"
    for words in ("A coach is linked", "menu", "knee to wall", "screen", "go on", "prime"):
        await life.say(words)
        assert life.state() in ("welcome.coach_first", "")


async def test_a_coach_who_is_linked_opens_it(life):
    await life.say("hello", "Yes, keep them", "No, under 18")
    coach = people.add_person(life.db, "terminal", "kim", "kim", START)
    coaching.make_coach(life.db, coach, "Kim", START)
    coaching.link(life.db, 1, coach, START)
    await life.say("A coach is linked")
    assert life.state() == "welcome.units"


async def test_every_answer_is_in_the_log_with_raw_text_value_unit_and_method(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "11,5 cm")
    row = list(log.answers_of(life.db, 1))[-1]
    assert (row.flow, row.key, row.side, row.raw, row.value, row.unit, row.method, row.status) == (
        "knee_to_wall", "left_1", "left", "11,5 cm", 11.5, "cm", "tape", "ok")


async def test_a_correction_is_a_new_row_that_names_the_old(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "11", "back", "12")
    rows = [row for row in log.answers_of(life.db, 1) if row.key == "left_1"]
    assert [(row.status, row.value) for row in rows] == [("ok", 11), ("withdrawn", None), ("ok", 12)]
    assert [row.replaces for row in rows] == [None, rows[0].id, rows[1].id]


async def test_the_log_is_append_only(life):
    await settled(life)
    with pytest.raises(Exception, match="append-only"):
        life.db.execute("update answers set value = 1 where id = 1")


async def test_a_restart_in_the_middle_asks_nothing_twice(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "11")
    await life.restart()
    shown = await opening(life.companion, SAM)
    assert "once more with the left foot" in shown[0].text
    await life.say("11", "11")  # within error of a line: a third reading
    assert life.state() == "knee_to_wall.left_limit"


async def test_the_same_update_twice_is_one_answer(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape")
    twice = Inbound(SAM, Typed("11"), update_id=77)
    await life.companion.take(twice)
    await life.companion.take(twice)
    assert [row.key for row in log.answers_of(life.db, 1)][-1] == "left_1"
    assert life.state() == "knee_to_wall.left_2"


async def test_an_update_number_may_start_over(life):
    await settled(life)
    await life.companion.take(Inbound(SAM, Typed("menu"), update_id=5))
    life.clock.at += timedelta(days=8)
    await life.companion.take(Inbound(SAM, Typed("about you"), update_id=5))
    assert life.state() == "about_you.height"


async def test_a_turn_that_fails_is_answered_kindly_and_counts_as_taken(life, monkeypatch, caplog):
    await settled(life)

    def broken(*args: object) -> None:
        raise RuntimeError("a fault of ours")

    with monkeypatch.context() as patch:
        patch.setattr("companion.app.conversations.step", broken)
        await life.companion.take(Inbound(SAM, Typed("knee to wall"), update_id=9))
    assert await life.listen() == [SORRY]
    assert life.db.execute("select failed from updates where update_id = 9").fetchone() == ("RuntimeError",)
    assert (await life.say("knee to wall"))[-1].startswith("Any of these")


async def test_after_an_emergency_answer_nothing_opens_whatever_is_typed(life):
    await settled(life)
    said = await life.say("safety check", "yes")
    assert any("emergency" in text for text in said)
    for words in ("knee to wall", "screen", "prime", "safety check", "squat look", "go on", "retest", "menu", "hip fold"):
        await life.say(words)
        assert not life.state().startswith(("knee", "squat", "prime", "safety", "hip", "warm")), words


async def test_the_next_day_a_new_check_asks_whether_they_were_seen(life):
    await settled(life)
    await life.say("safety check", "yes")
    life.clock.at += timedelta(days=1)
    said = await life.say("safety check")
    assert "seen you since?" in said[-1]
    said = await life.say("yes", "nothing serious, light training is fine", "yes", *CHECK, "There is no limit")
    assert any("I see no reason against testing" in text for text in said)


async def test_not_seen_stays_closed_the_next_day_too(life):
    await settled(life)
    await life.say("safety check", "yes")
    life.clock.at += timedelta(days=1)
    said = await life.say("safety check", "no")
    assert any("be seen first" in text for text in said)
    await life.say("knee to wall")
    assert not life.state().startswith(("knee", "warm", "safety"))


async def test_a_half_done_check_keeps_what_it_has_heard(life):
    await settled(life)
    await life.say("knee to wall", "no", "no", "yes", "yes", "stop")
    await life.say("rock back")
    assert not life.state().startswith(("rock", "warm", "safety"))


@pytest.mark.parametrize("red", [("yes",), ("unsure",), ("no", "yes"), ("no", "not sure")])
async def test_an_emergency_answer_is_told_at_once(life, red):
    await settled(life)
    said = await life.say("safety check", *red)
    assert any("emergency department" in text for text in said)


async def test_an_emergency_answer_is_not_taken_back(life):
    await settled(life)
    await life.say("safety check", "yes", "back", "knee to wall")
    assert not life.state().startswith(("knee", "warm", "safety"))


async def test_seen_but_not_told_to_train_stays_closed_and_says_so(life):
    await settled(life)
    await life.say("safety check", "yes")
    life.clock.at += timedelta(days=1)
    said = await life.say("safety check", "yes", "wait for the scan", "no", *CHECK)
    assert any("not told that you may train" in text for text in said)
    assert not any("emergency" in text for text in said)
    await life.say("knee to wall")
    assert not life.state().startswith(("knee", "warm"))


async def test_numbness_below_the_knee_opens_only_after_being_seen(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, "my calf is numb", "Leg", "3", "no", "yes", "no", "no")
    life.clock.at += timedelta(days=1)
    await life.say("safety check", "no", "menu", "knee to wall")
    assert not life.state().startswith(("knee", "warm"))
    said = await life.say("safety check", "yes", "fine to train", "yes", *CHECK)
    assert any("I see no reason against" in text for text in said)


async def test_a_clearance_of_an_old_history_does_not_lift_a_numb_leg(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, "my calf is numb", "Leg", "3", "no", "yes", "no", "no")
    await life.say("safety check", "no", "no", "no", "yes", "no", "no", "no", "no", "yes", "my physio, in May", "none",
                   "0", "no", "squat look")
    assert not life.state().startswith(("squat", "warm"))


async def test_a_history_told_once_is_not_untold_by_silence(life):
    await settled(life)
    await life.say("safety check", "no", "no", "no", "yes", "no", "no", "no", "no", "no", "0", "no")
    life.clock.at += timedelta(days=1)
    said = await life.say("safety check", "no", "no", "no", "no", "no", "no")
    assert "a mistake" in said[-1]
    await life.say("no", "0", "no", "knee to wall")
    assert not life.state().startswith(("knee", "warm"))


async def test_pain_told_just_after_a_test_unscores_that_test(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "8", "8.5", "calf", "8", "8.5", "calf")
    await life.say("that hurt my back", "Lower back", "2", "no", "no", "no")
    endings = {row.flow: row.ending for row in log.answers_of(life.db, 1)}
    assert endings["knee_to_wall"] == "pain"


async def test_a_false_alarm_lets_the_test_go_on(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "ouch")
    await life.say("Nothing hurts", "Right, nothing")
    assert life.state() == "knee_to_wall.left_1"
    await life.say("11")
    assert life.state() == "knee_to_wall.left_2"


async def test_soreness_puts_the_scored_tests_off_and_locks_nothing(life):
    await settled(life)
    await life.say("safety check", "no", "no", "no", "no", "no", "no", "1", "yes", "no", "knee to wall")
    assert not life.state().startswith(("knee", "warm"))
    life.clock.at += timedelta(days=1)
    await life.say("knee to wall")
    assert life.state() == "safety_check.bladder"


async def test_a_session_kept_by_an_older_version_still_opens(life):
    await settled(life)
    life.db.execute("update sessions set session = json_remove(session, '$.last', '$.at', '$.idle')")
    await life.say("about you")
    assert life.state() == "about_you.height"


async def test_my_data_opens_over_the_welcome(life):
    await life.say("hello", "Yes, keep them", "my data")
    assert life.state() == "my_data.what"


async def test_pain_ends_the_test_closes_the_day_and_tells_the_coach(life):
    await settled(life)
    coach = people.add_person(life.db, "terminal", "kim", "kim", START)
    coaching.make_coach(life.db, coach, "Kim", START)
    coaching.link(life.db, 1, coach, START)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "11 but that really hurt", "Lower back", "5", "no", "no", "no")
    rows = {row.key: row for row in log.answers_of(life.db, 1) if row.flow == "knee_to_wall"}
    assert (rows["left_1"].status, rows["left_1"].value, rows["left_1"].ending) == ("in_pain", None, "pain")
    assert [row[0] for row in life.db.execute("select level from alerts")] == ["not_today"]
    assert any(message.address.id == "kim" and "something hurt" in message.text for message in life.shown)
    await life.say("knee to wall")
    assert not life.state().startswith("knee")
    life.clock.at += timedelta(days=1)
    await life.say("knee to wall")
    assert life.state() == "morning.how"
    await life.say("usual")
    assert life.state() == "safety_check.bladder"


async def test_putting_the_phone_away_during_the_pain_questions_leaves_the_day_closed(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "ouch", "stop")
    await life.say("squat look")
    assert not life.state().startswith("squat")


async def test_a_waiting_count_is_taken_back_when_the_person_writes_first(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, "no")
    await life.companion.take(Inbound(SAM, Typed("start")))
    waiting = life.db.execute("select count(*) from outbox where settled_at is null and timed = 1").fetchone()[0]
    assert waiting >= 2
    await life.companion.take(Inbound(SAM, Typed("my knee hurts")))
    assert life.db.execute("select count(*) from outbox where settled_at is null and timed = 1").fetchone()[0] == 0


async def test_a_second_tap_or_a_word_that_answers_nothing_does_not_end_a_count(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, "no")
    start = next(button.data for message in reversed(life.shown) for row in message.buttons for button in row if button.label == "Start")
    await life.companion.take(Inbound(SAM, Tapped(start)))
    waits = life.db.execute("select id from outbox where settled_at is null and timed = 1").fetchall()
    last = life.db.execute("select max(id) from outbox").fetchone()
    assert len(waits) >= 2
    await life.companion.take(Inbound(SAM, Tapped(start)))
    assert life.db.execute("select id from outbox where settled_at is null and timed = 1").fetchall() == waits
    assert life.db.execute("select max(id) from outbox").fetchone() == last  # nothing is said to a second tap
    await life.companion.take(Inbound(SAM, Typed("wait")))
    assert life.db.execute("select id from outbox where settled_at is null and timed = 1").fetchall() == waits
    assert life.db.execute("select text from outbox order by id desc").fetchone()[0].startswith("The timer is running. “Stop” ends it")
    await life.companion.take(Inbound(SAM, Typed("stop")))
    assert life.db.execute("select 1 from outbox where settled_at is null and timed = 1").fetchone() is None


@pytest.mark.parametrize("typed", ["ok", "8", "8 seconds", "done", "menu", "back", "skip", "knee to wall", "yes"])
async def test_nothing_but_stop_pain_or_a_sign_ends_a_count_or_answers_what_was_not_asked(life, typed):
    await settled(life)
    await life.say("knee to wall", *CHECK, "no")
    await life.companion.take(Inbound(SAM, Typed("start")))
    waits = life.db.execute("select id from outbox where settled_at is null and timed = 1").fetchall()
    before = life.count("answers"), life.state()
    await life.companion.take(Inbound(SAM, Typed(typed)))
    assert life.db.execute("select id from outbox where settled_at is null and timed = 1").fetchall() == waits
    assert (life.count("answers"), life.state()) == before
    assert life.db.execute("select text from outbox order by id desc").fetchone()[0].startswith("The timer is running.")


@pytest.mark.parametrize("typed", ["ow my back", "cant pee since this morning", "my left foot has been dropping", "i feel faint",
                                   "i want to kill myself"])
async def test_pain_and_signs_end_a_count_at_once(life, typed):
    await settled(life)
    await life.say("knee to wall", *CHECK, "no")
    await life.companion.take(Inbound(SAM, Typed("start")))
    await life.companion.take(Inbound(SAM, Typed(typed)))
    assert life.db.execute("select 1 from outbox where settled_at is null and timed = 1").fetchone() is None
    assert life.state().partition(".")[0] in ("pain", "signs", "crisis", "")


@pytest.mark.parametrize(("typed", "answers"), [
    ("cant pee since this morning", ("No, I meant something else", "i need a drink")), ("got a fever", ("no", "i meant the heating")),
    ("my hip feels weird", ("no",))])
async def test_a_hold_that_words_cut_short_is_not_asked_about_but_begun_again(life, typed, answers):
    """What was never held would be scored else."""
    await settled(life)
    await life.say("knee to wall", *CHECK, "no")
    offered = life.state()
    await life.companion.take(Inbound(SAM, Typed("start")))
    assert life.state() != offered
    await life.companion.take(Inbound(SAM, Typed(typed)))
    await life.say(*answers)
    assert life.state() == offered


@pytest.mark.parametrize(("typed", "asked"), [
    ("stop the timer", "Did something hurt?"), ("stop it", "Did something hurt?"), ("Stop the countdown!", "Did something hurt?"),
    ("stop the timer, my knee hurts", "Where does it hurt?")])
async def test_a_timer_stopped_in_words_is_a_stop_and_pain_goes_first(life, typed, asked):
    await settled(life)
    await life.say("knee to wall", *CHECK, "no")
    await life.companion.take(Inbound(SAM, Typed("start")))
    await life.companion.take(Inbound(SAM, Typed(typed)))
    assert life.db.execute("select 1 from outbox where settled_at is null and timed = 1").fetchone() is None
    assert life.db.execute("select text from outbox order by id desc").fetchone()[0].startswith(asked)


async def test_a_reminder_comes_once_when_its_time_comes(life):
    await with_results(life)
    due = reminders.open_reminders(life.db, 1)
    assert [one.kind for one in due] == ["retest"]
    life.clock.at = due[0].due_at - timedelta(minutes=1)
    assert await life.companion.sweep() == 0
    life.clock.at = due[0].due_at
    assert await life.companion.sweep() == 1
    assert await life.companion.sweep() == 0
    said = await life.listen()
    assert len([text for text in said if "time to test again" in text]) == 1


async def test_a_reminder_that_fell_due_while_the_bot_was_off_comes_once_afterwards(life):
    await with_results(life)
    await life.stop()
    life.clock.at += timedelta(weeks=9)
    await life.start()
    assert await life.companion.sweep() == 1
    await life.restart()
    assert await life.companion.sweep() == 0
    assert len([text for text in await life.listen() if "time to test again" in text]) == 1


async def test_no_invitation_to_test_comes_while_a_clinician_comes_first(life):
    await with_results(life)
    await life.say("safety check", "yes")
    life.clock.at += timedelta(weeks=9)
    await life.companion.sweep()
    assert not any("time to test again" in text for text in await life.listen())
    assert [one.kind for one in reminders.open_reminders(life.db, 1) if one.kind != "referral"] == ["retest"]


async def test_two_sweeps_at_once_offer_once(life):
    await with_results(life)
    life.clock.at += timedelta(weeks=9)
    await asyncio.gather(life.companion.sweep(), life.companion.sweep())
    assert len([text for text in await life.listen() if "time to test again" in text]) == 1


async def test_somebody_who_is_gone_is_not_reminded_until_they_write_again(life):
    await with_results(life)
    life.clock.at += timedelta(weeks=9)
    await CompanionOutbox(life.companion, "terminal").mark_gone(SAM, life.clock.now(), "blocked")
    assert await life.companion.sweep() == 0
    await life.say("hello")
    assert await life.companion.sweep() == 1


async def with_results(life: Life) -> None:
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "8", "8.5", "calf", "8", "8.5", "calf")
    await life.say("results", "now")


async def test_everything_kept_can_be_had_as_a_file(life):
    await settled(life)
    await life.say("my data")
    await life.say("A copy of it all")
    read, table, lines = (message.document for message in life.shown if message.document)
    assert "How tall are you?" in read
    assert "you wrote “175”" in read
    assert ",About" not in table
    assert '"raw": "175"' in lines
    assert '"table": "sessions"' in lines


async def test_erasing_leaves_no_row_and_no_byte(life):
    vex = Address("terminal", "quillonvex")
    await life.say("hello", *WELCOME, "five feet nine", "75", who=vex)
    life.db.execute("pragma wal_checkpoint(truncate)")
    assert b"quillonvex" in life.path.read_bytes()
    await life.say("my data", "Erase it all", who=vex)
    said = await life.say("Yes, erase it all", who=vex)
    assert "It is all erased" in said[0]
    for (table,) in life.db.execute("select name from sqlite_master where type = 'table'").fetchall():
        columns = [row[1] for row in life.db.execute(f"pragma table_info([{table}])")]
        if "person" in columns or table == "persons":
            assert life.count(table) == 0, table
    assert life.count("erasures") == 1
    for file in life.path.parent.iterdir():
        assert b"quillonvex" not in file.read_bytes(), file


async def test_a_sticker_where_a_number_is_due_is_asked_again(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape")
    await life.companion.take(Inbound(SAM, Sent("sticker")))
    said = await life.listen()
    assert "sticker" in said[0]
    assert "11 cm" in said[0]


async def test_a_second_companion_on_the_same_file_is_refused(life):
    with pytest.raises(AlreadyRunning, match="another companion"):
        Companion(life.path, life.clock)


async def test_a_file_made_by_a_newer_version_is_refused(life):
    life.db.execute("insert into _sqlite_migrations (migration_set, name, applied_at) values ('companion', 'later', '')")
    await life.stop()
    with pytest.raises(CannotOpen, match="newer version"):
        Companion(life.path, life.clock)
    await undo(life)


async def undo(life: Life) -> None:
    import sqlite3

    with contextlib.closing(sqlite3.connect(life.path)) as db:
        db.execute("delete from _sqlite_migrations where name = 'later'")
        db.commit()
    await life.start()


async def test_the_log_can_be_read_while_the_bot_writes(life):
    await settled(life)
    db = open_for_reading(life.path)
    assert db.execute("select count(*) from answer_log").fetchone()[0] == life.count("answers")
    with pytest.raises(Exception, match="readonly"):
        db.execute("delete from answers")
    db.close()


async def test_one_screen_never_shows_another_persons_messages(life):
    await with_results(life)
    life.clock.at += timedelta(weeks=9)
    await life.companion.sweep()
    ann = Address("terminal", "ann")
    store = CompanionOutbox(life.companion, "terminal", ann)
    assert await waiting_messages(store, life.clock.now()) == []
    assert len(await life.listen()) == 1


async def test_a_reminder_that_can_not_be_offered_is_given_up_and_stops_no_other(life, monkeypatch):
    await with_results(life)
    life.clock.at += timedelta(weeks=9)
    with monkeypatch.context() as patch:
        patch.setattr("companion.app.conversations.known_of", lambda *args: {}["a fault of ours"])
        await life.companion.sweep()
    assert life.db.execute("select state from reminders").fetchall()[-1] == ("failed",)
    assert await life.companion.sweep() == 0


@pytest.mark.parametrize("so_far", [("no", "no", "yes"), ("no", "no", "no", "yes")])
async def test_a_yes_heard_in_a_check_closes_what_it_may_mean_until_it_is_told(life, so_far):
    await settled(life)
    await life.say("safety check", *so_far, "menu", "knee to wall")
    assert not life.state().startswith(("knee", "warm"))


@pytest.mark.parametrize("words", ["i have chest pain", "i feel faint", "i cant breathe", "my heart hurts and i feel faint"])
async def test_chest_and_faintness_are_asked_about_first_and_told_at_once(life, words):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", words)
    assert life.state() in ("signs.when", "pain.heart_now")
    assert any("emergency department" in text for text in await life.say("now" if life.state() == "signs.when" else "yes"))


@pytest.mark.parametrize("words", ["I wet myself", "lost feeling in my saddle area", "both legs are weak"])
async def test_bladder_saddle_and_both_legs_are_asked_about_first_and_told_at_once(life, words):
    await settled(life)
    said = await life.say("knee to wall", *CHECK, *WARM, "tape", words)
    assert life.state() in ("signs.so", "pain.saddle_now")
    answers = ("yes", "not sure") if words == "both legs are weak" else ("not sure",)
    assert any("emergency department" in text for text in [*said, *await life.say(*answers)])


async def test_the_menu_is_there_also_from_what_the_menu_began(life):
    await settled(life)
    said = await life.say("About me", "menu")
    assert life.state() == "home.pick"
    assert "What would you like to do?" in said[-1]


async def test_a_test_parked_overnight_goes_on_after_a_new_check(life):
    await settled(life)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "11", "stop", "No")
    life.clock.at += timedelta(days=1)
    await life.say("go on")
    assert life.state() == "safety_check.bladder"
    await life.say(*CHECK, *WARM)
    assert life.state() == "knee_to_wall.left_2"


async def test_looking_at_the_results_again_moves_no_reminder(life):
    await with_results(life)
    (first,) = reminders.open_reminders(life.db, 1)
    life.clock.at += timedelta(days=20)
    await life.say("results", "now")
    (again,) = reminders.open_reminders(life.db, 1)
    assert again.due_at == first.due_at


async def test_drill_and_load_are_told_only_after_todays_check(life):
    await with_results(life)
    life.clock.at += timedelta(days=1)
    said = await life.say("results", "now")
    assert any("after today's safety check" in text for text in said)
    assert not any("prime" in text for text in said)
