"""A squat day from the first word to the last set: check, load, lot, drill or plain warm-up, sets, depth."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.conversation.effects import Say
from companion.conversation.wording import MOST_CHARACTERS, MOST_WORDS
from companion.screening.priming_trial import arm_of
from companion.screening.screen import LoggedAnswer
from flows.catalogue import BOOK
from flows.squat_day import FLOW
from tests.drive import CHECKED, NOW, UNCHECKED, Talk
from tests.flows.squatting import RESULTS, SCREENED, Lifter, squatted
from tests.table import each_row

JOINED_AT = NOW - timedelta(days=20)
SEED = f"7 {JOINED_AT.isoformat()}"
JOINED = {"trial.joined": "yes"}
JOIN = [LoggedAnswer("trial", "join", "join", "yes", "ok", "done", "", "", JOINED_AT)]
LEVELS = ["no_load", "not_today", "clinician", "same_day", "emergency"]
HURT = ("Lower back", "5", "no", "no", "no")


def on_a(arm: str, **known: str) -> Lifter:
    """A trial day for which this is drawn, the days before it told, at the question of the lot."""
    index = next(index for index in range(8) if arm_of(SEED, index) == arm)
    days = [row for n in range(index) for row in squatted(19 - n, str(n), lot="draw", back="still", kept="kept", felt=3.0, load=80.0)]
    return Lifter(FLOW, {**JOINED, **known}, [*JOIN, *days]).say("80")


@each_row("words", ["squatting", "Squatting now", "time to squat", "I'm going to squat", "squat day", "at the gym",
                                   "ok I'm about to squat", "squat today", "it's squat day", "warm me up"])
def test_they_just_say_that_they_are_squatting(words: str):
    assert BOOK.command(words) == "squat_day" or BOOK.sentence(words)[0] == "squat_day"


@pytest.mark.parametrize("words", ["squat days", "squat look", "can't squat", "how deep should I squat", "my squat hurts"])
def test_what_only_sounds_like_it_begins_no_squat_day(words: str):
    said = BOOK.sentence(words)
    assert BOOK.command(words) != "squat_day"
    assert said is None or said[0] != "squat_day"


def test_todays_safety_check_comes_first():
    assert Talk(FLOW, {**RESULTS, **UNCHECKED, "safety.checked.today": None}, BOOK).state == "safety_check.bladder"


@pytest.mark.parametrize("level", LEVELS)
def test_a_level_that_bars_squats_bars_the_day(level: str):
    talk = Lifter(FLOW, {"safety.level": level})
    assert talk.state == "home.pick"
    assert "squat_day" not in talk.began


def test_somebody_who_was_never_tested_squats_without_a_drill_or_a_depth():
    talk = Talk(FLOW, {**CHECKED, "bar.bar": "full"}, BOOK).say("60")
    assert talk.state == "squat_day.squatted"
    assert "Keep to" not in talk.last


def test_the_bar_is_asked_about_once():
    talk = Lifter(FLOW, {"bar.bar": None})
    assert talk.state == "bar.bar"
    talk.tap("20 kg or 45 lb", "The usual set of a gym")
    assert talk.state == "squat_day.load"
    assert Lifter(FLOW).state == "squat_day.load"


def test_without_a_bar_nobody_is_asked_for_a_load():
    assert Lifter(FLOW, {"bar.bar": None}).tap("No bar yet").state == "squat_day.prime_now"
    for known in ({"safety.body_first": "yes"}, {"about_you.bar": "none", "bar.bar": None}, {"bar.bar": "none"}):
        talk = Lifter(FLOW, known)
        assert talk.state == "squat_day.prime_now"
        assert talk.say("no").state == "squat_day.squatted"
        assert " kg" not in talk.heard


def test_last_time_and_the_goal_are_told_at_the_beginning():
    days = squatted(3, "1", back="still", kept="kept", load=82.5)
    said = Lifter(FLOW, {"squat.goal": "140 kg, deep and still"}, days).says[0].text
    assert said == "Squat day 2. Last time: 82.5 kg, depth kept, back still. You want: 140 kg, deep and still."


def test_a_day_that_was_only_begun_is_no_last_time():
    rows = [*squatted(5, "1", back="moved", kept="kept", load=80.0), *squatted(2, "2")]
    assert Lifter(FLOW, answers=rows).says[0].text == "Squat day 2. Last time: 80 kg, depth kept, back moved."


@pytest.mark.parametrize(("typed", "told"), [
    ("80", "Warm-up sets:\n20 kg × 8 (bar)\n30 kg × 5 (5 a side)\n47.5 kg × 3 (10 + 2.5 + 1.25 a side)\n62.5 kg × 2 (20 + 1.25 a side)"),
    ("same", "Warm-up sets:\n20 kg × 8 (bar)\n30 kg × 5 (5 a side)\n47.5 kg × 3 (10 + 2.5 + 1.25 a side)\n62.5 kg × 2 (20 + 1.25 a side)"),
    ("15", "15 kg is less than the bar")])
def test_the_sets_before_come_out_for_their_bar_and_plates(typed: str, told: str):
    assert told in Lifter(FLOW).say(typed, "no").heard


def test_own_plates_and_a_light_bar_are_reckoned_with():
    talk = Lifter(FLOW, {"bar.bar": "light", "bar.which": "own", "bar.plates": "10,5"}).say("45", "no")
    assert "Warm-up sets:\n15 kg × 8 (bar)\n25 kg × 3 (5 a side)\n35 kg × 2 (10 a side)" in talk.heard
    assert "Now your squats at 45 kg (10 + 5 a side)." in talk.last


def test_in_pounds_everything_is_in_pounds():
    talk = Lifter(FLOW, {"welcome.units": "imperial"}).say("225", "no")
    assert "90 lb × 5 (2×10 + 2.5 a side)\n135 lb × 3 (45 a side)" in talk.heard
    assert "Now your squats at 225 lb (2×45 a side)." in talk.last
    assert " kg" not in talk.heard


def test_another_bar_in_pounds_is_reckoned_with_as_it_was_typed():
    talk = Lifter(FLOW, {"welcome.units": "imperial", "bar.bar": "other", "bar.weight": 15.88}).say("135", "no")  # 35 lb, kept to 10 g
    assert "Now your squats at 135 lb (45 + 5 a side)." in talk.last


def test_a_load_that_can_not_be_made_is_said_so():
    assert "at 80 kg (25 + 5 a side): 81 kg can't be made with this bar and these plates." in Lifter(FLOW).say("81", "no").last


@pytest.mark.parametrize(("typed", "told"), [("100", True), ("64", False), ("same", True), ("60", False)])
def test_more_than_the_load_to_keep_to_is_told_and_not_reckoned_with(typed: str, told: bool):
    talk = Lifter(FLOW, {"load.limit": "64"}).say(typed, "no")
    assert ("That is more than the 64 kg to keep to for now. I work out your sets for 64 kg." in talk.heard) == told
    assert ("at 62.5 kg" in talk.last) == (typed != "60")
    assert "can't be made" not in talk.last or not told


def test_of_two_limits_the_lower_holds():
    assert "more than the 50 kg" in Lifter(FLOW, {"load.limit": "64", "load.pin": "50"}).say("60").heard


def test_no_bar_today_has_no_sets():
    talk = Lifter(FLOW).tap("No bar today", "Not today")
    assert talk.state == "squat_day.squatted"
    assert "Warm-up sets" not in talk.heard


@pytest.mark.parametrize("typed", ["20, 10, 5", "lots", "600", "-20"])
def test_a_load_that_is_none_is_asked_again(typed: str):
    assert Lifter(FLOW).say(typed).state == "squat_day.load"


def test_the_depth_to_keep_is_told_with_the_squats():
    assert "Keep to a little above parallel." in Lifter(FLOW).say("80", "no").last


def test_a_step_earned_today_leads_deeper_on_another_day_only():
    clean = {"back": "still", "kept": "kept", "seen_by": "film", "hurt": "no", "load": 80.0}
    told = [*squatted(4, "1", **clean), *squatted(2, "2", **clean)]
    assert "Keep to parallel." in Lifter(FLOW, answers=told).say("80", "no").last
    today = [*squatted(2, "1", **clean), *squatted(0.1, "2", **clean)]
    assert "Keep to a little above parallel." in Lifter(FLOW, answers=today).say("80", "no").last
    moved = [*squatted(2, "1", **clean), *squatted(0.1, "2", **{**clean, "back": "moved"})]
    assert "Keep to well above parallel." in Lifter(FLOW, answers=moved).say("80", "no").last


def test_the_drill_is_offered_and_may_be_left():
    talk = Lifter(FLOW).say("80")
    assert "The drill first: " in talk.last
    assert talk.say("not today").state == "squat_day.squatted"
    assert "prime" not in talk.began


def test_the_drill_comes_with_its_timers_and_then_the_sets():
    talk = Lifter(FLOW).say("80", "yes")
    assert talk.state == "prime.setup"
    talk.tap("Ready", "I have it", "Start the set", "Start the set", "Easy, back still")
    assert talk.state == "squat_day.squatted"
    assert talk.heard.index("Warm-up sets") > talk.heard.index("How did that feel")


def test_messages_are_short_enough_for_a_phone():
    for talk in (Lifter(FLOW).say("142.5", "no"), Lifter(FLOW, {"welcome.units": "imperial"}).say("405", "no"), on_a("plain").tap("Draw")):
        for say in talk.says:
            assert len(say.text) <= MOST_CHARACTERS
            assert len(say.text.split()) <= MOST_WORDS
            assert "!" not in say.text


def test_just_the_bar_is_a_load_before_squats_too():
    assert Lifter(FLOW).say("just the bar").answers["load"] == 20.0


def test_done_leads_to_the_questions_afterwards():
    talk = Lifter(FLOW).say("80", "no").tap("Done squatting")
    assert talk.state == "squat_after.back"


@pytest.mark.parametrize("words", ["ok", "yes", "ok thanks", "OK!", "sure", "great", "got it", "will do", "yeah", "ready", "let's go",
                                   "thanks", "\N{THUMBS UP SIGN}", "ok cool"])
def test_plain_assent_is_no_done_squatting(words):
    """It may answer a coach's message that has just arrived."""
    talk = Lifter(FLOW).say("80", "no").say(words)
    assert talk.state == "squat_day.squatted"
    assert "squatted" not in talk.answers
    assert "stays open" in talk.last


