"""Files and folders that only their owner can read: what people tell about their health is in them."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path


def private_folder(path: Path) -> None:
    """Make a folder that only its owner can enter, where there is none yet. Raises OSError."""
    path.mkdir(mode=0o700, parents=True, exist_ok=True)


def private_file(path: Path) -> None:
    """Make an empty file that only its owner can read, where there is none yet. Raises OSError.

    SQLite gives a file's -wal, -shm and -journal the mode of the file itself. A file that is there is never opened here:
    closing it would take away the locks this process holds on it (sqlite.org/howtocorrupt.html; from memory).
    """
    with contextlib.suppress(FileExistsError):
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))


def open_to_others(path: Path) -> bool:
    """Whether anybody but the owner may read or write it. Raises OSError where it is not there."""
    return bool(path.stat().st_mode & 0o077)
