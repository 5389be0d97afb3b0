"""The folder a film lies in while it is read. A process that is killed leaves it behind; the next start removes it."""

from __future__ import annotations

import os
import shutil
import tempfile
from pathlib import Path
from typing import Final

_NAME: Final = "companion-film-"


def film_folder() -> tempfile.TemporaryDirectory[str]:
    """Return a new folder for one film, named after this process, to be entered; it is deleted when it is left."""
    return tempfile.TemporaryDirectory(prefix=f"{_NAME}{os.getpid()}-")


def remove_left_over() -> int:
    """Delete the folders of processes that have ended, with the films in them; return how many there were."""
    ended = [path for path in Path(tempfile.gettempdir()).glob(f"{_NAME}*-*") if _has_ended(path.name.split("-")[2])]
    for path in ended:
        shutil.rmtree(path, ignore_errors=True)
    return len(ended)


def _has_ended(process: str) -> bool:
    try:
        os.kill(int(process), 0)
    except ProcessLookupError:
        return True
    except (ValueError, OverflowError, PermissionError):  # none of ours, or somebody else's
        return False
    return False
