"""A balanced squat in the side view: the lean of the trunk, and the depth at which it folds the hip too far.

The origin is on the floor under mid-foot, x to the toes, y up; angles in degrees. The shank leans forward as far as the
ankle lets it, heel lift added; the thigh is some degrees below level (above: negative); the trunk leans so that the
centre of mass of body and weight is over mid-foot. Plain statics: with lean l and thigh angle d the moment about
mid-foot is A sin l + B cos l + N - K cos d = 0. Hip flexion needed is 90 + l + d. Turn-out shortens the thigh as seen
from the side, nothing else: a simplification. The trunk never leans back: there the shank leans less instead.
numpy is imported when first used; every input may be an array of draws.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from companion.screening.body import (
    ARMS_CENTRE,
    ARMS_MASS,
    ARMS_REACH,
    BAR_ON_TRUNK,
    FOOT_CENTRE,
    FOOT_MASS,
    LEG_CENTRE,
    SHANK_MASS,
    UPPER_CENTRE,
    Body,
    Setup,
)
from companion.screening.geometry import ANKLE_BEHIND_TOE
from companion.screening.sources import SOURCES, value

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from companion.screening.body import Many

    Array = NDArray[np.float64]

TOP, DEEPEST = SOURCES["thigh_range"].value  # the shallowest thigh angle looked at, a third of the way down, and the deepest there is
KNEE_END: Final = value("knee_end")  # knee flexion at which calf and thigh meet (from memory)


@dataclass(frozen=True, slots=True)
class Balance:
    """Coefficients of the balance, in kg cm: A sin(lean) + B cos(lean) + N - K cos(thigh) = 0; and the shank's lean in deg."""

    a: Array
    b: Array
    n: Array
    k: Array
    shin: Array


def lift_angle(body: Body, lift: Many) -> Array:
    """Return the forward tilt of the foot on a heel lift in cm: asin(lift / foot length), in degrees."""
    import numpy as np

    return np.asarray(np.degrees(np.arcsin(np.clip(np.asarray(lift) / body.foot, 0, 0.5))))


def balance_of(body: Body, setup: Setup, ankle: Many) -> Balance:
    """Return the balance of a set-up; ``ankle``: the shank's lean from upright on flat ground, in degrees."""
    import numpy as np

    tilt = lift_angle(body, setup.lift)
    shin = np.asarray(ankle) + tilt
    (foot_x, _), (ankle_x, _) = _foot(body, tilt)
    knee_x = ankle_x + body.shank * np.sin(np.radians(shin))
    shank_x = knee_x + (ankle_x - knee_x) * LEG_CENTRE
    foot, shank = 2 * FOOT_MASS * body.mass, 2 * SHANK_MASS * body.mass
    thigh, upper = 2 * body.thigh_share * body.mass, body.upper_share * body.mass
    along, ahead = BAR_ON_TRUNK[setup.bar]
    load = np.asarray(setup.load if setup.bar != "none" else 0.0)
    out = ARMS_MASS * body.mass * ARMS_CENTRE * _arms(setup) * body.trunk
    held = load * ARMS_REACH * body.trunk if setup.bar == "arms" else 0.0
    return Balance(
        np.asarray(body.trunk * (upper * UPPER_CENTRE + load * along) + out),
        np.asarray(body.trunk * load * ahead),
        np.asarray(foot * foot_x + shank * shank_x + (thigh + upper + load) * knee_x + out + held),
        np.asarray((thigh * (1 - LEG_CENTRE) + upper + load) * _thigh(body, setup)), shin)


def lean_at(balance: Balance, depth: Many) -> Array:
    """Return the trunk's lean from upright at a thigh angle, in degrees, at least 0; nan if no lean balances."""
    import numpy as np

    reach, turn = np.hypot(balance.a, balance.b), np.arctan2(balance.b, balance.a)
    share = (balance.k * np.cos(np.radians(depth)) - balance.n) / reach
    with np.errstate(invalid="ignore"):
        lean = np.degrees(np.arcsin(np.where(share > 1, np.nan, np.maximum(share, -1))) - turn)
    return np.asarray(np.maximum(lean, 0))


def fold_at(balance: Balance, depth: Many) -> Array:
    """Return the hip flexion needed at a thigh angle, in degrees: 90 + lean + thigh below level; nan if no lean balances."""
    import numpy as np

    return np.asarray(90 + lean_at(balance, depth) + depth)


def deepest(balance: Balance) -> Array:
    """Return the thigh angle at which the knee is closed, in degrees: 155 - 90 - shank's lean, at most 40 (choice)."""
    import numpy as np

    return np.asarray(np.minimum(KNEE_END - 90 - balance.shin, DEEPEST))


def depth_of_fold(balance: Balance, fold: Many) -> Array:
    """Return the thigh angle at which, on the way down, the hip flexion needed first reaches ``fold``, in degrees.

    At least TOP; inf if the knee closes first; nan if no posture balances.
    With g = fold - 90 and l = g - d the moment is p cos d + q sin d + N, which goes from too little lean to too much
    at one angle per turn: psi + acos(-N / r), r = hypot(p, q), psi = atan2(q, p).
    """
    import numpy as np

    g = np.radians(np.asarray(fold) - 90)
    p = balance.a * np.sin(g) + balance.b * np.cos(g) - balance.k
    q = -balance.a * np.cos(g) + balance.b * np.sin(g)
    share = -balance.n / np.hypot(p, q)
    with np.errstate(invalid="ignore"):
        meets = np.degrees(np.arctan2(q, p) + np.arccos(np.where(np.abs(share) > 1, np.nan, share)))
    meets = (meets + 180) % 360 - 180
    upright = np.degrees(g)  # with the trunk upright the thigh's own angle is all there is
    within = (meets >= TOP) & (meets <= deepest(balance))
    # Past this lean a trunk that leans more balances less.
    tips = within & (upright - meets > 90 - np.degrees(np.arctan2(balance.b, balance.a)))
    depth = np.minimum(np.where(within, meets, np.inf), np.where(upright <= deepest(balance), upright, np.inf))
    start = fold_at(balance, TOP)
    depth = np.where(start >= fold, TOP, np.maximum(depth, TOP))
    return np.asarray(np.where(np.isnan(start) | tips, np.nan, depth))


def _foot(body: Body, tilt: Array) -> tuple[tuple[Array, Array], tuple[Array, Array]]:
    """Return the foot's centre of mass and the ankle joint, for a foot tipped forward about its toes.

    The ankle is three quarters of the foot behind the toe (geometry), its height over the sole; mid-foot is under the
    middle of the sole.
    """
    import numpy as np

    t = np.radians(tilt)

    def at(behind: float, above: Many) -> tuple[Array, Array]:
        """Return a point from its place behind the toes (share of the foot) and its height over the sole (cm)."""
        x = (0.5 - behind) * body.foot * np.cos(t) + above * np.sin(t)
        return np.asarray(x), np.asarray(behind * body.foot * np.sin(t) + above * np.cos(t))

    return at(FOOT_CENTRE, body.ankle / 2), at(ANKLE_BEHIND_TOE, body.ankle)


def _thigh(body: Body, setup: Setup) -> Array:
    """Return the thigh's length in the side view."""
    import numpy as np

    return np.asarray(body.thigh * np.cos(np.radians(setup.turn_out)))


def _arms(setup: Setup) -> Many:
    """Return the share by which the arms are out in front: 1 with a weight in the hands."""
    return 1.0 if setup.bar == "arms" else setup.arms
