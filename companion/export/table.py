"""A person's answer log as tidy CSV (RFC 4180) and as JSON Lines: a row an answer, in the order given.

CSV is for spreadsheets: a lifter's text can't become a formula, break a line or turn the direction of a cell. It is
text made plain, so what was typed is in JSON Lines to the letter.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable
from math import isfinite
from typing import Final
from unicodedata import category, normalize

from companion.base.clock import zone_of
from companion.conversation.registry import Book
from companion.export.questions import in_words, questions_in
from companion.record.log import LogRow
from companion.record.timestamps import text_of

ANSWER_COLUMNS: Final = ("row", "at", "local_time", "flow", "version", "question", "key", "side", "raw", "value", "unit", "status",
                  "method", "placement", "replaces", "run", "run_ending", "run_for")
"""``row`` is the number that ``replaces`` names; ``run_for`` what the run was begun with, such as a day."""

BOM: Final = "\ufeff"
"""A widespread spreadsheet reads a CSV without it in the machine's old code page, and ° or é come out as two letters; the
others, pandas and Python ("utf-8-sig") pass over it. Common practice; RFC 4180 does not speak of it."""

FORMULA: Final = "=+-@\N{MINUS SIGN}"
"""The characters that begin a formula in a spreadsheet (common practice, no source); looked for behind spaces, and in any width."""

_WHOLE_MOST: Final = 1e15
"""Below it every whole number is exact as a float, and is written without a point."""


def whole(text: str) -> str:
    """Return a text as valid Unicode: half an emoji becomes U+FFFD."""
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")


def plain(text: str) -> str:
    """Return a text that stays in one line and steers nothing: control, direction and other invisible characters and line breaks
    become spaces, half characters U+FFFD. Cut short nowhere."""
    return "".join(" " if category(one) in ("Cc", "Cf", "Zl", "Zp") else
                   "\ufffd" if ord(one) & 0xFFFE == 0xFFFE else one for one in whole(text))


def no_formula(text: str) -> str:
    """Return a plain text that a spreadsheet takes as text: an apostrophe before what would begin a formula."""
    clean = plain(text)
    return "'" + clean if normalize("NFKD", clean).lstrip()[:1] in tuple(FORMULA) else clean


def number(value: float) -> float | None:
    """Return a number as it is written: whole ones without a point; None for what is none (NaN, infinite)."""
    if not isfinite(value):
        return None
    return int(value) if value == int(value) and abs(value) < _WHOLE_MOST else float(value)


def _columns(rows: Iterable[LogRow], book: Book, zone: str) -> Iterable[dict[str, float | str | None]]:
    questions, there = questions_in(book), zone_of(zone)
    for row in rows:
        asked = questions.get(row.flow, {}).get(row.key)
        values = (row.id, text_of(row.at), f"{row.at.astimezone(there):%Y-%m-%d %H:%M:%S}", row.flow, row.version,
                  asked.text if asked else in_words(row.key), row.key, row.side, row.raw,
                  row.value if row.value is None or isinstance(row.value, str) else number(row.value),
                  row.unit, row.status, row.method, row.placement, row.replaces, row.run, row.ending or "open", row.asked)
        yield dict(zip(ANSWER_COLUMNS, values, strict=True))


def as_csv(rows: Iterable[LogRow], book: Book, zone: str) -> str:
    """Return the log as CSV with a header, comma-separated, lines ended by CRLF, begun by a byte order mark; write it as UTF-8,
    its line ends untouched.

    ``at`` is RFC 3339 in UTC; ``local_time`` the wall clock in ``zone`` (an IANA name or "UTC±hh:mm"), as spreadsheets
    read it. Numbers are numbers, missing ones empty; every other cell is harmless text (``no_formula``).
    """
    out = io.StringIO(newline="")
    out.write(BOM)
    table = csv.writer(out, lineterminator="\r\n")
    table.writerow(ANSWER_COLUMNS)
    for row in _columns(rows, book, zone):
        table.writerow([no_formula(cell) if isinstance(cell, str) else cell for cell in row.values()])
    return out.getvalue()


def as_json_lines(rows: Iterable[LogRow], book: Book, zone: str) -> str:
    """Return the log as JSON Lines with the columns of the CSV: numbers are numbers, what is missing is null.

    All in ASCII, the rest escaped: a text is kept to the letter and can still neither break a line nor steer a terminal.
    """
    return "".join(json.dumps({name: whole(cell) if isinstance(cell, str) else cell for name, cell in row.items()},
                              allow_nan=False) + "\n" for row in _columns(rows, book, zone))
