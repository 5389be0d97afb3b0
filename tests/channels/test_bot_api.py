"""The stand-in behaves as the Bot API does, where it matters for losing and doubling."""

from __future__ import annotations

import asyncio
import os
import sys
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import httpx
import pytest

from tests.fakes.bot_api import TOKEN, BotApi, Fault, flood


class Caller:
    """Calls methods with plain HTTP."""

    def __init__(self, api: BotApi, http: httpx.AsyncClient) -> None:
        self.api, self.http = api, http

    async def call(self, method: str, token: str = TOKEN, **fields: Any) -> dict[str, Any]:
        answer = (await self.http.post(f"{self.api.url}/bot{token}/{method}", json=fields)).json()
        assert isinstance(answer, dict)
        return answer

    async def ids(self, **fields: Any) -> list[int]:
        return [update["update_id"] for update in (await self.call("getUpdates", **fields))["result"]]

    async def refusal(self, method: str, token: str = TOKEN, **fields: Any) -> tuple[int, str]:
        answer = await self.call(method, token, **fields)
        assert answer["ok"] is False
        return answer["error_code"], answer["description"]


@pytest.fixture
async def caller() -> AsyncIterator[Caller]:
    async with BotApi() as api, httpx.AsyncClient(timeout=5) as http:
        yield Caller(api, http)


async def test_an_update_is_given_again_until_an_offset_passes_it(caller: Caller) -> None:
    first, second = await caller.api.say(1, "a"), await caller.api.say(1, "b")
    assert await caller.ids() == [first, second]
    assert await caller.ids(offset=first) == [first, second]
    assert await caller.ids(offset=second) == [second]
    assert await caller.ids(offset=second + 1) == []
    assert await caller.ids() == []


async def test_a_limit_gives_the_first_and_confirms_nothing(caller: Caller) -> None:
    numbers = [await caller.api.say(1, str(n)) for n in range(150)]
    assert await caller.ids(limit=2) == numbers[:2]
    assert await caller.ids() == numbers[:100]


async def test_a_negative_offset_forgets_all_but_the_last(caller: Caller) -> None:
    numbers = [await caller.api.say(1, str(n)) for n in range(5)]
    assert await caller.ids(offset=-2) == numbers[-2:]
    assert await caller.ids() == numbers[-2:]


async def test_a_long_poll_is_answered_as_soon_as_something_comes(caller: Caller) -> None:
    poll = asyncio.create_task(caller.ids(timeout=60))
    await caller.api.until_called("getUpdates")
    number = await caller.api.say(1, "a")
    assert await poll == [number]


async def test_a_long_poll_ends_empty_when_its_time_is_over(caller: Caller) -> None:
    assert await caller.ids(timeout=0.01) == []


async def test_a_second_poll_ends_the_first_with_409(caller: Caller) -> None:
    first = asyncio.create_task(caller.refusal("getUpdates", timeout=60))
    await caller.api.until_called("getUpdates")
    await caller.ids()
    code, text = await first
    assert code == 409
    assert text.startswith("Conflict: terminated by other getUpdates request")


async def test_a_poll_whose_caller_has_gone_takes_nothing_with_it(caller: Caller) -> None:
    poll = asyncio.create_task(caller.ids(timeout=60))
    await caller.api.until_called("getUpdates")
    poll.cancel()
    await asyncio.gather(poll, return_exceptions=True)
    number = await caller.api.say(1, "a")
    assert await caller.ids() == [number]


async def test_kinds_that_are_not_asked_for_are_not_kept(caller: Caller) -> None:
    await caller.ids(allowed_updates=["callback_query"])
    await caller.api.say(1, "a")
    tap = await caller.api.tap(1, "x")
    assert await caller.ids() == [tap]


@pytest.mark.parametrize(("token", "code"), [("4242:wrong", 401), ("wrong", 404)])
async def test_a_wrong_token_is_refused(caller: Caller, token: str, code: int) -> None:
    assert (await caller.refusal("getMe", token))[0] == code


@pytest.mark.parametrize(("fields", "text"), [
    ({"text": ""}, "Bad Request: message text is empty"),
    ({"text": "x" * 4097}, "Bad Request: message is too long"),
    ({"text": "🏋" * 2049}, "Bad Request: message is too long"),
    ({"chat_id": "nobody", "text": "x"}, "Bad Request: chat not found"),
    ({"text": "x", "reply_markup": {"inline_keyboard": [[{"text": "a", "callback_data": "é" * 33}]]}},
     "Bad Request: BUTTON_DATA_INVALID"),
    ({"text": "x", "reply_markup": {"inline_keyboard": [[{"text": "a", "callback_data": ""}]]}},
     "Bad Request: BUTTON_DATA_INVALID"),
])
async def test_messages_the_bot_api_refuses_are_refused(caller: Caller, fields: dict[str, Any], text: str) -> None:
    assert await caller.refusal("sendMessage", **{"chat_id": 1, **fields}) == (400, text)
    assert not caller.api.sent


