"""The sets before the working load, in loads that this bar and these plates make.

The empty bar, then about 40, 60 and 80 % of the working load with fewer repetitions each time: common practice, no source.
Every load is rounded down to what can be put on, the same on both sides.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

POUND: Final = 0.45359237
"""Kilograms in a pound, exact: international yard and pound agreement, 1959."""

PLATES: Final = {
    "metric": (25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 1.25),  # discs of weightlifting, and the usual small one (memory)
    "imperial": tuple(size * POUND for size in (45.0, 35.0, 25.0, 10.0, 5.0, 2.5)),  # common practice, no source
}
"""The plates of a usual gym in kg, as many of each as are wanted."""

STEPS: Final = ((0.4, 5), (0.6, 3), (0.8, 2))
"""Share of the working load and repetitions; common practice, no source."""

BAR_REPETITIONS: Final = 8
OWN_PAIRS: Final = 4
"""Pairs of each size reckoned with at most; our choice."""

_GRAIN: Final = 0.001
"""Kilograms within which two loads are the same: pounds don't come out even in kilograms."""


@dataclass(frozen=True, slots=True)
class WarmUpSet:
    """One set: its load in kg with the bar, its repetitions, and the plates on each side in kg, the largest first."""

    load: float
    repetitions: int
    side: tuple[float, ...] = ()


def loadable(most: float, bar: float, plates: Sequence[float]) -> tuple[float, tuple[float, ...]] | None:
    """The heaviest load of at most ``most`` kg and its plates a side, the fewest that make it, larger ones first; None below the bar."""
    if most < bar - _GRAIN:
        return None
    room = (most - bar) / 2 + _GRAIN / 2
    reached: dict[int, tuple[float, ...]] = {0: ()}
    for size in sorted(plates, reverse=True):
        grown = dict(reached)
        for total, used in reached.items():
            for pairs in range(1, OWN_PAIRS + 1):
                more = total + round(size * pairs / _GRAIN)
                if more * _GRAIN > room:
                    break
                made = (*used, *(size,) * pairs)
                if more not in grown or (len(made), grown[more]) < (len(grown[more]), made):
                    grown[more] = made
        reached = grown
    top = max(reached)
    side = reached[top]
    return bar + 2 * sum(side), side


def sets_for(working: float, bar: float, plates: Sequence[float] | None = None, system: str = "metric") -> tuple[WarmUpSet, ...]:
    """The warm-up sets, rising, and last the working load itself as far as it can be loaded (repetitions 0: the lifter's own).
    Loads in kg. Nothing where the working load is below the bar."""
    sizes = plates or PLATES[system]
    top = loadable(working, bar, sizes)
    if top is None:
        return ()
    sets = [WarmUpSet(bar, BAR_REPETITIONS)] if top[0] > bar + _GRAIN else []
    for share, repetitions in STEPS:
        found = loadable(working * share, bar, sizes)
        if found and sets and sets[-1].load + _GRAIN < found[0] < top[0] - _GRAIN:
            sets.append(WarmUpSet(found[0], repetitions, found[1]))
    return (*sets, WarmUpSet(top[0], 0, top[1]))
