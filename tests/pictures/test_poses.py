"""The pose pictures: angles true to the numbers said, left and right mirrored, the text twin with the same facts."""

from __future__ import annotations

import re
from dataclasses import replace
from math import cos, hypot, radians, sin

import pytest

from companion.cli.catalogue import picture_uses
from companion.conversation.flow import Ask, Tell
from companion.pictures import squats, still_backs
from companion.pictures.drawing import Drawing, slug
from companion.pictures.figure import ANKLE_BEHIND_TOE, FOOT_LENGTH, Arm, Joints, direction, joints_of
from companion.pictures.poses import SHARED, SIDED, pose, poses
from companion.pictures.scene import Area, Disc, Label, Limb, Stroke
from companion.screening.body import ANKLE_HEIGHT, Setup, body_of
from companion.screening.drills import DRILLS
from companion.screening.posture import balance_of, lean_at
from flows.catalogue import BOOK
from tests.pictures.seen import angles_of
from tests.table import each_row

every_pose = pytest.mark.parametrize("name", sorted(poses()))


def limbs(drawing: Drawing, panel: int = 0) -> list[Limb]:
    return [item for item in drawing.panels[panel].items if isinstance(item, Limb)]


def limb_between(drawing: Drawing, start: float, end: float, panel: int = 0) -> list[float]:
    """Directions from the floor of the limbs that taper from one half-width to another."""
    return [direction(limb.start, limb.end) for limb in limbs(drawing, panel) if (limb.start_half, limb.end_half) == (start, end)]


THIGH, SHIN = (0.035, 0.035), (0.034, 0.021)


@pytest.mark.parametrize(("side", "turned"), [("right", lambda angle: angle), ("left", lambda angle: 180 - angle)])
def test_the_leg_raise_stands_at_the_angles_it_says(side, turned):
    drawing = pose(f"leg_raise_{side}")
    assert drawing is not None
    assert "the leg is at 62°" in drawing.words
    assert limb_between(drawing, *THIGH)[-1] == pytest.approx(turned(62))
    assert limb_between(drawing, *SHIN)[-1] == pytest.approx(turned(62))
    rays = [item for item in drawing.panels[0].items if isinstance(item, Stroke) and item.dash]
    assert [direction(ray.points[0], ray.points[-1]) for ray in rays] == pytest.approx([turned(70), turned(80)])
    assert [item.text for item in drawing.panels[0].items if isinstance(item, Label) and "°" in item.text] == ["70°", "80°"]


def test_the_lines_of_the_eye_stand_at_the_angles_written_on_them():
    drawing = pose("leg_raise_eye_right")
    assert drawing is not None
    items = drawing.panels[0].items
    rays = [item for item in items if isinstance(item, Stroke) and item.dash]
    labels = [item.text for item in items if isinstance(item, Label) and "°" in item.text]
    assert [f"{direction(ray.points[0], ray.points[-1]):.0f}°" for ray in rays] == labels == ["45°", "60°", "70°", "80°", "90°"]
    assert limb_between(drawing, *THIGH)[-1] == pytest.approx(45)


def test_the_knee_of_the_hip_fold_is_bent_to_a_right_angle():
    drawing = pose("hip_fold_right")
    assert drawing is not None
    assert limb_between(drawing, *THIGH)[-1] - limb_between(drawing, *SHIN)[-1] == pytest.approx(90)


def test_the_shin_at_the_wall_leans_as_far_as_it_says():
    drawing = pose("knee_to_wall_level_right")
    assert drawing is not None
    assert "leans 40° from upright" in drawing.words
    assert limb_between(drawing, *SHIN)[-1] == pytest.approx(-90 - 40)


def test_one_hip_stands_level_and_the_other_hikes():
    drawing = pose("bird_dog_right")
    assert drawing is not None
    lines = [[item for item in panel.items if isinstance(item, Stroke) and item.width == 0.012] for panel in drawing.panels[2:]]
    assert direction(*lines[0][0].points) == pytest.approx(0)
    assert direction(*lines[1][0].points) == pytest.approx(14)


@pytest.mark.parametrize("band", squats.DEPTHS)
def test_each_depth_of_the_squat_is_in_its_band_and_balances(band):
    """screening.posture: lean of an average adult with the arms ahead; bands as in screening.estimate."""
    from companion.screening.depth import Band
    from companion.screening.estimate import BAND_EDGES

    joints = joints_of(squats.at_depth(band))
    depth = direction(joints.hip, joints.near.knee)
    low, high = BAND_EDGES[Band(band)]
    assert low <= depth <= high
    lean = float(lean_at(balance_of(body_of(175, 75), Setup(arms=1), squats.SHIN), depth))
    assert 90 - direction(joints.hip, joints.shoulder) == pytest.approx(lean, abs=0.5)