@pytest.mark.parametrize("words", ["done", "all done", "finished", "ok done", "done it", "done squatting", "ive finished"])
def test_done_in_words_is_done_squatting(words):
    assert Lifter(FLOW).say("80", "no").say(words).state == "squat_after.back"


def test_done_squatting_after_midnight_is_about_that_day():
    talk = Lifter(FLOW).say("80", "no")
    talk.now, talk.known["today"] = NOW + timedelta(hours=9), "2026-03-03"
    talk.tap("Done squatting").say("still", "film", "kept", "no")
    assert talk.state == "squat_after.load"
    assert "Planned: 80 kg." in talk.last
    talk.say("as planned", "skip", "skip")
    assert talk.found["squat.answered"] == "2026-03-02"


def later(talk: Lifter, hours: int) -> None:
    """Let hours pass since they last wrote, to another day without a check."""
    talk.session = talk.session._replace(at=talk.now.isoformat())
    talk.now += timedelta(hours=hours)
    talk.known |= {"today": talk.now.date().isoformat(), "safety.may_open": "yes"}
    del talk.known["safety.checked.today"], talk.known["safety_check.pain"]


# a day gone by ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("left", [(), ("menu",), ("stop", "no")])
def test_a_squat_day_left_open_gives_way_to_a_new_one_with_its_own_check(left: tuple[str, ...]):
    talk = Lifter(FLOW).say("80", "no", *left)
    talk.now += timedelta(days=3)
    talk.known |= {"today": "2026-03-05", "safety.may_open": "yes"}
    del talk.known["safety.checked.today"], talk.known["safety_check.pain"]
    talk.say("squatting")
    assert talk.state == "safety_check.bladder"
    assert "Now your squats" not in talk.last


