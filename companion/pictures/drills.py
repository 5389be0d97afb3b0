"""Drawings of drills and homework, except those a test already shows."""

from __future__ import annotations

from dataclasses import replace
from math import dist
from typing import Final

from companion.pictures import lying, props, squats
from companion.pictures.draw import Panel, there_and_back
from companion.pictures.drawing import Drawing
from companion.pictures.figure import (
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
    joints_of,
    planted,
)
from companion.pictures.ink import FAR_INK, WATCH_INK
from companion.pictures.kneeling import SAG
from companion.pictures.scene import Item, Stroke, figure
from companion.pictures.squats import HANGING, Back, scene, seen
from companion.pictures.still_backs import palm_on_back
from companion.pictures.wall import PALM

HALF_A_STEP: Final = 0.205
"""Half a step as a share of stature: 36 of 175 cm (choice; a step is about .41 of stature, from memory)."""


def hinge_with_stick() -> Drawing:
    """Hinge with a stick along the back: three points."""
    stood, hinged = squats.STANDING_POSTURE, replace(squats.HINGED, head=24)
    bent = replace(hinged, flexion=squats.CLEARLY, head=18)

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

    def panel(posture: Posture, title: str, mark: Back, off: float = 0.0, *more: Item,
              view: tuple[float, float, float, float] = (-0.40, -0.05, 0.44, 0.88)) -> Panel:
        """Return a panel of the posture holding the stick."""
        return seen(held(posture, off), title, mark, *props.rod(*ends(posture, off)), *more, view=view)

    off = bent.trunk + 90
    tail = along(ends(bent)[0], bent.trunk, 0.09)
    gap = (Stroke((tail, along(tail, off, 0.075)), WATCH_INK, 0.012), *props.note(along(tail, off + 35, 0.145), "gap", "m", WATCH_INK))
    return Drawing(
        "drill_hinge_with_a_stick",
        "from the side, a stick along the back touching head, upper back and tailbone; hips pushed "
        "back, knees soft, 3 seconds down.", (
        panel(stood, "Stick touches three points", "", view=(-0.40, 0.42, 0.40, 1.04)),
        panel(hinged, "Hips back, all three still touch", "good"),
        panel(bent, "The stick leaves a point", "watch", 0.09, *gap)), rows=(1, 2))


def hinge_to_wall() -> Drawing:
    """Easier hinge: hands on a wall."""
    bowed = Posture(16, Leg(-68, -92), HANGING, head=14)
    hip, shoulder = joints_of(bowed).hip, joints_of(bowed).shoulder
    low = replace(bowed, near_arm=Reach(shoulder[0] + 0.31, hip[1] - 0.02, 1, 85))
    stands = shoulder[0] + 0.31 + PALM
    view = (-0.44, -0.05, 0.64, 0.72)
    return Drawing(
        "drill_hinge_hands_to_the_wall",
        "from the side, a step from a wall, both hands on it at hip height; hips pushed back, knees "
        "soft, 3 seconds down.", (seen(low, "Hips back, back keeps its shape", "good", *props.wall(stands, 0.68), view=view),
                                            seen(replace(low, flexion=squats.CLEARLY), "Turn back before this", "watch",
                                                 *props.wall(stands, 0.68), view=view)))


def knee_over_toes() -> Drawing:
    """Knee forward over the toes, heel down, hands on a wall half a step (about 36 cm) from the toes."""
    def panel(shin: float, heel: float, title: str, mark: Back) -> Panel:
        """Return a panel of the front leg's shin leaning so far, its heel so many degrees up."""
        stood = planted(Posture(90, Leg(-52, -90 - shin, -heel), HANGING, far=Leg(-106, -128, -40), on="toes"))
        joints = joints_of(stood)
        at = joints.near.toe[0] + HALF_A_STEP
        held = replace(stood, near_arm=Reach(at - PALM, joints.shoulder[1] - 0.03, 1, 85))
        lifts = props.lifting(joints.near.heel) if heel else ()
        return Panel((*scene(held), *props.wall(at, 0.98), *lifts), (-0.62, -0.05, 0.34, 1.0), title, mark)

    return Drawing("drill_knee_over_toes", "from the side, half a step from a wall, "
                   "the heel down: the knee comes over the toes, holds 2 seconds, comes back. Each side in turn.",
                   (panel(33, 0, "Knee over toes, heel down", "good"), panel(40, 16, "The heel lifts", "watch")))


