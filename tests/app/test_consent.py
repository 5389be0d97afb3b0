"""Consent: its words have a version, a new one is asked about before anything else, and a no keeps nothing going and erases nothing."""

from __future__ import annotations

from collections.abc import AsyncIterator
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from pathlib import Path

import pytest

from companion.app.consent import _takes, may_ask, renewal
from companion.app.run import opening
from companion.conversation.effects import Ended, Find, Record, Say
from companion.conversation.events import Invite, Settle, Tapped, Typed
from companion.conversation.flow import Known
from companion.conversation.session import Frame, Session
from companion.conversation.step import step
from companion.port import Address, Inbound, Sent
from companion.record import log, people, reminders
from companion.record.context import known_of
from companion.verify.check import faults
from companion.verify.domains import Ways
from companion.verify.proof import prove
from flows.catalogue import CATALOGUE
from flows.consent import COACH_TEXT, LIFTER_TEXT
from tests.app.test_service import CHECK, SAM, WARM, with_results
from tests.coach.gym import KIM, Gym
from tests.drive import CHECKED, NOW
from tests.raised import NEWS, raised, update
from tests.table import each_row

YES, NO = "Yes, keep them", "No"
ASKS, MEANS = "They stay for two years. May I keep them?", "Then I stop here"
OLD = {**CHECKED, "consent.lifter": "1"}

RELEASED = {
    ("lifter", 1): "5884cd91dade8944",
    ("coach", 1): "7dbedceb4dfe24b3",
}
"""The fingerprint of each text that was ever released."""


@pytest.mark.parametrize("text", [LIFTER_TEXT, COACH_TEXT], ids=["lifter", "coach"])
def test_the_words_of_a_released_text_stay_as_they_are(text):
    print_of = sha256(text.says.encode()).hexdigest()[:16]
    assert print_of == RELEASED.get((text.of, text.version)), (
        f"The text that a {text.of} agrees to is not the one that was released as version {text.version}. People agreed to those "
        f"words. Put them back; or in flows/consent.py raise its version, say in `new` in one sentence what is new, and add "
        f"(“{text.of}”, the new version): “{print_of}” to RELEASED here. The older rows stay.")
    assert bool(text.new) == (text.version > 1), "a new version says in one sentence what is new"
    assert [version for of, version in RELEASED if of == text.of] == list(range(1, text.version + 1))


@pytest.mark.parametrize("name", ["welcome", "coach_welcome", "consent_again"])
def test_with_new_versions_the_flows_are_still_sound(name):
    book = raised("lifter", "coach").BOOK
    ways = Ways(book, book[name], Known({"today": "2026-03-02"}, NOW))
    assert faults(ways, prove(ways)) == []


# on the flows alone -----------------------------------------------------------------------------------------


def test_who_agreed_to_the_present_texts_is_not_asked():
    for facts in ({}, {"consent.lifter": "1"}, {"consent.coach": "1"}, {"consent.lifter": "1", "consent.coach": "1"}):
        assert not CATALOGUE.consent_due.holds(facts)
    for facts in ({"consent.lifter": "no"}, {"consent.coach": "0"}):
        assert CATALOGUE.consent_due.holds(facts)


def test_an_answer_in_the_middle_of_something_is_not_taken():
    book = raised("lifter").BOOK
    half = Session(stack=(Frame("about_you", book["about_you"].flow.version, "1", "height"),), runs=1)
    taken = renewal(book, "consent_again", half, Typed("175"), Known(OLD, NOW))
    assert taken is not None
    assert not any(isinstance(effect, Record) for effect in taken.effects)
    assert [(frame.flow, frame.paused) for frame in taken.session.stack] == [("about_you", True), ("consent_again", False)]
    assert taken.session.stack[0].got == {}


def half(book, flow: str = "about_you", state: str = "height", run: str = "1", **more) -> Frame:
    return Frame(flow, book[flow].flow.version, run, state, **more)


