"""Updates that Telegram brings itself: the secret, the path, the size, and 200 only for what is committed. On loopback."""

from __future__ import annotations

import asyncio
import contextlib
import json
from collections.abc import AsyncIterator
from dataclasses import replace
from typing import Any

import httpx
import pytest

from companion.base.settings import BadSettings, Webhook, read_settings
from companion.channels.telegram import CannotHook, TelegramSettings, run_telegram
from companion.channels.telegram.webhook import BODY_MOST, HOOK_CONNECTIONS, SECRET_HEADER, WebhookServer
from companion.port import Typed
from tests.channels.test_telegram import Live, until
from tests.fakes.bot_api import BotApi
from tests.fakes.hostile import chat_of, message_of
from tests.table import each_row

SECRET = "a-right_Secret1"
AT = Webhook("https://bot.example/hooks/squat", SECRET, port=0)


def update(number: int, text: str, who: int = 1) -> dict[str, Any]:
    user = {"id": who, "is_bot": False, "first_name": "Sam"}
    return {"update_id": number, "message": message_of(user, chat_of("private", who, "Sam"), text=text)}


class Hooked(Live):
    """A channel that is brought its updates."""

    def __init__(self, api: BotApi, **settings: Any) -> None:
        super().__init__(api, webhook=AT, **settings)

    @contextlib.asynccontextmanager
    async def open(self) -> AsyncIterator[httpx.AsyncClient]:
        async with self.running():
            await self.api.until_called("getWebhookInfo")
            async with self.client() as client:
                yield client

    def client(self) -> httpx.AsyncClient:
        return httpx.AsyncClient(base_url=f"http://127.0.0.1:{Hooked.port}", headers={SECRET_HEADER: SECRET})

    port = 0


@pytest.fixture(autouse=True)
def _port_known(monkeypatch: pytest.MonkeyPatch) -> None:
    start = WebhookServer.start

    async def told(self: WebhookServer) -> None:
        await start(self)
        Hooked.port = self.port
    monkeypatch.setattr(WebhookServer, "start", told)


@pytest.fixture
async def api() -> AsyncIterator[BotApi]:
    async with BotApi() as api:
        yield api


@pytest.fixture
async def hooked(api: BotApi) -> Hooked:
    return Hooked(api)


async def test_telegram_is_told_where_to_bring_what_and_nothing_is_polled_or_taken_back(hooked):
    async with hooked.open():
        pass
    called = [call.method for call in hooked.api.calls]
    assert "getUpdates" not in called
    assert "deleteWebhook" not in called
    assert hooked.api.webhook["url"] == AT.url
    assert hooked.api.webhook["secret_token"] == SECRET
    assert hooked.api.webhook["allowed_updates"] == ["message", "edited_message", "callback_query", "my_chat_member"]
    assert hooked.api.webhook.get("drop_pending_updates") in (None, False)


async def test_with_the_right_secret_an_update_is_taken_and_answered_200_after_its_commit(hooked):
    go = hooked.turns.hold("slow")
    async with hooked.open() as client:
        asked = asyncio.create_task(client.post(AT.path, json=update(1, "slow")))
        await hooked.turns.until(lambda: len(hooked.turns.begun) == 1)
        other = await client.post(AT.path, json=update(2, "quick", who=2))
        assert not asked.done()
        go.set()
        assert (await asked).status_code == other.status_code == 200
    assert [one.event for one in hooked.turns.ended] == [Typed("quick"), Typed("slow")]


async def test_one_chat_is_taken_in_the_order_it_is_brought(hooked):
    go = hooked.turns.hold("a")
    async with hooked.open() as client:
        asked = [asyncio.create_task(client.post(AT.path, json=update(1, "a")))]
        await hooked.turns.until(lambda: len(hooked.turns.begun) == 1)
        asked.append(asyncio.create_task(client.post(AT.path, json=update(2, "b"))))
        go.set()
        assert [(await one).status_code for one in asked] == [200, 200]
    assert [one.event for one in hooked.turns.ended] == [Typed("a"), Typed("b")]


@pytest.mark.parametrize("given", [{}, {SECRET_HEADER: ""}, {SECRET_HEADER: SECRET + "x"}, {SECRET_HEADER: SECRET[:-1]},
                                   {SECRET_HEADER: "ü".encode("latin-1")}])
