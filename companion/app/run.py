"""The companion running, at this terminal or on Telegram. Channels and parts meet here."""

from __future__ import annotations

import asyncio
import contextlib
import signal
import sys
from collections.abc import AsyncIterator, Iterator, Sequence
from datetime import datetime, timedelta
from pathlib import Path

from companion.app.outbox_store import CompanionOutbox
from companion.app.preload import load_all
from companion.app.rate_limit import Flood
from companion.app.service import Companion
from companion.base.clock import Clock, SystemClock
from companion.base.settings import Webhook
from companion.channels import terminal
from companion.pictures.store import PictureStore, folder_beside
from companion.port import Address, Outgoing
from companion.record.outbox import unkept, waiting
from companion.record.writer import CommitFailed
from companion.reminders import SWEEP_SECONDS


@contextlib.asynccontextmanager
async def working(companion: Companion) -> AsyncIterator[asyncio.Task[None]]:
    """The companion with its writer at work; the task ends only where the file can't be written."""
    writer = asyncio.create_task(companion.writer.run())
    try:
        yield writer
    finally:
        writer.cancel()
        with contextlib.suppress(asyncio.CancelledError):
            await writer


@contextlib.contextmanager
def pictured(companion: Companion, clock: Clock) -> Iterator[PictureStore]:
    """The pictures of a companion, kept beside its file."""
    shelf = PictureStore(companion.db.conn, companion.writer, clock, folder_beside(companion.path))
    companion.on_erase = shelf.forget
    try:
        yield shelf
    finally:
        shelf.close()


async def opening(companion: Companion, address: Address) -> Sequence[Outgoing]:
    """Return what a person should see when their screen opens."""
    return [unkept(-1, address, say) for say in await companion.open(address)]


async def chat_here(companion: Companion, name: str, woken: asyncio.Event) -> None:
    """The conversation of one person at this terminal."""
    clock, store = SystemClock(), CompanionOutbox(companion, terminal.TERMINAL_CHANNEL, Address(terminal.TERMINAL_CHANNEL, name))
    async with working(companion):
        with pictured(companion, clock) as pictures:
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
async def numbers(companion: Companion, clock: Clock, port: int | None) -> AsyncIterator[None]:
    """The companion counted, and its numbers served on loopback, where a port is given. Raises CannotListen (operate.serve)."""
    if port is None:
        yield
        return
    from companion.operate.http import serving
    from companion.operate.metrics import Metrics

    metrics = Metrics(clock, lambda now: waiting(companion.db.conn, "telegram", now), lambda: companion.writer.broken is not None)
    async with serving(port, metrics.answer):
        companion.watch, companion.writer.on_commit = metrics, metrics.committed
        yield


async def run_on_telegram(companion: Companion, token: str, api_url: str, backups: Path | None = None,
                          metrics_port: int | None = None, webhook: Webhook | None = None) -> None:
    """The bot on Telegram until a signal stops it, or the file can't be written. ``backups``: the folder of daily backups;
    ``metrics_port``: where numbers are served on loopback; ``webhook``: where Telegram brings updates, instead of polling."""
    from companion.app.housekeeping import every_night
    from companion.channels.telegram import TelegramSettings, run_telegram  # these are long in coming, and only wanted here
    from companion.operate.heartbeat import Heartbeat
    from companion.reminders.sweep import start_sweeping

    stop = asyncio.Event()
    loop = asyncio.get_running_loop()
    for number in (signal.SIGINT, signal.SIGTERM):
        loop.add_signal_handler(number, stop.set)
    clock = SystemClock()
    companion.flood = Flood()
    async with working(companion) as writer, numbers(companion, clock, metrics_port):
        writer.add_done_callback(lambda task: stop.set())
        sweeping = start_sweeping(companion.sweep)
        beat = Heartbeat(companion.writer, clock, companion.watch)
        try:
            with pictured(companion, clock) as pictures:
                nights = asyncio.create_task(every_night(companion, backups))
                try:
                    await run_telegram(TelegramSettings(token, api_url, webhook=webhook), companion.take,
                                       CompanionOutbox(companion, "telegram", busy=True), clock, stop,
                                       lambda wake: setattr(companion, "on_commit", lambda channel: wake()), pictures,
                                       companion.called, beat.polled)
                finally:
                    nights.cancel()
        except CommitFailed as error:  # what could not be written comes first; that it can't be read either follows from it
            raise companion.writer.broken or error from None
        finally:
            sweeping.shutdown(wait=False)
    if companion.writer.broken:
        raise companion.writer.broken


class ScriptClock:
    """A clock that stands still until the script moves it."""

    def __init__(self, at: datetime) -> None:
        self.at = at

    def now(self) -> datetime:
        return self.at

    async def sleep(self, seconds: float) -> None:
        self.at += timedelta(seconds=seconds)
