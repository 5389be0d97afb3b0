"""Knee to wall, lived through."""

from collections.abc import Mapping
from typing import Any

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import ReadFilm, Record
from companion.conversation.events import FilmRead, Sent
from companion.conversation.flow import Flow
from companion.screening.about import About
from companion.screening.findings import findings_of
from companion.screening.protocols.knee_to_wall import PROTOCOL, KneeToWall
from companion.screening.protocols.knee_to_wall import readings as knee_to_wall_readings
from companion.screening.screen import screen_of
from flows.knee_to_wall import FLOW
from tests.drive import CHECKED, UNCHECKED
from tests.drive import Talk as Anybody

TALL: Mapping[str, Value] = {**CHECKED, "about_you.height": 180.0}


def Talk(flow: Flow, known: Mapping[str, Value] = TALL, **more: Any) -> Anybody:
    return Anybody(flow, known, **more)


def test_one_reading_away_from_the_lines_needs_no_second():
    talk = Talk(FLOW).say("tape", "7", "calf", "14.5", "neither")
    assert "left_2" not in talk.answers
    assert talk.answers["right_limit"] == "neither"
    assert talk.state == "home.pick"


def test_the_height_is_asked_here_and_only_where_it_is_not_known():
    assert Anybody(FLOW).say("tape").state == "about_you.ok"
    assert Talk(FLOW).say("tape").state == "knee_to_wall.left_1"


def test_a_third_reading_is_asked_at_the_detectable_change_of_1_9_cm():
    """Powden 2015 Man Ther 20:524 (read): MDC 1.9 cm."""
    assert Talk(FLOW).say("tape", "8.9", "7.2").state == "knee_to_wall.left_limit"
    assert Talk(FLOW).say("tape", "8.9", "7.0").state == "knee_to_wall.left_3"


@pytest.mark.parametrize(("steady", "third"), [
    ("8.8", False), ("8.9", True), ("11.2", True), ("11.5", True), ("13.6", True), ("13.7", False)])
def test_a_third_reading_is_asked_where_two_stand_within_error_of_a_line_or_between_the_lines(steady: str, third: bool):
    """10 - 1.645 * 0.685 = 8.87 cm; 12.5 + 1.13 = 13.63. Steady hands are asked as unsteady ones are: the mean of three counts."""
    talk = Talk(FLOW).say("tape", steady)
    assert (talk.state == "knee_to_wall.left_2") is third
    assert not third or talk.say(steady).state == "knee_to_wall.left_3"


def test_a_second_reading_with_its_unit_is_a_reading_and_puts_no_earlier_one_right():
    talk = Talk(FLOW).say("level", "mid", "35 deg", "38 deg")
    assert not talk.session.aside
    assert talk.state == "knee_to_wall.left_deg_3"
    assert (talk.answers["left_deg_1"], talk.answers["left_deg_2"]) == (35, 38)


def test_steady_and_unsteady_readings_of_one_mean_say_the_same():
    steady, unsteady = ([one.row.id for one in findings_of(screen_of(KneeToWall("tape", left_1=a, left_2=b, left_3=c, left_limit="calf")))]
                        for a, b, c in ((11.5, 11.5, 11.5), (10.5, 12.5, 11.5)))
    assert steady == unsteady == ["knee_to_wall_clear"]


def test_a_distance_no_shin_can_reach_is_measured_again_and_never_scored():
    """27.5 cm at 180 cm would be a shin at 84 degrees."""
    talk = Talk(FLOW).say("tape", "27.5", "yes")
    assert talk.state == "knee_to_wall.left_1"
    assert "More than 25.1 cm can't be" in talk.says[-2].text
    (kept,) = findings_of(screen_of(KneeToWall("tape", left_1=27.5, left_2=27.5, left_limit="calf")), About(height=180))
    assert kept.row.id == "knee_to_wall_open"
    assert "Measure the left side again" in kept.words


def test_repeats_of_which_no_two_agree_are_not_scored():
    (kept,) = findings_of(screen_of(KneeToWall("tape", left_1=4.0, left_2=7.0, left_3=10.0, left_limit="calf")))
    assert (kept.row.id, "4 cm, 7 cm, 10 cm" in kept.words) == ("knee_to_wall_open", True)


def test_sides_hardly_ever_that_far_apart_are_looked_at_once_more_the_odd_one_named():
    talk = Talk(FLOW).say("tape", "13", "13", "13", "calf", "1", "yes")
    assert talk.state == "knee_to_wall.check"
    assert "the right foot" in talk.last
    assert talk.say("1.1", "yes").answers["right_check"] == 1.1
    assert (talk.state, "the left foot" in talk.last) == ("knee_to_wall.other_check", True)
    assert talk.say("13").answers["left_check"] == 13
    assert talk.state == "knee_to_wall.right_limit"


