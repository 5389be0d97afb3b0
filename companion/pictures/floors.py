"""Drawings of the tests on the floor and at the wall: lying, on hands and knees, knee to the wall."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from companion.pictures import props
from companion.pictures.catalogue import Drawing
from companion.pictures.draw import Panel, eased
from companion.pictures.figure import Arm, Leg, Posture, Reach, along, between, direction, joints_of, planted
from companion.pictures.ink import FAR, GUIDE, WATCH
from companion.pictures.scene import Disc, Item, Limb, Stroke, figure
from companion.pictures.squats import Back, scene

CM: Final = props.CM
UNDER: Final = Reach(-0.13, 0.010, 0, 0)
FLAT: Final = Leg(0, 0, 75)
LYING_VIEW: Final = (-0.50, -0.05, 0.58, 0.20)
RAISED_VIEW: Final = (-0.50, -0.05, 0.58, 0.66)
KNEES_VIEW: Final = (-0.62, -0.05, 0.78, 0.52)
LEAST: Final = 70.0
COMFORTABLE: Final = 80.0
"""The two lines of the leg raise: 70 and 80 degrees from the floor (common practice)."""

LIES: Final = Posture(180, FLAT, UNDER, head=180, on="back")


def lying(leg: Leg, roll: float = 0.0, arm: Arm | Reach = UNDER) -> Posture:
    """On the back, the near leg doing something, the far one flat."""
    return Posture(180, leg, arm, far=FLAT, head=180, on="back", tuck=roll)


def on_floor(posture: Posture, *more: Item, behind: tuple[Item, ...] = ()) -> tuple[Item, ...]:
    """A lying figure with its hands under the small of the back."""
    return (*behind, *figure(joints_of(posture)), *props.floor(-0.6, 0.75), *props.hands_under(), *more)


def lies(posture: Posture, title: str, mark: Back = "", *more: Item, view: tuple[float, float, float, float] = RAISED_VIEW,
         behind: tuple[Item, ...] = ()) -> Panel:
    """A panel of a lying figure."""
    return Panel(on_floor(posture, *more, behind=behind), view, title, mark)


def lying_setup() -> Drawing:
    """Hands under the curve of the lower back."""
    return Drawing("lying_setup", "lying on the back, legs long, seen from the side; both hands, palms down, under the curve of the "
                   "lower back.", (lies(LIES, "Both hands under the lower back, light pressure", "",
                                        *props.arrow((-0.115, -0.075), (-0.115, -0.012)), view=(-0.50, -0.09, 0.58, 0.20)),))


def hip_fold() -> Drawing:
    """The knee bent, the thigh to the chest."""
    folded, rolled = lying(Leg(118, 28, 90)), lying(Leg(128, 38, 95), roll=9)
    hip = joints_of(folded).hip
    return Drawing("hip_fold_{side}", "lying on the back, hands under the lower back; the {side} knee bent to a right angle, the thigh "
                   "brought towards the chest, the {other} leg flat.", (
        lies(folded, "Thigh comes up, pressure on the hands stays the same", "good", *props.swing(hip, 0.40, 25, 92),
             view=(-0.50, -0.05, 0.58, 0.48)),
        lies(rolled, "Stop here: the pressure on the hands changes", "watch", *props.press(joints_of(rolled), WATCH),
             view=(-0.50, -0.05, 0.58, 0.48))), rows=(1, 1))


def lines(leg: Posture) -> tuple[Item, ...]:
    """The two lines through the hip."""
    hip = joints_of(leg).hip
    return (*props.ray(hip, LEAST, 0.60, "70°", 0.07), *props.ray(hip, COMFORTABLE, 0.60, "80°", 0.07))


def leg_raise() -> Drawing:
    """The straight leg against its two lines, and the two ways it ends."""
    raised = lying(Leg(62, 62, 132))
    bent, pressed = lying(Leg(78, 48, 118)), lying(Leg(84, 84, 150), roll=9)
    hip = joints_of(raised).hip
    small = (-0.50, -0.05, 0.60, 0.74)
    return Drawing("leg_raise_{side}", "lying on the back, hands under the lower back; the {side} leg comes up straight, foot relaxed, "
                   "the {other} leg flat. Dashed lines from the hip at 70° and 80° from the floor; the leg is at 62°.", (
        lies(raised, "Knee straight, back still", "good", *props.swing(hip, 0.42, 8, 48), view=small, behind=lines(raised)),
        lies(bent, "The knee bends: stop", "watch", view=small, behind=lines(bent)),
        lies(pressed, "The back presses or lifts: stop", "watch", *props.press(joints_of(pressed), WATCH), view=small)), rows=(1, 2))


def leg_raise_eye() -> Drawing:
    """The bands of the question by eye."""
    rays = tuple(item for angle, label in ((45, "45°"), (60, "60°"), (70, "70°"), (80, "80°"), (90, "90°"))
                 for item in props.ray((0.0, 0.052), angle, 0.60, label, 0.07))
    return Drawing("leg_raise_eye_{side}", "lying on the back, the {side} leg at 45°, half way up, and dashed lines from the hip at "
                   "45°, 60°, 70°, 80° and 90°, which is straight up.", (
        lies(lying(Leg(45, 45, 115)), "45° is half way, 90° straight up", "", view=(-0.50, -0.05, 0.60, 0.74), behind=rays),))


def leg_raise_strap() -> Drawing:
    """With a strap: one hand pulls, one lies under the back."""
    pulled = lying(Leg(66, 66, 132), arm=Reach(-0.02, 0.30, 1, 60))
    joints = joints_of(pulled)
    far = replace(pulled, far_arm=UNDER)
    items = (*figure(joints_of(far)), *props.strap(joints.near, joints.near_arm.hand), *props.floor(-0.6, 0.75),
             *props.hands_under())
    return Drawing("leg_raise_setup_strap", "lying on the back: a strap or towel round one foot, both ends in one hand; the other hand, palm "
                   "down, under the lower back.", (Panel(items, RAISED_VIEW, "One hand pulls, one lies under the back"),))


def leg_raise_own() -> Drawing:
    """By its own effort: both hands under the back."""
    return replace(lying_setup(), name="leg_raise_setup_own")


def leg_raise_level() -> Drawing:
    """Where the phone lies."""
    up = lying(Leg(60, 60, 132))
    leg = joints_of(up).near
    shin = props.phone(along(along(leg.knee, 60, 0.10), 150, 0.043), 60)
    thigh = props.phone(along(along(leg.knee, 240, 0.09), 150, 0.060), 60)
    return Drawing("leg_raise_setup_level", "lying on the back, one leg up: the phone tied along the front of the shin, or along the front "
                   "of the thigh, level open.", (lies(up, "On the shin", "", *shin), lies(up, "On the thigh", "", *thigh)))


def leg_raise_heel() -> Drawing:
    """The heel's height against a tape on the wall."""
    up = lying(Leg(55, 55, 125))
    heel = joints_of(up).near.heel
    upright = (Stroke(((0.55, 0.0), (0.55, 0.62)), GUIDE, 0.014), *(Stroke(((0.55, n * 0.057), (0.575, n * 0.057)), GUIDE, 0.005)
                                                                 for n in range(11)))
    mark = (Stroke((heel, (0.55, heel[1])), WATCH, 0.007, 0.02), Disc(heel, 0.016, WATCH))
    return Drawing("leg_raise_setup_heel", "lying alongside a wall or door frame with a tape stuck to it, zero on the floor; the back of the "
                   "heel is marked on it.", (lies(up, "Heel's height on the tape, zero on the floor", "", *upright, *mark,
                                                  view=(-0.50, -0.05, 0.68, 0.66)),))


