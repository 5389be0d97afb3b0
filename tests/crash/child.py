"""The bot in a process of its own, for tests that end it: a server that has imported everything forks one for each job.

A job is a line of JSON on its standard input. ``life``: the bot as ``companion run`` starts it, on a clock that its parent
moves by a control connection on loopback, killed at one I/O call. ``command``: the command line itself, its exit code
told on the same connection; time runs a thousand times as fast there.
"""

from __future__ import annotations

import asyncio
import contextlib
import ctypes
import gc
import json
import mimetypes
import os
import resource
import signal
import socket
import ssl
import sys
import time
import traceback
from collections.abc import Awaitable, Callable
from datetime import datetime, timedelta
from importlib import import_module
from pathlib import Path
from typing import Any, TypeVar

import httpx

import companion.base.clock
import companion.base.logs
import companion.channels.telegram.channel as channel
from companion.app import run
from companion.app.outbox_store import CompanionOutbox
from companion.app.preload import load_all
from companion.app.service import Companion
from companion.channels.drainer import Drainer
from companion.channels.pictures import Picture
from companion.cli.main import main
from companion.language.places import find_zone
from companion.pictures.cache import PictureCache
from companion.port import Delivery, Outgoing
from companion.record import coaching, people
from companion.record import file as record_file
from tests.crash.codes import invite
from tests.crash.points import Points
from tests.fakes.bot_api import TOKEN
from tests.fakes.clock import FakeClock, settle

COUNTED = timedelta(minutes=10)
"""The longest timed hold, counted in and out."""

STALLED = 2.0
"""Seconds, real ones, after which a bot of which nothing is heard is taken to wait for its clock."""

LONGEST_LIFE = 300
"""Seconds, real ones, after which the system ends a bot that nobody has ended."""

IDLE_MOST = 10
"""Rounds in which nothing leaves although it is due."""

LATE = ("companion.app.housekeeping", "companion.coach.caseload_messages", "companion.coach.lifter_messages",
        "companion.coach.log_messages", "companion.coach.report", "companion.operate.backup", "companion.operate.heartbeat",
        "companion.operate.integrity", "companion.reminders.sweep", "encodings.ascii", "encodings.utf_16_le")
"""What a bot imports once it runs: with ``load_all``, half of what a short life takes."""

T = TypeVar("T")

QUICKER = 1000
"""How much faster time runs for a command than outside."""


class TellingClock(FakeClock):
    """A clock that tells each change: who is killed can't tell it afterwards."""

    def __init__(self, at: datetime, say: Any) -> None:
        self._say = say
        super().__init__(at)

    def __setattr__(self, name: str, value: Any) -> None:
        super().__setattr__(name, value)
        if name == "at":
            self._say({"now": value.isoformat()})


class QuickClock:
    """The machine's clock, where a second is a thousandth of one."""

    def __init__(self) -> None:
        self._ahead = timedelta(0)

    def now(self) -> datetime:
        return companion.base.clock.datetime.now(companion.base.clock.UTC) + self._ahead

    def monotonic(self) -> float:
        return time.monotonic() + self._ahead.total_seconds()

    async def sleep(self, seconds: float) -> None:
        await asyncio.sleep(seconds / QUICKER)
        self._ahead += timedelta(seconds=seconds * (1 - 1 / QUICKER))


def _confirm_at_once() -> None:
    async def settled(self: Any) -> None:
        pass

    channel._Channel.settled = settled  # type: ignore[method-assign]


def _forget_updates() -> None:
    people.seen_before = lambda *args: False


def _mark_before_sending() -> None:
    outcome = Drainer._outcome

    async def marked_first(self: Drainer, message: Outgoing) -> Delivery:
        await self._store.mark_sent(message.id, self._clock.now(), "0")
        return await outcome(self, message)

    Drainer._outcome = marked_first  # type: ignore[method-assign]


_SABOTAGE = {"confirm at once": _confirm_at_once, "forget updates": _forget_updates, "mark before sending": _mark_before_sending}
"""Faults a bot could have that nobody would see until it is killed, to try whether they are seen here."""


