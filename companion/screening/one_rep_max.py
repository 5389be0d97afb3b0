"""The one-repetition maximum estimated from a set. Textbook formulas (read); an estimate, never a load to try.

Epley w*(1 + r/30), Brzycki 36*w/(37 - r): equal at ten repetitions, poor beyond.
"""

from __future__ import annotations

from typing import Final

from companion.screening.geometry import Estimate
from companion.screening.sources import value

MOST_REPETITIONS: Final = int(value("epley_most"))


def epley(weight: float, repetitions: int) -> float:
    """Return Epley's estimate in the unit of the weight. Raises ValueError outside 2-10 repetitions."""
    return weight * (1 + _counted(repetitions) / 30)


def brzycki(weight: float, repetitions: int) -> float:
    """Return Brzycki's estimate in the unit of the weight. Raises ValueError outside 2-10 repetitions."""
    return weight * 36 / (37 - _counted(repetitions))


def heaviest(weight: float, repetitions: int) -> Estimate:
    """Return the one-repetition maximum in kg from a clean set: the lower of the two formulas (choice).

    Its error is the gap between them, and at least 5 % of the weight (choice). One repetition gives the weight itself.
    Raises ValueError outside 1-10 repetitions and for a weight of 0 or less.
    """
    if weight <= 0:
        raise ValueError("there is no weight")
    if repetitions == 1:
        return Estimate(weight, 0.0, "kg", "read")
    one, other = epley(weight, repetitions), brzycki(weight, repetitions)
    return Estimate(min(one, other), max(abs(one - other), 0.05 * weight), "kg", "choice")


def _counted(repetitions: int) -> int:
    """Return the repetitions if the formulas hold for them, else raise ValueError."""
    if not 2 <= repetitions <= MOST_REPETITIONS:
        raise ValueError(f"these formulas serve 2 to {MOST_REPETITIONS} repetitions, not {repetitions}")
    return repetitions
