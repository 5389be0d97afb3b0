"""Angles from the measures a lifter can take: a heel's height, a phone's level, a knee's distance from the wall.

All angles in degrees, lengths in cm. Body segments as fractions of stature: Drillis & Contini 1966, as in Winter's
textbook (second-hand).
"""

from __future__ import annotations

from math import asin, atan2, cos, degrees, hypot, radians, sin
from typing import Final, Literal

from companion.screening.body import ANKLE_HEIGHT, FOOT_LENGTH, KNEE_HEIGHT
from companion.screening.sources import value

Lean = Literal["short", "past", "flat"]

# From memory, rounded (choice): the hip joint of a person on the back lies about 9 cm above the floor; the ankle
# joint stands about three quarters of the foot's length behind the big toe; the kneecap about 4 cm in front of the
# knee joint.
HIP_ABOVE_FLOOR: Final = value("hip_above_floor")
ANKLE_BEHIND_TOE: Final = value("ankle_behind_toe")
KNEECAP: Final = value("kneecap")
# Above this a degree moves the heel by 0.4 cm without the hip's height and 0.6 with it, so the height says little.
HEEL_TOP: Final = value("heel_height_top")
FLIP: Final = value("phone_flip")
SHIN_TOP: Final = value("shin_top")  # degrees from upright
SHIN_BY_TAPE_SD: Final = value("shin_by_tape_sd")


def leg_raise_from_heel(heel: float, leg: float, hip: float = HIP_ABOVE_FLOOR) -> float:
    """Return the straight-leg-raise angle from the height of the back of the heel above the floor.

    ``heel``: cm above the floor, 0 with the leg flat. ``leg``: hip joint (the bony bump at the side of the hip) to
    heel, cm. ``hip``: hip joint above the floor, cm. The leg turns about the hip joint, which lies above the floor:
    with the leg flat the heel is ``hip`` below it, so heel = hip*(1 - cos a) + leg*sin a. Near 70 deg, 1 cm of heel is
    1.5 deg and 1 cm of hip 1 deg. Plain geometry. Raises ValueError for an unlikely leg, a negative height, or an angle above 75 deg.
    """
    if not 50 <= leg <= 130:
        raise ValueError(f"a leg of {leg:g} cm is not likely: measure from the hip's bony bump to the heel")
    if heel < 0:
        raise ValueError("a heel can't be below the floor")
    reach = hypot(leg, hip)
    rise = (heel - hip) / reach
    angle = degrees(atan2(hip, leg) + asin(min(rise, 1.0)))
    if rise > 1 or angle > HEEL_TOP + 1e-9:
        raise ValueError(f"above {HEEL_TOP:g} degrees the heel's height says too little: use the level, or judge by eye")
    return angle


def highest_heel(leg: float, hip: float = HIP_ABOVE_FLOOR) -> float:
    """Return the heel's height in cm at 75 degrees: above it, use the eye or a level instead."""
    return hip * (1 - cos(radians(HEEL_TOP))) + leg * sin(radians(HEEL_TOP))


def leg_raise_from_level(shown: float, lean: Lean | None = None) -> float:
    """Return the straight-leg-raise angle from the floor, 0-180, from a phone level that shows 0-90.

    Many levels turn over at 45 and count from the nearer axis. ``lean``: the leg was nearer upright, "short" of it or
    "past" it, or nearer "flat". Above 45 shown, the level counts from the floor: only "past" changes it (180 - shown).
    Raises ValueError outside 0-90, and without a lean but at 90: what is shown can mean two angles.
    """
    if not 0 <= shown <= 90:
        raise ValueError(f"a level shows 0 to 90 degrees, not {shown:g}")
    if lean is None and shown < 90:
        raise ValueError(f"{shown:g} degrees could be short of upright or past it: which was it?")
    if shown > FLIP:
        return 180 - shown if lean == "past" else shown
    assert lean is not None
    return {"flat": shown, "short": 90 - shown, "past": 90 + shown}[lean]



def furthest_reach(height: float | None) -> float:
    """Return the knee-to-wall distance in cm past which no shin reaches with the heel down: 70 degrees from upright in the triangle of
    ``shin_from_distance``. ``height`` in cm; where it is not known that of a tall person, 200 cm, which refuses less."""
    tall = min(max(height or 200.0, 120.0), 230.0)
    return sin(radians(SHIN_TOP)) * (KNEE_HEIGHT - ANKLE_HEIGHT) * tall - ANKLE_BEHIND_TOE * FOOT_LENGTH * tall + KNEECAP


def shin_from_distance(distance: float, height: float) -> float:
    """Return an estimate of the shin angle from upright for a knee-to-wall distance and a height, both in cm.

    The shank is a stick from the ankle joint to the knee joint; the ankle is three quarters of the foot behind the
    toe, the kneecap touches the wall: sin a = (distance + ankle behind toe - kneecap) / shank. One standard deviation
    is ``SHIN_BY_TAPE_SD``: 1.5 cm each of ankle and kneecap and 1 cm of shank are 2.6, 2.6 and 1.1, body-segment spread does the
    rest (choice). Never compare it with a measured angle or use it in a series: the ratio of published means is 3.5 deg/cm, the slope of
    this triangle 1.7.
    Raises ValueError if the triangle does not close.
    """
    if not 120 <= height <= 230:
        raise ValueError(f"a height of {height:g} cm is not likely")
    share = (distance + ANKLE_BEHIND_TOE * FOOT_LENGTH * height - KNEECAP) / ((KNEE_HEIGHT - ANKLE_HEIGHT) * height)
    if distance < 0 or share >= 1:
        raise ValueError(f"no shin reaches {distance:g} cm at a height of {height:g} cm")
    return degrees(asin(share))
