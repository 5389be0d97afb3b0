"""One message out, and what became of it."""

from __future__ import annotations

import asyncio
import logging
import warnings
from datetime import timedelta
from pathlib import Path

import httpx
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup, InputFile, Message
from telegram.constants import MessageLimit
from telegram.error import (
    BadRequest,
    ChatMigrated,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)
from telegram.warnings import PTBDeprecationWarning

from companion.channels.port import Delivered, Delivery, Gone, Later, Outgoing, Refused, Unreachable, Unsure
from companion.channels.telegram.inbound import clean
from companion.logs import redact

_log = logging.getLogger(__name__)


class TelegramPost:
    """Sends one message; every failure is an outcome."""

    def __init__(self, bot: Bot) -> None:
        self._bot = bot

    async def send(self, message: Outgoing) -> Delivery:
        """Send a message, its picture or its document, with its buttons."""
        try:
            chat = int(message.address.id)
        except ValueError:
            return Refused("the address is no chat")
        try:
            return Delivered(str((await self._send(chat, message)).message_id))
        except TelegramError as error:
            return outcome_of(error)

    async def _send(self, chat: int, message: Outgoing) -> Message:
        text, keyboard = clean(message.text), _keyboard(message)
        if message.document is not None:
            file = InputFile(message.document.encode("utf-8", "replace"), "companion-data.jsonl")
            return await self._bot.send_document(chat, file, caption=_cut(text, MessageLimit.CAPTION_LENGTH),
                                                 reply_markup=keyboard)
        picture = await asyncio.to_thread(_picture, message.picture) if message.picture else None
        if picture is not None and _units(text) <= MessageLimit.CAPTION_LENGTH:
            return await self._bot.send_photo(chat, picture, caption=text, reply_markup=keyboard)
        return await self._bot.send_message(chat, _cut(text, MessageLimit.MAX_TEXT_LENGTH), reply_markup=keyboard)


def _keyboard(message: Outgoing) -> InlineKeyboardMarkup | None:
    if not message.buttons:
        return None
    return InlineKeyboardMarkup([[InlineKeyboardButton(clean(one.label), callback_data=one.data) for one in row]
                                 for row in message.buttons])


def _picture(path: str) -> bytes | None:
    """The image, or None where there is none: the words matter more."""
    try:
        return Path(path).read_bytes()
    except OSError as error:
        _log.warning("the picture %s can't be read: %s", path, error.strerror)
        return None


def _units(text: str) -> int:
    return len(text.encode("utf-16-le")) // 2


def _cut(text: str, most: int) -> str:
    """The text, ended with "…" where it is longer than Telegram takes, counted in UTF-16 units: the stricter count."""
    if _units(text) <= most:
        return text
    return text.encode("utf-16-le")[:2 * (most - 1)].decode("utf-16-le", "ignore") + "…"


def outcome_of(error: TelegramError) -> Delivery:
    """What a failed send means. The reason never holds the token.

    A connection cut after the request went out counts as unreachable: what was promised is at least once.
    """
    reason = redact(str(error))
    match error:
        case RetryAfter():
            return Later(seconds_of(error))
        case Forbidden():
            return Gone(reason)
        case TimedOut():
            never_left = isinstance(error.__cause__, httpx.ConnectTimeout | httpx.PoolTimeout)
            return Unreachable(reason) if never_left else Unsure(reason)
        case BadRequest():
            return Gone(reason) if "chat not found" in reason.lower() else Refused(reason)
        case NetworkError() | InvalidToken():
            return Unreachable(reason)
        case ChatMigrated():
            return Refused(reason)
        case _:
            return Unsure(reason)  # a success whose text could not be read


def seconds_of(error: RetryAfter) -> float:
    """How long Telegram asks to wait."""
    with warnings.catch_warnings():  # where the environment asks for whole seconds, PTB warns about it
        warnings.simplefilter("ignore", PTBDeprecationWarning)
        wait = error.retry_after
    return wait.total_seconds() if isinstance(wait, timedelta) else float(wait)
