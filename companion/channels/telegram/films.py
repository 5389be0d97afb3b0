"""Films that somebody sent, brought from Telegram to this machine."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Final

from telegram import Bot
from telegram.error import BadRequest, TelegramError

FilmFetch = Callable[[str, Path], Awaitable[Path]]

FETCHED_MOST: Final = 20 * 2**20
"""Bytes of the largest file a bot may fetch, by the Bot API's documentation (read)."""
FILM_SECONDS: Final = 120.0
OVER_20_MB: Final = "That file is over 20 MB, more than I can fetch. Film with fewer pixels, or cut it to the squats themselves."
NOT_FETCHED: Final = "I could not fetch that film from Telegram. Say “back” and send it once more."


async def fetch_film(bot: Bot, file: str, folder: Path) -> Path:
    """Download a file by its id into a folder; return its path. Raises OSError with a line for the person."""
    try:
        known = await bot.get_file(file)
        if (known.file_size or 0) > FETCHED_MOST:
            raise OSError(OVER_20_MB)
        return await known.download_to_drive(folder / "film", read_timeout=FILM_SECONDS)
    except BadRequest as error:
        raise OSError(OVER_20_MB if "too big" in str(error).lower() else NOT_FETCHED) from error
    except TelegramError as error:
        raise OSError(NOT_FETCHED) from error
