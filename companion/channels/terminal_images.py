"""Pictures drawn in the terminal itself, where it can: by sixels or the terminal graphics protocol, with textual-image.

The terminal is asked once, at the first picture; it answers on the keyboard's side, so nothing else may be reading there then
(prompt_toolkit's ``run_in_terminal``). One that can do neither loses nothing: the words and the path are printed in any case.
"""

from __future__ import annotations

import logging
import sys
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Final, TextIO

if TYPE_CHECKING:
    from textual_image.renderable.sixel import Image as Sixel
    from textual_image.renderable.tgp import Image as Graphics

_log = logging.getLogger(__name__)

WIDEST: Final = 46
"""Columns of a picture at most; our choice, about what a phone shows."""


@cache
def kind_here() -> type[Sixel] | type[Graphics] | None:
    """How this terminal draws pictures; None where it can't, or does not say within a tenth of a second."""
    logging.getLogger("textual_image").setLevel(logging.ERROR)
    from textual_image.renderable import sixel, tgp

    try:
        if sixel.query_terminal_support():
            return sixel.Image
        return tgp.Image if tgp.query_terminal_support() else None
    except Exception:  # a terminal that answers oddly shows no pictures, and that is all
        return None


def show(path: Path, columns: int, out: TextIO | None = None) -> bool:
    """Draw a picture file where the cursor is; False where this terminal can't, or the file is gone or none. It never raises: the
    messages after it are waiting."""
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
