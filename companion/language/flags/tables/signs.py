"""The form of a table of signs."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from importlib.resources import files
from typing import NamedTuple

from companion.language.flags.flag import Flag


class Signs(NamedTuple):
    """A heading of a table and its patterns.

    ``thing`` is what one has or has not ("no fever"): "no" before it denies it; before what happens ("no my leg
    gave way") it is a word of its own. ``effort`` is what hard work does too, and is ordinary right after it.
    ``own`` says that the pattern itself names whose it is, so nobody else's is looked for.
    """

    flag: Flag
    heading: str
    patterns: str
    sure: bool = True
    thing: bool = True
    effort: bool = False
    own: bool = False


def signs_of(family: str) -> Iterator[Signs]:
    """Yield the headings of a family's file, in its order."""
    for table in tomllib.loads((files(__package__) / f"{family}.toml").read_text("utf-8"))["signs"]:
        yield Signs(**table | {"flag": Flag(table["flag"])})