@each_row(("at", "said", "stack", "parked", "told"), [
    ("height", "/squat_days", ["squat_days", "consent_again"], [["about_you"]], ["I keep your place in “About you”"]),
    ("height", "menu", ["home", "consent_again"], [["about_you"]], ["I keep your place in “About you”"]),
    ("height", "why", ["about_you", "why", "consent_again"], [], []),
    ("height", "bananas", ["about_you", "consent_again"], [], []),
    ("height", "stop maybe", ["about_you", "consent_again"], [], []),
    ("menu", "My squat days", ["home", "squat_days", "consent_again"], [], []),
    ("menu", "/squat_days", ["squat_days", "consent_again"], [], []),
    ("", "hi", ["consent_again"], [], []),
    ("", "/squat_days", ["squat_days", "consent_again"], [], []),
])
def test_what_is_begun_waits_under_the_question_and_what_is_answered_is_not_taken(at, said, stack, parked, told):
    book = raised("lifter").BOOK
    frames = {"height": (half(book),), "menu": (half(book, "home", "pick"),), "": ()}[at]
    taken = renewal(book, "consent_again", Session(stack=frames, runs=1, idle=not at), Typed(said), Known(OLD, NOW))
    assert taken is not None
    assert [frame.flow for frame in taken.session.stack] == stack
    assert [[frame.flow for frame in one] for one in taken.session.parked] == parked
    assert all(isinstance(effect, Say) for effect in taken.effects)
    assert [effect.text[:len(words)] for effect, words in zip(taken.effects, told, strict=True)] == told
    assert not taken.session.idle
    runs = [frame.run for one in (taken.session.stack, *taken.session.parked) for frame in one]
    assert len(set(runs)) == len(runs) <= taken.session.runs
    assert taken.session.top.run == str(taken.session.runs)
    assert taken.session.at == NOW.isoformat()


def test_what_is_begun_anew_ends_what_it_was():
    book = raised("lifter").BOOK
    taken = renewal(book, "consent_again", Session(stack=(half(book, state="gone"),), runs=1), Typed("start over"), Known(OLD, NOW))
    assert taken is not None
    assert [(frame.flow, frame.state) for frame in taken.session.stack] == [("about_you", ""), ("consent_again", "")]
    assert taken.effects[0] == Ended("1", "left")


def test_an_answer_that_begins_another_flow_is_not_taken():
    book = raised("lifter").BOOK
    asked = Session(stack=(half(book, "best_squat", "front"),), runs=1)
    event = Tapped(f"best_squat.{book['best_squat'].flow.version}.front.no")
    taken = renewal(book, "consent_again", asked, event, Known(OLD, NOW))
    assert taken is not None
    assert [(frame.flow, frame.state) for frame in taken.session.stack] == [("best_squat", "front"), ("consent_again", "")]
    assert not taken.effects


def test_a_question_that_was_put_by_is_asked_anew_and_its_run_ended_if_it_had_begun():
    book = raised("lifter").BOOK
    for state, ended in (("lifter_2", (Ended("2", "left"),)), ("", ())):
        parked = ((half(book, state="weight", run="3"), half(book, "consent_again", state, "2")), (half(book, "squat_days", "", "4"),))
        taken = renewal(book, "consent_again", Session((half(book),), parked, runs=4), Typed("bananas"), Known(OLD, NOW))
        assert taken is not None
        assert [[frame.flow for frame in one] for one in taken.session.parked] == [["about_you"], ["squat_days"]]
        assert taken.effects == ended
    alone = Session((half(book),), ((half(book, "consent_again", "lifter_2", "2"),),), runs=2)
    taken = renewal(book, "consent_again", alone, Typed("bananas"), Known(OLD, NOW))
    assert taken is not None
    assert taken.session.parked == ()


def test_a_reminder_and_what_goes_on_by_itself_under_the_question_are_left_alone():
    book, known = raised("lifter").BOOK, Known(OLD, NOW)
    asking = Session(stack=(half(book, "consent_again", "lifter_2", "2"),), runs=2)
    assert renewal(book, "consent_again", Session(), Invite("squat_days"), known) is None
    assert renewal(book, "consent_again", asking, Settle(), known) is None
    by_itself = renewal(book, "consent_again", Session(stack=(half(book, state=""),), runs=1), Settle(), known)
    assert by_itself is not None
    assert [frame.flow for frame in by_itself.session.stack] == ["about_you", "consent_again"]


