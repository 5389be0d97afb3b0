"""Safety check, lived through: every flag, every threshold, and who comes back after being sent to be seen."""

from collections.abc import Mapping
from datetime import date, timedelta

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Alert, Record
from flows.catalogue import BOOK
from flows.safety_check import FLOW
from flows.shared import CLINICIAN, EMERGENCY, NO_LOAD, NOT_TODAY, SAME_DAY
from tests.drive import UNCHECKED, Talk

HEALTHY = ("no", "no", "no", "no", "no", "no", "0", "no")
TODAY = date.fromisoformat(str(UNCHECKED["today"]))


def begun(known: Mapping[str, Value] | None = None) -> Talk:
    return Talk(FLOW, known={**UNCHECKED, **(known or {})})


def after(level: str, why: str = "", today: bool = False, **more: Value) -> Talk:
    """A check begun with a level that stands: set on an earlier day, or ``today``."""
    known: dict[str, Value] = {"safety.level": level, "safety.why": why, "safety.may_open": "no" if today else "yes"}
    known |= {name.replace("__", "."): value for name, value in more.items()}
    return begun(known | ({"safety.level.today": "yes"} if today else {}))


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def level(talk: Talk) -> str:
    """The level found last, or what stood where none was found."""
    return str(talk.known.get("safety.level", "go"))


def alerts(talk: Talk) -> list[str]:
    return [effect.level for effect in talk.effects if isinstance(effect, Alert)]


def answered(flag: str, tapped: bool) -> Talk:
    """A check in which all is well but for one flag."""
    talk = begun()
    while talk.state.startswith("safety_check."):
        key = talk.state.partition(".")[2]
        yes = key == flag or (key == "urgent" and flag in ("weakness", "fall"))
        reply = "0" if key == "pain" else "Yes" if yes else "No"
        (talk.tap if tapped else talk.say)(reply)
    return talk


@pytest.mark.parametrize("flag", ["bladder", "chest", "weakness", "fall", "leg_signs"])
def test_a_tap_on_each_flag_that_closes_everything_can_be_undone_and_words_can_not(flag: str):
    assert answered(flag, tapped=True).found["safety.slip"] == "tapped"
    assert "safety.slip" not in answered(flag, tapped=False).found


# a healthy person ---------------------------------------------------------------------------------------------


def test_eight_taps_and_nothing_stands_against_testing():
    talk = begun().say(*HEALTHY)
    assert level(talk) == talk.found["safety.checked"] == "go"
    assert len([effect for effect in talk.effects if isinstance(effect, Record)]) == 8
    assert "I see no reason against testing today" in heard(talk)
    assert talk.state == "home.pick"
    assert not alerts(talk)


def test_where_no_answer_closed_anything_no_tap_is_called_a_slip():
    """Nothing was typed either, so that only the answers tell."""
    for talk in (begun().tap(*["No"] * 6, "0", "No"), begun().tap(*["No"] * 2, "Yes", *["No"] * 6, "0", "No")):
        assert "safety.slip" not in talk.found, talk.found
        assert not any("wrong tap" in say.text for say in talk.says)


def test_no_question_of_it_can_be_skipped():
    talk = begun()
    for reply in HEALTHY:
        here = talk.state
        talk.say("skip")
        assert talk.state == here
        assert "I need an answer" in talk.last
        talk.say(reply)
    assert level(talk) == "go"


def test_a_vague_answer_is_asked_again_and_counts_as_nothing():
    talk = begun().say("lots")
    assert talk.state == "safety_check.bladder"
    assert "yes, no or not sure" in talk.last


def test_it_comes_after_the_welcome():
    assert Talk(FLOW, known={}).state == "welcome.ok"


# flags ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("answer", ["yes", "not sure"])
@pytest.mark.parametrize("before", [(), ("no",)])
def test_an_emergency_flag_ends_it_at_once_and_tells_the_coach(before: tuple[str, ...], answer: str):
    talk = begun().say(*before, answer)
    assert level(talk) == "emergency"
    assert EMERGENCY in heard(talk)
    assert talk.state == "", "nothing follows it but how a wrong tap is undone"
    assert alerts(talk) == ["emergency"]


