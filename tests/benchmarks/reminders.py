"""How long a sweep takes with 100,000 lifters, and how fast 3,000 prompts that fall due in one minute leave.

    python -m tests.benchmarks.reminders [LIFTERS] [DUE]

Everything is on loopback and ends by itself: the Bot API is the tests' stand-in in a process of its own, which answers 429 above
30 messages a second and one a second to a chat. Wanted: first sweep after the start within 1 s, one with nothing due within 5 ms,
28 messages a second or more, none lost and none twice, a lifter who writes meanwhile answered within 2 s, the loop never held up
for more than 0.3 s.
"""

from __future__ import annotations

import asyncio
import contextlib
import json
import sqlite3
import statistics
import sys
import tempfile
import time as stopwatch
from collections import Counter
from collections.abc import AsyncIterator, Iterator
from datetime import UTC, datetime, time, timedelta
from pathlib import Path
from typing import Any

import httpx

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.calendar.plan import Plan
from companion.calendar.prompts import Preferences
from companion.channels.telegram import TelegramSettings, run_telegram
from companion.conversation.session import Session
from companion.record.file import open_for_writing
from companion.record.timestamps import text_of
from tests.fakes.bot_api import TOKEN, BotApi

CHAT = 1_000_000
"""A lifter's chat is this and their number."""
SERVES_AT_MOST = 600
WRITES = "menu"
NOTHING_DUE = 21
"""Sweeps that are timed."""


def fill(path: Path, lifters: int, now: datetime) -> None:
    """So many lifters with a plan, two open reminders each, none of them due."""
    database, lock = open_for_writing(path)
    db, at, tomorrow = database.conn, text_of(now), now + timedelta(days=1)
    wishes = Preferences(evening=time(now.hour, now.minute), quiet=(time(0), time(0)))
    facts = {"welcome.consent": "yes", "welcome.adult": "yes", "welcome.units": "metric", "welcome.zone": "UTC+00:00",
             "welcome.zone_right": "yes", "about_you.bar": "full", "about_you.usual_depth": "parallel", "about_you.load": 80.0,
             "squat.goal": "parallel with a still back", "squat.wishes": wishes.dumps(),
             "squat.plan": Plan(weekly=tuple((day, time(23, 59)) for day in range(7))).dumps()}
    session = Session(idle=True).dumps()
    numbers = range(1, lifters + 1)
    db.execute("begin immediate")
    db.executemany("insert into persons (id, created_at) values (?, ?)", ((one, at) for one in numbers))
    db.executemany("insert into addresses (channel, address, person, name) values ('telegram', ?, ?, ?)",
                   ((str(CHAT + one), one, f"lifter {one}") for one in numbers))
    db.executemany("insert into sessions values (?, ?, ?)", ((one, session, at) for one in numbers))
    db.executemany("insert into facts values (?, ?, ?, 0, ?)", ((one, name, value, at) for one in numbers for name, value in facts.items()))
    rows = (("squat_day", tomorrow), ("squat_after", tomorrow + timedelta(hours=9)))
    db.executemany("insert into reminders (person, kind, flow, wall, zone, due_at, state, made_at, day, stale_at) "
                   "values (?, ?, ?, ?, 'UTC+00:00', ?, 'open', ?, ?, ?)",
                   ((one, kind, kind, f"{due:%Y-%m-%d %H:%M}", text_of(due + timedelta(seconds=one % 3600)), at,
                     f"{tomorrow + timedelta(days=1):%Y-%m-%d}", text_of(tomorrow + timedelta(days=2)))
                    for one in numbers for kind, due in rows))
    db.execute("commit")
    database.close()
    lock.close()


def fall_due(db: sqlite3.Connection, due: int, now: datetime) -> None:
    """The first so many lifters' prompts, for tomorrow, are due within this minute."""
    db.execute("update reminders set due_at = ?, wall = ?, day = ?, stale_at = ? "
               "where kind = 'squat_day' and state = 'open' and person <= ?",
               (text_of(now), f"{now:%Y-%m-%d %H:%M}", f"{now + timedelta(days=1):%Y-%m-%d}", text_of(now + timedelta(days=1)), due))


async def timed(companion: Companion) -> float:
    """Milliseconds that a sweep takes."""
    begin = stopwatch.perf_counter()
    await companion.sweep()
    return (stopwatch.perf_counter() - begin) * 1000


async def held_up(worst: list[float]) -> None:
    """Note how long the loop is held up at most, in seconds."""
    while True:
        begin = stopwatch.perf_counter()
        await asyncio.sleep(0.005)
        worst[0] = max(worst[0], stopwatch.perf_counter() - begin - 0.005)


@contextlib.asynccontextmanager
async def stand_in() -> AsyncIterator[tuple[str, asyncio.subprocess.Process]]:
    """The Bot API in a process of its own, which ends when its standard input does."""
    child = await asyncio.create_subprocess_exec(sys.executable, "-m", "tests.benchmarks.reminders", "serve", stdin=asyncio.subprocess.PIPE,
                                                 stdout=asyncio.subprocess.PIPE, limit=2**26)
    assert child.stdout is not None
    try:
        yield (await child.stdout.readline()).decode().strip(), child
    finally:
        if child.returncode is None:
            child.terminate()
            await child.wait()


