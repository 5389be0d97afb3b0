"""The drainer: at least once, in order per chat, within limits, and nothing lost by trouble."""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import AsyncIterator, Callable
from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.channels.drainer import BACKOFF_MOST, TELEGRAM_LIMITS, Drainer, Limits, backoff
from companion.port import Address, Delivered, Delivery, Gone, Later, Outgoing, Rank, Refused, Unreachable, Unsure
from tests.fakes.clock import START, FakeClock, settle
from tests.fakes.memory_outbox import MemoryOutbox


class Way:
    """A channel that notes what is sent and when, and answers as told; ``shut`` keeps sends under way."""

    def __init__(self, clock: FakeClock) -> None:
        self.clock = clock
        self.log: list[tuple[datetime, int, str]] = []
        self.answer: Callable[[Outgoing], Delivery] = lambda message: Delivered(f"m{message.id}")
        self.open = asyncio.Event()
        self.open.set()
        self.under_way = self.most_under_way = 0

    async def send(self, message: Outgoing) -> Delivery:
        self.log.append((self.clock.now(), int(message.address.id), message.text))
        self.under_way += 1
        self.most_under_way = max(self.most_under_way, self.under_way)
        await self.open.wait()
        self.under_way -= 1
        return self.answer(message)

    @property
    def texts(self) -> list[str]:
        return [text for _, _, text in self.log]

    def seconds_to(self, chat: int) -> list[float]:
        return [(at - START).total_seconds() for at, to, _ in self.log if to == chat]


class Desk:
    """A drainer at work with its clock, outbox and way."""

    def __init__(self, limits: Limits = TELEGRAM_LIMITS) -> None:
        self.clock, self.store = FakeClock(), MemoryOutbox()
        self.way = Way(self.clock)
        self.drainer = Drainer(self.store, self.way, self.clock, limits)

    @contextlib.asynccontextmanager
    async def running(self) -> AsyncIterator[asyncio.Task[None]]:
        task = asyncio.create_task(self.drainer.run())
        try:
            await settle()
            yield task
        finally:
            task.cancel()
            await asyncio.gather(task, return_exceptions=True)
            await self.drainer.close()


async def test_a_message_that_is_due_leaves_at_once_and_is_marked_with_its_id() -> None:
    desk = Desk()
    message = desk.store.put(1)
    async with desk.running():
        assert desk.store.sent == {message: "m1"}
        assert desk.way.seconds_to(1) == [0.0]


async def test_a_wake_sends_what_was_put_meanwhile_without_any_time_passing() -> None:
    desk = Desk()
    async with desk.running():
        desk.store.put(1)
        desk.drainer.wake()
        await settle()
        assert desk.way.seconds_to(1) == [0.0]


async def test_a_message_for_later_leaves_when_its_time_comes() -> None:
    desk = Desk()
    desk.store.put(1, at=START + timedelta(seconds=12))
    async with desk.running():
        await desk.clock.advance(11.9)
        assert desk.way.log == []
        await desk.clock.advance(0.2)
        assert desk.way.seconds_to(1) == [12.0]


async def test_without_a_wake_the_outbox_is_looked_at_again_within_a_minute() -> None:
    desk = Desk()
    async with desk.running():
        desk.store.put(1)
        await desk.clock.advance(60)
        assert desk.way.texts == ["hello"]


async def test_one_chat_gets_its_messages_in_order_and_at_most_one_a_second() -> None:
    desk = Desk()
    for text in "abc":
        desk.store.put(1, text)
    async with desk.running():
        await desk.clock.advance(5)
        assert desk.way.texts == ["a", "b", "c"]
        assert desk.way.seconds_to(1) == [0.0, 1.0, 2.0]


async def test_the_second_counts_from_the_end_of_a_slow_send() -> None:
    desk = Desk()
    desk.store.put(1, "a")
    desk.store.put(1, "b")
    desk.way.open.clear()
    async with desk.running():
        await desk.clock.advance(5)
        desk.drainer.wake()
        await settle()
        assert desk.way.texts == ["a"]
        desk.way.open.set()
        await desk.clock.advance(2)
        assert desk.way.seconds_to(1) == [0.0, 6.0]


