"""Integrity checks of a database file, and verified copies."""

from __future__ import annotations

import contextlib
import shutil
import sqlite3
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from sqlite_utils import Database

from companion.record.chain import chain_fault, head_beside
from companion.record.schema import migrations

SPARE_BYTES: Final = 32 * 2**20
"""Bytes that must stay free beside a copy, as the database goes on growing: our choice."""

READ_BUSY_MS: Final = 2000


class Unsound(Exception):
    """The file can't be used or copied; the message says why, in one line."""


@dataclass(frozen=True, slots=True)
class Schema:
    """Migrations of a file: applied, waiting to be applied by this code, and unknown to this code."""

    applied: tuple[str, ...]
    waiting: tuple[str, ...]
    unknown: tuple[str, ...]


@contextlib.contextmanager
def open_read_only(path: Path) -> Iterator[sqlite3.Connection]:
    """Open a file read-only, also while a bot runs. Raises sqlite3.Error, at the latest at the first query."""
    db = sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True, isolation_level=None)
    try:
        db.execute(f"pragma busy_timeout={READ_BUSY_MS}").fetchall()
        yield db
    finally:
        db.close()


def tables_of(db: sqlite3.Connection) -> tuple[str, ...]:
    """Return the names of its tables, without SQLite's own."""
    return tuple(name for (name,) in db.execute(
        "select name from sqlite_master where type = 'table' and name not like 'sqlite\\_%' escape '\\' order by name"))


def counts_of(db: sqlite3.Connection) -> Mapping[str, int]:
    """Return the number of rows per table."""
    return {table: db.execute(f"select count(*) from [{table}]").fetchone()[0] for table in tables_of(db)}


def schema_of(db: sqlite3.Connection) -> Schema:
    """Return its migrations."""
    ours = [one.name for one in migrations.pending(Database(memory=True, execute_plugins=False))]
    applied = [one.name for one in migrations.applied(Database(db, execute_plugins=False))]
    return Schema(tuple(applied), tuple(name for name in ours if name not in applied),
                  tuple(name for name in applied if name not in ours))


def damage_of(db: sqlite3.Connection) -> str:
    """Return what is damaged in its pages, indexes or references, in one line; "" if nothing is."""
    try:
        first = str(db.execute("pragma integrity_check(1)").fetchone()[0])
        if first != "ok":
            return " ".join(first.split())
        loose = db.execute("pragma foreign_key_check").fetchone()
    except sqlite3.DatabaseError as error:
        return str(error)
    return f"rows of {loose[0]} refer to missing rows of {loose[2]}" if loose else ""


def free_bytes(folder: Path) -> int:
    """Return the free bytes on a folder's disk. Raises OSError."""
    return shutil.disk_usage(folder).free


def copy(source: Path, into: Path, free: Callable[[Path], int] = free_bytes) -> Mapping[str, int]:
    """Copy a database, also one in use, into an empty file and verify it; return the rows per table.

    The copy is one moment in time: rows are counted in the read snapshot that is copied, and again in the copy. It is a single file
    without a write-ahead log. Raises Unsound, and leaves ``into`` to the caller.
    """
    try:
        outside = head_beside(source)  # first: it may be behind the snapshot, never ahead
        with open_read_only(source) as db:
            db.execute("begin")
            counts = counts_of(db)
            need = db.execute("pragma page_count").fetchone()[0] * db.execute("pragma page_size").fetchone()[0]
            if free(into.parent) < need + SPARE_BYTES:
                raise Unsound(f"the disk of {into.parent} is too full: a copy needs {megabytes(need + SPARE_BYTES)}")
            _fill(db, into)
        with open_read_only(into) as made:
            damage = damage_of(made)
            if damage:
                raise Unsound(f"{source} is damaged: {damage}")
            if fault := chain_fault(made, outside):
                raise Unsound(f"{source}: {fault}")
            if counts_of(made) != counts:
                raise Unsound(f"the copy of {source} does not have the same rows")
    except (OSError, sqlite3.Error) as error:
        raise Unsound(f"can't copy {source}: {error}") from error
    return counts


def _fill(db: sqlite3.Connection, into: Path) -> None:
    target = sqlite3.connect(into, isolation_level=None)
    try:
        db.backup(target)
        db.execute("commit")  # at once: the write-ahead log can't be emptied while a snapshot is held
        target.execute("pragma journal_mode=delete").fetchall()
    finally:
        target.close()


def megabytes(count: int) -> str:
    """Return bytes as text, rounded up: "12 MB"."""
    return f"{-(-count // 10**6):,} MB"
