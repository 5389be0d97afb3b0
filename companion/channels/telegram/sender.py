"""Sending one message by the Bot API, and its outcome."""

from __future__ import annotations

import asyncio
import json
import logging
import warnings
from collections.abc import Awaitable, Callable
from datetime import timedelta
from functools import lru_cache
from typing import Final

import httpx
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup, InputFile, Message
from telegram.constants import MessageLimit
from telegram.error import (
    BadRequest,
    ChatMigrated,
    EndPointNotFound,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)
from telegram.warnings import PTBDeprecationWarning

from companion.base.logs import redact
from companion.channels.pictures import Picture, Pictures
from companion.channels.telegram.inbound import clean
from companion.port import DESCRIBE, Button, Delivered, Delivery, Gone, Later, Outgoing, Refused, Unreachable, Unsure

_log = logging.getLogger(__name__)

MEDIA_PREFIX: Final = "media:"
"""Prefix of a picture's name that refers to a photo or video somebody sent."""

SEND_MESSAGE: Final = "SendMessage"
"""Method name. The Bot API ignores case (from memory); spelt like this, python-telegram-bot does not warn at each message that it has a
sendMessage of its own."""

ButtonRows = tuple[tuple[Button, ...], ...]

PICTURE_GAP: Final = 1.0
"""Seconds between a picture and a text too long for its caption: one message a second to one chat (drainer.TELEGRAM)."""


class TelegramPost:
    """Sends messages over a Telegram bot; every failure is an outcome."""

    def __init__(self, bot: Bot, pictures: Pictures | None = None,
                 sleep: Callable[[float], Awaitable[None]] = asyncio.sleep) -> None:
        self._bot, self._pictures, self._sleep = bot, pictures, sleep

    async def send(self, message: Outgoing) -> Delivery:
        """Send a message with its picture or document and its buttons."""
        try:
            chat = int(message.address.id)
        except ValueError:
            return Refused("the address is no chat")
        try:
            return Delivered(str(await self._send(chat, message)))
        except TelegramError as error:
            return outcome_of(error)

    async def _send(self, chat: int, message: Outgoing) -> int:
        """Send a message; return Telegram's message id."""
        text, rows = clean(message.text), message.buttons
        if message.document is None and not message.picture:
            return await self._send_text(chat, text, rows)
        keyboard = InlineKeyboardMarkup([[InlineKeyboardButton(clean(one.label), callback_data=one.data) for one in row]
                                         for row in rows]) if rows else None
        if message.document is not None:
            file = InputFile(message.document.encode("utf-8", "replace"), message.document_name or "companion.txt")
            return (await self._bot.send_document(chat, file, caption=_cut(text, MessageLimit.CAPTION_LENGTH),
                                                  reply_markup=keyboard)).message_id
        if message.picture and message.picture.startswith(MEDIA_PREFIX):
            caption = _cut(text, MessageLimit.CAPTION_LENGTH)
            try:
                return (await self._send_media(chat, message.picture.removeprefix(MEDIA_PREFIX), caption, keyboard)).message_id
            except BadRequest as error:
                return await self._without_picture(error, chat, text, rows)
        picture = await self._pictures.find(message.picture.removeprefix(DESCRIBE),
                                            message.address) if message.picture and self._pictures else None
        described = f"{text}\n\n{clean(picture.words)}".strip() if picture else text
        if picture is not None and not (message.picture or "").startswith(DESCRIBE):
            under = next((one for one in (f"{text}\n\n{clean(picture.caption)}".strip(), text)
                          if _units(one) <= MessageLimit.CAPTION_LENGTH), None)
            try:
                if under is not None:
                    return (await self._send_picture(chat, picture, under, keyboard)).message_id
                await self._send_picture(chat, picture, clean(picture.caption), None)
            except BadRequest as error:
                return await self._without_picture(error, chat, described, rows)
            await self._sleep(PICTURE_GAP)
            described = text
        return await self._send_text(chat, described, rows)

    async def _without_picture(self, error: BadRequest, chat: int, text: str, rows: ButtonRows) -> int:
        """Send the text alone after Telegram refused its picture: a question or a caution must not get lost with it."""
        _log.warning("Telegram refused a picture, its words go alone: %s", redact(str(error)))
        return await self._send_text(chat, text, rows)

    async def _send_text(self, chat: int, text: str, rows: ButtonRows) -> int:
        """Send text by a raw request: nearly all messages are text, and building objects for the keyboard and the response takes four
        times as long as sending."""
        asked = {"chat_id": chat, "text": _cut(text, MessageLimit.MAX_TEXT_LENGTH)}
        if rows:
            asked["reply_markup"] = _keyboard_text(rows)
        answer = await self._bot.do_api_request(SEND_MESSAGE, asked)
        try:
            return int(answer["message_id"])
        except (KeyError, TypeError, ValueError, OverflowError):
            raise TelegramError("an answer without a message's number") from None

    async def _send_media(self, chat: int, file: str, caption: str, keyboard: InlineKeyboardMarkup | None) -> Message:
        """Forward a photo or video. A file id does not tell its type: it is tried as a video first, then as a photo."""
        try:
            return await self._bot.send_video(chat, file, caption=caption, reply_markup=keyboard)
        except BadRequest:
            return await self._bot.send_photo(chat, file, caption=caption, reply_markup=keyboard)

    async def _send_picture(self, chat: int, picture: Picture, caption: str, keyboard: InlineKeyboardMarkup | None) -> Message:
        """Send a picture, reusing an earlier upload's file id if Telegram still knows it."""
        bot, pictures = str(self._bot.id), self._pictures
        assert pictures is not None  # one of theirs was found
        known = await pictures.file_id(bot, picture.key) if picture.key else None
        if known is not None:
            try:
                return await self._as_picture(chat, picture, known, caption, keyboard)
            except BadRequest as error:
                if "file" not in str(error).lower():
                    raise
                await pictures.keep_file_id(bot, picture.key, None)
        file = InputFile(picture.data, picture.path.name)
        sent = await self._as_picture(chat, picture, file, caption, keyboard)
        if picture.key and (called := _file_id(sent)) is not None:
            await pictures.keep_file_id(bot, picture.key, called)
        return sent

    async def _as_picture(self, chat: int, picture: Picture, file: InputFile | str, caption: str,
                          keyboard: InlineKeyboardMarkup | None) -> Message:
        if picture.moves:
            return await self._bot.send_animation(chat, file, caption=caption, reply_markup=keyboard)
        return await self._bot.send_photo(chat, file, caption=caption, reply_markup=keyboard)


