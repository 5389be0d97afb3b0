"""One jointed figure seen from the side: joint positions from segment angles. Pure geometry.

Lengths are fractions of stature: Drillis & Contini 1966, as in Winter's textbook (second-hand; arm, hand and head from memory). Angles
are directions in degrees: 0 the way the figure faces, 90 up. x grows the way it faces, y up, the floor is y = 0. Facing right, the near
side is the right one; the left is the mirror image.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from itertools import pairwise
from math import acos, atan2, cos, degrees, hypot, radians, sin
from typing import Any, Final, Literal, TypeVar

from companion.screening.body import ANKLE_HEIGHT, FOOT_LENGTH, HIP_HEIGHT, KNEE_HEIGHT, SHOULDER_HEIGHT
from companion.screening.geometry import ANKLE_BEHIND_TOE

Point = tuple[float, float]
Ground = Literal["feet", "toes", "knees", "back"]

SHANK_LENGTH: Final = KNEE_HEIGHT - ANKLE_HEIGHT
THIGH_LENGTH: Final = HIP_HEIGHT - KNEE_HEIGHT
TRUNK_LENGTH: Final = SHOULDER_HEIGHT - HIP_HEIGHT
UPPER_ARM: Final = 0.186
FOREARM: Final = 0.146
HAND_LENGTH: Final = 0.05  # of .108: the palm, fingers bent (choice)
HEAD: Final = 0.065  # half of chin to crown, .130
NECK: Final = 0.117  # shoulder to the middle of the head

SOLE: Final = 0.014  # half the drawn foot's thickness (choice), so that it stands on the floor
KNEELING: Final = 0.030  # height of the knee joint, kneeling (choice)
LYING: Final = 0.052  # height of the hip joint, lying: about 9 cm (memory)
SPINE: Final = 48  # segments of the spine's line
LORDOSIS: Final = 14.0  # forward tilt of the pelvis against the trunk's line in a neutral back (choice, for the eye)


@dataclass(frozen=True, slots=True)
class Leg:
    """Directions of thigh (from the hip), shin (from the knee) and foot (heel to toe)."""

    thigh: float
    shin: float
    foot: float = 0.0


@dataclass(frozen=True, slots=True)
class Arm:
    """Directions of upper arm and forearm. ``seen``: visible share of their length, 1 in the plane, less out to the side."""

    upper: float
    fore: float
    seen: float = 1.0


@dataclass(frozen=True, slots=True)
class Reach:
    """An arm given by its wrist's position: on the floor, a wall, a bar. ``bend``: elbow 1 down or back, -1 up, 0 out to the side;
    ``palm``: the hand's direction, None in line with the forearm."""

    x: float
    y: float
    bend: float = 1.0
    palm: float | None = None


@dataclass(frozen=True, slots=True)
class Posture:
    """A whole figure. ``trunk``: direction hip to shoulder; ``tuck``: posterior tilt of the pelvis in degrees; ``sag``: how far the back
    hangs through; ``far`` None: like the near side."""

    trunk: float
    near: Leg
    near_arm: Arm | Reach
    far: Leg | None = None
    far_arm: Arm | Reach | None = None
    tuck: float = 0.0
    sag: float = 0.0
    head: float | None = None
    on: Ground = "feet"


@dataclass(frozen=True, slots=True)
class Build:
    """Lengths of shank, thigh and trunk as fractions of stature."""

    shank: float = SHANK_LENGTH
    thigh: float = THIGH_LENGTH
    trunk: float = TRUNK_LENGTH


AVERAGE: Final = Build()


@dataclass(frozen=True, slots=True)
class LegJoints:
    """Joint positions of one leg."""

    knee: Point
    ankle: Point
    heel: Point
    toe: Point


@dataclass(frozen=True, slots=True)
class ArmJoints:
    """Joint positions of one arm; ``hand`` is the end of the palm."""

    elbow: Point
    wrist: Point
    hand: Point


@dataclass(frozen=True, slots=True)
class Joints:
    """Joint positions of a posture, and the line of the spine from hip to shoulder."""

    hip: Point
    shoulder: Point
    head: Point
    near: LegJoints
    far: LegJoints
    near_arm: ArmJoints
    far_arm: ArmJoints
    spine: tuple[Point, ...]


def along(start: Point, direction: float, length: float) -> Point:
    """Return the point at a distance from another in a direction."""
    return start[0] + length * cos(radians(direction)), start[1] + length * sin(radians(direction))


def direction(start: Point, end: Point) -> float:
    """Return the direction from one point to another, in degrees, above -180 and up to 180."""
    return degrees(atan2(end[1] - start[1], end[0] - start[0]))