def test_a_day_gone_by_is_not_gone_on_with():
    talk = Lifter(FLOW).say("80", "menu")
    talk.now, talk.known["today"] = NOW + timedelta(days=1), "2026-03-03"
    talk.say("go on")
    assert "That squat day is over." in talk.heard
    assert talk.state == "home.pick"


@pytest.mark.parametrize(("left", "reply"), [
    ((), "80"), ((), "the same again"), (("80",), "yes"), (("80",), "no")])
@pytest.mark.parametrize("hours", [20, 72])
def test_a_squat_day_left_open_overnight_is_asked_about_and_begins_with_that_days_check(left, reply, hours):
    talk = Lifter(FLOW).say(*left)
    later(talk, hours)
    talk.say(reply)
    assert talk.last == "You were in the middle of something: Squat day. Shall we go on?"
    assert "load" not in talk.answers or left
    talk.tap("Go on")
    assert talk.state == "safety_check.bladder"
    assert "Now your squats" not in talk.heard


@pytest.mark.parametrize("way", ["Go on", "Start this again"])
def test_the_question_about_the_bar_left_open_overnight_leads_to_that_days_check_too(way):
    talk = Lifter(FLOW).say("menu")
    del talk.known["bar.bar"]
    talk.say("squatting")
    assert talk.state == "bar.bar"
    later(talk, 20)
    talk.say("20 kg")
    assert talk.last == "You were in the middle of something: Squat day. Shall we go on?"
    assert talk.tap(way).state == "safety_check.bladder"


