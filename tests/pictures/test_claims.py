"""Every clause of every picture's sentence is measured, by a row of this table or by a test that the table names, or is of the few
things that no drawing of one moment can show. Centimetres are those of a body of 175; each row has its tolerance."""

from __future__ import annotations

import re
from collections.abc import Callable
from math import dist, hypot
from pathlib import Path

import pytest

from companion.pictures.drawing import MARK_WORDS, Drawing
from companion.pictures.figure import direction, turned
from companion.pictures.ink import FAR_INK, GUIDE, WATCH_INK
from companion.pictures.poses import poses
from companion.pictures.scene import Area, Disc, Label, Limb, Stroke
from tests.pictures.seen import CM, FOOT, FOREARM, HAND, SHIN, THIGH, UPPER_ARM, Seen, of, to_line
from tests.table import each_row

Measure = Callable[[Seen], float | list[float]]
NEUTRAL = Seen(poses()["arms_forward_setup"]).pelvis
PELVIS_SHARE = 0.58
"""Of a bend of the lower back, as the pelvis turns by it (test_sentences has the two measured apart)."""


def bend(one: Seen) -> float:
    """Lumbar flexion in degrees, from the mark on the sacrum; what sags is below 0."""
    return turned(NEUTRAL, one.pelvis) / PELVIS_SHARE


def level(one: Seen, far: bool = False) -> list[float]:
    """How far upper arm and forearm are off straight ahead, in degrees."""
    return [abs(one.way(UPPER_ARM, far)), abs(one.way(FOREARM, far))]


def heel_on_block(one: Seen) -> list[float]:
    """Height of what is under the heel in cm, 2 to 3, and how far the heel is off it."""
    block = next(area for area in of(one.items, Area, ink=GUIDE) if len(area.points) == 4)
    top = max(y for _, y in block.points) / CM
    return [top, 2.5 + abs(one.heel_off() - top)]


def bar_ahead(one: Seen) -> list[float]:
    """How far the bar is in front of the shoulder and over the arm's middle, in cm."""
    arm = one.part(UPPER_ARM)
    off = min(to_line(one.bar.centre, arm.start, arm.end), to_line(one.bar.centre, one.part(FOREARM).start, one.part(FOREARM).end))
    return [dist(one.bar.centre, one.shoulder) / CM, off / CM + 6]


def knee_past_toe(one: Seen) -> float:
    return (one.knee()[0] - one.toe) / CM


def hands_under(one: Seen) -> list[float]:
    """Height of a hand that lies under the back, in cm, and how far it is from the trunk's middle: the small of the back."""
    hand = next(item for item in one.items if isinstance(item, Limb) and (item.start_half, item.end_half) == (0.012, 0.008))
    return [abs(hand.start[1] / CM - 2), abs((hand.start[0] + hand.end[0]) / 2 - (one.hip()[0] * 0.6 + one.shoulder[0] * 0.4)) / CM]


def stands(one: Seen) -> list[float]:
    """How far trunk, thigh and shin are off upright in degrees, in a loop where it is tallest."""
    one = max(one.all or [one], key=lambda frame: frame.hip()[1])
    return [abs(turned(90, one.lean)), abs(turned(-90, one.way(THIGH))), abs(turned(-90, one.way(SHIN)))]


def lies(one: Seen) -> list[float]:
    """How far the trunk is off level, in degrees, and its lowest point off the floor, in cm."""
    return [abs(turned(180, one.lean)), abs(min(y for _, y in one.trunk.points)) / CM]


def kneels(one: Seen) -> list[float]:
    """On hands and knees: heights of knee and hand over the floor in cm; either knee, as one leg may reach."""
    knees = [(one.knee(far)[1] - THIGH[1]) / CM for far in (False, True)]
    return [abs(min(knees)), abs(one.part(HAND).end[1] - HAND[1]) / CM]


def at_heel(one: Seen) -> float:
    """How far a mark is from the heel, in cm."""
    heel = one.part(FOOT).start
    return dist(heel, of(one.items, Disc, ink=WATCH_INK)[0].centre) / CM


def phone(one: Seen) -> Limb:
    return [item for item in of(one.items, Limb, ink=GUIDE) if item.start_half == 0.013][-1]


