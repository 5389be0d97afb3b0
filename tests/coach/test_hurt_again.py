""""Did something hurt?" left unanswered: the lifter is asked again, some times, and what they answer there is the answer to it.

Half an hour later, then a day apart, three times in all: choice (reference values, hurt_again).
"""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from companion.record import people
from companion.reminders.kinds import HURT
from tests.coach.gym import KIM, SAM, Gym

ASKS = "Did something hurt?"
BEGUN = datetime.fromisoformat("2026-03-09T12:00+00:00")


async def asked(gym: Gym, *words: str, at: datetime = BEGUN) -> None:
    await gym.linked()
    gym.clock.at = at
    assert ASKS in (await gym.say(*(words or ("my back feels a bit off", "stop"))))[-1]


async def heard_until(gym: Gym, until: datetime, every: int = 15) -> list[tuple[datetime, str]]:
    """What Sam hears, and when."""
    found: list[tuple[datetime, str]] = []
    while gym.clock.at < until:
        gym.clock.at += timedelta(minutes=every)
        await gym.companion.sweep()
        before = len(gym.shown)
        await gym.listen()
        found += [(gym.clock.at, message.text) for message in gym.shown[before:] if message.address == SAM]
    return found


async def test_a_lifter_who_has_not_said_whether_something_hurt_is_asked_again_three_times_and_then_left(gym):
    await asked(gym)
    heard = await heard_until(gym, BEGUN + timedelta(days=6))
    assert [at - BEGUN for at, _ in heard] == [timedelta(minutes=30), timedelta(days=1, minutes=30), timedelta(days=2, minutes=30)]
    for _, text in heard:
        assert text.startswith("You wrote “my back feels a bit off”. I asked, and have no answer yet.")
        assert text.endswith(ASKS)
        assert len(text) <= 350


async def test_it_is_asked_again_half_an_hour_after_the_last_word_not_sooner(gym):
    await asked(gym)
    assert await heard_until(gym, BEGUN + timedelta(minutes=20), 1) == []
    await gym.say("hm what")
    assert await heard_until(gym, BEGUN + timedelta(minutes=49), 1) == []
    assert len(await heard_until(gym, BEGUN + timedelta(minutes=50), 1)) == 1


async def test_in_quiet_hours_it_waits_for_their_end(gym):
    await asked(gym, at=datetime.fromisoformat("2026-03-09T23:00+00:00"))
    heard = await heard_until(gym, datetime.fromisoformat("2026-03-10T12:00+00:00"))
    assert [at.hour for at, _ in heard] == [9]


@pytest.mark.parametrize(("answer", "flow"), [("Yes, it hurt", "pain"), ("yes", "pain"), ("No", ""), ("nope", "")])
async def test_what_is_answered_there_days_later_is_the_answer_to_it(gym, answer, flow):
    await asked(gym)
    await heard_until(gym, BEGUN + timedelta(days=1, hours=1))
    gym.shown[:] = [message for message in gym.shown if ASKS in message.text][-1:]
    await gym.say(answer)
    session = people.load_session(gym.db, gym.id_of(SAM))
    assert (session.top.flow if session.stack else "") == flow
    assert session.aside is None


@pytest.mark.parametrize("answer", [("No",), ("Yes, it hurt", "Lower back", "3", "no", "no", "no")])
async def test_who_has_answered_is_not_asked_again(gym, answer):
    await asked(gym)
    await gym.companion.sweep()
    await gym.say(*answer)
    assert not any(ASKS in text for _, text in await heard_until(gym, BEGUN + timedelta(days=4), 60))
    assert gym.db.execute("select state from reminders where kind = 'hurt'").fetchall() == [("replaced",)]


async def test_an_answer_that_comes_while_it_is_due_is_not_followed_by_the_question(gym):
    """The reminder is still open where the answer and the sweep meet."""
    await asked(gym)
    await gym.companion.sweep()
    await gym.say("No")
    gym.clock.at += timedelta(hours=1)
    (due,) = gym.db.execute("select id from reminders where kind = ?", (HURT,)).fetchone()
    gym.companion._sweep._offer(gym.db, due)
    assert gym.db.execute("select state from reminders where kind = 'hurt'").fetchall() == [("dropped",)]


async def test_in_a_test_it_is_asked_again_without_words_where_none_were_written(gym):
    await gym.linked()
    await gym.say("knee to wall", "no", "no", "no", "no", "no", "no", "0", "no", "no", "start", "done", "start", "tape", "stop")
    at = gym.clock.at
    (_, text), *rest = await heard_until(gym, at + timedelta(hours=2))
    assert text.startswith("I asked, and have no answer yet.")
    assert not rest
    assert (await gym.say("Yes, it hurt"))[-1].startswith("Where does it hurt?")


async def test_a_coach_reads_that_it_will_be_asked_again(gym):
    await asked(gym)
    await gym.companion.sweep()
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "Next reminder: whether something hurt, " in gym.heard(KIM)[-1]
