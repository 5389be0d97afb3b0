"""The sets before the working load, in loads that a bar and plates can make.

The empty bar, then about 40, 60 and 80 % of the working load with fewer repetitions each time: common practice, no source.
Every load is rounded down to one that can be loaded, the same on both sides.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite
from typing import Final

from companion.screening.sources import SOURCES, value

POUND: Final = 0.45359237
"""Kilograms in a pound, exact: international yard and pound agreement, 1959."""

BARS: Final = {"metric": SOURCES["bars_metric"].value, "imperial": tuple(size * POUND for size in SOURCES["bars_imperial"].value)}
"""Bars in kg, the usual one and the light one: 20 and 15 kg are those of competition (memory), 45 and 35 lb common practice."""

PLATES: Final = {
    "metric": SOURCES["plates_metric"].value, "imperial": tuple(size * POUND for size in SOURCES["plates_imperial"].value)
}
"""The plates of a usual gym in kg."""

SHARES: Final = tuple(share / 100 for share in SOURCES["warm_up_shares"].value)  # of the working load
REPETITIONS: Final = tuple(map(int, SOURCES["warm_up_repetitions"].value))  # the last is a double, whichever loads come out
BAR_REPETITIONS: Final = int(value("warm_up_bar"))
OWN_PAIRS, GYM_PAIRS = map(int, SOURCES["pairs_of_plates"].value)
"""The most pairs of each size to assume: of a lifter's own, never more than the working load takes, and of a usual gym's (500 kg can be
loaded)."""

_SPECKS: Final = 10**10
"""Integer units per kilogram. Grams and quarters of a pound are both whole numbers of them, so sums are exact."""
_SLACK: Final = _SPECKS // 2000
"""Half a gram: a load stored with six figures (“102.058 kg”, 225 lb) can be that much short of the one typed."""
_MOST_NAMED: Final = 4


@dataclass(frozen=True, slots=True)
class WarmUpSet:
    """One set: its load in kg with the bar, its repetitions (0: up to the lifter), and the plates on each side in kg, the
    largest first."""

    load: float
    repetitions: int
    side: tuple[float, ...] = ()


def sets_for(working: float, bar: float, plates: Sequence[float] | None = None, system: str = "metric") -> tuple[WarmUpSet, ...]:
    """Return the warm-up sets, rising, and last the working load as near as it can be loaded (repetitions 0: up to the lifter).

    Loads in kg. ``plates``: sizes in kg, one listed twice has twice as many pairs; None: a usual gym of that system. Of a lifter's own
    sizes, only the pairs that the working load needs are assumed to exist. Empty if the working load is below the bar. Raises ValueError
    for a bar or a plate of 0 kg or less, and for infinite or missing numbers.
    """
    sizes, pairs = (PLATES[system], GYM_PAIRS) if plates is None else (plates, OWN_PAIRS)
    room = _room(working, bar, sizes)
    if room < 0:
        return ()
    sides = _sides(room, sizes, pairs)
    top = sum(_best(sides, room))
    if plates is not None:
        fewer = (_sides(room, sizes, count) for count in range(1, OWN_PAIRS + 1))
        sides = next(made for made in fewer if top in made)
    rising: list[tuple[int, ...]] = []
    for share in SHARES:
        side = _best(sides, max(_room(working * share, bar, sizes), 0))
        if sum(rising[-1] if rising else ()) < sum(side) < top:
            rising.append(side)
    loads = [(), *rising, sides[top]] if top else [()]
    times = [BAR_REPETITIONS, *REPETITIONS[len(REPETITIONS) - len(rising):], 0] if top else [0]
    made = [_kilograms(bar, side) for side in loads]
    return tuple(WarmUpSet(load, count, side) for (load, side), count in zip(made, times, strict=True))


def words(sets: Sequence[WarmUpSet], system: str) -> str:
    """Return the sets before the working one in the lifter's units, to two decimals, a line each, at most 250 characters:
    "20 kg × 8 (bar)", "40 kg × 5 (10 a side)", "60 kg × 3 (20 a side)". "" if there are none."""
    return "\n".join(f"{weight(one.load, system)} × {one.repetitions} ({side_words(one.side, system)})"
                     for one in sets if one.repetitions)


def working_words(working: float, sets: Sequence[WarmUpSet], system: str) -> str:
    """Return the load for the working sets, with the reason if it is less than the one asked for."""
    said = weight(working, system)
    if not sets:
        return f"{said} is less than the bar: take a lighter bar, or body weight."
    top = sets[-1]
    loaded = f"{weight(top.load, system)} ({side_words(top.side, system)})"
    return loaded if _specks(working) - _specks(top.load) <= _SLACK else (
        f"{loaded}: {said} can't be made with this bar and these plates")


def side_words(side: Sequence[float], system: str) -> str:
    """Return the plates of one side in words: "25 + 5 a side", "2×45 + 10 a side", their sum if there are many sizes, or "bar"."""
    if not side:
        return "bar"
    counts = Counter(side)
    if len(counts) > _MOST_NAMED:
        return f"{number(sum(side), system)} a side"
    return " + ".join(f"{f'{times}×' if times > 1 else ''}{number(size, system)}" for size, times in counts.items()) + " a side"


def number(kg: float, system: str) -> str:
    """Return a weight in kg as a number in the lifter's units, to two decimals: plates of 1.25 kg must not be rounded, as a body
    weight would be."""
    return f"{round(kg / POUND if system == 'imperial' else kg, 2):.2f}".rstrip("0").rstrip(".")


def weight(kg: float, system: str) -> str:
    """Return a weight in kg with its unit in the lifter's units: "42.5 kg", "135 lb"."""
    return f"{number(kg, system)} {'lb' if system == 'imperial' else 'kg'}"


def _room(load: float, bar: float, plates: Sequence[float]) -> int:
    """Return the weight left for the plates of one side, in specks; below 0 if the load is less than the bar."""
    if not (isfinite(load) and all(isfinite(one) and one > 0 for one in (bar, *plates))):
        raise ValueError("a bar and plates weigh something")
    return (_specks(load) - _specks(bar) + _SLACK) // 2


def _specks(kg: float) -> int:
    """Return a weight in specks; within 0.1 g of a quarter pound it is that quarter, so a stored "20.4117" is the 45 lb typed."""
    quarters = round(kg * 4 / POUND) * POUND / 4
    return round((quarters if abs(quarters - kg) < 1e-4 else kg) * _SPECKS)


def _sides(room: int, plates: Sequence[float], pairs: int) -> dict[int, tuple[int, ...]]:
    """Return every weight of one side up to ``room`` specks, with the plates that make it: the fewest, then the largest first."""
    sides: dict[int, tuple[int, ...]] = {0: ()}
    for size, listed in sorted(Counter(_specks(plate) for plate in plates).items(), reverse=True):
        for before, made in list(sides.items()):
            for count in range(1, min(listed * pairs, (room - before) // size) + 1):
                total, more = before + count * size, (*made, *(size,) * count)
                if total not in sides or (len(more), sides[total]) < (len(sides[total]), more):
                    sides[total] = more
    return sides


def _best(sides: dict[int, tuple[int, ...]], room: int) -> tuple[int, ...]:
    return sides[max(total for total in sides if total <= room)]


def _kilograms(bar: float, side: tuple[int, ...]) -> tuple[float, tuple[float, ...]]:
    """Return a load and its plates a side in kg."""
    return (_specks(bar) + 2 * sum(side)) / _SPECKS, tuple(size / _SPECKS for size in side)
