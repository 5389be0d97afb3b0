"""The pictures on disk: each drawn once, off the loop, and kept in a folder until its drawing changes."""

from __future__ import annotations

import asyncio
import logging
import os
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING, Final, TypeVar

from companion.channels.pictures import Picture

if TYPE_CHECKING:
    from companion.pictures.drawing import Drawing

_log = logging.getLogger(__name__)

STYLE: Final = 1
"""Raised when the same drawing would look different: kept files are drawn anew then."""

T = TypeVar("T")


class Album:
    """Pictures in one folder. One thread draws: the loop goes on, and nothing is drawn twice at once."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._drawing = ThreadPoolExecutor(1, "pictures")
        self._kept: dict[str, Picture] = {}

    def close(self) -> None:
        """Draw nothing more."""
        self._drawing.shutdown(wait=False, cancel_futures=True)

    async def off_loop(self, work: Callable[[], T]) -> T:
        """The result of drawing something, beside the loop."""
        return await asyncio.get_running_loop().run_in_executor(self._drawing, work)

    async def pose(self, name: str) -> Picture | None:
        """The pose of a name; None where there is none."""
        if name not in self._kept:
            found = await self.off_loop(lambda: self._pose(name))
            if found is None:
                return None
            self._kept[name] = found
        return self._kept[name]

    def _pose(self, name: str) -> Picture | None:
        from companion.pictures.poses import pose  # every drawing there is: it comes with the first picture, not the first words

        drawing = pose(name)
        if drawing is None:
            return None
        key = key_of(drawing)
        path = self.folder / f"{key}.{'gif' if drawing.moves else 'png'}"
        try:
            data = path.read_bytes()
        except OSError:
            data = drawn(drawing)
            save(path, data)
        return Picture(path, data, drawing.words, drawing.moves, key)


@cache
def key_of(drawing: Drawing) -> str:
    """A name for exactly this drawing: it changes with what is drawn."""
    made = sha256(f"{STYLE} {drawing.rows} {drawing.milliseconds} {drawing.shown()!r}".encode()).hexdigest()
    return f"{drawing.name}-{made[:10]}"


def drawn(drawing: Drawing) -> bytes:
    """The drawing as PNG, or as GIF where it moves."""
    from companion.pictures.draw import moving, still

    return moving(drawing.shown(), drawing.milliseconds) if drawing.moves else still(drawing.panels, drawing.rows)


def save(path: Path, data: bytes) -> None:
    """Write a file whole or not at all; a folder that can't be written is no reason to send nothing."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        part = path.with_name(f".{path.name}.part")
        part.write_bytes(data)
        os.replace(part, path)
    except OSError as error:
        _log.warning("the picture %s can't be kept: %s", path.name, error.strerror)
