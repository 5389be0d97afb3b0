"""Alerts: what reaches a coach at once, and what a lifter hears where nobody has seen it."""

from __future__ import annotations

import re
from datetime import datetime, timedelta

import pytest

from companion.app.due import UNSEEN_UNTIL
from companion.coach.report import report_html
from companion.language.passed_on import passed_on
from companion.record import people
from companion.record.context import standing_now
from companion.screening.levels import UNCHECKED_WORDS
from companion.screening.safety import Level
from flows.catalogue import BOOK
from flows.crisis import HELP
from tests.app.test_service import CHECK, WARM
from tests.coach.gym import KIM, MIA, ODA, SAM


async def test_pain_is_told_at_once_with_a_button_to_write_back(gym):
    await gym.linked()
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")
    told = [text for text in gym.heard(KIM) if "something hurt" in text]
    assert len(told) == 1
    assert "5 of 10" in told[0]
    buttons = gym.db.execute("select buttons from outbox where text = ?", (told[0],)).fetchone()[0]
    assert f"go.coach_note.{gym.id_of(SAM)}" in buttons


async def test_what_is_told_at_once_begins_with_what_the_lifter_was_told(gym):
    await gym.linked()
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")
    assert gym.heard(KIM)[-1].startswith("sam, no squats or tests today: something hurt (back, 5 of 10")
    await gym.say("my chest hurts", "now")
    assert gym.heard(KIM)[-1].startswith("sam, sent to emergency care: wrote “my chest hurts”")
    await gym.lifter(MIA)
    await gym.say(f"code {await gym.code_for('Mia')}", who=MIA)
    await gym.say("Yes, I agree", "safety check", "no", "no", "no", "yes", "no", "no", "no", "no", "no", "0", "no", who=MIA)
    assert gym.heard(KIM)[-1].startswith("mia, a clinician comes first: safety check. With that history")


@pytest.mark.parametrize(("answers", "told"), [
    ((), ""), (("Lower back", "9"), " (where: Lower back; bad: 9)"), (("Lower back", "stop"), " (where: Lower back)")])
async def test_pain_that_is_not_told_to_the_end_is_told_all_the_same(gym, answers, told):
    await gym.linked()
    await gym.say("my back hurts", *answers)
    await gym.companion.sweep()
    assert not any("something hurt" in text for text in gym.heard(KIM)), "they may be answering"
    for _ in range(100):
        gym.clock.at += timedelta(minutes=6)
        await gym.companion.sweep()
    said = [text for text in gym.heard(KIM) if "something hurt" in text]
    assert len(said) == 1
    assert said[0].startswith("sam, no squats or tests today: something hurt, and the questions about it are still open")
    assert told in said[0]
    await gym.say("my lifters", who=KIM)
    assert "questions open" in gym.heard(KIM)[-2]


@pytest.mark.parametrize("left", [(), ("stop",)])
async def test_pain_whose_questions_are_answered_the_next_day_is_that_of_the_day_it_was_told(gym, left):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T18:00+00:00")
    await gym.say("my back hurts", *left)
    await gym.companion.sweep()
    gym.clock.at = datetime.fromisoformat("2026-03-10T12:00+00:00")
    await gym.companion.sweep()
    await gym.say("go on")
    await gym.say("my lifters", who=KIM)
    assert any("something hurt yesterday, questions open" in text for text in gym.heard(KIM)[-2:])
    await gym.say("Lower back", "5", "no", "no", "no")
    assert gym.heard(KIM)[-1].startswith("sam, no squats or tests today: something hurt (back, 5 of 10): “my back hurts”.")
    assert gym.heard(KIM)[-1].endswith(" Told on Monday 9 March.")
    await gym.say("my lifters", who=KIM)
    assert any("hurt yesterday: lower back, 5 of 10" in text for text in gym.heard(KIM)[-2:])
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "Told on Monday 9 March." in gym.heard(KIM)[-1]


async def test_pain_that_was_left_and_pain_told_since_have_each_their_day(gym):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T18:00+00:00")
    await gym.say("my back hurts", "stop")
    gym.clock.at = datetime.fromisoformat("2026-03-10T12:00+00:00")
    await gym.say("my knee hurts", "Knee", "3", "no", "no", "no")
    assert "Told on" not in gym.heard(KIM)[-1]
    await gym.say("my lifters", who=KIM)
    assert any("hurt today: knee, 3 of 10" in text for text in gym.heard(KIM)[-2:])


async def the_list(gym) -> str:
    await gym.say("my lifters", who=KIM)
    return next(text for text in reversed(gym.heard(KIM)) if "\n1. sam: " in text)


@pytest.mark.parametrize(("tingling", "stands"), [("Yes", "a clinician comes first"), ("No", "")])
async def test_after_a_wrong_tap_is_taken_back_a_coachs_list_says_what_stands_and_that_it_was(gym, tingling, stands):
    await gym.linked()
    if stands:
        await gym.say("my back hurts", "Lower back", "5", "no", "no", tingling, "Yes")
    else:
        await gym.say("my back hurts", "Chest, breath or faint")
    assert "sam: sent to emergency care; hurt today: " in await the_list(gym)
    gym.clock.at += timedelta(minutes=1)
    await gym.say("That was a wrong tap", *("no",) * 9)
    listed = await the_list(gym)
    assert f"; {stands or 'no squats or tests today'}, a wrong tap was taken back" in listed
    assert "emergency" not in listed


