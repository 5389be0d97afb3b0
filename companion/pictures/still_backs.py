"""Drawings of squats that train the back to keep its shape: hand on back, arms forward, pause, hinge."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from companion.pictures import props
from companion.pictures.draw import FPS, Panel, eased, loop
from companion.pictures.drawing import Drawing, moving
from companion.pictures.figure import HAND_LENGTH, Arm, Joints, Posture, Reach, along, between, direction, joints_of
from companion.pictures.ink import GUIDE
from companion.pictures.scene import Item, Limb, pointers, small_of_back
from companion.pictures.squats import (
    AHEAD,
    CLEARLY,
    HINGED,
    POINTING,
    STANDING_POSTURE,
    Back,
    at_depth,
    close,
    scene,
    seen,
    squat,
    squat_rounding,
)
from companion.screening.sources import with_numbers


def palm_on_back(joints: Joints) -> Reach:
    """Return an arm whose palm, as long as a hand, lies along the small of the back."""
    middle, along_back = small_of_back(joints, 0.018), (joints.pelvis + joints.ribs) / 2
    wrist = along(middle, along_back, HAND_LENGTH / 2)
    return Reach(*wrist, 1.0, along_back + 180)


def hand_on_back() -> Drawing:
    """Squat with a palm on the curve of the lower back."""
    still, moved = squat(-12, 44.0, 38), squat(-12, 44.0, 38, flexion=CLEARLY)

    def palm(posture: Posture, title: str) -> Panel:
        """Return a panel of the posture with a palm on the back, drawn again over the mark of its curve, and named."""
        posture = replace(posture, near_arm=palm_on_back(joints_of(posture)), far_arm=AHEAD)
        arm, small = joints_of(posture).near_arm, small_of_back(joints_of(posture), 0.085)
        return close(posture, title, Limb(arm.wrist, arm.hand, 0.016, 0.013), *props.note(small, "palm", "r"))
    return Drawing(f"a squat from the side, one palm flat on the curve of the lower back, the other arm ahead. {POINTING}", (
        palm(still, "Curve still under the palm"), palm(moved, "Curve flattens or rounds")))


def arms_forward_setup() -> Drawing:
    """Set-up: the stick across the front of the shoulders."""
    stood = replace(STANDING_POSTURE, near_arm=AHEAD)
    return Drawing("standing, seen from the side: the stick's end at the front of the shoulder, off the throat, both "
        "arms straight ahead, level, hands open.", (
        seen(stood, "On the shoulders, arms level", "good", *_rack_place(stood, word="stick"), back="",
             view=(-0.36, 0.45, 0.52, 1.02)),))


def _rack_place(posture: Posture, down: float = 0.098, word: str = "") -> tuple[Item, ...]:
    """Return the bar's end on the front of the shoulders, off the throat, or further down the arms; ``word``: what it is, beside it."""
    joints = joints_of(posture)
    arm = direction(joints.shoulder, joints.near_arm.wrist)
    at = along(along(joints.shoulder, arm, down), arm + 90, 0.046)
    return (*props.bar_end(at), *(props.note((at[0] + 0.04, at[1] + 0.022), word, "l") if word else ()))


def arms_forward_setup_bar() -> Drawing:
    """Set-up with an empty bar: rack and safety arms."""
    stood = replace(STANDING_POSTURE, near_arm=AHEAD)
    deep_bar = joints_of(at_depth("parallel")).shoulder[1]
    items = (*props.rack(0.30, 0.95, deep_bar - 0.06), *props.note((0.32, deep_bar - 0.06), "safety arm", "l"),
             *_rack_place(stood, word="bar"))
    return Drawing("standing in a rack, seen from the side: empty bar on the front of the shoulders, arms level, "
        "a safety arm just below the deepest point of the bar.", (
        Panel((*items[:3], *scene(stood), *items[3:]), (-0.40, -0.05, 0.62, 1.02), "Safety arm just below your deepest point", "good"),))


def arms_forward() -> Drawing:
    """Arms-forward squat done well, and its three faults."""
    good = squat(0, 35.8)
    rolled, chest, back = replace(good, near_arm=Arm(-14, -14)), squat(0, 50, 35, arm=Arm(-14, -14)), squat(0, 37, flexion=CLEARLY)
    view = (-0.36, 0.02, 0.52, 0.79)
    fell = props.swing(joints_of(chest).hip, 0.51, 78, 52)
    return Drawing("a squat from the side with a stick across the front of the shoulders, arms straight ahead and level, "
        "four times. " + POINTING, (
        seen(good, "It all holds", "", *_rack_place(good, word="stick"), *pointers(joints_of(good)), back="plain", view=view),
        seen(rolled, "It rolls down the arms", "", *_rack_place(rolled, 0.25), back="", view=view),
        seen(chest, "The chest falls", "", *_rack_place(chest), *fell, back="", view=view),
        seen(back, "The lower back rounds", "", *_rack_place(back), *pointers(joints_of(replace(back, flexion=0.0)), 0.016),
             *pointers(joints_of(back)), back="plain", view=view)), rows=(2, 2))


