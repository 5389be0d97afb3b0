"""Drawings on hands and knees: the bird dog and the rock back."""

from __future__ import annotations

from dataclasses import replace
from math import radians, sin
from typing import Final

from companion.pictures import props
from companion.pictures.draw import Panel, there_and_back
from companion.pictures.drawing import Drawing, moving
from companion.pictures.figure import Arm, Joints, Leg, Point, Posture, Reach, along, between, direction, joints_of
from companion.pictures.scene import Item, figure, moved, pointers
from companion.pictures.squats import A_LITTLE, POINTING, Back, close, scene
from companion.pictures.views import HIP_HALF, from_behind, shins_from_above

KNEES_VIEW: Final = (-0.62, -0.05, 0.78, 0.52)
HAND_ON_FLOOR: Final = Reach(0.285, 0.016, 1, 0)
KNEEL: Final = Leg(-90, 180, 180)
ALL_FOURS: Final = Posture(14, KNEEL, HAND_ON_FLOOR, head=8, on="knees")
REACHED: Final = Leg(-179, 181, 225)
SAG: Final = 17.0
"""Drawn lumbar extension of a back that sags, in degrees (choice, for the eye)."""
HIKE: Final = 14.0
"""Degrees the hips are drawn out of level (choice, for the eye)."""
BEST: Final = "knees at the best width"
KNEES_APART: Final = {"narrow": ("knees together", 0.036), "middle": ("knees as wide as the hips", HIP_HALF),
                 "wide": ("knees clearly wider than the hips", HIP_HALF + 0.055)}
"""Widths of the knees in a rock back: in words, and half of each."""


def bird_dog_setup() -> Drawing:
    """Set-up on hands and knees."""
    cushion = props.pillow((-0.02, 0.010), 0.06, 0.012)
    return Drawing("on hands and knees, seen from the side: hands under the shoulders, knees under the hips, something "
        "soft under the knees.", (
        Panel((*scene(ALL_FOURS, "plain"), *cushion), (-0.45, -0.05, 0.62, 0.52), "Hands under shoulders, knees under hips", "good"),))


def bird_dog_setup_stick() -> Drawing:
    """Set-up with a stick along the spine."""
    joints = joints_of(ALL_FOURS)
    start, end = along(along(joints.hip, 104, 0.068), 194, 0.06), along(along(joints.shoulder, 104, 0.054), 14, 0.10)
    return Drawing("on hands and knees, seen from the side, a stick lying along the spine.", (
        Panel((*scene(ALL_FOURS), *props.rod(start, end), *props.note((0.08, 0.465), "stick")), (-0.45, -0.05, 0.62, 0.52),
              "If the stick tips or slides, something moved"),))


def reached(sag: float = 0.0) -> Posture:
    """Return the reach: near leg straight back, far arm straight ahead, weight on the far knee and the near hand."""
    turn = 0 if not sag else -4
    return Posture(14 + turn, REACHED, HAND_ON_FLOOR, far=KNEEL, far_arm=Arm(-2, -2), head=6, on="knees", flexion=-sag)


def _off_floor(posture: Posture) -> tuple[Joints, Point]:
    """Return the joints of a figure kneeling on its far knee, the near leg in the air, and how far it is moved to kneel on the floor."""
    assert posture.far is not None
    hip = joints_of(replace(posture, near=posture.far)).hip
    here = joints_of(posture)
    shift = hip[0] - here.hip[0], hip[1] - here.hip[1]
    back_at = Reach(HAND_ON_FLOOR.x - shift[0], HAND_ON_FLOOR.y - shift[1], HAND_ON_FLOOR.bend, HAND_ON_FLOOR.palm)
    return joints_of(replace(posture, near_arm=back_at)), shift


def _on_far_knee(posture: Posture, *more: Item, back: Back = "") -> tuple[Item, ...]:
    """Return a figure kneeling on its far knee, with the near leg in the air."""
    joints, shift = _off_floor(posture)
    return (*moved((*figure(joints, back), *more), *shift), *props.floor(-1, 1))


def _from_behind(hike: float) -> tuple[Item, ...]:
    """Return the reach from behind, the hip of the reaching leg so many degrees higher."""
    joints, (_, up) = _off_floor(reached())
    return (*moved(from_behind(joints, hike), 0.0, up), *props.floor(-1, 1))


