"""Which earlier answer a message puts right where no rule is sure: up to three are offered, and the one that is tapped changes."""

import pytest

from companion.conversation.corrections import PUTS_RIGHT_LONGEST, candidates, corrections, several_of
from companion.conversation.effects import Record, Say
from companion.conversation.events import Tapped, Typed
from companion.conversation.naming import ago
from companion.conversation.step import step
from companion.language import places
from flows.catalogue import BOOK
from tests.corpus.turns import Turn, draft_at

SHORT = Turn("squat_look/change_3_depth", "correction", "change_1_depth=parallel", "one of the depths is wrong, it was parallel", False)


def asked(turn):
    """Return the session, the message and its buttons after a line."""
    draft = draft_at(turn)
    taken = step(BOOK, draft.session, Typed(turn.text), draft.known)
    said = [one for one in taken.effects if isinstance(one, Say)][-1]
    return draft, taken.session, said, [tap for row in said.buttons for tap in row]


def test_several_that_may_be_meant_are_buttons_that_read_apart():
    _, session, said, taps = asked(SHORT)
    assert session.aside.about == "corrected"
    assert said.text == "Which should change?"
    labels = [tap.label for tap in taps]
    assert labels[-1] == "None of these"
    assert 3 <= len(labels) == len(set(labels)) <= 4


def test_the_one_that_is_tapped_changes_and_no_other():
    draft, session, _, taps = asked(SHORT)
    several = several_of(draft, SHORT.text)
    for tap, one in zip(taps, several, strict=False):
        taken = step(BOOK, session, Tapped(tap.data), draft.known)
        rows = [row for row in taken.effects if isinstance(row, Record) and row.status == "ok"]
        assert [(row.key, row.value) for row in rows] == [(draft.log_name(draft.compiled.stops[one.key]), one.new.value)]
        assert taken.session.aside is None


def test_none_of_these_changes_nothing():
    draft, session, _, taps = asked(SHORT)
    taken = step(BOOK, session, Tapped(taps[-1].data), draft.known)
    assert not [row for row in taken.effects if isinstance(row, Record)]
    assert taken.session.top == session.top


@pytest.mark.parametrize(("state", "value", "text"), [
    ("reminder_times/quiet_to", "quiet_from=22:00", "quiet should start at ten not nine"),
    ("whereabouts/stay", "zone=Europe/Lisbon", "I said Madrid but it is Lisbon where I am"),
    ("about_you/mass", "height=181 cm", "made myself too tall, 181")])
def test_times_places_and_numbers_are_found_among_the_words(state, value, text):
    key, _, new = value.partition("=")
    found = candidates(draft_at(Turn(state, "correction", value, text, False)), text)
    values = {str(one.new.value).removesuffix(".0") for one in found if one.key == key and one.new}
    assert new.removesuffix(" cm") in values


def test_the_open_question_may_be_what_is_put_right():
    turn = Turn("squat_look/again_depth", "correction", "again_depth=parallel", "watched it once more and it goes at level", False)
    assert any(one.key == "again_depth" and one.new.value == "parallel" for one in candidates(draft_at(turn), turn.text))


def test_what_stands_already_is_no_correction():
    draft = draft_at(SHORT)
    assert all(one.new is None or one.new.value != one.old for one in candidates(draft, SHORT.text))
    assert len(corrections(draft, SHORT.text)) <= 3


def test_a_number_that_cannot_be_one_here_is_not_offered_as_one():
    """Nobody has squatted for 174 years: it is the height."""
    taken = asked(Turn("about_you/years", "correction", "height=174 cm", "made myself too tall, 174", False))
    assert taken[1].aside.about == "corrected"
    assert "174" in taken[2].text or any("174" in tap.label for tap in taken[3])


LISBON = Turn("whereabouts/stay", "correction", "zone=Lisbon", "I said Madrid but it is Lisbon where I am", False)


def test_misspelt_places_are_looked_for_once_a_message(monkeypatch):
    """Each look goes through some 200,000 names: in every few words of a long message that held the bot up for a minute."""
    looks = []
    extract = places.process.extract
    monkeypatch.setattr(places.process, "extract", lambda *args, **more: looks.append(args) or extract(*args, **more))
    draft = draft_at(LISBON)
    assert "zone=Europe/Lisbon" in [one.name for one in candidates(draft, LISBON.text)]
    assert len(looks) <= 1


def test_a_long_message_puts_nothing_right():
    draft = draft_at(LISBON)
    assert candidates(draft, LISBON.text + " indeed" * PUTS_RIGHT_LONGEST) == []


def test_what_may_be_put_right_is_worked_out_once_a_message(monkeypatch):
    draft, found = draft_at(SHORT), []
    ranked = candidates
    monkeypatch.setattr("companion.conversation.corrections.candidates", lambda *args: found.append(args) or ranked(*args))
    assert corrections(draft, SHORT.text) == corrections(draft, SHORT.text)
    assert len(found) == 1


@pytest.mark.parametrize(("text", "said"), [
    ("the one before was level", 1), ("my answer two questions ago should be the earliest one", 2), ("undo my last answer", 1),
    ("the last but one was parallel", 2), ("three sets ago it held", 3), ("left was nine", 0), ("i did it before breakfast", 0)])
def test_how_many_answers_ago_is_heard(text, said):
    assert ago(text) == said


def test_the_set_before_is_the_latest_answered_question_of_the_same_kind():
    turn = Turn("squat_look/change_3_depth", "correction", "change_2_depth=parallel", "the set before was level", False)
    found = candidates(draft_at(turn), turn.text)
    assert {one.key for one in found if ".ago_of_kind_True" in one.weights} == {"change_2_depth"}
