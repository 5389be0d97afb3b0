"""What a coach tells of a lifter, and what of a coach's own waits while they look after lifters."""

from __future__ import annotations

import pytest

from companion.conversation.events import Typed
from companion.conversation.flow import Known
from companion.conversation.of_lifters import HARM_OF_A_LIFTER, OF_A_LIFTER, URGENT_OF_A_LIFTER
from companion.conversation.step import step
from companion.language.coach_words import told_of
from companion.record import people
from flows.catalogue import BOOK
from tests.coach.gym import KIM, SAM
from tests.corpus.turns import session_at
from tests.drive import NOW

WHAT_TO_DO = (OF_A_LIFTER, URGENT_OF_A_LIFTER, HARM_OF_A_LIFTER)


@pytest.mark.parametrize(("words", "to_do"), [
    ("sam fainted in the gym yesterday", URGENT_OF_A_LIFTER), ("Sam's left leg gave way", URGENT_OF_A_LIFTER),
    ("sam says his chest hurts", URGENT_OF_A_LIFTER), ("fyi sam is pregnant", OF_A_LIFTER), ("sam is 16", OF_A_LIFTER),
    ("Sam told me he wants to kill himself", HARM_OF_A_LIFTER)])
async def test_a_sign_that_a_coach_tells_of_a_lifter_is_noted_of_nobody_and_the_coach_hears_what_to_do(gym, words, to_do):
    await gym.linked()
    assert (await gym.say("stop", words, who=KIM))[-1] == f"Is “{words}” about your lifter, or about you?"
    assert (await gym.say("My lifter", who=KIM))[-1] == to_do
    assert gym.shown[-1].buttons[0][0].data == f"go.coach_note.{gym.id_of(SAM)}"
    assert not gym.db.execute("select 1 from answers where flow in ('signs', 'pain', 'crisis')").fetchone()


async def test_a_sign_of_a_lifter_without_a_name_leads_to_the_caseload(gym):
    await gym.linked()
    await gym.say("stop", "her left leg gave way", "them", who=KIM)
    assert gym.shown[-1].buttons[0][0].data == "go.caseload"


@pytest.mark.parametrize("whose", ["sam", "it's about sam", "my lifter sam", "Sam's", "one of my clients"])
async def test_whose_a_sign_is_may_be_said_by_name_and_what_to_do_is_told(gym, whose):
    await gym.linked()
    await gym.say("stop", "sam says he doesn't want to live anymore", whose, who=KIM)
    assert gym.heard(KIM)[-1] in WHAT_TO_DO


@pytest.mark.parametrize("words", ["my lifter sam has chest pain", "Sam texted: i want to end it all", "sam can't pee, what should i do",
                                   "the guy i train fainted", "is sam ok? he told me his leg is numb", "Tom says he wants to die",
                                   "tell sam to stop, his foot drops", "ask sam for a film, his back hurts",
                                   "i have a lifter with a slipped disc", "who is numb", "i think sam fainted", "help me sam can't pee",
                                   "sam is having chest pain should i call 911", "can i let sam squat with numb legs",
                                   "i just saw sam collapse", "oda's lifter fainted", "i'm worried about my lifter, he can't pee",
                                   "Tom can't pee", "toms leg gave way", "sam can't pee and i don't know what to do"])
async def test_a_sign_of_any_lifter_is_never_taken_for_the_coachs_own(gym, words):
    await gym.linked()
    await gym.say("stop", words, who=KIM)
    aside = people.load_session(gym.db, gym.id_of(KIM)).aside
    assert aside is not None
    assert aside.about == "whose"
    await gym.say("my lifter", who=KIM)
    assert gym.heard(KIM)[-1] in WHAT_TO_DO


@pytest.mark.parametrize("asked", ["my lifters", "what's up with sam"])
async def test_to_whose_it_is_something_else_that_is_asked_for_is_no_answer(gym, asked):
    await gym.linked()
    await gym.say("stop", "mia fainted", who=KIM)
    before = len(gym.heard(KIM))
    await gym.say(asked, who=KIM)
    assert not set(WHAT_TO_DO) & set(gym.heard(KIM)[before:])


async def test_a_sign_that_turns_out_to_be_the_coachs_own_is_asked_about_as_ever(gym):
    await gym.linked()
    await gym.say("stop", "sam fainted in the gym yesterday", "me", who=KIM)
    assert people.load_session(gym.db, gym.id_of(KIM)).stack[-1].flow == "signs"