async def test_no_more_than_thirty_leave_within_any_second_and_the_limit_is_used() -> None:
    desk = Desk()
    for chat in range(300):
        desk.store.put(chat)
    async with desk.running():
        await desk.clock.advance(12)
    at = [moment for moment, _, _ in desk.way.log]
    assert len(at) == 300
    assert all(later - earlier >= timedelta(seconds=1) for earlier, later in zip(at, at[30:], strict=False))
    assert (at[-1] - at[0]).total_seconds() <= 300 / 30 / 0.93


async def test_a_few_replies_at_once_do_not_wait_for_each_other() -> None:
    desk = Desk()
    for chat in range(15):
        desk.store.put(chat)
    async with desk.running():
        assert len(desk.store.sent) == 15


async def test_while_the_window_is_full_wakes_do_not_search_the_outbox() -> None:
    desk = Desk()
    for chat in range(60):
        desk.store.put(chat)
    async with desk.running():
        before = desk.store.looks
        for _ in range(50):
            desk.drainer.wake()
            await settle(3)
        assert desk.store.looks == before


async def test_thirty_chats_are_sent_to_side_by_side_and_no_more() -> None:
    desk = Desk(Limits(per_chat=1, in_window=1000, window=1, at_once=30))
    for chat in range(50):
        desk.store.put(chat)
    desk.way.open.clear()
    async with desk.running():
        assert desk.way.under_way == 30
        desk.way.open.set()
        await desk.clock.advance(0)
        assert len(desk.store.sent) == 50
    assert desk.way.most_under_way == 30


async def test_a_reply_passes_three_thousand_waiting_reminders() -> None:
    desk = Desk()
    for chat in range(3000):
        desk.store.put(chat, "reminder", rank=Rank.REMINDER)
    async with desk.running():
        await desk.clock.advance(10)
        desk.store.put(5000, "reply")
        desk.drainer.wake()
        asked = desk.clock.now()
        await desk.clock.advance(2)
    answered = next(at for at, _, text in desk.way.log if text == "reply")
    assert answered - asked <= timedelta(seconds=0.2)


async def test_a_flood_wait_is_obeyed_for_that_chat_while_others_go_on() -> None:
    desk = Desk()
    desk.store.put(1, "a")
    desk.store.put(1, "b")
    desk.way.answer = lambda message: Later(17) if message.attempt == 0 and message.text == "a" else Delivered("m")
    async with desk.running():
        for chat in (2, 3):
            desk.store.put(chat)
        desk.drainer.wake()
        await desk.clock.advance(30)
    assert desk.way.seconds_to(1) == [0.0, 17.0, 18.0]
    assert desk.way.seconds_to(2) == desk.way.seconds_to(3) == [0.0]
    assert not desk.store.waiting


async def test_where_all_chats_are_told_to_wait_all_wait_and_one_tries_first() -> None:
    desk = Desk()
    for chat in range(40):
        desk.store.put(chat)
    shut_until = START + timedelta(seconds=20)
    desk.way.answer = lambda message: Later(20) if desk.clock.now() < shut_until else Delivered("m")
    desk.way.open.clear()
    async with desk.running():
        desk.way.open.set()
        await desk.clock.advance(19.9)
        assert {at for at, _, _ in desk.way.log} == {START}
        desk.way.open.clear()
        await desk.clock.advance(0.2)
        assert desk.way.under_way == 1
        desk.way.open.set()
        await desk.clock.advance(10)
    assert len(desk.store.sent) == 40


async def test_what_may_have_arrived_is_sent_again_unless_it_is_a_courtesy() -> None:
    desk = Desk()
    may, must = desk.store.put(1, rank=Rank.COURTESY), desk.store.put(2)
    desk.way.answer = lambda message: Unsure("timed out") if message.attempt == 0 else Delivered("m")
    async with desk.running():
        await desk.clock.advance(5)
    assert desk.store.dropped == {may: "may have arrived"}
    assert desk.store.sent == {must: "m"}
    assert desk.way.seconds_to(2) == [0.0, 1.0]


async def test_an_hour_without_network_loses_nothing_and_ends_within_half_a_minute() -> None:
    desk = Desk()
    for chat in range(200):
        desk.store.put(chat)
    back = START + timedelta(hours=1)
    desk.way.answer = lambda message: Unreachable("no network") if desk.clock.now() < back else Delivered("m")
    async with desk.running():
        await desk.clock.advance(3600 - 1)
        tries = len(desk.way.log)
        await desk.clock.advance(1 + BACKOFF_MOST + 10)
    assert len(desk.store.sent) == 200
    assert tries < 200


