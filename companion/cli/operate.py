"""Commands for operating the bot: health, backups and restoring one."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from companion.cli.common import database_option, fail

if TYPE_CHECKING:
    from companion.base.settings import Settings


@click.command()
@database_option
@click.pass_obj
def doctor(settings: Settings, database: Path | None) -> None:
    """Check the bot, running or not, and say what to do; exit code 0 fine, 1 something to look at, 2 broken."""
    from companion.base.clock import SystemClock
    from companion.operate.doctor import examine, exit_code, result_line

    path = database or settings.database
    findings = examine(settings, path, settings.backup_folder(path), SystemClock().now())
    for finding in findings:
        click.echo(result_line(finding))
    raise SystemExit(exit_code(findings))


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@database_option
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


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@database_option
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
        click.echo(f"{done.waiting} messages that were unsent at the time of the backup will be sent at the next start")
    if done.erased:
        click.echo(f"{done.erased} people were erased after this backup and are in the file again: make sure they are erased")
