"""How many updates a second two bots handle, in by PTB's Updater and out by its Bot, the network replaced by a stub in the process.

The next burst comes when every answer to the last is on the wire, so that both wait for their own slowest.
"""

from __future__ import annotations

import asyncio
import json
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import Any
from unittest import mock

from telegram.request import HTTPXRequest

from tests.benchmarks.measured import ROUNDS, Row, compare
from tests.benchmarks.two_bots import OURS, THEIRS, Question, begin_anew, chat_of, ours, questions, tap, theirs
from tests.fakes.updates import BOT, EPOCH, private

CHATS = 200
BURSTS = {100: 1_000, 10: 1_000, 1: 100}
"""Updates at once, and how many in a round."""


class Wire:
    """What one bot is given and what it sends."""

    def __init__(self) -> None:
        self.waiting: list[dict[str, Any]] = []
        self.sent: list[tuple[int, str]] = []
        self.number = 1
        self.wanted = 0
        self.come, self.answered = asyncio.Event(), asyncio.Event()

    def give(self, chat: int, data: str) -> None:
        """A tap, to be had with the next poll."""
        self.waiting.append({"update_id": self.number, **tap(chat, data, self.number)})
        self.number += 1

    async def answer(self, method: str, parameters: dict[str, Any]) -> Any:
        """What the Bot API would."""
        match method:
            case "getUpdates":
                offset = parameters.get("offset") or 0
                self.waiting = [one for one in self.waiting if one["update_id"] >= offset]
                if not self.waiting and parameters.get("timeout"):
                    self.come.clear()
                    await self.come.wait()
                return self.waiting[:100]
            case "sendMessage":
                self.sent.append((parameters["chat_id"], parameters["text"]))
                if len(self.sent) >= self.wanted:
                    self.answered.set()
                return {"message_id": len(self.sent), "date": EPOCH, "from": BOT, "chat": private(parameters["chat_id"], "Sam"),
                        "text": parameters["text"]}
            case "getMe":
                return BOT
            case _:
                return True


async def _round(wire: Wire, asked: list[Question], burst: int, updates: int) -> float:
    """Updates a second."""
    chats = min(CHATS, updates // len(asked))
    taps = [(chat_of(number), one.data) for one in asked for number in range(1, chats + 1)]
    begin = perf_counter()
    for first in range(0, len(taps), burst):
        some = taps[first:first + burst]
        wire.wanted = len(wire.sent) + len(some)
        wire.answered.clear()
        for chat, data in some:
            wire.give(chat, data)
        wire.come.set()
        async with asyncio.timeout(60):
            await wire.answered.wait()
    took = perf_counter() - begin
    last = dict(wire.sent[-len(taps):])
    if set(last.values()) != {asked[-1].text} or len(last) != chats:
        raise RuntimeError(f"not every chat stands at the last question: {set(last.values())}")
    return len(taps) / took


async def _measure(folder: Path) -> list[Row]:
    asked, wires = questions(), {OURS: Wire(), THEIRS: Wire()}

    async def do_request(self: HTTPXRequest, url: str, method: str, request_data: Any = None, *args: Any, **more: Any) -> tuple[int, bytes]:
        token, _, name = url.partition("/bot")[2].rpartition("/")
        result = await wires[token].answer(name[0].lower() + name[1:], dict(request_data.parameters) if request_data else {})
        return 200, json.dumps({"ok": True, "result": result}).encode()

    rows = []
    with mock.patch.object(HTTPXRequest, "do_request", do_request):
        async with ours(folder, CHATS) as companion, theirs(folder, asked):
            for burst, updates in BURSTS.items():
                got: dict[str, list[float]] = {OURS: [], THEIRS: []}
                for turn in range(ROUNDS + 1):
                    for token in (OURS, THEIRS) if turn % 2 else (THEIRS, OURS):
                        begin_anew(companion, CHATS)
                        rate = await _round(wires[token], asked, burst, updates)
                        if turn:
                            got[token].append(rate)
                what = f"updates handled, {CHATS} chats, bursts of {burst}" if burst > 1 else "the same, one at a time"
                rows.append(compare(what, "PTB's ConversationHandler, PicklePersistence", got[OURS], got[THEIRS], "a second",
                                    "at least" if burst > 1 else "told only", 1.0))
    return rows


def rows() -> Iterator[Row]:
    """Bursts of a hundred, of ten, and one at a time."""
    with TemporaryDirectory() as folder:
        yield from asyncio.run(_measure(Path(folder)))
