"""Conditions: an algebra on facts of which any may be missing."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.conversation.condition import ALWAYS, Compare, Condition, Every, Fact, Some, Unless, fact
from companion.verify.cases import FALSE, TRUE, Cases
from companion.verify.proof import undecided

NEVER = Some(())
NAMES = ("a", "b", "c")
BOUNDS = (-1.0, 0.0, 1.9, 2.0, 10.0)
VALUES = ("x", "y", "z")

compares = st.one_of(
    st.builds(Compare, st.sampled_from(NAMES), st.sampled_from(("<", "<=", ">", ">=")), st.sampled_from(BOUNDS)),
    st.builds(Compare, st.sampled_from(NAMES), st.just("in"), st.lists(st.sampled_from(VALUES), max_size=3).map(tuple)),
    st.builds(Compare, st.sampled_from(NAMES), st.just("known")))
conditions = st.recursive(compares, lambda inner: st.one_of(
    st.builds(Every, st.lists(inner, max_size=3).map(tuple)), st.builds(Some, st.lists(inner, max_size=3).map(tuple)),
    st.builds(Unless, inner)), max_leaves=8)
values = st.one_of(st.sampled_from(VALUES), st.sampled_from(BOUNDS), st.floats(-20, 20, allow_nan=False))
facts = st.dictionaries(st.sampled_from(NAMES), values)
domains = st.fixed_dictionaries({name: st.frozensets(st.one_of(st.none(), values), min_size=1, max_size=4) for name in NAMES})


@given(conditions, facts)
def test_a_condition_always_says_yes_or_no_and_never_raises(one, there):
    assert isinstance(one.holds(there), bool)


@given(conditions, conditions, facts)
def test_not_both_is_one_of_them_not(one, other, there):
    assert (~(one & other)).holds(there) == (~one | ~other).holds(there)
    assert (~(one | other)).holds(there) == (~one & ~other).holds(there)


@given(conditions, conditions, conditions, facts)
def test_and_spreads_over_or(one, other, third, there):
    assert (one & (other | third)).holds(there) == (one & other | one & third).holds(there)


@given(conditions, facts)
def test_not_not_is_itself_and_either_it_or_its_opposite_holds(one, there):
    assert (~~one).holds(there) == one.holds(there)
    assert one.holds(there) != (~one).holds(there)


@given(conditions, facts)
def test_always_and_never_are_neutral(one, there):
    assert (one & ALWAYS).holds(there) == (one | NEVER).holds(there) == one.holds(there)
    assert ALWAYS.holds(there)
    assert not NEVER.holds(there)


@given(compares)
def test_a_comparison_with_a_missing_fact_is_false(one):
    assert not one.holds({})
    assert Unless(one).holds({})


@given(conditions, facts)
def test_only_the_facts_it_compares_matter(one, there):
    named = {compare.fact for compare in one.compares()}
    assert one.holds(there) == one.holds({name: value for name, value in there.items() if name in named})


@given(st.sampled_from(BOUNDS), st.floats(-20, 20, allow_nan=False))
def test_under_a_bound_and_from_it_on_share_the_numbers_between_them(bound, value):
    a, there = fact("a"), {"a": value}
    assert (a < bound).holds(there) != (a >= bound).holds(there)
    assert (a <= bound).holds(there) != (a > bound).holds(there)


def test_words_are_never_more_or_less_than_a_number():
    assert not any(one.holds({"a": "x"}) for one in (fact("a") < 1, fact("a") > 1, fact("a") <= 1, fact("a") >= 1))


def test_a_condition_reads_as_words():
    one = fact("depth").one_of("parallel", "below") & ~(fact("apart") >= 1.9) & (fact("pain") < 3.0) & fact("load").known
    assert str(one) == "depth is parallel or below and not (apart >= 1.9) and pain < 3 and load is known"
    assert (str(ALWAYS), str(fact("a").known | fact("b").known)) == ("always", "(a is known or b is known)")


def test_a_fact_that_is_worked_out_is_missing_where_what_it_needs_is():
    apart = Fact("apart", of=lambda got, side: abs(float(got["one"]) - float(got["two"])))
    assert apart.work_out({"one": 10.0, "two": 12.5}) == 2.5
    assert apart.work_out({"one": 10.0}) is None
    assert fact("one").work_out({"one": 3.0}) == 3.0


def test_what_is_no_condition_says_so():
    with pytest.raises(TypeError, match="not a condition"):
        Condition().holds({})
    with pytest.raises(TypeError, match="not a condition"):
        Cases({}).of(Condition())
    assert list(Condition().compares()) == []


# the proof's own algebra, against every single choice of values ---------------------------------------------------


def every_choice(sets):
    for chosen in product(*(sets[name] for name in NAMES)):
        yield {name: value for name, value in zip(NAMES, chosen, strict=True) if value is not None}


def cases_of(*several):
    return Cases({name: [compare for one in several for compare in one.compares() if compare.fact == name] for name in NAMES})


@given(conditions, domains)
def test_over_sets_of_values_a_diagram_says_what_every_choice_says(one, sets):
    cases = cases_of(one)
    results = {one.holds(choice) for choice in every_choice(sets)}
    assert cases.can(cases.of(one), cases.masks(sets)) == (True in results)
    assert cases.can(cases.denied(cases.of(one)), cases.masks(sets)) == (False in results)


@given(conditions, conditions, domains)
def test_a_diagram_is_narrowed_to_the_values_with_which_it_can_hold(one, other, sets):
    cases = cases_of(one, other)
    both = [choice for choice in every_choice(sets) if one.holds(choice) and other.holds(choice)]
    narrowed = cases.narrowed(cases.both(cases.of(one), cases.of(other)), sets)
    assert narrowed == ({name: frozenset(choice.get(name) for choice in both) for name in NAMES} if both else None)


@given(conditions, domains)
def test_a_model_is_made_of_the_values_and_holds_throughout(one, sets):
    cases = cases_of(one)
    found = cases.model(cases.of(one), sets)
    assert (found is None) == (not any(one.holds(choice) for choice in every_choice(sets)))
    if found is not None:
        assert all(found[name] <= sets[name] for name in NAMES)
        assert all(one.holds(choice) for choice in every_choice(found))


@given(conditions)
def test_what_means_the_same_is_one_diagram(one):
    cases = cases_of(one)
    assert cases.of(~~one) == cases.of(one) == cases.both(cases.of(one), cases.of(one))
    assert cases.of(one | ~one) == TRUE
    assert cases.of(one & ~one) == FALSE


@given(st.lists(conditions, min_size=1, max_size=4), domains)
def test_undecided_finds_what_trying_everything_finds(several, sets):
    exactly_one = all(sum(one.holds(choice) for one in several) == 1 for choice in every_choice(sets))
    bad = undecided(cases_of(*several), several, sets)
    assert (bad is None) == exactly_one
    if bad is not None:
        assert all(sum(one.holds(choice) for one in several) != 1 for choice in every_choice(bad))