@each_row(("flow", "state", "words"), [("about_you", "height", "bit sore"), ("knee_to_wall", "left_1", "stop"),
                                      ("about_you", "height", "my back hurts"), ("about_you", "height", "stop")])
def test_a_question_whether_something_hurt_goes_first(flow, state, words):
    book = raised("lifter").BOOK
    session = Session(stack=(half(book, flow, state),), runs=1)
    assert renewal(book, "consent_again", session, Typed(words), Known(OLD, NOW)) is None


def test_the_question_is_not_sent_twice_nor_into_what_goes_first():
    book = raised("lifter").BOOK
    asking = half(book, "consent_again", "lifter_2", "2")
    assert may_ask(book, "consent_again", Session())
    assert may_ask(book, "consent_again", Session(stack=(half(book),), parked=((half(book, run="2"),),)))
    assert not may_ask(book, "consent_again", Session(stack=(half(book), asking)))
    assert not may_ask(book, "consent_again", Session(stack=(half(book),), parked=((half(book), asking),)))
    assert not may_ask(book, "consent_again", Session(stack=(half(book, "pain", "where"),)))
    assert not may_ask(book, "consent_again", Session(stack=(half(book, "my_data", "what"),)))


def test_what_is_said_ended_or_withdrawn_stores_nothing_new():
    answer = Record("1", "pause_squat", 1, "left", "left", "5", 5.0)
    assert not _takes([Say("x"), Ended("1", "left"), replace(answer, status="withdrawn")])
    assert not _takes([Ended("1", "left")])
    assert not _takes([])
    for effect in (answer, replace(answer, status="in_pain"), Find("safety.level", "go", "", "")):
        assert _takes([Say("x"), effect])


def test_pain_ends_a_test_once_and_leaves_what_was_ended_by_it_ended():
    book, known = raised("lifter").BOOK, Known(OLD, NOW)
    about = half(book, paused=True, hurt=True)
    asking = half(book, "consent_again", "lifter_2", "2")
    told = renewal(book, "consent_again", Session(stack=(about, asking), runs=2), Typed("sharp pain in my back"), known)
    assert told is not None
    assert [frame.hurt for frame in told.session.stack[:-1]] == [True, False]
    test = half(book, "knee_to_wall", "left_1", paused=True)
    asked = Session(stack=(test, asking, half(book, "pain", "where", "3")), runs=3)
    answered = renewal(book, "consent_again", asked, Tapped(f"pain.{book['pain'].flow.version}.where.back"), known)
    assert answered is not None
    assert [frame.hurt for frame in answered.session.stack[:2]] == [False, False]


def test_an_answer_that_would_lead_to_another_flow_is_not_taken_either():
    book = raised("lifter").BOOK
    last = Session(stack=(Frame("welcome", book["welcome"].flow.version, "1", "zone_right", {"zone": "Europe/Lisbon"}),), runs=1)
    taken = renewal(book, "consent_again", last, Typed("yes"), Known(OLD, NOW))
    assert taken is not None
    assert [(frame.flow, frame.state) for frame in taken.session.stack] == [("welcome", "zone_right"), ("consent_again", "")]


@each_row("words", ["my back hurts", "ouch", "my leg is numb", "stop", "/export", "/erase", "my data", "my coaches"])
def test_pain_a_stop_and_ones_own_data_go_before(words):
    book = raised("lifter").BOOK
    for session in (Session(), Session(stack=(Frame("about_you", book["about_you"].flow.version, "1", "height"),), runs=1)):
        if words != "stop" or session.stack:
            assert renewal(book, "consent_again", session, Typed(words), Known(OLD, NOW)) is None


def test_pain_told_in_place_of_an_answer_ends_the_test_that_waits():
    book = raised("lifter").BOOK
    test = Frame("knee_to_wall", book["knee_to_wall"].flow.version, "1", "left_1", paused=True)
    asking = Frame("consent_again", 1, "2", "lifter_2")
    taken = renewal(book, "consent_again", Session(stack=(test, asking), runs=2), Typed("sharp pain in my back"), Known(OLD, NOW))
    assert taken is not None
    assert taken.session.top.flow == "pain"
    assert [frame.hurt for frame in taken.session.stack[:-1]] == [True, False]


