"""Acts of coaches and notes of lifters in the chat: kept, told and listed."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.coach.actions import ACT_HANDLERS
from companion.export.registry import FORMATS, ExportSource
from companion.port import Inbound, Sent
from companion.record import coaching, log
from companion.record.thread import HIDDEN
from companion.screening.coach_acts import COACH_ACTS
from flows.catalogue import BOOK
from tests.app.test_service import CHECK, WARM
from tests.coach.caseload_rows import lines_of
from tests.coach.gym import KIM, ODA, SAM
from tests.coach.test_order_acts import two_coaches


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
    assert gym.heard(KIM)[-1] == "Do you want to see the menu?"
    await gym.say("No, keep it as I wrote it", "No", who=KIM)
    assert gym.heard(KIM)[-2:] == ["Send it to sam like this?", "Nothing was sent to sam."]
    assert not any("From your coach" in text for text in gym.heard(SAM))


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


async def test_a_set_up_that_a_coach_set_is_told_with_whose_it_is_and_until_when_and_ends_then(gym):
    """From the coach's taps to the lifter's results, squat day and page, and past its end."""
    await gym.linked()
    await gym.say("knee to wall", *CHECK, *WARM, "tape", "6", "calf", "6", "calf")
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-pin_setup")
    await gym.say("Heels up", "looked better", "Four weeks", who=KIM)
    assert gym.heard(KIM)[-1] == "sam: the set-up is heels on 2 cm, until Monday 30 March."
    assert gym.heard(SAM)[-1] == "Your coach Kim has set the set-up: heels on 2 cm, until Monday 30 March. Reason: looked better."
    for asked, begins in (("results", "Your squat for now: heels on 2 cm"), ("squatting", "Your set-up for now: heels on 2 cm")):
        heard = len(gym.heard(SAM))
        await gym.say(asked, *(("What to do now", "more") if asked == "results" else ()))
        (told,) = [text for text in gym.heard(SAM)[heard:] if text.startswith(begins)]
        assert "Set by coach Kim, until Monday 30 March." in told
    await gym.say("my coaches")
    assert "Set-up: heels on 2 cm (set by coach Kim: looked better; since 2 Mar, until 30 Mar)" in "".join(gym.heard(SAM)[-4:])
    gym.clock.at += timedelta(days=29)
    await gym.companion.sweep()
    await gym.listen(SAM)
    assert any("What they set for the set-up no longer holds." in text for text in gym.heard(SAM)[-3:])
    heard = len(gym.heard(SAM))
    await gym.say("results", "What to do now", "more")
    assert not any("for now: heels" in text for text in gym.heard(SAM)[heard:])


async def test_a_coach_can_take_an_overruling_back(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    for ruling in ("Open", "As the tests say"):
        await gym.tap(KIM, f"go.coach_act.{sam}-overrule")
        await gym.say("Control", ruling, "seen in person", who=KIM)
    assert log.facts_of(gym.db, sam)["overruled.control"].value == ""
    assert gym.heard(SAM)[-1] == "Your coach Kim now goes by what the tests say about control. Reason: seen in person."
    assert [row[3] for row in coaching.latest_acts(gym.db, sam)] == ["control as_computed", "control open"]


async def test_an_overruling_needs_its_reason(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    await gym.tap(KIM, f"go.coach_act.{sam}-overrule")
    await gym.say("Control", "Ruled out", "skip", who=KIM)
    assert "overruled.control" not in log.facts_of(gym.db, sam)


@pytest.mark.parametrize(("asked", "answers"), [("overrule", ("Control", "Ruled out")), ("raise_load", ("70",))])
async def test_where_a_reason_is_needed_no_button_leaves_it_out(gym, asked, answers):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-{asked}")
    await gym.say(*answers, who=KIM)
    last = next(message for message in reversed(gym.shown) if message.address == KIM)
    assert "without it nothing changes" in last.text
    assert "Skip" not in [button.label for row in last.buttons for button in row]


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


async def test_a_tested_knee_is_seen_by_the_coach_only_while_linked(gym):
    await gym.linked()
    await gym.say("knee to wall", *CHECK, *WARM, "tape", "11")
    assert coaching.sees(gym.db, gym.id_of(KIM), gym.id_of(SAM))


def test_every_act_has_one_handler_and_its_words():
    assert set(ACT_HANDLERS) == {act.name for act in COACH_ACTS.values() if act.flow} | {"reply", "film", "invite"}
    assert [act.name for act in COACH_ACTS.values() if act.words and not act.told] == []


async def test_a_lifter_called_like_a_pain_word_is_found_by_name_and_pain_is_still_heard(gym):
    await gym.linked()
    gym.db.execute("update addresses set name = 'Ache' where person = ?", (gym.id_of(SAM),))
    await gym.say("find Ache", who=KIM)
    assert gym.heard(KIM)[-1].startswith("Ache\n")
    await gym.say("my back hurts", who=KIM)
    assert "Where does it hurt?" in gym.heard(KIM)[-1]


@pytest.mark.parametrize("said", ["who needs me today", "who needs me", "since I last looked"])
async def test_who_needs_a_coach_is_told_as_they_ask_it(gym, said):
    await gym.linked()
    await gym.say(said, who=KIM)
    assert any("since you last looked" in text for text in gym.heard(KIM)[-2:])


async def test_help_says_what_a_coach_can_say(gym):
    await gym.linked()
    await gym.say("menu", "help", who=KIM)
    assert "Say “who needs me”, “find Sam”, “cap Sam at 80”, “compare Sam and Mia”, “my groups” or “invite a lifter”" in gym.heard(KIM)[-1]
    await gym.say("menu", "help", who=SAM)
    assert "Begin with “Find out why my back rounds”. You can say: back" in gym.heard(SAM)[-1]
    assert "who needs me" not in gym.heard(SAM)[-1]
