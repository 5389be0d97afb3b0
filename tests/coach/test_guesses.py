"""Expectations of a retest, and the score of coach and rules."""

from __future__ import annotations

import pytest

from companion.coach.actions import act
from companion.coach.caseload_page import caseload_html
from companion.coach.views import show
from companion.conversation.effects import Act
from companion.record import coaching, reminders
from companion.record.guesses import guess_score
from companion.record.turn import Turn
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room, ago
from tests.coach.gym import KIM, SAM


def expects(room: Room, lifter: int, value: str, days: float, coach: int = 0) -> list[tuple[int, str]]:
    turn = Turn(room.db, coach or room.coach, ago(days), BOOK)
    return [(one.to, one.say.text) for one in act(turn, Act("guess", str(lifter), value))]


def retested(room: Room, lifter: int, change: str, days: float, home: str = "as_planned") -> None:
    room.find(lifter, "home_work", home, days)
    room.find(lifter, "retest.change", change, days)


def test_the_lifter_is_not_told_what_is_expected(room):
    sam = room.lifter()
    assert expects(room, sam, "within_error", 1) == [(room.coach, "Sam: you expect no change beyond measurement error.")]


def test_coach_and_rules_are_scored_by_what_came_of_it(room):
    sam, mia = room.lifter("Sam"), room.lifter("Mia")
    expects(room, sam, "better", 30)
    retested(room, sam, "better", 20, "hardly")
    expects(room, mia, "better", 30)
    retested(room, mia, "within_error", 20, "hardly")
    assert guess_score(room.db, room.coach) == (2, 1, 1)
    assert expects(room, mia, "worse", 10)[0][1] == "Mia: you expect worse. So far you were right about 1 of 2 retests; the rules about 1."
    retested(room, mia, "worse", 5)
    assert guess_score(room.db, room.coach) == (3, 2, 1)
    assert "you were right about 2 of 3 retests; the rules about 1." in caseload_html(room.db, room.coach, NOW)


def test_only_the_last_expectation_before_a_retest_counts_and_none_after_it_or_of_another_coach(room):
    sam, bea = room.lifter(), room.a_coach("Bea")
    coaching.link(room.db, sam, bea, ago(50))
    expects(room, sam, "worse", 30)
    expects(room, sam, "better", 25)
    expects(room, sam, "worse", 24, bea)
    retested(room, sam, "better", 20)
    retested(room, sam, "worse", 10)
    expects(room, sam, "worse", 5)
    assert guess_score(room.db, room.coach) == (1, 1, 1)
    assert guess_score(room.db, bea) == (1, 0, 1)


def test_a_retest_that_cannot_say_counts_for_nobody(room):
    sam = room.lifter()
    expects(room, sam, "better", 30)
    retested(room, sam, "cannot_say", 20)
    assert guess_score(room.db, room.coach).words == ""


async def test_one_tap_on_the_page_of_a_lifter_with_a_retest_to_come_states_what_is_expected(gym):
    await gym.linked()
    sam = gym.id_of(SAM)
    page = await gym.say("find sam", who=KIM)
    assert "Retest: better" not in [tap.label for message in gym.shown for row in message.buttons for tap in row]
    await gym.tap(KIM, f"go.coach_act.{sam}-retest")
    await gym.say("2026-03-20", who=KIM)
    page = await gym.say("Retest: same", who=KIM)
    assert page[-1] == "sam: you expect no change beyond measurement error."
    assert "You expect of the retest: no change beyond measurement error" in (await gym.say("find sam", who=KIM))[-1]
    assert (await gym.say("Retest: worse", who=KIM))[-1] == "sam: you expect worse."
    assert "expect" not in " ".join(gym.heard(SAM))


@pytest.mark.parametrize("what", ["guess", "guess-", "guess-60"])
async def test_an_expectation_that_is_none_changes_nothing(gym, what):
    await gym.linked()
    await gym.tap(KIM, f"go.coach_act.{gym.id_of(SAM)}-{what}")
    assert gym.heard(KIM)[-1].lower().endswith("nothing has changed.") or gym.heard(KIM)[-1] == "Nothing has changed for sam."
    assert gym.db.execute("select count(*) from acts where what = 'guess'").fetchone() == (0,)


def test_a_retest_that_is_due_is_answered_with_a_row_to_expect_by(room):
    sam = room.lifter()
    reminders.add(room.db, sam, "retest", "retest", f"{ago(1):%Y-%m-%d %H:%M}", "UTC", ago(1), ago(20))
    (say,) = show(Turn(room.db, room.coach, NOW, BOOK), "since", "")
    assert ("Retest: better", "Retest: same", "Retest: worse") in [tuple(tap.label for tap in row) for row in say.buttons]
