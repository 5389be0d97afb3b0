"""At most three messages at once; the rest on "more"."""

import pytest

from companion.conversation.effects import Say, Tap
from companion.conversation.events import Tapped, Typed
from companion.conversation.flow import Known
from companion.conversation.pages import MORE_PAGES, few, kept
from companion.conversation.session import Session
from companion.conversation.step import step
from flows.catalogue import BOOK
from tests.conversation.test_cards import GROWN, NOW, at

pytestmark = pytest.mark.unit
ASKS = Say("And now?", ((Tap("Yes", "x"),),))
WHY = ((Tap("Why?", "go.why"),),)


def page(text: str) -> Say:
    return Say(text, WHY, page=True)


def test_three_messages_stay_as_they_are():
    said = (Say("One."), Say("Two."), ASKS)
    assert few(said) == (said, ())


def test_short_neighbours_are_joined_before_anything_waits():
    sent, held = few((Say("One."), Say("Two."), Say("Three."), ASKS))
    assert [one.text for one in sent] == ["One.\n\nTwo.\n\nThree.", "And now?"]
    assert not held


def test_pages_wait_and_the_question_has_a_button_for_them():
    sent, held = few((*(page(f"Page {n}.") for n in range(5)), ASKS))
    assert [one.text for one in sent] == ["Page 0.", "Page 1.", "And now?"]
    assert [one.text for one in held] == ["Page 2.", "Page 3.", "Page 4."]
    assert sent[-1].buttons[-1] == (Tap("More (3)", MORE_PAGES),)


def test_what_must_not_wait_is_sent_first_of_all():
    stays = Say("No drill until you have been seen.", WHY)
    sent, held = few((page("Page 0."), page("Page 1."), page("Page 2."), stays, ASKS))
    assert [one.text for one in sent] == ["Page 0.", stays.text, "And now?"]
    assert len(held) == 2


def test_messages_of_a_timed_hold_count_by_their_moment():
    said = (Say("Get ready.", WHY), Say("Hold.", WHY, after=5), Say("Time.", WHY, after=15), Say("How was it?", WHY, after=16))
    assert few(said) == (said, ())


@pytest.mark.parametrize("event", [Typed("more"), Typed("show more"), Tapped(MORE_PAGES)])
def test_more_shows_what_waits_and_the_question_stands_again(event):
    waiting = at("outcome", "why")._replace(more=kept((page("Page 2."), page("Page 3."))))
    taken = step(BOOK, Session.loads(waiting.dumps()), event, Known(GROWN, NOW))
    assert [effect.text for effect in taken.effects if isinstance(effect, Say)][:2] == ["Page 2.", "Page 3."]
    assert taken.session.top.state == "why"
    assert not taken.session.more


def test_an_answer_drops_what_waited():
    waiting = at("about_you", "years")._replace(more=kept((page("Page 2."),)))
    assert not step(BOOK, waiting, Typed("3"), Known(GROWN, NOW)).session.more
