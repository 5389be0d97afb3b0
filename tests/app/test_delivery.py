"""What is promised of every message: pain first, nothing lost with the process, nothing mute when the clock is set."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from companion.app.outbox_store import CompanionOutbox
from companion.port import Address, Inbound, Outgoing, Rank, Tapped, Typed
from companion.record import outbox, owed, status
from tests.app.test_service import Life
from tests.fakes.clock import FakeClock

SAM, EVE = Address("telegram", "7000001"), Address("telegram", "7000002")
WELCOME = ("Yes, keep them", "yes", "cm and kg", "UTC", "yes")


class Bot(Life):
    """A companion on a file, and what it has sent to whom; it may be ended and started again."""

    def __init__(self, path: Path) -> None:
        super().__init__(path)
        self.clock = FakeClock()

    async def start(self) -> None:
        await super().start()
        self.store = CompanionOutbox(self.companion, "telegram")

    async def hear(self, *replies: str, who: Address = SAM) -> None:
        """Take what somebody types or taps; nothing is sent."""
        for reply in replies:
            self.updates += 1
            data = next((button.data for message in reversed(self.shown) if message.address == who for row in message.buttons
                         for button in row if button.label == reply), None)
            await self.companion.take(Inbound(who, Tapped(data) if data else Typed(reply), self.updates, "A name"))

    async def send(self, most: int = 1000) -> list[Outgoing]:
        """Send what is due, in order; returns it."""
        sent: list[Outgoing] = []
        while len(sent) < most and (due := await self.store.due(self.clock.now())):
            sent.append(due[0])
            await self.store.mark_sent(due[0].id, self.clock.now(), str(due[0].id))
        self.shown += sent
        return sent

    async def say(self, *replies: str, who: Address = SAM) -> list[Outgoing]:
        """Take and send, reply by reply; returns what was sent last."""
        sent: list[Outgoing] = []
        for reply in replies:
            await self.hear(reply, who=who)
            sent = await self.send()
        return sent

    async def a_lifter(self, who: Address = SAM) -> None:
        """Bring somebody through the welcome."""
        await self.say("hello", *WELCOME, who=who)

    def rows(self, query: str) -> list[tuple]:
        return self.companion.db.conn.execute(query).fetchall()


@pytest.fixture
async def bot(tmp_path):
    one = Bot(tmp_path / "c.sqlite")
    await one.start()
    yield one
    await one.stop()


@pytest.mark.parametrize("hours", [-1, 1])
async def test_what_is_due_stays_due_when_the_clock_is_set(bot, hours):
    await bot.a_lifter()
    await bot.hear("I have a sharp pain in my lower back")
    await bot.send(1)
    bot.clock.jump(timedelta(hours=hours))
    await bot.hear("hello", who=EVE)
    sent = await bot.send()
    assert {one.address for one in sent} == {SAM, EVE}
    assert status.mark_of(bot.companion.db.conn, status.CLOCK_JUMP)[0] == hours * 3600


@pytest.mark.parametrize("hours", [-1, 1])
async def test_a_timed_hold_lasts_as_long_whatever_the_clock_is_set_to(bot, hours):
    await bot.a_lifter()
    made = bot.clock.now()
    bot.companion.db.execute(
        "insert into outbox (person, channel, address, text, buttons, must_arrive, timed, unasked, due_at, made_at) values (1, "
        "'telegram', ?, 'Time.', '[]', 1, 1, 0, ?, ?)", (SAM.id, _text(made + timedelta(seconds=40)), _text(made)))
    await bot.clock.advance(10)
    bot.clock.jump(timedelta(hours=hours))
    assert await bot.store.due(bot.clock.now()) == []
    assert await bot.store.next_due(bot.clock.now()) == bot.clock.now() + timedelta(seconds=30)


async def test_what_a_clock_set_back_between_two_runs_made_late_is_due_at_once(bot):
    await bot.a_lifter()
    await bot.hear("I have a sharp pain in my lower back")
    await bot.stop()
    bot.clock.jump(-timedelta(hours=1))
    await bot.start()
    assert (await bot.send())[0].address == SAM


async def test_answers_stay_in_order_when_the_clock_is_set_back_and_the_process_ends(bot):
    await bot.a_lifter()
    await bot.hear("help")
    bot.clock.jump(-timedelta(hours=20))
    await bot.hear("my data")
    await bot.clock.advance(5)
    await bot.restart()
    numbers = [one.id for one in await bot.send()]
    assert numbers == sorted(numbers)
    assert len(numbers) > 1


async def test_the_answer_to_pain_leaves_before_whatever_waits(bot):
    await bot.a_lifter()
    for number in range(300):
        await bot.hear("/start", who=Address("telegram", str(number)))
    await bot.hear("menu")
    await bot.hear("I have a sharp pain in my lower back")
    first = await bot.send(1)
    assert first[0].address == SAM
    assert first[0].rank is Rank.PAIN
    rest = await bot.send()
    assert [one.rank for one in rest] == sorted(one.rank for one in rest)
    assert sum(one.rank is Rank.STRANGER for one in rest) == 300 * 2


@pytest.mark.parametrize("words", ["my knee hurts", "I am numb between my legs", "I want to kill myself", "my chest feels tight"])
async def test_pain_red_flags_and_self_harm_are_of_the_first_class(bot, words):
    await bot.a_lifter()
    assert {one.rank for one in await bot.say(words)} == {Rank.PAIN}
    assert {one.rank for one in await bot.say("hello", who=EVE)} == {Rank.STRANGER}
    assert {one.rank for one in await bot.say(words, who=EVE)} == {Rank.PAIN_OF_STRANGER}


async def test_a_thousand_times_the_same_is_answered_with_what_one_needs(bot):
    await bot.a_lifter()
    before = bot.rows("select count(*) from outbox")[0][0]
    await bot.hear("it hurts")
    once = bot.rows("select count(*) from outbox")[0][0] - before
    for _ in range(1000):
        await bot.hear("it hurts")
    assert bot.rows("select count(*) from outbox")[0][0] - before <= once + 2
    assert bot.rows("select count(*) from runs where flow = 'pain'") == [(1,)]


@pytest.mark.parametrize("who", [SAM, EVE])
@pytest.mark.parametrize("hours", [-1, 0])
async def test_pain_that_is_said_again_and_again_has_waited_since_the_first_time(bot, who, hours):
    await bot.a_lifter()
    for _ in range(7):
        await bot.say("it hurts", who=who)
    for _ in range(8):
        await bot.clock.advance(10)
        await bot.hear("it hurts", who=who)
    bot.clock.jump(timedelta(hours=hours))
    await bot.companion.sweep()
    left = outbox.backlog(bot.companion.db.conn, bot.clock.now(), "telegram")
    assert bot.clock.now() - left.pain == timedelta(seconds=70)
    assert await bot.send(1)
    left = outbox.backlog(bot.companion.db.conn, bot.clock.now(), "telegram")
    assert left.pain in (None, bot.clock.now())


async def test_words_from_before_an_erasure_are_never_written(bot, tmp_path):
    await bot.say("hello", "my quillon knee hurts", "/erase", "Yes, erase it all", who=SAM)
    await bot.a_lifter()
    assert bot.rows("select count(*) from persons") == [(1,)]
    assert bot.rows("select count(*) from runs where flow = 'pain'") == [(0,)]
    await bot.stop()
    assert not any(b"quillon" in file.read_bytes() for file in tmp_path.rglob("*") if file.is_file())
    await bot.start()


async def test_the_greeting_of_a_stranger_survives_the_process(bot):
    await bot.hear("hello", who=EVE)
    await bot.restart()
    sent = await bot.send()
    assert [one.address for one in sent] == [EVE, EVE]
    assert sent[0].text.startswith("Hello.")
    assert bot.rows("select count(*) from owed") == [(0,)]
    await bot.say(*WELCOME, who=EVE)
    assert bot.rows("select count(*) from persons") == [(1,)]


async def test_the_answer_to_a_strangers_pain_survives_the_process_and_their_words_do_not(bot, tmp_path):
    await bot.say("hello", who=EVE)
    await bot.hear("my quillon knee hurts", who=EVE)
    assert bot.rows("select channel, address, kind from owed") == [("telegram", EVE.id, owed.OWES_PAIN)]
    await bot.restart()
    sent = await bot.send()
    assert [one.rank for one in sent] == [Rank.PAIN_OF_STRANGER] * len(sent)
    assert "Where does it hurt?" in sent[-1].text
    await bot.say("Knee", who=EVE)
    await bot.stop()
    assert not any(b"quillon" in file.read_bytes() for file in tmp_path.rglob("*") if file.is_file())
    await bot.start()


async def test_a_stranger_who_thinks_of_suicide_is_told_where_to_get_help_after_a_restart_too(bot):
    await bot.say("hello", who=EVE)
    await bot.hear("I want to kill myself", who=EVE)
    there = [one.text for one in await bot.store.due(bot.clock.now())]
    await bot.restart()
    sent = await bot.send()
    assert sent[0].text == there[0]
    assert {one.rank for one in sent} == {Rank.PAIN_OF_STRANGER}


async def test_a_stranger_whose_first_words_are_of_pain_is_heard(bot):
    sent = await bot.say("my knee hurts", who=EVE)
    assert "Where does it hurt?" in sent[-1].text
    await bot.say("Nothing hurts", "Right, nothing", who=EVE)
    assert (await bot.say("again", who=EVE))[-1].buttons[0][0].label == "Yes, keep them"


async def test_who_was_erased_is_told_so_after_a_restart_and_then_nothing_is_left_of_the_chat(bot, tmp_path):
    await bot.a_lifter()
    await bot.say("/erase")
    await bot.hear("Yes, erase it all")
    await bot.restart()
    assert [one.text[:17] for one in await bot.send()] == ["It is all erased."]
    await bot.companion.sweep()
    await bot.stop()
    assert not any(SAM.id.encode() in file.read_bytes() for file in tmp_path.rglob("*") if file.is_file())
    await bot.start()


async def test_what_is_owed_to_a_stranger_goes_after_a_day(bot):
    await bot.hear("hello", who=EVE)
    await bot.clock.advance(25 * 3600)
    await bot.companion.sweep()
    assert bot.rows("select count(*) from owed") == [(0,)]
    await bot.restart()
    assert await bot.send() == []


@pytest.mark.parametrize("days", [-2, 2])
async def test_what_is_owed_to_a_stranger_stays_owed_when_the_clock_is_set_by_days(bot, days):
    await bot.hear("hello", who=EVE)
    bot.clock.jump(timedelta(days=days))
    await bot.companion.sweep()
    await bot.restart()
    assert {one.address for one in await bot.send()} == {EVE}
    await bot.hear("my knee hurts", who=EVE)
    await bot.clock.advance(23 * 3600)
    await bot.companion.sweep()
    assert bot.rows("select count(*) from owed") == [(1,)]


async def test_a_prompt_that_went_stale_in_quiet_hours_is_not_told_of_as_unsent(bot):
    await bot.a_lifter()
    now = bot.clock.now()
    for stale in (now, now + timedelta(hours=1)):
        bot.companion.db.execute(
            "insert into outbox (person, channel, address, text, buttons, must_arrive, timed, unasked, due_at, made_at, stale_at) "
            "values (1, 'telegram', ?, 'Squat day.', '[]', 1, 0, 1, ?, ?, ?)", (SAM.id, _text(now), _text(now), _text(stale)))
    assert outbox.backlog(bot.companion.db.conn, now, "telegram").waiting == 1


def _text(moment):
    return moment.isoformat(timespec="milliseconds").replace("+00:00", "Z")
