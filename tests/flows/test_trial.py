"""Does the drill help me: joining, leaving, and what six pairs of squat days show."""

from collections.abc import Mapping, Sequence
from datetime import timedelta
from typing import Any

import pytest

from companion.conversation.condition import Value
from companion.screening.priming_trial import arm_of
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK
from flows.trial import FLOW
from tests.drive import CHECKED, NOW, UNCHECKED, Talk
from tests.flows.squatting import RESULTS, Lifter

JOINED_AT = NOW - timedelta(days=60)
SEED = f"7 {JOINED_AT.isoformat()}"
JOIN = [LoggedAnswer("trial", "day 0", "join", "yes", "ok", "done", "", "", JOINED_AT)]


def day(index: int, ending: str | None = "done", **said: Value) -> list[LoggedAnswer]:
    """One squat day of the trial: drawn before, and what was said afterwards."""
    at = JOINED_AT + timedelta(days=2 * index + 1)
    return [LoggedAnswer("squat_day", f"day {index}", "lot", "draw", "ok", ending, "", "", at),
            *(LoggedAnswer("squat_after", f"after {index}", key, value, "ok", "done", "", "", at) for key, value in said.items())]


def days(felt: Sequence[tuple[float, float]], **more: Any) -> list[LoggedAnswer]:
    """Pairs of days as (movement felt when primed, when plain), laid on the days as they were drawn."""
    rows: list[LoggedAnswer] = []
    for block, (primed, plain) in enumerate(felt):
        for index in (2 * block, 2 * block + 1):
            value = primed if arm_of(SEED, index) == "prime" else plain
            rows += day(index, **{"felt": value, "load": 80.0, "kept": "kept", **more})
    return rows


def begun(answers: Sequence[LoggedAnswer] = (), known: Mapping[str, Value] | None = None) -> Lifter:
    return Lifter(FLOW, {"depth.keep": "", **(known or {})}, answers)


def joined(*answers: Sequence[LoggedAnswer], **known: Value) -> Lifter:
    return begun([*JOIN, *(row for rows in answers for row in rows)], {"trial.joined": "yes", **known})


def changed(rows: list[LoggedAnswer], run: str, **what: Any) -> list[LoggedAnswer]:
    """The same rows, one run's changed."""
    from dataclasses import replace

    return [replace(row, **what) if row.run == run else row for row in rows]


# joining and leaving ----------------------------------------------------------------------------------------------


def test_nobody_is_in_it_without_having_said_yes():
    talk = begun()
    assert talk.state == "trial.join"
    talk.tap("No")
    assert talk.state == "home.pick"
    assert "trial.joined" not in talk.found
    assert "The drill is still there" in talk.heard


def test_leaving_the_question_open_is_no_yes():
    talk = begun().say("skip")
    assert talk.state == "home.pick"
    assert "trial.joined" not in talk.found


def test_who_has_joined_is_not_asked_again():
    talk = begun().tap("Yes, join")
    assert talk.state == "trial.next"
    assert talk.found["trial.joined"] == "yes"
    assert joined().state == "trial.next"


def test_leaving_keeps_what_was_told_and_draws_no_more():
    talk = joined().tap("Leave the trial")
    assert talk.found["trial.joined"] == "no"
    assert "You have left the trial" in talk.heard
    talk.say("squatting", "80")
    assert talk.state == "squat_day.prime_now"


def test_the_lot_is_drawn_in_the_squat_day():
    talk = joined().tap("Yes, squat day")
    assert talk.state == "squat_day.load"
    assert talk.say("80").state == "squat_day.lot"
    later = joined().tap("Not today")
    assert later.state == "home.pick"
    assert "squat_day" not in later.began


def test_a_day_that_has_had_its_lot_gets_no_other():
    talk = joined(**{"trial.day.today": "yes"})
    assert "Today's lot is drawn already" in talk.heard
    assert talk.state == "home.pick"


def test_joining_leads_straight_to_a_squat_day_with_a_lot():
    talk = begun().tap("Yes, join", "Yes, squat day").say("80")
    assert talk.state == "squat_day.lot"
    talk.tap("Draw")
    assert ("the drill first" in talk.heard) == (arm_of(f"7 {NOW.isoformat()}", 0) == "prime")


# what the days show -----------------------------------------------------------------------------------------------


def test_before_six_pairs_it_cannot_be_told():
    """Four pairs cannot go below a two-sided p of .125."""
    assert "Can't tell yet: 0 of 6 pairs" in joined().heard
    assert "Can't tell yet: 5 of 6 pairs" in joined(days([(2, 6)] * 5)).heard


