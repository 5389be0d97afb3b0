"""The form of a table of signs."""

from __future__ import annotations

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
