"""A person's answer log as tidy CSV (RFC 4180) and as JSON Lines, one row per answer; and what coaches read, one row per text.

CSV is for spreadsheets: texts are made plain, so that they can't become a formula, break a line or change a cell's direction. JSON
Lines has them unchanged.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable
from math import isfinite
from typing import Final, NamedTuple
from unicodedata import category, normalize

from companion.base.clock import zone_of
from companion.conversation.registry import Book
from companion.export.questions import in_words, planned_loads, questions_in
from companion.record.log import LogRow
from companion.record.timestamps import text_of

ANSWER_COLUMNS: Final = ("row", "at", "local_time", "flow", "version", "question", "key", "side", "raw", "value", "unit", "status",
                  "method", "placement", "replaces", "run", "run_ending", "run_for")
"""The ``value`` of a load told "as planned" is the planned load; its ``raw`` stays what was typed. ``replaces`` names another row's
``row``; ``run_for`` is the run's subject, such as a day."""

BOM: Final = "\ufeff"
"""Byte order mark. A widespread spreadsheet reads a CSV without it in the machine's old code page, so that ° or é become two
letters; others, pandas and Python ("utf-8-sig") ignore it. Common practice; not in RFC 4180."""

FORMULA: Final = "=+-@\N{MINUS SIGN}"
"""Characters that begin a formula in a spreadsheet (common practice, no source), also after spaces and in full width."""

_WHOLE_MOST: Final = 1e15
"""Whole numbers below this are exact as floats, and written without a decimal point."""


def whole(text: str) -> str:
    """Return a text as valid Unicode: a lone surrogate becomes U+FFFD."""
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")


def plain(text: str) -> str:
    """Return a text as one harmless line of the same length: control, direction and other invisible characters and line breaks become
    spaces, lone surrogates U+FFFD."""
    return "".join(" " if category(one) in ("Cc", "Cf", "Zl", "Zp") else
                   "\ufffd" if ord(one) & 0xFFFE == 0xFFFE else one for one in whole(text))


def no_formula(text: str) -> str:
    """Return a plain text with an apostrophe before it where a spreadsheet would take it as a formula."""
    clean = plain(text)
    return "'" + clean if normalize("NFKD", clean).lstrip()[:1] in tuple(FORMULA) else clean


def number(value: float) -> float | None:
    """Return a number for export: whole ones as int; None for NaN and infinity."""
    if not isfinite(value):
        return None
    return int(value) if value == int(value) and abs(value) < _WHOLE_MOST else float(value)


def _columns(rows: Iterable[LogRow], book: Book, zone: str) -> Iterable[dict[str, float | str | None]]:
    questions, there, log = questions_in(book), zone_of(zone), list(rows)
    planned = planned_loads(log)
    for row in log:
        asked, value = questions.get(row.flow, {}).get(row.key), planned.get(row.id, row.value)
        values = (row.id, text_of(row.at), f"{row.at.astimezone(there):%Y-%m-%d %H:%M:%S}", row.flow, row.version,
                  asked.text if asked else in_words(row.key), row.key, row.side, row.raw,
                  value if value is None or isinstance(value, str) else number(value),
                  "kg" if row.id in planned else row.unit, row.status, row.method, row.placement, row.replaces, row.run,
                  row.ending or "open", row.asked)
        yield dict(zip(ANSWER_COLUMNS, values, strict=True))


def as_csv(rows: Iterable[LogRow], book: Book, zone: str) -> str:
    """Return the log as CSV with a byte order mark, a header and CRLF line ends; write it as UTF-8 without changing line ends.

    ``at`` is RFC 3339 in UTC; ``local_time`` the wall clock in ``zone`` (an IANA name or "UTC±hh:mm"), in a form spreadsheets
    read. Missing values are empty; every text cell is harmless (``no_formula``).
    """
    return _csv(ANSWER_COLUMNS, (row.values() for row in _columns(rows, book, zone)))


class SeenRow(NamedTuple):
    """One text that a coach reads of a lifter: the coach ("" for whoever runs the bot), the page, the part of it and the words."""

    reader: str
    page: str
    part: str
    words: str


def seen_csv(rows: Iterable[SeenRow]) -> str:
    """Return what coaches read as CSV, like the log."""
    return _csv(SeenRow._fields, rows)


def _csv(columns: Iterable[str], rows: Iterable[Iterable[float | str | None]]) -> str:
    out = io.StringIO(newline="")
    out.write(BOM)
    table = csv.writer(out, lineterminator="\r\n")
    table.writerow(columns)
    table.writerows([no_formula(cell) if isinstance(cell, str) else cell for cell in row] for row in rows)
    return out.getvalue()


def as_json_lines(rows: Iterable[LogRow], book: Book, zone: str) -> str:
    """Return the log as JSON Lines with the columns of the CSV; missing values are null.

    Escaped to ASCII, so that texts are unchanged and still can't break a line or control a terminal.
    """
    return "".join(json.dumps({name: whole(cell) if isinstance(cell, str) else cell for name, cell in row.items()},
                              allow_nan=False) + "\n" for row in _columns(rows, book, zone))