class Life:
    """One bot on Telegram, from its start to its end, told what to do by its parent."""

    def __init__(self, job: dict[str, Any], say: Any, heard: asyncio.StreamReader) -> None:
        self.job, self._say, self._heard = job, say, heard
        self.clock = TellingClock(datetime.fromisoformat(job["at"]), say)
        self.points = Points(tuple(job["die_at"]) if job["die_at"] else None, say)
        self.drainers: list[Drainer] = []
        self.sending = asyncio.Event()

    async def live(self) -> None:
        """As ``companion run`` does it, but for the clock and the sweeps, which are the parent's."""
        self.points.install()
        self._take_the_seams()
        self.companion = Companion(Path(self.job["database"]), self.clock)
        self.store = CompanionOutbox(self.companion, "telegram", busy=True)
        listening = asyncio.create_task(self._listen())
        running_ = asyncio.create_task(run.run_on_telegram(self.companion, TOKEN, self.job["api"]))
        await asyncio.wait([listening, running_], return_when=asyncio.FIRST_COMPLETED)
        if listening.done():
            listening.result()
        await running_
        listening.cancel()
        self.companion.close()

    def _take_the_seams(self) -> None:
        life = self

        class Watched(Drainer):
            def __init__(self, *args: Any, **options: Any) -> None:
                super().__init__(*args, **options)
                life.drainers.append(self)

            async def run(self) -> None:
                life.sending.set()
                await super().run()

        class NoSweeps:
            def shutdown(self, wait: bool) -> None:
                pass

        def small(album: PictureCache, name: str, video: bool) -> Picture:
            """In place of a drawing, which takes half a second and no call that could fail."""
            return Picture(album.folder / f"{name}.png", b"a small picture", "What it shows.", key=name)

        PictureCache._pose = small  # type: ignore[method-assign]
        coaching.invite = invite
        _SABOTAGE.get(self.job.get("sabotage", ""), lambda: None)()
        channel.Drainer = Watched  # type: ignore[misc]
        run.SystemClock = lambda: self.clock  # type: ignore[assignment,misc]
        run.start_sweeping = lambda *args, **options: NoSweeps()  # type: ignore[assignment]

    async def _listen(self) -> None:
        while line := await self._with_patience(self._heard.readline):
            match json.loads(line):
                case {"op": "move", "to": to}:
                    self.clock.at = max(self.clock.at, datetime.fromisoformat(to))
                    await self.clock.advance(0)
                case {"op": "sweep"}:
                    await self.companion.sweep()
                case {"op": "quiet"}:
                    await self._until_quiet()
                case {"op": "stop"}:
                    os.kill(os.getpid(), signal.SIGTERM)
                    await asyncio.Event().wait()  # the channel ends, and this with it
            self._say({"done": json.loads(line)["op"], "counts": self.points.counts})
        os._exit(3)  # nobody is there any more

    async def _with_patience(self, wait: Callable[[], Awaitable[T]]) -> T:
        """What is waited for. Where the machine is so busy that a call of the Bot API runs out of time, the bot waits for its
        clock, which nobody else moves."""
        while True:
            try:
                return await asyncio.wait_for(wait(), STALLED)
            except TimeoutError:
                await self.clock.advance(1)

    async def _until_quiet(self) -> None:
        """All that waits for the person leaves, each message as its time comes."""
        await self._with_patience(self.sending.wait)
        (drainer,) = self.drainers
        idle = 0
        while True:
            await settle()
            await self.companion.background_done()
            now = self.clock.now()
            if sends := list(drainer._sending.values()):
                await asyncio.wait(sends)
            elif waiting := await self.store.due(now):
                steady = self.clock.monotonic()
                held = [drainer._held[one.address] for one in waiting if drainer._held.get(one.address, steady) > steady]
                idle = 0 if held else idle + 1
                if held:
                    await self.clock.advance(min(held) - steady)
                elif idle > IDLE_MOST:  # it went to sleep while the clock was being moved, and sleeps a moment longer
                    await self.clock.advance(1)
            else:
                following = await self.store.next_due(now)
                if following is None or following - now > COUNTED:
                    return
                self.clock.at = max(self.clock.at, following)
                await self.clock.advance(0)