def test_a_squat_day_left_open_overnight_can_be_left():
    talk = Lifter(FLOW)
    later(talk, 20)
    assert talk.say("80").tap("Leave it").state == "home.pick"


def test_the_plain_warm_up_left_open_overnight_is_not_begun_without_that_days_check():
    talk = on_a("plain").tap("Draw")
    later(talk, 20)
    assert talk.tap("Start").tap("Go on").state == "safety_check.bladder"


def test_hours_later_on_the_same_day_it_goes_on_where_it_was():
    talk = Lifter(FLOW).say("help")
    talk.now += timedelta(hours=4)
    assert talk.say("80").tap("Go on").state == "squat_day.load"


# the trial --------------------------------------------------------------------------------------------------------


def test_no_lot_is_drawn_for_somebody_who_is_not_in_the_trial():
    for known in ({}, {"trial.joined": "no"}):
        assert Lifter(FLOW, known, JOIN).say("80").state == "squat_day.prime_now"


def test_the_lot_is_the_one_that_the_log_gives():
    for index in range(6):
        days = [row for n in range(index) for row in squatted(18 - 2 * n, str(n), lot="draw")]
        talk = Lifter(FLOW, JOINED, [*JOIN, *days]).say("80").tap("Draw")
        assert f"Trial day {index + 1}:" in talk.heard
        assert ("the drill first" in talk.heard) == (arm_of(SEED, index) == "prime")
        assert ("the plain warm-up" in talk.last) == (arm_of(SEED, index) == "plain")
        assert talk.found["trial.day"] == str(index + 1)


def test_a_lot_is_drawn_at_most_once_a_day():
    talk = Lifter(FLOW, {**JOINED, "trial.day": "1", "trial.day.today": "yes"}, [*JOIN, *squatted(0.1, "1", lot="draw")]).say("80")
    assert talk.state == "squat_day.prime_now"


def test_two_lots_of_one_date_are_the_same():
    """As where somebody flew west, and today has begun once more."""
    talk = Lifter(FLOW, JOINED, [*JOIN, *squatted(0.1, "1", lot="draw")]).say("80")
    assert "Trial day 1:" in talk.last


def test_the_lot_stands_once_it_is_drawn():
    talk = on_a("plain").tap("Draw").say("back")
    assert talk.state == "squat_day.plain"
    assert talk.answers["lot"] == "draw"


def test_no_trial_today_offers_the_drill_and_draws_nothing():
    talk = on_a("plain").tap("No trial today")
    assert talk.state == "squat_day.prime_now"
    assert "trial.day" not in talk.found


def test_on_a_primed_day_the_drill_comes_first():
    talk = on_a("prime").tap("Draw")
    assert talk.state == "prime.setup"
    talk.tap("Ready", "I have it", "Start the set", "Start the set", "Easy, back still")
    assert talk.state == "squat_day.squatted"
    assert "the plain warm-up" not in talk.heard.split("Today: ")[1]


def test_on_a_plain_day_two_minutes_are_timed_and_no_drill_comes():
    talk = on_a("plain").tap("Draw", "Start")
    over = next(effect for effect in talk.effects if isinstance(effect, Say) and effect.text.startswith("That is two minutes"))
    assert over.after == 120
    assert talk.state == "squat_day.squatted"
    assert "prime" not in talk.began


def test_a_timer_that_was_stopped_is_begun_again():
    talk = on_a("plain").tap("Draw", "Start").say("stop")
    assert "Did something hurt?" in talk.last
    talk.say("no", "go on")
    assert talk.state == "squat_day.plain"


def test_what_to_repeat_is_that_of_the_last_trial_day():
    rows = [*JOIN, *squatted(5, "1", lot="draw", load=80.0, kept="kept", back="still", felt=3.0)]
    assert "keep to 80 kg and the depth of last time" in Lifter(FLOW, JOINED, rows).say("80").last
    assert "keep to one load and one depth" in Lifter(FLOW, {**JOINED, "load.limit": "60"}, rows).say("60").last
    assert "keep to one load and one depth" in Lifter(FLOW, JOINED, JOIN).say("80").last


