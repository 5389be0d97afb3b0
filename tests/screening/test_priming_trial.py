"""The priming trial: its lot, its pairs, its p against scipy, and its three answers."""

from __future__ import annotations

from collections import Counter
from itertools import product
from math import ceil
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import permutation_test

from companion.screening.priming_trial import TrialDay, arm_of, randomisation_p, smallest_p, verdict_of

PAIRS = 6
"""As the tables of numbers have it, typed here: a choice."""

SEED = "lifter 7"


def days(primed: list[float], plain: list[float], seed: str = SEED, **more: Any) -> list[TrialDay]:
    """Pairs of days in their drawn order, with the movement felt on primed and plain days."""
    how = {"kept": True, "depth": "parallel", "load": 80.0} | more
    taken = []
    for block, (on, off) in enumerate(zip(primed, plain, strict=True)):
        for index in (2 * block, 2 * block + 1):
            taken.append(TrialDay(index, on if arm_of(seed, index) == "prime" else off, **how))
    return taken


@given(st.text(max_size=20), st.integers(0, 10_000))
def test_a_block_of_two_holds_one_of_each(seed: str, block: int) -> None:
    assert {arm_of(seed, 2 * block), arm_of(seed, 2 * block + 1)} == {"prime", "plain"}


@given(st.text(max_size=20), st.integers(0, 10_000))
def test_the_lot_is_the_same_whenever_it_is_asked(seed: str, index: int) -> None:
    assert arm_of(seed, index) == arm_of(seed, index)


def test_the_lot_does_not_change_between_releases() -> None:
    """A kept seed must give the same days for as long as the trial runs."""
    assert [arm_of("kept", index) for index in range(0, 12, 2)] == ["prime", "plain", "plain", "plain", "plain", "plain"]


def test_either_order_comes_about_as_often() -> None:
    first = Counter(arm_of(f"seed {n}", 2 * block) for n in range(40) for block in range(50))
    assert abs(first["prime"] - 1000) < 4 * (2000 * 0.25) ** 0.5


def test_days_are_counted_from_0() -> None:
    with pytest.raises(ValueError, match="from 0"):
        arm_of(SEED, -1)


DIFFERENCES = st.lists(st.integers(-10, 10).map(float), min_size=1, max_size=9)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.integers(-10, 10).map(float), min_size=2, max_size=9))
def test_p_is_that_of_scipys_exact_test(differences: list[float]) -> None:
    """scipy.stats.permutation_test, paired samples, every sign flip, on random data."""
    def far(x: Any, y: Any, axis: int) -> Any:
        return abs(np.mean(x - y, axis=axis))

    found = permutation_test((np.array(differences), np.zeros(len(differences))), far, permutation_type="samples",
                             vectorized=True, n_resamples=np.inf, alternative="greater")
    assert randomisation_p(differences) == pytest.approx(found.pvalue)


@given(st.lists(st.floats(-10, 10), min_size=1, max_size=8))
def test_p_is_the_share_of_all_orders_of_the_blocks(differences: list[float]) -> None:
    """By plain counting, whole numbers or not."""
    seen = abs(sum(differences))
    sums = [abs(sum(sign * d for sign, d in zip(signs, differences, strict=True)))
            for signs in product((1, -1), repeat=len(differences))]
    low, high = (sum(total >= seen + off for total in sums) / len(sums) for off in (1e-6, -1e-6))
    assert low <= randomisation_p(differences) <= high


@pytest.mark.parametrize(("pairs", "least"), [(1, 1.0), (4, 0.125), (6, 0.03125), (8, 2 / 256)])
def test_four_pairs_cannot_go_below_an_eighth_and_six_can(pairs: int, least: float) -> None:
    assert smallest_p([2.0] * pairs) == least == randomisation_p([2.0] * pairs)
    assert smallest_p([-2.0] * pairs) == least


@given(DIFFERENCES)
def test_p_is_never_below_the_smallest_it_could_have_shown(differences: list[float]) -> None:
    assert smallest_p(differences) <= randomisation_p(differences) <= 1
    nonzero = sum(d != 0 for d in differences)
    assert smallest_p(differences) == pytest.approx(2 / 2**nonzero if nonzero else 1.0)


def test_no_pair_no_p() -> None:
    with pytest.raises(ValueError, match="no pair"):
        randomisation_p([])


def test_many_pairs_are_counted_exactly_and_at_once() -> None:
    assert randomisation_p([1.0] * 60) == 2 / 2**60


@pytest.mark.parametrize("seed", ["a", "b", "c"])
def test_six_pairs_all_better_help(seed: str) -> None:
    seen = verdict_of(seed, days([3] * 6, [6, 5, 7, 6, 5, 6], seed))
    assert (seen.kind, seen.pairs, seen.p, seen.smallest) == ("helps", 6, 0.03125, 0.03125)
    assert seen.difference == pytest.approx(17 / 6)
    assert seen.words == ("The drill helps you, as far as this shows: 2.8 points less movement on primed days "
                          "(6 pairs, p 0.031, at best 0.031).")


def test_five_pairs_can_not_tell_however_clear() -> None:
    seen = verdict_of(SEED, days([0] * 5, [9] * 5))
    assert (seen.kind, seen.words) == (
        "cannot_tell", "Can't tell yet: 5 of 6 pairs of days so far, each pair at the same depth and load.")
    assert PAIRS == 6
    none = verdict_of(SEED, [])
    assert (none.kind, none.pairs, none.p) == ("cannot_tell", 0, None)


