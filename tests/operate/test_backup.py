"""Backups: proved, private, whole or not at all, and the old ones kept until a new one is there."""

import asyncio
import os
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.operate import integrity
from companion.operate.backup import BackupFailed, back_up, backup_plan, daily, nightly, tonight
from companion.operate.integrity import Unsound, copy, counts_of, open_read_only
from tests.fakes.clock import FakeClock
from tests.operate.build import NOW, changing, damage, fill, in_use, killed, made, mode


def rows(path, table="answers"):
    with open_read_only(path) as db:
        return db.execute(f"select * from {table}").fetchall()


def left_over(folder):
    return [path.name for path in folder.iterdir() if "part" in path.name]


def test_a_backup_of_a_file_in_use_holds_what_is_committed(tmp_path):
    with in_use(tmp_path / "c.sqlite") as db:
        fill(db, 5)
        db.execute("begin immediate")
        db.execute("delete from persons")
        done = back_up(tmp_path / "c.sqlite", tmp_path / "out" / "b.sqlite")
        db.execute("rollback")
    assert done.counts["answers"] == 5
    assert len(rows(done.path)) == 5
    assert done.size == done.path.stat().st_size


def test_a_backup_holds_what_a_killed_process_had_committed(tmp_path):
    file = made(tmp_path / "c.sqlite")
    killed(file, "insert into refusals (at, version) values ('2026-03-02', 1)")
    assert file.with_name("c.sqlite-wal").stat().st_size > 0
    assert back_up(file, tmp_path / "b.sqlite").counts["refusals"] == 1


def test_a_backup_is_one_private_file_in_a_private_folder(tmp_path):
    before = os.umask(0)
    try:
        back_up(made(tmp_path / "c.sqlite"), tmp_path / "out" / "b.sqlite")
    finally:
        os.umask(before)
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["b.sqlite"]
    assert (mode(tmp_path / "out"), mode(tmp_path / "out" / "b.sqlite")) == (0o700, 0o600)


def test_a_backup_overwrites_nothing_unless_asked(tmp_path):
    file, to = made(tmp_path / "c.sqlite"), tmp_path / "b.sqlite"
    to.write_text("something of mine")
    with pytest.raises(BackupFailed, match="already exists"):
        back_up(file, to)
    assert to.read_text() == "something of mine"
    back_up(file, to, replace=True)
    assert len(rows(to)) == 3


def test_a_backup_never_overwrites_its_own_database(tmp_path):
    file = made(tmp_path / "c.sqlite")
    (tmp_path / "same.sqlite").symlink_to(file)
    for to in (file, tmp_path / "same.sqlite"):
        with pytest.raises(BackupFailed, match="already exists"):
            back_up(file, to, replace=True)
    assert len(rows(file)) == 3


@pytest.mark.parametrize("to", ["", "c.sqlite/b.sqlite"])
def test_a_place_that_can_not_be_written_is_one_line(tmp_path, to):
    with pytest.raises(BackupFailed) as told:
        back_up(made(tmp_path / "c.sqlite"), tmp_path / to)
    assert "\n" not in str(told.value)


def test_a_full_disk_is_said_and_nothing_is_left_behind(tmp_path):
    with pytest.raises(BackupFailed, match="too full"):
        back_up(made(tmp_path / "c.sqlite"), tmp_path / "b.sqlite", free=lambda folder: 10_000)
    assert not (tmp_path / "b.sqlite").exists()
    assert left_over(tmp_path) == []


def test_a_damaged_file_is_not_taken_for_a_backup(tmp_path):
    damage(made(tmp_path / "c.sqlite", answers=200), "answers")
    with pytest.raises(BackupFailed, match=r"damaged|malformed"):
        back_up(tmp_path / "c.sqlite", tmp_path / "b.sqlite")
    assert not (tmp_path / "b.sqlite").exists()
    assert left_over(tmp_path) == []


def test_a_copy_with_other_rows_is_found_out(tmp_path, monkeypatch):
    file, real = made(tmp_path / "c.sqlite"), integrity._fill

    def loses_one(db, into):
        real(db, into)
        with changing(into) as target:
            target.execute("delete from answers where id = 1")
    monkeypatch.setattr(integrity, "_fill", loses_one)
    with pytest.raises(Unsound, match="the same rows"):
        copy(file, tmp_path / "b.sqlite")


def test_a_copy_is_of_one_moment_though_rows_are_added_while_it_is_made(tmp_path, monkeypatch):
    with in_use(tmp_path / "c.sqlite") as live:
        fill(live, 5)
        real = integrity._fill

        def meanwhile(db, into):
            live.execute("insert into refusals (at, version) values ('2026-03-02', 1)")
            real(db, into)
        monkeypatch.setattr(integrity, "_fill", meanwhile)
        counts = copy(tmp_path / "c.sqlite", tmp_path / "b.sqlite")
        assert (counts["refusals"], counts_of(live)["refusals"]) == (0, 1)
    assert rows(tmp_path / "b.sqlite", "refusals") == []


