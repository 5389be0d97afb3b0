"""Units as typed and as kept, against pint."""

from __future__ import annotations

from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.language.units import IMPERIAL, METRIC, to_kept, unit_word

UNITS: Any = pint.get_application_registry()


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
