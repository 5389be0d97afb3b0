"""Pictures as a channel sees them: found by the name a message carries, and what a file is called once it was sent."""

from __future__ import annotations

import asyncio
import logging
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from companion.port import Address

_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture: where it lies, what is in it, its text twin, and whether it moves (GIF, else PNG).

    ``key``: what the channel's own id of the file is kept under, so that it is uploaded once; "" where it is a person's own.
    """

    path: Path
    data: bytes
    words: str = ""
    moves: bool = False
    key: str = ""


class Pictures(Protocol):
    """Where pictures come from. None of these blocks the loop, and none raises: words matter more."""

    async def find(self, name: str, address: Address) -> Picture | None:
        """The picture of a name, for the person there; None where there is none."""
        ...

    async def file_id(self, bot: str, key: str) -> str | None:
        """What the channel calls a file that this bot has sent before."""
        ...

    async def keep_file_id(self, bot: str, key: str, file_id: str | None) -> None:
        """Keep what the channel calls it, or forget it."""
        ...


class FromFiles:
    """Pictures named by the path of their file; none is reused."""

    async def find(self, name: str, address: Address) -> Picture | None:
        """The file, or None where it can't be read."""
        path = Path(name)
        try:
            return Picture(path, await asyncio.to_thread(path.read_bytes))
        except OSError as error:
            _log.debug("no picture at %s: %s", name, error.strerror)
            return None

    async def file_id(self, bot: str, key: str) -> str | None:
        """Nothing is kept."""
        return None

    async def keep_file_id(self, bot: str, key: str, file_id: str | None) -> None:
        """Nothing is kept."""
