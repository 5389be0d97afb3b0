"""Files and folders that only their owner can read, for health answers."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path


def private_folder(path: Path) -> None:
    """Create a folder that only its owner can enter, if it is missing. Raises OSError."""
    path.mkdir(mode=0o700, parents=True, exist_ok=True)


def private_file(path: Path) -> None:
    """Create an empty file that only its owner can read, if it is missing. Raises OSError.

    SQLite gives a file's -wal, -shm and -journal the mode of the file itself. An existing file is never opened here: closing it would
    release the locks this process holds on it (sqlite.org/howtocorrupt.html; from memory).
    """
    with contextlib.suppress(FileExistsError):
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))


def real_path(path: Path, end: str = "") -> Path:
    """Return a file's own path, through symbolic links, or that of the file beside it with ``end`` after its name. A link that leads to
    itself stays, and fails as it is opened; ``Path.resolve`` would raise RuntimeError."""
    return Path(os.path.realpath(path) + end)


def open_to_others(path: Path) -> bool:
    """True if anybody but the owner may read or write it. Raises OSError if it is missing."""
    return bool(path.stat().st_mode & 0o077)
