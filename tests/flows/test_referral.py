"""A referral is followed up: did they go, what was said, asked until it is settled, and their coach hears of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from companion.conversation.condition import Value
from companion.conversation.effects import Alert, Remind
from companion.conversation.events import Invite
from companion.conversation.flow import Known
from companion.conversation.step import step
from companion.screening.limits import Limit, LimitPart, as_text
from flows.catalogue import BOOK
from flows.referral import FLOW
from flows.shared import EMERGENCY, SAME_DAY
from tests.app.test_service import Life, settled
from tests.drive import CHECKED, UNCHECKED, Talk


def asked(level: str = "clinician", **known: Value) -> Talk:
    return Talk(FLOW, known={**UNCHECKED, "safety.level": level, **known}, book=BOOK)


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def told(talk: Talk) -> list[tuple[str, str]]:
    return [(effect.level, effect.because) for effect in talk.effects if isinstance(effect, Alert)]


def reminds(talk: Talk) -> list[str]:
    return [effect.date for effect in talk.effects if isinstance(effect, Remind) and effect.kind == "referral"]


def test_who_went_is_asked_what_was_said_and_not_asked_again():
    talk = asked().tap("Yes, I went").say("nothing serious, no load for two weeks", "doctor", "yes")
    assert talk.found["referral.went"] == "yes"
    assert told(talk)[0] == ("clinician", "has been seen. Told, in their words: nothing serious, no load for two weeks")
    assert "no added load, until 16 March 2026" in told(talk)[1][1], "what was said is kept as a limit"
    assert reminds(talk) == [""]
    assert "only that opens squats and tests again" in heard(talk)
    assert "safety.level" not in talk.found, "having gone opens nothing by itself"


@pytest.mark.parametrize("answer", ["Not yet", "It is booked"])
@pytest.mark.parametrize(("level", "again"), [("clinician", "2026-03-05"), ("same_day", "2026-03-03"), ("emergency", "2026-03-03")])
def test_who_has_not_been_seen_is_asked_again_sooner_the_more_urgent_it_is(level: str, again: str, answer: str):
    """After one day for today's care and an emergency, after three for a clinician: choice."""
    talk = asked(level).tap(answer)
    assert reminds(talk) == [again]
    assert [found for found, _ in told(talk)] == [level]
    assert "has not been seen yet" in told(talk)[0][1]


@pytest.mark.parametrize(("level", "where"), [
    ("emergency", "Go to an emergency department"), ("same_day", "call your doctor"), ("clinician", "see a doctor or physiotherapist")])
def test_not_yet_hears_again_where_to_go(level: str, where: str):
    assert where in heard(asked(level).tap("Not yet"))


@pytest.mark.parametrize("words", [
    "its a trapped nerve", "they said its nothing", "just a muscle strain, carry on", "sciatica", "a slipped disc", "tendonitis",
    "the doctor said it was a pulled muscle, carry on as normal", "it's a pulled muscle", "nothing torn", "non specific low back pain",
    "they cleared me", "my physio cleared me last week"])
def test_what_a_clinician_found_is_taken_as_what_was_said_and_opens_nothing(words: str):
    talk = asked().tap("Yes, I went").say(words)
    assert talk.state == "referral.may_train"
    talk.say("not sure")
    assert talk.state == "home.pick"
    assert told(talk) == [("clinician", f"has been seen. Told, in their words: {words}")]
    assert not {"safety.level", "safety.limits"} & talk.found.keys()
    assert "only that opens squats and tests again" in heard(talk)


@pytest.mark.parametrize(("words", "state"), [
    ("they said its a disc, no lifting for 6 weeks", "limits.by"), ("a trapped nerve, no bending until they clear me", "limits.by"),
    ("sciatica, take it easy", "limits.what"), ("a strain, a week off", "limits.what"), ("a stress fracture", "limits.what"),
    ("it's cancer", "limits.what"), ("they cleared me but no heavy stuff", "limits.until"), ("a disc, avoid it", "limits.what")])
def test_a_limit_told_beside_what_was_found_is_heard_and_what_is_in_doubt_closes_until_asked(words: str, state: str):
    talk = asked().tap("Yes, I went").say(words)
    assert talk.state == state
    assert '"parts": ["other"]' in talk.found["safety.limits"]


@pytest.mark.parametrize("words", ["it hurts more now", "my sciatica hurts a lot", "a muscle spasm but my leg is still numb"])
def test_what_hurts_is_heard_in_what_was_said(words: str):
    talk = asked().tap("Yes, I went").say(words)
    assert talk.session.aside is not None
    assert talk.session.aside.about == "ache"