@pytest.mark.parametrize("general", ["yes", "not sure"])
@pytest.mark.parametrize("answer", ["yes", "not sure"])
@pytest.mark.parametrize("which", [0, 1])
def test_weakness_and_a_fall_need_care_the_same_day(general: str, which: int, answer: str):
    three = ["no", "no", "no"]
    three[which] = answer
    talk = begun().say("no", "no", general, *three, "no", "no", "no", "0", "no")
    assert level(talk) == "same_day"
    assert SAME_DAY in heard(talk)
    assert alerts(talk) == ["same_day"]


@pytest.mark.parametrize(("pain", "expected"), [("0", "not_today"), ("1", "same_day"), ("2", "same_day"), ("3", "same_day")])
@pytest.mark.parametrize("fever", ["yes", "not sure"])
def test_fever_alone_is_a_day_of_rest_and_with_back_pain_care_today(fever: str, pain: str, expected: str):
    talk = begun().say("no", "no", "yes", "no", "no", fever, "no", "no", "no", pain, *(() if pain == "0" else ("no",)), "no")
    assert level(talk) == expected


def test_something_lately_that_turns_out_to_be_none_of_them_bars_nothing():
    assert level(begun().say("no", "no", "not sure", "no", "no", "no", "no", "no", "no", "0", "no")) == "go"


@pytest.mark.parametrize("answer", ["yes", "not sure"])
def test_signs_below_the_knee_send_to_a_clinician_before_testing(answer: str):
    talk = begun().say(*HEALTHY[:-1], answer)
    assert level(talk) == "clinician"
    assert talk.found["safety.why"] == "leg_signs"
    assert CLINICIAN in heard(talk)
    assert alerts(talk) == ["clinician"]


# pain now -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("pain", range(11))
def test_pain_at_the_start_opens_up_to_2_the_floor_at_3_and_nothing_from_4(pain: int):
    """Our choice: 0-2 go, 3 floor tests only, 4 or more none today."""
    talk = begun().say("no", "no", "no", "no", "no", "no", str(pain), *(("no",) if pain else ()), "no")
    expected = "go" if pain <= 2 else "no_load" if pain == 3 else "not_today"
    assert level(talk) == expected
    assert (NO_LOAD in heard(talk), NOT_TODAY in heard(talk)) == (expected == "no_load", expected == "not_today")


def test_without_pain_soreness_is_not_asked():
    assert begun().say("no", "no", "no", "no", "no", "no", "0").state == "safety_check.leg_signs"
    assert begun().say("no", "no", "no", "no", "no", "no", "1").state == "safety_check.soreness"


def test_soreness_from_training_puts_tests_off_and_locks_nothing():
    talk = begun().say("no", "no", "no", "no", "no", "no", "2", "yes", "no")
    assert (level(talk), talk.found["safety.sore"]) == ("go", "yes")
    assert "Nothing is locked" in heard(talk)
    assert "I see no reason against" not in heard(talk)


def test_pain_that_is_not_soreness_puts_nothing_off():
    assert begun().say("no", "no", "no", "no", "no", "no", "2", "no", "no").found["safety.sore"] == "no"


def test_not_being_sure_that_it_is_only_soreness_puts_the_tests_off_too():
    """Unsure counts as the worse answer (screening.safety: postpone unless told no)."""
    assert begun().say("no", "no", "no", "no", "no", "no", "2", "not sure", "no").found["safety.sore"] == "yes"


# history --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("which", [0, 1, 2])
@pytest.mark.parametrize("answer", ["yes", "not sure"])
def test_each_question_about_history_closes_by_itself(which: int, answer: str):
    three = ["no", "no", "no"]
    three[which] = answer
    assert level(begun().say("no", "no", "no", *three, "no", "no", "no", "0", "no")) == "clinician"


