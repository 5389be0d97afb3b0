"""Warm-up, lived through."""

import pytest

from companion.conversation.effects import Remind, Say
from flows.warm_up import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk

CHECKED_TODAY = {key: value for key, value in CHECKED.items() if not key.startswith("warm")} | {"today": "2026-03-02"}


def begun(**more: str) -> Talk:
    return Talk(FLOW, known={**CHECKED_TODAY, **more})


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def test_walk_squats_and_walk_again_make_the_lifter_warm():
    talk = begun().tap("No", "Start", "Done", "Start")
    assert talk.found == {"warm": "done"}
    assert talk.answers == {"heavy": "no", "walk": "ready", "squats": "ready", "walk_more": "ready"}


def test_each_walk_lasts_a_minute():
    talk = begun().tap("No", "Start")
    over = [effect for effect in talk.effects if isinstance(effect, Say) and effect.text == "That is one minute."]
    assert [say.after for say in over] == [60]


def test_heavy_work_puts_the_tests_off_by_two_days_without_warming_up():
    talk = begun().tap("Yes")
    assert talk.found == {"warm": "later"}
    assert "walk" not in talk.answers
    assert Remind("screen", "screen", "2026-03-04") in talk.effects


def test_putting_off_names_the_day_and_blames_nobody():
    said = heard(begun().tap("Yes"))
    assert "Wednesday 4 March" in said
    assert "nothing is lost" in said
    assert "should" not in said


def test_two_days_on_crosses_the_end_of_a_month():
    talk = begun(today="2028-02-28").tap("Yes")
    assert Remind("screen", "screen", "2028-03-01") in talk.effects


def test_where_only_floor_tests_are_allowed_the_squats_are_left_out():
    talk = begun(**{"safety.level": "no_load"}).tap("No", "Start", "Start")
    assert "squats" not in talk.answers
    assert talk.found == {"warm": "done"}


@pytest.mark.parametrize("replies", [("skip", "done", "start"), ("start", "skip", "start"), ("start", "done", "skip")])
def test_a_warm_up_with_a_part_skipped_does_not_count(replies: tuple[str, ...]):
    talk = begun().say("no", *replies)
    assert "warm" not in talk.found
    assert "A part of the warm-up was left out" in heard(talk)


def test_without_an_answer_about_heavy_work_nothing_is_concluded():
    talk = begun().say("skip")
    assert talk.found == {}
    assert "walk" not in talk.answers


def test_pain_during_the_squats_ends_it_without_a_warm_lifter():
    talk = begun().tap("No", "Start").say("ow my knee hurts")
    assert talk.state == "pain.bad"
    talk.say("3")
    assert "warm" not in talk.found


def test_stopping_asks_first_whether_something_hurt():
    assert "Did something hurt?" in begun().tap("No", "Stop").last


def test_without_todays_safety_check_it_does_not_open():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"


@pytest.mark.parametrize("level", ["not_today", "clinician", "same_day", "emergency"])
def test_a_level_that_bars_testing_bars_warming_up(level: str):
    assert begun(**{"safety.level": level}).state == "home.pick"
