"""Afterwards: depth kept, did it move, did it hurt, load, a note, a film; and what becomes of the depth."""

from __future__ import annotations

import json
from datetime import timedelta

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Replan
from companion.conversation.events import Invite, Sent
from companion.screening.screen import LoggedAnswer
from companion.screening.squat_days import days_told
from flows.catalogue import BOOK
from flows.squat_after import FLOW
from tests.drive import CHECKED, NOW, UNCHECKED, Talk
from tests.flows.squatting import Lifter, squatted
from tests.table import each_row

BEGUN = squatted(0.1, "0", planned=1)
YESTERDAY = "2026-03-01"
PAIN = ("Knee", "1", "no", "no")


def after(*rows: list, **known: str) -> Lifter:
    """A lifter who was on a squat day with the companion just before."""
    return Lifter(FLOW, known, [*BEGUN, *(row for some in rows for row in some)])


def told(talk: Lifter):
    """The latest day as the log tells it."""
    return days_told(talk.kept, "UTC+00:00")[-1]


def test_the_whole_of_it_is_a_few_taps():
    talk = after().tap("Yes, still", "Film, from the side", "Kept to it", "No").say("80").say("light today")
    talk.send(Sent("video", "file-1"))
    day = told(talk)
    assert (day.back, day.film, day.kept, day.hurt, day.load, day.note, day.video) == (
        "still", True, "kept", False, 80.0, "light today", "file-1")
    assert talk.state == "home.pick"
    assert "One more squat day like that in a row, and it goes a step deeper." in talk.heard
    assert "Thank you, that is in your log." in talk.heard


def test_note_and_film_can_be_left_out():
    talk = after().say("yes", "feel", "kept", "no", "80", "skip").tap("Skip")
    assert talk.state == "home.pick"
    assert (told(talk).note, told(talk).video) == ("", "")


def test_it_opens_without_a_safety_check():
    assert Talk(FLOW, UNCHECKED, BOOK).state == "squat_after.done"


@pytest.mark.parametrize("level", ["emergency", "same_day"])
def test_somebody_sent_to_be_seen_at_once_is_asked_nothing_about_squats(level: str):
    talk = after(**{"safety.level": level})
    assert talk.state == "home.pick"
    assert "squat_after" not in talk.began


def test_whether_they_squatted_is_asked_only_where_they_did_not_say_so():
    assert after().state == "squat_after.back"
    assert Lifter(FLOW).state == "squat_after.done"


def test_no_squats_is_an_answer_too():
    talk = Lifter(FLOW).say("no")
    assert talk.state == "home.pick"
    assert "no squats then" in talk.heard
    assert talk.found["squat.answered"] == "2026-03-02"
    assert not told(talk).squatted


def test_yesterday_is_asked_about_by_name_and_kept_as_yesterday():
    talk = Lifter(FLOW, asked=YESTERDAY)
    assert talk.last == "Did you squat yesterday?"
    talk.say("yes", "moved", "feel", "kept", "no", "80", "skip", "skip")
    assert (told(talk).day.isoformat(), told(talk).back) == (YESTERDAY, "moved")
    assert talk.found["squat.answered"] == YESTERDAY


def test_the_next_morning_and_without_having_just_ended_them_it_is_yesterday_that_is_asked_about():
    talk = Lifter(BOOK["squat_day"].flow, {"bar.bar": "none", "drill": "none"})
    talk.now, talk.known["today"] = NOW + timedelta(hours=14), "2026-03-03"
    assert talk.tap("Done squatting").last == "Did you squat yesterday?"
    night = Lifter(BOOK["squat_day"].flow, {"bar.bar": "none", "drill": "none"})
    night.now, night.known["today"] = NOW + timedelta(hours=7), "2026-03-03"
    night.tap("Done squatting").say("menu")
    night.now += timedelta(hours=1)
    night.send(Invite("squat_after", "2026-03-02"))
    assert night.tap("How it went").last == "Did you squat yesterday?"


