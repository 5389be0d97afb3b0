"""Drawings of squats from the side: depths, changes, and what to watch for.

Leans are those at which the figure balances over its feet with the shins at that angle (screening.posture, an average adult), so that
every drawn squat is possible.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final, Literal

from companion.pictures import props
from companion.pictures.draw import FPS, Frames, Panel, eased, loop
from companion.pictures.drawing import Drawing, moving
from companion.pictures.figure import Arm, Leg, Point, Posture, Reach, along, between, joints_of, middle
from companion.pictures.ink import FAR_INK, GUIDE, INK, WATCH_INK
from companion.pictures.scene import CHEST_LINE, THIGH, Item, Stroke, figure, on_pelvis, on_ribs, pointers, small_of_back
from companion.pictures.views import HAND, STANCE_HALF, from_above, wider_stance
from companion.screening.sources import SOURCES, value, with_numbers

Back = Literal["", "good", "watch", "plain"]
SHIN: Final = 35.0
SECONDS_DOWN: Final = int(value("slow_down"))
COUNTING: Final = f"counting {', '.join(str(n) for n in range(1, SECONDS_DOWN + 1))} seconds"
AHEAD: Final = Arm(0, 0)
HANGING: Final = Arm(-95, -85)
SQUAT_VIEW: Final = (-0.36, -0.05, 0.48, 0.80)
POINTING: Final = "Thin lines show where tail and ribs point; dashed: with the back's own curve."
STANDING_VIEW: Final = (-0.40, -0.05, 0.46, 1.02)
CLEARLY, A_LITTLE = SOURCES["rounding_is_common"].value
"""Drawn lumbar flexion in degrees: what was seen going down in trained men and women. That the less is called "a little" and the more
"clearly" is a choice."""

# The lean that balances at a thigh angle (degrees below level), shins at 35 degrees, arms straight ahead; no load.
LEANS: Final = {-30.0: 23.6, -12.0: 33.7, 0.0: 35.8, 14.0: 33.0}
DEPTHS: Final = {"well_above": -30.0, "a_little_above": -12.0, "parallel": 0.0, "below": 14.0}
DEPTH_TITLES: Final = {"well_above": "Well above parallel", "a_little_above": "A little above",
                       "parallel": "Parallel: top of the thigh level", "below": "Below parallel"}


def squat(depth: float, lean: float, shin: float = SHIN, flexion: float = 0.0, arm: Arm | Reach = AHEAD, foot: float = 0.0) -> Posture:
    """Return a squat: thigh below level, trunk and shin leaning forward from upright, all in degrees."""
    return Posture(90 - lean, Leg(depth, -90 - shin, foot), arm, flexion=flexion, head=90 - lean * 0.45)


STANDING_POSTURE: Final = Posture(90, Leg(-90, -90), HANGING)
YOU: Final = joints_of(STANDING_POSTURE)
HINGED: Final = Posture(24, Leg(-66, -93), HANGING, head=40)


def scene(posture: Posture, back: Back = "", *more: Item) -> tuple[Item, ...]:
    """Return the items of a posture on the floor, with others in front."""
    return (*figure(joints_of(posture), back), *props.floor(-1, 1), *more)


def seen(posture: Posture, title: str = "", mark: Back = "", *more: Item, back: Back | None = None,
         view: tuple[float, float, float, float] = SQUAT_VIEW) -> Panel:
    """Return a panel of one posture; its back is marked like the panel."""
    return Panel(scene(posture, mark if back is None else back, *more), view, title, mark)


def close(posture: Posture, title: str, *more: Item) -> Panel:
    """Return a panel of lower back and pelvis close to, with the turn of both against the same posture with the back's own curve."""
    x, y = small_of_back(joints_of(posture))
    lines = pointers(joints_of(posture)), pointers(joints_of(replace(posture, flexion=0.0)), 0.016) if posture.flexion else ()
    return Panel(scene(posture, "plain", *more, *lines[1], *lines[0]), (x - 0.17, y - 0.24, x + 0.27, y + 0.22), title)


def thigh_line(posture: Posture) -> tuple[Item, ...]:
    """Return a dashed level line at the top of the knee: the top of the thigh lies on it at parallel."""
    x, y = joints_of(posture).near.knee
    return (Stroke(((x - 0.42, y + THIGH), (x + 0.14, y + THIGH)), GUIDE, 0.007, 0.02),)


