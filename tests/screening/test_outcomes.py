"""What came of rulings: the pairs of looks that count, what was tried between them, and how sure a share is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest

from companion.screening.outcomes import RowTally, ScreenOutcome, interval, outcomes_of, tallies
from companion.screening.protocols import protocol
from companion.screening.screen import LoggedAnswer
from tests.screening.build import CALF_LIKELY, LOOK, START, rows


def logged(test: str, record: object, day: int, run: str) -> list[LoggedAnswer]:
    said = {field.name.rstrip("_"): value for field in fields(record) if (value := getattr(record, field.name)) is not None}  # type: ignore[arg-type]
    return rows(test, said, run=run, day=day)


def first_screen() -> Iterator[LoggedAnswer]:
    """A calf that is likely: 6 cm on the left, and heels up took the rounding away."""
    for test, record in CALF_LIKELY.items():
        yield from logged(test, record, 0, f"first {test}")


def primed(*days: int, ending: str = "done") -> Iterator[LoggedAnswer]:
    for day in days:
        yield from rows("prime", {"felt": "easy"}, run=f"prime {day}", day=day, ending=ending)


def looked(day: int, depth: str) -> list[LoggedAnswer]:
    return rows("squat_look", {"plain_rounds": "clearly", "plain_depth": depth, "seen_by": "film"}, run=f"look {day}", day=day)


def test_a_ruling_whose_drill_was_done_is_followed_by_a_deeper_start():
    found = outcomes_of((*first_screen(), *primed(3, 5, 8), *looked(21, "below")))
    assert [(one.cause, one.part, one.primed, one.day, one.days) for one in found] == [("length", "calf", 3, 0, 21)]
    assert found[0].tried
    assert found[0].followed
    assert "knee_to_wall_short" in found[0].rows
    assert all(one.part == "calf" for row in found[0].rows for one in (protocol("knee_to_wall").rows + protocol("squat_look").rows)
               if one.id == row)


@pytest.mark.parametrize(("depth", "followed"), [("below", True), ("parallel", False), ("a_little_above", False)])
def test_only_a_start_in_a_deeper_band_follows_the_prediction(depth, followed):
    assert [one.followed for one in outcomes_of((*first_screen(), *primed(3, 5, 8), *looked(21, depth)))] == [followed]


@pytest.mark.parametrize("between", [(), tuple(primed(3, 5)), tuple(primed(3, 5, 8, ending="left")), tuple(primed(22, 23, 24))])
def test_a_drill_not_done_often_enough_before_the_second_look_was_not_tried(between):
    (one,) = outcomes_of((*first_screen(), *between, *looked(21, "below")))
    assert not one.tried
    assert tallies([one]) == ()


@pytest.mark.parametrize(("day", "count"), [(13, 0), (14, 1)])
def test_looks_less_than_two_weeks_apart_are_one(day, count):
    assert len(outcomes_of((*first_screen(), *looked(day, "below")))) == count


def test_without_a_likely_cause_nothing_was_predicted():
    assert outcomes_of((*logged("squat_look", LOOK, 0, "first"), *primed(3, 5, 8), *looked(21, "below"))) == ()
    assert outcomes_of(()) == ()


def test_a_set_up_found_good_between_the_looks_is_named():
    setups = [(START, "heels"), (START + timedelta(days=21), "slow")]
    (one,) = outcomes_of((*first_screen(), *looked(21, "below")), setups)
    assert one.setup == "heels"


def test_a_drill_done_as_the_first_look_begins_counts_for_what_followed():
    (one,) = outcomes_of((*first_screen(), *primed(0, 3, 5), *looked(21, "below")))
    assert one.primed == 3


def outcome(followed: bool, *deciding: str) -> ScreenOutcome:
    return ScreenOutcome("length", "calf", deciding, 5, "", 2, 3 if followed else 2, 0, 21)


def test_a_tally_counts_each_row_that_decided_and_says_when_it_is_too_little():
    done = [outcome(True, "knee_to_wall_short", "heels_later")] * 7 + [outcome(False, "knee_to_wall_short")] * 3
    short, heels = tallies(done)
    assert short == RowTally("knee_to_wall_short", "The knee stays clearly under the line, with a pull in the calf", 7, 10)
    assert (short.enough, heels.enough) == (True, False)
    assert not tallies(done[1:])[0].enough  # of nine
    assert (heels.followed, heels.of) == (7, 7)


@given(st.integers(1, 400), st.data())
def test_the_interval_is_wilsons(of, data):
    """Against scipy.stats.binomtest(...).proportion_ci(method="wilson")."""
    followed = data.draw(st.integers(0, of))
    assert interval(followed, of) == pytest.approx(tuple(binomtest(followed, of).proportion_ci(method="wilson")), abs=1e-4)


@pytest.mark.parametrize(("followed", "of"), [(0, 0), (3, 2), (-1, 2)])
def test_a_share_of_nothing_is_refused(followed, of):
    with pytest.raises(ValueError, match="no share"):
        interval(followed, of)
