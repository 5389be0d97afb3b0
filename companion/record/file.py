"""Opening the one file: durable, checked, and by one writer at a time."""

from __future__ import annotations

import contextlib
import errno
import fcntl
import os
import sqlite3
from pathlib import Path
from typing import Final

from sqlite_utils import Database

from companion.base.private import private_file, private_folder, real_path
from companion.record.schema import migrations

BUSY_MS: Final = 5000
"""Milliseconds to wait for a file in use; our choice."""

LOCKED_BYTE: Final = 2**40
"""Byte of the file on which the lock lies: far beyond any page and the bytes SQLite locks (1 GiB and 510 after it; sqlite.org, from
memory)."""

_LOCKED_HERE: Final[set[tuple[int, int]]] = set()
"""Files this process has locked: a second lock of the same process would succeed, and closing its handle release the first."""

_IN_USE: Final = "another companion is using {}; stop it first, or choose another file with --database"

_PRAGMAS: Final = ("foreign_keys=on", "journal_mode=wal", "synchronous=full", "secure_delete=on", f"busy_timeout={BUSY_MS}")


class CannotOpen(Exception):
    """The file can't be opened or written; the message is one line for the operator."""


class AlreadyRunning(Exception):
    """Another companion has this file open for writing."""


def open_for_writing(path: Path) -> tuple[Database, InstanceLock]:
    """Return the migrated database and the instance lock; close both, in this order.

    Raises AlreadyRunning where another process has the lock, CannotOpen where the file can't be used.
    """
    try:
        real = real_path(path)
        private_folder(real.parent)
        private_file(real)
        lock = InstanceLock(path)
        try:
            db = Database(sqlite3.connect(real, isolation_level=None), execute_plugins=False)
            for pragma in _PRAGMAS:
                db.execute(f"pragma {pragma}").fetchall()
            _refuse_newer(db)
            with db.atomic():  # all or none, and one fsync
                migrations.apply(db)
            lock.hold()
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


class InstanceLock:
    """The lock of one writer on one file, whatever name it is opened by; the system releases it however this process ends.

    Two locks: one on a sidecar SQLite file, which another start of this version or an older one meets, and one on a byte of the file
    itself, which holds through a hard link and where the sidecar was removed.
    """

    def __init__(self, path: Path) -> None:
        """Take the lock on the file at a path, through symbolic links. Raises AlreadyRunning, OSError, sqlite3.Error."""
        self._path, self._handle = path, -1
        real = real_path(path)
        self._sidecar = _sidecar_lock(path)
        try:
            if real.exists():
                self._lock_file(real)
        except BaseException:
            self._sidecar.close()
            raise

    def _lock_file(self, real: Path) -> None:
        self._is = _identity(real)
        if self._is in _LOCKED_HERE:
            raise AlreadyRunning(_IN_USE.format(self._path))
        try:
            self._handle = os.open(real, os.O_RDWR)
        except PermissionError:
            return  # SQLite says so better
        try:
            self.hold()
        except BaseException:
            os.close(self._handle)
            raise
        _LOCKED_HERE.add(self._is)

    def hold(self) -> None:
        """Lock the byte, again where it is locked already: SQLite unlocks the whole file whenever none of its connections here holds a
        lock, which in WAL mode is never the case once one has been opened. Raises AlreadyRunning, OSError."""
        if self._handle < 0:
            return
        try:
            fcntl.lockf(self._handle, fcntl.LOCK_EX | fcntl.LOCK_NB, 1, LOCKED_BYTE)
        except OSError as error:
            if error.errno in (errno.EACCES, errno.EAGAIN):
                raise AlreadyRunning(_IN_USE.format(self._path)) from None
            raise

    def trouble(self) -> str:
        """Return, in one line, that the path no longer leads to the file that is locked; "" if it does."""
        with contextlib.suppress(OSError):
            if _identity(self._path) == self._is:
                return ""
        return (f"the database file {self._path} was removed or replaced while the companion was running: nothing more is taken. "
                "Put it back, or restore a backup, and start again")

    def close(self) -> None:
        """Release the lock; the database must be closed before."""
        if self._handle >= 0:
            os.close(self._handle)
            _LOCKED_HERE.discard(self._is)
            self._handle = -1
        self._sidecar.close()


def _identity(path: Path) -> tuple[int, int]:
    there = os.stat(path)
    return there.st_dev, there.st_ino


def _sidecar_lock(path: Path) -> sqlite3.Connection:
    sidecar = real_path(path, ".lock")
    private_file(sidecar)
    lock = sqlite3.connect(sidecar, isolation_level=None, timeout=0.2)
    try:
        lock.execute("begin exclusive")
    except sqlite3.OperationalError as error:
        lock.close()
        if "locked" in str(error):
            raise AlreadyRunning(_IN_USE.format(path)) from None
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
