"""How long from an update to the reply on the wire, one chat over HTTP on loopback; the Bot API's stand-in in a process of its own,
which taps and takes the time."""

from __future__ import annotations

import asyncio
import contextlib
import json
import sys
from collections.abc import AsyncIterator, Awaitable, Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.measured import Row, compare, percentile
from tests.benchmarks.two_bots import OURS, THEIRS, begin_anew, chat_of, ours, questions, theirs
from tests.fakes.bot_api import BotApi

ROUNDS = 60
"""Walks through the questions, for each bot."""


async def _serve() -> None:
    """The stand-in for both bots. A line on standard input names one; the line that comes back tells the milliseconds of its taps."""
    reader = asyncio.StreamReader()
    await asyncio.get_running_loop().connect_read_pipe(lambda: asyncio.StreamReaderProtocol(reader), sys.stdin)
    loop, asked = asyncio.get_running_loop(), questions()
    async with BotApi(OURS) as mine, BotApi(THEIRS) as other:
        print(mine.url, other.url, flush=True)
        while line := await reader.readline():
            api, took = {"ours": mine, "theirs": other}[line.decode().strip()], []
            for one in asked:
                await asyncio.sleep(0.005)  # both are idle when a person taps
                before, begin = len(api.sent), loop.time()
                await api.tap(chat_of(1), one.data)
                sent = (await api.until_sent(before + 1))[before]
                if sent.text != one.text:
                    raise RuntimeError(f"another reply: {sent.text}")
                took.append((sent.at - begin) * 1000)
                await api.until_confirmed()
            print(json.dumps(took), flush=True)


@contextlib.asynccontextmanager
async def tapping() -> AsyncIterator[tuple[str, str, Callable[[str], Awaitable[list[float]]]]]:
    """The addresses of the stand-in for both bots, and what taps through one's questions and gives the milliseconds of each."""
    child = await asyncio.create_subprocess_exec(sys.executable, "-m", "tests.benchmarks.latency", stdin=asyncio.subprocess.PIPE,
                                                 stdout=asyncio.subprocess.PIPE)
    assert child.stdin is not None
    assert child.stdout is not None
    to, told = child.stdin, child.stdout

    async def taps(name: str) -> list[float]:
        """Tap through one bot's questions."""
        to.write(f"{name}\n".encode())
        async with asyncio.timeout(60):
            return [float(one) for one in json.loads(await told.readline())]

    try:
        mine, other = (await told.readline()).decode().split()
        yield mine, other, taps
    finally:
        with contextlib.suppress(ProcessLookupError):
            child.terminate()
        await child.wait()


async def _measure(folder: Path) -> list[Row]:
    took: dict[str, list[float]] = {"ours": [], "theirs": []}
    async with tapping() as (mine, other, taps), ours(folder, 1, mine) as companion, theirs(folder, questions(), other):
        for turn in range(ROUNDS + 2):
            for name in ("ours", "theirs") if turn % 2 else ("theirs", "ours"):
                begin_anew(companion, 1)
                some = await taps(name)
                if turn >= 2:
                    took[name] += some
    against = "PTB's ConversationHandler, PicklePersistence"
    return [compare(f"update to reply on the wire, p{share:.0%}".rstrip("%"), against, [percentile(took["ours"], share)],
                    [percentile(took["theirs"], share)], "ms", "at most", most) for share, most in ((0.5, 2.0), (0.99, 2.5))]


def rows() -> Iterator[Row]:
    """The middle one and the slowest in a hundred."""
    with TemporaryDirectory() as folder:
        yield from asyncio.run(_measure(Path(folder)))


if __name__ == "__main__":
    asyncio.run(_serve())
