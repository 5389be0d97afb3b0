"""Pictures that a test keeps in files."""

from __future__ import annotations

from pathlib import Path

from companion.channels.pictures import Picture
from companion.port import Address


class FromFiles:
    """Pictures named by their file path, uploaded every time."""

    async def find(self, name: str, address: Address) -> Picture | None:
        path = Path(name)
        return Picture(path, path.read_bytes()) if path.is_file() else None

    async def file_id(self, bot: str, key: str) -> str | None:
        return None

    async def keep_file_id(self, bot: str, key: str, file_id: str | None) -> None:
        pass
