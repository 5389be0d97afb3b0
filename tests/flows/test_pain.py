"""The pain questions, lived through: where, how bad, and what each answer closes."""

from collections.abc import Mapping

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Alert, Remind, Say
from companion.conversation.reading import IN_FRIGHT
from companion.screening.protocols import protocols
from flows.catalogue import BOOK
from flows.pain import FLOW
from flows.shared import CALL_FIRST, CLINICIAN, EMERGENCY, NO_LOAD, NOT_TODAY, SAME_DAY
from tests.drive import CHECKED, UNCHECKED, Talk
from tests.table import each_row

SMALL = ("Lower back", "1", "no", "no", "no")
ASKED_BELOW = ("back", "hip", "leg", "other", "chest")
WORDS = {"emergency": EMERGENCY, "same_day": SAME_DAY, "clinician": CLINICIAN, "not_today": NOT_TODAY, "no_load": NO_LOAD}


def begun(*replies: str, known: Mapping[str, Value] | None = None) -> Talk:
    return Talk(FLOW, known={**CHECKED, **(known or {})}, book=BOOK).say(*replies)


def said(text: str, *replies: str) -> Talk:
    """The questions as they follow something the lifter wrote about pain."""
    return Talk(BOOK["about_you"].flow, known=CHECKED, book=BOOK).say(text, *replies)


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def level(talk: Talk) -> str:
    return talk.found["safety.level"]


def alerts(talk: Talk) -> list[str]:
    return [effect.level for effect in talk.effects if isinstance(effect, Alert)]


def test_until_it_is_answered_the_day_is_closed():
    talk = begun()
    assert level(talk) == "not_today"
    assert talk.says[0].text.startswith("Stop there")
    assert talk.says[0].must_arrive


@pytest.mark.parametrize("stood", ["clinician", "same_day", "emergency"])
def test_while_it_is_open_a_worse_level_stands(stood: str):
    assert level(begun(known={"safety.level": stood})) == stood


def test_no_question_of_it_can_be_skipped():
    for replies in ((), ("Lower back",), ("Lower back", "1"), ("Lower back", "1", "no"), ("Lower back", "1", "no", "no")):
        talk = begun(*replies)
        here = talk.state
        assert talk.say("skip").state == here


def test_a_small_dull_pain_ends_load_for_today_and_tells_the_coach():
    talk = begun(*SMALL)
    assert (level(talk), talk.found["pain.hurt"], talk.found["safety.why"]) == ("no_load", "yes", "bad")
    assert NO_LOAD in heard(talk)
    assert "Not gone by tomorrow morning" in talk.says[-2].text
    assert alerts(talk) == ["no_load"]


@pytest.mark.parametrize("flow", ["rock_back", "knee_to_wall", "bird_dog"])
def test_only_a_test_that_was_running_is_said_not_to_count(flow: str):
    talk = Talk(BOOK[flow].flow, known=CHECKED, book=BOOK).say("ow, my back hurts", *SMALL)
    assert "Thank you for saying so. " + NO_LOAD in heard(talk)
    assert f"No longer counted: {protocols()[flow].short_name}. Do that again on a day without pain." in heard(talk)


@pytest.mark.parametrize("flow", ["about_you", "squat_day", "home"])
def test_where_no_test_was_running_none_is_spoken_of(flow: str):
    talk = Talk(BOOK[flow].flow, known={**CHECKED, "bar.bar": "none"}, book=BOOK).say("ow, my back hurts", *SMALL)
    assert "Thank you for saying so. " + NO_LOAD in heard(talk)
    assert "No longer counted" not in heard(talk)


def test_pain_told_after_the_squats_speaks_of_no_test():
    talk = Talk(BOOK["squat_after"].flow, known=CHECKED, book=BOOK).say("yes", "still", "feel", "parallel", "yes", *SMALL)
    assert "Thank you for saying so. " + NO_LOAD in heard(talk)
    assert "No longer counted" not in heard(talk)


@pytest.mark.parametrize("where", ["back", "hip", "leg", "knee", "ankle", "other"])
def test_wherever_it_is_a_small_dull_pain_bars_load_only(where: str):
    talk = begun(where, "1", "no", *(("no",) if where in ASKED_BELOW else ()), "no")
    assert level(talk) == "no_load"
    assert ("below_knee" in talk.answers) == (where in ASKED_BELOW)


