"""The order of turns: one after the other within a chat, side by side across chats."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Coroutine
from typing import Any

from telegram import Update


class Turns(asyncio.Queue[object]):
    """Where python-telegram-bot's updater puts what it polled; nothing waits in it, for a turn begins as its update is put there.

    ``broken_off`` says that a turn was cancelled or failed before its end, after which nothing may be confirmed any more.
    """

    def __init__(self, take: Callable[[Update], Coroutine[Any, Any, None]]) -> None:
        super().__init__()
        self._take = take
        self._last: dict[object, asyncio.Task[None]] = {}
        self._running: set[asyncio.Task[None]] = set()
        self._none = asyncio.Event()
        self._none.set()
        self.broken_off = False

    async def put(self, update: object) -> None:
        """Begin the turn of an update."""
        if isinstance(update, Update):
            self.begin(update)

    def begin(self, update: Update) -> asyncio.Task[None]:
        """Begin a turn; it waits for the one before it in its chat."""
        chat = update.effective_chat
        line = chat.id if chat is not None else None
        turn = asyncio.create_task(self._turn(update, self._last.get(line)), name=f"turn {update.update_id}")
        self._last[line] = turn
        self._running.add(turn)
        self._none.clear()
        turn.add_done_callback(lambda ended: self._ended(ended, line))
        return turn

    async def _turn(self, update: Update, before: asyncio.Task[None] | None) -> None:
        if before is not None:
            await asyncio.wait([before])
        await self._take(update)

    def _ended(self, turn: asyncio.Task[None], line: object) -> None:
        self.broken_off = self.broken_off or turn.cancelled() or turn.exception() is not None
        if self._last.get(line) is turn:
            del self._last[line]
        self._running.discard(turn)
        if not self._running:
            self._none.set()

    @property
    def under_way(self) -> bool:
        """Whether a turn has begun and not ended."""
        return bool(self._running)

    async def join(self) -> None:
        """Come back when no turn is under way."""
        await self._none.wait()

    async def break_off(self) -> None:
        """Cancel the turns that have not ended; they are not confirmed."""
        turns = list(self._running)
        for turn in turns:
            turn.cancel()
        await asyncio.gather(*turns, return_exceptions=True)
