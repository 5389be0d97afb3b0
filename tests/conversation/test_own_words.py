"""Where words of one's own are asked for, what is likelier something else is said back before it is kept."""

from __future__ import annotations

import pytest

from tests.flows.test_squat_after import after


def at_the_note():
    return after(**{"bar.bar": "none"}).say("yes", "feel", "kept", "no")


@pytest.mark.parametrize("text", ["ta very much for asking", "which words do you understand", "185 lbs, typed 158"])
def test_what_is_likelier_something_else_is_asked_about_and_kept_only_after_a_yes(text):
    talk = at_the_note().say(text)
    assert talk.state == "squat_after.note"
    assert "note" not in talk.answers
    asked = talk.last
    assert asked.startswith(("Shall I keep “", "Which should change?", "I understand: ")), asked


@pytest.mark.parametrize("text", ["gym was packed, slept badly", "up 2.5 each session until i stall", "stopped after two, no time"])
def test_a_note_is_kept_as_it_is(text):
    talk = at_the_note().say(text)
    assert talk.answers["note"] == text


def test_a_no_asks_for_the_note_again_and_a_yes_keeps_it():
    talk = at_the_note().say("ta very much for asking")
    assert talk.last == "Shall I keep “ta very much for asking” as your answer?"
    assert "note" not in talk.tap("No").answers
    assert talk.state == "squat_after.note"
    assert talk.say("ta very much for asking").tap("Yes").answers["note"] == "ta very much for asking"