@each_row("bad", range(11))
def test_from_4_or_a_rise_of_2_nothing_more_today(bad: int):
    """Choice: pain >= 4/10, or a rise of >= 2 within the session."""
    from_nothing = begun("Lower back", str(bad), "no", "no", "no", known={"safety_check.pain": 0.0})
    assert level(from_nothing) == ("not_today" if bad >= 2 else "no_load")
    from_two = begun("Lower back", str(bad), "no", "no", "no", known={"safety_check.pain": 2.0})
    assert level(from_two) == ("not_today" if bad >= 4 else "no_load")


def test_a_start_that_is_not_known_counts_as_no_pain():
    assert level(begun("Lower back", "2", "no", "no", "no")) == "not_today"


def test_the_pain_of_an_earlier_days_check_is_no_start_to_rise_from():
    """A session is of one day: 3 told last week and 3 now, without a check today, counts from nothing."""
    talk = Talk(FLOW, known={**UNCHECKED, "safety_check.pain": 3.0}, book=BOOK).say("Lower back", "3", "no", "no", "no")
    assert level(talk) == "not_today"


@pytest.mark.parametrize("answer", ["yes", "not sure"])
def test_sharp_pain_closes_the_day(answer: str):
    assert level(begun("Lower back", "1", answer, "no", "no")) == "not_today"


@pytest.mark.parametrize("answer", ["yes", "not sure"])
@pytest.mark.parametrize("signs", [("{}", "no"), ("no", "{}")])
def test_below_the_knee_or_tingling_asks_about_bladder_and_weakness_and_sends_to_a_clinician(signs: tuple[str, ...], answer: str):
    talk = begun("Leg", "1", "no", *(one.format(answer) for one in signs))
    assert talk.state == "pain.bladder"
    assert talk.say("no").state == "pain.weakness"
    assert level(talk.say("no")) == "clinician"
    assert CLINICIAN in heard(talk)
    assert alerts(talk) == ["clinician"]


def test_without_a_sign_from_the_nerves_bladder_and_weakness_are_not_asked():
    assert not {"bladder", "weakness"} & begun(*SMALL).answers.keys()


@pytest.mark.parametrize("answer", ["yes", "not sure"])
def test_bladder_or_saddle_with_a_sign_is_an_emergency(answer: str):
    talk = begun("Lower back", "1", "no", "no", "yes", answer, "no")
    assert level(talk) == "emergency"
    assert EMERGENCY in heard(talk)
    assert alerts(talk) == ["emergency"]


@pytest.mark.parametrize("answer", ["yes", "not sure"])
def test_a_weak_leg_with_a_sign_is_for_today(answer: str):
    talk = begun("Lower back", "1", "no", "no", "yes", "no", answer)
    assert level(talk) == "same_day"
    assert SAME_DAY in heard(talk)


@pytest.mark.parametrize("where", ["knee", "ankle"])
def test_tingling_counts_at_the_knee_and_the_ankle_too(where: str):
    assert level(begun(where, "1", "no", "yes", "no", "no")) == "clinician"


def test_pain_in_the_chest_is_an_emergency():
    talk = begun("Chest, breath or faint", "1", "no", "no", "no")
    assert level(talk) == "emergency"
    assert EMERGENCY in heard(talk)


def test_pain_in_the_chest_is_told_to_be_an_emergency_at_once():
    """As in the safety check: an emergency is told before anything more is asked."""
    assert EMERGENCY in heard(begun("Chest, breath or faint"))


def test_trouble_with_the_bladder_is_told_to_be_an_emergency_at_once():
    assert EMERGENCY in heard(begun("Lower back", "1", "no", "no", "yes", "yes"))


@pytest.mark.parametrize(("replies", "expected"), [
    (("Chest, breath or faint",), "emergency"), (("Lower back", "1", "no", "yes"), "clinician"),
    (("Lower back", "1", "no", "no", "yes"), "clinician"),
    (("Lower back", "1", "no", "no", "yes", "yes"), "emergency")])
def test_questions_left_half_done_keep_what_they_have_heard(replies: tuple[str, ...], expected: str):
    """Otherwise putting the phone away makes a day off of it, and tomorrow everything opens."""
    talk = begun(*replies, "stop")
    assert level(talk) == expected


def test_written_numbness_counts_also_where_nothing_more_is_answered():
    assert level(said("my foot went numb", "stop")) == "clinician"