def test_an_answer_that_leaves_a_flow_quietly_is_not_taken_for_a_stop():
    book = raised("lifter").BOOK
    note = Session(stack=(Frame("coach_note", book["coach_note"].flow.version, "1", "sure", {"text": "lighter today"}),), runs=1)
    known = Known({**OLD, "is_coach": "yes"}, NOW)
    then, effects = step(book, note, Typed("Send it"), known)
    assert any(isinstance(effect, Record) for effect in effects)
    assert then.idle
    taken = renewal(book, "consent_again", note, Typed("Send it"), known)
    assert taken is not None
    assert taken.session.top.flow == "consent_again"


def test_a_yes_notes_the_version():
    book = raised("lifter").BOOK
    asking = Session(stack=(Frame("consent_again", 1, "1", "lifter_2"),), runs=1)
    _, effects = step(book, asking, Typed("yes"), Known(OLD, NOW))
    assert [(effect.name, effect.value) for effect in effects if isinstance(effect, Find)] == [("consent.lifter", "2")]


# on a real file ---------------------------------------------------------------------------------------------


@pytest.fixture
async def life(tmp_path: Path) -> AsyncIterator[Gym]:
    one = Gym(tmp_path / "companion.sqlite")
    await one.start()
    yield one
    await one.stop()


async def updated(life: Gym, patch: pytest.MonkeyPatch, *whose: str) -> None:
    await life.stop()
    update(patch, *(whose or ("lifter",)))
    await life.start()


def top(life: Gym, who: Address = SAM) -> str:
    session = people.load_session(life.db, life.id_of(who))
    return f"{session.top.flow}.{session.top.state}" if session.stack else ""


def kept_answers(life: Gym) -> list[tuple[str, str]]:
    return [(row.flow, row.key) for row in log.answers_of(life.db, 1)]


async def half_way(life: Gym) -> None:
    await life.lifter(SAM)
    await life.say("knee to wall", *CHECK, *WARM, "tape", "11")


async def test_what_was_agreed_to_stands_as_a_finding_and_in_the_copy(life):
    await life.lifter(SAM)
    assert [one.value for one in log.finding_history(life.db, 1, "consent.lifter")] == ["1"]
    await life.say("/export")
    copy = next(message.document for message in life.shown if message.document)
    assert "2026-03-02 18:05  what is kept of a lifter: you agreed to version 1" in copy


async def test_who_agreed_before_texts_had_versions_agreed_to_version_1(life):
    await life.lifter(SAM)
    as_before(life, 1)
    assert known_of(life.db, 1, NOW).facts["consent.lifter"] == "1"
    assert [(one.of, one.version) for one in people.agreements(life.db, 1)] == [("lifter", "1")]
    await life.say("/export")
    assert any("you agreed to version 1" in (message.document or "") for message in life.shown)


async def test_a_coach_who_agreed_before_texts_had_versions_is_asked_by_the_coachs_text(life, monkeypatch):
    await life.coach(KIM)
    as_before(life, 1)
    assert [(one.of, one.version) for one in people.agreements(life.db, 1)] == [("coach", "1")]
    await updated(life, monkeypatch, "lifter", "coach")
    await life.say("menu", who=KIM)
    assert top(life, KIM) == "consent_again.coach_2"


def as_before(life: Gym, person: int) -> None:
    """As a file of an older companion has it."""
    life.db.execute("delete from findings where person = ? and name like 'consent.%'", (person,))
    life.db.execute("delete from facts where person = ? and name like 'consent.%'", (person,))


