"""The priming drill, lived through: each part's drill, set by set with a timer, and what was felt."""

from collections.abc import Mapping
from dataclasses import asdict, replace
from datetime import timedelta
from typing import Any

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Say
from companion.screening.drills import BY_PART
from companion.screening.protocols.hinge_to_squat import HingeToSquat
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.protocols.leg_raise import LegRaise
from companion.screening.protocols.rock_back import RockBack
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK
from flows.prime import FLOW
from tests.drive import CHECKED, NOW, UNCHECKED, Talk
from tests.screening.build import ABOUT, CALF_LIKELY, CONTROL_LIKELY, CONTROL_OUT, LENGTH_OUT, LOOK, STRENGTH_LIKELY, STRENGTH_OUT

# Ranges alone make no length likely: a change of the lifter's own squat agrees.
WIDER = replace(LOOK, wide_rounds="no")
HIP: dict[str, Any] = {"squat_look": WIDER, "hip_fold": HipFold("back", "no", None, "back", "no"),
                       "rock_back": RockBack("early", "early", "early")}
# Two parts of length together make it likely; with the hinge beside it the hamstrings weigh more.
HAMSTRINGS: dict[str, Any] = {
    "squat_look": replace(LOOK, heels_rounds="no"), "leg_raise": LegRaise(
        "level", "own", "shin", left_level=50, left_lean="short", right_level=50, right_lean="short"),
    "hinge_to_squat": HingeToSquat("rounds", seen_by="film")}
LIKELY: dict[str, dict[str, Any]] = {
    "hip": HIP, "hamstrings": HAMSTRINGS, "calf": CALF_LIKELY, "trunk": STRENGTH_LIKELY, "control": CONTROL_LIKELY}


def log(**tests: Any) -> list[LoggedAnswer]:
    """The answer log of these records, each in a run of its own."""
    return [LoggedAnswer(flow, flow, "with" if key == "with_" else key, value, "ok", "done", "", "", NOW - timedelta(hours=1))
            for flow, record in {"about_you": ABOUT, **tests}.items() for key, value in asdict(record).items() if value is not None]


def begun(tests: Mapping[str, Any], known: Mapping[str, Value] | None = None) -> Talk:
    return Talk(FLOW, known={**CHECKED, "drill": "told", "safety_check.pain": 0.0, **(known or {})}, book=BOOK, answers=log(**tests))


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


@pytest.mark.parametrize("part", LIKELY)
def test_the_drill_of_the_likely_part_is_led_through_set_by_set(part: str):
    drill = BY_PART[part].prime
    talk = begun(LIKELY[part])
    assert talk.last.startswith(f"The drill: {drill.name}, {drill.sets} sets of {drill.reps}")
    talk.tap("Ready")
    assert talk.last.startswith("\n".join(drill.steps))
    talk.tap("I have it")
    for number in range(1, drill.sets + 1):
        assert talk.state == f"prime.set_{number}"
        assert BY_PART[part].caution in talk.last
        talk.tap("Start the set")
    assert talk.state == "prime.felt"


@pytest.mark.parametrize("part", LIKELY)
def test_a_set_is_timed_for_its_repetitions_on_both_sides(part: str):
    drill = BY_PART[part].prime
    talk = begun(LIKELY[part]).tap("Ready", "I have it", "Start the set")
    over = next(effect for effect in talk.effects if isinstance(effect, Say) and effect.text.startswith("That is about a set"))
    assert over.after == 5 + drill.reps * drill.sides * (drill.seconds + 2)  # two seconds to come back up (choice)


def test_it_is_called_a_trial_before_it_begins():
    assert "nobody knows yet whether it helps" in begun(CALF_LIKELY).last


def test_a_caution_and_a_stop_button_stand_with_every_movement():
    talk = begun(CALF_LIKELY).tap("Ready")
    for label in ("I have it", "Start the set"):
        assert "Say so at once if anything hurts." in talk.last
        assert any(tap.label == "Stop" for row in talk.says[-1].buttons for tap in row)
        talk.tap(label)


