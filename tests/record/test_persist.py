"""What is kept of an effect: a reminder with its hour."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from companion.conversation.effects import Remind
from companion.record import people
from companion.record.file import open_for_writing
from companion.record.persist import remind
from companion.record.turn import Turn
from flows.catalogue import BOOK

NOW = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)


@pytest.mark.parametrize(("hour", "kept"), [(None, "2026-03-30 10:00"), (7, "2026-03-30 07:00")])
def test_a_reminder_for_a_date_comes_in_the_morning_unless_an_hour_is_given(tmp_path: Path, hour: int | None, kept: str) -> None:
    """Ten o'clock: choice."""
    database, lock = open_for_writing(tmp_path / "a.sqlite")
    turn = Turn(database.conn, people.add_person(database.conn, "telegram", "Sam", "Sam", NOW), NOW, BOOK)
    remind(turn, Remind("retest", "retest", "2026-03-30", hour))
    assert database.conn.execute("select wall from reminders").fetchall() == [(kept,)]
    database.close()
    lock.close()
