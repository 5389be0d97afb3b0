"""A coach's day in typed words: each wish leads to the lifter it names, or asks which one; nothing is done by words alone."""

from __future__ import annotations

import pytest

from companion.coach.letters import tap
from companion.coach.typed import answer_to
from companion.conversation.effects import Say, Show
from companion.record import coaching, people
from companion.record.outbox import offered_to
from companion.record.persist import put_message
from companion.record.turn import Turn
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago
from tests.coach.gym import KIM, SAM
from tests.coach.pages import fits, labels, taps


def answer(room: Room, text: str) -> Say | Show:
    told = answer_to(Turn(room.db, room.coach, NOW, BOOK), text)
    if isinstance(told, Say):
        fits(told)
    return told


@pytest.mark.parametrize(("said", "view", "of"), [
    ("whats up with mia", "lifter", "{}"), ("mia", "lifter", "{}"), ("mia's numbers", "lifter", "{}-numbers"),
    ("mia log", "lifter_log", "{}-0"),
    ("report of mia", "lifter_report", "{}"), ("messages from mia", "lifter", "{}-thread"), ("who is quiet", "caseload", "quiet"),
    ("how is everybody", "caseload", "")])
def test_a_look_opens_the_page_of_the_one_who_is_named(room, said, view, of):
    _, mia = room.lifter("Tom"), room.lifter("Mia Lund")
    assert answer(room, said) == Show(view, of.format(mia))


@pytest.mark.parametrize(("said", "label", "act"), [
    ("cap {} at 80", "{}: at most 80 kg", "coach_act.{}-pin_load-80"),
    ("limit {} to 62,5 kg", "{}: at most 62.5 kg", "coach_act.{}-pin_load-62.5"),
    ("cap {}", "{}: pin load", "coach_act.{}-pin_load"), ("keep {} at parallel", "{}: parallel", "coach_act.{}-pin_depth-parallel"),
    ("keep {} well above parallel", "{}: well above parallel", "coach_act.{}-pin_depth-well_above"),
    ("ask {} for a film", "{}: ask for a film", "coach_act.{}-ask_for-film"),
    ("ask {} to do the leg raise", "{}: ask for leg raise", "coach_act.{}-ask_for-leg_raise"),
    ("ask {} for a retest", "{}: retest date", "coach_act.{}-retest"),
    ("raise {}", "{}: raise load limit", "coach_act.{}-raise_load"), ("put {} aside", "{}: put aside", "coach_act.{}-put_aside")])
def test_an_act_is_a_button_that_names_the_lifter_and_what_is_meant(room, said, label, act):
    one, other, mia = room.lifter("Tom Ahl"), room.lifter("Tom Berg"), room.lifter("Mia")
    (both, single) = answer(room, said.format("tom")), answer(room, said.format("mia"))
    assert [(tap.label, tap.data) for tap in taps(both)[:2]] == [
        (label.format(name), f"go.{act.format(number)}") for name, number in (("Tom Ahl", one), ("Tom Berg", other))]
    assert single.text == f"{label.format('Mia')}?"
    assert taps(single)[0] == ("Yes", f"go.{act.format(mia)}")
    assert room.db.execute("select count(*) from acts").fetchone() == (0,)


def test_who_wishes_to_write_to_a_lifter_is_told_how_and_one_tap_begins_it(room):
    one, other, mia = room.lifter("Tom Ahl"), room.lifter("Tom Berg"), room.lifter("Mia")
    said = answer(room, "write to mia")
    assert said.text == "Write to Mia? Tap Yes and type it: you see it once more before it goes out."
    assert taps(said)[0] == ("Yes", f"go.coach_note.{mia}-note")
    assert [(tap.label, tap.data) for tap in taps(answer(room, "write to tom"))[:2]] == [
        ("Tom Ahl: write", f"go.coach_note.{one}-note"), ("Tom Berg: write", f"go.coach_note.{other}-note")]


def test_a_name_nobody_has_is_told_and_one_that_is_nearly_somebody_s_is_asked_about(room):
    room.lifter("Mia Lund")
    assert answer(room, "ask bo for a film").text == "None of your lifters has that name."
    near = answer(room, "how is mia lunf")
    assert near.text == "None of your lifters has that name. Did you mean one of these?"
    assert labels(near) == ["See Mia Lund", "My lifters"]


def test_nobody_else_s_lifter_is_named(room):
    room.lifter("Mia")
    bea = room.a_coach("Bea")
    told = answer_to(Turn(room.db, bea, NOW, BOOK), "ask mia for a film")
    assert isinstance(told, Say)
    assert labels(told) == ["My lifters"]


