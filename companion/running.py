"""The companion running: at this terminal, on Telegram, or playing a script. Channels and parts meet here."""

from __future__ import annotations

import asyncio
import contextlib
import shutil
import signal
import sys
import tempfile
from collections.abc import AsyncIterator, Callable, Iterator, Sequence
from datetime import datetime, timedelta
from difflib import SequenceMatcher
from pathlib import Path
from typing import Final

from companion.app import Companion
from companion.channels import script, terminal
from companion.channels.port import Address, Inbound, Outgoing
from companion.clock import Clock, SystemClock
from companion.flood import Flood
from companion.operate.backup import every_night
from companion.operate.marks import Beat
from companion.outgoing import CompanionOutbox
from companion.pictures.shelf import Shelf, folder_beside
from companion.record.outbox import unkept, waiting
from companion.reminders import SWEEP_SECONDS
from companion.settings import Webhook

READING_SECONDS_A_WORD: Final = 0.25
"""About 240 words a minute: our choice for a played script."""


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
def pictured(companion: Companion, clock: Clock) -> Iterator[Shelf]:
    """The pictures of a companion, kept beside its file."""
    shelf = Shelf(companion.db.conn, companion.writer, clock, folder_beside(companion.path))
    companion.on_erase = shelf.forget
    try:
        yield shelf
    finally:
        shelf.close()


async def opening(companion: Companion, address: Address) -> Sequence[Outgoing]:
    """What a person should see when their screen opens."""
    return [unkept(-1, address, say) for say in await companion.open(address)]


async def chat_here(companion: Companion, name: str, woken: asyncio.Event) -> None:
    """The conversation of one person at this terminal."""
    clock, store = SystemClock(), CompanionOutbox(companion, terminal.CHANNEL, Address(terminal.CHANNEL, name))
    async with working(companion):
        first = await opening(companion, Address(terminal.CHANNEL, name))
        with pictured(companion, clock) as pictures:
            if terminal.is_interactive():
                await terminal.chat(companion, store, clock, name, first, woken, SWEEP_SECONDS, pictures)
            else:
                await terminal.chat_piped(companion, store, clock, name, first, sys.stdin, sys.stdout, pictures)


@contextlib.asynccontextmanager
async def numbers(companion: Companion, clock: Clock, port: int | None) -> AsyncIterator[None]:
    """The companion counted, and its numbers served on loopback, where a port is given. Raises CannotListen (operate.serve)."""
    if port is None:
        yield
        return
    from companion.operate.metrics import Metrics
    from companion.operate.serve import serving

    metrics = Metrics(clock, lambda now: waiting(companion.db.conn, "telegram", now), lambda: companion.writer.broken is not None)
    async with serving(port, metrics.answer):
        companion.watch, companion.writer.on_commit = metrics, metrics.committed
        yield


async def run_on_telegram(companion: Companion, token: str, api_url: str, backups: Path | None = None,
                          metrics_port: int | None = None, webhook: Webhook | None = None) -> None:
    """The bot on Telegram until a signal stops it, or the file can't be written. ``backups``: the folder of daily backups;
    ``metrics_port``: where numbers are served on loopback; ``webhook``: where Telegram brings updates, instead of polling."""
    from companion.channels.telegram import TelegramSettings, run_telegram
    from companion.reminders.sweep import start_sweeping  # APScheduler is long in coming, and only wanted here

    stop = asyncio.Event()
    loop = asyncio.get_running_loop()
    for number in (signal.SIGINT, signal.SIGTERM):
        loop.add_signal_handler(number, stop.set)
    clock = SystemClock()
    companion.flood = Flood()
    async with working(companion) as writer, numbers(companion, clock, metrics_port):
        writer.add_done_callback(lambda task: stop.set())
        sweeping = start_sweeping(companion.sweep)
        nights = asyncio.create_task(every_night(companion.path, backups, clock)) if backups is not None else None
        beat = Beat(companion.writer, clock, companion.watch)
        try:
            with pictured(companion, clock) as pictures:
                await run_telegram(TelegramSettings(token, api_url, webhook=webhook), companion.take,
                                   CompanionOutbox(companion, "telegram"), clock, stop,
                                   lambda wake: setattr(companion, "on_commit", lambda channel: wake()), pictures,
                                   companion.called, beat.polled)
        finally:
            sweeping.shutdown(wait=False)
            if nights is not None:
                nights.cancel()
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