def phone_on(halves: tuple[float, float], near: float, far: float) -> Measure:
    """How far a phone lies off a limb, 0 to 3 cm from its front, if it lies at that share of the limb's length."""
    def measure(one: Seen) -> float:
        bone, at = one.part(halves), phone(one)
        middle = (at.start[0] + at.end[0]) / 2, (at.start[1] + at.end[1]) / 2
        along = ((middle[0] - bone.start[0]) * (bone.end[0] - bone.start[0]) + (middle[1] - bone.start[1]) * (bone.end[1] - bone.start[1]))
        assert near <= along / dist(bone.start, bone.end) ** 2 <= far
        assert abs(turned(direction(bone.start, bone.end), direction(at.start, at.end))) % 180 == pytest.approx(0, abs=2)
        return (to_line(middle, bone.start, bone.end) - max(halves)) / CM
    return measure


def tape(one: Seen) -> list[float]:
    """Where the tape begins, from the wall in cm, and its height."""
    line = next(item for item in of(one.items, Stroke, ink=GUIDE, width=0.012))
    return [abs(line.points[1 if abs(line.points[1][0] - one.wall) < abs(line.points[0][0] - one.wall) else 0][0] - one.wall) / CM,
            abs(line.points[0][1]) / CM]


def card(number: int, at: Callable[[Seen], tuple[float, float]]) -> Measure:
    """How far the numbered card's middle is from a place, in cm."""
    def measure(one: Seen) -> float:
        label = next(item for item in of(one.items, Label) if item.text == str(number))
        x, y = at(one)
        return hypot(label.at[0] + 0.010 - x, label.at[1] - y) / CM
    return measure


def shared(one: tuple[float, float], other: tuple[float, float], share: float) -> tuple[float, float]:
    return one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share


def travel(one: Seen) -> list[float]:
    """Of a rock back: cm that the hips go back and the hand stays in place, from start to end of the loop."""
    hips, hands = [frame.hip()[0] for frame in one.all], [frame.wrist()[0] for frame in one.all]
    return [(max(hips) - min(hips)) / CM, 20 + (max(hands) - min(hands)) / CM]


def walks(one: Seen) -> list[float]:
    """Highest knee of either leg in a loop, over its hip, in degrees from hanging."""
    return [max(turned(-90, frame.way(THIGH, far)) for frame in one.all) for far in (False, True)]


def stick(one: Seen) -> tuple[tuple[float, float], ...]:
    return of(one.items, Stroke, ink=GUIDE, width=0.016)[-1].points


def pull_up(one: Seen) -> list[float]:
    """How far an arrow about the hip ends below the leg, and how far it comes up, in degrees."""
    way = next(item for item in of(one.items, Stroke, ink=GUIDE) if item.head and len(item.points) > 2).points
    start, end = direction(one.hip(), way[0]), direction(one.hip(), way[-1])
    return [one.way(THIGH) - end, end - start]


def behind_knees(one: Seen) -> float:
    """How far what stands behind begins behind the ankle, in cm: the feet are free."""
    strokes = [at for item in of(one.items, Stroke, ink=FAR_INK) for at in item.points]
    blocks = [at for item in of(one.items, Area, ink=GUIDE) for at in item.points]
    return (one.ankle()[0] - max(x for x, y in (strokes or blocks) if y == 0)) / CM


def over_seat(one: Seen) -> float:
    """How far the seat of the trunk is over what it sits on, in cm."""
    heights = [item.points[1][1] for item in of(one.items, Stroke, ink=FAR_INK, width=0.018) if len(item.points) == 3]
    heights += [max(y for _, y in item.points) for item in of(one.items, Area, ink=GUIDE)]
    return (one.hip()[1] - heights[0]) / CM - 10