async def test_without_the_right_secret_nothing_is_taken(hooked, given):
    async with hooked.open(), httpx.AsyncClient(base_url=f"http://127.0.0.1:{Hooked.port}") as client:
        assert (await client.post(AT.path, json=update(1, "yes"), headers=given)).status_code == 403
    assert not hooked.turns.begun


@pytest.mark.parametrize("path", ["/", "/hooks", "/hooks/squat/", "/hooks/squat?x=1", "/hooks/Squat", "/hooks/../hooks/squat%00"])
async def test_on_any_other_path_there_is_nothing(hooked, path):
    async with hooked.open() as client:
        assert (await client.post(path, json=update(1, "yes"))).status_code == 404
    assert not hooked.turns.begun


@pytest.mark.parametrize("method", ["GET", "PUT", "DELETE", "OPTIONS"])
async def test_nothing_but_post_is_taken(hooked, method):
    async with hooked.open() as client:
        answer = await client.request(method, AT.path)
    assert (answer.status_code, answer.headers["allow"]) == (405, "POST")


async def test_what_is_too_large_or_of_no_stated_length_is_not_read(hooked):
    async def pieces() -> AsyncIterator[bytes]:
        yield b"{}"

    async with hooked.open() as client:
        assert (await client.post(AT.path, content=b"x" * (BODY_MOST + 1))).status_code == 413
        assert (await client.post(AT.path, content=pieces())).status_code == 411
        assert (await client.post(AT.path, content=json.dumps(update(1, "x" * 65_536)))).status_code == 200


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b"null", b"{}", b"\xff", b"[" * 100_000, b'{"update_id": "5"}',
                                  b'{"update_id": true}', b'{"update_id": 9223372036854775808}'])
async def test_what_is_no_update_is_refused_and_the_rest_goes_on(hooked, body):
    async with hooked.open() as client:
        assert (await client.post(AT.path, content=body)).status_code == 400
        assert (await client.post(AT.path, json=update(2, "after"))).status_code == 200
    assert [one.event for one in hooked.turns.ended] == [Typed("after")]


async def test_an_update_that_can_not_be_read_whole_is_passed_over_with_200(hooked):
    async with hooked.open() as client:
        assert (await client.post(AT.path, json={"update_id": 1, "message": {"message_id": "odd"}})).status_code == 200


async def test_a_commit_that_fails_is_never_answered_200_and_ends_the_channel(hooked):
    hooked.turns.fails = OSError("disk full")
    task = asyncio.create_task(hooked.run())
    await hooked.api.until_called("getWebhookInfo")
    statuses: list[int] = []
    async with hooked.client() as client:
        with contextlib.suppress(httpx.TransportError):
            statuses.append((await client.post(AT.path, json=update(1, "answer"))).status_code)
    with pytest.raises(OSError, match="disk full"):
        await asyncio.wait_for(task, 5)
    assert statuses in ([], [503])


async def test_stopping_lets_a_turn_under_way_settle_and_answers_it(hooked):
    hooked.settings = replace(hooked.settings, settle_seconds=5)
    go = hooked.turns.hold("slow")
    async with hooked.open() as client:
        asked = asyncio.create_task(client.post(AT.path, json=update(1, "slow")))
        await hooked.turns.until(lambda: len(hooked.turns.begun) == 1)
        hooked.stop.set()
        asyncio.get_running_loop().call_later(0.05, go.set)
        assert (await asked).status_code == 200


async def test_stopping_does_not_answer_a_turn_that_hangs(hooked):
    hooked.turns.hold("stuck")
    async with hooked.open() as client:
        asked = asyncio.create_task(client.post(AT.path, json=update(1, "stuck")))
        await hooked.turns.until(lambda: len(hooked.turns.begun) == 1)
        hooked.stop.set()
        with contextlib.suppress(httpx.TransportError):
            assert (await asked).status_code == 503


async def test_who_is_slow_or_sends_too_long_a_head_is_cut_off():
    async def take(body: bytes) -> int:
        return 200

    hook = WebhookServer(AT, take, seconds=0.05)
    await hook.start()
    for sent in (b"", b"POST /hooks/squat HTTP/1.1\r\n", b"x" * 20_000,
                 f"POST {AT.path} HTTP/1.1\r\n{SECRET_HEADER}: {SECRET}\r\nContent-Length: 10\r\n\r\nx".encode()):
        reader, writer = await asyncio.open_connection("127.0.0.1", hook.port)
        writer.write(sent)
        async with asyncio.timeout(5):
            with contextlib.suppress(ConnectionError):
                assert await reader.read() == b""
        writer.close()
    await hook.close(0)
    await hook.ended()


