"""Drawings of the squats, seen from the side: how deep, what to change, what to watch for.

Leans are those at which the figure balances over its feet with the shins at that angle (screening.posture, an average
adult), so that nobody is drawn as no body can stand.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final, Literal

from companion.pictures import props
from companion.pictures.catalogue import Drawing
from companion.pictures.draw import Panel, eased
from companion.pictures.figure import Arm, Leg, Posture, Reach, along, between, joints_of
from companion.pictures.ink import FAR, GUIDE
from companion.pictures.scene import Item, Stroke, figure

Back = Literal["", "good", "watch"]

SHIN: Final = 35.0
AHEAD: Final = Arm(0, 0)
HANGING: Final = Arm(-95, -85)
CM: Final = props.CM
SQUAT_VIEW: Final = (-0.36, -0.05, 0.48, 0.80)
STANDING_VIEW: Final = (-0.40, -0.05, 0.46, 1.02)
TUCKED: Final = 26.0
"""How far a tail that tucks under is drawn turned, in degrees: within the 13 to 26 seen in trained squatters (McKean 2010,
read), at its upper end so that it shows."""

# The lean that balances at a thigh angle (degrees below level), shins at 35 degrees, arms straight ahead; no load.
LEANS: Final = {-30.0: 23.6, -12.0: 33.7, 0.0: 35.8, 14.0: 33.0}
DEPTHS: Final = {"well_above": -30.0, "a_little_above": -12.0, "parallel": 0.0, "below": 14.0}
WORDS: Final = {"well_above": "Well above parallel", "a_little_above": "A little above", "parallel": "Parallel: thigh level",
                "below": "Below parallel"}


def squat(depth: float, lean: float, shin: float = SHIN, tuck: float = 0.0, arm: Arm | Reach = AHEAD, foot: float = 0.0) -> Posture:
    """A squat: thigh so many degrees below level, trunk and shin leaning forward from upright."""
    return Posture(90 - lean, Leg(depth, -90 - shin, foot), arm, tuck=tuck, head=90 - lean * 0.45)


STANDING: Final = Posture(90, Leg(-90, -90), HANGING)
HINGED: Final = Posture(24, Leg(-66, -93), HANGING, head=40)


def scene(posture: Posture, back: Back = "", *more: Item) -> tuple[Item, ...]:
    """A posture on the floor, with what stands around it in front."""
    return (*figure(joints_of(posture), back), *props.floor(-1, 1), *more)


def seen(posture: Posture, title: str = "", mark: Back = "", *more: Item, back: Back | None = None,
         view: tuple[float, float, float, float] = SQUAT_VIEW) -> Panel:
    """A panel of one posture; its back is marked as the panel is."""
    return Panel(scene(posture, mark if back is None else back, *more), view, title, mark)


def thigh_line(posture: Posture, label: str = "") -> tuple[Item, ...]:
    """A dashed level line through the knee, to see how deep the thigh is."""
    knee = joints_of(posture).near.knee
    return (Stroke(((knee[0] - 0.42, knee[1]), (knee[0] + 0.14, knee[1])), GUIDE, 0.007, 0.02),
            *(props.note((knee[0] + 0.16, knee[1]), label, "l") if label else ()))


def at_depth(band: str, tuck: float = 0.0) -> Posture:
    """The squat of a depth band, neutral or tucked."""
    depth = DEPTHS[band]
    return squat(depth, LEANS[depth], tuck=tuck)


def rounding(band: str) -> Drawing:
    """One depth, neutral and rounded side by side."""
    still, tucked = at_depth(band), at_depth(band, TUCKED)
    return Drawing(f"squat_rounding_{band}", f"a squat from the side, {WORDS[band].lower()}, twice.", (
        seen(still, "Back keeps its shape", "good", *thigh_line(still)),
        seen(tucked, "Lower back rounds, tail tucks under", "watch", *thigh_line(tucked))))


def bands() -> Drawing:
    """The four depths of the question."""
    return Drawing("squat_bands", "four depths of a squat from the side. The dashed line is level with the knee: at parallel the "
                   "thigh lies on it.",
                   tuple(seen(at_depth(band), WORDS[band], "", *thigh_line(at_depth(band))) for band in DEPTHS), rows=(2, 2))


def heels() -> Drawing:
    """Heels raised."""
    foot = -6.0  # 2.5 cm under the heel of a foot of 0.152 of 175 cm: asin(2.5 / 26.6) = 5.4 degrees
    raised = squat(4, 24.0, 41, foot=foot)
    heel = joints_of(raised).near.heel
    return Drawing("squat_heels", "a squat from the side, heels on a thin book or plate.", (
        seen(squat(0, 35.8), "Heels flat: as before", "", back=""),
        seen(raised, "Heels up 2 to 3 cm, flat and steady", "good", *props.block(heel[0] - 0.03, heel[0] + 0.05, 2.5 * CM))))


def front() -> Drawing:
    """A weight held out in front."""
    held = squat(4, 29.0)
    hand = joints_of(held).near_arm.hand
    bag = (Stroke((hand, (hand[0], hand[1] - 0.03)), GUIDE, 0.012), *props.block(hand[0] - 0.05, hand[0] + 0.05, 0.0))
    shape = props.pillow((hand[0], hand[1] - 0.06), 0.012)
    return Drawing("squat_front", "a squat from the side, a light weight of 2 to 5 kg or 5 to 10 lb held straight out at chest "
                   "height.", (seen(held, "Light weight straight out, chest height", "good", *bag[:1], *shape,
                                    view=(-0.44, -0.05, 0.62, 0.80)),))


def wide() -> Drawing:
    """The usual stance and the wider one, seen from above."""
    usual, out = 0.10, 0.15
    items = (*props.sole((-usual, 0.0), -15, FAR, dashed=True), *props.sole((usual, 0.0), 15, FAR, dashed=True),
             *props.sole((-usual - out, 0.0), -20, GUIDE), *props.sole((usual + out, 0.0), 20, GUIDE),
             *props.arrow((-usual - 0.02, -0.05), (-usual - out, -0.05)), *props.arrow((usual + 0.02, -0.05), (usual + out, -0.05)),
             *props.note((0, 0.07), "usual", ink=FAR), *props.note((-0.19, -0.09), "hand's width"),
             *props.note((0.19, -0.09), "hand's width"))
    return Drawing("squat_wide", "both feet from above, toes up the picture: the usual place dashed, the new place filled, each foot "
                   "a hand's width further out.", (Panel(items, (-0.42, -0.12, 0.42, 0.19), "Each foot a hand's width further out"),))


def slow() -> Drawing:
    """Three seconds down, as a loop with its count."""
    down = [between(STANDING, squat(0, 35.8, arm=AHEAD), share) for share in eased(10)]
    # the arms come up on the way
    frames = [(*scene(posture, "good"), *props.note((0.30, 0.90), count, "m", GUIDE, 30)) for posture, count in zip(
        down, ("", "1", "1", "1", "2", "2", "2", "3", "3", "3"), strict=True)]
    up = frames[7::-3]
    return Drawing("squat_slow", "a loop of a squat from the side, counting 1, 2, 3 seconds on the way down, then up as usual.",
                   (Panel(frames[-1], STANDING_VIEW, "Three seconds down, up as usual", "good"),),
                   frames=(*frames, *up), milliseconds=(500, *(333,) * 9, *(180,) * len(up)))


def fold() -> Drawing:
    """The fold at the bottom of the deepest squat."""
    deep = at_depth("below")
    joints = joints_of(deep)
    angle = (*props.swing(joints.hip, 0.24, deep.trunk - 16, deep.near.thigh + 18),)
    return Drawing("squat_fold", "the bottom of a deep squat from the side, an arrow from belly to thigh.", (
        seen(deep, "Your squat's fold: how close the thigh comes to the belly", "", *angle, back=""),))


def view_film() -> Drawing:
    """Where the phone stands."""
    items = (*props.from_above((-0.55, 0.0)), *props.view_of((0.62, 0.0), 0.40, 1.05), *props.arrow((-0.30, -0.30), (0.58, -0.30)),
             *props.arrow((0.58, -0.30), (-0.36, -0.30)), *props.note((0.12, -0.36), "3 big steps"),
             *props.note((0.82, 0.10), "phone, hip high", "r"), *props.note((-0.55, 0.21), "you, side-on"))
    return Drawing("view_film", "from above: you stand side-on to the phone, which leans at hip height, 3 big steps away, all of you in "
                   "its view.", (Panel(items, (-0.82, -0.42, 0.84, 0.42), "Phone side-on to you, hip high"),))


def hand_on_back() -> Drawing:
    """A palm on the curve of the lower back."""
    still, moved = squat(-12, 44.0, 38), squat(-12, 44.0, 38, tuck=TUCKED)

    def palm(posture: Posture) -> Posture:
        joints = joints_of(posture)
        at = along(joints.spine[14], posture.trunk + 90, 0.062)
        return replace(posture, near_arm=Reach(at[0], at[1], 1.0, posture.trunk + 185), far_arm=AHEAD)
    return Drawing("hand_on_back", "a squat from the side, one palm flat on the curve of the lower back, the other arm ahead.", (
        seen(palm(still), "Curve still under the palm", "good", back=""),
        seen(palm(moved), "Curve flattens or rounds", "watch", back="")))


def arms_forward_setup() -> Drawing:
    """The stick lies across the front of the shoulders."""
    stood = replace(STANDING, near_arm=AHEAD)
    return Drawing("arms_forward_setup", "standing, seen from the side: the stick's end at the front of the shoulder, off the throat, both "
                   "arms straight ahead, level, hands open.", (
        seen(stood, "On the shoulders, arms level", "good", *_rack_place(stood), back="", view=(-0.36, 0.45, 0.52, 1.02)),))


def _rack_place(posture: Posture, slipped: float = 0.0) -> tuple[Item, ...]:
    """The bar's end on the front of the shoulders, or some way down the arms."""
    shoulder = joints_of(posture).shoulder
    return props.bar_end((shoulder[0] + 0.045 + slipped * 0.24, shoulder[1] + 0.046 - slipped * 0.012))


