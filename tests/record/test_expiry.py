"""What is old enough to go: who is looked at, what is removed, and messages' numbers that are never given again."""

from __future__ import annotations

import sqlite3
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from companion.conversation.effects import Say
from companion.record import expiry, outbox, people
from companion.record.file import open_for_writing
from companion.record.persist import put_message
from companion.record.timestamps import text_of

NOW = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)
CUT = NOW - timedelta(days=180)


@pytest.fixture
def db(tmp_path: Path):
    database, lock = open_for_writing(tmp_path / "a.sqlite")
    yield database.conn
    database.close()
    lock.close()


def person(db: sqlite3.Connection, name: str = "Sam") -> int:
    return people.add_person(db, "telegram", name, name, NOW)


def run(db: sqlite3.Connection, who: int, name: str, began: datetime, ended: datetime | None = None) -> None:
    db.execute("insert into runs (person, run, flow, version, began_at, ended_at, ending) values (?, ?, 'film', 1, ?, ?, ?)",
               (who, name, text_of(began), ended and text_of(ended), "done" if ended else None))
    for replaces in (None, "last"):
        before = db.execute("select max(id) from answers").fetchone()[0] if replaces else None
        db.execute("insert into answers (person, run, flow, version, key, side, raw, value, unit, status, method, placement, replaces, at) "
                   "values (?, ?, 'film', 1, 'film', '', 'x', 'x', '', 'ok', '', '', ?, ?)", (who, name, before, text_of(began)))


def looked_at(db: sqlite3.Connection, before: datetime | None, looked: datetime | None) -> list[int]:
    found, upto = [], 0
    while upto is not None:
        some, upto = expiry.candidates(db, upto, CUT, before, looked)
        found += some
    return found


def test_only_who_has_something_new_and_something_old_is_looked_at(db, monkeypatch):
    monkeypatch.setattr(expiry, "PERSONS_AT_ONCE", 2)
    young, aged, crossed, active, left = (person(db, name) for name in ("young", "aged", "crossed", "active", "left"))
    day = timedelta(days=1)
    run(db, young, "1", NOW - day, NOW - day)
    for one in (aged, active, left):
        run(db, one, "1", CUT - 50 * day, CUT - 50 * day)
    run(db, crossed, "1", CUT - day / 2)
    run(db, active, "2", NOW - day / 2, NOW - day / 2)
    db.execute("insert into sessions values (?, '{}', ?)", (left, text_of(CUT - day / 2)))
    assert looked_at(db, CUT - day, NOW - day) == [crossed, active, left]
    assert looked_at(db, None, None) == [aged, crossed, active, left]
    assert looked_at(db, CUT, NOW) == []


def test_answers_of_whole_runs_go_and_the_runs_stay(db):
    who = person(db)
    run(db, who, "1", CUT, CUT)
    run(db, who, "2", NOW, NOW)
    assert expiry.remove_answers(db, who, ["1"]) == 2
    assert [one.run for one in expiry.runs_of(db, who)] == ["2"]
    assert db.execute("select count(*) from runs").fetchone() == (2,)
    assert db.execute("pragma foreign_key_check").fetchall() == []


def test_the_answer_that_replaced_one_is_found_without_reading_the_others(db):
    plan = str(db.execute("explain query plan select 1 from answers where replaces = 7").fetchall())
    assert "answers_replaces" in plan


def test_what_is_given_up_was_left_with_its_last_answer(db):
    who = person(db)
    run(db, who, "1", CUT)
    expiry.abandon(db, who, ["1"])
    assert [(one.over, one.ending) for one in expiry.runs_of(db, who)] == [(CUT, "left")]


def test_update_ids_are_walked_a_few_at_a_time_in_whatever_order_they_came(db, monkeypatch):
    monkeypatch.setattr(expiry, "ROWS_AT_ONCE", 3)
    ages = [20, 1, 30, 15, 13, 40, 2, 90]
    for number, days in enumerate(ages):
        db.execute("insert into updates (channel, update_id, at) values (?, ?, ?)",
                   ("telegram" if number < 6 else "terminal", number, text_of(NOW - timedelta(days=days))))
    after: tuple[str, int] | None = ("", 0)
    steps = 0
    while after is not None:
        after, steps = expiry.remove_updates(db, after, NOW), steps + 1
    assert [number for (number,) in db.execute("select update_id from updates order by 1")] == [1, 4, 6]
    assert steps == 4


def test_messages_are_looked_through_as_far_as_they_are_old(db, monkeypatch):
    monkeypatch.setattr(expiry, "ROWS_AT_ONCE", 2)
    who = person(db)
    for days in (100, 99, 98, 1, 1, 1):
        put_message(db, who, Say("hello"), NOW - timedelta(days=days))
    db.execute("update outbox set settled_at = made_at where id <> 2")
    upto, removed = 0, []
    while upto is not None:
        upto, gone = expiry.remove_messages(db, upto, NOW - timedelta(days=90))
        removed.append(gone)
    assert [number for (number,) in db.execute("select id from outbox order by 1")] == [2, 4, 5, 6]
    assert removed == [1, 1]


def test_a_persons_number_is_never_given_again(db):
    numbers = [person(db, "a"), person(db, "b")]
    for name in ("c", "d"):
        people.erase(db, numbers[-1], NOW)
        numbers.append(person(db, name))
    people.erase(db, numbers[0], NOW)
    assert [*numbers, person(db, "e"), person(db, "f")] == [1, 2, 3, 4, 5, 6]


def test_a_persons_number_is_new_in_a_file_that_was_erased_from_before(db):
    db.execute("insert into persons (id, created_at) values (9, ?)", (text_of(NOW),))
    assert person(db, "a") == 10


def test_a_send_under_way_to_somebody_erased_marks_no_message_of_another(db):
    gone, other = person(db, "gone"), person(db, "other")
    put_message(db, gone, Say("under way"), NOW)
    (sending,) = outbox.due(db, "telegram", NOW)
    people.erase(db, gone, NOW)
    put_message(db, other, Say("new"), NOW)
    for mark in (lambda: outbox.mark_sent(db, sending.id, NOW, "1"), lambda: outbox.mark_dropped(db, sending.id, NOW, "refused"),
                 lambda: outbox.mark_tried(db, sending.id, NOW)):
        mark()
        assert [(one.text, one.attempt) for one in outbox.due(db, "telegram", NOW)] == [("new", 0)]


def test_the_outbox_has_the_indexes_it_is_read_by(db):
    there = {name for (name,) in db.execute("select name from sqlite_master where tbl_name = 'outbox' and type = 'index'")}
    assert there >= {"outbox_waiting", "outbox_person", "outbox_next", "outbox_chat", "outbox_stale", "outbox_about"}
    assert db.execute("select name from sqlite_master where name like '%anew%'").fetchall() == []
