"""The contrast of two colours, by the formula of WCAG 2.2."""

from __future__ import annotations


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
