"""Rendering: templates with named fields, formatted late, in the lifter's own units and local time."""

from __future__ import annotations

import string
from collections.abc import Iterator
from datetime import date, datetime
from typing import Any, Final

from companion.clock import zone_of
from companion.conversation.condition import Facts, Value
from companion.conversation.units import METRIC, shown, spoken_unit

MOST_CHARACTERS: Final = 350
MOST_WORDS: Final = 60
"""The voice: our choice, for a phone held in one hand. Composed messages may add a caution and a progress line."""

_MISSING = "–"


class _Wording(string.Formatter):
    """Format specs beyond Python's: a unit (cm, kg, deg, s, years), words, clock, date."""

    def __init__(self, facts: Facts, side: str, unit: str, now: datetime) -> None:
        self.facts, self.side, self.now = facts, side, now
        self.units = str(facts.get("welcome.units", METRIC))
        self.unit = spoken_unit(unit, self.units)

    def get_value(self, key: int | str, args: Any, kwargs: Any) -> Value | None:
        name = str(key)
        if name == "unit":
            return self.unit
        found = self.facts.get(name)
        return self.facts.get(f"{self.side}_{name}") if found is None and self.side else found

    def get_field(self, field_name: str, args: Any, kwargs: Any) -> Any:
        return self.get_value(field_name, args, kwargs), field_name  # "flow.key" is one name, not an attribute

    def format_field(self, value: Any, format_spec: str) -> str:
        if value is None:
            return _MISSING
        if format_spec in ("cm", "kg", "deg", "s", "years"):
            return shown(float(value), format_spec, self.units)
        if format_spec == "words":
            return str(value).replace("_", " ")
        if format_spec == "clock":
            return self.now.astimezone(zone_of(str(value))).strftime("%H:%M on %A")
        if format_spec == "date":
            day = date.fromisoformat(str(value))
            return f"{day:%A} {day.day} {day:%B}"
        return f"{value:g}" if isinstance(value, float) else str(value)  # ":g" is what a number is written as anyway


def render(template: str, facts: Facts, now: datetime, side: str = "", unit: str = "") -> str:
    """A template's text for one lifter; a field nobody knows becomes a dash. ``unit``: the question's kept unit."""
    return _Wording(facts, side, unit, now).vformat(template, (), {})


def fields_of(template: str) -> Iterator[str]:
    """The names of the fields a template uses."""
    return (name for _, name, _, _ in string.Formatter().parse(template) if name)
