"""The two bots that are held against each other: the companion, and the same questions on python-telegram-bot's own
ConversationHandler with PicklePersistence, as its examples show it. Both by PTB's real Updater, both with the same taps.

The companion's limits (one message a second to a chat, 30 in all) are lifted here, for the other bot has none. Its every answer is
committed with synchronous=FULL before it is confirmed, and leaves by the outbox; what the other bot keeps is written out by PTB
once a minute and at the end, as it comes.
"""

from __future__ import annotations

import asyncio
import contextlib
import warnings
from collections.abc import AsyncIterator
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import Any
from unittest import mock

from telegram import InlineKeyboardButton, InlineKeyboardMarkup, Update
from telegram.ext import Application, ApplicationBuilder, CallbackQueryHandler, CommandHandler, ConversationHandler, PicklePersistence

from companion.app.outbox_store import CompanionOutbox
from companion.app.preload import load_all
from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.channels.drainer import Drainer, Limits
from companion.channels.telegram import TelegramSettings, channel, run_telegram
from companion.conversation.effects import Say
from companion.conversation.events import Tapped
from companion.conversation.step import step
from flows.catalogue import BOOK
from tests.benchmarks.engine import walk
from tests.benchmarks.reminders import CHAT, fill
from tests.fakes.updates import BOT, EPOCH, person, private

OURS, THEIRS = "4242:ours_0123456789012345678901234567890", "4343:theirs_01234567890123456789012345678901"
UNLIMITED = Limits(per_chat=0.0, in_window=10_000, window=0.0, at_once=100)


@dataclass(frozen=True, slots=True)
class Question:
    """The button that is tapped, and the question that comes then: its text and its buttons' labels."""

    data: str
    text: str
    labels: tuple[str, ...]


def questions() -> list[Question]:
    """The safety check but for its last answer: each tap is followed by one question."""
    found = []
    for one in walk(typed=False)[:-1]:
        says = [effect for effect in step(BOOK, one.session, one.event, one.known).effects if isinstance(effect, Say)]
        if len(says) != 1 or not isinstance(one.event, Tapped):
            break
        found.append(Question(one.event.data, says[0].text, tuple(tap.label for row in says[0].buttons for tap in row)))
    return found


def tap(chat: int, data: str, number: int) -> dict[str, Any]:
    """The update of a tapped button."""
    message = {"message_id": number, "date": EPOCH, "chat": private(chat, "Sam"), "from": BOT, "text": "…"}
    return {"callback_query": {"id": str(number), "from": person(chat, "Sam"), "data": data, "message": message, "chat_instance": "1"}}


def begin_anew(companion: Companion, chats: int) -> None:
    """Every chat stands before the first of the questions again."""
    companion.db.conn.execute("update sessions set session = ? where person <= ?", (walk(typed=False)[0].session.dumps(), chats))


@contextlib.asynccontextmanager
async def ours(folder: Path, chats: int, url: str = "https://ours.invalid") -> AsyncIterator[Companion]:
    """The companion on Telegram, with so many lifters who are in the safety check."""
    load_all()  # as ``companion run`` does: what is loaded is no garbage collector's business any more, for both bots
    path = folder / "ours.sqlite"
    fill(path, chats, datetime.now(UTC))
    companion, stop = Companion(path, SystemClock()), asyncio.Event()
    with mock.patch.object(channel, "Drainer", partial(Drainer, limits=UNLIMITED)):
        async with running_writer(companion):
            begin_anew(companion, chats)
            running = asyncio.create_task(run_telegram(
                TelegramSettings(OURS, url), companion.take, CompanionOutbox(companion, "telegram", busy=True), SystemClock(), stop,
                lambda wake: setattr(companion, "on_commit", lambda channel: wake())))
            try:
                yield companion
            finally:
                stop.set()
                await running
    companion.close()


@contextlib.asynccontextmanager
async def theirs(folder: Path, asked: list[Question], url: str = "https://theirs.invalid") -> AsyncIterator[Any]:
    """The same questions as a ConversationHandler: a state each, the answer kept, the next question sent; then from the first again."""
    async def answered(update: Update, context: Any) -> int:
        query = update.callback_query
        assert query is not None
        assert query.data is not None
        assert context.user_data is not None
        await query.answer()
        place = next(place for place, one in enumerate(asked) if one.data == query.data)
        context.user_data[place] = query.data
        keyboard = InlineKeyboardMarkup([[InlineKeyboardButton(label, callback_data=f"{place}.{label}"[:60])]
                                         for label in asked[place].labels])
        await context.bot.send_message(query.from_user.id, asked[place].text, reply_markup=keyboard)
        return (place + 1) % len(asked)

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        handler = ConversationHandler(
            [CommandHandler("start", answered), CallbackQueryHandler(answered, pattern=f"^{asked[0].data}$")],
            {place: [CallbackQueryHandler(answered, pattern=f"^{one.data}$")] for place, one in enumerate(asked)},
            [CommandHandler("cancel", answered)], name="check", persistent=True)
        builder: Any = ApplicationBuilder().token(THEIRS).base_url(f"{url}/bot").persistence(PicklePersistence(folder / "theirs.pickle"))
        app: Application[Any, Any, Any, Any, Any, Any] = builder.job_queue(None).build()
    app.add_handler(handler)
    async with app:
        await app.start()
        assert app.updater is not None
        await app.updater.start_polling(timeout=25)
        try:
            yield app
        finally:
            await app.updater.stop()
            await app.stop()


def chat_of(number: int) -> int:
    """The chat of a lifter, from 1."""
    return CHAT + number
