"""Pictures drawn in the terminal itself, by sixels or the terminal graphics protocol, with textual-image.

The terminal is queried once, before the first prompt; it answers on standard input, so nothing else may read that meanwhile. What it
answers too late is thrown away, or taken out of the line that was typed (``terminal.Display.event``). A terminal without either protocol
still gets the picture's words and path.
"""

from __future__ import annotations

import logging
import sys
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Final, TextIO

if TYPE_CHECKING:
    from textual_image.renderable.sixel import Image as Sixel
    from textual_image.renderable.tgp import Image as Graphics

_log = logging.getLogger(__name__)

WIDEST: Final = 46
"""Widest picture in columns; our choice, about what a phone shows."""


@cache
def kind_here() -> type[Sixel] | type[Graphics] | None:
    """Return this terminal's image class; None if it has none or does not answer within a tenth of a second."""
    logging.getLogger("textual_image").setLevel(logging.ERROR)
    from textual_image.renderable import sixel, tgp

    try:
        if sixel.query_terminal_support():
            return sixel.Image
        return tgp.Image if tgp.query_terminal_support() else None
    except Exception:  # a terminal that answers oddly just shows no pictures
        return None


def ask_terminal() -> None:
    """Query the terminal, also for the size of its letters, which a picture would else ask for in the middle of the chat; and throw away
    what of its answers is still to be read, so that it is not read as typed."""
    import termios

    if kind_here() is not None:
        with suppress(Exception):  # a size is assumed then, as where a later release keeps it elsewhere
            from textual_image._terminal import get_cell_size

            get_cell_size()
    with suppress(termios.error, OSError, ValueError):  # not a terminal
        if sys.__stdin__ is not None:
            termios.tcflush(sys.__stdin__, termios.TCIFLUSH)


def show(path: Path, columns: int, out: TextIO | None = None) -> bool:
    """Draw a picture file at the cursor. False if the terminal can't, or the file is missing or invalid; never raises, as more messages
    are waiting."""
    kind = kind_here()
    if kind is None:
        return False
    from rich.console import Console

    try:
        Console(file=out or sys.__stdout__, force_terminal=True).print(kind(path, width=min(columns - 2, WIDEST), height="auto"))
    except Exception as error:
        _log.warning("the picture %s can't be shown here: %s", path.name, type(error).__name__)
        return False
    return True
