"""How well ratings agree: intraclass correlations, and the measurement error that follows from one.

Shrout & Fleiss 1979 (the six forms; data of their example from memory). SEM = SD * sqrt(1 - ICC): Weir 2005 J Strength
Cond Res 19:231 (second-hand).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import fmean


@dataclass(frozen=True, slots=True)
class Intraclass:
    """The six coefficients, -1 to 1.

    Of a single rating: ``one`` ICC(1,1), each target rated by others; ``two`` (2,1), the raters stand for more like
    them; ``three`` (3,1), these raters only. ``one_mean``, ``two_mean``, ``three_mean``: of the mean of all raters.
    """

    one: float
    two: float
    three: float
    one_mean: float
    two_mean: float
    three_mean: float


def intraclass(ratings: Sequence[Sequence[float]]) -> Intraclass:
    """The coefficients of targets (rows, n >= 2) by raters (columns, k >= 2). ValueError for a table that is none.

    ValueError too where targets do not differ at all: there is nothing to tell apart.
    """
    n, k = len(ratings), len(ratings[0]) if ratings else 0
    if n < 2 or k < 2 or any(len(row) != k for row in ratings):
        raise ValueError("it takes two targets and two raters or more, each target rated by all")
    grand = fmean(value for row in ratings for value in row)
    between = k * sum((fmean(row) - grand) ** 2 for row in ratings)
    raters = n * sum((fmean(column) - grand) ** 2 for column in zip(*ratings, strict=True))
    total = sum((value - grand) ** 2 for row in ratings for value in row)
    if between <= 1e-12 * max(total, 1.0):
        raise ValueError("the targets do not differ")
    target = between / (n - 1)
    rater = raters / (k - 1)
    rest = max(total - between - raters, 0.0) / ((n - 1) * (k - 1))
    within = (total - between) / (n * (k - 1))
    return Intraclass(
        (target - within) / (target + (k - 1) * within),
        (target - rest) / (target + (k - 1) * rest + k * (rater - rest) / n),
        (target - rest) / (target + (k - 1) * rest),
        (target - within) / target,
        (target - rest) / (target + (rater - rest) / n),
        (target - rest) / target)


def sem_from(sd: float, icc: float) -> float:
    """SEM = SD * sqrt(1 - ICC), in the unit of the SD. ValueError outside SD >= 0 and ICC 0-1."""
    if sd < 0 or not 0 <= icc <= 1:
        raise ValueError(f"an SD of {sd:g} and an ICC of {icc:g} give no error")
    return sd * sqrt(1 - icc)
