"""What a person wants in words that no rule foresaw: it is asked about, and done once they say so."""

import pytest

from companion.conversation.effects import Say
from companion.conversation.events import Typed
from companion.conversation.flow import Known
from companion.conversation.step import step
from flows.catalogue import BOOK
from tests.corpus.turns import session_at
from tests.drive import NOW


def typed(state, *texts):
    """Return the session after these texts at a state, and all that was said."""
    session, facts = session_at(state)
    said = []
    for text in texts:
        taken = step(BOOK, session, Typed(text), Known(facts, NOW))
        session = taken.session
        said += [one.text for one in taken.effects if isinstance(one, Say)]
    return session, said


@pytest.mark.parametrize(("state", "text", "question"), [
    ("knee_to_wall/left_limit", "not feeling it tonight folks, im out", "Do you want to stop here?"),
    ("about_you/years", "kindly cease those evening messages", "Do you want to have no more reminders?"),
    ("hinge_to_squat/hinge", "show how far along i am", "Do you want to go to How far I am?")])
def test_a_wish_in_other_words_is_asked_about_before_it_is_done(state, text, question):
    session, said = typed(state, text)
    assert session.aside.about == "wish"
    assert said[-1] == question
    assert session.top.state == state.split("/")[1]


def test_a_wish_is_done_once_it_is_confirmed():
    session, _ = typed("knee_to_wall/left_limit", "not feeling it tonight folks, im out", "yes")
    assert session.aside is None
    assert not session.stack
    assert session.parked


def test_a_wish_that_is_denied_leaves_the_question_open():
    session, said = typed("knee_to_wall/left_limit", "not feeling it tonight folks, im out", "no")
    assert (session.aside, session.top.state) == (None, "left_limit")
    assert said[-1].startswith("Then once more.")


def test_an_answer_instead_of_a_yes_counts_as_the_answer():
    session, _ = typed("knee_to_wall/left_limit", "not feeling it tonight folks, im out", "calf")
    assert session.aside is None
    assert session.top.got["left_limit"] == "calf"


@pytest.mark.parametrize("state", ["safety_check/bladder", "pain/where"])
def test_no_wish_is_guessed_where_health_is_asked_about(state):
    flow, key = state.split("/")
    key = key if key in BOOK[flow].stops else next(name for name, stop in BOOK[flow].stops.items() if getattr(stop, "safety", False))
    session, _ = typed(f"{flow}/{key}", "not feeling it tonight folks, im out")
    assert session.aside is None or session.aside.about != "wish"


def test_words_of_ones_own_that_are_a_wish_are_asked_about():
    session, said = typed("squat_after/note", "what did my tests come to")
    assert session.aside.about == "wish"
    assert said[-1] == "Do you want to see your results?"