def joints_of(posture: Posture, build: Build = AVERAGE) -> Joints:
    """Return the joint positions on the floor: standing with the near ankle at x = 0, kneeling with the near knee, lying with the hip."""
    near, far = posture.near, posture.far or posture.near
    hip = _hip_over_floor(posture, build)
    shoulder = along(hip, posture.trunk, build.trunk)
    head = along(shoulder, posture.trunk if posture.head is None else posture.head, NECK)
    near_arm = _arm(shoulder, posture.near_arm)
    return Joints(hip, shoulder, head, _leg(hip, near, build), _leg(hip, far, build), near_arm,
                  near_arm if posture.far_arm is None else _arm(shoulder, posture.far_arm), _spine(hip, shoulder, posture))


def _hip_over_floor(posture: Posture, build: Build) -> Point:
    if posture.on == "back":
        return 0.0, LYING + 0.0015 * posture.tuck  # a pelvis that rolls under lifts off the floor
    leg = _leg((0.0, 0.0), posture.near, build)
    if posture.on == "knees":
        return -leg.knee[0], KNEELING - leg.knee[1]
    lowest = min(leg.heel[1], leg.toe[1])
    return (-leg.ankle[0] if posture.on == "feet" else -leg.toe[0]), SOLE - lowest


def _leg(hip: Point, leg: Leg, build: Build) -> LegJoints:
    knee = along(hip, leg.thigh, build.thigh)
    ankle = along(knee, leg.shin, build.shank)
    under = along(ankle, leg.foot - 90, ANKLE_HEIGHT - SOLE)
    return LegJoints(knee, ankle, along(under, leg.foot + 180, (1 - ANKLE_BEHIND_TOE) * FOOT_LENGTH),
                     along(under, leg.foot, ANKLE_BEHIND_TOE * FOOT_LENGTH))


def _arm(shoulder: Point, arm: Arm | Reach) -> ArmJoints:
    if isinstance(arm, Arm):
        elbow = along(shoulder, arm.upper, UPPER_ARM * arm.seen)
        wrist = along(elbow, arm.fore, FOREARM * arm.seen)
        return ArmJoints(elbow, wrist, along(wrist, arm.fore, HAND_LENGTH))
    far, to = hypot(arm.x - shoulder[0], arm.y - shoulder[1]), direction(shoulder, (arm.x, arm.y))
    reach = min(far, UPPER_ARM + FOREARM)
    wrist = along(shoulder, to, reach)
    share = (UPPER_ARM**2 + reach**2 - FOREARM**2) / (2 * UPPER_ARM * reach) if reach else 0.0
    bent = degrees(acos(max(-1.0, min(1.0, share))))
    flat = along(shoulder, to, reach * UPPER_ARM / (UPPER_ARM + FOREARM))
    elbow = flat if not arm.bend else along(shoulder, to - arm.bend * bent, UPPER_ARM)
    return ArmJoints(elbow, wrist, along(wrist, direction(elbow, wrist) if arm.palm is None else arm.palm, HAND_LENGTH))


def _spine(hip: Point, shoulder: Point, posture: Posture) -> tuple[Point, ...]:
    """Return a smooth line from hip to shoulder: hollow in the small of the back if neutral, bowed out if tucked."""
    length = hypot(shoulder[0] - hip[0], shoulder[1] - hip[1])
    low = along(hip, posture.trunk - LORDOSIS + 1.9 * posture.tuck - 1.6 * posture.sag, 0.40 * length)
    high = along(shoulder, posture.trunk + 180 + 7 - 1.1 * posture.tuck + 0.9 * posture.sag, 0.40 * length)
    return tuple(_bezier((hip, low, high, shoulder), n / SPINE) for n in range(SPINE + 1))


def _bezier(points: Sequence[Point], t: float) -> Point:
    while len(points) > 1:
        points = [(a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t) for a, b in pairwise(points)]
    return points[0]


def hip_flexion(joints: Joints, leg: LegJoints) -> float:
    """Return the angle between thigh and the trunk's line in degrees, 0 when straight."""
    bend = direction(joints.hip, leg.knee) - direction(joints.shoulder, joints.hip)
    return abs((bend + 180) % 360 - 180)


def planted(posture: Posture, build: Build = AVERAGE) -> Posture:
    """Return the posture with the far leg swung backwards about the hip until its foot stands on the floor."""
    far = posture.far or posture.near

    def swung(by: float) -> Posture:
        """Return the posture with the far leg swung back by an angle."""
        return replace(posture, far=Leg(far.thigh - by, far.shin - by, far.foot))

    def over(by: float) -> float:
        """Return the far foot's height over the floor."""
        foot = joints_of(swung(by), build).far
        return min(foot.heel[1], foot.toe[1]) - SOLE
    low, high = -45.0, 60.0
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if over(middle) < 0 else (low, middle)
    return swung(low)


T = TypeVar("T")


def between(one: T, other: T, share: float) -> T:
    """Return a posture interpolated between two of the same structure."""
    if isinstance(one, float | int) and isinstance(other, float | int):
        return one + (other - one) * share  # type: ignore[return-value, operator]
    if is_dataclass(one) and not isinstance(one, type):
        changed: dict[str, Any] = {f.name: between(getattr(one, f.name), getattr(other, f.name), share) for f in fields(one)}
        return replace(one, **changed)
    return one
