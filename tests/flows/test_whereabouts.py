"""Where the lifter is: a city, a shared location, for how long; and words that only look like a place."""

from __future__ import annotations

import pytest

from companion.calendar.preferences import zone_from
from companion.conversation.condition import Value
from companion.conversation.effects import Replan
from companion.conversation.events import Sent
from flows.catalogue import BOOK
from flows.whereabouts import FLOW, is_place
from tests.drive import NOW, UNCHECKED, Talk
from tests.table import each_row

AT_HOME: dict[str, Value] = {**UNCHECKED, "welcome.zone": "Europe/Lisbon"}


def menu() -> Talk:
    return Talk(BOOK["home"].flow, known=AT_HOME, book=BOOK)


def begun() -> Talk:
    return Talk(FLOW, known=AT_HOME, book=BOOK)


def heard(talk: Talk) -> str:
    return "\n".join(say.text for say in talk.says)


def test_away_this_week_is_one_line_and_one_tap():
    talk = menu().say("I'm in New York this week")
    assert talk.last == "I make it 13:05 on Monday there. Is that right?"
    talk.tap("Yes")
    assert (talk.found["zone.away"], talk.found["zone.until"]) == ("America/New_York", "2026-03-08")
    assert any(isinstance(effect, Replan) for effect in talk.effects)
    assert "until Sunday 8 March" in heard(talk)
    assert talk.state == "home.pick"


def test_after_the_last_day_the_home_zone_counts_again():
    talk = menu().say("I'm in New York this week").tap("Yes")
    assert zone_from(talk.known, NOW) == "America/New_York"
    assert zone_from(talk.known, NOW.replace(day=9)) == "Europe/Lisbon"


@pytest.mark.parametrize(("typed", "until"), [
    ("i'm in madrid for a week", "2026-03-09"), ("i am in madrid for two weeks", "2026-03-16"),
    ("I'm in Madrid until Sunday", "2026-03-08"), ("I'm in Madrid until Friday", "2026-03-06"),
    ("i'm in madrid till 14 march", "2026-03-14"), ("I'll be in Madrid for ten days", "2026-03-12"),
    ("i'm in New York for 3 weeks", "2026-03-23")])
def test_how_long_is_not_asked_where_it_was_said(typed: str, until: str):
    talk = menu().say(typed, "yes")
    assert talk.found["zone.until"] == until
    assert talk.state == "home.pick"


@pytest.mark.parametrize("typed", ["i'm in madrid until the job is done", "i'm in madrid until yesterday", "i'm in madrid for a few weeks"])
def test_an_end_that_is_not_clear_is_asked_for(typed: str):
    assert menu().say(typed, "yes").state == "whereabouts.stay"


@pytest.mark.parametrize(("label", "until"), [("This week", "2026-03-08"), ("Seven days", "2026-03-09"), ("Two weeks", "2026-03-16")])
def test_else_it_is(label: str, until: str):
    talk = menu().say("i'm in lisbon", "yes")
    assert talk.state == "whereabouts.stay"
    assert talk.tap(label).found["zone.until"] == until


def test_a_move_has_no_end():
    talk = menu().say("I've moved to Berlin", "yes").tap("From now on")
    assert (talk.found["zone.away"], talk.found["zone.until"]) == ("Europe/Berlin", "")
    assert zone_from(talk.known, NOW.replace(year=2027)) == "Europe/Berlin"


def test_a_shared_location_gives_the_zone_and_is_not_kept_itself():
    talk = begun()
    talk.send(Sent("location", "38.72,-9.14"))
    assert talk.state == "whereabouts.right"
    assert talk.answers["zone"] == "Europe/Lisbon"
    assert "38.72" not in repr(talk.effects)


@pytest.mark.parametrize("place", ["", "0,0", "91,200", "north,south", "1,2,3", "nan,nan", "inf,0"])
def test_a_location_that_is_none_is_asked_again(place: str):
    talk = begun()
    talk.send(Sent("location", place))
    assert talk.state == "whereabouts.zone"
    assert "zone.away" not in talk.found


def test_a_wrong_clock_is_asked_again_and_nothing_kept():
    talk = menu().say("I'm in New York this week", "no")
    assert talk.state == "whereabouts.zone"
    assert "zone.away" not in talk.found
    talk.say("porto", "yes")
    assert talk.found["zone.away"] == "Europe/Lisbon"


@each_row("words", ["position", "place", "bed", "pain", "agony", "tears", "good shape", "shock", "a meeting", "the gym",
                                   "front of the wall", "a lot of trouble", "doubt", "no rush", "two minds", "between"])
def test_a_state_to_be_in_is_no_place(words: str):
    assert not is_place(words)
    assert BOOK.sentence(f"i'm in {words}") is None


@pytest.mark.parametrize("words", ["Lisbon", "new york", "São Paulo", "Bath", "Nice", "reading this week", "madrid now"])
def test_a_city_is_one(words: str):
    found = BOOK.sentence(f"I'm in {words}")
    assert found is not None
    assert found[0] == "whereabouts"
