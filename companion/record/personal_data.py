"""Personal data: every row of every table that names a person, and what of it is theirs to have."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator, Mapping
from typing import Final, NamedTuple

ALL: Final = ()

HELD: Final[Mapping[tuple[str, str], tuple[str, ...]]] = {
    ("persons", "id"): ALL, ("addresses", "person"): ALL, ("sessions", "person"): ALL, ("runs", "person"): ALL,
    ("answers", "person"): ALL, ("findings", "person"): ALL, ("facts", "person"): ALL, ("reminders", "person"): ALL,
    ("alerts", "person"): ALL, ("coaches", "person"): ALL, ("outbox", "person"): ALL, ("coach_roles", "person"): ALL,
    ("code_tries", "person"): ALL, ("looks", "person"): ALL, ("acts", "person"): ALL,
    ("coaches", "coach"): ("since", "until"), ("looks", "coach"): ("what", "at"), ("acts", "coach"): ("what", "at"),
    ("invitations", "made_by"): ("kind", "name", "made_at", "expires_at", "used_at"),
    ("invitations", "used_by"): ("kind", "name", "made_at", "used_at"),
    ("outbox", "about"): ("text", "made_at", "settled_at"),
}
"""Each table and column that names a person, and the columns of its rows that go with a copy (ALL: the whole row, which is
theirs). Of a row that is somebody else's too, what tells of that other is left out."""

LEFT_OUT: Final = {("outbox", "document"), ("invitations", "code_hash")}
"""A file on its way, which is made of the other rows; and what stands for a code."""

ONLY: Final = {("outbox", "person"): " and (about is null or about = person) and not instr(buttons, '\"go.lifter.')",
               ("outbox", "about"): " and person <> about"}
"""Conditions on rows: what a coach was told of a lifter is the lifter's, and not in the coach's copy, nor are lists of lifters, which
are known by their buttons."""


class Held(NamedTuple):
    """One row: its table, the column by which it names the person, and what goes with a copy."""

    table: str
    column: str
    row: dict[str, str | float | None]


def held_of(db: sqlite3.Connection, person: int) -> Iterator[Held]:
    """Yield everything that is held of a person and theirs to have, table by table, oldest first."""
    for (table, column), wanted in HELD.items():
        there = [row[1] for row in db.execute(f"pragma table_info([{table}])")]
        columns = [name for name in there if (not wanted or name in wanted) and (table, name) not in LEFT_OUT]
        for row in db.execute(f"select {', '.join(f'[{name}]' for name in columns)} from [{table}] where [{column}] = ?"
                              + ONLY.get((table, column), ""), (person,)):
            yield Held(table, column, dict(zip(columns, row, strict=True)))


def as_lines(db: sqlite3.Connection, person: int) -> str:
    """Return the same as JSON Lines: each row with its table's name, to the letter."""
    return "".join(json.dumps({"table": one.table, **one.row}, ensure_ascii=False) + "\n" for one in held_of(db, person))


def erase_elsewhere(db: sqlite3.Connection, person: int) -> None:
    """Remove what stands of a person among their coaches' rows: notes and acts, pages that were shown, lists with their name
    on them, and the code they came by."""
    number = str(person)
    of = ("asked = ? or asked like ? || '-%'", (number, number))
    db.execute("delete from facts where person in (select coach from coaches where person = ?) and (name like 'coach_note.%' or "
               "name like 'coach_act.%')", (person,))
    for table in ("answers", "runs"):
        db.execute(f"delete from {table} where (person, run) in (select person, run from runs where flow in ('coach_note', 'coach_act', "
                   f"'lifter', 'lifter_log', 'lifter_report') and ({of[0]}))", of[1])
    db.execute("delete from runs where flow = 'find_lifter' and person in (select coach from coaches where person = ?)", (person,))
    names = [name for (name,) in db.execute("select name from addresses where person = ? and name <> ''", (person,))]
    for name in [None, *names]:  # a list that names them has a button with their number, other messages only the name
        db.execute("delete from outbox where about is null and person in (select coach from coaches where person = :person) and "
                   "(instr(buttons, :button) or instr(lower(text), lower(:name)))",
                   {"person": person, "button": f'"go.lifter.{number}"', "name": name})
    for coach, name in db.execute("select made_by, name from invitations where used_by = ? and made_by is not null", (person,)).fetchall():
        db.execute("delete from answers where (person, run) in (select person, run from answers where person = ? and "
                   "flow = 'invite_lifter' and (value = ? or substr(raw, 1, 60) = ?))", (coach, name, name))  # of a run all or none
        db.execute("delete from facts where person = ? and name = 'invite_lifter.whom' and value = ?", (coach, name))
        db.execute("delete from outbox where person = ? and instr(text, ?) = 1", (coach, f"For {name}: "))
    db.execute("delete from invitations where used_by = ?", (person,))
