"""Changes, as they are told: the new numbers beside the last, held against measurement error."""

from collections.abc import Mapping, Sequence
from datetime import timedelta

import pytest

from companion.conversation.condition import Value
from companion.screening.screen import LoggedAnswer
from flows.changes import FLOW
from tests.drive import CHECKED, NOW, Talk

TOLD = 30
"""Days ago at which the last results were told."""


def rows(flow: str, days: float, ending: str = "done", run: str = "", **values: Value) -> list[LoggedAnswer]:
    """One run of a test, so many days ago, after the whole warm-up."""
    at = NOW - timedelta(days=days)
    warm = [LoggedAnswer("warm_up", f"warm {days}", key, "ready", "ok", "done", "", "", at - timedelta(minutes=5))
            for key in ("walk", "squats", "walk_more")]
    return [*warm, *(LoggedAnswer(flow, run or f"{flow} {days}", key, value, "ok", ending, "", "", at) for key, value in values.items())]


def raised(days: float, left: float, right: float = 60, method: str = "level", **more: Value) -> list[LoggedAnswer]:
    end: dict[str, Value] = {"left_heel": left, "right_heel": right, "leg_length": 90} if method == "heel" else {
        "left_level": left, "left_lean": "short", "right_level": right, "right_lean": "short", "placement": "shin"}
    return rows("leg_raise", days, **{"method": method, "effort": "strap", **end, **more})


def wall(days: float, left: float, right: float = 13, **more: Value) -> list[LoggedAnswer]:
    return rows("knee_to_wall", days, **{"method": "tape", "left_1": left, "right_1": right, **more})


def pain(days: float, score: float) -> list[LoggedAnswer]:
    return [LoggedAnswer("safety_check", f"check {days}", "pain", score, "ok", "done", "", "", NOW - timedelta(days=days))]


def told(*answers: Sequence[LoggedAnswer], since: float | None = TOLD, **known: Value) -> str:
    facts: Mapping[str, Value] = {**CHECKED, **known}
    if since is not None:
        facts = {**facts, "outcome.at": (NOW - timedelta(days=since)).isoformat()}
    kept = sorted((row for rows in answers for row in rows), key=lambda row: row.at)
    return "\n".join(say.text for say in Talk(FLOW, known=facts, answers=kept).says[:-1])


MAN = rows("about_you", 40, sex="man")
"""SEM 3.0° by phone level: J Sports Sci Med 2009;8:116 Table 1 (read); MDC95 = 1.96·√2·3.0 = 8.3°."""


@pytest.mark.parametrize(("now", "words"), [
    (69.0, "9° more than before, which is beyond measurement error (8.3°)"),
    (51.0, "9° less than before, which is beyond measurement error (8.3°)"),
    (68.0, "The difference of 8° is within measurement error (8.3°), so no change is shown"),
    (60.0, "The difference of 0° is within measurement error")])
def test_a_leg_raise_counts_from_the_detectable_change_on(now: float, words: str):
    said = told(MAN, raised(40, 60), raised(1, now))
    assert f"Left: 60° then, {now:g}° now. {words}" in said


def test_a_womans_change_is_held_against_the_larger_error():
    assert "within measurement error" in told(rows("about_you", 40, sex="woman"), raised(40, 60), raised(1, 69))


def test_another_method_is_not_compared_and_says_why():
    said = told(MAN, raised(40, 60), raised(1, 70, method="heel"))
    assert "Not compared: phone level then, heel height now. Take phone level again." in said
    assert "beyond measurement error" not in said


def wall_by_level(days: float) -> list[LoggedAnswer]:
    return rows("knee_to_wall", days, method="level", placement="mid_shin", left_deg_1=41, right_deg_1=41)


def test_tape_and_then_a_level_are_named_and_not_their_units():
    assert "Not compared: tape then, phone level now. Take tape again." in told(MAN, wall(40, 10), wall_by_level(1))


@pytest.mark.parametrize(("days", "early"), [(5, True), (27, True), (52, True), (53, False), (60, False)])
def test_a_test_again_before_its_date_is_called_early(days: int, early: bool):
    """Choice: more than three days before the eight weeks of a calf."""
    said = told(MAN, wall(days, 9), wall(0, 12), since=days - 0.5)
    assert (f"That is after {days} days. A change should show after about 8 weeks, so this is early." in said) is early


def test_another_placement_is_not_compared():
    assert "different placement" in told(MAN, raised(40, 60), raised(1, 70, placement="thigh"))


def test_another_warm_up_is_not_compared():
    without = [row for row in raised(1, 70) if row.flow != "warm_up"]
    assert "different warm-up" in told(MAN, raised(40, 60), without)


