"""The set-up that is worth checking, what its check must show, and the depth it gives."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest

from companion.screening.conclusion import conclude
from companion.screening.depth import Band
from companion.screening.pairs import look_of
from companion.screening.protocols.squat_look import SquatLook
from companion.screening.setups import (
    NAMES,
    SetUp,
    called,
    checked,
    depth_with,
    proposal,
    rank_of,
    setup_from,
    squat_for_now,
    start_words,
    without_luck,
)
from tests.table import each_row

from .build import ABOUT, HEAVY, LOOK, REACHED, made, screen

FOLDED = {"hip_fold": REACHED}
HIGH = replace(LOOK, plain_depth="a_little_above", again_depth="a_little_above")


def moving(**to: str) -> SquatLook:
    """A squat look whose changes move the start from a little above parallel to these bands; the rest changes nothing."""
    said = dict.fromkeys(("heels", "front", "slow", "wide"), "a_little_above") | to
    return replace(HIGH, **{f"{squat}_{key}": value for squat, depth in said.items()
                            for key, value in (("rounds", "clearly"), ("depth", depth))})


@each_row(("look", "wanted"), [
    (moving(heels="below"), "heels"), (moving(wide="parallel"), "wide"), (moving(slow="parallel"), "slow"),
    (moving(front="below"), "front"),
    (moving(), ""),
    (moving(heels="below", slow="parallel"), "slow+heels"),  # one alone does not clear the usual depth, below parallel
    (moving(heels="parallel", slow="parallel", wide="parallel"), "slow+wide"),  # of equal gains the least fuss
    (replace(moving(heels="below"), seen_by="feel"), ""),  # nobody saw it
    (replace(moving(heels="below"), again_depth="below"), "")])  # the plain squat drifted, so the changes don't count
def test_the_change_that_moved_most_for_the_least_fuss_is_proposed(look: SquatLook, wanted: str) -> None:
    assert proposal(look, Band.BELOW) == wanted


def test_a_single_change_that_clears_the_usual_depth_needs_no_second_one() -> None:
    assert proposal(moving(heels="below", slow="parallel"), Band.PARALLEL) == "heels"


def test_a_change_that_brought_a_pinch_is_never_proposed_again() -> None:
    assert proposal(moving(heels="below"), ruled_out=("heels",)) == ""


@pytest.mark.parametrize(("plain", "changed", "counts"), [
    ((1, 1, 1, 1), (3, 3, 3), True), ((1, 1, 1, 1), (3, 1, 3), False), ((1, 1, 2, 1), (2, 3, 3), False),
    ((1, 2, 1, 1), (3, 3, 3), True), ((0, 2, 0, 0), (3, 3, 3), True), ((1, 1, 1, 1), (2, 4, 2), False),
    ((1, 1, 1, 1), (2, 4, 3), False)])
def test_a_gain_counts_if_every_changed_squat_rounds_later_by_more_than_the_repeats_differ(
        plain: tuple[int, ...], changed: tuple[int, ...], counts: bool) -> None:
    assert checked(plain, changed).counts is counts


def test_luck_alone_is_a_gain_in_at_most_one_of_35_orders() -> None:
    """By counting: four plain and three changed looks, each in any of two neighbouring bands as likely."""
    all_of_them = [checked(looks[:4], looks[4:]).counts for looks in product((1, 2), repeat=7)]
    assert sum(all_of_them) / len(all_of_them) <= 1 / 35


@pytest.mark.parametrize(("start", "usual", "keep"), [
    (3, Band.BELOW, Band.PARALLEL), (4, Band.PARALLEL, Band.PARALLEL), (4, None, Band.BELOW), (1, Band.BELOW, Band.WELL_ABOVE),
    (0, Band.BELOW, None), (None, Band.BELOW, None)])
def test_depth_with_a_set_up_is_one_above_its_rounding_and_never_past_the_usual(
        start: int | None, usual: Band | None, keep: Band | None) -> None:
    assert depth_with(SetUp("heels", start), usual) == keep


HEELS = SetUp("heels", 3, 1)


def test_depth_advice_is_that_of_the_best_set_up_and_not_of_the_plain_squat() -> None:
    plain = conclude(screen(squat_look=HIGH), ABOUT, 0)
    better = conclude(screen(squat_look=HIGH), HEAVY, 0, setup=HEELS)
    assert (plain.keep, better.keep) == (Band.WELL_ABOVE, Band.PARALLEL)
    assert better.setup == HEELS


@each_row(("setup", "most", "body", "load"), [
    (HEELS, None, False, "no more than your 80 kg: the trial had no load"), (HEELS, 64, False, "at most 64 kg"),
    (HEELS, 120, False, "no more than your 80 kg"), (HEELS, None, True, "body weight only"), (HEELS, 64, True, "body weight only"),
    (SetUp("front", 3, 1), None, False, "begin with the empty bar"), (SetUp("front", 3, 1), 10, False, "at most 10 kg"),
    (SetUp("front", 3, 1), 20, False, "begin with the empty bar"), (HEELS, 80, False, "no more than your 80 kg"),
    (SetUp("front", 3, 1), None, True, "body weight only")])
def test_the_squat_for_now_stays_within_every_limit_and_earns_no_kilos(setup: SetUp, most: float | None, body: bool, load: str) -> None:
    said = squat_for_now(setup, Band.PARALLEL, most, 80, body=body)
    assert f"all else as usual, down to parallel. Load: {load}" in said
    assert said.endswith("rounded at: below parallel. Plain: a little above parallel.")


@pytest.mark.parametrize("pain", [None, 1, 4])
def test_with_pain_or_pain_not_known_no_set_up_gives_depth(pain: float | None) -> None:
    told = conclude(screen(squat_look=HIGH), ABOUT, pain, setup=HEELS)
    assert (told.keep, told.setup) == (Band.WELL_ABOVE, None)


def test_rounding_earlier_under_load_holds_the_depth_whatever_the_set_up() -> None:
    loaded = replace(HIGH, load_film="yes", load_rounds="clearly", load_depth="well_above", load_kg=80)
    assert conclude(screen(squat_look=loaded), ABOUT, 0, setup=HEELS).keep == Band.WELL_ABOVE


def test_rounding_no_earlier_under_load_leaves_the_depth_that_the_set_up_showed() -> None:
    loaded = replace(HIGH, load_film="yes", load_rounds="clearly", load_depth="a_little_above", load_kg=80)
    assert conclude(screen(squat_look=loaded), ABOUT, 0, setup=HEELS).keep == Band.PARALLEL


def test_a_set_up_of_a_coach_that_nobody_looked_at_changes_no_depth() -> None:
    assert conclude(screen(squat_look=HIGH), ABOUT, 0, setup=SetUp("wide")).keep == Band.WELL_ABOVE


def test_every_set_up_has_words() -> None:
    assert all(called(name) and "{" not in called(name) for name in NAMES)
    assert called("slow+heels") == "three seconds down and heels on 2 cm"
    assert (called(""), called("none")) == ("", "")


@pytest.mark.parametrize("luck", ["", "slow+heels", "none"])
def test_only_the_trial_of_a_single_change_is_luck(luck: str) -> None:
    look = moving(heels="below", slow="parallel")
    assert without_luck(screen(squat_look=look), luck)["squat_look"] == look


def test_a_change_that_did_not_hold_in_its_check_says_nothing_and_the_others_still_do() -> None:
    left = without_luck(screen(FOLDED, squat_look=moving(heels="below", slow="parallel")), "heels")
    assert (look_of(left).moved("heels"), look_of(left).moved("slow"), left["hip_fold"]) == (None, 1, REACHED)
    assert without_luck(made(**FOLDED), "heels").done == made(**FOLDED).done, "no squat look comes of it"


@pytest.mark.parametrize(("facts", "setup"), [
    ({}, None), ({"setup.change": "heels", "setup.state": "asked"}, None), ({"setup.state": "good"}, None),
    ({"setup.change": "heels", "setup.state": "good", "setup.start": "no", "setup.plain": "parallel"}, SetUp("heels", 4, 2)),
    ({"setup.change": "heels", "setup.state": "good", "setup.pin": "wide"}, SetUp("wide"))])
def test_the_set_up_to_squat_with_is_the_coach_s_else_the_one_that_was_good(facts: dict[str, str], setup: SetUp | None) -> None:
    assert setup_from(facts) == setup


def test_a_back_that_never_rounded_is_told_as_such() -> None:
    assert [start_words(rank) for rank in (0, 3, 4)] == ["well above parallel", "below parallel", "not at all"]


def test_an_answer_has_a_rank_only_where_it_tells_a_depth() -> None:
    assert [rank_of(word) for word in ("no", "well_above", "below", "cant_tell", "")] == [4, 0, 3, None, None]