def at_depth(band: str, flexion: float = 0.0) -> Posture:
    """Return the squat of a depth band, neutral or rounded."""
    depth = DEPTHS[band]
    return squat(depth, LEANS[depth], flexion=flexion)


def squat_rounding() -> Drawing:
    """The three answers at parallel, none of them judged: the lumbar curve as in standing, flexed a little, and clearly."""
    return Drawing("a squat from the side, parallel, three times. A white mark on the tail bone "
                   f"and a band at the waist show how the pelvis turns. {POINTING}", tuple(
        close(at_depth("parallel", flexion), title)
        for flexion, title in ((0.0, "No: back keeps its shape"), (A_LITTLE, "A little: it flattens"),
                               (CLEARLY, "Clearly: tail tucks under"))), rows=(2, 1))


def squat_bands() -> Drawing:
    """The four depths of the question."""
    return Drawing("four depths of a squat from the side. The dashed line is level with the top of the knee: at "
        "parallel the top of the thigh lies on it.",
                   tuple(seen(at_depth(band), DEPTH_TITLES[band], "", *thigh_line(at_depth(band)), view=(-0.36, -0.05, 0.50, 0.90))
                         for band in DEPTHS), rows=(2, 2))


def squat_heels() -> Drawing:
    """Squat with raised heels."""
    foot = -6.0  # 2.5 cm under the heel of a foot of 0.152 of 175 cm: asin(2.5 / 26.6) = 5.4 degrees
    raised = squat(4, 24.0, 41, foot=foot)
    heel = joints_of(raised).near.heel
    return Drawing(with_numbers("a squat from the side, heels on a thin book or plate, {heel_lift_0} to {heel_lift_1} cm or about an inch "
                                "high."), (
        seen(squat(0, 35.8), "Heels flat: as before", "", back=""),
        seen(raised, "Heels up, flat and steady", "good", *props.block(heel[0] - 0.03, heel[0] + 0.05, 2.5 * props.CM), back="")))


def squat_front() -> Drawing:
    """Squat with a weight held out in front."""
    held = squat(4, 29.0)
    hand = joints_of(held).near_arm.hand
    bag = (Stroke((hand, (hand[0], hand[1] - 0.03)), GUIDE, 0.012), *props.pillow((hand[0], hand[1] - 0.06), 0.012))
    return Drawing(with_numbers("a squat from the side, a light weight of {held_weight_0} to {held_weight_1} kg or {held_weight_pounds_0} "
                                "to {held_weight_pounds_1} lb held straight out at chest height."),
                   (seen(held, "Light weight straight out, chest height", "good", *bag, back="", view=(-0.44, -0.05, 0.62, 0.80)),))


def squat_wide() -> Drawing:
    """The usual and the wider stance, from above."""
    arrows = tuple(item for way in (-1, 1) for item in (
        *props.arrow((way * STANCE_HALF, -0.035), (way * (STANCE_HALF + HAND + 0.01), -0.035)),
        *props.note((way * 0.19, -0.085), "hand's width"), *props.note((way * 0.20, 0.185), "toes", ink=INK)))
    items = (*wider_stance(), *arrows, *props.note((0, 0.07), "usual", ink=FAR_INK))
    return Drawing("both feet from above, toes up the picture: the usual place dashed, the new place filled, each foot "
        "a hand's width further out.", (Panel(items, (-0.42, -0.12, 0.42, 0.22), "Each foot a hand's width further out"),))


