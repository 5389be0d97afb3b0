"""Numbers and units in what people type, against pint."""

from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.language.quantities import height, quantities, spelt
from tests.table import each_row

UNITS: Any = pint.get_application_registry()
ONES = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen",
        "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"]
TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


def in_words(number: int) -> str:
    """Return a number up to 999 as it is written out."""
    if number < 20:
        return ONES[number]
    if number < 100:
        return TENS[number // 10 - 2] + (f"-{ONES[number % 10]}" if number % 10 else "")
    rest = f" and {in_words(number % 100)}" if number % 100 else ""
    return f"{ONES[number // 100]} hundred{rest}"


def one(text: str) -> tuple[float, str]:
    """Return the only quantity of a text that does not count something else."""
    found = [quantity for quantity in quantities(text) if not quantity.counts]
    assert len(found) == 1, found
    return round(found[0].value, 2), found[0].unit


@given(st.integers(0, 999), st.sampled_from(["{}", "{} kg", "about {}", "{} i think", "it was {} this time", "{}ish"]))
def test_a_number_in_words_is_the_number(number, around):
    assert one(around.format(in_words(number)))[0] == one(around.format(number))[0] == number


@given(st.integers(1, 60), st.sampled_from([("half", Fraction(1, 2)), ("quarter", Fraction(1, 4)), ("third", Fraction(1, 3))]),
       st.sampled_from(["{} and a {}", "{} and {}", "{} n a {}"]))
def test_a_number_and_a_part_are_added(number, part, form):
    assert one(form.format(in_words(number), part[0]))[0] == pytest.approx(number + float(part[1]), abs=0.006)


@given(st.floats(0.1, 300).map(lambda number: round(number, 1)), st.sampled_from([
    ("cm", "cm"), ("mm", "mm"), ("centimetres", "cm"), ("inches", "inch"), ("in", "inch"), ('"', "inch"), ("feet", "foot"), ("kg", "kg"),
    ("kilos", "kg"), ("lbs", "pound"), ("pounds", "pound"), ("stone", "stone"), ("°", "degree"), ("degrees", "degree"), ("secs", "second"),
    ("mins", "minute")]), st.booleans())
def test_a_typed_unit_is_converted_as_pint_does(number, units, apart):
    value, unit = one(f"{number}{' ' if apart else ''}{units[0]}")
    kept = {"deg": "degree", "s": "second"}.get(unit, unit)
    assert value == pytest.approx(UNITS.Quantity(number, units[1]).to(kept).magnitude, abs=0.006)


@given(st.integers(4, 25), st.integers(0, 13), st.sampled_from(["{} stone {}", "{}st {}lb", "{} st {}", "{} stone {} lbs"]))
def test_stones_and_pounds_are_one_weight(stones, pounds, form):
    weight = UNITS.Quantity(stones, "stone") + UNITS.Quantity(pounds, "pound")
    assert one(form.format(stones, pounds)) == (pytest.approx(weight.to("kg").magnitude, abs=0.006), "kg")


@given(st.integers(4, 7), st.integers(0, 11), st.sampled_from([
    "{}'{}", "{}'{}\"", "{} ft {}", "{}ft{}", "{} foot {}", "{} feet {} inches"]))
def test_feet_and_inches_are_one_height(feet, inches, form):
    tall = UNITS.Quantity(feet, "foot") + UNITS.Quantity(inches, "inch")
    assert one(form.format(feet, inches)) == (pytest.approx(tall.to("cm").magnitude, abs=0.006), "cm")


@given(st.integers(50, 99), st.sampled_from(["1m{}", "1 m {}", "1.{} m", "1,{}m", "1 metre {}"]))
def test_metres_and_centimetres_are_one_height(rest, form):
    assert one(form.format(rest)) == (100 + rest, "cm")


@pytest.mark.parametrize(("text", "tall"), [("five eleven", 180.34), ("6 2", 187.96), ("1.78", 178), ("1,8", 180), ("84", None)])
def test_a_height_without_its_units_is_told_by_its_shape(text, tall):
    assert height(text) == tall


@each_row(("text", "load"), [
    ("3x5 at 110", 110), ("3 sets of 5 at 110", 110), ("100kg for 5x5", 100), ("3 by 8 with 80", 80), ("185 lbs for fives", 83.91),
    ("one fifty five pounds 4x6", 70.31), ("120x3", 120), ("two plates a side so 225", 225)])
def test_sets_and_repetitions_are_not_the_load(text, load):
    assert one(text)[0] == load


@pytest.mark.parametrize("text", ["the other one", "one more", "this one went", "1st go", "broke it in 2014", "1/0"])
def test_what_only_looks_like_a_number_is_none(text):
    assert not [quantity for quantity in quantities(text) if not quantity.counts]


@given(st.text(max_size=200))
def test_reading_never_raises_and_reads_what_it_spells(text):
    assert len(quantities(text)) <= len(text)
    assert spelt(spelt(text)) == spelt(spelt(spelt(text)))


@given(st.integers(2, 99), st.sampled_from([("inches", "inch"), ("cm", "cm"), ("mm", "mm"), ("pounds", "pound"), ("kilos", "kg")]),
       st.sampled_from(["{}, {}", "{} and nothing, {}", "{} of the {}", "{} in {}", "{}, in {}", "{}, measured in {}", "in {} its {}"]))
def test_a_unit_apart_from_its_number_is_its_unit(number, units, form):
    words = (units[0], in_words(number)) if form.startswith("in ") else (in_words(number), units[0])
    value, unit = one(form.format(*words))
    assert value == pytest.approx(UNITS.Quantity(number, units[1]).to(unit).magnitude, abs=0.006)


@each_row(("text", "value", "unit"), [
    ("three and three quarters, inches", 9.53, "cm"), ("one five five pounds", 70.31, "kg"),
    ("seventy nine and five millimetres", 79.5, "cm"), ("79 cm and 5 mm", 79.5, "cm"), ("eleven comma five", 11.5, ""),
    ("eleven dot two", 11.2, ""), ("sixty ate", 68, ""),
    ("sixty for", 64, ""), ("sevn secs", 7, "s"), ("fiev degrees", 5, "deg"), ("cuatro segundos", 4, "s"),
    ("the upper one forty four", 44, ""),
    ("one forty four", 144, ""), ("sixty for the left", 60, ""), ("sixty too", 60, ""), ("9, a few inches less", 9, ""),
    ("8, seconds later i fell", 8, ""), ("11, feet flat", 11, ""), ("12 in the mirror", 12, ""), ("eighty kg", 80, "kg")])
def test_other_ways_to_say_a_number_and_its_unit(text, value, unit):
    assert one(text) == (value, unit)


@pytest.mark.parametrize("text", ["fine seconds", "none, inches off", "there inches away", "i ate", "for degrees", "the to-dos", "trois"])
def test_what_only_sounds_like_a_number_is_none(text):
    assert not quantities(text)


@pytest.mark.parametrize(("text", "value"), [("sevnty two", 72), ("sixy five", 65), ("eigthy", 80)])
def test_a_ten_with_one_slip_is_a_ten(text, value):
    assert [one.value for one in quantities(text)] == [value]


@pytest.mark.parametrize("text", ["the fifth", "sixth go", "im thirsty"])
def test_a_word_near_a_ten_is_none(text):
    assert not [one for one in quantities(text) if one.value in (30, 50, 60)]
