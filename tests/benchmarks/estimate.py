"""The depth estimate's 10,000 draws at once, against the root finder one would reach for, a draw at a time."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, nan, radians, sin

import numpy as np
from scipy.optimize import brentq

from companion.screening.body import Body, Setup
from companion.screening.posture import TOP, Balance, balance_of, deepest, depth_of_fold
from companion.screening.tuck import DRAW_COUNT, Lifter, Spread, Squat, draws_of
from tests.benchmarks.measured import Row, by_turns, compare, seconds

LIFTER = Lifter(175.0, Spread(40.0, 5.0), Spread(110.0, 5.0))


def drawn() -> tuple[Balance, np.ndarray]:
    """Balances and folds of so many lifters, spread as wide as an estimate's."""
    random = np.random.default_rng(4)
    body = Body(*(share * 175 * (1 + 0.04 * random.standard_normal(DRAW_COUNT)) for share in (0.246, 0.245, 0.288, 0.152)),
                np.full(DRAW_COUNT, 0.039 * 175), np.full(DRAW_COUNT, 75.0), np.full(DRAW_COUNT, 0.1))
    setup = Setup("none", 0.0, random.normal(15, 5, DRAW_COUNT).clip(0, 60), 0.0, random.random(DRAW_COUNT))
    return balance_of(body, setup, random.normal(40, 5, DRAW_COUNT)), random.normal(115, 5, DRAW_COUNT)


def one_by_one(balance: Balance, folds: np.ndarray) -> np.ndarray:
    """The thigh angle at which balance asks for the fold: the first root between the top and the closed knee, nan where there is none.
    In plain floats, which is the fastest such a loop gets."""
    ends = deepest(balance)
    found = np.empty(len(folds))
    for place, (a, b, n, k, fold, end) in enumerate(zip(*(each.tolist() for each in (balance.a, balance.b, balance.n, balance.k, folds,
                                                                                     ends)), strict=True)):
        def moment(depth: float, a: float = a, b: float = b, n: float = n, k: float = k, fold: float = fold) -> float:
            lean = radians(fold - 90 - depth)
            return a * sin(lean) + b * cos(lean) + n - k * cos(radians(depth))
        try:
            found[place] = brentq(moment, TOP, end)
        except ValueError:
            found[place] = nan
    return found


def rows() -> Iterator[Row]:
    """The solving alone, on the same numbers; and the whole of it, with the drawing of the numbers."""
    balance, folds = drawn()
    ours, theirs = depth_of_fold(balance, folds), one_by_one(balance, folds)
    both = np.isfinite(ours) & np.isfinite(theirs) & (ours > TOP) & (folds - 90 - ours > 0)
    worst = float(np.abs(ours - theirs)[both].max())
    if both.mean() < 0.5 or worst > 1e-6:
        raise RuntimeError(f"the two don't solve the same: {both.mean():.0%} of the draws, {worst:g} degrees apart")
    solve, whole, loop = by_turns(lambda: seconds(lambda: depth_of_fold(balance, folds)) * 1e3,
                                  lambda: seconds(lambda: draws_of(LIFTER, Squat())) * 1e3,
                                  lambda: seconds(lambda: one_by_one(balance, folds)) * 1e3)
    yield compare(f"depth estimate, {DRAW_COUNT:,} draws solved", "`scipy.optimize.brentq` in a loop", [1 / one for one in solve],
                  [1 / one for one in loop], "a ms", "at least", 100.0)
    yield compare("the same, with the drawing of 12 numbers a draw", "the same loop, numbers given", [1 / one for one in whole],
                  [1 / one for one in loop], "a ms", "told only")
