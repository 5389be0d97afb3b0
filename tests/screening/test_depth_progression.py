"""Depth steps: the machine's table, each rule by hand, and what must hold after any days."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import groupby, pairwise
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.screening.depth import Band
from companion.screening.depth_progression import (
    TABLE,
    DayOutcome,
    DepthDay,
    DepthStep,
    Load,
    steps_from,
    taken,
)
from tests.table import each_row

FILM_DAYS = 7
"""Its own day and the six after it: once a week (choice)."""
HIGH, MIDDLE, PARALLEL, BELOW = Band
FIRST = date(2026, 3, 2)
# c: clean, f: clean on film, m: moved, o: neither, h: clean but something hurt, b: moved and hurt; capital: checked before.
LETTERS = {"c": DepthDay(FIRST, "clean"), "f": DepthDay(FIRST, "clean", film=True), "m": DepthDay(FIRST, "moved"),
           "o": DepthDay(FIRST, "other"), "h": DepthDay(FIRST, "clean", hurt=True), "b": DepthDay(FIRST, "moved", hurt=True)}


def days(letters: str, apart: int = 2) -> list[DepthDay]:
    """Squat days from letters, some days apart."""
    return [DepthDay(FIRST + timedelta(days=apart * at), one.outcome, one.film, one.hurt, letter.isupper())
            for at, letter in enumerate(letters) for one in (LETTERS[letter.lower()],)]


def after(letters: str, start: Band = MIDDLE, usual: Band | None = BELOW, pin: Band | None = None) -> DepthStep:
    return steps_from(start, usual, days(letters), pin=pin)


LEADS = {
    ("open", "clean"): ("one_clean", 0), ("open", "moved"): ("open", -1), ("open", "other"): ("open", 0),
    ("open", "hurt"): ("closed", 0), ("open", "checked"): ("open", 0),
    ("one_clean", "clean"): ("one_clean", 0), ("one_clean", "moved"): ("open", -1), ("one_clean", "other"): ("open", 0),
    ("one_clean", "hurt"): ("closed", 0), ("one_clean", "checked"): ("one_clean", 0),
    ("closed", "clean"): ("closed", 0), ("closed", "moved"): ("closed", -1), ("closed", "other"): ("closed", 0),
    ("closed", "hurt"): ("closed", 0), ("closed", "checked"): ("open", 0),
}


@pytest.mark.parametrize("due", [False, True])
@pytest.mark.parametrize(("state", "trigger"), sorted(LEADS))
def test_every_trigger_leads_somewhere_in_every_state(state: str, trigger: str, due: bool) -> None:
    way = taken(state, trigger, due=due)
    expected = ("open", 1) if due and (state, trigger) == ("one_clean", "clean") else LEADS[state, trigger]
    assert (way.target, way.bands) == expected


def test_the_table_is_complete_and_no_two_rows_hold_at_once() -> None:
    assert {(way.source, way.trigger) for way in TABLE} == set(LEADS)
    assert {source for source, _ in LEADS} == {"open", "one_clean", "closed"}
    for _, rows in groupby(sorted(TABLE, key=lambda way: (way.source, way.trigger)), key=lambda way: (way.source, way.trigger)):
        assert {way.due for way in rows} in ({None}, {True, False})


@each_row(("letters", "depth", "streak", "change"), [
    ("", MIDDLE, 0, "same"), ("f", MIDDLE, 1, "same"), ("fc", PARALLEL, 0, "deeper"), ("cf", PARALLEL, 0, "deeper"),
    ("fcc", PARALLEL, 1, "same"), ("fcfc", BELOW, 0, "deeper"), ("fcm", MIDDLE, 0, "back"), ("m", HIGH, 0, "back"),
    ("fmf", HIGH, 1, "same"), ("fof", MIDDLE, 1, "same"), ("fo", MIDDLE, 0, "same"), ("mm", HIGH, 0, "same")])
def test_two_clean_days_in_a_row_lead_deeper_and_movement_leads_back(letters: str, depth: Band, streak: int, change: str) -> None:
    step = after(letters)
    assert (step.depth, step.streak, step.change, step.closed) == (depth, streak, change, False)


def test_without_film_a_step_waits_until_a_clean_day_on_film() -> None:
    waits = after("ccc")
    assert (waits.depth, waits.streak, waits.wants_film) == (MIDDLE, 1, True)
    assert waits.why == ("Back still again at a little above parallel. A step deeper waits for a day with a still back on film, "
                         "and there is none from the last 7 days.")
    assert after("cccf").depth is PARALLEL


def test_a_film_counts_for_a_week_and_only_at_the_depth_it_shows() -> None:
    for apart, depth in ((FILM_DAYS - 1, PARALLEL), (FILM_DAYS, MIDDLE)):
        assert steps_from(MIDDLE, BELOW, days("fc", apart)).depth is depth
    assert steps_from(HIGH, BELOW, days("fccc", 1)).depth is MIDDLE, "one film does not lead two steps deeper"


def test_film_of_a_day_that_moved_or_told_nothing_is_no_film_of_a_clean_day() -> None:
    for outcome in ("moved", "other"):
        told = [DepthDay(FIRST, outcome, film=True), *(DepthDay(FIRST + timedelta(days=n), "clean") for n in (1, 2))]
        assert steps_from(PARALLEL, BELOW, told).change == "same"


def test_film_is_wanted_only_where_it_would_lead_deeper() -> None:
    assert after("").wants_film
    assert not after("f").wants_film
    assert after("fc").wants_film, "a new depth wants a film of its own"
    assert not after("f", start=BELOW).wants_film, "at the usual depth"
    assert not after("h").wants_film, "closed"
    assert not after("c", usual=None).wants_film, "the usual depth is not known"
    assert steps_from(MIDDLE, BELOW, days("f"), today=FIRST + timedelta(days=FILM_DAYS)).wants_film, "a week ago"


def test_steps_end_at_the_usual_depth() -> None:
    step = after("fcfcf", usual=PARALLEL)
    assert (step.depth, step.streak) == (PARALLEL, 1)
    assert step.why == "Back still at parallel. That is your usual depth, and as deep as it goes here."
    assert after("", start=BELOW, usual=PARALLEL).depth is PARALLEL, "nor does it begin deeper"


def test_no_step_leads_deeper_while_the_usual_depth_is_not_known() -> None:
    step = after("ffff", usual=None)
    assert step.depth is MIDDLE
    assert "until you have said how deep you usually squat" in step.why


def test_movement_at_the_highest_step_stays_and_asks_for_somebody_to_look() -> None:
    step = after("m", start=HIGH)
    assert (step.depth, step.change) == (HIGH, "same")
    assert step.why == ("The back moved at well above parallel, the highest step. "
                        "Go lighter, and let your coach or a clinician look.")


def test_pain_closes_until_a_safety_check_and_days_before_it_count_for_nothing() -> None:
    assert after("fh").closed
    assert (after("hff").closed, after("hff").depth, after("hff").streak) == (True, MIDDLE, 0)
    assert (after("hF").closed, after("hF").streak) == (False, 1)
    assert after("fhFf").depth is PARALLEL
    assert after("fhF").depth is MIDDLE, "the clean day before the pain is forgotten"


def test_a_check_on_the_day_that_hurt_came_before_it_and_opens_nothing() -> None:
    assert after("H").closed
    hurt = days("h")
    assert steps_from(MIDDLE, BELOW, days("hf"), passed=[FIRST]).closed
    assert steps_from(MIDDLE, BELOW, hurt, passed=[FIRST], today=FIRST + timedelta(days=9)).closed
    opened = steps_from(MIDDLE, BELOW, hurt, passed=[FIRST, FIRST + timedelta(days=1)], today=FIRST + timedelta(days=1))
    assert not opened.closed
    assert opened.why == "The safety check passed, so loaded squats are open again: a little above parallel."
    assert steps_from(MIDDLE, BELOW, hurt, passed=[FIRST + timedelta(days=2)], today=FIRST + timedelta(days=1)).closed, "not yet"


@pytest.mark.parametrize(("on", "streak"), [(1, 1), (2, 1), (3, 0)])
def test_a_check_up_to_the_day_itself_opens_that_day(on: int, streak: int) -> None:
    """The second squat day is two days after the one that hurt; what is checked a day later still opens nothing for it."""
    assert steps_from(MIDDLE, BELOW, days("hf"), passed=[FIRST + timedelta(days=on)]).streak == streak


def test_movement_leads_back_also_where_it_hurt_and_while_closed() -> None:
    step = after("b", start=PARALLEL)
    assert (step.depth, step.change, step.closed) == (MIDDLE, "back", True)
    assert step.why == ("Something hurt, so no loaded squats before a safety check on another day. "
                        "The depth goes a step back, to a little above parallel.")
    assert (after("hm", start=PARALLEL).depth, after("hm", start=PARALLEL).closed) == (MIDDLE, True)


def test_two_sessions_on_one_date_are_one_day_and_its_worst_counts() -> None:
    twice = [DepthDay(FIRST, "clean", film=True), DepthDay(FIRST, "clean")]
    assert (steps_from(MIDDLE, BELOW, twice).depth, steps_from(MIDDLE, BELOW, twice).streak) == (MIDDLE, 1)
    assert steps_from(BELOW, BELOW, [DepthDay(FIRST, "moved"), DepthDay(FIRST, "moved")]).depth is PARALLEL
    assert steps_from(BELOW, BELOW, [DepthDay(FIRST, "moved"), DepthDay(FIRST, "clean", film=True)]).change == "back"
    assert steps_from(MIDDLE, BELOW, [DepthDay(FIRST, "clean"), DepthDay(FIRST, "other")]).streak == 0
    assert steps_from(MIDDLE, BELOW, [DepthDay(FIRST, "clean", hurt=True), DepthDay(FIRST, "clean")]).closed


def test_a_pin_is_where_it_begins_and_where_steps_end() -> None:
    assert after("", start=HIGH, pin=PARALLEL).depth is PARALLEL
    pinned = after("fcfc", start=BELOW, pin=MIDDLE)
    assert pinned.depth is MIDDLE
    assert pinned.why == "Back still at a little above parallel. That is as deep as your coach set."
    assert after("ff", usual=None, pin=PARALLEL).depth is PARALLEL
    assert after("f", usual=PARALLEL, pin=PARALLEL).why.endswith("That is as deep as your coach set."), "the coach's is the one to change"


def test_a_pin_is_no_floor() -> None:
    moved = after("m", pin=PARALLEL)
    assert (moved.depth, moved.why) == (MIDDLE,
        "The back moved, so the depth goes a step back, to a little above parallel. Film the next squat day, from the side.")
    assert after("mfc", pin=PARALLEL).depth is PARALLEL, "two clean days lead up to it again"
    assert after("mfcfc", pin=PARALLEL).depth is PARALLEL
    assert after("h", pin=PARALLEL).closed


def test_a_pin_past_the_usual_depth_ends_at_the_usual_depth() -> None:
    assert after("fcfc", usual=PARALLEL, pin=BELOW).depth is PARALLEL


def test_the_history_holds_the_depth_after_each_day() -> None:
    told = days("fcm")
    assert steps_from(MIDDLE, BELOW, told).history == tuple(zip((d.day for d in told), (MIDDLE, PARALLEL, MIDDLE), strict=True))


BANDS = st.sampled_from(list(Band))
DAYS = st.lists(st.builds(DepthDay, st.dates(FIRST, FIRST + timedelta(days=25)), st.sampled_from(get_args(DayOutcome)), st.booleans(),
                          st.sampled_from([False, False, False, True]), st.booleans()), max_size=14)
CLEAN_DAYS = st.lists(st.builds(DepthDay, st.dates(FIRST, FIRST + timedelta(days=25)), st.just("clean"), st.booleans()), max_size=14)


@given(BANDS, st.none() | BANDS, DAYS | CLEAN_DAYS, st.none() | BANDS)
def test_whatever_comes_no_rule_is_broken(start: Band, usual: Band | None, told: list[DepthDay], pin: Band | None) -> None:
    """Limits, one band a day, and a step deeper only after two clean days in a row, one of them on film within the week."""
    step = steps_from(start, usual, told, pin=pin)
    reached = [steps_from(start, usual, [], pin=pin).depth, *(depth for _, depth in step.history)]
    assert max(reached) <= min(usual or Band.BELOW, pin or Band.BELOW)
    same_day = [[one for one in told if one.day == day] for day, _ in step.history]
    for at, (before, now) in enumerate(pairwise(reached)):
        assert abs(now.rank - before.rank) <= 1
        assert any(one.outcome == "moved" for one in same_day[at]) or now >= before
        if now > before:
            two = [*same_day[at - 1], *same_day[at]]
            assert at > 0
            assert all(one.outcome == "clean" and not one.hurt for one in two)
            assert any(one.film and (step.history[at][0] - one.day).days < 7 for one in two)
    hurt = [at for at, day in enumerate(same_day) if any(one.hurt for one in day)]
    checked = [at for at, day in enumerate(same_day) if any(one.checked for one in day)]
    assert step.closed == (bool(hurt) and not any(at > hurt[-1] for at in checked))
    assert step.history == tuple(sorted(step.history))
    assert len(step.why) <= 160


@given(DAYS)
def test_days_told_in_another_order_lead_to_the_same(told: list[DepthDay]) -> None:
    assert steps_from(MIDDLE, BELOW, told[::-1]) == steps_from(MIDDLE, BELOW, told)


@given(DAYS, st.sampled_from(list(Band)))
def test_a_day_that_hurt_or_moved_never_leads_deeper(told: list[DepthDay], start: Band) -> None:
    for bad in (DepthDay(FIRST + timedelta(days=30), "moved", film=True), DepthDay(FIRST + timedelta(days=30), "clean", True, True)):
        assert steps_from(start, BELOW, [*told, bad]).depth <= steps_from(start, BELOW, told).depth


@pytest.mark.parametrize(("load", "words"), [("over", "It was over the load limit, so that day"), ("untold", "Its load was not reported")])
def test_a_clean_day_that_is_not_within_the_load_limit_earns_nothing_and_says_so(load: Load, words: str) -> None:
    heavy = [DepthDay(FIRST + timedelta(days=2 * at), "clean", film=True, load=load) for at in range(22)]
    found = steps_from(MIDDLE, BELOW, heavy)
    assert (found.depth, found.streak, found.change) == (MIDDLE, 0, "same")
    assert words in found.why
    broken = [DepthDay(FIRST, "clean", film=True), heavy[1], DepthDay(FIRST + timedelta(days=4), "clean", film=True)]
    assert steps_from(MIDDLE, BELOW, broken).streak == 1, "it breaks the row"


def test_a_back_that_moved_over_the_load_limit_still_leads_a_step_back() -> None:
    assert steps_from(MIDDLE, BELOW, [DepthDay(FIRST, "moved", load="over")]).depth is HIGH


def test_of_two_tellings_of_one_day_the_one_over_the_load_limit_counts() -> None:
    assert steps_from(MIDDLE, BELOW, [DepthDay(FIRST, "clean", load="over"), DepthDay(FIRST, "clean")]).streak == 0


def test_while_something_holds_it_no_step_goes_deeper_and_movement_still_leads_back() -> None:
    clean = [DepthDay(date(2026, 3, day), "clean", film=True) for day in (1, 3, 5)]
    held = steps_from(Band.A_LITTLE_ABOVE, Band.BELOW, clean, held="It pinches.")
    assert (held.depth, "It pinches." in held.why, held.wants_film) == (Band.A_LITTLE_ABOVE, True, False)
    assert steps_from(Band.A_LITTLE_ABOVE, Band.BELOW, clean).depth > held.depth
    moved = [*clean, DepthDay(date(2026, 3, 7), "moved")]
    assert steps_from(Band.A_LITTLE_ABOVE, Band.BELOW, moved, held="It pinches.").depth == Band.WELL_ABOVE
