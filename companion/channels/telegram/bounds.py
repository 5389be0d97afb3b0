"""Bounds on the numbers that come over the network, before anything uses them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, Final

from telegram.error import TelegramError
from telegram.request import HTTPXRequest

RETRY_MOST: Final = 3600
"""Longest pause in seconds that is obeyed: our choice. After it one message is tried, and Telegram may ask for another pause."""

RETRY_UNREADABLE: Final = 5
"""Seconds to wait where the pause asked for is no number: our choice."""

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


class BoundedRequest(HTTPXRequest):
    """Requests whose answers are of the right shape, and ask for a pause that can be waited for."""

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
