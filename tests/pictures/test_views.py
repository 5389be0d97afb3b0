"""The views from behind and from above: heights and lengths of the side view, widths as stated."""

from __future__ import annotations

from math import dist

import pytest

from companion.pictures import your_squat as squat_module
from companion.pictures.figure import HEAD, direction, joints_of
from companion.pictures.ink import FAR_INK
from companion.pictures.kneeling import rocked
from companion.pictures.poses import pose
from companion.pictures.scene import Area, Disc, Label, Limb, Stroke
from companion.pictures.squats import STANDING_POSTURE
from companion.pictures.views import HIP_HALF, SHOULDER_HALF, STANCE_HALF, from_above, shins_from_above
from companion.screening.body import FOOT_LENGTH
from companion.screening.estimate import Help
from companion.screening.tuck import TURN_OUT
from tests.pictures.seen import CM, FOOT, NECK, SHIN, THIGH, limb, of
from tests.pictures.test_your_squat import ABOUT, SCREEN


def panels_of(name: str):
    found = pose(name)
    assert found is not None
    return found.panels


@pytest.mark.parametrize("side", ["left", "right"])
def test_from_behind_everything_is_as_high_as_from_the_side(side):
    """Hip, shoulders, head and the reaching foot, within half a centimetre."""
    seen, _, behind, _ = panels_of(f"bird_dog_{side}")
    hips = limb(behind.items, (0.070, 0.070))
    assert [hips.start[1], hips.end[1]] == pytest.approx([limb(seen.items, THIGH).start[1]] * 2, abs=0.5 * CM)
    assert limb(behind.items, (0.042, 0.042), FAR_INK).start[1] == pytest.approx(limb(seen.items, NECK).start[1], abs=0.5 * CM)
    assert of(behind.items, Disc, radius=HEAD)[0].centre[1] == pytest.approx(of(seen.items, Disc, radius=HEAD)[0].centre[1], abs=0.5 * CM)
    sole = limb(behind.items, (0.030, 0.036), FAR_INK)
    heights = [limb(seen.items, FOOT).start[1], limb(seen.items, FOOT).end[1]]
    assert [sole.start[1], sole.end[1]] == pytest.approx(heights, abs=0.5 * CM)
    assert (sole.start[0] > 0) == (side == "right"), "from behind, right is on the right"
    assert dist(hips.start, hips.end) == pytest.approx(2 * HIP_HALF)


def test_level_hips_are_level_and_a_hiked_one_lifts_its_leg():
    level, hiked = panels_of("bird_dog_right")[2:]
    for panel, angle in ((level, 0), (hiked, 14)):
        hips = limb(panel.items, (0.070, 0.070))
        assert direction(hips.start, hips.end) == pytest.approx(angle)
    sole, lifted = (limb(panel.items, (0.030, 0.036), FAR_INK).start[1] for panel in (level, hiked))
    assert lifted - sole > 3 * CM


def test_from_above_feet_and_shins_are_as_long_as_from_the_side():
    standing, kneeling = joints_of(STANDING_POSTURE), joints_of(rocked(0))
    feet = [one for one in from_above(standing, (0.0, 0.0)) if isinstance(one, Area)]
    assert [max(dist(one.points[0], at) for at in one.points) for one in feet] == pytest.approx([FOOT_LENGTH] * 2, rel=0.02)
    shoulders = next(one for one in from_above(standing, (0.0, 0.0)) if isinstance(one, Limb))
    assert dist(shoulders.start, shoulders.end) == pytest.approx(2 * SHOULDER_HALF)
    shin, other = (one for one in shins_from_above(kneeling, 0.08, (0.0, 0.0)) if isinstance(one, Limb))
    assert dist(shin.start, shin.end) == pytest.approx(0.8 * dist(kneeling.near.knee, kneeling.near.ankle), rel=0.02)
    assert dist(shin.start, other.start) == pytest.approx(0.8 * 0.16)


def test_knees_together_as_wide_as_the_hips_and_wider_are_three_widths():
    def apart(name: str) -> float:
        shins = [one for one in panels_of(name)[0].items if isinstance(one, Limb) and one.ink == FAR_INK and one.end_half < 0.02
                 and one.start[1] > 0.25]
        return abs(shins[-1].start[1] - shins[-2].start[1]) / 0.8
    narrow, middle, wide = map(apart, ("rock_back_narrow", "rock_back_middle", "rock_back_wide"))
    assert narrow == pytest.approx(2 * SHIN[0], abs=1 * CM), "the knees touch"
    assert middle == pytest.approx(2 * HIP_HALF)
    assert wide > middle + 15 * CM


@pytest.mark.parametrize("width", ["narrow", "middle", "wide"])
def test_the_corner_from_above_has_feet_at_the_shins_ends_and_names_them_and_the_knees(width):
    items = panels_of(f"rock_back_{width}")[0].items
    shins = [one for one in of(items, Limb, ink=FAR_INK) if one.end_half < 0.02 and one.start[1] > 0.25][-2:]
    soles = [one.points for one in of(items, Area) if len(one.points) == 11]
    names = {label.text: label.at for label in of(items, Label)}
    for shin, sole in zip(sorted(shins, key=lambda one: one.start[1]), sorted(soles, key=lambda points: points[0][1]), strict=True):
        assert dist(sole[0], shin.end) < 4 * CM
        assert sole[5][0] == pytest.approx(sole[0][0] - 0.8 * FOOT_LENGTH), "toes away from the knees"
        assert abs(names["knees"][0] - shin.start[0]) < 5 * CM
        assert shin.end[0] > names["feet"][0] > sole[5][0]


def test_the_wider_stance_is_a_hand_further_out_and_further_turned():
    """Usual: heels 17.5 cm to each side, turned out as the estimate has it; wider: 8 to 11 cm further, 10 degrees more."""
    items = panels_of("squat_wide")[0].items
    feet = [of(items, Area)[1].points, [one for one in of(items, Stroke) if one.dash][1].points]
    heels, turns = zip(*((points[0], 90 - direction(points[0], points[5])) for points in feet), strict=True)
    assert heels[1][0] == pytest.approx(STANCE_HALF)
    assert 8 * CM < heels[0][0] - heels[1][0] < 11 * CM
    assert turns == pytest.approx((TURN_OUT + 10, TURN_OUT), abs=1)


def test_a_best_set_up_with_wider_feet_shows_them_from_above(monkeypatch):
    monkeypatch.setattr(squat_module, "best_help", lambda helps: Help("wide", 3.0, "wide", 2))
    drawing = squat_module.your_squat(SCREEN, ABOUT)
    assert drawing is not None
    assert [sum(isinstance(item, Area) and len(item.points) == 11 for item in panel.items) for panel in drawing.panels] == [0, 2]
