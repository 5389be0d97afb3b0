"""The registry of export formats: the command line, /export and the help derive from it. A format's code is loaded on first use."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    import sqlite3
    from datetime import datetime

    from companion.conversation.condition import Value
    from companion.conversation.registry import Book
    from companion.export.table import SeenRow


@dataclass(frozen=True, slots=True)
class ExportSource:
    """The person whose data is exported, as of ``now``: their rows, their facts (for zone and plan) and the flows. ``seen``: gives what
    coaches read of them (``coach.seen``, which this package can't import)."""

    db: sqlite3.Connection
    person: int
    now: datetime
    facts: Mapping[str, Value]
    book: Book
    seen: Callable[[ExportSource], Iterable[SeenRow]] = lambda of: ()

    @property
    def zone(self) -> str:
        """The person's zone."""
        from companion.calendar.preferences import zone_from

        return zone_from(self.facts, self.now)


@dataclass(frozen=True, slots=True)
class Format:
    """An export format. ``name``: for ``--format``; ``what``: its content in a few words; ``file``: the file name; ``made``: returns the
    text, with the format's line ends; ``said``: the message it is sent with in the chat, "" where it is not sent there."""

    name: str
    what: str
    media_type: str
    file: str
    made: Callable[[ExportSource], str]
    said: str = ""


def _text(of: ExportSource) -> str:
    from companion.export.personal_copy import copy_text

    return copy_text(of.db, of.person, of.book, of.zone, of.now)


def _csv(of: ExportSource) -> str:
    from companion.export.table import as_csv
    from companion.record.log import answers_of

    return as_csv(answers_of(of.db, of.person), of.book, of.zone)


def _json_lines(of: ExportSource) -> str:
    from companion.export.table import as_json_lines
    from companion.record.log import answers_of

    return as_json_lines(answers_of(of.db, of.person), of.book, of.zone)


def _fhir(of: ExportSource) -> str:
    from companion.export.fhir.bundle import as_fhir
    from companion.export.fhir.findings import Concluded
    from companion.record.log import answers_of, concluded_of
    from companion.record.timestamps import text_of

    found = [Concluded(*row) for row in concluded_of(of.db, of.person)]
    found += [Concluded(n, f"seen.{row.page}", row.words, row.reader, row.part, text_of(of.now)) for n, row in enumerate(of.seen(of))]
    return as_fhir(of.person, answers_of(of.db, of.person), of.book, found)


def _seen(of: ExportSource) -> str:
    from companion.export.table import seen_csv

    return seen_csv(of.seen(of))


def _calendar(of: ExportSource) -> str:
    """Return the recurring squat days and the listed open reminders that are not about one of them."""
    from companion.calendar.ical import calendar_text
    from companion.calendar.preferences import plan_from
    from companion.record import people, reminders
    from companion.reminders.kinds import REMINDER_KINDS

    rows = [(one.kind, one.due_at, kind.listed.capitalize()) for one in reminders.open_reminders(of.db, of.person)
            if (kind := REMINDER_KINDS.get(one.kind)) and kind.listed and not kind.planned and one.round == 1]
    return calendar_text(plan_from(of.facts), of.zone, of.now, "Squat days", rows, key=people.pseudonym_of(of.db, of.person))


def _rows(of: ExportSource) -> str:
    from companion.record.personal_data import as_lines

    return as_lines(of.db, of.person)


FORMATS: Final = {one.name: one for one in (
    Format("text", "everything kept, to read", "text/plain", "companion-data.txt", _text, "Here is everything kept about you, to read."),
    Format("csv", "the answers, for a spreadsheet", "text/csv", "companion-answers.csv", _csv,
           "Your answers again, for a spreadsheet."),
    Format("jsonl", "the answers as JSON Lines", "application/jsonl", "companion-answers.jsonl", _json_lines),
    Format("fhir", "the answers as a FHIR R5 bundle", "application/fhir+json", "companion-answers.json", _fhir),
    Format("coach", "what a coach reads of them, for a spreadsheet", "text/csv", "companion-coach.csv", _seen),
    Format("ics", "the squat days as a calendar", "text/calendar", "squat-days.ics", _calendar),
    Format("rows", "everything kept, for a program", "application/jsonl", "companion-data.jsonl", _rows,
           "And everything for a program, one entry per line."),
)}


def sentence() -> str:
    """Return the formats as a list in a sentence, for the README: "`text` (everything kept, to read), …"."""
    return ", ".join(f"`{one.name}` ({one.what})" for one in FORMATS.values())


def help_text() -> str:
    """Return the formats for the command line's help, one per line."""
    return "\n".join(f"  {one.name:6} {one.what} ({one.media_type})" for one in FORMATS.values())
