"""The load at which rounding begins, from sets done anyway; and evidence that carries the load it was seen at."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from scipy.optimize import bisect

from companion.screening.conclusion import conclude
from companion.screening.depth import Band
from companion.screening.load_threshold import Bracket, SeenSet, bracket, sets_of
from companion.screening.protocols.arms_forward_squat import ArmsForwardSquat
from companion.screening.protocols.film_measure import LOADED, FilmMeasure
from companion.screening.protocols.pause_squat import PauseSquat
from companion.screening.rulings import Ruling
from companion.screening.squat_days import ToldDay

from .build import ABOUT, CONTROL_OUT, LENGTH_OUT, LOOK, screen

HEAVY = replace(ABOUT, load=220)
ROUNDS_AT_210 = replace(LOOK, plain_rounds="no", plain_depth=None, again_rounds=None, again_depth=None, load_film="yes",
                        load_rounds="clearly", load_depth="parallel", load_kg=210)
CLEAN_BAR = ArmsForwardSquat(bar="empty", fault="clean", seen_by="film")


def test_a_clean_empty_bar_does_not_cancel_rounding_at_210_kilograms() -> None:
    told = conclude(screen(squat_look=ROUNDS_AT_210, arms_forward_squat=CLEAN_BAR), HEAVY, 0).verdict("strength")
    assert (told.ruling, told.contradiction) == (Ruling.LIKELY, "")


def test_a_clean_heavy_set_still_contradicts_a_fault_at_a_lighter_load() -> None:
    heavy = replace(LOOK, load_film="yes", load_rounds="clearly", load_depth="parallel", load_kg=220)
    twice = PauseSquat(with_="body", moving="clean", hard="middle", shape="rounds", again="rounds", seen_by="film")
    assert conclude(screen(squat_look=heavy, pause_squat=twice), HEAVY, 0).verdict("strength").ruling == Ruling.TOO_CLOSE


def test_a_clean_set_rules_out_only_at_the_load_it_was_seen_at() -> None:
    heavy = replace(LOOK, load_film="yes", load_rounds="clearly", load_depth="parallel", load_kg=220)
    verdict = conclude(screen(squat_look=heavy), HEAVY, 0).verdict("strength")
    assert (verdict.ruling, verdict.load) == (Ruling.RULED_OUT, "at 220 kg")


@pytest.mark.parametrize(("clean", "rounded", "found"), [
    ((100, 180), (210,), Bracket(180, 210)), ((), (210,), Bracket(None, 210)), ((100, 180), (), None), ((), (), None),
    ((100, 170, 180), (150, 190, 210), Bracket(180, 190)),  # one light set that rounded is outvoted
    ((200,), (100,), None)])  # as much for as against
def test_the_bracket_is_the_split_that_the_fewest_sets_speak_against(clean: tuple[float, ...], rounded: tuple[float, ...],
                                                                     found: Bracket | None) -> None:
    assert bracket([*(SeenSet(kg, False) for kg in clean), *(SeenSet(kg, True) for kg in rounded)]) == found


def test_a_film_outweighs_a_set_told_by_feel() -> None:
    assert bracket([SeenSet(180, False, film=True), SeenSet(150, True), SeenSet(210, True)]) == Bracket(180, 210)


@pytest.mark.parametrize("threshold", [63.0, 118.5, 187.0])
def test_the_bracket_of_halving_loads_holds_the_root_that_scipy_finds(threshold: float) -> None:
    """Sets at the loads a bisection would lift: the bracket closes on the same load."""
    seen: list[SeenSet] = []

    def rounds(kg: float) -> float:
        seen.append(SeenSet(kg, kg >= threshold, film=True))
        return kg - threshold

    root = bisect(rounds, 20.0, 220.0, xtol=2.5)
    found = bracket(seen)
    assert found is not None
    assert found.clean is not None
    assert found.clean <= threshold <= found.rounds
    assert found.rounds - found.clean <= 6
    assert abs(root - threshold) <= 2.5


@pytest.mark.parametrize(("found", "most"), [(Bracket(180, 210), 180), (Bracket(205, 210), 189), (Bracket(None, 210), 168)])
def test_what_is_lifted_for_now_stays_below_it(found: Bracket, most: float) -> None:
    assert found.most == pytest.approx(most)


DAYS = (ToldDay(date(2026, 2, 20), back="still", kept="kept", load=180.0),
        ToldDay(date(2026, 2, 24), back="moved", kept="kept", load=200.0))


def test_squat_days_as_told_narrow_the_bracket_and_deeper_or_painful_ones_do_not() -> None:
    odd = (ToldDay(date(2026, 2, 25), back="moved", kept="deeper", load=60.0),
           ToldDay(date(2026, 2, 26), back="moved", hurt=True, load=60.0))
    assert bracket(sets_of(ROUNDS_AT_210, (*DAYS, *odd))) == Bracket(180, 200)


def test_the_results_show_the_bracket_and_dose_below_it_and_never_above_what_is_trained() -> None:
    told = conclude(screen(squat_look=replace(ROUNDS_AT_210, clean_kg=170)), HEAVY, 0)
    assert told.load_limit == 170
    assert "your sets kept your back still at 170 kg and rounded from 210 kg" in told.load_words
    alone = conclude(screen(squat_look=ROUNDS_AT_210), HEAVY, 0).load_words
    assert alone.startswith("Meanwhile lift at most 168 kg: your sets rounded from")
    assert conclude(screen(squat_look=replace(ROUNDS_AT_210, clean_kg=170)), replace(ABOUT, load=120), 0).load_limit == 120


@pytest.mark.parametrize(("kg", "limit"), [(100.0, 80), (215.0, 170)])
def test_a_film_with_cards_lowers_the_limit_of_the_sets_that_were_told_and_never_raises_it(kg: float, limit: float) -> None:
    """Told: still at 170 kg and rounded from 210. A film that rounds from 100 kg, nothing still below it: 80 % of that (choice)."""
    filmed = FilmMeasure(plain_reading="none", **{f"{LOADED[0]}_kg": kg, f"{LOADED[0]}_reading": "onset"})
    told = conclude(screen(squat_look=replace(ROUNDS_AT_210, clean_kg=170), film_measure=filmed), HEAVY, 0)
    assert told.load_limit == limit


@pytest.mark.parametrize(("clean", "keep"), [(180.0, Band.PARALLEL), (None, Band.WELL_ABOVE)])
def test_rounding_at_a_load_that_is_not_lifted_for_now_takes_no_depth(clean: float | None, keep: Band) -> None:
    look = replace(LOOK, plain_depth="below", again_depth="below", load_film="yes", load_rounds="clearly", load_depth="a_little_above",
                   load_kg=210, clean_kg=clean)
    assert conclude(screen(squat_look=look), HEAVY, 0).keep is keep


def test_a_back_still_without_load_keeps_to_the_depth_of_the_film_under_it_whatever_was_clean() -> None:
    look = replace(ROUNDS_AT_210, load_depth="a_little_above", clean_kg=180)
    told = conclude(screen(squat_look=look), HEAVY, 0)
    assert (told.overall, told.load_limit, told.keep) == ("load_question", 180, Band.WELL_ABOVE)


@pytest.mark.parametrize(("done", "overall"), [((LENGTH_OUT, CONTROL_OUT), "by_elimination"), ((CONTROL_OUT,), "open")])
def test_the_bracket_doses_wherever_rounding_is_not_simply_normal(done: tuple[dict[str, Any], ...], overall: str) -> None:
    told = conclude(screen(*done), HEAVY, 0, days=DAYS)
    assert (told.overall, told.load_limit) == (overall, 180)


def test_squat_days_alone_never_make_a_limit_where_nothing_points_to_a_cause() -> None:
    assert conclude(screen(squat_look=replace(LOOK, plain_rounds="no")), HEAVY, 0, days=DAYS).load_limit is None


@pytest.mark.parametrize(("clean", "found"), [(1, Bracket(None, 100.0)), (2, None)])
def test_a_film_weighs_as_much_as_two_sets_that_were_only_told(clean: int, found: Bracket | None) -> None:
    """Two (choice): one heavier set told as clean is outweighed by the film, two balance it."""
    assert bracket([SeenSet(100.0, True, film=True), *[SeenSet(110.0, False)] * clean]) == found


@pytest.mark.parametrize(("depth", "rounds"), [("parallel", False), ("a_little_above", True)])
def test_a_film_under_load_counts_as_rounding_where_it_rounds_earlier_than_without(depth: str, rounds: bool) -> None:
    look = replace(LOOK, load_film="yes", load_rounds="clearly", load_depth=depth, load_kg=100.0)
    assert sets_of(look) == (SeenSet(100.0, rounds, film=True),)


def test_a_set_still_at_the_load_that_rounds_is_no_lighter_one() -> None:
    assert bracket([SeenSet(100.0, True), SeenSet(100.0, True), SeenSet(100.0, False)]) == Bracket(None, 100.0)
