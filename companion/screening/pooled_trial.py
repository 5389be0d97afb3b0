"""Pooled priming trials: random effects over lifters, with partial pooling and an interval for each and for the group. Pure.

Each lifter's mean difference (no drill minus drill) has the error of their number of pairs, from one variance within lifters. The variance
between lifters is that of Paule and Mandel (1982), the group's interval that of Hartung and Knapp with t of lifters − 1 (both from memory;
held against statsmodels in the tests). A lifter's own estimate is drawn to the group's by the share of the error in both variances.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import chain
from statistics import fmean
from typing import Final

from companion.screening.sources import value

LIFTERS_LEAST: Final = int(value("pooled_lifters"))
TAIL: Final = 0.975


@dataclass(frozen=True, slots=True)
class Estimated:
    """A difference in movement felt, in points of 0–10, positive in favour of the drill, with its 95 % interval."""

    mean: float
    low: float
    high: float

    @property
    def words(self) -> str:
        """The difference in words: "+0.8 (95 %: −0.1 to +1.7)"."""
        return f"{self.mean:+.1f} (95 %: {self.low:+.1f} to {self.high:+.1f})".replace("-", "−")


@dataclass(frozen=True, slots=True)
class PooledTrial:
    """The group's difference, and each lifter's alone and with the group. ``between``: variance between lifters; ``within``: of a pair."""

    group: Estimated
    alone: Mapping[int, Estimated]
    pooled: Mapping[int, Estimated]
    between: float
    within: float


def pool(differences: Mapping[int, Sequence[float]]) -> PooledTrial | None:
    """Return the pooled estimate of lifters' paired differences; None for fewer than LIFTERS_LEAST with a pair, or without a repeat or any
    spread within a lifter."""
    from scipy.special import stdtrit  # type: ignore[import-untyped]

    told = {lifter: of for lifter, of in differences.items() if of}
    repeats = sum(len(of) - 1 for of in told.values())
    if len(told) < LIFTERS_LEAST or not repeats:
        return None
    means = {lifter: fmean(of) for lifter, of in told.items()}
    within = sum((one - means[lifter]) ** 2 for lifter, of in told.items() for one in of) / repeats
    if not within:
        return None
    errors = {lifter: within / len(of) for lifter, of in told.items()}
    between = _between(list(means.values()), list(errors.values()))
    weights = {lifter: 1 / (error + between) for lifter, error in errors.items()}
    whole = sum(weights.values())
    group = sum(weights[lifter] * means[lifter] for lifter in told) / whole
    spread = sum(weights[lifter] * (means[lifter] - group) ** 2 for lifter in told) / (len(told) - 1)
    error_of_group = spread / whole
    alone, pooled = dict[int, Estimated](), dict[int, Estimated]()
    t_group, t_within = float(stdtrit(len(told) - 1, TAIL)), float(stdtrit(repeats, TAIL))
    for lifter, error in errors.items():
        drawn = error / (error + between)
        alone[lifter] = _estimated(means[lifter], error, t_within)
        pooled[lifter] = _estimated(drawn * group + (1 - drawn) * means[lifter], (1 - drawn) * error + drawn**2 * error_of_group, t_group)
    return PooledTrial(_estimated(group, error_of_group, t_group), alone, pooled, between, within)


def _estimated(mean: float, error: float, t: float) -> Estimated:
    half = t * error**0.5
    return Estimated(mean, mean - half, mean + half)


def _between(means: Sequence[float], errors: Sequence[float]) -> float:
    """Return the variance between lifters at which their weighted squares are their number less one; 0 where they spread less."""
    def squares(between: float) -> float:
        """Return the weighted squares of the means about their weighted mean."""
        weights = [1 / (error + between) for error in errors]
        mean = sum(weight * one for weight, one in zip(weights, means, strict=True)) / sum(weights)
        return sum(weight * (one - mean) ** 2 for weight, one in zip(weights, means, strict=True))

    wanted, low, high = len(means) - 1, 0.0, (max(means) - min(means)) ** 2 + max(chain(errors, (1.0,)))
    if squares(0.0) <= wanted:
        return 0.0
    while high - low > 1e-12 * high:
        middle = (low + high) / 2
        low, high = (middle, high) if squares(middle) > wanted else (low, middle)
    return (low + high) / 2