@pytest.mark.parametrize("older", [False, True])
async def test_half_way_in_a_test_they_are_asked_first_and_go_on_after_a_yes(life, monkeypatch, older):
    await half_way(life)
    if older:
        as_before(life, 1)
    await updated(life, monkeypatch)
    before = kept_answers(life)
    said = await life.say("11.5")
    assert NEWS in said[-2]
    assert ASKS in said[-1]
    assert kept_answers(life) == before
    said = await life.say(YES)
    assert "once more with the left foot" in said[-1]
    await life.say("11.5")
    assert kept_answers(life)[len(before):] == [("consent_again", "lifter_2"), ("knee_to_wall", "left_2")]
    assert [one.version for one in people.agreements(life.db, 1)] == ["1", "2"]


async def test_a_yes_is_asked_for_once(life, monkeypatch):
    await life.lifter(SAM)
    await updated(life, monkeypatch)
    await life.say("hello", YES)
    await life.restart()
    await life.say("about me")
    assert top(life) == "about_you.height"


@pytest.mark.parametrize("ask", ["squat_days by its button", "squat_days typed", "squat_days picked"])
async def test_a_flow_they_begin_begins_after_the_yes(life, monkeypatch, ask):
    await life.lifter(SAM)
    await life.say("menu")
    await updated(life, monkeypatch)
    before = kept_answers(life)
    await (life.tap(SAM, "go.squat_days") if "button" in ask else life.say("My squat days") if "picked" in ask else life.say("/squat_days"))
    assert top(life) == "consent_again.lifter_2"
    assert kept_answers(life) == before
    await life.say(YES)
    assert top(life).startswith("squat_days.")


async def test_a_restart_between_question_and_answer_changes_nothing(life, monkeypatch):
    await half_way(life)
    await updated(life, monkeypatch)
    await life.say("11.5")
    await life.restart()
    assert ASKS in (await opening(life.companion, SAM))[-1].text
    said = await life.say(YES)
    assert "once more with the left foot" in said[-1]


async def test_a_button_under_an_older_text_agrees_to_no_newer_one(life, monkeypatch):
    await life.say("hello")
    await updated(life, monkeypatch)
    await life.tap(SAM, "welcome.1.consent.yes")
    assert life.count("persons") == 0
    await life.say(YES)
    assert [one.version for one in people.agreements(life.db, 1)] == ["2"]


async def test_a_question_left_open_over_an_update_agrees_to_no_newer_text(life, monkeypatch):
    await life.lifter(SAM)
    await life.say("menu")
    life.db.execute("update facts set value = '0' where name = 'consent.lifter'")
    await life.say("hello")
    assert top(life) == "consent_again.lifter_1"
    await updated(life, monkeypatch)
    await life.tap(SAM, "consent_again.1.lifter_1.yes")
    assert top(life) == "consent_again.lifter_2"
    assert "2" not in [one.version for one in people.agreements(life.db, 1)]


async def test_pain_words_in_place_of_an_answer_are_answered_first(life, monkeypatch):
    await half_way(life)
    await updated(life, monkeypatch)
    await life.say("11.5")
    said = await life.say("it hurts in my lower back")
    assert "Where does it hurt?" in said[-1]
    await life.say("back", "3", "no", "no", "no", "Knee to wall")
    assert life.count("alerts") == 1
    assert known_of(life.db, 1, life.clock.now()).facts["safety.level"] == "not_today"
    assert top(life) == "consent_again.lifter_2"
    await life.say(YES)
    assert life.db.execute("select ending from runs where flow = 'knee_to_wall'").fetchone() == ("pain",)


async def test_pain_words_as_the_first_thing_said_are_answered_first(life, monkeypatch):
    await half_way(life)
    await updated(life, monkeypatch)
    said = await life.say("ouch, my back")
    assert "Where does it hurt?" in said[-1]
    said = await life.say("nothing", "right, nothing")
    assert ASKS in said[-1]


async def test_a_stop_stops_and_they_are_asked_when_they_write_again(life, monkeypatch):
    await life.lifter(SAM)
    await life.say("about me")
    await updated(life, monkeypatch)
    said = await life.say("stop")
    assert "Stopped" in said[-1]
    assert ASKS in (await life.say("menu"))[-1]
    assert "no reminder comes" in (await life.say("stop"))[-1]
    for words in ("screen", "go on", "hi", "squatting today"):
        assert ASKS in (await life.say(words))[-1]
        await life.say("stop")
    assert [frame.flow for stack in people.load_session(life.db, 1).parked for frame in stack].count("consent_again") == 1