def _file_id(sent: Message) -> str | None:
    """Return the file id of a sent message; for a photo, of its largest size."""
    if sent.photo:
        return sent.photo[-1].file_id
    file = sent.animation or sent.document
    return None if file is None else file.file_id


@lru_cache(500)  # the same question goes to many
def _keyboard_text(rows: ButtonRows) -> str:
    """Return an inline keyboard as the Bot API's JSON."""
    return json.dumps({"inline_keyboard": [[{"text": clean(one.label), "callback_data": one.data} for one in row] for row in rows]})


def _units(text: str) -> int:
    return len(text.encode("utf-16-le")) // 2


def _cut(text: str, most: int) -> str:
    """Return the text cut to ``most`` UTF-16 units, the stricter way to count, with "…" at the end if cut."""
    if _units(text) <= most:
        return text
    return text.encode("utf-16-le")[:2 * (most - 1)].decode("utf-16-le", "ignore") + "…"


def outcome_of(error: TelegramError) -> Delivery:
    """Return the outcome a failed send means. The reason never holds the token.

    A connection cut after the request was sent counts as unreachable: delivery is promised at least once.
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
        case NetworkError() | InvalidToken() | EndPointNotFound():  # the last is a refused token in do_api_request
            return Unreachable(reason)
        case ChatMigrated():
            return Refused(reason)
        case _:
            return Unsure(reason)  # sent, but the response could not be read


def seconds_of(error: RetryAfter) -> float:
    """Return the seconds Telegram asks to wait."""
    with warnings.catch_warnings():  # PTB warns if the environment asks for whole seconds
        warnings.simplefilter("ignore", PTBDeprecationWarning)
        wait = error.retry_after
    return wait.total_seconds() if isinstance(wait, timedelta) else float(wait)
