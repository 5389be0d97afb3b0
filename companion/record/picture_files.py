"""A channel's file ids of pictures the bot has sent, so that each is uploaded once. No personal data."""

from __future__ import annotations

import sqlite3
from datetime import datetime

from companion.record.timestamps import text_of


def file_of(db: sqlite3.Connection, bot: str, picture: str) -> str | None:
    """Return the channel's file id of a picture, for one bot; None where it was not uploaded."""
    row = db.execute("select file from picture_files where bot = ? and picture = ?", (bot, picture)).fetchone()
    return row[0] if row else None


def keep_file(db: sqlite3.Connection, bot: str, picture: str, file: str | None, at: datetime) -> None:
    """Store a picture's file id, or delete it where ``file`` is None."""
    db.execute("delete from picture_files where bot = ? and picture = ?", (bot, picture))
    if file is not None:
        db.execute("insert into picture_files values (?, ?, ?, ?)", (bot, picture, file, text_of(at)))