async def test_a_photo_is_not_passed_on_before_the_yes(life, monkeypatch):
    await life.linked()
    await life.say("/film")
    await updated(life, monkeypatch)
    await life.companion.take(Inbound(SAM, Sent("video", "ref-1"), name="sam"))
    assert top(life) == "consent_again.lifter_2"
    assert not any("sent a film" in text for text in life.heard(KIM))


async def test_a_no_keeps_nothing_going_erases_nothing_and_offers_copy_erasing_and_asking_again(life, monkeypatch):
    await half_way(life)
    await updated(life, monkeypatch)
    said = await life.say("hello", NO)
    assert MEANS in said[-1]
    assert not any("keep nothing about you" in text for text in said)
    for words in ("screen", "knee to wall", "11", "go on", "skip", "yes"):
        await life.say(words)
        assert top(life) == "consent_again.means"
    said = await life.say("A copy of it first")
    assert "Nothing has been erased" in said[-1]
    assert sum(bool(message.document) for message in life.shown) == 3
    said = await life.say("Erase it all")
    assert "Erase it all?" in said[-1]
    assert life.count("persons") == 1
    await life.say("No, keep it")
    assert top(life) == "consent_again.now"
    said = await life.say("Ask me again")
    assert ASKS in said[-1]
    said = await life.say(YES)
    assert "once more with the left foot" in said[-1]


async def test_a_no_and_an_erasing_that_is_confirmed_leave_nothing(life, monkeypatch):
    await half_way(life)
    await updated(life, monkeypatch)
    await life.say("hello", NO, "Erase it all", "Yes, erase it all")
    assert [life.count(table) for table in ("persons", "answers", "findings", "sessions", "outbox")] == [0] * 5
    assert "It is all erased" in life.shown[-1].text


@pytest.mark.parametrize("words", ["/export", "/erase", "my data"])
async def test_ones_own_data_is_reached_over_the_question_which_then_comes_again(life, monkeypatch, words):
    await life.lifter(SAM)
    await updated(life, monkeypatch)
    await life.say("hello", words)
    if words != "/export":
        assert top(life) in ("erase.sure", "my_data.what")
        await life.say("stop")
    else:
        assert any(message.document for message in life.shown)
    assert ASKS in (await life.say("menu"))[-1]


# no reminder meanwhile --------------------------------------------------------------------------------------


async def sent_at(life: Gym, at: datetime) -> list[str]:
    """What comes unasked by a moment."""
    before, life.clock.at = len(life.shown), at
    await life.companion.sweep()
    await life.listen()
    return [message.text for message in life.shown[before:]]


async def test_the_question_comes_once_in_place_of_the_first_reminder(life, monkeypatch):
    await life.lifter(SAM)
    await life.say("my squat days", "every day at 6pm", "Yes, that is right", "4 hours before", "skip")
    assert any("Squat day" in text for text in await sent_at(life, datetime(2026, 3, 3, 14, 1, tzinfo=UTC)))
    assert life.db.execute("select count(*) from reminders where state = 'sent'").fetchone() == (1,)
    await updated(life, monkeypatch)
    said = [text for hours in range(24 * 5) for text in await sent_at(life, life.clock.at + timedelta(hours=1))]
    assert [ASKS in text for text in said] == [False, True]  # what is new, and the question
    assert life.db.execute("select count(*) from reminders where state = 'sent'").fetchone() == (1,)
    await life.say(YES)
    said = [text for hours in range(24) for text in await sent_at(life, life.clock.at + timedelta(hours=1))]
    assert any("Squat day" in text for text in said)


async def test_a_reminder_that_waited_comes_after_the_yes(life, monkeypatch):
    await with_results(life)
    await updated(life, monkeypatch)
    (due,) = reminders.open_reminders(life.db, 1)
    said = await sent_at(life, due.due_at)
    assert ASKS in said[-1]
    assert not any("time to test again" in text for text in said)
    assert await sent_at(life, due.due_at + timedelta(days=1)) == []
    await life.say(YES)
    assert any("time to test again" in text for text in await sent_at(life, due.due_at + timedelta(days=2, hours=1)))