def test_stopping_says_that_the_day_stays_closed():
    talk = begun("stop")
    assert level(talk) == "not_today"
    assert "no test and no drill opens today" in talk.last


# nothing hurt -----------------------------------------------------------------------------------------------------


def test_a_false_alarm_is_asked_about_once_more_and_changes_nothing():
    talk = begun("Nothing hurts")
    assert talk.state == "pain.surely"
    talk.say("Right, nothing")
    assert (level(talk), talk.found["pain.hurt"]) == ("go", "no")
    assert not alerts(talk)
    assert talk.found["safety.why"] == ""


@pytest.mark.parametrize("words", ["my back hurts a lot though", "my foot tingles", "my left leg is weak"])
def test_pain_typed_where_it_is_asked_whether_nothing_hurt_is_a_no(words: str):
    assert begun("nothing").say(words).state in ("pain.where", "signs.so")


def test_a_weak_leg_written_stands_also_where_nothing_hurts():
    talk = said("cant stand on one leg any more", "nothing hurts", "right, nothing")
    assert level(talk) == "same_day"
    assert SAME_DAY in heard(talk)


def test_no_wait_goes_back_to_where_it_hurts():
    talk = begun("Nothing hurts", "No, wait")
    assert talk.state == "pain.where"
    assert level(talk.say(*SMALL)) == "no_load"


@pytest.mark.parametrize("stood", ["no_load", "not_today", "clinician", "same_day", "emergency"])
def test_a_false_alarm_lifts_nothing_that_stood(stood: str):
    talk = begun("Nothing hurts", "Right, nothing", known={"safety.level": stood, "safety.why": "history"})
    assert (level(talk), talk.found["safety.why"]) == (stood, "history")


@pytest.mark.parametrize("stood", ["not_today", "clinician", "same_day", "emergency"])
def test_a_small_pain_never_makes_a_level_better(stood: str):
    talk = begun(*SMALL, known={"safety.level": stood, "safety.why": "leg_signs"})
    assert (level(talk), talk.found["safety.why"]) == (stood, "leg_signs bad")
    assert WORDS[stood] in heard(talk)


# what they wrote --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("text", ["my foot went numb", "it tingles down my leg and hurts", "pins and needles in my foot",
                                  "a shooting pain in my leg"])
def test_words_of_numbness_count_without_being_asked_for_again(text: str):
    talk = said(text, "Leg", "1", "no", "no")
    assert "tingling" not in talk.answers
    assert talk.state == "pain.bladder"
    assert f"You wrote “{text}”" in heard(talk)
    assert level(talk.say("no", "no")) == "clinician"


def test_written_numbness_in_a_foot_counts_although_the_foot_is_below_the_knee():
    assert level(said("my foot went numb", "Ankle or foot", "1", "no", "no", "no")) == "clinician"


def test_numbness_that_was_written_is_not_taken_back_by_a_tap():
    talk = said("my foot went numb", "Nothing hurts")
    assert "nothing was numb" in talk.last
    assert level(talk.say("Right, nothing")) == "clinician"
    assert CLINICIAN in heard(talk)
    assert alerts(talk) == ["clinician"]


def test_other_words_ask_about_tingling():
    assert said("my back hurts", "Lower back", "1", "no", "no").state == "pain.tingling"


@pytest.mark.parametrize("text", ["amazing how much my back hurts", "it is a squeezing pain in my back"])
def test_words_that_only_hold_such_letters_are_no_sign(text: str):
    assert said(text, "Lower back", "1", "no", "no").state == "pain.tingling"


def test_it_can_not_be_walked_out_of_by_starting_something_else():
    talk = begun("Lower back").say("menu")
    assert talk.state == "pain.bad"


def test_words_for_pain_in_it_are_answers_and_start_nothing_new():
    assert begun("my back hurts").state in ("pain.where", "pain.bad")


def test_pain_questions_put_aside_do_not_lift_a_sign_told_later():
    """The first questions are parked, the second send to a clinician; finishing the first must not lift that."""
    talk = said("my back hurts", "stop", "my calf is numb", "Leg", "1", "no", "yes", "no", "no")
    assert level(talk) == "clinician"
    talk.say("go on", "Nothing hurts", "Right, nothing")
    assert level(talk) == "clinician"