async def test_what_a_coach_writes_to_a_lifter_about_their_pain_is_passed_on_as_it_is(gym):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_note.{gym.id_of(SAM)}")
    assert (await gym.say("sam, chest pain is never normal: see a doctor", who=KIM))[-1].startswith("Send it to sam like this?")


@pytest.mark.parametrize("words", ["they hurt", "her left leg gave way", "sam fainted"])
def test_while_a_coachs_own_body_is_at_work_it_is_not_asked_whose_pain_it_is(words):
    (session, facts), coach = session_at("hinge_to_squat/did"), {"is_coach": "yes", "lifter.1": "Sam"}
    at_rest, rest_facts = session_at("about_you/years")
    working = step(BOOK, session, Typed(words), Known({**facts, **coach}, NOW)).session
    resting = step(BOOK, at_rest, Typed(words), Known({**rest_facts, **coach}, NOW)).session
    assert working.stack[-1].flow in ("pain", "signs")
    assert resting.aside.about == "whose"


@pytest.mark.parametrize("words", [
    "my chest is tight", "leg feels weak", "heart is racing", "i think i fainted", "should i see a doctor about my numb foot",
    "can i squat with numb legs", "bladder is gone", "my chest hurts and nobody is here"])
def test_of_words_about_no_lifter_it_is_not_asked_whose_they_are(words):
    assert told_of(words, {"1": "Sam", "2": "Will"}) is None


def test_what_tells_of_the_coach_too_is_not_kept_as_a_note_about_a_lifter():
    (session, facts), words = session_at("note_to_coach/message"), "sam drives me, i have chest pain"
    known = Known({**facts, "is_coach": "yes", "lifter.1": "Sam"}, NOW)
    assert step(BOOK, session, Typed(words), known).session.stack[-1].flow == "signs"


@pytest.mark.parametrize("words", ["my lifter has chest pain and i also feel chest pain", "i told sam i fainted",
                                   "sam left, my chest hurts"])
async def test_a_sign_of_the_coachs_own_in_so_many_words_is_asked_about_though_a_lifter_is_named(gym, words):
    await gym.linked()
    await gym.say("stop", words, who=KIM)
    assert people.load_session(gym.db, gym.id_of(KIM)).stack[-1].flow == "signs"


@pytest.mark.parametrize(("words", "then"), [("i have chest pain", "my lifter"), ("cant pee", "it's about sam"),
                                             ("pregnant", "my lifter sam"), ("my back hurts", "my lifter")])
async def test_a_sign_taken_for_the_coachs_own_is_taken_back_where_it_is_a_lifters(gym, words, then):
    await gym.linked()
    before = len(await gym.say("stop", words, who=KIM)) and len(gym.heard(KIM))
    await gym.say(then, who=KIM)
    said = gym.heard(KIM)[before:]
    assert set(WHAT_TO_DO) & set(said)
    assert any(text.startswith(("Thank you, then I misunderstood.", "So nothing hurt")) for text in said)


@pytest.mark.parametrize(("told", "asked"), [("my knee hurts", "Where does it hurt?"), ("i cant pee", "Is that so?"),
                                             ("my back feels a bit off", "Did something hurt?")])
@pytest.mark.parametrize(("does", "shows"), [("who needs me", "Since you last looked"), ("my lifters", "1 lifter"),
                                             ("find sam", "Safety: "),
                                             ("what's up with sam", "Safety: "), ("Seen", "you have seen it")])
async def test_a_coach_sees_lifters_and_their_alerts_over_questions_about_their_own_body_which_stand_again(gym, told, asked, does, shows):
    await gym.linked()
    await gym.say("stop", told, who=KIM)
    await gym.say("my back hurts", "Chest, breath or faint")
    state = people.load_session(gym.db, gym.id_of(KIM))
    before = len(gym.heard(KIM))
    await gym.say(does, who=KIM)
    said = gym.heard(KIM)[before:]
    assert any(shows in text for text in said[:-1])
    assert said[-1].endswith(asked)
    now = people.load_session(gym.db, gym.id_of(KIM))
    assert (now.stack, now.aside, now.parked) == (state.stack, state.aside, state.parked)


async def test_nothing_is_set_or_written_for_a_lifter_over_questions_about_the_coachs_own_body(gym):
    await gym.linked()
    await gym.say("stop", "my knee hurts", who=KIM)
    await gym.tap(KIM, f"go.coach_note.{gym.id_of(SAM)}")
    assert gym.heard(KIM)[-1] == "These questions come first.\n\nWhere does it hurt?"