@pytest.mark.parametrize("answer", ["yes", "not sure"])
def test_a_history_without_clearance_needs_a_clinician_first(answer: str):
    for cleared in ("no", "not sure"):
        talk = begun().say("no", "no", "no", answer, "no", "no", "no", "no", cleared, "0", "no")
        assert level(talk) == "clinician"
        assert "cleared_at" not in talk.answers


def test_a_clearance_by_nobody_who_treats_them_counts_as_none():
    begins = ("no", "no", "no", "no", "no", "yes", "no", "no", "yes")
    talk = begun().say(*begins, "my mate, last week", "no")
    assert talk.state == "safety_check.pain"
    talk.say("0", "no")
    assert level(talk) == "clinician"
    assert "safety.cleared_until" not in talk.found
    named = begun().say(*begins, "Sarah", "yes", "last week", "none", "0", "no")
    assert level(named) == "go"


def test_a_clearance_is_kept_with_who_when_and_limits_and_until_when():
    talk = begun().say("no", "no", "no", "no", "no", "yes", "no", "no", "yes", "my physio, in May", "no heavy deadlifts", "0", "no")
    assert level(talk) == "go"
    assert (talk.answers["cleared_at"], talk.answers["limits"]) == ("my physio, in May", "no heavy deadlifts")
    assert talk.found["safety.cleared_until"] == (TODAY + timedelta(days=183)).isoformat()
    assert talk.session.top.flow == "limits"


@pytest.mark.parametrize("none", ["none", "None.", "no", "no limits"])
def test_no_limits_are_not_repeated_as_one(none: str):
    talk = begun().say("no", "no", "no", "no", "no", "yes", "no", "no", "yes", "my physio, in May", none, "0", "no")
    assert talk.session.stack[0].flow != "limits"
    assert "I see no reason against testing today" in heard(talk)


def test_what_was_told_is_taken_apart_before_anything_opens_and_nothing_is_said_to_stand_against_it():
    """The words ended in "Nothing stands against testing today", then a leg raise and "Which bar do you squat with?"."""
    talk = after("clinician", "leg_signs").say("yes", "no hamstring stretching and no weights for 3 weeks", "yes")
    talk.say("no", "no", "no", "no", "no", "no", "0", "no")
    assert talk.session.top.flow == "limits"
    assert "no reason against testing" not in heard(talk)


def test_while_a_limit_stands_the_check_says_so_and_not_that_nothing_stands_against_it():
    said = heard(begun({"limit.words": "no added load, until cleared"}).say("no", "no", "no", "no", "no", "no", "0", "no"))
    assert "What you were told stands: no added load, until cleared." in said
    assert "no reason against testing" not in said


@pytest.mark.parametrize(("until", "asked"), [(0, "same_history"), (1, "same_history"), (-1, "cleared")])
def test_a_clearance_counts_for_six_months_and_is_then_asked_for_again(until: int, asked: str):
    talk = begun({"safety.cleared_until": (TODAY + timedelta(days=until)).isoformat()})
    assert talk.say("no", "no", "no", "no", "no", "yes", "no", "no").state == f"safety_check.{asked}"


def test_a_clearance_that_still_counts_needs_one_word_and_keeps_its_limits():
    talk = begun({"safety.cleared_until": "2026-06-01", "safety_check.limits": "no deep squats"})
    talk.say("no", "no", "no", "no", "no", "yes", "no", "no", "yes", "0", "no")
    assert level(talk) == "go"
    assert talk.session.top.flow == "limits"


@pytest.mark.parametrize("answer", ["no", "not sure"])
def test_a_history_with_something_new_is_asked_for_clearance_again(answer: str):
    talk = begun({"safety.cleared_until": "2026-06-01"}).say("no", "no", "no", "no", "no", "yes", "no", "no", answer)
    assert talk.state == "safety_check.cleared"
    assert level(talk.say("no", "0", "no")) == "clinician"


def test_an_old_quiet_disc_injury_goes_on_with_body_weight_only():
    for cleared in ("no", "not sure"):
        talk = begun().say("no", "no", "no", "no", "no", "yes", "no", "yes", cleared, "0", "no")
        assert (level(talk), talk.found["safety.body_first"]) == ("go", "yes")
        assert "no bar and no added weight" in heard(talk)