def test_pain_questions_put_aside_do_not_lift_an_emergency_found_by_a_safety_check():
    talk = said("my back hurts", "stop", "safety check", "yes")
    assert level(talk) == "emergency"
    talk.say("go on", *SMALL)
    assert level(talk) == "emergency"


def test_the_messages_that_must_arrive_are_marked():
    urgent = [say for say in begun("Lower back", "1", "no", "no", "yes", "yes", "no").effects
              if isinstance(say, Say) and say.text == EMERGENCY]
    assert [say.must_arrive for say in urgent] == [True]


def mornings(talk: Talk) -> list[Remind]:
    return [effect for effect in talk.effects if isinstance(effect, Remind)]


@pytest.mark.parametrize("replies", [SMALL, ("Lower back", "8", "yes", "no", "no"), ("Knee", "3", "no", "no"), ("Chest, breath or faint",)])
def test_the_morning_after_it_is_asked_how_it_is_and_only_on_that_day(replies: tuple[str, ...]):
    (one,) = mornings(begun(*replies))
    assert (one.kind, one.flow, one.date, one.hour, one.that_day) == ("morning", "morning", "2026-03-03", 9, True)


def test_before_the_questions_are_answered_no_morning_is_planned():
    assert mornings(begun("Lower back", "1", "no")) == []


def test_a_false_alarm_has_no_morning_after():
    assert mornings(begun("Nothing hurts", "yes")) == []


def test_the_morning_after_is_the_next_day_also_at_the_end_of_a_month():
    (one,) = mornings(begun(*SMALL, known={"today": "2026-02-28"}))
    assert one.date == "2026-03-01"


@pytest.mark.parametrize("words", ["no pain", "nothing hurt", "no wait nothing hurt", "it didn't hurt", "No, nothing hurts"])
def test_that_nothing_hurt_is_understood_where_a_stop_asks(words: str) -> None:
    stopped = Talk(BOOK["knee_to_wall"].flow, known={**CHECKED, "about_you.height": 180.0}, book=BOOK).say("tape", "stop")
    assert stopped.last == "Did something hurt?"
    stopped.say(words)
    assert (stopped.session.aside, "safety.level" in stopped.found) == (None, False)


def test_once_nothing_hurt_what_else_was_typed_is_done_and_what_says_nothing_is_let_be() -> None:
    talk = Talk(BOOK["home"].flow, known=CHECKED, book=BOOK).say("stop all reminders i'm in hospital")
    assert talk.last == "Did something hurt?"
    assert any(say.text.startswith("Done: no reminders") for say in talk.say("no").says)
    talk.say("hmm a bit achy")
    assert talk.last == "Did something hurt?"
    assert talk.say("no").last.startswith("All right.")
    assert talk.state == "home.pick"


@pytest.mark.parametrize("words", ["my back felt a bit weird", "bck felt a bit wierd on last one"])
def test_a_doubtful_word_of_pain_is_asked_about_over_a_question_what_was_meant(words: str):
    talk = Talk(BOOK["home"].flow, CHECKED, BOOK).say("what about the one with the last bit")
    assert talk.session.aside is not None
    assert talk.session.aside.about == "which"
    assert talk.say(words).session.aside == ("ache", words)


@pytest.mark.parametrize(("replies", "follow"), [(("knee", "8", "yes", "no"), "open"), (("Nothing hurts", "Right, nothing"), None)])
def test_what_hurt_is_asked_about_on_the_next_day(replies: tuple[str, ...], follow: str | None):
    assert Talk(FLOW, CHECKED, BOOK).say(*replies).found.get("pain.follow") == follow


@pytest.mark.parametrize("words", ["my chest hurts and my arm is numb", "i feel faint and my back hurts", "i can't feel my legs",
                                   "my legs have gone numb"])
def test_chest_pain_or_faintness_in_words_is_told_to_call_first_before_anything_is_asked(words: str):
    talk = said(words)
    assert CALL_FIRST in [say.text for say in talk.says]
    assert talk.state in ("pain.heart_now", "pain.saddle_now", "signs.when")


def test_who_is_frightened_at_a_question_that_weighs_is_met_and_asked_again():
    talk = said("my chest hurts and my arm is numb", "im scared")
    assert talk.last.startswith(IN_FRIGHT[0])
    assert talk.say("i'm so scared").last.startswith(IN_FRIGHT[1])
    assert talk.state == "pain.heart_now"


