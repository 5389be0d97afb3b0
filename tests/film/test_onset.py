"""Where the back begins to round is found with an interval; a straight line has no such place."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from companion.film.onset import BIN, Curve, binned, onset_of


def curves(onset: float | None, gain: float = .5, noise: float = .6, squats: int = 3, seed: int = 0,
           deepest: float = 108) -> tuple[Curve, ...]:
    chance = np.random.default_rng(seed)
    depth = np.arange(10, deepest, BIN)
    bend = .02 * depth + (0 if onset is None else gain * np.maximum(0, depth - onset))
    return tuple(Curve(depth, bend + chance.normal(0, .5) + chance.normal(0, noise, len(depth))) for _ in range(squats))


@settings(max_examples=12)
@given(st.floats(40, 88), st.integers(0, 10_000))
def test_the_kink_is_found_near_its_place_and_its_interval_holds_it(onset, seed):
    found = onset_of(curves(onset, seed=seed))
    assert found.depth == pytest.approx(onset, abs=5)
    assert found.low <= onset <= found.high
    assert found.low <= found.depth <= found.high


@settings(max_examples=12)
@given(st.integers(0, 10_000))
def test_a_line_without_a_kink_has_no_onset(seed):
    found = onset_of(curves(None, seed=seed))
    assert (found.depth, found.low, found.high) == (None, None, None)


def test_bending_under_three_degrees_is_no_onset():
    assert onset_of(curves(85, gain=.1)).depth is None


def test_the_same_curves_give_the_same_interval():
    assert onset_of(curves(70)) == onset_of(curves(70))


def test_more_noise_widens_the_interval():
    steady, shaky = onset_of(curves(70, noise=.3)), onset_of(curves(70, noise=2.0))
    assert shaky.high - shaky.low > steady.high - steady.low
    assert shaky.spread > steady.spread


def test_a_card_read_wrong_for_a_moment_hardly_moves_the_onset():
    (squat,) = curves(75, noise=.2, squats=1)
    wrong = np.where((squat.depth > 88) & (squat.depth < 93), -4.0, 0) + np.where((squat.depth > 36) & (squat.depth < 40), 4.0, 0)
    assert onset_of((Curve(squat.depth, squat.flexion + wrong),)).depth == pytest.approx(onset_of((squat,)).depth, abs=2)


def test_a_squat_too_shallow_for_two_pieces_tells_nothing():
    assert onset_of(curves(30, deepest=34)) is None
    assert onset_of(()) is None


def test_bins_weigh_depth_evenly_and_bridge_what_a_fast_descent_skips():
    depth = np.concatenate([np.full(50, 20.0), np.linspace(20, 60, 12)])
    curve = binned(depth, depth * .1)
    assert np.allclose(np.diff(curve.depth), BIN)
    assert np.allclose(curve.flexion, curve.depth * .1, atol=.1)


def test_samples_that_were_not_seen_are_left_out():
    depth = np.linspace(10, 100, 60)
    flexion = np.where((depth > 40) & (depth < 50), np.nan, depth * .1)
    assert np.isfinite(binned(depth, flexion).flexion).all()
    assert len(binned(np.full(9, np.nan), np.full(9, np.nan)).depth) == 0