ROWS: tuple[tuple[str, Measure, float, float], ...] = (
    # what is part of no shorter clause below
    (r"(?:the )?lower back (?:still|stays) on the floor", lambda one: lies(one)[1], 0, 1),
    (r"first that knee straight|back knee straight", lambda one: one.panels[0].bent(True), 0, 3),
    (r"then bent|back knee bent", lambda one: one.panels[1].bent(True), 20, 50),
    # cards of the filmed squat
    (r"1 on the ribs", card(1, lambda one: shared(one.shoulder, one.hip(), 0.33)), 0, 4),
    (r"2 on the belt line", lambda one: [card(2, lambda one: shared(one.hip(), one.shoulder, 0.2))(one), card(2, lambda one: shared(
        *of(one.items, Stroke, ink=GUIDE, width=0.020)[0].points, 0.5))(one)], 0, 4),
    (r"3 on the middle of the thigh", card(3, lambda one: shared(one.hip(), one.knee(), 0.5)), 0, 1),
    (r"4 on the shin|cards 1 to 4 on you", card(4, lambda one: shared(one.knee(), one.ankle(), 0.5)), 0, 1),
    (r"5 on the wall behind|card 5 on the wall", lambda one: (one.trunk.points[0][0] - next(
        item.at[0] for item in of(one.items, Label) if item.text == "5")) / CM, 15, 60),
    (r"printed cards with arrows up", lambda one: [direction(*item.points) for item in of(one.items, Stroke, ink=WATCH_INK)
                                                   if item.head], 89, 91),
    # movements
    (r"the hips go slowly back towards the heels and come forward again, hands in place", travel, 15, 50),
    (r"(?<!\w)rock back(?: towards the pillow|, come forward)?", travel, 15, 50),
    (r"hips rocked back", lambda one: (one.knee()[0] - one.hip()[0]) / CM, 10, 40),
    (r"a pillow lies on the heels", lambda one: min(to_line(one.ankle(), item.start, item.end) / CM
                                                    for item in of(one.items, Limb, ink=GUIDE)), 0, 14),
    (r"a loop of somebody walking on the spot|walk on the spot", walks, 45, 70),
    (r"hips back into the hinge, sink into the squat, hinge again, stand up|hinge, squat, hinge, stand|and the squat it sinks into",
     lambda one: (min(frame.hip()[1] for frame in one.all or one.panels) / CM), 35, 60),
    (r"the right leg and the left arm go out, back to the floor, out again|out, back to the floor, out again", lambda one: [
        max(frame.knee()[1] for frame in one.all) / CM - 60, min(abs(frame.knee()[1] - THIGH[1]) for frame in one.all) / CM], -20, 4),
    # postures
    (r"standing(?: barefoot| in a rack| side-on)?|stand in front of it|\bstand\b(?! side| up)", stands, 0, 6),
    (r"lying (?:on the back|alongside a wall or door frame)", lies, 0, 3),
    (r"legs long|the left leg flat", lambda one: abs(one.way(THIGH, True)), 0, 3),
    (r"(?:on )?hands and knees", kneels, 0, 2),
    (r"(?:the bottom of a deep |a loop of a |one stop of a |four depths of a |\ba )squat\b", lambda one: -one.way(THIGH), -20, 35),
    (r"of squats to a chair|sit down,|touch the box|\btouch\b", lambda one: over_seat(
        one if one.drawing.frames else one.panels[-1]), -2, 2),
    (r"a (?:box or )?chair behind", behind_knees, 0, 40),
    (r"on forearms and toes", lambda one: [abs(one.part(FOREARM).end[1] / CM - 3), abs(one.way(FOREARM)), 3 * (one.heel_off() < 5)], 0, 3),
    (r"the body in one line|body in one line", lambda one: [abs(turned(one.lean + 180, one.way(THIGH))), one.bent()], 0, 3),
    (r"one leg up|the leg is pulled up until a stretch", lambda one: one.way(THIGH), 40, 80),
    (r"the right leg comes up straight|(?:that )?knee straight", lambda one: [frame.bent() for frame in one.all or [one]], 0, 2),
    (r"the leg is at 62°", lambda one: one.way(THIGH), 61.9, 62.1),
    (r"the right leg at 45°, half way up|45° is half way", lambda one: one.way(THIGH), 44.9, 45.1),
    (r"foot relaxed", lambda one: abs(turned(one.way(SHIN) + 90, one.way(FOOT))), 0, 25),
    (r"the right knee bent to 90°", lambda one: one.bent(), 89, 91),
    (r"the thigh brought towards the chest|thigh comes up", lambda one: [
        one.way(THIGH), one.way(THIGH) - min(frame.way(THIGH) for frame in one.all) + 60], 100, 135),
    (r"the knee bends: stop", lambda one: one.bent(), 15, 60),
    (r"the back presses or lifts: stop|stop here: the pressure on the hands changes", lambda one: bend(one), 5, 15),
    (r"pressure on the hands stays the same", lambda one: [abs(bend(frame)) for frame in one.all], 0, 1),
    # depths
    (r"well above parallel|near the top", lambda one: one.way(THIGH), -60, -20),
    (r"(?<!well )a little above(?: parallel)?", lambda one: (one.panels[1] if "bands" in one.drawing.name else one).way(THIGH), -20, -5),
    (r"below parallel", lambda one: (one.panels[-1] if "bands" in one.drawing.name else one).way(THIGH), 5, 25),
    (r"(?<!above )(?<!below )parallel(?=, three)|at the bottom", lambda one: one.way(THIGH), -2, 2),
    (r"2: half way|stop half way|a stop of 1 to 2 seconds half way|2: lower", lambda one: (
        one.panels[1] if "stops" in one.drawing.name else one.panels[0]).way(THIGH), -45, -20),
    (r"(?:all )?above (?:the depth where the back|where it) rounds|above the rounding depth|only to just above where it rolled",
     lambda one: one.panels[-1].way(THIGH), -60, -5),
    # the back
    (r"(?:no: )?(?:the )?back keeps its shape|the back in the same shape at each|back in its own easy curve|it all holds|"
     r"hinge keeps its shape|squat keeps it|curve still under the palm|the curve keeps still|(?:the )?back still|back level and still",
     lambda one: [abs(bend(frame)) for frame in one.all or [one]], 0, 1.5),
    (r"a little: it flattens|here the lower back begins to round", bend, 12, 14),
    (r"clearly: tail tucks under|hinge rounds|sinking breaks it|the lower back rounds|curve flattens or rounds|turn back before this",
     bend, 24, 28),
    (r"back sags", bend, -19, -15),
    (r"they stop before the back moves|stop before the back moves", lambda one: [abs(bend(frame)) for frame in one.all], 0, 1.5),
    # hands and arms
    (r"(?:both hands, palms down|hands|both hands|the other hand, palm down|one lies),? under (?:the (?:curve of the )?)?(?:lower )?back",
     hands_under, 0, 4),
    (r"hands under (?:the )?shoulders", lambda one: abs(one.wrist()[0] - one.shoulder[0]) / CM, 0, 6),
    (r"knees under (?:the )?hips", lambda one: abs(one.knee()[0] - one.hip()[0]) / CM, 0, 3),
    (r"something soft under the knees", lambda one: min(to_line((one.knee()[0], 0.0), item.start, item.end) / CM
                                                        for item in of(one.items, Limb, ink=GUIDE)), 0, 3),
    (r"(?:both )?arms straight ahead(?: and level|, level)?|(?:, )?arms (?:straight ahead|level|ahead)(?: and level)?",
     lambda one: level(one), 0, 3),
    (r"hands open", lambda one: abs(turned(one.way(FOREARM), one.way(HAND))), 0, 3),
    (r"the other arm ahead", lambda one: level(one, far=True), 0, 3),
    (r"and the left arm straight ahead", lambda one: level(one, far=True), 0, 4),
    (r"the right leg straight back", lambda one: [one.bent(), abs(turned(180, one.way(THIGH)))], 0, 4),
    (r"held straight out at chest height|light weight straight out, chest height",
     lambda one: [abs(one.part(HAND).end[1] - one.shoulder[1]) / CM, *level(one)], 0, 4),
    (r"a light weight of 2 to 5 kg or 5 to 10 lb", lambda one: min(dist(one.part(HAND).end, item.start)
                                                                  for item in of(one.items, Limb, ink=GUIDE)) / CM, 0, 14),
    (r"arms loose", lambda one: [abs(turned(-90, one.way(UPPER_ARM))), abs(turned(-90, one.way(UPPER_ARM, True)))], 0, 25),
    # bar and stick
    (r"(?:the stick's end at the front|with a stick across the front|empty bar on the front) of the shoulders?|on the shoulders", bar_ahead,
     8, 20),
    (r"it rolls down the arms", lambda one: dist(one.bar.centre, one.shoulder) / CM, 35, 60),
    (r"the chest falls", lambda one: one.panels[0].lean - one.lean, 10, 20),
    (r"(?:only the stick, |a (?:broom)?stick (?:across|on) the |, )?(?:on the )?upper back(?:, where a bar would lie)?(?!,? and)",
     lambda one: [dist(frame.bar.centre, frame.shoulder) / CM for frame in one.all or [one]], 8, 13),
    (r"a safety arm just below the deepest point of the bar|safety arm just below your deepest point", lambda one: (
        Seen(poses()["arms_forward"]).bar.centre[1]
        - min(y for item in of(one.items, Stroke, width=0.018) for _, y in item.points)) / CM, 8, 22),
    (r"a stick lying along the spine", lambda one: abs(turned(direction(*stick(one)), one.lean)), 0, 3),
    # heels and knees
    (r"heels on a thin book or plate, 2 to 3 cm or about an inch high|heels up, flat and steady", lambda one: heel_on_block(one.panels[-1]),
     2, 3),
    (r"heels on 2 cm, firm and level|heels raised", lambda one: heel_on_block(one), 1.9, 2.9),
    (r"heels flat(?:: as before)?", lambda one: abs(one.heel_off()), 0, 1),
    (r"(?:its |the )?heel down", lambda one: [abs(one.heel_off()),
                                           *([abs(one.heel_off(True))] if "calf" in one.drawing.name else [])], 0, 1),
    (r"the heel lifts", lambda one: one.heel_off(), 4, 12),
    (r"the knee comes over the toes", lambda one: (one.knee()[0] - min(frame.knee()[0] for frame in one.all)) / CM, 5, 15),
    (r"(?:the )?knee over (?:the )?toes", knee_past_toe, 0, 8),
    (r"the right foot flat(?: on the floor)? in front of a wall", lambda one: [abs(frame.heel_off()) for frame in one.all or [one]], 0, 1),
    (r"the right knee comes forward until just touching the wall, and goes back", lambda one: (
        one.knee()[0] - min(frame.knee()[0] for frame in one.all)) / CM, 5, 15),
    (r"knee just touches|knee to the wall", lambda one: (
        one.wall - one.knee()[0] - THIGH[1]) / CM, -0.5, 1.5),
    (r"which here leans 40° from upright", lambda one: turned(one.way(SHIN), -90), 39.9, 40.1),
    (r"one foot back", lambda one: (one.ankle()[0] - one.ankle(True)[0]) / CM, 40, 110),
    (r"knees soft|the hinge with the knees nearly straight", lambda one: (
        one).bent(), 15, 35),
    (r"hips pushed back|hips back", lambda one: (one.ankle()[0] - (
        one).hip()[0]) / CM, 8, 30),
    # phone, tape, wall, strap
    (r"the phone tied along the front of the shin|on the shin", phone_on(SHIN, 0.4, 0.8), 0, 3),
    (r"the phone tied along the front of the thigh|on the thigh",
     phone_on(THIGH, 0.4, 0.8), 0, 3),
    (r"the phone along the right shin", phone_on(SHIN, 0.1, 0.8), 0, 4),
    (r"just under the knee", phone_on(SHIN, 0.15, 0.25), 0, 4),
    (r"middle of the shin", phone_on(SHIN, 0.48, 0.52), 0, 4),
    (r"facing a wall", lambda one: (one.wall - one.toe) / CM, 10, 50),
    (r"a tape on the floor, its zero, marked 0, at the wall|tape's zero at the wall|the tape from big toe to wall", tape, 0, 3),
    (r"(?:the back of the )?heel is marked on it|heel's height on the tape", at_heel, 0, 1),
    (r"with a tape stuck to it, zero on the floor|, zero on the floor", lambda one: min(
        y for item in of(one.items, Stroke, ink=GUIDE, width=0.014) for _, y in item.points), 0, 0),
    (r"a strap (?:or towel )?round one foot(?:, both ends in one hand)?|one hand pulls", lambda one: [
        to_line(one.part(HAND).end, *of(one.items, Stroke, ink=GUIDE, width=0.012)[0].points) / CM,
        to_line(of(one.items, Stroke, ink=GUIDE, width=0.012)[0].points[1], one.part(FOOT).start, one.part(FOOT).end) / CM], 0, 3),
    (r"one hand on a steady chair", lambda one: abs(one.part(HAND).end[1] - max(
        y for item in of(one.items, Stroke, ink=FAR_INK, width=0.018) for _, y in item.points)) / CM, 0, 4),
    (r"the other arm hanging", lambda one: [abs(turned(-90, one.way(part, True))) for part in (UPPER_ARM, FOREARM)], 0, 35),
    (r"an arrow shows the way", pull_up, 8, 60),
    (r"a step from a wall(?<!half a step from a wall)", lambda one: (one.wall - one.toe) / CM, 40, 100),
)
ELSEWHERE = {
    "test_parallel_is_the_top_of_the_thigh_level_and_on_the_line":
        r"the dashed line is level with the top of the knee: at parallel the top of the thigh lies on it|parallel: top of the thigh level",
    "test_the_count_runs_on_the_way_down_only":
        r"counting 1, 2, 3 seconds(?: down| on the way down, then up as usual)?|three seconds down, up as usual",
    "test_the_wider_stance_is_a_hand_further_out_and_further_turned":
        r"both feet|the usual place dashed, the new place filled|each foot a hand's width further out",
    "test_the_fold_s_arrow_goes_from_belly_to_thigh":
        r"close, belly and thigh marked|an arrow across the gap from belly to thigh|"
        r"your squat's fold: how close the thigh comes to the belly",
    "test_the_palm_on_the_back_lies_on_the_small_of_the_back": r"one palm (?:flat )?on the curve of the lower back",
    "test_the_bar_is_off_the_throat": r"off the throat",
    "test_the_stick_touches_head_back_and_tailbone_and_leaves_them_where_it_is_said_to":
        r"a stick along the back touching head, upper back and tailbone|stick touches three points|all three still touch|"
        r"the stick leaves a point",
    "test_the_hands_of_the_easier_hinge_are_on_the_wall_at_hip_height": r"both hands on it at hip height",
    "test_palms_said_to_be_on_a_wall_touch_it": r"hands on a wall",
    "test_knee_over_toes_stands_half_a_step_from_the_wall_and_the_knee_reaches_the_toes": r"half a step from a wall",
    "test_the_wall_of_the_heel_s_height_stands_alongside_the_whole_body": r"which stands behind the whole body",
    "test_the_crossed_ankle_lies_on_the_other_knee":
        r"one ankle over the other knee, both hands behind that thigh draw the knee towards the opposite shoulder|"
        r"knee towards the opposite shoulder",
    "test_the_lines_of_the_eye_stand_at_the_angles_written_on_them":
        r"and dashed lines from the hip at 45°, 60°, 70°, 80° and 90°, which is straight up|90° straight up",
    "test_the_leg_raise_stands_at_the_angles_it_says": r"dashed lines from the hip at 70° and 80° from the floor",
    "test_knees_together_as_wide_as_the_hips_and_wider_are_three_widths":
        r"in the corner knees, shins and feet from above|knees (?:together|as wide as the hips|clearly wider than the hips)",
    "test_arm_and_leg_of_the_bird_dog_go_no_higher_than_the_body": r"no higher than the body",
    "test_from_behind_everything_is_as_high_as_from_the_side": r"then from behind with a line through both hips, right foot towards you",
    "test_level_hips_are_level_and_a_hiked_one_lifts_its_leg": r"hips level|a hip lifts or turns",
    "test_the_film_is_taken_side_on_with_all_of_the_lifter_in_view":
        r"you stand side-on to the phone|all of you in its view|3 big steps away|phone side-on to you|you stand side-on to the mirror|"
        r"mirror beside you",
    "test_no_a_little_and_clearly_are_zero_thirteen_and_twenty_six_degrees_of_lumbar_flexion":
        r"a white mark on the tail bone and a band at the waist show how the pelvis turns",
    "test_thin_lines_turn_with_tail_and_ribs_against_dashed_ones_of_the_back_s_own_curve":
        r"thin lines show where tail and ribs point; dashed: with the back's own curve",
}
"""Tests of this folder, with the clauses they measure."""
UNSHOWN = (r"(?:then |first )?(?:seen )?from (?:the side|above)|a loop|as you sit|toes up the picture|twice|(?:three|four) times|somebody|"
           r"three stops on the way down|hold(?:s)? (?:each for )?[\d to]+ seconds(?:, up to 20)?|[123]: |3 seconds down|"
           r"(?:and |then )?stand up|"
           r"or forearms and knees|no load|slowly|comes back|each side in turn|30 seconds|, stop\b|light pressure|level open|"
           r"knees at the best width|if the stick tips or slides, something moved|which leans at hip height|hip high|and glance across|"
           r"picture: |good: |watch for: ")
