"""The command line. Each command imports what it needs only when it runs, so that help comes at once."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Literal, NoReturn

import click

from companion.app.preload import load_all
from companion.base.loading import loading
from companion.base.settings import BadSettings, Settings, read_settings

if TYPE_CHECKING:
    import sqlite3

    from companion.app.service import Companion
    from companion.record.operator_requests import Request


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.option("--settings", "file", type=click.Path(path_type=Path), help="A TOML file with the settings below.")
@click.pass_context
def main(context: click.Context, file: Path | None) -> None:
    """A text-message companion for people who squat with a barbell.

    It leads a lifter through a safety check and a handful of floor and wall tests, says what may be behind a rounding
    lower back, suggests a light drill, and reminds them to test again. It does not diagnose.

    \b
    Settings, from the environment or a TOML file (companion.toml here, or --settings):
      COMPANION_TOKEN     the Telegram bot's token, for `companion run`
      COMPANION_DATABASE  the file everything is kept in
      COMPANION_API_URL   the Bot API address without /bot, for a server of your own
      COMPANION_BACKUPS   the folder of daily backups, or none; usually beside the database
      COMPANION_KEEP_MONTHS  after how many months answers are thinned; usually never
      COMPANION_METRICS_PORT  where /healthz and /metrics are served on loopback
    """
    try:
        context.obj = read_settings(os.environ, file)
    except BadSettings as error:
        fail(str(error))


def fail(line: str, code: int = 2) -> NoReturn:
    """One clear line, and out."""
    click.echo(f"companion: {line}", err=True)
    raise SystemExit(code)


_database = click.option("--database", type=click.Path(path_type=Path), help="The file to use, instead of the setting.")
_as = click.option("--as", "name", default="me", show_default=True, help="Whose conversation it is.")


def _open(settings: Settings, database: Path | None, **more: object) -> Companion:
    from companion.app.service import Companion
    from companion.base.clock import SystemClock
    from companion.record.file import AlreadyRunning, CannotOpen

    os.umask(0o077)  # pictures and whatever else is written beside it are nobody else's either
    try:
        companion = Companion(database or settings.database, SystemClock(), **more)  # type: ignore[arg-type]
    except (AlreadyRunning, CannotOpen) as error:
        fail(str(error))
    companion.keep_months = settings.keep_months
    return companion


@main.command()
@_database
@_as
@click.pass_obj
def chat(settings: Settings, database: Path | None, name: str) -> None:
    """Talk to the companion here, without any account or network.

    Numbers pick an answer, words work too. Starting again goes on where you stopped. With piped input it reads one
    reply a line and prints plain text.
    """
    with loading():
        import asyncio

        from companion.app.run import chat_here
        from companion.base.logs import set_up_logging
        from companion.record.writer import CommitFailed

    set_up_logging("WARNING")
    woken = asyncio.Event()
    companion = _open(settings, database, on_commit=lambda channel: woken.set())
    try:
        asyncio.run(chat_here(companion, name, woken))
    except CommitFailed as error:
        fail(str(error))
    finally:
        companion.close()


@main.command()
@_database
@click.pass_obj
def run(settings: Settings, database: Path | None) -> None:
    """Run the bot on Telegram until it is stopped."""
    if not settings.token:
        fail("no token: set COMPANION_TOKEN to the token of your Telegram bot")
    with loading():
        import asyncio

        from companion.app.run import run_on_telegram
        from companion.base.logs import set_up_logging
        from companion.channels.telegram import CannotHook, SecondInstance, WrongToken
        from companion.operate.http import CannotListen
        from companion.record.writer import CommitFailed

    load_all()
    set_up_logging("INFO")
    companion = _open(settings, database)
    try:
        asyncio.run(run_on_telegram(companion, settings.token, settings.api_url, settings.backup_folder(companion.path),
                                    settings.metrics_port, settings.webhook))
    except WrongToken:
        fail("Telegram does not accept this token: check COMPANION_TOKEN")
    except SecondInstance:
        fail("another program is already receiving this bot's messages: stop it first")
    except (CommitFailed, CannotListen, CannotHook) as error:
        fail(str(error))
    finally:
        companion.close()


@main.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--fast", is_flag=True, help="All at once instead of at reading speed.")
@click.option("--accept", is_flag=True, help="Write what the bot says now into the file.")
def play(file: Path, fast: bool, accept: bool) -> None:
    """Play a conversation from demo_scripts/, on a file that is thrown away afterwards."""
    import asyncio

    from companion.cli.play import play_here

    pace = 0.0 if fast or accept or not sys.stdout.isatty() else 1.0
    try:
        differing = asyncio.run(play_here(file, click.echo, pace, accept))
    except ValueError as error:
        fail(str(error))
    if differing and not accept:
        fail(f"{differing} of the bot's messages differ from the file; --accept writes them into it", 1)


@main.command()
@click.argument("name", required=False)
@click.option("--draw", is_flag=True, help="Print the flow as a Mermaid drawing.")
def flows(name: str | None, draw: bool) -> None:
    """List the flows and check them; with a NAME, show or draw one; `flows draw` writes every drawing beside its flow."""
    from companion.base.clock import SystemClock
    from companion.conversation.flow import Known
    from companion.verify.check import faults
    from companion.verify.domains import Ways
    from companion.verify.draw import mermaid, outline
    from companion.verify.proof import prove
    from flows import catalogue
    from flows.catalogue import BOOK

    if name == "draw":
        for compiled in BOOK.flows.values():
            try:
                Path(catalogue.__file__).with_name(f"{compiled.flow.name}.mmd").write_text(mermaid(compiled), encoding="utf-8")
            except OSError as error:
                fail(f"can't write the drawing: {error}")
        click.echo(f"{len(BOOK.flows)} drawings written beside the flows")
        return
    if name is not None:
        if name not in BOOK.flows:
            fail(f"there is no flow called {name}; `companion flows` lists them")
        click.echo(mermaid(BOOK[name]) if draw else outline(BOOK[name]))
        return
    try:
        _ = BOOK.commands
    except ValueError as error:
        fail(str(error), 1)
    found, now = 0, SystemClock().now()
    for compiled in BOOK.flows.values():
        ways = Ways(BOOK, compiled, Known({"today": now.date().isoformat()}, now))
        wrong = faults(ways, prove(ways))
        found += len(wrong)
        click.echo(f"{compiled.flow.name:20} {compiled.flow.title:24} {len(compiled.stops):3} states "
                   f"{len(compiled.arrows):4} arrows  {'; '.join(wrong) or 'sound'}")
    if found:
        fail(f"{found} faults", 1)


@main.command()
@_database
@_as
@click.option("--json", "as_json", is_flag=True, help="JSON Lines instead of a table.")
@click.pass_obj
def log(settings: Settings, database: Path | None, name: str, as_json: bool) -> None:
    """Show a person's answer log: every answer, with what it replaced."""
    from companion.record.log_text import as_lines, as_table

    db, person = _person(settings, database, name)
    click.echo((as_lines if as_json else as_table)(db, person), nl=False)


