"""My data, lived through: a copy of it all, or all of it gone."""

import pytest

from companion.conversation.effects import Erase, Export, Say
from companion.conversation.events import Typed
from companion.conversation.flow import Known
from companion.conversation.session import Frame, Session
from companion.conversation.step import step
from companion.operate.backup import DAYS_KEPT
from flows.catalogue import BOOK
from flows.my_data import FLOW
from tests.drive import CHECKED, NOW, Talk


def begun(*replies: str) -> Talk:
    return Talk(FLOW, known=CHECKED, book=BOOK).say(*replies)


def of(talk: Talk, kind: type) -> int:
    return sum(isinstance(effect, kind) for effect in talk.effects)


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def test_a_copy_is_sent_and_nothing_erased():
    talk = begun("A copy of it all")
    assert (of(talk, Export), of(talk, Erase)) == (1, 0)
    assert talk.state == "home.pick"


def test_erasing_is_asked_about_once_more_and_says_what_it_takes_away():
    talk = begun("Erase it all")
    assert talk.state == "erase.sure"
    assert "can't be undone" in talk.last
    assert of(talk, Erase) == 0


def test_sure_erases_and_says_that_care_still_holds():
    talk = begun("Erase it all", "Yes, erase it all")
    assert of(talk, Erase) == 1
    told = next(effect for effect in talk.effects if isinstance(effect, Say) and "It is all erased" in effect.text)
    assert told.must_arrive
    assert "getting care still holds" in told.text
    assert DAYS_KEPT == 7
    assert "gone from them within seven days" in told.text


@pytest.mark.parametrize("replies", [("Erase it all", "No, keep it"), ("Nothing",)])
def test_no_keeps_everything(replies: tuple[str, ...]):
    talk = begun(*replies)
    assert (of(talk, Erase), of(talk, Export)) == (0, 0)
    assert "Kept as it is" in heard(talk)


@pytest.mark.parametrize("reply", ["skip", "maybe", "ok i guess", "hmm"])
def test_nothing_vague_erases(reply: str):
    assert of(begun("Erase it all", reply), Erase) == 0


@pytest.mark.parametrize("reply", ["skip", "stop"])
def test_leaving_it_changes_nothing(reply: str):
    talk = begun(reply)
    assert (of(talk, Erase), of(talk, Export)) == (0, 0)


def test_stopping_half_way_says_that_nothing_was_changed():
    assert "nothing was changed" in begun("Erase it all", "stop").last


def test_it_opens_over_questions_that_otherwise_come_first():
    talk = Talk(BOOK["welcome"].flow, known={"today": "2026-03-02"}, book=BOOK).say("Yes, keep them", "my data")
    assert talk.state == "my_data.what"


def test_it_opens_over_the_pain_questions():
    talk = Talk(BOOK["pain"].flow, known=CHECKED, book=BOOK).say("my data")
    assert talk.state == "my_data.what"


@pytest.mark.parametrize("words", ["/export", "export", "send me my data"])
def test_export_leads_straight_to_the_copy(words: str):
    assert of(Talk(BOOK["home"].flow, known=CHECKED, book=BOOK).say(words), Export) == 1


@pytest.mark.parametrize("words", ["/erase", "erase", "delete my data"])
def test_erase_leads_straight_to_the_question(words: str):
    talk = Talk(BOOK["home"].flow, known=CHECKED, book=BOOK).say(words)
    assert talk.state == "erase.sure"
    assert of(talk, Erase) == 0


def test_export_in_the_middle_of_something_leaves_it_to_be_picked_up():
    talk = Talk(BOOK["about_you"].flow, known=CHECKED, book=BOOK).say("/export", "go on")
    assert of(talk, Export) == 1
    assert talk.state == "about_you.height"


def test_before_anything_is_kept_there_is_nothing_to_copy():
    assert "Nothing is kept about you" in heard(Talk(BOOK["welcome"].flow, known={"today": "2026-03-02"}, book=BOOK).say("/export"))


RIGHTS = {
    "erase": ("delete me", "forget me", "erase everything", "wipe my data", "please delete all my data", "I want my data deleted",
              "can you delete my account", "get rid of my data", "remove all my info", "erase all my answers", "delete all"),
    "reminder_times": ("stop all", "unsubscribe", "no more messages", "don't text me again", "leave me alone", "quit messaging me",
                       "stop sending me messages", "turn off reminders", "opt out", "end all reminders", "unsubscribe me"),
    "my_data": ("what do you know about me", "what have you got on me", "what data do you have on me", "show me my data",
                "what do you store about me", "what info do you have about me", "what is saved about me", "give me my data",
                "can I see my data", "I want a copy of my data", "my data")}
PLACES = (("home", "pick"), ("squat_look", "plain_rounds"), ("knee_to_wall", "left_1"), ("squat_look", "did"), ("bird_dog", "left_do"),
          ("safety_check", "bladder"), ("film", "video"), ("squat_days", "rest"), ("whereabouts", "zone"), ("", ""))


@pytest.mark.parametrize("right", RIGHTS)
@pytest.mark.parametrize(("flow", "key"), PLACES)
def test_rights_are_done_in_any_words_and_at_every_question(right, flow, key):
    """At a choice, a number, a movement, a hold, a safety question, a picture, days, a place, and while nothing runs."""
    frame = Frame(flow, BOOK[flow].flow.version, "1", state=key) if flow else None
    session = Session(stack=(frame,) if frame else (), runs=1, idle=not flow)
    for words in RIGHTS[right]:
        after = step(BOOK, session, Typed(words), Known(CHECKED, NOW)).session
        assert [one.flow for one in after.stack[-1:]] == [right], words


def test_data_are_erased_in_any_words_over_the_pain_questions_too():
    session = Session(stack=(Frame("pain", BOOK["pain"].flow.version, "1", state="bad"),), runs=1)
    for words in (*RIGHTS["erase"], *RIGHTS["my_data"]):
        assert step(BOOK, session, Typed(words), Known(CHECKED, NOW)).session.top.flow in ("erase", "my_data"), words
