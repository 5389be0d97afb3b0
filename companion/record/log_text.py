"""The answer log as text: a table to read, or JSON Lines."""

from __future__ import annotations

import json
import re
import sqlite3
from typing import Final

from tabulate import tabulate

from companion.record.log import LogRow, answers_of
from companion.record.timestamps import text_of

_UNSAFE: Final = re.compile("[\x00-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]")
"""Control and direction characters: a lifter's text must not control a coach's terminal."""


def harmless(text: str, most: int = 60) -> str:
    """Return a text that is safe to print: control and direction characters removed, at most ``most`` characters."""
    clean = _UNSAFE.sub(" ", text)
    return clean if len(clean) <= most else clean[:most - 1] + "…"


def as_table(db: sqlite3.Connection, person: int) -> str:
    """Return the log as a table, oldest first."""
    rows = [(row.id, f"{row.at:%Y-%m-%d %H:%M}", row.flow, row.key, _value(row), row.unit, harmless(row.raw, 30), row.status,
             row.replaces or "", row.ending or "open") for row in answers_of(db, person)]
    headers = ("row", "when (UTC)", "flow", "question", "value", "unit", "as written", "status", "replaces", "run ended")
    return str(tabulate(rows, headers, tablefmt="simple", disable_numparse=True)) + "\n"


def _value(row: LogRow) -> str:
    return "" if row.value is None else f"{row.value:g}" if isinstance(row.value, float) else harmless(row.value, 40)


def as_lines(db: sqlite3.Connection, person: int) -> str:
    """Return the log as JSON Lines, oldest first, with every column."""
    return "".join(json.dumps({**row._asdict(), "at": text_of(row.at)}, ensure_ascii=False) + "\n"
                   for row in answers_of(db, person))