def knee_over_toes_chair() -> Drawing:
    """Easier knee over toes, holding a chair."""
    held = planted(Posture(90, Leg(-52, -123), Reach(0.175, 0.573, 1, 0), far=Leg(-106, -128, -40), on="toes"))
    back = (Stroke(((0.22, 0.0), (0.20, 0.56)), FAR_INK, 0.018), Stroke(((0.21, 0.28), (0.45, 0.28), (0.45, 0.0)), FAR_INK, 0.018))
    return Drawing(
        "drill_knee_over_toes_holding_a_chair",
        "from the side, one hand on a steady chair, the heel down: the knee comes over the "
        "toes, holds 2 seconds, comes back.", (
        seen(held, "Heel down, knee over the toes", "good", *back, back="", view=(-0.62, -0.05, 0.54, 1.0)),))


def heel_lift() -> Drawing:
    """Squats with a heel lift, above parallel, where most people keep their back's shape."""
    raised = squats.squat(-25, 17.0, 41.3, foot=-4.3)  # 2 cm under the heel of a foot of 26.6 cm: asin(2 / 26.6) = 4.3 degrees
    heel = joints_of(raised).near.heel
    return Drawing(
        "drill_squat_with_a_heel_lift",
        "a squat from the side, heels on 2 cm, firm and level; slowly, above the depth where the back rounds. No load.", (
        seen(raised, "Heels raised, above where it rounds", "good", *props.block(heel[0] - 0.03, heel[0] + 0.05, 2 * props.CM),
             *props.note((heel[0] - 0.06, 0.05), "2 cm", "r"), view=(-0.40, -0.05, 0.46, 0.88)),))


def pause_above() -> Drawing:
    """Three stops as a drill, the lowest above the depth where the back rounds."""
    top, middle, bottom = squats.squat(-50, 9, 28), squats.squat(-38, 17.2), squats.squat(-25, 25.5)
    view = (-0.34, -0.05, 0.50, 0.95)
    return Drawing(
        "drill_pause_squat_three_stops",
        "three stops on the way down, from the side, all above the depth where the back rounds, the back in the same shape "
        "at each: hold each for 1 to 2 seconds, then stand up.", (
        seen(top, "1: near the top", "good", view=view), seen(middle, "2: lower", "good", view=view),
        seen(bottom, "3: above where it rounds", "good", view=view)))


def pause_to_box() -> Drawing:
    """A stop half way, then a touch on a box."""
    half, low = squats.squat(-32, 22), squats.squat(-8, 34.6)
    hip = joints_of(low).hip
    box = props.block(hip[0] - 0.18, hip[0] + 0.025, hip[1] - 0.056)  # behind the heels
    view = (-0.46, -0.05, 0.46, 0.88)
    return Drawing(
        "drill_pause_squat_to_a_box",
        "from the side, a box or chair behind, above the rounding depth: a stop of 1 to 2 seconds half way, "
        "touch the box, stop, stand up.", (
        seen(half, "Stop half way", "good", *box, view=view), seen(low, "Touch the box, stop", "good", *box, view=view)))


def sit_to_chair() -> Drawing:
    """One palm on the back, sitting down to a chair."""
    sat = squats.squat(2, 20, 6)
    joints = joints_of(sat)
    chair = props.seat(joints.hip[0] + 0.14, joints.hip[1] - 0.058)

    def at(share: float) -> tuple[Item, ...]:
        """Return the lifter at a share of the way down, the palm on the back."""
        one = between(squats.STANDING_POSTURE, sat, share)
        return (*scene(replace(one, near_arm=palm_on_back(joints_of(one)), far_arm=squats.AHEAD)), *chair)
    frames, times = there_and_back(at, 2.9)
    return Drawing(
        "drill_sit_to_a_chair",
        "a loop from the side, one palm on the curve of the lower back, a chair behind: sit down in 3 seconds, the curve "
        "keeps still, touch, stand up.", (
        Panel(frames[0], (-0.56, -0.05, 0.44, 1.02), "Curve still under the palm", "good"),), frames=frames, milliseconds=times)


