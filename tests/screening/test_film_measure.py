"""By film a change counts with its own error and outranks the eye; the depth itself moves no load, no depth to keep and no level."""

from __future__ import annotations

from dataclasses import replace
from math import nextafter

import pytest

from companion.film.onset import CARDS_SLIP
from companion.film.squats import THIGH_LAGS
from companion.screening.about import About
from companion.screening.conclusion import conclude
from companion.screening.findings import findings_of
from companion.screening.protocols.film_measure import PROTOCOL, FilmMeasure, detail
from companion.screening.protocols.hand_on_back_squat import HandOnBackSquat
from companion.screening.protocols.squat_look import SquatLook
from companion.screening.readings import metric
from companion.screening.screen import screen_of
from companion.screening.sources import value

PLAIN = FilmMeasure(plain_reading="onset", plain_onset=70.0, plain_low=66.0, plain_high=74.0, plain_spread=.6, plain_deepest=105.0,
                    plain_bend=14.0)
BY_EYE = SquatLook(seen_by="film", plain_rounds="clearly", plain_depth="parallel", heels_rounds="clearly", heels_depth="parallel",
                   slow_rounds="clearly", slow_depth="below", again_rounds="clearly", again_depth="parallel")


def heels(onset: float | None, spread: float = .6, reading: str = "onset", deepest: float = 105.0) -> FilmMeasure:
    return replace(PLAIN, heels_reading=reading, heels_onset=onset, heels_spread=spread, heels_deepest=deepest)


def ids(*records: object) -> set[str]:
    return {one.row.id for one in findings_of(screen_of(*records))}


@pytest.mark.parametrize(("onset", "moved"), [(80.0, 1), (60.0, -1), (71.0, 0), (74.0, None), (64.0, -1), (76.0, 1)])
def test_a_change_counts_beyond_what_two_films_may_differ(onset, moved):
    assert heels(onset).moved("heels") == moved


def test_ones_own_repeat_can_make_the_error_larger_and_never_smaller():
    """(1 * 1.5² + 10² / 2) / 2 = 26.1, so 5.1° from film to film."""
    steady, unsteady = (replace(heels(80.0), again_reading="onset", again_onset=onset) for onset in (70.0, 80.0))
    assert steady.repeat_sem == PLAIN.repeat_sem == 1.5
    assert unsteady.repeat_sem == pytest.approx(5.11, abs=.01)
    assert (steady.moved("heels"), unsteady.moved("heels")) == (1, None)
    assert replace(unsteady, again_reading="mend").repeat_sem == 1.5


def test_a_shaky_film_can_not_tell():
    assert heels(76.0, spread=4.0).moved("heels") is None
    assert heels(70.5, spread=4.0).moved("heels") is None


def test_no_onset_with_a_change_is_later_only_where_the_squat_went_deep_enough():
    assert heels(None, reading="none").moved("heels") == 1
    assert heels(None, reading="none", deepest=78.0).moved("heels") is None
    assert heels(80.0, reading="mend").moved("heels") is None


def test_without_an_onset_in_the_plain_film_nothing_is_compared():
    film = replace(heels(80.0), plain_reading="none", plain_onset=None)
    assert film.moved("heels") is None
    assert not list(PROTOCOL.findings(film, None))


def test_a_change_on_film_takes_the_place_of_the_same_change_by_eye_and_of_no_other():
    assert {"heels_same_calf", "slow_later_control"} <= ids(BY_EYE)
    both = ids(BY_EYE, heels(82.0))
    assert {"film_heels_later_calf", "film_heels_later_hip", "slow_later_control"} <= both
    assert "heels_same_calf" not in both


@pytest.mark.parametrize(("onset", "stands"), [(70.0, True), (60.0, True), (82.0, False)])
def test_that_nothing_moved_the_rounding_by_eye_stands_until_a_film_shows_that_something_did(onset, stands):
    """Heels up, a weight in front and a wider stance moved nothing by eye; on film heels up round at the same depth, earlier or later."""
    unmoved = replace(BY_EYE, front_depth="parallel", wide_depth="parallel")
    assert ("unmoved_hip" in ids(unmoved, heels(onset))) is stands


def test_a_film_that_can_not_tell_leaves_what_was_seen():
    assert "heels_same_calf" in ids(BY_EYE, heels(74.0))
    assert "heels_same_calf" in ids(BY_EYE, PLAIN)


