"""Everything held of a person, walked table by table: nothing is forgotten by a copy, and nothing is left by an erasure."""

from __future__ import annotations

import sqlite3
from collections.abc import AsyncIterator
from pathlib import Path

import pytest

from companion.app.run import picture_store
from companion.export.personal_copy import HEADINGS
from companion.operate.integrity import tables_of
from companion.port import Address
from companion.record import coaching
from companion.record.personal_data import PERSON_COLUMNS, personal_rows
from tests.app.test_service import CHECK
from tests.coach.gym import KIM, MIA, Gym
from tests.test_access import naming_people

VEX = Address("terminal", "quillonvex")
MARK, AT = "canary", "2026-03-02T18:05:00.000Z"

NO_WORDS = {("coaches", "person"), ("coaches", "coach"), ("code_tries", "person")}
"""Rows of moments and numbers only."""


@pytest.fixture
async def gym(tmp_path: Path) -> AsyncIterator[Gym]:
    """A coach, a lifter of theirs about whom much is said, and another lifter."""
    one = Gym(tmp_path / "companion.sqlite")
    await one.start()
    await one.coach(KIM)
    await one.lifter(VEX)
    await one.lifter(MIA)
    await one.say(f"code {await one.code_for(f'{MARK} for quillonvex')}", "Yes, I agree", who=VEX)
    number = one.id_of(VEX)
    await one.say("write to my coach", f"{MARK} hello", who=VEX)
    await one.say("safety check", *CHECK, who=VEX)
    await one.tap(KIM, f"go.coach_note.{number}")
    await one.say(f"{MARK} squats lighter", "Send it", who=KIM)
    await one.tap(KIM, f"go.coach_act.{number}-pin_depth")
    await one.say("Below parallel", f"{MARK} moves well", who=KIM)
    for view in ("lifter", "lifter_log"):
        await one.tap(KIM, f"go.{view}.{number}")
    await one.tap(KIM, "go.caseload")
    await one.say(f"code {await one.code_for(f'{MARK} for mia')}", "Yes, I agree", who=MIA)
    yield one
    await one.stop()


def canaries(db: sqlite3.Connection, person: int, other: int) -> dict[tuple[str, str], str]:
    """A row in each table and by each column that names a person, with a word in each of its free texts; gives the words."""
    db.execute("pragma foreign_keys=off")
    words = {}
    for table, column in naming_people(db):
        word = words[table, column] = f"{MARK} {table} {column}"
        columns = db.execute(f"pragma table_info([{table}])").fetchall()
        people = {named for where, named in naming_people(db) if where == table}
        row = {name: (person if name == column else other) if name in people else
               "[]" if name == "buttons" else
               AT if name in ("at", "since", "until") or name.endswith("_at") else
               f"{word} {name}" if kind == "TEXT" else 90 + len(words) for _, name, kind, *_ in columns if kind != "BLOB"}
        if table in ("persons", "coach_roles", "sessions"):  # one a person, and there is one
            del words[table, column]
            continue
        if column != "about":
            row.pop("about", None)
        db.execute(f"insert or ignore into [{table}] ({', '.join(row)}) values ({', '.join('?' * len(row))})", tuple(row.values()))
    db.execute("pragma foreign_keys=on")
    return words


async def test_each_column_that_names_a_person_is_in_a_copy_and_in_words(gym):
    assert set(PERSON_COLUMNS) == set(naming_people(gym.db)) == set(HEADINGS)


async def test_each_other_table_names_nobody(gym):
    """A table that names a person in a way that no reference shows must not be in this list, but in HELD. What is owed names the chat
    of somebody who has no rows, for a day at most."""
    of_nobody = {"chain", "owed", "updates", "refusals", "erasures", "picture_files", "marks", "_sqlite_migrations"}
    assert set(tables_of(gym.db)) == of_nobody | {table for table, _ in PERSON_COLUMNS}