async def test_no_question_comes_unasked_into_the_pain_questions(life, monkeypatch):
    await with_results(life)
    await life.say("my back hurts")
    await updated(life, monkeypatch)
    said = await sent_at(life, reminders.open_reminders(life.db, 1)[0].due_at + timedelta(days=30))
    assert said == []
    assert top(life) == "pain.where"


# coaches ----------------------------------------------------------------------------------------------------


async def test_a_coach_is_asked_again_by_the_coachs_text(life, monkeypatch):
    await life.linked()
    await updated(life, monkeypatch, "coach")
    before = life.count("looks")
    await life.tap(KIM, f"go.lifter.{life.id_of(SAM)}")
    assert "what you look at and do" in life.heard(KIM)[-1]
    assert life.count("looks") == before
    await life.say("Yes, keep it", who=KIM)
    assert life.count("looks") == before + 1
    await life.say("menu")
    assert top(life) == "home.pick"  # the lifter's text is the same


async def test_an_open_code_leads_to_its_question_after_the_yes(life, monkeypatch):
    await life.coach(KIM)
    await life.lifter(SAM)
    code = (await life.code_for("Sam")).replace(" ", "")
    await updated(life, monkeypatch)
    assert ASKS in (await life.say(f"/start {code}"))[-1]
    assert "Kim asks to be your coach" in (await life.say(YES))[-1]
    await life.say("Yes, I agree")
    assert known_of(life.db, life.id_of(SAM), life.clock.now()).facts["coach"] == "yes"


async def test_a_link_asked_about_before_the_update_is_asked_about_again_after_the_yes(life, monkeypatch):
    await life.coach(KIM)
    await life.lifter(SAM)
    await life.say(f"code {await life.code_for('Sam')}")
    await updated(life, monkeypatch)
    await life.say("Yes, I agree")
    assert known_of(life.db, life.id_of(SAM), life.clock.now()).facts["coach"] == "no"
    assert "Kim asks to be your coach" in (await life.say(YES))[-1]


# a no of somebody who is kept -------------------------------------------------------------------------------


async def test_a_no_in_the_welcome_of_somebody_kept_never_says_that_nothing_is_kept(life):
    await life.lifter(SAM)
    await life.say("menu")
    await life.tap(SAM, "go.welcome")
    said = await life.say(NO)
    assert MEANS in said[-1]
    assert "keep nothing" not in " ".join(said)
    assert "Erase it all?" in (await life.say("Erase it all"))[-1]
    await life.say("No, keep it", "stop")
    assert MEANS in (await life.say("screen"))[-1]
    await life.say("Ask me again", YES)
    assert known_of(life.db, 1, NOW).facts["consent.lifter"] == "1"
    assert not top(life).startswith("consent_again")


async def test_a_no_after_going_back_in_the_welcome_is_one_of_somebody_kept(life):
    await life.say("hello", YES, "back")
    said = await life.say(NO)
    assert MEANS in said[-1]
    await life.say("Erase it all", "Yes, erase it all")
    assert life.count("persons") == 0


async def test_who_was_told_that_nothing_is_kept_by_an_older_companion_is_asked(life):
    await life.lifter(SAM)
    as_before(life, 1)
    life.db.execute("update facts set value = 'no' where name = 'welcome.consent'")
    assert MEANS in (await life.say("menu"))[-1]


async def test_a_coach_who_does_not_want_to_be_a_lifter_stays_a_coach(life):
    await life.coach(KIM)
    await life.tap(KIM, "go.welcome")
    said = await life.say(NO, who=KIM)
    assert any("nothing changes" in text for text in said)
    await life.say("menu", who=KIM)
    assert top(life, KIM) == "home.pick"


async def test_a_strangers_refusal_is_noted_with_the_version_refused(life, monkeypatch):
    await updated(life, monkeypatch)
    said = await life.say("hello", NO)
    assert any("I keep nothing about you" in text for text in said)
    assert life.db.execute("select version from refusals").fetchall() == [(2,)]
