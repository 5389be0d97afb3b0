"""Items of a drawing: strokes, limbs, discs, areas and labels, positioned in figure lengths; and a figure made of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot
from typing import Final, Literal

from companion.pictures.figure import HEAD, SOLE, SPINE, ArmJoints, Joints, LegJoints, Point, along, direction
from companion.pictures.ink import BODY, FAR_INK, GOOD_INK, INK, PAPER, WATCH_INK

Anchor = Literal["l", "m", "r"]

BACK_FROM, BACK_TO = 6, 30
"""Indices of the spine's points at the small of the back, for the line drawn along it."""

GIRTH: Final = ((0.0, 0.058), (0.18, 0.054), (0.38, 0.043), (0.7, 0.054), (0.9, 0.048), (1.0, 0.038))
"""Half the trunk's depth along the spine, from hip to shoulder (choice, for the eye)."""


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
    """A tapered limb between two joints, outlined in paper so that it stands out from what is under it."""

    start: Point
    end: Point
    start_half: float
    end_half: float
    ink: str = BODY
    outlined: bool = True


@dataclass(frozen=True, slots=True)
class Disc:
    """A filled circle; ``hole``: radius of the hole in its middle."""

    centre: Point
    radius: float
    ink: str = BODY
    hole: float = 0.0


@dataclass(frozen=True, slots=True)
class Area:
    """A filled polygon."""

    points: tuple[Point, ...]
    ink: str = INK


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
    return tuple(_mirror(item) for item in items)


def _flip(point: Point) -> Point:
    return -point[0], point[1]


def _mirror(item: Item) -> Item:
    match item:
        case Stroke() | Area():
            return replace(item, points=tuple(map(_flip, item.points)))
        case Limb():
            return replace(item, start=_flip(item.start), end=_flip(item.end))
        case Disc():
            return replace(item, centre=_flip(item.centre))
        case Label():
            other: Anchor = {"l": "r", "r": "l", "m": "m"}[item.anchor]  # type: ignore[assignment]
            return replace(item, at=_flip(item.at), anchor=other)


def moved(items: Iterable[Item], right: float, up: float = 0.0) -> tuple[Item, ...]:
    """Return the items shifted to the right and up."""
    def at(point: Point) -> Point:
        """Return a shifted point."""
        return point[0] + right, point[1] + up

    def one(item: Item) -> Item:
        """Return a shifted item."""
        match item:
            case Stroke() | Area():
                return replace(item, points=tuple(map(at, item.points)))
            case Limb():
                return replace(item, start=at(item.start), end=at(item.end))
            case Disc():
                return replace(item, centre=at(item.centre))
            case Label():
                return replace(item, at=at(item.at))
    return tuple(map(one, items))


def figure(joints: Joints, back: Literal["", "good", "watch"] = "", two_legs: bool = True) -> tuple[Item, ...]:
    """Return the figure's items, far side first. ``back``: the small of the back marked as keeping its shape (a solid line) or rounding
    (a dashed one)."""
    far = (*_leg(joints.hip, joints.far, FAR_INK), *_arm(joints.shoulder, joints.far_arm, FAR_INK)) if two_legs else ()
    items = [*far, *_trunk(joints), *_head(joints), *_leg(joints.hip, joints.near, BODY),
             *_arm(joints.shoulder, joints.near_arm, BODY)]
    if back:
        items.append(Stroke(back_line(joints), GOOD_INK if back == "good" else WATCH_INK, 0.018, 0.0 if back == "good" else 0.03))
    return tuple(items)


def back_line(joints: Joints) -> tuple[Point, ...]:
    """Return the skin line of the small of the back."""
    side = direction(joints.hip, joints.shoulder) + 90
    spine = joints.spine
    return tuple(along(spine[n], _across(spine, n, side), _girth(n / SPINE) + 0.013) for n in range(BACK_FROM, BACK_TO + 1))


def _across(spine: Sequence[Point], n: int, side: float) -> float:
    """Return the direction out of the back at a point of the spine."""
    return direction(spine[max(n - 1, 0)], spine[min(n + 1, len(spine) - 1)]) + 90 if len(spine) > 1 else side


def _girth(t: float) -> float:
    for (a, one), (b, other) in pairwise(GIRTH):
        if t <= b:
            share = (t - a) / (b - a)
            return one + (other - one) * share * share * (3 - 2 * share)
    return GIRTH[-1][1]


def _trunk(joints: Joints) -> list[Item]:
    spine = joints.spine
    lines = [[along(p, _across(spine, n, 0) + turn, _girth(n / SPINE) + grow) for n, p in enumerate(spine)]
             for grow in (0.010, 0.0) for turn in (0, 180)]
    items: list[Item] = []
    for grow, ink, one, other in ((0.010, PAPER, lines[0], lines[1]), (0.0, BODY, lines[2], lines[3])):
        items += [Disc(spine[0], GIRTH[0][1] + grow, ink), Disc(spine[-1], GIRTH[-1][1] + grow, ink),
                  Area((*one, *reversed(other)), ink)]
    return items


def _head(joints: Joints) -> list[Item]:
    neck = direction(joints.shoulder, joints.head)
    face = neck - 90
    nose = along(along(joints.head, face, HEAD * 0.93), neck, -0.012)
    return [Limb(joints.shoulder, along(joints.shoulder, neck, 0.07), 0.034, 0.028), Disc(joints.head, HEAD + 0.008, PAPER),
            Disc(joints.head, HEAD), Disc(nose, 0.014)]


def _leg(hip: Point, leg: LegJoints, ink: str) -> list[Item]:
    return [Limb(hip, leg.knee, 0.052, 0.034, ink), Limb(leg.knee, leg.ankle, 0.034, 0.021, ink),
            Limb(leg.heel, leg.toe, SOLE, SOLE * 0.8, ink), Area((leg.ankle, leg.heel, leg.toe), ink),
            Limb(leg.ankle, leg.heel, 0.021, SOLE, ink, outlined=False), Limb(leg.ankle, leg.toe, 0.021, SOLE * 0.8, ink, outlined=False)]


def _arm(shoulder: Point, arm: ArmJoints, ink: str) -> list[Item]:
    return [Limb(shoulder, arm.elbow, 0.027, 0.021, ink), Limb(arm.elbow, arm.wrist, 0.021, 0.015, ink),
            Limb(arm.wrist, arm.hand, 0.016, 0.013, ink, outlined=False)]


def length_of(points: Sequence[Point]) -> float:
    """Return the length of a line through points."""
    return sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(points))