HISTORY = ("no", "no", "no", "no", "no", "yes", "no", "no")
"""Answers up to whether a doctor has cleared it."""


@pytest.mark.parametrize(("words", "state"), [
    ("yes, dr okafor on friday", "safety_check.limits"), ("my physio cleared me last week", "safety_check.limits"),
    ("yes, the hospital yesterday", "safety_check.limits"), ("yes my physio", "safety_check.cleared_when"),
    ("i've been cleared", "safety_check.cleared_at"), ("yes, last week", "safety_check.cleared_at"), ("yes", "safety_check.cleared_at"),
    ("my coach cleared me yesterday", "safety_check.clinician")])
def test_who_cleared_it_and_when_is_asked_as_far_as_the_answer_does_not_say(words: str, state: str):
    assert Talk(FLOW, UNCHECKED, BOOK).say(*HISTORY, words).state == state


def test_a_clearance_in_the_words_of_its_answer_counts_and_is_forgotten_with_it():
    talk = Talk(FLOW, UNCHECKED, BOOK).say(*HISTORY, "yes, dr okafor on friday").tap("Back")
    assert talk.say("yes").state == "safety_check.cleared_at"
    talk = Talk(FLOW, UNCHECKED, BOOK).say(*HISTORY, "yes, dr okafor on friday", "none", "0", "no")
    assert (talk.found["safety.level"], talk.found["safety.cleared_until"]) == ("go", "2026-09-01")
    talk = Talk(FLOW, UNCHECKED, BOOK).say(*HISTORY, "my coach cleared me yesterday", "no", "0", "no")
    assert talk.found["safety.level"] == "clinician"
    assert "safety.cleared_until" not in talk.found


def test_an_old_disc_injury_that_was_cleared_is_no_bar_to_a_bar():
    talk = begun().say("no", "no", "no", "no", "no", "yes", "no", "yes", "yes", "my physio, in May", "none", "0", "no")
    assert (level(talk), talk.found["safety.body_first"]) == ("go", "no")
    assert talk.found["safety.cleared_until"]


@pytest.mark.parametrize("answers", [("yes", "no", "no"), ("no", "yes", "no"), ("yes", "no", "yes"), ("no", "not sure", "yes")])
def test_an_old_disc_is_asked_about_only_where_it_is_all_there_is(answers: tuple[str, ...]):
    """Else its yes would outrank cancer, lost weight or chest pain at hard work."""
    assert begun().say("no", "no", "no", *answers, "no").state == "safety_check.cleared"


@pytest.mark.parametrize(("before", "state"), [("heart_history", "cleared"), ("cancer_bone spine_history", "cleared"),
                                               ("spine_history", "old_disc"), ("history_care", "old_disc")])
def test_what_was_told_of_a_history_before_counts_there_too(before: str, state: str):
    assert begun({"safety.history": before}).say("no", "no", "no", "no", "no", "yes", "no").state == f"safety_check.{state}"


def test_not_being_sure_about_the_old_disc_asks_for_clearance():
    assert begun().say("no", "no", "no", "no", "no", "yes", "no", "not sure").state == "safety_check.cleared"


@pytest.mark.parametrize("answer", ["yes", "not sure"])
def test_in_pregnancy_a_clearance_is_needed_and_no_old_disc_counts(answer: str):
    talk = begun().say("no", "no", "no", "yes", "no", "no", answer)
    assert talk.state == "safety_check.cleared"
    assert level(talk.say("no", "0", "no")) == "clinician"


def test_in_pregnancy_a_clearance_leaves_body_weight_only():
    talk = begun().say("no", "no", "no", "yes", "no", "no", "yes", "yes", "my midwife, last week", "none", "0", "no")
    assert (level(talk), talk.found["safety.body_first"]) == ("go", "yes")


