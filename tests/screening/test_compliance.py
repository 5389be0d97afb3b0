"""Squat days against what was set, a mark for load, depth, back, film and drill."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from companion.screening.compliance import ASPECTS, compliance, compliance_words
from companion.screening.load_limit import LimitSet
from companion.screening.priming_trial import arm_of
from companion.screening.squat_days import ToldDay
from tests.table import each_row

FIRST = date(2026, 3, 2)
SET = datetime(2026, 3, 1, tzinfo=UTC)
LIMIT = (LimitSet(SET, "load.pin", 60.0),)
KEPT = ToldDay(FIRST, "still", "kept", load=60.0, load_at=SET + timedelta(days=1), film=True)


def test_a_load_told_later_is_held_against_the_limit_of_its_day():
    limits = (LimitSet(SET + timedelta(days=3), "load.told", 40.0),)
    late = replace(KEPT, load_at=SET + timedelta(days=4), over_at=SET + timedelta(days=2))
    assert marks(late, limits)["load"] == ""
    assert marks(late, (*LIMIT, *limits))["load"] == "kept"


def marks(day: ToldDay, limits=LIMIT, drilled=frozenset(), since=None, seed=None) -> dict[str, str]:
    (one,) = compliance([day], limits, drilled, since, seed)
    return dict(zip(ASPECTS, one.marks, strict=True))


def test_a_day_as_set_is_kept_in_everything_that_was_set():
    assert marks(KEPT) == {"load": "kept", "depth": "kept", "back": "kept", "film": "kept", "drill": ""}


@each_row(("change", "aspect", "mark"), [
    ({"load": 70.0}, "load", "off"), ({"load": None}, "load", "untold"), ({"kept": "deeper"}, "depth", "off"),
    ({"kept": "higher"}, "depth", "kept"), ({"kept": None}, "depth", "untold"), ({"kept": None, "depth": "parallel"}, "depth", ""),
    ({"back": "moved"}, "back", "off"), ({"back": "cant_tell"}, "back", "untold"), ({"film": False}, "film", "off"),
    ({"film": False, "video": "a film"}, "film", "kept")])
def test_each_answer_has_its_mark(change, aspect, mark):
    assert marks(replace(KEPT, **change))[aspect] == mark


def test_a_load_is_held_against_the_limit_of_its_time():
    assert marks(KEPT, ())["load"] == ""
    assert marks(KEPT, (LimitSet(SET + timedelta(days=3), "load.pin", 40.0),))["load"] == ""


def test_a_film_is_due_once_a_week():
    days = [replace(KEPT, day=FIRST + timedelta(days=n), film=not n) for n in (0, 2, 6, 7)]
    assert [one.marks[3] for one in compliance(days, (), (), None)] == ["kept", "", "", "off"]


@pytest.mark.parametrize(("drilled", "since", "mark"), [
    ({FIRST}, FIRST, "kept"), (set(), FIRST, "off"), (set(), FIRST + timedelta(days=1), ""), (set(), None, "")])
def test_a_drill_counts_from_the_day_it_was_set(drilled, since, mark):
    assert marks(KEPT, drilled=drilled, since=since)["drill"] == mark


def test_a_day_on_which_the_trial_drew_no_drill_asks_for_none():
    plain = 0 if arm_of("a seed", 0) == "plain" else 1
    assert marks(replace(KEPT, lot=plain), since=FIRST, seed="a seed")["drill"] == ""
    assert marks(replace(KEPT, lot=1 - plain), since=FIRST, seed="a seed")["drill"] == "off"


def test_a_day_without_squats_is_no_day():
    assert compliance([ToldDay(FIRST)], LIMIT, (), None) == ()
    assert compliance_words(()) == ""


def test_the_words_count_what_was_told_and_name_what_was_not():
    days = [replace(KEPT, day=FIRST + timedelta(days=n), load=load, back=back)
            for n, (load, back) in enumerate(((60.0, "still"), (70.0, "moved"), (None, None)))]
    assert compliance_words(compliance(days, LIMIT, {FIRST}, FIRST)) == (
        "last 3 squat days: load within 1 of 2 (1 not told), depth kept 3 of 3, back still 1 of 2 (1 not told), filmed 3 of 3, "
        "drill done 1 of 3")
    assert compliance_words(compliance(days, LIMIT, {FIRST}, FIRST), 1) == (
        "last squat day: load within: not told, depth kept 1 of 1, back still: not told, filmed 1 of 1, drill done 0 of 1")
