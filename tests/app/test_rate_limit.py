"""Who floods is slowed and told once; others are answered at once, and pain is always heard."""

from __future__ import annotations

import asyncio
from datetime import timedelta
from time import perf_counter

import pytest

from companion.app.outbox_store import CompanionOutbox
from companion.app.rate_limit import COUNTED_MOST, SLOWER, TAKEN_MOST, WITHIN, Flood, Pace
from companion.app.run import working
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.channels.telegram import TelegramSettings, run_telegram
from companion.port import Address, Edited, Event, Inbound, Sent, Tapped, Typed
from tests.fakes.bot_api import TOKEN, BotApi
from tests.fakes.clock import START, FakeClock

SAM, MIA = Address("telegram", "1"), Address("telegram", "2")
HUSHED, HI = TAKEN_MOST + 2, Typed("hi")


def met(flood: Flood, count: int, event: Event = HI, who: Address = SAM, after: timedelta = timedelta()) -> list[Pace]:
    return [flood.meet(Inbound(who, event), START + after) for _ in range(count)]


def test_so_many_are_taken_the_next_is_told_and_the_rest_are_passed_over():
    assert met(Flood(), TAKEN_MOST + 3) == [Pace.TAKE] * TAKEN_MOST + [Pace.TELL, Pace.HUSH, Pace.HUSH]


def test_after_the_time_is_over_messages_are_taken_again():
    flood = Flood()
    met(flood, 500)
    assert met(flood, 1, after=WITHIN - timedelta(seconds=1)) == [Pace.HUSH]
    assert met(flood, 1, after=WITHIN) == [Pace.TAKE]


def test_somebody_who_answers_at_their_own_pace_is_never_slowed():
    flood = Flood()
    assert {flood.meet(Inbound(SAM, Tapped("a")), START + timedelta(seconds=2 * n)) for n in range(500)} == {Pace.TAKE}


def test_one_who_floods_slows_nobody_else():
    flood = Flood()
    met(flood, 500)
    assert met(flood, 1, who=MIA) == [Pace.TAKE]


@pytest.mark.parametrize("event", [Typed("ouch"), Typed("my back just went"), Edited("it hurts"), Sent("photo", "x", "this hurts"),
                                   Typed("stop"), Tapped("squat_look.1.plain_do.!stop")])
def test_pain_and_stop_are_heard_in_the_middle_of_a_flood(event: Event):
    flood = Flood()
    met(flood, HUSHED)
    assert met(flood, 3, event) == [Pace.TAKE] * 3


def test_after_pain_the_answers_to_its_questions_are_taken_too():
    flood = Flood()
    met(flood, HUSHED)
    assert met(flood, 1, Typed("ouch")) + met(flood, 3, Tapped("pain.1.bad.3")) == [Pace.TAKE] * 4


def test_stop_does_not_use_up_the_one_line_that_tells():
    flood = Flood()
    met(flood, TAKEN_MOST)
    assert met(flood, 1, Typed("stop")) + met(flood, 2) == [Pace.TAKE, Pace.TELL, Pace.HUSH]


def test_what_waited_while_the_bot_was_away_is_judged_by_when_it_was_sent():
    flood = Flood()
    now = START + timedelta(hours=5)
    slow = [Inbound(SAM, Typed("hi"), sent_at=START + timedelta(seconds=30 * n)) for n in range(200)]
    assert {flood.meet(one, now) for one in slow} == {Pace.TAKE}
    fast = [Inbound(MIA, Typed("hi"), sent_at=START) for _ in range(HUSHED)]
    assert [flood.meet(one, now) for one in fast][TAKEN_MOST:] == [Pace.TELL, Pace.HUSH]


def test_a_clock_that_goes_back_hushes_nobody_for_long():
    flood = Flood()
    met(flood, HUSHED, after=timedelta(hours=3))
    assert met(flood, 1) == [Pace.TAKE]


def test_no_more_than_so_many_are_counted():
    flood = Flood()
    for n in range(COUNTED_MOST + 5):
        met(flood, 1, who=Address("telegram", str(n)))
    assert len(flood._counts) == COUNTED_MOST


async def test_a_flood_is_told_once_and_what_is_passed_over_changes_nothing(tmp_path):
    companion = Companion(tmp_path / "c.sqlite", FakeClock())
    companion.flood = Flood()
    store = CompanionOutbox(companion, "telegram")
    async with working(companion):
        for n in range(TAKEN_MOST + 30):
            await companion.take(Inbound(SAM, Typed("hello"), update_id=n))
        waiting = [message.text for message in companion.unkept.values()]
        assert (await store.due(START))[0].address == SAM
        taken = companion.db.execute("select count(*) from updates").fetchone()[0]
    companion.close()
    assert waiting.count(SLOWER) == 1
    assert waiting[-1] == SLOWER
    assert taken == TAKEN_MOST


async def test_another_is_answered_in_under_two_seconds_while_somebody_sends_five_hundred(tmp_path):
    companion, stop, clock = Companion(tmp_path / "c.sqlite", SystemClock()), asyncio.Event(), SystemClock()
    companion.flood = Flood()
    async with BotApi() as api, working(companion):
        for _ in range(500):
            await api.say(1, "hello")
        channel = asyncio.create_task(run_telegram(TelegramSettings(TOKEN, api.url), companion.take, CompanionOutbox(companion, "telegram"),
                                                   clock, stop, lambda wake: setattr(companion, "on_commit", lambda channel: wake())))
        began = perf_counter()
        await api.say(2, "hello")
        await api._until(lambda: any(one.chat_id == 2 for one in api.sent))
        took = perf_counter() - began
        stop.set()
        await channel
    companion.close()
    assert took < 2
