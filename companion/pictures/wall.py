"""Drawings of knee to wall: one foot in front, by tape or by level."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from companion.pictures import props
from companion.pictures.draw import Panel, there_and_back
from companion.pictures.drawing import Drawing, moving
from companion.pictures.figure import (
    KNEELING,
    SHANK_LENGTH,
    THIGH_LENGTH,
    Arm,
    Joints,
    Leg,
    Posture,
    Reach,
    along,
    direction,
    joint_between,
    joints_of,
)
from companion.pictures.ink import GUIDE, WATCH_INK
from companion.pictures.scene import Item, Stroke
from companion.pictures.squats import Back, scene

LUNGE_SHIN: Final = 40.0
PALM: Final = 0.016
"""Distance of the wrist from a wall the palm lies on: half a hand's thickness."""

BACK_KNEE: Final = -0.279
"""Where the back knee kneels: about 49 cm behind the big toe (choice)."""
PLACES: Final = {"below_knee": ("Just under the knee", "under knee", 0.78), "mid_shin": ("Middle of the shin", "mid-shin", 0.50)}
"""Places of the phone along the shin: in words, in a label, and as a share of it from the ankle."""


def _at_wall(shin: float, heel_up: float = 0.0) -> Posture:
    """Return a half kneel at a wall: toes and back knee stay, and the hip between both knees goes along with the front one."""
    front = Leg(-8, -90 - shin, -heel_up)
    knee, back = joints_of(Posture(90, front, Arm(0, 0), on="toes")).near.knee, (BACK_KNEE, KNEELING)
    hip = joint_between(back, knee, THIGH_LENGTH, THIGH_LENGTH, -1)
    return Posture(88, replace(front, thigh=direction(hip, knee)), Arm(0, 0), far=Leg(direction(hip, back), 180, 180), head=86, on="toes")


def _wall_panel(posture: Posture, title: str, mark: Back, *more: Item, label: str = "toe to wall", wall: float | None = None) -> Panel:
    """Return a panel with the palm on the wall, which the front knee touches, or which stands at ``wall``."""
    joints = joints_of(posture)
    at = joints.near.knee[0] + 0.040 if wall is None else wall
    posture = replace(posture, near_arm=Reach(at - PALM, joints.shoulder[1] - 0.03, 1, 85))
    named = _side_words(joints, -0.085 if label else -0.055)
    return Panel((*scene(posture), *props.wall(at, 0.72), *_gap(joints.near.toe[0] + 0.012, at, label), *more, *named),
                 (at - 0.80, -0.17, at + 0.16, 0.80), title, mark)


def _side_words(joints: Joints, low: float) -> tuple[Item, ...]:
    """Return the side's name so far under the front foot."""
    return props.limb_name(((joints.near.heel[0] + joints.near.toe[0]) / 2, low), "{SIDE} foot")


def _gap(toe: float, at: float, label: str) -> tuple[Item, ...]:
    """Return the measured distance, from the big toe to the wall; nothing without a label."""
    if not label:
        return ()
    return (*props.tape(at, at - 0.26), Stroke(((toe, 0.05), (toe, -0.05)), WATCH_INK, 0.006),
            Stroke(((toe, -0.05), (at, -0.05)), WATCH_INK, 0.006),
            *props.note((toe + 0.008, -0.128), label, "l", WATCH_INK))


def knee_to_wall() -> Drawing:
    """Knee to wall with the heel down, as a loop, and with the heel lifting."""
    touches, up = _wall_panel(_at_wall(LUNGE_SHIN), "Heel down, knee just touches", "good"), _at_wall(46, heel_up=16)
    wall, lifted = touches.window[2] - 0.16, _wall_panel(up, "The heel lifts", "watch", *props.lifting(joints_of(up).near.heel))
    return moving("a loop from the side, the {side} foot flat on the floor in front of a wall, the tape from big toe to "
                  "wall: the {side} knee comes forward until just touching the wall, and goes back.",
                  there_and_back(lambda share: _wall_panel(_at_wall(22 + share * (LUNGE_SHIN - 22)), "", "", wall=wall).items, 1.5),
                  touches, replace(lifted, window=(lifted.window[0], -0.17, lifted.window[2], 0.42)), rows=(1, 1))


def knee_to_wall_setup() -> Drawing:
    """Set-up: the tape on the floor."""
    stood = Posture(90, Leg(-88, -92), Arm(-95, -80))
    toe = joints_of(stood).near.toe[0]
    wall = toe + 0.20
    return Drawing("standing barefoot, facing a wall, a tape on the floor, its zero, marked 0, at the wall.", (
        Panel((*scene(stood), *props.wall(wall, 1.0), *props.tape(wall, toe - 0.05), *props.note((wall, -0.065), "0", "m")),
              (-0.50, -0.10, wall + 0.12, 1.03), "Tape's zero at the wall"),))


def knee_to_wall_level(placement: str = "") -> Drawing:
    """Knee to wall with the phone along the shin, at the place chosen; at both if none was."""
    down = _at_wall(LUNGE_SHIN)
    leg = joints_of(down).near
    upright = (Stroke((leg.ankle, along(leg.ankle, 90, 0.34)), GUIDE, 0.006, 0.02),
               *props.swing(leg.ankle, 0.30, 90, 90 - LUNGE_SHIN),
               *props.note(along(leg.ankle, 90 - LUNGE_SHIN * 0.5, 0.35), "40°", "m"))

    def held(share: float, words: str) -> tuple[Item, ...]:
        """Return the phone at a share of the shin, its place named beyond the wall."""
        at = along(along(leg.ankle, direction(leg.ankle, leg.knee), share * SHANK_LENGTH), -LUNGE_SHIN, 0.042)
        beyond = leg.knee[0] + 0.13
        return (*props.phone(at, direction(leg.ankle, leg.knee), (beyond + 0.09, at[1] + 0.018)),
                *props.note((beyond + 0.09, at[1] - 0.027), words), Stroke((at, (beyond, at[1])), GUIDE, 0.005))
    panels = tuple(replace(_wall_panel(down, title, "", *upright, *held(share, words), label=""), window=(-0.44, -0.09, 0.50, 0.46))
                   for name, (title, words, share) in PLACES.items() if placement in ("", name))
    return Drawing(
        "from the side, the {side} foot flat in front of a wall, knee to the wall: the phone along the "
        "{side} shin, which here leans 40° from upright.", panels, rows=(1,) * len(panels))
