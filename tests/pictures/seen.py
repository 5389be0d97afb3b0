"""What a panel shows, measured from its items alone: joints in centimetres of a body of 175, angles in degrees."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import dist

from companion.pictures.draw import Panel
from companion.pictures.drawing import Drawing
from companion.pictures.figure import HEAD, LORDOSIS, Arm, Joints, Leg, Point, Posture, direction, joints_of, turned
from companion.pictures.ink import BODY, FAR_INK
from companion.pictures.scene import Area, Disc, Item, Label, Limb, Stroke

CM = 1 / 175
THIGH, SHIN, FOOT = (0.035, 0.035), (0.034, 0.021), (0.014, 0.014 * 0.8)
UPPER_ARM, FOREARM, HAND, NECK = (0.027, 0.021), (0.021, 0.015), (0.016, 0.013), (0.034, 0.028)


def limb(items: tuple[Item, ...], halves: tuple[float, float], ink: str = BODY) -> Limb:
    """The last drawn limb of these half-widths: the near one in the body's ink, the far one in the far ink."""
    return [one for one in items if isinstance(one, Limb) and (one.start_half, one.end_half) == halves and one.ink == ink][-1]


def of(items: tuple[Item, ...], kind: type, **like: object) -> list:
    """The items of a kind with these values."""
    return [one for one in items if isinstance(one, kind) and all(getattr(one, key) == value for key, value in like.items())]


def to_line(point: Point, start: Point, end: Point) -> float:
    """Distance of a point from a stretch between two others."""
    length = dist(start, end)
    share = max(0.0, min(1.0, ((point[0] - start[0]) * (end[0] - start[0]) + (point[1] - start[1]) * (end[1] - start[1])) / length**2))
    return dist(point, (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share))


@dataclass(frozen=True)
class Seen:
    """One panel of a drawing, or one frame of a loop."""

    drawing: Drawing
    number: int = 0
    frame: int = 0

    @cached_property
    def panel(self) -> Panel:
        return self.drawing.panels[self.number]

    @cached_property
    def items(self) -> tuple[Item, ...]:
        return self.drawing.frames[self.frame] if self.drawing.frames and not self.number else self.panel.items

    @cached_property
    def all(self) -> list[Seen]:
        """Every frame of a loop."""
        return [Seen(self.drawing, 0, n) for n in range(len(self.drawing.frames))]

    @cached_property
    def panels(self) -> list[Seen]:
        return [Seen(self.drawing, n) for n in range(len(self.drawing.panels))]

    def part(self, halves: tuple[float, float], far: bool = False) -> Limb:
        return limb(self.items, halves, FAR_INK if far else BODY)

    def way(self, halves: tuple[float, float], far: bool = False) -> float:
        """Direction of a limb in degrees."""
        one = self.part(halves, far)
        return direction(one.start, one.end)

    def hip(self, far: bool = False) -> Point:
        return self.part(THIGH, far).start

    def knee(self, far: bool = False) -> Point:
        return self.part(THIGH, far).end

    def ankle(self, far: bool = False) -> Point:
        return self.part(SHIN, far).end

    def wrist(self, far: bool = False) -> Point:
        return self.part(FOREARM, far).end

    @cached_property
    def shoulder(self) -> Point:
        return self.part(UPPER_ARM).start

    @cached_property
    def lean(self) -> float:
        """Direction of the trunk from hip to shoulder."""
        return direction(self.hip(), self.shoulder)

    def bent(self, far: bool = False) -> float:
        """Bend of the knee: 0 straight."""
        return abs(turned(self.way(THIGH, far), self.way(SHIN, far)))

    def heel_off(self, far: bool = False) -> float:
        """Height of the heel's sole over the floor in cm."""
        foot = self.part(FOOT, far)
        return (foot.start[1] - foot.start_half) / CM

    @cached_property
    def toe(self) -> float:
        foot = self.part(FOOT)
        return foot.end[0] + foot.end_half

    @cached_property
    def trunk(self) -> Area:
        return next(one for one in self.items if isinstance(one, Area) and one.outlined)

    @cached_property
    def pelvis(self) -> float:
        """Direction of the mark on the sacrum, against the trunk."""
        mark = next(one for one in self.items if isinstance(one, Stroke) and one.width == 0.013).points
        return turned(self.lean, direction(*mark))

    @cached_property
    def bar(self) -> Disc:
        return next(one for one in self.items if isinstance(one, Disc) and one.hole == 0.008)

    @cached_property
    def head(self) -> Disc:
        return next(one for one in self.items if isinstance(one, Disc) and one.radius == HEAD)

    @cached_property
    def wall(self) -> float:
        """Where the wall stands: the upright line as wide as the floor's."""
        return next(one.points[0][0] for one in self.items if isinstance(one, Stroke) and one.width == 0.009
                    and one.points[0][0] == one.points[1][0] and one.points[0][1] == 0)

    @cached_property
    def labels(self) -> list[str]:
        return [one.text for one in self.items if isinstance(one, Label)]


@dataclass(frozen=True, slots=True)
class JointAngles:
    """Angles of the near side in degrees: hip (thigh against the trunk's line), pelvis (turned back from neutral), lumbar flexion, knee,
    ankle (shin over the foot, 0 at a right angle), shoulder (from hanging along the trunk), elbow. 0 is standing, arms hanging."""

    hip: float
    pelvis: float
    lumbar: float
    knee: float
    ankle: float
    shoulder: float
    elbow: float


def angles_of(joints: Joints) -> JointAngles:
    """Return the joint angles of a figure's near side, measured from its joint positions."""
    leg, arm = joints.near, joints.near_arm
    trunk, thigh, shin = direction(joints.hip, joints.shoulder), direction(joints.hip, leg.knee), direction(leg.knee, leg.ankle)
    upper, fore = direction(joints.shoulder, arm.elbow), direction(arm.elbow, arm.wrist)
    neutral = 90 - joints_of(Posture(90, Leg(-90, -90), Arm(-90, -90))).pelvis  # of the trunk's line against the pelvis
    return JointAngles(abs(turned(trunk + 180, thigh)), turned(trunk - neutral, joints.pelvis),
                       LORDOSIS - turned(joints.pelvis, joints.ribs), turned(shin, thigh),
                       turned(90, turned(direction(leg.heel, leg.toe), shin + 180)) * -1, turned(trunk + 180, upper), turned(upper, fore))