async def test_a_chat_that_fails_alone_does_not_hold_up_the_others() -> None:
    desk = Desk()
    desk.store.put(1, "poison")
    desk.way.answer = lambda message: Unreachable("500") if message.text == "poison" else Delivered("m")
    async with desk.running():
        for second in range(40):
            desk.store.put(2, str(second))
            desk.drainer.wake()
            await desk.clock.advance(1)
    assert len(desk.way.seconds_to(2)) >= 39
    assert desk.way.seconds_to(1) == [0.0, 1.0, 3.0, 7.0, 15.0, 31.0]


async def test_a_person_who_is_gone_is_marked_and_nothing_more_is_sent() -> None:
    desk = Desk()
    desk.store.put(1)
    desk.store.put(1)
    desk.way.answer = lambda message: Gone("blocked")
    async with desk.running():
        await desk.clock.advance(5)
    assert desk.store.gone == {Address("telegram", "1"): "blocked"}
    assert len(desk.way.log) == 1


async def test_a_refused_message_is_dropped_with_its_reason_and_the_next_follows() -> None:
    desk = Desk()
    bad, good = desk.store.put(1, "bad"), desk.store.put(1, "good")
    desk.way.answer = lambda message: Refused("too long") if message.text == "bad" else Delivered("m")
    async with desk.running():
        await desk.clock.advance(2)
    assert desk.store.dropped == {bad: "too long"}
    assert desk.store.sent == {good: "m"}


async def test_a_fault_in_sending_drops_that_message_only() -> None:
    desk = Desk()

    def answer(message: Outgoing) -> Delivery:
        if message.text == "bad":
            raise ValueError("private words")
        return Delivered("m")

    desk.way.answer = answer
    bad, good = desk.store.put(1, "bad"), desk.store.put(2, "good")
    async with desk.running():
        pass
    assert desk.store.dropped == {bad: "ValueError"}
    assert desk.store.sent == {good: "m"}


async def test_a_store_that_can_not_be_written_ends_the_drainer() -> None:
    desk = Desk()
    desk.store.put(1)
    desk.store.broken = OSError("disk full")
    async with desk.running() as task:
        await desk.clock.advance(2)
        with pytest.raises(OSError, match="disk full"):
            task.result()


async def test_a_flush_sends_what_can_leave_at_once_and_returns() -> None:
    desk = Desk()
    for chat in (1, 1, 2, 3):
        desk.store.put(chat)
    await desk.drainer.flush()
    assert len(desk.store.sent) == 3
    assert len(desk.store.waiting) == 1


async def test_a_send_given_up_stays_due() -> None:
    desk = Desk()
    desk.store.put(1)
    desk.way.open.clear()
    async with desk.running():
        assert desk.way.under_way == 1
    assert len(desk.store.waiting) == 1
    assert not desk.store.sent


async def test_a_channel_without_limits_does_not_wait() -> None:
    desk = Desk(Limits(per_chat=0.0, in_window=10_000, window=0.0, at_once=100))
    for text in "abc":
        desk.store.put(1, text)
    await desk.drainer.flush()
    assert desk.way.texts == ["a", "b", "c"]


async def test_a_store_that_names_a_moment_in_the_past_is_not_asked_without_end() -> None:
    desk = Desk()
    desk.store.put(1)
    desk.way.answer = lambda message: Later(100)

    async def past(now: datetime) -> datetime:
        return START

    desk.store.next_due = past  # type: ignore[method-assign]
    async with desk.running():
        await desk.clock.advance(10)
    assert 5 <= desk.store.looks <= 20


@pytest.mark.parametrize("hours", [-1, 1])
async def test_setting_the_clock_mutes_nobody_and_keeps_the_pace(hours: int) -> None:
    desk = Desk()
    for chat in (1, 1, 2):
        desk.store.put(chat, at=START - timedelta(days=1))
    async with desk.running():
        desk.clock.jump(timedelta(hours=hours))
        await desk.clock.advance(0.9)
        assert len(desk.store.sent) == 2
        await desk.clock.advance(0.2)
        assert len(desk.store.sent) == 3
        desk.way.answer = lambda message: Unreachable("?") if message.attempt == 0 else Delivered("m")
        desk.store.put(3, at=START - timedelta(days=1))
        desk.drainer.wake()
        await settle()
        desk.clock.jump(timedelta(hours=-hours))
        await desk.clock.advance(1.1)
    assert len(desk.store.sent) == 4


