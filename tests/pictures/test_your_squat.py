"""The lifter's own squat: their lengths and ranges, at the depth of the estimate."""

from __future__ import annotations

from dataclasses import replace
from math import dist

import pytest

from companion.pictures.figure import direction
from companion.pictures.scene import Disc, Limb, Stroke
from companion.pictures.your_squat import at, best_help, your_squat
from companion.screening.about import About
from companion.screening.estimate import DepthEstimate, Help, depth_estimate
from companion.screening.geometry import shin_from_distance
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.screen import Screen, screen_of
from tests.pictures.seen import CM, HAND, NECK, Seen, to_line

ABOUT = About(height=178.0, mass=80.0)
SCREEN = screen_of(KneeToWall(method="tape", left_1=9.0, right_1=11.0),
                   HipFold(left_first="back", left_pinch="no", left_angle=108.0))


def directions(panel, halves: tuple[float, float]) -> list[float]:
    return [direction(item.start, item.end) for item in panel.items
            if isinstance(item, Limb) and (item.start_half, item.end_half) == halves]


def test_the_thigh_stands_at_the_depth_of_the_estimate_and_the_lines_at_its_band():
    drawing, found = your_squat(SCREEN, ABOUT), depth_estimate(SCREEN, ABOUT)
    assert drawing is not None
    assert isinstance(found, DepthEstimate)
    flat = drawing.panels[0]
    assert directions(flat, (0.035, 0.035))[-1] == pytest.approx(found.depths.median)
    lines = [item for item in flat.items if isinstance(item, Stroke) and item.dash]
    assert [direction(line.points[1], line.points[0]) for line in lines] == pytest.approx([found.depths.low, found.depths.high])
    assert directions(flat, (0.034, 0.021))[-1] == pytest.approx(-90 - shin_from_distance(9.0, 178.0))


def test_with_the_heels_raised_the_shin_leans_more_and_the_squat_is_deeper():
    drawing = your_squat(SCREEN, ABOUT)
    assert drawing is not None
    flat, raised = drawing.panels
    assert directions(raised, (0.034, 0.021))[-1] < directions(flat, (0.034, 0.021))[-1]
    assert directions(raised, (0.035, 0.035))[-1] > directions(flat, (0.035, 0.035))[-1]


def test_the_words_say_depth_band_and_that_it_is_an_estimate():
    drawing, found = your_squat(SCREEN, ABOUT), depth_estimate(SCREEN, ABOUT)
    assert drawing is not None
    assert isinstance(found, DepthEstimate)
    for depth in (found.depths.median, found.depths.low, found.depths.high):
        assert at(depth) in drawing.words
    assert "80 %" in drawing.words
    assert "estimate" in drawing.words.lower()
    assert "no reason to go deeper or heavier" in drawing.words


def test_it_is_a_loop_that_begins_where_the_tuck_starts_and_says_so():
    drawing = your_squat(SCREEN, ABOUT)
    assert drawing is not None
    assert drawing.panels[0].title.startswith("Tuck starts ")
    assert "no picture of your back" in drawing.words
    heights = [next(item.start[1] for item in items if isinstance(item, Limb) and item.start_half == item.end_half == 0.035)
               for items in drawing.frames]
    assert min(heights) == heights[0]
    assert drawing.milliseconds[0] >= 700


def test_measured_segments_change_the_proportions_drawn():
    """Shank 40, thigh 50, trunk 48 cm of 178: the drawn bones are as long."""
    drawing = your_squat(SCREEN, replace(ABOUT, shin=40.0, thigh=50.0, trunk=48.0))
    assert drawing is not None
    assert "drawn with your measured lengths" in drawing.words
    bones = {(item.start_half, item.end_half): dist(item.start, item.end) * 178
             for item in drawing.panels[0].items if isinstance(item, Limb)}
    assert bones[0.035, 0.035] == pytest.approx(50)
    assert bones[0.034, 0.021] == pytest.approx(40)


def test_with_a_bar_of_one_s_own_its_place_and_load_are_drawn():
    drawing = your_squat(SCREEN, replace(ABOUT, bar="front", load=60.0))
    assert drawing is not None
    assert drawing.panels[2].title.startswith("Bar front, 60 kg: ")
    rings = [[item for item in panel.items if isinstance(item, Disc) and item.hole] for panel in drawing.panels]
    assert [len(found) for found in rings] == [0, 0, 1]


@pytest.mark.parametrize("bar", ["high", "low", "front"])
def test_the_bar_lies_off_neck_and_head_on_its_side_of_the_body_with_a_hand_at_it(bar):
    """In front half a centimetre of air, behind the neck none; the hand within 5 cm of the bar."""
    drawing = your_squat(SCREEN, replace(ABOUT, bar=bar, load=60.0))
    assert drawing is not None
    one = Seen(drawing, 2)
    neck, hand, place = one.part(NECK), one.part(HAND), one.bar
    assert to_line(place.centre, neck.start, neck.end) - neck.start_half - place.radius > (0.5 * CM if bar == "front" else 0)
    assert dist(place.centre, one.head.centre) - one.head.radius - place.radius > 0.5 * CM
    assert to_line(place.centre, hand.start, hand.end) < 5 * CM
    assert (place.centre[0] > one.shoulder[0]) == (bar == "front")


def test_the_set_up_beside_it_is_the_best_of_the_lifter_s_own_trials():
    helps = (Help("heels", 9.0, "heels", 0), Help("wide", 3.0, "wide", 2), Help("front", 5.0, "front", 1), Help("ankle", 6.0))
    assert best_help(helps).squat == "wide"
    assert best_help((helps[0], helps[3])).squat == "heels"


@pytest.mark.parametrize(("screen", "about"), [(Screen(), ABOUT), (SCREEN, About()), (screen_of(SCREEN["knee_to_wall"]), ABOUT)])
def test_without_an_estimate_there_is_no_drawing(screen, about):
    assert your_squat(screen, about) is None