@pytest.mark.parametrize("posture", [
    squats.STANDING_POSTURE, squats.HINGED, still_backs.HINGE_SQUAT, squats.squat(-50, 9, 28), squats.squat(-25, 25.5)])
def test_nobody_is_drawn_as_no_body_can_stand(posture):
    """The centre of mass, by the segments' masses (Dempster, as in Winter, second-hand), is over the foot."""
    joints = joints_of(posture)
    assert joints.near.heel[0] < centre_of_mass(joints) < joints.near.toe[0]


def centre_of_mass(joints: Joints) -> float:
    knee, ankle, hip, shoulder = joints.near.knee[0], joints.near.ankle[0], joints.hip[0], joints.shoulder[0]
    legs = 0.200 * (hip + 0.433 * (knee - hip)) + 0.093 * (knee + 0.433 * (ankle - knee)) + 0.029 * ankle
    return legs + 0.678 * (hip + 0.626 * (shoulder - hip))


def test_the_figure_s_foot_is_as_the_screening_has_it():
    foot = joints_of(squats.STANDING_POSTURE).near
    assert foot.toe[0] - foot.ankle[0] == pytest.approx(ANKLE_BEHIND_TOE * FOOT_LENGTH)
    assert foot.ankle[1] == pytest.approx(ANKLE_HEIGHT)


def test_an_inch_under_the_heel_tips_the_foot_as_it_should():
    """asin(2.5 cm / (0.152 * 175 cm)) = 5.4 degrees, drawn as 6."""
    assert FOOT_LENGTH * 175 * (1 - cos(radians(90 - 6))) > 20  # the lift is no more than a few centimetres
    drawing = pose("squat_heels")
    assert drawing is not None
    block = next(item for item in drawing.panels[1].items if isinstance(item, Area) and len(item.points) == 4)
    assert max(y for _, y in block.points) * 175 == pytest.approx(2.5)


@pytest.mark.parametrize("name", [f"{draw.__name__}_{{side}}" for draw in SIDED])
def test_left_is_the_mirror_image_of_right(name):
    right, left = pose(name.replace("{side}", "right")), pose(name.replace("{side}", "left"))
    assert right is not None
    assert left is not None
    for one, other in zip(right.shown(), left.shown(), strict=True):
        for a, b in zip(one, other, strict=True):
            assert points_of(a.items) == [(-x, y) for x, y in points_of(b.items)]
            assert a.window == (-b.window[2], b.window[1], -b.window[0], b.window[3])
    words = {"left": "right", "right": "left"}
    assert re.sub(r"\b(left|right)\b", lambda found: words[found[0]], left.words) == right.words


def points_of(items) -> list[tuple[float, float]]:
    found = []
    for item in items:
        match item:
            case Stroke() | Area():
                found += item.points
            case Limb():
                found += [item.start, item.end]
            case Disc():
                found.append(item.centre)
            case Label():
                found.append(item.at)
    return found


@every_pose
def test_the_twin_says_what_is_written_in_the_picture(name):
    drawing = poses()[name]
    written = [item.text for frame in drawing.shown() for panel in frame for item in panel.items if isinstance(item, Label)]
    for number in re.findall(r"\d+", " ".join(written)):
        assert re.search(rf"\b{number}\b", drawing.words), f"{number} is drawn but not told"
    for panel in drawing.panels:
        assert panel.title.lower() in drawing.words.lower()
    assert drawing.words.startswith("Picture: ")
    assert len(drawing.words) <= 420
    assert "{" not in drawing.words
    assert "Right:" not in drawing.words, "right is a side"
    assert (drawing.words.count("Good: "), drawing.words.count("Watch for: ")) == tuple(
        sum(panel.mark == mark for panel in drawing.panels) for mark in ("good", "watch"))


@every_pose
def test_everything_that_stands_is_inside_the_window_from_side_to_side(name):
    """The figure's own joints; floor, walls and lines may run out of it."""
    for frame in poses()[name].shown():
        for panel in frame:
            left, bottom, right, _ = panel.window
            for item in panel.items:
                if isinstance(item, Label):
                    assert left <= item.at[0] <= right
                    assert bottom <= item.at[1]


def test_every_picture_a_question_names_is_there_and_every_drawing_is_sent_or_shared_by_a_step():
    """But the right side's hip fold, which follows the left without a message between."""
    assert set(picture_uses()) - set(poses()) == set()
    assert set(poses()) - set(picture_uses()) == {"hip_fold_right"}


