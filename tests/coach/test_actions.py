"""Coaches and lifters on a real file: codes, consent, what is seen and what is not, acts, letters."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from companion.coach.actions import ACT_HANDLERS
from companion.export.registry import FORMATS, ExportSource
from companion.port import Address, Inbound, Sent, Tapped, Typed
from companion.record import coaching, log, operator_requests
from companion.record.thread import HIDDEN
from companion.screening.coach_acts import COACH_ACTS
from flows.catalogue import BOOK
from tests.app.test_service import ABOUT, CHECK, WARM, WELCOME, Life
from tests.coach.caseload_rows import lines_of

KIM, ODA = Address("terminal", "kim"), Address("terminal", "oda")
SAM, MIA = Address("terminal", "sam"), Address("terminal", "mia")


class Gym(Life):
    """A companion with coaches and lifters; each sees only their own screen."""

    async def coach(self, who: Address) -> None:
        code = coaching.invite(self.db, "coach", None, who.id.title(), self.clock.now())
        await self.say(f"/start {code}", "Yes, keep it", "Yes", "UTC", "yes", who=who)

    async def lifter(self, who: Address) -> None:
        await self.say("hello", *WELCOME, *ABOUT, who=who)

    async def code_for(self, name: str, coach: Address = KIM) -> str:
        said = await self.say("invite a lifter", name, who=coach)
        return next(text for text in said if "“code " in text).split("“code ")[1].split("”")[0]

    async def say(self, *replies: str, who: Address = SAM) -> list[str]:
        said: list[str] = []
        for reply in replies:
            mine = [message for message in self.shown if message.address == who][-3:]
            data = next((button.data for message in reversed(mine) for row in message.buttons for button in row
                         if button.label == reply), None)
            await self.companion.take(Inbound(who, Tapped(data) if data else Typed(reply), name=who.id))
            said = await self.listen(who)
        return said

    async def tap(self, who: Address, data: str) -> None:
        await self.companion.take(Inbound(who, Tapped(data), name=who.id))
        await self.listen(who)

    async def listen(self, who: Address = SAM) -> list[str]:
        await super().listen(who)
        return [message.text for message in self.shown if message.address == who][-6:]

    async def linked(self) -> None:
        await self.coach(KIM)
        await self.lifter(SAM)
        await self.say(f"code {await self.code_for('Sam')}", "Yes, I agree")

    def heard(self, who: Address) -> list[str]:
        return [row[0] for row in self.db.execute("select text from outbox where address = ? order by id", (who.id,))]

    def id_of(self, who: Address) -> int:
        return self.db.execute("select person from addresses where address = ?", (who.id,)).fetchone()[0]


@pytest.fixture
async def gym(tmp_path: Path) -> AsyncIterator[Gym]:
    one = Gym(tmp_path / "companion.sqlite")
    await one.start()
    yield one
    await one.stop()


async def test_a_code_of_the_operator_makes_a_coach_after_they_agree(gym):
    await gym.coach(KIM)
    assert coaching.coach_name(gym.db, gym.id_of(KIM)) == "Kim"


async def test_nothing_of_a_coach_is_kept_before_they_agree(gym):
    code = coaching.invite(gym.db, "coach", None, "Kim", gym.clock.now())
    await gym.say(f"/start {code}", "No", who=KIM)
    assert gym.count("persons") == 0
    assert gym.count("coach_roles") == 0


async def test_a_coach_whose_code_was_forgotten_at_a_restart_is_asked_for_it_and_not_welcomed_as_a_lifter(gym):
    code = coaching.invite(gym.db, "coach", None, "Kim", gym.clock.now())
    await gym.say(f"/start {code}", who=KIM)
    await gym.restart()
    assert (await gym.say("Yes, keep it", who=KIM))[-1].endswith("please send me your code once more, as “code abcd efgh jkmn”.")
    assert gym.count("persons") == 0
    await gym.say(f"code {coaching.spaced(code)}", "Yes, keep it", "Yes", who=KIM)
    assert coaching.coach_name(gym.db, gym.id_of(KIM)) == "Kim"


async def test_nobody_becomes_a_coach_by_typing(gym):
    await gym.lifter(SAM)
    for words in ("caseload", "invite a lifter", "go.caseload", "lifter 1", "digest", "coach add sam"):
        await gym.say(words)
        assert gym.count("coach_roles") == 0
    assert coaching.coach_name(gym.db, gym.id_of(SAM)) is None


async def test_a_code_works_once(gym):
    await gym.coach(KIM)
    code = await gym.code_for("Sam")
    await gym.lifter(SAM)
    await gym.say(f"code {code}", "Yes, I agree")
    await gym.lifter(MIA)
    said = await gym.say(f"code {code}", who=MIA)
    assert any("not one of mine" in text for text in said)
    assert not coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(MIA))


async def test_a_code_runs_out(gym):
    await gym.coach(KIM)
    code = await gym.code_for("Sam")
    await gym.lifter(SAM)
    gym.clock.at += coaching.CODE_LIFETIME + timedelta(minutes=1)
    assert any("not one of mine" in text for text in await gym.say(f"code {code}"))


async def test_a_code_is_kept_only_as_a_hash(gym):
    await gym.coach(KIM)
    code = (await gym.code_for("Sam")).replace(" ", "")
    kept = [row[0] for row in gym.db.execute("select code_hash from invitations")]
    assert code not in kept
    assert coaching.code_hash_of(code) in kept


async def test_a_code_that_was_told_is_not_kept(gym):
    await gym.linked()
    code = await gym.code_for("Ana")
    assert code not in str(gym.db.execute("select text from outbox").fetchall())
    assert "A message with a code, which is not kept." in gym.heard(KIM)


async def test_guessing_codes_is_slowed(gym):
    await gym.coach(KIM)
    good = await gym.code_for("Sam")
    await gym.lifter(SAM)
    for n in range(coaching.TRIES_MOST):
        await gym.say(f"code wron gcod {n:04}")
    assert any("Try again in an hour" in text for text in await gym.say(f"code {good}"))
    gym.clock.at += coaching.TRIES_WITHIN + timedelta(minutes=1)
    await gym.say(f"code {good}", "Yes, I agree")
    assert coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(SAM))


async def test_a_lifter_sees_who_asks_and_what_they_would_see_and_may_say_no(gym):
    await gym.coach(KIM)
    await gym.lifter(SAM)
    said = await gym.say(f"code {await gym.code_for('Sam')}")
    assert "Kim asks to be your coach" in said[-1]
    await gym.say("No")
    assert not coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(SAM))


async def test_a_stranger_with_a_lifters_link_is_asked_after_the_welcome(gym):
    await gym.coach(KIM)
    code = (await gym.code_for("Mia")).replace(" ", "")
    said = await gym.say(f"/start {code}", *WELCOME, *ABOUT, who=MIA)
    assert any("Kim asks to be your coach" in text for text in said)
    await gym.say("Yes, I agree", who=MIA)
    assert coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(MIA))


async def test_under_18_a_coach_s_code_is_taken_and_nothing_else_opens_before_it(gym):
    await gym.coach(KIM)
    code = await gym.code_for("Sam")
    await gym.say("hello", "Yes, keep them", "No, under 18")
    assert (await gym.say("knee to wall"))[-1].startswith("These questions come first.")
    assert "Kim asks to be your coach" in (await gym.say(f"code {code}"))[-1]
    assert (await gym.say("No"))[-1].startswith("Under 18, this only works with a coach")
    await gym.say(f"code {code}", "Yes, I agree")
    assert coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(SAM))
    assert gym.heard(SAM)[-1] == "Which units do you use?"


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
    (("knee to wall", *CHECK, *WARM, "tape", "stop"), "")])
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


async def an_alert(gym, at: str) -> None:
    await gym.linked()
    gym.clock.at = datetime.fromisoformat(at)
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")


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
    assert not any("no coach has seen" in text for text in gym.heard(KIM)), "there is no second coach to tell"


async def test_by_night_it_waits_for_the_end_of_quiet_hours_and_two_hours_more(gym):
    await an_alert(gym, "2026-03-09T23:30+00:00")
    assert await pass_hours(gym, 9.5) == []
    assert len(await pass_hours(gym, 2)) == 1


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
    limit = "nothing above 60 kg, until they clear you, said by a physiotherapist"
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


async def test_a_note_arrives_as_from_the_coach_and_can_be_answered(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    await gym.tap(KIM, f"go.coach_note.{sam}")
    await gym.say("Stay at parallel this week", "Send it", who=KIM)
    assert "From your coach Kim: Stay at parallel this week" in gym.heard(SAM)
    assert gym.heard(KIM)[-1] == "Sent to sam."
    await gym.tap(SAM, f"go.note_to_coach.{kim}")
    await gym.say("Will do")
    assert "sam writes: Will do" in gym.heard(KIM)


async def test_words_to_a_coach_that_may_speak_of_pain_are_asked_about(gym):
    await gym.linked()
    said = await gym.say("write to my coach", "my knee hurts a bit since tuesday")
    assert said[-1] == "Did something hurt?"
    await gym.say("No")
    assert "sam writes: my knee hurts a bit since tuesday" in gym.heard(KIM)
    said = await gym.say("write to my coach", "my knee hurts a bit since tuesday", "Yes, it hurt")
    assert said[-1] == "Where does it hurt?"
    await gym.say("Knee", "2", "no", "no")
    assert "something hurt (knee, 2 of 10" in gym.heard(KIM)[-1]


async def test_a_word_meant_for_the_bot_is_not_passed_on_unasked(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_note.{gym.id_of(SAM)}")
    await gym.say("menu", who=KIM)
    assert gym.heard(KIM)[-1] == "I understand: “menu”. Is that right?"
    await gym.say("No", who=KIM)
    assert gym.heard(KIM)[-1].startswith("Then once more.")
    await gym.say("menu", "Yes", "No", who=KIM)
    assert gym.heard(KIM)[-2:] == ["Send it to sam like this?", "Nothing was sent to sam."]
    assert not any("From your coach" in text for text in gym.heard(SAM))


async def test_after_the_lifter_ends_it_the_coach_sees_nothing_and_can_do_nothing(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    await gym.tap(SAM, f"go.leave_coach.{kim}")
    assert not coaching.sees(gym.db, kim, sam)
    await gym.tap(KIM, f"go.lifter_report.{sam}")
    assert gym.heard(KIM)[-1] == "That is not one of your lifters."
    await gym.tap(KIM, f"go.coach_note.{sam}")
    await gym.say("hello?", "Send it", who=KIM)
    assert gym.heard(KIM)[-1] == "That is not one of your lifters."
    assert not any("hello?" in text for text in gym.heard(SAM))
    await gym.say("my back hurts", "Lower back", "5", "no", "no", "no")
    assert not any("something hurt" in text for text in gym.heard(KIM))


async def test_what_waits_about_a_lifter_is_not_sent_after_they_end_it(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    gym.db.execute("insert into outbox (person, channel, address, text, buttons, must_arrive, timed, unasked, due_at, made_at, about) "
                   "values (?, 'terminal', 'kim', 'of sam', '[]', 1, 0, 1, '2026-01-01', '2026-01-01', ?)", (kim, sam))
    coaching.withdraw(gym.db, sam, kim, gym.clock.now())
    assert gym.db.execute("select dropped from outbox where text = 'of sam'").fetchone() == ("withdrawn",)


async def test_a_list_that_waits_is_not_sent_after_a_lifter_on_it_has_ended_it(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    for asked in ("my lifters", "hello"):
        await gym.companion.take(Inbound(KIM, Typed(asked), name="kim"))
    await gym.companion.take(Inbound(SAM, Tapped(f"go.leave_coach.{kim}"), name="sam"))
    before = len(gym.shown)
    await gym.listen(KIM)
    said = [message for message in gym.shown[before:] if "sam" in message.text]
    assert [message.text for message in said] == ["sam has stopped sharing their answers with you."]
    assert [button.data for row in said[0].buttons for button in row] == ["go.caseload"]
    assert gym.id_of(SAM) == sam


async def test_a_coach_s_copy_tells_nothing_of_a_lifter(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    await gym.say("my back hurts", "Lower back", "7", "no", "no", "no")
    await gym.tap(KIM, f"go.lifter.{sam}")
    await gym.say("my lifters", who=KIM)
    await gym.tap(SAM, f"go.leave_coach.{kim}")
    before = len(gym.shown)
    await gym.say("my data", "A copy of it all", who=KIM)
    copies = [str(message.document) for message in gym.shown[before:] if message.document]
    assert len(copies) == 3
    assert not any("7 of 10" in copy or "lower back" in copy.lower() for copy in copies)


async def test_every_look_and_the_end_of_the_link_can_be_read_by_the_lifter(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    coaching.audit_look(gym.db, sam, kim, "numbers", gym.clock.now())
    await gym.say("my coaches")
    assert any("Kim, numbers" in text and "Kim, you agreed" in text for text in gym.heard(SAM))
    await gym.tap(SAM, f"go.leave_coach.{kim}")
    assert coaching.latest_looks(gym.db, sam)[0][2] == "withdrawn"


async def test_where_more_was_looked_at_than_fits_the_lifter_hears_where_the_rest_is(gym):
    await gym.linked()
    for page in range(20):
        coaching.audit_look(gym.db, gym.id_of(SAM), gym.id_of(KIM), f"log, page {page}", gym.clock.now())
    await gym.say("my coaches")
    looked = next(text for text in reversed(gym.heard(SAM)) if text.startswith("What your coaches looked at"))
    assert looked.splitlines()[-1] == "The older ones are in the copy under “my data”."
    assert len(looked.splitlines()) == 14


async def test_a_lifter_hears_that_their_coach_is_none_any_more(gym):
    await gym.linked()
    operator_requests.carry_out(gym.db, operator_requests.OperatorRequest("end", "Kim"), gym.clock.now())
    assert gym.heard(SAM)[-1] == ("Kim is no longer a coach here. They can't see your answers any more, and I no longer tell them when "
                                  "something hurts.")
    assert not coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(SAM))


async def test_another_coach_sees_nothing(gym):
    await gym.linked()
    await gym.coach(ODA)
    await gym.tap(ODA, f"go.coach_act.{gym.id_of(SAM)}-reviewed")
    assert gym.heard(ODA)[-1] == "That is not one of your lifters."


async def test_a_lifter_may_have_more_than_one_coach(gym):
    await gym.linked()
    await gym.coach(ODA)
    await gym.say(f"code {await gym.code_for('Sam', ODA)}", "Yes, I agree")
    assert [name for _, name in coaching.coaches_of(gym.db, gym.id_of(SAM))] == ["Kim", "Oda"]


@pytest.mark.parametrize(("act", "replies", "fact", "value"), [
    ("pin_depth", ("A little above", "seen on Tuesday", "Until I end it"), "depth.pin", "a_little_above"),
    ("pin_load", ("60", "skip", "Until I end it"), "load.pin", "60"),
    ("drill", ("Calf: knee over toes", "skip", "Until I end it"), "drill.pin", "calf"),
    ("overrule", ("Control", "Ruled out", "seen in person"), "overruled.control", "ruled_out"),
])
async def test_an_act_is_kept_told_and_logged(gym, act, replies, fact, value):
    await gym.linked()
    sam = gym.id_of(SAM)
    await gym.tap(KIM, f"go.coach_act.{sam}-{act}")
    await gym.say(*replies, who=KIM)
    assert log.facts_of(gym.db, sam)[fact].value == value
    assert coaching.latest_acts(gym.db, sam)[0][2] == act
    assert "Kim" in gym.heard(SAM)[-1]


async def test_a_coach_can_take_an_overruling_back(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    for ruling in ("Open", "As the tests say"):
        await gym.tap(KIM, f"go.coach_act.{sam}-overrule")
        await gym.say("Control", ruling, "seen in person", who=KIM)
    assert log.facts_of(gym.db, sam)["overruled.control"].value == ""
    assert gym.heard(SAM)[-1] == "Your coach Kim now goes by what the tests say about control. Reason: seen in person."
    assert [row[3] for row in coaching.latest_acts(gym.db, sam)] == ["control as_computed", "control open"]


async def test_a_load_pinned_above_what_the_tests_say_is_said_to_both(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    gym.db.execute("insert into facts values (?, 'load.limit', '64', 1, '2026-03-02T18:05:00.000Z')", (sam,))
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_load")
    await gym.say("100", "skip", "Until I end it", who=KIM)
    lower = "The tests say at most 64 kg; I use the lower of the two."
    assert gym.heard(SAM)[-1] == f"Your coach Kim has set the most load: 100 kg. {lower}"
    assert f"sam: the most load is 100 kg. {lower}" in gym.heard(KIM)
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_load")
    await gym.say("50", "skip", "Until I end it", who=KIM)
    assert gym.heard(SAM)[-1] == "Your coach Kim has set the most load: 50 kg."


async def test_a_pin_is_told_in_the_lifters_own_units_and_words(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    gym.db.execute("update facts set value = 'imperial' where person = ? and name = 'welcome.units'", (sam,))
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_load")
    await gym.say("60", "skip", "Until I end it", who=KIM)
    assert gym.heard(SAM)[-1] == "Your coach Kim has set the most load: 132 lb."
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_depth")
    await gym.say("A little above", "skip", "Until I end it", who=KIM)
    assert gym.heard(SAM)[-1] == "Your coach Kim has set the depth to keep: a little above parallel."


async def test_who_agrees_is_told_with_the_name_the_code_was_made_for(gym):
    await gym.coach(KIM)
    await gym.lifter(SAM)
    await gym.say(f"code {await gym.code_for('Samuel, Tuesdays')}", "Yes, I agree")
    assert "sam has agreed (your code for Samuel, Tuesdays): you can see their answers now." in gym.heard(KIM)


async def test_a_coach_who_is_none_any_more_is_not_agreed_to(gym):
    await gym.coach(KIM)
    await gym.lifter(SAM)
    await gym.say(f"code {await gym.code_for('Sam')}")
    coaching.end_coach(gym.db, gym.id_of(KIM), gym.clock.now())
    await gym.say("Yes, I agree")
    assert any("has expired" in text for text in gym.heard(SAM))
    assert gym.count("coaches") == 0


async def test_an_overruling_needs_its_reason(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    await gym.tap(KIM, f"go.coach_act.{sam}-overrule")
    await gym.say("Control", "Ruled out", "skip", who=KIM)
    assert "overruled.control" not in log.facts_of(gym.db, sam)


async def test_a_review_is_said_and_leads_on_to_the_next_lifter(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-reviewed")
    last = next(message for message in reversed(gym.shown) if message.address == KIM)
    assert last.text == "sam is marked as reviewed."
    assert [button.data for row in last.buttons for button in row][:2] == [f"go.lifter.{gym.id_of(SAM)}", "go.caseload"]


async def test_a_review_by_a_slip_is_taken_back_and_what_it_settled_stands_again(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    await gym.say("ow, my back hurts", "Lower back", "5", "No", "No", "No")
    await gym.tap(KIM, f"go.coach_act.{sam}-reviewed")
    assert lines_of(gym.db, kim, gym.clock.now())[0].group != "hurt"
    said = await gym.say("Take it back", who=KIM)
    assert said[-1] == "Taken back for sam: it is as it was before."
    assert lines_of(gym.db, kim, gym.clock.now())[0].group == "hurt"
    assert [row[0] for row in gym.db.execute("select what from acts order by id")] == ["reviewed", "unreviewed"]


async def test_taking_a_review_back_twice_takes_no_earlier_one_back(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    await gym.tap(KIM, f"go.coach_act.{sam}-reviewed")
    first = coaching.reviewed_at(gym.db, sam, kim)
    gym.clock.at += timedelta(hours=1)
    await gym.tap(KIM, f"go.coach_act.{sam}-reviewed")
    slip = gym.db.execute("select max(id) from acts").fetchone()[0]
    for _ in range(2):
        await gym.tap(KIM, f"go.coach_act.{sam}-unreviewed-{slip}")
        assert coaching.reviewed_at(gym.db, sam, kim) == first
    assert gym.heard(KIM)[-1] == "That was already taken back."
    assert gym.count("acts") == 3


@pytest.mark.parametrize("which", ["", "-", "-0", "-999", "-x", "-1"])
async def test_nothing_but_a_review_of_ones_own_is_taken_back(gym, which):
    await gym.linked()
    await gym.coach(ODA)
    await gym.say(f"code {await gym.code_for('Sam', ODA)}", "Yes, I agree")
    sam = gym.id_of(SAM)
    await gym.tap(KIM, f"go.coach_act.{sam}-reviewed")
    await gym.tap(ODA, f"go.coach_act.{sam}-unreviewed{which}")
    assert gym.count("acts") == 1
    assert coaching.reviewed_at(gym.db, sam, gym.id_of(KIM))


async def test_an_overruled_finding_stands_beside_the_computed_one(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    gym.db.execute("insert into facts values (?, 'control', 'likely', 1, '2026-03-02T18:05:00.000Z')", (sam,))
    await gym.tap(KIM, f"go.coach_act.{sam}-overrule")
    await gym.say("Control", "Ruled out", "seen in person", who=KIM)
    assert log.facts_of(gym.db, sam)["control"].value == "likely"


async def test_a_retest_date_of_the_coach_is_a_reminder_of_the_lifter(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    await gym.tap(KIM, f"go.coach_act.{sam}-retest")
    await gym.say("in two weeks", who=KIM)
    assert gym.db.execute("select wall from reminders where person = ? and kind = 'retest'", (sam,)).fetchone() == ("2026-03-16 10:00",)


async def two_coaches(gym: Gym) -> int:
    await gym.linked()
    await gym.coach(ODA)
    await gym.say(f"code {await gym.code_for('Sam', ODA)}", "Yes, I agree")
    return gym.id_of(SAM)


async def pinned(gym: Gym, who: Address, load: str) -> None:
    await gym.tap(who, f"go.coach_act.{gym.id_of(SAM)}-pin_load")
    await gym.say(load, "seen in person", "Until I end it", who=who)


async def test_an_act_names_the_lifter_in_its_question_and_its_confirmation(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-pin_load")
    assert gym.heard(KIM)[-1].startswith("sam: up to which load?")
    await gym.say("60 kg", "seen in person", "Until I end it", who=KIM)
    assert gym.heard(KIM)[-1].startswith("sam: the most load is 60 kg.")


async def test_an_act_keeps_its_lifter_over_a_detour_to_another(gym):
    await gym.linked()
    await gym.lifter(MIA)
    sam, mia = gym.id_of(SAM), gym.id_of(MIA)
    coaching.link(gym.db, mia, gym.id_of(KIM), gym.clock.now())
    await gym.tap(KIM, f"go.coach_act.{sam}-pin_load")
    await gym.tap(KIM, "go.invite_lifter")
    await gym.say("Lou", who=KIM)
    await gym.tap(KIM, f"go.coach_act.{mia}-pin_load")
    await gym.say("40 kg", "a light day", "Until I end it", who=KIM)
    await gym.say("go on", who=KIM)
    assert "sam: up to which load?" in gym.heard(KIM)[-1]
    await gym.say("60 kg", "seen in person", "Until I end it", who=KIM)
    assert [log.facts_of(gym.db, one)["load.pin"].value for one in (sam, mia)] == ["60", "40"]


@pytest.mark.parametrize(("first", "second"), [("60 kg", "80 kg"), ("80 kg", "60 kg")])
async def test_of_two_coaches_loads_the_lower_holds_and_both_are_told(gym, first, second):
    sam = await two_coaches(gym)
    await pinned(gym, KIM, first)
    await pinned(gym, ODA, second)
    assert log.facts_of(gym.db, sam)["load.pin"].value == "60"
    for coach, other in ((KIM, "Oda"), (ODA, "Kim")):
        said = gym.heard(coach)[-1]
        assert f"coach {other} has set the most load" in said
        assert "60 kg holds until you settle it." in said


async def test_the_thread_is_read_by_both_coaches_and_the_lifter_and_a_private_note_by_its_author_alone(gym):
    sam = await two_coaches(gym)
    await gym.tap(KIM, f"go.coach_note.{sam}")
    await gym.say("stay at parallel", "Send it", who=KIM)
    gym.clock.at += timedelta(minutes=1)
    await gym.tap(SAM, f"go.note_to_coach.{gym.id_of(KIM)}")
    await gym.say("will do")
    gym.clock.at += timedelta(minutes=1)
    await gym.tap(KIM, f"go.coach_act.{sam}-private")
    await gym.say("doubts that he will", who=KIM)
    assert gym.heard(KIM)[-1] == "Noted for sam. Only you read it; they can see that a note exists."
    for coach, private in ((KIM, True), (ODA, False)):
        await gym.tap(coach, f"go.lifter.{sam}-thread")
        said = gym.heard(coach)[-1]
        assert said.index("sam: will do") < said.index("Kim: stay at parallel")
        assert ("private, Kim: doubts that he will" in said) == private
    await gym.tap(SAM, "go.my_coaches")
    said = "\n".join(gym.heard(SAM))
    assert "Kim, stay at parallel" in said
    assert "you, will do" in said
    assert "Kim keeps a private note on you, which only they read." in said
    of = ExportSource(gym.db, sam, gym.clock.now(), {}, BOOK)
    copies = [one.made(of) for one in FORMATS.values()]
    assert not any("doubts" in text for text in (said, *copies))
    assert sum(HIDDEN in text for text in copies) == 2
    assert any("act.private" in text for text in copies)


@pytest.mark.parametrize(("who", "kg"), [(KIM, "80"), (ODA, "60")])
async def test_two_coaches_orders_are_settled_by_one_going_by_the_other_s(gym, who, kg):
    sam = await two_coaches(gym)
    await pinned(gym, KIM, "60 kg")
    await pinned(gym, ODA, "80 kg")
    other = ODA if who == KIM else KIM
    await gym.tap(KIM, f"go.lifter.{sam}")
    assert "not settled, coach Oda: 80 kg" in gym.heard(KIM)[-1]
    await gym.tap(who, f"go.coach_act.{sam}-settle-pin_load-{gym.id_of(other)}")
    assert log.facts_of(gym.db, sam)["load.pin"].value == kg
    assert "now goes by your order for the most load" in gym.heard(other)[-1]
    assert f"the most load is {kg} kg" in gym.heard(who)[-1]
    assert f"{kg} kg" in gym.heard(SAM)[-1]
    assert "agreed with coach" in gym.heard(SAM)[-1]
    await gym.tap(KIM, f"go.lifter.{sam}")
    assert "not settled" not in gym.heard(KIM)[-1]
    await gym.tap(who, f"go.coach_act.{sam}-settle-pin_depth-{gym.id_of(other)}")
    assert "no longer stands" in gym.heard(who)[-1]


async def test_a_coach_who_is_left_takes_their_orders_and_the_others_stay(gym):
    sam = await two_coaches(gym)
    await pinned(gym, KIM, "80 kg")
    await pinned(gym, ODA, "60 kg")
    await gym.tap(SAM, f"go.leave_coach.{gym.id_of(ODA)}")
    assert log.facts_of(gym.db, sam)["load.pin"].value == "80"
    assert any("the most load is 80 kg, set by coach Kim" in said for said in gym.heard(SAM)[-3:])
    await gym.tap(SAM, f"go.leave_coach.{gym.id_of(KIM)}")
    assert log.facts_of(gym.db, sam)["load.pin"].value == ""
    assert log.findings_of(gym.db, sam)["load.pin"].rule == "coach Kim has left"
    assert any("no longer holds" in said for said in gym.heard(SAM)[-3:])


async def test_orders_end_with_the_role_of_their_coach(gym):
    await gym.linked()
    await pinned(gym, KIM, "60 kg")
    coaching.end_coach(gym.db, gym.id_of(KIM), gym.clock.now())
    assert log.facts_of(gym.db, gym.id_of(SAM))["load.pin"].value == ""


async def test_a_test_asked_for_comes_with_its_button_and_still_behind_the_safety_check(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    await gym.tap(KIM, f"go.coach_act.{sam}-ask_for")
    await gym.say("Knee to wall", who=KIM)
    assert "go.knee_to_wall" in gym.db.execute("select buttons from outbox where address = 'sam' order by id desc").fetchone()[0]
    await gym.tap(SAM, "go.knee_to_wall")
    assert gym.heard(SAM)[-1].startswith("Any of these, now or lately?")


async def test_a_film_goes_on_to_the_coach(gym):
    await gym.linked()
    await gym.say("send a film")
    await gym.companion.take(Inbound(SAM, Sent("video", "clip-7"), name="sam"))
    await gym.say("80 kg, third set")
    row = gym.db.execute("select text, picture from outbox where address = 'kim' order by id desc").fetchone()
    assert row == ("sam sent a film: 80 kg, third set", "media:clip-7")


async def test_when_the_operator_ends_a_coach_every_view_ends(gym):
    await gym.linked()
    coaching.end_coach(gym.db, gym.id_of(KIM), gym.clock.now())
    assert not coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(SAM))
    assert coaching.latest_looks(gym.db, gym.id_of(SAM))[0][2] == "the coach is none any more"


async def test_erasing_a_lifter_takes_what_their_coach_wrote_about_them(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_note.{gym.id_of(SAM)}")
    await gym.say("Zebedee squats lighter", "Send it", who=KIM)
    await gym.say("my data", "Erase it all", "Yes, erase it all")
    await gym.listen(KIM)
    assert b"Zebedee" not in gym.path.read_bytes()
    assert gym.db.execute("select count(*) from coaches").fetchone() == (0,)


async def test_a_digest_comes_at_their_hour(gym):
    await gym.linked()
    await gym.say("digest", "Every day", "07:00", who=KIM)
    due = gym.db.execute("select due_at from reminders where kind = 'digest' and state = 'open'").fetchone()[0]
    assert due == "2026-03-03T07:00:00.000Z"
    gym.clock.at = gym.clock.at.replace(day=3, hour=7, minute=1)
    await gym.companion.sweep()
    assert gym.heard(KIM)[-1].startswith("Nothing new of your lifter")  # though they are quiet hours: the coach chose the hour


async def test_a_tested_knee_is_seen_by_the_coach_only_while_linked(gym):
    await gym.linked()
    await gym.say("knee to wall", *CHECK, *WARM, "tape", "11")
    assert coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(SAM))


async def test_the_report_comes_as_a_document_made_beside_the_turn(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.lifter_report.{gym.id_of(SAM)}")
    await gym.companion.background_done()
    row = gym.db.execute("select text, document, document_name, about from outbox where address = 'kim' order by id desc").fetchone()
    assert row[0] == "The report of sam, as it stands now."
    assert row[1].startswith("<!doctype html>")
    assert row[2:] == ("report.html", gym.id_of(SAM))
    assert coaching.latest_looks(gym.db, gym.id_of(SAM))[0][2] == "report"


async def test_a_report_that_is_made_while_the_view_is_ended_is_not_sent(gym):
    await gym.linked()
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    await gym.companion.take(Inbound(KIM, Tapped(f"go.lifter_report.{sam}"), name="kim"))
    coaching.withdraw(gym.db, sam, kim, gym.clock.now())
    await gym.companion.background_done()
    assert not gym.db.execute("select 1 from outbox where document_name = 'report.html'").fetchall()


async def asked_for_as_the_process_ends(gym: Gym) -> None:
    await gym.companion.take(Inbound(KIM, Tapped(f"go.lifter_report.{gym.id_of(SAM)}"), name="kim"))
    for making in gym.companion._background:
        making.cancel()
    await asyncio.gather(*gym.companion._background, return_exceptions=True)


async def swept(gym: Gym) -> list[tuple[str, int]]:
    await gym.companion.sweep()
    await gym.companion.background_done()
    return gym.db.execute("select address, unasked from outbox where document_name = 'report.html'").fetchall()


async def test_a_report_asked_for_just_before_the_process_ended_is_made_once_at_the_next_start(gym):
    await gym.linked()
    await asked_for_as_the_process_ends(gym)
    assert await swept(gym) == []
    for _ in range(2):
        await gym.restart()
        assert await swept(gym) == [("kim", 0)]
        assert await swept(gym) == [("kim", 0)]


async def test_a_report_that_was_made_is_not_made_again_after_a_restart(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.lifter_report.{gym.id_of(SAM)}")
    await gym.companion.background_done()
    await gym.restart()
    assert len(await swept(gym)) == 1


@pytest.mark.parametrize("meanwhile", ["ended", "ended and begun anew", "a coach no more", "a day"])
async def test_a_report_of_before_is_not_made_where_it_is_wanted_no_more(gym, meanwhile):
    await gym.linked()
    await asked_for_as_the_process_ends(gym)
    sam, kim = gym.id_of(SAM), gym.id_of(KIM)
    gym.clock.at += timedelta(days=1) if meanwhile == "a day" else timedelta(minutes=1)
    if meanwhile.startswith("ended"):
        coaching.withdraw(gym.db, sam, kim, gym.clock.now())
    if meanwhile == "ended and begun anew":
        coaching.link(gym.db, sam, kim, gym.clock.now())
    if meanwhile == "a coach no more":
        coaching.end_coach(gym.db, kim, gym.clock.now())
    await gym.restart()
    assert await swept(gym) == []


async def test_a_daily_digest_is_what_is_new_once_a_day(gym):
    await gym.linked()
    await gym.say("digest", "Every day", "07:00", who=KIM)
    gym.db.execute("delete from outbox")
    for _ in range(48):
        gym.clock.at += timedelta(hours=1)
        await gym.companion.sweep()
    assert [text.split("\n")[0] for text in gym.heard(KIM)] == ["Nothing new of your lifter since you last looked."] * 2


def test_every_act_has_one_handler_and_its_words():
    assert set(ACT_HANDLERS) == {act.name for act in COACH_ACTS.values() if act.flow} | {"reply", "film", "invite"}
    assert [act.name for act in COACH_ACTS.values() if act.words and not act.told] == []


async def test_when_an_order_ends_by_itself_lifter_and_coach_hear_what_holds_now(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-pin_load")
    await gym.say("60", "seen in person", "A week", who=KIM)
    gym.clock.at += timedelta(days=6)
    await gym.companion.sweep()
    assert log.facts_of(gym.db, gym.id_of(SAM))["load.pin"].value == "60"
    gym.clock.at = gym.clock.at.replace(hour=12) + timedelta(days=1)
    await gym.companion.sweep()
    assert log.facts_of(gym.db, gym.id_of(SAM))["load.pin"].value == ""
    over = "What they set for the most load no longer holds."
    assert [text for text in gym.heard(SAM) if over in text] == [f"The time is over for which your coach had set something. {over}"]
    assert [text for text in gym.heard(KIM) if over in text] == [f"sam: the time is over for which you had set something. {over}"]
    await gym.companion.sweep()
    assert sum(over in text for text in gym.heard(SAM)) == 1


async def test_a_lifter_called_like_a_pain_word_is_found_by_name_and_pain_is_still_heard(gym):
    await gym.linked()
    gym.db.execute("update addresses set name = 'Ache' where person = ?", (gym.id_of(SAM),))
    await gym.say("find Ache", who=KIM)
    assert gym.heard(KIM)[-1].startswith("Ache\n")
    await gym.say("my back hurts", who=KIM)
    assert "Where does it hurt?" in gym.heard(KIM)[-1]


async def test_a_coach_who_is_no_lifter_hears_of_their_coaches_without_a_lifter_s_welcome(gym):
    await gym.linked()
    await gym.say("my coaches", who=KIM)
    assert "No coach sees your answers." in gym.heard(KIM)[-2:]


@pytest.mark.parametrize("said", ["who needs me today", "who needs me", "since I last looked"])
async def test_who_needs_a_coach_is_told_as_they_ask_it(gym, said):
    await gym.linked()
    await gym.say(said, who=KIM)
    assert any("since you last looked" in text for text in gym.heard(KIM)[-2:])


async def test_help_says_what_a_coach_can_say(gym):
    await gym.linked()
    await gym.say("menu", "help", who=KIM)
    assert "Say “who needs me”, “find Sam”, “compare Sam and Mia”, “my groups” or “invite a lifter”." in gym.heard(KIM)[-1]
    await gym.say("menu", "help", who=SAM)
    assert "Begin with “Find out why my back rounds”. You can say: back" in gym.heard(SAM)[-1]
    assert "who needs me" not in gym.heard(SAM)[-1]


def test_an_order_holds_for_eight_weeks_unless_said_otherwise():
    """Eight weeks: our choice. The act does what the button of that name says."""
    (until,) = [step for step in BOOK["coach_act"].flow.steps if getattr(step, "key", "") == "until"]
    assert {one.label: one.value for one in until.kind.options}["Eight weeks"] == str(7 * 8)
