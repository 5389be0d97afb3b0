"""The one writer: runs jobs on the database in order, many to a commit, and resolves each after the commit.

A job is a plain function on the connection, with no ``await`` inside. Each runs in a savepoint, so that a failing job does not
affect the others. A failed commit fails them all and stops the writer, since what was promised to be durable is not.
"""

from __future__ import annotations

import asyncio
import contextlib
import sqlite3
from collections.abc import Callable, Iterator
from typing import Any, TypeVar

from sqlite_utils import Database

from companion.base.clock import stopwatch

T = TypeVar("T")
Job = Callable[[sqlite3.Connection], Any]

MOST_TOGETHER = 200
"""Jobs in one commit at most; our choice, so that the first of a burst does not wait for the last."""

NOTES_WAIT = 0.005
"""Seconds a note waits for a commit to share; our choice. If a crash in this time loses it, its message is sent twice."""

_JOBS_OWN = (sqlite3.SQLITE_ERROR, sqlite3.SQLITE_CONSTRAINT, sqlite3.SQLITE_TOOBIG, sqlite3.SQLITE_MISMATCH, sqlite3.SQLITE_MISUSE,
             sqlite3.SQLITE_RANGE)
"""Primary result codes of SQLite that blame the statement, not the file (sqlite.org/rescode.html, from memory)."""


class CommitFailed(Exception):
    """The file could not be written; the last commit is lost, and the process should stop."""


def _of_the_file(error: Exception) -> bool:
    """True if the file failed (full disk, I/O error, damaged page) and not the job, whose errors have other codes or classes."""
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_IOERR) & 0xFF
    return type(error) in (sqlite3.OperationalError, sqlite3.DatabaseError) and code not in _JOBS_OWN


@contextlib.contextmanager
def reading() -> Iterator[None]:
    """Raise CommitFailed for an sqlite3.Error in a read outside the writer, so that it ends the process like a failed write."""
    try:
        yield
    except sqlite3.Error as error:
        raise CommitFailed(f"the database could not be read: {error}") from error


class _Waiting:
    """A job that waits for its commit, with the future of its caller."""

    __slots__ = ("done", "job", "note")

    def __init__(self, job: Job, note: bool = False) -> None:
        self.job, self.note = job, note
        self.done: asyncio.Future[Any] = asyncio.get_running_loop().create_future()


class Writer:
    """Runs jobs on the database, in order, many to a commit. ``on_commit`` is called with the seconds each commit took, ``committed``
    before its callers hear of it, ``rolled_back`` when a job of it was undone."""

    def __init__(self, db: Database, trouble: Callable[[], str] = lambda: "") -> None:
        """``trouble``: asked before each commit; returns why nothing may be committed any more, "" for nothing."""
        self._db, self._trouble = db.conn, trouble
        self._waiting: asyncio.Queue[_Waiting] = asyncio.Queue()
        self.broken: CommitFailed | None = None
        self.committed: Callable[[sqlite3.Connection], object] = lambda db: None
        self.rolled_back: Callable[[], object] = lambda: None
        self.on_commit: Callable[[float], object] = lambda seconds: None

    async def do(self, job: Callable[[sqlite3.Connection], T]) -> T:
        """Return the job's result once it is committed. Raises what the job raised (then it is rolled back), or CommitFailed."""
        result: T = await self._ask(_Waiting(job))
        return result

    async def note(self, job: Callable[[sqlite3.Connection], T]) -> T:
        """Do a job of one statement that is not urgent: it waits up to NOTES_WAIT to share another job's commit. It needs no savepoint,
        since SQLite does a statement whole or not at all. Returns and raises as ``do``."""
        result: T = await self._ask(_Waiting(job, note=True))
        return result

    async def _ask(self, waiting: _Waiting) -> Any:
        if self.broken:
            raise self.broken
        self._waiting.put_nowait(waiting)
        return await waiting.done

    async def run(self) -> None:
        """Work until cancelled. Raises CommitFailed when the file can't be written."""
        while True:
            batch = [await self._waiting.get()]
            self._gather(batch)
            try:
                if all(one.note for one in batch):
                    await self._company_for(batch)
            finally:  # also when cancelled meanwhile: a note is about something that has already happened
                self._commit(batch)
            if self.broken:
                while not self._waiting.empty():
                    self._waiting.get_nowait().done.set_exception(self.broken)
                raise self.broken

    async def _company_for(self, batch: list[_Waiting]) -> None:
        """Wait up to NOTES_WAIT for an urgent job beside notes."""
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(NOTES_WAIT):
                while all(one.note for one in batch):
                    batch.append(await self._waiting.get())
                    self._gather(batch)

    def _gather(self, batch: list[_Waiting]) -> None:
        while not self._waiting.empty() and len(batch) < MOST_TOGETHER:
            batch.append(self._waiting.get_nowait())

    def _commit(self, batch: list[_Waiting]) -> None:
        results: list[tuple[asyncio.Future[Any], Any, Exception | None]] = []
        took = stopwatch()
        try:
            self._db.execute("begin immediate")
            for one in batch:
                results.append((one.done, *self._one(one)))
            if trouble := self._trouble():
                raise CommitFailed(trouble)
            self._db.execute("commit")
        except (sqlite3.Error, CommitFailed) as error:
            self.broken = error if isinstance(error, CommitFailed) else CommitFailed(f"the database could not be written: {error}")
            with contextlib.suppress(sqlite3.Error):  # a failing disk may fail here too; the callers must be told all the same
                self._db.rollback()
            for one in batch:
                if not one.done.done():
                    one.done.set_exception(self.broken)
            return
        self.committed(self._db)
        self.on_commit(took())
        for done, result, failed in results:
            if done.done():
                continue
            if failed is not None:
                done.set_exception(failed)
            else:
                done.set_result(result)

    def _one(self, one: _Waiting) -> tuple[Any, Exception | None]:
        if not one.note:
            self._db.execute("savepoint job")
        try:
            result = one.job(self._db)
        except Exception as error:
            if _of_the_file(error):
                raise  # SQLite may have ended the transaction by itself, the savepoint with it
            if not one.note:
                self._db.execute("rollback to job")
                self._db.execute("release job")
                self.rolled_back()
            return None, error
        if not one.note:
            self._db.execute("release job")
        return result, None
