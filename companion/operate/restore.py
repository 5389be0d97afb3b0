"""Restoring a backup: checked first, with the old file kept."""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from companion.base.private import private_folder, real_path
from companion.operate.backup import beside, put_in_place
from companion.operate.integrity import Unsound, copy, free_bytes, open_read_only, schema_of, tables_of
from companion.record.chain import head_path
from companion.record.file import InstanceLock
from companion.record.timestamps import text_of


class CannotRestore(Exception):
    """Nothing was changed; the message says why, in one line."""


@dataclass(frozen=True, slots=True)
class Restored:
    """The outcome of a restore.

    ``kept``: the old file, None if there was none. ``waiting``: messages unsent at the time of the backup, which will be sent now.
    ``erased``: people erased since the backup who are in the file again; None if the old file can't tell.
    """

    counts: Mapping[str, int]
    kept: Path | None
    waiting: int
    erased: int | None


def restore(source: Path, database: Path, now: datetime, free: Callable[[Path], int] = free_bytes) -> Restored:
    """Put a copy of ``source`` in place of the database, and keep the old file beside it with the time in its name.

    The copy is checked before anything is moved: pages, references, rows, and that this code knows its schema. Raises CannotRestore, and
    AlreadyRunning (record.file) while a companion uses the database.
    """
    database = real_path(database)  # a symbolic link stays one
    if not source.is_file():
        raise CannotRestore(f"there is no file {source}")
    if database.exists() and source.samefile(database):
        raise CannotRestore(f"{source} is the database itself")
    try:
        private_folder(database.parent)
        with contextlib.closing(InstanceLock(database)), beside(database) as part:
            counts = copy(source, part, free)
            refuse_unknown(part, source)
            waiting, erasures, before = _waiting(part), _erasures(part), _erasures(database)
            kept = _aside(database, now)
            put_in_place(part, database)
            head_path(database).unlink(missing_ok=True)  # that of the old file; the next start writes it anew
    except (OSError, sqlite3.Error, Unsound) as error:
        raise CannotRestore(str(error)) from error
    erased = None if before is None or erasures is None else max(0, before - erasures)
    return Restored(counts, kept, waiting, erased)


def refuse_unknown(path: Path, called: Path) -> None:
    """Raise Unsound unless a file is a companion's database, and no newer than this code."""
    with open_read_only(path) as db:
        schema = schema_of(db)
        if not schema.applied or "persons" not in tables_of(db):
            raise Unsound(f"{called} is not a companion's database")
    if schema.unknown:
        raise Unsound(f"{called} was made by a newer version of the companion: update it first")


def _aside(database: Path, now: datetime) -> Path | None:
    """Rename the old file and what belongs to it. The write-ahead log goes first: beside the new file it would be applied to that, and
    an old file without it is consistent, only older."""
    stamp = text_of(now).replace(":", "").replace(".", "")
    kept, there = database.with_name(f"{database.stem}.before-{stamp}{database.suffix}"), database.exists()
    if kept.exists():
        raise CannotRestore(f"{kept} already exists")
    for end in ("-wal", "-journal", "-shm", ""):
        if _with(database, end).exists():
            _with(database, end).rename(_with(kept, end))
    return kept if there else None


def kept_aside(database: Path) -> list[tuple[Path, datetime]]:
    """Return the old files kept by restores, each with the day of its restore."""
    begins = f"{database.stem}.before-"
    found = []
    for path in sorted(database.absolute().parent.iterdir()) if database.absolute().parent.is_dir() else ():
        if path.name.startswith(begins) and path.suffix == database.suffix:
            with contextlib.suppress(ValueError):
                found.append((path, datetime.fromisoformat(f"{path.name[len(begins):][:10]}T00:00:00+00:00")))
    return found


def _with(path: Path, end: str) -> Path:
    return path.with_name(path.name + end)


def _waiting(path: Path) -> int:
    with open_read_only(path) as db:
        return int(db.execute("select count(*) from outbox where settled_at is null").fetchone()[0])


def _erasures(path: Path) -> int | None:
    """Return how many people were erased from a file; None if it can't tell."""
    with contextlib.suppress(sqlite3.Error), open_read_only(path) as db:
        return int(db.execute("select count(*) from erasures").fetchone()[0])
    return None
