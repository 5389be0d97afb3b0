"""The table of sources: read whole, refused where it is not, and its answer to "why?"."""

import re
import tomllib
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from companion.screening import sources
from companion.screening.readings import metric
from companion.screening.sources import LETTERS_MOST, SOURCES, WORDS_MOST, Source, counted, read_sources, value, why, with_numbers
from tests.table import each_row

WHOLE = """[load.share]
says = "At most {value} of it."
value = 80.0
unit = "%"
standing = "choice"
checked = 2026-11-28
"""


def imperial(number: float, unit: str) -> str:
    return f"{number / 2.54:.1f} in" if unit == "cm" else metric(number, unit)


@each_row("row, show", list(product(SOURCES.values(), (metric, imperial))))
def test_every_why_is_one_short_message_with_value_standing_and_source(row: Source, show) -> None:
    words = why(row, show)
    assert len(words.split()) <= WORDS_MOST
    assert len(words) <= LETTERS_MOST
    assert "{" not in words
    assert row.source in words
    assert row.against in words
    assert any(said in words for said in ("Published", "From memory", "Common practice", "Our own cautious choice"))


@each_row(("change", "what"), [
    (('standing = "choice"', 'standing = "read"'), "needs a source"),
    (('standing = "choice"', 'standing = "read"\nsource = "Somebody 2015 J Lifting"'), "page or table"),
    (('standing = "choice"', 'standing = "sure"'), "sure is no standing"),
    (("value = 80.0", "value = 80"), "decimal point"), (("value = 80.0", "value = []"), "decimal point"),
    (("checked = 2026-11-28", ""), "checked is missing"), (("checked = 2026-11-28", 'checked = "lately"'), "must be a date"),
    (('unit = "%"', 'unit = "%"\nwhim = 1'), "whim is no field"),
    (("At most", "At most " + "word " * 60), "70 words"),
    (("[load.share]", "[pain.share]\n" + WHOLE.partition("\n")[2] + "[load.share]"), "two of it"),
])
def test_a_row_that_is_not_whole_is_refused_by_name(change: tuple[str, str], what: str) -> None:
    assert value("load_share") == read_sources(WHOLE)["share"].value[0]
    with pytest.raises(ValueError, match=f"^share: .*{what}"):
        read_sources(WHOLE.replace(*change))


def test_no_two_files_have_a_row_of_one_name() -> None:
    files = Path(sources.__file__).parent.joinpath("numbers").glob("*.toml")
    assert sum(len(read_sources(file.read_text("utf-8"))) for file in files) == len(SOURCES)


def test_a_why_says_who_was_measured_how_and_what_speaks_against_it() -> None:
    words = why(SOURCES["lifters_ankle"])
    assert "more ankle range went with more rounding" in words
    assert "Measured: experienced lifters, not chosen for rounding, 18 people, motion sensors" in words
    assert "But: Small" in words


def test_a_rule_in_inches_is_told_in_its_own_inches() -> None:
    """Common practice: 4-5 in (10-12.5 cm)."""
    assert why(SOURCES["knee_to_wall_least"], imperial).startswith("4 in from toe to wall")
    assert why(SOURCES["knee_to_wall_enough"], imperial).startswith("5 in from toe to wall")
    assert why(SOURCES["knee_to_wall_enough"]).startswith("12.5 cm from toe to wall")


@pytest.mark.parametrize(("text", "told"), [
    ("{pinch_days:Count days} or more", "Two days or more"), ("{load_share_0} %", "80 %"), ("{order_holds:count weeks}", "eight weeks"),
    ("{drill_stop_0:count} to {drill_stop_1:count seconds}", "one to two seconds"), ("{drill_stop_0:count seconds}", "one second"),
    ("{warm_up_walk_1:count minutes}", "two minutes"), ("{warm_up_walk_0:Count more minutes}", "One more minute"),
    ("{prime_trial:count days}", "twelve days"), ("{rock_times:count times}, {hinge_times:count times}", "twice, three times"),
    ("{side}, {depth:cm}, {change_1_say}", "{side}, {depth:cm}, {change_1_say}")])
def test_a_text_takes_its_numbers_from_the_table_in_words(text: str, told: str) -> None:
    assert with_numbers(text) == told


@pytest.mark.parametrize("text", ["{no_row:count}", "{no_row_0}", "{drill_stop_2:count}"])
def test_a_text_that_names_no_number_of_the_table_is_refused(text: str) -> None:
    with pytest.raises((KeyError, IndexError)):
        with_numbers(text)


@pytest.mark.parametrize(("number", "told"), [(1, "once"), (2, "twice"), (3, "three times"), (13, "13 times"), (2.4, "2.4 times")])
def test_a_number_without_a_word_is_told_in_digits(number: float, told: str) -> None:
    assert counted(number, "times") == told


# what the sources print, quoted in expected.toml: equality with the table, which kills no mutant --------------------


EXPECTED = tomllib.loads((Path(__file__).parent / "expected.toml").read_text("utf-8"))
WORDS = {"one": 1, "two": 2, "three": 3, "six": 6}


@each_row("printed", EXPECTED["printed"], ids=lambda one: one["row"])
def test_the_table_has_what_is_printed_or_says_why_not(printed: dict[str, Any]) -> None:
    """Each figure stands in its quotation, or in what was reckoned from it by hand; where ours is another, "why?" tells a reader more."""
    read = f"{printed['printed']} {printed.get('hand', '')}"
    quoted = [float(number) for number in re.findall(r"\d*\.?\d+", read.replace(",", ""))] + [WORDS[one] for one in WORDS if one in read]
    assert all(pytest.approx(number) in quoted for number in printed["value"])
    row = SOURCES[printed["row"]]
    assert list(row.value) == printed.get("ours", printed["value"])
    assert "ours" not in printed or (row.against and printed["because"] and printed["ours"] != printed["value"])


@each_row("absent", EXPECTED["absent"], ids=lambda one: one["row"])
def test_what_the_documents_do_not_have_is_not_called_published(absent: dict[str, str]) -> None:
    assert SOURCES[absent["row"]].standing in ("memory", "common practice", "choice"), absent["why"]


def test_every_row_that_is_no_choice_of_ours_was_looked_for_in_the_documents() -> None:
    looked_for = {one["row"] for one in (*EXPECTED["printed"], *EXPECTED["absent"])}
    assert {name for name, row in SOURCES.items() if row.standing != "choice"} - looked_for == set()


@pytest.mark.parametrize(("name", "where"), [
    ("lifters_ankle", "10.26603/001c.122637"), ("gain_calf", "Br J Sports Med 40:870"), ("gain_hamstrings", "32:438"),
    ("depth_explained_men", "45:59"), ("mdc", "19:231"), ("phone_level_icc", "9:e11977"), ("pain_detectable", "10.1055/a-1304-3677")])
def test_a_source_names_its_page(name: str, where: str) -> None:
    assert where in SOURCES[name].source


def test_what_contradicts_the_calf_gain_is_told() -> None:
    """Foot (Edinb) 2018 35:28, 20 trials: +5.17 (4.39-5.95), seen in a summary only."""
    assert all(part in SOURCES["gain_calf"].against for part in ("35:28", "5.17", "4.39–5.95", "summary"))