@main.command()
@click.argument("person")
@click.option("--format", "form", type=click.Choice(("csv", "jsonl", "fhir", "ics")), default="csv", show_default=True)
@click.option("--out", type=click.Path(dir_okay=False, path_type=Path), help="The file to write, instead of standard output.")
@_database
@click.pass_obj
def export(settings: Settings, database: Path | None, person: str, form: str, out: Path | None) -> None:
    """Write a PERSON's answers: a table, JSON Lines, a FHIR R5 bundle, or their squat days as a calendar."""
    from companion.base.clock import SystemClock
    from companion.base.private import private_file
    from companion.calendar.preferences import zone_from
    from companion.export.calendar_file import calendar_file
    from companion.export.fhir.bundle import as_fhir
    from companion.export.table import as_csv, as_json_lines
    from companion.record.context import known_of
    from companion.record.log import answers_of
    from flows.catalogue import BOOK

    db, number = _person(settings, database, person)
    now = SystemClock().now()
    zone = zone_from(known_of(db, number, now).facts, now)
    match form:
        case "csv":
            text = as_csv(answers_of(db, number), BOOK, zone)
        case "jsonl":
            text = as_json_lines(answers_of(db, number), BOOK, zone)
        case "fhir":
            text = as_fhir(number, answers_of(db, number), BOOK)
        case _:
            text = calendar_file(db, number, now).text
    content = text.encode()  # bytes: CRLF stays CRLF
    if out is None:
        sys.stdout.buffer.write(content)
        return
    try:
        private_file(out)
        if out.is_file():  # one that was there may be open to others
            out.chmod(0o600)
        out.write_bytes(content)
    except OSError as error:
        fail(f"can't write {out}: {error.strerror or error}")
    click.echo(out)


