"""A readable copy of a person's data: their consents, their answers with the questions, then all other rows."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Sequence
from datetime import datetime
from itertools import groupby
from typing import Final

from companion.base.clock import zone_of
from companion.conversation.registry import Book
from companion.export.questions import in_words, questions_in
from companion.export.table import number, plain
from companion.record.log import LogRow, answers_of
from companion.record.people import Agreement, agreements
from companion.record.personal_data import PersonalRow, personal_rows

HEADINGS: Final = {
    ("persons", "id"): "You", ("addresses", "person"): "Where you can be written to",
    ("sessions", "person"): "Where you are in the conversation", ("runs", "person"): "Conversations you began",
    ("answers", "person"): "Your answers", ("findings", "person"): "What was concluded, and why", ("facts", "person"): "What is known now",
    ("reminders", "person"): "Reminders", ("alerts", "person"): "Alerts to your coaches",
    ("coaches", "person"): "Your coaches",
    ("outbox", "person"): "Messages to you", ("coach_roles", "person"): "You as a coach", ("code_tries", "person"): "Codes you tried",
    ("looks", "person"): "What coaches looked at", ("acts", "person"): "What coaches did for you", ("coaches", "coach"): "Whom you coach",
    ("looks", "coach"): "What you looked at as a coach", ("acts", "coach"): "What you did as a coach",
    ("invitations", "made_by"): "Codes you made", ("invitations", "used_by"): "Codes you used",
    ("outbox", "about"): "Messages to coaches about you",
}
"""The tables in words, in the order of a copy; the answers come first."""


def copy_text(db: sqlite3.Connection, person: int, book: Book, zone: str, now: datetime) -> str:
    """Return the copy as plain text, with times in the zone; every value is on one line."""
    return "\n".join((f"Everything kept about you, on {_local(now, zone)}", f"Times are those of {zone}.",
                      *_agreed(agreements(db, person), zone), *_answers(answers_of(db, person), book, zone),
                      *_rest(personal_rows(db, person), zone))) + "\n"


def _agreed(agreements: Sequence[Agreement], zone: str) -> Iterator[str]:
    if agreements:
        yield "\n\nWHAT YOU AGREED TO\n"
    for one in agreements:
        what = "you took it back" if one.version == "no" else f"you agreed to version {one.version}"
        yield f"- {_local(one.at, zone)}  what is kept of a {one.of}: {what}"


def _answers(rows: Iterator[LogRow], book: Book, zone: str) -> Iterator[str]:
    questions = questions_in(book)
    yield f"\n\n{HEADINGS['answers', 'person'].upper()}"
    for (flow, run), those in groupby(rows, key=lambda row: (row.flow, row.run)):
        yield f"\n{book[flow].flow.title if flow in book.flows else in_words(flow)} ({run})"
        for row in those:
            asked = questions.get(flow, {}).get(row.key)
            options = {option.value: option.label for option in asked.ask.kind.options} if asked else {}
            value = row.value if row.value is None or isinstance(row.value, str) else number(row.value)
            said = "nothing" if value is None else options.get(str(value), str(value))
            status = "" if row.status == "ok" else f" [{in_words(row.status)}]"
            yield plain(f"{_local(row.at, zone)}  {f'{row.side}: ' if row.side else ''}{asked.text if asked else in_words(row.key)} "
                        f"{said}{f' {row.unit}' if row.unit else ''} (you wrote “{row.raw}”){status}")


def _rest(held: Iterator[PersonalRow], zone: str) -> Iterator[str]:
    for key, those in groupby(held, key=lambda one: (one.table, one.column)):
        if key == ("answers", "person"):
            continue
        yield f"\n\n{HEADINGS[key].upper()}\n"
        for one in those:
            cells = (f"{in_words(name)}: {_cell(cell, zone)}" for name, cell in one.row.items()
                     if cell not in (None, "") and name != "person")
            yield "- " + plain("; ".join(cells))


def _cell(cell: str | float | None, zone: str) -> str:
    """Return a value in words; a moment in the zone."""
    if isinstance(cell, str) and len(cell) >= 20 and cell.endswith("Z") and cell[10] == "T":
        try:
            return _local(datetime.fromisoformat(cell), zone)
        except ValueError:
            return cell
    return str(number(cell) if isinstance(cell, float) else cell)


def _local(at: datetime, zone: str) -> str:
    return f"{at.astimezone(zone_of(zone)):%Y-%m-%d %H:%M}"
