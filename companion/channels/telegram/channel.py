"""The running channel: polling, turns and sending, and a shutdown that loses nothing."""

from __future__ import annotations

import asyncio
import contextlib
import itertools
import json
import logging
import re
from collections.abc import Awaitable, Callable, Coroutine, Sequence
from datetime import datetime, timedelta
from functools import partial
from typing import Any, Final

from telegram import Bot, ChatMember, Update
from telegram.constants import ChatType
from telegram.error import InvalidToken, NetworkError, RetryAfter, TelegramError
from telegram.ext import Updater

from companion.base.clock import Clock
from companion.base.logs import redact
from companion.channels.drainer import CLOSING_SECONDS, Drainer, backoff
from companion.channels.pictures import Pictures
from companion.channels.telegram.bounds import UPDATE_IDS, BoundedRequest
from companion.channels.telegram.films import FilmFetch, fetch_film
from companion.channels.telegram.inbound import TELEGRAM_CHANNEL, inbound_or_none
from companion.channels.telegram.poll import Owner, Poll, readable
from companion.channels.telegram.sender import TelegramPost, seconds_of
from companion.channels.telegram.settings import TelegramSettings, wrong_token
from companion.channels.telegram.turns import Turns
from companion.channels.telegram.webhook import WebhookServer
from companion.port import Address, Store, Take

_log = logging.getLogger(__name__)

KINDS_OF_UPDATE: Final = ("message", "edited_message", "callback_query", "my_chat_member")
PRIVATE_ONLY: Final = "I only talk in private chats. Tap my name and write to me there."
GROUPS_TOLD: Final = 1_000
"""Most groups remembered as answered, once each; our choice."""


async def run_telegram(settings: TelegramSettings, take: Take, store: Store, clock: Clock, stop: asyncio.Event,
                       hand_wake: Callable[[Callable[[], None]], object] = lambda wake: None,
                       pictures: Pictures | None = None, tell_name: Callable[[str], object] = lambda name: None,
                       on_poll: Callable[[datetime | None], object] = lambda theirs: None,
                       hand_films: Callable[[FilmFetch], object] = lambda fetch: None) -> None:
    """Take updates and send due messages until ``stop`` is set.

    ``hand_wake`` receives a function to call after a commit that may have filled the outbox; ``tell_name`` gets the bot's name;
    ``on_poll`` is called at every good poll with the time Telegram gives; ``hand_films`` gets what brings a film. At the
    end polling stops, turns under way finish and are confirmed, and what is due is sent, for CLOSING_SECONDS at most; it does not wait for
    a network that is down. Raises CannotHook if a webhook's port can't be used, WrongToken, SecondInstance, and what ``take`` or ``store``
    raise: nothing more is confirmed then.
    """
    channel = _Channel(settings, take, store, clock, stop, hand_wake, pictures, tell_name, on_poll)
    hand_films(partial(fetch_film, channel._bot))
    await channel.run()