async def test_pain_told_after_a_wrong_tap_was_taken_back_weighs_by_itself(gym):
    await gym.linked()
    await gym.say("my back hurts", "Chest, breath or faint", "That was a wrong tap", *("no",) * 9)
    gym.clock.at += timedelta(minutes=1)
    await gym.say("my chest hurts", "now")
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")
    listed = await the_list(gym)
    assert "sam: sent to emergency care; hurt today: " in listed
    assert "taken back" not in listed


async def test_a_tap_that_was_none_is_not_said_to_be_taken_back(gym):
    await gym.linked()
    await gym.say("my back hurts", "Chest, breath or faint", "That was a wrong tap", "no", "Yes")
    assert "sam: sent to emergency care; hurt today: " in await the_list(gym)
    assert "taken back" not in await the_list(gym)


async def test_pain_told_to_the_end_is_told_once(gym):
    await gym.linked()
    await gym.say("my back hurts", "stop")
    gym.clock.at += timedelta(minutes=1)
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")
    gym.clock.at += timedelta(minutes=30)
    await gym.companion.sweep()
    assert sum("something hurt" in text for text in gym.heard(KIM)) == 1


@pytest.mark.parametrize(("words", "about"), [
    (("write to my coach", "my knee hurts a bit since tuesday"), " (about “my knee hurts a bit since tuesday”)"),
    (("knee to wall", *CHECK, *WARM, "tape", "stop"), ""),
    (("my back feels a bit off", "stop"), " (about “my back feels a bit off”)"),
    (("about me", "stop", "my back feels a bit off"), " (about “my back feels a bit off”)")])
async def test_did_something_hurt_left_unanswered_for_five_minutes_is_told_once(gym, words, about):
    """Five minutes: choice, as for open questions about pain."""
    await gym.linked()
    assert "Did something hurt?" in (await gym.say(*words))[-1]
    gym.clock.at += timedelta(minutes=4)
    await gym.companion.sweep()
    assert not any("whether something hurt" in text for text in gym.heard(KIM)), "they may be answering"
    for _ in range(100):
        gym.clock.at += timedelta(minutes=1)
        await gym.companion.sweep()
    told = [text for text in gym.heard(KIM) if "whether something hurt" in text]
    assert [text.partition(": ")[2] for text in told] == [f"was asked whether something hurt, and has not answered{about}"]
    await gym.say("my lifters", who=KIM)
    assert "was asked whether something hurt today, no answer" in "\n".join(gym.heard(KIM))


@pytest.mark.parametrize(("answer", "again"), [((), True), (("No",), False)])
async def test_did_something_hurt_is_told_again_only_while_it_is_unanswered(gym, answer, again):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("my back feels a bit off", "stop")
    await in_a_while(gym)
    await gym.say(*answer)
    await pass_hours(gym, 8)
    assert any("no coach has seen this yet" in text for text in gym.heard(KIM)) is again


async def test_did_something_hurt_that_was_answered_is_told_by_nobody(gym):
    await gym.linked()
    await gym.say("write to my coach", "my knee hurts a bit since tuesday", "No")
    gym.clock.at += timedelta(minutes=30)
    await gym.companion.sweep()
    assert not any("whether something hurt" in text for text in gym.heard(KIM))


async def test_a_referral_is_asked_about_the_next_day_until_they_went_and_the_coach_reads_what_was_said(gym):
    """At ten the next day, every three days for a month where nobody answers: choice."""
    await gym.linked()
    await gym.say("my back hurts", "Leg", "5", "no", "yes", "yes", "no", "no")
    asks, seen = "Did you go? What was said?", "sam, a clinician comes first: has "

    async def days(count: int) -> int:
        before = sum(asks in text for text in gym.heard(SAM))
        for _ in range(count * 4):
            gym.clock.at += timedelta(hours=6)
            await gym.companion.sweep()
            await gym.listen()
        return sum(asks in text for text in gym.heard(SAM)) - before

    assert await days(1) == 1
    assert await days(6) == 2, "nobody answered"
    await gym.say("Being seen", "Not yet")
    assert gym.heard(KIM)[-1] == f"{seen}not been seen yet"
    assert await days(4) == 1
    await gym.say("Being seen", "Yes, I went", "a nerve, no load until May")
    assert gym.heard(KIM)[-1] == f"{seen}been seen. Told, in their words: a nerve, no load until May"
    assert await days(40) == 0
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "Been seen: yes, told" in gym.heard(KIM)[-1]


async def test_a_referral_that_is_settled_by_a_check_is_not_asked_about(gym):
    await gym.linked()
    await gym.say("safety check", "no", "no", "no", "yes", "no", "no", "no", "no", "no", "0", "no")
    assert gym.db.execute("select count(*) from reminders where kind = 'referral' and state = 'open'").fetchone()[0] == 1
    await gym.say("safety check", "no", "no", "no", "no", "no", "no", "yes", "0", "no")
    assert gym.db.execute("select count(*) from reminders where kind = 'referral' and state = 'open'").fetchone()[0] == 0


UNSEEN = "Your coach hasn't seen yet what you told me. Don't wait for them"


