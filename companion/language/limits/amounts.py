"""Weights, and how many of something, as they are typed in words about a limit."""

from __future__ import annotations

import re
from typing import Final

from companion.language.units import IMPERIAL, KG_PER_POUND

COUNT: Final = r"\d{1,3}|two|three|four|five|six|seven|eight|nine|ten|twelve"
"""How many days or weeks, as a pattern."""
UNIT_WORDS: Final = r"(?:kgs?|kilos?|kilograms?|lbs?|pounds?)"


def amount_said(name: str = "") -> str:
    """Return the pattern of a weight, with or without its unit, whose groups begin with ``name``."""
    return (rf"(?P<{name}kg>\d+(?:[.,]\d+)?)(?: ?(?P<{name}unit>{UNIT_WORDS})\b|"
            r"(?! ?(?:weeks?|wks?|days?|months?|years?|hours?|min|rep|set|time|%|percent|per|x\b)|[\d.:/-]))")


AMOUNT: Final = amount_said()
NOT_SO_MUCH: Final = rf"(?:,? not (?:(?:over|above|up to) )?{amount_said('not_')})"
"""What a weight is said in place of: "40 kg, not 60"."""
_LIFTED: Final = r"(?:lift(?:ing)?|squat(?:s|ting)?|weights?|loads?|carry(?:ing)?|bar(?:bell)?|anything|deadlift(?:s|ing)?)"
_KILOS: Final = tuple(map(re.compile, (
    rf"(?:(?:no|not|nothing|never|don't|dont|do not|can't|cant|cannot|avoid|stay|keep|only) )*(?:(?:to|be|it|the|my|any|{_LIFTED}) )*"
    r"(?:no more than|not more than|nothing more than|more than|heavier than|above|over|beyond|exceeding|exceed|max(?:imum)?(?: of)?|"
    rf"at most|up to|limit(?:ed)?(?: to| of| is|:)?|below|under|less than|only) {AMOUNT}{NOT_SO_MUCH}?",
    rf"{AMOUNT}(?: is)?(?: the| my)? (?:max(?:imum)?|at most|or less|limit)\b{NOT_SO_MUCH}?")))


def kilos_in(line: str, system: str) -> tuple[float | None, str]:
    """Return the lowest weight that a line sets, in kg, and the line without its weights."""
    lowest = None
    while found := next(filter(None, (pattern.search(line) for pattern in _KILOS)), None):
        kilos = in_kilos(found["kg"], found["unit"], system)
        lowest = kilos if lowest is None else min(lowest, kilos)
        line = f"{line[:found.start()]} , {line[found.end():]}"
    return lowest, line


def in_kilos(amount: str, unit: str | None, system: str) -> float:
    """Return a weight as it was typed in kg. ``system``: the lifter's units, for one without its unit."""
    pounds = unit.startswith(("lb", "pound")) if unit else system == IMPERIAL
    return round(as_number(amount) * (KG_PER_POUND if pounds else 1.0), 2)


def as_number(amount: str) -> float:
    """Return an amount as it was typed as a number."""
    return float(amount.replace(",", "."))
