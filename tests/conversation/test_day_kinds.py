"""The kinds of question about squat days, and what numbers and shared things are read as."""

from __future__ import annotations

import pytest

from companion.conversation.condition import Facts, fact
from companion.conversation.day_kinds import ClockTime, Day, Rest, SquatDays
from companion.conversation.events import Tapped
from companion.conversation.flow import Ask, Flow, Tell
from companion.conversation.kinds import Answer, Media, Option, ReadingContext, Unclear, Words, YesNo, Zone
from companion.conversation.number_kinds import Number, Numbers, PainScore
from companion.conversation.policy import Policy
from tests.drive import CHECKED, NOW, Talk, small_book
from tests.table import each_row

PLAN = '{"weekly":{"TU":"18:00","FR":"18:00"}}'
EARS = ReadingContext(now=NOW, facts=lambda: {"today": "2026-03-02", "squat.plan": PLAN})
EMPTY = ReadingContext(now=NOW, facts=lambda: {"today": "2026-03-02"})


def value(read: Answer | Unclear) -> object:
    return read.value if isinstance(read, Answer) else read.reason


def rest(half: str, **facts: str) -> ReadingContext:
    kept: Facts = {"today": "2026-03-02", "squat.plan": PLAN, "open": half, **facts}
    return ReadingContext(now=NOW, facts=lambda: kept)


# squat days -------------------------------------------------------------------------------------------------


def test_a_plan_and_a_change_are_kept_as_the_calendars_own_text():
    assert value(SquatDays().read("Tuesdays and Fridays at 6pm", EMPTY)) == "weekly TU=18:00,FR=18:00"
    assert value(SquatDays().read("skip friday", EARS)) == "skip 2026-03-06"


def test_holes_are_kept_with_it():
    assert value(SquatDays().read("tue and fri 6", EMPTY)) == "weekly TU=06:00?,FR=06:00?"


def test_a_shorter_reply_is_read_with_the_words_before_it():
    assert value(SquatDays(before="move it to").read("sunday 10am", EARS)) == "move 2026-03-03 2026-03-08 10:00"
    assert value(SquatDays(before="also on").read("sunday 10am", EARS)) == "on 2026-03-08 10:00"
    assert value(SquatDays(before="pause until").read("10 march", EARS)) == "pause 2026-03-10"


def test_a_choice_said_exactly_comes_before_reading():
    assert value(SquatDays((Option("tap", "Other days", ("other",)),)).read("other", EARS)) == "tap"


def test_it_is_the_next_one_from_the_day_that_is_said_to_be_first():
    assert value(SquatDays().read("skip it", EARS)) == "skip 2026-03-03"
    late = ReadingContext(now=NOW, facts=lambda: {**EARS.facts(), "since": "2026-03-04"})
    assert value(SquatDays().read("skip it", late)) == "skip 2026-03-06"


@pytest.mark.parametrize("words", ["tomorrow", "friday", "10 march"])
def test_a_day_is_the_answer_also_where_it_is_a_word_for_not_now(words: str):
    assert SquatDays().claims(words, EARS)
    assert Rest().claims(words, EARS)


@pytest.mark.parametrize("words", ["stop", "later", "skip", "back", "not now"])
def test_control_words_are_not_claimed(words: str):
    assert not SquatDays().claims(words, EARS)
    assert not YesNo().claims("tomorrow", EARS)


@pytest.mark.parametrize("words", ["skip friday or not", "maybe tuesdays", "", "🤷", "a" * 400])
def test_what_is_not_clear_is_not_guessed(words: str):
    assert isinstance(SquatDays().read(words, EARS), Unclear)


@each_row(("before", "facts", "words", "kept"), [
    ("", EMPTY, "mondays n thursdays six pm after im showered", "weekly MO=18:00,TH=18:00"),
    ("", EMPTY, "mondays n thursdays half six after work", "weekly MO=18:30,TH=18:30"),
    ("", EMPTY, "every second day at seven a.m., before the ward", "every 2 07:00 ????-??-??"),
    ("", EMPTY, "every third day five in the morning, dont ask", "every 3 05:00 ????-??-??"),
    ("", EARS, "mondays n thursdays half six after work", "weekly MO=18:30,TH=18:30"),
    ("", EARS, "skip friday because work is mad", "skip 2026-03-06"),
    ("also on", EARS, "throw in sunday ten in the morning when her dad has her", "on 2026-03-08 10:00"),
    ("move it to", EARS, "my shift changed, Wednesday at nineteen hours", "move 2026-03-03 2026-03-04 19:00"),
    ("pause until", EARS, "third of january, once the hangover's gone", "pause 2027-01-03")])
def test_days_and_times_are_read_within_longer_sentences(before: str, facts: ReadingContext, words: str, kept: str):
    assert value(SquatDays(before=before).read(words, facts)) == kept