def test_inches_are_read_and_kept_in_centimetres():
    talk = Talk(FLOW, known={**Talk(FLOW).known, "welcome.units": "imperial"}).say("tape", "4 1/2")
    assert talk.answers["left_1"] == 11.43


def test_pain_in_the_answer_ends_the_test_and_scores_nothing():
    talk = Talk(FLOW).say("tape", "11 but that really hurt")
    assert talk.state == "pain.bad"
    assert talk.answers["left_1"] is None


def test_without_todays_safety_check_it_does_not_open():
    assert Talk(FLOW, known=UNCHECKED).state == "safety_check.ok"


@pytest.mark.parametrize(("at_hand", "offered"), [
    ({}, ["Tape", "Phone level"]), ({"about_you.tape": "no"}, ["Phone level"]), ({"about_you.level": "no"}, ["Tape"]),
    ({"about_you.tape": "no", "about_you.level": "no"}, [])])
def test_only_what_is_at_hand_is_offered_and_there_is_a_way_on_without_either(at_hand: dict[str, str], offered: list[str]):
    talk = Talk(FLOW, known={**TALL, **at_hand})
    labels = [tap.label for row in talk.says[-1].buttons for tap in row]
    assert [label for label in labels if label in ("Tape", "Phone level")] == offered
    assert "strip of paper" in "".join(say.text for say in talk.tap("Neither is at hand").says)


def test_a_brace_or_a_slip_is_kept_and_not_scored():
    talk = Talk(FLOW).say("tape", "6").tap("Brace, shoe or a slip").say("6").tap("I don't know")
    assert "kept and not scored" in "".join(say.text for say in talk.says)
    kept = {key: value for key, value in talk.answers.items() if key in KneeToWall.__dataclass_fields__}
    assert {one.row.id: one.words.rpartition(". But ")[2] for one in findings_of(screen_of(KneeToWall(**kept)))} == {
        "knee_to_wall_open": "what stopped it is not known, so it decides nothing."}
    assert "a brace, shoe or slip stopped it" in findings_of(screen_of(KneeToWall(**kept)))[0].words


FILMED = {**TALL, "films": "yes"}


def test_a_film_with_a_card_is_offered_only_where_films_are_read():
    assert "Film or photo, with a card" not in [tap.label for row in Talk(FLOW).says[-1].buttons for tap in row]
    assert Talk(FLOW, FILMED).tap("Film or photo, with a card").state == "knee_to_wall.left_film_video"


def test_a_film_gives_the_shins_lean_of_each_try_by_its_own_method():
    talk = Talk(FLOW, FILMED).tap("Film or photo, with a card")
    talk.send(Sent("video", "v1"))
    assert ReadFilm("v1", "left_film", "1", "shin") in talk.effects
    talk.send(FilmRead("1", "left_film", "good", (("1", 31.0), ("2", 32.0), ("3", None)), "By the cards the shin leans by 31°, 32°."))
    assert talk.state == "knee_to_wall.left_limit"
    rows = [one for one in talk.effects if isinstance(one, Record) and one.key.startswith("left_film_") and one.method == "film"]
    assert [(one.key, one.side, one.value) for one in rows if one.unit] == [("left_film_1", "left", 31.0), ("left_film_2", "left", 32.0)]


def test_one_photo_counts_by_its_own_rougher_error_and_only_where_no_film_was_read():
    photo = KneeToWall("film", left_film_photo=28.0, right_film_1=30.0, right_film_photo=20.0)
    assert [(one.value, one.method) for side in ("left", "right") for one in knee_to_wall_readings(photo, side)] == [
        (28.0, "photo"), (30.0, "film")]
    assert PROTOCOL.error("photo").sem > PROTOCOL.error("film").sem > PROTOCOL.error("level").sem


def test_a_film_that_can_not_be_read_is_asked_for_again_and_may_be_left_out():
    talk = Talk(FLOW, FILMED).tap("Film or photo, with a card")
    talk.send(Sent("video", "v1"))
    talk.send(FilmRead("1", "left_film", "mend", (("1", None),), "Card 4 (shin) is hidden."))
    assert any("Card 4 (shin) is hidden." in say.text for say in talk.says)
    assert talk.state == "knee_to_wall.left_film_video"
    assert talk.tap("Skip").state == "knee_to_wall.left_limit"


def test_a_shin_on_film_is_held_against_the_lines_in_degrees_and_counts_for_less():
    filmed = KneeToWall("film", left_film_1=28.0, left_film_2=28.0, left_film_3=28.0, left_limit="calf")
    (one,) = findings_of(screen_of(filmed))
    assert one.row.id == "knee_to_wall_short"
    assert one.grade.rank == one.row.grade.rank - 1
