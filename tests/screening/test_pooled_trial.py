"""Pooled priming trials, held against statsmodels on made-up lifters."""

from __future__ import annotations

import random
import warnings

import numpy as np
import pytest

from companion.screening.pooled_trial import pool
from tests.table import each_row


def made_up(seed: int, lifters: int, pairs: int | None, between: float = 1.0) -> dict[int, list[float]]:
    """Lifters' paired differences: so many pairs each, or 2 to 9."""
    draw = random.Random(seed)
    found = {}
    for lifter in range(lifters):
        own = draw.gauss(0.8, between)
        found[lifter] = [own + draw.gauss(0, 1.5) for _ in range(pairs or draw.randint(2, 9))]
    return found


@each_row("seed", range(8))
def test_group_and_variance_between_lifters_are_those_of_the_reference(seed):
    from statsmodels.stats.meta_analysis import combine_effects

    told = made_up(seed, 6 + seed, None, between=(0.0, 1.0, 2.0)[seed % 3])
    found = pool(told)
    means, errors = (np.array(of) for of in zip(*((np.mean(of), found.within / len(of)) for of in told.values()), strict=True))
    theirs = combine_effects(means, errors, method_re="iterated", atol=1e-10)
    assert found.between == pytest.approx(max(theirs.tau2, 0), abs=1e-4)
    if found.between:
        assert found.group.mean == pytest.approx(theirs.mean_effect_re, abs=1e-4)
        assert (found.group.low, found.group.high) == pytest.approx(
            combine_effects(means, errors, method_re="iterated", use_t=True, atol=1e-10).conf_int(use_t=True)[3], abs=1e-3)


@pytest.mark.parametrize("seed", range(4))
def test_each_lifters_estimate_is_that_of_a_mixed_model_where_all_have_as_many_pairs(seed):
    import pandas
    from statsmodels.regression.mixed_linear_model import MixedLM

    told = made_up(seed, 8, 6, between=2.0)
    found = pool(told)
    rows = pandas.DataFrame([(lifter, one) for lifter, of in told.items() for one in of], columns=["lifter", "difference"])
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        theirs = MixedLM(rows["difference"], np.ones((len(rows), 1)), groups=rows["lifter"]).fit(reml=True)
    assert found.within == pytest.approx(theirs.scale, rel=1e-3)
    assert found.between == pytest.approx(float(theirs.cov_re.iloc[0, 0]), rel=1e-2)
    for lifter in told:
        own = theirs.fe_params.iloc[0] + theirs.random_effects[lifter].iloc[0]
        assert found.pooled[lifter].mean == pytest.approx(own, abs=1e-2)


def test_a_lifter_with_few_pairs_is_drawn_further_to_the_group_and_knows_more_with_it_than_alone():
    told = {**made_up(3, 8, 8), 99: [4.0, 3.0]}
    found = pool(told)
    assert found.group.mean < found.pooled[99].mean < found.alone[99].mean
    assert found.pooled[99].high - found.pooled[99].low < found.alone[99].high - found.alone[99].low


def test_the_interval_holds_the_true_mean_about_as_often_as_it_says():
    held = [(found := pool(made_up(seed, 8, 6))).group.low <= 0.8 <= found.group.high for seed in range(300)]
    assert 0.92 <= sum(held) / len(held) <= 0.98


def test_too_few_lifters_pairs_or_spread_pool_nothing():
    """From four lifters on (choice)."""
    assert pool(made_up(1, 3, 6)) is None
    assert pool({lifter: [1.0] for lifter in range(9)}) is None
    assert pool({lifter: [1.0, 1.0] for lifter in range(9)}) is None
    assert pool({**made_up(1, 3, 6), 50: []}) is None
    assert pool(made_up(1, 4, 6)) is not None
