"""The filmed squat: what it needs, the test shot, the film, and one change at a time."""

from __future__ import annotations

from companion.conversation.effects import ReadFilm, Record, SendCards
from companion.conversation.events import FilmRead, Sent
from companion.conversation.films import GONE_ON
from flows.film_measure import FLOW
from tests.drive import CHECKED, UNCHECKED, Talk

FILMS = {**CHECKED, "films": "yes"}
NUMBERS = (("onset", 71.5), ("low", 67.0), ("high", 76.0), ("spread", .6), ("deepest", 104.0), ("bend", 12.0))


def heard(talk: Talk, words: str) -> bool:
    return any(words in say.text for say in talk.says)


def begun() -> Talk:
    return Talk(FLOW, FILMS).tap("Yes, they are ready", "Ready", "Ready")


def read(talk: Talk, film: str, outcome: str, numbers: tuple = (), says: str = "Read.") -> Talk:
    return talk.send(FilmRead("1", film, outcome, numbers, says)) or talk


def at_the_film() -> Talk:
    talk = begun()
    talk.send(Sent("photo", "p1"))
    read(talk, "shot", "good")
    return talk.tap("Keep nothing")


def values(talk: Talk) -> dict[str, object]:
    return {one.key: one.value for one in talk.effects if isinstance(one, Record)}


def test_where_films_can_not_be_read_it_says_so_in_one_line_and_asks_nothing():
    talk = Talk(FLOW, CHECKED)
    assert heard(talk, "Films can't be read here")
    assert not any(isinstance(one, Record) for one in talk.effects)


def test_where_films_can_not_be_read_no_safety_check_is_asked_first():
    talk = Talk(FLOW, UNCHECKED)
    assert heard(talk, "Films can't be read here")
    assert "safety_check" not in {frame.flow for frame in talk.session.stack}


def test_without_a_printer_it_ends_and_nothing_is_lost():
    talk = Talk(FLOW, FILMS).tap("No printer")
    assert heard(talk, "Nothing is lost")


def test_the_cards_are_sent_on_the_lifters_paper():
    assert SendCards("letter") in Talk(FLOW, FILMS).tap("Send them, letter").effects


def test_a_test_shot_says_what_to_mend_and_may_be_sent_again():
    talk = begun()
    talk.send(Sent("photo", "p1"))
    assert ReadFilm("p1", "shot", "1", "shot") in talk.effects
    read(talk, "shot", "mend", says="Card 3 (thigh) is hidden.")
    assert heard(talk, "Card 3 (thigh) is hidden.")
    talk.send(Sent("video", "v2"))
    assert ReadFilm("v2", "shot2", "1", "shot") in talk.effects
    read(talk, "shot2", "good")
    assert "May I keep two pictures" in talk.last
    assert "usual squat, without load" in talk.tap("Keep nothing").last


def test_the_film_gives_numbers_to_the_log_and_opens_the_changes():
    talk = at_the_film()
    talk.send(Sent("document", "d1"))
    read(talk, "plain", "onset", NUMBERS, "At about 72°.")
    assert values(talk)["plain_onset"] == 71.5
    assert {one.method for one in talk.effects if isinstance(one, Record) and one.key == "plain_onset"} == {"film"}
    assert heard(talk, "At about 72°.")
    assert "Once more just the same" in talk.last
    assert "Heels up" in talk.tap("Skip").last


def test_a_change_is_told_against_the_plain_film():
    talk = at_the_film()
    talk.send(Sent("document", "d1"))
    read(talk, "plain", "onset", NUMBERS)
    talk.tap("Skip").send(Sent("document", "d2"))
    read(talk, "heels", "onset", (("onset", 84.0), ("spread", .6), ("deepest", 104.0)))
    assert heard(talk, "Heels up: your back rounds later")


