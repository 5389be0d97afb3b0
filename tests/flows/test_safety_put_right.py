"""A no of the safety check that should have been a yes, told in words: the sign is asked about at once, and nothing else changes."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from companion.conversation.corrections import _ask_of
from companion.conversation.draft import Draft
from companion.conversation.effects import Record
from companion.conversation.flow import Ask, Known
from companion.conversation.invitations import ASKED_SINCE
from companion.conversation.session import Session
from companion.screening.safety import Level
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW, UNCHECKED, Talk

NOS = ("no", "no", "no", "no", "no")


def at_work(*said: str) -> Talk:
    return Talk(BOOK["knee_to_wall"].flow, known={**CHECKED, "safety.checked.today": "yes"}, book=BOOK).say(*said)


def in_check(*said: str) -> Talk:
    return Talk(BOOK["safety_check"].flow, known=UNCHECKED, book=BOOK).say(*said)


@pytest.mark.parametrize(("words", "heard"), [
    ("i answered no but actually yes about cancer", "cancer_bone"), ("i meant yes to the fall", "fall"),
    ("actually i meant yes to the first question", "bladder_bowel saddle"), ("i put no for pregnant but thats wrong", "pregnancy")])
def test_after_the_check_the_sign_is_asked_about_and_the_day_is_closed(words: str, heard: str):
    talk = at_work(words)
    assert talk.session.top.flow == "signs"
    assert talk.session.top.got["heard"] == heard
    assert Level(str(talk.found["safety.level"])) > Level.GO


def test_after_the_check_all_it_asks_about_is_offered_where_none_is_named():
    talk = at_work("i need to change a safety answer")
    assert talk.state == "signs.which"
    labels = {tap.label for row in talk.says[-1].buttons for tap in row}
    assert {"Bladder or bowel trouble", "Cancer or weak bones", "Pregnancy or a birth", "No, none of these"} <= labels


def test_before_any_check_such_words_are_nobodys():
    talk = Talk(BOOK["home"].flow, known=UNCHECKED, book=BOOK).say("i meant yes on the cancer question")
    assert not any(frame.flow == "signs" for frame in talk.session.stack)


@pytest.mark.parametrize(("words", "heard"), [
    ("wait i meant yes to the chest one", "chest"), ("i meant yes for the second question", "chest"),
    ("oops i meant yes on the fall", "fall")])
def test_in_the_check_it_is_the_named_question_and_not_the_open_one_that_is_answered(words: str, heard: str):
    talk = in_check(*NOS, words)
    assert talk.session.top.got["heard"] == heard
    assert not any(isinstance(one, Record) and one.key == "history_care" for one in talk.effects)


@pytest.mark.parametrize("words", ["sorry the one before was yes", "no i meant yes", "i said no but should be yes"])
def test_in_the_check_the_question_before_is_asked_again_where_none_is_named(words: str):
    assert in_check(*NOS, words).state == "safety_check.history_signs"


def test_pain_answered_too_low_is_asked_about():
    assert at_work("i said 0 pain but it was more like 5").state == "pain.where"


def test_no_consent_and_no_question_of_pain_or_a_sign_is_put_right_by_a_correction_from_elsewhere():
    draft = Draft(BOOK, Session(), Known({}, NOW), [])
    for name, compiled in BOOK.flows.items():
        if compiled.flow.policy.holds:
            asks = [stop for stop in compiled.stops.values() if isinstance(stop, Ask)]
            assert all(_ask_of(draft, name, ask.log_as or ask.key) is None for ask in asks), name


class Invited(Talk):
    """Somebody to whom a reminder has come since the last question."""

    def _known(self) -> Known:
        return replace(super()._known(), invited=lambda: ["go.limit_over"])


@pytest.mark.parametrize("reply", ["yes", "no", "not sure"])
@pytest.mark.parametrize("answered", [(), ("no",)])
def test_what_may_answer_a_reminder_that_came_since_is_no_answer_about_safety(reply: str, answered: tuple[str, ...]):
    talk = Talk(BOOK["safety_check"].flow, known=UNCHECKED, book=BOOK).say(*answered)
    since = Invited(BOOK["safety_check"].flow, known=UNCHECKED, book=BOOK)
    since.session, since.effects = talk.session, []
    since.say(reply)
    assert since.state == talk.state
    assert since.last.startswith(ASKED_SINCE)
    assert not any(isinstance(one, Record) for one in since.effects)


@pytest.mark.parametrize("reply", ["yes", "no"])
@pytest.mark.parametrize("tapped", [False, True])
def test_a_bare_yes_or_no_of_hours_later_answers_no_question_about_safety_and_a_tap_on_it_does(reply: str, tapped: bool):
    talk = Talk(BOOK["home"].flow, known=UNCHECKED, book=BOOK).say("safety check")
    talk.now += timedelta(hours=26)
    if tapped:
        talk.tap(reply.title())
    else:
        talk.say(reply)
    assert bool(talk.answers) is tapped
    if not tapped:
        assert talk.last.startswith("You were in the middle of something: Safety check")
        assert talk.say("go on").state == "safety_check.bladder"
