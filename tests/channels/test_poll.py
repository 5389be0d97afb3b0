"""A poll that fails as the channel stops, and what of an answer is passed on."""

from __future__ import annotations

import asyncio
import gc
import json
from datetime import datetime
from typing import Any

import pytest
from telegram.error import NetworkError, TimedOut

from companion.channels.telegram.poll import Owner, Poll
from companion.channels.telegram.settings import TelegramSettings
from tests.fakes.bot_api import TOKEN, BotApi
from tests.fakes.updates import person


async def not_settled() -> None:
    raise NetworkError("a turn was not committed")


async def no_pause(seconds: float) -> None:
    return None


async def test_a_failed_poll_that_nobody_waits_for_leaves_no_traceback() -> None:
    """python-telegram-bot's ``do_action`` (22, ``_utils/networkloop.py``) returns without looking at a poll that fails as it is stopped."""
    def unused(_: Exception | datetime | None) -> None:
        raise AssertionError

    said: list[dict[str, Any]] = []
    asyncio.get_running_loop().set_exception_handler(lambda loop, context: said.append(context))
    poll = Poll(TelegramSettings(TOKEN), Owner(not_settled, no_pause, unused, unused))
    polling = asyncio.create_task(poll.do_request("http://127.0.0.1:9/getUpdates", "POST"))
    await asyncio.wait([polling])
    del polling
    gc.collect()
    assert said == []
    await poll.shutdown()


async def test_a_failed_poll_is_raised_to_who_waits() -> None:
    poll = Poll(TelegramSettings(TOKEN), Owner(not_settled, no_pause, print, print))
    with pytest.raises(TimedOut):
        await poll.do_request("http://127.0.0.1:9/getUpdates", "POST")
    await poll.shutdown()


@pytest.mark.parametrize(("chat", "kept"), [
    ({"id": 77, "type": "private"}, False),
    ({"id": 78, "type": "private"}, True),
    ({"id": 77, "type": "group"}, True),
])
async def test_the_message_under_a_tapped_button_is_passed_on_where_it_is_not_in_the_private_chat(chat: dict[str, Any], kept: bool) -> None:
    async def settled() -> None:
        return None

    async with BotApi() as api:
        message = {"message_id": 5, "date": 1, "chat": chat}
        await api.push({"callback_query": {"id": "1", "from": person(77, "Sam"), "data": "yes", "message": message}})
        poll = Poll(TelegramSettings(TOKEN), Owner(settled, no_pause, print, lambda moment: None))
        _, payload = await poll.do_request(f"{api.url}/bot{TOKEN}/getUpdates", "POST")
        await poll.shutdown()
    query = json.loads(payload)["result"][0]["callback_query"]
    assert (query["data"], query["from"]["id"]) == ("yes", 77)
    assert query.get("message") == (message if kept else None)
