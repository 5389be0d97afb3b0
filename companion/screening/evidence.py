"""The evidence table: what each finding of a test says about which part, and how much. For a coach to read and judge.

Grades are this project's choice, the findings are common practice; where a trial stands behind a row it is named.
direction: "for" speaks for a part being behind the rounding, "against" speaks against it, "neither" decides nothing.
sided: the row counts for the side it was found on; other rows count for both sides.
hint: an unspecific sign; alone it does not make a part "tested".
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from companion.screening.ordinal import Ranked
from companion.screening.readings import Standing

Direction = Literal["for", "against", "neither"]


class Grade(Ranked):
    """How much a finding is worth."""

    NONE = "none"
    WEAK = "weak"
    MODERATE = "moderate"
    STRONG = "strong"


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the table."""

    id: str
    test: str
    finding: str
    part: str
    direction: Direction
    grade: Grade
    sided: bool = False
    hint: bool = False
    standing: Standing = "common practice"


# Cause: its parts. A part's words are for the lifter.
CAUSES: Final = {"length": ("hip", "hamstrings", "calf"), "strength": ("trunk",), "control": ("control",)}
PART_WORDS: Final = {"hip": "hip", "hamstrings": "hamstrings", "calf": "calf", "trunk": "trunk strength",
                     "control": "control"}

_NONE, _WEAK, _MODERATE, _STRONG = Grade

ROWS: Final = (
    Row("squat_rounds", "squat_look", "The lower back rounds", "all", "neither", _NONE),
    Row("heels_later_calf", "squat_look", "Heels up: rounding starts later", "calf", "for", _MODERATE),
    Row("heels_later_hip", "squat_look", "Heels up: rounding starts later", "hip", "for", _WEAK, hint=True),
    Row("heels_same_calf", "squat_look", "Heels up: no change", "calf", "against", _MODERATE),
    Row("front_later_hip", "squat_look", "Weight held in front: later", "hip", "for", _WEAK, hint=True),
    Row("front_later_trunk", "squat_look", "Weight held in front: later", "trunk", "for", _WEAK, hint=True),
    Row("front_later_control", "squat_look", "Weight held in front: later", "control", "for", _WEAK, hint=True),
    Row("slow_later_control", "squat_look", "Three seconds down: later", "control", "for", _MODERATE),
    Row("slow_same_control", "squat_look", "Three seconds down: no change", "control", "against", _MODERATE),
    Row("slow_earlier_trunk", "squat_look", "Three seconds down: earlier", "trunk", "for", _WEAK, hint=True),
    Row("wide_later_hip", "squat_look", "Feet wider: later", "hip", "for", _WEAK, hint=True),
    Row("load_earlier_trunk", "squat_look", "Film: rounds earlier under load than without", "trunk", "for", _STRONG),
    Row("load_same_trunk", "squat_look", "Film: no earlier under load than without", "trunk", "against", _STRONG),
    Row("hip_fold_back", "hip_fold", "The back moves before the squat's fold", "hip", "for", _MODERATE, sided=True),
    Row("hip_fold_reached", "hip_fold", "The squat's fold is reached, back still", "hip", "against", _STRONG,
        sided=True),
    Row("hip_fold_pinch", "hip_fold", "A pinch at the front of the hip: not scored", "hip", "neither", _NONE,
        sided=True, standing="choice"),
    Row("leg_raise_short", "leg_raise", "Straight leg clear short of the line", "hamstrings", "for", _MODERATE,
        sided=True),
    Row("leg_raise_clear", "leg_raise", "Straight leg clear above the line", "hamstrings", "against", _STRONG,
        sided=True),
    Row("leg_raise_open", "leg_raise", "Straight leg too close to the line", "hamstrings", "neither", _NONE,
        sided=True, standing="choice"),
    Row("knee_to_wall_short", "knee_to_wall", "Knee to wall clear short, pull in the calf", "calf", "for", _MODERATE,
        sided=True),
    Row("knee_to_wall_far", "knee_to_wall", "Knee to wall at the upper line or past it", "calf", "against", _STRONG,
        sided=True),
    Row("knee_to_wall_clear", "knee_to_wall", "Knee to wall clear of the lower line, mean of 3", "calf", "against",
        _WEAK, sided=True),
    Row("knee_to_wall_open", "knee_to_wall", "Knee to wall decides nothing", "calf", "neither", _NONE, sided=True,
        standing="choice"),
    Row("knee_to_wall_pinch", "knee_to_wall", "A pinch at the front of the ankle: not scored", "calf", "neither",
        _NONE, sided=True, standing="choice"),
    Row("arms_clean_stick", "arms_forward_squat", "Arms forward, stick: clean", "trunk", "neither", _NONE, hint=True),
    Row("arms_clean_bar", "arms_forward_squat", "Arms forward, bar: clean", "trunk", "against", _MODERATE),
    Row("arms_fail_stick", "arms_forward_squat", "Arms forward, stick: fails above the rounding depth", "trunk", "for",
        _WEAK),
    Row("arms_fail_bar", "arms_forward_squat", "Arms forward, bar: fails above the rounding depth", "trunk", "for",
        _MODERATE),
    Row("arms_open", "arms_forward_squat", "Arms forward: heels up or less depth may explain it, not scored", "trunk",
        "neither", _NONE, hint=True, standing="choice"),
    Row("pause_fails", "pause_squat", "Stops fail twice where the moving squat is clean", "trunk", "for", _MODERATE),
    Row("pause_clean_body", "pause_squat", "Stops clean, body weight", "trunk", "against", _WEAK),
    Row("pause_clean_bar", "pause_squat", "Stops clean, with the bar", "trunk", "against", _MODERATE),
    Row("pause_open", "pause_squat", "Stops: decide nothing", "trunk", "neither", _NONE, standing="choice"),
    Row("hinge_rounds", "hinge_to_squat", "The hinge rounds, knees nearly straight", "hamstrings", "for", _WEAK),
    Row("hinge_breaks", "hinge_to_squat", "Clean hinge, sinking breaks it above the rounding depth", "control", "for",
        _MODERATE),
    Row("hinge_clean", "hinge_to_squat", "Hinge and sinking clean", "control", "against", _WEAK),
    Row("bird_dog_turns", "bird_dog", "Bird dog: hip turns or back sags", "control", "for", _WEAK, sided=True),
    Row("bird_dog_clean", "bird_dog", "Bird dog: clean on both sides", "control", "against", _WEAK),
    Row("hand_later_control", "hand_on_back_squat", "Told to keep it still, the back moves later", "control", "for",
        _MODERATE),
    Row("hand_same_control", "hand_on_back_squat", "Told to keep it still: no change", "control", "against",
        _MODERATE),
    Row("hand_open", "hand_on_back_squat", "Hand on the back: decides nothing", "control", "neither", _NONE,
        standing="choice"),
    Row("rock_early_hip", "rock_back", "Rock back: moves early at every width; hip fold not reached", "hip", "for",
        _MODERATE, sided=True),
    Row("rock_early_control", "rock_back", "Rock back: moves early at every width; hip fold was reached", "control",
        "for", _MODERATE),
    Row("rock_past_hip", "rock_back", "Rock back: still past the squat's hip fold", "hip", "against", _MODERATE),
    Row("rock_open", "rock_back", "Rock back: decides nothing", "hip", "neither", _NONE, standing="choice"),
)

BY_ID: Final = {row.id: row for row in ROWS}