def test_six_pairs_with_less_movement_when_primed_help():
    said = joined(days([(2, 6)] * 6)).heard
    assert "The drill helps you, as far as this shows: 4.0 points less movement on primed days" in said
    assert "(6 pairs, p 0.031, at best 0.031)" in said


def test_six_pairs_alike_are_no_sign_of_help():
    assert "No sign that the drill helps you" in joined(days([(4, 4), (4, 5), (5, 4), (3, 3), (4, 4), (5, 5)])).heard


def test_six_pairs_that_differ_but_not_always_are_not_yet_told():
    assert "which may be chance" in joined(days([(2, 6), (5, 4), (2, 5), (5, 4), (2, 6), (4, 3)])).heard


def test_more_movement_when_primed_is_no_help():
    assert "No sign that the drill helps you: 4.0 points more" in joined(days([(6, 2)] * 6)).heard


@pytest.mark.parametrize("what", [{"load": 60.0}, {"kept": "higher"}])
def test_days_at_another_load_or_depth_are_no_pair(what: dict[str, Value]):
    rows = [row for row in days([(2, 6)] * 6) if row.run != "after 3"] + day(3, **{"felt": 6.0, "load": 80.0, "kept": "kept", **what})[1:]
    assert "5 of 6 pairs" in joined(rows).heard


def test_days_between_which_the_depth_set_has_changed_are_no_pair():
    """The first day of a block moved, so the second kept to a higher depth: less movement there tells nothing of the drill."""
    rows = days([(2, 6)] * 6)
    moved = [*rows, LoggedAnswer("squat_after", "after 2", "back", "moved", "ok", "done", "", "", JOINED_AT + timedelta(days=5))]
    known = {"depth.keep": "below", "outcome.at": (JOINED_AT - timedelta(days=1)).isoformat()}
    assert "5 of 6 pairs" not in joined(rows, **known).heard
    assert "5 of 6 pairs" in joined(moved, **known).heard


def test_a_day_that_pain_ended_does_not_count():
    rows = days([(2, 6)] * 6)
    assert "5 of 6 pairs" in joined(changed(rows, "day 3", ending="pain")).heard
    assert "5 of 6 pairs" in joined(changed(rows, "after 3", ending="pain")).heard
    hurt = LoggedAnswer("squat_after", "after 3", "hurt", "yes", "ok", "done", "", "", JOINED_AT + timedelta(days=7))
    assert "5 of 6 pairs" in joined(rows, [hurt]).heard


def test_an_answer_that_was_taken_back_does_not_count():
    taken_back = LoggedAnswer("squat_after", "after 3", "felt", None, "withdrawn", "done", "", "", JOINED_AT + timedelta(days=7))
    assert "5 of 6 pairs" in joined(days([(2, 6)] * 6), [taken_back]).heard


def test_squat_days_outside_the_trial_do_not_count():
    rows = [row for row in days([(2, 6)] * 6) if (row.run, row.key) != ("day 11", "lot")]
    assert "5 of 6 pairs" in joined(rows).heard


def test_a_day_that_was_drawn_and_not_told_keeps_its_number():
    """Else a day nobody told of would turn the lots of all that come after."""
    rows = [row for row in days([(2, 6)] * 7) if row.run != "after 2"]
    said = joined(rows).heard
    assert "(6 pairs, p 0.031, at best 0.031)" in said


# safety -----------------------------------------------------------------------------------------------------------


def test_without_a_drill_there_is_no_trial():
    for drill in ({}, {"drill": "none"}):
        talk = Talk(FLOW, known={**CHECKED, **drill}, book=BOOK)
        assert "A trial needs a drill" in talk.says[0].text
        assert talk.state == "home.pick"


def test_joining_moves_nobody_so_it_needs_no_check_but_squatting_does():
    talk = Talk(FLOW, {**RESULTS, "safety.checked.today": None, "trial.joined": "yes"}, BOOK)
    assert talk.state == "trial.next"
    talk.tap("Yes, squat day")
    assert talk.state == "safety_check.bladder"


@pytest.mark.parametrize("level", ["no_load", "not_today", "clinician", "same_day", "emergency"])
def test_a_level_that_bars_squats_bars_the_day(level: str):
    talk = joined(**{"safety.level": level}).tap("Yes, squat day")
    assert talk.state == "home.pick"
    assert "squat_day" not in talk.began


def test_on_body_weight_only_it_waits():
    assert "It waits." in joined(**{"safety.body_first": "yes"}).heard


def test_under_18_it_stays_shut_without_a_coach():
    talk = Talk(FLOW, {**RESULTS, **UNCHECKED, "welcome.adult": "no", "trial.joined": "yes"}, BOOK)
    assert not talk.state.startswith("trial")
