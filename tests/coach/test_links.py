"""Codes and links: who becomes a coach, who agrees to be seen, and what ends with a link."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.port import Inbound, Tapped, Typed
from companion.record import coaching, operator_requests
from tests.app.test_service import ABOUT, WELCOME
from tests.coach.gym import KIM, MIA, ODA, SAM


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
    assert "send it once more, as “code abcd efgh jkmn”. If it is lost, ask whoever gave it to you" in (
        await gym.say("Yes, keep it", who=KIM))[-1]
    assert gym.count("persons") == 0
    await gym.say(f"code {coaching.spaced(code)}", "Yes, keep it", "Yes", who=KIM)
    assert coaching.coach_name(gym.db, gym.id_of(KIM)) == "Kim"


@pytest.mark.parametrize("typed", ["yes", "Yes, keep it", "no"])
async def test_an_answer_typed_after_a_restart_is_met_with_the_way_back_to_a_code(gym, typed):
    said = await gym.say(typed, who=KIM)
    assert said[0].startswith("I keep nothing before you agree, and was restarted since. If you came with a code")
    assert gym.count("persons") == 0


@pytest.mark.parametrize("way", ["/start {}", "code {}"])
async def test_a_stranger_s_code_that_has_expired_is_said_with_whom_to_ask_for_another(gym, way):
    code = coaching.invite(gym.db, "coach", None, "Kim", gym.clock.now())
    gym.clock.at += coaching.CODE_LIFETIME + timedelta(minutes=1)
    for _ in range(2):
        assert any("If you are to be a coach here, ask whoever runs this bot for a new one" in text for text in (await gym.say(
            way.format(code), who=KIM))[-3:])
    await gym.say(f"code {coaching.invite(gym.db, 'coach', None, 'Kim', gym.clock.now())}", "Yes, keep it", "Yes", who=KIM)
    assert coaching.coach_name(gym.db, gym.id_of(KIM)) == "Kim"


@pytest.mark.parametrize("letters", ["svt4c8swugca", "kayk365x72tb", "9we5chm974af", "itbackhurts2"])
async def test_a_stranger_s_code_is_no_words_whatever_its_letters_spell(gym, letters):
    said = await gym.say(f"/start {letters}", who=KIM)
    assert any("That code is not one of mine" in text for text in said)
    assert not any("These questions come first" in text for text in said)


async def test_a_code_that_expires_before_a_coach_agrees_is_asked_for_anew_and_no_lifter_is_welcomed(gym):
    code = coaching.invite(gym.db, "coach", None, "Kim", gym.clock.now())
    await gym.say(f"/start {code}", who=KIM)
    gym.clock.at += coaching.CODE_LIFETIME + timedelta(minutes=1)
    said = await gym.say("Yes, keep it", who=KIM)
    assert "Ask whoever runs this bot for a new code and send it to me" in said[-1]
    assert "no coach here yet" in (await gym.say("I am a coach now", who=KIM))[-1]
    await gym.say(f"code {coaching.invite(gym.db, 'coach', None, 'Kim', gym.clock.now())}", "Yes", "Go on where I stopped", who=KIM)
    assert coaching.coach_name(gym.db, gym.id_of(KIM)) == "Kim"
    assert "Which city are you in" in (await gym.say("I am a coach now", who=KIM))[-1]
    assert not any("lower back rounds" in text for text in gym.heard(KIM))


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


async def test_a_coach_who_is_no_lifter_hears_of_their_coaches_without_a_lifter_s_welcome(gym):
    await gym.linked()
    await gym.say("my coaches", who=KIM)
    assert "No coach sees your answers." in gym.heard(KIM)[-2:]
