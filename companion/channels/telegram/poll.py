"""Polling that confirms a batch of updates only after its turns are committed."""

from __future__ import annotations

import asyncio
import json
import logging
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from email.utils import parsedate_to_datetime
from typing import Any, Final

import httpx
from telegram import Update
from telegram.error import NetworkError, TimedOut
from telegram.request import HTTPXRequest, RequestData

from companion.base.logs import redact
from companion.channels.drainer import backoff
from companion.channels.telegram.bounds import bounded, pause_in
from companion.channels.telegram.settings import SecondInstance, TelegramSettings, wrong_token

_log = logging.getLogger(__name__)

NEWCOMER_GIVES_WAY: Final = 3
"""Two instances interrupt each other's polls; the one that has polled successfully tolerates so many times more refusals: our choice."""

_CORE: Final = ("message_id", "date", "edit_date", "chat", "from", "text", "caption")
"""Fields kept of a message whose other fields can't be read."""


@dataclass(frozen=True, slots=True)
class Owner:
    """The channel's side of a poll.

    ``settled`` returns when every turn of the last batch is committed, and raises NetworkError where that can't be waited for;
    ``pause`` waits so many seconds before the next try; ``fail`` ends the channel; ``polled`` hears of every poll that was answered,
    with the time the answer gives, to the second.
    """

    settled: Callable[[], Awaitable[None]]
    pause: Callable[[float], Awaitable[None]]
    fail: Callable[[Exception], None]
    polled: Callable[[datetime | None], object]


class Poll(HTTPXRequest):
    """Sends getUpdates; delays the next poll, which confirms the last batch, until that batch is settled.

    Every failure is waited out here and raised as TimedOut, the NetworkError after which python-telegram-bot polls again at once: after
    any other its own wait can't be interrupted, and after anything that is no TelegramError its poll task ends silently or spins.
    """

    def __init__(self, settings: TelegramSettings, owner: Owner) -> None:
        super().__init__(connection_pool_size=4, read_timeout=settings.answer_seconds,
                         httpx_kwargs=bounded(self._note_date))
        self._date = ""
        self._patience, self._owner = settings.patience, owner
        self._failures = self._refusals = 0
        self._answered = False
        self._next_offset: int | None = None

    async def do_request(self, url: str, method: str, request_data: RequestData | None = None,
                         *args: Any, **kwargs: Any) -> tuple[int, bytes]:
        """See BaseRequest.do_request. Raises TimedOut if there is no usable response."""
        wait = backoff(self._failures)
        try:
            await self._owner.settled()
            code, payload = await super().do_request(url, method, request_data, *args, **kwargs)
            answer = _object(payload)
            if code != 200:
                wait = max(wait, pause_in(answer))
                self._count_refusal(code)
                raise NetworkError(f"{answer.get('description')} ({code})")
            offset = request_data.parameters.get("offset") if request_data else None
            payload = self._usable(answer, careful=self._next_offset not in (None, offset))
        except NetworkError as error:
            _log.warning("a poll failed (%s); the next in %g s", redact(str(error)), wait)
        else:
            if self._failures:
                _log.info("polls are answered again")
            self._failures = self._refusals = 0
            self._answered = True
            self._owner.polled(_moment(self._date))
            return code, payload
        self._failures += 1
        await self._owner.pause(wait)
        polling = asyncio.current_task()
        assert polling is not None
        # python-telegram-bot leaves the exception of a poll that fails as it is stopped, and asyncio would log it with a traceback
        polling.add_done_callback(lambda task: task.cancelled() or task.exception())
        raise TimedOut

    async def _note_date(self, response: httpx.Response) -> None:
        self._date = response.headers.get("date", "")

    def _count_refusal(self, code: int) -> None:
        """Count a refusal. A single one may come from a proxy or a process that has just ended; several in a row end the channel."""
        if code not in (401, 404, 409):
            return
        self._refusals += 1
        if self._refusals >= self._patience * (NEWCOMER_GIVES_WAY if self._answered and code == 409 else 1):
            self._owner.fail(SecondInstance("another instance of this bot is running with the same token")
                             if code == 409 else wrong_token())

    def _usable(self, answer: Mapping[str, Any], careful: bool) -> bytes:
        """Return the response, its shape checked, without what nobody reads.

        ``careful``: python-telegram-bot could not read the last batch and asks for it again, so keep only what it can read.
        """
        try:
            updates = answer["result"]
            ids = [one["update_id"] for one in updates]
            if any(type(number) is not int for number in ids):  # python-telegram-bot would add to it, and end
                raise TypeError
        except (TypeError, KeyError) as error:
            raise NetworkError(f"an answer of another shape ({type(error).__name__})") from None
        self._next_offset = ids[-1] + 1 if ids else None
        slim = [_slim(one) for one in updates]
        return json.dumps({"ok": True, "result": [readable(one) for one in slim] if careful else slim}).encode()


def _moment(date: str) -> datetime | None:
    """Return the moment of an HTTP date; None if it is invalid."""
    try:
        moment = parsedate_to_datetime(date)
    except (ValueError, OverflowError):
        return None
    return moment if moment.tzinfo else None


def _object(payload: bytes) -> Mapping[str, Any]:
    try:
        answer = json.loads(payload)
    except ValueError:
        answer = None
    if not isinstance(answer, dict):
        raise NetworkError("an answer that is no JSON object")
    return answer


def _slim(update: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return the update without the message under a button that somebody tapped in their private chat, which has their id: of it we read
    the chat only, and to make an object of it takes a sixth of an update's time (2026-11-29). The Bot API leaves it out where it is old."""
    match update:
        case {"callback_query": {"message": {"chat": {"type": "private", "id": chat}}, "from": {"id": person} as user, **query}} if (
                chat == person):
            return {**update, "callback_query": {**query, "from": user}}
    return update


def readable(update: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return the update, or the part of it that python-telegram-bot can read: a message's core fields, or the id alone."""
    number = update["update_id"]
    for part in (update, _core(update)):
        try:
            Update.de_json(dict(part), None)
        except Exception as error:
            _log.error("update %s can't be read whole (%s)", number, type(error).__name__)
        else:
            return part
    return {"update_id": number}


def _core(update: Mapping[str, Any]) -> Mapping[str, Any]:
    return {kind: {name: part[name] for name in _CORE if name in part} if isinstance(part, dict) else part
            for kind, part in update.items() if kind in ("update_id", "message", "edited_message")}