"""Where it is seen from, how often and how long, what comes next in turn, loads and pressures; a phone's height seen from above."""


def scope(drawing: Drawing, at: int) -> Seen:
    """The panel in whose title a clause stands, by its place in the description, or the first for what is said of all."""
    begins = len(drawing.words)
    for n, panel in reversed(list(enumerate(drawing.panels))):
        begins -= len(panel.title) + 1 if panel.title else 0
        if begins <= at:
            return Seen(drawing, n)
        begins -= 1 + len(MARK_WORDS[panel.mark]) if panel.title else 0
    return Seen(drawing)


NAMES = [name for name in poses() if not name.endswith("_left")]  # the left is the mirror image: test_poses


@each_row("name", NAMES)
def test_every_clause_is_measured_or_can_not_be_shown(name):
    drawing = poses()[name]
    left = said = drawing.words.lower()
    for pattern in (*ELSEWHERE.values(), *(row[0] for row in ROWS), UNSHOWN):
        left = re.sub(pattern, lambda found: "~" * len(found[0]), left)
    assert re.findall(r"[a-z0-9]+", left) == []
    measured = 0
    blanked = said
    for pattern in ELSEWHERE.values():
        measured += len(re.findall(pattern, blanked))
        blanked = re.sub(pattern, lambda found: "~" * len(found[0]), blanked)
    for pattern, measure, low, high in ROWS:
        for found in re.finditer(pattern, blanked):
            one = scope(drawing, found.start())
            value = measure(one)
            for number in value if isinstance(value, list) else [value]:
                assert low <= number <= high, (found[0], one.number, round(number, 2))
                measured += 1
        blanked = re.sub(pattern, lambda found: "~" * len(found[0]), blanked)
    assert measured, "every picture has something measured"