async def test_a_text_of_full_length_is_taken_and_methods_do_not_mind_case(caller: Caller) -> None:
    assert (await caller.call("sendmessage", chat_id=1, text="x" * 4096))["ok"]
    assert [one.chat_id for one in caller.api.sent] == [1]


async def test_a_blocked_chat_answers_403(caller: Caller) -> None:
    await caller.api.block(1)
    assert await caller.refusal("sendMessage", chat_id=1, text="x") == (403, "Forbidden: bot was blocked by the user")


async def test_a_message_can_be_changed_once_for_each_new_text(caller: Caller) -> None:
    sent = (await caller.call("sendMessage", chat_id=1, text="a"))["result"]["message_id"]
    assert (await caller.call("editMessageText", chat_id=1, message_id=sent, text="b"))["ok"]
    assert caller.api.sent[0].text == "b"
    again = await caller.refusal("editMessageText", chat_id=1, message_id=sent, text="b")
    assert again == (400, "Bad Request: message is not modified")


async def test_a_tap_is_answered_once(caller: Caller) -> None:
    await caller.api.tap(1, "x")
    query = (await caller.call("getUpdates"))["result"][0]["callback_query"]
    assert (await caller.call("answerCallbackQuery", callback_query_id=query["id"]))["ok"]
    assert (await caller.refusal("answerCallbackQuery", callback_query_id=query["id"]))[0] == 400
    assert (await caller.refusal("answerCallbackQuery", callback_query_id="77"))[0] == 400


async def test_a_file_that_was_sent_can_be_fetched(caller: Caller) -> None:
    url = f"{caller.api.url}/bot{TOKEN}/sendPhoto"
    answer = await caller.http.post(url, data={"chat_id": "1", "caption": "c"}, files={"photo": b"png"})
    sent = answer.json()["result"]
    path = (await caller.call("getFile", file_id=sent["photo"][-1]["file_id"]))["result"]["file_path"]
    assert (await caller.http.get(f"{caller.api.url}/file/bot{TOKEN}/{path}")).content == b"png"
    assert (await caller.http.get(f"{caller.api.url}/file/botwrong/{path}")).status_code == 404


async def test_faults_come_in_turn_and_for_the_chat_they_are_meant_for(caller: Caller) -> None:
    caller.api.fail("sendMessage", flood(3, chat_id=1), Fault(502, "Bad Gateway", accepted=True))
    assert (await caller.call("sendMessage", chat_id=2, text="x"))["ok"]
    assert (await caller.call("sendMessage", chat_id=1, text="x"))["parameters"] == {"retry_after": 3}
    assert await caller.refusal("sendMessage", chat_id=1, text="x") == (502, "Bad Gateway")
    assert [one.chat_id for one in caller.api.sent] == [2, 1]


@pytest.mark.parametrize(("how", "error"), [("drop", httpx.RemoteProtocolError), ("hang", httpx.ReadTimeout)])
async def test_a_connection_can_be_dropped_or_hang(caller: Caller, how: str, error: type[Exception]) -> None:
    caller.api.fail("getMe", Fault(how=how))
    caller.http.timeout = httpx.Timeout(0.05, connect=5)
    with pytest.raises(error):
        await caller.call("getMe")


async def test_strictly_one_message_a_second_goes_to_a_chat_and_thirty_to_all() -> None:
    async with BotApi(strict=True) as api, httpx.AsyncClient() as http:
        caller = Caller(api, http)
        assert (await caller.call("sendMessage", chat_id=1, text="x"))["ok"]
        assert (await caller.refusal("sendMessage", chat_id=1, text="x"))[0] == 429
        for chat in range(2, 31):
            assert (await caller.call("sendMessage", chat_id=chat, text="x"))["ok"]
        assert (await caller.refusal("sendMessage", chat_id=99, text="x"))[0] == 429


async def test_it_runs_as_its_own_process_and_is_told_what_to_do_over_http() -> None:
    process = await asyncio.create_subprocess_exec(
        sys.executable, "-m", "tests.fakes.bot_api", "0", stdout=asyncio.subprocess.PIPE,
        cwd=Path(__file__).parents[2], env={**os.environ, "PYTHONUNBUFFERED": "1"})
    try:
        assert process.stdout is not None
        url = (await process.stdout.readline()).decode().strip()
        async with httpx.AsyncClient() as http:
            number = (await http.post(f"{url}/control/say", json={"chat_id": 1, "text": "hi"})).json()
            updates = (await http.get(f"{url}/bot{TOKEN}/getUpdates")).json()["result"]
            await http.post(f"{url}/bot{TOKEN}/sendMessage", json={"chat_id": 1, "text": "there"})
            sent = (await http.get(f"{url}/control/sent")).json()
            nothing = await http.post(f"{url}/control/stop")
    finally:
        process.terminate()
        await process.wait()
    assert [update["update_id"] for update in updates] == [number]
    assert [one["text"] for one in sent] == ["there"]
    assert nothing.status_code == 404