async def test_no_more_than_so_many_are_served_side_by_side():
    async def take(body: bytes) -> int:
        return 200

    hook = WebhookServer(AT, take)
    await hook.start()
    held = [await asyncio.open_connection("127.0.0.1", hook.port) for _ in range(HOOK_CONNECTIONS)]
    await until(lambda: len(hook._busy) == HOOK_CONNECTIONS)
    reader, writer = await asyncio.open_connection("127.0.0.1", hook.port)
    async with asyncio.timeout(5):
        with contextlib.suppress(ConnectionError):
            assert await reader.read() == b""
    await hook.close(0)
    await hook.ended()
    for _, one in (*held, (reader, writer)):
        one.close()


@pytest.mark.parametrize(("told", "good", "said"), [
    ({}, True, ""),
    ({"last_error_date": 60, "last_error_message": "502 Bad Gateway"}, False, "(502 Bad Gateway); waiting there: 3"),
    ({"last_error_date": -60, "last_error_message": "Connection refused"}, True, ""),
    ({"last_error_date": 60, "last_error_message": "502 Bad Gateway", "pending_update_count": 0}, True, ""),
    ({"url": "https://elsewhere.example/x"}, False, "webhook was changed")])
async def test_where_telegram_can_bring_nothing_no_poll_counts_as_good_and_the_log_says_why(api, caplog, told, good, said):
    polled: list[object] = []
    hooked = Hooked(api)
    since = int(hooked.clock.now().timestamp())

    async def info(params: Any) -> dict[str, Any]:
        more = told | ({"last_error_date": since + told["last_error_date"]} if "last_error_date" in told else {})
        return {"url": AT.url, "has_custom_certificate": False, "pending_update_count": 3} | more
    api._on_getwebhookinfo = info
    task = asyncio.create_task(run_telegram(hooked.settings, hooked.turns, hooked.store, hooked.clock, hooked.stop, on_poll=polled.append))
    async with asyncio.timeout(5):
        while [call.method for call in api.calls].count("getWebhookInfo") < 3:
            await hooked.clock.advance(hooked.settings.poll_seconds)
            await asyncio.sleep(0.005)  # the network's time, which no clock here moves
    hooked.stop.set()
    await asyncio.wait_for(task, 5)
    assert bool(polled) == good
    assert said in caplog.text
    assert caplog.text.count("waiting there") <= 1


async def test_a_port_that_is_taken_is_said_in_one_line(api: BotApi):
    live = Live(api, webhook=replace(AT, port=int(api.url.rpartition(":")[2])))
    with pytest.raises(CannotHook, match="can't listen on port"):
        await asyncio.wait_for(live.run(), 5)


def test_the_secret_shows_in_no_repr():
    assert SECRET not in repr(AT) + repr(TelegramSettings("1:a", webhook=AT))


@each_row("given", [
    {"URL": "http://bot.example/x", "SECRET": SECRET}, {"URL": "https://bot.example", "SECRET": SECRET},
    {"URL": "https://bot.example/", "SECRET": SECRET}, {"URL": "https://bot.example/x?y", "SECRET": SECRET},
    {"URL": "https://bot.example/x"}, {"URL": "https://bot.example/x", "SECRET": "two words"},
    {"URL": "https://bot.example/x", "SECRET": "x" * 257}, {"URL": "https://bot.example/x", "SECRET": SECRET, "PORT": "0"}])
def test_a_webhook_that_would_not_be_safe_is_refused_without_showing_its_secret(given):
    with pytest.raises(BadSettings, match="COMPANION_WEBHOOK_") as caught:
        read_settings({f"COMPANION_WEBHOOK_{name}": value for name, value in given.items()})
    assert SECRET not in str(caught.value)


def test_polling_stays_the_default_and_a_webhook_listens_on_loopback():
    assert read_settings({}).webhook is None
    assert read_settings({"COMPANION_WEBHOOK_SECRET": SECRET}).webhook is None
    hook = read_settings({"COMPANION_WEBHOOK_URL": AT.url, "COMPANION_WEBHOOK_SECRET": SECRET}).webhook
    assert hook == Webhook(AT.url, SECRET, 8443, "127.0.0.1")
    assert hook.path == "/hooks/squat"
