"""Running the companion at this terminal or on Telegram."""

from __future__ import annotations

import asyncio
import contextlib
import signal
import sys
from collections.abc import AsyncIterator, Iterator, Sequence
from datetime import datetime, timedelta
from pathlib import Path

from companion.app.films import Fetch, local_film
from companion.app.outbox_store import CompanionOutbox
from companion.app.preload import load_all
from companion.app.rate_limit import RateLimit
from companion.app.service import Companion
from companion.base.clock import Clock, SystemClock
from companion.base.settings import Webhook
from companion.channels import terminal
from companion.film import can_read
from companion.film.folder import remove_left_over
from companion.pictures.store import PictureStore, folder_beside
from companion.port import Address, Outgoing
from companion.record.outbox import backlog, unsaved
from companion.record.writer import CommitFailed
from companion.reminders import SWEEP_SECONDS


@contextlib.asynccontextmanager
async def running_writer(companion: Companion) -> AsyncIterator[asyncio.Task[None]]:
    """Run a companion's writer; yields its task, which ends by itself only where the file can't be written."""
    remove_left_over()
    writer = asyncio.create_task(companion.writer.run())
    try:
        yield writer
    finally:
        writer.cancel()
        with contextlib.suppress(asyncio.CancelledError):
            await writer


@contextlib.contextmanager
def picture_store(companion: Companion, clock: Clock) -> Iterator[PictureStore]:
    """Open the store of a companion's pictures, in a folder beside its database."""
    shelf = PictureStore(companion.db.conn, companion.writer, clock, folder_beside(companion.path))
    companion.on_erase, companion.keep_film = shelf.forget, shelf.keep_film
    try:
        yield shelf
    finally:
        shelf.close()


async def opening(companion: Companion, address: Address) -> Sequence[Outgoing]:
    """Return the messages a person should see when their terminal opens."""
    return [unsaved(-1, address, say) for say in await companion.open(address)]


async def chat_here(companion: Companion, name: str, woken: asyncio.Event) -> None:
    """Hold the conversation of one person at this terminal. ``woken``: set when the outbox may have new messages."""
    clock, store = SystemClock(), CompanionOutbox(companion, terminal.TERMINAL_CHANNEL, Address(terminal.TERMINAL_CHANNEL, name))
    companion.fetch_film = local_film if can_read() else None
    async with running_writer(companion):
        with picture_store(companion, clock) as pictures:
            if companion.keep_months is not None:
                from companion.app.housekeeping import tidy

                await tidy(companion)
            first = await opening(companion, Address(terminal.TERMINAL_CHANNEL, name))
            if terminal.is_interactive():
                await terminal.chat(companion.take, companion.sweep, store, clock, name, first, woken, SWEEP_SECONDS, pictures, load_all)
            else:
                await terminal.chat_piped(companion.take, companion.sweep, store, clock, name, first, sys.stdin, sys.stdout, pictures,
                                          load_all)


@contextlib.asynccontextmanager
async def serving_metrics(companion: Companion, clock: Clock, port: int | None) -> AsyncIterator[None]:
    """Serve the companion's metrics on loopback if a port is given. Raises CannotListen (operate.http)."""
    if port is None:
        yield
        return
    from companion.operate.http import serving
    from companion.operate.metrics import Metrics

    metrics = Metrics(clock, lambda now: backlog(companion.db.conn, now, "telegram"), lambda: companion.writer.broken is not None)
    async with serving(port, metrics.answer):
        companion.watch, companion.writer.on_commit = metrics, metrics.committed
        yield


async def run_on_telegram(companion: Companion, token: str, api_url: str, backups: Path | None = None,
                          metrics_port: int | None = None, webhook: Webhook | None = None) -> None:
    """Run the bot on Telegram until SIGINT or SIGTERM. ``backups``: the folder of daily backups; ``metrics_port``: the loopback port
    of the metrics; ``webhook``: receives updates in place of polling. Raises CommitFailed where the file can't be written."""
    from companion.app.housekeeping import nightly
    from companion.channels.telegram import TelegramSettings, run_telegram  # slow to import, and only needed here
    from companion.operate.heartbeat import Heartbeat
    from companion.reminders.sweep import start_sweeping

    stop = asyncio.Event()
    loop = asyncio.get_running_loop()
    for number in (signal.SIGINT, signal.SIGTERM):
        loop.add_signal_handler(number, stop.set)
    clock = SystemClock()
    companion.rate_limit = RateLimit()

    def hand_films(fetch: Fetch) -> None:
        """Let films be read, where the film part is installed."""
        companion.fetch_film = fetch if can_read() else None

    async with running_writer(companion) as writer, serving_metrics(companion, clock, metrics_port):
        writer.add_done_callback(lambda task: stop.set())
        sweeping = start_sweeping(companion.sweep)
        beat = Heartbeat(companion.writer, clock, companion.watch)
        try:
            with picture_store(companion, clock) as pictures:
                nights = asyncio.create_task(nightly(companion, backups))
                try:
                    await run_telegram(TelegramSettings(token, api_url, webhook=webhook), companion.take,
                                       CompanionOutbox(companion, "telegram", busy=True), clock, stop,
                                       lambda wake: setattr(companion, "on_commit", lambda channel: wake()), pictures,
                                       companion.set_bot_name, beat.polled, hand_films)
                finally:
                    nights.cancel()
        except CommitFailed as error:  # a failed write is the cause where a read failed too
            raise companion.writer.broken or error from None
        finally:
            sweeping.shutdown(wait=False)
    if companion.writer.broken:
        raise companion.writer.broken


class ScriptClock:
    """A clock that only a script moves."""

    def __init__(self, at: datetime) -> None:
        self.at = at

    def now(self) -> datetime:
        """Return the script's moment."""
        return self.at

    def monotonic(self) -> float:
        """Return the script's moment in seconds."""
        return self.at.timestamp()

    async def sleep(self, seconds: float) -> None:
        """Move the clock by so many seconds."""
        self.at += timedelta(seconds=seconds)
