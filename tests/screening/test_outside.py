"""Agreement and units against published tables and general libraries."""

from __future__ import annotations

import warnings
from typing import Any

import pandas as pd
import pingouin
import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from companion.language.units import IMPERIAL, METRIC, to_kept, unit_word
from companion.screening.protocols import error_of
from companion.screening.readings import MDC_FACTOR

from .agreement import intraclass, sem_from

# Shrout & Fleiss 1979 (data from memory): six targets, four judges.
JUDGED = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]


def test_the_coefficients_are_shrout_and_fleisss() -> None:
    found = intraclass(JUDGED)
    assert [round(value, 2) for value in (found.one, found.two, found.three, found.one_mean, found.two_mean,
                                          found.three_mean)] == [.17, .29, .71, .44, .62, .91]


TABLES = st.integers(2, 5).flatmap(lambda k: st.lists(
    st.lists(st.integers(0, 10).map(float), min_size=k, max_size=k), min_size=5, max_size=8))


def by_pingouin(table: list[list[float]]) -> list[float]:
    rows = pd.DataFrame([{"target": n, "rater": m, "score": value}
                         for n, row in enumerate(table) for m, value in enumerate(row)])
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        found: Any = pingouin.intraclass_corr(rows, targets="target", raters="rater", ratings="score")
    return [float(value) for value in found["ICC"]]


@settings(max_examples=12, deadline=None)
@given(TABLES)
def test_the_coefficients_are_pingouins(table: list[list[float]]) -> None:
    """pingouin.intraclass_corr on random tables."""
    try:
        found = intraclass(table)
    except ValueError:
        return
    theirs = by_pingouin(table)
    ours = [found.one, found.two, found.three, found.one_mean, found.two_mean, found.three_mean]
    assert ours == pytest.approx(theirs, abs=1e-6, nan_ok=True)


@pytest.mark.parametrize("table", [[], [[1, 2]], [[1], [2]], [[1, 2], [3]], [[3, 3], [3, 3]], [[1, 2], [2, 1]]])
def test_a_table_that_tells_nothing_is_refused(table: list[list[float]]) -> None:
    with pytest.raises(ValueError):
        intraclass(table)


def test_sem_follows_from_the_coefficient() -> None:
    """Weir 2005 J Strength Cond Res 19:231 (second-hand): SEM = SD sqrt(1 - ICC), MDC95 = 2.772 SEM."""
    assert sem_from(10, 0.91) == pytest.approx(3.0)
    assert round(MDC_FACTOR * sem_from(10, 0.91), 1) == round(2.772 * 3, 1)
    for sd, icc in ((-1, 0.5), (1, 1.1), (1, -0.1)):
        with pytest.raises(ValueError, match="no error"):
            sem_from(sd, icc)


UNITS: Any = pint.UnitRegistry()


@given(st.floats(0.1, 1000), st.sampled_from(["cm", "mm", "m", "inch", "ft", "kg", "lb", "deg", "min", "s"]))
def test_typed_units_are_converted_as_pint_does(number: float, word: str) -> None:
    known = unit_word(word)
    assert known is not None
    unit, size = known
    assert number * size == pytest.approx(UNITS.Quantity(number, {"min": "minute"}.get(word, word)).to(unit).magnitude)


@given(st.floats(0, 500), st.sampled_from([("cm", "inch"), ("kg", "pound")]))
def test_a_lifters_own_units_are_kept_as_pint_does(number: float, pair: tuple[str, str]) -> None:
    kept, own = pair
    assert to_kept(number, kept, IMPERIAL) == pytest.approx(UNITS.Quantity(number, own).to(kept).magnitude)
    assert to_kept(number, kept, METRIC) == number


def test_the_default_home_errors_are_the_published_mdcs_over_the_factor() -> None:
    """By hand: 1.9/2.772 = 0.69 cm, 4.7/2.772 = 1.70 deg."""
    assert [round(error_of("knee_to_wall", method).sem, 2) for method in ("tape", "level")] == [0.69, 1.70]
