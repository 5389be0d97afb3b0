"""A film somebody sent is brought from the stand-in of Telegram, or one line says why not."""

from __future__ import annotations

import pytest
from telegram import Bot
from telegram.request import HTTPXRequest

from companion.channels.telegram.films import NOT_FETCHED, OVER_20_MB, fetch_film
from tests.fakes.bot_api import TOKEN, BotApi, Fault


@pytest.fixture
async def api():
    async with BotApi() as one:
        yield one


@pytest.fixture
async def bot(api):
    request = HTTPXRequest()
    one = Bot(TOKEN, f"{api.url}/bot", f"{api.url}/file/bot", request=request, get_updates_request=HTTPXRequest())
    async with one:
        yield one


async def test_a_film_arrives_whole(api, bot, tmp_path):
    api._files["v1"] = b"film" * 50_000
    path = await fetch_film(bot, "v1", tmp_path)
    assert path.parent == tmp_path
    assert path.read_bytes() == b"film" * 50_000


async def test_a_file_too_large_for_a_bot_says_what_to_do(api, bot, tmp_path):
    api.fail("getFile", Fault(400, "Bad Request: file is too big"))
    with pytest.raises(OSError, match="20 MB") as refused:
        await fetch_film(bot, "v1", tmp_path)
    assert str(refused.value) == OVER_20_MB


async def test_a_file_that_is_gone_or_a_path_typed_in_a_chat_is_not_fetched(bot, tmp_path):
    for ref in ("gone", "/etc/passwd"):
        with pytest.raises(OSError, match="send it once more") as refused:
            await fetch_film(bot, ref, tmp_path)
        assert str(refused.value) == NOT_FETCHED