def test_somebody_who_was_pregnant_is_asked_again():
    talk = begun({"safety_check.pregnant": "yes"}).say("no", "no", "no", "no", "no", "no")
    assert talk.state == "safety_check.pregnant"
    assert level(talk.say("no", "0", "no")) == "go"


def test_a_history_told_last_time_is_not_untold_by_silence():
    talk = after("clinician", "history").say("no", "no", "no", "no", "no", "no")
    assert talk.state == "safety_check.mistake"
    assert level(talk.say("no", "no", "0", "no")) == "clinician"
    assert CLINICIAN in heard(talk)


@pytest.mark.parametrize(("told", "named"), [
    ("anticoagulants", "blood thinners"), ("heart_history", "a heart condition"), ("weight_loss", "weight loss, not meant"),
    ("spine_history", "a spine problem or an operation"), ("pregnancy", "pregnancy or a birth"), ("cancer_bone", "cancer or weak bones"),
    ("anticoagulants history", "blood thinners; cancer, weak bones or steroid tablets"),
    ("", "something that a clinician should clear first")])
def test_whether_a_history_was_a_mistake_is_asked_with_what_was_told(told: str, named: str):
    talk = begun({"safety.level": "clinician", "safety.why": "history", "safety.history": told}).say(*("no",) * 6)
    assert f"Before, you told me of this: {named}. Was that a mistake?" in talk.last
    taken = talk.say("Yes, a mistake", "0", "no")
    assert (level(taken), taken.found["safety.history"]) == ("go", "")
    assert f"says that this was told by mistake: {named}" in [effect.because for effect in taken.effects if isinstance(effect, Alert)]


@pytest.mark.parametrize("answer", ["No, it is so", "not sure"])
def test_a_history_that_was_no_mistake_leads_to_the_question_whether_it_was_cleared(answer: str):
    def asked() -> Talk:
        return begun({"safety.level": "clinician", "safety.why": "history", "safety.history": "anticoagulants"}).say(*("no",) * 6, answer)
    assert asked().state == "safety_check.cleared"
    talk = asked().say("yes", "my doctor, today", "none", "0", "no")
    assert (level(talk), talk.found["safety.body_first"], "safety.history" in talk.found) == ("go", "no", False)
    assert level(asked().say("no", "0", "no")) == "clinician"


def test_a_history_told_in_the_check_is_kept_by_its_question():
    talk = begun({"safety.history": "anticoagulants"}).say("no", "no", "no", "no", "yes", "no", "no", "no", "0", "no")
    assert (level(talk), talk.found["safety.history"]) == ("clinician", "anticoagulants history_signs")


@pytest.mark.parametrize(("answer", "expected"), [("yes", "go"), ("not sure", "clinician")])
def test_a_history_told_by_mistake_can_be_taken_back(answer: str, expected: str):
    cleared = ["no"] if answer != "yes" else []
    assert level(after("clinician", "history").say("no", "no", "no", "no", "no", "no", answer, *cleared, "0", "no")) == expected


def test_a_clearance_lifts_the_level_that_a_history_set():
    talk = after("clinician", "history").say("no", "no", "no", "no", "no", "yes", "no", "no", "yes", "Dr Amsel, today", "none", "0", "no")
    assert level(talk) == "go"


# sent to be seen ------------------------------------------------------------------------------------------------

SENT = [("emergency", "bladder"), ("same_day", "weakness"), ("clinician", "leg_signs"), ("clinician", "below_knee bad"),
        ("clinician", "tingling bad")]


@pytest.mark.parametrize(("stood", "why"), SENT)
def test_who_was_sent_and_was_not_seen_stays_where_they_were(stood: str, why: str):
    talk = after(stood, why).say("no")
    assert level(talk) == talk.found["safety.checked"] == stood
    assert "be seen first" in heard(talk)
    assert talk.state == "home.pick"


@pytest.mark.parametrize(("stood", "why"), SENT)
@pytest.mark.parametrize("may_train", ["no", "not sure"])
def test_seen_but_not_told_to_train_stays_closed(stood: str, why: str, may_train: str):
    talk = after(stood, why).say("yes", "wait for the scan", may_train, *HEALTHY)
    assert level(talk) == stood
    assert "not told that you may train" in heard(talk)


