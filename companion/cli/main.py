"""The command line: settings and commands. Each command imports what it needs when it runs, so that help is fast."""

from __future__ import annotations

import os
from pathlib import Path

import click

from companion.base.settings import BadSettings, read_settings
from companion.cli.catalogue import flows, pictures
from companion.cli.chat import chat, play, run
from companion.cli.coach import coach
from companion.cli.common import fail
from companion.cli.data import evidence, export, log, report
from companion.cli.film import cards, film
from companion.cli.operate import backup, doctor, restore


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
      COMPANION_KEEP_MONTHS  after how many months old answers are removed; usually never
      COMPANION_METRICS_PORT  where /healthz and /metrics are served on loopback
    """
    try:
        context.obj = read_settings(os.environ, file)
    except BadSettings as error:
        fail(str(error))


for command in (chat, run, play, flows, log, export, evidence, report, coach, pictures, cards, film, doctor, backup, restore):
    main.add_command(command)