LUNGE_SHIN: Final = 40.0


def _at_wall(shin: float, heel_up: float = 0.0) -> Posture:
    """One foot in front of a wall, the knee forward, the other leg behind."""
    return planted(Posture(88, Leg(-18, -90 - shin, -heel_up), Reach(0.21, 0.62, 1, 80), far=Leg(-112, -184, -60), head=86, on="toes"))


def _wall_panel(posture: Posture, title: str, mark: Back, *more: Item, label: str = "toe to wall") -> Panel:
    joints = joints_of(posture)
    knee = joints.near.knee
    at = knee[0] + 0.040
    posture = replace(posture, near_arm=Reach(at - 0.04, joints.shoulder[1] - 0.03, 1, 85))
    toe = joints_of(posture).near.toe[0] + 0.012
    return Panel((*scene(posture), *props.wall(at, 0.72), *props.tape(at, at - 0.26), *_gap(toe, at, label), *more),
                 (at - 0.80, -0.13, at + 0.16, 0.80), title, mark)


def _gap(toe: float, at: float, label: str) -> tuple[Item, ...]:
    """What is measured: from the big toe to the wall."""
    if not label:
        return ()
    return (Stroke(((toe, 0.05), (toe, -0.05)), WATCH, 0.006), Stroke(((toe, -0.05), (at, -0.05)), WATCH, 0.006),
            *props.note(((toe + at) / 2, -0.09), label, "m", WATCH))


