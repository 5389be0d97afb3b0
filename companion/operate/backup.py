"""Backups: a verified copy made while the bot runs, and daily ones of which the last few are kept."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import os
import re
import tempfile
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path
from typing import Final

from companion.base.clock import Clock
from companion.base.private import private_folder
from companion.operate.integrity import Unsound, copy, free_bytes

_log = logging.getLogger(__name__)

DAYS_KEPT: Final = 7
"""Days of backups kept: our choice, long enough to notice a fault within a week. Erased people's data stays in them until then."""

_NIGHTLY: Final = re.compile(r"companion-\d{4}-\d\d-\d\d\.sqlite")
_LEFT_OVER: Final = re.compile(rf"\.{_NIGHTLY.pattern}\.\w+\.part(-journal)?")


class BackupFailed(Exception):
    """No backup was made; the message says why, in one line."""


@dataclass(frozen=True, slots=True)
class Backup:
    """A finished backup: path, rows per table, and size in bytes."""

    path: Path
    counts: Mapping[str, int]
    size: int


@dataclass(frozen=True, slots=True)
class BackupPlan:
    """Work due in the folder of daily backups: the file to make (None if today's exists) and the files to remove afterwards."""

    make: str | None
    remove: tuple[str, ...]


def back_up(database: Path, to: Path, replace: bool = False, free: Callable[[Path], int] = free_bytes) -> Backup:
    """Write a verified copy of a database that may be in use, readable by its owner only; whole or not at all.

    Raises BackupFailed: nothing to copy, no space, a damaged file, or an existing target without ``replace``.
    """
    if not database.is_file():
        raise BackupFailed(f"there is no database at {database} yet")
    if to.is_dir():
        raise BackupFailed(f"{to} is a folder: name a file in it")
    if to.exists() and (not replace or to.samefile(database)):
        raise BackupFailed(f"{to} already exists")
    try:
        private_folder(to.parent)
        with beside(to) as part:
            counts = copy(database, part, free)
            if to.exists() and not replace:  # somebody else was faster
                raise BackupFailed(f"{to} already exists")
            put_in_place(part, to)
        return Backup(to, counts, to.stat().st_size)
    except (OSError, Unsound) as error:
        raise BackupFailed(str(error)) from error


@contextlib.contextmanager
def beside(to: Path) -> Iterator[Path]:
    """Create an empty file in the same folder, readable by its owner only; it is deleted at the end unless it was moved."""
    handle, name = tempfile.mkstemp(suffix=".part", prefix=f".{to.name}.", dir=to.parent)
    os.close(handle)
    try:
        yield Path(name)
    finally:
        for end in ("", "-journal"):
            Path(name + end).unlink(missing_ok=True)


def put_in_place(part: Path, to: Path) -> None:
    """Rename a finished file into place so that it survives a power cut."""
    part.replace(to)
    folder = os.open(to.parent, os.O_RDONLY)
    try:
        os.fsync(folder)
    finally:
        os.close(folder)


def daily(names: Iterable[str]) -> list[str]:
    """Return the names that are daily backups, oldest first."""
    return sorted(name for name in names if _NIGHTLY.fullmatch(name))


def _name(day: datetime) -> str:
    return f"companion-{day:%Y-%m-%d}.sqlite"


def backup_plan(names: Iterable[str], now: datetime, keep: int = DAYS_KEPT) -> BackupPlan:
    """Return which daily backup to make now, and which to remove after it.

    Removed are those beyond ``keep`` files and those older than ``keep`` days, by when erased people's data is promised to be gone.
    Today's stays, and so does any file that is not a daily backup.
    """
    there, today, too_old = daily(names), _name(now), _name(now - timedelta(days=keep))
    every = sorted({*there, today})
    old = [name for number, name in enumerate(every, 1) if number <= len(every) - keep or name <= too_old]
    return BackupPlan(None if today in there else today, tuple(name for name in old if name != today))


def nightly(database: Path, folder: Path, now: datetime, keep: int = DAYS_KEPT,
            free: Callable[[Path], int] = free_bytes) -> Backup | None:
    """Make today's backup if missing, then remove the oldest ones. Raises BackupFailed: no old one is removed then."""
    try:
        private_folder(folder)
        names = [path.name for path in folder.iterdir()]
        for name in filter(_LEFT_OVER.fullmatch, names):
            (folder / name).unlink(missing_ok=True)
        todo = backup_plan(names, now, keep)
        if todo.make is None:
            return None
        made = back_up(database, folder / todo.make, free=free)
        for name in todo.remove:
            (folder / name).unlink(missing_ok=True)
    except OSError as error:
        raise BackupFailed(f"can't keep backups in {folder}: {error}") from error
    return made


async def tonight(database: Path, folder: Path, clock: Clock) -> Backup | None:
    """Run ``nightly`` in a thread; a failure is logged and tried again next time."""
    try:
        made = await asyncio.to_thread(nightly, database, folder, clock.now())
    except BackupFailed as error:
        _log.error("no backup today, the old ones are kept: %s", error)
        return None
    if made is not None:
        _log.info("backup written: %s", made.path)
    return made
