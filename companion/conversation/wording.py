"""Rendering of templates with named fields, in the lifter's own units and local time."""

from __future__ import annotations

import string
from collections.abc import Iterator
from datetime import date, datetime
from functools import lru_cache
from typing import Final

from companion.base.clock import zone_of
from companion.conversation.condition import Facts, Value
from companion.language.units import METRIC, shown, spoken_unit

MOST_CHARACTERS: Final = 350
MOST_WORDS: Final = 60
"""Length limits of a message; our choice, for a phone held in one hand. Composed messages may add a caution and a progress line."""

_MISSING = "–"


def render(template: str, facts: Facts, now: datetime, side: str = "", unit: str = "") -> str:
    """Return a template's text for one lifter; an unknown field becomes a dash. ``unit``: the question's stored unit.

    Format specs beyond Python's: a unit (cm, kg, deg, s, years), words, clock, date.
    """
    if "{" not in template and "}" not in template:
        return template
    units, text = str(facts.get("welcome.units", METRIC)), ""
    for words, name, spec in _parts(template):
        text += words
        if name:
            text += spoken_unit(unit, units) if name == "unit" else _written(_value(facts, name, side), spec, units, now)
    return text


@lru_cache(2_000)  # every template there is, once
def _parts(template: str) -> tuple[tuple[str, str, str], ...]:
    """Return the parts of a template: the text before each field, the field's name ("flow.key" is one name, not an attribute), its
    format."""
    return tuple((words, name or "", spec or "") for words, name, spec, _ in string.Formatter().parse(template))


def _value(facts: Facts, name: str, side: str) -> Value | None:
    found = facts.get(name)
    return facts.get(f"{side}_{name}") if found is None and side else found


def _written(value: Value | None, spec: str, units: str, now: datetime) -> str:
    if value is None:
        return _MISSING
    if spec in ("cm", "kg", "deg", "s", "years"):
        return shown(float(value), spec, units)
    if spec == "words":
        return str(value).replace("_", " ")
    if spec == "clock":
        return now.astimezone(zone_of(str(value))).strftime("%H:%M on %A")
    if spec == "date":
        return dated(str(value))
    return f"{value:g}" if isinstance(value, float) else str(value)  # ":g" is what a number is written as anyway


def dated(day: str) -> str:
    """Return an ISO date in words: "Monday 2 March"."""
    read = date.fromisoformat(day)
    return f"{read:%A} {read.day} {read:%B}"


def fields_of(template: str) -> Iterator[str]:
    """Return the names of the fields in a template."""
    return (name for _, name, _, _ in string.Formatter().parse(template) if name)
