"""The answer log as it was written: whatever is changed, added, removed or cut shows, and what is erased leaves no trace and no gap."""

import json
import sqlite3
from hashlib import sha256

import pytest
from sqlite_utils import Database

from companion.app.run import running_writer
from companion.app.service import Companion
from companion.conversation.effects import Record
from companion.operate.backup import BackupFailed, back_up
from companion.operate.doctor import examine
from companion.operate.inspection import Severity
from companion.operate.restore import CannotRestore, restore
from companion.record import expiry, people, persist
from companion.record.chain import FIRST, bound, chain_fault, commitment, head_beside, head_in
from companion.record.file import open_for_writing
from companion.record.schema import migrations
from tests.app.test_service import ABOUT, CHECK, SAM, WELCOME, Life
from tests.fakes.clock import START, FakeClock
from tests.operate.build import changing, settings

ROW = Record("1", "knee_to_wall", 1, "left_1", "left", "11 cm", 11.0, "cm")


@pytest.fixture
async def file(tmp_path):
    """A file of a lifter who has answered some questions, not open any more."""
    life = Life(tmp_path / "c.sqlite")
    await life.start()
    await life.say("hello", *WELCOME, *ABOUT)
    await life.say("knee to wall", *CHECK)
    await life.stop()
    return life.path


def fault(path):
    with changing(path) as db:
        return chain_fault(db, head_beside(path))


def alter(path, *statements):
    """Change a file as somebody might who knows SQLite."""
    with changing(path) as db:
        for name in ("answers_stay", "chain_stays", "chain_keeps"):
            db.execute(f"drop trigger {name}")
        for statement in statements:
            db.executescript(statement)


CHANGES = {
    "a value": ("update answers set value = 7.5 where id = 7", "answer 7 is not what was written"),
    "a word": ("update answers set raw = raw || '!' where id = 5", "answer 5 is not what was written"),
    "a moment": ("update answers set at = '2020-01-01T00:00:00.000Z' where id = 3", "answer 3 is not what was written"),
    "the person": ("update answers set replaces = 1 where id = 9", "answer 9 is not what was written"),
    "a row removed": ("delete from answers where id = 4", "answer 4 is missing"),
    "a row added": ("insert into answers select null, person, run, flow, version, key, side, raw, value, unit, status, method, placement, "
                    "replaces, at, null, null, null from answers where id = 2", "was written by something else"),
    "a row added with a link of another": ("insert into answers select null, person, run, flow, version, key, side, raw, value, unit, "
                                           "status, method, placement, replaces, at, salt, commits, hash from answers where id = 2",
                                           "the chain of the answer log breaks at answer"),
    "a link removed": ("update answers set hash = null where id = 6", "answer 6 was written by something else"),
    "a commitment": ("update answers set commits = x'00' where id = 6", "the chain of the answer log breaks at answer 6"),
    "a number below zero": ("update answers set id = -6 where id = 6", "the chain of the answer log breaks at answer -6"),
    "a row removed and put in the place of the next": ("delete from answers where id = 6; update answers set id = 6 where id = 7",
                                                       "the chain of the answer log breaks at answer 6"),
}


@pytest.mark.parametrize(("statement", "told"), CHANGES.values(), ids=CHANGES)
async def test_whatever_is_changed_is_named_by_doctor_backup_and_restore(file, tmp_path, statement, told):
    assert fault(file) == ""
    good = back_up(file, tmp_path / "good.sqlite").path
    alter(file, statement)
    assert told in fault(file)
    broken = [one.line for one in examine(settings(file), file, None, START) if one.severity is Severity.BROKEN]
    assert any(told in line for line in broken)
    with pytest.raises(BackupFailed, match=told):
        back_up(file, tmp_path / "bad.sqlite")
    alter(good, statement)
    before = file.read_bytes()
    with pytest.raises(CannotRestore, match=told):
        restore(good, file, START)
    assert file.read_bytes() == before