def arms_forward_shallow() -> Drawing:
    """The same, heels flat, less deep: where most people's bar still stays."""
    less = squat(-25, 25.5)
    return Drawing("a squat from the side with a stick across the front of the shoulders, heels flat, arms straight ahead and level, "
        "well above parallel.", (seen(less, "Only to just above where it rolled", "", *_rack_place(less, word="stick"),
             view=(-0.36, -0.05, 0.58, 0.88)),))


def stops(where: str, *depths: tuple[Posture, str], mark: Back = "good") -> Drawing:
    """Return three stops on the way down, numbered, each with its title."""
    held = with_numbers("hold each for {drill_stop_0} to {drill_stop_1} seconds")
    return Drawing(f"three stops on the way down, from the side, {where}the back in the same shape at each: {held}, "
                   "then stand up.", tuple(seen(posture, f"{n}: {title}", mark, view=(-0.34, -0.05, 0.50, 0.95))
                                           for n, (posture, title) in enumerate(depths, 1)))


def pause_stops() -> Drawing:
    """The three stops of the pause squat."""
    return stops("", (squat(-50, 9, 28), "near the top"), (squat(-25, 25.5), "half way"), (squat(0, 35.8), "at the bottom"), mark="")


def pause_watch() -> Drawing:
    """One stop, neutral and rounded."""
    return replace(squat_rounding(), says=f"one stop of a squat from the side, three times. {POINTING}")


def hinge_setup() -> Drawing:
    """Set-up: the stick across the upper back."""
    return Drawing("standing, seen from the side, a broomstick across the upper back, where a bar would lie.", (
        seen(_carrying(STANDING_POSTURE), "Only the stick, on the upper back", "good", *_on_back(STANDING_POSTURE),
             *props.note((_stick_place(STANDING_POSTURE)[0] - 0.06, _stick_place(STANDING_POSTURE)[1] + 0.01), "stick", "r"), back="",
             view=(-0.36, 0.45, 0.40, 1.02)),))


def _carrying(posture: Posture) -> Posture:
    """Return the posture with the hands at the stick on the upper back."""
    return replace(posture, near_arm=Arm(posture.trunk + 165, posture.trunk + 25, 0.6), far_arm=None)


def _stick_place(posture: Posture) -> tuple[float, float]:
    joints = joints_of(posture)
    return along(along(joints.shoulder, posture.trunk, 0.012), posture.trunk + 90, 0.062)


def _on_back(posture: Posture) -> tuple[Item, ...]:
    return props.bar_end(_stick_place(posture))


HINGE_SQUAT: Final = squat(4, 44.0, 36)


def hinge_to_squat() -> Drawing:
    """Hinge to squat as a loop: hinge, sink, back into the hinge, stand."""
    poses = {"stand": STANDING_POSTURE, "hinge": HINGED, "squat": HINGE_SQUAT}
    ways = (("stand", "hinge"), ("hinge", "squat"), ("squat", "hinge"), ("hinge", "stand"))
    moves = [[(*scene(_carrying(posture), "plain"), *_on_back(posture),
               *props.note((0.16, 0.99), start if share < 0.5 else end, "l", GUIDE, 16))
              for share, posture in ((share, between(poses[start], poses[end], share)) for share in eased(FPS)[1:])]
             for start, end in ways]
    return moving("a loop from the side, a stick on the upper back: hips back into the hinge, sink into the squat, "
        "hinge again, stand up.", loop(moves[0][-1], *moves[1:], moves[0][:-1]),
        Panel((), (-0.44, -0.05, 0.52, 1.04), "Hinge, squat, hinge, stand"))


def hinge_watch() -> Drawing:
    """The hinge and the squat, each neutral and rounded."""
    hinge, bent = _carrying(HINGED), _carrying(replace(HINGED, flexion=CLEARLY, trunk=20))
    sunk, broken = _carrying(HINGE_SQUAT), _carrying(replace(HINGE_SQUAT, flexion=CLEARLY))
    return Drawing(f"from the side, the hinge with the knees nearly straight, and the squat it sinks into. {POINTING}", tuple(
        close(posture, title, *_on_back(posture)) for posture, title in (
            (hinge, "Hinge keeps its shape"), (bent, "Hinge rounds"), (sunk, "Squat keeps it"), (broken, "Sinking breaks it"))),
        rows=(2, 2))
