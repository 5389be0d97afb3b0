"""Answers owed to people of whom nothing may be stored: the chat and the kind of answer, without a word of theirs or ours.

A row is there from the commit of their turn until the answer has left, so that it is not lost with the process; after a day it goes
unanswered.
"""

from __future__ import annotations

import sqlite3
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from companion.record.timestamps import moment_of, text_of

OWES_WELCOME: Final = "welcome"
OWES_PAIN: Final = "pain"
OWES_CRISIS: Final = "crisis"
OWES_ERASED: Final = "erased"

STRANGERS_WAIT: Final = timedelta(hours=24)
"""Time for which such a row is kept; our choice, as long as the channel keeps a message that is not taken."""


class Owed(NamedTuple):
    """An answer owed: to whom, and of which kind."""

    channel: str
    address: str
    kind: str


def note(db: sqlite3.Connection, channel: str, address: str, kind: str, at: datetime) -> None:
    """Note what is owed, since the first of it or the last that left (``go_on``). Pain and a crisis stay owed whatever is said after, but
    for an erasure."""
    db.execute("insert into owed (channel, address, kind, at) values (?, ?, ?, ?) on conflict do update set "
               "kind = iif(kind <> 'erased' and excluded.kind = 'welcome', kind, excluded.kind)", (channel, address, kind, text_of(at)))


def go_on(db: sqlite3.Connection, channel: str, address: str, at: datetime) -> None:
    """Note that part of what is owed to a chat has left; the rest waits from now."""
    db.execute("update owed set at = ? where channel = ? and address = ?", (text_of(at), channel, address))


def settle(db: sqlite3.Connection, channel: str, address: str) -> str:
    """Remove what is owed to a chat: it has left, can't arrive, or the person has rows of their own now. Returns its kind, "" for
    none."""
    rows = db.execute("delete from owed where channel = ? and address = ? returning kind", (channel, address)).fetchall()
    return rows[0][0] if rows else ""


def expire(db: sqlite3.Connection, now: datetime) -> None:
    """Remove what has been owed for too long."""
    db.execute("delete from owed where at < ?", (text_of(now - STRANGERS_WAIT),))


def clock_moved(db: sqlite3.Connection, by: timedelta) -> None:
    """Move what is owed with a clock that was set, so that it stays owed as long as it would have."""
    rows = db.execute("select channel, address, at from owed").fetchall()
    db.executemany("update owed set at = ? where channel = ? and address = ?",
                   ((text_of(moment_of(at) + by), channel, address) for channel, address, at in rows))


def all_owed(db: sqlite3.Connection, now: datetime) -> list[Owed]:
    """Return all that is owed, oldest first."""
    return [Owed(*row) for row in db.execute("select channel, address, kind from owed where at >= ? order by at, address",
                                             (text_of(now - STRANGERS_WAIT),))]
