"""Shared by the commands: options, failing with one clear line, and opening the database for reading."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple, NoReturn

import click

if TYPE_CHECKING:
    import sqlite3
    from collections.abc import Callable, Sequence

    from companion.base.settings import Settings
    from companion.record.people import Named

database_option = click.option("--database", type=click.Path(path_type=Path), help="The file to use, instead of the setting.")
number_option = click.option("--number", type=click.IntRange(0, 2**62), help="The person of this number, whatever anybody is called.")
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


def person_in(db: sqlite3.Connection, wanted: str, number: int | None = None) -> int:
    """Return the number of the person wanted: by name, address or number; "#7", or ``number``, is never a name. Ends the command where
    there is nobody, or more than one."""
    from companion.record import people

    def listed(found: Sequence[Named]) -> list[Numbered]:
        """Return people as they are chosen among."""
        return [Numbered(one.number, one.name, f"since {one.since}") for one in found]
    return chosen(wanted, number, lambda name: listed(people.people_named(db, name)), lambda it: listed(people.people_numbered(db, it)),
                  "nobody", "people").number


class Numbered(NamedTuple):
    """Somebody to choose among others: their number, their name, and what else tells them from others."""

    number: int
    name: str
    more: str


def chosen(wanted: str, number: int | None, named: Callable[[str], list[Numbered]], numbered: Callable[[int | None], list[Numbered]],
           nobody: str, several: str) -> Numbered:
    """Return who is meant by a name or number, the same for every command: "7" may be either, "#7" and ``number`` are never a name.
    Ends the command, with the choices and their numbers, where there is ``nobody`` or ``several``. ``numbered``: all, for None."""
    meant = number if number is not None else number_in(wanted)
    found = [] if number is not None or never_a_name(wanted) else named(wanted)
    if meant is not None:
        found = sorted({*found, *numbered(meant)})
    called = f"#{number}" if number is not None else wanted
    if not found:  # people name themselves
        fail(f"{nobody} called {called} here (there is: {_listed(numbered(None)) or 'nobody yet'})")
    if len(found) > 1:
        fail(f"{called} may be several {several}; say which by the number, such as #{found[0].number}: {_listed(found)}")
    return found[0]


def number_in(wanted: str) -> int | None:
    """Return the number that "7" or "#7" means; None where it is none."""
    digits = wanted.removeprefix("#")
    return int(digits) if digits.isascii() and digits.isdecimal() and len(digits) < 16 else None


def never_a_name(wanted: str) -> bool:
    """True for "#7": a number, even where somebody is called so."""
    return wanted.startswith("#") and number_in(wanted) is not None


def refuse_number(name: str) -> None:
    """End the command where a new name is "#7", which could never be asked for."""
    if never_a_name(name):
        fail(f"{name} is a number, never a name: choose a name without the #")


def _listed(choices: Sequence[Numbered]) -> str:
    from companion.record.log_text import harmless

    return harmless(", ".join(f"#{one.number} {one.name} ({one.more})" for one in choices), 300)


def lifters(count: int) -> str:
    """Return "1 lifter", "2 lifters"."""
    return f"{count} {'lifter' if count == 1 else 'lifters'}"
