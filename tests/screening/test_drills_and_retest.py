"""Drills with the doses of common practice; when to test again; and change against error."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from math import ceil, sqrt
from typing import Any

import pytest

from companion.screening.about import About
from companion.screening.conclusion import PARTS, conclude
from companion.screening.drills import BY_PART, DRILLS, Exercise, offer_for
from companion.screening.errors import Errors, Repeats
from companion.screening.protocols import error_of, protocol
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.protocols.leg_raise import LegRaise
from companion.screening.readings import Reading, sessions_to_average
from companion.screening.retest import ReadingChange, RetestPlan, bounded, change, next_day, plan, weeks_until_visible
from tests.table import each_row

from .build import ABOUT, CALF_LIKELY, CONTROL_LIKELY, CONTROL_OUT, LENGTH_OUT, LOOK, START, STRENGTH_OUT, rows, screen


def exercises() -> list[Exercise]:
    return [e for d in DRILLS for e in (d.prime, d.easier, d.home, d.unstretched) if e is not None]


def test_every_part_has_a_drill() -> None:
    assert [drill.part for drill in DRILLS] == list(PARTS)


@pytest.mark.parametrize(("part", "sets", "reps", "down", "hold"), [
    ("hip", 2, 5, 3, 2), ("hamstrings", 2, 5, 3, 0), ("calf", 2, 5, 0, 2), ("trunk", 2, 3, 3, 6),
    ("control", 2, 5, 3, 1)])
def test_the_doses_of_the_primes(part: str, sets: int, reps: int, down: int, hold: int) -> None:
    """Common practice; three stops of up to 2 s are 6 s of holding."""
    prime = BY_PART[part].prime
    assert (prime.sets, prime.reps, prime.down, prime.hold) == (sets, reps, down, hold)
    assert part != "trunk" or BY_PART[part].easier.hold == 4, "to a box: a stop half way, and one on it"
    assert prime.seconds == down + hold


@pytest.mark.parametrize(("part", "sets", "reps", "hold"), [("trunk", 3, 1, 15), ("control", 2, 5, 5)])
def test_the_doses_of_strength_at_home(part: str, sets: int, reps: int, hold: int) -> None:
    """Common practice."""
    home = BY_PART[part].home
    assert (home.sets, home.reps, home.hold) == (sets, reps, hold)


@each_row(("part", "said"), [
    ("hip", "Rock your hips towards your heels, 3 seconds back."), ("hip", "Stop before the back moves, hold 2 seconds, come forward."),
    ("hip", "Squat with 2 to 5 kg held in front"), ("calf", "squat with your heels on 2 cm"), ("calf", "Halve the heel lift, to 1 cm."),
    ("trunk", "Down in 3 seconds, with three stops of 1 to 2 seconds."), ("trunk", "Hold 15 seconds, up to 20 when that is easy."),
    ("trunk", "2 to 5 kg in front, or a bar at 50 % of the day's load or less"), ("hip", "back still on the floor. Hold 30 seconds."),
    ("control", "Stop above the depth where it moves, 1 second, stand up."), ("control", "hips level, hold 5 seconds.")])
def test_the_steps_tell_the_doses_of_common_practice(part: str, said: str) -> None:
    drill = BY_PART[part]
    assert any(said in words for words in (*drill.prime.steps, drill.prime.light, drill.harder, *drill.home.steps))


@pytest.mark.parametrize(("part", "seconds"), [("hip", 60), ("hamstrings", 60), ("calf", 120)])
def test_stretches_are_60_seconds_a_muscle_and_side(part: str, seconds: int) -> None:
    """Garber 2011 Med Sci Sports Exerc 43:1334 (second-hand): 60 s in all per muscle, 10-30 s holds. The calf's two
    positions are two muscles."""
    home = BY_PART[part].home
    assert home.stretch
    assert home.hold <= 30
    assert home.sets * home.reps * home.hold == seconds


def test_no_prime_is_a_stretch_and_only_the_trunk_may_add_a_light_load() -> None:
    """Behm 2016 (memory): long holds just before heavy work cost strength."""
    assert not any(drill.prime.stretch or drill.easier.stretch for drill in DRILLS)
    assert [drill.part for drill in DRILLS if drill.prime.light] == ["trunk"]
    assert "50 %" in BY_PART["trunk"].prime.light


def test_steps_fit_a_message_and_promise_nothing() -> None:
    said = [step for exercise in exercises() for step in exercise.steps]
    said += [drill.caution for drill in DRILLS] + [drill.harder for drill in DRILLS]
    assert all(0 < len(words) <= 160 for words in said)
    assert not any("!" in words or "will fix" in words for words in said)


def test_an_offer_is_called_a_trial_and_says_when_to_stop() -> None:
    offer = offer_for("calf")
    assert offer is not None
    assert "not a fix" in offer.trial
    assert "before any pain" in offer.stop
    assert offer.standing == "common practice"
    assert offer.home_words == "Homework, 3 days a week: calf stretch, straight and bent knee."


@pytest.mark.parametrize("part", PARTS)
def test_by_elimination_the_easier_form_and_no_home_work(part: str) -> None:
    offer = offer_for(part, easier=True)
    assert offer is not None
    assert (offer.prime, offer.home) == (BY_PART[part].easier, None)
    assert "until the cause is confirmed" in offer.home_words


def test_a_part_that_must_not_be_stretched_is_not() -> None:
    for part in PARTS:
        offer = offer_for(part, no_stretch=True)
        assert offer is not None
        assert offer.home is None or not offer.home.stretch
    calf = offer_for("calf", no_stretch=True)
    assert calf is not None
    assert calf.prime.name == "squat with a heel lift"


def test_in_pregnancy_nothing_on_the_back_or_in_a_deep_fold() -> None:
    assert offer_for("hip", no_lying=True) is None
    for part in PARTS[1:]:
        offer = offer_for(part, no_lying=True)
        assert offer is not None
        for exercise in (offer.prime, *([offer.home] if offer.home else [])):
            assert (exercise.lying, exercise.deep_fold) == (False, False)


def test_no_part_no_drill() -> None:
    assert offer_for("") is None


def test_the_leg_raise_shows_in_four_weeks() -> None:
    """By hand: MDC 8 deg * 6 weeks / 12.04 deg (Medeiros 2016, read) is 4.0 weeks."""
    assert bounded(weeks_until_visible(8, 12.04)) == 4.0


@pytest.mark.parametrize("sex", ["man", "woman"])
def test_no_gain_is_known_for_a_leg_that_lifts_itself_so_its_date_is_a_choice(sex: str) -> None:
    """Medeiros 2016 (read): +12.04 deg is of the passive raise."""
    dates = {}
    for effort in ("own", "strap"):
        legs = LegRaise(method="level", effort=effort, left_level=50, left_lean="short", right_level=50, right_lean="short")
        done = screen({**LENGTH_OUT, "leg_raise": legs}, STRENGTH_OUT, CONTROL_OUT)
        dates[effort] = {one.test: one for one in plan(conclude(done, About(sex=sex), 0), done, About(sex=sex)).tests}["leg_raise"]
    assert (dates["own"].standing, dates["strap"].standing) == ("choice", "memory")
    assert dates["own"].words == "In 4 weeks (our cautious choice: no gain is published for a leg that lifts itself)."
    assert dates["strap"].words == f"In {4 if sex == 'man' else 6} weeks (from memory)."


def test_calf_work_wants_three_sessions_at_each_end() -> None:
    """By hand: ceil((4.7/3.03)^2) = 3 (Powden 2015; Radford 2006, both read)."""
    assert protocol("knee_to_wall").sessions == sessions_to_average(4.7, 3.03) == ceil((4.7 / 3.03) ** 2) == 3
    assert 4.7 / sqrt(3) <= 3.03 < 4.7 / sqrt(2)
    assert sessions_to_average(8, 12.04) == 1


@pytest.mark.parametrize(("weeks", "kept"), [(0.1, 2.0), (2.0, 2.0), (3.987, 4.0), (8.0, 8.0), (9.3, 8.0)])
def test_a_retest_is_between_two_and_eight_weeks_away(weeks: float, kept: float) -> None:
    assert bounded(weeks) == kept


SIXTY = {"left_level": 60, "left_lean": "short", "right_level": 60, "right_lean": "short"}


def hamstrings(method: str = "level", **more: Any) -> dict[str, Any]:
    legs = LegRaise(method=method, effort="strap", **more)
    return {**LENGTH_OUT, "leg_raise": legs}


@pytest.mark.parametrize(("sex", "legs", "weeks"), [
    ("man", SIXTY, 4.0), ("woman", SIXTY, 6.0),
    (None, SIXTY, 6.0), ("man", {"method": "eye", "left_eye": "45_60"}, 8.0)])
def test_the_retest_waits_for_the_error_of_the_method(sex: str | None, legs: dict[str, Any], weeks: float) -> None:
    done = screen(hamstrings(**legs), STRENGTH_OUT, CONTROL_OUT)
    about = replace(ABOUT, sex=sex)
    told = conclude(done, about, 0)
    assert told.part == "hamstrings"
    due = plan(told, done, about)
    assert (due.weeks, due.days) == (weeks, round(weeks * 7))
    assert {again.test for again in due.tests} == {"squat_look", "leg_raise"}


@pytest.mark.parametrize("legs", [None, LegRaise(method="level")])
def test_a_part_left_by_elimination_without_a_reading_waits_four_weeks(legs: LegRaise | None) -> None:
    done = screen({**LENGTH_OUT, "leg_raise": legs}, STRENGTH_OUT, CONTROL_OUT)
    told = conclude(done, ABOUT, 0)
    assert (told.part, told.easier, plan(told, done, ABOUT).weeks) == ("hamstrings", True, 4.0)


def test_the_calf_plan_averages_three_sessions_after_eight_weeks() -> None:
    done = screen(CALF_LIKELY)
    due = plan(conclude(done, ABOUT, 0), done, ABOUT)
    wall = next(again for again in due.tests if again.test == "knee_to_wall")
    assert (due.weeks, wall.weeks, wall.sessions) == (8.0, 8.0, 3)
    assert "3 sessions" in wall.words


def test_only_what_was_likely_open_or_untested_is_tested_again() -> None:
    done = screen(LENGTH_OUT, STRENGTH_OUT, CONTROL_LIKELY)
    due = plan(conclude(done, ABOUT, 0), done, ABOUT)
    assert [again.test for again in due.tests] == ["squat_look", "hand_on_back_squat"]
    assert due.weeks == 4.0


def test_what_was_not_settled_can_be_done_any_day() -> None:
    done = screen(CONTROL_LIKELY)
    due = plan(conclude(done, ABOUT, 0), done, ABOUT)
    assert {again.test: again.weeks for again in due.tests} == {
        "squat_look": 4.0, "hand_on_back_squat": 4.0, "hip_fold": 0.0, "leg_raise": 0.0, "knee_to_wall": 0.0}


def test_unexplained_is_filmed_monthly_and_normal_is_left_alone() -> None:
    done = screen(LENGTH_OUT, STRENGTH_OUT, CONTROL_OUT)
    due = plan(conclude(done, ABOUT, 0), done, ABOUT)
    assert (due.weeks, [again.test for again in due.tests]) == (4.0, ["squat_look"])
    fine = screen(squat_look=replace(LOOK, plain_rounds="little"))
    nothing = plan(conclude(fine, ABOUT, 0), fine, ABOUT)
    assert (nothing.weeks, nothing.days, nothing.tests) == (None, None, ())


def legs(*values: float, method: str = "level_strap", width: float = 0) -> list[Reading]:
    return [Reading("leg_raise", value, "deg", "left", method, "shin", n, width) for n, value in enumerate(values, 1)]


def wall(*values: float) -> list[Reading]:
    return [Reading("knee_to_wall", value, "cm", "left", "tape", "", n) for n, value in enumerate(values, 1)]


MAN = error_of("leg_raise", "level", "man")  # MDC 8.316


@pytest.mark.parametrize(("after", "kind"), [(68.3, "within_error"), (68.4, "better"), (51.7, "within_error"),
                                             (51.6, "worse"), (60, "within_error")])
def test_a_change_counts_only_beyond_the_detectable_one(after: float, kind: str) -> None:
    """1.96 * sqrt(2) * 3.0 = 8.316 deg."""
    assert change([legs(60)], [legs(after)], MAN).kind == kind


def test_repeats_within_a_session_do_not_shrink_the_detectable_change_but_sessions_do() -> None:
    assert change([legs(60, 60, 60)], [legs(68, 68, 68)], MAN).kind == "within_error"
    four = change([legs(60)] * 4, [legs(65)] * 4, MAN)
    assert (four.kind, round(four.mdc, 6)) == ("better", round(MAN.mdc / 2, 6))


def test_an_unequal_number_of_sessions_is_no_more_exact_than_the_fewer() -> None:
    assert change([legs(60)], [legs(65)] * 4, MAN).mdc > change([legs(60)] * 4, [legs(65)] * 4, MAN).mdc


@pytest.mark.parametrize("other", [{"method": "heel_strap"}, {"placement": "thigh"}])
def test_change_between_methods_or_placements_is_refused(other: dict[str, Any]) -> None:
    with pytest.raises(ValueError, match="can't be compared"):
        change([legs(60)], [[replace(legs(80)[0], **other)]])


def test_left_is_not_compared_with_right_over_time() -> None:
    with pytest.raises(ValueError, match="not averaged"):
        change([legs(60)], [[replace(legs(80)[0], side="right")]])


@pytest.mark.parametrize(("before", "after"), [([], [[60]]), ([[60]], []), ([[60], []], [[60]])])
def test_an_end_without_a_reading_is_refused(before: list[list[float]], after: list[list[float]]) -> None:
    with pytest.raises(ValueError):
        change([legs(*values) for values in before], [legs(*values) for values in after])


def test_one_calf_session_can_not_show_what_calf_work_gives_but_shows_more_than_the_error() -> None:
    """Powden 2015 Man Ther 20:524 (read): MDC 1.9 cm."""
    assert change([wall(8)], [wall(12)]).kind == "better"
    assert change([wall(12)], [wall(8)]).kind == "worse"
    for before, after in (([wall(8)], [wall(9.4)]), ([wall(8)] * 3, [wall(9.4)]), ([wall(8)], [wall(9.4)] * 3)):
        seen = change(before, after)
        assert seen.kind == "cannot_say"
        assert "the average of 3 sessions" in seen.words
    assert change([wall(8)] * 3, [wall(9.2)] * 3).kind == "better"  # 1.9 / sqrt(3) = 1.10 cm
    assert change([wall(8)] * 3, [wall(9.0)] * 3).kind == "within_error"


def test_by_eye_a_change_leaves_a_band_between() -> None:
    assert change([legs(65, width=10)], [legs(75, width=10)]).kind == "within_error"
    assert change([legs(55, width=10)], [legs(75, width=10)]).kind == "better"


def test_change_says_its_size_and_the_error() -> None:
    assert change([legs(60)], [legs(70)], MAN).words == "10° more than before, which is beyond measurement error (8°)."
    assert len(change([legs(60)], [legs(61)], MAN).words) <= 160


def test_a_pinch_is_planned_as_open_not_as_short() -> None:
    tests = {**LENGTH_OUT, "hip_fold": HipFold("back", "yes", None, "back", "yes", None),
             "knee_to_wall": KneeToWall(method="tape", left_1=13, right_1=13, left_limit="calf", right_limit="calf")}
    done = screen(tests)
    due = plan(conclude(done, About(), 0), done, About())
    assert {again.test: again.weeks for again in due.tests}["hip_fold"] == 0.0


# comparisons of the change and of the day ----------------------------------------------------------------------------


def by_tape(before: list[float], after: list[float]) -> ReadingChange:
    return change(*([[Reading("knee_to_wall", value, "cm", "left", "tape")] for value in values] for values in (before, after)))


def test_two_sessions_at_each_end_are_an_average_and_may_say_that_nothing_changed() -> None:
    assert [by_tape([10.0] * many, [10.5] * many).kind for many in (1, 2)] == ["cannot_say", "within_error"]


def test_a_change_of_exactly_the_error_is_no_change() -> None:
    """1.9 cm (Powden 2015, read): of one session at each end it can't be told, of two a change of exactly 1.9/√2 is within error."""
    assert by_tape([0.0], [error_of("knee_to_wall", "tape").mdc]).kind == "cannot_say"
    raised = [[Reading("leg_raise", value, "deg", "left", "level", "shin")] for value in (0.0, error_of("leg_raise", "level", "man").mdc)]
    told = change([raised[0]], [raised[1]], error_of("leg_raise", "level", "man"))
    assert (told.kind, "just over" in told.words) == ("within_error", False)


