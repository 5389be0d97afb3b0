"""Safety levels against what is printed of red flags, and our limits of pain."""

from __future__ import annotations

from datetime import date
from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.screening.protocols import protocols
from companion.screening.safety import (
    Level,
    clearance_holds,
    level_from_check,
    level_from_pain,
    opens,
    worst,
)
from tests.table import each_row

from .build import open_tests

WELL: dict[str, Any] = {"fever": "no", "bladder": "no", "chest": "no", "weakness": "no", "fall": "no",
                        "leg_signs": "no", "history": "no", "pain": 0.0}
SMALL: dict[str, Any] = {"where": "back", "bad": 1.0, "sharp": "no", "below_knee": "no", "tingling": "no"}
CLEARED: dict[str, Any] = {"history": "yes", "pregnant": "no", "cleared": "yes", "cleared_at": "Dr Ahn, in March"}
DAY = date(2025, 3, 10)
NEXT = date(2025, 3, 11)


def test_levels_have_the_order_and_words_of_the_contract() -> None:
    assert [level.value for level in Level] == ["go", "no_load", "not_today", "clinician", "same_day", "emergency"]
    assert sorted(Level, key=lambda level: level) == list(Level)
    assert Level.GO < Level.EMERGENCY >= Level.SAME_DAY > Level.CLINICIAN <= Level.SAME_DAY
    assert worst([]) == Level.GO


def test_a_healthy_lifter_goes() -> None:
    outcome = level_from_check(WELL)
    assert outcome.level == Level.GO
    assert outcome.because == ()
    assert (outcome.no_lying, outcome.postpone, outcome.body_weight_first, outcome.limits) == (False, False, False, "")


@pytest.mark.parametrize("said", ["yes", "unsure", None])
@pytest.mark.parametrize(("key", "level"), [
    ("bladder", "emergency"), ("chest", "emergency"), ("weakness", "same_day"), ("fall", "same_day"),
    ("leg_signs", "clinician"), ("history", "clinician"), ("fever", "not_today"), ("pain", "not_today")])
def test_each_red_flag_alone_has_its_level_and_unsure_or_missing_counts_as_yes(key: str, level: str,
                                                                               said: str | None) -> None:
    outcome = level_from_check({**WELL, key: said} if said else {k: v for k, v in WELL.items() if k != key})
    assert outcome.level.value == level
    assert outcome.because[0].key == key


def test_nothing_said_at_all_is_an_emergency_not_a_go() -> None:
    assert level_from_check({}).level == Level.EMERGENCY
    assert level_from_pain({}, None).level == Level.EMERGENCY


@each_row(("pain", "level"), [(0, "go"), (2, "go"), (2.5, "no_load"), (3, "no_load"), (3.5, "not_today"),
                                             (4, "not_today"), (10, "not_today"), (11, "not_today"),
                                             ("a lot", "not_today")])
def test_start_pain_thresholds(pain: float | str, level: str) -> None:
    """Choice: 0-2 go, 3 floor tests only, 4 or more none today (choice)."""
    assert level_from_check({**WELL, "pain": pain}).level.value == level


def test_fever_with_back_pain_is_same_day_care() -> None:
    assert level_from_check({**WELL, "fever": "yes", "pain": 0}).level == Level.NOT_TODAY
    assert level_from_check({**WELL, "fever": "yes", "pain": 1}).level == Level.SAME_DAY
    assert level_from_check({**WELL, "fever": "yes", "pain": None}).level == Level.SAME_DAY


def test_every_combination_of_answers_gives_the_highest_level() -> None:
    alone = {"bladder": "emergency", "chest": "emergency", "weakness": "same_day", "fall": "same_day",
             "leg_signs": "clinician"}
    pains = {0.0: "go", 2.0: "go", 3.0: "no_load", 4.0: "not_today", None: "not_today"}
    histories = ({"history": "no"}, {"history": "yes"}, CLEARED)
    keys = list(alone)
    for said in product(("no", "yes", "unsure"), repeat=len(keys)):
        for fever, pain, history in product(("no", "yes"), pains, histories):
            answers = {**dict(zip(keys, said, strict=True)), "fever": fever, "pain": pain, **history}
            levels = [Level(alone[key]) for key, word in zip(keys, said, strict=True) if word != "no"]
            levels.append(Level(pains[pain]))
            if fever == "yes":
                levels.append(Level.NOT_TODAY if pain == 0 else Level.SAME_DAY)
            if history == {"history": "yes"}:
                levels.append(Level.CLINICIAN)
            outcome = level_from_check(answers)
            assert outcome.level == max(levels)
            assert [reason.level for reason in outcome.because] == sorted(
                (reason.level for reason in outcome.because), reverse=True)
            assert (outcome.level == Level.GO) == (not outcome.because)


