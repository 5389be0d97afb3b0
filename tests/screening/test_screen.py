"""Which answers of the log count."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.screening.about import About
from companion.screening.pairs import opened
from companion.screening.protocols import protocols, route
from companion.screening.protocols.arms_forward_squat import ArmsForwardSquat
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.protocols.pause_squat import PauseSquat
from companion.screening.protocols.squat_look import NOT_REPEATED, START_DRIFTED
from companion.screening.screen import Outdone, Screen, about_from, screen_from, screen_of

from .build import LOOK, rows

FOLD: dict[str, Any] = {"left_first": "back", "left_pinch": "no", "right_first": "fold", "right_pinch": "no"}
WALL: dict[str, Any] = {"method": "tape", "left_1": 9.0, "left_limit": "calf", "right_1": 12.0,
                        "right_limit": "neither"}
LOG = [*rows("hip_fold", FOLD), *rows("knee_to_wall", WALL, day=1),
       *rows("hip_fold", {"left_first": "fold"}, "2", day=2),
       *rows("pause_squat", {"with": "bar", "moving": "clean"}, ending="left"), *rows("about_you", {"height": 180.0})]


def test_a_finished_run_becomes_its_record() -> None:
    assert screen_from(rows("hip_fold", FOLD)).get("hip_fold") == HipFold("back", "no", None, "fold", "no", None)
    assert screen_from(rows("pause_squat", {"with": "bar"}, ending="left")).get("pause_squat") == PauseSquat(with_="bar")


@pytest.mark.parametrize("status", ["skipped", "withdrawn", "in_pain"])
def test_an_answer_that_does_not_stand_is_missing(status: str) -> None:
    log = rows("hip_fold", FOLD) + rows("hip_fold", {"right_first": "fold"}, status=status, day=1)
    fold = screen_from(log).get("hip_fold")
    assert fold is not None
    assert (fold.left_first, fold.right_first) == ("back", None)


@pytest.mark.parametrize("status", ["skipped", "withdrawn", "in_pain"])
def test_a_test_with_nothing_that_stands_is_not_tested(status: str) -> None:
    assert screen_from(rows("hip_fold", FOLD, status=status)).get("hip_fold") is None


def test_an_answer_given_again_after_going_back_counts() -> None:
    log = [*rows("hip_fold", FOLD), *rows("hip_fold", {"left_first": "back"}, status="withdrawn", day=1),
           *rows("hip_fold", {"left_first": "fold"}, day=2)]
    fold = screen_from(log).get("hip_fold")
    assert fold is not None
    assert fold.left_first == "fold"


def test_a_run_that_pain_ended_is_untested_whole_and_so_is_what_came_before() -> None:
    before, pain = rows("hip_fold", FOLD), rows("hip_fold", FOLD, "2", ending="pain", day=7)
    for log in (pain, before + pain):
        screen = screen_from(log)
        assert screen.get("hip_fold") is None
        assert screen.stopped == ("hip_fold",)
        assert screen.notes == ("The hip fold was stopped for pain: it counts as not tested.",)
    again = screen_from(before + pain + rows("hip_fold", {"left_first": "fold"}, "3", day=9))
    assert again.get("hip_fold") == HipFold(left_first="fold")
    assert again.stopped == ()


def test_a_run_still_open_does_not_count_yet() -> None:
    assert screen_from(rows("hip_fold", FOLD, ending=None)).get("hip_fold") is None
    both = rows("hip_fold", FOLD) + rows("hip_fold", {"left_first": "fold"}, "2", ending=None, day=1)
    assert screen_from(both) == screen_from(rows("hip_fold", FOLD))


def test_the_latest_run_counts_and_an_older_one_fills_in_the_other_side() -> None:
    later = rows("hip_fold", {"left_first": "fold", "left_pinch": "no"}, "2", ending="left", day=3)
    assert screen_from(rows("hip_fold", FOLD) + later).get("hip_fold") == HipFold("fold", "no", None, "fold", "no", None)


def test_a_side_measured_another_way_is_not_filled_in() -> None:
    level = rows("knee_to_wall", {"method": "level", "placement": "mid_shin", "left_deg_1": 38.0, "right_deg_1": 38.0}, "2")
    later = rows("knee_to_wall", {"method": "tape", "left_1": 11.0}, "3", day=3)
    assert screen_from(level + later).get("knee_to_wall") == KneeToWall(method="tape", left_1=11.0)


def test_a_rougher_method_never_undoes_a_more_exact_reading_and_says_what_to_take() -> None:
    tape = rows("knee_to_wall", {"method": "tape", "left_1": 9.0, "left_limit": "calf"})
    level = rows("knee_to_wall", {"method": "level", "left_deg_1": 36.0, "left_limit": "calf"}, "2", day=3)
    told = screen_from(tape + level)
    assert told["knee_to_wall"] == KneeToWall(method="tape", left_1=9.0, left_limit="calf")
    assert told.notes == ("The knee to wall was last taken by phone level, which is rougher than tape and does not undo it. "
                          "Measure by tape again.",)
    assert told.outdone == {"knee_to_wall": Outdone(KneeToWall(method="level", left_deg_1=36.0, left_limit="calf"), "level", "tape")}
    newer = rows("knee_to_wall", {"method": "tape", "left_1": 13.0, "left_limit": "calf"}, "3", day=9)
    assert screen_from(tape + level + newer)["knee_to_wall"].left_1 == 13.0
    assert (screen_from(tape + level + newer).notes, screen_from(tape + level + newer).outdone) == ((), {})
    ended = rows("knee_to_wall", {"method": "tape", "left_1": 9.0}, "1", ending="pain")
    assert screen_from(ended + level)["knee_to_wall"].method == "level"


def test_an_older_squat_look_never_mixes_into_a_newer_one() -> None:
    old = rows("squat_look", {"seen_by": "film", "heels_rounds": "no"})
    new = rows("squat_look", {"seen_by": "film", "plain_rounds": "no"}, "2", day=3)
    look = screen_from(old + new).get("squat_look")
    assert look is not None
    assert (look.plain_rounds, look.heels_rounds) == ("no", None)


def test_method_and_placement_beside_an_answer_stand_in_for_their_question() -> None:
    log = rows("knee_to_wall", {"left_deg_1": 38.0}, method="level", placement="mid_shin")
    assert screen_from(log).get("knee_to_wall") == KneeToWall(method="level", placement="mid_shin", left_deg_1=38.0)


def test_a_value_of_the_wrong_kind_is_left_out() -> None:
    log = rows("knee_to_wall", {**WALL, "left_1": "lots", "right_limit": 3.0, "nonsense": "x"})
    wall = screen_from(log).get("knee_to_wall")
    assert wall is not None
    assert (wall.left_1, wall.right_limit, wall.right_1) == (None, None, 12.0)


@given(st.permutations(LOG))
def test_the_order_of_answers_does_not_matter(log: list[object]) -> None:
    assert screen_from(log) == screen_from(LOG)  # type: ignore[arg-type]


def test_of_two_rows_at_one_moment_the_one_that_does_not_stand_wins() -> None:
    log = [*rows("hip_fold", FOLD), *rows("hip_fold", FOLD, status="withdrawn")]
    assert screen_from(log).get("hip_fold") is None
    assert screen_from(log[::-1]).get("hip_fold") is None


def test_one_change_squats_count_only_where_the_plain_one_came_back_to_within_a_step() -> None:
    look = replace(LOOK, heels_rounds="no")
    assert look.moved("heels") == 2
    for drifted in (replace(look, again_depth="well_above"), replace(look, again_rounds="no", again_depth=None)):
        assert (drifted.discounted, drifted.moved("heels")) == (START_DRIFTED, None)
    for missing in (replace(look, again_rounds="cant_tell"), replace(look, again_rounds=None, again_depth=None)):
        assert (missing.discounted, missing.moved("heels")) == (NOT_REPEATED, None)


@pytest.mark.parametrize(("heels", "moved"), [("well_above", -1), ("a_little_above", None), ("parallel", None), ("below", 1), (None, 2)])
def test_of_two_plain_squats_a_step_apart_only_what_lies_past_both_tells(heels: str | None, moved: int | None) -> None:
    look = replace(LOOK, again_depth="a_little_above", heels_rounds="clearly" if heels else "no", heels_depth=heels)
    for seen in (look, replace(look, plain_depth="a_little_above", again_depth="parallel")):
        assert (seen.discounted, seen.moved("heels")) == ("", moved)


def test_the_screen_says_why_one_change_squats_do_not_count() -> None:
    plain: dict[str, Any] = {"seen_by": "film", "plain_rounds": "clearly", "plain_depth": "parallel",
                             "heels_rounds": "no"}
    drifted = {**plain, "again_rounds": "clearly", "again_depth": "well_above"}
    assert screen_from(rows("squat_look", drifted)).notes == (START_DRIFTED,)
    assert screen_from(rows("squat_look", plain)).notes == (NOT_REPEATED,)
    assert screen_from(rows("squat_look", {"seen_by": "film", "plain_rounds": "no"})).notes == ()


def test_about_you_keeps_the_latest_of_each_answer() -> None:
    log = [*rows("about_you", {"height": 180.0, "sex": "man", "load": 80.0}),
           *rows("about_you", {"load": 90.0, "height": None}, "2", ending=None, day=3),
           *rows("about_you", {"sex": "man"}, "2", status="skipped", day=4)]
    assert about_from(log) == About(height=180.0, sex="man", load=90.0)
    assert about_from(rows("hip_fold", FOLD)) == About()


@pytest.mark.parametrize(("years", "fault", "again", "may"), [
    (1, "clean", None, True), (0.9, "clean", None, False), (None, "clean", None, False), (3, "chest", None, False),
    (3, "clean", "rounds", False)])
def test_the_hinge_into_squat_is_for_the_experienced_who_passed_the_two_before(
        years: float | None, fault: str, again: str | None, may: bool) -> None:
    done = screen_of(ArmsForwardSquat(bar="stick", fault=fault), PauseSquat(shape="clean", again=again))
    assert opened("hinge_to_squat", done, About(years=years)) is may
    assert not opened("hinge_to_squat", Screen(), About(years=9))
    assert opened("knee_to_wall", Screen(), About())


def test_every_test_has_words_and_a_place_in_the_route() -> None:
    assert all(one.title and one.short_name and one.looks_at and one.minutes for one in protocols().values())
    assert route() == ("squat_look", "rock_back", "hip_fold", "leg_raise", "knee_to_wall", "hand_on_back_squat", "bird_dog",
                       "arms_forward_squat", "pause_squat", "hinge_to_squat")
    assert screen_of(HipFold(left_first="fold")).done == ("hip_fold",)