def _person(settings: Settings, database: Path | None, name: str) -> tuple[sqlite3.Connection, int]:
    """The database, read-only, and a person's number in it."""
    from companion.record import people
    from companion.record.file import CannotOpen, open_for_reading
    from companion.record.log_text import harmless

    try:
        db = open_for_reading(database or settings.database).conn
    except CannotOpen as error:
        fail(str(error))
    person = people.person_named(db, name)
    if person is None:  # people name themselves
        fail(f"nobody called {name} here (there is: {harmless(', '.join(people.names(db)), 300) or 'nobody yet'})")
    return db, person


@main.command()
@click.argument("person", required=False)
@click.option("--caseload", is_flag=True, help="A whole group instead of one lifter.")
@click.option("--coach", "whose", help="With --caseload: only the lifters of the coach called so, or of that number.")
@click.option("--pdf", "as_pdf", is_flag=True, help="A PDF, printed by the Chromium that is here.")
@click.option("--paper", type=click.Choice(("A4", "letter")), default="A4", show_default=True, help="With --pdf.")
@click.option("--out", type=click.Path(dir_okay=False, path_type=Path), help="The file to write; else report-… here.")
@_database
@click.pass_obj
def report(settings: Settings, database: Path | None, person: str | None, caseload: bool, whose: str | None, as_pdf: bool,
           paper: Literal["A4", "letter"], out: Path | None) -> None:
    """Write the report of a PERSON, or of a whole caseload, as one page to open in a browser or to print."""
    from companion.base.clock import SystemClock
    from companion.coach.caseload_page import caseload_html
    from companion.coach.report import report_html
    from companion.export.pdf import NoPdf, write_pdf, write_private
    from companion.record.file import CannotOpen, open_for_reading
    from flows.catalogue import BOOK

    if caseload == bool(person) or (whose and not caseload):
        fail("say whose report: `companion report PERSON`, or `companion report --caseload [--coach NAME]`")
    now = SystemClock().now()
    if person:
        db, number = _person(settings, database, person)
        page, name = report_html(db, number, now, BOOK), f"report-{number}"
    else:
        try:
            db = open_for_reading(database or settings.database).conn
        except CannotOpen as error:
            fail(str(error))
        page, name = caseload_html(db, _the_coach(db, whose)[0] if whose is not None else None, now), "report-caseload"
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


@main.group()
def coach() -> None:
    """Coaches: make one, list them, end one."""


@coach.command("add")
@click.argument("name")
@_database
@click.pass_obj
def coach_add(settings: Settings, database: Path | None, name: str) -> None:
    """Make a code, good once and for seven days, with which somebody becomes the coach called NAME."""
    from companion.record import coaching, status
    from companion.record.file import open_for_reading
    from companion.record.operator_requests import Request

    code = coaching.new_code()
    there = _ask(settings, database, Request("invite", name, coaching.hashed(code)))
    db = open_for_reading(database or settings.database)
    bot = status.noted(db.conn, "bot.name")
    click.echo(f"code for {name}: {coaching.spaced(code)}")
    click.echo(f"link: https://t.me/{bot[0]}?start={code}" if bot else f"send it to the bot as: code {code}")
    click.echo("It works once, for seven days, and is not kept anywhere but here."
               + ("" if there else " The companion that is running takes it up within half a minute."))


@coach.command("list")
@_database
@click.pass_obj
def coach_list(settings: Settings, database: Path | None) -> None:
    """Every coach, with their number and how many lifters they see."""
    from companion.record import coaching
    from companion.record.file import CannotOpen, open_for_reading

    try:
        db = open_for_reading(database or settings.database).conn
    except CannotOpen as error:
        fail(str(error))
    for number, name, lifters in coaching.coaches_with_lifters(db):
        click.echo(f"{number} {name}: {lifters} {'lifter' if lifters == 1 else 'lifters'}")


@coach.command("end")
@click.argument("name")
@_database
@click.pass_obj
def coach_end(settings: Settings, database: Path | None, name: str) -> None:
    """End the role of the coach called NAME, or of that number: from now on they see nobody."""
    from companion.record.file import CannotOpen, open_for_reading
    from companion.record.operator_requests import Request

    try:
        db = open_for_reading(database or settings.database).conn
    except CannotOpen as error:
        fail(str(error))
    number, name = _the_coach(db, name)
    done = _ask(settings, database, Request("end", name, person=number))
    click.echo(f"{name} is no coach any more" if done else f"{name} is no coach any more within half a minute")


