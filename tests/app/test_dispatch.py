"""Effects and their handlers: one each, carried out in the order of the step, with what is known kept true."""

from __future__ import annotations

import ast
import sqlite3
from collections import Counter
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import get_args

import pytest

import companion.app.dispatch as dispatch
from companion.app.dispatch import HANDLERS, carry_out
from companion.conversation.effects import Alert, Effect, Erase, Find, Record, Remind, Replan, Say
from companion.conversation.flow import Do
from companion.record import coaching, people, reminders
from companion.record.context import known_of
from companion.record.file import open_for_writing
from companion.record.turn import Turn
from flows.catalogue import BOOK

NOW = datetime(2026, 6, 1, 8, tzinfo=UTC)


@pytest.fixture
def db(tmp_path: Path) -> Iterator[sqlite3.Connection]:
    opened, lock = open_for_writing(tmp_path / "companion.sqlite")
    yield opened.conn
    opened.close()
    lock.close()


@pytest.fixture
def turn(db: sqlite3.Connection) -> Turn:
    person = people.add_person(db, "terminal", "sam", "Sam", NOW)
    return Turn(db, person, NOW, BOOK, ("terminal", "sam"))


def test_every_effect_has_exactly_one_handler():
    assert set(HANDLERS) == set(get_args(Effect))
    tree = ast.parse(Path(dispatch.__file__).read_text(encoding="utf-8"))
    (table,) = [node.value for node in tree.body if isinstance(node, ast.AnnAssign) and ast.unparse(node.target) == "HANDLERS"]
    assert isinstance(table, ast.Dict)
    assert [name for name, times in Counter(map(ast.unparse, table.keys)).items() if times > 1] == []


def test_every_effect_a_flow_may_note_has_a_handler():
    named = {type(step.effect) for compiled in BOOK.flows.values() for step in compiled.flow.steps if isinstance(step, Do)}
    assert named <= set(HANDLERS)


def test_effects_are_carried_out_in_their_order(db, turn):
    """A message stands in the outbox before what a coach hears after it."""
    coach = people.add_person(db, "terminal", "kim", "Kim", NOW)
    coaching.make_coach(db, coach, "Kim", NOW)
    coaching.link(db, turn.person, coach, NOW)
    carry_out(turn, [Say("one"), Alert("not_today", "something hurt"), Say("two")])
    assert [row[0] for row in db.execute("select text from outbox order by id")] == [
        "one", "Sam, no squats or tests today: something hurt", "two"]


def test_what_is_written_is_known_at_once(turn):
    assert "drill" not in turn.known.facts
    carry_out(turn, [Find("drill", "calf")])
    assert turn.known.facts["drill"] == "calf"


def test_reminders_follow_what_was_found_before_them_in_the_same_step(db, turn):
    carry_out(turn, [Find("squat.plan", '{"weekly":{"TU":"18:00"}}'), Replan()])
    assert [one.kind for one in reminders.open_reminders(db, turn.person)] == ["squat_day", "squat_after"]


@pytest.mark.parametrize(("effects", "gathered"), [
    ((), 1), ((Say("hello"), Alert("go", "nothing")), 1),
    ((Record("1", "bar", 1, "bar", "", "20", 20.0), Find("drill", "calf"), Remind("retest", "retest", "2026-07-01")), 2)])
def test_what_is_known_is_gathered_again_only_where_something_changed_it(db, turn, effects, gathered):
    asked: list[str] = []
    turn.gather = lambda *of: (asked.append("gathered"), known_of(*of))[1]
    db.execute("insert into runs (person, run, flow, version, began_at, asked) values (?, '1', 'bar', 1, '', '')", (turn.person,))
    assert turn.known
    carry_out(turn, effects)
    assert turn.known
    assert len(asked) == gathered


def test_what_would_follow_an_erasing_is_not_done(db, turn):
    carry_out(turn, [Erase(), Find("drill", "calf"), Say("too late")])
    assert turn.erased
    assert people.person_at(db, "terminal", "sam") is None


def test_rows_of_another_person_are_written_in_a_turn_of_theirs(db, turn):
    other = people.add_person(db, "terminal", "mia", "Mia", NOW)
    carry_out(turn.of(other), [Find("drill", "calf"), Say("hello")])
    assert known_of(db, other, NOW).facts["drill"] == "calf"
    assert "drill" not in turn.known.facts
    assert db.execute("select person, unasked from outbox").fetchall() == [(other, 1)]