def slowly(draw: Callable[[float], tuple[Item, ...]], at: Point, seconds: int = SECONDS_DOWN) -> Frames:
    """Return a loop that begins at the end of a way, goes back as usual and comes again slowly, its seconds counted at a place.

    ``draw``: the items at a share of the way, 0 to 1.
    """
    down = eased(seconds * FPS)
    back = [draw(share) for share in down[::-3]]
    counted = [(*draw(share), *props.note(at, str(1 + n // FPS), "m", GUIDE, 30)) for n, share in enumerate(down)]
    return loop(back[0], back[1:], counted[:-1])


def squat_slow() -> Drawing:
    """Squat with three seconds down, as a loop with its count."""
    return moving(f"a loop of a squat from the side, {COUNTING} on the way down, then up as usual.",
                  slowly(lambda share: scene(between(STANDING_POSTURE, squat(0, 35.8), share)), (0.34, 0.93)),
                  Panel((), STANDING_VIEW, with_numbers("{slow_down:Count seconds} down, up as usual"), "good"))


def squat_fold() -> Drawing:
    """The fold at the bottom of the deepest squat."""
    deep = at_depth("below")
    joints = joints_of(deep)
    belly = [on_ribs(joints, up, front) for up, front in CHEST_LINE[:0:-1]]
    thigh = [along(along(joints.hip, deep.near.thigh, far), deep.near.thigh + 90, THIGH) for far in (0.09, 0.215)]
    edges = *(Stroke(tuple(line), GUIDE, 0.011) for line in (belly, thigh)), *props.arrow(belly[-1], thigh[1])
    (x, y), (x2, y2) = middle(belly[-1], thigh[1]), thigh[1]
    named = *props.note((x + 0.02, y), "gap", "l"), *props.note((x2 + 0.06, y2 - 0.02), "thigh", "l"), *props.note(
        (belly[0][0] - 0.02, belly[1][1]), "belly", "r")
    return Drawing("the bottom of a deep squat from the side, close, belly and thigh marked, an arrow across the gap from belly to thigh.",
                   (seen(deep, "Your squat's fold: how close the thigh comes to the belly", "", *edges, *named, back="",
                         view=(-0.30, 0.14, 0.28, 0.52)),))


def view_film() -> Drawing:
    """Place of the phone for filming."""
    items = (*from_above(YOU, (-0.55, 0.0)), *props.view_of((0.62, 0.0), 0.40, 1.05), *props.arrow((0.10, -0.30), (0.58, -0.30)),
             *props.arrow((0.10, -0.30), (-0.40, -0.30)), *props.note((0.12, -0.36), with_numbers("{phone_steps_0} big steps")),
             *props.note((0.82, 0.23), "phone, hip high", "r"), *props.note((-0.55, 0.21), "you, side-on"))
    return Drawing(with_numbers("from above: you stand side-on to the phone, which leans at hip height, {phone_steps_0} big steps away, "
                                "all of you in its view."), (Panel(items, (-0.82, -0.42, 0.84, 0.42), "Phone side-on to you, hip high"),))


def film_cards() -> Drawing:
    """Places of the printed cards, the arms clear of them: as the page that is printed has them."""
    stood = replace(STANDING_POSTURE, near_arm=AHEAD)
    joints = joints_of(stood)
    leg, (x, y) = joints.near, joints.shoulder
    places = (along((x - 0.005, y), -90, 0.095), on_pelvis(joints, 0.055, 0.0), middle(joints.hip, leg.knee), middle(leg.knee, leg.ankle))
    cards = tuple(item for n, place in enumerate(places, 1) for item in props.card(place, n))
    belt = Stroke((on_pelvis(joints, 0.060, 0.066), on_pelvis(joints, 0.060, -0.066)), GUIDE, 0.020)
    named = *props.arrow((0.17, places[1][1]), (0.085, places[1][1])), *props.note((0.18, places[1][1]), "belt line", "l")
    return Drawing("somebody standing side-on, arms straight ahead, printed cards with arrows up: 1 on the ribs, 2 on the belt line, "
        "3 on the middle of the thigh, 4 on the shin, 5 on the wall behind.", (
            Panel((*props.wall_behind(-0.52, 0.58, 0.98), *scene(stood), belt, *cards, *named, *props.card((-0.30, 0.62), 5),
                   *props.note((-0.30, 0.72), "wall", ink=INK),
                   *props.note((-0.30, 0.53), "arrow up", ink=WATCH_INK), *props.note((0.10, 0.18), "cards", "l", INK)),
                  (-0.56, -0.05, 0.60, 1.02), "Cards 1 to 4 on you, card 5 on the wall"),))


def view_mirror() -> Drawing:
    """Standing side-on to a mirror."""
    items = (*from_above(YOU, (-0.30, 0.0)), *props.rod((0.30, -0.26), (0.30, 0.26)), *props.arrow((-0.12, 0.02), (0.26, 0.02)),
             *props.note((0.34, 0.0), "mirror", "l"), *props.note((-0.30, 0.19), "you, side-on"))
    return Drawing("from above: you stand side-on to the mirror and glance across.",
                   (Panel(items, (-0.62, -0.30, 0.62, 0.30), "Mirror beside you"),))
