"""Opening the one file: durable, checked, and by one writer at a time."""

from __future__ import annotations

import sqlite3
from pathlib import Path
from typing import Final

from sqlite_utils import Database

from companion.base.private import private_file, private_folder
from companion.record.schema import migrations

BUSY_MS: Final = 5000
"""Milliseconds for which a file that is in use is waited for; our choice."""

_PRAGMAS: Final = ("foreign_keys=on", "journal_mode=wal", "synchronous=full", "secure_delete=on", f"busy_timeout={BUSY_MS}")


class CannotOpen(Exception):
    """The file can't be opened or written; the text says why, in one line."""


class AlreadyRunning(Exception):
    """Another companion has this file open for writing."""


def open_for_writing(path: Path) -> tuple[Database, sqlite3.Connection]:
    """Return the database, migrated, with the lock that keeps a second writer out; close both in turn.

    Raises AlreadyRunning where another process writes this file, CannotOpen where it can't be used.
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
            with db.atomic():  # all or none, and one wait for the disk
                migrations.apply(db)
            db.execute("begin immediate")  # a file that is held or may not be written says so now, not at the first turn
            db.execute("delete from updates where 0")  # of a read-only file, SQLite makes the begin a reading one without a word
            db.execute("rollback")
            emptied_log(db)  # a process killed between erasing somebody and emptying it has left them in it
        except BaseException:
            lock.close()
            raise
    except (OSError, sqlite3.Error) as error:
        raise CannotOpen(f"can't open the database {path}: {error}") from error
    return db, lock


def emptied_log(db: Database) -> bool:
    """Empty the write-ahead log, so that nothing that was erased is left in it; returns False where somebody who reads holds that up. That
    is not waited for: it could last, and all who write would wait with it. Raises sqlite3.Error."""
    db.execute("pragma busy_timeout=0").fetchall()
    try:
        return not db.execute("pragma wal_checkpoint(truncate)").fetchone()[0]
    finally:
        db.execute(f"pragma busy_timeout={BUSY_MS}").fetchall()


def open_for_reading(path: Path) -> Database:
    """Return the database, read-only. Raises CannotOpen where there is none yet, or it is not of this version."""
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
    """Hold an exclusive lock on a sidecar file: the system frees it however this process ends.

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
    """Only a file of this very version is read or changed beside the companion that owns it."""
    _refuse_newer(db)
    if migrations.pending(db):
        raise CannotOpen(f"{path} was made by an older version: start the companion once, then try again")


def _refuse_newer(db: Database) -> None:
    ours = {migration.name for migration in migrations.pending(Database(memory=True, execute_plugins=False))}
    if any(applied.name not in ours for applied in migrations.applied(db)):
        raise sqlite3.DatabaseError("it was made by a newer version of the companion")