GRAVE = ("my back hurts", "Leg", "5", "no", "yes", "yes", "no", "no")
"""Pain with a sign of the nerves: a clinician comes first."""
MILD = ("my back hurts", "Lower back", "5", "no", "no", "no")
"""Pain that closes the day, and nothing more."""


async def an_alert(gym, at: str, words: tuple[str, ...] = MILD) -> None:
    await gym.linked()
    gym.clock.at = datetime.fromisoformat(at)
    await gym.say(*words)


async def pass_hours(gym, hours: float) -> list[str]:
    for _ in range(round(hours * 4)):
        gym.clock.at += timedelta(minutes=15)
        await gym.companion.sweep()
        await gym.listen()
    return [text for text in gym.heard(SAM) if UNSEEN in text]


async def test_an_alert_no_coach_has_seen_in_two_hours_is_told_to_the_lifter_once(gym):
    """Two hours: choice."""
    await an_alert(gym, "2026-03-09T10:00+00:00")
    assert await pass_hours(gym, 1.75) == []
    assert len(await pass_hours(gym, 0.5)) == 1
    assert len(await pass_hours(gym, 60)) == 1


async def test_an_alert_that_no_coach_has_seen_is_sent_again_after_two_hours_and_then_every_six_four_times(gym):
    """The hours are our choice; none is sent in the lifter's quiet hours, of which the third waits for the end, at nine."""
    await an_alert(gym, "2026-03-09T06:15+00:00", GRAVE)
    came = list[float]()
    for quarter in range(1, round(UNSEEN_UNTIL / timedelta(minutes=15)) + 20):
        await pass_hours(gym, 0.25)
        count = sum("no coach has seen this yet: something hurt" in text for text in gym.heard(KIM))
        came += [quarter / 4] * (count - len(came))
    assert came == [4.75, 10.75, 26.75, 32.75]


async def test_without_quiet_hours_it_is_sent_again_four_times_and_no_more(gym):
    await gym.linked()
    gym.db.execute("insert into facts values (?, 'squat.wishes', '0 18:00 00:00 00:00', 1, '2026-03-02T18:05:00.000Z')", (gym.id_of(SAM),))
    await gym.say(*GRAVE)
    await pass_hours(gym, 2 + 3 * 6)
    assert sum("no coach has seen this yet" in text for text in gym.heard(KIM)) == 4
    await pass_hours(gym, 24)
    assert sum("no coach has seen this yet" in text for text in gym.heard(KIM)) == 4


@pytest.mark.parametrize("words", [MILD, ("my knee hurts a bit", "Knee", "1", "no", "no", "no")])
async def test_one_that_only_closes_the_day_is_sent_again_once(gym, words):
    await an_alert(gym, "2026-03-09T10:00+00:00", words)
    await pass_hours(gym, 40)
    assert sum("no coach has seen this yet: something hurt" in text for text in gym.heard(KIM)) == 1


async def test_the_lifter_is_not_told_again_of_a_mild_one_while_none_was_seen_and_is_of_a_grave_one(gym):
    await an_alert(gym, "2026-03-09T10:00+00:00")
    for day in (10, 11, 12):
        await pass_hours(gym, 24)
        gym.clock.at = datetime.fromisoformat(f"2026-03-{day}T10:00+00:00")
        await gym.say(*MILD)
    assert len(await pass_hours(gym, 24)) == 1
    gym.clock.at = datetime.fromisoformat("2026-03-14T10:00+00:00")
    await gym.say(*GRAVE)
    assert len(await pass_hours(gym, 3)) == 2
    await gym.say("Seen", who=KIM)
    gym.clock.at = datetime.fromisoformat("2026-03-16T10:00+00:00")
    await gym.say(*MILD)
    assert len(await pass_hours(gym, 3)) == 3


async def test_by_night_it_waits_for_the_end_of_quiet_hours_and_two_hours_more(gym):
    await an_alert(gym, "2026-03-09T23:30+00:00")
    assert await pass_hours(gym, 9.5) == []
    assert len(await pass_hours(gym, 2)) == 1


@pytest.mark.parametrize(("words", "told"), [
    (("i want to kill myself", "Yes, ask them"), f"Your coach has not seen yet that I asked them. Don't wait for them. {HELP}"),
    (("i cant pee since this morning", "Yes, that is so"), UNSEEN)])
async def test_by_night_too_it_is_told_of_an_emergency_or_a_call_and_sent_again(gym, words, told):
    await an_alert(gym, "2026-03-09T21:30+00:00", words)
    letters = len(gym.heard(KIM))
    await pass_hours(gym, 1.75)
    assert not any(text.startswith(told) for text in gym.heard(SAM))
    await pass_hours(gym, 0.5)
    assert sum(text.startswith(told) for text in gym.heard(SAM)) == 1
    assert any("no coach has seen this yet" in text for text in gym.heard(KIM)[letters:])


@pytest.mark.parametrize("tap", ["Seen", "See sam"])
async def test_a_coach_who_taps_has_seen_it(gym, tap):
    await an_alert(gym, "2026-03-09T10:00+00:00")
    said = await gym.say(tap, who=KIM)
    assert tap != "Seen" or said[-1] == "Noted: you have seen it. sam can read that."
    assert await pass_hours(gym, 30) == []
    await gym.say("my coaches")
    assert tap != "Seen" or any("Kim, an alert" in text for text in gym.heard(SAM))


