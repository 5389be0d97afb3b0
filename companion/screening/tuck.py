"""The depth at which length alone would start the tuck (the pelvis turning under), with its uncertainty.

Monte Carlo over measurement error and body-segment spread on the balanced posture of ``posture``. Depths are thigh angles
in degrees below level, above it negative. An estimate, nothing more: range explains less than half of squat
depth ("depth_explained_men" and "_women" in ``numbers/``). numpy is imported when first used.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from companion.screening.body import (
    ANKLE_HEIGHT,
    FOOT_LENGTH,
    HIP_HEIGHT,
    KNEE_HEIGHT,
    SHOULDER_HEIGHT,
    THIGH_MASS,
    THIGH_MASS_MOST,
    Bar,
    Body,
    Setup,
)
from companion.screening.posture import TOP, balance_of, deepest, depth_of_fold
from companion.screening.sources import SOURCES, value

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Array = NDArray[np.float64]

DRAW_COUNT: Final = 10_000
SEED: Final = 4  # any; kept so that the same answers give the same estimate


SHARE_MOST: Final = value("hip_share_most")
CURVE: Final = value("lumbar_curve_sd")
SEGMENT: Final = value("segment_sd")
TAPED: Final = value("segment_taped_sd")
TURN_OUT, TURN_OUT_SD = SOURCES["turn_out"].value
MASS, MASS_SD = SOURCES["mass_assumed"].value


@dataclass(frozen=True, slots=True)
class Spread:
    """A number and its standard deviation, in the same unit."""

    value: float
    sd: float = 0.0


@dataclass(frozen=True, slots=True)
class Lifter:
    """A lifter's measures: height and measured lengths in cm, mass in kg, ankle and hip-fold angle in degrees.

    ``ankle``: the shin's angle from upright, heel down. ``fold``: hip flexion at which the back moves. ``arms``: the range of
    the arms' position in an unloaded squat, 0 hanging, 1 straight in front.
    """

    height: float
    ankle: Spread
    fold: Spread
    mass: Spread = Spread(MASS, MASS_SD)
    turn_out: Spread = Spread(TURN_OUT, TURN_OUT_SD)
    arms: tuple[float, float] = (0.0, 1.0)
    shank: float | None = None
    thigh: float | None = None
    trunk: float | None = None


@dataclass(frozen=True, slots=True)
class Squat:
    """A squat to simulate: where the weight is held and its mass (kg), the heel lift (cm), and degrees added to the lifter's
    own turn-out, ankle and hip fold."""

    bar: Bar = "none"
    load: float = 0.0
    lift: float = 0.0
    turned: float = 0.0
    ankle: float = 0.0
    fold: float = 0.0


@dataclass(frozen=True, slots=True)
class Depths:
    """The depth at which length alone would start the tuck: median and 80 % interval, in degrees of the thigh below level.

    ``never``: the share of draws in which the knee closes first; they count at that depth. ``unbalanced``: the share in
    which no posture balances; they are left out.
    """

    median: float
    low: float
    high: float
    never: float
    unbalanced: float


def draws_of(lifter: Lifter, squat: Squat, *, draws: int = DRAW_COUNT, seed: int = SEED) -> tuple[Array, Array]:
    """Return, for each draw, the depth at which length alone starts the tuck (inf never, nan unbalanced) and the depth at which
    the knee is closed; two arrays of ``draws`` angles in degrees.

    The same seed gives the same lifters, so that two squats can be compared draw by draw.
    """
    import numpy as np

    z = np.random.default_rng(seed)
    normal, even = z.standard_normal((9, draws)), z.random((3, draws))

    def length(measured: float | None, share: float, row: int) -> Array:
        """Return draws of a segment's length in cm: as measured, or a share of the height."""
        if measured is not None:
            return np.asarray(measured + TAPED * normal[row])
        return np.asarray(share * lifter.height * (1 + SEGMENT * normal[row]))

    def around(spread: Spread, row: int) -> Array:
        """Return normal draws of a number."""
        return np.asarray(spread.value + spread.sd * normal[row])

    body = Body(
        length(lifter.shank, KNEE_HEIGHT - ANKLE_HEIGHT, 0), length(lifter.thigh, HIP_HEIGHT - KNEE_HEIGHT, 1),
        length(lifter.trunk, SHOULDER_HEIGHT - HIP_HEIGHT, 2), length(None, FOOT_LENGTH, 3),
        np.full(draws, ANKLE_HEIGHT * lifter.height), np.maximum(around(lifter.mass, 4), 30.0),
        THIGH_MASS + (THIGH_MASS_MOST - THIGH_MASS) * even[0])
    low, high = lifter.arms if squat.bar == "none" else (0.0, 0.0)
    setup = Setup(squat.bar, squat.load, np.clip(around(lifter.turn_out, 5) + squat.turned, 0, 60), squat.lift,
                  low + (high - low) * even[1])
    balance = balance_of(body, setup, np.maximum(around(lifter.ankle, 6) + squat.ankle, 0))
    fold = (around(lifter.fold, 7) + squat.fold) / (1 - SHARE_MOST * even[2]) + CURVE * normal[8]
    return depth_of_fold(balance, fold), deepest(balance)


def depths_of(drawn: tuple[Array, Array]) -> Depths:
    """Return the summary of draws."""
    import numpy as np

    depth, end = drawn
    counted = np.minimum(depth, end)[~np.isnan(depth)]
    unbalanced = 1 - len(counted) / len(depth)
    if not len(counted):
        return Depths(TOP, TOP, TOP, 0.0, 1.0)
    low, median, high = np.quantile(counted, (0.1, 0.5, 0.9))
    return Depths(float(median), float(low), float(high), float(np.isinf(depth).sum() / len(counted)), unbalanced)


def explained(drawn: tuple[Array, Array], low: float, high: float, *, blur: float = 0.0, seed: int = SEED) -> float:
    """Return the probability that length alone explains a tuck seen between two thigh angles: the share of draws in which it
    starts there or before. ``blur``: the standard deviation of the observation, in degrees."""
    import numpy as np

    z = np.random.default_rng(seed + 1)
    depth, _ = drawn
    seen = z.uniform(low, high, len(depth)) + blur * z.standard_normal(len(depth))
    balanced = ~np.isnan(depth)
    return float(np.mean(depth[balanced] <= seen[balanced]))


def gained(plain: tuple[Array, Array], changed: tuple[Array, Array]) -> float:
    """Return the shift of the median depth in degrees, positive for deeper, from draws of two squats of the same lifters.

    Both count no deeper than the depth at which the first one's knee is closed.
    """
    import numpy as np

    (one, end), (other, _) = plain, changed
    both = ~np.isnan(one) & ~np.isnan(other)
    if not both.any():
        return 0.0
    return float(np.median(np.minimum(other, end)[both]) - np.median(np.minimum(one, end)[both]))
