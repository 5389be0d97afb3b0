"""Bird dog, lived through."""

import pytest

from companion.conversation.effects import ReadFilm, Record, Say
from companion.conversation.events import FilmRead, Sent
from companion.screening.findings import findings_of
from companion.screening.protocols.bird_dog import BirdDog
from companion.screening.screen import screen_of
from flows.bird_dog import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk

LEFT = ("start", "8", "nothing moved", "done", "hip turned")
RIGHT = ("start", "9", "back sagged", "done", "clean")


def test_both_legs_are_held_and_then_moved_slowly():
    talk = Talk(FLOW).say("mirror", "ready", *LEFT, *RIGHT)
    assert (talk.answers["left_hold"], talk.answers["right_hold"]) == (8, 9)
    assert (talk.answers["left_shape"], talk.answers["right_shape"]) == ("clean", "back")
    assert (talk.answers["left_slow"], talk.answers["right_slow"]) == ("hip", "clean")
    assert talk.state == "home.pick"


def test_the_hold_is_counted_in_and_out_and_the_question_waits_for_its_end():
    talk = Talk(FLOW).say("mirror", "ready", "start")
    counted = [(say.after, say.text) for say in talk.says if say.after]
    assert [after for after, _ in counted] == [8, 18, 19]
    assert "10 seconds" in counted[0][1]
    assert "how many" in counted[-1][1]


def test_with_a_film_both_legs_are_done_in_one_go_and_answered_from_it_afterwards():
    """One phone can't film and be tapped: no start button, no count, and both sides' numbers after the block."""
    talk = Talk(FLOW).say("film")
    assert talk.state == "bird_dog.did"
    assert "did any set hurt? Which?" in talk.last
    assert "Come down as soon as" in talk.last
    talk.say("nope", "8", "nothing moved", "hip turned", "9", "back sagged", "clean")
    assert [talk.answers[f"{side}_{what}"] for side in ("left", "right") for what in ("hold", "shape", "slow")] == [
        8, "clean", "hip", 9, "back", "clean"]
    assert not {"left_do", "right_do", "left_slow_do"} & talk.answers.keys()
    assert not [say for say in talk.says if say.after]


@pytest.mark.parametrize("hurt", ["Left hurt", "It hurt, not sure which"])
def test_a_leg_that_hurt_in_the_film_ends_it_and_nothing_is_asked_of_it(hurt: str):
    talk = Talk(FLOW).say("film").tap(hurt)
    assert talk.state == "pain.bad"
    assert "left_hold" not in talk.answers


def test_a_film_left_out_is_not_asked_about():
    talk = Talk(FLOW).say("film").tap("Leave it out")
    assert "left_hold" not in talk.answers
    assert talk.state == "home.pick"


@pytest.mark.parametrize(("typed", "kept"), [("0", 0), ("9", 9), ("10 s", 10), ("seven", 7)])
def test_seconds_up_to_the_ten_of_the_hold_are_kept(typed: str, kept: float):
    assert Talk(FLOW).say("mirror", "ready", "start", typed).answers["left_hold"] == kept


@pytest.mark.parametrize("typed", ["11", "-1", "all", "8 to 9"])
def test_other_seconds_are_asked_again(typed: str):
    talk = Talk(FLOW).say("mirror", "ready", "start", typed)
    assert talk.state == "bird_dog.left_hold"
    assert "left_hold" not in talk.answers


def test_seconds_are_kept_with_how_they_were_seen():
    talk = Talk(FLOW).say("mirror", "ready", "start", "8")
    assert [row.method for row in talk.effects if isinstance(row, Record) and row.key == "left_hold"] == ["mirror"]


def test_a_stick_is_laid_on_the_back_by_its_own_setup():
    talk = Talk(FLOW).say("stick")
    assert talk.state == "bird_dog.setup_stick"
    assert talk.say("ready").state == "bird_dog.left_do"
    assert Talk(FLOW).say("friend").state == "bird_dog.setup"


def test_a_hold_that_was_not_done_is_not_asked_about():
    talk = Talk(FLOW).say("feel", "ready", "skip")
    assert talk.state == "bird_dog.left_slow_do"
    assert talk.say("skip").state == "bird_dog.right_do"
    assert not {"left_hold", "left_shape", "left_slow"} & talk.answers.keys()


def test_every_movement_names_its_leg_and_carries_a_caution():
    talk = Talk(FLOW).say("mirror", "ready", *LEFT, *RIGHT)
    moving = [say.text for say in talk.says if isinstance(say, Say) and "Come down as soon as" in say.text]
    assert len(moving) == 4
    assert all("left leg" in text for text in moving[:2])
    assert all("right leg" in text for text in moving[2:])


def test_pain_after_the_hold_ends_the_test_and_scores_nothing():
    talk = Talk(FLOW).say("mirror", "ready", "start", "6 and then it hurt")
    assert talk.state == "pain.bad"
    assert talk.answers["left_hold"] is None


def test_it_opens_on_a_day_for_floor_tests_only():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "no_load"}).state == "bird_dog.seen_by"


def test_it_stays_shut_on_a_day_without_tests():
    assert Talk(FLOW, known={**CHECKED, "safety.level": "not_today"}).state == "home.pick"


def test_it_wants_the_safety_check_and_then_the_warm_up():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"
    assert Talk(FLOW, known={**CHECKED, "warm": "no"}).state == "warm_up.ok"


def test_after_all_ten_seconds_nobody_asks_what_moved():
    talk = Talk(FLOW).say("mirror", "ready", "start", "10")
    assert talk.state == "bird_dog.left_slow_do"


def test_one_second_of_ten_is_no_clean_hold():
    dog = {f"{side}_{key}": value for side in ("left", "right") for key, value in (("hold", 1.0), ("shape", "clean"), ("slow", "clean"))}
    assert rows_of(BirdDog("film", **dog)) == ["bird_dog_short"]
    assert rows_of(BirdDog("film", **dog | {"left_hold": 10.0, "right_hold": 10.0})) == ["bird_dog_clean"]
    assert rows_of(BirdDog("film", **dog | {"left_hold": 10.0, "right_hold": None})) == ["bird_dog_short"]


def rows_of(dog: BirdDog) -> list[str]:
    return [one.row.id for one in findings_of(screen_of(dog))]


def test_with_cards_a_film_of_each_leg_says_how_still_pelvis_and_back_were():
    talk = Talk(FLOW, known={**CHECKED, "films": "yes"}).say("film", "nope", "10", "clean")
    assert any("card 1 on the ribs" in say.text for say in talk.says)
    talk.send(Sent("video", "v1"))
    assert ReadFilm("v1", "left_film", "1", "trunk") in talk.effects
    talk.send(FilmRead("1", "left_film", "good", (("pelvis", 4.0), ("back", 6.0)), "Read."))
    assert {one.key: one.value for one in talk.effects if isinstance(one, Record) and one.unit == "deg"} == {
        "left_film_pelvis": 4.0, "left_film_back": 6.0}
    assert "right leg" in talk.last
