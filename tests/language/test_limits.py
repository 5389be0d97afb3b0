"""What a clinician said is read part by part; what is not understood is given back, never dropped."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.language.limits import (
    CLEARED,
    NewKilos,
    is_end,
    new_end,
    new_end_beside,
    new_kilos,
    new_kilos_till,
    parts_named,
    past_end,
    read_end,
    read_limit,
    read_limits,
    sets_none,
)
from companion.language.units import IMPERIAL
from companion.screening.limits import LimitPart
from tests.table import each_row

TODAY = date(2026, 11, 28)
STRETCHES = {"stretch_hip", "stretch_hamstrings", "stretch_calf"}


@each_row(("words", "parts", "kg", "until", "by"), [
    ("no hamstring stretching and no weights for 3 weeks", {"load", "stretch_hamstrings"}, None, "2026-12-19", ""),
    ("nothing over 60 kg until christmas", set(), 60.0, "2026-12-25", ""),
    ("my doctor said no lifting for two weeks", {"load"}, None, "2026-12-12", "a doctor"),
    ("physio said no squatting", {"squats"}, None, "", "a physiotherapist"),
    ("not allowed to bend, doctors orders", {"bending"}, None, "", "a doctor"),
    ("no squats or deadlifts until 20 december", {"load", "squats"}, None, "2026-12-20", ""),
    ("avoid bending, lifting and running for 4-6 weeks", {"bending", "load", "elsewhere"}, None, "2027-01-09", ""),
    ("no squats over 60 kg", set(), 60.0, "", ""), ("no squats for more than 3 weeks", {"squats"}, None, "2026-12-19", ""),
    ("complete rest for 10 days", {"training"}, None, "2026-12-08", ""), ("no stretching at all", STRETCHES, None, "", ""),
    ("squats are fine, no stretching of the hips", {"stretch_hip"}, None, "", ""),
    ("only body weight until my next appointment", {"load"}, None, CLEARED, ""),
    ("he told me to stop squatting until he clears me", {"squats"}, None, CLEARED, ""),
    ("doc put me on a 50 lb limit until further notice", set(), 22.68, CLEARED, "a doctor"),
    ("max 40 kilos till the end of january", set(), 40.0, "2027-01-31", ""),
    ("I can squat but not lift more than 20 kg", set(), 20.0, "", ""),
    ("nothing over 60 kg, max 40 kg", set(), 40.0, "", ""),
    ("dr smith says i mustn't lift anything heavy before 13/1", {"load"}, None, "2027-01-13", "a doctor"),
    ("physio said keep training but no deep squats for 3 weeks", {"squats"}, None, "2026-12-19", "a physiotherapist"),
    ("he said carry on as normal, just no bending for another week", {"bending"}, None, "2026-12-05", ""),
    ("no twisting", {"elsewhere"}, None, "", "")])
def test_a_limit_is_read_with_its_parts_its_end_and_who_said_so(words: str, parts: set[str], kg: float | None, until: str, by: str):
    told = read_limit(words, TODAY)
    assert (set(told.parts), told.kg, told.until, told.by, told.none) == (parts, kg, until, by, False)
    assert told.read


@each_row("words", [
    "take it easy for a while", "nothing serious, light training is fine", "don't go below parallel", "listen to your body",
    "no weights and careful with the hips", "no weights for 2 weeks and no squats for 6 weeks", "nothing above the head", "some words",
    "only what feels right", "you can train but gently", "no squats and no movement for a week", "no weights and don't do anything",
    "nothing above 60 kg and no more than 5 reps", "no squats and no coughing"])
def test_words_that_are_not_understood_in_full_are_asked_about(words: str):
    told = read_limit(words, TODAY)
    assert told.rest
    assert not told.read
    assert not told.none


@each_row(("words", "elsewhere"), [
    ("surgeon told me max 40 kilos for 6 wks and dont twist", "twist"), ("doctor said no squats and no jumping for a month", "jumping"),
    ("no weights, no impact, no twisting until 12 january", "impact or twisting"), ("no squats", "")])
def test_what_nothing_here_asks_for_is_kept_by_its_name(words: str, elsewhere: str):
    told = read_limit(words, TODAY)
    assert told.read
    assert told.elsewhere == elsewhere


@each_row("words", [
    "none", "None.", "no", "nothing", "no limits", "no restrictions at all", "nothing serious", "he said i can train as usual", "all clear",
    "nothing wrong", "there are no limits", "fully cleared"])
def test_no_limit_is_told_apart_from_words_that_are_not_understood(words: str):
    assert sets_none(words)
    assert read_limit(words, TODAY).none


@pytest.mark.parametrize("words", [
    "no lifting", "nothing over 60 kg", "no, but careful", "nothing heavy", "i can train but not lift", "cleared for squats only"])
def test_what_only_begins_like_no_limit_is_one(words: str):
    assert not sets_none(words)


def test_a_weight_without_a_unit_is_in_the_lifters_own():
    assert read_limit("nothing over 100", TODAY, IMPERIAL).kg == 45.36
    assert read_limit("nothing over 100", TODAY).kg == 100.0


@each_row(("words", "end"), [
    ("3 weeks", "2026-12-19"), ("for a month", "2026-12-28"), ("until 3 january", "2027-01-03"), ("3 january", "2027-01-03"),
    ("christmas", "2026-12-25"), ("until they clear me", CLEARED), ("forever", CLEARED), ("until monday", "2026-11-30"),
    ("no idea", CLEARED), ("a while", ""), ("until 30 february", ""), ("last week", "")])
def test_an_end_is_a_date_a_span_or_until_cleared(words: str, end: str):
    assert read_end(words, TODAY) == end


@pytest.mark.parametrize(("words", "whole"), [
    ("3 weeks", True), ("until 3 january.", True), ("3 weeks pregnant", False), ("2 weeks, my foot is numb", False), ("no idea", False)])
def test_an_end_is_the_whole_reply_only_where_nothing_else_is_said(words: str, whole: bool):
    assert is_end(words, TODAY) is whole


def test_a_clearance_names_parts_whatever_it_says_of_them():
    assert parts_named("my physio cleared me for lifting") == {"load"}
    assert parts_named("cleared for squats") == {"squats"}
    assert parts_named("my physio cleared me") == set()


@given(st.text(max_size=200))
def test_whatever_is_typed_gives_parts_that_are_known_and_never_fails(text: str):
    for told in (read_limit(text, TODAY), *read_limits(text, TODAY)):
        assert told.parts <= {part.value for part in LimitPart}
        assert told.until in ("", CLEARED) or date.fromisoformat(told.until) >= TODAY


@each_row(("words", "end"), [
    ("no squats until 20 december and nothing over 40 kg until 3 january", "2027-01-03"),
    ("no weights for 3 months and no squats for 1 week", "2027-02-28"),
    ("no squats for 1 week and no weights until i am cleared", CLEARED)])
def test_of_two_ends_the_later_is_kept_and_what_is_left_out_is_asked(words: str, end: str):
    told = read_limit(words, TODAY)
    assert (told.until, told.read) == (end, False)


@each_row(("words", "told"), [
    ("no squats for 2 weeks and no bending for 4", [({"squats"}, None, "2026-12-12"), ({"bending"}, None, "2026-12-26")]),
    ("max 40 kg for 2 weeks, no squats until they clear me", [(set(), 40.0, "2026-12-12"), ({"squats"}, None, CLEARED)]),
    ("no squats or lifting until 20 december and no bending until 3 january",
     [({"squats", "load"}, None, "2026-12-20"), ({"bending"}, None, "2027-01-03")]),
    ("no squats till 20 december and no bending till 20 december", [({"squats", "bending"}, None, "2026-12-20")]),
    ("no squats or deadlifts till friday", [({"squats", "load"}, None, "2026-12-04")]),
    ("nothing over 50 kg and no bending for 3 weeks", [({"bending"}, 50.0, "2026-12-19")]),
    ("no bending for 3 weeks, nothing over 50 kg", [({"bending"}, 50.0, "2026-12-19")])])
def test_each_end_is_that_of_what_it_follows(words: str, told: list[tuple[set[str], float | None, str]]):
    found = read_limits(f"my doctor said {words}", TODAY)
    assert [(set(one.parts), one.kg, one.until) for one in found] == told
    assert all(one.read and one.by == "a doctor" for one in found)


@each_row("words", [
    "no squats for 2 weeks, no bending for 4 and no lifting", "for 2 weeks no squats and for 4 weeks no bending",
    "no squats for 2 weeks and no squats for 4", "no squats for 2 weeks and take it easy for 4", "no squats for 2 weeks, bending for 4",
    "nothing over 60 kg for 2 weeks and nothing over 80 kg for 4 weeks",
    "my physio said no squats for 2 weeks and my doctor no bending for 4"])
def test_two_ends_of_which_it_is_not_sure_what_they_end_are_asked_about(words: str):
    [told] = read_limits(words, TODAY)
    assert not told.read


@each_row(("words", "parts", "until", "by"), [
    ("my phisio says no sqats til friday", {"squats"}, "2026-12-04", "a physiotherapist"),
    ("dr said no liftin for 2 wks", {"load"}, "2026-12-12", "a doctor"),
    ("docter said no benging or strechin of the hamstrigs for 2 weks", {"bending", "stretch_hamstrings"}, "2026-12-12", "a doctor"),
    ("my surgeon said no trainning till he clears me", {"training"}, CLEARED, "a surgeon")])
def test_a_misspelt_limit_is_read(words: str, parts: set[str], until: str, by: str):
    [told] = read_limits(words, TODAY)
    assert (set(told.parts), told.until, told.by, told.read) == (parts, until, by, True)


@each_row("words", ["no squads for 2 weeks", "no banding for 2 weeks", "no stretcher for 2 weeks", "no trailing for 2 weeks"])
def test_a_word_of_its_own_is_not_taken_for_a_misspelt_one(words: str):
    assert not read_limits(words, TODAY)[0].parts


@each_row(("words", "end"), [
    ("actually it was till monday", "2026-11-30"), ("no, till monday", "2026-11-30"), ("physio said 3 weeks actually", "2026-12-19"),
    ("no until the 14th", "2026-12-14"), ("3 weeks, not 2", "2026-12-19"), ("it's until they clear me", CLEARED),
    ("sorry, i meant until 20 december", "2026-12-20"), ("till friday not thursday", "2026-12-04"), ("my doctor says till friday",
    "2026-12-04"), ("till friday, my physio said", "2026-12-04"), ("till friday", "2026-12-04"), ("no, till saturday", "2026-12-05"),
    ("acually til monday", "2026-11-30"), ("sory, till friday actualy", "2026-12-04"),
    ("no", ""), ("no squats till friday", ""), ("it was fine till monday", ""), ("pause until monday", ""), ("it's been 3 weeks", ""),
    ("no until i'm done", ""), ("no, friday is fine", "")])
def test_an_end_put_right_is_read_where_nothing_else_is_said(words: str, end: str):
    assert new_end(words, TODAY) == end


@each_row(("words", "told"), [
    ("the limit is 40 kg not 60", NewKilos(40.0, 60.0, True)), ("its 40 not 60", NewKilos(40.0, 60.0, False)),
    ("40kg is the limit, not 60kg", NewKilos(40.0, 60.0, True)), ("actually the limit is 40kg", NewKilos(40.0, None, True)),
    ("she said 40 not 60", NewKilos(40.0, 60.0, True)), ("40 not 60 my physio said", NewKilos(40.0, 60.0, True)),
    ("sorry, i meant 42.5", NewKilos(42.5, None, False)), ("i can only lift 40 not over 60", NewKilos(40.0, 60.0, False)),
    ("the limit is 88 lbs not 132", NewKilos(39.92, 59.87, True)), ("its 88 not 132 lb", NewKilos(39.92, 59.87, False)),
    ("it was 3 weeks not 4", None), ("the limit is 3 weeks", None), ("5 reps not 8", None), ("40% not 60%", None),
    ("i did 40 not 60", None),
    ("the limit was 40 and it hurt", None), ("it hurts at 40 not 60", None), ("40 felt heavy", None), ("left 40 not 60", None)])
def test_a_weight_put_right_is_read_where_nothing_else_is_said(words: str, told: NewKilos | None):
    assert new_kilos(words) == told


@each_row(("words", "told", "end"), [
    ("its 40kg till monday not 60", NewKilos(40.0, 60.0, False), "2026-11-30"),
    ("no, 40 for 2 weeks", NewKilos(40.0, None, False), "2026-12-12"),
    ("the limit is 40 until 14 december, not 60", NewKilos(40.0, 60.0, True), "2026-12-14"),
    ("40 kg till friday", NewKilos(40.0, None, False), "2026-12-04"),
    ("40 kg not 60", None, ""), ("till monday", None, ""), ("its 3 weeks not 4", None, ""), ("i did 40 till monday", None, ""),
    ("40 hurt till monday", None, ""), ("left 40 till monday not 60", None, "")])
def test_a_weight_and_an_end_are_put_right_together(words: str, told: NewKilos | None, end: str):
    assert new_kilos_till(words) == told
    assert not told or new_end_beside(words, TODAY) == end


def test_a_limit_is_read_in_few_short_words():
    told = read_limit("fisio says nothin ovr 50 til thurs", TODAY)
    assert (told.kg, told.until, told.by, told.read) == (50.0, "2026-12-03", "a physiotherapist", True)


def test_a_weight_put_right_without_a_unit_is_in_the_lifters_own():
    assert new_kilos("its 88 not 132", IMPERIAL) == NewKilos(39.92, 59.87, False)
    assert new_kilos("its 40 kg not 60", IMPERIAL) == NewKilos(40.0, 60.0, False), "one unit for both"


@each_row(("words", "kg", "rest"), [
    ("the limit is 40 kg not 60", 40.0, ""), ("nothing over 40, not 60", 40.0, ""), ("40 is the limit not 60 kg", 40.0, ""),
    ("nothing over 40 kg not 3 sets", 40.0, "3")])
def test_a_weight_that_is_taken_back_is_no_limit(words: str, kg: float, rest: str):
    told = read_limit(words, TODAY)
    assert (told.kg, told.rest) == (kg, rest)


@pytest.mark.parametrize(("words", "past"), [
    ("no lifting until 1 march", "2026-03-01"), ("no squats till 27 feb, physio", "2026-02-27"), ("until 2 january", "2026-01-02"),
    ("until 1 january", ""), ("until 1 march 2027", ""), ("until 3 march", ""), ("for 3 weeks", ""), ("until they clear me", "")])
def test_a_day_that_was_lately_is_no_end_of_next_year(words: str, past: str):
    today = date(2026, 3, 3)
    assert past_end(words, today) == past
    assert (read_limit(words, today).until == "") is bool(past)


@pytest.mark.parametrize("words", ["1 march", "until 1 march", "27 feb"])
def test_an_answer_to_until_when_is_no_day_that_was_lately(words: str):
    assert read_end(words, date(2026, 3, 3)) == ""


@pytest.mark.parametrize(("words", "parts", "kg", "until"), [
    ("doctor said no lifting over 10 kilos after my c section 5 weeks ago", set(), 10.0, ""),
    ("doctor said no lifting after my knee op", {"load"}, None, ""),
    ("i clear myself lol, physio said no squats for 2 weeks but i feel great", {"squats"}, None, "2026-03-23"),
    ("dr said no squats for 2 weeks forgot to say", {"squats"}, None, "2026-03-23"),
    ("physio says no squats til friday, shes strict lol", {"squats"}, None, "2026-03-13"),
    ("he says go ahead but nothing over 50kg", set(), 50.0, ""),
    ("doctor wont let me lift til the scan", {"load"}, None, "cleared"),
    ("physio said 30 kg max this month", set(), 30.0, "2026-04-01"),
    ("no squats for the rest of this week", {"squats"}, None, "2026-03-16")])
def test_small_talk_and_the_reason_of_a_limit_take_nothing_from_it(words: str, parts: set[str], kg: float | None, until: str):
    told = read_limit(words, date(2026, 3, 9))
    assert (set(told.parts), told.kg, told.until, told.rest) == (parts, kg, until, "")


@pytest.mark.parametrize("words", ["no squats until 6 weeks after my op", "saw my doctor this week, no squats",
                                   "my doctor said this month no squats",
                                   "no squats, i feel great below parallel"])
def test_what_may_say_something_of_a_limit_is_not_taken_for_small_talk(words: str):
    told = read_limit(words, date(2026, 3, 9))
    assert told.until in ("", "cleared") or told.rest