@pytest.mark.parametrize("onset", [40.0, 70.0, 110.0])
def test_the_depth_on_film_moves_neither_load_nor_depth_to_keep(onset):
    about = About(load=100.0, usual_depth="below")
    seen, filmed = conclude(screen_of(BY_EYE), about), conclude(screen_of(BY_EYE, replace(PLAIN, plain_onset=onset)), about)
    assert (seen.load_limit, seen.keep) == (filmed.load_limit, filmed.keep)


def test_the_report_shows_each_film_with_its_change_and_what_it_is_worth():
    told = detail(heels(82.0), metric)
    assert [row[:3] for row in told.rows] == [("Plain", "70°", "105°"), ("Heels raised", "82°", "105°")]
    assert told.rows[1][3].startswith("+12° ± ")
    assert "66° and 74°" in told.note
    assert detail(replace(PLAIN, plain_deepest=None), metric).rows == (("Plain", "70°", "–", "–"),)
    assert detail(None, metric).rows == ()


@pytest.mark.parametrize(("by", "moved"), [(3.5, 0), (3.6, None), (4.4, None), (4.5, 1)])
def test_two_films_are_told_apart_by_their_own_spread_and_the_error_of_a_film(by, moved):
    """1.96 · √(2 · 0.6² + 2 · 1.5²) = 4.48; the same only where 8 degrees can be excluded: 3.5 + 4.48 (choices)."""
    assert heels(70.0 + by).moved("heels") == moved


def test_what_two_films_may_differ_is_no_change_and_eight_degrees_just_excluded_are_the_same_depth():
    """From a plain squat at 0 degrees, so that the difference is exact."""
    film = replace(heels(5.0), plain_onset=0.0)
    _, off = film.change("heels")
    assert [replace(film, heels_onset=by).moved("heels") for by in (off, -off, nextafter(off, 9), nextafter(-off, -9))] == [
        None, None, 1, -1]
    assert [replace(film, heels_onset=by).moved("heels") for by in (8 - off, off - 8, 8.001 - off)] == [0, 0, None]


@pytest.mark.parametrize(("deepest", "moved"), [(80.0, 1), (79.9, None)])
def test_no_onset_counts_as_later_ten_degrees_past_the_plain_one(deepest, moved):
    assert heels(None, reading="none", deepest=deepest).moved("heels") == moved


def test_trying_to_keep_it_still_on_film_outranks_the_hand_on_the_back():
    hand = HandOnBackSquat(usual_depth="parallel", cued_depth="parallel")
    assert "hand_same_control" in ids(hand)
    later = ids(hand, replace(PLAIN, still_reading="onset", still_onset=85.0, still_spread=.6, still_deepest=105.0))
    assert "film_still_later_control" in later
    assert "hand_same_control" not in later
    assert "hand_same_control" in ids(hand, replace(PLAIN, still_reading="mend"))


LOADS = replace(PLAIN, load1_kg=60.0, load1_reading="onset", load1_onset=70.0, load1_spread=.6, load1_deepest=105.0,
                load2_kg=80.0, load2_reading="onset", load2_onset=55.0, load2_spread=.6, load2_deepest=105.0)


def test_sets_with_a_load_are_held_against_the_plain_one():
    assert LOADS.loaded == ((60.0, False), (80.0, True))
    assert replace(LOADS, load2_onset=66.0).loaded == ((60.0, False),), "a film that can't tell gives no set"
    assert replace(LOADS, plain_reading="none", plain_onset=None, load1_reading="none").loaded == ((60.0, False), (80.0, True))


@pytest.mark.parametrize(("told", "limit"), [
    ({"load_rounds": "clearly", "load_depth": "well_above", "load_kg": 70.0, "plain_rounds": "no"}, 56.0), ({}, 60.0)])
def test_a_film_lowers_the_load_and_never_lifts_one(told, limit):
    """From 80 kg on, still at 60; by eye from 70 on, which gives 80 % of it."""
    look = replace(BY_EYE, load_film="yes" if told else "no", **told)
    by_eye, both = (conclude(screen_of(*records), About(load=100, bar="olympic"), 0) for records in ((look,), (look, LOADS)))
    assert both.load_limit == min(limit, by_eye.load_limit or limit)
    clean = replace(LOADS, load2_reading="mend")
    assert conclude(screen_of(look, clean), About(load=100, bar="olympic"), 0).load_limit == by_eye.load_limit


def test_the_row_of_sliding_cards_tells_what_the_interval_holds():
    assert value("film_cards_slip") == CARDS_SLIP


def test_the_row_of_the_thighs_lag_tells_what_is_taken_off():
    assert value("film_thigh_lags") == THIGH_LAGS
