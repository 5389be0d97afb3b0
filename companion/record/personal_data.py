"""Personal data: every row that names a person, and the columns of it that a copy for them holds."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator, Mapping
from typing import Final, NamedTuple

from companion.conversation.session import Frame, Session
from companion.record.thread import HIDDEN

WHOLE_ROW: Final = ()
"""All columns of a row."""

PERSON_COLUMNS: Final[Mapping[tuple[str, str], tuple[str, ...]]] = {
    ("persons", "id"): WHOLE_ROW,
    **{(table, "person"): WHOLE_ROW for table in (
        "addresses", "sessions", "runs", "answers", "findings", "facts", "reminders", "alerts", "coaches", "outbox", "coach_roles",
        "code_tries", "looks", "acts")},
    ("coaches", "coach"): ("since", "until"), ("looks", "coach"): ("what", "at"), ("acts", "coach"): ("what", "at"),
    ("invitations", "made_by"): ("kind", "name", "made_at", "expires_at", "used_at"),
    ("invitations", "used_by"): ("kind", "name", "made_at", "used_at"),
    ("outbox", "about"): ("text", "made_at", "settled_at"),
}
"""Each table and column that names a person, with the columns a copy shows. Columns about somebody else are left out."""

NEVER_COPIED: Final = {("outbox", "document"), ("invitations", "code_hash"),
                       *(("answers", column) for column in ("salt", "commits", "hash"))}
"""Columns in no copy: an unsent file, which is made of the other rows, a code's hash, and an answer's link (``chain``)."""

ROW_CONDITIONS: Final = {("outbox", "person"): " and (about is null or about = person) and not instr(buttons, '\"go.lifter.')",
               ("outbox", "about"): " and person <> about"}
"""Conditions on rows. Messages to a coach about a lifter belong to the lifter's copy, not to the coach's; lists of lifters
(recognised by their buttons) are in neither."""


class PersonalRow(NamedTuple):
    """One row of a copy: its table, the column that names the person, and the values."""

    table: str
    column: str
    row: dict[str, str | float | None]


def personal_rows(db: sqlite3.Connection, person: int) -> Iterator[PersonalRow]:
    """Yield the rows of a copy of a person's data, table by table, oldest first."""
    for (table, column), wanted in PERSON_COLUMNS.items():
        there = [row[1] for row in db.execute(f"pragma table_info([{table}])")]
        columns = [name for name in there if (not wanted or name in wanted) and (table, name) not in NEVER_COPIED]
        for row in db.execute(f"select {', '.join(f'[{name}]' for name in columns)} from [{table}] where [{column}] = ?"
                              + ROW_CONDITIONS.get((table, column), ""), (person,)):
            shown = dict(zip(columns, row, strict=True))
            if shown.get("what") == "private" and "value" in shown:
                shown["value"] = HIDDEN
            yield PersonalRow(table, column, shown)


def as_lines(db: sqlite3.Connection, person: int) -> str:
    """Return the rows of a copy as JSON Lines, each with its table's name, texts unchanged."""
    return "".join(json.dumps({"table": one.table, **one.row}, ensure_ascii=False) + "\n" for one in personal_rows(db, person))


def erase_from_coaches(db: sqlite3.Connection, person: int) -> None:
    """Delete a person from their coaches' rows: notes and acts, pages that were shown, lists with their name, and the code they
    used."""
    number = str(person)
    of = ("asked = ? or asked like ? || '-%'", (number, number))
    db.execute("delete from facts where person in (select coach from coaches where person = ?) and (name like 'coach_note.%' or "
               "name like 'coach_act.%')", (person,))
    for table in ("answers", "runs"):
        db.execute(f"delete from {table} where (person, run) in (select person, run from runs where flow in ('coach_note', 'coach_act', "
                   f"'lifter', 'lifter_log', 'lifter_report') and ({of[0]}))", of[1])
    for coach, text in db.execute("select person, session from sessions where person in (select coach from coaches where person = ?) and "
                                  "instr(session, ?)", (person, f'"of":"{number}"')).fetchall():
        db.execute("update sessions set session = ? where person = ?", (_without(Session.loads(text), number).dumps(), coach))
    db.execute("delete from runs where flow in ('find_lifter', 'lifter_named', 'compare') and "
               "person in (select coach from coaches where person = ?)", (person,))
    names = [name for (name,) in db.execute("select name from addresses where person = ? and name <> ''", (person,))]
    for name in [None, *names]:  # a list has a button with their number, other messages only their name
        db.execute("delete from outbox where about is null and person in (select coach from coaches where person = :person) and "
                   "(instr(buttons, :button) or instr(lower(text || buttons), lower(:name)))",
                   {"person": person, "button": f'"go.lifter.{number}"', "name": name})
    for coach, name in db.execute("select made_by, name from invitations where used_by = ? and made_by is not null", (person,)).fetchall():
        db.execute("delete from answers where (person, run) in (select person, run from answers where person = ? and "
                   "flow = 'invite_lifter' and (value = ? or substr(raw, 1, 60) = ?))", (coach, name, name))  # whole runs only
        db.execute("delete from facts where person = ? and name = 'invite_lifter.whom' and value = ?", (coach, name))
        db.execute("delete from outbox where person = ? and instr(text, ?) = 1", (coach, f"For {name}: "))
    db.execute("delete from invitations where used_by = ?", (person,))


def _without(session: Session, lifter: str) -> Session:
    """Return a coach's session without the questions about a lifter, which hold their name."""
    def about(frame: Frame | None) -> bool:
        """True if a run is about them."""
        return frame is not None and frame.fixed.get("of") == lifter

    mine = any(map(about, session.stack))
    return session._replace(stack=() if mine else session.stack, idle=session.idle or mine,
                            last=None if about(session.last) else session.last,
                            parked=tuple(stack for stack in session.parked if not any(map(about, stack))))
