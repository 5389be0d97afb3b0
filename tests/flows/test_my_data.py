"""My data, lived through: a copy of it all, or all of it gone."""

import pytest

from companion.conversation.effects import Erase, Export, Say
from companion.operate.backup import DAYS_KEPT
from flows.catalogue import BOOK
from flows.my_data import FLOW
from tests.drive import CHECKED, Talk


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