def test_on_body_weight_only_the_trial_waits():
    assert Lifter(FLOW, {**JOINED, "safety.body_first": "yes"}, JOIN).state == "squat_day.prime_now"


# pain -------------------------------------------------------------------------------------------------------------


def test_after_pain_while_the_bar_is_asked_about_nobody_is_asked_for_a_load_or_a_lot_or_sent_to_a_drill():
    talk = Lifter(FLOW, {**JOINED, "bar.bar": None}, JOIN)
    assert talk.state == "bar.bar"
    talk.say("my back hurts", *HURT)
    assert talk.state == "bar.bar"
    talk.say("20 kg or 45 lb", "The usual set of a gym")
    assert "No squats today, then. The rest waits for the next squat day." in [say.text for say in talk.says]
    assert talk.state == "home.pick"
    assert not any(row.flow == "squat_day" for row in talk.kept if row.at == NOW)


@pytest.mark.parametrize(("replies", "level"), [
    (("Lower back", "5", "yes", "no", "no"), "not_today"), (("Leg", "1", "no", "yes", "no", "no", "no"), "clinician"),
    (("Lower back", "1", "no", "no", "no"), "no_load"), (("Chest, breath or faint", "3", "no", "no", "no"), "emergency")])
def test_after_pain_in_the_drill_nobody_is_sent_to_squat(replies: tuple[str, ...], level: str):
    talk = on_a("prime").tap("Draw", "Ready", "I have it").say("that hurts", *replies)
    assert talk.known["safety.level"] == level
    assert talk.state != "squat_day.squatted"
    assert "Now your squats" not in talk.heard


def test_after_a_drill_that_hurt_nobody_is_sent_to_squat():
    talk = Lifter(FLOW).say("80", "yes").tap("Ready", "I have it", "Start the set", "Start the set", "Something hurt").say(*HURT)
    assert "No squats today, then." in talk.heard
    assert talk.state == "home.pick"


def test_a_false_alarm_in_the_drill_goes_on():
    talk = Lifter(FLOW).say("80", "yes").tap("Ready", "I have it").say("that hurts", "nothing hurts", "yes")
    assert talk.state == "prime.set_1"


@pytest.mark.parametrize("at", ["plain", "squatted"])
def test_pain_told_in_warm_up_or_squats_ends_the_day(at: str):
    talk = on_a("plain").tap("Draw") if at == "plain" else Lifter(FLOW).say("80", "no")
    assert talk.state == f"squat_day.{at}"
    talk.say("my back hurts", *HURT)
    assert talk.known["safety.level"] == "not_today"
    assert "No squats, tests or drills today." in talk.heard
    assert talk.state == "home.pick"
    assert {row.ending for row in talk.kept if row.flow == "squat_day" and row.at == NOW} == {"pain"}


@pytest.mark.parametrize(("replies", "level", "told"), [
    (("Lower back", "5", "yes", "no", "no"), "not_today", "No squats, tests or drills today."),
    (("Leg", "1", "no", "yes", "no", "no", "no"), "clinician", "before any squats, tests or drills"),
    (("Lower back", "1", "no", "no", "no"), "no_load", "No squats or loaded work today.")])
def test_whatever_is_said_of_pain_at_the_rack_says_that_squats_are_over(replies: tuple[str, ...], level: str, told: str):
    talk = Lifter(FLOW).say("80", "no", "that hurts", *replies)
    assert talk.known["safety.level"] == level
    assert told in talk.heard


# before the day ---------------------------------------------------------------------------------------------------


def test_without_results_the_invitation_still_reads_well():
    from companion.conversation.events import Invite

    talk = Talk(FLOW, {**CHECKED, "squat.plan": ""}, BOOK, SCREENED)
    talk.send(Invite("squat_day", "2026-03-03"))
    assert talk.last.startswith("Squat day")


@pytest.mark.parametrize(("follow", "told"), [("open", True), ("over", False)])
def test_before_a_squat_day_what_hurt_lately_is_not_forgotten(follow: str, told: bool):
    from companion.conversation.events import Invite

    talk = Talk(FLOW, {**CHECKED, "pain.follow": follow, "pain.where": "knee"}, BOOK, SCREENED)
    talk.send(Invite("squat_day", "2026-03-03"))
    assert ("you told me that your knee hurt" in talk.last) is told


def test_the_plain_warm_up_is_timed_for_the_two_minutes_it_says():
    plain = next(step for step in FLOW.steps if getattr(step, "key", "") == "plain")
    assert (plain.kind.seconds, "two minutes" in plain.say) == (120, True)
