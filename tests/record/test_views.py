"""The views that are there for questions nobody thought of: they open read-only while the bot writes."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest
from sqlite_utils import Database

from companion.record import coaching
from tests.app.test_service import ABOUT, CHECK, WARM, WELCOME, Life

VIEWS = {
    "answer_log": {"person", "number", "at", "flow", "key", "side", "raw", "value", "unit", "status", "method", "replaces", "ending"},
    "findings_log": {"person", "number", "at", "name", "value", "rule", "because"},
    "squat_days_log": {"person", "number", "at", "about_day", "flow", "key", "value"},
    "caseload": {"person", "number", "coach", "safety_level", "result", "depth_step", "last_alert", "last_answer", "next_reminder"},
}


@pytest.fixture
async def life(tmp_path: Path):
    one = Life(tmp_path / "companion.sqlite")
    await one.start()
    await one.say("hello", *WELCOME, *ABOUT)
    await one.say("knee to wall", *CHECK, *WARM, "tape", "11", "back", "12")
    coaching.make_coach(one.db, 1, "Kim", one.clock.now())
    coaching.link(one.db, 1, 1, one.clock.now())
    yield one
    await one.stop()


def reading(path: Path) -> Database:
    return Database(sqlite3.connect(f"file:{path}?mode=ro", uri=True))


@pytest.mark.parametrize("view", sorted(VIEWS))
async def test_a_view_has_its_columns_and_opens_read_only_while_the_bot_writes(life, view):
    life.db.execute("begin immediate")  # a turn under way
    try:
        there = reading(life.path)
        assert VIEWS[view] <= set(there[view].columns_dict)
        list(there.query(f"select * from {view}"))
    finally:
        life.db.execute("rollback")


async def test_the_answer_log_shows_a_correction_as_one(life):
    rows = [(row["status"], row["value"]) for row in reading(life.path).query("select * from answer_log where key = 'left_1' order by id")]
    assert rows == [("ok", 11), ("withdrawn", None), ("ok", 12)]


async def test_the_caseload_names_the_coach_and_the_last_answer(life):
    (row,) = reading(life.path).query("select * from caseload")
    assert (row["person"], row["coach"], row["safety_level"]) == ("sam", "Kim", "go")
    assert row["last_answer"]


async def test_after_a_withdrawal_the_lifter_is_gone_from_the_caseload(life):
    coaching.withdraw(life.db, 1, 1, life.clock.now())
    assert list(reading(life.path).query("select * from caseload")) == []


async def test_a_reader_can_change_nothing(life):
    with pytest.raises(sqlite3.OperationalError, match="readonly"):
        reading(life.path).execute("delete from answers")