async def test_seen_counts_for_what_was_told_before_it_and_not_for_what_comes_after(gym):
    await an_alert(gym, "2026-03-09T10:00+00:00")
    await gym.say("Seen", who=KIM)
    await gym.say("my chest hurts", "now")
    assert len(await pass_hours(gym, 3)) == 1


async def test_where_there_is_a_second_coach_both_are_told_that_nobody_has_seen_it(gym):
    await gym.coach(ODA)
    await gym.linked()
    await gym.say(f"code {await gym.code_for('Sam', ODA)}", "Yes, I agree")
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")
    assert len(await pass_hours(gym, 3)) == 1
    for coach in (KIM, ODA):
        await gym.listen(coach)
        assert sum(text.startswith("sam, no squats or tests today: no coach has seen this yet: something hurt") for text in
                   gym.heard(coach)) == 1
    await gym.say("Seen", who=ODA)
    assert len(await pass_hours(gym, 30)) == 1


async def test_somebody_else_s_coach_can_say_nothing_of_an_alert(gym):
    await an_alert(gym, "2026-03-09T10:00+00:00")
    await gym.coach(ODA)
    await gym.tap(ODA, f"go.alert_seen.{gym.id_of(SAM)}-1")
    assert gym.heard(ODA)[-1] == "That is not one of your lifters."
    assert len(await pass_hours(gym, 3)) == 1


async def test_an_answer_about_a_referral_is_no_alarm_that_waits_to_be_seen(gym):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("safety check", "no", "no", "no", "yes", "no", "no", "no", "no", "no", "0", "no")
    await gym.say("Seen", who=KIM)
    await gym.tap(SAM, "go.referral")
    await gym.say("Not yet")
    assert gym.heard(KIM)[-1].endswith("has not been seen yet")
    assert await pass_hours(gym, 5) == []


async def test_a_limit_reaches_the_coach_and_their_page_and_is_no_alarm_that_waits_to_be_seen(gym):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("my physio said nothing over 60 kg until i am cleared", "Yes, that is so", "Yes, that is right")
    limit = "nothing above 60 kg, until cleared, said by a physiotherapist"
    assert gym.heard(KIM)[-1] == f"sam: was told by a clinician: {limit}"
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert f"Told by a clinician: {limit}" in gym.heard(KIM)[-1]
    assert await pass_hours(gym, 5) == []


async def test_a_coach_linked_since_is_not_waited_for(gym):
    await gym.coach(KIM)
    await gym.lifter(SAM)
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")
    gym.clock.at += timedelta(minutes=5)
    await gym.say(f"code {await gym.code_for('Sam')}", "Yes, I agree")
    assert await pass_hours(gym, 5) == []


async def test_who_has_no_coach_hears_nothing_of_one(gym):
    await gym.lifter(SAM)
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")
    assert await pass_hours(gym, 5) == []


async def test_in_a_crisis_a_coach_whom_no_message_reaches_is_not_offered(gym):
    await gym.linked()
    people.mark_gone(gym.db, "terminal", "kim", gym.clock.now(), "blocked the bot")
    await gym.say("i want to kill myself")
    assert not any("Shall I ask your coach" in text for text in gym.heard(SAM))


async def test_a_new_pain_told_a_day_later_over_open_questions_about_pain_is_kept_and_they_come_first(gym):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("safety check", *CHECK, "knee to wall", "no", "start", "done", "start", "tape", "10")
    await gym.say("my ankle hurt during the knee to wall test", "Ankle or foot")
    gym.clock.at = datetime.fromisoformat("2026-03-10T12:00+00:00")
    before = len(gym.heard(SAM))
    await gym.say("my back hurts since the squats yesterday")
    assert not any("Shall we go on" in text for text in gym.heard(SAM)[before:])
    assert ("my back hurts since the squats yesterday", "in_pain") in gym.db.execute("select raw, status from answers").fetchall()


LIMITED = ("my physio said nothing over 60 kg until 20 march", "Yes, that is so", "Yes, that is right")


async def test_a_limit_opens_nothing_for_somebody_who_was_never_checked(gym):
    await gym.linked()
    await gym.say(*LIMITED)
    stands = standing_now(gym.db, gym.id_of(SAM), gym.clock.now())
    assert (stands.level, stands.words.coach) == (None, "not checked yet, and a clinician's limit")
    await gym.say("stop", "sam", "my lifters", who=KIM)
    assert any("not checked yet" in text for text in gym.heard(KIM)[-3:])
    assert "no safety check has been done yet" in report_html(gym.db, gym.id_of(SAM), gym.clock.now(), BOOK)
    await gym.say("menu", "safety check", *CHECK)
    assert standing_now(gym.db, gym.id_of(SAM), gym.clock.now()).level is Level.GO


async def test_a_limit_told_after_pain_takes_no_reason_from_what_stands(gym):
    await gym.linked()
    await gym.say("my back hurts", "Leg", "5", "no", "yes", "yes", "no", "no", *LIMITED)
    level, because = gym.db.execute("select value, because from findings where name = 'safety.level' order by id desc").fetchone()
    assert (level, because) == ("clinician", "what was said before still stands")