def test_a_sign_is_heard_in_what_was_said():
    talk = asked().tap("Yes, I went").say("its a disc and i wet myself last night")
    assert talk.state == "signs.so"


@pytest.mark.parametrize(("said", "more", "who_and_when"), [
    ("nothing broken, i may train", ("my gp, yesterday", "yes"), "my gp, yesterday"),
    ("my gp cleared me yesterday", ("yes",), "my gp cleared me yesterday"), ("skip", ("dr amsel, today",), "dr amsel, today")])
@pytest.mark.parametrize("level", ["clinician", "same_day", "emergency"])
def test_who_has_been_seen_and_may_train_is_asked_who_cleared_them_and_opens_nothing_by_that(
        said: str, more: tuple[str, ...], who_and_when: str, level: str):
    talk = asked(level).tap("Yes, I went").say(said, "yes", *more, "yes", "none")
    assert told(talk)[-1] == ("", f"was cleared for everything. By whom and when: {who_and_when}")
    assert "A new safety check opens the rest" in heard(talk)
    assert "safety.level" not in talk.found


def test_a_limit_beside_what_was_said_is_not_cleared_in_the_same_breath():
    talk = asked().tap("Yes, I went").say("nothing serious, no load for two weeks", "doctor", "yes")
    assert talk.state == "home.pick"
    assert talk.known["safety.limits"]


@pytest.mark.parametrize(("may_open", "when"), [("yes", "say “safety check”:"), ("no", "say “safety check” from tomorrow on:")])
@pytest.mark.parametrize("level", ["same_day", "emergency"])
def test_who_has_been_seen_is_not_sent_again_but_told_what_comes_next(level: str, may_open: str, when: str):
    known = {**UNCHECKED, "safety.level": level, "safety.may_open": may_open}
    seen = Talk(BOOK["home"].flow, known={**known, "safety.seen": "yes"}, book=BOOK).say("squatting", "should i call somebody")
    assert seen.says[0].text.startswith("You have been seen. A safety check comes before squats and tests.")
    assert when in heard(seen)
    assert "call your emergency number now" not in heard(seen)
    assert "call your doctor, an urgent care line" not in heard(seen)
    for unseen in ({}, {"safety.seen": "no"}, {"safety.seen": "booked"}):
        talk = Talk(BOOK["home"].flow, known={**known, **unseen}, book=BOOK).say("squatting")
        assert "You have been seen" not in heard(talk)


@pytest.mark.parametrize("flow", ["safety_check", "squat_look"])
def test_on_the_day_itself_who_has_been_seen_is_told_so_at_the_gate(flow: str):
    known = {**UNCHECKED, "safety.level": "same_day", "safety.may_open": "no", "safety.seen": "yes"}
    assert "say “safety check” from tomorrow on" in heard(Talk(BOOK[flow].flow, known=known, book=BOOK))


async def test_having_been_seen_counts_until_the_level_is_found_anew(tmp_path):
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    await settled(life)
    await life.say("i fell off a ladder yesterday", "Yes, that is so")
    life.clock.at += timedelta(days=1)
    assert not any("You have been seen" in text for text in await life.say("menu"))
    await life.say("i saw my gp", "Yes, I went", "all fine", "not sure")
    assert (await life.say("menu"))[-1].startswith("You have been seen")
    said = await life.say("i fell again today", "Yes, that is so")
    assert SAME_DAY in said
    assert not any("You have been seen" in text for text in [*said, *await life.say("menu", "squatting")])
    await life.stop()


def test_what_was_said_can_be_left_out():
    talk = asked().tap("Yes, I went").say("skip", "no")
    assert told(talk) == [("clinician", "has been seen. Told, in their words: –")]


@pytest.mark.parametrize("level", ["go", "no_load", "not_today"])
def test_where_nothing_says_so_any_more_nothing_is_asked(level: str):
    talk = asked(level)
    assert talk.state == "home.pick"
    assert (reminds(talk), told(talk)) == ([""], [])


def test_whether_they_went_is_never_guessed_and_pain_is_heard():
    assert asked().say("skip").state == "referral.went"
    assert asked().say("my back hurts more").state == "pain.where"


def test_the_message_asks_both_and_begins_it():
    talk = asked()
    said = step(BOOK, talk.session._replace(stack=(), idle=True), Invite("referral"), talk._known()).effects[0]
    assert said.text == "I asked you to be seen about what you told me. Did you go? What was said?"
    assert said.must_arrive


