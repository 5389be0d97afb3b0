"""What the chain over the answer log costs a turn in processor time: with it, and with its links and the head beside the file left out.

Processor time, that of writing the pages with it, because a share so small is lost in what a shared disk makes a commit wait; and the
median of what two blocks of turns that follow each other say, since the processor's own speed drifts by more than the chain costs. The
blocks are short, and each has as many turns of either question.
"""

from __future__ import annotations

import asyncio
import itertools
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import process_time
from unittest import mock

from companion.app import dispatch
from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.conversation.effects import Record
from companion.port import Address, Inbound, Tapped
from companion.record import persist
from companion.record.timestamps import text_of
from companion.record.turn import Turn
from tests.benchmarks.measured import Row
from tests.benchmarks.reminders import CHAT, fill
from tests.benchmarks.two_bots import begin_anew, questions

PEOPLE = 100
PAIRS = {1: 200, 10: 400, 100: 75}
"""Pairs of blocks, by the turns to a commit."""


def _unlinked(turn: Turn, row: Record) -> None:
    """An answer as it was kept before there was a chain; every question here is answered "no", which is a fact."""
    turn.db.execute(
        "insert into answers (person, run, flow, version, key, side, raw, value, unit, status, method, placement, at, replaces) "
        "values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, (select id from answers where person = ? and run = ? and "
        "key = ? order by id desc limit 1))",
        (turn.person, row.run, row.flow, row.version, row.key, row.side, row.raw, row.value, row.unit, row.status, row.method,
         row.placement, text_of(turn.now), turn.person, row.run, row.key))
    assert row.value is not None
    persist._fact(turn, f"{row.flow}.{row.key}", row.value, 0)


def _blocks(companion: Companion, numbers: Iterator[int], people: int) -> Iterator[list[Inbound]]:
    """Blocks of taps without end: so many people at a time, once through two questions."""
    while True:
        begin_anew(companion, PEOPLE)
        for first in range(1, PEOPLE + 1, people):
            yield [Inbound(Address("telegram", str(CHAT + person)), Tapped(one.data), next(numbers), "Sam")
                   for one in questions()[:2] for person in range(first, first + people)]


async def _took(companion: Companion, taps: list[Inbound], together: int) -> float:
    """Milliseconds of processor time a turn, so many turns waiting at once."""
    begin = process_time()
    for first in range(0, len(taps), together):
        await asyncio.gather(*(companion.take(one) for one in taps[first:first + together]))
    return (process_time() - begin) / len(taps) * 1000


async def _measure(folder: Path) -> list[Row]:
    path = folder / "c.sqlite"
    fill(path, PEOPLE, datetime.now(UTC))
    companion, numbers, rows = Companion(path, SystemClock()), itertools.count(1), []
    noted = companion.writer.committed
    async with running_writer(companion):
        for together, pairs in PAIRS.items():
            took: tuple[list[float], list[float]] = [], []
            blocks = _blocks(companion, numbers, max(10, together))
            for turn in range(2 * pairs + 2):
                without = (turn + turn // 2) % 2  # neither always comes first
                with mock.patch.dict(dispatch.HANDLERS, {Record: _unlinked} if without else {}):
                    companion.writer.committed = (lambda db: None) if without else noted
                    companion._chain._end(companion.db.conn)  # the other way of keeping answers wrote meanwhile
                    figure = await _took(companion, next(blocks), together)
                if turn > 1:
                    took[without].append(figure)
            share = median(linked / bare for linked, bare in zip(*took, strict=True))
            rows.append(Row(f"a turn with its links in the answer chain, {together} to a commit, processor time", "without the chain",
                            median(took[0]), median(took[1]), "ms", share, "at most", 1.05))
    companion.close()
    return rows


def rows() -> Iterator[Row]:
    """One, ten and a hundred turns to a commit."""
    with TemporaryDirectory() as folder:
        yield from asyncio.run(_measure(Path(folder)))