async def test_a_copy_holds_a_row_of_every_table_that_names_the_person(gym):
    person, other = gym.id_of(VEX), gym.id_of(KIM)
    words = canaries(gym.db, person, other)
    found = {}
    for one in personal_rows(gym.db, person):
        found[one.table, one.column] = found.get((one.table, one.column), "") + str(one.row)
    for where, word in words.items():
        assert where in found, where
        if where not in NO_WORDS:
            assert word in found[where], where
    assert f"{MARK} outbox about address" not in found["outbox", "about"]  # where the coach is written to is the coach's


async def test_a_copy_is_three_files_the_first_of_them_to_read(gym):
    await gym.say("/export", who=VEX)
    read, table, lines = (message.document for message in gym.shown if message.address == VEX and message.document)
    assert "What should I tell your coach?" in read
    assert f"{MARK} squats lighter" in read
    assert "2026-03-02 18:05" in read
    for heading in ("YOUR COACHES", "WHAT COACHES LOOKED AT", "WHAT COACHES DID FOR YOU", "REMINDERS", "MESSAGES TO COACHES ABOUT YOU"):
        assert (heading in read) == (heading != "REMINDERS")
    assert f"{MARK} hello" in table
    assert '"table": "looks"' in lines


async def test_a_coachs_copy_tells_nothing_of_their_lifters(gym):
    coaching.withdraw(gym.db, gym.id_of(VEX), gym.id_of(KIM), gym.clock.now())
    told = "\n".join(str(one) for one in personal_rows(gym.db, gym.id_of(KIM)) if one.table == "outbox")
    assert f"{MARK} hello" not in told


async def test_a_copy_asked_for_twice_does_not_hold_the_first(gym):
    await gym.say("/export", who=VEX)
    first = max(len(message.document or "") for message in gym.shown)
    gym.db.execute("update outbox set document = 'nested' where id = (select max(id) from outbox)")
    assert "nested" not in str(list(personal_rows(gym.db, gym.id_of(VEX))))
    assert first > 0


async def test_erasing_leaves_no_row_no_byte_and_no_picture(gym, tmp_path):
    person, coach, mia = gym.id_of(VEX), gym.id_of(KIM), gym.id_of(MIA)
    with picture_store(gym.companion, gym.clock) as shelf:
        shelf.cache.folder.mkdir(parents=True, exist_ok=True)
        mine, other = (shelf.cache.folder / f"own-{one}-chart_pain.png" for one in (person, mia))
        mine.write_bytes(b"quillonvex")
        other.write_bytes(b"of mia")
        canaries(gym.db, person, mia)
        gym.db.execute("delete from coaches where coach = ?", (person,))
        gym.db.execute("update outbox set settled_at = null where person = ?", (person,))
        await gym.say("/erase", "Yes, erase it all", who=VEX)
    for table, column in naming_people(gym.db):
        assert gym.db.execute(f"select count(*) from [{table}] where [{column}] = ?", (person,)).fetchone() == (0,), (table, column)
    assert [row[1][:10] for row in gym.db.execute("select * from erasures")] == ["2026-03-02"]
    assert not mine.exists()
    assert other.exists()
    assert coaching.coaches_of(gym.db, mia) == [(coach, "Kim")]
    for file in tmp_path.rglob("*"):
        if file.is_file():
            assert b"quillonvex" not in file.read_bytes().lower(), file
    left = [text for table, columns in _texts(gym.db) for column in columns
            for (text,) in gym.db.execute(f"select [{column}] from [{table}] where [{column}] like '%{MARK}%'")]
    of_mia = ("canary for mia", "canary looks coach", "canary acts coach")
    assert [text for text in left if not any(word in text for word in of_mia)] == []


def _texts(db: sqlite3.Connection) -> list[tuple[str, list[str]]]:
    tables = [name for (name,) in db.execute("select name from sqlite_master where type = 'table'").fetchall()]
    return [(table, [row[1] for row in db.execute(f"pragma table_info([{table}])") if row[2] in ("TEXT", "ANY")]) for table in tables]
