"""Objects around the figure: floor, wall, bar, tape, phone, lines at an angle, arrows. Positions in figure lengths."""

from __future__ import annotations

from typing import Final

from companion.pictures.draw import arc
from companion.pictures.figure import LegJoints, Point, along, direction
from companion.pictures.ink import BODY, FAR_FILL, FAR_INK, GUIDE, INK, PAPER, WATCH_INK
from companion.pictures.scene import Anchor, Area, Disc, Item, Label, Limb, Stroke

LINE: Final = 0.009
CM: Final = 1 / 175
"""One centimetre, for a figure 175 cm tall (choice)."""


def floor(left: float, right: float, at: float = 0.0) -> tuple[Item, ...]:
    """The floor from the side."""
    return (Stroke(((left, at - LINE / 2), (right, at - LINE / 2)), INK, LINE),)


def wall(x: float, top: float, bottom: float = 0.0) -> tuple[Item, ...]:
    """A wall to the right of the figure, hatched on its far side."""
    steps = int((top - bottom) / 0.06)
    hatch = tuple(Stroke(((x + 0.006, bottom + 0.06 * n), (x + 0.045, bottom + 0.06 * n + 0.04)), FAR_INK, 0.005)
                  for n in range(steps))
    return (*hatch, Stroke(((x, bottom), (x, top)), INK, LINE))


def wall_behind(left: float, right: float, top: float) -> tuple[Item, ...]:
    """A wall alongside, behind the whole figure."""
    return (Area(((left, 0.0), (right, 0.0), (right, top), (left, top)), FAR_FILL),)


def card(at: Point, number: int) -> tuple[Item, ...]:
    """A printed card with its number and its arrow, which points up; 10.6 cm wide, as printed."""
    half, (x, y) = 5.3 * CM, at
    square = tuple((x + half * a, y + half * b) for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1)))
    return (Area(square, PAPER), Stroke((*square, square[0], square[1]), INK, 0.006), *note((x - 0.010, y), str(number), ink=INK, size=13),
            Stroke(((x + 0.020, y - 0.020), (x + 0.020, y + 0.022)), WATCH_INK, 0.005, head=True))


def tape(start: float, end: float, at: float = 0.0, label: str = "", every: float = 5 * CM) -> tuple[Item, ...]:
    """A tape measure on the floor from zero at ``start`` to ``end`` on its left, with a label below."""
    ticks = tuple(Stroke(((start - n * every, at - 0.014), (start - n * every, at - 0.036)), GUIDE, 0.005)
                  for n in range(int((start - end) / every) + 1))
    bar = Stroke(((start, at - 0.014), (end, at - 0.014)), GUIDE, 0.012)
    words = (Label(((start + end) / 2, at - 0.085), label, GUIDE),) if label else ()
    return (bar, *ticks, *words)


def ray(centre: Point, angle: float, length: float, label: str = "", start: float = 0.0) -> tuple[Item, ...]:
    """A dashed line from a joint at an angle from the floor, labelled at its end."""
    end = along(centre, angle, length)
    items: tuple[Item, ...] = (Stroke((along(centre, angle, start), end), GUIDE, 0.008, 0.022),)
    anchor: Anchor = "l" if angle < 76 else "m" if angle < 104 else "r"
    return (*items, Label(along(centre, angle, length + 0.035), label, GUIDE, anchor)) if label else items


def swing(centre: Point, radius: float, start: float, end: float) -> tuple[Item, ...]:
    """An arrow along an arc, for turning about a joint."""
    return (Stroke(arc(centre, radius, start, end), GUIDE, 0.011, head=True),)


def arrow(start: Point, end: Point, ink: str = GUIDE) -> tuple[Item, ...]:
    """A straight arrow."""
    return (Stroke((start, end), ink, 0.011, head=True),)


def note(at: Point, text: str, anchor: Anchor = "m", ink: str = GUIDE, size: int = 15) -> tuple[Item, ...]:
    """A short label."""
    return (Label(at, text, ink, anchor, size),)