async def test_pain_leaves_before_whatever_waits_and_strangers_last() -> None:
    desk = Desk()
    for rank in reversed(Rank):
        for chat in range(40):
            desk.store.put(100 * rank + chat, rank.name, rank=rank)
    async with desk.running():
        await desk.clock.advance(20)
    order = [Rank[text] for text in desk.way.texts]
    assert len(order) == 40 * len(Rank)
    for rank in Rank:  # of three messages two are of the best rank that waits, at least
        last = len(order) - order[::-1].index(rank)
        assert sum(one > rank for one in order[:last]) <= last // 3 + 1


async def test_taps_are_answered_while_pain_floods() -> None:
    desk = Desk()
    for chat in range(300):
        desk.store.put(chat, "pain", rank=Rank.PAIN)
    async with desk.running():
        await desk.clock.advance(2)
        asked = desk.clock.now()
        for chat in range(1000, 1010):
            desk.store.put(chat, "tap")
        await desk.clock.advance(3)
    assert max(at - asked for at, _, text in desk.way.log if text == "tap") < timedelta(seconds=2)


async def test_pain_that_is_new_is_answered_within_two_seconds_though_fifty_accounts_flood_and_all_others_tap() -> None:
    desk = Desk()
    desk.store.put(77, "menu")
    async with desk.running():
        await desk.clock.advance(1.5)
        for chat in range(300):
            desk.store.put(1000 + chat, "tap")
        for number in range(5):
            for chat in range(50):
                desk.store.put(chat, f"flood {number}", rank=Rank.PAIN)
        desk.store.put(77, "pain", rank=Rank.PAIN)
        asked = desk.clock.now()
        desk.drainer.wake()
        await desk.clock.advance(4)
    assert [at - asked < timedelta(seconds=2) for at, _, text in desk.way.log if text == "pain"] == [True]
    assert sum(text == "tap" for _, _, text in desk.way.log) > 20


async def test_a_flood_costs_only_the_chat_it_comes_from() -> None:
    desk = Desk()
    for chat in range(50):
        for number in range(40):
            desk.store.put(chat, f"{number}")
    async with desk.running():
        await desk.clock.advance(10)
        asked = desk.clock.now()
        for number in range(3):
            desk.store.put(77, f"other {number}")
        desk.drainer.wake()
        await desk.clock.advance(4)
    there = [(at - asked).total_seconds() for at, chat, _ in desk.way.log if chat == 77]
    assert there[0] < 0.3
    assert there[-1] < 2 * 51 / 28  # two rounds of all who want something


async def test_a_clean_stop_waits_a_few_seconds_for_what_is_due_and_no_longer() -> None:
    desk = Desk()
    for _ in range(10):
        desk.store.put(1)
    desk.store.put(2, at=START + timedelta(seconds=2))
    closing = asyncio.create_task(desk.drainer.flush(3.0))
    await desk.clock.advance(10)
    assert closing.done()
    assert desk.way.seconds_to(1) == [0.0, 1.0, 2.0, 3.0]


@given(st.integers(0, 10**9))
def test_the_wait_grows_with_the_tries_up_to_its_bound(tries: int) -> None:
    assert 1 <= backoff(tries) <= backoff(tries + 1) <= BACKOFF_MOST


@given(st.lists(st.tuples(st.integers(1, 4), st.sampled_from("dsulg")), max_size=25))
def test_whatever_fails_each_chat_gets_its_messages_in_order_and_none_vanishes(plan: list[tuple[int, str]]) -> None:
    async def check() -> None:
        desk = Desk()
        outcomes: dict[str, Delivery] = {"s": Unsure("?"), "u": Unreachable("?"), "l": Later(3), "g": Refused("?")}
        how = {desk.store.put(chat, f"{place}"): kind for place, (chat, kind) in enumerate(plan)}

        def answer(message: Outgoing) -> Delivery:
            kind = how[message.id]
            return Delivered("m") if kind == "d" or (message.attempt > 0 and kind != "g") else outcomes[kind]

        desk.way.answer = answer
        async with desk.running():
            await desk.clock.advance(400)
        assert not desk.store.waiting
        assert set(desk.store.sent) | set(desk.store.dropped) == set(how)
        for chat in range(1, 5):
            order = [int(text) for _, to, text in desk.way.log if to == chat]
            assert order == sorted(order)

    asyncio.run(check())
