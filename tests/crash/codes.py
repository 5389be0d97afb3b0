"""The code for a name: the same at each life, so that lives can be compared, where the bot's own are random."""

from __future__ import annotations

import hashlib
import sqlite3
from datetime import datetime

from companion.record import coaching


def code_for(name: str) -> str:
    """A code like those the bot makes."""
    return "".join(coaching.LETTERS[byte % len(coaching.LETTERS)] for byte in hashlib.sha256(name.encode()).digest()[:coaching.CODE_LENGTH])


def invite(db: sqlite3.Connection, kind: str, made_by: int | None, name: str, at: datetime) -> str:
    """In the place of ``coaching.invite``."""
    code = code_for(name)
    coaching.keep_invitation(db, kind, made_by, name, coaching.code_hash_of(code), at)
    return code
