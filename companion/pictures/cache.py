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
from typing import TYPE_CHECKING, Final, Literal, TypeVar

from companion.channels.pictures import Picture

if TYPE_CHECKING:
    from companion.pictures.drawing import Drawing

_log = logging.getLogger(__name__)

STYLE: Final = 4
"""Increase this when the same drawing would look different, so that cached files are drawn again."""

T = TypeVar("T")
Ending = Literal["png", "gif", "mp4"]


class PictureCache:
    """Cached pictures in one folder. A single thread draws, so the loop goes on and nothing is drawn twice at once."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._drawing = ThreadPoolExecutor(1, "pictures")
        self._kept: dict[tuple[str, bool], Picture] = {}

    def close(self) -> None:
        """Stop drawing."""
        self._drawing.shutdown(wait=False, cancel_futures=True)

    async def off_loop(self, work: Callable[[], T]) -> T:
        """Return the result of a drawing job run in the drawing thread."""
        return await asyncio.get_running_loop().run_in_executor(self._drawing, work)

    async def pose(self, name: str, video: bool = False) -> Picture | None:
        """Return the named pose, None if there is none. ``video``: a loop as MP4 where it can be written."""
        if (name, video) not in self._kept:
            found = await self.off_loop(lambda: self._pose(name, video))
            if found is None:
                return None
            self._kept[name, video] = found
        return self._kept[name, video]

    def _pose(self, name: str, video: bool) -> Picture | None:
        from companion.pictures.poses import pose  # imports every drawing, so only with the first picture

        drawing = pose(name)
        if drawing is None:
            return None
        key = key_of(drawing)
        ending = ending_of(drawing, video)
        path = self.folder / f"{key}.{ending}"
        try:
            data = path.read_bytes()
        except OSError:
            data = drawn(drawing, ending)
            save(path, data)
        return Picture(path, data, drawing.words, drawing.moves, key)


@cache
def key_of(drawing: Drawing) -> str:
    """Return a cache key for exactly this drawing; it changes with the content."""
    made = sha256(f"{STYLE} {drawing.rows} {drawing.milliseconds} {drawing.panels!r} {drawing.frames!r}".encode()).hexdigest()
    return f"{drawing.name}-{made[:10]}"


def ending_of(drawing: Drawing, video: bool) -> Ending:
    """Return the kind of file a drawing becomes: PNG, or if it is animated MP4 where one is wanted and can be written, else GIF."""
    from companion.pictures.draw import films

    return "png" if not drawing.moves else "mp4" if video and films() else "gif"


def drawn(drawing: Drawing, ending: Ending) -> bytes:
    """Return the drawing as a file of a kind."""
    from companion.pictures.draw import filmed, moving, still

    if ending == "png":
        return still(drawing.panels, drawing.rows)
    return (filmed if ending == "mp4" else moving)(drawing.shown(), drawing.milliseconds, drawing.rows)


def save(path: Path, data: bytes) -> None:
    """Write a file whole or not at all. A folder that can't be written is logged: the picture is sent anyway."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        part = path.with_name(f".{path.name}.part")
        part.write_bytes(data)
        os.replace(part, path)
    except OSError as error:
        _log.warning("the picture %s can't be cached: %s", path.name, error.strerror)
