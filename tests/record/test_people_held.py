"""Somebody who can't be reached: their reminders are held, and open again when they write."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from companion.record import people, reminders
from companion.record.file import open_for_writing

NOW = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)


@pytest.fixture
def db(tmp_path: Path):
    database, lock = open_for_writing(tmp_path / "a.sqlite")
    people.add_person(database.conn, "telegram", "1", "Sam", NOW)
    reminders.add(database.conn, 1, "retest", "retest", "2026-03-02 18:00", "UTC+00:00", NOW, NOW)
    yield database.conn
    database.close()
    lock.close()


def states(db) -> list[str]:
    return [row[0] for row in db.execute("select state from reminders order by id")]


def test_who_blocks_the_bot_has_nothing_due(db):
    people.mark_gone(db, "telegram", "1", NOW, "blocked the bot")
    assert states(db) == ["held"]
    assert reminders.due(db, NOW) == []


def test_writing_again_opens_it(db):
    people.mark_gone(db, "telegram", "1", NOW, "blocked the bot")
    people.mark_back(db, "telegram", "1")
    assert len(reminders.due(db, NOW)) == 1


def test_who_can_still_be_reached_elsewhere_loses_nothing(db):
    db.execute("insert into addresses (channel, address, person, name) values ('terminal', 'sam', 1, 'sam')")
    people.mark_gone(db, "telegram", "1", NOW, "blocked the bot")
    assert states(db) == ["open"]


def test_what_was_set_meanwhile_takes_the_place_of_what_was_held(db):
    people.mark_gone(db, "telegram", "1", NOW, "blocked the bot")
    reminders.add(db, 1, "retest", "retest", "2026-03-09 18:00", "UTC+00:00", NOW, NOW)
    people.mark_back(db, "telegram", "1")
    assert states(db) == ["held", "open"]
