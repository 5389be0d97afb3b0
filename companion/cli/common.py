"""Shared by the commands: options, failing with one clear line, and opening the database for reading."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

if TYPE_CHECKING:
    import sqlite3

    from companion.base.settings import Settings

database_option = click.option("--database", type=click.Path(path_type=Path), help="The file to use, instead of the setting.")
as_option = click.option("--as", "name", default="me", show_default=True, help="Whose conversation it is.")


def fail(line: str, code: int = 2) -> NoReturn:
    """Print one clear line to standard error and exit with this code."""
    click.echo(f"companion: {line}", err=True)
    raise SystemExit(code)


def reading(settings: Settings, database: Path | None) -> sqlite3.Connection:
    """Return the database, read-only; ends the command where there is none."""
    from companion.record.file import CannotOpen, open_for_reading

    try:
        return open_for_reading(database or settings.database).conn
    except CannotOpen as error:
        fail(str(error))


def person_in(db: sqlite3.Connection, name: str) -> int:
    """Return the number of the person with this name; ends the command where there is none."""
    from companion.record import people
    from companion.record.log_text import harmless

    person = people.person_named(db, name)
    if person is None:  # people choose their own names, so they are made harmless
        fail(f"nobody called {name} here (there is: {harmless(', '.join(people.names(db)), 300) or 'nobody yet'})")
    return person


def lifters(count: int) -> str:
    """Return "1 lifter", "2 lifters"."""
    return f"{count} {'lifter' if count == 1 else 'lifters'}"