def knee_to_wall() -> Drawing:
    """Heel down, knee to the wall; and the heel that lifts."""
    down, up = _at_wall(LUNGE_SHIN), _at_wall(46, heel_up=16)
    heel = joints_of(up).near.heel
    lift = props.arrow((heel[0] - 0.04, 0.0), (heel[0] - 0.04, 0.075), WATCH)
    return Drawing("knee_to_wall_{side}", "from the side, the {side} foot flat on the floor in front of a wall, the tape from big toe to "
                   "wall, the {side} knee just touching the wall.", (
        _wall_panel(down, "Heel down, knee just touches", "good"),
        _wall_panel(up, "The heel lifts", "watch", *lift)))


def knee_to_wall_setup() -> Drawing:
    """The tape on the floor."""
    stood = Posture(90, Leg(-88, -92), Arm(-95, -80))
    toe = joints_of(stood).near.toe[0]
    wall = toe + 0.20
    return Drawing("knee_to_wall_setup", "standing barefoot, facing a wall, a tape on the floor, its zero at the wall.", (
        Panel((*scene(stood), *props.wall(wall, 1.0), *props.tape(wall, toe - 0.05), *props.note((wall, -0.065), "0", "m")),
              (-0.50, -0.10, wall + 0.12, 1.03), "Tape's zero at the wall"),))


def knee_to_wall_level() -> Drawing:
    """The phone along the shin."""
    down = _at_wall(LUNGE_SHIN)
    leg = joints_of(down).near
    upright = (Stroke((leg.ankle, along(leg.ankle, 90, 0.26)), GUIDE, 0.006, 0.02),
               *props.swing(leg.ankle, 0.19, 90, 90 - LUNGE_SHIN + 8), *props.note(along(leg.ankle, 78, 0.30), "40°", "m"))

    def held(share: float) -> tuple[Item, ...]:
        return props.phone(along(along(leg.ankle, direction(leg.ankle, leg.knee), share), -LUNGE_SHIN, 0.042),
                           direction(leg.ankle, leg.knee))
    panels = tuple(replace(_wall_panel(down, title, "", *upright, *held(share), label=""), window=(-0.40, -0.06, 0.32, 0.46))
                   for title, share in (("Just under the knee", 0.17), ("Middle of the shin", 0.11)))
    return Drawing("knee_to_wall_level_{side}", "from the side, the {side} foot flat in front of a wall, knee to the wall: the phone along the "
                   "{side} shin, which here leans 40° from upright.", panels)


# hands and knees ------------------------------------------------------------------------------------------

HAND: Final = Reach(0.285, 0.016, 1, 0)
KNEEL: Final = Leg(-90, 180, 180)
ALL_FOURS: Final = Posture(14, KNEEL, HAND, head=8, on="knees")
REACHED: Final = Leg(-179, 181, 225)


def bird_dog_setup() -> Drawing:
    """Hands and knees."""
    cushion = props.pillow((-0.02, 0.006), 0.05)
    return Drawing("bird_dog_setup", "on hands and knees, seen from the side: hands under the shoulders, knees under the hips, something "
                   "soft under the knees.", (
        Panel((*cushion, *scene(ALL_FOURS, "good")), (-0.45, -0.05, 0.62, 0.52), "Hands under shoulders, knees under hips", "good"),))


def bird_dog_stick() -> Drawing:
    """The same with a stick along the spine."""
    joints = joints_of(ALL_FOURS)
    start, end = along(along(joints.hip, 104, 0.068), 194, 0.06), along(along(joints.shoulder, 104, 0.054), 14, 0.10)
    return Drawing("bird_dog_setup_stick", "on hands and knees, seen from the side, a stick lying along the spine.", (
        Panel((*scene(ALL_FOURS), *props.rod(start, end)), (-0.45, -0.05, 0.62, 0.52), "If the stick tips or slides, something moved"),))


def reached(sag: float = 0.0) -> Posture:
    """The near leg straight back, the far arm straight ahead; the far knee and the near hand carry."""
    turn = 0 if not sag else -4
    return Posture(14 + turn, REACHED, HAND, far=KNEEL, far_arm=Arm(8, 8), head=6, on="knees", sag=sag)


def _on_far_knee(posture: Posture, *more: Item, back: Back = "") -> tuple[Item, ...]:
    """A figure that kneels on its far knee; the near leg is in the air."""
    assert posture.far is not None
    hip = joints_of(replace(posture, near=posture.far)).hip
    here = joints_of(posture)
    from companion.pictures.scene import moved

    shift = hip[0] - here.hip[0], hip[1] - here.hip[1]
    back_at = Reach(HAND.x - shift[0], HAND.y - shift[1], HAND.bend, HAND.palm)
    set_right = joints_of(replace(posture, near_arm=back_at))
    return (*moved(figure(set_right, back), *shift), *props.floor(-1, 1), *more)


