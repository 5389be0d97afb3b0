"""Not now: one of three later times, and no more than that."""

from __future__ import annotations

import pytest

from companion.conversation.effects import Began, Remind
from companion.conversation.events import Tapped
from companion.conversation.prompt import start_payload
from flows.catalogue import BOOK
from flows.retest_later import FLOW
from tests.drive import UNCHECKED, Talk


def begun() -> Talk:
    return Talk(FLOW, known=UNCHECKED, book=BOOK)


@pytest.mark.parametrize(("label", "day", "words"), [
    ("Tomorrow", "2026-03-03", "Tuesday 3 March"), ("In three days", "2026-03-05", "Thursday 5 March"),
    ("In a week", "2026-03-09", "Monday 9 March")])
def test_each_later_time_is_kept_and_said_back(label: str, day: str, words: str):
    talk = begun().tap(label)
    assert [(effect.kind, effect.flow, effect.date) for effect in talk.effects if isinstance(effect, Remind)] == [("retest", "retest", day)]
    assert any(f"Good: {words}." in say.text for say in talk.says)
    assert talk.state == "home.pick"


def test_three_are_offered():
    assert [tap.label for tap in begun().says[0].buttons[0] + begun().says[0].buttons[1]][:3] == ["Tomorrow", "In three days", "In a week"]


def test_tomorrow_typed_is_an_answer_and_not_a_stop():
    assert any(isinstance(effect, Remind) for effect in begun().say("tomorrow").effects)


def test_skipped_or_stopped_nothing_is_planned():
    for words in ("skip", "stop"):
        assert not any(isinstance(effect, Remind) for effect in begun().say(words).effects)


def test_its_button_begins_it_and_its_name_does_not():
    talk = Talk(BOOK["home"].flow, known=UNCHECKED, book=BOOK)
    assert BOOK.command("retest_later") is None
    talk.send(Tapped(start_payload("retest_later")))
    assert [effect.flow for effect in talk.effects if isinstance(effect, Began)][-1] == "retest_later"


def test_pain_is_heard_in_it():
    assert begun().say("my back hurts").state == "pain.where"
