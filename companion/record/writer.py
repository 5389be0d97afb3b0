"""The one writer: every change waits its turn, shares a commit with those waiting beside it, and is told after it.

A job is a plain function on the connection, with no ``await`` inside. Each runs in a savepoint, so that one that
fails takes nothing of another with it. A failed commit fails them all and stops the writer: what was promised durable
was not.
"""

from __future__ import annotations

import asyncio
import sqlite3
from collections.abc import Callable
from typing import Any, TypeVar

from sqlite_utils import Database

from companion.clock import stopwatch

T = TypeVar("T")
Job = Callable[[sqlite3.Connection], Any]

MOST_TOGETHER = 200
"""Jobs that share one commit at most: our choice, so that the first of a burst is not kept waiting for the last."""


class CommitFailed(Exception):
    """The file could not be written; nothing of the last commit is kept, and the process should stop."""


class Writer:
    """Runs jobs on the database, in order, many to a commit. ``on_commit`` is told how many seconds each took."""

    def __init__(self, db: Database) -> None:
        self._db = db.conn
        self._waiting: asyncio.Queue[tuple[Job, asyncio.Future[Any]]] = asyncio.Queue()
        self.broken: CommitFailed | None = None
        self.on_commit: Callable[[float], object] = lambda seconds: None

    async def do(self, job: Callable[[sqlite3.Connection], T]) -> T:
        """The job's result, once it is committed. Raises what the job raised (its rows are not kept), or CommitFailed."""
        if self.broken:
            raise self.broken
        done: asyncio.Future[T] = asyncio.get_running_loop().create_future()
        self._waiting.put_nowait((job, done))
        return await done

    async def run(self) -> None:
        """Work until cancelled. Raises CommitFailed when the file can't be written."""
        while True:
            batch = [await self._waiting.get()]
            while not self._waiting.empty() and len(batch) < MOST_TOGETHER:
                batch.append(self._waiting.get_nowait())
            self._commit(batch)
            if self.broken:
                while not self._waiting.empty():
                    self._waiting.get_nowait()[1].set_exception(self.broken)
                raise self.broken

    def _commit(self, batch: list[tuple[Job, asyncio.Future[Any]]]) -> None:
        results: list[tuple[asyncio.Future[Any], Any, Exception | None]] = []
        took = stopwatch()
        try:
            self._db.execute("begin immediate")
            for job, done in batch:
                results.append((done, *self._one(job)))
            self._db.execute("commit")
        except sqlite3.Error as error:
            if self._db.in_transaction:
                self._db.rollback()
            self.broken = CommitFailed(f"the database could not be written: {error}")
            for _, done in batch:
                if not done.done():
                    done.set_exception(self.broken)
            return
        self.on_commit(took())
        for done, result, failed in results:
            if done.done():
                continue
            if failed is not None:
                done.set_exception(failed)
            else:
                done.set_result(result)

    def _one(self, job: Job) -> tuple[Any, Exception | None]:
        self._db.execute("savepoint job")
        try:
            result = job(self._db)
        except Exception as error:
            self._db.execute("rollback to job")
            self._db.execute("release job")
            if isinstance(error, sqlite3.OperationalError):
                raise  # the file, not the job: full disk, I/O error
            return None, error
        self._db.execute("release job")
        return result, None
