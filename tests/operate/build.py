"""Files to look at and to lose: small real databases, in every state they can be in."""

from __future__ import annotations

import contextlib
import os
import random
import sqlite3
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

from companion.base.settings import Settings
from companion.record.chain import Chain
from companion.record.file import open_for_writing
from companion.record.timestamps import text_of
from tests.fakes.clock import START

NOW = START
TOKEN = "4242:stand-in_token_of_no_bot_at_all_0123"


def settings(path: Path, token: str = TOKEN, api_url: str = "https://api.telegram.org", keep_months: int | None = None) -> Settings:
    return Settings(path, token, api_url, keep_months=keep_months)


def made(path: Path, answers: int = 3) -> Path:
    """A companion's file with one person and some answers."""
    db, lock = open_for_writing(path)
    fill(db.conn, answers)
    db.close()
    lock.close()
    path.chmod(0o600)
    return path


def fill(db: sqlite3.Connection, answers: int) -> None:
    at = text_of(NOW)
    db.execute("begin immediate")
    db.execute("insert into persons values (1, ?)", (at,))
    db.execute("insert into addresses (channel, address, person, name) values ('telegram', '77', 1, 'Ilka')")
    db.execute("insert into runs (person, run, flow, version, began_at) values (1, 'r1', 'knee_to_wall', 1, ?)", (at,))
    chain = Chain()
    for number in range(answers):
        chain.append(db, (1, "r1", "knee_to_wall", 1, "left_1", "left", f"about {number} cm", number / 10, "cm", "ok", "tape", "",
                          None, at))
    db.execute("commit")


def message(db: sqlite3.Connection, due_at: datetime, channel: str = "telegram") -> None:
    db.execute("insert into outbox (person, channel, address, text, buttons, must_arrive, timed, unasked, due_at, made_at) "
               "values (1, ?, '77', 'hello', '[]', 0, 0, 0, ?, ?)", (channel, text_of(due_at), text_of(due_at)))


def reminder(db: sqlite3.Connection, due_at: datetime) -> None:
    db.execute("insert into reminders (person, kind, flow, wall, zone, due_at, state, made_at) "
               "values (1, 'retest', 'retest', '', 'UTC', ?, 'open', ?)", (text_of(due_at), text_of(due_at)))


@contextlib.contextmanager
def changing(path: Path) -> Iterator[sqlite3.Connection]:
    """The file, to do something to it."""
    db = sqlite3.connect(path, isolation_level=None)
    yield db
    db.close()


@contextlib.contextmanager
def in_use(path: Path) -> Iterator[sqlite3.Connection]:
    """The file as a running companion has it: locked, and open in write-ahead mode."""
    db, lock = open_for_writing(path)
    yield db.conn
    db.close()
    lock.close()


def killed(path: Path, statement: str) -> None:
    """A process that writes once and dies without closing the file, as at a power cut: its write is in the log only."""
    import subprocess
    import sys

    code = f"import sqlite3, os; db = sqlite3.connect({str(path)!r}, isolation_level=None); db.execute({statement!r}); os._exit(9)"
    subprocess.run([sys.executable, "-c", code], check=False, timeout=30)


def damage(path: Path, table: str) -> None:
    """Overwrite the root page of a table with random bytes, as a failing disk might."""
    with changing(path) as db:
        db.execute("pragma journal_mode=delete").fetchall()
        (page,), (size,) = (db.execute("select rootpage from sqlite_master where name = ?", (table,)).fetchone(),
                            db.execute("pragma page_size").fetchone())
    with path.open("r+b") as file:
        file.seek((page - 1) * size)
        file.write(random.Random(7).randbytes(size))


def mode(path: Path) -> int:
    return os.stat(path).st_mode & 0o777
