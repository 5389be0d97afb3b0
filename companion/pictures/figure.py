"""One jointed figure seen from the side: pelvis, lumbar curve and rib cage, head and limbs. Pure planar kinematics.

The trunk's line, hip to shoulder, is the screening's lean. Pelvis and rib cage are rigid; the lumbar curve between them bends. Where it
flexes at the same lean, the pelvis turns back and the rib cage forward, so that balance and depth stay what they were.

Lengths are fractions of stature: Drillis & Contini 1966, as in Winter's textbook (second-hand; arm, hand and head from memory). Angles
are directions in degrees: 0 the way the figure faces, 90 up. x grows the way it faces, y up, the floor is y = 0. Facing right, the near
side is the right one; the left is the mirror image.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace
from math import acos, asin, atan2, cos, degrees, hypot, radians, sin
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
# Hip joint to the lumbosacral joint, lumbar curve, and from it to the shoulder, as shares of the chain (choice, from memory: about 10, 18
# and 22 cm of a trunk of 50). The whole is scaled so that a neutral back is as long as the trunk.
PELVIS, LUMBAR, RIBS = 0.060, 0.105, 0.124
LORDOSIS: Final = 20.0  # bend of the neutral lumbar curve in degrees (choice: a level on the skin shows about 20 to 35, from memory)
LUMBAR_STEPS: Final = 12  # segments of the drawn lumbar curve


@dataclass(frozen=True, slots=True)
class Leg:
    """Directions of thigh (from the hip), shin (from the knee) and foot (heel to toe). ``thigh_seen``, ``shin_seen``: visible share of
    their length, less out to the side; the foot is shortened with the shin."""

    thigh: float
    shin: float
    foot: float = 0.0
    thigh_seen: float = 1.0
    shin_seen: float = 1.0


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
    """A whole figure. ``trunk``: direction hip to shoulder; ``flexion``: of the lumbar curve from neutral in degrees, extension
    negative; ``far`` None: like the near side."""

    trunk: float
    near: Leg
    near_arm: Arm | Reach
    far: Leg | None = None
    far_arm: Arm | Reach | None = None
    flexion: float = 0.0
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
    """Joint positions of a posture; directions of the pelvis (hip to lumbosacral joint) and the rib cage; points of the lumbar curve."""

    hip: Point
    pelvis: float
    lumbar: tuple[Point, ...]
    ribs: float
    shoulder: Point
    head: Point
    near: LegJoints
    far: LegJoints
    near_arm: ArmJoints
    far_arm: ArmJoints


def along(start: Point, direction: float, length: float) -> Point:
    """Return the point at a distance from another in a direction."""
    return start[0] + length * cos(radians(direction)), start[1] + length * sin(radians(direction))


def middle(start: Point, end: Point) -> Point:
    """Return the point half way between two others."""
    return (start[0] + end[0]) / 2, (start[1] + end[1]) / 2


def direction(start: Point, end: Point) -> float:
    """Return the direction from one point to another, in degrees, above -180 and up to 180."""
    return degrees(atan2(end[1] - start[1], end[0] - start[0]))


def joints_of(posture: Posture, build: Build = AVERAGE) -> Joints:
    """Return the joint positions on the floor: standing with the near ankle at x = 0, kneeling with the near knee, lying with the hip."""
    near, far = posture.near, posture.far or posture.near
    hip = _hip_over_floor(posture, build)
    pelvis, lumbar, ribs, shoulder = _trunk(hip, posture, build)
    head = along(shoulder, posture.trunk if posture.head is None else posture.head, NECK)
    near_arm = _arm(shoulder, posture.near_arm)
    return Joints(hip, pelvis, lumbar, ribs, shoulder, head, _leg(hip, near, build), _leg(hip, far, build), near_arm,
                  near_arm if posture.far_arm is None else _arm(shoulder, posture.far_arm))


def _chain(flexion: float) -> tuple[Point, ...]:
    """Return lumbosacral joint, points of the curve and shoulder of an unscaled trunk whose pelvis points straight up from (0, 0)."""
    bend, points = LORDOSIS - flexion, [along((0.0, 0.0), 90, PELVIS)]
    for n in range(LUMBAR_STEPS):
        points.append(along(points[-1], 90 + bend * (n + 0.5) / LUMBAR_STEPS, LUMBAR / LUMBAR_STEPS))
    return (*points, along(points[-1], 90 + bend, RIBS))


def _trunk(hip: Point, posture: Posture, build: Build) -> tuple[float, tuple[Point, ...], float, Point]:
    """Return the pelvis' direction, the lumbar curve, the rib cage's direction and the shoulder, which lies along the trunk's line."""
    chain = _chain(posture.flexion)
    size = build.trunk / hypot(*_chain(0.0)[-1])
    turn = posture.trunk - direction((0.0, 0.0), chain[-1])
    placed = [along(hip, direction((0.0, 0.0), point) + turn, size * hypot(*point)) for point in chain]
    return 90 + turn, tuple(placed[:-1]), 90 + turn + LORDOSIS - posture.flexion, placed[-1]


