"""A film somebody sent is brought from the stand-in of Telegram, or one line says why not."""

from __future__ import annotations

import gzip

import pytest
from telegram import Bot
from telegram.error import NetworkError

from companion.channels.telegram import films
from companion.channels.telegram.bounds import RECEIVED_MOST, BoundedRequest
from companion.channels.telegram.films import NOT_FETCHED, OVER_20_MB, fetch_film
from tests.fakes.bot_api import TOKEN, BotApi, Fault
from tests.fakes.wire import Request, Response, Server


@pytest.fixture
async def api():
    async with BotApi() as one:
        yield one


@pytest.fixture
async def bot(api):
    one = Bot(TOKEN, f"{api.url}/bot", f"{api.url}/file/bot", request=BoundedRequest(), get_updates_request=BoundedRequest())
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


async def test_a_film_that_goes_on_beyond_the_size_declared_is_broken_off(api, bot, tmp_path):
    api._files["v1"], api.more_of["v1"] = b"film", iter([bytes(2**20)] * 100)
    with pytest.raises(OSError, match="20 MB") as refused:
        await fetch_film(bot, "v1", tmp_path)
    assert str(refused.value) == OVER_20_MB
    assert list(tmp_path.iterdir()) == []
    assert len(list(api.more_of["v1"])) > 50  # never sent


async def test_a_film_of_the_very_most_that_may_be_fetched_arrives(api, bot, tmp_path):
    api._files["v1"], api.more_of["v1"] = b"", iter([bytes(2**20)] * 20)
    assert (await fetch_film(bot, "v1", tmp_path)).stat().st_size == RECEIVED_MOST


async def test_a_film_that_comes_drop_by_drop_does_not_keep_the_others_waiting(api, bot, tmp_path, monkeypatch):
    monkeypatch.setattr(films, "FILM_SECONDS", 0.1)
    api._files["v1"] = b"film"
    api.fail("getFile", Fault(how="hang"))
    with pytest.raises(OSError, match="send it once more"):
        await fetch_film(bot, "v1", tmp_path)


async def test_an_answer_that_is_packed_is_refused(tmp_path):
    async def packed(request: Request) -> Response:
        return Response(200, gzip.compress(bytes(2**20)), "application/octet-stream\r\nContent-Encoding: gzip")

    async with Server(packed) as server, BoundedRequest() as request:
        with pytest.raises(NetworkError, match="packed"):
            await request.retrieve(f"http://127.0.0.1:{server.port}/film")