WORKS = {f"{name}.{step.key}": step for name, compiled in BOOK.flows.items() for step in compiled.flow.steps
         if isinstance(step, Ask) and step.caution}


def test_every_step_in_which_the_body_works_sends_a_picture_or_shares_one_that_the_picture_page_names():
    assert {where for where, step in WORKS.items() if not step.picture} == set(SHARED)
    assert len(WORKS) > 40


@each_row("where", [where for where in SHARED if where != "squat_day.squatted"])
def test_a_shared_picture_is_one_that_its_flow_has_sent_before(where):
    """But on a squat day, whose picture is that of the question about rounding."""
    flow, _, key = where.partition(".")
    steps = [step for step in BOOK[flow].flow.steps if isinstance(step, Ask | Tell)]
    here = next(n for n, step in enumerate(steps) if isinstance(step, Ask) and step.key == key)
    sent = [slug(re.sub(r"\{\w+\}", "x", step.picture)) for step in steps[:here]]
    either = {slug(re.sub(r"\{\w+\}", "x", SHARED[where].replace("{odd}", side).replace("{other}", side))) for side in ("left", "right")}
    assert either & set(sent)


def test_every_drill_and_its_home_work_has_a_picture():
    for drill in DRILLS:
        for exercise in (drill.prime, drill.easier, drill.home, drill.unstretched):
            if exercise is not None:
                assert pose(f"drill {exercise.name}") is not None, exercise.name


@every_pose
def test_nothing_of_a_body_goes_through_the_floor(name):
    """Limbs, in every frame of a picture with a floor."""
    for frame in poses()[name].shown():
        for panel in frame:
            if not any(isinstance(item, Stroke) and item.points[0][1] == item.points[1][1] == -0.0045 for item in panel.items):
                continue
            for limb in (item for item in panel.items if isinstance(item, Limb)):
                assert min(limb.start[1] - limb.start_half, limb.end[1] - limb.end_half) > -0.012


def test_the_forearms_of_the_plank_lie_on_the_floor():
    drawing = pose("drill_front_plank")
    assert drawing is not None
    for panel in range(2):
        forearm = next(limb for limb in limbs(drawing, panel)[::-1] if (limb.start_half, limb.end_half) == (0.021, 0.015))
        assert forearm.start[1] - forearm.start_half == pytest.approx(0, abs=0.012)


@pytest.mark.parametrize("name", ["drill pause squat, three stops", "drill squat with a heel lift"])
def test_a_drill_above_the_depth_of_rounding_is_never_drawn_at_parallel(name):
    drawing = pose(name)
    assert drawing is not None
    assert "above the depth where the back rounds" in drawing.words
    for panel in range(len(drawing.panels)):
        assert limb_between(drawing, *THIGH, panel)[-1] <= -20


def test_the_rock_back_as_a_drill_is_at_the_best_width_and_tells_of_its_pillow():
    rock, pillow = pose("drill rock back"), pose("drill rock back to a pillow")
    assert rock is not None
    assert pillow is not None
    assert "knees at the best width" in rock.words
    assert "before the back moves" in rock.words
    assert "pillow lies on the heels" in pillow.words


def test_the_wider_stance_is_a_hand_wider_as_it_says():
    """Measured at the heels of the right foot, in centimetres of a body of 175."""
    drawing = pose("squat_wide")
    assert drawing is not None
    new = max(item.points[0][0] for item in drawing.panels[0].items if isinstance(item, Area))
    usual = max(item.points[0][0] for item in drawing.panels[0].items if isinstance(item, Stroke) and item.dash)
    assert 8 <= (new - usual) * 175 <= 11


def test_a_bar_that_rolls_down_the_arms_lies_on_them():
    drawing = pose("arms_forward")
    assert drawing is not None
    shoulder, wrist = (joints_of(replace(squats.squat(0, 35.8), near_arm=Arm(-14, -14))).shoulder,
                       joints_of(replace(squats.squat(0, 35.8), near_arm=Arm(-14, -14))).near_arm.wrist)
    ring = [item for item in drawing.panels[1].items if isinstance(item, Disc)][-1].centre
    off = direction(shoulder, ring) - direction(shoulder, wrist)
    assert hypot(ring[0] - shoulder[0], ring[1] - shoulder[1]) * sin(radians(off)) == pytest.approx(0.046)


def test_a_name_that_is_none_has_no_picture():
    assert pose("view_feel") is None
    assert pose("") is None


def test_a_hip_that_folds_is_measured_from_the_joints():
    joints = joints_of(squats.at_depth("parallel"))
    assert angles_of(joints).hip == pytest.approx(90 + 35.8)
