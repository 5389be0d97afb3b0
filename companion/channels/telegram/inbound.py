"""Telegram updates read as inbound events."""

from __future__ import annotations

import logging
from dataclasses import replace
from typing import Final

from telegram import CallbackQuery, Chat, Message, Update, User
from telegram.constants import ChatType
from telegram.ext import filters

from companion.channels.telegram.bounds import update_id_of
from companion.port import Address, Edited, Event, Inbound, Sent, Tapped, Typed

_log = logging.getLogger(__name__)

TELEGRAM_CHANNEL: Final = "telegram"


def clean(text: str) -> str:
    """Return the text with lone surrogates (half emoji), which can't be stored or sent, replaced."""
    return text if text.isascii() else text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")


def inbound_of(update: Update) -> Inbound | None:
    """Return the event of a person in their private chat; None for groups, channels, bots and service messages."""
    query, message = update.callback_query, update.message or update.edited_message
    if query is not None:
        return _tap(update_id_of(update.update_id), query)
    if message is None or message.from_user is None or not _is_private(message.chat, message.from_user):
        return None
    if filters.StatusUpdate.ALL.check_update(update) or (update.edited_message and message.location):
        return None  # a live location is edited every few seconds
    event = _event(message, edited=update.message is None)
    if isinstance(event, Sent) and message.caption:
        event = replace(event, caption=clean(message.caption))
    return Inbound(Address(TELEGRAM_CHANNEL, str(message.chat.id)), event, update_id_of(update.update_id), _name(message.from_user),
                   message.edit_date or message.date)


def inbound_or_none(update: Update) -> Inbound | None:
    """Return ``inbound_of``, or None if that raises."""
    try:
        return inbound_of(update)
    except Exception as error:  # one odd update must not stop the rest
        _log.error("update %s can't be read and is skipped: %s", update.update_id, type(error).__name__)
        return None


def _tap(update_id: int | None, query: CallbackQuery) -> Inbound | None:
    user = query.from_user
    if user.is_bot or query.inline_message_id or (query.message is not None and not _is_private(query.message.chat, user)):
        return None
    # a private chat has its person's id, even if the message is too old to be included
    return Inbound(Address(TELEGRAM_CHANNEL, str(user.id)), Tapped(clean(query.data or "")), update_id, _name(user))


def _is_private(chat: Chat, user: User) -> bool:
    """True if a chat is this person's private one, which has their id."""
    return chat.type == ChatType.PRIVATE and chat.id == user.id and not user.is_bot


def _event(message: Message, edited: bool) -> Event:
    if edited:
        return Edited(clean(message.text or message.caption or ""))
    return Typed(clean(message.text)) if message.text is not None else _sent(message)


def _sent(message: Message) -> Sent:
    if message.photo:
        return Sent("photo", message.photo[-1].file_id)  # sizes come smallest first
    files = (("video", message.video), ("video", message.video_note), ("voice", message.voice),
             ("audio", message.audio), ("video", message.animation), ("document", message.document),
             ("sticker", message.sticker))
    for kind, file in files:
        if file is not None:
            return Sent(kind, file.file_id)
    if place := message.location or (message.venue and message.venue.location):
        return Sent("location", f"{place.latitude},{place.longitude}")
    return Sent("contact" if message.contact else "other")


def _name(user: User) -> str:
    return clean(user.full_name or "").strip()  # None where the first name is empty
