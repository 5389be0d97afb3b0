"""Commands for the flows, checked and drawn, and for the pictures."""

from __future__ import annotations

import gc
import re
import sys
from itertools import product
from pathlib import Path
from typing import Final

import click

from companion.cli.common import fail

PICTURE_FIELDS: Final = {"odd": ("left", "right"), "other": ("left", "right"),
                         "placement": ("below_knee", "mid_shin", ""), "placed": ("shin", "thigh"), "effort": ("own", "strap", ""),
                         "seen_by": ("film", "mirror")}
"""What may stand in a picture's name; "" where a question was skipped. Besides: names of exercises, and of changes of the squat."""


@click.command()
@click.argument("name", required=False)
@click.option("--draw", is_flag=True, help="Print the flow as a Mermaid drawing.")
def flows(name: str | None, draw: bool) -> None:
    """List the flows and check them; with a NAME, show or draw one; `flows draw` writes every drawing beside its flow."""
    from companion.verify.draw import mermaid, outline
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
    found = 0
    for compiled, (arrows, wrong) in zip(BOOK.flows.values(), _looked_at(list(BOOK.flows)), strict=True):
        found += len(wrong)
        click.echo(f"{compiled.flow.name:20} {compiled.flow.title:24} {len(compiled.stops):3} states "
                   f"{arrows:4} arrows  {'; '.join(wrong) or 'sound'}")
    if found:
        fail(f"{found} faults", 1)


def _looked_at(names: list[str]) -> list[tuple[int, list[str]]]:
    """Return how many arrows each flow has, and its faults; on all cores where processes can be forked, as none waits for another."""
    if sys.platform != "linux":
        return [_look_at(name) for name in names]
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import get_context

    from flows.catalogue import BOOK

    with ProcessPoolExecutor(mp_context=get_context("fork"), initializer=gc.disable) as pool:  # they end in two seconds
        running = {name: pool.submit(_look_at, name) for name in sorted(names, key=lambda name: -len(BOOK[name].flow.steps))}
        return [running[name].result() for name in names]


def _look_at(name: str) -> tuple[int, list[str]]:
    from companion.base.clock import SystemClock
    from companion.conversation.flow import Known
    from companion.verify.check import faults
    from companion.verify.domains import Ways
    from companion.verify.proof import prove
    from flows.catalogue import BOOK

    now = SystemClock().now()
    ways = Ways(BOOK, BOOK[name], Known({"today": now.date().isoformat()}, now))
    return len(BOOK[name].arrows), list(faults(ways, prove(ways)))


def picture_uses() -> dict[str, list[str]]:
    """Return the name of every drawing that a step sends or shares, with those steps, as "flow.key"."""
    from companion.conversation.flow import Ask, Tell
    from companion.pictures.drawing import slug
    from companion.pictures.poses import SHARED
    from companion.record.picture_files import FILM_KEPT
    from companion.screening.drills import DRILLS
    from companion.screening.setups import CHANGES
    from flows.catalogue import BOOK

    sent = [(step.picture, f"{name}.{step.key}" if isinstance(step, Ask) else name)
            for name, compiled in BOOK.flows.items() for step in compiled.flow.steps if isinstance(step, Ask | Tell) and step.picture]
    exercises = tuple(one.name for drill in DRILLS for one in (drill.prime, drill.easier, drill.home, drill.unstretched) if one)
    uses: dict[str, list[str]] = {}
    for picture, where in dict.fromkeys((*sent, *((picture, f"{where} (shared)") for where, picture in SHARED.items()))):
        fields = re.findall(r"\{(\w+)\}", picture)
        for values in product(*(PICTURE_FIELDS.get(field, exercises if field.endswith("name") else tuple(CHANGES)) for field in fields)):
            name = slug(picture.format_map(dict(zip(fields, values, strict=True))))
            if not name.startswith(("chart_", "your_squat")) and name not in FILM_KEPT:
                uses.setdefault(name, []).append(where)
    return uses


@click.command()
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
def pictures(folder: Path) -> None:
    """Write every picture into a FOLDER, with index.html to look at them at a phone's width."""
    from companion.pictures.contact_sheet import write_sheet

    try:
        click.echo(f"{write_sheet(folder, picture_uses())} pictures in {folder}; open {folder / 'index.html'}")
    except OSError as error:
        fail(f"can't write the pictures: {error}")