def bird_dog() -> Drawing:
    """Out and held: level, sagging; and from behind, level and hiked."""
    behind = (-0.36, -0.03, 0.36, 0.50)
    return Drawing("bird_dog_{side}", "hands and knees: the {side} leg straight back and the {other} arm straight ahead, no higher than "
                   "the body. First from the side, then from behind with a line through both hips, {side} foot towards you.", (
        Panel(_on_far_knee(reached(), back="good"), KNEES_VIEW, "Back level and still", "good"),
        Panel(_on_far_knee(reached(sag=17), back="watch"), KNEES_VIEW, "Back sags", "watch"),
        Panel((*props.from_behind(0), *props.floor(-1, 1)), behind, "Hips level", "good"),
        Panel((*props.from_behind(14), *props.floor(-1, 1)), behind, "A hip lifts or turns", "watch")), rows=(2, 2))


def bird_dog_slow() -> Drawing:
    """Out, back to the floor, out again: a loop."""
    start = replace(reached(), near=KNEEL, far_arm=Arm(-84, -88))
    frames = tuple(_on_far_knee(between(start, reached(), share), back="good") for share in eased(8))
    return Drawing("bird_dog_slow_{side}", "a loop from the side, on hands and knees: the {side} leg and the {other} arm go out, back to the floor, out "
                   "again, slowly.", (Panel(frames[-1], KNEES_VIEW, "Out, back to the floor, out again", "good"),),
                   frames=(*frames, *frames[-2:0:-1]), milliseconds=(400, *(170,) * 6, 700, *(170,) * 6))


def rocked(share: float, tuck: float = 0.0) -> Posture:
    """Hands and knees, the hips so far of the way (0 to 1) back towards the heels; the hands stay where they are."""
    return Posture(14 - 20 * share, Leg(-90 + 55 * share, 180, 180), Reach(0.285, 0.016, 1, 0), head=8 - 12 * share, on="knees",
                   tuck=tuck)


def _inset(gap: float) -> tuple[Item, ...]:
    """Both shins seen from above, so far apart, in a corner."""
    x, y = 0.60, 0.40
    return tuple(item for way in (-1, 1) for item in (
        Limb((x - 0.10, y + way * gap), (x + 0.02, y + way * gap), 0.016, 0.022, FAR),)) + (
        *props.arrow((x + 0.06, y), (x + 0.06, y + gap + 0.01)), *props.arrow((x + 0.06, y), (x + 0.06, y - gap - 0.01)),
        *props.note((x - 0.03, y + 0.11), "from above", "m", FAR, 13))


def _rock(name: str, width: str, gap: float, more: tuple[Item, ...] = ()) -> Drawing:
    frames = tuple((*scene(rocked(0.86 * share), "good"), *_inset(gap), *more) for share in eased(8))
    return Drawing(name, f"a loop from the side, on hands and knees, {width}: the hips go slowly back towards the heels and come "
                   "forward again, hands in place. In the corner the shins from above.",
                   (Panel(frames[-1], (-0.42, -0.05, 0.76, 0.56), f"{width[0].upper()}{width[1:]}: rock back, come forward", "good"),),
                   frames=(*frames, *frames[-2:0:-1]), milliseconds=(400, *(200,) * 6, 700, *(200,) * 6))


def rock_back_narrow() -> Drawing:
    """Knees together."""
    return _rock("rock_back_narrow", "knees together", 0.026)


def rock_back_middle() -> Drawing:
    """Knees as wide as the hips."""
    return _rock("rock_back_middle", "knees as wide as the hips", 0.048)


def rock_back_wide() -> Drawing:
    """Knees clearly wider."""
    return _rock("rock_back_wide", "knees clearly wider than the hips", 0.075)


def rock_back_setup() -> Drawing:
    """What is watched for."""
    view = (-0.42, -0.05, 0.62, 0.52)
    return Drawing("rock_back_setup", "on hands and knees, hips rocked back, seen from the side, twice.", (
        Panel(scene(rocked(0.6), "good"), view, "Back in its own easy curve", "good"),
        Panel(scene(rocked(0.8, tuck=24), "watch"), view, "Here the lower back begins to round", "watch")), rows=(1, 1))


def rock_back_pillow() -> Drawing:
    """The easier form: to a pillow on the heels."""
    return replace(_rock("drill_rock_back_to_a_pillow", "knees as wide as the hips", 0.048, props.pillow((-0.215, 0.075), 0.05)),
                   name="drill_rock_back_to_a_pillow")