async def test_a_tail_that_was_cut_shows_and_goes_on_showing_after_a_start(file):
    last = head_beside(file).number
    alter(file, f"delete from answers where id = {last}",
          "create trigger answers_stay before update on answers begin select raise(abort, 'the answer log is append-only'); end")
    told = f"the answer log ends at answer {last - 1} but had gone on to {last}: what came after it is lost"
    assert fault(file) == told
    companion = Companion(file, FakeClock())
    async with running_writer(companion):
        await companion.sweep()
        await companion.writer.do(lambda db: None)
    companion.close()
    assert any(told in one.line and one.severity is Severity.LOOK for one in examine(settings(file), file, None, START))


async def test_an_erased_person_leaves_neither_salt_nor_gap(file):
    with changing(file) as db:
        db.execute("pragma foreign_keys=on")
        count = db.execute("select count(*) from answers").fetchone()
        salt, = db.execute("select salt from answers where id = 3").fetchone()
        db.execute("pragma secure_delete=on")
        people.erase(db, 1, START)
        assert db.execute("select count(*) from chain").fetchone() == count
        db.execute("pragma wal_checkpoint(truncate)")
    assert fault(file) == ""
    assert salt not in file.read_bytes()


async def test_answers_that_are_thinned_leave_a_chain_that_holds_and_numbers_are_not_used_again(file, tmp_path):
    with changing(file) as db:
        db.execute("pragma foreign_keys=on")
        runs = [run for (run,) in db.execute("select run from runs where flow = 'safety_check'")]
        assert expiry.remove_answers(db, 1, runs) == len(CHECK)
    last = head_beside(file).number
    life = Life(file)
    await life.start()
    await life.say("menu", "knee to wall", "no", who=SAM)
    await life.stop()
    assert head_beside(file).number > last
    assert fault(file) == ""
    assert back_up(file, tmp_path / "b.sqlite").counts["chain"] > 0


async def test_a_turn_that_is_rolled_back_leaves_no_link(file):
    companion = Companion(file, FakeClock())
    before = head_beside(file)

    def fails(db):
        persist.answer(companion.turn(db, 1, START), ROW)
        raise ValueError

    async with running_writer(companion):
        with pytest.raises(ValueError):
            await companion.writer.do(fails)
        assert head_beside(file) == before
        with pytest.raises(ValueError):
            await companion.writer.do(fails)
        await companion.writer.do(lambda db: persist.answer(companion.turn(db, 1, START), ROW))
    companion.close()
    assert head_beside(file).number == before.number + 1
    assert fault(file) == ""


async def test_an_answer_written_by_something_else_is_told_and_stops_no_later_one(file):
    companion = Companion(file, FakeClock())
    async with running_writer(companion):
        await companion.writer.do(lambda db: persist.answer(companion.turn(db, 1, START), ROW))
        other = head_beside(file).number + 1
        await companion.writer.do(lambda db: db.execute(
            "insert into answers (person, run, flow, version, key, side, raw, value, unit, status, method, placement, at) select person, "
            "run, flow, version, key, side, raw, value, unit, status, method, placement, at from answers where id = ?", (other - 1,)))
        with pytest.raises(sqlite3.IntegrityError):  # its number is taken
            await companion.writer.do(lambda db: persist.answer(companion.turn(db, 1, START), ROW))
        await companion.writer.do(lambda db: persist.answer(companion.turn(db, 1, START), ROW))
    companion.close()
    assert head_beside(file).number == other + 1
    assert fault(file) == f"answer {other} was written by something else"


def test_a_link_is_made_as_the_format_has_it():
    """The two digests are by `b2sum -l 256` of GNU coreutils, of b"salt" and the line of the values; of 32 zeros, "7 " and the first."""
    commits = commitment(b"salt", (1, "größer 🏋", 11.0, None, 'it\'s 5"', "\u0378"))
    assert commits.hex() == "b2e0d84519324857d023b6797b17c8f13873f3b0a585050b6a5e51f78f8664fb"
    assert bound(bytes(32), 7, commits).hex() == "8a2235a3c4aa025ca8061933a29c267a67d8267c2da6e8fcaced0ed711908f9b"