async def in_a_while(gym, minutes: int = 60) -> list[str]:
    """What Kim hears in the minutes after what was said last."""
    before = len(gym.heard(KIM))
    for _ in range(minutes // 6):
        gym.clock.at += timedelta(minutes=6)
        await gym.companion.sweep()
    return gym.heard(KIM)[before:]


@pytest.mark.parametrize(("words", "care", "report_says"), [
    ("my left foot is dragging since this morning", "to be seen the same day", "closed: to be seen the same day"),
    ("chest pain during my set today", "sent to emergency care", "closed: sent to emergency care"),
    ("i have cancer", "", "a sign was written, and the questions about it are still open"),
    ("got a fever", "", "a sign was written, and the questions about it are still open")])
async def test_a_sign_whose_question_is_left_open_is_told_once_in_the_lifters_words_with_the_care_told_first(gym, words, care, report_says):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T08:00+00:00")
    await gym.say(words)
    told = await in_a_while(gym, 110)
    assert told == [f"sam, {care or 'no squats or tests today'}: wrote “{words}”, and has not answered what I asked about it. Please get "
                    "in touch with them now"]
    await gym.say("my lifters", who=KIM)
    first = f"1. sam: {care and f'{care}; '}questions about a sign open, since today: “{words}”"
    assert any(first in text for text in gym.heard(KIM)[-2:])
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert f"Safety: {care and f'{care}, '}questions about a sign open, since today" in gym.heard(KIM)[-1]
    report = report_html(gym.db, gym.id_of(SAM), gym.clock.now(), BOOK)
    assert report_says in report
    assert "No alert has been raised" not in report
    assert UNCHECKED_WORDS.coach not in report


@pytest.mark.parametrize("words", ["my groin is numb", "my chest hurts", "my left foot is dragging since this morning"])
async def test_a_sign_that_is_gone_on_with_and_left_again_is_told_once_and_with_what_is_answered_then(gym, words):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T08:00+00:00")
    before = len(gym.heard(KIM))
    await gym.say(words, "stop")
    await in_a_while(gym, 12)
    for _ in range(3):
        await gym.say("go on", "stop")
        await in_a_while(gym, 12)
    told = gym.heard(KIM)[before:]
    assert len(told) == 1
    assert f"wrote “{words}”" in told[0]
    await gym.say("go on", "yes", "yes")
    answered = gym.heard(KIM)[before + 1:]
    assert len(answered) == 1
    assert answered[0].startswith("sam, sent to emergency care: " + ("confirmed: " if told[0].startswith("sam, sent") else "wrote"))


async def test_a_sign_written_anew_is_told_anew(gym):
    await gym.linked()
    before = len(gym.heard(KIM))
    await gym.say("my groin is numb", "No, I meant something else", "my glute", "my groin is numb")
    assert sum("wrote “my groin is numb”: numbness" in text for text in gym.heard(KIM)[before:]) == 2


async def test_a_sign_that_is_answered_in_time_is_told_with_its_answer_alone(gym):
    await gym.linked()
    await gym.say("my left foot is dragging since this morning", "Yes, that is so", "no")
    told = await in_a_while(gym)
    assert told == []
    assert sum("my left foot is dragging" in text for text in gym.heard(KIM)) == 1


async def test_a_sign_that_waits_is_told_though_another_was_answered_since(gym):
    await gym.linked()
    await gym.say("my left foot is dragging since this morning", "stop", "i have a fever", "No, I meant something else", "hot in here")
    assert any("my left foot is dragging" in text for text in await in_a_while(gym))


@pytest.mark.parametrize(("answers", "told"), [
    (("yes",), "urgent: yes"), (("not sure", "yes"), "urgent: not sure; weakness: yes"), (("yes", "no", "not sure"), "")])
async def test_a_safety_check_left_after_a_warning_is_told(gym, answers, told):
    await gym.linked()
    await gym.say("safety check", "no", "no", *answers)
    heard = await in_a_while(gym)
    assert len(heard) == 1
    assert heard[0].startswith("sam, to be seen the same day: left the safety check before it was finished, after a warning (urgent: ")
    assert told in heard[0]
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "Safety: safety check left open" in gym.heard(KIM)[-1]


async def test_a_safety_check_left_without_a_warning_is_told_by_nobody(gym):
    await gym.linked()
    await gym.say("safety check", "no", "no", "yes", "no", "no")
    assert await in_a_while(gym) == []


async def test_a_sign_that_may_be_of_self_harm_is_told_without_its_words_and_not_during_a_crisis(gym):
    await gym.linked()
    await gym.say("i want to end my life")
    assert await in_a_while(gym) == []


@pytest.mark.parametrize("then", ["nobody needs me", "i want to end my life"])
async def test_what_was_written_of_the_body_before_a_crisis_is_told_all_the_same_and_nothing_of_it(gym, then):
    await gym.linked()
    await gym.say("my foot is numb", then)
    (told,) = await in_a_while(gym)
    assert "my foot is numb" in told
    assert "needs me" not in told
    assert "life" not in told


async def test_what_was_told_with_self_harm_is_told_to_nobody(gym):
    await gym.linked()
    await gym.say("my foot drops and nobody needs me")
    assert await in_a_while(gym) == []


async def test_words_of_self_harm_are_not_passed_on_from_whatever_was_asked():
    assert passed_on("my back hurts and i want to kill myself", 160) == ""
    assert passed_on("my back hurts", 160) == "my back hurts"
    assert passed_on("something in my back went pop", 20) == "something in my…"


async def next_morning(gym) -> list[str]:
    """What Sam hears by noon of the next day."""
    before = len(gym.heard(SAM))
    gym.clock.at = (gym.clock.at + timedelta(days=1)).replace(hour=12)
    await gym.companion.sweep()
    await gym.listen()
    return gym.heard(SAM)[before:]


@pytest.mark.parametrize("words", [
    ("my left foot is dragging since this morning",), ("my leg gave way on the stairs", "stop"), ("safety check", "no", "no", "yes", "yes"),
    ("my back hurts", "Leg", "9", "yes", "yes")])
async def test_the_next_morning_open_questions_are_asked_for_and_nobody_is_said_to_have_been_sent(gym, words):
    await gym.linked()
    await gym.say(*words)
    said = [text for text in await next_morning(gym) if "questions about it are still open" in text or "be seen" in text]
    assert len(said) == 1
    assert "Please answer them now" in said[0]
    asked = (await gym.say("Answer now"))[-1]
    assert people.load_session(gym.db, gym.id_of(SAM)).stack[-1].flow in ("signs", "safety_check", "pain"), asked


async def test_questions_that_were_answered_are_not_asked_for_the_next_morning_but_whether_they_were_seen(gym):
    await gym.linked()
    await gym.say("my left foot is dragging since this morning", "Yes, that is so", "no")
    said = await next_morning(gym)
    assert not any("still open" in text for text in said)
    assert sum("I asked you to be seen" in text for text in said) == 1


async def test_who_was_sent_to_emergency_care_at_once_is_asked_whether_they_went_though_a_question_is_open(gym):
    await gym.linked()
    await gym.say("i can't feel between my legs and i wet myself")
    said = await next_morning(gym)
    assert sum("I asked you to be seen" in text for text in said) == 1


async def test_an_alert_that_is_seen_is_not_sent_again(gym):
    await an_alert(gym, "2026-03-09T10:00+00:00")
    await pass_hours(gym, 3)
    await gym.say("Seen", who=KIM)
    await pass_hours(gym, 30)
    assert sum("no coach has seen this yet" in text for text in gym.heard(KIM)) == 1


@pytest.mark.parametrize("words", [("my left foot is dragging since this morning",), ("my back hurts",), (
    "write to my coach", "my knee hurts a bit since tuesday"), ("safety check", "no", "no", "yes", "yes")])
async def test_who_was_told_nothing_yet_hears_nothing_of_a_coach_who_has_not_seen_it(gym, words):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say(*words)
    assert await pass_hours(gym, 5) == []
    assert any("no coach has seen this yet" in text for text in gym.heard(KIM))


async def test_who_has_been_seen_since_is_not_told_to_call_a_doctor(gym):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("my back hurts", "Leg", "5", "no", "yes", "yes", "no", "no")
    await gym.tap(SAM, "go.referral")
    await gym.say("Yes, I went", "nothing serious")
    assert await pass_hours(gym, 5) == []


async def test_in_a_crisis_nothing_is_said_of_an_alert_from_before(gym):
    await an_alert(gym, "2026-03-09T10:00+00:00")
    await gym.say("i want to kill myself", "No")
    heard = len(gym.heard(SAM))
    assert await pass_hours(gym, 5) == []
    assert len(gym.heard(SAM)) == heard


@pytest.mark.parametrize(("answers", "reminded"), [((), False), (("stop",), False), (("no",), True)])
async def test_while_it_is_asked_about_living_no_reminder_goes_out(gym, answers, reminded):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T18:00+00:00")
    await gym.say("my squat days", "mon tue wed thu fri 6pm", "yes", "2 hours before", "skip", "nobody needs me", *answers)
    await pass_hours(gym, 23)
    assert any("Squat day" in text for text in gym.heard(SAM)) is reminded


async def test_who_agreed_in_a_crisis_that_the_coach_is_asked_hears_where_nobody_has_seen_that(gym):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("i want to kill myself", "Yes, ask them")
    assert gym.heard(KIM)[-1] == "sam, call wanted now: asks their coach to phone them. Please phone them now"
    assert "I have asked them. Don't wait for them to call: call somebody yourself now." in gym.heard(SAM)
    assert await pass_hours(gym, 5) == []
    assert sum(text == f"Your coach has not seen yet that I asked them. Don't wait for them. {HELP}" for text in gym.heard(SAM)) == 1
    await gym.say("stop", "who needs me", who=KIM)
    assert any("asked today that you call them" in text for text in gym.heard(KIM))


async def test_who_was_cleared_is_not_asked_the_next_morning_whether_they_were_seen(gym):
    await gym.linked()
    await gym.say("safety check", "no", "no", "no", "yes", "no", "no", "no", "no", "no", "0", "no")
    await gym.say("cleared", "my physio, today", "yes", "Yes, that is right", "none")
    assert not any("I asked you to be seen" in text for text in await next_morning(gym))


async def test_an_alert_about_pain_has_the_lifters_words_the_place_the_score_and_two_reasons(gym):
    await gym.linked()
    await gym.say("something in my back went pop and it hurts to stand", "Lower back", "8", "yes", "no", "no")
    told = gym.heard(KIM)[-1]
    words = "something in my back went pop and it hurts to stand"
    assert told.startswith(f"sam, no squats or tests today: something hurt (back, 8 of 10): “{words}”.")
    assert told.count("no more today") == 2
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    line = next(line for line in gym.heard(KIM)[-1].split("\n") if line.startswith("Last alert"))
    assert line.endswith("no more today.")


async def test_an_alert_about_pain_names_the_movement_and_what_no_longer_counts(gym):
    await gym.linked()
    await gym.say("knee to wall", *CHECK, *WARM, "tape", "that hurt", "Ankle or foot", "3", "no", "no")
    told = gym.heard(KIM)[-1]
    assert "(ankle, 3 of 10): “that hurt”. During: knee to wall, which no longer counts." in told


async def test_pain_left_half_told_is_told_with_the_words_it_began_with(gym):
    await gym.linked()
    await gym.say("something in my back went pop and it hurts to stand", "Lower back")
    (told,) = await in_a_while(gym)
    assert told.endswith("still open: “something in my back went pop and it hurts to stand” (where: Lower back)")


async def test_an_emergency_that_is_confirmed_is_told_as_confirmed(gym):
    await gym.linked()
    await gym.say("i can't feel between my legs and i wet myself", "Yes, that is so")
    told = [text.partition(": ")[2] for text in gym.heard(KIM) if text.startswith("sam, sent to emergency care: ")]
    assert [text.startswith("confirmed: wrote “i can't feel") for text in told] == [False, True]


async def test_no_squat_day_is_spoken_of_while_questions_about_pain_are_open(gym):
    await gym.linked()
    await gym.say("my squat days", "tuesdays and fridays at 6.30pm", "Yes, that is right", "the evening before", "stop")
    assert gym.db.execute("select count(*) from reminders where kind = 'squat_day' and state = 'open'").fetchone()[0] == 1
    await gym.say("my back hurts")
    before = len(gym.heard(SAM))
    for _ in range(4 * 24):
        gym.clock.at += timedelta(hours=1)
        await gym.companion.sweep()
    said = gym.heard(SAM)[before:]
    assert not any("Squat day" in text or "squats go" in text for text in said)
    assert any("questions about it are still open" in text for text in said)


async def test_a_limit_that_is_not_confirmed_is_told_to_the_coach_twice_at_most_and_the_lifter_is_asked_again(gym):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("my gp said no lifting till friday", "Yes, that is so")
    before = len(gym.heard(SAM))
    await pass_hours(gym, 96)
    told = [text for text in gym.heard(KIM) if "no lifting till friday" in text]
    assert [text.startswith("sam, no squats or tests today: was told by a clinician: “my gp said") for text in told] == [True, False]
    assert told[1].startswith("sam, no squats or tests today: no coach has seen this yet")
    assert not any("get in touch with them now" in text for text in told)
    await gym.say("my lifters", who=KIM)
    assert any("1. sam: a limit to confirm, since Monday: “my gp said no lifting till friday”" in text for text in gym.heard(KIM)[-2:])
    asked = [text for text in gym.heard(SAM)[before:] if "You told me of a limit" in text]
    assert len(asked) == 2, "the next day, and three days later"
    await gym.say("my limits", "Yes, that is right")
    assert "was told by a clinician: no added load, until 13 March 2026" in gym.heard(KIM)[-1]


async def test_a_sign_beside_a_limit_that_is_not_answered_is_as_urgent_as_ever(gym):
    await gym.linked()
    gym.clock.at = datetime.fromisoformat("2026-03-09T10:00+00:00")
    await gym.say("my left foot is dragging since this morning")
    await pass_hours(gym, 30)
    assert len([text for text in gym.heard(KIM) if "get in touch with them now" in text]) == 5


async def test_a_limit_is_news_until_a_coach_has_seen_it(gym):
    await gym.linked()
    await gym.say("my physio said no bending until i am cleared", "Yes, that is so", "Yes, that is right")
    assert "was told by a clinician: no bending" in (await gym.say("stop", "who needs me", who=KIM))[-1]
    await gym.say("my lifters", who=KIM)
    assert any("1 with word of their care" in text for text in gym.heard(KIM)[-2:])
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "a clinician's limit" in next(line for line in gym.heard(KIM)[-1].split("\n") if line.startswith("Safety: "))
    assert (await gym.say("who needs me", who=KIM))[-1].startswith("Nothing new of your lifter")


async def test_a_page_does_not_say_open_while_somebody_was_asked_whether_something_hurt(gym):
    await gym.linked()
    await gym.say("safety check", *CHECK, "write to my coach", "my knee hurts a bit since tuesday")
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "Safety: asked whether something hurt, no answer" in gym.heard(KIM)[-1]
    assert "nothing stands against tests or squats" not in report_html(gym.db, gym.id_of(SAM), gym.clock.now(), BOOK)


async def test_a_small_pain_left_open_is_told_by_its_own_level_beside_an_emergency(gym):
    await gym.linked()
    await gym.say("my chest hurts", "now", "my knee hurts", "knee", "stop")
    gym.clock.at += timedelta(minutes=6)
    await gym.companion.sweep()
    (said,) = [text for text in gym.heard(KIM) if "the questions about it are still open" in text]
    assert said.startswith("sam, no squats or tests today: something hurt")


async def test_a_second_pain_told_in_open_questions_is_in_the_alert(gym):
    await gym.linked()
    await gym.say("my knee hurts", "knee", "my lower back hurts too")
    gym.clock.at += timedelta(minutes=6)
    await gym.companion.sweep()
    (said,) = [text for text in gym.heard(KIM) if "the questions about it are still open" in text]
    assert "“my knee hurts; my lower back hurts too”" in said


async def test_the_report_keeps_the_reason_of_what_still_stands(gym):
    await gym.linked()
    await gym.say("my back hurts", "Leg", "5", "no", "yes", "yes", "no", "no", *LIMITED)
    report = report_html(gym.db, gym.id_of(SAM), gym.clock.now(), BOOK)
    assert "Because: what was said before still stands: " in report
    assert "Because: what was said before still stands." not in report


async def test_the_report_says_all_that_the_question_about_bladder_and_bowel_asks_of(gym):
    await gym.linked()
    await gym.say("my back hurts", "Lower back", "5", "no", "yes", "yes", "yes")
    report = report_html(gym.db, gym.id_of(SAM), gym.clock.now(), BOOK)
    assert "Answers that led to it: bladder, bowel, between the legs, both legs or sexual function, " in report


@pytest.mark.parametrize("does", [("Write", "how are you now?", "Send it"), ("Reviewed",)])
async def test_a_coach_who_writes_to_the_lifter_or_reviews_them_has_seen_their_alerts(gym, does):
    await gym.linked()
    await gym.say("my chest hurts", "now")
    first, *more = does
    sam = gym.id_of(SAM)
    await gym.tap(KIM, f"go.coach_note.{sam}-note" if first == "Write" else f"go.coach_act.{sam}-reviewed")
    await gym.say(*more, who=KIM)
    assert gym.db.execute("select count(*) from alerts where seen_at is null").fetchone() == (0,)


async def test_seen_in_a_coachs_words_asks_whose_alert_it_is_of(gym):
    await gym.linked()
    await gym.say("ok seen", who=KIM)
    assert gym.heard(KIM)[-1].startswith("No alert waits for you")
    await gym.say("my chest hurts", "now")
    await gym.say("i've seen it", who=KIM)
    assert gym.heard(KIM)[-1].startswith("Whose alert have you seen?")
    assert gym.db.execute("select count(*) from alerts where seen_at is not null").fetchone() == (0,)
    await gym.say("Seen: sam", who=KIM)
    assert gym.heard(KIM)[-1] == "Noted: you have seen it. sam can read that."


async def test_somebody_who_is_not_safe_when_they_write_again_is_offered_their_coach_anew(gym):
    await gym.linked()
    await gym.say("i want to kill myself", "Yes, ask them")
    gym.clock.at += timedelta(days=1)
    before = len(gym.heard(KIM))
    assert (await gym.say("hello", "I am not safe"))[-1].startswith("Shall I ask your coach to get in touch with you today?")
    assert gym.heard(KIM)[before:] == []
    await gym.say("Yes, ask them")
    assert gym.heard(KIM)[before:] == ["sam, call wanted now: asks their coach to phone them. Please phone them now"]
    await gym.say("Seen", "my lifters", who=KIM)
    heard = gym.heard(KIM)[before:]
    assert any("asked on Tuesday that you call them" in text or "asked today that you call them" in text for text in heard)


async def test_a_question_whether_something_hurt_that_was_denied_since_is_not_told_as_open(gym):
    await gym.linked()
    await gym.say("something feels off in my back")
    gym.clock.at += timedelta(minutes=6)
    await gym.companion.sweep()
    await gym.say("No")
    await gym.say("my lifters", who=KIM)
    assert any("was asked whether something hurt today, and said since that nothing did" in text for text in gym.heard(KIM)[-3:])


async def test_what_a_clinician_found_and_said_is_told_with_having_been_seen(gym):
    await gym.linked()
    await gym.say("my left foot drops when i walk", "yes", "no")
    gym.clock.at += timedelta(days=1)
    await gym.companion.sweep()
    await gym.say("saw the doctor, he said nerve is pinched, no lifting for 4 weeks")
    assert "Have you been seen about what you told me?" in gym.heard(SAM)[-1]
    await gym.say("Not yet")
    assert any("I understand: no added load, until" in text for text in gym.heard(SAM)[-3:]), "the limit holds all the same"


@pytest.mark.parametrize("does", [("Seen",), ("See sam",), ("Write to sam", "rest well", "Send it")])
async def test_a_second_coach_reads_who_has_seen_an_alert_and_when(gym, does):
    await gym.linked()
    await gym.coach(ODA)
    await gym.say(f"code {await gym.code_for('Sam', ODA)}", "Yes, I agree")
    await gym.say("my back hurts", "Chest, breath or faint")
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "(seen" not in gym.heard(KIM)[-1]
    gym.db.execute("update alerts set seen_at = null")
    gym.clock.at += timedelta(minutes=2)
    await gym.listen(ODA)
    await gym.say(*does, who=ODA)
    gym.clock.at += timedelta(minutes=2)
    await gym.tap(KIM, f"go.lifter.{gym.id_of(SAM)}")
    assert "needs emergency care. (seen by Oda today)" in gym.heard(KIM)[-1]
    report = report_html(gym.db, gym.id_of(SAM), gym.clock.now(), BOOK)
    assert re.search(r">Oda, \d[^<]* 2026, \d\d:\d\d", report)