@pytest.mark.parametrize(("primed", "plain", "kind"), [
    ([4] * 6, [4] * 6, "no_sign"), ([6] * 6, [3] * 6, "no_sign"), ([4, 5, 4, 5, 4, 5], [5, 4, 5, 4, 5, 4], "no_sign"),
    ([2, 3, 2, 3, 2, 9], [6, 6, 6, 6, 6, 3], "cannot_tell")])
def test_no_sign_and_cant_tell(primed: list[float], plain: list[float], kind: str) -> None:
    seen = verdict_of(SEED, days(primed, plain))
    assert seen.kind == kind
    assert seen.words.startswith({"no_sign": "No sign that the drill helps you", "cannot_tell": "Can't tell yet"}[kind])


def test_less_movement_at_less_depth_is_no_help() -> None:
    taken = [TrialDay(day.index, day.felt, arm_of(SEED, day.index) == "plain", "parallel", 80)
             for day in days([3] * 6, [6] * 6)]
    seen = verdict_of(SEED, taken)
    assert seen.kind == "cannot_tell"
    assert "depth was kept less often" in seen.words


@pytest.mark.parametrize("other", [{"depth": "below"}, {"load": 85.0}])
def test_days_at_another_depth_or_load_are_no_pair(other: dict[str, Any]) -> None:
    taken = days([3] * 7, [6] * 7)
    changed = TrialDay(**{"index": 13, "felt": taken[13].felt, "kept": True, "depth": "parallel", "load": 80.0, **other})
    seen = verdict_of(SEED, [*taken[:13], changed])
    assert (seen.pairs, seen.left_out) == (6, 1)


def test_half_a_block_is_no_pair() -> None:
    seen = verdict_of(SEED, days([3] * 7, [6] * 7)[:13])
    assert (seen.pairs, seen.left_out) == (6, 1)


@given(st.permutations(days([3, 4, 2, 5, 3, 4], [6, 5, 7, 5, 6, 6])))
def test_the_order_in_which_days_are_told_does_not_matter(mixed: list[TrialDay]) -> None:
    assert verdict_of(SEED, mixed) == verdict_of(SEED, days([3, 4, 2, 5, 3, 4], [6, 5, 7, 5, 6, 6]))


@pytest.mark.parametrize(("bad", "why"), [([TrialDay(0, 3, True, "", 0)] * 2, "twice"), ([TrialDay(0, 11, True, "", 0)], "0 to 10")])
def test_a_day_told_twice_or_off_the_scale_is_refused(bad: list[TrialDay], why: str) -> None:
    with pytest.raises(ValueError, match=why):
        verdict_of(SEED, bad)


@given(st.lists(st.tuples(st.integers(0, 10), st.integers(0, 10)), min_size=6, max_size=10))
def test_helps_needs_a_small_p_and_less_movement_and_words_fit(felt: list[tuple[int, int]]) -> None:
    seen = verdict_of(SEED, days([float(on) for on, _ in felt], [float(off) for _, off in felt]))
    assert (seen.kind == "helps") <= (seen.p is not None and seen.p <= 0.05 and (seen.difference or 0) > 0)
    assert len(seen.words) <= 160


def test_where_nothing_works_it_is_said_to_help_one_time_in_forty_at_most() -> None:
    """All 2^6 orders of six fixed pairs: at most 2.5 % of them are called a help."""
    sizes = [1.0, 2.0, 3.0, 2.0, 1.0, 4.0]
    called = 0
    for signs in product((1, -1), repeat=6):
        plain = [5 + sign * size for sign, size in zip(signs, sizes, strict=True)]
        called += verdict_of(SEED, days([5.0] * 6, plain)).kind == "helps"
    assert called <= ceil(0.025 * 64) - 1


@pytest.mark.parametrize(("helped", "p", "kind"), [
    ([1, -2, 3, 4, 5, 6, 7], 6 / 128, "helps"), ([1, 2, 3, -4, 5, 6, 7, 8], 14 / 256, "cannot_tell"),
    ([3, 3, 3, 3, -3, 0], 12 / 32, "cannot_tell"), ([2, 2, 2, 2, -2, -1], None, "no_sign")])
def test_chance_must_be_under_one_in_twenty_and_a_help_a_point_or_more(helped: list[int], p: float | None, kind: str) -> None:
    """The usual level. Of 7 pairs 3 orders sum to as much (2 or less turned round) and as many to as little, of 8 pairs 7 (4 or less).
    Means of 1.5 and 0.8 points, which may be chance: only the first may yet be a help (choice)."""
    primed, plain = ([2.0 + max(way * one, 0) for one in helped] for way in (-1, 1))
    told = verdict_of(SEED, days(primed, plain))
    assert told.kind == kind
    assert p is None or told.p == pytest.approx(p)


def test_a_mean_of_just_a_point_may_yet_be_a_help() -> None:
    """A point (choice): 3, 3, 3, -1, -1 and -1 come to exactly one."""
    helped = [3, 3, 3, -1, -1, -1]
    primed, plain = ([2.0 + max(way * one, 0) for one in helped] for way in (-1, 1))
    assert verdict_of(SEED, days(primed, plain)).kind == "cannot_tell"


@pytest.mark.parametrize(("less", "kind"), [(0.9, "no_sign"), (1.0, "helps")])
def test_a_help_of_less_than_a_point_is_none_however_unlikely_by_chance(less: float, kind: str) -> None:
    """Six pairs one way: 2 of 64 orders."""
    told = verdict_of(SEED, days([4.0] * 6, [4 + less] * 6))
    assert (told.kind, told.p) == (kind, 2 / 64)
