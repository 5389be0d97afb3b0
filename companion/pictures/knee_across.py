"""The lying stretch that draws a knee across: one body, as points in space, seen from the side and from above.

A point in space is how far along the body (the feet to the right), how high, and how far across it, away from who sees it from the side.
"""

from __future__ import annotations

from dataclasses import replace
from math import acos, cos, dist, radians, sin
from typing import Final

from companion.pictures import props
from companion.pictures.draw import Panel
from companion.pictures.drawing import Drawing
from companion.pictures.figure import (
    FOREARM,
    HAND_LENGTH,
    HEAD,
    LYING,
    SHANK_LENGTH,
    THIGH_LENGTH,
    UPPER_ARM,
    ArmJoints,
    Joints,
    LegJoints,
    Point,
    along,
    joints_of,
)
from companion.pictures.ink import BODY, FAR_INK, PAPER
from companion.pictures.lying import LIES
from companion.pictures.scene import THIGH, Area, Disc, Item, Limb, figure, hollow
from companion.pictures.views import HIP_HALF, SHOULDER_HALF, hollow_sole
from companion.screening.sources import value

InSpace = tuple[float, float, float]
THIGH_WAY: Final = 116.0
"""Direction of the drawn thigh from the side, in degrees."""
SHIN_WAY: Final = 26.0
THIGH_ACROSS: Final = 22.0
"""How far that thigh points across the body, in degrees."""
OUT: Final = 56.0
"""How far the crossing knee points up and to the feet, rather than out to its side, in degrees."""
BACK_OF_THIGH: Final = THIGH_WAY - 90
"""Direction from the drawn thigh to its back, where the hands hold. These five are choices, for the eye."""


def side(at: InSpace) -> Point:
    """Return where a point is seen from the side."""
    return at[0], at[1]


def above(at: InSpace) -> Point:
    """Return where a point is seen from above."""
    return at[0], at[2]


def _off(at: InSpace, way: float, far: float, across: float = 0.0) -> InSpace:
    """Return the point so far from another in a direction seen from the side, and so far across."""
    return (*along(side(at), way, far), at[2] + across)


def _on(start: InSpace, end: InSpace, share: float) -> InSpace:
    """Return the point at a share of the way between two others."""
    return (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share, start[2] + (end[2] - start[2]) * share)


def _joint(start: InSpace, end: InSpace, first: float, second: float, towards: InSpace) -> InSpace:
    """Return the joint of two links between two points, on the side that ``towards`` points to."""
    apart = dist(start, end)
    way = _on((0.0, 0.0, 0.0), (end[0] - start[0], end[1] - start[1], end[2] - start[2]), 1 / apart)
    part = sum(a * b for a, b in zip(way, towards, strict=True))
    out = (towards[0] - part * way[0], towards[1] - part * way[1], towards[2] - part * way[2])
    angle = acos(min(1.0, (first**2 + apart**2 - second**2) / (2 * first * apart)))
    on, off = first * cos(angle), first * sin(angle) / dist((0.0, 0.0, 0.0), out)
    return start[0] + on * way[0] + off * out[0], start[1] + on * way[1] + off * out[1], start[2] + on * way[2] + off * out[2]


HIP: Final[InSpace] = (0.0, LYING, -HIP_HALF)
KNEE: Final[InSpace] = _off(HIP, THIGH_WAY, THIGH_LENGTH * cos(radians(THIGH_ACROSS)), THIGH_LENGTH * sin(radians(THIGH_ACROSS)))
ANKLE: Final[InSpace] = _off(KNEE, SHIN_WAY, SHANK_LENGTH)
OTHER_HIP: Final[InSpace] = (0.0, LYING, HIP_HALF)
OTHER_ANKLE: Final[InSpace] = _off(_on(HIP, KNEE, 0.84), BACK_OF_THIGH + 180, 0.035)
OTHER_KNEE: Final[InSpace] = _joint(OTHER_HIP, OTHER_ANKLE, THIGH_LENGTH, SHANK_LENGTH,
                                    _off((0.0, 0.0, 0.0), BACK_OF_THIGH, sin(radians(OUT)), cos(radians(OUT))))
SHOULDER: Final[InSpace] = (*joints_of(LIES).shoulder, -SHOULDER_HALF)
OTHER_SHOULDER: Final[InSpace] = (SHOULDER[0], SHOULDER[1], SHOULDER_HALF)


def _arm(shoulder: InSpace, share: float, way: int) -> tuple[InSpace, InSpace, InSpace]:
    """Return elbow, wrist and hand of an arm that holds the back of the drawn thigh, from the side ``way`` (across) of it."""
    wrist = _off(_on(HIP, KNEE, share), BACK_OF_THIGH, 0.055, 0.050 * way)
    return (_joint(shoulder, wrist, UPPER_ARM, FOREARM, (0.0, -0.4, 1.0 * way)), wrist,
            _off(wrist, BACK_OF_THIGH + 40, HAND_LENGTH * 0.8, -HAND_LENGTH * 0.6 * way))


