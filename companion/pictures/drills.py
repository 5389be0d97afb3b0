"""Drawings of drills and homework, except those a test already shows."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from companion.pictures import lying, props, squats
from companion.pictures.draw import Panel, there_and_back
from companion.pictures.drawing import Drawing, moving
from companion.pictures.figure import (
    LYING,
    SHANK_LENGTH,
    THIGH_LENGTH,
    Arm,
    Leg,
    Point,
    Posture,
    Reach,
    along,
    between,
    direction,
    joint_between,
    joints_of,
    planted,
)
from companion.pictures.ink import FAR_INK, WATCH_INK
from companion.pictures.kneeling import SAG
from companion.pictures.scene import Item, Stroke
from companion.pictures.squats import COUNTING, HANGING, Back, scene, seen, slowly
from companion.pictures.still_backs import palm_on_back, stops
from companion.pictures.wall import PALM
from companion.screening.sources import with_numbers

HALF_A_STEP: Final = 0.205
"""Half a step as a share of stature: 36 of 175 cm (choice; a step is about .41 of stature, from memory)."""


def drill_hinge_with_a_stick() -> Drawing:
    """Hinge with a stick along the back: three points."""
    stood = squats.STANDING_POSTURE
    bent = replace(squats.HINGED, flexion=squats.CLEARLY, head=18)

    def ends(posture: Posture, off: float = 0.0) -> tuple[Point, Point]:
        """Return the stick's ends, from below the tailbone, ``off`` away from it, to above the head."""
        joints = joints_of(posture)
        out, up = posture.trunk + 90, posture.trunk
        start = along(along(joints.hip, out, 0.072 + off), up + 180, 0.07)
        return start, along(along(joints.head, out, 0.075), up, 0.06)

    def held(posture: Posture, off: float = 0.0) -> Posture:
        """Return the posture with one hand on the stick at the small of the back, the other behind the neck."""
        (x, y), (x2, y2) = ends(posture, off)
        low, high = (x + (x2 - x) * 0.32, y + (y2 - y) * 0.32), (x + (x2 - x) * 0.72, y + (y2 - y) * 0.72)
        return replace(posture, near_arm=Reach(*low, 1.0, posture.trunk + 170), far_arm=Reach(*high, -1.0, posture.trunk + 30))

    def at(posture: Posture, off: float = 0.0, back: Back = "good") -> tuple[Item, ...]:
        """Return the posture holding the stick."""
        return (*scene(held(posture, off), back), *props.rod(*ends(posture, off)))

    off = bent.trunk + 90
    tail = along(ends(bent)[0], bent.trunk, 0.09)
    gap = (Stroke((tail, along(tail, off, 0.075)), WATCH_INK, 0.012), *props.note(along(tail, off + 35, 0.145), "gap", "m", WATCH_INK))
    return moving("a loop from the side, a stick along the back touching head, upper back and tailbone; hips pushed back, knees soft, "
                  f"{COUNTING} down.", slowly(lambda share: at(between(stood, squats.HINGED, share)), (0.30, 0.97)),
                  Panel((), (-0.44, -0.05, 0.44, 1.08), "Hips back, all three still touch", "good"),
                  Panel((*at(bent, 0.09, "watch"), *gap), (-0.44, -0.05, 0.44, 0.94), "The stick leaves a point", "watch"), rows=(1, 1))


def drill_hinge_hands_to_the_wall() -> Drawing:
    """Easier hinge: hands on a wall, where they stay."""
    begins, bowed = Posture(31, Leg(-78, -91), HANGING, head=34), Posture(16, Leg(-68, -92), HANGING, head=14)
    hip, shoulder = joints_of(bowed).hip, joints_of(bowed).shoulder
    hands = Reach(shoulder[0] + 0.28, hip[1] - 0.02, 1, 85)

    def at(posture: Posture, back: Back = "good") -> tuple[Item, ...]:
        """Return the posture with its hands on the wall."""
        return (*scene(replace(posture, near_arm=hands), back), *props.wall(hands.x + PALM, 0.68))
    view = (-0.44, -0.05, 0.64, 0.86)
    return moving("a loop from the side, a step from a wall, both hands on it at hip height; hips pushed back, knees "
                  f"soft, {COUNTING} down.", slowly(lambda share: at(between(begins, bowed, share)), (-0.30, 0.72)),
                  Panel((), view, "Hips back, back keeps its shape", "good"),
                  Panel(at(replace(bowed, flexion=squats.CLEARLY), "watch"), view, "Turn back before this", "watch"), rows=(1, 1))


