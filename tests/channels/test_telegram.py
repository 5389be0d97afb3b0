"""The Telegram channel: python-telegram-bot's own Updater against the stand-in, on loopback."""

from __future__ import annotations

import asyncio
import contextlib
import json
import logging
from collections.abc import AsyncIterator, Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import httpx
import pytest
from telegram import Update
from telegram.error import BadRequest, ChatMigrated, Forbidden, NetworkError, RetryAfter, TelegramError, TimedOut

from companion.base.logs import set_up_logging
from companion.channels.telegram import SecondInstance, TelegramSettings, WrongToken, inbound_of, outcome_of, run_telegram
from companion.channels.telegram.bounds import pause_of
from companion.port import (
    Address,
    Button,
    Delivery,
    Edited,
    Event,
    Gone,
    Inbound,
    Later,
    Outgoing,
    Rank,
    Refused,
    Sent,
    Tapped,
    Typed,
    Unreachable,
    Unsure,
)
from tests.fakes.bot_api import TOKEN, BotApi, Fault, flood
from tests.fakes.clock import FakeClock
from tests.fakes.memory_outbox import MemoryOutbox
from tests.fakes.pictures import FromFiles
from tests.table import each_row


class Turns:
    """Takes what comes; a turn whose text is held does not end until let go."""

    def __init__(self) -> None:
        self.begun: list[Inbound] = []
        self.ended: list[Inbound] = []
        self.held: dict[str, asyncio.Event] = {}
        self.fails: Exception | None = None
        self._changed = asyncio.Condition()

    def hold(self, text: str) -> asyncio.Event:
        return self.held.setdefault(text, asyncio.Event())

    async def __call__(self, inbound: Inbound) -> None:
        self.begun.append(inbound)
        await self._tell()
        if isinstance(inbound.event, Typed) and inbound.event.text in self.held:
            await self.held[inbound.event.text].wait()
        if self.fails:
            raise self.fails
        self.ended.append(inbound)
        await self._tell()

    async def until(self, holds: Callable[[], bool]) -> None:
        async with asyncio.timeout(5), self._changed:
            await self._changed.wait_for(holds)

    async def events(self, count: int) -> list[Event]:
        await self.until(lambda: len(self.ended) >= count)
        return [one.event for one in self.ended]

    async def _tell(self) -> None:
        async with self._changed:
            self._changed.notify_all()


class Live:
    """A channel at work on the stand-in."""

    def __init__(self, api: BotApi, store: MemoryOutbox | None = None, **settings: Any) -> None:
        self.api, self.turns, self.store, self.clock = api, Turns(), store or MemoryOutbox(), FakeClock()
        self.stop = asyncio.Event()
        self.wake: Callable[[], None] = lambda: None
        options: dict[str, Any] = {"token": TOKEN, "patience": 1, "settle_seconds": 0.1} | settings
        self.settings = TelegramSettings(api_url=api.url, **options)
        self.task: asyncio.Task[None] | None = None

    async def run(self) -> None:
        await run_telegram(self.settings, self.turns, self.store, self.clock, self.stop,
                           lambda wake: setattr(self, "wake", wake), FromFiles())

    async def moved_until(self, task: asyncio.Task[None]) -> None:
        """Let time pass until a task ends."""
        async with asyncio.timeout(5):
            while not task.done():
                await self.clock.advance(1)
                await asyncio.sleep(0.005)
        await task

    @contextlib.asynccontextmanager
    async def running(self) -> AsyncIterator[asyncio.Task[None]]:
        task = asyncio.create_task(self.run())
        try:
            yield task
            self.stop.set()
            await self.moved_until(task)  # a clean stop waits for what is due
        finally:
            await kill(task)


async def kill(task: asyncio.Task[None]) -> None:
    """End a channel as a signal would that leaves no time."""
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)


@pytest.fixture
async def api() -> AsyncIterator[BotApi]:
    async with BotApi() as api:
        yield api


# confirmed only once committed ----------------------------------------------------------------------------


