"""Files that only their owner can read, whatever the process's mask."""

import os

import pytest

from companion.base.private import open_to_others, private_file, private_folder
from tests.operate.build import changing, mode


@pytest.fixture(autouse=True)
def careless_mask():
    before = os.umask(0)
    yield
    os.umask(before)


def test_a_new_folder_and_file_are_the_owners_only(tmp_path):
    folder = tmp_path / "a" / "b"
    private_folder(folder)
    private_file(folder / "c.sqlite")
    assert (mode(folder), mode(folder / "c.sqlite")) == (0o700, 0o600)


def test_what_sqlite_writes_beside_a_private_file_is_private_too(tmp_path):
    private_file(tmp_path / "c.sqlite")
    with changing(tmp_path / "c.sqlite") as db:
        db.execute("pragma journal_mode=wal").fetchall()
        db.execute("create table t (x)")
        assert sorted(path.name for path in tmp_path.iterdir()) == ["c.sqlite", "c.sqlite-shm", "c.sqlite-wal"]
        assert {mode(path) for path in tmp_path.iterdir()} == {0o600}


def test_what_is_there_already_is_left_as_it_is(tmp_path):
    (tmp_path / "kept").write_text("words")
    (tmp_path / "kept").chmod(0o640)
    private_file(tmp_path / "kept")
    private_folder(tmp_path)
    assert (tmp_path / "kept").read_text() == "words"
    assert mode(tmp_path / "kept") == 0o640
    assert open_to_others(tmp_path / "kept")


def test_making_a_file_private_again_lets_go_of_no_lock(tmp_path):
    lock = tmp_path / "lock"
    private_file(lock)
    with changing(lock) as holder:
        holder.execute("begin exclusive")
        private_file(lock)
        code = f"import sqlite3; sqlite3.connect({str(lock)!r}, timeout=0).execute('begin exclusive')"
        import subprocess
        import sys
        tried = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False, timeout=30)
        assert "locked" in tried.stderr