def arms_forward_rack() -> Drawing:
    """An empty bar: rack and safety arms."""
    stood = replace(STANDING, near_arm=AHEAD)
    deep_bar = joints_of(at_depth("parallel")).shoulder[1]
    items = (*props.rack(0.30, 0.95, deep_bar - 0.06), *props.note((0.32, deep_bar - 0.06), "safety arm", "l"),
             *_rack_place(stood))
    return Drawing("arms_forward_setup_bar", "standing in a rack, seen from the side: empty bar on the front of the shoulders, arms level, "
                   "a safety arm just below the deepest point of the bar.", (
        Panel((*items[:3], *scene(stood), *items[3:]), (-0.40, -0.05, 0.52, 1.02), "Safety arm just below your deepest point", "good"),))


def arms_forward() -> Drawing:
    """How it should look, and the three faults."""
    good = squat(0, 35.8)
    rolled, chest, back = replace(good, near_arm=Arm(-14, -14)), squat(0, 50, 35, arm=Arm(-14, -14)), squat(0, 37, tuck=TUCKED)
    fell = props.swing(joints_of(chest).hip, 0.40, 72, 46)
    return Drawing("arms_forward", "a squat from the side with a stick across the front of the shoulders, arms straight ahead and level, "
                   "four times.", (
        seen(good, "It all holds", "good", *_rack_place(good)),
        seen(rolled, "It rolls down the arms", "watch", *_rack_place(rolled, 0.9), back=""),
        seen(chest, "The chest falls", "watch", *_rack_place(chest), *fell[:1], back=""),
        seen(back, "The lower back rounds", "watch", *_rack_place(back))), rows=(2, 2))


