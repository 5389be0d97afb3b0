"""Units: numbers are stored in cm, kg, deg, s and years, and shown in the lifter's own system."""

from __future__ import annotations

import re
from typing import Final

METRIC: Final = "metric"
IMPERIAL: Final = "imperial"

CM_PER_INCH: Final = 2.54
KG_PER_POUND: Final = 0.45359237
"""Both exact: international yard and pound agreement, 1959."""

_SHOWN_AS = {"cm": ("in", CM_PER_INCH), "kg": ("lb", KG_PER_POUND)}
_WORDS: dict[str, tuple[str, float]] = {
    **dict.fromkeys(("cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"), ("cm", 1.0)),
    **dict.fromkeys(("mm", "mms", "millimetre", "millimeter", "millimetres", "millimeters"), ("cm", 0.1)),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), ("cm", 100.0)),
    **dict.fromkeys(("in", "ins", "inch", "inches", '"', "''"), ("cm", CM_PER_INCH)),
    **dict.fromkeys(("ft", "foot", "feet", "'"), ("cm", 12 * CM_PER_INCH)),
    **dict.fromkeys(("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"), ("kg", 1.0)),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds", "pounder"), ("kg", KG_PER_POUND)),
    **dict.fromkeys(("st", "stone", "stones"), ("kg", 14 * KG_PER_POUND)),
    **dict.fromkeys(("deg", "degs", "degree", "degrees", "grados", "°", "º"), ("deg", 1.0)),
    **dict.fromkeys(("s", "sec", "secs", "second", "seconds", "segundos", "sekunden", "secondes"), ("s", 1.0)),
    **dict.fromkeys(("min", "mins", "minute", "minutes"), ("s", 60.0)),
    **dict.fromkeys(("y", "yr", "yrs", "year", "years"), ("years", 1.0)),
    **dict.fromkeys(("month", "months"), ("years", 1 / 12)),
}
_LONG = {"deg": "°", "years": " years"}


def unit_word(word: str) -> tuple[str, float] | None:
    """Return a typed unit as (stored unit, factor), such as ("cm", 2.54) for "inches"; None if unknown."""
    return _WORDS.get(word)


def shown_unit(unit: str, system: str) -> str:
    """Return the unit a stored unit is shown in: "cm" → "in" for imperial."""
    return _SHOWN_AS[unit][0] if system == IMPERIAL and unit in _SHOWN_AS else unit


_MEASURE = re.compile(r"(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? (cm|kg)\b")


def reworded(text: str, system: str) -> str:
    """Return a text with its cm and kg in the lifter's own system: "2 to 5 kg" → "4.4 to 11 lb"."""
    def told(found: re.Match[str]) -> str:
        """Return one measure in imperial units."""
        low, high, unit = found[1], found[2], found[3]
        numbers = [shown_number(float(number), unit, system) for number in (low, high) if number]
        return f"{' to '.join(numbers)} {shown_unit(unit, system)}"

    return _MEASURE.sub(told, text) if system == IMPERIAL else text


def spoken_unit(unit: str, system: str) -> str:
    """Return the shown unit's name for a sentence: "cm", "inches", "pounds", "degrees", "seconds"."""
    there = shown_unit(unit, system)
    return {"in": "inches", "lb": "pounds", "deg": "degrees", "s": "seconds"}.get(there, there)


def to_kept(number: float, unit: str, system: str) -> float:
    """Convert a number from the lifter's system to the stored unit."""
    return number * _SHOWN_AS[unit][1] if system == IMPERIAL and unit in _SHOWN_AS else number


def shown_number(value: float, unit: str, system: str) -> str:
    """Return a stored number in the lifter's system, without its unit, with at most one decimal place."""
    number = value / _SHOWN_AS[unit][1] if system == IMPERIAL and unit in _SHOWN_AS else value
    places = 0 if system == IMPERIAL and unit == "kg" and number >= 20 else 1
    return f"{round(number, places):g}"


def shown(value: float, unit: str, system: str) -> str:
    """Return a stored number in the lifter's system, with its unit: "11 cm", "4.3 in", "72°"."""
    unit_there = shown_unit(unit, system)
    return shown_number(value, unit, system) + _LONG.get(unit_there, f" {unit_there}" if unit_there else "")
