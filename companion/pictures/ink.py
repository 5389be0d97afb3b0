"""Colours of drawings and charts; their contrast with the paper is held by tests/pictures/test_ink.py.

The paper is opaque, so that a picture reads the same in a dark chat and a light one. Colour alone never carries meaning: each comes with
a shape, a dash or a word.
"""

from __future__ import annotations

from typing import Final

PAPER: Final = "#FBFAF7"
INK: Final = "#1F2A37"
BODY: Final = "#33465C"
FAR_INK: Final = "#5F6B7A"
FAR_FILL: Final = "#D7DEE6"
GOOD_INK: Final = "#0B6E4F"
WATCH_INK: Final = "#B3261E"
GUIDE: Final = "#1D5FA8"

INKS: Final = (INK, BODY, FAR_INK, GOOD_INK, WATCH_INK, GUIDE)