def pause_stops() -> Drawing:
    """The three stops."""
    top, middle, bottom = squat(-50, 9, 28), squat(-25, 25.5), squat(0, 35.8)
    view = (-0.34, -0.05, 0.42, 0.95)
    return Drawing("pause_stops", "three stops on the way down, from the side, the back in the same shape at each: hold each for 1 to 2 "
                   "seconds, then stand up.", (
        seen(top, "1: near the top", "good", view=view), seen(middle, "2: half way", "good", view=view),
        seen(bottom, "3: at the bottom", "good", view=view)))


def pause_watch() -> Drawing:
    """What to watch for at a stop."""
    return replace(rounding("parallel"), name="pause_watch", says="one stop of a squat from the side, twice.")


def hinge_setup() -> Drawing:
    """The stick across the upper back."""
    return Drawing("hinge_setup", "standing, seen from the side, a broomstick across the upper back, where a bar would lie.", (
        seen(_carrying(STANDING), "Only the stick, on the upper back", "good", *_on_back(STANDING), back="",
             view=(-0.36, 0.45, 0.40, 1.02)),))


def _carrying(posture: Posture) -> Posture:
    """Hands at the stick on the upper back."""
    return replace(posture, near_arm=Arm(posture.trunk + 165, posture.trunk + 25, 0.6), far_arm=None)


def _stick_place(posture: Posture) -> tuple[float, float]:
    joints = joints_of(posture)
    return along(along(joints.shoulder, posture.trunk, 0.012), posture.trunk + 90, 0.062)


def _on_back(posture: Posture) -> tuple[Item, ...]:
    return props.bar_end(_stick_place(posture))


HINGE_SQUAT: Final = squat(4, 44.0, 36)