async def _life(job: dict[str, Any], control: socket.socket) -> None:
    reader, writer = await asyncio.open_connection(sock=control.dup())
    life = Life(job, lambda what: _say(control, what), reader)
    await life.live()
    writer.transport.abort()
    _say(control, {"stopped": 0, "counts": life.points.counts})


def _command(job: dict[str, Any], control: socket.socket) -> None:
    clock = QuickClock()
    run.SystemClock = companion.base.clock.SystemClock = lambda: clock  # type: ignore[assignment,misc]
    record_file._PRAGMAS = tuple(pragma.replace("busy_timeout=5000", "busy_timeout=50") for pragma in record_file._PRAGMAS)
    os.environ |= job["environment"]
    code: Any = 0
    try:
        main(job["words"], standalone_mode=True)
    except SystemExit as end:
        code = end.code
    sys.stderr.flush()
    _say(control, {"stopped": code})


def _say(control: socket.socket, what: dict[str, Any]) -> None:
    control.setblocking(True)
    control.sendall(json.dumps(what).encode() + b"\n")
    control.setblocking(False)


def _give_up_power() -> None:
    """Be bound by the modes of files, also where this runs as root (Linux: clear every capability)."""
    head, none = (ctypes.c_uint32 * 2)(0x20080522, 0), (ctypes.c_uint32 * 6)()
    if os.geteuid() == 0 and ctypes.CDLL(None, use_errno=True).capset(head, none) != 0:
        raise OSError(ctypes.get_errno(), "capset")


def _born(job: dict[str, Any]) -> None:
    """In the fork: do the job and end, whatever happens."""
    code = 1
    try:
        signal.signal(signal.SIGCHLD, signal.SIG_DFL)
        signal.alarm(LONGEST_LIFE)
        out = os.open(job["log"], os.O_WRONLY | os.O_CREAT | os.O_APPEND)
        os.dup2(os.open(os.devnull, os.O_RDONLY), 0)
        os.dup2(out, 1)
        os.dup2(out, 2)
        control = socket.create_connection(("127.0.0.1", job["control"]))
        if job.get("without_power"):
            _give_up_power()
        if limit := job.get("largest_file"):
            signal.signal(signal.SIGXFSZ, signal.SIG_DFL if job.get("die_of_it") else signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (limit, resource.RLIM_INFINITY))
        if job["kind"] == "command":
            _command(job, control)
        else:
            companion.base.logs.set_up_logging("INFO")
            asyncio.run(_life(job, control))
        code = 0
    except BaseException:
        traceback.print_exc()
    finally:
        sys.stderr.flush()
        os._exit(code)


def _warm() -> None:
    """Read what is read at its first use, so that no fork has to."""
    load_all()
    for name in LATE:
        import_module(name)
    mimetypes.init()
    now = companion.base.clock.SystemClock().now()
    find_zone("Porto", now)
    companion.base.clock.local_date(now, "Europe/Lisbon")
    "telegram.test".encode("idna")
    with contextlib.suppress(httpx.HTTPError):
        asyncio.run(_call("http://127.0.0.1:9"))


async def _call(address: str) -> None:
    async with httpx.AsyncClient() as client:
        await client.post(address)


def serve() -> None:
    """Fork a process for each line, until there are no more."""
    context = ssl.create_default_context()  # read once for all: 20 ms each, and nothing here speaks TLS
    ssl.create_default_context = lambda *args, **options: context
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # nobody waits for them: each tells its end by its connection
    _warm()
    gc.collect()
    gc.freeze()
    print("ready", flush=True)
    for line in sys.stdin:
        if os.fork() == 0:
            _born(json.loads(line))


if __name__ == "__main__":
    serve()
