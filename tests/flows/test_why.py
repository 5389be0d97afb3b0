"""Why: what is told of a number, a line, a ruling, a dose or a date that is asked about."""

from typing import Any

import pytest

from companion.conversation.events import Tapped
from companion.conversation.flow import Ask, Tell
from companion.conversation.kinds import Hold
from companion.language.units import IMPERIAL
from companion.screening.sources import LETTERS_MOST, SOURCES, WORDS_MOST, why
from companion.screening.topics import TOPIC_BY_NAME, TOPICS, answers
from flows.block import AMOUNTS
from flows.catalogue import BOOK
from flows.why_told import MESSAGES_MOST, topic_of
from tests.drive import Talk
from tests.flows.test_outcome import told
from tests.screening.build import CALF_LIKELY, CONTROL_LIKELY, LENGTH_OUT, LOOK, STRENGTH_LIKELY, STRENGTH_OUT
from tests.table import each_row

ALL: dict[str, dict[str, Any]] = {
    "calf": CALF_LIKELY, "strength": STRENGTH_LIKELY, "control": CONTROL_LIKELY, "out": {**LENGTH_OUT, **STRENGTH_OUT, "squat_look": LOOK}}


def since(talk: Talk, before: int) -> list[str]:
    return [say.text for say in talk.says[before:]]


def asked(talk: Talk, *replies: str) -> str:
    """What is said to these replies."""
    before = len(talk.says)
    talk.say(*replies)
    return "\n".join(since(talk, before))


@each_row(("question", "topic"), [
    ("why 80 %", "load"), ("why 80%?", "load"), ("why the 70° line?", "leg_raise"), ("why 80 degrees", "leg_raise"),
    ("why 10 cm", "knee_to_wall"), ("why 5 inches?", "knee_to_wall"), ("why 4 weeks", "retest"), ("but why the retest date", "retest"),
    ("why 2 sets of 5", "drill"), ("why is it the calf", "length"), ("why control?", "control"), ("why that load", "load"),
    ("why 1.77", "pain"), ("why the measurement error", "error"), ("why no deeper?", "depth"), ("why 3 days a week", "home"),
    ("why 3 seconds down?", "drill"), ("why hold 30 seconds", "home"), ("why the plank", "home"),
    ("why quiet hours", "reminders"), ("why am i quiet", "dates"),
    ("why three squats", "doing"), ("why so slow", "doing"), ("why three big steps away", "doing"), ("why ten easy squats", "warm_up"),
    ("why six months", "safety"), ("why set-ups", "set_up"), ("why the set up", "set_up")])
def test_a_question_in_words_finds_its_topic(question: str, topic: str):
    flow, said = BOOK.sentence(question) or ("", "")
    assert flow == "why_told"
    assert topic_of(said) == topic


@pytest.mark.parametrize("words", ["why does my back round", "why not", "find out why my back rounds", "whyever"])
def test_other_questions_are_left_to_others(words: str):
    assert (BOOK.sentence(words) or ("",))[0] != "why_told"


def test_every_row_of_the_table_answers_some_topic():
    reached = {name for one in TOPICS for name in one.rows} | {"calf", "hip", "control"}
    assert {row.topic for row in SOURCES.values()} <= reached


def test_no_topic_has_more_answers_than_are_told():
    assert max(len(answers(one)) for one in TOPICS) <= MESSAGES_MOST


def test_a_tap_under_a_ruling_names_the_rows_that_decided_and_whose_weights_they_are():
    talk = told(**CALF_LIKELY)
    (button,) = [tap for say in talk.says if say.text.startswith("Length: likely") for row in say.buttons for tap in row]
    before = len(talk.says)
    talk.send(Tapped(button.data))
    said = "\n".join(since(talk, before))
    assert "Length, decided by: " in said
    assert "the knee stays clearly under the line, with a pull in the calf (knee to wall, left; moderate)" in said
    assert "The weights are this project's choice." in said
    assert "no study has tried them" in said
    assert "In the one study of lifters, more ankle range went with more rounding." in said
    assert "10.26603/001c.122637" in said
    assert talk.state == "outcome.why"  # and the open question waits


def test_the_button_under_the_load_tells_of_the_load():
    talk = told(**CONTROL_LIKELY).tap("What to do now")
    load = next(say for say in talk.says if "80 % of 20 kg" in say.text)
    (button,) = [tap for row in load.buttons for tap in row]
    before = len(talk.says)
    assert button.label == "Why?"
    talk.send(Tapped(button.data))
    assert since(talk, before)[0].startswith("At most 80 % of your working load, with a still back on film")
    assert "Our own cautious choice." in since(talk, before)[0]


def test_why_alone_offers_only_what_was_told():
    untold = told()
    untold.say("why?")
    labels = [tap.label for row in untold.says[-1].buttons for tap in row]
    assert "Length" not in labels
    assert "Measurement error" in labels
    talk = told(**CONTROL_LIKELY).tap("What to do now")
    talk.say("why?")
    assert "Control" in [tap.label for row in talk.says[-1].buttons for tap in row]
    before = len(talk.says)
    talk.tap("Control")
    assert "movement-control tests did not go with rounding" in "\n".join(since(talk, before))


def test_in_inches_a_line_is_told_in_inches():
    said = asked(told({"welcome.units": "imperial"}), "why the knee to wall lines")
    assert "4 in from toe to wall" in said
    assert "5 in is a little more than the 4.9 in I use" in said
    assert "A weight held in front is 4.4 lb to 11 lb" in asked(told({"welcome.units": "imperial"}), "why set-ups")