def knee_across() -> Drawing:
    """Lying, one ankle over the other knee, that knee drawn to the opposite shoulder; the crossing leg points at the viewer."""
    far = Leg(116, 22, 100)
    knee = joints_of(Posture(180, far, HANGING, on="back")).near.knee
    hip = joints_of(Posture(180, far, HANGING, on="back")).hip
    side = along(hip, 66, 0.165)  # the crossing knee, out to the side, so that its thigh looks shorter
    crossing = Leg(direction(hip, side), direction(side, knee), 75, dist(hip, side) / THIGH_LENGTH, dist(side, knee) / SHANK_LENGTH)
    hold = along(knee, direction(hip, knee) + 180, 0.045)
    pulled = Posture(180, crossing, Arm(-9, -4, 0.62), far=far, far_arm=Reach(*hold, 1), head=178, on="back")
    return Drawing(
        "drill_lying_knee_across_pull",
        "lying on the back, one ankle crossed over the other knee, that knee drawn towards the opposite "
        "shoulder, the lower back still on the floor; hold 30 seconds.", (
        Panel((*figure(joints_of(pulled)), *props.floor(-0.6, 0.75), *props.note((-0.27, 0.42), "ankle on knee"),
               *props.arrow((-0.19, 0.39), along(knee, 130, 0.035)), *props.arrow(along(knee, 205, 0.09), along(knee, 218, 0.21)),
               *props.note((-0.30, 0.26), "pull")),
              (-0.50, -0.05, 0.46, 0.50),
              "Lower back stays on the floor", "good"),))


def strap_raise() -> Drawing:
    """The strap raise as a stretch."""
    return replace(lying.leg_raise_strap(), name="drill_strap_raise", says="lying on the back, a strap round one foot, "
                   "that knee straight: the leg is pulled up until a stretch, the back still; hold 30 seconds.",
                   panels=(replace(lying.leg_raise_strap().panels[0], title="Knee straight, back still", mark="good"),))


def calf_stretch() -> Drawing:
    """Calf stretch, knee straight, then bent."""
    straight = planted(Posture(68, Leg(-46, -120), Reach(0.225 - PALM, 0.66, 1, 85), far=Leg(-115, -115, 0), head=72, on="toes"))
    bent = planted(Posture(72, Leg(-36, -122), Reach(0.225 - PALM, 0.60, 1, 85), far=Leg(-86, -122, 0), head=76, on="toes"))
    view = (-0.60, -0.05, 0.32, 0.92)
    return Drawing(
        "drill_calf_stretch_straight_and_bent_knee",
        "from the side, hands on a wall, one foot back, its heel down: first that knee "
        "straight, 30 seconds, then bent, 30 seconds.", (
        Panel((*scene(straight), *props.wall(0.225, 0.92)), view, "Back knee straight, heel down", "good"),
        Panel((*scene(bent), *props.wall(0.225, 0.92)), view, "Back knee bent, heel down", "good")))


def plank() -> Drawing:
    """Plank on forearms and toes, the body in one line."""
    line = Posture(5.7, Leg(185.7, 185.7, -82), Arm(-90, 0), head=0, on="toes")
    sagging = Posture(4, Leg(186, 186, -84), Arm(-90, 0), head=0, on="toes", flexion=-SAG)
    view = (-0.30, -0.06, 1.14, 0.34)
    return Drawing(
        "drill_front_plank",
        "from the side, on forearms and toes, or forearms and knees, the body in one line; hold 15 seconds, up to 20.", (
        Panel(scene(line, "good"), view, "Body in one line", "good"),
        Panel(scene(sagging, "watch"), view, "Back sags", "watch")), rows=(1, 1))
