"""The order of turns: one after the other within a chat, side by side across chats."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Coroutine
from typing import Any, Final

from telegram import Update
from telegram.ext import BaseUpdateProcessor

TURNS_AT_ONCE: Final = 128
"""More than the 100 updates of one poll (Bot API, getUpdates), so that a turn waits for its chat only."""


class Turns(BaseUpdateProcessor):
    """Turns in order within a chat, side by side across chats. ``broken_off`` says that one was cancelled before its
    end, after which nothing may be confirmed any more."""

    def __init__(self) -> None:
        super().__init__(TURNS_AT_ONCE)
        self._lines: dict[object, asyncio.Task[Any]] = {}
        self._running: set[asyncio.Task[Any]] = set()
        self.broken_off = False

    async def initialize(self) -> None:
        """Nothing to do."""

    async def shutdown(self) -> None:
        """Nothing to do."""

    async def do_process_update(self, update: object, coroutine: Awaitable[Any]) -> None:
        """Run a turn once the one before it in its chat has ended."""
        turn, key = asyncio.current_task(), _line_of(update)
        assert turn is not None
        before, self._lines[key] = self._lines.get(key), turn
        self._running.add(turn)
        try:
            if before is not None:
                await asyncio.wait([before])
            await coroutine
        except BaseException:
            self.broken_off = True
            raise
        finally:
            if isinstance(coroutine, Coroutine):
                coroutine.close()  # where the wait was cancelled, so that it is not found never awaited
            self._running.discard(turn)
            if self._lines.get(key) is turn:
                del self._lines[key]

    async def break_off(self) -> None:
        """Cancel the turns that have not ended; they are not confirmed."""
        turns = list(self._running)
        for turn in turns:
            turn.cancel()
        await asyncio.gather(*turns, return_exceptions=True)


def _line_of(update: object) -> object:
    chat = update.effective_chat if isinstance(update, Update) else None
    return None if chat is None else chat.id
