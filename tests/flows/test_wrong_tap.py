"""A wrong tap: it commits at once, and is undone once, within ten minutes, only by going through every red flag again."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta
from pathlib import Path

import pytest

from flows.shared import EMERGENCY
from flows.wrong_tap import FLAGS_AGAIN
from tests.app.test_service import CHECK, WARM, Life, settled

SLIP, UNDO = "Yes", "That was a wrong tap"
ALL_NO = ("No",) * len(FLAGS_AGAIN)


@pytest.fixture
async def life(tmp_path: Path) -> AsyncIterator[Life]:
    one = Life(tmp_path / "companion.sqlite")
    await one.start()
    await settled(one)
    yield one
    await one.stop()


def fact(life: Life, name: str) -> str | None:
    row = life.db.execute("select value from facts where name = ?", (name,)).fetchone()
    return row[0] if row else None


def alerts(life: Life) -> list[tuple[str, str]]:
    return life.db.execute("select level, because from alerts order by id").fetchall()


async def test_the_first_tap_says_emergency_and_tells_the_coach_before_anything_can_be_undone(life):
    said = await life.say("safety check", SLIP)
    assert EMERGENCY in said
    assert any("wrong tap" in text for text in said)
    assert [level for level, _ in alerts(life)] == ["emergency"]
    assert fact(life, "safety.level") == "emergency"


async def test_every_red_flag_answered_no_opens_the_check_again_and_amends_the_alert(life):
    await life.say("safety check", SLIP, UNDO, *ALL_NO)
    assert life.state() == "safety_check.bladder"
    assert [level for level, _ in alerts(life)] == ["emergency", "go"]
    assert "amended" in alerts(life)[-1][1]
    await life.say(*CHECK)
    assert fact(life, "safety.level") == "go"
    await life.say("knee to wall", *WARM)
    assert life.state().startswith("knee_to_wall")


async def test_until_the_check_is_done_again_nothing_that_moves_the_body_opens(life):
    await life.say("safety check", SLIP, UNDO, *ALL_NO, "stop", "menu")
    await life.say("knee to wall")
    assert life.state() == "safety_check.bladder"


@pytest.mark.parametrize("flag", list(FLAGS_AGAIN))
@pytest.mark.parametrize("answer", ["Yes", "Not sure"])
async def test_one_flag_that_is_not_no_leaves_everything_closed(life, flag, answer):
    await life.say("safety check", SLIP, UNDO, *("No",) * list(FLAGS_AGAIN).index(flag))
    said = await life.say(answer)
    assert EMERGENCY in said
    assert fact(life, "safety.level") == "emergency"
    assert "yes or not sure" in alerts(life)[-1][1]
    await life.say(UNDO)
    assert not life.state().startswith("wrong_tap")


async def test_after_ten_minutes_it_stands(life):
    await life.say("safety check", SLIP)
    life.clock.at += timedelta(minutes=10, seconds=1)
    said = await life.say(UNDO)
    assert any("can't be undone" in text for text in said)
    assert fact(life, "safety.level") == "emergency"


async def test_up_to_ten_minutes_it_can_be_undone(life):
    await life.say("safety check", SLIP)
    life.clock.at += timedelta(minutes=10)
    await life.say(UNDO)
    assert life.state() == "wrong_tap.bladder"


TOO_LATE = "More than 30 minutes have passed since that tap"


async def tapped_and_all_but(life: Life, answers: int, minutes: float) -> list[str]:
    """Undo a slip at once, answer all flags but so many, and these so many minutes after the tap; gives what is said to the first."""
    await life.say("safety check", SLIP)
    at = life.clock.at
    await life.say(UNDO, *ALL_NO[answers:])
    life.clock.at = at + timedelta(minutes=minutes)
    return await life.say("No")


async def test_up_to_half_an_hour_after_the_tap_it_can_be_finished(life):
    """30 minutes: choice (reference values, undone_finished)."""
    await tapped_and_all_but(life, 1, 30)
    assert (fact(life, "safety.level"), life.state()) == ("go", "safety_check.bladder")


@pytest.mark.parametrize("left", [1, 2, 5, 9])
@pytest.mark.parametrize("minutes", [30 + 1 / 60, 3 * 24 * 60])
async def test_finished_later_the_emergency_stands_and_that_is_said_at_once(life, left, minutes):
    before = (await tapped_and_all_but(life, left, minutes))[:2]
    assert before[0].startswith(TOO_LATE)
    assert before[1] == EMERGENCY
    assert not life.state().startswith("wrong_tap")
    assert fact(life, "safety.level") == "emergency"
    assert [level for level, _ in alerts(life)] == ["emergency"], "nothing is new to a coach"
    assert fact(life, "safety.undone") is None


async def test_a_flag_told_late_counts_all_the_same(life):
    await life.say("safety check", SLIP, UNDO, *ALL_NO[3:])
    life.clock.at += timedelta(days=2)
    said = await life.say("Yes")
    assert EMERGENCY in said
    assert not any(TOO_LATE in text for text in said)
    assert "yes or not sure" in alerts(life)[-1][1]


async def test_what_was_left_is_not_taken_up_again_later(life):
    await life.say("safety check", SLIP, UNDO, *ALL_NO[1:], "stop")
    life.clock.at += timedelta(minutes=31)
    await life.say("go on")
    assert (fact(life, "safety.level"), life.state().startswith("wrong_tap")) == ("emergency", False)


async def test_what_was_typed_in_words_is_not_undone(life):
    await life.say("safety check")
    said = await life.say("yes, cant pee since monday")
    assert EMERGENCY in said
    assert not any("wrong tap" in text for text in said)
    said = await life.say("wrong tap")
    assert any("can't be undone" in text for text in said)


async def test_a_second_slip_on_the_same_day_stands(life):
    await life.say("safety check", SLIP, UNDO, *ALL_NO)
    said = await life.say(SLIP)
    assert EMERGENCY in said
    assert not any("wrong tap" in text for text in said)
    await life.say("wrong tap")
    assert fact(life, "safety.level") == "emergency"


async def test_nobody_is_asked_tomorrow_whether_they_went_after_a_slip(life):
    await life.say("safety check", SLIP)
    open_reminders = "select count(*) from reminders where kind = 'referral' and state = 'open'"
    assert life.db.execute(open_reminders).fetchone()[0] == 1
    await life.say(UNDO, *ALL_NO)
    assert life.db.execute(open_reminders).fetchone()[0] == 0


async def test_a_slip_in_the_pain_questions_is_undone_but_the_day_stays_closed(life):
    await life.say("knee to wall", *CHECK, *WARM, "tape", "ouch that hurts", "Chest, breath or faint")
    assert fact(life, "safety.level") == "emergency"
    await life.say(UNDO, *ALL_NO)
    assert fact(life, "safety.level") == "not_today"


async def test_pain_or_a_sign_heard_while_the_flags_are_asked_again_comes_first(life):
    await life.say("safety check", SLIP, UNDO, "No")
    await life.say("cant feel between my legs")
    assert fact(life, "safety.level") == "emergency"
    assert not life.state().startswith("wrong_tap") or life.state() == ""


@pytest.mark.parametrize("words", [
    "wrong", "that was wrong", "mistake",
    "sorry fat fingers", "i pressed yes by mistake", "no i meant no", "sorry wrong button", "i pressed the wrong one", "undo", "wrong tap",
    "Sorry, I tapped the wrong button", "oops, that was a mistake", "misclick", "i accidentally pressed yes", "i take it back",
    "false alarm", "i pressed the wrong button, it was my knee", "i pressed the wrong one, it did not hurt"])
async def test_a_wrong_tap_can_be_said_in_other_words(life, words):
    await life.say("safety check", SLIP, words)
    assert life.state() == "wrong_tap.bladder"
    assert fact(life, "safety.level") == "emergency", "nothing is undone before each flag was asked again"


@pytest.mark.parametrize("words", ["sorry fat fingers", "undo", "no i meant no", "i pressed the wrong one"])
async def test_where_there_is_nothing_to_undo_these_words_begin_nothing(life, words):
    await life.say("menu", words)
    assert not life.state().startswith("wrong_tap")
    await life.say("safety check", SLIP)
    life.clock.at += timedelta(minutes=11)
    await life.say(words)
    assert not life.state().startswith("wrong_tap")


@pytest.mark.parametrize(("told", "level"), [
    (("i really cant pee", "yes"), "emergency"),
    (("my back hurts and my foot tingles", "Lower back", "6", "yes", "no", "no", "no"), "clinician"),
    (("my back hurts", "Lower back", "6", "yes", "no", "no"), "not_today"),
    (("i fell off a ladder yesterday", "yes"), "same_day"),
    (("i fell off a ladder yesterday", "not sure"), "same_day"),
    (("im 12 weeks pregnant", "yes", "yes", "no"), "clinician")])
async def test_undoing_a_tap_takes_back_that_tap_and_nothing_that_was_told_since(life, told, level):
    await life.say("safety check", SLIP, *told)
    said = await life.say("wrong tap", *ALL_NO)
    assert fact(life, "safety.level") == level
    assert any("What else you told me stands" in text for text in said)
    assert "What else they told stands" in alerts(life)[-1][1]
    await life.say("menu", "squatting")
    assert not life.state().startswith(("squat_day", "bar"))


async def test_what_else_the_same_check_was_told_stands_when_its_tap_is_undone(life):
    await life.say("safety check", "No", "No", "Yes", "No", SLIP, "No", "Yes", "No", "No", "No", "No", "No", "0", "No")
    assert (fact(life, "safety.level"), fact(life, "safety.why")) == ("same_day", "fall history")
    await life.say("wrong tap", *ALL_NO)
    assert (fact(life, "safety.level"), fact(life, "safety.why")) == ("clinician", "history")


async def test_tingling_in_words_stands_when_the_tap_after_it_is_undone(life):
    await life.say("my back hurts and my foot tingles", "Lower back", "3", "No", "No", SLIP)
    assert fact(life, "safety.level") == "emergency"
    await life.say(UNDO, *ALL_NO)
    assert fact(life, "safety.level") == "clinician"


async def test_a_later_check_that_was_typed_is_not_undone_with_an_earlier_tap(life):
    await life.say("safety check", *("No",) * 6, "0", SLIP)
    assert fact(life, "safety.level") == "clinician"
    await life.say("safety check", "yes", "nothing bad", "yes", "yes cant pee since monday", "wrong tap", *ALL_NO)
    assert fact(life, "safety.level") == "emergency"


@pytest.mark.parametrize("words", ["wrong tap", "that was a wrong tap", "wrong button", "I tapped the wrong one"])
async def test_a_wrong_tap_midway_goes_back_to_that_question(life, words):
    await life.say("safety check", "No", "No", SLIP)
    assert life.state() == "safety_check.weakness"
    await life.say(words)
    assert life.state() == "safety_check.urgent"


async def test_nothing_is_said_to_stand_that_was_not_said(life):
    said = await life.say("safety check", "No", "No", SLIP, "menu", "wrong tap")
    assert not any("stands" in text for text in said)