@pytest.mark.parametrize("words", ["booked for tuesday", "bookd for tuesday", "i have an appointment on friday",
                                   "i went to the doctor", "havent been yet", "i saw my physio about it"])
def test_who_was_sent_may_say_how_it_stands_before_they_are_asked(words: str):
    sent = {**CHECKED, "safety.level": "same_day"}
    talk = Talk(BOOK["home"].flow, known=sent, book=BOOK).say(words)
    assert talk.state == "referral.went" or "has not been seen yet" in told(talk)[0][1]
    assert not Talk(BOOK["home"].flow, known=CHECKED, book=BOOK).say(words).state.startswith("referral")


@pytest.mark.parametrize("words", ["worse", "its getting worse", "It's worse today"])
def test_who_was_sent_and_is_worse_is_told_not_to_wait_and_the_coach_hears_it(words: str):
    talk = Talk(BOOK["home"].flow, known={**CHECKED, "safety.level": "same_day"}, book=BOOK).say(words)
    assert any("don't wait" in say.text for say in talk.says)
    assert [one.because for one in talk.effects if isinstance(one, Alert)] == [f"was sent to be seen, and writes now: “{words.lower()}”"]
    assert talk.state == "referral.went"


def test_what_was_said_with_the_visit_is_agreed_to_in_a_word_and_sets_no_limit_where_nothing_was_found():
    sent = {**CHECKED, "safety.level": "same_day"}
    talk = Talk(BOOK["referral"].flow, known=sent, book=BOOK).say("i went, the doctor said its fine")
    assert talk.state == "referral.said"
    talk.say("yes")
    assert talk.answers["said"] == "i went, the doctor said its fine"
    assert "safety.limits" not in talk.found
    assert not talk.state.startswith("limits")


TOLD_AT = (("referral", ("Yes, I went",)), ("limits", ()), ("clearance", ("Yes", "Everything", "Yes, that is right")))


def asked_what_was_said(flow: str, taps: tuple[str, ...]) -> Talk:
    stands = {"safety.limits": as_text([Limit(frozenset((LimitPart.SQUATS,)))])} if flow == "clearance" else {}
    talk = Talk(BOOK[flow].flow, known={**CHECKED, "safety.level": "clinician", **stands}, book=BOOK)
    return talk.say(*["my physio, yesterday"] if flow == "clearance" else []).tap(*taps)


@pytest.mark.parametrize(("flow", "taps"), TOLD_AT)
@pytest.mark.parametrize(("name", "opened"), [("results", "Results"), ("squatting today", "Squat day"), ("my limits", "My limits")])
def test_the_name_of_something_is_not_kept_as_what_was_said_unless_it_was(flow: str, taps: tuple[str, ...], name: str, opened: str):
    talk = asked_what_was_said(flow, taps)
    state, told_before = talk.state, len(told(talk))
    talk.say(name)
    assert (talk.state, len(told(talk))) == (state, told_before)
    if opened != BOOK[flow].flow.title:
        assert talk.last.startswith(f"Do you want to open “{opened}”?")
        talk.say("yes")
        assert "I keep your place" in heard(talk)
        talk = asked_what_was_said(flow, taps).say(name, "no")
        assert talk.answers[state.split(".")[1]] == name


@pytest.mark.parametrize(("flow", "taps"), TOLD_AT)
@pytest.mark.parametrize("name", ["help", "again", "back"])
def test_a_control_word_is_asked_about_before_it_is_kept_as_what_was_said(flow: str, taps: tuple[str, ...], name: str):
    talk = asked_what_was_said(flow, taps)
    state = talk.state
    assert talk.say(name).last == f"Shall I keep “{name}” as your answer?"
    assert talk.say("no").state == state


def at_home(level: str, *said: str) -> Talk:
    return Talk(BOOK["home"].flow, known={**UNCHECKED, "safety.level": level}, book=BOOK).say(*said)


@pytest.mark.parametrize("words", ["doctor said its nothing", "physio looked at it, no problem", "my gp told me it was a strain"])
def test_what_came_of_it_said_at_the_menu_opens_the_question_and_is_not_asked_again(words: str):
    talk = at_home("same_day", words)
    assert talk.state == "referral.went"
    talk.say("yes", "not sure")
    assert told(talk) == [("same_day", f"has been seen. Told, in their words: {words}")]
    assert "safety.level" not in talk.found
    assert told(at_home("same_day", words, "no"))[0][1] == "has not been seen yet", "it may have been said of something else"