def over_toes(share: float, hand: Reach | None = None) -> Posture:
    """Return a stride at a share of the way of the knee over the toes; both feet stay, the hips go along."""
    there = planted(Posture(82, Leg(-52, -90 - 33), hand or HANGING, far=Leg(-106, -128, -40), head=86, on="toes"))
    here = replace(there, near=Leg(-52, -90 - 20 - 13 * share))
    hip, far = joints_of(here).hip, joints_of(there).far.ankle
    knee = joint_between(hip, far, THIGH_LENGTH, SHANK_LENGTH, -1)
    return replace(here, far=Leg(direction(hip, knee), direction(knee, far), -40))


def drill_knee_over_toes() -> Drawing:
    """Knee forward over the toes, heel down, hands on a wall half a step (about 36 cm) from the toes."""
    lifted = planted(Posture(82, Leg(-52, -130, -16), HANGING, far=Leg(-106, -128, -40), head=86, on="toes"))
    wall = joints_of(lifted).near.toe[0] + HALF_A_STEP

    def at(posture: Posture) -> tuple[Item, ...]:
        """Return the posture with its hand on the wall."""
        hand = Reach(wall - PALM, joints_of(posture).shoulder[1] - 0.03, 1, 85)
        return (*scene(replace(posture, near_arm=hand)), *props.wall(wall, 0.98))
    view = (-0.62, -0.05, 0.34, 1.0)
    return moving(with_numbers("a loop from the side, half a step from a wall, "
                               "the heel down: the knee comes over the toes, holds {drill_pace_1} seconds, comes back. Each side in turn."),
                  there_and_back(lambda share: at(over_toes(share)), 1.5), Panel((), view, "Knee over toes, heel down", "good"),
                  Panel((*at(lifted), *props.lifting(joints_of(lifted).near.heel)), view, "The heel lifts", "watch"))


def drill_knee_over_toes_holding_a_chair() -> Drawing:
    """Easier knee over toes, holding a chair."""
    back = (Stroke(((0.18, 0.0), (0.16, 0.56)), FAR_INK, 0.018), Stroke(((0.17, 0.28), (0.41, 0.28), (0.41, 0.0)), FAR_INK, 0.018))
    named = props.note((0.20, 0.66), "one hand")

    def at(share: float) -> tuple[Item, ...]:
        """Return the stride at a share of the way, one hand on the chair."""
        return scene(replace(over_toes(share, Reach(0.130, 0.573, 1, 0)), far_arm=Arm(-122, -108)), "", *back, *named)
    return moving(with_numbers("a loop from the side, one hand on a steady chair, the other arm hanging, the heel down: the knee comes "
                               "over the toes, holds {drill_pace_1} seconds, comes back."),
                  there_and_back(at, 1.5),
                  Panel((), (-0.62, -0.05, 0.54, 1.0), "Heel down, knee over the toes", "good"))


def drill_squat_with_a_heel_lift() -> Drawing:
    """Squats with a heel lift, above parallel, where most people keep their back's shape."""
    foot = -4.3  # 2 cm under the heel of a foot of 26.6 cm: asin(2 / 26.6) = 4.3 degrees
    stood, raised = squats.squat(-90, 0, 0, foot=foot), squats.squat(-25, 17.0, 41.3, foot=foot)
    heel = joints_of(raised).near.heel
    high = with_numbers("{heel_lift_0} cm")
    lift = *props.block(heel[0] - 0.03, heel[0] + 0.05, 2 * props.CM), *props.note((heel[0] - 0.06, 0.05), high, "r")
    return moving(f"a loop of a squat from the side, heels on {high}, firm and level; slowly, above the depth where the back rounds. No "
                  "load.",
                  there_and_back(lambda share: scene(between(stood, raised, share), "good", *lift), 2),
                  Panel((), (-0.40, -0.05, 0.46, 1.04), "Heels raised, above where it rounds", "good"))