async def test_an_update_is_not_confirmed_before_its_turn_is_committed(api: BotApi) -> None:
    live = Live(api)
    go = live.turns.hold("slow")
    async with live.running():
        first = await api.say(1, "slow")
        await live.turns.until(lambda: len(live.turns.begun) == 1)
        second = await api.say(2, "more")
        await asyncio.sleep(0.05)  # what was sent meanwhile would have brought a poll that confirms
        assert api.confirmed == 0
        assert api.waiting == [first, second]
        go.set()
        await api.until_confirmed()
    assert [one.update_id for one in live.turns.ended] == [first, second]


async def test_a_turn_killed_before_its_commit_is_given_again_at_the_next_start(api: BotApi) -> None:
    first = Live(api)
    first.turns.hold("answer")
    task = asyncio.create_task(first.run())
    number = await api.say(1, "answer")
    await first.turns.until(lambda: len(first.turns.begun) == 1)
    await kill(task)
    assert api.waiting == [number]
    second = Live(api)
    async with second.running():
        await second.turns.events(1)
        await api.until_confirmed()
    assert [one.update_id for one in second.turns.ended] == [number]


async def test_a_turn_cancelled_together_with_all_else_is_not_confirmed_on_the_way_out(api: BotApi) -> None:
    live = Live(api)
    live.turns.hold("answer")
    task = asyncio.create_task(live.run())
    number = await api.say(1, "answer")
    await api.say(1, "behind it")
    await live.turns.until(lambda: len(live.turns.begun) == 1)
    for one in asyncio.all_tasks():
        if one.get_name().startswith("turn "):
            one.cancel()  # as asyncio.run does with every task at an interrupt
    await kill(task)
    assert api.waiting[0] == number


async def test_a_commit_that_fails_ends_the_channel_and_confirms_nothing(api: BotApi) -> None:
    live = Live(api)
    live.turns.fails = OSError("disk full")
    number = await api.say(1, "answer")
    with pytest.raises(OSError, match="disk full"):
        await asyncio.wait_for(live.run(), 5)
    assert api.waiting == [number]


async def test_stopping_lets_a_turn_under_way_settle_and_confirms_it(api: BotApi) -> None:
    live = Live(api, settle_seconds=5)
    go = live.turns.hold("slow")
    async with live.running():
        await api.say(1, "slow")
        await live.turns.until(lambda: len(live.turns.begun) == 1)
        live.stop.set()
        asyncio.get_running_loop().call_later(0.05, go.set)
    assert len(live.turns.ended) == 1
    assert api.waiting == []


async def test_stopping_does_not_wait_for_ever_for_a_turn_that_hangs_nor_confirms_it(api: BotApi) -> None:
    live = Live(api)
    live.turns.hold("stuck")
    async with live.running():
        number = await api.say(1, "stuck")
        await live.turns.until(lambda: len(live.turns.begun) == 1)
    assert api.waiting == [number]


async def test_a_chat_is_taken_in_order_while_another_overtakes(api: BotApi) -> None:
    live = Live(api)
    go = live.turns.hold("1a")
    for chat, text in ((1, "1a"), (1, "1b"), (2, "2a"), (1, "1c")):
        await api.say(chat, text)
    async with live.running():
        await live.turns.until(lambda: len(live.turns.ended) == 1)
        assert live.turns.ended[0].event == Typed("2a")
        assert [one.event for one in live.turns.begun] == [Typed("1a"), Typed("2a")]
        go.set()
        events = await live.turns.events(4)
    assert [one for one in events if one != Typed("2a")] == [Typed("1a"), Typed("1b"), Typed("1c")]


async def test_a_tap_keeps_the_order_of_its_chat_and_waits_for_no_other(api: BotApi) -> None:
    live = Live(api)
    go = live.turns.hold("1a")
    await api.say(1, "1a")
    await api.tap(1, "1b")
    await api.tap(2, "2a")
    async with live.running():
        await live.turns.until(lambda: len(live.turns.ended) == 1)
        assert [one.event for one in live.turns.begun] == [Typed("1a"), Tapped("2a")]
        go.set()
        assert await live.turns.events(3) == [Tapped("2a"), Typed("1a"), Tapped("1b")]


