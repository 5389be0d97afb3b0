"""The figure: segments keep their lengths and directions, whatever the posture, and it stands on the floor."""

from __future__ import annotations

from dataclasses import astuple
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
    joints_of,
    planted,
)
from companion.pictures.scene import length_of
from tests.pictures.seen import angles_of

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
    assert angles_of(joints).hip == pytest.approx(90 + 35 + 10)


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


@given(st.floats(-20, 30), st.floats(10, 90))
def test_lumbar_flexion_turns_the_pelvis_back_and_the_ribs_forward_at_the_same_lean(flexion, trunk):
    neutral, bent = (joints_of(Posture(trunk, Leg(0, -125), Arm(0, 0), flexion=by)) for by in (0.0, flexion))
    assert direction(bent.hip, bent.shoulder) == pytest.approx(trunk)
    assert angles_of(bent).lumbar == pytest.approx(flexion)
    pelvis, ribs = bent.pelvis - neutral.pelvis, bent.ribs - neutral.ribs
    assert pelvis - ribs == pytest.approx(flexion)
    assert pelvis == pytest.approx(angles_of(bent).pelvis)
    if abs(flexion) > 1:
        assert 0.4 < pelvis / flexion < 0.75


def test_the_parts_of_the_trunk_keep_their_lengths_however_it_bends():
    neutral, bent = (joints_of(Posture(60, Leg(0, -125), Arm(0, 0), flexion=by)) for by in (0.0, 26.0))
    for one, other in ((neutral, bent),):
        assert dist(one.hip, one.lumbar[0]) == pytest.approx(dist(other.hip, other.lumbar[0]))
        assert dist(one.lumbar[-1], one.shoulder) == pytest.approx(dist(other.lumbar[-1], other.shoulder))
        assert length_of(one.lumbar) == pytest.approx(length_of(other.lumbar), rel=1e-6)
    assert dist(neutral.hip, neutral.shoulder) == pytest.approx(TRUNK_LENGTH)


def test_standing_straight_every_joint_is_at_zero():
    angles = angles_of(joints_of(Posture(90, Leg(-90, -90), Arm(-90, -90))))
    assert astuple(angles) == pytest.approx((0,) * 7, abs=1e-9)
    bent = angles_of(joints_of(Posture(60, Leg(0, -125), Arm(0, 20))))
    assert (bent.hip, bent.knee, bent.ankle, bent.shoulder, bent.elbow) == pytest.approx((120, 125, 35, 120, 20))
