"""The figure from behind and from above, where its side can't tell: hips level, stance, turn-out, knee width.

Heights and lengths are those of the side view's joints; only what lies to the side is added, in figure lengths. From behind the figure's
right is on the right; from above it faces up the picture.
"""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians, sin
from typing import Final

from companion.pictures import props
from companion.pictures.figure import HEAD, SOLE, Joints, Point, along
from companion.pictures.ink import FAR_FILL, FAR_INK, GUIDE, PAPER
from companion.pictures.scene import Area, Disc, Item, Limb, Stroke
from companion.screening.body import FOOT_LENGTH
from companion.screening.tuck import TURN_OUT

HIP_HALF: Final = 0.052
"""Half the distance of the hip joints: about 18 of 175 cm (from memory)."""
SHOULDER_HALF: Final = 0.105
"""Half the distance of the shoulder joints: shoulders .259 of stature wide (Winter, second-hand), less the muscle outside the joints."""
STANCE_HALF: Final = 0.10
"""Half the distance of the heels of a usual squat: about 17 cm to each side (choice)."""
HAND: Final = 0.055
"""A hand's width: about 10 of 175 cm."""
INSET: Final = 0.8
"""Size of what is drawn from above in a corner."""
WIDER_TURN: Final = 10.0
"""How much further feet that stand wider turn out, in degrees: as the estimate has it."""

_SOLE: Final = ((0.0, 0.0), (0.184, 0.066), (0.224, 0.329), (0.276, 0.691), (0.224, 0.954), (0.0, 1.0), (-0.197, 0.888), (-0.237, 0.658),
                (-0.197, 0.329), (-0.171, 0.066), (0.0, 0.0))
"""A right sole's outline in foot lengths, from the heel to the toes (choice, for the eye)."""


def sole(heel: Point, turn: float, ink: str, dashed: bool = False, left: bool = False, size: float = 1.0) -> tuple[Item, ...]:
    """A foot from above, toes up the picture, turned out by some degrees; the left one's outline is the right one's mirror image."""
    way, c, s, long = -1 if left else 1, cos(radians(turn)), sin(radians(turn)), size * FOOT_LENGTH
    points = tuple((heel[0] + way * long * (x * c + y * s), heel[1] + long * (y * c - x * s)) for x, y in _SOLE)
    return (Stroke(points, ink, 0.009, 0.02),) if dashed else (Area(points, ink),)


def hollow_sole(heel: Point, turn: float, left: bool = False, size: float = 1.0) -> tuple[Item, ...]:
    """A sole that faces the viewer, light with an edge."""
    inner, edge = sole(heel, turn, FAR_FILL, left=left, size=size), sole(heel, turn, FAR_INK, dashed=True, left=left, size=size)
    return (*inner, *(replace(one, dash=0.0, width=0.007) for one in edge if isinstance(one, Stroke)))


def stance(half: float, turn: float, ink: str, dashed: bool = False, at: Point = (0.0, 0.0)) -> tuple[Item, ...]:
    """Both feet from above: heels so far to each side of a point, turned out by some degrees."""
    return (*sole((at[0] - half, at[1]), turn, ink, dashed, left=True), *sole((at[0] + half, at[1]), turn, ink, dashed))


def wider_stance(at: Point = (0.0, 0.0)) -> tuple[Item, ...]:
    """The usual stance dashed, and each foot a hand's width further out, from above."""
    return (*stance(STANCE_HALF + HAND, TURN_OUT + WIDER_TURN, GUIDE, at=at), *stance(STANCE_HALF, TURN_OUT, FAR_INK, dashed=True, at=at))


def from_above(joints: Joints, at: Point) -> tuple[Item, ...]:
    """A standing figure from above, its feet under its hips."""
    ahead = [at[1] + x - joints.near.ankle[0] for x in (joints.near.heel[0], joints.shoulder[0], joints.head[0])]
    x, head = at[0], (at[0], ahead[2])
    return (*stance(HIP_HALF, TURN_OUT / 2, FAR_INK, at=(x, ahead[0])),
            Limb((x - SHOULDER_HALF, ahead[1]), (x + SHOULDER_HALF, ahead[1]), 0.045, 0.045),
            Disc(head, HEAD + 0.007, PAPER), Disc(head, HEAD), Disc(along(head, 90, HEAD), 0.014))


def shins_from_above(joints: Joints, half: float, at: Point) -> tuple[Item, ...]:
    """Knees, shins and feet of a kneeling figure from above, knees to the right, so far to each side, at INSET of its size; apart, with
    an arrow."""
    back, half, x = at[0] + INSET * (joints.near.ankle[0] - joints.near.knee[0]), INSET * half, at[0] + 0.06
    shins = (Limb((at[0], at[1] + way * half), (back, at[1] + way * half), 0.034 * INSET, 0.021 * INSET, FAR_INK) for way in (-1, 1))
    feet = (*hollow_sole((back + 0.02, at[1] + half), -90, size=INSET), *hollow_sole((back + 0.02, at[1] - half), 90, True, INSET))
    apart = () if half < 0.034 else (*props.arrow((x, at[1]), (x, at[1] + half)), *props.arrow((x, at[1]), (x, at[1] - half)))
    return (*shins, *feet, *apart, *props.note((at[0] - 0.12, at[1] + 0.16), "from above", "m", FAR_INK, 13),
            *props.note((at[0] - 0.01, at[1] - 0.16), "knees", "m", FAR_INK, 13),
            *props.note((back - 0.06, at[1] - 0.16), "feet", "m", FAR_INK, 13))


def from_behind(joints: Joints, hike: float) -> tuple[Item, ...]:
    """Hands and knees from behind, the near (right) leg reaching back, its sole towards the viewer.

    ``joints``: of the side view. ``hike``: degrees the right hip is higher than the left, on whose knee the figure kneels.
    """
    hip, shoulder, hand, low = joints.hip[1], joints.shoulder[1], joints.near_arm.hand[1], (-HIP_HALF, joints.hip[1])
    high = along(low, hike, 2 * HIP_HALF)
    lifted = high[1] - hip
    heel, toe = ((high[0], y + lifted) for y in (joints.near.heel[1], joints.near.toe[1]))
    kneels = -HIP_HALF, joints.far.knee[1]
    left, right = (-SHOULDER_HALF, shoulder), (SHOULDER_HALF, shoulder)
    behind = (Limb(right, (SHOULDER_HALF, hand), 0.027, 0.016, FAR_INK), Disc((0.0, joints.head[1]), HEAD, FAR_INK),
              Limb(left, right, 0.042, 0.042, FAR_INK))
    leg = (Limb(low, kneels, 0.056, 0.035), Limb((-HIP_HALF, SOLE), (-HIP_HALF, 0.05), 0.026, 0.022, FAR_INK))
    line: Item = Stroke((along(low, hike + 180, 0.16), along(high, hike, 0.16)), GUIDE, 0.012)
    level: Item = Stroke(((low[0] - 0.16, hip), (HIP_HALF + 0.17, hip)), GUIDE, 0.006, 0.02)
    return (*behind, *leg, Limb(low, high, 0.070, 0.070), Limb(heel, toe, 0.030, 0.036, FAR_INK),
            line, *((level,) if hike else ()), *props.limb_name((0.24, toe[1] - 0.01), "{SIDE}"),
            *props.note((-0.26, hip + 0.06), "hips"))


