"""The parent's side of a fork server: bots are born, told what to do, and their end is heard of."""

from __future__ import annotations

import asyncio
import contextlib
import json
import os
import subprocess
import sys
from collections.abc import AsyncIterator, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]

PATIENCE = 60.0
"""Seconds after which a bot that says nothing is taken to hang: real time, reached only by a fault."""


class Died(Exception):
    """The process is gone; ``point`` is the I/O call at which it killed itself, "" where that was not the reason."""

    def __init__(self, point: str, log: str) -> None:
        super().__init__(f"the bot died{' at ' + point if point else ''}:\n{log}")
        self.point = point


@dataclass
class Bot:
    """A bot that runs. ``now`` is its clock's latest; ``counts`` the I/O calls so far; ``code`` how it ended by itself."""

    log: Path
    reader: asyncio.StreamReader
    writer: asyncio.StreamWriter
    now: str = ""
    counts: Mapping[str, int] = field(default_factory=dict)
    code: int | None = None
    point: str = ""

    async def told(self, op: str, **more: Any) -> None:
        """Tell it what to do; returns once it is done. Raises Died."""
        with contextlib.suppress(ConnectionError):
            self.writer.write(json.dumps({"op": op, **more}).encode() + b"\n")
        await self.until_it_says("done" if op != "stop" else "stopped")

    async def until_it_says(self, what: str) -> None:
        """Listen until it says that; raises Died where it ends without."""
        async with asyncio.timeout(PATIENCE):
            while line := await self._line():
                said = json.loads(line)
                self.now = said.get("now", self.now)
                self.counts = said.get("counts", self.counts)
                self.code = said.get("stopped", self.code)
                self.point = said.get("killed", self.point)
                if what in said:
                    return
        raise Died(self.point, self.log.read_text(encoding="utf-8", errors="replace") if self.log.exists() else "")

    async def until_dead(self) -> None:
        """Returns when its process is gone. Only while nobody else listens."""
        with contextlib.suppress(Died):
            await self.until_it_says("nothing that it ever says")

    async def _line(self) -> bytes:
        try:
            return await self.reader.readline()
        except ConnectionError:
            return b""

    def let_go(self) -> None:
        """A bot that is let go ends by itself."""
        self.writer.close()


@contextlib.contextmanager
def serving() -> Iterator[subprocess.Popen[bytes]]:
    """The process that has imported everything, while this is entered."""
    environment = {name: value for name, value in os.environ.items() if not name.lower().endswith("_proxy")}
    with subprocess.Popen([sys.executable, "-W", "error", "-m", "tests.crash.child"], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                          cwd=ROOT, env=environment) as server:
        assert server.stdout is not None
        assert server.stdout.readline() == b"ready\n"
        yield server  # it ends where its input does


class Nursery:
    """Has bots forked, and hears of each on a connection of its own."""

    def __init__(self, server: subprocess.Popen[bytes]) -> None:
        self._server = server
        self._born: asyncio.Queue[tuple[asyncio.StreamReader, asyncio.StreamWriter]] = asyncio.Queue()
        self._one_at_a_time = asyncio.Lock()

    @contextlib.asynccontextmanager
    async def open(self) -> AsyncIterator[Nursery]:
        """Ready for bots, while this is entered."""
        async def met(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
            self._born.put_nowait((reader, writer))

        control = await asyncio.start_server(met, "127.0.0.1", 0)
        self._port = control.sockets[0].getsockname()[1]
        try:
            yield self
        finally:
            control.close()

    async def bear(self, log: Path, **job: Any) -> Bot:
        """A process for a job (see child)."""
        async with self._one_at_a_time:
            assert self._server.stdin is not None
            self._server.stdin.write(json.dumps({"control": self._port, "log": str(log), **job}).encode() + b"\n")
            self._server.stdin.flush()
            return Bot(log, *await asyncio.wait_for(self._born.get(), PATIENCE))