def limb_name(at: Point, words: str) -> tuple[Item, ...]:
    """The name of a side, written at its limb."""
    return (Label(at, words, INK, "m", 13),)


def bar_end(at: Point, plates: bool = False) -> tuple[Item, ...]:
    """A bar or a stick from its end; a plate is a large ring."""
    ring = (Disc(at, 0.075, PAPER), Disc(at, 0.068, FAR_INK, 0.055)) if plates else ()
    return (*ring, Disc(at, 0.026, PAPER), Disc(at, 0.020, INK, 0.008))


def rod(start: Point, end: Point) -> tuple[Item, ...]:
    """A stick along its length."""
    return (Stroke((start, end), PAPER, 0.026), Stroke((start, end), GUIDE, 0.016))


def phone(middle: Point, tilt: float, name: Point) -> tuple[Item, ...]:
    """A phone of 15 cm from its edge, its length along a direction, with its name written at a place."""
    ends = along(middle, tilt, 0.030), along(middle, tilt + 180, 0.030)
    return (Limb(*ends, 0.014, 0.014, PAPER), Limb(*ends, 0.013, 0.013, GUIDE, outlined=False), *note(name, "phone"))


def lifting(heel: Point) -> tuple[Item, ...]:
    """An arrow behind a heel that lifts off the floor."""
    return arrow((heel[0] - 0.04, 0.0), (heel[0] - 0.04, 0.075), WATCH_INK)


def strap(foot: LegJoints, hand: Point) -> tuple[Item, ...]:
    """A strap from the hand round the ball of the foot."""
    ball = along(foot.toe, direction(foot.toe, foot.heel), 0.03)
    return (Stroke((hand, ball), GUIDE, 0.012), Disc(ball, 0.018, GUIDE, 0.008))


def block(left: float, right: float, top: float, label: str = "", under: bool = True) -> tuple[Item, ...]:
    """Something firm on the floor: a plate, a board, a box."""
    shape = Area(((left, 0.0), (right, 0.0), (right, top), (left, top)), GUIDE)
    words = (Label(((left + right) / 2, -0.045 if under else top + 0.03), label, GUIDE),) if label else ()
    return (shape, *words)


def seat(front: float, height: float) -> tuple[Item, ...]:
    """A chair from the side, its seat behind the figure."""
    back = front - 0.26
    return (Stroke(((front - 0.02, 0.0), (front - 0.02, height), (back, height)), FAR_INK, 0.018),
            Stroke(((back, 0.0), (back - 0.03, height + 0.26)), FAR_INK, 0.018))


def pillow(centre: Point, half: float, thick: float = 0.035) -> tuple[Item, ...]:
    """A pillow; ``thick`` is half its thickness."""
    return (Limb((centre[0] - half, centre[1]), (centre[0] + half, centre[1]), thick, thick, GUIDE),)


def rack(x: float, top: float, safety: float) -> tuple[Item, ...]:
    """An upright of a rack with its safety arm, from the side."""
    return (Stroke(((x, 0.0), (x, top)), FAR_INK, 0.020), Stroke(((x, safety), (x - 0.42, safety)), FAR_INK, 0.018))


def press(ink: str) -> tuple[Item, ...]:
    """Two arrows where the small of the back presses on the hands under it."""
    return tuple(item for share in (-0.07, -0.15) for item in arrow((share, 0.17), (share, 0.085), ink))


def hands_under() -> tuple[Item, ...]:
    """A hand between the small of the back and the floor, lying, palm down: fingers to the feet, in the colour of the body."""
    return (Limb((-0.150, 0.012), (-0.085, 0.010), 0.012, 0.008, BODY),)


def view_of(camera: Point, half: float, length: float) -> tuple[Item, ...]:
    """A phone on a stand from above, looking left, with the edges of its view."""
    edges = tuple(Stroke((camera, (camera[0] - length, camera[1] + way * half)), GUIDE, 0.005, 0.018) for way in (-1, 1))
    return (*edges, Limb((camera[0] + 0.012, camera[1] - 0.045), (camera[0] + 0.012, camera[1] + 0.045), 0.014, 0.014, GUIDE))