def test_a_day_told_of_late_does_not_reopen_a_later_one():
    talk = Lifter(FLOW, {"squat.answered": "2026-03-02"}, asked=YESTERDAY).say("no")
    assert talk.found["squat.answered"] == "2026-03-02"


@pytest.mark.parametrize("asked", ["2026-02-20", "2026-03-09", "nonsense"])
def test_a_day_long_gone_or_to_come_is_not_told_of(asked: str):
    assert Lifter(FLOW, asked=asked).last == "Did you squat today?"


@pytest.mark.parametrize(("day", "whose"), [("2026-03-02", "today's"), (YESTERDAY, "yesterday's"),
                                            ("2026-02-28", "Saturday 28 February's")])
def test_the_follow_up_asks_about_its_day(day: str, whose: str):
    talk = Lifter(FLOW)
    talk.send(Invite("squat_after", day))
    assert talk.last == f"How did {whose} squats go? It takes a few taps. If not now, I leave it at that."
    talk.tap("How it went")
    assert talk.session.top.asked == day


def test_what_was_told_is_no_longer_asked_for():
    talk = after().say("yes", "feel", "kept", "no", "80", "skip", "skip")
    assert Replan() in talk.effects


@pytest.mark.parametrize(("words", "back"), [("yes", "still"), ("no", "moved"), ("it moved", "moved"), ("a little", "moved"),
                                             ("not sure", "cant_tell")])
def test_the_back_is_told_in_their_own_words(words: str, back: str):
    assert after().say(words).answers["back"] == back


def test_how_it_was_seen_is_asked_only_of_what_was_judged():
    assert after().say("yes").state == "squat_after.seen_by"
    assert after().say("I can't tell").state == "squat_after.kept"


@pytest.mark.parametrize("words", ["3", "no", "80 kg"])
def test_numbers_and_a_bare_no_are_no_depth(words: str):
    assert after().say("yes", "feel", words).state == "squat_after.kept"


def test_without_a_depth_set_it_is_asked_how_deep():
    talk = after(**{"depth.keep": ""}).say("yes", "feel")
    assert talk.state == "squat_after.depth"
    assert talk.say("parallel", "no", "80", "skip", "skip").answers["depth"] == "parallel"
    assert "depth_step" not in talk.began


def test_the_depth_asked_about_is_the_one_that_was_set_for_the_day():
    clean = {"back": "still", "kept": "kept", "seen_by": "film", "hurt": "no", "load": 80.0}
    rows = [*squatted(2, "1", **clean), *squatted(0.05, "2", **clean)]
    assert "a little above parallel" in after(rows).say("yes", "feel").last, "the step of today is for the next day"


# load -------------------------------------------------------------------------------------------------------------


def planned(load: float, **known: str) -> Lifter:
    from companion.screening.screen import LoggedAnswer

    rows = [LoggedAnswer("squat_day", "9", "load", load, "ok", "done", "", "", NOW - timedelta(hours=2))]
    return after(rows, **known).say("yes", "feel", "kept", "no")


def test_the_planned_load_is_one_tap():
    talk = planned(82.5)
    assert talk.last == "With which load, in the working sets? Planned: 82.5 kg."
    talk.tap("As planned")
    assert told(talk).load == 82.5


def test_more_than_the_load_to_keep_to_was_not_the_plan():
    talk = planned(100.0, **{"load.limit": "64"})
    assert "Planned" not in talk.last
    assert all(tap.label != "As planned" for row in talk.says[-1].buttons for tap in row)


def test_without_a_bar_no_load_is_asked_for():
    assert after(**{"bar.bar": "none"}).say("yes", "feel", "kept", "no").state == "squat_after.note"


@pytest.mark.parametrize("words", ["just the bar", "Empty bar", "the bar only", "only the empty bar.", "with just the bar"])
@pytest.mark.parametrize(("bar", "load"), [
    ({"bar.bar": "full"}, 20.0), ({"bar.bar": "light"}, 15.0), ({"bar.bar": "other", "bar.weight": 8.0}, 8.0),
    ({"bar.bar": "full", "welcome.units": "imperial"}, 20.41)])