async def serve() -> None:
    """Serve until standard input ends, then print what was sent and how often too much was."""
    loop, done = asyncio.get_running_loop(), asyncio.Event()
    loop.add_reader(sys.stdin, done.set)
    async with BotApi(strict=True) as api:
        print(api.url, flush=True)
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(SERVES_AT_MOST):
                await done.wait()
        tries = sum(call.method.lower() == "sendmessage" for call in api.calls)
        print(json.dumps({"refused": tries - len(api.sent), "sent": [(one.chat_id, one.text, one.at) for one in api.sent]}), flush=True)
        await asyncio.sleep(SERVES_AT_MOST)  # until it is ended


async def burst(companion: Companion, due: int) -> dict[str, Any]:
    """So many prompts at once, by the whole channel; lifters write in the middle."""
    async with stand_in() as (url, child):
        stop, worst = asyncio.Event(), [0.0]
        watching = asyncio.create_task(held_up(worst))
        channel = asyncio.create_task(run_telegram(
            TelegramSettings(TOKEN, url), companion.take, CompanionOutbox(companion, "telegram", busy=True), SystemClock(), stop,
            lambda wake: setattr(companion, "on_commit", lambda channel: wake())))
        begin = stopwatch.monotonic()
        await companion.sweep()
        swept, written = stopwatch.monotonic() - begin, {}
        async with httpx.AsyncClient() as client:
            for number in (due, due - 1, due + 1):  # two whose own prompt still waits, and one who has none
                await asyncio.sleep(2)
                written[CHAT + number] = stopwatch.monotonic()
                await client.post(f"{url}/control/say", json={"chat_id": CHAT + number, "text": WRITES})
        async with asyncio.timeout(due / 20 + 60):
            while companion.db.execute("select 1 from outbox where settled_at is null limit 1").fetchone():
                await asyncio.sleep(0.5)
        watching.cancel()
        stop.set()
        await channel
        assert child.stdout is not None
        assert child.stdin is not None
        child.stdin.close()
        told = json.loads(await child.stdout.readline())
    return told | {"swept": swept, "written": written, "worst": worst[0]}


def lines(told: dict[str, Any], due: int) -> Iterator[str]:
    """What came of the burst, in words."""
    prompts = [(chat, at) for chat, text, at in told["sent"] if text.startswith("Squat day")]
    seconds = prompts[-1][1] - prompts[0][1]
    count = Counter(chat for chat, _ in prompts)
    lost = [one for one in range(1, due + 1) if not count[CHAT + one]]
    rate = len(told["sent"]) / seconds
    yield f"burst: swept in {told['swept']:.1f} s, {len(prompts)} prompts in {seconds:.1f} s, {rate:.1f} messages a second"
    yield f"burst: {len(lost)} lost, {sum(many > 1 for many in count.values())} twice, {told['refused']} refused with 429"
    for chat, wrote in told["written"].items():
        answer = next((at for to, text, at in told["sent"] if to == chat and at > wrote and not text.startswith("Squat day")), None)
        waits = next(at for to, at in prompts if to == chat) > wrote if count[chat] else False
        took = f"in {answer - wrote:.2f} s" if answer else "never"
        yield f"burst: who wrote {'with a prompt waiting' if waits else 'meanwhile'} was answered {took}"
    yield f"burst: the loop was held up for {told['worst']:.2f} s at most"


async def main(lifters: int, due: int) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        path, now = Path(folder) / "many.sqlite", datetime.now(UTC)
        fill(path, lifters, now)
        begin = stopwatch.perf_counter()
        companion = Companion(path, SystemClock())
        async with running_writer(companion):
            await companion.sweep()
            print(f"start: first sweep done after {(stopwatch.perf_counter() - begin) * 1000:.0f} ms with {lifters} lifters")
            took = [await timed(companion) for _ in range(NOTHING_DUE)]
            print(f"nothing due: {statistics.median(took):.2f} ms (median of {NOTHING_DUE}, worst {max(took):.2f})")
            companion.db.execute("update addresses set gone_at = ? where person > ?", (text_of(now), lifters * 9 // 10))
            companion.db.execute("update reminders set due_at = ?, stale_at = null, state = 'held' where person > ?",  # as people.mark_gone
                                 (text_of(now), lifters * 9 // 10))
            took = [await timed(companion) for _ in range(NOTHING_DUE)]
            print(f"nothing due, one in ten has blocked the bot: {statistics.median(took):.2f} ms (worst {max(took):.2f})")
            fall_due(companion.db.conn, due, datetime.now(UTC))
            for line in lines(await burst(companion, due), due):
                print(line)
        companion.close()


if __name__ == "__main__":
    if sys.argv[1:] == ["serve"]:
        asyncio.run(serve())
    else:
        numbers = [int(one) for one in sys.argv[1:]]
        asyncio.run(main(*(numbers + [100_000, 3_000][len(numbers):])))