@pytest.mark.parametrize(("what", "value", "way"), [
    ("reviewed", "", "unreviewed-1"), ("snooze", "2026-03-15", "unreviewed-1"), ("pin_load", "60", "pin_load-none"),
    ("pin_depth", "parallel", "pin_depth-none"), ("retest", "2026-04-01", "end_retest"), ("note", "hello", None)])
def test_undo_offers_to_take_back_the_last_act(room, what, value, way):
    sam = room.lifter("Sam")
    coaching.audit_act(room.db, sam, room.coach, what, value, "", ago(0.1))
    told = answer(room, "undo")
    assert taps(told)[0].data == (f"go.coach_act.{sam}-{way}" if way else f"go.lifter.{sam}")
    assert told.text.startswith("Last for Sam: ")
    assert "2026" not in told.text


def test_undo_after_nothing_says_so(room):
    room.lifter("Sam")
    assert answer(room, "undo").text == "There is nothing of yours to take back."


async def test_a_typed_load_is_set_with_reason_and_end_and_undone(gym):
    await gym.linked()
    assert (await gym.say("cap sam at 80", who=KIM))[-1] == "sam: at most 80 kg?"
    assert (await gym.say("yes", who=KIM))[-1].startswith("sam: at most 80 kg. Your reason")
    assert "the most load is 80 kg, until" in (await gym.say("tired", "a week", who=KIM))[-1]
    assert "set the most load: 80 kg" in gym.heard(SAM)[-1]
    await gym.say("undo", "End it for sam", "skip", who=KIM)
    assert gym.heard(SAM)[-1] == "Your coach Kim no longer sets the most load. Nothing is set now."


async def test_the_words_of_a_button_are_as_good_as_a_tap(gym):
    await gym.linked()
    await gym.say("put sam aside", "yes", "tomorrow", who=KIM)
    gym.shown.clear()  # so that what follows is typed
    assert (await gym.say("take it back", who=KIM))[-1] == "Taken back for sam: it is as it was before."


async def test_asking_who_is_hurt_is_not_the_coach_s_own_pain_and_that_is_heard_still(gym):
    await gym.linked()
    assert "1 lifter: " in (await gym.say("who's hurt?", who=KIM))[-1]
    await gym.say("my knee hurts", who=KIM)
    assert people.load_session(gym.db, gym.id_of(KIM)).top.flow == "pain"


LIVING = "Are you thinking of harming yourself, or of not wanting to live?"
WRITINGS = ("go.coach_note.{}", "go.coach_act.{}-overrule", "go.invite_lifter")


async def begun(gym, data: str, *words: str) -> list[str]:
    await gym.linked()
    await gym.tap(KIM, data.format(gym.id_of(SAM)))
    return await gym.say(*words, who=KIM)


def kept_nowhere(gym, word: str) -> bool:
    places = (("answers", "raw"), ("answers", "value"), ("invitations", "name"), ("facts", "value"), ("sessions", "session"))
    return not any(word in text for text in gym.heard(SAM)) and not any(
        gym.db.execute(f"select 1 from {table} where {column} like '%{word}%'").fetchone() for table, column in places)


@pytest.mark.parametrize("data", WRITINGS)
async def test_a_coach_who_writes_of_dying_is_asked_and_nothing_of_it_is_passed_on_or_kept(gym, data):
    assert LIVING in (await begun(gym, data, "i want to kill myself"))[-1]
    await gym.say("Yes", who=KIM)
    assert any("emergency number or a crisis line" in text for text in gym.heard(KIM))
    assert kept_nowhere(gym, "kill")


@pytest.mark.parametrize("data", WRITINGS)
@pytest.mark.parametrize("after", [("stop", "hello"), ("keep at parallel",), ("send it",), ("stop", "go on"), ("my lifters",)])
async def test_neither_stop_nor_the_next_message_of_a_coach_ends_that_question(gym, data, after):
    await begun(gym, data, "i want to die", *after)
    assert LIVING in gym.heard(KIM)[-1]
    assert gym.db.execute("select value from facts where person = ? and name = 'crisis'", (gym.id_of(KIM),)).fetchone() == ("asked",)
    assert not any("parallel" in text for text in gym.heard(SAM))
    assert kept_nowhere(gym, "to die")


