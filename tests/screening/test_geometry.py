"""Geometry against published pairs and plain mathematics."""

from __future__ import annotations

from math import cos, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.screening.body import ANKLE_HEIGHT, FOOT_LENGTH, KNEE_HEIGHT
from companion.screening.geometry import (
    SHIN_BY_TAPE_SD,
    furthest_reach,
    highest_heel,
    leg_raise_from_heel,
    leg_raise_from_level,
    shin_from_distance,
)
from tests.table import each_row


@given(st.floats(0.5, 74.9), st.floats(70, 110), st.floats(6, 12))
def test_heel_height_gives_back_the_angle_of_a_leg_turned_about_the_hip(angle: float, leg: float, hip: float) -> None:
    """Plain mathematics, by rotating the heel's point: it lies at (leg, -hip) from the hip joint with the leg flat."""
    a = radians(angle)
    heel = hip + leg * sin(a) - hip * cos(a)
    assert leg_raise_from_heel(heel, leg, hip) == pytest.approx(angle, abs=1e-6)


def test_a_hip_on_the_floor_is_the_plain_sine() -> None:
    assert leg_raise_from_heel(45, 90, hip=0) == pytest.approx(30)


def test_a_flat_leg_is_no_raise() -> None:
    assert leg_raise_from_heel(0, 90) == pytest.approx(0)


def test_the_height_of_the_hip_lowers_the_angle() -> None:
    assert leg_raise_from_heel(80, 90) < leg_raise_from_heel(80, 90, hip=0)


def test_near_75_degrees_a_degree_is_under_half_a_centimetre_of_heel() -> None:
    """Choice: "not taken above 75 degrees (under 0.4 cm a degree)", which is the leg without the hip."""
    per_degree = 90 * (sin(radians(75)) - sin(radians(74)))
    assert 0.38 < per_degree < 0.43
    assert highest_heel(90) - 90 * sin(radians(75)) == pytest.approx(9 * (1 - cos(radians(75))))


@pytest.mark.parametrize("leg", [60, 85, 90, 110])
def test_a_heel_above_75_degrees_is_refused(leg: float) -> None:
    assert leg_raise_from_heel(highest_heel(leg), leg) == pytest.approx(75)
    for heel in (highest_heel(leg) + 0.1, leg + 9, leg + 60):
        with pytest.raises(ValueError, match="above 75 degrees"):
            leg_raise_from_heel(heel, leg)


def test_an_unlikely_leg_or_heel_is_refused() -> None:
    for heel, leg in ((30, 49), (30, 131), (-1, 90)):
        with pytest.raises(ValueError):
            leg_raise_from_heel(heel, leg)


@each_row(("shown", "lean", "angle"), [
    (70, "short", 70), (85, "past", 95), (90, None, 90), (46, "past", 134),
    (45, "short", 45), (45, "past", 135), (45, "flat", 45), (20, "short", 70), (20, "flat", 20), (5, "past", 95),
    (0, "short", 90), (0, "flat", 0)])
def test_a_level_that_turns_over_at_45_gives_the_angle_from_the_floor(shown: float, lean: str, angle: float) -> None:
    assert leg_raise_from_level(shown, lean) == angle  # type: ignore[arg-type]


@pytest.mark.parametrize("shown", [0, 20, 45, 46, 62, 89])
def test_a_level_that_could_be_either_is_asked_back(shown: float) -> None:
    with pytest.raises(ValueError, match="which was it"):
        leg_raise_from_level(shown)


@pytest.mark.parametrize("shown", [-1, 90.1, 180])
def test_a_level_shows_0_to_90(shown: float) -> None:
    with pytest.raises(ValueError, match="0 to 90"):
        leg_raise_from_level(shown, "short")


@given(st.floats(0, 90), st.sampled_from(["short", "past", "flat"]))
def test_a_level_gives_an_angle_between_flat_and_over(shown: float, lean: str) -> None:
    angle = leg_raise_from_level(shown, lean)  # type: ignore[arg-type]
    assert 0 <= angle <= 180
    assert min(abs(angle - axis) for axis in (0, 90, 180)) <= 45


@pytest.mark.parametrize("height", [170, 175, 180])
def test_the_mean_knee_to_wall_pair_is_met_within_3_degrees(height: float) -> None:
    """Calatayud 2015 IJSPT 10:197 (read): 11.6 cm and 40.0 deg, 26 male students; their height is our assumption."""
    assert abs(shin_from_distance(11.6, height) - 40.0) <= 3 <= SHIN_BY_TAPE_SD


def test_a_centimetre_is_worth_about_1_7_degrees() -> None:
    """The local slope of the shank triangle, not the 3.5 of the ratio of means."""
    slope = shin_from_distance(12.1, 175) - shin_from_distance(11.1, 175)
    assert slope == pytest.approx(1.7, abs=0.1)


def test_the_shank_is_knee_less_ankle_height() -> None:
    """Drillis & Contini 1966, as in Winter (second-hand): .285 - .039 = .246; foot .152."""
    assert pytest.approx(0.246) == KNEE_HEIGHT - ANKLE_HEIGHT
    assert FOOT_LENGTH == 0.152


@given(st.floats(0, 18), st.floats(150, 200))
def test_further_from_the_wall_is_a_greater_angle(distance: float, height: float) -> None:
    assert shin_from_distance(distance + 0.5, height) > shin_from_distance(distance, height)


@pytest.mark.parametrize(("distance", "height"), [(-0.1, 175), (60, 175), (10, 100), (10, 240)])
def test_a_triangle_that_does_not_close_is_refused(distance: float, height: float) -> None:
    with pytest.raises(ValueError):
        shin_from_distance(distance, height)


def test_the_sine_is_in_degrees() -> None:
    assert shin_from_distance(0, 175) == pytest.approx(21.8, abs=0.1)  # asin(15.95 / 43.05), by hand


@pytest.mark.parametrize(("height", "most"), [(180, 25.1), (160, 22.8)])
def test_no_shin_reaches_past_70_degrees_with_the_heel_down(height: float, most: float) -> None:
    """By hand at 180 cm: sin 70 * 44.28 - 20.52 + 4 = 25.1; 27.5 cm would be a shin at 84 degrees."""
    assert furthest_reach(height) == pytest.approx(most, abs=0.06)
    assert shin_from_distance(furthest_reach(height), height) == pytest.approx(70)
    assert furthest_reach(None) > most
