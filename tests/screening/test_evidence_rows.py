"""Each row of the evidence table as it is meant to weigh: one that speaks louder or the other way round would rule wrongly."""

from __future__ import annotations

import pytest

from companion.screening.evidence import PARTS_BY_CAUSE, EvidenceRow, Finding, Grade, found
from companion.screening.protocols import rows

# Each row's part, whether it speaks for (+), against (-) or neither (.), and its grade; s: of a side, h: only a hint, t: a trial, c: our
# own choice, in no table of the trade.
MEANT = {
    "squat_rounds": "all . none",
    "heels_later_calf": "calf + moderate t",
    "heels_later_hip": "hip + weak ht",
    "heels_same_calf": "calf - moderate",
    "front_later_hip": "hip + weak ht",
    "front_later_trunk": "trunk + weak h",
    "front_later_control": "control + weak h",
    "slow_later_control": "control + moderate",
    "slow_same_control": "control - moderate",
    "slow_earlier_trunk": "trunk + weak h",
    "wide_later_hip": "hip + weak ht",
    "unmoved_hip": "hip - moderate c",
    "load_earlier_trunk": "trunk + strong",
    "load_same_trunk": "trunk - strong",
    "film_rounds": "all . none c",
    "film_heels_later_calf": "calf + moderate tc",
    "film_heels_later_hip": "hip + weak htc",
    "film_heels_same_calf": "calf - moderate c",
    "film_front_later_hip": "hip + weak htc",
    "film_front_later_trunk": "trunk + weak hc",
    "film_front_later_control": "control + weak hc",
    "film_slow_later_control": "control + moderate c",
    "film_slow_same_control": "control - moderate c",
    "film_slow_earlier_trunk": "trunk + weak hc",
    "film_wide_later_hip": "hip + weak htc",
    "film_still_later_control": "control + moderate c",
    "film_still_same_control": "control - moderate c",
    "hip_fold_back": "hip + moderate s",
    "hip_fold_reached": "hip - strong s",
    "hip_fold_pinch": "hip . none sc",
    "leg_raise_short": "hamstrings + moderate s",
    "leg_raise_clear": "hamstrings - strong s",
    "leg_raise_open": "hamstrings . none sc",
    "knee_to_wall_short": "calf + moderate s",
    "knee_to_wall_far": "calf - strong s",
    "knee_to_wall_clear": "calf - weak s",
    "knee_to_wall_open": "calf . none sc",
    "knee_to_wall_pinch": "calf . none sc",
    "arms_clean_stick": "trunk . none h",
    "arms_clean_bar": "trunk - moderate",
    "arms_fail_stick": "trunk + weak",
    "arms_fail_bar": "trunk + moderate",
    "arms_open": "trunk . none hc",
    "pause_fails": "trunk + moderate",
    "pause_clean_body": "trunk - weak",
    "pause_clean_bar": "trunk - moderate",
    "pause_open": "trunk . none c",
    "hinge_rounds": "hamstrings + weak",
    "hinge_breaks": "control + moderate",
    "hinge_clean": "control - weak",
    "bird_dog_turns": "control + weak s",
    "bird_dog_film": "control . none sc",
    "bird_dog_short": "control . none c",
    "bird_dog_clean": "control - weak",
    "hand_later_control": "control + moderate",
    "hand_same_control": "control - moderate",
    "hand_open": "control . none c",
    "rock_early_hip": "hip + moderate s",
    "rock_early_control": "control + moderate",
    "rock_past_hip": "hip - moderate",
    "rock_open": "hip . none c",
}
SIGNS = {"for": "+", "against": "-", "neither": "."}


def in_short(row: EvidenceRow) -> str:
    marks = "s" * row.sided + "h" * row.hint + "t" * row.trial + "c" * (row.standing == "choice")
    return f"{row.part} {SIGNS[row.direction]} {row.grade.value} {marks}".strip()


def test_each_row_weighs_what_it_is_meant_to() -> None:
    assert {name: in_short(row) for name, row in rows().items()} == MEANT


def test_each_cause_has_its_parts() -> None:
    assert PARTS_BY_CAUSE == {"length": ("hip", "hamstrings", "calf"), "strength": ("trunk",), "control": ("control",)}


MARKED = {"bar": {"arms_clean_bar", "arms_fail_bar", "pause_clean_bar"}, "twice": {"arms_fail_stick", "arms_fail_bar", "pause_fails"},
          "pinched": {"hip_fold_pinch", "knee_to_wall_pinch"}}
"""Rows of a set with the bar; of what was seen in two tries; of a joint that was pinched."""


@pytest.mark.parametrize("mark", MARKED)
def test_rows_with_a_mark_are_those_that_are_meant_to_have_it(mark: str) -> None:
    assert {name for name, row in rows().items() if getattr(row, mark)} == MARKED[mark]


def made_up(grade: Grade) -> EvidenceRow:
    return EvidenceRow("made_up", "hip_fold", "The fold ended", "hip", "for", grade)


def test_what_counts_for_less_goes_down_one_grade_and_none_stays_none() -> None:
    grades = [Grade.NONE, Grade.WEAK, Grade.MODERATE, Grade.STRONG]
    assert [found(made_up(grade)).grade for grade in grades] == grades
    assert [found(made_up(grade), less="it was dark").grade for grade in grades] == [Grade.NONE, *grades[:3]]


def test_a_finding_is_a_sentence_with_its_side_its_load_and_why_it_counts_for_less() -> None:
    row = made_up(Grade.WEAK)
    told = found(row), found(row, side="left"), found(row, words="It did", load="60 kg"), found(row, less="it was dark")
    assert [one.words for one in told] == [
        "The fold ended.", "Left: the fold ended.", "It did (60 kg).", "The fold ended. This counts for less: it was dark."]


def test_a_finding_compares_two_squats_looked_at_once_unless_it_says_so() -> None:
    assert (found(made_up(Grade.WEAK)).looks, Finding(made_up(Grade.WEAK), Grade.WEAK, "x").looks) == (2, 2)
