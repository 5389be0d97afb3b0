"""Reading answers: numbers with units, choices, pain scores, time zones."""

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.conversation.kinds import Answer, ReadingContext, Unclear, YesNo, Zone, choice
from companion.conversation.number_kinds import Number, PainScore
from companion.language.units import IMPERIAL, METRIC, shown, to_kept
from tests.table import each_row

CM = Number("cm", 0, 250, usual=(0, 250), example_value=11)
KG = Number("kg", 0, 500, usual=(0, 500), example_value=80)
EARS, INCHES = ReadingContext(METRIC), ReadingContext(IMPERIAL)
NOON = datetime(2026, 7, 1, 12, 0, tzinfo=UTC)


def value(read: Answer | Unclear) -> float | str | None:
    return read.value if isinstance(read, Answer) else None


@each_row(("text", "kept"), [
    ("11", 11), ("11.5", 11.5), ("11,5", 11.5), ("11 cm", 11), ("11cm.", 11), ("about 11", 11), ("~11", 11), ("It is 11", 11),
    ("five", 5), ("110 mm", 11), ("4 in", 10.16), ("4 1/2 inches", 11.43), ("4½ in", 11.43), ("1.8 m", 180),
    ("5ft 10", 177.8), ("5' 10\"", 177.8), ("5'10", 177.8), ("6 feet", 182.88), ("1/2", 0.5), ("٣", 3)])
def test_a_number_is_read_with_the_unit_it_has(text, kept):
    """1 in = 2.54 cm and 1 ft = 30.48 cm exactly: international yard and pound agreement, 1959."""
    assert value(CM.read(text, EARS)) == pytest.approx(kept)


@each_row("text", ["lots", "12 to 14", "12-14", "-3", "900 cm", "11 kg", "11 12", "eleven or so twelve", "",
                                  "12?13", "5ft 10 11", "1/0", "∞", "1e5", "11 cm 3"])
def test_what_is_not_one_number_is_asked_again(text):
    assert isinstance(CM.read(text, EARS), Unclear)


def test_a_bare_number_is_in_the_lifters_own_system():
    """1 lb = 0.45359237 kg exactly: international yard and pound agreement, 1959."""
    assert value(KG.read("100", INCHES)) == pytest.approx(45.36)
    assert value(KG.read("100 kg", INCHES)) == 100


@given(st.floats(0, 100), st.sampled_from([METRIC, IMPERIAL]))
def test_what_is_shown_is_read_back_within_its_own_rounding(number, system):
    text = shown(number, "cm", system)
    assert value(CM.read(text, ReadingContext(system))) == pytest.approx(number, abs=0.15)


@given(st.text(max_size=300))
def test_reading_never_raises_and_stays_in_range(text):
    for kind in (CM, KG, PainScore(), YesNo(unsure=True), choice(("a", "Apple"), ("b", "Pear"))):
        read = kind.read(text, EARS)
        assert isinstance(read, Answer | Unclear)
        if kind is CM and isinstance(read, Answer):
            assert 0 <= float(read.value) <= 250


def test_kept_and_shown_agree():
    assert to_kept(10, "cm", IMPERIAL) == pytest.approx(25.4)
    assert shown(25.4, "cm", IMPERIAL) == "10 in"
    assert shown(72, "deg", IMPERIAL) == "72°"


FRUIT = choice(("left_behind", "Left behind", "behind"), ("in_front", "In front", "front", "before"), ("none", "Neither"))


@pytest.mark.parametrize(("text", "picked"), [
    ("Left behind", "left_behind"), ("left behind.", "left_behind"), ("BEHIND", "left_behind"), ("in frnt", "in_front"),
    ("it was in front", "in_front"), ("neither", "none"), ("nether", "none")])
def test_a_choice_is_read_from_its_words_and_near_misses(text, picked):
    assert value(FRUIT.read(text, EARS)) == picked


@pytest.mark.parametrize("text", ["not in front", "in front or behind", "no", "xyz", "fro", "front behind neither"])
def test_a_choice_is_not_guessed(text):
    assert isinstance(FRUIT.read(text, EARS), Unclear)


def test_where_safety_is_asked_about_no_near_miss_counts():
    strict = ReadingContext(METRIC, strict=True)
    assert isinstance(FRUIT.read("in frnt", strict), Unclear)
    assert isinstance(YesNo().read("yess", strict), Unclear)
    assert isinstance(YesNo().read("no stop", strict), Unclear)
    assert value(YesNo().read("Yes", strict)) == "yes"


@pytest.mark.parametrize(("text", "score"), [("0", 0), ("7", 7), ("7/10", 7), ("7 out of 10", 7), ("ten", 10), ("none", 0)])
def test_pain_is_a_whole_number_from_0_to_10(text, score):
    assert value(PainScore().read(text, EARS)) == score


@pytest.mark.parametrize("text", ["11", "-1", "3.5", "a bit", "3 or 4", "7/5"])
def test_what_is_no_pain_score_is_asked_again(text):
    assert isinstance(PainScore().read(text, EARS), Unclear)


@each_row(("text", "zone"), [
    ("Lisbon", "Europe/Lisbon"), ("lisboa", "Europe/Lisbon"), ("Porto", "Europe/Lisbon"), ("São Paulo", "America/Sao_Paulo"),
    ("sao paulo", "America/Sao_Paulo"), ("New York", "America/New_York"), ("Manchester", "Europe/London"),
    ("manchestr", "Europe/London"), ("Sydney", "Australia/Sydney"), ("I'm in Berlin", "Europe/Berlin"),
    ("Casablanca", "Africa/Casablanca"), ("UTC+1", "UTC+01:00"), ("gmt-3:30", "UTC-03:30"), ("+05:30", "UTC+05:30"),
    ("utc", "UTC+00:00"), ("13:00", "UTC+01:00"), ("it's 7:31 am here", "UTC-04:30"), ("1 pm", "UTC+01:00")])
def test_a_time_zone_is_found_by_city_offset_or_clock(text, zone):
    assert value(Zone().read(text, ReadingContext(METRIC, NOON))) == zone


@pytest.mark.parametrize("text", ["xqzzt", "UTC+25", "99:99", "", "x" * 5000, "13 pm"])
def test_a_place_nobody_knows_is_asked_again(text):
    assert isinstance(Zone().read(text, ReadingContext(METRIC, NOON)), Unclear)


@pytest.mark.parametrize(("text", "value"), [
    ("it's a 6 today", 6), ("about a 4", 4), ("maybe 3 out of 10", 3), ("7/10 right now", 7), ("a solid 5", 5), ("still 2 i think", 2),
    ("5", 5), ("no pain", 0), ("it's a 6 or 7", None), ("6 months", None), ("it was 12", None), ("today", None), ("about", None)])
def test_how_bad_it_is_is_read_with_what_is_said_around_the_number(text, value):
    assert getattr(PainScore().read(text, ReadingContext()), "value", None) == value