@pytest.mark.parametrize(("words", "again"), [
    ("the appointment is on friday", "2026-03-07"), ("rang the gp, phone appointment tomorrow", "2026-03-04"),
    ("couldn't get an appointment until next week", "2026-03-10"), ("booked for thursday", "2026-03-06"),
    ("they can't see me until friday", "2026-03-07"), ("i have an appointment", "2026-03-05"),
    ("ok, i have an appointment on friday", "2026-03-07"), ("well i'm seeing my gp tomorrow", "2026-03-04"),
    ("not yet, appointment on friday", "2026-03-07"), ("not yet but booked for friday", "2026-03-07"),
    ("no, got a slot on thursday", "2026-03-06")])
@pytest.mark.parametrize("begun", ["home", "referral"])
def test_an_appointment_is_asked_about_on_the_day_after_it(words: str, again: str, begun: str):
    talk = at_home("clinician", words) if begun == "home" else asked("clinician").say(words)
    assert (told(talk), reminds(talk)) == ([("clinician", f"has not been seen yet; an appointment is booked: “{words}”")], [again])
    assert "If anything gets worse before then" in heard(talk)


def test_an_appointment_of_another_day_is_no_reason_to_wait_for_whoever_is_to_be_seen_today():
    talk = at_home("same_day", "booked for thursday")
    assert reminds(talk) == ["2026-03-03"], "asked tomorrow"
    assert told(talk) == [("same_day", "has not been seen yet; an appointment is booked: “booked for thursday”. That is too late: they are "
                                       "to be seen today")]
    assert told(at_home("same_day", "booked for this afternoon")) == [
        ("same_day", "has not been seen yet; an appointment is booked: “booked for this afternoon”")]
    assert "Is it not today? Then don't wait for it." in heard(talk)
    assert SAME_DAY in heard(talk)


@pytest.mark.parametrize("words", ["booked gp for today 4pm", "seeing my doctor this afternoon", "appointment today at 5"])
def test_an_appointment_today_is_in_time_for_the_same_day_and_not_for_an_emergency(words: str):
    same_day = at_home("same_day", words)
    assert "Good that it is today." in heard(same_day)
    assert SAME_DAY not in heard(same_day)
    assert reminds(same_day) == ["2026-03-03"]
    assert EMERGENCY in heard(at_home("emergency", words))
    assert "Good that it is today." not in heard(at_home("emergency", words))


@pytest.mark.parametrize("words", ["no appointment yet", "i haven't been yet", "the gp is closed today", "not yet cos the gp is closed"])
def test_not_yet_said_at_the_menu_is_taken_for_that(words: str):
    talk = at_home("same_day", words)
    assert (told(talk), reminds(talk)) == ([("same_day", "has not been seen yet")], ["2026-03-03"])


class Reminded(Talk):
    """Whoever was asked by a reminder whether they were seen, and nothing else since."""

    def _known(self) -> Known:
        return replace(super()._known(), invited=lambda: ["go.referral"])


def reminded(level: str, *said: str) -> Talk:
    return Reminded(BOOK["home"].flow, known={**UNCHECKED, "safety.level": level}, book=BOOK).say(*said)


@pytest.mark.parametrize(("words", "again"), [("not yet, appointment on friday", "2026-03-07"), ("booked for thursday", "2026-03-06")])
def test_an_appointment_told_to_the_reminder_is_taken_with_its_day(words: str, again: str):
    assert reminds(reminded("clinician", words)) == [again]
    talk = reminded("same_day", words)
    assert (talk.state, reminds(talk)) == ("", ["2026-03-03"]), "nothing follows where to go"


@pytest.mark.parametrize("words", ["dr said its nothing", "saw the gp, nothing serious"])
def test_what_came_of_it_told_to_the_reminder_is_not_asked_for_again(words: str):
    talk = reminded("same_day", words)
    assert talk.state == "referral.may_train"
    assert told(talk) == [("same_day", f"has been seen. Told, in their words: {words}")]


@pytest.mark.parametrize("level", ["clinician", "same_day", "emergency"])
@pytest.mark.parametrize("words", ["i dont want to go", "im not going", "no way im going to hospital"])
def test_not_wanting_to_be_seen_is_no_thought_of_self_harm_and_is_asked_about_again(words: str, level: str):
    talk = at_home(level, words)
    assert "I can see that you would rather not." in heard(talk)
    assert told(talk) == [(level, f"has not been seen, and writes: “{words}”")]
    assert reminds(talk) == ["2026-03-05" if level == "clinician" else "2026-03-03"]
    assert "crisis" not in talk.found


@pytest.mark.parametrize("words", ["i dont want to go on", "i dont want to live anymore"])
def test_despair_is_heard_also_where_somebody_was_sent_to_be_seen(words: str):
    assert at_home("emergency", words).found["crisis"] in ("open", "asked")