def test_a_cleared_history_goes_with_its_limits() -> None:
    outcome = level_from_check({**WELL, **CLEARED, "limits": "no jumping"})
    assert outcome.level == Level.GO
    assert outcome.limits == "no jumping"


@pytest.mark.parametrize("lacking", [{"cleared": "no"}, {"cleared": "unsure"}, {"cleared_at": ""},
                                     {"cleared_at": None}, {"cleared_at": "  "}])
def test_a_clearance_needs_who_and_when(lacking: dict[str, str | None]) -> None:
    assert level_from_check({**WELL, **CLEARED, **lacking}).level == Level.CLINICIAN


def test_a_clearance_is_asked_again_after_six_months() -> None:
    said, told = {**WELL, **CLEARED}, date(2025, 1, 10)
    assert level_from_check(said, today=date(2025, 7, 10), cleared_on=told).level == Level.GO
    assert level_from_check(said, today=date(2025, 7, 11), cleared_on=told).level == Level.CLINICIAN
    assert level_from_check(said, cleared_on=told).level == Level.CLINICIAN


@pytest.mark.parametrize(("told", "today", "holds"), [
    (date(2024, 8, 31), date(2025, 2, 28), True), (date(2024, 8, 31), date(2025, 3, 1), False),
    (date(2025, 1, 10), date(2025, 1, 10), True), (date(2025, 2, 1), date(2025, 1, 31), False),
    (date(2025, 1, 10), date(2026, 1, 10), False)])
def test_six_calendar_months(told: date, today: date, holds: bool) -> None:
    assert clearance_holds(told, today) is holds


def test_pregnancy_wants_clearance_and_then_no_lying_or_deep_fold() -> None:
    assert level_from_check({**WELL, "history": "yes", "pregnant": "yes"}).level == Level.CLINICIAN
    assert level_from_check({**WELL, "pregnant": "yes"}).level == Level.CLINICIAN
    outcome = level_from_check({**WELL, **CLEARED, "pregnant": "yes"})
    assert (outcome.level, outcome.no_lying) == (Level.GO, True)
    assert not open_tests(outcome.level, no_lying=True) & {"hip_fold", "leg_raise", "rock_back"}
    assert level_from_check({**WELL, **CLEARED, "pregnant": None}).no_lying


def test_an_old_quiet_disc_injury_goes_with_body_weight_first() -> None:
    """Common practice: without symptoms for six months and training normally: go, body weight first."""
    old = {**WELL, "history": "yes", "pregnant": "no", "old_disc": "yes"}
    assert (level_from_check(old).level, level_from_check(old).body_weight_first) == (Level.GO, True)
    assert level_from_check({**old, "leg_signs": "yes"}).level == Level.CLINICIAN
    assert level_from_check({**old, "old_disc": "unsure"}).level == Level.CLINICIAN
    assert level_from_check({**old, "pregnant": None}).level == Level.CLINICIAN


def test_dull_soreness_postpones_and_locks_nothing() -> None:
    outcome = level_from_check({**WELL, "soreness": "yes"})
    assert (outcome.level, outcome.postpone) == (Level.GO, True)
    assert not level_from_check({**WELL, "soreness": "no", "pain": 2}).postpone
    assert level_from_check({**WELL, "pain": 2}).postpone


@each_row(("change", "start", "level"), [
    ({}, 0, "no_load"), ({"bad": 3.9}, 3, "no_load"), ({"bad": 4}, 4, "not_today"), ({"bad": 1.9}, 0, "no_load"),
    ({"bad": 2}, 0, "not_today"), ({"bad": 3}, 1, "not_today"), ({"bad": 3}, 1.1, "no_load"),
    ({"bad": 2}, None, "not_today"), ({"bad": None}, 0, "not_today"), ({"sharp": "yes"}, 0, "not_today"),
    ({"sharp": None}, 0, "not_today"), ({"where": "chest"}, 0, "emergency"),
    ({"below_knee": "yes", "bladder": "no", "weakness": "no"}, 0, "clinician"),
    ({"tingling": "yes", "bladder": "no", "weakness": "no"}, 0, "clinician"),
    ({"tingling": "unsure", "bladder": "no", "weakness": "no"}, 0, "clinician"),
    ({"tingling": "yes", "bladder": "no", "weakness": "yes"}, 0, "same_day"),
    ({"tingling": "yes", "bladder": "no"}, 0, "same_day"),
    ({"below_knee": "yes", "bladder": "yes", "weakness": "no"}, 0, "emergency"),
    ({"below_knee": "yes", "weakness": "no"}, 0, "emergency"), ({"weakness": "yes"}, 0, "same_day")])
