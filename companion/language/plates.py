"""Loads told by the plates on the bar: "two 20s each side and the 20 bar", "a plate and a 25 on each end", "two plates, so 225".

A plate without its size is the largest usual one, and "two plates" are two a side. What the bars and that plate weigh is common practice,
no source; so a load that was added up is always said back.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from companion.language.quantities import sized, spelt
from companion.language.units import KG_PER_POUND, unit_word

LONGEST: Final = 200
"""Most characters read as plates on a bar; our choice."""

USUAL_BARS: Final = {"kg": (20.0, 15.0), "lb": (45.0, 35.0)}
PLATE: Final = {"kg": 20.0, "lb": 45.0}
"""The usual and the light bar, and the largest plate, in each unit."""

_POUNDS_ALONE: Final = frozenset((35.0, 45.0, 55.0))
"""Weights of bars and plates that only pounds have."""
_SIZES_MOST: Final = {"kg": 25.0, "lb": 55.0}
"""Largest usual plate beside another; above it a number is no plate's. Common practice, no source."""

_UNIT: Final = r"(?:kgs?|kilos?|kilograms?|lbs?|pounds?|pounders?)"
_KIND: Final = r"(?:(?:big|full|large|whole|blue|proper|olympic|oly|standard|mens?|womens?|empty|plain) )?"
_BAR: Final = re.compile(rf"\b(?:(?P<kg>\d+(?:\.\d+)?) ?-?(?P<unit>{_UNIT})? ?)?{_KIND}(?:bar|barbell)\b")
_ITEM: Final = (rf"(?:(?:(?:[1-6]|one|an?|pair of|a pair of|couple of) )?{_KIND}plates?\b|"
                rf"(?:(?:an?|the) )?(?:[1-6] (?:x )?)?\d+(?:\.\d+)? ?-?(?:{_UNIT}\b|'?s\b)?(?: plates?\b)?)")
_AND: Final = r"(?:,? ?(?:and|an|plus|n|&|\+|with) |, | )"
_SIDE: Final = r",? ?(?:(?:on |at |to |for )?(?:each|either|every|per|a|both) (?:sides?|ends?)|aside|(?<=s )each)\b"
_GROUPS: Final = (re.compile(rf"(?<![\d.])(?P<plates>{_ITEM}(?:{_AND}{_ITEM})*){_SIDE}"),
                  re.compile(rf"{_SIDE},? (?:has |had |is |of |with )?(?P<plates>{_ITEM}(?:{_AND}{_ITEM})*)"),
                  re.compile(rf"(?P<plates>(?<![\d.])[1-6] {_KIND}plates)\b"))
_ONE: Final = re.compile(rf"(?:(?P<many>[1-6]) (?:x )?(?={_KIND}plate|\d))?(?P<size>\d+(?:\.\d+)?)? ?-?(?P<unit>{_UNIT}\b)?'?s?"
                         rf"(?: ?{_KIND}(?P<plate>plates?)\b)?")
_RESTART: Final = re.compile(r".*\b(?:no|nah|wait|sorry|i mean)[.,]+ ")
_SETS: Final = re.compile(r"\b\d+ ?(?:x|by|sets? of) ?\d+\b|\bfor (?:sets of )?\d+\b|\b\d+ ?(?:reps?|sets?)\b")
_CHANGES: Final = re.compile(r"\b(?:more|less|extra|another|than|or|not|added?|up|off|half|used to)\b")
"""Words of a load that is compared or left open, not told."""


class _Side(NamedTuple):
    """The plates of one side: their sizes (0 for a plate without its size), and the units said with them."""

    sizes: tuple[float, ...]
    units: frozenset[str]


def loaded(text: str, pounds: bool, own_bar: float | None = None) -> float | None:
    """Return the load in kg of a bar with the plates that a message names; None if it names none, or not only that. ``pounds``: true if the
    lifter's own units are pounds; ``own_bar``: the weight of their bar in kg, where it is known."""
    if len(text) > LONGEST:
        return None
    plain = _SETS.sub(" ", _RESTART.sub("", sized(spelt(text))))
    bar = _BAR.search(plain)
    rest = f"{plain[:bar.start()]};{plain[bar.end():]}" if bar else plain
    group = next(filter(None, (pattern.search(rest) for pattern in _GROUPS)), None)
    if group is None or _CHANGES.search(rest):
        return None
    side, total = _side(group["plates"]), re.findall(r"\d+(?:\.\d+)?", rest[:group.start()] + ";" + rest[group.end():])
    on_bar = float(bar["kg"]) if bar and bar["kg"] else None
    for unit in _units(side, on_bar, bar["unit"] if bar else None, pounds):
        kilos = KG_PER_POUND if unit == "lb" else 1.0
        bars: tuple[float, ...] = (on_bar,) if on_bar is not None else USUAL_BARS[unit]
        if on_bar is None and own_bar:
            bars = own_bar / kilos, *bars
        fits = len(side.sizes) == 1 or (side.sizes and max(side.sizes) <= _SIZES_MOST[unit])
        for load in (one + 2 * sum(size or PLATE[unit] for size in side.sizes) for one in bars if fits):
            if all(float(one) == round(load, 2) for one in total):
                return round(load * kilos, 2)
    return None


def _units(side: _Side, bar: float | None, of_bar: str | None, pounds: bool) -> tuple[str, ...]:
    """Return the units that the plates and the bar may be in, the likeliest first: those said, those that only such weights have, the
    lifter's own."""
    said = side.units | ({_unit_of(of_bar)} if of_bar else set())
    if said:
        return tuple(said) if len(said) == 1 else ()
    if (bar or 0) in _POUNDS_ALONE or _POUNDS_ALONE & set(side.sizes):
        return ("lb",)
    if bar in USUAL_BARS["kg"]:
        return ("kg",)
    return ("lb", "kg") if pounds else ("kg", "lb")


def _unit_of(word: str) -> str:
    known = unit_word(word)
    return "kg" if known and known[1] == 1 else "lb"


def _side(plates: str) -> _Side:
    """Return the plates of one side."""
    sizes: list[float] = []
    units: set[str] = set()
    for part in re.split(r",| and | an | plus | n | & | \+ | with ", plates):
        text = re.sub(r"^(?:the|an?(?= ?\d)) ?", "", part.strip())
        many = 2 if re.match(r"(?:a )?(?:pair|couple) of ", text) else 1
        text = re.sub(r"^(?:(?:a )?(?:pair|couple) of|an?|one) ", "", text)
        found = _ONE.fullmatch(text)
        if found is None or not (found["size"] or found["plate"]):
            return _Side((), frozenset())
        units |= {_unit_of(found["unit"])} if found["unit"] else set()
        sizes += [float(found["size"] or 0)] * (int(found["many"] or 1) * many)
    return _Side(tuple(sizes), frozenset(units))
