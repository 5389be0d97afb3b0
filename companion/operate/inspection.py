"""Inspection of a bot from outside: its file, opened read-only, and its surroundings."""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import IntEnum
from pathlib import Path

from companion.base.private import real_path
from companion.base.settings import Settings
from companion.operate.heartbeat import StatusMark, marks_of
from companion.operate.integrity import free_bytes, open_read_only, tables_of


class Severity(IntEnum):
    """Severity of a result; the worst is the exit code."""

    FINE = 0
    LOOK = 1
    BROKEN = 2


@dataclass(frozen=True, slots=True)
class CheckResult:
    """Result of a check: its subject, and a plain line that says how it is and, if not fine, what to do."""

    severity: Severity
    about: str
    line: str


@dataclass(frozen=True, slots=True)
class Inspection:
    """Everything a check may look at.

    ``db``: None if there is no file or it can't be read; ``trouble`` then says why. ``free``: bytes on the disk, None if unknown.
    ``backups``: the folder of daily backups, None if turned off.
    """

    settings: Settings
    path: Path
    backups: Path | None
    now: datetime
    db: sqlite3.Connection | None
    trouble: str
    tables: frozenset[str]
    marks: Mapping[str, StatusMark]
    running: bool
    free: int | None


@contextlib.contextmanager
def inspecting(settings: Settings, path: Path, backups: Path | None, now: datetime,
            free: Callable[[Path], int] = free_bytes) -> Iterator[Inspection]:
    """Inspect a bot, running or not. Changes nothing, and never raises because of the bot's state."""
    with contextlib.ExitStack() as stack:
        db, trouble, tables, marks = None, "", frozenset[str](), dict[str, StatusMark]()
        try:
            if path.exists():
                db = stack.enter_context(open_read_only(path))
                tables = frozenset(tables_of(db))
                marks = dict(marks_of(db))
        except (OSError, sqlite3.Error, ValueError) as error:
            trouble = str(error)
            if not tables:
                db = None
        yield Inspection(settings, path, backups, now, db, trouble, tables, marks, is_running(path), _free(path, free))


def is_running(database: Path) -> bool:
    """True if a companion holds this file's lock (record.file)."""
    lock = real_path(database, ".lock")
    try:
        if lock.exists():
            with open_read_only(lock) as db:
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
