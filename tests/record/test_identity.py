"""One file has one writer, by whatever name it is opened, and is watched while it is open."""

import sqlite3
import subprocess
import sys

import pytest

from companion.app.run import running_writer
from companion.app.service import Companion
from companion.operate.inspection import is_running
from companion.operate.restore import restore
from companion.port import Address, Inbound, Typed
from companion.record import status
from companion.record.file import AlreadyRunning, CannotOpen, open_for_writing
from companion.record.operator_requests import OperatorRequest, pending, submit
from companion.record.writer import CommitFailed
from tests.fakes.clock import START, FakeClock

OPENS = ("import sys; from pathlib import Path; from companion.record.file import open_for_writing\n"
         "try: open_for_writing(Path(sys.argv[1]))\n"
         "except Exception as error: print(type(error).__name__)\n"
         "else: print('open')")


def names(path):
    """Other names of a file, by kind."""
    link, hard = path.with_name("link.sqlite"), path.with_name("hard.sqlite")
    link.symlink_to(path.name)
    hard.hardlink_to(path)
    return {"symbolic link": link, "hard link": hard}


def in_another_process(path):
    return subprocess.run([sys.executable, "-c", OPENS, path], capture_output=True, text=True, check=True).stdout.strip()


@pytest.fixture
def held(tmp_path):
    """A file that a companion has open for writing."""
    path = tmp_path / "c.sqlite"
    db, lock = open_for_writing(path)
    yield path
    db.close()
    lock.close()


def test_a_second_writer_is_refused_by_every_name_and_without_the_lock_file(held):
    there = names(held)
    for path in there.values():
        with pytest.raises(AlreadyRunning):
            open_for_writing(path)
    held.with_name("c.sqlite.lock").unlink()
    for path in (held, *there.values()):
        assert in_another_process(path) == "AlreadyRunning", path


def test_the_file_is_free_again_once_it_is_closed(tmp_path):
    path = tmp_path / "c.sqlite"
    for _ in range(2):
        db, lock = open_for_writing(path)
        db.close()
        lock.close()
    assert in_another_process(path) == "open"


def test_a_symbolic_link_is_the_file_for_requests_the_doctor_and_a_restore(held, tmp_path):
    link = names(held)["symbolic link"]
    assert is_running(link)
    assert submit(link, OperatorRequest("end", "Kim"), START) is False
    assert len(pending(held)) == 1
    other = tmp_path / "elsewhere" / "b.sqlite"
    db, lock = open_for_writing(other)
    db.close()
    lock.close()
    with pytest.raises(AlreadyRunning):
        restore(other, link, START)


def test_a_restore_through_a_symbolic_link_puts_the_file_where_it_leads(tmp_path):
    path, backup = tmp_path / "far" / "c.sqlite", tmp_path / "b.sqlite"
    for each in (path, backup):
        db, lock = open_for_writing(each)
        db.close()
        lock.close()
    link = tmp_path / "c.sqlite"
    link.symlink_to(path)
    assert restore(backup, link, START).kept.parent == path.parent
    assert link.is_symlink()


@pytest.mark.parametrize("what", ["deleted", "replaced", "renamed"])
async def test_nothing_is_confirmed_once_the_file_is_gone(tmp_path, what):
    path = tmp_path / "c.sqlite"
    companion = Companion(path, FakeClock())
    take = lambda number: companion.take(Inbound(Address("telegram", "1"), Typed("hello"), number))  # noqa: E731
    writing = running_writer(companion)
    await writing.__aenter__()
    await take(1)
    if what == "renamed":
        path.rename(tmp_path / "other.sqlite")
    else:
        path.unlink()
    if what == "replaced":
        path.write_bytes(b"")
    with pytest.raises(CommitFailed, match="removed or replaced"):
        await take(2)
    with pytest.raises(CommitFailed, match="removed or replaced"):
        await writing.__aexit__(None, None, None)
    companion.close()


def test_a_disk_that_is_full_at_the_start_is_one_line(tmp_path, monkeypatch):
    def full(*args):
        raise sqlite3.OperationalError("database or disk is full")

    path = tmp_path / "c.sqlite"
    Companion(path, FakeClock()).close()
    with monkeypatch.context() as patched:
        patched.setattr(status, "set_mark", full)
        with pytest.raises(CannotOpen, match="database or disk is full"):
            Companion(path, FakeClock())
    Companion(path, FakeClock()).close()