@pytest.mark.parametrize(("stood", "why"), SENT)
def test_seen_and_told_to_train_opens_with_a_check_that_passes(stood: str, why: str):
    talk = after(stood, why).say("yes", "light training is fine", "yes", *HEALTHY)
    assert level(talk) == "go"
    assert talk.answers["told"] == "light training is fine"
    assert talk.found["safety.why"] == ""


@pytest.mark.parametrize(("stood", "words"), [("emergency", EMERGENCY), ("same_day", SAME_DAY)])
def test_on_the_same_day_no_new_check_opens(stood: str, words: str):
    talk = after(stood, "bladder", today=True)
    assert talk.state == "home.pick"
    assert words in heard(talk)


def test_a_new_flag_counts_also_for_somebody_who_has_been_seen():
    talk = after("clinician", "leg_signs").say("yes", "all fine", "yes", "yes")
    assert level(talk) == "emergency"
    assert alerts(talk) == ["emergency"]


def test_numb_legs_are_not_forgotten_over_an_uncleared_history_in_a_later_check():
    """Seen, not cleared, and a history comes to light: the next check must still ask whether the leg was seen to."""
    talk = after("clinician", "leg_signs").say("yes", "wait for the scan", "no", "no", "no", "no", "no", "no", "no", "no", "yes", "no",
                                               "0", "no")
    assert level(talk) == "clinician"
    again = begun({**talk.known, "safety.may_open": "yes"})
    assert again.state == "safety_check.seen"


def test_what_closed_today_stays_closed_today_also_where_a_second_check_finds_nothing():
    talk = after("not_today", "bad", today=True).say(*HEALTHY)
    assert level(talk) == "not_today"
    assert NOT_TODAY in heard(talk)
    assert "I see no reason against" not in heard(talk)


def test_a_second_check_that_finds_worse_is_what_counts():
    talk = after("no_load", "pain", today=True).say(*HEALTHY[:-1], "yes")
    assert level(talk) == "clinician"


def test_soreness_told_while_the_day_is_closed_for_load_puts_the_floor_tests_off():
    talk = after("no_load", "bad", today=True).say("no", "no", "no", "no", "no", "no", "2", "yes", "no")
    assert "the tests wait" in heard(talk)
    assert talk.found["safety.sore"] == "yes"


# half done ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("told", "expected"), [
    (("no", "no", "yes", "yes"), "same_day"), (("no", "no", "yes", "no", "yes"), "same_day"),
    (("no", "no", "yes", "no", "no", "yes"), "not_today"), (("no", "no", "no", "no", "no", "yes", "no", "no", "no"), "clinician"),
    (("no", "no", "no", "no", "no", "no", "3"), "no_load"), (("no", "no", "no", "no", "no", "no", "4"), "not_today"),
    (("no", "no", "no", "no", "no", "no", "2"), "go"),
    (("no", "no"), "go")])
def test_a_check_that_is_left_half_done_keeps_what_it_has_heard(told: tuple[str, ...], expected: str):
    talk = begun().say(*told, "stop")
    assert talk.session.idle
    assert level(talk) == expected
    assert "safety.checked" not in talk.found


@pytest.mark.parametrize(("weakness", "fall", "said"), [
    ("yes", "no", True), ("not sure", "no", True), ("no", "yes", True), ("no", "no", False)])
def test_what_is_to_be_looked_at_today_is_told_before_the_other_questions(weakness: str, fall: str, said: bool):
    talk = begun().say("no", "no", "yes", weakness, fall, "no" if said else "yes")
    assert talk.state == "safety_check.history"
    assert ("should be looked at today, also if you stop answering here" in heard(talk)) is said


def test_leaving_a_check_half_done_lifts_nothing():
    talk = after("clinician", "leg_signs").say("yes", "all fine", "yes", "no", "no", "no", "no", "no", "no", "stop")
    assert level(talk) == "clinician"


