"""The command line. Each command imports what it needs only when it runs, so that help comes at once."""

from __future__ import annotations

import asyncio
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from companion.settings import BadSettings, Settings, read_settings

if TYPE_CHECKING:
    from companion.app import Companion


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
    from companion.app import Companion
    from companion.clock import SystemClock
    from companion.record.file import AlreadyRunning, CannotOpen

    try:
        return Companion(database or settings.database, SystemClock(), **more)  # type: ignore[arg-type]
    except (AlreadyRunning, CannotOpen) as error:
        fail(str(error))


@main.command()
@_database
@_as
@click.pass_obj
def chat(settings: Settings, database: Path | None, name: str) -> None:
    """Talk to the companion here, without any account or network.

    Numbers pick an answer, words work too. Starting again goes on where you stopped. With piped input it reads one
    reply a line and prints plain text.
    """
    from companion.record.writer import CommitFailed
    from companion.running import chat_here

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
    from companion.channels.telegram import SecondInstance, WrongToken
    from companion.logs import set_up_logging
    from companion.record.writer import CommitFailed
    from companion.running import run_on_telegram

    set_up_logging("INFO")
    companion = _open(settings, database)
    try:
        asyncio.run(run_on_telegram(companion, settings.token, settings.api_url))
    except WrongToken:
        fail("Telegram does not accept this token: check COMPANION_TOKEN")
    except SecondInstance:
        fail("another program is already receiving this bot's messages: stop it first")
    except CommitFailed as error:
        fail(str(error))
    finally:
        companion.close()


@main.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--fast", is_flag=True, help="All at once instead of at reading speed.")
@click.option("--accept", is_flag=True, help="Write what the bot says now into the file.")
def play(file: Path, fast: bool, accept: bool) -> None:
    """Play a conversation from demo_scripts/, on a file that is thrown away afterwards."""
    from companion.running import play_here

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
    from companion.clock import SystemClock
    from companion.conversation.check import faults
    from companion.conversation.domains import Ways
    from companion.conversation.draw import mermaid, outline
    from companion.conversation.flow import Known
    from companion.conversation.proof import prove
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
    from companion.record import people
    from companion.record.file import CannotOpen, open_for_reading
    from companion.record.shown import as_lines, as_table

    try:
        db = open_for_reading(database or settings.database)
    except CannotOpen as error:
        fail(str(error))
    person = people.person_named(db.conn, name)
    if person is None:
        known = ", ".join(people.names(db.conn)) or "nobody yet"
        fail(f"nobody called {name} here (there is: {known})")
    click.echo((as_lines if as_json else as_table)(db.conn, person), nl=False)


@main.command()
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
def pictures(folder: Path) -> None:
    """Write every picture into a FOLDER, with index.html to look at them at a phone's width."""
    from companion.pictures.sheet import write_sheet

    try:
        click.echo(f"{write_sheet(folder)} pictures in {folder}; open {folder / 'index.html'}")
    except OSError as error:
        fail(f"can't write the pictures: {error}")