ARM, OTHER_ARM = _arm(SHOULDER, 0.56, -1), _arm(OTHER_SHOULDER, 0.34, 1)


def body() -> Joints:
    """Return the joints as seen from the side: near the drawn leg, far the crossing leg, whose sole faces the viewer."""
    under = along(side(ANKLE), 10, 0.025)
    foot = along(under, 280, 0.035), along(under, 100, 0.115)
    near, far = (ArmJoints(*map(side, arm)) for arm in (ARM, OTHER_ARM))
    return replace(joints_of(LIES), near=LegJoints(side(KNEE), side(ANKLE), *foot), near_arm=near, far_arm=far,
                   far=LegJoints(side(OTHER_KNEE), side(OTHER_ANKLE), side(OTHER_ANKLE), side(OTHER_ANKLE)))


def _limbs(points: tuple[InSpace, ...], halves: tuple[float, ...], ink: str = BODY) -> tuple[Limb, ...]:
    """Return limbs through points as seen from above."""
    return tuple(Limb(above(a), above(b), c, d, ink) for a, b, c, d in zip(points, points[1:], halves, halves[1:], strict=False))


def lying_from_above() -> tuple[Item, ...]:
    """Return the body from above, head to the left, face up: what is higher lies over what is lower."""
    x, head = SHOULDER[0], joints_of(LIES).head[0]
    half = [(x - 0.02, 0.125), (x + 0.09, 0.095), (-0.08, 0.075), (0.0, 0.092), (0.045, 0.075)]
    trunk = Area((*half, *((a, -b) for a, b in reversed(half))), BODY)
    arms = (*_limbs((SHOULDER, *ARM), (0.027, 0.021, 0.015, 0.013)),
            *hollow(_limbs((OTHER_SHOULDER, *OTHER_ARM), (0.027, 0.021, 0.015, 0.013), FAR_INK)))
    toes = _off(ANKLE, 100, 0.06)
    drawn = *_limbs((ANKLE, toes), (0.022, 0.026)), *_limbs((KNEE, ANKLE), (0.034, 0.021))
    thigh, shin = (hollow(_limbs(points, halves, FAR_INK)) for points, halves in (
        ((OTHER_HIP, OTHER_KNEE), (THIGH, THIGH)), ((OTHER_KNEE, OTHER_ANKLE), (0.034, 0.021))))
    foot = hollow((Limb(above(_off(OTHER_ANKLE, 0, 0.012, -0.02)), above(_off(OTHER_ANKLE, 180, 0.04, -0.045)), 0.024, 0.026, FAR_INK),))
    return (Limb((head + HEAD, 0.0), (x, 0.0), 0.032, 0.036), trunk, Disc((head, 0.0), HEAD + 0.008, PAPER), Disc((head, 0.0), HEAD),
            *arms, *thigh, *_limbs((HIP, KNEE), (THIGH, THIGH)), *shin, *foot, *drawn)


def drill_lying_knee_across_pull() -> Drawing:
    """Lying, one ankle over the other knee, that knee drawn by both hands to the opposite shoulder; from the side and from above."""
    joints = body()
    hands = joints.near_arm.hand
    other_hand = hollow((Limb(joints.far_arm.wrist, joints.far_arm.hand, 0.018, 0.016, FAR_INK),))
    foot = hollow_sole(along(side(OTHER_ANKLE), -96, 0.05), -6)
    seen = (*figure(joints), *other_hand, *foot, *props.floor(-0.6, 0.75),
            *props.note((-0.27, 0.44), "ankle on knee"), *props.arrow((-0.21, 0.41), along(side(OTHER_ANKLE), 140, 0.04)),
            *props.note((0.29, 0.115), "both hands"), *props.note((0.29, 0.065), "behind thigh"),
            *props.arrow((0.20, 0.155), along(hands, -10, 0.025)))
    pull = (*props.arrow(above(_on(KNEE, OTHER_SHOULDER, 0.15)), above(OTHER_SHOULDER)),
            *props.note((-0.27, 0.22), "to the opposite shoulder"), *props.note((0.17, -0.14), "from above", "m", FAR_INK, 13))
    return Drawing("lying on the back, one ankle over the other knee, both hands behind that thigh draw the knee towards the "
        f"opposite shoulder; hold {value('stretch_hold'):g} seconds. First from the side, then from above.", (
        Panel(seen, (-0.50, -0.05, 0.44, 0.53), "Lower back stays on the floor", "good"),
        Panel((*lying_from_above(), *pull), (-0.50, -0.17, 0.30, 0.27),
              "Knee towards the opposite shoulder", "good")), rows=(1, 1))