@pytest.mark.parametrize("topic", [one.name for one in TOPICS])
@pytest.mark.parametrize("tests", ALL.values(), ids=ALL.keys())
def test_every_answer_is_short(topic: str, tests: dict[str, Any]):
    talk = told(**tests)
    talk = talk.tap("What to do now") if talk.state == "outcome.why" else talk
    before = len(talk.says)
    talk.say(f"why {topic.replace('_', ' ')}")
    said = since(talk, before)
    assert said
    assert not any("nothing on that" in text for text in said)
    assert all(len(text) <= LETTERS_MOST and len(text.split()) <= WORDS_MOST for text in said)


def test_in_the_middle_of_a_test_the_open_question_is_asked_again_after_the_answer():
    talk = Talk(BOOK["knee_to_wall"].flow, book=BOOK)
    open_question = talk.state
    said = asked(talk, "why 10 cm")
    assert "10 cm from toe to wall" in said
    assert talk.state == open_question
    assert "go on" not in said


# what no rule reads and people are only told: the number in their words ------------------------------------------------


@each_row(("row", "told"), [
    ("mdc", "is 2.772 times the standard error of one reading (1.96 · √2)"), ("phone_level_icc", "it agreed with itself at 0.65 to 0.82"),
    ("raise_by_age", "did not change with age between 20 years and 79 years"),
    ("rounding_is_common", "about 26° going down with half their weight on the bar, women 13°"),
    ("lean_loads_back", "In 8 people the load on the lower back followed"),
    ("prime_dose", "A drill before squats is 2 to 3 easy sets; I begin with 2"),
    ("plank", "A front plank is held 15 s, up to 20 s"), ("drill_stop", "A stop on the way down lasts 1 s to 2 s"),
    ("heel_lift", "Heels go on 2 cm to 3 cm"),
    ("stretch_dose", "Stretches are 60 s in all for each muscle"), ("prompts", "at most 1 reminder and one follow-up"),
    *((f"lifters_{what}", "18 people, motion sensors, 70 % of their best") for what in ("ankle", "hip", "control", "proportions")),
    ("minutes_screen", "within 24 min"), ("minutes_full_screen", "40 min or less"),
    ("test_minutes", "the squat look 6, a film with cards 15"), ("leg_raise_sides", "more than 35° apart")])
def test_a_number_that_is_told_only_is_told_as_it_is(row: str, told: str):
    topic = next(one.name for one in TOPICS if SOURCES[row].topic in one.rows) if SOURCES[row].topic in {
        name for one in TOPICS for name in one.rows} else ""
    said = answers(TOPIC_BY_NAME[topic]) if topic else [why(SOURCES[row])]
    assert any(told in text for text in said)


@pytest.mark.parametrize(("flow", "told"), [
    ("hand_on_back_squat", "Two sets of three squats, three seconds down, in one go"), ("squat_look", "Three squats a set, in this order"),
    ("arms_forward_squat", "hands open. Five slow squats, three seconds down."),
    ("arms_forward_squat", "Rest a moment. Three more, heels on"),
    ("pause_squat", "First: three slow squats without stops"), ("pause_squat", "Second, same depth: two squats. Stop"),
    ("pause_squat", "at the bottom, one to two seconds each"), ("hinge_to_squat", "stand up. Three times, slowly."),
    ("rock_back", "come forward. Twice each"), ("rock_back", "sideways near the floor, three big steps away"),
    ("bird_dog", "for how many of the ten seconds did your hips and back stay still? 10 if"),
    ("bird_dog", "Then five slow ones with the left"),
    ("bird_dog", "Keep still for two seconds before each leg"), ("hip_fold", "First lie still for two seconds."),
    ("knee_to_wall", "two big steps away. Stand still two seconds, then three times knee to the wall, two seconds each."),
    ("film_measure", "stand still for two seconds, then three squats. Send"),
    ("film_measure", "Slower: count three seconds on the way down"),
    ("best_squat", "four sets of three squats in one go"), ("warm_up", "Now ten easy squats to a chair"),
    ("warm_up", "walk on the spot for one minute"), ("squat_day", "Walk on the spot for two minutes, then ten easy squats"),
    ("prime", "If it stays easy on three days"), ("trial", "Twelve days at the same depth and load"),
    ("safety_check", "no symptoms for six months"), ("safety_check", "undo it once, within ten minutes")])
def test_what_is_to_be_done_is_told_in_the_numbers_of_the_table(flow: str, told: str):
    assert any(told in step.say for step in BOOK[flow].flow.steps if isinstance(step, Ask | Tell))


@pytest.mark.parametrize(("flow", "key", "seconds", "count_in"), [
    ("warm_up", "walk", 60, 0), ("squat_day", "plain", 120, 0), ("bird_dog", "left_do", 10, 8)])
def test_a_timer_runs_as_long_as_is_told(flow: str, key: str, seconds: int, count_in: int):
    (hold,) = [step.kind for step in BOOK[flow].flow.steps if isinstance(step, Ask) and step.key == key and isinstance(step.kind, Hold)]
    assert (hold.seconds, hold.count_in) == (seconds, count_in)


def test_in_pounds_a_weight_in_front_is_told_as_such_weights_come():
    assert AMOUNTS[IMPERIAL]["weight"] == "5 to 10 lb"


@pytest.mark.parametrize(("flow", "told"), [
    ("screen", "Most need about 25 minutes"), ("full_screen", "about 40 minutes"), ("best_squat", "about 4 minutes"),
    ("retest", "About 20 minutes"), ("full_screen", "Next: hand-on-back squat, about 2 minutes"),
    ("full_screen", "Next: leg raise, about 3 minutes"), ("full_screen", "Next: bird dog, about 4 minutes")])
def test_it_is_said_how_long_something_takes(flow: str, told: str):
    one = BOOK[flow].flow
    assert any(told in said for said in (one.invite, *(step.say for step in one.steps if isinstance(step, Ask | Tell))))
