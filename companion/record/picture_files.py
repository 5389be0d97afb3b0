"""The ids a channel gave to pictures a bot has sent, so that each is uploaded once. Nothing of a person is in it."""

from __future__ import annotations

import sqlite3
from datetime import datetime

from companion.record.timestamps import text_of


def file_of(db: sqlite3.Connection, bot: str, picture: str) -> str | None:
    """The channel's id of a picture's file, for one bot."""
    row = db.execute("select file from picture_files where bot = ? and picture = ?", (bot, picture)).fetchone()
    return row[0] if row else None


def keep_file(db: sqlite3.Connection, bot: str, picture: str, file: str | None, at: datetime) -> None:
    """Keep it, or forget it where it is None."""
    db.execute("delete from picture_files where bot = ? and picture = ?", (bot, picture))
    if file is not None:
        db.execute("insert into picture_files values (?, ?, ?, ?)", (bot, picture, file, text_of(at)))
