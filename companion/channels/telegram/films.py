"""Films that somebody sent, brought from Telegram to this machine."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Final

from telegram import Bot
from telegram.error import BadRequest, TelegramError

from companion.channels.telegram.bounds import RECEIVED_MOST, TooLong

FilmFetch = Callable[[str, Path], Awaitable[Path]]

FILM_SECONDS: Final = 600.0
"""Longest time in seconds for fetching a film, since others wait for it: our choice, 20 MB at 280 kbit/s."""
SILENT_SECONDS: Final = 60.0
"""Longest time in seconds without a byte of it: our choice."""
OVER_20_MB: Final = "That file is over 20 MB, more than I can fetch. Film with fewer pixels, or cut it to the squats themselves."
NOT_FETCHED: Final = "I could not fetch that film from Telegram. Say “back” and send it once more."


async def fetch_film(bot: Bot, file: str, folder: Path) -> Path:
    """Download a file by its id into a folder; return its path. Raises OSError with a line for the person."""
    try:
        async with asyncio.timeout(FILM_SECONDS):
            known = await bot.get_file(file)
            if (known.file_size or 0) > RECEIVED_MOST:
                raise OSError(OVER_20_MB)
            return await known.download_to_drive(folder / "film", read_timeout=SILENT_SECONDS)
    except BadRequest as error:
        raise OSError(OVER_20_MB if "too big" in str(error).lower() else NOT_FETCHED) from error
    except (TelegramError, TimeoutError) as error:
        raise OSError(OVER_20_MB if isinstance(error.__cause__, TooLong) else NOT_FETCHED) from error
