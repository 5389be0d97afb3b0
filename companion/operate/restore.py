"""A backup brought back: checked first, and the old file kept aside."""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from companion.base.private import private_folder
from companion.operate.backup import beside, put_in_place
from companion.operate.integrity import Unsound, copy, free_bytes, looking_at, schema_of, tables_of
from companion.record.file import instance_lock
from companion.record.timestamps import text_of


class CannotRestore(Exception):
    """Nothing was changed; the text says why, in one line."""


@dataclass(frozen=True, slots=True)
class Restored:
    """What is there now.

    ``kept`` is the old file (None: there was none), ``waiting`` how many messages that had not left when the backup was
    taken will now leave, ``erased`` how many people had themselves erased since then and are in it again (None: the old
    file can't tell).
    """

    counts: Mapping[str, int]
    kept: Path | None
    waiting: int
    erased: int | None


def restore(source: Path, database: Path, now: datetime, free: Callable[[Path], int] = free_bytes) -> Restored:
    """Put a copy of ``source`` where the database is, and keep the old one beside it with the moment in its name.

    The copy is checked before anything is moved: pages, references, rows, and that this code knows its schema.
    Raises CannotRestore, and AlreadyRunning (record.file) while a companion uses the database.
    """
    if not source.is_file():
        raise CannotRestore(f"there is no file {source}")
    if database.exists() and source.samefile(database):
        raise CannotRestore(f"{source} is the database itself")
    try:
        private_folder(database.parent)
        with contextlib.closing(instance_lock(database)), beside(database) as part:
            counts = copy(source, part, free)
            refuse_unknown(part, source)
            waiting, erasures, before = _waiting(part), _erasures(part), _erasures(database)
            kept = _aside(database, now)
            put_in_place(part, database)
    except (OSError, sqlite3.Error, Unsound) as error:
        raise CannotRestore(str(error)) from error
    erased = None if before is None or erasures is None else max(0, before - erasures)
    return Restored(counts, kept, waiting, erased)


def refuse_unknown(path: Path, called: Path) -> None:
    """Raise Unsound unless a file is a companion's, and no newer than this code."""
    with looking_at(path) as db:
        schema = schema_of(db)
        if not schema.applied or "persons" not in tables_of(db):
            raise Unsound(f"{called} is not a companion's database")
    if schema.unknown:
        raise Unsound(f"{called} was made by a newer version of the companion: update it first")


def _aside(database: Path, now: datetime) -> Path | None:
    """Rename the old file with what belongs to it. The log goes first: beside the new file it would be taken for its own,
    and an old file without its log is whole, only older."""
    stamp = text_of(now).replace(":", "").replace(".", "")
    kept, there = database.with_name(f"{database.stem}.before-{stamp}{database.suffix}"), database.exists()
    if kept.exists():
        raise CannotRestore(f"{kept} is there already")
    for end in ("-wal", "-journal", "-shm", ""):
        if _with(database, end).exists():
            _with(database, end).rename(_with(kept, end))
    return kept if there else None


def kept_aside(database: Path) -> list[tuple[Path, datetime]]:
    """The old files that restores have kept, each with the day of its restore."""
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
    with looking_at(path) as db:
        return int(db.execute("select count(*) from outbox where settled_at is null").fetchone()[0])


def _erasures(path: Path) -> int | None:
    """How often somebody was erased from a file; None where it can't tell."""
    with contextlib.suppress(sqlite3.Error), looking_at(path) as db:
        return int(db.execute("select count(*) from erasures").fetchone()[0])
    return None
