"""Who floods is slowed and told once; others are answered at once, and pain is always heard."""

from __future__ import annotations

import asyncio
from datetime import timedelta
from time import perf_counter

import pytest

from companion.app.outbox_store import CompanionOutbox
from companion.app.rate_limit import ACCEPTED_MOST, COUNTED_MOST, SLOW_DOWN, WINDOW, Admission, RateLimit
from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.channels.telegram import TelegramSettings, run_telegram
from companion.port import Address, Edited, Event, Inbound, Sent, Tapped, Typed
from tests.fakes.bot_api import TOKEN, BotApi
from tests.fakes.clock import START, FakeClock

SAM, MIA = Address("telegram", "1"), Address("telegram", "2")
BEYOND, HI = ACCEPTED_MOST + 2, Typed("hi")


def met(limit: RateLimit, count: int, event: Event = HI, who: Address = SAM, after: timedelta = timedelta()) -> list[Admission]:
    return [limit.admit(Inbound(who, event), START + after) for _ in range(count)]


def test_so_many_are_taken_the_next_is_told_and_the_rest_are_passed_over():
    assert met(RateLimit(), ACCEPTED_MOST + 3) == [Admission.ACCEPT] * ACCEPTED_MOST + [Admission.WARN, Admission.DROP, Admission.DROP]


def test_after_the_time_is_over_messages_are_taken_again():
    limit = RateLimit()
    met(limit, 500)
    assert met(limit, 1, after=WINDOW - timedelta(seconds=1)) == [Admission.DROP]
    assert met(limit, 1, after=WINDOW) == [Admission.ACCEPT]


def test_somebody_who_answers_at_their_own_pace_is_never_slowed():
    limit = RateLimit()
    assert {limit.admit(Inbound(SAM, Tapped("a")), START + timedelta(seconds=2 * n)) for n in range(500)} == {Admission.ACCEPT}


def test_one_who_floods_slows_nobody_else():
    limit = RateLimit()
    met(limit, 500)
    assert met(limit, 1, who=MIA) == [Admission.ACCEPT]


@pytest.mark.parametrize("event", [Typed("ouch"), Typed("my back just went"), Edited("it hurts"), Sent("photo", "x", "this hurts"),
                                   Typed("stop"), Tapped("squat_look.1.plain_do.!stop")])
def test_pain_and_stop_are_heard_in_the_middle_of_a_flood(event: Event):
    limit = RateLimit()
    met(limit, BEYOND)
    assert met(limit, 3, event) == [Admission.ACCEPT] * 3


def test_after_pain_the_answers_to_its_questions_are_taken_too():
    limit = RateLimit()
    met(limit, BEYOND)
    assert met(limit, 1, Typed("ouch")) + met(limit, 3, Tapped("pain.1.bad.3")) == [Admission.ACCEPT] * 4


def test_stop_does_not_use_up_the_one_line_that_tells():
    limit = RateLimit()
    met(limit, ACCEPTED_MOST)
    assert met(limit, 1, Typed("stop")) + met(limit, 2) == [Admission.ACCEPT, Admission.WARN, Admission.DROP]


def test_what_waited_while_the_bot_was_away_is_judged_by_when_it_was_sent():
    limit = RateLimit()
    now = START + timedelta(hours=5)
    slow = [Inbound(SAM, Typed("hi"), sent_at=START + timedelta(seconds=30 * n)) for n in range(200)]
    assert {limit.admit(one, now) for one in slow} == {Admission.ACCEPT}
    fast = [Inbound(MIA, Typed("hi"), sent_at=START) for _ in range(BEYOND)]
    assert [limit.admit(one, now) for one in fast][ACCEPTED_MOST:] == [Admission.WARN, Admission.DROP]


def test_a_clock_that_goes_back_hushes_nobody_for_long():
    limit = RateLimit()
    met(limit, BEYOND, after=timedelta(hours=3))
    assert met(limit, 1) == [Admission.ACCEPT]


def test_no_more_than_so_many_are_counted():
    limit = RateLimit()
    for n in range(COUNTED_MOST + 5):
        met(limit, 1, who=Address("telegram", str(n)))
    assert len(limit._counts) == COUNTED_MOST


async def test_a_flood_is_told_once_and_what_is_passed_over_changes_nothing(tmp_path):
    companion = Companion(tmp_path / "c.sqlite", FakeClock())
    companion.rate_limit = RateLimit()
    store = CompanionOutbox(companion, "telegram")
    async with running_writer(companion):
        for n in range(ACCEPTED_MOST + 30):
            await companion.take(Inbound(SAM, Typed("hello"), update_id=n))
        waiting = [message.text for message in companion.unsaved.to(SAM)]
        assert (await store.due(START))[0].address == SAM
        taken = companion.db.execute("select count(*) from updates").fetchone()[0]
    companion.close()
    assert waiting.count(SLOW_DOWN) == 1
    assert waiting[-1] == SLOW_DOWN
    assert taken == ACCEPTED_MOST


async def test_another_is_answered_in_under_two_seconds_while_somebody_sends_five_hundred(tmp_path):
    companion, stop, clock = Companion(tmp_path / "c.sqlite", SystemClock()), asyncio.Event(), SystemClock()
    companion.rate_limit = RateLimit()
    async with BotApi() as api, running_writer(companion):
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
