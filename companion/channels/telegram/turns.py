"""Order of turns: sequential within a chat, concurrent across chats."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Coroutine
from typing import Any

from telegram import Update


class Turns(asyncio.Queue[object]):
    """The update queue given to python-telegram-bot's updater; nothing waits in it, as putting an update begins its turn.

    ``broken_off``: a turn was cancelled or failed; nothing may be confirmed after that.
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
        """Begin a turn; it waits for the previous one of its chat."""
        of = update.effective_chat or update.effective_user  # a private chat has its person's id, and a tap may come without its message
        line = of.id if of is not None else None
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
        """True if a turn is running."""
        return bool(self._running)

    async def join(self) -> None:
        """Return when no turn is running."""
        await self._none.wait()

    async def break_off(self) -> None:
        """Cancel the running turns; their updates are not confirmed."""
        turns = list(self._running)
        for turn in turns:
            turn.cancel()
        await asyncio.gather(*turns, return_exceptions=True)
