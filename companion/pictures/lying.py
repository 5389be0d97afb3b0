"""Drawings lying on the back: the hip fold and the leg raise."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians
from typing import Final

from companion.pictures import props
from companion.pictures.draw import Panel, there_and_back
from companion.pictures.drawing import Drawing, moving
from companion.pictures.figure import Arm, Leg, Posture, Reach, along, between, direction, joints_of, middle
from companion.pictures.ink import GUIDE, WATCH_INK
from companion.pictures.scene import Disc, Item, Stroke, figure
from companion.pictures.squats import Back
from companion.screening.sources import value

UNDER: Final = Reach(-0.13, 0.010, 0, 0)
FLAT: Final = Leg(0, 0, 75)
RAISED_VIEW: Final = (-0.50, -0.05, 0.58, 0.66)
LEAST_ANGLE, COMFORTABLE_ANGLE = value("leg_raise_least"), value("leg_raise_comfortable")
"""The two lines of the leg raise, in degrees from the floor."""
UNDER_NAMED: Final = (*props.arrow((-0.115, -0.075), (-0.115, -0.012)), *props.note((-0.115, -0.105), "hands under back"))
"""The name of the hands under the small of the back, and an arrow to them."""
LIES: Final = Posture(180, FLAT, UNDER, head=180, on="back")


def lying(leg: Leg, roll: float = 0.0, arm: Arm | Reach = UNDER) -> Posture:
    """Return a posture on the back, the far leg flat."""
    return Posture(180, leg, arm, far=FLAT, head=180, on="back", flexion=roll)


def on_floor(posture: Posture, *more: Item, behind: tuple[Item, ...] = ()) -> tuple[Item, ...]:
    """Return a lying figure with its hands under the small of the back."""
    return (*behind, *figure(joints_of(posture)), *props.floor(-0.6, 0.75), *props.hands_under(), *more)


def lies(posture: Posture, title: str, mark: Back = "", *more: Item, view: tuple[float, float, float, float] = RAISED_VIEW,
         behind: tuple[Item, ...] = ()) -> Panel:
    """Return a panel of a lying figure."""
    return Panel(on_floor(posture, *more, behind=behind), view, title, mark)


def _named(posture: Posture, off: float = 0.10) -> tuple[Item, ...]:
    """Return the side's name so far behind the ankle of the raised leg."""
    leg = joints_of(posture).near
    return props.limb_name(along(leg.ankle, direction(leg.knee, leg.ankle) - 90, off), "{SIDE}")


def _named_knee(posture: Posture) -> tuple[Item, ...]:
    """Return the side's name where the bent knee points, so far off that its words are clear of thigh and shin."""
    joints = joints_of(posture)
    out = direction(middle(joints.hip, joints.near.ankle), joints.near.knee)
    return props.limb_name(along(joints.near.knee, out, 0.06 + 0.10 * abs(cos(radians(out)))), "{SIDE} knee")


def lying_setup() -> Drawing:
    """Set-up: hands under the curve of the lower back."""
    return Drawing("lying on the back, legs long, seen from the side; both hands, palms down, under the curve of the "
        "lower back.", (lies(LIES, "Both hands under the lower back, light pressure", "",
                                        *UNDER_NAMED, view=(-0.50, -0.14, 0.58, 0.20)),))


def hip_fold() -> Drawing:
    """Hip fold: knee bent, thigh to the chest."""
    bent, folded, rolled = lying(Leg(60, -62, 0)), lying(Leg(118, 28, 90)), lying(Leg(128, 38, 95), roll=9)
    view = (-0.50, -0.14, 0.58, 0.57)
    hip = joints_of(folded).hip

    def at(share: float) -> tuple[Item, ...]:
        """Return the fold at a share of the way."""
        one = between(bent, folded, share)
        return on_floor(one, *props.swing(hip, 0.19, 18, 52), *_named_knee(one), *UNDER_NAMED)
    return moving("a loop, lying on the back, hands under the lower back; the {side} knee bent to 90°, the thigh "
        "brought towards the chest, the {other} leg flat.", there_and_back(at, 2),
        Panel((), view, "Thigh comes up, pressure on the hands stays the same", "good"),
        lies(rolled, "Stop here: the pressure on the hands changes", "watch", *props.press(WATCH_INK),
             *_named_knee(rolled), *UNDER_NAMED, *props.note((-0.30, 0.21), "pressure", ink=WATCH_INK), view=view), rows=(1, 1))


def lines(leg: Posture) -> tuple[Item, ...]:
    """Return the two lines through the hip."""
    hip = joints_of(leg).hip
    return tuple(item for line in (LEAST_ANGLE, COMFORTABLE_ANGLE) for item in props.ray(hip, line, 0.60, f"{line:g}°", 0.07))