def test_who_is_frightened_at_the_menu_is_met_too():
    assert Talk(BOOK["home"].flow, known=CHECKED, book=BOOK).say("this is scary").last.startswith(IN_FRIGHT[0])
    sent = Talk(BOOK["home"].flow, known={**CHECKED, "safety.level": "emergency", "safety.level.today": "yes"}, book=BOOK)
    assert any(say.text == EMERGENCY for say in sent.say("this is scary").says)


def test_a_place_told_in_a_sentence_is_the_answer_to_where_it_hurts():
    for text, place in (("my back hurts when i bend", "back"), ("my knee is sore", "knee"), ("it hurts in my chest", "chest")):
        talk = said("ouch", text)
        assert talk.session.top.got.get("where", "chest") == place
        assert talk.state != "pain.where"


def test_a_second_pain_told_meanwhile_is_asked_about_once_these_are_answered():
    talk = said("ouch my knee hurts", "knee", "my lower back hurts too", "5", "and my hip is killing me")
    assert "Noted, and I ask about that next." in heard(talk)
    assert (talk.session.top.flow, talk.session.top.got["where"], talk.state) == ("pain", "knee", "pain.sharp")
    talk.say("no", "no")
    assert (talk.session.top.got["where"], talk.state) == ("back", "pain.bad")
    assert "You also wrote “my lower back hurts too”. Now about your lower back." in heard(talk)
    talk.say("2", "no", "no", "no")
    assert (talk.session.top.got["where"], talk.state) == ("hip", "pain.bad")
    talk.say("2", "no", "no", "no")
    assert talk.session.top.flow == "about_you"
    told = [effect.because for effect in talk.effects if isinstance(effect, Alert)]
    words = ("knee, 5", "lower back hurts too", "hip is killing")
    assert all(one in because for one, because in zip(words, told, strict=True))
    assert level(talk) == "not_today"  # the knee's, worse than what followed


def test_two_pains_in_one_answer_are_both_asked_about_and_the_same_place_again_is_not():
    talk = said("ouch", "my knee hurts, and my lower back hurts too", "my knee really hurts", "2", "no", "no")
    assert (talk.session.top.got["where"], talk.state) == ("back", "pain.bad")
    talk.say("my lower back hurts", "2", "no", "no", "no")
    assert talk.session.top.flow == "about_you"


def test_a_second_pain_waits_until_somebody_sent_at_once_writes_again():
    talk = said("my back hurts", "back", "my knee hurts too", "5", "no", "yes", "no", "not sure")
    assert level(talk) == "emergency"
    assert talk.session.stack == ()
    talk.say("hello")
    assert (talk.session.top.flow, talk.session.top.got["where"], talk.state) == ("pain", "knee", "pain.bad")
    assert level(talk) == "emergency"


@pytest.mark.parametrize(("begun", "where"), [("my knee and my lower back hurt", "Knee"), ("my knee hurts", "my back hurts too")])
def test_a_place_told_in_the_first_words_is_not_lost_to_the_answer(begun: str, where: str):
    first, second = ("knee", "back") if where == "Knee" else ("back", "knee")
    talk = said(begun, where, "2", "no", "no", *(["no"] if first == "back" else []))
    assert (talk.session.top.got["where"], talk.state) == (second, "pain.bad")
    assert f"You also wrote “{begun}”." in heard(talk)
    talk.say("2", "no", "no", *(["no"] if second == "back" else []))
    assert talk.session.top.flow == "about_you", "each is asked about once"


def test_one_place_that_is_tapped_otherwise_is_one_pain():
    talk = said("my hamstring hurts", "Hip or groin", "2", "no", "no", "no")
    assert talk.session.top.flow == "about_you"


@pytest.mark.parametrize(("words", "first"), [
    ("sharp pain down my leg, and i cant lift my toes", True), ("pain down my leg and my foot drags", True),
    ("pain in my leg", False), ("my leg hurts, feels a bit weak after squats", False)])
def test_a_weak_leg_told_with_pain_hears_first_that_it_is_to_be_seen_today_and_the_level_says_so(words: str, first: bool):
    talk = Talk(BOOK["home"].flow, known=CHECKED, book=BOOK).say(words)
    assert any("needs to be seen today" in say.text for say in talk.says) is first
    assert talk.found["safety.level"] == ("same_day" if first else "not_today")
    if first:
        assert talk.say("leg", "5", "no", "no", "no", "no").state == "pain.weakness"
