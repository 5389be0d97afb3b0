"""The figure: segments keep their lengths and directions, whatever the posture, and it stands on the floor."""

from __future__ import annotations

from math import dist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.pictures.figure import (
    FOREARM,
    SHANK_LENGTH,
    SOLE,
    THIGH_LENGTH,
    TRUNK_LENGTH,
    UPPER_ARM,
    Arm,
    Leg,
    Posture,
    Reach,
    between,
    direction,
    hip_flexion,
    joints_of,
    planted,
)

ANGLE = st.floats(-179, 179)


@given(ANGLE, ANGLE, ANGLE, ANGLE, ANGLE)
def test_segments_keep_their_length_and_point_where_they_are_told(trunk, thigh, shin, upper, fore):
    joints = joints_of(Posture(trunk, Leg(thigh, shin), Arm(upper, fore)))
    for start, end, length, told in ((joints.hip, joints.shoulder, TRUNK_LENGTH, trunk),
                                     (joints.hip, joints.near.knee, THIGH_LENGTH, thigh),
                                     (joints.near.knee, joints.near.ankle, SHANK_LENGTH, shin),
                                     (joints.shoulder, joints.near_arm.elbow, UPPER_ARM, upper),
                                     (joints.near_arm.elbow, joints.near_arm.wrist, FOREARM, fore)):
        assert dist(start, end) == pytest.approx(length)
        assert (direction(start, end) - told + 180) % 360 - 180 == pytest.approx(0, abs=1e-6)


def test_lengths_are_those_of_the_table():
    """Drillis & Contini 1966, as in Winter's textbook (second-hand): .530-.285, .285-.039, .818-.530."""
    assert pytest.approx([0.245, 0.246, 0.288]) == [THIGH_LENGTH, SHANK_LENGTH, TRUNK_LENGTH]


@given(st.floats(-60, 20), st.floats(0, 50), st.floats(-20, 20))
def test_whoever_stands_stands_on_the_floor(thigh, shin, foot):
    leg = joints_of(Posture(80, Leg(thigh, -90 - shin, foot), Arm(0, 0))).near
    assert min(leg.heel[1], leg.toe[1]) == pytest.approx(SOLE)


def test_the_hip_folds_by_ninety_and_lean_and_depth():
    """As screening.posture has it: 90 + lean + thigh below level."""
    joints = joints_of(Posture(90 - 35, Leg(10, -125), Arm(0, 0)))
    assert hip_flexion(joints, joints.near) == pytest.approx(90 + 35 + 10)


@given(st.floats(0.05, 0.30), st.floats(0.5, 0.9))
def test_a_hand_in_reach_is_where_it_should_be(x, y):
    joints = joints_of(Posture(90, Leg(-90, -90), Reach(x, y)))
    if dist(joints.shoulder, (x, y)) <= UPPER_ARM + FOREARM and dist(joints.shoulder, (x, y)) >= UPPER_ARM - FOREARM:
        assert joints.near_arm.wrist == pytest.approx((x, y))
        assert dist(joints.near_arm.elbow, joints.near_arm.wrist) == pytest.approx(FOREARM)


def test_a_planted_foot_stands_on_the_floor():
    joints = joints_of(planted(Posture(88, Leg(-18, -130), Arm(0, 0), far=Leg(-112, -184, -60), on="toes")))
    assert min(joints.far.heel[1], joints.far.toe[1]) == pytest.approx(SOLE, abs=1e-6)


def test_half_way_between_two_postures_every_angle_is_half_way():
    half = between(Posture(90, Leg(-90, -90), Arm(0, 0)), Posture(50, Leg(0, -120), Arm(-90, -90)), 0.5)
    assert (half.trunk, half.near.thigh, half.near.shin, half.near_arm) == (70, -45, -105, Arm(-45, -45))


def test_a_tuck_bows_the_small_of_the_back_out_and_a_neutral_back_is_hollow():
    def bow(tuck: float) -> float:
        joints = joints_of(Posture(90, Leg(-90, -90), Arm(-90, -90), tuck=tuck))
        return joints.spine[14][0]  # facing right, the back is to the left
    assert bow(0) > 0 > bow(26)