@pytest.mark.parametrize("words", ["ambulance is here", "ok going", "my wife is driving me", "in a&e now waiting"])
@pytest.mark.parametrize("level", ["clinician", "same_day", "emergency"])
def test_who_is_on_the_way_is_left_in_peace_until_the_next_day(words: str, level: str):
    talk = at_home(level, words)
    assert talk.last.startswith("Good. Stay with them")
    assert talk.state == ""
    assert reminds(talk) == ["2026-03-03"]
    assert told(talk) == [(level, "writes that they are on the way to be seen, or there")]


def test_on_my_way_is_an_answer_too():
    talk = asked("emergency").tap("On my way")
    assert talk.last.startswith("Good. Stay with them")
    assert talk.found["referral.went"] == "going"


@pytest.mark.parametrize("words", ["they sent me home with painkillers", "just got out of hospital", "they kept me in, im still here"])
def test_having_been_in_hospital_is_no_sign_and_sets_no_limit(words: str):
    talk = at_home("emergency", words)
    assert talk.state == "referral.went"
    talk.say("yes")
    if talk.state == "referral.said":
        talk.say(words)
    assert talk.state == "referral.may_train"


def test_what_they_wrote_of_having_been_there_is_passed_on_where_they_do_not_know_more():
    words = "they sent me home with painkillers"
    talk = at_home("emergency", words).say("yes", "not sure")
    assert told(talk) == [("emergency", f"has been seen. Told, in their words: {words}")]
    assert told(at_home("emergency", words).say("yes", "a pulled muscle"))[0][1].endswith("words: a pulled muscle")


def test_worse_in_an_emergency_is_sent_there_again_and_asked_nothing():
    talk = at_home("emergency", "its getting worse")
    assert (talk.last, talk.state) == (EMERGENCY, "")
    assert reminds(talk) == [], "what is asked tomorrow stays"
    assert told(talk) == [("emergency", "was sent to be seen, and writes now: “its getting worse”")]


@pytest.mark.parametrize("words", ["thanks", "ok", "thank you so much"])
def test_thanks_after_an_emergency_are_met_with_where_to_go(words: str):
    talk = Talk(BOOK["home"].flow, UNCHECKED, BOOK).say("safety check", "yes", words)
    assert talk.last == EMERGENCY


@pytest.mark.parametrize("words", ["not sure", "i forgot tbh", "not sure really"])
def test_who_does_not_know_what_was_said_is_asked_for_no_limit(words: str):
    talk = asked().tap("Yes, I went").say(words)
    assert talk.state == "referral.may_train"


def test_an_emergency_waits_for_no_appointment_and_is_told_to_go_now_each_time():
    assert reminds(asked("emergency").say("booked for thursday")) == ["2026-03-03"]
    talk = asked("emergency")
    assert talk.last.startswith("If you have not been seen: go to an emergency department now, or call your emergency number.")
    taken = step(BOOK, talk.session._replace(stack=()), Invite("referral"), talk._known())
    assert any("go to an emergency department now" in getattr(one, "text", "") for one in taken.effects)
    assert "go to an emergency" not in asked("clinician").last


@pytest.mark.parametrize("words", ["doctor said its nothing", "the appointment is on friday"])
def test_who_was_not_sent_to_be_seen_is_asked_nothing_of_it(words: str):
    assert all(frame.flow != "referral" for frame in at_home("go", words).session.stack)


@pytest.mark.parametrize("words", ["booked for tuesday but it got worse", "appointment is on friday but its worse"])
def test_that_it_is_worse_is_heard_beside_an_appointment(words: str):
    talk = at_home("same_day", words)
    assert told(talk) == [("same_day", f"was sent to be seen, and writes now: “{words}”")]
    assert ("Then don't wait" in heard(talk), talk.state) == (True, "referral.went")


def test_a_question_beside_an_appointment_is_no_answer_yet():
    talk = at_home("same_day", "booked for friday, can i train?")
    assert (told(talk), talk.state) == ([], "referral.went")


def test_words_that_they_went_are_said_back_before_it_is_asked_whether_it_was_for_this():
    talk = Talk(BOOK["home"].flow, known={**UNCHECKED, "safety.level": "same_day", "safety.may_open": "yes"}, book=BOOK)
    assert talk.say("i went to a&e, ecg normal").last.startswith("You wrote “i went to a&e, ecg normal”. Have you been seen")
    assert asked("same_day").last.startswith("Have you been seen")
