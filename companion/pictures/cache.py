"""Picture files on disk: each drawn once, off the loop, and kept until its drawing changes."""

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

STYLE: Final = 2
"""Increase this when the same drawing would look different, so that cached files are drawn again."""

T = TypeVar("T")


class PictureCache:
    """Cached pictures in one folder. A single thread draws, so the loop goes on and nothing is drawn twice at once."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._drawing = ThreadPoolExecutor(1, "pictures")
        self._kept: dict[str, Picture] = {}

    def close(self) -> None:
        """Stop drawing."""
        self._drawing.shutdown(wait=False, cancel_futures=True)

    async def off_loop(self, work: Callable[[], T]) -> T:
        """Return the result of a drawing job run in the drawing thread."""
        return await asyncio.get_running_loop().run_in_executor(self._drawing, work)

    async def pose(self, name: str) -> Picture | None:
        """Return the named pose; None if there is none."""
        if name not in self._kept:
            found = await self.off_loop(lambda: self._pose(name))
            if found is None:
                return None
            self._kept[name] = found
        return self._kept[name]

    def _pose(self, name: str) -> Picture | None:
        from companion.pictures.poses import pose  # imports every drawing, so only with the first picture

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
    """Return a cache key for exactly this drawing; it changes with the content."""
    made = sha256(f"{STYLE} {drawing.rows} {drawing.milliseconds} {drawing.shown()!r}".encode()).hexdigest()
    return f"{drawing.name}-{made[:10]}"


def drawn(drawing: Drawing) -> bytes:
    """Return the drawing as PNG, or as GIF if it is animated."""
    from companion.pictures.draw import moving, still

    return moving(drawing.shown(), drawing.milliseconds, drawing.rows) if drawing.moves else still(drawing.panels, drawing.rows)


def save(path: Path, data: bytes) -> None:
    """Write a file whole or not at all. A folder that can't be written is logged: the picture is sent anyway."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        part = path.with_name(f".{path.name}.part")
        part.write_bytes(data)
        os.replace(part, path)
    except OSError as error:
        _log.warning("the picture %s can't be cached: %s", path.name, error.strerror)