def turned(start: float, end: float) -> float:
    """Return the turn from one direction to another in degrees, from -180 up to 180."""
    return (end - start + 180) % 360 - 180


def _hip_over_floor(posture: Posture, build: Build) -> Point:
    if posture.on == "back":
        return 0.0, LYING + 0.0015 * posture.flexion  # a pelvis that rolls under lifts off the floor
    leg = _leg((0.0, 0.0), posture.near, build)
    if posture.on == "knees":
        return -leg.knee[0], KNEELING - leg.knee[1]
    lowest = min(leg.heel[1], leg.toe[1])
    return (-leg.ankle[0] if posture.on == "feet" else -leg.toe[0]), SOLE - lowest


def _leg(hip: Point, leg: Leg, build: Build) -> LegJoints:
    knee = along(hip, leg.thigh, build.thigh * leg.thigh_seen)
    ankle = along(knee, leg.shin, build.shank * leg.shin_seen)
    under = along(ankle, leg.foot - 90, ANKLE_HEIGHT - SOLE)
    return LegJoints(knee, ankle, along(under, leg.foot + 180, (1 - ANKLE_BEHIND_TOE) * FOOT_LENGTH * leg.shin_seen),
                     along(under, leg.foot, ANKLE_BEHIND_TOE * FOOT_LENGTH * leg.shin_seen))


def _arm(shoulder: Point, arm: Arm | Reach) -> ArmJoints:
    if isinstance(arm, Arm):
        elbow = along(shoulder, arm.upper, UPPER_ARM * arm.seen)
        wrist = along(elbow, arm.fore, FOREARM * arm.seen)
        return ArmJoints(elbow, wrist, along(wrist, arm.fore, HAND_LENGTH))
    far, to = hypot(arm.x - shoulder[0], arm.y - shoulder[1]), direction(shoulder, (arm.x, arm.y))
    reach = min(far, UPPER_ARM + FOREARM)
    wrist = along(shoulder, to, reach)
    flat = along(shoulder, to, reach * UPPER_ARM / (UPPER_ARM + FOREARM))
    elbow = flat if not arm.bend else joint_between(shoulder, wrist, UPPER_ARM, FOREARM, arm.bend)
    return ArmJoints(elbow, wrist, along(wrist, direction(elbow, wrist) if arm.palm is None else arm.palm, HAND_LENGTH))


def joint_between(start: Point, end: Point, first: float, second: float, bend: float) -> Point:
    """Return the joint of two links between two points; ``bend``: 1 to the right of the way from one to the other, -1 to the left."""
    apart = hypot(end[0] - start[0], end[1] - start[1])
    share = (first**2 + apart**2 - second**2) / (2 * first * apart) if apart else 0.0
    return along(start, direction(start, end) - bend * degrees(acos(max(-1.0, min(1.0, share)))), first)


def planted(posture: Posture, build: Build = AVERAGE) -> Posture:
    """Return the posture with the far leg swung about the hip until its foot stands on the floor behind it."""
    far, joints = posture.far or posture.near, joints_of(posture, build)
    hip, leg = joints.hip, joints.far
    low = (leg.ankle[1] - min(leg.heel[1], leg.toe[1]) + SOLE - hip[1]) / hypot(leg.ankle[0] - hip[0], leg.ankle[1] - hip[1])
    by = direction(hip, leg.ankle) + 180 + degrees(asin(low))
    return replace(posture, far=Leg(far.thigh - by, far.shin - by, far.foot))


T = TypeVar("T")


def between(one: T, other: T, share: float) -> T:
    """Return a posture interpolated between two of the same structure."""
    if isinstance(one, float | int) and isinstance(other, float | int):
        return one + (other - one) * share  # type: ignore[return-value, operator]
    if is_dataclass(one) and not isinstance(one, type):
        changed: dict[str, Any] = {f.name: between(getattr(one, f.name), getattr(other, f.name), share) for f in fields(one)}
        return replace(one, **changed)
    return one
