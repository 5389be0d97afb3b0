"""The edges of the safety levels: what a guard lets through at its bound, by default, and where an answer stands alone."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from companion.screening.protocols import protocols
from companion.screening.safety import (
    BodyPosition,
    Level,
    SafetyOutcome,
    level_from_check,
    level_from_pain,
    opens,
    pain_now,
)
from tests.table import each_row

WELL: dict[str, Any] = {"fever": "no", "bladder": "no", "chest": "no", "weakness": "no", "fall": "no", "leg_signs": "no",
                        "history": "no", "pain": 0.0}
CLEARED: dict[str, Any] = {"history": "yes", "pregnant": "no", "cleared": "yes", "cleared_at": "Dr Ahn, in March"}
SMALL: dict[str, Any] = {"where": "back", "bad": 1.0, "sharp": "no", "below_knee": "no", "tingling": "no"}
DAY, NEXT = date(2025, 3, 10), date(2025, 3, 11)


def test_eleven_tests_four_of_them_on_the_floor_three_lying_or_folded() -> None:
    standing = dict.fromkeys(("squat_look", "film_measure", "knee_to_wall", "hand_on_back_squat", "arms_forward_squat", "pause_squat",
                              "hinge_to_squat"), BodyPosition.STANDING)
    lying = dict.fromkeys(("hip_fold", "leg_raise", "rock_back"), BodyPosition.LYING)
    assert {test: one.posture for test, one in protocols().items()} == {**standing, **lying, "bird_dog": BodyPosition.FLOOR}
    assert [posture.levels for posture in BodyPosition] == [(Level.GO,), (Level.GO, Level.NO_LOAD), (Level.GO, Level.NO_LOAD)]
    assert [posture for posture in BodyPosition if posture.barred_in_pregnancy] == [BodyPosition.LYING]


def test_nothing_is_restricted_that_no_answer_restricts() -> None:
    assert SafetyOutcome(Level.GO) == SafetyOutcome(Level.GO, (), False, False, False, "")
    found = level_from_pain(SMALL, 0)
    assert (found.no_lying, found.postpone, found.body_weight_first, found.limits) == (False, False, False, "")


def test_an_old_disc_or_limits_count_only_with_a_history() -> None:
    said = level_from_check({**WELL, "pregnant": "no", "old_disc": "yes", "limits": "no bending"})
    assert (said.body_weight_first, said.limits) == (False, "")


def test_a_clearance_lifts_body_weight_first_and_leaves_no_limit_where_none_was_set() -> None:
    said = level_from_check({**WELL, **CLEARED, "old_disc": "yes", "limits": None})
    assert (said.level, said.body_weight_first, said.no_lying, said.limits) == (Level.GO, False, False, "")


def test_each_reason_is_told_once_and_for_what_it_is() -> None:
    both = level_from_pain({**SMALL, "below_knee": "yes", "tingling": "yes", "bladder": "no", "weakness": "no"}, 0)
    assert [reason.key for reason in both.because] == ["below_knee"]
    assert [reason.key for reason in level_from_pain({**SMALL, "sharp": "yes"}, 0).because] == ["sharp"]


def test_a_pain_below_nothing_is_no_answer() -> None:
    assert level_from_check({**WELL, "pain": -1}).level == Level.NOT_TODAY
    assert level_from_pain({**SMALL, "bad": -1}, 0).level == Level.NOT_TODAY


def test_urgent_care_waits_for_what_was_not_told() -> None:
    for level in (Level.SAME_DAY, Level.EMERGENCY):
        assert not opens(level, DAY, NEXT, check=Level.GO, cleared=True)
        assert not opens(level, DAY, NEXT, check=Level.GO, seen=True)
        assert not opens(level, DAY, NEXT, seen=True, cleared=True)


@pytest.mark.parametrize("passed", [Level.GO, Level.NO_LOAD, Level.NOT_TODAY])
def test_a_check_that_finds_less_than_a_clinician_passes(passed: Level) -> None:
    assert opens(Level.CLINICIAN, DAY, DAY, check=passed)


@each_row(("told", "level", "now"), [
    (None, None, None), (None, "go", None), (0.0, None, 0.0), (0.0, "go", 0.0), (3.0, "go", 3.0), ("skipped", "go", None),
    (None, "no_load", 1.0), (0.0, "no_load", 1.0), (0.5, "no_load", 1.0), (1.5, "no_load", 1.5), (4.0, "not_today", 4.0),
    ("skipped", "clinician", 1.0)])
def test_pain_now_is_never_nothing_after_something_closed_work(told: float | str | None, level: str | None, now: float | None) -> None:
    assert pain_now(told, level) == now
