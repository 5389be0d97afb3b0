"""The one writer: jobs share a commit, one that fails takes nothing of another with it, a failed commit fails all."""

import asyncio
import sqlite3
from pathlib import Path

import pytest
from click.testing import CliRunner

from companion.cli.main import main
from companion.record.file import CannotOpen, open_for_reading, open_for_writing
from companion.record.writer import CommitFailed, Writer


@pytest.fixture
async def writer(tmp_path: Path):
    db, lock = open_for_writing(tmp_path / "w.sqlite")
    one = Writer(db)
    task = asyncio.create_task(one.run())
    yield one
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)
    db.close()
    lock.close()


def refuse(number: int):
    return lambda db: db.execute("insert into refusals (at, version) values ('t', ?)", (number,)).rowcount


def count(db: sqlite3.Connection) -> int:
    return db.execute("select count(*) from refusals").fetchone()[0]


async def test_a_job_is_committed_when_it_is_told(writer):
    assert await writer.do(refuse(1)) == 1
    assert not writer._db.in_transaction
    assert await writer.do(count) == 1


async def test_jobs_that_wait_together_share_one_commit(writer):
    commits = []
    writer._db.set_trace_callback(lambda sql: commits.append(sql) if sql == "commit" else None)
    await asyncio.gather(*(writer.do(refuse(n)) for n in range(50)))
    assert len(commits) < 5
    assert await writer.do(count) == 50


async def test_a_note_waits_a_moment_for_a_job_and_shares_its_commit(writer):
    commits = []
    writer._db.set_trace_callback(lambda sql: commits.append(sql) if sql == "commit" else None)
    note = asyncio.create_task(writer.note(refuse(1)))
    for _ in range(5):
        await asyncio.sleep(0)  # let the writer find it alone
    assert not commits
    assert await writer.do(refuse(2)) == 1
    assert await note == 1
    assert len(commits) == 1
    assert await writer.do(count) == 2


async def test_a_note_without_company_is_committed_all_the_same(writer):
    assert await writer.note(refuse(1)) == 1
    assert not writer._db.in_transaction
    assert await writer.do(count) == 1


async def test_a_note_that_waits_as_the_writer_is_stopped_is_kept(tmp_path):
    db, lock = open_for_writing(tmp_path / "n.sqlite")
    one = Writer(db)
    task = asyncio.create_task(one.run())
    note = asyncio.create_task(one.note(refuse(1)))
    for _ in range(5):
        await asyncio.sleep(0)
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)
    assert await note == 1
    assert count(db.conn) == 1
    db.close()
    lock.close()


async def test_a_job_that_fails_takes_nothing_of_another_with_it(writer):
    def broken(db: sqlite3.Connection) -> None:
        refuse(2)(db)
        raise KeyError("a fault of ours")

    results = await asyncio.gather(writer.do(refuse(1)), writer.do(broken), writer.do(refuse(3)), return_exceptions=True)
    assert [type(one) for one in results] == [int, KeyError, int]
    assert await writer.do(count) == 2


async def test_a_file_that_can_not_be_written_fails_all_and_stops(writer):
    def full(db: sqlite3.Connection) -> None:
        raise sqlite3.OperationalError("database or disk is full")

    results = await asyncio.gather(writer.do(refuse(1)), writer.do(full), return_exceptions=True)
    assert [type(one) for one in results] == [CommitFailed, CommitFailed]
    with pytest.raises(CommitFailed, match="disk is full"):
        await writer.do(refuse(2))
    assert count(writer._db) == 0


def test_the_file_is_opened_durably(tmp_path, durable):
    db, lock = open_for_writing(tmp_path / "d.sqlite")
    pragma = {name: db.execute(f"pragma {name}").fetchone()[0] for name in (
        "journal_mode", "synchronous", "foreign_keys", "secure_delete")}
    assert pragma == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "secure_delete": 1}
    assert all(table.strict for table in db.tables if not table.name.startswith(("_", "sqlite")))
    db.close()
    lock.close()


def test_what_is_no_database_is_refused_in_one_line(tmp_path):
    path = tmp_path / "x.sqlite"
    path.write_text("not a database at all, but long enough to be looked at as one")
    with pytest.raises(CannotOpen, match="can't open the database") as error:
        open_for_writing(path)
    assert "\n" not in str(error.value)


@pytest.mark.parametrize("command", ["log", "doctor", "backup copy.sqlite", "restore old.sqlite --yes", "chat", "run"])
def test_a_link_that_leads_to_itself_fails_in_one_line(tmp_path, monkeypatch, command):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COMPANION_TOKEN", "1:a")
    loop = tmp_path / "loop.sqlite"
    loop.symlink_to(loop)
    (tmp_path / "old.sqlite").touch()
    told = CliRunner().invoke(main, [*command.split(), "--database", str(loop)])
    assert isinstance(told.exception, SystemExit)
    assert (told.exit_code, len(told.output.splitlines())) == (2, 1) or command == "doctor"


def test_reading_where_there_is_nothing_says_so(tmp_path):
    with pytest.raises(CannotOpen, match="no database"):
        open_for_reading(tmp_path / "none.sqlite")