def test_what_is_left_by_elimination_gets_its_easier_form():
    talk = begun({**LENGTH_OUT, **STRENGTH_OUT, "squat_look": LOOK})
    assert "The drill: sit to a chair" in talk.last


@pytest.mark.parametrize("pregnant", ["yes", "unsure"])
def test_in_pregnancy_no_drill_folds_deeply(pregnant: str):
    talk = begun(HIP, {"safety_check.pregnant": pregnant})
    assert "I offer none while you are, or may be, pregnant" in heard(talk)
    assert talk.state == "home.pick"


def test_the_trunk_drill_may_be_light_or_body_weight_only_where_that_was_told():
    assert "Light: 2 to 5 kg in front, or a bar at 50 % of the day's load or less" in begun(STRENGTH_LIKELY).last
    assert "Body weight only" in begun(STRENGTH_LIKELY, {"safety.body_first": "yes"}).last


def test_in_pounds_the_light_weight_is_in_pounds():
    assert " kg" not in begun(STRENGTH_LIKELY, {"welcome.units": "imperial"}).last


@pytest.mark.parametrize("part", ["hip", "trunk"])
def test_somebody_on_body_weight_only_is_not_told_to_add_weight_when_it_is_easy(part: str):
    talk = through(begun(LIKELY[part], {"safety.body_first": "yes"})).say("easy")
    assert " kg" not in heard(talk)
    assert "the bar" not in heard(talk)


def through(talk: Talk) -> Talk:
    """As far as the question of how it felt."""
    return talk.tap("Ready", "I have it", "Start the set", "Start the set")


@pytest.mark.parametrize(("felt", "words"), [
    ("Easy, back still", "make it harder: Halve the heel lift"), ("Hard, back still", "above the depth where it moves"),
    ("My back moved", "go less far, so that the back stays still")])
def test_what_was_felt_is_kept_and_answered(felt: str, words: str):
    talk = through(begun(CALF_LIKELY)).tap(felt)
    assert talk.found["prime.felt"] in ("easy", "right", "moved")
    assert words in heard(talk)
    assert talk.state == "home.pick"


def test_something_that_hurt_leads_to_the_pain_questions():
    talk = through(begun(CALF_LIKELY)).tap("Something hurt")
    assert talk.state == "pain.where"
    talk.say("Lower back", "1", "no", "no", "no")
    assert talk.known["safety.level"] == "no_load"
    assert "Keep today's squats" not in heard(talk)


def test_pain_told_during_a_set_ends_the_drill():
    talk = begun(CALF_LIKELY).tap("Ready", "I have it").say("ow, my ankle hurts", "Ankle or foot", "3", "no", "no", "Just now")
    assert talk.known["safety.level"] == "not_today"
    assert talk.state == "home.pick"
    assert "prime.felt" not in talk.found


def test_without_results_there_is_no_drill():
    talk = Talk(FLOW, known=CHECKED, book=BOOK)
    assert "The drill comes from the tests" in heard(talk)


def test_where_nothing_explains_it_no_drill_is_suggested():
    talk = begun({**LENGTH_OUT, **STRENGTH_OUT, **CONTROL_OUT})
    assert "No drill is suggested for you just now" in heard(talk)
    assert talk.answers == {}


def test_todays_safety_check_comes_first():
    assert Talk(FLOW, known={**UNCHECKED, "drill": "calf"}, book=BOOK).state == "safety_check.bladder"


@pytest.mark.parametrize("level", ["no_load", "not_today", "clinician", "same_day", "emergency"])
def test_a_level_that_bars_squats_bars_the_drill(level: str):
    assert begun(CALF_LIKELY, {"safety.level": level}).state == "home.pick"


def test_a_pinched_ankle_gets_the_heel_lift_instead():
    pinched = {"squat_look": replace(LOOK, heels_rounds="no"), "knee_to_wall": KneeToWall(
        "tape", left_1=6, left_limit="calf", right_1=6, right_limit="pinch")}
    assert "The drill: squat with a heel lift" in begun(pinched).last

