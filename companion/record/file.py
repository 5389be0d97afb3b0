"""Opening the one file: durable, checked, and by one writer at a time."""

from __future__ import annotations

import sqlite3
from pathlib import Path
from typing import Final

from sqlite_utils import Database

from companion.base.private import private_file, private_folder
from companion.record.schema import migrations

BUSY_MS: Final = 5000
"""Milliseconds to wait for a file in use; our choice."""

_PRAGMAS: Final = ("foreign_keys=on", "journal_mode=wal", "synchronous=full", "secure_delete=on", f"busy_timeout={BUSY_MS}")


class CannotOpen(Exception):
    """The file can't be opened or written; the message is one line for the operator."""


class AlreadyRunning(Exception):
    """Another companion has this file open for writing."""


def open_for_writing(path: Path) -> tuple[Database, sqlite3.Connection]:
    """Return the migrated database and the instance lock; close both, in this order.

    Raises AlreadyRunning where another process has the lock, CannotOpen where the file can't be used.
    """
    try:
        private_folder(path.parent)
        lock = instance_lock(path)
        try:
            private_file(path)
            db = Database(sqlite3.connect(path, isolation_level=None), execute_plugins=False)
            for pragma in _PRAGMAS:
                db.execute(f"pragma {pragma}").fetchall()
            _refuse_newer(db)
            with db.atomic():  # all or none, and one fsync
                migrations.apply(db)
            db.execute("begin immediate")  # a locked or read-only file fails now, not at the first turn
            db.execute("delete from updates where 0")  # on a read-only file, SQLite begins a read transaction without an error
            db.execute("rollback")
            truncate_wal(db)  # a process killed just after erasing somebody may have left them in it
        except BaseException:
            lock.close()
            raise
    except (OSError, sqlite3.Error) as error:
        raise CannotOpen(f"can't open the database {path}: {error}") from error
    return db, lock


def truncate_wal(db: Database) -> bool:
    """Empty the write-ahead log, so that no erased data is left in it; returns False, without waiting, where a reader prevents it.
    Raises sqlite3.Error."""
    db.execute("pragma busy_timeout=0").fetchall()
    try:
        return not db.execute("pragma wal_checkpoint(truncate)").fetchone()[0]
    finally:
        db.execute(f"pragma busy_timeout={BUSY_MS}").fetchall()


def open_for_reading(path: Path) -> Database:
    """Return the database, read-only. Raises CannotOpen where there is none, or its schema is not of this version."""
    if not path.exists():
        raise CannotOpen(f"there is no database at {path} yet")
    try:
        db = Database(sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True, isolation_level=None), execute_plugins=False)
        db.execute(f"pragma busy_timeout={BUSY_MS}").fetchall()
        db.execute("select 1 from persons limit 1").fetchall()
        _refuse_other(db, path)
        return db
    except sqlite3.Error as error:
        raise CannotOpen(f"can't read the database {path}: {error}") from error


def instance_lock(path: Path) -> sqlite3.Connection:
    """Hold an exclusive lock on a sidecar file; the system releases it however this process ends.

    Raises AlreadyRunning, OSError, sqlite3.Error.
    """
    sidecar = path.with_name(path.name + ".lock")
    private_file(sidecar)
    lock = sqlite3.connect(sidecar, isolation_level=None, timeout=0.2)
    try:
        lock.execute("begin exclusive")
    except sqlite3.OperationalError as error:
        lock.close()
        if "locked" in str(error):
            raise AlreadyRunning(
                f"another companion is using {path}; stop it first, or choose another file with --database") from None
        raise
    return lock


def _refuse_other(db: Database, path: Path) -> None:
    """Refuse a file of another schema version: only one of this version is read beside the running companion."""
    _refuse_newer(db)
    if migrations.pending(db):
        raise CannotOpen(f"{path} was made by an older version: start the companion once, then try again")


def _refuse_newer(db: Database) -> None:
    ours = {migration.name for migration in migrations.pending(Database(memory=True, execute_plugins=False))}
    if any(applied.name not in ours for applied in migrations.applied(db)):
        raise sqlite3.DatabaseError("it was made by a newer version of the companion")
