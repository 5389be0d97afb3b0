"""What somebody who looks after the bot can see of it: its file, read only, and what stands around that."""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import IntEnum
from pathlib import Path

from companion.base.settings import Settings
from companion.operate.heartbeat import Mark, marks_of
from companion.operate.integrity import free_bytes, looking_at, tables_of


class Severity(IntEnum):
    """How bad it is; the worst of all is the exit code."""

    FINE = 0
    LOOK = 1
    BROKEN = 2


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that was looked at: a plain line that says how it is, and what to do where it is not fine."""

    severity: Severity
    about: str
    line: str


@dataclass(frozen=True, slots=True)
class Seen:
    """Everything a check may look at.

    ``db`` is None where there is no file, or none that can be read: then ``trouble`` says why. ``free`` is bytes on the
    disk (None: unknown), ``backups`` the folder of daily backups (None: turned off).
    """

    settings: Settings
    path: Path
    backups: Path | None
    now: datetime
    db: sqlite3.Connection | None
    trouble: str
    tables: frozenset[str]
    marks: Mapping[str, Mark]
    running: bool
    free: int | None


@contextlib.contextmanager
def looking(settings: Settings, path: Path, backups: Path | None, now: datetime,
            free: Callable[[Path], int] = free_bytes) -> Iterator[Seen]:
    """Look at a bot, running or not, well or not. Never raises for how it is, and changes nothing of it."""
    with contextlib.ExitStack() as stack:
        db, trouble, tables, marks = None, "", frozenset[str](), dict[str, Mark]()
        try:
            if path.exists():
                db = stack.enter_context(looking_at(path))
                tables = frozenset(tables_of(db))
                marks = dict(marks_of(db))
        except (OSError, sqlite3.Error, ValueError) as error:
            trouble = str(error)
            if not tables:
                db = None
        yield Seen(settings, path, backups, now, db, trouble, tables, marks, is_running(path), _free(path, free))


def is_running(database: Path) -> bool:
    """Whether a companion holds the lock of this file (record.file)."""
    lock = database.with_name(database.name + ".lock")
    try:
        if lock.exists():
            with looking_at(lock) as db:
                db.execute("pragma busy_timeout=0").fetchall()
                db.execute("select 1 from sqlite_master").fetchall()
    except sqlite3.Error as error:
        return "locked" in str(error)
    except OSError:
        return False
    return False


def _free(path: Path, free: Callable[[Path], int]) -> int | None:
    for folder in path.absolute().parents:
        with contextlib.suppress(OSError):
            return free(folder)
    return None
