"""Arms-forward squat, lived through."""

import pytest

from companion.conversation.flow import Ask
from flows.arms_forward_squat import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk

STICK = ("film", "stick", "done")


def test_a_clean_set_ends_without_a_second_try():
    talk = Talk(FLOW).say(*STICK, "it all held")
    assert talk.answers["fault"] == "clean"
    assert talk.state == "home.pick"
    assert not {"depth", "heels_do", "shallow_do"} & talk.answers.keys()


def test_a_clean_set_with_a_stick_says_how_little_it_tells():
    assert any("says little" in say.text for say in Talk(FLOW).say(*STICK, "clean").says)
    assert not any("says little" in say.text for say in Talk(FLOW).say("film", "empty", "done", "clean").says)


def test_a_rolling_stick_is_tried_with_heels_up_and_then_less_deep():
    talk = Talk(FLOW).say(*STICK, "it rolled", "parallel")
    assert talk.state == "arms_forward_squat.heels_do"
    talk.say("done", "no")
    assert talk.state == "arms_forward_squat.shallow_do"
    talk.say("done", "no")
    assert (talk.answers["heels_help"], talk.answers["shallow_help"]) == ("no", "no")
    assert not any("not the trunk" in say.text for say in talk.says)


@pytest.mark.parametrize(("heels", "shallow"), [("yes", "no"), ("no", "yes"), ("yes", "yes")])
def test_what_cures_a_rolling_stick_is_told_not_to_be_the_trunk(heels: str, shallow: str):
    talk = Talk(FLOW).say(*STICK, "rolled", "parallel", "done", heels, "done", shallow)
    assert sum("shoulders, ankles or depth, not the trunk" in say.text for say in talk.says) == 1
    assert talk.state == "home.pick"


@pytest.mark.parametrize("fault", ["chest", "my back rounded"])
def test_other_faults_are_tried_with_heels_up_only(fault: str):
    talk = Talk(FLOW).say(*STICK, fault, "a little above", "done", "it did not")
    assert talk.answers["heels_help"] == "no"
    assert talk.answers["depth"] == "a_little_above"
    assert talk.state == "home.pick"


def test_a_load_is_offered_only_to_somebody_who_has_film():
    assert "Film of loaded sets" in _labels(Talk(FLOW).say("film"))
    mirror = Talk(FLOW).say("mirror")
    assert "Film of loaded sets" not in _labels(mirror)
    assert mirror.say("loaded").state == "arms_forward_squat.bar"


@pytest.mark.parametrize("fault", ["clean", "rolled", "chest", "back rounded"])
def test_a_load_is_watched_on_film_and_never_lifted(fault: str):
    talk = Talk(FLOW).say("film", "loaded", "ready", fault, "parallel")
    asked = talk.answers.keys() & {step.key for step in FLOW.steps if isinstance(step, Ask) and step.caution}
    assert not asked
    assert talk.state == "home.pick"
    assert not any("Stop at once" in say.text for say in talk.says)


def test_an_empty_bar_needs_safety_arms_and_back_leads_to_the_stick():
    talk = Talk(FLOW).say("mirror", "empty bar")
    assert "Safety arms" in talk.says[-2].text
    assert talk.say("back").state == "arms_forward_squat.bar"
    assert talk.say("stick").state == "arms_forward_squat.did"


@pytest.mark.parametrize(("replies", "label"), [((), "That hurt"), (("done", "rolled", "parallel"), "Heels up hurt"),
                                                (("done", "rolled", "parallel", "done", "no"), "Less deep hurt")])
def test_a_set_that_hurt_ends_the_test(replies: tuple[str, ...], label: str):
    assert Talk(FLOW).say("film", "stick", *replies).tap(label).state == "pain.bad"


@pytest.mark.parametrize(("look", "asked"), [("film", False), ("mirror", False), ("feel", True)])
def test_it_is_watched_as_the_squat_look_was_if_somebody_saw_that(look: str, asked: bool):
    talk = Talk(FLOW, known={**CHECKED, "squat_look.seen_by": look})
    assert (talk.state == "arms_forward_squat.seen_by") is asked
    assert ("Film of loaded sets" in _labels(talk)) is (look == "film")


def test_what_can_not_be_told_is_skipped_and_nothing_more_is_asked():
    talk = Talk(FLOW).say(*STICK, "skip")
    assert talk.answers["fault"] is None
    assert talk.state == "home.pick"


def test_squats_that_were_not_done_are_not_asked_about():
    assert "fault" not in Talk(FLOW).say("film", "stick", "leave it out").answers
    assert "heels_help" not in Talk(FLOW).say(*STICK, "chest", "below", "leave it out").answers


def test_not_rounded_is_never_taken_for_rounded():
    assert Talk(FLOW).say(*STICK, "not rounded").answers["fault"] == "clean"


def test_pain_in_the_second_try_ends_the_test():
    talk = Talk(FLOW).say(*STICK, "rolled", "parallel", "ow my back")
    assert talk.state == "pain.bad"
    assert talk.answers["heels_do"] is None


def test_while_the_body_works_stop_asks_first_whether_something_hurt():
    talk = Talk(FLOW).say("film", "stick").tap("Stop")
    assert "Did something hurt?" in talk.last


def test_on_a_day_without_load_it_stays_shut():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "home.pick"


def test_it_wants_the_safety_check_and_then_the_warm_up():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"
    assert Talk(FLOW, known={**CHECKED, "warm": "no"}).state == "warm_up.ok"


def _labels(talk: Talk) -> set[str]:
    return {tap.label for row in talk.says[-1].buttons for tap in row}