def leg_raise() -> Drawing:
    """Straight leg raise against its two lines, and its two end points."""
    raised = lying(Leg(62, 62, 132))
    bent, pressed = lying(Leg(78, 48, 118)), lying(Leg(84, 84, 150), roll=9)
    hip, small = joints_of(raised).hip, (-0.49, -0.14, 0.70, 0.74)
    near = (-0.46, -0.04, 0.46, 0.70)

    def at(share: float) -> tuple[Item, ...]:
        """Return the raise at a share of the way."""
        one = between(lying(FLAT), raised, share)
        x, y = joints_of(one).near.ankle
        named = props.limb_name((x + 0.15, y), "{SIDE}")  # beyond the sole: low, there is no room behind the leg
        return on_floor(one, *props.swing(hip, 0.42, 8, 48), *named, *UNDER_NAMED, behind=lines(raised))
    return moving("a loop, lying on the back, hands under the lower back; the {side} leg comes up straight, foot relaxed, "
        "the {other} leg flat. Dashed lines from the hip at 70° and 80° from the floor; the leg is at 62°.", there_and_back(at, 2),
        Panel((), small, "Knee straight, back still", "good"),
        lies(bent, "The knee bends: stop", "watch", *_named(bent, 0.14), *props.note((0.0, 0.36), "bent", "r", WATCH_INK), view=near),
        lies(pressed, "The back presses or lifts: stop", "watch", *props.press(WATCH_INK), *_named(pressed, 0.17),
             *props.note((-0.05, 0.24), "back", "r", WATCH_INK), view=near), rows=(1, 2))


def leg_raise_eye() -> Drawing:
    """Leg raise: the angles of the question by eye."""
    rays = tuple(item for angle, label in ((45, "45°"), (60, "60°"), (70, "70°"), (80, "80°"), (90, "90°"))
                 for item in props.ray((0.0, 0.052), angle, 0.60, label, 0.07))
    return Drawing("lying on the back, the {side} leg at 45°, half way up, and dashed lines from the hip at "
        "45°, 60°, 70°, 80° and 90°, which is straight up.", (
        lies(lying(Leg(45, 45, 115)), "45° is half way, 90° straight up", "", *_named(lying(Leg(45, 45, 115))),
             view=(-0.50, -0.05, 0.60, 0.74), behind=rays),))


def leg_raise_setup_strap() -> Drawing:
    """Leg raise with a strap: one hand pulls, one lies under the back."""
    pulled = lying(Leg(66, 66, 132), arm=Reach(-0.02, 0.30, 1, 60))
    joints = joints_of(pulled)
    far = replace(pulled, far_arm=UNDER)
    items = (*figure(joints_of(far)), *props.strap(joints.near, joints.near_arm.hand), *props.floor(-0.6, 0.75),
             *props.hands_under(), UNDER_NAMED[0], *props.note((-0.115, -0.105), "hand under back"))
    return Drawing("lying on the back: a strap or towel round one foot, both ends in one hand; the other hand, palm "
        "down, under the lower back.", (Panel(items, (-0.50, -0.14, 0.58, 0.66), "One hand pulls, one lies under the back"),))


def leg_raise_level(placement: str) -> Drawing:
    """Leg raise: the phone's place, on the shin or on the thigh."""
    up = lying(Leg(60, 60, 132))
    knee = joints_of(up).near.knee
    phone = along(along(knee, 60, 0.10), 150, 0.043) if placement == "shin" else along(along(knee, 240, 0.09), 150, 0.050)
    return Drawing(
        f"lying on the back, one leg up: the phone tied along the front of the {placement}, level open.",
        (lies(up, f"On the {placement}", "", *props.phone(phone, 60, along(phone, 150, 0.10))),))


def leg_raise_setup_heel() -> Drawing:
    """Leg raise: the heel's height against a tape on the wall."""
    up = lying(Leg(55, 55, 125))
    heel = joints_of(up).near.heel
    tape = heel[0]
    alongside = (*props.wall_behind(-0.48, 0.66, 0.64), *props.note((-0.30, 0.58), "wall alongside"),
                 Stroke(((tape, 0.0), (tape, 0.62)), GUIDE, 0.014),
                 *(Stroke(((tape, n * 0.057), (tape + 0.025, n * 0.057)), GUIDE, 0.005) for n in range(11)),
                 *props.note((tape + 0.04, 0.59), "tape", "l"))
    mark = (Disc(heel, 0.016, WATCH_INK), *props.note((heel[0] + 0.04, heel[1]), "heel", "l", WATCH_INK),
            *props.note((tape, -0.045), "zero"))
    return Drawing("lying alongside a wall or door frame, which stands behind the whole body, with "
        "a tape stuck to it, zero on the floor; the back of the "
        "heel is marked on it.", (lies(up, "Heel's height on the tape, zero on the floor", "", *mark, behind=alongside,
                                                  view=(-0.50, -0.08, 0.68, 0.66)),))
