"""Two lifters, or two days of one, side by side."""

from __future__ import annotations

import pytest

from companion.coach.views import show
from companion.record.turn import Turn
from flows.catalogue import BOOK
from tests.coach.caseload_rows import NOW, Room
from tests.coach.pages import ask, taps


def measured(room: Room, name: str) -> int:
    """A lifter whose left calf was measured on two days, by the same method."""
    sam = room.lifter(name)
    for days, wall in ((40, 7.0), (2, 12.0)):
        room.run(sam, "knee_to_wall", {"method": "tape", "left_1": wall, "left_2": wall, "left_limit": "calf"}, days)
    return sam


def test_one_lifter_s_two_days_are_compared_with_the_error_of_the_test(room):
    sam = measured(room, "Sam")
    (choice,) = ask(room, "compare", sam)
    (days, *_) = taps(choice)
    assert (days.label, days.data) == ("31 Jan and 10 Mar", f"go.compare.{sam}-2026-01-31-2026-03-10")
    (say,) = ask(room, "compare", days.data.removeprefix("go.compare."))
    assert "Knee to wall, left: 7 cm then, 12 cm now. 5 cm more than before, which is beyond measurement error" in say.text
    assert room.looks(sam) == ["Ada: numbers, two days compared"]


def test_two_lifters_stand_side_by_side_and_both_read_that_they_were_looked_at(room):
    sam, mia = measured(room, "Sam"), room.lifter("Mia")
    room.find(mia, "load.limit", "64", 5)
    (say,) = ask(room, "compare", "sam and mia")
    assert "· Knee to wall, left: 12 cm; not measured" in say.text
    assert "· Load: none set; at most 64 kg" in say.text
    assert room.looks(sam) == room.looks(mia) == ["Ada: numbers, compared"]


@pytest.mark.parametrize("asked", ["sam and nobody", "nobody", "sam, mia and lou and kim", "1-2026-99-99-x", "-1"])
def test_a_comparison_of_nobody_in_particular_says_how_to_ask(room, asked):
    measured(room, "Sam")
    assert "Name two of your lifters" in ask(room, "compare", asked)[0].text


def test_where_a_name_may_be_several_each_pair_is_offered_and_only_two_of_one_s_own_are_compared(room):
    tom, tim, mia = room.lifter("Tom Ahl"), room.lifter("Tom Berg"), measured(room, "Mia")
    (which,) = ask(room, "compare", "tom and mia")
    assert [(tap.label, tap.data) for tap in taps(which)[:2]] == [
        ("Tom Ahl and Mia", f"go.compare.{tom}+{mia}"), ("Tom Berg and Mia", f"go.compare.{tim}+{mia}")]
    (say,) = ask(room, "compare", f"{tom}+{mia}")
    assert say.text.startswith("Tom Ahl and Mia: the latest readings.")
    assert "· Knee to wall, left: not measured; 12 cm" in say.text
    bea = room.a_coach("Bea")
    (other,) = ask(room, "compare", f"{tom}+{mia}", coach=bea)
    assert other.text.startswith("Name two of your lifters")


@pytest.mark.parametrize("asked", ["sam 31 january and 10 march", "sam 10 mar and 31.1.", "sam 2026-01-31 to 2026-03-10"])
def test_two_days_are_compared_as_they_are_typed(room, asked):
    sam = measured(room, "Sam")
    (say,) = ask(room, "compare", asked)
    assert say.text.startswith("Sam: 31 Jan 2026 and 10 Mar 2026")
    assert room.looks(sam) == ["Ada: numbers, two days compared"]


def test_another_s_lifter_is_compared_with_nobody(room):
    sam = measured(room, "Sam")
    bea = room.a_coach("Bea")
    for of in (str(sam), f"{sam}-2026-01-31-2026-03-10", "sam", "sam and sam"):
        (say,) = show(Turn(room.db, bea, NOW, BOOK), "compare", of)
        assert say.text.startswith("Name two of your lifters")
    assert room.looks(sam) == []