def test_pain_during_a_test(change: dict[str, float | str | None], start: float | None, level: str) -> None:
    """Choice: sharp, 4 or more, or a rise of 2 stops the day (choice); below the knee asks on at once."""
    outcome = level_from_pain({**SMALL, **change}, start)
    assert outcome.level.value == level
    assert outcome.because[0].level == outcome.level


def test_no_pain_answer_leaves_load_open() -> None:
    for bad, sharp, below, tingling in product((0, 1, 4, None), ("no", "yes"), ("no", "yes"), ("no", "yes")):
        outcome = level_from_pain({"bad": bad, "sharp": sharp, "below_knee": below, "tingling": tingling,
                                   "bladder": "no", "weakness": "no"}, 0)
        assert outcome.level >= Level.NO_LOAD
        assert outcome.because


@given(st.dictionaries(st.sampled_from([*WELL, *SMALL, "pregnant", "cleared", "cleared_at", "soreness", "old_disc"]),
                       st.sampled_from(["yes", "no", "unsure", 0.0, 3.0, 7.0, ""])), st.sampled_from(list(WELL)))
def test_taking_an_answer_away_never_lowers_the_level(answers: dict[str, float | str], key: str) -> None:
    less = {k: v for k, v in answers.items() if k != key}
    assert level_from_check(less).level >= level_from_check(answers).level
    for reason in level_from_check(answers).because + level_from_pain(answers, 0).because:
        assert 0 < len(reason.words) <= 160


def test_a_days_lock_ends_with_the_local_day() -> None:
    for level in (Level.NO_LOAD, Level.NOT_TODAY):
        assert not opens(level, DAY, DAY, check=Level.GO, seen=True, cleared=True)
        assert opens(level, DAY, NEXT)
    assert opens(Level.GO, DAY, DAY)


def test_a_clinician_level_waits_for_a_check_that_passes_however_long() -> None:
    assert not opens(Level.CLINICIAN, DAY, date(2026, 3, 10))
    assert not opens(Level.CLINICIAN, DAY, NEXT, check=Level.CLINICIAN, seen=True, cleared=True)
    assert opens(Level.CLINICIAN, DAY, DAY, check=Level.GO)


@pytest.mark.parametrize("level", [Level.SAME_DAY, Level.EMERGENCY])
def test_after_urgent_care_a_new_day_alone_opens_nothing(level: Level) -> None:
    for today, check, seen, cleared in product((DAY, NEXT), (None, Level.GO, Level.SAME_DAY), (False, True),
                                               (False, True)):
        expected = today == NEXT and check == Level.GO and seen and cleared
        assert opens(level, DAY, today, check=check, seen=seen, cleared=cleared) is expected


def test_what_is_open_shrinks_with_the_level() -> None:
    assert open_tests(Level.GO) == set(protocols())
    assert open_tests(Level.NO_LOAD) == {"hip_fold", "leg_raise", "rock_back", "bird_dog"}
    assert all(open_tests(level) == frozenset() for level in list(Level)[2:])
    assert not open_tests(Level.NO_LOAD) & {"arms_forward_squat", "pause_squat", "hinge_to_squat", "squat_look"}


@pytest.mark.parametrize(("chest", "level"), [("no", Level.GO), ("lately", Level.SAME_DAY), ("yes", Level.EMERGENCY),
                                              ("unsure", Level.EMERGENCY), ("", Level.EMERGENCY)])
def test_chest_signs_of_late_are_looked_at_today_and_those_of_now_are_an_emergency(chest: str, level: Level) -> None:
    """After ACSM's pre-participation logic (Riebe 2015): clearance first; how soon is our choice."""
    said = level_from_check({**WELL, "chest": chest})
    assert said.level == level
    assert [reason.key for reason in said.because] == ([] if level is Level.GO else ["chest"])


def test_beside_chest_signs_of_late_what_is_worse_still_counts() -> None:
    said = level_from_check({**WELL, "chest": "lately", "bladder": "yes", "weakness": "yes"})
    assert (said.level, {reason.key: reason.level for reason in said.because}) == (Level.EMERGENCY, {
        "bladder": Level.EMERGENCY, "chest": Level.SAME_DAY, "weakness": Level.SAME_DAY})


@pytest.mark.parametrize(("start", "told"), [(None, "Pain of 2 or more: no more today."),
                                             (0.0, "Pain has risen by 2 or more since the start: no more today.")])
def test_pain_is_said_to_have_risen_only_where_it_was_asked_about_before(start: float | None, told: str):
    outcome = level_from_pain({"where": "knee", "bad": 3.0, "sharp": "no", "below_knee": "no", "tingling": "no"}, start)
    assert [reason.words for reason in outcome.because] == [told]
