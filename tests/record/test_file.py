"""A new file gets all its tables or none, at one wait for the disk."""

import sqlite3
from pathlib import Path

import pytest

from companion.record import file
from companion.record.file import CannotOpen, open_for_writing


def tables(path: Path) -> list[str]:
    db = sqlite3.connect(path)
    try:
        return [name for (name,) in db.execute("select name from sqlite_master where type = 'table'")]
    finally:
        db.close()


@pytest.mark.usefixtures("durable")
def test_a_file_whose_last_step_fails_stays_empty_and_opens_once_it_does_not(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    path, whole = tmp_path / "c.sqlite", file.migrations.apply

    def stopped(db) -> None:
        whole(db)
        raise sqlite3.OperationalError("database or disk is full")

    monkeypatch.setattr(file.migrations, "apply", stopped)
    with pytest.raises(CannotOpen, match="disk is full"):
        open_for_writing(path)
    assert tables(path) == []
    monkeypatch.setattr(file.migrations, "apply", whole)
    db, lock = open_for_writing(path)
    db.close()
    lock.close()
    assert "answers" in tables(path)


def test_a_file_of_the_present_version_is_opened_without_a_write(tmp_path: Path):
    path = tmp_path / "c.sqlite"
    db, lock = open_for_writing(path)
    db.close()
    lock.close()
    before = path.read_bytes()
    db, lock = open_for_writing(path)
    db.close()
    lock.close()
    assert path.read_bytes() == before
