"""Items of a drawing: strokes, limbs, discs, areas and labels, positioned in figure lengths; and a figure made of them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot
from typing import Final, Literal

from companion.pictures.figure import HEAD, LUMBAR_STEPS, SOLE, ArmJoints, Joints, LegJoints, Point, along, direction
from companion.pictures.ink import BODY, FAR_FILL, FAR_INK, GOOD_INK, GUIDE, INK, PAPER, WATCH_INK

Anchor = Literal["l", "m", "r"]

# The trunk's outline, as distances along a part's line and behind it (choice, for the eye): on the pelvis from the hip joint, on the rib
# cage from its lower end. They turn with their part.
SEAT: Final = ((-0.052, 0.010), (-0.040, 0.050), (-0.004, 0.070))
SACRUM: Final = ((0.036, 0.063), (0.062, 0.055))
GROIN: Final = ((0.060, -0.056), (0.015, -0.058), (-0.040, -0.030))
LOWER_RIBS: Final = ((0.000, 0.047), (0.026, 0.050))
BACK: Final = ((0.075, 0.055), (0.115, 0.043), (0.140, 0.008))
CHEST_LINE: Final = ((0.130, -0.026), (0.095, -0.052), (0.045, -0.060), (0.000, -0.058))
SMALL_DEPTH: Final = 0.043
"""Depth of the small of the back behind the middle of the lumbar curve."""
EDGE: Final = 0.007
"""Width of the outline of a limb on the far side."""
THIGH: Final = 0.035
"""Half a thigh's width to its front all along, so that its top is level where the line from hip to knee is: one meaning of parallel."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line through points. ``width`` in figure lengths; ``dash`` 0 for a solid line; ``head``: an arrowhead at its end."""

    points: tuple[Point, ...]
    ink: str = INK
    width: float = 0.008
    dash: float = 0.0
    head: bool = False


@dataclass(frozen=True, slots=True)
class Limb:
    """A tapered limb between two joints, outlined in paper so that it stands out from what is under it. ``bulge``: wider by this on both
    sides a third of the way down; ``under``: wider at the start on the right of its direction, negative on the left."""

    start: Point
    end: Point
    start_half: float
    end_half: float
    ink: str = BODY
    outlined: bool = True
    bulge: float = 0.0
    under: float = 0.0


@dataclass(frozen=True, slots=True)
class Disc:
    """A filled circle; ``hole``: radius of the hole in its middle."""

    centre: Point
    radius: float
    ink: str = BODY
    hole: float = 0.0


@dataclass(frozen=True, slots=True)
class Area:
    """A filled polygon, outlined in paper if ``outlined``."""

    points: tuple[Point, ...]
    ink: str = INK
    outlined: bool = False


@dataclass(frozen=True, slots=True)
class Label:
    """A label. Its size is in pixels of a phone 390 wide, at any scale of the figure."""

    at: Point
    text: str
    ink: str = INK
    anchor: Anchor = "m"
    size: int = 15


Item = Stroke | Limb | Disc | Area | Label


def mirrored(items: Iterable[Item]) -> tuple[Item, ...]:
    """Return the mirror image, left for right; labels stay readable."""
    return tuple(_placed(item, lambda at: (-at[0], at[1]), {"l": "r", "r": "l", "m": "m"}, -1) for item in items)


def moved(items: Iterable[Item], right: float, up: float = 0.0) -> tuple[Item, ...]:
    """Return the items shifted to the right and up."""
    return tuple(_placed(item, lambda at: (at[0] + right, at[1] + up), {"l": "l", "r": "r", "m": "m"}, 1) for item in items)


def _placed(item: Item, at: Callable[[Point], Point], anchors: Mapping[Anchor, Anchor], under: int) -> Item:
    match item:
        case Stroke() | Area():
            return replace(item, points=tuple(map(at, item.points)))
        case Limb():
            return replace(item, start=at(item.start), end=at(item.end), under=under * item.under)
        case Disc():
            return replace(item, centre=at(item.centre))
        case Label():
            return replace(item, at=at(item.at), anchor=anchors[item.anchor])


def figure(joints: Joints, back: Literal["", "good", "watch", "plain"] = "", two_legs: bool = True) -> tuple[Item, ...]:
    """Return the figure's items, far side first, its limbs hollow. ``back``: the small of the back marked as keeping its shape (a solid
    line), rounding (a dashed one) or without judging it ("plain"). A white mark on the sacrum and a waistband turn with the pelvis."""
    far = hollow((*_leg(joints.hip, joints.far, FAR_INK), *_arm(joints.shoulder, joints.far_arm, FAR_INK))) if two_legs else ()
    items = [*far, Area(outline(joints), BODY, outlined=True), *_head(joints), *_leg(joints.hip, joints.near, BODY), *_pelvis_marks(joints),
             *_arm(joints.shoulder, joints.near_arm, BODY)]
    if back:
        ink = {"good": GOOD_INK, "watch": WATCH_INK}.get(back, GUIDE)
        items.append(Stroke(back_line(joints), ink, 0.018, 0.03 if back == "watch" else 0.0))
    return tuple(items)


def on_pelvis(joints: Joints, up: float, back: float) -> Point:
    """Return a point fixed to the pelvis: so far along its line from the hip joint, and so far behind it."""
    return along(along(joints.hip, joints.pelvis, up), joints.pelvis + 90, back)


def on_ribs(joints: Joints, up: float, back: float) -> Point:
    """Return a point fixed to the rib cage: so far along its line from its lower end, and so far behind it."""
    return along(along(joints.lumbar[-1], joints.ribs, up), joints.ribs + 90, back)


