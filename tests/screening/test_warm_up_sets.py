"""Warm-up sets: tables worked by hand in kg and lb, and what must hold for any bar and plates."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import chain, combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.screening.warm_up_sets import (
    BARS,
    PLATES,
    POUND,
    _best,
    _kilograms,
    _room,
    _sides,
    number,
    sets_for,
    side_words,
    words,
    working_words,
)

OWN_PAIRS = 4
"""As the tables of numbers have it, typed here: a choice."""

# Worked by hand: 40, 60 and 80 % of the working load, down to what can be put on in pairs.
BY_HAND_KG = {
    100: "20 kg × 8 (bar), 40 kg × 5 (10 a side), 60 kg × 3 (20 a side), 80 kg × 2 (25 + 5 a side)",
    142.5: "20 kg × 8 (bar), 55 kg × 5 (15 + 2.5 a side), 85 kg × 3 (25 + 5 + 2.5 a side), 112.5 kg × 2 (25 + 20 + 1.25 a side)",
    60: "20 kg × 8 (bar), 22.5 kg × 5 (1.25 a side), 35 kg × 3 (5 + 2.5 a side), 47.5 kg × 2 (10 + 2.5 + 1.25 a side)",
    30: "20 kg × 8 (bar), 22.5 kg × 2 (1.25 a side)",
    22.5: "20 kg × 8 (bar)",
    20: "",
}
BY_HAND_LB = {
    135: "45 lb × 8 (bar), 50 lb × 5 (2.5 a side), 80 lb × 3 (10 + 5 + 2.5 a side), 105 lb × 2 (25 + 5 a side)",
    225: "45 lb × 8 (bar), 90 lb × 5 (2×10 + 2.5 a side), 135 lb × 3 (45 a side), 180 lb × 2 (45 + 2×10 + 2.5 a side)",
    405: "45 lb × 8 (bar), 160 lb × 5 (45 + 10 + 2.5 a side), 240 lb × 3 (2×45 + 5 + 2.5 a side), 320 lb × 2 (3×45 + 2.5 a side)",
}


@pytest.mark.parametrize(("working", "told"), BY_HAND_KG.items())
def test_sets_in_kilograms_are_those_worked_by_hand(working: float, told: str) -> None:
    assert words(sets_for(working, 20), "metric").splitlines() == (told.split(", ") if told else [])


@pytest.mark.parametrize(("working", "told"), BY_HAND_LB.items())
def test_sets_in_pounds_are_those_worked_by_hand(working: float, told: str) -> None:
    sets = sets_for(working * POUND, 45 * POUND, system="imperial")
    assert words(sets, "imperial").splitlines() == told.split(", ")
    assert sets[-1].load / POUND == pytest.approx(working, abs=1e-9)


def test_the_working_load_stands_last_with_repetitions_of_the_lifters_own() -> None:
    last = sets_for(100, 20)[-1]
    assert (last.load, last.repetitions, last.side) == (100.0, 0, (25.0, 15.0))
    assert working_words(100, sets_for(100, 20), "metric") == "100 kg (25 + 15 a side)"


def test_a_working_load_that_can_not_be_made_is_rounded_down_and_said_so() -> None:
    assert working_words(81, sets_for(81, 20), "metric") == (
        "80 kg (25 + 5 a side): 81 kg can't be made with this bar and these plates")
    assert working_words(47 * POUND, sets_for(47 * POUND, 45 * POUND, system="imperial"), "imperial") == (
        "45 lb (bar): 47 lb can't be made with this bar and these plates")


def test_at_the_bar_there_is_only_the_bar_and_below_it_nothing() -> None:
    assert [(one.load, one.repetitions, one.side) for one in sets_for(20, 20)] == [(20.0, 0, ())]
    assert sets_for(19, 20) == () == sets_for(0, 20)
    assert words((), "metric") == ""
    assert working_words(15, (), "metric") == "15 kg is less than the bar: take a lighter bar, or body weight."


@pytest.mark.parametrize("bar", [15, 10])
def test_a_lighter_bar_is_where_it_begins(bar: float) -> None:
    sets = sets_for(40, bar)
    assert (sets[0].load, sets[0].side) == (bar, ())
    assert sets[-1].load == 40


def test_where_few_loads_come_out_the_last_before_the_work_is_still_a_double() -> None:
    assert words(sets_for(100, 20, (20,)), "metric") == "20 kg × 8 (bar)\n60 kg × 2 (20 a side)"


def test_without_plates_the_bar_is_all_there_is() -> None:
    assert [one.load for one in sets_for(60, 20, ())] == [20.0]


def loadable(most: float, plates: Sequence[float], pairs: int) -> tuple[float, tuple[float, ...]]:
    """The heaviest load of at most so many kg on a bar of 20, and its plates a side."""
    room = _room(most, 20, plates)
    return _kilograms(20, _best(_sides(room, plates, pairs), room))


def test_the_largest_plate_first_is_not_always_the_best() -> None:
    """25 a side from 20, 15 and 10: 15 + 10, where the largest first would leave 20 and 5 missing."""
    assert loadable(70, (20, 15, 10), pairs=1) == (70.0, (15.0, 10.0))


def test_few_plates_go_before_many() -> None:
    assert loadable(20 + 2 * 40, (25, 20, 10, 5), pairs=4) == (100.0, (20.0, 20.0))


def test_of_a_lifters_own_sizes_no_more_pairs_are_taken_to_be_there_than_the_working_load_needs() -> None:
    """95 kg needs 20 + 10 + 5 + 2.5: one pair of each, so no set may take two pairs of 10."""
    assert words(sets_for(95, 20, (20, 10, 5, 2.5)), "metric") == (
        "20 kg × 8 (bar)\n35 kg × 5 (5 + 2.5 a side)\n55 kg × 3 (10 + 5 + 2.5 a side)\n75 kg × 2 (20 + 5 + 2.5 a side)")
    assert sets_for(100, 20, (20, 10, 5, 2.5))[-1].side == (20.0, 20.0)


def test_plates_kept_in_rounded_kilograms_are_the_pounds_that_were_typed() -> None:
    own = [round(size * POUND, 4) for size in (45, 35, 10, 5, 2.5)]
    kept = float(f"{225 * POUND:g}")  # a load limit is kept with six figures: 102.058
    sets = sets_for(kept, 45 * POUND, own, "imperial")
    assert [round(one.load / POUND, 9) for one in sets] == [45, 80, 135, 170, 225]
    assert working_words(kept, sets, "imperial") == "225 lb (45 + 35 + 10 a side)"


def test_small_plates_are_written_exactly() -> None:
    assert (number(1.25, "metric"), number(22.5 * POUND, "imperial"), number(20, "metric")) == ("1.25", "22.5", "20")
    assert number(0.25 * POUND, "imperial") == "0.25"


def test_many_plates_are_told_by_their_sum() -> None:
    assert side_words((20, 10, 5, 2.5, 1.25), "metric") == "38.75 a side"


@pytest.mark.parametrize(("working", "bar", "plates"), [
    (float("nan"), 20, (5,)), (float("inf"), 20, (5,)), (60, 0, (5,)), (60, 20, (0,)), (60, 20, (-5,))])
def test_what_weighs_nothing_is_refused(working: float, bar: float, plates: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match="weigh something"):
        sets_for(working, bar, plates)


METRIC = st.sets(st.sampled_from([25, 20, 15, 10, 5, 2.5, 2, 1.25, 1, 0.5, 0.25, 7.3]), max_size=6).map(tuple)
IMPERIAL = st.sets(st.sampled_from([45, 35, 25, 10, 5, 2.5, 1.25]), max_size=6).map(lambda sizes: tuple(n * POUND for n in sizes))


@given(st.floats(0, 500), st.sampled_from([*BARS["metric"], *BARS["imperial"]]), st.none() | METRIC | IMPERIAL,
       st.sampled_from(["metric", "imperial"]))
def test_loads_rise_can_be_loaded_and_never_pass_the_working_load(working: float, bar: float, plates: tuple[float, ...] | None,
                                                                  system: str) -> None:
    sets = sets_for(working, bar, plates, system)
    assert bool(sets) == (working >= bar - 0.0005)
    allowed = {round(size, 6) for size in (PLATES[system] if plates is None else plates)}
    for one in sets:
        assert one.load == pytest.approx(bar + 2 * sum(one.side), abs=1e-6)
        assert one.load <= working + 0.0005 + 1e-9  # half a gram: what keeping a load can cost
        assert {round(size, 6) for size in one.side} <= allowed
        assert plates is None or max(Counter(one.side).values(), default=0) <= OWN_PAIRS
    loads, times = [one.load for one in sets], [one.repetitions for one in sets]
    assert loads == sorted(set(loads))
    assert times == sorted(set(times), reverse=True)
    assert times[-1:] in ([], [0])
    assert len(sets) <= 2 or times[-2] == 2
    assert all(one.load <= 0.8 * working + 0.001 for one in sets[1:-1])
    assert len(words(sets, system)) <= 250


@given(st.lists(st.sampled_from([25.0, 20.0, 10.0, 7.5, 5.0, 2.5, 1.25]), max_size=7), st.floats(20, 200))
def test_no_other_plates_come_nearer_nor_do_it_with_fewer(pairs: list[float], most: float) -> None:
    """Against every choice of the pairs, by plain counting."""
    found = loadable(most, pairs, pairs=1)
    choices = chain.from_iterable(combinations(pairs, count) for count in range(len(pairs) + 1))
    fits = [choice for choice in choices if 20 + 2 * sum(choice) <= most + 0.0005]
    nearest = max(sum(choice) for choice in fits)
    assert found[0] == 20 + 2 * nearest
    assert len(found[1]) == min(len(choice) for choice in fits if sum(choice) == nearest)
    assert not Counter(found[1]) - Counter(pairs)


@pytest.mark.parametrize(("system", "bar", "plates"), [
    ("metric", 20.0, (25, 20, 15, 10, 5, 2.5, 1.25)), ("imperial", 45 * POUND, tuple(size * POUND for size in (45, 35, 25, 10, 5, 2.5)))])
def test_a_usual_gym_has_a_pair_of_each_usual_plate(system: str, bar: float, plates: tuple[float, ...]) -> None:
    """Competition discs and a small one (memory); pounds are common practice. A load that is one pair is made of that pair."""
    for size in plates:
        assert sets_for(bar + 2 * size, bar, system=system)[-1].side == pytest.approx((size,))


def test_a_usual_gym_has_ten_pairs_of_a_plate_and_ones_own_four() -> None:
    """500 kg can be loaded in a gym (choice)."""
    assert sets_for(520.0, 20.0)[-1].load == 520
    assert sets_for(571.0, 20.0)[-1].side[:11] == (25.0,) * 10 + (20.0,)
    assert sets_for(520.0, 20.0, (25.0,))[-1].load == 220


def test_a_usual_gyms_bars_are_these() -> None:
    """20 and 15 kg of competition (memory), 45 and 35 lb common practice; no load is taken for less than its bar."""
    for system, unit, bars in (("metric", 1.0, (20, 15)), ("imperial", POUND, (45, 35))):
        for bar, wanted in zip(BARS[system], bars, strict=True):
            assert sets_for(wanted * unit, bar, system=system)[-1].load == pytest.approx(wanted * unit)
            assert sets_for(wanted * unit - 0.1, bar, system=system) == ()