def test_just_the_bar_is_what_their_bar_weighs(words: str, bar: dict, load: float):
    talk = after(**bar).say("yes", "feel", "kept", "no", words)
    assert talk.state == "squat_after.note"
    assert told(talk).load == load


def test_just_the_bar_has_its_number_asked_for_where_it_is_not_known():
    talk = after(**{"bar.bar": ""}).say("yes", "feel", "kept", "no", "just the bar")
    assert talk.state == "squat_after.load"
    assert talk.last.startswith("I do not know how much that is. I need one number in kg. For example: 80 kg.")
    assert told(talk.say("20")).load == 20.0


@pytest.mark.parametrize("words", ["bar and 20", "over the bar", "no bar"])
def test_other_words_with_a_bar_in_them_are_not_just_the_bar(words: str):
    assert told(after().say("yes", "feel", "kept", "no", words)).load in (None, 0.0)


def test_pounds_are_pounds():
    assert planned(100.0, **{"welcome.units": "imperial"}).last.endswith("Planned: 220 lb.")
    talk = after(**{"welcome.units": "imperial"}).say("yes", "feel", "kept", "no", "225")
    assert told(talk).load == pytest.approx(102.06, abs=0.01)


# what becomes of the depth ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(("replies", "words"), [
    (("moved", "feel", "kept"), "The back moved, so the depth goes a step back, to well above parallel"),
    (("moved", "feel", "deeper"), "does not count towards a step"), (("yes", "film", "deeper"), "does not count towards a step"),
    (("can't tell", "kept"), "does not count towards a step"), (("yes", "feel", "kept"), "One more squat day like that in a row, on film")])
def test_the_depth_of_the_next_day_is_told_at_once(replies: tuple[str, ...], words: str):
    assert words in after().say(*replies, "no", "80", "skip", "skip").heard


def test_a_second_clean_day_on_film_leads_a_step_deeper():
    before = squatted(2, "1", back="still", kept="kept", seen_by="film", hurt="no", load=80.0)
    talk = after(before).say("yes", "feel", "kept", "no", "80", "skip", "skip")
    assert talk.found["depth.step"] == "parallel"


# the trial --------------------------------------------------------------------------------------------------------


def test_on_a_day_of_the_trial_movement_is_asked_from_0_to_10():
    talk = after(squatted(0.05, "1", lot="draw")).say("yes", "feel", "kept", "no", "80")
    assert talk.state == "squat_after.felt"
    for words in ("11", "-1", "3.5 or 4", "lots"):
        assert talk.say(words).state == "squat_after.felt"
    talk.say("4", "skip", "skip")
    assert (told(talk).felt, told(talk).lot) == (4.0, 0)
    assert "In the trial the depth stays as it is" in talk.heard
    assert "depth_step" not in talk.began


def test_movement_on_a_day_of_the_trial_still_leads_a_step_back():
    talk = after(squatted(0.05, "1", lot="draw")).say("moved", "feel", "kept", "no", "80", "4", "skip", "skip")
    assert talk.found["depth.step"] == "well_above"


def test_outside_the_trial_it_is_not_asked():
    assert after().say("yes", "feel", "kept", "no", "80").state == "squat_after.note"


def test_a_trial_without_a_bar_still_asks_for_the_load_so_that_its_days_count():
    talk = after(squatted(0.05, "1", lot="draw"), **{"bar.bar": "none"}).say("yes", "feel", "kept", "no")
    assert talk.state == "squat_after.load"
    talk.tap("No bar").say("4")
    assert told(talk).load == 0


# pain -------------------------------------------------------------------------------------------------------------


def test_something_that_hurt_leads_to_the_pain_questions_and_closes_the_depth():
    talk = after().say("yes", "film", "kept", "yes")
    assert talk.state == "pain.where"
    talk.say(*PAIN)
    assert talk.state == "squat_after.load"
    talk.say("80", "skip", "skip")
    assert told(talk).hurt
    assert "no loaded squats before a safety check" in talk.heard