def test_the_plain_squat_filmed_twice_shows_how_far_two_films_differ_and_changes_are_held_against_that():
    talk = at_the_film()
    talk.send(Sent("document", "d1"))
    read(talk, "plain", "onset", NUMBERS)
    talk.send(Sent("document", "d2"))
    read(talk, "again", "onset", (("onset", 81.5), ("spread", .6), ("deepest", 104.0)))
    assert heard(talk, "Filmed twice, your rounding began 10° apart.")
    talk.send(Sent("document", "d3"))
    read(talk, "heels", "onset", (("onset", 80.0), ("spread", .6), ("deepest", 104.0)))
    assert heard(talk, "Heels up: no film can tell")


def test_without_rounding_no_change_is_asked_for():
    talk = at_the_film()
    talk.send(Sent("document", "d1"))
    read(talk, "plain", "none", (("onset", None), ("deepest", 104.0)))
    assert not heard(talk, "Heels up")


def test_a_film_sent_again_takes_back_what_the_first_one_gave():
    talk = at_the_film()
    talk.send(Sent("document", "d1"))
    read(talk, "plain", "onset", NUMBERS)
    talk.say("back", "back")
    talk.send(Sent("document", "d2"))
    read(talk, "plain", "mend", tuple((name, None) for name, _ in NUMBERS), "Too dark.")
    assert values(talk)["plain_onset"] is None


def test_a_film_read_after_its_lifter_has_gone_on_changes_nothing():
    talk = begun()
    read(talk, "plain", "onset", NUMBERS)
    assert talk.last == GONE_ON
    assert "plain_onset" not in values(talk)


def test_pain_while_the_film_is_read_comes_first():
    talk = at_the_film()
    talk.send(Sent("document", "d1"))
    talk.say("my back hurts")
    assert talk.session.top.flow == "pain"
    read(talk, "plain", "onset", NUMBERS)
    assert "plain_onset" not in values(talk)


def at_the_loads(**known: object) -> Talk:
    talk = Talk(FLOW, {**FILMS, **known}).tap("Yes, they are ready", "Ready", "Ready", "Skip", "Keep nothing")
    talk.send(Sent("document", "d1"))
    read(talk, "plain", "onset", NUMBERS)
    return talk.tap(*["Skip"] * 6)  # the same again, and five changes


def test_sets_that_are_done_anyway_are_filmed_and_told_against_the_plain_one():
    talk = at_the_loads().say("60 kg")
    talk.send(Sent("document", "d2"))
    read(talk, "load1", "onset", (("onset", 58.0), ("spread", .6), ("deepest", 104.0)))
    assert heard(talk, "With that load: your back rounds earlier than without: -14° (95 in 100: -18 to -9°")
    assert values(talk)["load1_kg"] == 60
    assert "One more set that you do anyway" in talk.last


def test_a_set_above_the_load_to_keep_to_is_not_asked_for():
    talk = at_the_loads(**{"load.limit": "50"}).say("60 kg")
    assert heard(talk, "above the 50 kg to keep to for now")
    assert "One more set" in talk.last


def test_without_a_bar_or_with_loads_closed_no_set_is_asked_for():
    for known in ({"bar.bar": "none"}, {"safety.body_first": "yes"}):
        talk = Talk(FLOW, {**FILMS, **known}).tap("Yes, they are ready", "Ready", "Ready", "Skip", "Keep nothing")
        talk.send(Sent("document", "d1"))
        read(talk, "plain", "none", (("onset", None), ("deepest", 104.0)))
        assert not heard(talk, "Squatting with a bar today anyway")


def test_a_back_that_rounds_only_with_a_load_is_told_so():
    talk = Talk(FLOW, FILMS).tap("Yes, they are ready", "Ready", "Ready", "Skip", "Keep nothing")
    talk.send(Sent("document", "d1"))
    read(talk, "plain", "none", (("onset", None), ("deepest", 104.0)))
    talk.say("60 kg").send(Sent("document", "d2"))
    read(talk, "load1", "onset", (("onset", 80.0), ("spread", .6), ("deepest", 104.0)))
    assert heard(talk, "With that load: your back rounds, and without it does not.")
