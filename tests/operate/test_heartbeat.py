"""The marks a running bot leaves."""

import asyncio
import sqlite3
from datetime import timedelta

import pytest

from companion.operate.counters import Counters
from companion.operate.heartbeat import OFFSET, POLL, Heartbeat, StatusMark, marks_of
from companion.record.file import open_for_writing
from companion.record.writer import Writer
from tests.fakes.clock import FakeClock
from tests.operate.build import NOW


class Heard(Counters):
    def __init__(self):
        self.polls = 0

    def polled(self):
        self.polls += 1


class Polling:
    """A writer at work, and a poll that is answered when it is told so."""

    def __init__(self, db):
        self.db, self.clock, self.heard = db.conn, FakeClock(), Heard()
        self.writer = Writer(db)
        self.beat = Heartbeat(self.writer, self.clock, self.heard)

    async def poll(self, after=timedelta(0), theirs=None):
        self.clock.at += after
        self.beat.polled(theirs)
        await self.settle()
        return marks_of(self.db)

    async def settle(self):
        for _ in range(2):  # the beat gets to the writer only at the first
            await self.writer.do(lambda db: None)


@pytest.fixture
async def polling(tmp_path):
    db, lock = open_for_writing(tmp_path / "c.sqlite")
    it = Polling(db)
    work = asyncio.create_task(it.writer.run())
    yield it
    work.cancel()
    await asyncio.gather(work, return_exceptions=True)
    db.close()
    lock.close()


async def test_a_good_poll_is_marked_at_most_once_a_minute(polling):
    assert (await polling.poll())[POLL] == StatusMark(1.0, NOW)
    assert (await polling.poll(timedelta(seconds=59)))[POLL].at == NOW
    assert (await polling.poll(timedelta(seconds=1)))[POLL].at == NOW + timedelta(minutes=1)
    assert polling.heard.polls == 3


async def test_a_clock_that_was_set_back_is_marked_at_once(polling):
    await polling.poll()
    assert (await polling.poll(-timedelta(hours=1)))[POLL].at == NOW - timedelta(hours=1)


async def test_the_chats_clock_is_compared_with_ours(polling):
    marks = await polling.poll(theirs=NOW + timedelta(seconds=95))
    assert marks[OFFSET].value == pytest.approx(95.5)
    assert OFFSET in await polling.poll(timedelta(minutes=2))


async def test_a_poll_waits_for_no_commit(polling):
    polling.beat.polled(None)
    assert marks_of(polling.db) == {}
    await polling.settle()
    assert POLL in marks_of(polling.db)


async def test_a_file_that_can_not_be_written_is_left_to_the_writer(polling):
    await polling.poll()
    polling.db.execute("pragma query_only=on")
    polling.clock.at += timedelta(minutes=2)
    polling.beat.polled(None)
    await asyncio.gather(polling.beat._noting)
    assert polling.writer.broken


def test_a_file_too_old_for_marks_has_none():
    db = sqlite3.connect(":memory:")
    assert marks_of(db) == {}
    db.close()