@pytest.mark.parametrize(("crisis", "asks"), [("asked", LIVING), ("open", "Are you safe just now")])
async def test_until_a_coach_has_answered_it_they_write_to_nobody(gym, crisis, asks):
    await begun(gym, WRITINGS[0], "i want to die", *(("stop",) if crisis == "asked" else ("Yes",)))
    for data in WRITINGS[:2]:
        await gym.tap(KIM, data.format(gym.id_of(SAM)))
        assert asks in gym.heard(KIM)[-1]
        await gym.say("stop", who=KIM)


async def test_a_coach_goes_on_writing_once_they_say_that_it_is_not_so(gym):
    await begun(gym, WRITINGS[0], "i want to die", "No, I meant something else")
    assert gym.heard(KIM)[-1].startswith("For sam: what should I pass on?")
    await gym.say("keep at parallel", "Send it", who=KIM)
    assert "keep at parallel" in gym.heard(SAM)[-1]


async def test_a_coach_who_tells_of_a_lifter_there_is_told_what_to_do_for_them(gym):
    assert LIVING in (await begun(gym, WRITINGS[0], "kill myself, that is what he said"))[-1]
    await gym.say("It is about a lifter", who=KIM)
    assert "get them emergency help now" in gym.heard(KIM)[-2]
    assert kept_nowhere(gym, "kill")


@pytest.mark.parametrize("words", ["my chest hurts and i want to die", "i want to die and my chest hurts"])
async def test_what_a_coach_tells_of_the_body_with_it_is_asked_about_once_it_is_denied(gym, words):
    await begun(gym, WRITINGS[0], words, "No, I meant something else")
    assert people.load_session(gym.db, gym.id_of(KIM)).top.flow == "signs"


async def test_over_a_side_question_it_is_heard_too(gym):
    await begun(gym, WRITINGS[0], "do you want to send me the report")
    assert people.load_session(gym.db, gym.id_of(KIM)).aside is not None
    assert LIVING in (await gym.say("i want to die", who=KIM))[-1]


async def test_only_a_coach_is_offered_that_it_is_about_a_lifter(gym):
    await gym.linked()
    await gym.say("kill me", who=KIM)
    assert "It is about a lifter" in [button.label for row in gym.shown[-1].buttons for button in row]
    await gym.say("kill me", who=SAM)
    assert "It is about a lifter" not in [button.label for row in gym.shown[-1].buttons for button in row]


async def test_a_coachs_own_pain_is_heard_where_they_act_for_a_lifter(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-drill")
    said = await gym.say("my chest hurts", who=KIM)
    assert said[-1].startswith("Is “my chest hurts” about your lifter, or about you?")
    await gym.say("Me", who=KIM)
    assert people.load_session(gym.db, gym.id_of(KIM)).top.flow in ("pain", "signs")


async def test_a_coach_who_types_a_lifter_s_word_reads_for_whom_it_is_and_the_way_back(gym):
    await gym.linked()
    said = await gym.say("squatting now", who=KIM)
    assert any("“stop” leads back to your lifters" in text for text in said)


async def test_erasing_a_lifter_takes_what_was_typed_of_them(gym):
    await gym.linked()
    await gym.say("how is sam", "compare sam", "ask sam for a film", who=KIM)
    await gym.say("my data", "Erase it all", "Yes, erase it all")
    assert gym.db.execute("select count(*) from runs where flow in ('lifter_named', 'compare') and asked like '%sam%'").fetchone() == (0,)
    assert not [row for row in gym.db.execute("select text || buttons from outbox where address = 'kim'") if "sam" in row[0]]


def test_a_button_is_typed_by_its_label_without_its_number_and_in_the_last_message_by_the_name_before_the_colon(room):
    def said(*labels: str) -> dict[str, str]:
        put_message(room.db, room.coach, Say("x", tuple((tap(label, "lifter", n),) for n, label in enumerate(labels))), NOW)
        return offered_to(room.db, room.coach)

    assert said("1 Ines", "Write", "2 Jo", "Write", "Next!") == {
        "1 ines": "go.lifter.0", "ines": "go.lifter.0", "2 jo": "go.lifter.2", "jo": "go.lifter.2", "next": "go.lifter.4"}
    found = said("Tom Hale: at most 80 kg", "Tom Ahl: at most 80 kg", "Retest: better", "Retest: worse")
    assert found["tom hale"] == found["tom hale: at most 80 kg"] == "go.lifter.0"
    assert "retest" not in found
    assert found["next"] == "go.lifter.4"
    assert "tom hale" not in said("Summary")
    said("a")
    assert set(said("b")) == {"summary", "a", "b"}