def hinge_to_squat() -> Drawing:
    """Hinge, sink, back into the hinge, stand: a loop."""
    ways = ((STANDING, HINGED, "hips back"), (HINGED, HINGE_SQUAT, "sink"), (HINGE_SQUAT, HINGED, "hinge again"),
            (HINGED, STANDING, "stand up"))
    frames = tuple((*scene(_carrying(posture), "good"), *_on_back(posture), *props.note((0.12, 0.98), word, "l", GUIDE, 16))
                   for start, end, word in ways for posture in (between(start, end, share) for share in eased(6)[1:]))
    return Drawing("hinge_to_squat", "a loop from the side, a stick on the upper back: hips back into the hinge, sink into the squat, "
                   "hinge again, stand up. The back keeps its shape.",
                   (Panel(frames[4], (-0.44, -0.05, 0.52, 1.04), "Back keeps its shape all the way", "good"),),
                   frames=frames, milliseconds=tuple((160, 160, 160, 160, 700) * 4))


def hinge_watch() -> Drawing:
    """The hinge and the squat, each as it should be and as it should not."""
    view = (-0.42, -0.05, 0.50, 0.92)
    hinge, bent = _carrying(HINGED), _carrying(replace(HINGED, tuck=TUCKED, trunk=20))
    sunk, broken = _carrying(HINGE_SQUAT), _carrying(replace(HINGE_SQUAT, tuck=TUCKED))
    return Drawing("hinge_watch", "from the side, the hinge with the knees nearly straight, and the squat it sinks into.", (
        seen(hinge, "Hinge keeps its shape", "good", *_on_back(hinge), view=view),
        seen(bent, "Hinge rounds", "watch", *_on_back(bent), view=view),
        seen(sunk, "Squat keeps it", "good", *_on_back(sunk), view=view),
        seen(broken, "Sinking breaks it", "watch", *_on_back(broken), view=view)), rows=(2, 2))


def walk() -> Drawing:
    """Walking on the spot, a loop."""
    up = Posture(90, Leg(-90, -90), Arm(-70, -40), far=Leg(-35, -110, -20), far_arm=Arm(-110, -80))
    other = Posture(90, Leg(-35, -110, -20), Arm(-110, -80), far=Leg(-90, -90), far_arm=Arm(-70, -40))
    stood = Posture(90, Leg(-90, -90), Arm(-92, -75), far=Leg(-90, -90), far_arm=Arm(-92, -75))

    def on_floor(posture: Posture) -> tuple[Item, ...]:
        return (*figure(joints_of(posture)), *props.floor(-1, 1))
    steps = [between(stood, up, share) for share in (0, 0.5, 1, 0.5)]
    swapped = [_swap(between(stood, up, share)) for share in (0, 0.5, 1, 0.5)]
    frames = tuple(on_floor(posture) for posture in steps) + tuple(_standing_on_far(posture) for posture in swapped)
    assert other.far is not None
    return Drawing("warm_up_walk", "a loop of somebody walking on the spot, seen from the side, arms loose.",
                   (Panel(frames[2], (-0.42, -0.05, 0.42, 1.03), "Walk on the spot, arms loose"),), frames=frames,
                   milliseconds=(150,) * 8)


def _swap(posture: Posture) -> Posture:
    """Near side and far side changed over."""
    assert posture.far is not None
    assert posture.far_arm is not None
    return replace(posture, near=posture.far, far=posture.near, near_arm=posture.far_arm, far_arm=posture.near_arm)


def _standing_on_far(posture: Posture) -> tuple[Item, ...]:
    """A posture whose far leg stands: placed by that leg."""
    from companion.pictures.scene import moved
    there, here = joints_of(_swap(posture)), joints_of(posture)
    return (*moved(figure(here), there.hip[0] - here.hip[0], there.hip[1] - here.hip[1]), *props.floor(-1, 1))


def chair() -> Drawing:
    """Ten easy squats to a chair."""
    height = 0.26
    sat = squat(1, 24, 5, arm=AHEAD)
    hip = joints_of(sat).hip
    return Drawing("warm_up_chair", "squats to a chair, from the side: stand in front of it, sit down, stand up, arms ahead.", (
        seen(replace(STANDING, near_arm=Arm(-60, -30)), "Stand", "", *props.seat(-0.10, height - 0.02), back="", view=(-0.52, -0.05, 0.42, 1.02)),
        seen(sat, "Sit down, stand up", "", *props.seat(hip[0] + 0.14, hip[1] - 0.058), back="", view=(-0.52, -0.05, 0.42, 1.02))))