async def test_a_restored_file_has_a_head_of_its_own(file, tmp_path):
    good = back_up(file, tmp_path / "good.sqlite").path
    life = Life(file)
    await life.start()
    await life.say("menu", "knee to wall", "no", who=SAM)
    await life.stop()
    restore(good, file, START)
    assert fault(file) == ""
    await life.start()
    await life.companion.writer.do(lambda db: None)
    await life.stop()
    with changing(file) as db:
        assert head_beside(file) == head_in(db)


def old_file(path, stop_before):
    """A file of an older version with four answers in it."""
    old = Database(sqlite3.connect(path, isolation_level=None), execute_plugins=False)
    migrations.apply(old, stop_before=stop_before)
    old.execute("insert into persons values (1, '2026-03-02T18:05:00.000Z')")
    for value in (11.5, 12, "left", None):
        old.execute("insert into answers (person, run, flow, version, key, side, raw, value, unit, status, method, placement, at) values "
                    "(1, '1', 'f', 1, 'k', '', 'größer 🏋', ?, '', 'ok', '', '', '2026-03-02T18:05:00.000Z')", (value,))
    assert chain_fault(old.conn) == ""
    return old


def test_a_file_from_before_the_chain_gets_one_and_is_whole(tmp_path):
    path = tmp_path / "old.sqlite"
    old_file(path, "answer_chain").close()
    db, lock = open_for_writing(path)
    assert db.execute("select count(hash) from answers").fetchone() == (4,)
    assert chain_fault(db.conn) == ""
    db.close()
    lock.close()


def linked_at_first(path):
    """A file whose four answers have links as they were first made, the third answer gone; and the last hash."""
    old, last = old_file(path, "links_in_rows"), FIRST
    for number, *content in old.execute("select id, person, run, flow, version, key, side, raw, value, unit, status, method, placement, "
                                        "replaces, at from answers").fetchall():
        commits = sha256(b"salt" + json.dumps(content, separators=(",", ":")).encode("ascii")).digest()
        last = sha256(last + number.to_bytes(8, "big") + commits).digest()
        old.execute("insert into chain values (?, ?, ?, ?)", (number, b"salt", commits, last))
    old.execute("delete from answers where id = 3")
    old.close()
    return last


def test_the_links_of_a_file_with_the_chain_in_a_table_move_into_the_rows(tmp_path):
    path = tmp_path / "old.sqlite"
    last = linked_at_first(path)
    db, lock = open_for_writing(path)
    assert db.execute("select number from chain").fetchall() == [(3,)]
    assert head_in(db.conn) == (4, last)
    assert chain_fault(db.conn) == ""
    with pytest.raises(sqlite3.IntegrityError, match="append-only"):
        db.execute("update answers set salt = null")
    db.close()
    lock.close()


async def test_links_as_they_were_first_made_stay_and_later_ones_follow_them(tmp_path):
    path = tmp_path / "old.sqlite"
    last = linked_at_first(path)
    companion = Companion(path, FakeClock())
    async with running_writer(companion):
        for _ in range(2):
            await companion.writer.do(lambda db: persist.answer(companion.turn(db, 1, START), ROW))
    assert companion.db.execute("select hash from answers where id = 4").fetchone() == (last,)
    companion.close()
    assert head_beside(path).number == 6
    assert fault(path) == ""
    alter(path, "update answers set raw = 'other' where id = 5")
    assert fault(path) == "answer 5 is not what was written"
    with changing(path) as db:
        db.execute("update answers set value = 12.5 where id = 2")
    assert fault(path) == "answer 2 is not what was written"