def test_a_path_with_any_characters_is_only_a_path(tmp_path):
    file = made(tmp_path / "a b?mode=rw#%41.sqlite")
    assert back_up(file, tmp_path / "50 % ?.sqlite").counts["answers"] == 3
    assert sorted(path.name for path in tmp_path.iterdir() if path.suffix == ".sqlite") == ["50 % ?.sqlite", "a b?mode=rw#%41.sqlite"]


def test_a_file_that_appears_while_the_backup_is_made_is_not_overwritten(tmp_path, monkeypatch):
    file, to = made(tmp_path / "c.sqlite"), tmp_path / "b.sqlite"

    def and_somebody_else_writes(source, into, free):
        to.write_text("theirs")
        return copy(source, into, free)
    monkeypatch.setattr("companion.operate.backup.copy", and_somebody_else_writes)
    with pytest.raises(BackupFailed, match="already exists"):
        back_up(file, to)
    assert to.read_text() == "theirs"


# one a day ------------------------------------------------------------------------------------------------


def named(*days):
    return [f"companion-2026-02-{day:02}.sqlite" for day in days]


def test_todays_backup_is_made_once():
    today = f"companion-{NOW:%Y-%m-%d}.sqlite"
    assert backup_plan([], NOW).make == today
    assert backup_plan([today], NOW).make is None
    assert backup_plan([today], NOW + timedelta(days=1)).make == "companion-2026-03-03.sqlite"


def test_the_oldest_beyond_a_week_go_and_foreign_files_stay():
    there = [*named(24, 25, 26, 27, 28), "before the move.sqlite", "companion-2020-01-01.sqlite.old", "notes.txt"]
    assert backup_plan(there, NOW).remove == ()
    assert backup_plan([*there, *named(22, 23)], NOW).remove == tuple(named(22, 23))


def test_after_days_on_which_the_bot_did_not_run_what_was_promised_to_be_gone_goes_too():
    assert backup_plan(named(10, 23, 24), NOW).remove == tuple(named(10, 23))


@given(st.sets(st.dates(date(2025, 1, 1), date(2027, 1, 1))), st.integers(1, 9))
def test_every_plan_keeps_today_and_never_more_nor_less_than_it_should(days, keep):
    names = {f"companion-{day}.sqlite" for day in days}
    todo = backup_plan(names, NOW, keep)
    today = f"companion-{NOW:%Y-%m-%d}.sqlite"
    left = {*names, today} - set(todo.remove)
    assert today in left
    assert set(todo.remove) <= names
    young = {name for name in names if name > f"companion-{NOW - timedelta(days=keep):%Y-%m-%d}.sqlite"}
    assert min(keep, len(young | {today})) <= len(left) <= keep + 1
    assert left <= young | {today}
    assert all(gone < kept for gone in todo.remove for kept in left - {today})


def test_nights_leave_the_last_seven(tmp_path):
    file, folder = made(tmp_path / "c.sqlite"), tmp_path / "backups"
    for night in range(10):
        assert nightly(file, folder, NOW + timedelta(days=night)) is not None
        assert nightly(file, folder, NOW + timedelta(days=night, hours=1)) is None
    assert daily(os.listdir(folder)) == [f"companion-2026-03-{day:02}.sqlite" for day in range(5, 12)]


def test_a_full_disk_keeps_the_old_backups(tmp_path):
    file, folder = made(tmp_path / "c.sqlite"), tmp_path / "backups"
    for night in range(7):
        nightly(file, folder, NOW + timedelta(days=night))
    before = sorted(os.listdir(folder))
    with pytest.raises(BackupFailed, match="too full"):
        nightly(file, folder, NOW + timedelta(days=7), free=lambda folder: 0)
    assert sorted(os.listdir(folder)) == before


def test_what_a_killed_backup_left_is_cleared_away_and_nothing_else(tmp_path):
    file, folder = made(tmp_path / "c.sqlite"), tmp_path / "backups"
    folder.mkdir()
    for name in (".companion-2026-03-01.sqlite.ab12_x.part", ".companion-2026-03-01.sqlite.ab12_x.part-journal", ".mine.part"):
        (folder / name).write_text("half")
    nightly(file, folder, NOW)
    assert sorted(os.listdir(folder)) == [".mine.part", "companion-2026-03-02.sqlite"]


async def test_the_loop_goes_on_while_the_nightly_backup_is_made(tmp_path):
    file, clock = made(tmp_path / "c.sqlite"), FakeClock()
    making = asyncio.create_task(tonight(file, tmp_path / "backups", clock))
    turns = 0
    while not making.done():
        turns += 1
        await asyncio.sleep(0)
    assert turns > 1
    assert (await making).counts["answers"] == 3


async def test_a_night_without_a_backup_is_one_line_in_the_log(tmp_path, caplog):
    assert await tonight(tmp_path / "none.sqlite", tmp_path / "backups", FakeClock()) is None
    (record,) = caplog.records
    assert "the old ones are kept" in record.getMessage()
    assert record.exc_info is None