@pytest.mark.parametrize(("by", "words"), [(8.0, "The difference of 8° is within measurement error (just over 8°)"),
                                           (5.0, "The difference of 5° is within measurement error (8°)")])
def test_a_change_that_reads_like_its_limit_says_on_which_side_of_it_it_is(by: float, words: str) -> None:
    ends = [[[Reading("leg_raise", value, "deg", "left", "level", "shin")]] for value in (60.0, 60.0 + by)]
    assert change(*ends, error_of("leg_raise", "level", "man")).words.startswith(words)


def test_the_next_day_is_counted_from_the_last_test_and_from_nothing_else() -> None:
    again = RetestPlan(4.0, (), "")
    tested = [*rows("knee_to_wall", {"left_1": 9.0}, day=0), *rows("squat_after", {"done": "yes"}, day=5)]
    today = START.date() + timedelta(days=6)
    assert next_day(again, tested, "UTC+00:00", today) == START.date() + timedelta(days=28)
    assert next_day(again, [], "UTC+00:00", today) == today + timedelta(days=28)
    assert next_day(again, tested, "UTC+00:00", today + timedelta(days=40)) == today + timedelta(days=41)
    assert next_day(RetestPlan(None, (), ""), tested, "UTC+00:00", today) is None


@pytest.mark.parametrize(("noisy", "sessions"), [("level", 9), ("tape", 3)])
def test_ones_own_repeats_by_the_method_used_decide_over_how_many_sessions_a_calf_is_averaged(noisy: str, sessions: int) -> None:
    """By hand, by level: √((5 · 1.696² + 138) / 15) = 3.19, 1.88 times 1.696; (4.7 · 1.88 / 3.03)² = 8.5. Repeats by tape say nothing of
    it."""
    done = screen(squat_look=replace(LOOK, heels_rounds="no"),
                  knee_to_wall=KneeToWall(method="level", placement="mid_shin", left_deg_1=20, right_deg_1=20, left_limit="calf"))
    calf = replace(conclude(done, ABOUT, 0), part="calf")
    told = plan(calf, done, ABOUT, Errors("man", (Repeats("knee_to_wall", noisy, 138.0, 10),)))
    assert [one.sessions for one in told.tests if one.test == "knee_to_wall"] == [sessions]