def back_line(joints: Joints, off: float = 0.0) -> tuple[Point, ...]:
    """Return the skin line of the small of the back, from sacrum to lower ribs, ``off`` away from the skin."""
    sacrum = [on_pelvis(joints, up, back + off) for up, back in SACRUM]
    ribs = [on_ribs(joints, up, back + off) for up, back in LOWER_RIBS]
    return smooth((*sacrum, along(joints.lumbar[LUMBAR_STEPS // 2], (joints.pelvis + joints.ribs) / 2 + 90, SMALL_DEPTH + off), *ribs))


def pointers(joints: Joints, dash: float = 0.0) -> tuple[Item, ...]:
    """Return thin lines that carry on straight from tail bone and lower ribs, off the skin: their ends show a turn of few degrees."""
    return tuple(Stroke((on(joints, *start), on(joints, *end)), FAR_INK if dash else GUIDE, 0.007, dash) for on, start, end in (
        (on_pelvis, (0.036, 0.078), (-0.110, 0.123)), (on_ribs, (0.026, 0.065), (0.170, 0.082))))


def small_of_back(joints: Joints, off: float = 0.0) -> Point:
    """Return the middle of the small of the back on the skin, or ``off`` away from it."""
    return along(joints.lumbar[LUMBAR_STEPS // 2], (joints.pelvis + joints.ribs) / 2 + 90, SMALL_DEPTH + off)


def outline(joints: Joints) -> tuple[Point, ...]:
    """Return the trunk's silhouette: seat, back, shoulder, chest, belly, groin. What would be under the floor is flattened on it."""
    points = (*(on_pelvis(joints, *at) for at in (*SEAT, *SACRUM)), small_of_back(joints),
              *(on_ribs(joints, *at) for at in (*LOWER_RIBS, *BACK, *CHEST_LINE)), *(on_pelvis(joints, *at) for at in GROIN))
    return tuple((x, max(y, 0.0)) for x, y in smooth(points, closed=True))


SMOOTH_STEPS: Final = 6
CATMULL_ROM: Final = tuple(tuple(part / 2 for part in (-t + 2 * t**2 - t**3, 2 - 5 * t**2 + 3 * t**3, t + 4 * t**2 - 3 * t**3, t**3 - t**2))
                       for t in (n / SMOOTH_STEPS for n in range(SMOOTH_STEPS)))
"""Weights of four neighbouring points at each step between the middle two (Catmull-Rom)."""


def smooth(points: Sequence[Point], closed: bool = False) -> tuple[Point, ...]:
    """Return a smooth line through the points."""
    ends = (points[-1], *points, points[0], points[1]) if closed else (points[0], *points, points[-1])
    line = tuple((a[0] * i + b[0] * j + c[0] * k + d[0] * m, a[1] * i + b[1] * j + c[1] * k + d[1] * m)
                 for a, b, c, d in zip(ends, ends[1:], ends[2:], ends[3:], strict=False) for i, j, k, m in CATMULL_ROM)
    return line if closed else (*line, points[-1])


def _pelvis_marks(joints: Joints) -> list[Item]:
    """Return the waistband across the top of the pelvis, and the mark on the sacrum."""
    return [Stroke((on_pelvis(joints, 0.060, 0.050), on_pelvis(joints, 0.060, -0.052)), PAPER, 0.006),
            Stroke((on_pelvis(joints, 0.008, 0.052), on_pelvis(joints, 0.050, 0.043)), PAPER, 0.013)]


def _head(joints: Joints) -> list[Item]:
    neck = direction(joints.shoulder, joints.head)
    face = neck - 90
    nose = along(along(joints.head, face, HEAD * 0.93), neck, -0.012)
    return [Limb(joints.shoulder, along(joints.shoulder, neck, 0.07), 0.034, 0.028), Disc(joints.head, HEAD + 0.008, PAPER),
            Disc(joints.head, HEAD), Disc(nose, 0.014)]


def _leg(hip: Point, leg: LegJoints, ink: str) -> list[Item]:
    return [Limb(hip, leg.knee, THIGH, THIGH, ink, under=0.024), Limb(leg.knee, leg.ankle, 0.034, 0.021, ink, bulge=0.006),
            Limb(leg.heel, leg.toe, SOLE, SOLE * 0.8, ink), Area((leg.ankle, leg.heel, leg.toe), ink),
            Limb(leg.ankle, leg.heel, 0.021, SOLE, ink, outlined=False), Limb(leg.ankle, leg.toe, 0.021, SOLE * 0.8, ink, outlined=False)]


def _arm(shoulder: Point, arm: ArmJoints, ink: str) -> list[Item]:
    return [Limb(shoulder, arm.elbow, 0.027, 0.021, ink, bulge=0.003), Limb(arm.elbow, arm.wrist, 0.021, 0.015, ink, bulge=0.003),
            Limb(arm.wrist, arm.hand, 0.016, 0.013, ink, outlined=False)]


def hollow(items: Iterable[Item]) -> tuple[Item, ...]:
    """Return limbs with an outline of their ink and a light inside, so that the far side differs by more than tone."""
    limbs = tuple(items)
    inner = (replace(limb, start_half=limb.start_half - EDGE, end_half=limb.end_half - EDGE, ink=FAR_FILL, outlined=False)
             for limb in limbs if isinstance(limb, Limb))
    return (*limbs, *inner)


def length_of(points: Sequence[Point]) -> float:
    """Return the length of a line through points."""
    return sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(points))
