"""A channel's file ids of pictures the bot has sent, so that each is uploaded once; and who let their film, or pictures of it, be kept."""

from __future__ import annotations

import sqlite3
from datetime import datetime
from typing import Final

from companion.record.timestamps import text_of

WHOLE_FILM: Final = "film_whole"
CURVE_FACT: Final = "film.plain_curve"
FILM_KEPT: Final = {"film_still": "Still of the film", "film_clip": "Clip of the film", WHOLE_FILM: "The whole film"}
"""What may be kept of a filmed squat, by name, with their labels."""
KEEP_KEYS: Final = ("keep_film", "keep_whole")
"""The questions that ask for it; "no" to either is acted on at once."""


def file_of(db: sqlite3.Connection, bot: str, picture: str) -> str | None:
    """Return the channel's file id of a picture, for one bot; None where it was not uploaded."""
    row = db.execute("select file from picture_files where bot = ? and picture = ?", (bot, picture)).fetchone()
    return row[0] if row else None


def film_kept_for(db: sqlite3.Connection, person: int, name: str) -> str:
    """Return who may see one thing kept of a person's filmed squat, as they said last: "coach" (they and their coaches), "mine", or "no".
    The whole film is seen by whoever may see the pictures, and kept only where they said so too."""
    pictures, whole = (row and str(row[0]) for row in (
        db.execute("select value from answers where person = ? and key = ? and status = 'ok' order by id desc limit 1",
                   (person, key)).fetchone() for key in KEEP_KEYS))
    return pictures if pictures and (name != WHOLE_FILM or whole == "yes") else "no"


def keep_file(db: sqlite3.Connection, bot: str, picture: str, file: str | None, at: datetime) -> None:
    """Store a picture's file id, or delete it where ``file`` is None."""
    db.execute("delete from picture_files where bot = ? and picture = ?", (bot, picture))
    if file is not None:
        db.execute("insert into picture_files values (?, ?, ?, ?)", (bot, picture, file, text_of(at)))