def test_whether_it_hurt_is_never_skipped():
    assert after().say("yes", "film", "kept", "skip").state == "squat_after.hurt"


def test_pain_told_in_between_counts_and_is_not_asked_about_twice():
    talk = after().say("my knee hurts", *PAIN, "Squat-day squats")
    assert talk.state == "squat_after.back"
    talk.say("yes", "film", "kept")
    assert talk.state == "squat_after.load"
    talk.say("80", "skip", "skip")
    assert told(talk).hurt
    assert talk.began.count("pain") == 1


def test_pain_of_earlier_in_the_day_does_not_answer_for_the_squats():
    talk = after(**{"pain.hurt": "yes", "pain.hurt.today": "yes"}).say("yes", "film", "kept")
    assert talk.state == "squat_after.hurt"


@pytest.mark.parametrize(("replies", "level"), [
    (("Chest, breath or faint", "3", "no", "no", "no"), "emergency"), (("Leg", "1", "no", "yes", "no", "no", "no"), "clinician")])
def test_after_pain_that_must_be_seen_nothing_more_is_asked(replies: tuple[str, ...], level: str):
    talk = after().say("yes", "film", "kept", "yes", *replies)
    assert talk.known["safety.level"] == level
    assert talk.state == "home.pick"
    assert "load" not in talk.answers
    assert told(talk).hurt
    assert talk.found["squat.answered"] == "2026-03-02"


def test_an_emergency_told_in_between_ends_the_questions():
    talk = after().say("my chest hurts and I can't breathe", "yes")
    assert talk.known["safety.level"] == "emergency"
    assert not talk.state.startswith("squat_after")


def test_a_false_alarm_is_none():
    talk = after().say("yes", "film", "my knee hurts", "nothing", "right, nothing")
    assert talk.state == "squat_after.kept"
    assert talk.say("kept").state == "squat_after.hurt"


# pain told in the note ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("note", ["my back hurt a little on the last set", "felt some pinching at the bottom", "tweaked my back a bit",
                                  "it hurt on the last set", "pain on the last rep", "leg went numb on the drive home"])
def test_pain_told_in_the_note_is_asked_about_and_closes_the_day(note: str):
    talk = after().say("yes", "film", "kept", "no", "80", note)
    assert talk.last == "Did something hurt?"
    talk.say("yes")
    assert talk.began.count("pain") == 1
    assert talk.known["safety.level"] != "go"


@pytest.mark.parametrize("note", ["felt great, no pain", "slept badly, bar felt light", "tight hips", "heavy today, last set was slow"])
def test_an_ordinary_note_is_kept_without_a_question(note: str):
    assert after().say("yes", "film", "kept", "no", "80", note).state == "squat_after.video"


def test_a_note_that_was_no_pain_is_kept_as_it_was_typed():
    talk = after().say("yes", "film", "kept", "no", "80", "felt some pinching at the bottom", "no")
    assert talk.state == "squat_after.video"
    assert told(talk).note == "felt some pinching at the bottom"


# pain told later than a safety check ----------------------------------------------------------------------------------


def test_a_check_of_this_morning_opens_nothing_after_pain_of_yesterday_that_is_told_later():
    talk = Lifter(FLOW, answers=squatted(1, "1"), asked=YESTERDAY).say("still", "film", "kept", "yes", *PAIN, "skip", "skip", "skip")
    assert talk.known["safety.level"] == "no_load"
    assert "no loaded squats before a safety check on another day" in talk.heard
    assert "open again" not in talk.heard


def test_squats_ended_after_midnight_open_nothing_on_the_day_they_ended():
    talk = Lifter(BOOK["squat_day"].flow).say("80", "no")
    talk.now, talk.known["today"] = NOW + timedelta(hours=9), "2026-03-03"
    talk.tap("Done squatting").say("still", "film", "kept", "yes", *PAIN, "skip", "skip", "skip")
    assert "no loaded squats before a safety check on another day" in talk.heard
    talk.now += timedelta(hours=12)
    talk.say("how it went", "today", "still", "film", "kept", "no", "80", "skip", "skip")  # squats without a check
    assert "closed until a safety check passes, so that day does not count" in talk.heard
    talk.now, talk.known["today"], talk.known["safety.level"] = NOW + timedelta(days=2), "2026-03-04", "go"  # it has lapsed
    del talk.known["safety.checked.today"]
    assert talk.say("depth to keep").heard.count("so that day does not count") == 2


