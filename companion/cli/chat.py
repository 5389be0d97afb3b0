"""Commands for conversations: at this terminal, on Telegram, and played from a script."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from companion.base.loading import loading
from companion.cli.common import as_option, database_option, fail, refuse_number

if TYPE_CHECKING:
    from companion.app.service import Companion
    from companion.base.settings import Settings


def _open(settings: Settings, database: Path | None, **more: object) -> Companion:
    from companion.app.service import Companion
    from companion.base.clock import SystemClock
    from companion.record.file import AlreadyRunning, CannotOpen

    os.umask(0o077)  # pictures and other files beside the database are private too
    try:
        companion = Companion(database or settings.database, SystemClock(), **more)  # type: ignore[arg-type]
    except (AlreadyRunning, CannotOpen) as error:
        fail(str(error))
    companion.keep_months = settings.keep_months
    return companion


@click.command()
@database_option
@as_option
@click.pass_obj
def chat(settings: Settings, database: Path | None, name: str) -> None:
    """Talk to the companion here, without any account or network.

    Numbers pick an answer, words work too. Starting again goes on where you stopped. With piped input it reads one
    reply a line and prints plain text.
    """
    refuse_number(name)
    with loading():
        import asyncio

        from tzlocal import get_localzone_name

        from companion.app.run import chat_here
        from companion.base.logs import set_up_logging
        from companion.record.writer import CommitFailed

    set_up_logging("WARNING")
    woken = asyncio.Event()
    companion = _open(settings, database, on_commit=lambda channel: woken.set())
    companion.here = get_localzone_name()
    try:
        asyncio.run(chat_here(companion, name, woken))
    except CommitFailed as error:
        fail(str(error))
    finally:
        companion.close()


@click.command()
@database_option
@click.pass_obj
def run(settings: Settings, database: Path | None) -> None:
    """Run the bot on Telegram until it is stopped."""
    if not settings.token:
        fail("no token: set COMPANION_TOKEN to the token of your Telegram bot")
    with loading():
        import asyncio

        from companion.app.preload import load_all
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


@click.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--fast", is_flag=True, help="All at once instead of at reading speed.")
@click.option("--accept", is_flag=True, help="Write what the bot says now into the file.")
def play(file: Path, fast: bool, accept: bool) -> None:
    """Play a conversation from demo_scripts/, on a throw-away database."""
    import asyncio

    from companion.cli.play import play_here

    pace = 0.0 if fast or accept or not sys.stdout.isatty() else 1.0
    try:
        differing = asyncio.run(play_here(file, click.echo, pace, accept))
    except ValueError as error:
        fail(str(error))
    if differing and not accept:
        fail(f"{differing} of the bot's messages differ from the file; --accept writes them into it", 1)
