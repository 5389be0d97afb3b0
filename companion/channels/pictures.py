"""Pictures as a channel sees them: looked up by the name in a message, with the channel's file id once uploaded."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from companion.port import Address


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture: file path, bytes, full description, and whether it is animated (GIF or MP4, else PNG).

    ``key``: the key its file id is stored under, so that it is uploaded once; "" for a person's own picture.
    """

    path: Path
    data: bytes
    words: str = ""
    moves: bool = False
    key: str = ""

    @property
    def caption(self) -> str:
        """The short caption: the description's first sentence, up to its colon."""
        return f"{re.split(r'(?<!^Picture):|[.;] ', self.words, maxsplit=1)[0].rstrip('.')}." if self.words else ""


class Pictures(Protocol):
    """Source of pictures. No method blocks the loop or raises: the message's text matters more."""

    async def find(self, name: str, address: Address) -> Picture | None:
        """Return the named picture for the person at an address; None if there is none."""
        ...

    async def file_id(self, bot: str, key: str) -> str | None:
        """Return the channel's id of a file this bot has sent before."""
        ...

    async def keep_file_id(self, bot: str, key: str, file_id: str | None) -> None:
        """Store the channel's id of a file; None deletes it."""
        ...
