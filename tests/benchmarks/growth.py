"""How long a turn takes with a thousand, a hundred thousand and a million rows in the answer log (ten million with ``--big``)."""

from __future__ import annotations

import asyncio
import sqlite3
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.port import Address, Inbound, Tapped
from companion.record.file import open_for_writing
from tests.benchmarks.measured import Row
from tests.benchmarks.reminders import CHAT, fill
from tests.benchmarks.two_bots import begin_anew, questions

SIZES = (1_000, 100_000, 1_000_000)
BIG = (1_000, 100_000, 10_000_000)
PEOPLE = 200
"""Lifters, who share the rows evenly, but for those who answer here: these have a thousand at most each, whatever the size."""
ROUNDS = 9


def lengthen(path: Path, rows: int) -> None:
    """Rows in the answer log by other people, as many as are wanted, and spread over many runs."""
    database, lock = open_for_writing(path)
    db: sqlite3.Connection = database.conn
    db.execute("pragma synchronous=off").fetchall()
    db.execute("begin")
    others = PEOPLE * 100
    db.execute("with recursive n (i) as (select 1 union all select i + 1 from n where i < ?) insert into persons select i + ?, ? from n",
               (others, PEOPLE, "2026-01-01T00:00:00.000000Z"))
    db.execute("with recursive n (i) as (select 1 union all select i + 1 from n where i < ?) insert into answers (person, run, flow, "
               "version, key, side, raw, value, unit, status, method, placement, at) select case when i % 100 = 0 then i / 100 % ? + 1 "
               "else i % ? + ? + 1 end, cast(i / 12 as text), 'knee_to_wall', 1, 'left_' || i % 3, 'left', '11 cm', 11.0, 'cm', 'ok', "
               "'tape', '', '2026-01-01T00:00:00.000000Z' from n", (rows, PEOPLE, others, PEOPLE))
    db.execute("commit")
    db.execute("pragma wal_checkpoint(truncate)").fetchall()
    database.close()
    lock.close()


async def _turn(companion: Companion, numbers: Iterator[int]) -> float:
    """Milliseconds a turn, every lifter once through the questions, one turn a commit."""
    begin_anew(companion, PEOPLE)
    asked, count = questions(), 0
    begin = perf_counter()
    for one in asked[:2]:
        for person in range(1, PEOPLE + 1):
            await companion.take(Inbound(Address("telegram", str(CHAT + person)), Tapped(one.data), next(numbers), "Sam"))
            count += 1
    return (perf_counter() - begin) / count * 1000


async def _measure(folder: Path, sizes: tuple[int, ...]) -> dict[int, list[float]]:
    companions, numbers, took = {}, iter(range(1, 10**9)), {size: list[float]() for size in sizes}
    for size in sizes:
        path = folder / f"{size}.sqlite"
        fill(path, PEOPLE, datetime.now(UTC))
        lengthen(path, size)
        companions[size] = Companion(path, SystemClock())
    for turn in range(ROUNDS + 1):
        for size in sizes if turn % 2 else reversed(sizes):
            async with running_writer(companions[size]):
                figure = await _turn(companions[size], numbers)
            if turn:
                took[size].append(figure)
    for companion in companions.values():
        companion.close()
    return took


def rows(big: bool = False) -> Iterator[Row]:
    """Each size against the smallest, by turns."""
    sizes = BIG if big else SIZES
    with TemporaryDirectory() as folder:
        took = asyncio.run(_measure(Path(folder), sizes))
    least = median(took[sizes[0]])
    for size in sizes[1:]:
        figure = median(took[size])
        yield Row(f"a turn with {size:,} rows in the answer log", f"itself with {sizes[0]:,}", figure, least, "ms", figure / least,
                  "at most", 1.3)
