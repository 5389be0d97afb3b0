"""Bounds on what comes over the network, before anything uses it: numbers, and the length of an answer."""

from __future__ import annotations

import math
from collections.abc import AsyncIterator, Awaitable, Callable, Mapping
from typing import Any, Final

import httpx
from telegram.error import TelegramError
from telegram.request import HTTPXRequest

RETRY_MOST: Final = 3600
"""Longest pause in seconds that is obeyed: our choice. After it one message is tried, and Telegram may ask for another pause."""

RETRY_UNREADABLE: Final = 5
"""Seconds to wait where the pause asked for is no number: our choice."""

RECEIVED_MOST: Final = 20 * 2**20
"""Bytes of an answer that are read: those of the largest file a bot may fetch, by the Bot API's documentation (read)."""

UPDATE_IDS: Final = range(2**63)
"""Update ids that the database can store."""


def pause_of(value: object) -> int:
    """Return the whole seconds to wait, from 1 to RETRY_MOST, for whatever stands in "retry_after"."""
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        return RETRY_UNREADABLE
    try:
        seconds = float(value)
    except (ValueError, OverflowError):
        return RETRY_MOST if isinstance(value, int) else RETRY_UNREADABLE
    return RETRY_UNREADABLE if math.isnan(seconds) else int(min(max(math.ceil(min(seconds, RETRY_MOST)), 1), RETRY_MOST))


def pause_in(answer: Mapping[str, Any]) -> int:
    """Return the seconds that an answer asks to wait; 0 if it asks for none."""
    parameters = answer.get("parameters")
    return pause_of(parameters["retry_after"]) if isinstance(parameters, dict) and "retry_after" in parameters else 0


def update_id_of(number: int) -> int | None:
    """Return an update id, or None where the database can't store it; such an update is taken without being noted."""
    return number if number in UPDATE_IDS else None


class TooLong(httpx.HTTPError):
    """An answer goes on after RECEIVED_MOST bytes, whatever length it or anything else declared."""


class _Bounded(httpx.AsyncByteStream):
    def __init__(self, stream: httpx.AsyncByteStream) -> None:
        self._stream = stream

    async def __aiter__(self) -> AsyncIterator[bytes]:
        left = RECEIVED_MOST
        async for part in self._stream:
            left -= len(part)
            if left < 0:
                raise TooLong("an answer that is too long")
            yield part

    async def aclose(self) -> None:
        """Close the connection, with what is left unread."""
        await self._stream.aclose()


async def _bound(response: httpx.Response) -> None:
    if "content-encoding" in response.headers:  # not asked for, and a few bytes of it may be any number
        raise httpx.DecodingError("an answer that is packed", request=response.request)
    assert isinstance(response.stream, httpx.AsyncByteStream)
    response.stream = _Bounded(response.stream)


def bounded(*hooks: Callable[[httpx.Response], Awaitable[None]]) -> dict[str, Any]:
    """Return the ``httpx_kwargs`` of requests whose answers are read as they come, up to RECEIVED_MOST; past it the connection is closed
    and TooLong raised. ``hooks``: called with each response as well."""
    return {"headers": {"Accept-Encoding": "identity"}, "event_hooks": {"response": [_bound, *hooks]}}


class BoundedRequest(HTTPXRequest):
    """Requests whose answers are of the right shape and no longer than RECEIVED_MOST, and ask for a pause that can be waited for."""

    def __init__(self, read_timeout: float = 5.0) -> None:
        super().__init__(read_timeout=read_timeout, httpx_kwargs=bounded())

    @staticmethod
    def parse_json_payload(payload: bytes) -> dict[str, Any]:
        """See BaseRequest.parse_json_payload. Raises TelegramError for an answer of another shape."""
        answer = HTTPXRequest.parse_json_payload(payload)
        if not isinstance(answer, dict) or ("result" not in answer and answer.get("ok") is not False):
            raise TelegramError("an answer of another shape")
        parameters = answer.get("parameters")
        if not isinstance(parameters, dict):
            answer.pop("parameters", None)
        elif "retry_after" in parameters:
            parameters["retry_after"] = pause_of(parameters["retry_after"])
        return answer