def test_without_a_bar_squats_that_were_only_ended_after_midnight_open_nothing_either():
    talk = Lifter(BOOK["squat_day"].flow, {"bar.bar": "none", "drill": "none"})
    assert talk.state == "squat_day.squatted"
    talk.now, talk.known["today"] = NOW + timedelta(hours=9), "2026-03-03"
    assert talk.tap("Done squatting").last == "Did you squat yesterday evening?"
    talk.say("yes", "still", "film", "kept", "yes", *PAIN, "skip", "skip")
    assert "no loaded squats before a safety check on another day" in talk.heard
    talk.now, talk.known["today"], talk.known["safety.level"] = NOW + timedelta(days=2), "2026-03-04", "go"
    del talk.known["safety.checked.today"]
    assert "open again" not in talk.say("depth to keep").heard


def test_a_check_on_the_day_after_pain_opens_it_again():
    hurt = [*squatted(2, "1", back="still", kept="kept", hurt="yes"), *squatted(0.1, "2")]
    assert "open again" in Lifter(BOOK["depth_step"].flow, answers=hurt).heard


def over(load: str, **known: str) -> Lifter:
    """A day told of with this load, against a limit of 112 kg, after three days of which two were over it."""
    before = [squatted(n, f"d{n}", back="still", kept="kept", hurt="no", load=load) for n, load in ((6, 137.0), (4, 110.0), (2, 152.0))]
    return after(*before, **{"load.limit": "112", **known}).tap("Yes, still", "Film, from the side", "Kept to it", "No").say(load)


def test_a_load_over_the_limit_is_named_at_once_with_numbers_and_what_holds():
    talk = over("140")
    assert talk.state == "squat_after.note", "before anything else is asked"
    assert ("140 kg is more than the 112 kg to keep to for now. It is in your log, and does not count towards a step "
            "deeper. Keep to 112 kg next time.") in talk.heard
    talk.say("skip", "skip")
    assert "It was over the load limit, so that day does not count towards a step." in talk.heard


def test_it_is_named_in_the_lifter_s_own_units():
    assert "309 lb is more than the 247 lb to keep to for now." in over("309", **{"welcome.units": "imperial"}).heard


def test_a_load_put_right_to_one_over_the_limit_is_named_too_there_and_later():
    within = over("100")
    assert "to keep to for now" not in within.heard
    assert "90 kg in place of" in within.say("the load was 90 not 100").last
    within.say("yes")
    assert "to keep to for now" not in within.heard, "still within it"
    within.say("the load was 120 not 90", "yes")
    assert "120 kg is more than the 112 kg to keep to for now." in within.heard
    assert within.state == "squat_after.note"
    later = over("100").say("skip", "skip")
    assert later.state == "home.pick"
    later.say("the load was 130 not 100", "yes")
    assert "130 kg is more than the 112 kg to keep to for now." in later.heard
    assert later.state == "home.pick"
    assert told(later).load == 130.0


@pytest.mark.parametrize("words", ["did 140 kg in the end", "used 140 kg though"])
def test_a_load_told_after_it_was_skipped_is_asked_about_and_named(words: str):
    note = over("skip").say(words)
    assert "working load 140 kg" in note.last
    home = over("skip").say("skip", "skip", words)
    assert "working load 140 kg" in home.last
    for talk in (note, home):
        talk.say("yes")
        assert "140 kg is more than the 112 kg to keep to for now." in talk.heard
        assert told(talk).load == 140.0