@each_row("test", ELSEWHERE)
def test_what_is_measured_elsewhere_is(test):
    assert any(f"def {test}(" in path.read_text("utf-8") for path in Path(__file__).parent.glob("test_*.py"))


@each_row("pattern", [row[0] for row in ROWS] + list(ELSEWHERE.values()))
def test_no_row_is_left_over(pattern):
    """A changed sentence takes its row with it."""
    assert any(re.search(pattern, poses()[name].words.lower()) for name in NAMES)


def test_the_film_is_taken_side_on_with_all_of_the_lifter_in_view():
    """From above: the nose points up the picture, the phone or mirror is to the right; the phone 3 big steps (about 2.1 m) off."""
    for name, thing in (("view_film", "phone"), ("view_mirror", "mirror")):
        items = Seen(poses()[name]).items
        head, nose = (next(item for item in items if isinstance(item, Disc) and item.radius == radius) for radius in (0.065, 0.014))
        assert direction(head.centre, nose.centre) == pytest.approx(90)
        right = max(x for item in items if isinstance(item, Stroke) and item.ink == GUIDE for x, _ in item.points)
        assert right > head.centre[0], thing
    edges = [item.points for item in Seen(poses()["view_film"]).items if isinstance(item, Stroke) and item.dash]
    for (x, y), (far_x, far_y) in edges:
        share = (x + 0.55) / (x - far_x)
        assert abs((far_y - y) * share) > 0.15, "shoulders and half a foot of room at each side"
