"""A channel's file ids of pictures the bot has sent, so that each is uploaded once; and who let pictures of their film be kept."""

from __future__ import annotations

import sqlite3
from datetime import datetime
from typing import Final

from companion.record.timestamps import text_of

FILM_KEPT: Final = {"film_still": "Still of the film", "film_clip": "Clip of the film"}
"""Pictures of a filmed squat that may be kept, by name, with their labels."""


def file_of(db: sqlite3.Connection, bot: str, picture: str) -> str | None:
    """Return the channel's file id of a picture, for one bot; None where it was not uploaded."""
    row = db.execute("select file from picture_files where bot = ? and picture = ?", (bot, picture)).fetchone()
    return row[0] if row else None


def film_kept_for(db: sqlite3.Connection, person: int) -> str:
    """Return who may see what is kept of a person's filmed squat, as they said last: "coach" (they and their coaches), "mine", or "no"."""
    row = db.execute("select value from answers where person = ? and key = 'keep_film' and status = 'ok' "
                     "order by id desc limit 1", (person,)).fetchone()
    return str(row[0]) if row else "no"


def keep_file(db: sqlite3.Connection, bot: str, picture: str, file: str | None, at: datetime) -> None:
    """Store a picture's file id, or delete it where ``file`` is None."""
    db.execute("delete from picture_files where bot = ? and picture = ?", (bot, picture))
    if file is not None:
        db.execute("insert into picture_files values (?, ?, ?, ?)", (bot, picture, file, text_of(at)))
