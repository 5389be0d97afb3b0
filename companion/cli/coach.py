"""Commands for coaches: only the operator makes or ends one."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from companion.cli.common import Numbered, chosen, database_option, fail, lifters, number_option, reading, refuse_number

if TYPE_CHECKING:
    import sqlite3

    from companion.base.settings import Settings
    from companion.record.operator_requests import OperatorRequest


@click.group()
def coach() -> None:
    """Coaches: make one, list them, end one."""


@coach.command("add")
@click.argument("name")
@click.option("--role", type=click.Choice(("coach", "clinician", "read-only")), default="coach", show_default=True,
              help="A clinician may lift a referral, and coaches nobody; read-only changes nothing.")
@database_option
@click.pass_obj
def coach_add(settings: Settings, database: Path | None, name: str, role: str) -> None:
    """Make a code with which somebody becomes the coach called NAME; it works once, within seven days."""
    from companion.record import coaching, status
    from companion.record.operator_requests import OperatorRequest

    refuse_number(name)
    code = coaching.new_code()
    there = _ask(settings, database, OperatorRequest("invite", name, coaching.code_hash_of(code), role=role.replace("-", "_")))
    bot = status.mark_of(reading(settings, database), "bot.name")
    click.echo(f"code for {name}: {coaching.spaced(code)}")
    click.echo(f"link: https://t.me/{bot[0]}?start={code}" if bot else f"send it to the bot as: code {code}")
    click.echo("It works once, within seven days, and is shown only here."
               + ("" if there else " The running companion accepts it within half a minute."))


@coach.command("list")
@database_option
@click.pass_obj
def coach_list(settings: Settings, database: Path | None) -> None:
    """List the coaches, with their number and how many lifters they see."""
    from companion.record import coaching

    db = reading(settings, database)
    for number, name, count in coaching.coaches_with_lifters(db):
        role = coaching.role_of(db, number)
        click.echo(f"{number} {name}{'' if role == 'coach' else ', ' + role.replace('_', '-')}: {lifters(count)}")


@coach.command("end")
@click.argument("name", required=False)
@number_option
@database_option
@click.pass_obj
def coach_end(settings: Settings, database: Path | None, name: str | None, number: int | None) -> None:
    """End the role of the coach called NAME, or with that number; they can't see any lifter from now on."""
    from companion.record.operator_requests import OperatorRequest

    if (name is None) == (number is None):
        fail("say which coach: `companion coach end NAME`, or `companion coach end --number NUMBER`")
    number, name = coach_named(reading(settings, database), name or "", number)
    done = _ask(settings, database, OperatorRequest("end", name, person=number))
    click.echo(f"{name} is no longer a coach" if done else f"{name} will no longer be a coach within half a minute")


def coach_named(db: sqlite3.Connection, wanted: str, number: int | None = None) -> tuple[int, str]:
    """Return the (number, name) of the coach with this name or number; ends the command where there is none or more than one."""
    from companion.record import coaching

    there = [Numbered(one, name, lifters(count)) for one, name, count in coaching.coaches_with_lifters(db)]
    return chosen(wanted, number, lambda name: [one for one in there if one.name == name],
                  lambda it: [one for one in there if it in (None, one.number)], "no coach", "coaches")[:2]


def _ask(settings: Settings, database: Path | None, request: OperatorRequest) -> bool:
    """Carry out a request; returns False where it is queued for the running companion."""
    from companion.base.clock import SystemClock
    from companion.record.file import CannotOpen
    from companion.record.operator_requests import submit

    try:
        return submit(database or settings.database, request, SystemClock().now())
    except CannotOpen as error:
        fail(str(error))
    except OSError as error:
        fail(f"can't queue the request: {error.strerror or error}")