def drill_pause_squat_three_stops() -> Drawing:
    """Three stops as a drill, the lowest above the depth where the back rounds."""
    return stops("all above the depth where the back rounds, ", (squats.squat(-50, 9, 28), "near the top"),
                 (squats.squat(-38, 17.2), "lower"), (squats.squat(-25, 25.5), "above where it rounds"))


def drill_pause_squat_to_a_box() -> Drawing:
    """A stop half way, then a touch on a box."""
    half, low = squats.squat(-32, 22), squats.squat(-8, 34.6)
    hip = joints_of(low).hip
    box = props.block(hip[0] - 0.18, hip[0] + 0.025, hip[1] - 0.056)  # behind the heels
    view = (-0.46, -0.05, 0.46, 0.88)
    return Drawing(with_numbers("from the side, a box or chair behind, above the rounding depth: a stop of {drill_stop_0} to "
                                "{drill_stop_1} seconds half way, touch the box, stop, stand up."), (
        seen(half, "Stop half way", "good", *box, view=view), seen(low, "Touch the box, stop", "good", *box, view=view)))


def drill_sit_to_a_chair() -> Drawing:
    """One palm on the back, sitting down to a chair."""
    sat = squats.squat(2, 20, 6)
    joints = joints_of(sat)
    chair = props.seat(joints.hip[0] + 0.14, joints.hip[1] - 0.058)

    def at(share: float) -> tuple[Item, ...]:
        """Return the lifter at a share of the way down, the palm on the back."""
        one = between(squats.STANDING_POSTURE, sat, share)
        return (*scene(replace(one, near_arm=palm_on_back(joints_of(one)), far_arm=squats.AHEAD)), *chair)
    return moving(f"a loop from the side, one palm on the curve of the lower back, a chair behind: sit down, {COUNTING}, the "
                  "curve keeps still, touch, stand up.", slowly(at, (0.34, 0.97)),
                  Panel((), (-0.56, -0.05, 0.44, 1.05), "Curve still under the palm", "good"))


def drill_strap_raise() -> Drawing:
    """The strap raise as a stretch: an arrow shows the leg come up."""
    panel = lying.leg_raise_setup_strap().panels[0]
    pull = *props.swing((0.0, LYING), 0.44, 12, 54), *props.note((0.39, 0.32), "pull up", "l")
    return Drawing(with_numbers("lying on the back, a strap round one foot, that knee straight: the leg is pulled up until a stretch, an "
                                "arrow shows the way, the back still; hold {stretch_hold_0} seconds."),
                   (replace(panel, items=(*panel.items, *pull), title="Knee straight, back still", mark="good"),))


def drill_calf_stretch_straight_and_bent_knee() -> Drawing:
    """Calf stretch, knee straight, then bent."""
    straight = planted(Posture(68, Leg(-46, -120), Reach(0.225 - PALM, 0.66, 1, 85), far=Leg(-115, -115, 0), head=72, on="toes"))
    bent = planted(Posture(72, Leg(-36, -122), Reach(0.225 - PALM, 0.60, 1, 85), far=Leg(-86, -122, 0), head=76, on="toes"))
    view = (-0.60, -0.05, 0.32, 0.92)
    return Drawing(with_numbers("from the side, hands on a wall, one foot back, its heel down: first that knee straight, {stretch_hold_0} "
                                "seconds, then bent, {stretch_hold_0} seconds."), (
        Panel((*scene(straight), *props.wall(0.225, 0.92)), view, "Back knee straight, heel down", "good"),
        Panel((*scene(bent), *props.wall(0.225, 0.92)), view, "Back knee bent, heel down", "good")))


def drill_front_plank() -> Drawing:
    """Plank on forearms and toes, the body in one line."""
    line = Posture(5.7, Leg(185.7, 185.7, -82), Arm(-90, 0), head=0, on="toes")
    sagging = Posture(4, Leg(186, 186, -84), Arm(-90, 0), head=0, on="toes", flexion=-SAG)
    view = (-0.30, -0.06, 1.14, 0.34)
    return Drawing(with_numbers("from the side, on forearms and toes, or forearms and knees, the body in one line; hold {plank_0} seconds, "
                                "up to {plank_1}."), (
        Panel(scene(line, "good"), view, "Body in one line", "good"),
        Panel(scene(sagging, "watch"), view, "Back sags", "watch")), rows=(1, 1))
