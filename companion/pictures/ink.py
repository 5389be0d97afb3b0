"""Colours of drawings and charts, and their contrast with the paper.

The paper is opaque, so that a picture reads the same in a dark chat and a light one. Colour alone never carries meaning: each comes with
a shape, a dash or a word. Contrast: WCAG 2.2, relative luminance and contrast ratio (from memory).
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
ENOUGH: Final = 4.5
"""Least contrast of text against its background: WCAG 2.2, success criterion 1.4.3, level AA."""


def luminance(colour: str) -> float:
    """Return the relative luminance, 0 black to 1 white, of a colour #RRGGBB."""
    red, green, blue = (_linear(int(colour[n:n + 2], 16) / 255) for n in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours, 1 to 21: (lighter + 0.05) / (darker + 0.05)."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def _linear(part: float) -> float:
    return float(part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4)