def test_where_no_load_is_allowed_it_is_asked_and_named_over_the_limit():
    body = {"limit.load": "closed", "limit.kg": 0.0, "load.told": "0", "limit.words": "no added load"}
    talk = after(**body).tap("Yes, still", "Film, from the side", "Kept to it", "No")
    assert talk.state == "squat_after.load"
    assert "80 kg is over your limit, which is no added load for now." in talk.say("80").heard
    clean = after(**body).tap("Yes, still", "Film, from the side", "Kept to it", "No", "No bar")
    assert "over your limit" not in clean.heard


def yesterday(load: str, *limits: tuple[timedelta, str], **known: Value) -> Lifter:
    """Yesterday's load told today. ``limits``: what a clinician's limit was set to, how long ago."""
    had = json.dumps([((NOW - ago).isoformat(), "load.told", kg) for ago, kg in limits])
    return Lifter(FLOW, {"load.limits": had, **known}, squatted(1, "1"), asked=YESTERDAY).say("still", "film", "kept", "no", load)


HOURS, DAYS = timedelta(hours=1), timedelta(days=1)


def test_a_load_told_later_is_not_over_a_limit_that_began_since():
    talk = yesterday("100", (2 * HOURS, "60"), **{"load.told": "60"})
    assert "100 kg" not in talk.heard
    assert "over the load limit" not in talk.say("skip", "skip").heard
    talk.say("the load was 110 not 100", "yes")
    assert told(talk).load == 110.0
    assert "110 kg is" not in talk.heard


@each_row(("now", "next_time"), [({}, ""), ({"load.told": "80"}, " Keep to 80 kg next time.")])
def test_a_load_told_later_is_over_the_limit_of_its_day_though_that_has_ended(now: dict[str, Value], next_time: str):
    talk = yesterday("100", (5 * DAYS, "60"), (2 * HOURS, str(now.get("load.told", ""))), **now)
    said = f"100 kg is more than the 60 kg to keep to that day. It is in your log, and does not count towards a step deeper.{next_time}"
    assert said in [say.text for say in talk.says]
    assert "It was over the load limit" in talk.say("skip", "skip").heard
    talk.say("the load was 110 not 100", "yes")
    assert "110 kg is more than the 60 kg to keep to that day." in talk.heard
    none = yesterday("20", (5 * DAYS, "0"), (2 * HOURS, ""))
    assert "20 kg is over your limit, which was no added load that day." in none.heard


@pytest.mark.parametrize("load", ["112", "100"])
def test_a_load_within_the_limit_is_not_spoken_of(load: str):
    talk = over(load)
    assert "to keep to for now" not in talk.heard


def test_a_plan_over_the_limit_that_nobody_says_was_lifted_is_not_over_it():
    plan = LoggedAnswer("squat_day", "plan", "load", 137.0, "ok", "done", "", "", NOW - timedelta(hours=2))
    talk = Lifter(FLOW, {"load.limit": "112"}, [*BEGUN, plan]).tap("Yes, still", "Film, from the side", "Kept to it", "No").say("skip")
    assert "to keep to for now" not in talk.heard
    assert told(talk).load is None


def at_the_film(*replies: str) -> Talk:
    """At the last step of a squat day without a bar, where a film may be sent."""
    talk = Talk(BOOK["squat_day"].flow, {**CHECKED, "bar.bar": "none"}, BOOK)
    talk.tap("Done squatting", "Yes, I did", "Yes, still", "Mirror", "About parallel", "No").say("skip")
    assert talk.state == "squat_after.video"
    return talk.say(*replies)


@pytest.mark.parametrize("words", ["right leg felt like it wasnt mine after", "nothing, but my foot never woke up after"])
def test_a_sign_told_where_a_film_is_asked_for_is_asked_about_as_anywhere_else(words: str):
    talk = at_the_film(words)
    assert talk.session.top.flow == "signs"
    assert talk.known["safety.level"] != "go"


@pytest.mark.parametrize("words", ["no video", "forgot to film", "my phone was dead so no video", "the gym doesnt allow filming"])
def test_no_film_is_still_no_more_than_that(words: str):
    assert any(say.text.startswith("Thank you, that is in your log") for say in at_the_film(words).says)