async def play(lines: script.Script, database: Path, say: Callable[[script.Line], None]) -> script.Script:
    """Play a script against the whole companion on a file; gives the script with what the bot really said.

    ``say`` is told each line as it happens. Time passes where the script says so, and a moment with every reply.
    """
    clock = ScriptClock(lines.begins)
    real: list[script.Line] = []
    shown: list[Outgoing] = []
    companion = Companion(database, clock)
    work = contextlib.AsyncExitStack()
    await work.enter_async_context(working(companion))

    def happened(line: script.Line) -> None:
        real.append(line)
        say(line)

    async def listen() -> None:
        for message in await terminal.waiting_messages(CompanionOutbox(companion, terminal.CHANNEL), clock.now()):
            shown.append(message)
            happened(script.heard(message))

    for line in lines.lines:
        match line:
            case script.Said():
                happened(line)
                clock.at += script.REPLY_TAKES
                event = script.event_of(line, [message for message in shown if message.address.id == line.who])
                await companion.take(Inbound(Address(terminal.CHANNEL, line.who), event, name=line.who))
                await listen()
            case script.Wait():
                happened(line)
                clock.at += line.time
                await companion.sweep()
                await listen()
            case script.Restart():
                happened(line)
                await work.aclose()
                companion.close()
                companion = Companion(database, clock)
                work = contextlib.AsyncExitStack()
                await work.enter_async_context(working(companion))
            case script.Remark():
                happened(line)
            case script.Heard():
                pass  # what it should have said; what it says is heard above
    await work.aclose()
    companion.close()
    return script.Script(lines.begins, tuple(real))


async def play_here(file: Path, echo: Callable[[str], object], pace: float, accept: bool) -> int:
    """Play a script file on a throw-away database, printing it; gives how many of the bot's messages differ.

    Raises ValueError where the file is not a script, or taps a button that is not there.
    """
    wanted = script.parse(file.read_text(encoding="utf-8"))
    loop_lines: list[script.Line] = []
    with tempfile.TemporaryDirectory() as folder:
        real = await play(wanted, Path(folder) / "play.sqlite", loop_lines.append)
    for line in real.lines:
        await _print(line, echo, pace)
    if accept:
        file.write_text(script.written(real), encoding="utf-8")
    return differences(wanted, real)


def differences(wanted: script.Script, real: script.Script) -> int:
    """How many of the bot's messages are not as the script has them."""
    there = [line for line in wanted.lines if isinstance(line, script.Heard)]
    here = [line for line in real.lines if isinstance(line, script.Heard)]
    changed = SequenceMatcher(None, there, here, autojunk=False).get_opcodes()
    return sum(max(b - a, d - c) for kind, a, b, c, d in changed if kind != "equal")


async def _print(line: script.Line, echo: Callable[[str], object], pace: float) -> None:
    width = min(64, shutil.get_terminal_size().columns - 2)
    match line:
        case script.Heard():
            echo(terminal.drawn(line.lines, width))
            await asyncio.sleep(pace * READING_SECONDS_A_WORD * len(" ".join(line.lines).split()))
        case script.Said():
            echo(f"{line.who} › {line.words}")
            await asyncio.sleep(pace)
        case script.Wait():
            echo(f"… {line.words.removeprefix('wait ')} later …")
        case script.Restart():
            echo("… the bot is started again …")
        case script.Remark():
            echo(line.text)
