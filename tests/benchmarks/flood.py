"""How soon somebody in pain, and anybody who taps, is answered while 2,000 strangers and 50 flooding accounts write.

The channel at the Bot API's limits, the network replaced by a stub in the process, every answer committed with ``synchronous=FULL``.
All that floods comes within one second; then taps come ten a second, and once a second somebody says that their back hurts.
"""

from __future__ import annotations

import asyncio
import json
from collections import defaultdict
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import Any
from unittest import mock

from telegram.request import HTTPXRequest

from companion.app.outbox_store import CompanionOutbox
from companion.app.rate_limit import RateLimit
from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.channels.telegram import TelegramSettings, run_telegram
from tests.benchmarks.measured import Row, percentile
from tests.benchmarks.reminders import CHAT, fill
from tests.benchmarks.throughput import Wire
from tests.benchmarks.two_bots import OURS, begin_anew, questions, tap
from tests.fakes.updates import EPOCH, person, private

STRANGERS, FLOODERS, FLOODED, TAPS, IN_PAIN = 2_000, 50, 38, 100, 10
WAIT_PAIN, WAIT_TAP = 2.0, 3.0
"""Seconds within which pain and taps are answered, the latter in 99 of 100."""


class Line(Wire):
    """A wire that notes when each chat wrote and was written to."""

    def __init__(self) -> None:
        super().__init__()
        self.given: dict[int, float] = {}
        self.got: defaultdict[int, list[float]] = defaultdict(list)
        self.times: list[float] = []

    def says(self, chat: int, text: str) -> None:
        """Give a typed message."""
        self.given.setdefault(chat, perf_counter())
        self.waiting.append({"update_id": self.number, "message": {"message_id": self.number, "date": EPOCH, "chat": private(chat, "Sam"),
                                                                   "from": person(chat, "Sam"), "text": text}})
        self.number += 1
        self.come.set()

    def taps(self, chat: int, data: str) -> None:
        """Give a tap."""
        self.given.setdefault(chat, perf_counter())
        self.waiting.append({"update_id": self.number, **tap(chat, data, self.number)})
        self.number += 1
        self.come.set()

    async def answer(self, method: str, parameters: dict[str, Any]) -> Any:
        """Answer, and note what is sent."""
        if method.lower() == "sendmessage":
            method = "sendMessage"
            self.got[parameters["chat_id"]].append(perf_counter())
            self.times.append(perf_counter())
        return await super().answer(method, parameters)

    def waited(self, chats: range) -> list[float]:
        """How long each chat waited for its first answer."""
        return [self.got[chat][0] - self.given[chat] for chat in chats]


async def _measure(folder: Path) -> tuple[list[float], list[float]]:
    """The waits of who was in pain and of who tapped."""
    line, lifters = Line(), FLOODERS + TAPS + IN_PAIN
    path = folder / "flood.sqlite"
    fill(path, lifters, datetime.now(UTC))
    companion, stop = Companion(path, SystemClock()), asyncio.Event()
    companion.rate_limit = RateLimit()
    flooding, tapping, hurting = (range(CHAT + first, CHAT + last) for first, last in (
        (1, FLOODERS + 1), (FLOODERS + 1, FLOODERS + TAPS + 1), (FLOODERS + TAPS + 1, lifters + 1)))

    async def do_request(self: HTTPXRequest, url: str, method: str, request_data: Any = None, *args: Any, **more: Any) -> tuple[int, bytes]:
        name = url.rpartition("/")[2]
        result = await line.answer(name[0].lower() + name[1:], dict(request_data.parameters) if request_data else {})
        return 200, json.dumps({"ok": True, "result": result}).encode()

    with mock.patch.object(HTTPXRequest, "do_request", do_request):
        async with running_writer(companion):
            begin_anew(companion, lifters)
            running = asyncio.create_task(run_telegram(
                TelegramSettings(OURS, "https://ours.invalid"), companion.take, CompanionOutbox(companion, "telegram", busy=True),
                SystemClock(), stop, lambda wake: setattr(companion, "on_commit", lambda channel: wake())))
            await asyncio.sleep(0.5)
            began = perf_counter()
            for number in range(STRANGERS):
                line.says(10**9 + number, "/start")
                if number < FLOODERS * FLOODED:
                    line.says(flooding[number % FLOODERS], "it hurts")
                if number % 100 == 99:
                    await asyncio.sleep(max(0.0, began + number / STRANGERS - perf_counter()))
            first = questions()[0].data
            for number in range(TAPS):
                line.taps(tapping[number], first)
                if number % 10 == 0:
                    line.says(hurting[number // 10], "I have a sharp pain in my lower back")
                await asyncio.sleep(0.1)
            async with asyncio.timeout(30):
                while any(not line.got[chat] for chat in (*tapping, *hurting)):
                    await asyncio.sleep(0.1)
            stop.set()
            await running
    companion.close()
    if any(later - earlier < 0.999 for earlier, later in zip(line.times, line.times[30:], strict=False)):
        raise RuntimeError("more than 30 messages left within a second")
    return line.waited(hurting), line.waited(tapping)


def rows() -> Iterator[Row]:
    """One round of some ten seconds: the longest wait of who is in pain, and the 99th percentile of taps."""
    with TemporaryDirectory() as folder:
        pain, taps = asyncio.run(_measure(Path(folder)))
    what = f"while {STRANGERS:,} strangers and {FLOODERS} flooding accounts write (one round)"
    yield Row(f"pain answered, longest of {IN_PAIN}, {what}", "-", max(pain), None, "s", max(pain), "at most", WAIT_PAIN)
    yield Row(f"a tap answered, p99 of {TAPS}, {what}", "-", percentile(taps, 0.99), None, "s", percentile(taps, 0.99), "at most", WAIT_TAP)
