"""Commands for the flows, checked and drawn, and for the pictures."""

from __future__ import annotations

from pathlib import Path

import click

from companion.cli.common import fail


@click.command()
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


@click.command()
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
def pictures(folder: Path) -> None:
    """Write every picture into a FOLDER, with index.html to look at them at a phone's width."""
    from companion.pictures.contact_sheet import write_sheet

    try:
        click.echo(f"{write_sheet(folder)} pictures in {folder}; open {folder / 'index.html'}")
    except OSError as error:
        fail(f"can't write the pictures: {error}")
