"""What a turn knows: for how long a tap that closed everything can be taken back."""

from __future__ import annotations

from datetime import timedelta

import pytest

from companion.conversation.effects import Find
from companion.record.context import SLIP, known_of
from tests.coach.caseload_rows import NOW, Room, record


@pytest.fixture
def room(tmp_path):
    with record(tmp_path) as one:
        yield one


@pytest.mark.parametrize(("minutes", "known"), [(10, {"open", "in_time"}), (10.1, {"in_time"}), (30, {"in_time"}), (30.1, set())])
def test_a_tap_can_be_taken_back_for_ten_minutes_and_that_be_finished_for_thirty(room: Room, minutes: float, known: set[str]) -> None:
    sam = room.lifter()
    room.keep(sam, minutes / 60 / 24, Find(SLIP, "tapped", "a rule"))
    facts = known_of(room.db, sam, NOW).facts
    assert {name for name in ("open", "in_time") if facts.get(f"{SLIP}.{name}") == "yes"} == known


def test_what_was_undone_is_open_no_more(room: Room) -> None:
    sam = room.lifter()
    room.keep(sam, 0, Find(SLIP, "", "undone once"))
    assert f"{SLIP}.open" not in known_of(room.db, sam, NOW + timedelta(minutes=1)).facts
