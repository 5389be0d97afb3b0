"""Priming trials pooled of those who agreed: for each lifter, and for a coach their own lifters by name."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.app.dispatch import carry_out
from companion.coach.caseload_page import caseload_html
from companion.coach.pooled_page import own_say, pooled_rows, pooled_trial
from companion.conversation.effects import Show
from companion.record import coaching
from companion.record.turn import Turn
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago


def tried(room: Room, name: str, pairs: int = 3, agrees: str = "yes") -> int:
    """A lifter with pairs of squat days of the trial, and their word on pooling."""
    sam = room.lifter(name, answered=80)
    room.run(sam, "trial", {"join": "yes"}, 70)
    for n in range(2 * pairs):
        asked = (NOW - timedelta(days=60 - n)).date().isoformat()
        room.run(sam, "squat_day", {"lot": "draw"}, 60 - n, asked=asked)
        room.run(sam, "squat_after", {"done": "yes", "kept": "kept", "back": "still", "load": 80.0,
                                       "felt": float((3 * n + len(name)) % 7)}, 60 - n, asked=asked)
    if agrees:
        room.run(sam, "share_trial", {"agree": agrees}, 5)
    return sam


def test_each_who_agreed_hears_their_own_alone_and_with_the_group(room):
    lifters = [tried(room, name) for name in ("Sam", "Mia", "Lou", "Alexis")]
    carry_out(Turn(room.db, lifters[0], NOW, BOOK), [Show("pooled_trial")])
    ((said,),) = room.db.execute("select text from outbox where person = ? order by id desc limit 1", (lifters[0],)).fetchall()
    assert "Yours alone: " in said
    assert "With the help of 4 lifters: " in said
    assert not any(name in said for name in ("Mia", "Lou", "Alexis"))


@pytest.mark.parametrize("last_word", ["no", ""])
def test_who_did_not_agree_or_took_it_back_is_not_pooled(room, last_word):
    lifters = [tried(room, name) for name in ("Sam", "Mia", "Lou", "Alexis")]
    other = tried(room, "Noor", agrees="yes" if last_word else "")
    if last_word:
        assert other in pooled_trial(room.db).pooled
        room.run(other, "share_trial", {"agree": last_word}, 1)
    assert set(pooled_trial(room.db).pooled) == set(lifters)
    assert "Nothing to pool yet" in own_say(room.db, other).text


def test_a_coach_reads_their_own_lifters_by_name_and_of_the_rest_the_group_only(room):
    lifters = [tried(room, name) for name in ("Sam", "Mia", "Lou", "Alexis")]
    bea = room.a_coach("Bea")
    coaching.link(room.db, lifters[0], bea, ago(3))
    assert [term for term, _ in pooled_rows(room.db, bea)] == ["4 lifters who agreed", "Sam"]
    assert len(pooled_rows(room.db, room.coach)) == 5
    page = caseload_html(room.db, bea, NOW)
    assert "Priming trials, pooled" in page
    assert "Alexis" not in page


def test_too_few_pool_nothing(room):
    sam = tried(room, "Sam")
    assert pooled_rows(room.db, room.coach) == ()
    assert "it takes 4 lifters who agree" in own_say(room.db, sam).text
    assert "Priming trials, pooled" not in caseload_html(room.db, room.coach, NOW)