async def test_hundreds_of_updates_that_waited_are_all_taken_once(api: BotApi) -> None:
    for number in range(250):
        await api.say(number % 7, str(number))
    live = Live(api)
    async with live.running():
        await live.turns.events(250)
        await api.until_confirmed()
    assert sorted(int(one.event.text) for one in live.turns.ended if isinstance(one.event, Typed)) == [*range(250)]


# what people do -------------------------------------------------------------------------------------------


async def test_what_people_send_comes_in_as_events(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.say(1, "11 cm", name="Kim")
        await api.tap(1, "knee.1.left.yes")
        await api.edit(1, "12 cm")
        for kind in ("photo", "video", "voice", "audio", "document", "sticker", "location", "contact", "dice"):
            await api.send_kind(1, kind)
        events = await live.turns.events(12)
        await api.until_called("answerCallbackQuery")
    assert events == [
        Typed("11 cm"), Tapped("knee.1.left.yes"), Edited("12 cm"), Sent("photo", "photo-file"),
        Sent("video", "video-file"), Sent("voice", "voice-file"), Sent("audio", "audio-file"),
        Sent("document", "document-file"), Sent("sticker", "sticker-file"), Sent("location", "47.0,8.0"), Sent("contact"),
        Sent("other")]
    assert live.turns.ended[0].name == "Kim"
    assert live.turns.ended[0].address == Address("telegram", "1")
    assert api.answered == ["1"]


@pytest.mark.parametrize(("kind", "event"), [("video_note", Sent("video", "video_note-file")),
                                             ("animation", Sent("video", "animation-file")), ("poll", Sent("other"))])
async def test_rarer_kinds_come_in_too(api: BotApi, kind: str, event: Sent) -> None:
    live = Live(api)
    async with live.running():
        await api.send_kind(1, kind)
        assert await live.turns.events(1) == [event]


async def test_of_a_message_whose_content_can_not_be_read_somebody_still_learns_that_it_came(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.push({"message": {"message_id": 1, "date": 1, "chat": {"id": 1, "type": "private"},
                                    "from": {"id": 1, "is_bot": False, "first_name": "Sam"}, "poll": {"id": "1"}}})
        assert await live.turns.events(1) == [Sent("other")]


async def test_words_under_a_picture_are_kept_as_its_caption(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.send_kind(1, "photo", caption="my back hurts here")
        await live.turns.events(1)
    event = live.turns.ended[0].event
    assert isinstance(event, Sent)
    assert event.caption == "my back hurts here"


async def test_a_long_text_and_half_an_emoji_come_in_whole(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.say(1, "x" * 4096)
        await api.say(1, "ok \ud83d")
        events = await live.turns.events(2)
    assert events == [Typed("x" * 4096), Typed("ok \ufffd")]


async def test_a_group_is_told_once_and_never_taken(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        for _ in range(3):
            await api.say_in_group(-100, "11 cm")
        await api.say(1, "hello")
        assert await live.turns.events(1) == [Typed("hello")]
        await api.until_sent(1)
    assert [(one.chat_id, one.text) for one in api.sent] == [
        (-100, "I only talk in private chats. Tap my name and write to me there.")]


@pytest.mark.parametrize("change", [
    {"from": {"id": 9, "is_bot": True, "first_name": "Robot"}},
    {"chat": {"id": -5, "type": "group", "title": "Gym"}},
    {"pinned_message": {"message_id": 1, "date": 0, "chat": {"id": 1, "type": "private"}}},
])
def test_bots_groups_and_service_messages_are_nobodys_answer(change: dict[str, Any]) -> None:
    message = {"message_id": 1, "date": 1, "chat": {"id": 1, "type": "private"}, "text": "yes",
               "from": {"id": 1, "is_bot": False, "first_name": "Sam"}, **change}
    assert inbound_of(Update.de_json({"update_id": 1, "message": message}, None)) is None


def test_a_live_location_that_moves_is_passed_over() -> None:
    message = {"message_id": 1, "date": 1, "edit_date": 2, "chat": {"id": 1, "type": "private"},
               "location": {"latitude": 1.0, "longitude": 1.0, "live_period": 900},
               "from": {"id": 1, "is_bot": False, "first_name": "Sam"}}
    assert inbound_of(Update.de_json({"update_id": 1, "edited_message": message}, None)) is None


@pytest.mark.parametrize(("query", "event"), [
    ({"data": "a.b"}, Tapped("a.b")),
    ({}, Tapped("")),
    ({"data": "a.b", "inline_message_id": "x"}, None),
    ({"data": "a.b", "message": {"message_id": 1, "date": 0, "chat": {"id": 1, "type": "private"}}}, Tapped("a.b")),
    ({"data": "a.b", "message": {"message_id": 1, "date": 0, "chat": {"id": -1, "type": "group"}}}, None),
])
def test_taps_count_from_private_chats_only(query: dict[str, Any], event: Event | None) -> None:
    whole = {"id": "1", "from": {"id": 1, "is_bot": False, "first_name": "Sam"}, "chat_instance": "1", **query}
    inbound = inbound_of(Update.de_json({"update_id": 1, "callback_query": whole}, None))
    assert (inbound.event if inbound else None) == event


async def test_an_update_that_can_not_be_read_is_passed_over_and_the_rest_goes_on(
        api: BotApi, caplog: pytest.LogCaptureFixture) -> None:
    live = Live(api)
    await api.say(1, "before")
    odd = await api.push({"message": {"message_id": "secret words"}})
    await api.say(1, "after")
    async with live.running():
        assert await live.turns.events(2) == [Typed("before"), Typed("after")]
        await api.until_confirmed()
    assert f"update {odd} can't be read whole (KeyError)" in caplog.text


async def test_somebody_who_blocks_the_bot_is_marked_as_gone(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.block(1)
        await api.until_confirmed()
        await api.say(2, "hello")
        await live.turns.events(1)
    assert live.store.gone == {Address("telegram", "1"): "blocked the bot"}


# what goes out --------------------------------------------------------------------------------------------


async def test_a_message_goes_out_with_its_buttons(api: BotApi) -> None:
    live = Live(api)
    live.store.put(1, "Does it reach?", buttons=((Button("Yes", "a.1.yes"), Button("No", "a.1.no")),))
    async with live.running():
        sent = (await api.until_sent(1))[0]
        await api.press(1, "No")
        assert await live.turns.events(1) == [Tapped("a.1.no")]
    assert (sent.chat_id, sent.text, sent.buttons) == (1, "Does it reach?", ((("Yes", "a.1.yes"), ("No", "a.1.no")),))


async def test_a_turns_answer_leaves_without_being_woken_for(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.until_called("getUpdates")
        live.store.put(1, "answer")
        await api.say(1, "question")
        assert (await api.until_sent(1))[0].text == "answer"


async def test_a_wake_from_elsewhere_sends_what_is_due(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.until_called("getUpdates")
        live.store.put(1, "reminder")
        live.wake()
        assert (await api.until_sent(1))[0].text == "reminder"


async def test_stopping_sends_what_can_leave_at_once(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.until_called("getUpdates")
        live.store.put(1, "last words")
    assert [one.text for one in api.sent] == ["last words"]


async def test_a_picture_and_a_document_go_out_with_their_words(api: BotApi, tmp_path: Path) -> None:
    picture = tmp_path / "pose.png"
    picture.write_bytes(b"png")
    live = Live(api)
    live.store.put(1, "Stand so.", picture=str(picture), buttons=((Button("Ready", "a.1.ready"),),))
    live.store.put(2, "Yours.", document='{"a": 1}\n')
    live.store.put(3, "No picture.", picture=str(tmp_path / "missing.png"))
    live.store.put(4, "z" * 1025, picture=str(picture))
    async with live.running():
        sent = {one.chat_id: one for one in await api.until_sent(4)}
        await live.clock.advance(1)
        rest = (await api.until_sent(5))[4]
    assert (sent[1].kind, sent[1].text, sent[1].file) == ("photo", "Stand so.", b"png")
    assert sent[1].data_of("Ready") == "a.1.ready"
    assert (sent[2].kind, sent[2].text, sent[2].file) == ("document", "Yours.", b'{"a": 1}\n')
    assert (sent[3].kind, sent[3].text) == ("text", "No picture.")
    assert (sent[4].kind, rest.chat_id, rest.kind, len(rest.text)) == ("photo", 4, "text", 1025)


async def test_a_text_too_long_and_half_an_emoji_still_go_out(api: BotApi) -> None:
    live = Live(api)
    live.store.put(1, "🏋" * 3000)
    live.store.put(2, "ok \ud83d")
    async with live.running():
        sent = {one.chat_id: one.text for one in await api.until_sent(2)}
    assert sent == {1: "🏋" * 2047 + "…", 2: "ok \ufffd"}


async def test_a_flood_wait_is_obeyed_on_the_wire(api: BotApi) -> None:
    live = Live(api)
    api.fail("sendMessage", flood(9, chat_id=1))
    live.store.put(1, "to one")
    async with live.running():
        await api.until_called("sendMessage")
        live.store.put(2, "to two")
        live.wake()
        assert (await api.until_sent(1))[0].chat_id == 2
        await live.clock.advance(8.9)
        assert len(api.sent) == 1
        await live.clock.advance(0.2)
        assert (await api.until_sent(2))[1].chat_id == 1
        await until(lambda: not live.store.waiting)


async def test_somebody_who_has_blocked_the_bot_is_found_out_by_a_send(api: BotApi) -> None:
    live = Live(api)
    api.blocked.add(1)
    api.unknown.add(2)
    live.store.put(1)
    live.store.put(2)
    async with live.running():
        await until(lambda: not live.store.waiting)
    assert {address.id for address in live.store.gone} == {"1", "2"}
    assert not api.sent


@pytest.mark.parametrize("fault", [
    Fault(500), Fault(502), Fault(how="drop"), Fault(401, "Unauthorized"), Fault(how="drop", accepted=True)])
async def test_a_send_that_fails_on_the_way_is_tried_again(api: BotApi, fault: Fault) -> None:
    live = Live(api)
    message = live.store.put(1)
    api.fail("sendMessage", fault)
    async with live.running():
        await api.until_called("sendMessage")
        await until(lambda: live.store.tried == [message])
        await live.clock.advance(1)
        await until(lambda: message in live.store.sent)


@pytest.mark.parametrize("fault", [Fault(how="hang", accepted=True), Fault(how="cut", accepted=True)])
async def test_a_send_without_a_readable_answer_is_repeated_unless_it_is_a_courtesy(
        api: BotApi, fault: Fault) -> None:
    live = Live(api, answer_seconds=0.2)
    api.fail("sendMessage", fault, fault)
    may, must = live.store.put(1, rank=Rank.COURTESY), live.store.put(2)
    async with live.running():
        await until(lambda: live.store.tried == [must] and may in live.store.dropped)
        await live.clock.advance(1)
        await until(lambda: must in live.store.sent)
    assert live.store.dropped == {may: "may have arrived"}
    assert [one.chat_id for one in api.sent].count(1) == 1


@each_row(("asked", "wait"), [(1e15, 3600), (10**400, 3600), ("abc", 5), (-3, 1), (0, 1), ("17", 17), (2.2, 3),
                                             ([], 5), (None, 5), (True, 5), (float("nan"), 5), (float("inf"), 3600)])
def test_whatever_pause_is_asked_for_is_one_that_can_be_waited_for(asked: object, wait: int) -> None:
    assert pause_of(asked) == wait


@pytest.mark.parametrize("asked", [1e15, "abc"])
async def test_an_absurd_pause_loses_no_message(api: BotApi, asked: Any) -> None:
    live = Live(api)
    api.fail("sendMessage", replace(flood(1), retry_after=asked))
    message = live.store.put(1)
    async with live.running():
        await until(lambda: live.store.tried == [message])
        await live.clock.advance(3601)
        await until(lambda: message in live.store.sent)


async def test_an_update_whose_number_no_database_can_hold_is_taken_and_confirmed(api: BotApi) -> None:
    live = Live(api)
    async with live.running():
        await api.push({"update_id": 2**63, "message": {**api._message(5, "A"), "text": "ouch"}})
        await until(lambda: live.turns.ended)
        assert live.turns.ended[0].update_id is None
        await api.until_confirmed()


@pytest.mark.parametrize("buttons", [((Button("x", "y" * 65),),), ((Button("", "y"),),)])
async def test_a_message_that_telegram_never_takes_is_dropped(
        api: BotApi, buttons: tuple[tuple[Button, ...], ...]) -> None:
    live = Live(api)
    message = live.store.put(1, buttons=buttons)
    async with live.running():
        await until(lambda: message in live.store.dropped)


def _timed_out(cause: Exception) -> TimedOut:
    error = TimedOut()
    error.__cause__ = cause
    return error


@each_row(("error", "outcome"), [
    (RetryAfter(7), Later(7.0)),
    (RetryAfter(timedelta(seconds=8)), Later(8.0)),
    (Forbidden("blocked"), Gone("blocked")),
    (BadRequest("Chat not found"), Gone("Chat not found")),
    (BadRequest("Message is too long"), Refused("Message is too long")),
    (_timed_out(httpx.ReadTimeout("slow")), Unsure("Timed out")),
    (_timed_out(httpx.ConnectTimeout("slow")), Unreachable("Timed out")),
    (_timed_out(httpx.PoolTimeout("slow")), Unreachable("Timed out")),
    (NetworkError("httpx.ConnectError: no"), Unreachable("httpx.ConnectError: no")),
    (NetworkError(f"odd address /bot{TOKEN}/getMe"), Unreachable("odd address /bot[token]/getMe")),
    (ChatMigrated(5), Refused("Group migrated to supergroup. New chat id: 5")),
    (TelegramError("Invalid server response"), Unsure("Invalid server response")),
])
def test_every_error_of_a_send_is_an_outcome(error: TelegramError, outcome: Delivery) -> None:
    assert outcome_of(error) == outcome


def test_a_flood_wait_is_read_also_where_the_environment_asks_for_whole_seconds(
        monkeypatch: pytest.MonkeyPatch) -> None:
    error = RetryAfter(7)
    monkeypatch.setenv("PTB_TIMEDELTA", "false")
    assert outcome_of(error) == Later(7.0)


async def test_an_address_that_is_no_chat_is_refused(api: BotApi) -> None:
    live = Live(api)
    odd = Outgoing(99, Address("telegram", "sam"), "hello")
    live.store.waiting.append((live.clock.now(), odd))
    async with live.running():
        await until(lambda: 99 in live.store.dropped)


# the network and the token --------------------------------------------------------------------------------


@pytest.mark.parametrize("token", ["4242:another_token_of_the_right_shape_000000000", "nonsense", "", "two words"])
async def test_a_wrong_token_ends_in_one_clear_error_without_the_token(
        api: BotApi, caplog: pytest.LogCaptureFixture, token: str) -> None:
    caplog.set_level(logging.DEBUG)
    live = Live(api, token=token)
    with pytest.raises(WrongToken) as caught:
        await asyncio.wait_for(live.run(), 5)
    shown = f"{caught.value!r} {caught.value.__context__!r} {caught.value.__cause__!r} {live.settings!r}"
    assert "COMPANION_TOKEN" in shown
    if len(token) > 10:
        assert token not in shown


async def test_a_token_that_is_revoked_while_running_ends_the_channel(api: BotApi) -> None:
    live = Live(api)
    task = asyncio.create_task(live.run())
    await api.until_called("getUpdates")
    api.token = "4242:the_new_token_after_the_old_was_revoked_"
    await api.say(1, "ends the poll that waits")
    with pytest.raises(WrongToken):
        await asyncio.wait_for(task, 5)


async def test_a_second_instance_gives_way_and_the_first_goes_on(api: BotApi) -> None:
    first, second = Live(api), Live(api)
    async with first.running():
        await api.say(1, "one")
        await first.turns.events(1)
        await api.until_confirmed()
        other = asyncio.create_task(second.run())
        with pytest.raises(SecondInstance):
            await first.moved_until(other)
        await api.say(1, "two")
        assert await first.turns.events(2) == [Typed("one"), Typed("two")]


@pytest.mark.parametrize("fault", [Fault(502), Fault(how="drop"), Fault(how="cut")])
async def test_it_waits_for_telegram_to_be_reached_at_the_start(api: BotApi, fault: Fault) -> None:
    api.fail("getMe", fault)
    api.fail("deleteWebhook", fault)
    live = Live(api)
    async with live.running():
        await api.until_called("getMe")
        while not any(call.method == "getUpdates" for call in api.calls):
            await live.clock.advance(1)
            await asyncio.sleep(0.005)
        await api.say(1, "hello")
        await live.turns.events(1)


async def test_it_stops_also_while_telegram_can_not_be_reached(api: BotApi) -> None:
    api.fail("getMe", *[Fault(502)] * 100)
    live = Live(api)
    live.store.put(1)
    async with live.running():
        await api.until_called("getMe")
    assert not api.sent


@pytest.mark.parametrize("fault", [Fault(how="cut"), Fault(500), Fault(how="drop"), flood(20)])
async def test_a_poll_that_fails_is_made_again(api: BotApi, fault: Fault) -> None:
    live = Live(api)
    api.fail("getUpdates", fault)
    async with live.running():
        await api.say(1, "hello")
        await live.moved_until(asyncio.create_task(live.turns.until(lambda: len(live.turns.ended) == 1)))


async def test_polls_that_fail_are_not_made_in_a_hurry(api: BotApi) -> None:
    live = Live(api)
    api.fail("getUpdates", *[Fault(502)] * 50)
    async with live.running():
        for wait, polls in ((1, 1), (2, 2), (4, 3), (8, 4)):
            await api.until_called("getUpdates", polls)
            await asyncio.sleep(0.02)
            assert len(await api.until_called("getUpdates")) == polls
            await live.clock.advance(wait)


@pytest.mark.parametrize(("update", "why"), [({"message": "no id"}, "KeyError"), ({"update_id": "5"}, "TypeError"),
                                             ({"update_id": 5.0}, "TypeError"), ({"update_id": True}, "TypeError")])
async def test_an_answer_of_another_shape_is_a_network_error_not_the_end_of_polling(
        api: BotApi, caplog: pytest.LogCaptureFixture, update: dict[str, Any], why: str) -> None:
    live = Live(api)
    await api.push({"message": {}, "update_id": 5})
    api._waiting[0] = update
    async with live.running():
        await api.until_called("getUpdates")
        await until(lambda: f"another shape ({why})" in caplog.text)
        api._waiting.clear()
        await api.say(1, "hello")
        await live.moved_until(asyncio.create_task(live.turns.until(lambda: len(live.turns.ended) == 1)))


async def test_the_token_and_peoples_words_are_in_no_log(
        api: BotApi, capsys: pytest.CaptureFixture[str], caplog: pytest.LogCaptureFixture) -> None:
    set_up_logging(logging.INFO)
    caplog.set_level(logging.INFO)
    live = Live(api)
    api.fail("sendMessage", Fault(how="cut", accepted=True), Fault(401, "Unauthorized"), Fault(500))
    api.fail("getMe", Fault(502))
    live.store.put(1, "your private words")
    async with live.running():
        while len(api.sent) < 2:
            await live.clock.advance(1)
            await asyncio.sleep(0.005)
        await api.push({"message": {"message_id": "secret words", "text": "my private words"}})
        await api.until_confirmed()
    shown = capsys.readouterr().err
    assert "can't be reached" in shown
    assert "can't be read whole" in shown
    assert "private words" not in shown
    assert TOKEN not in shown + caplog.text
    assert TOKEN.partition(":")[2] not in shown + caplog.text


async def test_the_token_is_in_no_log_at_debug_either(
        api: BotApi, capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging(logging.DEBUG)
    live = Live(api)
    live.store.put(1)
    async with live.running():
        await api.until_sent(1)
    set_up_logging(logging.WARNING)
    shown = capsys.readouterr().err
    assert "it shows what people write" in shown
    assert TOKEN.partition(":")[2] not in shown
    assert json.dumps(TOKEN) not in shown


async def until(holds: Callable[[], bool]) -> None:
    """Wait for something without an event of its own."""
    async with asyncio.timeout(5):
        while not holds():
            await asyncio.sleep(0.002)