@each_row(("before", "facts", "words"), [
    ("", EARS, "skip friday when it rains"), ("", EARS, "skip friday, just kidding"), ("", EARS, "I squatted, friday 7pm"),
    ("move it to", EARS, "sunday when it rains, if the gym is open"), ("move it to", EARS, "not sunday, my kid is ill"),
    ("", EMPTY, "tuesdays if I feel good"), ("", EMPTY, "mondays, not sure when"), ("", EMPTY, "tuesdays because of work, not fridays"),
    ("", EMPTY, "depends on the rota, they only tell us friday")])
def test_what_hangs_on_something_is_no_change(before: str, facts: ReadingContext, words: str):
    assert isinstance(SquatDays(before=before).read(words, facts), Unclear)


# the rest of a half ---------------------------------------------------------------------------------------------


@each_row(("half", "reply", "whole"), [
    ("weekly TU=06:00?", "evening", "weekly TU=18:00"), ("weekly TU=06:00?", "after work", "weekly TU=18:00"),
    ("weekly TU=??:??", "six pm after im showered", "weekly TU=18:00"), ("weekly TU=06:00?", "am", "weekly TU=06:00"),
    ("weekly TU=??:??", "18:00", "weekly TU=18:00"), ("weekly TU=??:??", "6", "weekly TU=06:00?"),
    ("every 2 07:00 ????-??-??", "tomorrow", "every 2 07:00 2026-03-03"),
    ("move 2026-03-03 ????-??-?? 18:00", "thursday", "move 2026-03-03 2026-03-05 18:00"),
    ("move 2026-03-03 ????-??-?? 18:00", "thursday 7pm", "move 2026-03-03 2026-03-05 19:00"),
    ("move 2026-03-03 ????-??-?? 18:00", "thursday at 7", "move 2026-03-03 2026-03-05 07:00?"),
])
def test_what_is_missing_is_filled_in(half: str, reply: str, whole: str):
    assert value(Rest().read(reply, rest(half))) == whole


def test_a_day_to_move_to_is_checked_against_the_plan():
    assert "is a squat day already" in str(value(Rest().read("friday", rest("move 2026-03-03 ????-??-?? 18:00"))))


def test_where_nothing_is_clear_it_is_asked_again_with_what_is_wanted():
    assert isinstance(Rest().read("some time", rest("weekly TU=??:??")), Unclear)
    assert Rest().example(rest("weekly TU=06:00?")) == "Say “morning” or “evening”."
    assert Rest().example(rest("every 2 07:00 ????-??-??")) == "For example: tomorrow."
    assert Rest().example(rest("weekly TU=??:??")) == "For example: 18:00, or 6pm."


def test_a_tapped_word_is_read_like_a_typed_one():
    kind = Rest(choices=(Option("evening", "In the evening"),))
    assert value(kind.tapped(kind.options[0], rest("weekly TU=06:00?"))) == "weekly TU=18:00"


def test_a_button_that_does_not_fit_any_more_is_answered_and_asked_again():
    flow = Flow("days", 1, "Days", policy=Policy.TALK, at_start=lambda known: {"open": "weekly TU=??:??"}, steps=(
        Ask("rest", "When?", Rest(choices=(Option("tomorrow", "Tomorrow"),))), Tell("Kept.")))
    talk = Talk(flow, known=CHECKED, book=small_book(flow)).tap("Tomorrow")
    assert talk.state == "days.rest"
    assert "could not read" in talk.last


# times and days -------------------------------------------------------------------------------------------------


def test_a_clock_keeps_one_time_and_asks_back_where_two_are_meant():
    assert value(ClockTime().read("6:30pm", EMPTY)) == "18:30"
    assert value(ClockTime().read("6", EMPTY)) == "In the morning or in the evening?"
    assert value(ClockTime(evening=True).read("6", EMPTY)) == "18:00"
    assert value(ClockTime(evening=False).read("6", EMPTY)) == "06:00"
    assert value(ClockTime().read("soon", EMPTY)) == "I need a time of day."
    assert [option.label for option in ClockTime(("20:00", "21:00")).options] == ["20:00", "21:00"]


@each_row(("evening", "words", "kept"), [
    (True, "half nine", "21:30"), (False, "half seven", "07:30"), (None, "half six before the gym opens", "06:30"),
    (None, "half seven with my coffee", "07:30"), (True, "half seven once the little one's down", "19:30"),
    (True, "when i clock off, five", "17:00"), (True, "when bath time is done so half seven", "19:30"),
    (None, "six pm after im showered", "18:00"),
    (False, "my 2 kids wake me at 6", "06:00"), (None, "no seven pm not six", "19:00"), (None, "at nineteen hours", "19:00")])
def test_a_time_is_read_within_a_sentence(evening: bool | None, words: str, kept: str):
    assert value(ClockTime(evening=evening).read(words, EMPTY)) == kept


@pytest.mark.parametrize("words", ["varies, my alarm is never the same two days running", "7 days a week", "not half six", "nine or ten",
                                   "when is it, at five?", "two hours before", "half", "start at eleven am, not ten"])
def test_a_number_that_is_no_time_is_asked_again(words: str):
    assert value(ClockTime(evening=False).read(words, EMPTY)) == "I need a time of day."


