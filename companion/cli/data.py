"""Commands for a person's data: log, exports and reports."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click
from click.core import ParameterSource

from companion.cli.common import as_option, database_option, fail, number_option, person_in, reading
from companion.export.registry import FORMATS, ExportSource, help_text

if TYPE_CHECKING:
    from companion.base.settings import Settings

OUTCOMES, CASELOAD = "outcomes", "caseload"
"""Given as the person, it exports outcomes, or what a coach reads of all together; somebody of that name has a number."""


@click.command()
@database_option
@as_option
@number_option
@click.option("--json", "as_json", is_flag=True, help="JSON Lines instead of a table.")
@click.pass_obj
def log(settings: Settings, database: Path | None, name: str, number: int | None, as_json: bool) -> None:
    """Show a person's answer log: every answer, with the row it replaced."""
    from companion.record.log_text import as_lines, as_table

    if number is not None and click.get_current_context().get_parameter_source("name") is ParameterSource.COMMANDLINE:
        fail("say whose log: `companion log --as PERSON`, or `companion log --number NUMBER`")
    db = reading(settings, database)
    click.echo((as_lines if as_json else as_table)(db, person_in(db, name, number)), nl=False)


@click.command(help=f"Write a PERSON's data to a file; or `outcomes`: what came of rulings, of all who let it be counted; or `caseload`: "
                    f"what a coach reads of all their lifters together.\n\n\b\n"
                    f"Formats of a person's data:\n{help_text()}")
@click.argument("person", required=False)
@number_option
@click.option("--format", "form", type=click.Choice(tuple(FORMATS)), default="csv", show_default=True)
@click.option("--coach", "whose", help="With `caseload`: the coach with this name or number, instead of all lifters.")
@click.option("--out", type=click.Path(dir_okay=False, path_type=Path), help="The file to write, instead of standard output.")
@database_option
@click.pass_obj
def export(settings: Settings, database: Path | None, person: str | None, number: int | None, form: str, whose: str | None,
           out: Path | None) -> None:
    """Write a person's data in a format of the registry."""
    from companion.base.clock import SystemClock
    from companion.base.private import private_file
    from companion.cli.coach import coach_named
    from companion.coach.seen import seen_by, seen_of
    from companion.export.outcomes import as_outcomes_csv
    from companion.export.table import seen_csv
    from companion.record.context import known_of
    from companion.record.outcomes import shared_logs
    from companion.screening.outcomes import outcomes_of
    from flows.catalogue import BOOK

    if (person is None) == (number is None) or (whose is not None and person != CASELOAD):
        fail("say whose data: `companion export PERSON`, or `companion export --number NUMBER`")
    db, now = reading(settings, database), SystemClock().now()
    if person == OUTCOMES:
        made = as_outcomes_csv(outcomes_of(*shared) for shared in shared_logs(db))
    elif person == CASELOAD:
        made = seen_csv(seen_by(db, coach_named(db, whose)[0] if whose is not None else None, now))
    else:
        number = person_in(db, person or "", number)
        made = FORMATS[form].made(ExportSource(db, number, now, known_of(db, number, now).facts, BOOK, seen_of))
    content = made.encode()  # bytes: CRLF stays CRLF
    if out is None:
        sys.stdout.buffer.write(content)
        return
    try:
        private_file(out)
        if out.is_file():  # an existing file may be readable by others
            out.chmod(0o600)
        out.write_bytes(content)
    except OSError as error:
        fail(f"can't write {out}: {error.strerror or error}")
    click.echo(out)


@click.command()
@database_option
@click.pass_obj
def evidence(settings: Settings, database: Path | None) -> None:
    """Show how often a ruling held: for each evidence row, of those who agreed to be counted."""
    from companion.record.outcomes import shared_logs
    from companion.screening.outcomes import OUTCOMES_ENOUGH, interval, outcomes_of, tallies

    logs = list(shared_logs(reading(settings, database)))
    outcomes = [one for shared in logs for one in outcomes_of(*shared)]
    who = "1 lifter lets" if len(logs) == 1 else f"{len(logs)} lifters let"
    click.echo(f"{who} outcomes be counted. Rulings with a later look at the squat: {len(outcomes)}, with the drill done in between: "
               f"{sum(one.tried for one in outcomes)}.")
    for one in tallies(outcomes):
        low, high = interval(one.followed, one.of)
        click.echo(f"{one.row}: {one.words}. Rounds deeper afterwards: {one.followed} of {one.of}"
                   + (f", {one.followed / one.of:.0%} (95 %: {low:.0%} to {high:.0%})." if one.enough
                      else f", too few to say (under {OUTCOMES_ENOUGH})."))
    click.echo("Nobody was left without a drill to compare with, so this shows no cause, and it changes no weight.")