def test_one_calf_session_at_an_end_cannot_show_a_change():
    said = told(wall(40, 8), wall(1, 9))
    assert ("Left: 8 cm then, 9 cm now. The difference is 1 cm, but one session can't show calf change: "
            "it takes the average of 3 sessions at each end") in said


def test_three_calf_sessions_at_each_end_can():
    said = told(*(wall(40 + n, 8) for n in range(3)), *(wall(1 + n, 11) for n in range(3)))
    assert "3 cm more than before, which is beyond measurement error (1.1 cm)" in said


def test_repeats_on_one_day_are_not_taken_for_sessions():
    """MDC/√k holds for means over sessions, never for the repeats within one: three goes in half an hour are one."""
    again = [wall(day + minutes / 1440, left) for day, left in ((40, 8.0), (1, 9.5)) for minutes in (0, 10, 20)]
    assert "beyond measurement error" not in told(*again)


def test_inches_are_told_in_inches():
    said = told(wall(40, 8), wall(1, 11), **{"welcome.units": "imperial"})
    assert "3.1 in then, 4.3 in now" in said
    assert " cm" not in said


def test_a_run_that_pain_ended_is_no_after():
    hurt = rows("leg_raise", 1, "pain", method="level", effort="strap", placement="shin", left_level=80, left_lean="short")
    assert "Nothing was measured both before and after" in told(MAN, raised(40, 60), hurt)


def test_before_any_results_there_is_no_change_to_tell():
    assert "Nothing was measured both before and after" in told(raised(40, 60), raised(1, 70), since=None)


def test_a_test_done_only_once_tells_no_change():
    assert "Nothing was measured both before and after" in told(raised(40, 60))


def test_what_changed_can_be_asked_for_again_after_the_new_results_were_told():
    """Said by name after a retest: its numbers are still the new ones, though results have been told since."""
    assert "60° then, 75° now" in told(MAN, raised(40, 60), raised(1, 75), since=0.5,
                                     **{"outcome.before": (NOW - timedelta(days=20)).isoformat()})


@pytest.mark.parametrize(("sessions", "there"), [(4, False), (5, True), (6, True)])
def test_a_trend_is_told_from_five_sessions_on(sessions: int, there: bool):
    said = told(MAN, *(raised(7 * (sessions - n), 60 + 3 * n) for n in range(sessions)), since=20)
    assert ("all sessions" in said) == there
    assert ("Over" in said and "more in four weeks" in said) == there


def test_a_trend_across_methods_is_refused():
    said = told(MAN, *(raised(7 * (6 - n), 60 + 3 * n) for n in range(5)), raised(1, 70, method="heel"), since=20)
    assert "Left: no trend, readings with a different method" in said


@pytest.mark.parametrize(("before", "now", "words"), [
    (3, 2, "1 point less, within measurement error (1.77)"), (2, 2, "the same"), (6, 4, "2 points less, beyond measurement error (1.77)"),
    (9, 6, "3 points less, beyond measurement error (1.77); from 9 people call 3 to 4 points important"),
    (0, 1, "1 point more, within measurement error (1.77); from 0 people call 1 point important, so I count it as worse")])
def test_pain_is_held_against_error_and_against_what_people_call_important(before: float, now: float, words: str):
    """Detectable 1.77; important by starting pain 1-4: 1, 5-7: 2, 8-10: 3-4 points, n = 1,232 (doi 10.1055/a-1304-3677, read)."""
    assert f"Pain was {before} and is {now} now: {words}" in told(pain(40, float(before)), pain(1, float(now)))


def test_a_band_is_called_a_step_and_not_a_repeatability():
    look = [rows("squat_look", 40, plain_rounds="clearly", plain_depth="a_little_above"),
            rows("squat_look", 1, plain_rounds="clearly", plain_depth="parallel")]
    assert "One step of depth is all that this scale tells; how well you repeat it is not known." in told(*look)


def test_no_pain_before_and_now_is_not_worth_a_word():
    assert "Pain" not in told(MAN, raised(40, 60), raised(1, 70), pain(40, 0.0), pain(1, 0.0))


def test_where_the_rounding_starts_is_told_by_its_bands():
    look = [rows("squat_look", 40, plain_rounds="clearly", plain_depth="a_little_above"),
            rows("squat_look", 1, plain_rounds="clearly", plain_depth="parallel")]
    assert "Then: a little above parallel. Now: parallel." in told(*look)
    assert "Now: no rounding." in told(look[0], rows("squat_look", 1, plain_rounds="no"))
    assert "Now: not told." in told(look[0], rows("squat_look", 1, plain_rounds="cant_tell"))
