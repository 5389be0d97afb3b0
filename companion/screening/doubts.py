"""Readings that can't stand as they are: impossible ones, repeats apart, sides too far apart; each names the one repeat that settles it.

A reading in doubt is not scored. It is asked about while the lifter still stands at the wall or lies on the floor; what is left
unsettled is told with the results.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from companion.screening.readings import SIDES, NumberFormat, Reading, mean_of


@dataclass(frozen=True, slots=True)
class BelievedSpread:
    """The differences between repeats and sides that are still believed: ``mdc`` between repeats; ``far`` between sides; ``usual``: the
    middle of healthy people, to say which side is the odd one."""

    mdc: float
    far: float
    usual: float


def apart(readings: Sequence[Reading], mdc: float) -> bool:
    """True if a side's repeats disagree: no two of them lie within the detectable change. One alone agrees with itself."""
    values = sorted(one.value for one in readings)
    return len(values) > 1 and min(b - a for a, b in pairwise(values)) >= mdc


NOT_YET: Final[Mapping[str, Reading]] = {}


def odd_side(taken: Mapping[str, Sequence[Reading]], spread: BelievedSpread, again: Mapping[str, Reading] = NOT_YET) -> str:
    """Return the side to measure once more because the two are too far apart to be believed, "" for none: the one further from the
    middle of healthy people, and once that was looked at twice to the same number, the other. ``again``: the second look, by side;
    what it contradicted is no longer in ``taken``."""
    if not all(taken.get(side) for side in SIDES) or any(one.width for side in SIDES for one in taken[side]):
        return ""
    means = {side: mean_of(taken[side]) for side in SIDES}
    if abs(means["left"] - means["right"]) <= spread.far:
        return ""
    unsure = [side for side in SIDES if side not in again or tuple(taken[side]) == (again[side],)]
    return max(unsure, key=lambda side: abs(means[side] - spread.usual), default="")


def checked(taken: Mapping[str, tuple[Reading, ...]], again: Mapping[str, Reading],
            spread: BelievedSpread) -> dict[str, tuple[Reading, ...]]:
    """Return each side's readings after the second look at the odd one: they stand if it agrees with them; else it takes their place.

    ``again``: the second look, by side.
    """
    settled = dict(taken)
    for side, look in again.items():
        own = taken.get(side, ())
        if own and abs(mean_of(own) - look.value) >= spread.mdc:
            settled[side] = (look,)
    return settled


def side_doubts(taken: Mapping[str, tuple[Reading, ...]], again: Mapping[str, Reading], spread: BelievedSpread, what: str,
                show: NumberFormat) -> dict[str, str]:
    """Return, by side, why its readings are not scored and what to repeat; empty where they stand.

    ``taken``: the readings that count now (``checked``). Sides that were both looked at twice, to the same number, are believed however
    far apart.
    """
    found = {side: f"The repeats of the {what} on the {side} side are apart ({', '.join(show(one.value, one.unit) for one in readings)}). "
                   f"Measure that side again." for side, readings in taken.items() if apart(readings, spread.mdc)}
    odd = odd_side(taken, spread, again)
    if odd and not found:
        left, right = (show(mean_of(taken[side]), taken[side][0].unit) for side in SIDES)
        found[odd] = (f"The {what} is {left} left and {right} right, further apart than sides hardly ever are. "
                      f"Measure the {odd} side again.")
    return found
