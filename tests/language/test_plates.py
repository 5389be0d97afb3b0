"""Loads told by plates. What bars and plates weigh is common practice, no source; pounds are converted as pint does."""

from typing import Any

import pint
from hypothesis import given
from hypothesis import strategies as st

from companion.language.plates import USUAL_BARS, loaded
from companion.screening.sources import SOURCES
from tests.table import each_row

UNITS: Any = pint.get_application_registry()
NAMES = {"kg": "kg", "lb": "pound"}


def kilos(load: float | None, unit: str) -> float | None:
    return None if load is None else round(UNITS.Quantity(load, NAMES[unit]).to("kg").magnitude, 2)


@each_row(("text", "load", "unit"), [
    ("two 20s each side and the 20 bar", 100, "kg"), ("two 20 plates a side on a 20 kilo bar", 100, "kg"),
    ("the 20 kilo bar with two twenties either side", 100, "kg"), ("twenty bar and sixty a side", 140, "kg"),
    ("three reds... no. twenty bar and sixty a side", 140, "kg"), ("bar plus a twenty a side and that's it", 60, "kg"),
    ("each side a 20 and a 10", 80, "kg"), ("20, 10 and 5 a side", 90, "kg"), ("two twenty fives and a ten per side", 140, "kg"),
    ("two plates", 100, "kg"), ("3x5 with a plate a side", 60, "kg"), ("one plate each side and the 15 kg bar", 55, "kg"),
    ("a 45 each end on the forty five pound bar", 135, "lb"), ("two plates a side on the 45 bar", 225, "lb"),
    ("one big plate per side on the forty five pound bar", 135, "lb"), ("45s each side", 135, "lb"),
    ("45 pound bar, a plate and a twenty five on each end", 185, "lb"), ("the 45 bar with 55 on each side", 155, "lb"),
    ("two plates a side so 225", 225, "lb"), ("three plates each side, 315", 315, "lb"), ("2 plates, 100", 100, "kg")])
def test_plates_are_added_up_with_the_bar(text, load, unit):
    assert loaded(text, pounds=False) == kilos(load, unit)


@each_row("text", [
    "100", "20 kilo bar", "80 each", "two plates, 90", "100 kg, a plate a side", "5 more each side than last time", "2 reds each side",
    "plate and a half a side", "a plate or two a side", "60 on the left and 50 on the right", "15 kilo bar and 20lb a side",
    "not two plates a side", "a plate a side " * 20])
def test_what_does_not_add_up_to_one_load_is_none(text):
    assert loaded(text, pounds=False) is None


@each_row(("text", "pounds", "own_bar", "kg"), [
    ("two plates", True, None, kilos(225, "lb")), ("bar and fifteen each end", False, None, 50), ("bar and ten each end", False, 10.0, 30),
    ("bar and a 45 each end", True, kilos(35, "lb"), kilos(125, "lb")), ("20 bar and a plate a side", True, None, 60),
    ("two plates a side so 225", True, 20.0, kilos(225, "lb"))])
def test_what_is_not_said_is_the_lifters_own(text, pounds, own_bar, kg):
    assert loaded(text, pounds, own_bar) == kg


@given(st.sampled_from([15, 20, 25, 35, 45, 55]), st.sampled_from([("kg", "kg"), ("kilo", "kg"), ("lb", "lb"), ("pound", "lb")]),
       st.lists(st.sampled_from([1.25, 2.5, 5, 10, 15, 20, 25]), min_size=1, max_size=4),
       st.sampled_from(["{bar} bar and {plates} each side", "{plates} on each end of a {bar} barbell", "a {bar} bar, {plates} per side"]))
def test_any_bar_and_plates_weigh_what_they_do_together(bar, unit, plates, form):
    text = form.format(bar=f"{bar} {unit[0]}", plates=" and ".join(f"{one:g}" for one in plates))
    assert loaded(text, pounds=False) == kilos(bar + 2 * sum(plates), unit[1])


def test_the_bars_are_those_that_are_asked_for():
    assert {"kg": SOURCES["bars_metric"].value, "lb": SOURCES["bars_imperial"].value} == USUAL_BARS
