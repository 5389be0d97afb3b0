"""Commands for films that measure: the cards to print, and a film read here."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import click

from companion.cli.common import fail


@click.command()
@click.option("--paper", type=click.Choice(("A4", "letter")), default="A4", show_default=True)
@click.option("--out", type=click.Path(dir_okay=False, path_type=Path), default=Path("cards.pdf"), show_default=True,
              help="The file to write.")
def cards(paper: Literal["A4", "letter"], out: Path) -> None:
    """Write the cards to print for a film that measures: three pages, with where each goes and how to tape it."""
    from companion.film.sheet import cards_pdf

    try:
        out.write_text(cards_pdf(paper), "ascii")
    except OSError as error:
        fail(f"can't write {out}: {error.strerror or error}")
    click.echo(out)


@click.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--check", is_flag=True, help="Every angle, and what the decoder saw of each card.")
@click.option("--show", type=click.Path(file_okay=False, path_type=Path), help="A folder for the frame of the onset and a clip, "
              "cards outlined.")
@click.option("--test", "move", type=click.Choice(("shin", "leg", "fold", "trunk")), help="A film of this test, or a photo; not of squats.")
def film(file: Path, check: bool, show: Path | None, move: Literal["shin", "leg", "fold", "trunk"] | None) -> None:
    """Read a film of squats with cards: the depth at which the lower back begins to round, in degrees of the thigh."""
    from companion.film.footage import Unreadable
    from companion.film.measure import measured
    from companion.film.moves import moved
    from companion.film.reader import read_film
    from companion.film.shown import shown
    from companion.film.words import angle_lines, move_lines, result_lines, seen_lines, to_mend, turn_lines

    try:
        footage = read_film(file)
        if check:
            click.echo("\n".join((*seen_lines(footage), *turn_lines(footage))))
        if move is not None:
            click.echo("\n".join(move_lines(moved(footage, move))))
            return
        if check and (mend := to_mend(footage)):
            click.echo(mend)
        found = measured(footage)
    except Unreadable as error:
        fail(str(error))
    if check:
        click.echo("\n".join(angle_lines(found)))
    click.echo("\n".join(result_lines(found)))
    if show:
        show.mkdir(parents=True, exist_ok=True)
        for name, data in shown(file, footage, found).items():
            (show / name).write_bytes(data)
            click.echo(show / name)