def _the_coach(db: sqlite3.Connection, wanted: str) -> tuple[int, str]:
    """The one coach whose name or number is wanted; ends the command where there is none, or more than one."""
    from companion.record import coaching

    there = coaching.coaches_with_lifters(db)
    found = [one for one in there if wanted in (one[1], str(one[0]))]
    if not found:
        fail(f"there is no coach called {wanted} (there is: {', '.join(name for _, name, _ in there) or 'nobody yet'})")
    if len(found) > 1:
        fail(f"{wanted} may be several coaches; say which by the number: "
             + ", ".join(f"{number} ({name}, {lifters} {'lifter' if lifters == 1 else 'lifters'})" for number, name, lifters in found))
    return found[0][:2]


def _ask(settings: Settings, database: Path | None, request: Request) -> bool:
    """Have a request carried out, here or by the companion that is running; False where it waits for that."""
    from companion.base.clock import SystemClock
    from companion.record.file import CannotOpen
    from companion.record.operator_requests import ask

    try:
        return ask(database or settings.database, request, SystemClock().now())
    except CannotOpen as error:
        fail(str(error))
    except OSError as error:
        fail(f"can't leave the request: {error.strerror or error}")


@main.command()
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
def pictures(folder: Path) -> None:
    """Write every picture into a FOLDER, with index.html to look at them at a phone's width."""
    from companion.pictures.contact_sheet import write_sheet

    try:
        click.echo(f"{write_sheet(folder)} pictures in {folder}; open {folder / 'index.html'}")
    except OSError as error:
        fail(f"can't write the pictures: {error}")


@main.command()
@_database
@click.pass_obj
def doctor(settings: Settings, database: Path | None) -> None:
    """Say how the bot is, running or not, and what to do; exit code 0 fine, 1 something to look at, 2 broken."""
    from companion.base.clock import SystemClock
    from companion.operate.doctor import examine, exit_code, result_line

    path = database or settings.database
    findings = examine(settings, path, settings.backup_folder(path), SystemClock().now())
    for finding in findings:
        click.echo(result_line(finding))
    raise SystemExit(exit_code(findings))


@main.command()
@click.argument("file", type=click.Path(path_type=Path))
@_database
@click.option("--replace", is_flag=True, help="Write over FILE where it is there already.")
@click.pass_obj
def backup(settings: Settings, file: Path, database: Path | None, replace: bool) -> None:
    """Write a checked copy of the database to FILE, also while the bot runs."""
    from companion.operate.backup import BackupFailed, back_up
    from companion.operate.integrity import megabytes

    if file.exists() and not replace and sys.stdin.isatty():
        replace = click.confirm(f"{file} is there already. Write over it?")
    try:
        made = back_up(database or settings.database, file, replace)
    except BackupFailed as error:
        fail(str(error))
    click.echo(f"{made.path}: {sum(made.counts.values())} rows, {megabytes(made.size)}, checked")


@main.command()
@click.argument("file", type=click.Path(path_type=Path))
@_database
@click.option("--yes", is_flag=True, help="Do not ask.")
@click.pass_obj
def restore(settings: Settings, file: Path, database: Path | None, yes: bool) -> None:
    """Put a backup in the place of the database, after checking it; the old file is kept beside it."""
    from companion.base.clock import SystemClock
    from companion.operate.restore import CannotRestore
    from companion.operate.restore import restore as bring_back
    from companion.record.file import AlreadyRunning

    path = database or settings.database
    if not yes and not (sys.stdin.isatty() and click.confirm(f"Put {file} in the place of {path}?")):
        fail("nothing was changed; --yes restores without asking")
    try:
        done = bring_back(file, path, SystemClock().now())
    except (CannotRestore, AlreadyRunning) as error:
        fail(str(error))
    click.echo(f"restored {path}: {sum(done.counts.values())} rows; the old file is {done.kept or 'none'}")
    if done.waiting:
        click.echo(f"{done.waiting} messages that had not left at the time of the backup will leave at the next start")
    if done.erased:
        click.echo(f"{done.erased} people had themselves erased after this backup and are in it again: see that they are erased")