def _names(posture: Posture) -> tuple[Item, ...]:
    """Return the sides' names, at the foot of the reaching leg and over the hand of the reaching arm."""
    joints = joints_of(posture)
    ankle, wrist = joints.near.ankle, joints.far_arm.wrist
    hangs = radians(abs(direction(joints.shoulder, wrist)))
    beside = wrist[0] + 0.18 * sin(hangs), wrist[1] + 0.05 + 0.05 * sin(2 * hangs)  # over an arm straight ahead, in front of one that hangs
    return (*props.limb_name((ankle[0], ankle[1] + 0.095), "{SIDE} leg"), *props.limb_name(beside, "{OTHER} arm"))


def bird_dog() -> Drawing:
    """Bird dog held: level and sagging; and from behind, level and hiked."""
    behind, sagging = (-0.36, -0.03, 0.36, 0.50), reached(sag=SAG)
    turn = *pointers(_off_floor(replace(sagging, flexion=0.0))[0], 0.016), *pointers(_off_floor(sagging)[0])
    return Drawing("hands and knees: the {side} leg straight back and the {other} arm straight ahead, no higher than "
        "the body. First from the side, then from behind with a line through both hips, {side} foot towards you. " + POINTING, (
        Panel(_on_far_knee(reached(), *_names(reached()), back="plain"), KNEES_VIEW, "Back level and still"),
        Panel(_on_far_knee(sagging, *_names(sagging), *turn, back="plain"), KNEES_VIEW, "Back sags"),
        Panel(_from_behind(0), behind, "Hips level"),
        Panel(_from_behind(HIKE), behind, "A hip lifts or turns")), rows=(1, 1, 2))


def bird_dog_slow() -> Drawing:
    """Bird dog as a loop: out, back to the floor, out again."""
    start = replace(reached(), near=KNEEL, far_arm=Arm(-84, -88, 0.86))

    def at(share: float) -> tuple[Item, ...]:
        """Return the reach at a share of the way out."""
        one = between(start, reached(), share)
        return _on_far_knee(one, *_names(one), back="plain")
    return moving("a loop from the side, on hands and knees: the {side} leg and the {other} arm go out, back to the floor, out "
                  "again, slowly.", there_and_back(at, 1), Panel((), KNEES_VIEW, "Out, back to the floor, out again", "good"))


def rocked(share: float, flexion: float = 0.0) -> Posture:
    """Return hands and knees with the hips a share (0 to 1) of the way back to the heels.

    The hands stay in place and the arms are almost straight, so that no elbow goes through the floor.
    """
    return Posture(14, Leg(-90 + 55 * share, 180, 180), Reach(0.285, 0.016, 1, 0), head=8 - 12 * share, on="knees",
                   flexion=flexion)


def _rock(width: str, *more: Item, far: float = 0.86, also: str = "", title: str = "", mark: Back = "good") -> Drawing:
    """Return a rock back loop. ``far``: how far back; ``also``: further words for its text; ``title``: replaces the width."""
    return moving(f"a loop from the side, on hands and knees, {width}: the hips go slowly back towards the heels and come "
                  f"forward again, hands in place. {also}".strip(),
                  there_and_back(lambda share: (*scene(rocked(far * share), mark), *more), 2),
                  Panel((), (-0.42, -0.05, 0.95, 0.56), title or f"{width[0].upper()}{width[1:]}: rock back, come forward",
                        "" if mark == "plain" else mark))


def rock_back(width: str) -> Drawing:
    """Rock back at a width of the knees."""
    words, half = KNEES_APART[width]
    return _rock(words, *shins_from_above(joints_of(rocked(0)), half, (0.83, 0.37)), mark="plain",
                 also="In the corner knees, shins and feet from above.")


def rock_back_setup() -> Drawing:
    """Neutral back and beginning to round."""
    return Drawing(f"on hands and knees, hips rocked back, seen from the side, twice. {POINTING}", (
        close(rocked(0.6), "Back in its own easy curve"), close(rocked(0.8, flexion=A_LITTLE), "Here the lower back begins to round")))


def drill_rock_back_to_a_pillow() -> Drawing:
    """Easier rock back, to a pillow on the heels."""
    return _rock(BEST, *props.pillow((-0.225, 0.085), 0.05, 0.045), also="A pillow lies on the heels.",
                 title="Rock back towards the pillow")


def drill_rock_back() -> Drawing:
    """Rock back as a drill at the best width; it stops before the back moves."""
    return _rock(BEST, far=0.7, also="They stop before the back moves.", title="Rock back, stop before the back moves")
