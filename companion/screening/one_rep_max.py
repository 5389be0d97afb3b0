"""The heaviest single repetition that a set points at. Textbook formulas (read); an estimate, never a load to try.

Epley w*(1 + r/30), Brzycki 36*w/(37 - r): the same at ten repetitions, poor past them (reference-values).
"""

from __future__ import annotations

from typing import Final

from companion.screening.geometry import Estimate

MOST_REPETITIONS: Final = 10


def epley(weight: float, repetitions: int) -> float:
    """Epley's estimate in the unit of the weight, for 2-10 repetitions."""
    return weight * (1 + _counted(repetitions) / 30)


def brzycki(weight: float, repetitions: int) -> float:
    """Brzycki's estimate in the unit of the weight, for 2-10 repetitions."""
    return weight * 36 / (37 - _counted(repetitions))


def heaviest(weight: float, repetitions: int) -> Estimate:
    """The heaviest single repetition in kg from a clean set: the lower formula (choice), off by the gap at least.

    One repetition is the weight itself. The stated error is never under 5 % of the weight (choice). ValueError outside
    1-10 repetitions and for no weight.
    """
    if weight <= 0:
        raise ValueError("there is no weight")
    if repetitions == 1:
        return Estimate(weight, 0.0, "kg", "read")
    one, other = epley(weight, repetitions), brzycki(weight, repetitions)
    return Estimate(min(one, other), max(abs(one - other), 0.05 * weight), "kg", "choice")


def _counted(repetitions: int) -> int:
    """Repetitions that the formulas serve."""
    if not 2 <= repetitions <= MOST_REPETITIONS:
        raise ValueError(f"these formulas serve 2 to {MOST_REPETITIONS} repetitions, not {repetitions}")
    return repetitions