# something else in between --------------------------------------------------------------------------------------

NUMB = ("my calf is numb", "Leg", "2", "no", "yes", "no", "no")


def whole(*replies: str) -> Talk:
    """A check in the whole book, so that the real pain questions and the real menu stand beside it."""
    return Talk(FLOW, known=UNCHECKED, book=BOOK).say(*replies)


def go_through(talk: Talk, *replies: str) -> Talk:
    """Answer for as long as it is still the check that asks."""
    for reply in replies:
        if talk.state.startswith("safety_check."):
            talk.say(reply)
    return talk


def test_a_sign_told_during_the_check_is_not_lifted_by_its_last_answers():
    talk = whole("no", *NUMB)
    assert level(talk) == "clinician"
    assert level(go_through(talk, "no", "no", "no", "0", "no")) == "clinician"


def test_a_day_closed_by_pain_during_the_check_stays_closed():
    talk = whole("no", "no", "my back really hurts", "Lower back", "8", "yes", "no", "no")
    assert level(talk) == "not_today"
    assert level(go_through(talk, "no", "no", "0", "no")) == "not_today"


@pytest.mark.parametrize("resumed_by", ["go on", "safety check"])
def test_a_check_put_aside_before_a_sign_does_not_lift_it_afterwards(resumed_by: str):
    talk = whole("no", "stop", *NUMB)
    assert level(talk) == "clinician"
    assert level(go_through(talk.say(resumed_by), "no", "no", "no", "0", "no")) == "clinician"


def test_a_check_put_aside_before_an_emergency_does_not_lift_it_the_next_day():
    talk = whole("no", "stop", "my calf is numb", "Leg", "2", "no", "yes", "yes", "no")
    assert level(talk) == "emergency"
    talk.known |= {"safety.may_open": "yes"}
    assert level(go_through(talk.say("go on"), "no", "no", "no", "0", "no")) == "emergency"


@pytest.mark.parametrize(("noes", "words", "heard"), [
    (3, "just my apixaban", "taking blood thinners"), (3, "only my heart pills, had a stent", "a heart condition"),
    (3, "slipped disc in 2019", "a disc or spine diagnosis"), (4, "only blood thinners", "taking blood thinners"),
    (5, "only blood thinners", "taking blood thinners"), (5, "i had breast cancer", "cancer, weak bones")])
def test_a_history_told_at_a_question_about_another_is_asked_about_by_its_own_name(noes: int, words: str, heard: str):
    talk = Talk(BOOK["safety_check"].flow, known=UNCHECKED, book=BOOK).say(*["no"] * noes, words)
    assert talk.state == "signs.so"
    assert heard in talk.last
    assert "history" not in {key for key, value in talk.answers.items() if value == "yes"}
    talk.say("yes", *["no"] * 3)
    assert "pregnan" not in talk.found["safety.why"]
    assert talk.found["safety.history"] not in ("", "history")


@pytest.mark.parametrize(("noes", "words", "key"), [
    (3, "had breast cancer", "history"), (4, "i lost 10 kg without trying", "history_signs"), (5, "slipped disc in 2019", "history_care")])
def test_a_question_about_a_history_is_answered_by_its_own(noes: int, words: str, key: str):
    talk = Talk(BOOK["safety_check"].flow, known=UNCHECKED, book=BOOK).say(*["no"] * noes, words)
    assert talk.answers[key] == "yes"


def test_a_sign_named_at_a_question_about_several_is_noted_and_not_asked_for_by_the_name_of_another():
    talk = Talk(FLOW, known=UNCHECKED, book=BOOK).say("no", "no", "fell off a ladder sunday but nothing broke")
    assert talk.says[-2].text == "You wrote “fell off a ladder sunday but nothing broke”: that is noted."
    assert talk.state == "safety_check.weakness"
    talk.say("no")
    assert talk.state == "safety_check.fever"
    assert talk.answers["fall"] == "yes"
    assert talk.say("no").found["safety.level"] == "same_day"