@click.command()
@click.argument("person", required=False)
@number_option
@click.option("--caseload", is_flag=True, help="A whole caseload instead of one lifter.")
@click.option("--coach", "whose", help="With --caseload: only the lifters of the coach with this name or number.")
@click.option("--log", "with_log", is_flag=True, help="With every answer of the PERSON, the newest first.")
@click.option("--only", metavar="PART", default="", help="With --log, a part of it: corrections, a test's name, or a day as 2026-03-10.")
@click.option("--pdf", "as_pdf", is_flag=True, help="A PDF, printed by the installed Chromium.")
@click.option("--paper", type=click.Choice(("A4", "letter")), default="A4", show_default=True, help="With --pdf.")
@click.option("--out", type=click.Path(dir_okay=False, path_type=Path), help="The file to write; else report-… here.")
@click.option("--all", "folder", type=click.Path(file_okay=False, path_type=Path),
              help="Write a caseload and the report of each lifter in it to this folder, linked.")
@database_option
@click.pass_obj
def report(settings: Settings, database: Path | None, person: str | None, number: int | None, caseload: bool, whose: str | None,
           with_log: bool, only: str, as_pdf: bool, paper: Literal["A4", "letter"], out: Path | None, folder: Path | None) -> None:
    """Write the report of a PERSON, or of a whole caseload, as one page to open in a browser or to print."""
    from companion.base.clock import SystemClock
    from companion.base.private import private_folder
    from companion.cli.coach import coach_named
    from companion.coach.caseload_page import caseload_html
    from companion.coach.log_filter import log_filter
    from companion.coach.report import report_html
    from companion.export.pdf import NoPdf, write_pdf, write_private
    from companion.record.caseload import all_caseload_rows, caseload_rows
    from flows.catalogue import BOOK

    if only and not (with_log and log_filter(only, "UTC", BOOK)[1]):
        fail("--only goes with --log, and names “corrections”, a test such as “knee to wall”, or a day such as 2026-03-10")
    if folder is not None:
        if person or number is not None or caseload or as_pdf or out:
            fail("--all goes with --coach and --log only")
        db, now = reading(settings, database), SystemClock().now()
        coach = coach_named(db, whose)[0] if whose is not None else None
        rows = caseload_rows(db, coach) if coach is not None else all_caseload_rows(db)
        names = {one.person: f"report-{one.person}.html" for one in rows}
        try:
            private_folder(folder)
            for one, file in names.items():
                write_private(folder / file, report_html(db, one, now, BOOK, with_log=with_log, only=only).encode())
            write_private(folder / "caseload.html", caseload_html(db, coach, now, names).encode())
        except OSError as error:
            fail(f"can't write to {folder}: {error.strerror or error}")
        click.echo(folder / "caseload.html")
        return
    if caseload + bool(person) + (number is not None) != 1 or (whose and not caseload):
        fail("say whose report: `companion report PERSON`, `companion report --number NUMBER`, "
             "or `companion report --caseload [--coach NAME]`")
    db, now = reading(settings, database), SystemClock().now()
    if not caseload:
        number = person_in(db, person or "", number)
        page, name = report_html(db, number, now, BOOK, with_log=with_log, only=only), f"report-{number}"
    else:
        page, name = caseload_html(db, coach_named(db, whose)[0] if whose is not None else None, now), "report-caseload"
    out = out or Path(f"{name}.{'pdf' if as_pdf else 'html'}")
    try:
        if as_pdf:
            write_pdf(page, out, paper=paper)
        else:
            write_private(out, page.encode())
    except NoPdf as error:
        fail(str(error))
    except OSError as error:
        fail(f"can't write {out}: {error.strerror or error}")
    click.echo(out)