def test_only_a_time_alone_is_claimed_so_that_signs_are_heard_beside_one():
    assert ClockTime().claims("half six", EMPTY)
    assert not ClockTime().claims("half six, and i can't see the point any more", EMPTY)


def test_a_day_is_read_within_a_sentence_that_agrees():
    assert value(Day().read("The twelfth of March would fit, he's back from holiday", EMPTY)) == "2026-03-12"
    for words in ("friday doesn't work", "anything but friday", "friday is no good", "not friday, he's away"):
        assert isinstance(Day().read(words, EMPTY), Unclear)


def test_a_day_is_one_to_come():
    assert value(Day().read("16 march", EMPTY)) == "2026-03-16"
    assert isinstance(Day().read("yesterday", EMPTY), Unclear)


# other kinds that grew ------------------------------------------------------------------------------------------


LOAD = Number("kg", 0, 500, usual=(0, 300), example_value=80, choices=(
    Option("same", "The same again", ("same",), only_if=fact("last").known), Option("none", "No bar today", ("none",))))


def test_a_number_may_have_answers_that_are_none():
    assert value(LOAD.read("82,5 kg", EMPTY)) == 82.5
    assert value(LOAD.read("same", EMPTY)) == "same"
    assert not LOAD.unusual("same")
    assert LOAD.unusual(400.0)


def test_such_an_answer_is_taken_by_its_button_only_while_it_is_offered():
    flow = Flow("load", 1, "Load", policy=Policy.TALK, steps=(Ask("load", "Load?", LOAD), Tell("Kept.")))
    talk = Talk(flow, known=CHECKED, book=small_book(flow))
    assert [tap.label for row in talk.says[-1].buttons for tap in row][:1] == ["No bar today"]
    talk.send(Tapped("load.1.load.same"))
    assert talk.state == "load.load"
    assert talk.say("same").state == "load.load"
    assert talk.tap("No bar today").answers["load"] == "none"


@each_row(("text", "kept"), [
    ("20, 10, 5 and 2.5", "20,10,5,2.5"), ("2.5 5 10 20", "20,10,5,2.5"), ("20kg/10kg/5kg", "20,10,5"),
    ("1,25 and 2,5", "2.5,1.25"),
    ("5, 5, 5", "5"), ("20", "20"),
    ("20,10,5", "20,10,5"), ("20,5", "20,5"), ("12,5 and 20", "20,12.5"), ("20, 10, 2,5", "20,10,2.5"),
    ("20, 15, 10, 5, 2.5, 1.25 kg", "20,15,10,5,2.5,1.25"), ("got twenties tens and fives, two each", "20,10,5"),
    ("two twenties two tens an four fives", "20,10,5"), ("pairs of twentys, tens and fives", "20,10,5"),
    ("i have 2 20s, 4 10s and a pair of 2.5s", "20,10,2.5"), ("twenty fives and tens", "25,10"), ("2, 20 and 5", "20,5,2")])
def test_several_numbers_are_kept_largest_first(text: str, kept: str):
    assert value(Numbers("kg", 0.25, 50, (20, 10)).read(text, EMPTY)) == kept


@pytest.mark.parametrize("text", [
    "", "some", "20 and a few", "one twenty and two tens", "900", "-5", "20, ten thousand", "20,10,2,5", "20, " * 200])
def test_what_is_no_list_of_numbers_is_asked_again(text: str):
    assert isinstance(Numbers("kg", 0.25, 50, (20, 10)).read(text, EMPTY), Unclear)


def test_pounds_are_read_where_pounds_are_spoken():
    read = Numbers("kg", 0.25, 50, (20,)).read("45, 25", ReadingContext(units="imperial", now=NOW))
    assert [round(float(one), 1) for one in str(value(read)).split(",")] == [20.4, 11.3]


def test_each_kind_takes_only_what_it_can():
    assert Zone().take("location", "38.72,-9.14") == Answer("Europe/Lisbon", "a location")
    assert Zone().take("photo", "x") is None
    assert Media(("video",)).take("video", "ref") == Answer("ref", "video")
    assert Media(("video",)).take("photo", "ref") is None
    for kind in (Words(), YesNo(), SquatDays(), Rest(), ClockTime(), LOAD, PainScore()):
        assert kind.take("location", "38.72,-9.14") is None


def test_a_tapped_pain_score_is_a_number():
    assert PainScore().tapped(PainScore().options[7], EMPTY) == Answer(7.0, "7")


@each_row(("before", "text", "kept"), [
    ("pause until", "till 14 april", "pause 2026-04-14"), ("pause until", "back at it monday", "pause 2026-03-09"),
    ("pause until", "14th of march im back", "pause 2026-03-14"), ("also on", "weds at 7pm please and thankyou", "on 2026-03-04 19:00"),
    ("pause until", "not before second of march", None), ("pause until", "maybe the third of april", None),
    ("also on", "thursday, eight at night", None), ("pause until", "dunno yet will say tonight", None)])
def test_a_day_among_other_words_is_read_if_they_deny_doubt_and_name_nothing(before, text, kept):
    read = SquatDays(before=before).read(text, EARS)
    assert (value(read) if isinstance(read, Answer) else None) == kept