class _Channel:
    def __init__(self, settings: TelegramSettings, take: Take, store: Store, clock: Clock, stop: asyncio.Event,
                 hand_wake: Callable[[Callable[[], None]], object], pictures: Pictures | None,
                 tell_name: Callable[[str], object], on_poll: Callable[[datetime | None], object]) -> None:
        self._tell_name, self._on_poll = tell_name, on_poll
        self._settings, self._take, self._store, self._clock, self._stop = settings, take, store, clock, stop
        self._failed: Exception | None = None
        self._failing, self._closing = asyncio.Event(), False
        self._settle_within: float | None = None
        self._told: set[int] = set()
        self._asides: set[asyncio.Task[None]] = set()
        self._turns = Turns(self._on_update)
        self._hook = WebhookServer(settings.webhook, self._brought) if settings.webhook is not None else None
        if not re.fullmatch(r"[\w:-]+", settings.token):
            raise wrong_token()
        at = settings.api_url.rstrip("/")
        owner = Owner(self.settled, self.pause, self.fail, on_poll)
        self._requests = poll, other = Poll(settings, owner), BoundedRequest(read_timeout=settings.answer_seconds)
        self._bot = Bot(settings.token, f"{at}/bot", f"{at}/file/bot", request=other, get_updates_request=poll)
        self._updater = Updater(self._bot, self._turns)
        self._reached = False
        self._brought_at = clock.now()
        self._drainer = Drainer(store, TelegramPost(self._bot, pictures, clock.sleep), clock)
        hand_wake(self._drainer.wake)

    async def run(self) -> None:
        """Run until stopped or failed, then shut down; raise the failure, if any."""
        work: Sequence[asyncio.Task[Any]] = ()
        graceful = False
        try:
            work = [asyncio.create_task(self._stop.wait()), asyncio.create_task(self._failing.wait()),
                    asyncio.create_task(self._work())]
            await asyncio.wait(work, return_when=asyncio.FIRST_COMPLETED)
            if work[2].done() and self._failed is None:
                work[2].result()  # it ends only by raising
            graceful = self._failed is None
        finally:
            await self._close(work, graceful)
        if self._failed is not None:
            raise self._failed

    async def _work(self) -> None:
        """Connect, then send forever; Telegram's updater calls back with updates."""
        await self._until_reached(self._updater.initialize)
        self._reached = True
        if self._hook is not None:
            await self._hook.start()
        await self._until_reached(self._start_polling if self._hook is None else self._set_webhook)
        self._tell_name(self._bot.username)
        _log.info("taking messages as @%s", self._bot.username)
        looking = asyncio.create_task(self._look_at_webhook()) if self._hook is not None else None
        try:
            await self._drainer.run()
        finally:
            if looking is not None:
                looking.cancel()

    async def _start_polling(self) -> None:
        await self._updater.start_polling(timeout=timedelta(seconds=self._settings.poll_seconds),
                                          allowed_updates=KINDS_OF_UPDATE)

    async def _set_webhook(self) -> None:
        hook = self._settings.webhook
        assert hook is not None
        await self._bot.set_webhook(hook.url, secret_token=hook.secret, allowed_updates=KINDS_OF_UPDATE, drop_pending_updates=False)

    async def _look_at_webhook(self) -> None:
        """Ask Telegram for the webhook's state at intervals, forever.

        It counts as a good poll only if messages arrive: nobody else would notice a proxy that is down.
        """
        assert self._settings.webhook is not None
        told: datetime | None = None
        while True:
            with contextlib.suppress(TelegramError, ValueError, OverflowError, TypeError, KeyError):  # numbers and fields of any kind
                info = await self._bot.get_webhook_info()
                failed = info.last_error_date
                if info.url != self._settings.webhook.url:
                    _log.error("this bot's webhook was changed: its messages go elsewhere")
                elif failed is None or failed <= self._brought_at or not info.pending_update_count:
                    self._on_poll(None)
                elif failed != told:
                    told = failed
                    _log.error("Telegram can't deliver messages here (%s); waiting there: %d",
                               redact(info.last_error_message or "no reason given"), info.pending_update_count)
            await self._clock.sleep(self._settings.poll_seconds)

    async def _brought(self, body: bytes) -> int:
        """Handle an update delivered to the webhook; return status 200 once its turn is committed."""
        try:
            whole = json.loads(body)
        except (ValueError, RecursionError):
            return 400
        number: Any = whole.get("update_id") if isinstance(whole, dict) else None
        if type(number) is not int or number not in UPDATE_IDS:
            return 400
        self._brought_at = self._clock.now()
        update = Update.de_json(dict(readable(whole)), self._bot)
        if self._closing or self._failed is not None or self._turns.broken_off:
            return 503
        turn = self._turns.begin(update)
        await asyncio.wait([turn])
        good = not turn.cancelled() and turn.exception() is None and self._failed is None
        return 200 if good else 503

    async def _until_reached(self, attempt: Callable[[], Awaitable[None]]) -> None:
        for tries in itertools.count():
            try:
                return await attempt()
            except InvalidToken:
                break  # its message may hold the token, so it is dropped here
            except (TelegramError, KeyError, TypeError, ValueError, OverflowError) as error:  # fields missing, or of any kind
                wait = seconds_of(error) if isinstance(error, RetryAfter) else backoff(tries)
                _log.warning("Telegram can't be reached (%s); trying again in %g s", redact(repr(error)), wait)
            await self._clock.sleep(wait)
        raise wrong_token()

    async def _close(self, work: Sequence[asyncio.Task[Any]], graceful: bool) -> None:
        """Shut down without losing anything: stop new updates, settle and confirm turns, then send the last messages."""
        self._settle_within = self._settings.settle_seconds if graceful else 0
        self._closing = True
        if self._updater.running:
            await self._updater.stop()
        if self._hook is not None:
            await self._hook.close(self._settle_within)
        await self._turns.break_off()
        if self._hook is not None:
            await self._hook.ended()
        for task in work:
            task.cancel()
        await asyncio.gather(*work, return_exceptions=True)
        try:
            if graceful and self._reached:
                await self._drainer.flush(CLOSING_SECONDS)
                await asyncio.gather(*self._asides, return_exceptions=True)
        finally:
            await self._drainer.close()
            for aside in self._asides:
                aside.cancel()
            await self._updater.shutdown()
            for request in self._requests:
                await request.shutdown()

    async def settled(self) -> None:
        """See poll.Owner. Once a turn is known not to be committed, polling stops."""
        if self._settle_within == 0 and self._turns.under_way:  # not by a timeout: in a task that is being cancelled it would end
            raise NetworkError("turns have not settled")  # the task itself, before Python 3.11.4
        try:
            async with asyncio.timeout(self._settle_within or None):
                await self._turns.join()
        except TimeoutError:
            raise NetworkError("turns have not settled") from None
        if self._turns.broken_off or self._failed is not None:
            raise NetworkError("a turn was not committed")

    async def pause(self, seconds: float) -> None:
        """See poll.Owner."""
        if not self._closing:
            await self._clock.sleep(seconds)

    def fail(self, error: Exception) -> None:
        """See poll.Owner."""
        self._failed = self._failed or error
        self._failing.set()

    async def _on_update(self, update: Update) -> None:
        if update.callback_query is not None:
            self._aside(self._bot.answer_callback_query(update.callback_query.id))
        try:
            inbound = inbound_or_none(update)
            await (self._take(inbound) if inbound is not None else self._other(update))
        except Exception as error:  # by contract the commit failed, not the turn: confirm nothing more
            self.fail(error)
        else:
            self._drainer.wake()

    async def _other(self, update: Update) -> None:
        """Handle an update that is no input: a block, a group message, or nothing of interest."""
        change, message = update.my_chat_member, update.message
        if change is not None and change.chat.type == ChatType.PRIVATE:
            if change.new_chat_member.status == ChatMember.BANNED:
                address = Address(TELEGRAM_CHANNEL, str(change.chat.id))
                await self._store.mark_gone(address, self._clock.now(), "blocked the bot")
        elif message is not None and message.chat.type in (ChatType.GROUP, ChatType.SUPERGROUP):
            if message.chat.id not in self._told and len(self._told) < GROUPS_TOLD:
                self._told.add(message.chat.id)
                self._aside(self._bot.send_message(message.chat.id, PRIVATE_ONLY))
        else:
            _log.debug("update %s is skipped", update.update_id)

    def _aside(self, call: Coroutine[Any, Any, Any]) -> None:
        """Make a minor API call without waiting for it; a failure is ignored."""
        async def quietly() -> None:
            """Make the call and ignore a Telegram error."""
            with contextlib.suppress(TelegramError):
                await call
        task = asyncio.create_task(quietly())
        self._asides.add(task)
        task.add_done_callback(self._asides.discard)
