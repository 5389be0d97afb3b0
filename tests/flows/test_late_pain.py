"""Pain told late, and pain taken back: what counts no more, what is open again, and what never is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from companion.conversation.condition import Value
from companion.conversation.effects import Alert, CountAgain, Ended, Remind, Void
from companion.conversation.prompt import read_payload
from companion.conversation.session import Frame, Session
from companion.screening.safety import Level
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW, Talk

SMALL = ("Lower back", "1", "no", "no", "no")
LATE = "that hurt during the first squats, my lower back"


def row(flow: str, key: str, run: str, hours: float = 1, ending: str | None = "done", value: Value = "clearly") -> LoggedAnswer:
    return LoggedAnswer(flow, run, key, value, "ok", ending, "", "", NOW - timedelta(hours=hours))


LOOK = row("squat_look", "plain_rounds", "7", 2)
YESTERDAY = row("hip_fold", "left_first", "5", 30)
SQUATTED = row("squat_day", "squatted", "8", 3, value="ready")


TALL: Mapping[str, Value] = {"about_you.height": 180.0}


def at(flow: str, *done: LoggedAnswer, known: Mapping[str, Value] | None = None) -> Talk:
    return Talk(BOOK[flow].flow, known={**CHECKED, **(known or {})}, book=BOOK, answers=done)


def offered(talk: Talk) -> list[str]:
    """The answers to tap of the question that waits."""
    taps = [read_payload(tap.data) for line in talk.says[-1].buttons for tap in line]
    return [tap.value for tap in taps if tap and not tap.value.startswith("!")]


def of(talk: Talk, kind: type) -> list[Any]:
    return [effect for effect in talk.effects if isinstance(effect, kind)]


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def level(talk: Talk) -> str:
    return talk.found["safety.level"]


def pain(talk: Talk, *replies: str) -> Talk:
    """Tell of pain and answer, from wherever they are."""
    return talk.say("pain", *replies)


# late -------------------------------------------------------------------------------------------------------------


def test_it_is_asked_during_what_it_hurt_with_the_movements_of_the_last_day_only():
    talk = at("knee_to_wall", LOOK, YESTERDAY).say(LATE, *SMALL)
    assert talk.state == "pain.during"
    assert offered(talk) == ["squat_look", "this", "before", "other", "unsure"]


@pytest.mark.parametrize("words", ["my back hurt during those squats", "my back hurts this morning"])
def test_after_midnight_and_the_next_morning_what_was_done_in_the_evening_can_be_named(words: str):
    evening = row("squat_look", "plain_rounds", "7", 20)  # before midnight
    told = {"outcome.at": (NOW - timedelta(hours=19)).isoformat()}
    talk = at("home", evening, YESTERDAY, known=told).say(words, *SMALL)
    assert offered(talk) == ["squat_look", "before", "other", "unsure"]
    assert of(talk.say("Squat look"), Void) == [Void("squat_look")]
    assert "No longer counted: squat look." in heard(talk)
    assert "Your results, counted again." in heard(talk)


def ended_before(**ago: float) -> Talk:
    """At the menu, a rock back done some time ago."""
    talk = at("home", row("rock_back", "place", "9", ago.get("minutes", 0) / 60 + ago.get("hours", 0)))
    talk.session = Session(stack=talk.session.stack, runs=9, last=Frame("rock_back", 1, "9", state="end", trail=("place",)),
                           ended=(NOW - timedelta(**ago)).isoformat())
    return talk


def test_right_after_a_test_it_hurt_in_that_and_the_lifter_hears_that_it_no_longer_counts():
    talk = ended_before(minutes=5).say("my back hurts", *SMALL)
    assert (Ended("9", "pain") in talk.effects, "during" in talk.answers) == (True, False)
    assert "No longer counted: rock back." in heard(talk)
    assert "During: rock back, which no longer counts." in of(talk, Alert)[-1].because


@pytest.mark.parametrize("ago", [{"minutes": 6}, {"hours": 5}, {"hours": 14}])
def test_later_it_is_asked_and_what_hurt_in_something_else_takes_nothing_away(ago: dict[str, float]):
    talk = ended_before(**ago).say("i hurt my back lifting a fridge just now", *SMALL)
    assert offered(talk) == ["rock_back", "before", "other", "unsure"]
    talk.say("Something else")
    assert not [*of(talk, Void), *of(talk, CountAgain), *[one for one in of(talk, Ended) if one.run == "9"]]
    assert "rock back" not in of(talk, Alert)[-1].because + heard(talk)


def test_days_later_no_old_test_is_struck_or_spoken_of():
    talk = ended_before(hours=72).say("my knee hurts, twisted it on the stairs", "Knee", "1", "no", "no", "no")
    assert "during" not in talk.answers
    assert "rock back" not in of(talk, Alert)[-1].because + heard(talk)


@pytest.mark.parametrize(("during", "ending"), [("Rock back", "pain"), ("Something else", "left"), ("Not sure", "pain")])
def test_in_a_test_left_open_for_long_it_is_asked_too(during: str, ending: str):
    talk = at("rock_back", row("rock_back", "place", "1", ending=None)).say("done")
    talk.session = talk.session._replace(at=(NOW - timedelta(minutes=31)).isoformat())
    talk.say("my back hurts, from the garden", "Lower back", "6", "no", "no", "no")
    assert offered(talk) == ["rock_back", "before", "other", "unsure"]
    talk.say(during)
    assert [one.ending for one in of(talk, Ended) if one.run == "1"] in ([ending], ["closed"] if ending == "left" else [])
    assert ("which no longer counts" in of(talk, Alert)[-1].because) == (during == "Rock back")


def test_a_test_that_pain_has_ended_already_is_not_named_again():
    assert at("knee_to_wall", row("squat_look", "plain_rounds", "7", ending="pain")).say(LATE, *SMALL).state != "pain.during"


def test_where_nothing_else_was_done_lately_it_is_not_asked():
    assert "during" not in at("knee_to_wall", YESTERDAY).say(LATE, *SMALL).answers


@pytest.mark.parametrize("replies", [("Chest, breath or faint",), ("Lower back", "1", "no", "no", "yes", "yes"),
                                     ("Lower back", "1", "no", "no", "yes", "no", "yes")])
def test_somebody_who_is_sent_to_care_is_not_asked_what_it_hurt_in(replies: Sequence[str]):
    assert "during" not in at("knee_to_wall", LOOK).say(LATE, *replies).answers


def test_the_squats_named_count_no_more_and_the_reading_in_progress_is_kept():
    talk = at("knee_to_wall", LOOK, known=TALL).say("tape", "13", LATE, *SMALL, "Squat look")
    assert of(talk, Void) == [Void("squat_look")]
    assert [one.ending for one in of(talk, Ended) if one.run == "1"] == ["left"], "what was read before counts"
    assert "No longer counted: squat look." in heard(talk)
    assert "What you answered in the knee to wall still counts." in heard(talk)
    assert "That test is over" not in heard(talk)
    assert level(talk) == "no_load"


@pytest.mark.parametrize("during", ["Squat look", "Squat-day squats"])
def test_three_messages_at_most_say_what_follows_from_pain_in_what_was_done_before(during: str):
    talk = at("knee_to_wall", LOOK, SQUATTED, known=TALL).say(LATE, "Lower back", "6", "no", "no", "no")
    before = len(talk.says)
    said = [say.text for say in talk.say(during).says[before:]]
    last = "What you answered in the knee to wall still counts. Not gone by tomorrow morning, or worse? Then see a doctor or a physio."
    assert last in said[:3]


def test_a_floor_test_goes_on_where_the_level_lets_it():
    talk = at("rock_back", LOOK).say("done", LATE, *SMALL, "Squat look")
    assert talk.state == "rock_back.narrow"
    assert not [one for one in of(talk, Ended) if one.run == "1"]


@pytest.mark.parametrize(("during", "void"), [("Just now", []), ("Not sure", [Void("squat_look")])])
def test_just_now_or_not_sure_ends_the_test_in_progress(during: str, void: list[Void]):
    talk = at("rock_back", LOOK).say("done", LATE, *SMALL, during)
    assert [one.ending for one in of(talk, Ended) if one.run == "1"] == ["pain"]
    assert of(talk, Void) == void


def test_pain_from_before_makes_nothing_void_and_today_stays_as_the_level_says():
    talk = at("knee_to_wall", LOOK, known=TALL).say("tape", LATE, *SMALL, "Before these")
    assert not of(talk, Void)
    assert [one.ending for one in of(talk, Ended) if one.run == "1"] == ["left"]
    assert level(talk) == "no_load"


def test_pain_told_while_a_test_waits_for_a_question_about_them_shuts_that_test_too():
    talk = at("knee_to_wall", LOOK).say("tape", LATE, *SMALL, "Before these")
    assert talk.state == "about_you.height"
    assert talk.say("180").state == "home.pick"
    assert [one.ending for one in of(talk, Ended) if one.run == "1"] == ["closed"]


def test_a_test_that_had_just_ended_counts_again_where_it_hurt_in_another():
    talk = at("home", LOOK)
    talk.session = Session(stack=talk.session.stack, runs=9, last=Frame("rock_back", 1, "9", state="end", trail=("place",)),
                           ended=NOW.isoformat())
    talk.say(LATE)
    assert Ended("9", "pain") in talk.effects, "until it is known"
    talk.say(*SMALL, "Squat look")
    assert [one.flows for one in of(talk, CountAgain)] == ["rock_back"]


def test_squats_of_a_squat_day_are_noted_as_painful():
    talk = pain(at("home", SQUATTED), *SMALL, "Squat-day squats")
    assert of(talk, Void) == [Void("squat_day")]
    assert "earn no step deeper" in heard(talk)


def test_who_says_after_the_squats_that_they_hurt_is_not_asked_what_it_hurt_in():
    talk = at("squat_after", SQUATTED, LOOK).say("yes", "still", "feel", "parallel", "yes", *SMALL)
    assert "during" not in talk.answers


def test_results_are_counted_anew_where_they_rested_on_it():
    told = {"outcome.at": (NOW - timedelta(hours=1)).isoformat()}
    talk = at("knee_to_wall", LOOK, known=told).say(LATE, *SMALL, "Squat look")
    assert "Your results, counted again." in heard(talk)
    assert {"overall", "length", "strength", "control", "drill"} <= talk.found.keys()
    assert "Your results" not in heard(at("knee_to_wall", LOOK).say(LATE, *SMALL, "Squat look"))


def test_counting_anew_takes_no_limit_away():
    told = {"outcome.at": NOW.isoformat(), "depth.keep": "parallel", "load.limit": "72"}
    talk = at("knee_to_wall", LOOK, known=told).say(LATE, *SMALL, "Squat look")
    assert not {"depth.keep", "load.limit"} & talk.found.keys()


SIGNS = [("Leg", "1", "no", "yes", "no", "no", "no"), ("Lower back", "1", "no", "no", "yes", "no", "no"),
         ("Lower back", "1", "no", "no", "yes", "no", "yes"), ("Lower back", "1", "no", "no", "yes", "yes"),
         ("Chest, breath or faint",)]

# taken back -------------------------------------------------------------------------------------------------------


def test_pain_taken_back_opens_the_floor_again_but_no_load():
    talk = pain(pain(at("home"), "Lower back", "6", "no", "no", "no"), "Nothing hurts", "Yes, a mistake")
    assert (level(talk), talk.found["pain.hurt"], talk.found["safety.why"]) == ("no_load", "no", "taken_back")
    assert [one.level for one in of(talk, Alert)] == ["not_today", "no_load"]
    assert "taken back" in of(talk, Alert)[-1].because
    assert of(talk, Remind)[-1].date == "", "nobody asks about it the next morning"
    assert len({one.since for one in of(talk, CountAgain)}) == 1


def test_what_stood_before_it_stands_again():
    talk = at("home", known={"safety.level": "not_today", "safety.checked": "not_today", "safety.why": "pain"})
    assert level(pain(pain(talk, *SMALL), "Nothing hurts", "Yes, a mistake")) == "not_today"


def test_what_a_check_found_since_is_not_taken_back():
    talk = pain(at("home"), *SMALL)
    talk.known |= {"safety.level": "not_today", "safety.checked": "not_today", "safety.why": "pain"}
    assert level(pain(talk, "Nothing hurts", "Yes, a mistake")) == "not_today"


def test_a_check_that_found_the_same_again_is_not_taken_back_either():
    talk = pain(at("home", known={"safety.level": "no_load", "safety.checked": "no_load", "safety.why": "pain"}), *SMALL)
    talk.known |= {"safety.level": "not_today", "safety.checked": "not_today", "safety.why": "pain bad"}
    assert level(pain(talk, "Nothing hurts", "Yes, a mistake")) == "not_today"


def test_after_a_sign_that_was_cleared_since_later_pain_of_that_day_stands_too():
    talk = pain(at("home"), *SIGNS[0])
    talk.known |= {"safety.level": "go", "safety.checked": "go", "safety.why": ""}
    talk = pain(pain(talk, "Lower back", "6", "no", "no", "no"), "Nothing hurts")
    assert talk.state == "pain.surely"
    assert level(talk.say("Right, nothing")) == "not_today"


def test_pain_that_has_eased_is_not_taken_back():
    talk = pain(pain(at("home"), "Lower back", "6", "no", "no", "no"), "Nothing hurts", "No, it did hurt")
    assert (level(talk), talk.found["pain.hurt"]) == ("not_today", "yes")


def test_pain_half_told_is_taken_back_too():
    talk = pain(at("home"), "Lower back", "stop").say("go on", "Nothing hurts", "Yes, a mistake")
    assert level(talk) == "no_load"


def test_it_is_taken_back_once_a_day():
    talk = pain(pain(at("home"), *SMALL), "Nothing hurts", "Yes, a mistake")
    talk = pain(pain(talk, "Lower back", "6", "no", "no", "no"), "Nothing hurts", "Right, nothing")
    assert level(talk) == "not_today"
    assert "once a day" in heard(talk)


@pytest.mark.parametrize("replies", SIGNS)
def test_a_sign_is_never_taken_back(replies: Sequence[str]):
    talk = pain(at("home"), *replies)
    stood = level(talk)
    pain(talk, "Nothing hurts", "Right, nothing")
    assert level(talk) == stood


def test_a_sign_stays_where_its_answer_was_taken_back():
    talk = pain(at("home"), "Lower back", "1", "no", "no", "yes").say("back", "back", "back", "back", "back")
    assert talk.state == "pain.where"
    assert level(talk.say("Nothing hurts", "Right, nothing")) == "clinician"


def test_after_an_answer_of_pain_back_and_nothing_is_no_false_alarm():
    talk = pain(at("home"), "Lower back").say("back", "Nothing hurts")
    assert talk.state == "pain.mistake"
    assert level(talk.say("Yes, a mistake")) == "no_load"


# at the questions after where it hurts --------------------------------------------------------------------------


def asked(key: str) -> Talk:
    """At one of the questions about pain in the first squats, told in knee to wall."""
    talk = at("knee_to_wall", LOOK).say(LATE, *SMALL[:AFTER_WHERE.index(key) + 1])
    assert talk.state == f"pain.{key}"
    return talk


AFTER_WHERE = ("bad", "sharp", "below_knee", "tingling", "during")
NOTHING_SAID = ("nothing hurts", "sorry nothing hurt", "No, I meant nothing hurts", "no wait nothing hurts", "false alarm",
                "it didn't hurt")


@pytest.mark.parametrize("key", AFTER_WHERE)
@pytest.mark.parametrize("words", NOTHING_SAID)
def test_that_nothing_hurts_is_taken_at_each_question_and_restores_once(key: str, words: str):
    talk = asked(key).say(words)
    assert talk.state == "pain.mistake"
    talk.say("Yes, a mistake")
    assert (level(talk), talk.found["pain.hurt"]) == ("no_load", "no")
    talk.known["pain.taken_back.today"] = "yes"
    assert pain(talk, *SMALL[:1]).say(words).state == "pain.surely", "once a day"


@pytest.mark.parametrize("key", ["bladder", "weakness"])
def test_a_red_flag_is_answered_before_anything_is_taken_back(key: str):
    talk = pain(at("home"), "Lower back", "5", "no", "no", "yes", *(["no"] if key == "weakness" else []))
    assert talk.say("nothing hurts").state == talk.say("No, I meant my hip").state == f"pain.{key}"


@pytest.mark.parametrize("key", AFTER_WHERE)
@pytest.mark.parametrize(("words", "place"), [
    ("No, I meant my hip", "hip"), ("oh no sorry i meant the knee", "knee"), ("it was my leg", "leg"), ("i mean in my foot", "ankle")])
def test_another_place_that_was_meant_is_taken_and_what_was_asked_since_is_asked_anew(key: str, words: str, place: str):
    talk = asked(key).say(words)
    assert (talk.state, talk.answers["where"], talk.session.top.got["where"]) == ("pain.bad", place, place)
    assert not {"bad", "sharp", "below_knee", "tingling"} & talk.session.top.got.keys()


@pytest.mark.parametrize(("key", "words", "state"), [
    ("below_knee", "no", "tingling"), ("below_knee", "leg", "below_knee"), ("sharp", "I meant lower back", "sharp"),
    ("during", "squat look", ""), ("during", "just now", ""), ("during", "hip", "during"), ("bad", "nothing", "sharp"),
    ("tingling", "none", "during")])
def test_an_answer_of_its_own_and_a_place_alone_put_nothing_else_right(key: str, words: str, state: str):
    talk = asked(key).say(words)
    assert talk.state == (f"pain.{state}" if state else talk.state)
    assert talk.answers["where"] == "back"


def test_chest_that_was_meant_is_an_emergency_at_once():
    assert level(asked("during").say("No, I meant my chest")) == "emergency"


@pytest.mark.parametrize("left", [(), ("stop", "go on", "Lower back", "1")])
def test_pain_that_did_hurt_is_asked_about_to_its_end_and_opens_nothing(left: tuple[str, ...]):
    talk = pain(at("home"), "Lower back", "6", *left).say("nothing hurts", "No, it did hurt")
    assert (talk.state, level(talk)) == ("pain.where", "not_today")
    assert level(talk.say("Lower back", "6", "no", "no", "no")) == "not_today"


def test_pain_half_told_counts_beside_earlier_pain_where_it_was_no_mistake():
    talk = pain(pain(at("home"), *SMALL), "Lower back", "8", "yes").say("nothing hurts", "No, it did hurt")
    assert (level(talk), talk.found["pain.hurt"]) == ("not_today", "yes")


ANSWERS = st.sampled_from([SMALL, ("Hip or groin", "6", "no", "no", "no"), ("Knee", "2", "yes", "no"), *SIGNS])
NOTHING = ("Nothing hurts", None)
TURNS = st.lists(st.one_of(ANSWERS, st.just(NOTHING), st.just(("stop",)), st.just(("Lower back", "stop"))), min_size=1, max_size=5)


@given(TURNS, st.sampled_from([one.value for one in Level]))
@settings(deadline=None, max_examples=60)
def test_taking_pain_back_never_opens_load_never_undoes_a_sign_and_comes_once(turns: list[tuple[str | None, ...]], before: str):
    """The invariant of the day: once pain was told nothing with load opens, whatever is said after it."""
    talk = at("home", known={"safety.level": before, "safety.checked": before})
    told = signed = False
    eased, stood = 0, Level(before)
    for turn in turns:
        talk.say("menu", "pain")
        if talk.state != "pain.where":
            continue
        for reply in turn:
            talk.say(reply if reply else "Yes, a mistake" if talk.state == "pain.mistake" else "Right, nothing")
        told |= turn[0] not in ("Nothing hurts", "stop")
        signed |= turn in SIGNS
        now = Level(level(talk))
        eased += told and now < stood
        stood = now
        assert now >= Level(before), "never better than what stood before any pain"
        assert not told or now >= Level.NO_LOAD
        assert not signed or now >= Level.CLINICIAN
    assert eased <= 1


# in words -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("words", [
    "false alarm, it was my phone", "it was a mistake, nothing hurt", "i take it back", "nothing hurts", "Sorry, false alarm",
    "it was nothing", "no, it didn't hurt"])
def test_pain_is_taken_back_in_words_by_the_question_that_decides_it(words: str):
    talk = pain(at("home"), *SMALL)
    said = len(talk.says)
    talk.say(words)
    assert talk.state == "pain.mistake"
    assert not any("Stop there" in say.text for say in talk.says[said:])
    assert level(talk.say("Yes, a mistake")) == "no_load"


@pytest.mark.parametrize("words", ["i take it back", "nothing hurts"])
def test_in_words_pain_is_taken_back_once_a_day_and_never_after_a_sign(words: str):
    talk = pain(at("home"), *SMALL).say(words, "Yes, a mistake")
    pain(talk, *SMALL).say(words, "Right, nothing")
    assert "still stands" in heard(talk)
    stood = level(talk)
    signed = pain(at("home"), "Lower back", "1", "no", "no", "yes", "no", "no")
    assert level(signed) == "clinician"
    assert level(signed.say(words, "Right, nothing")) == "clinician"
    assert "still stands" in heard(signed)
    assert stood == level(talk)


@pytest.mark.parametrize("words", ["i take it back", "nothing hurts", "false alarm"])
def test_where_no_pain_was_told_these_words_begin_no_questions(words: str):
    assert not at("home").say(words).state.startswith("pain.mistake")


@pytest.mark.parametrize("words", ["false alarm but my back hurts now", "false alarm, my foot is numb"])
def test_pain_and_signs_in_words_that_take_it_back_come_first(words: str):
    talk = pain(at("home"), *SMALL).say(words)
    assert talk.state in ("pain.where", "pain.bad", "pain.saddle_now") or talk.state.startswith("signs.")


@pytest.mark.parametrize("words", ["nothing hurts", "it was nothing"])
def test_over_another_question_they_are_its_answer_or_none(words: str):
    talk = pain(at("home"), *SMALL).say("about you", words)
    assert talk.state == "about_you.height"
