"""Every I/O call of a running bot, counted by name; at one of them the process kills itself.

A commit has two points: before it, and after it. A call of the Bot API has three: before it, when the whole request is
written to the socket and no answer is read, and when the answer is there and nobody has looked at it.
"""

from __future__ import annotations

import os
import signal
import sqlite3
from collections import Counter
from collections.abc import Callable
from typing import Any

from httpcore._backends.anyio import AnyIOStream
from telegram.request import HTTPXRequest

Point = tuple[str, int]
"""An I/O call by its name, and the how manieth of that name it is."""

_connect = sqlite3.connect
_write = AnyIOStream.write
_do_request = HTTPXRequest.do_request


def _method(url: str) -> str:
    """The Bot API method that an address ends with, as the Bot API writes it; it takes any case."""
    name = url.rsplit("/", 1)[1]
    return name[:1].lower() + name[1:]


class Points:
    """Counts I/O calls by name. At ``die_at`` it says so and kills this process, leaving no time for anything."""

    def __init__(self, die_at: Point | None, say: Callable[[dict[str, Any]], None]) -> None:
        self.counts: Counter[str] = Counter()
        self._die_at, self._say = die_at, say

    def __call__(self, name: str) -> None:
        """This I/O call is about to be made, or has just been."""
        self.counts[name] += 1
        if (name, self.counts[name]) == self._die_at:
            self._say({"killed": name})
            os.kill(os.getpid(), signal.SIGKILL)

    def install(self) -> None:
        """From now on, see every commit and every call of the Bot API in this process."""
        point = self

        class Seen(sqlite3.Connection):
            """Commits are seen, whichever way they are asked for."""

            def execute(self, sql: str, *parameters: Any) -> sqlite3.Cursor:
                if not self._writes_through(sql):
                    return super().execute(sql, *parameters)
                name = sql.split()[0].lower() if sql.split()[0].lower() == "commit" else "write"
                point(f"{name}: before")
                done = super().execute(sql, *parameters)
                point(f"{name}: after")
                return done

            def __exit__(self, *raised: Any) -> Any:
                point("commit: before")
                done = super().__exit__(*raised)
                point("commit: after")
                return done

            def _writes_through(self, sql: str) -> bool:
                first = sql.split()[0].lower()
                return first == "commit" or (not self.in_transaction and first in ("insert", "update", "delete", "create", "drop")) or (
                    first == "pragma" and ("checkpoint" in sql or "journal_mode" in sql))

        def connect(*args: Any, **options: Any) -> sqlite3.Connection:
            return _connect(*args, **{"factory": Seen} | options)

        async def write(stream: AnyIOStream, buffer: bytes, timeout: float | None = None) -> None:
            if buffer:
                if buffer.startswith((b"POST /", b"GET /")):
                    stream.called = _method(buffer.split(b" ", 2)[1].decode())
                return await _write(stream, buffer, timeout)
            point(f"{stream.called}: written")  # httpcore ends a request by writing nothing
            return None

        async def do_request(request: HTTPXRequest, url: str, *args: Any, **options: Any) -> tuple[int, bytes]:
            name = _method(url)
            point(f"{name}: before")
            answer = await _do_request(request, url, *args, **options)
            point(f"{name}: answered")
            return answer

        sqlite3.connect = connect  # type: ignore[assignment]
        AnyIOStream.write = write  # type: ignore[method-assign]
        HTTPXRequest.do_request = do_request  # type: ignore[method-assign]
