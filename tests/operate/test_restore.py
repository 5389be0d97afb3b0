"""A backup brought back, and everything that is refused before anything is moved."""

from datetime import timedelta

import pytest

from companion.operate.backup import back_up
from companion.operate.integrity import counts_of, open_read_only
from companion.operate.restore import CannotRestore, restore
from companion.record.file import AlreadyRunning
from tests.operate.build import NOW, changing, damage, in_use, killed, made, message, mode


def counts(path):
    with open_read_only(path) as db:
        return counts_of(db)


@pytest.fixture
def lost(tmp_path):
    """A backup, and a database that has gone on since."""
    file = made(tmp_path / "c.sqlite")
    back_up(file, tmp_path / "b.sqlite")
    with changing(file) as db:
        db.execute("insert into refusals (at, version) values ('2026-03-02', 1)")
    return tmp_path / "b.sqlite", file


def test_a_restored_file_is_private_and_holds_what_the_backup_holds(lost):
    backup, file = lost
    done = restore(backup, file, NOW)
    assert counts(file) == done.counts == counts(backup)
    assert mode(file) == 0o600
    assert done.counts["refusals"] == 0


def test_the_old_file_is_kept_aside_with_what_was_only_in_its_log(lost):
    backup, file = lost
    killed(file, "insert into erasures (at) values ('2026-03-02')")
    done = restore(backup, file, NOW)
    assert done.kept.name == "c.before-2026-03-02T180500000Z.sqlite"
    assert (counts(done.kept)["refusals"], counts(done.kept)["erasures"]) == (1, 1)
    assert counts(file)["erasures"] == 0
    assert not any(path.name.endswith(".part") for path in file.parent.iterdir())


def test_a_log_without_its_file_is_not_taken_for_the_new_files(lost):
    backup, file = lost
    killed(file, "insert into erasures (at) values ('2026-03-02')")
    file.unlink()
    assert restore(backup, file, NOW).kept is None
    assert counts(file)["erasures"] == 0


def test_nothing_need_be_there_before(lost, tmp_path):
    backup, _ = lost
    done = restore(backup, tmp_path / "new" / "c.sqlite", NOW)
    assert (done.kept, done.erased) == (None, None)
    assert mode(tmp_path / "new") == 0o700


def test_a_running_companion_is_not_taken_its_file_from(lost):
    backup, file = lost
    with in_use(file), pytest.raises(AlreadyRunning, match="stop it first"):
        restore(backup, file, NOW)
    assert counts(file)["refusals"] == 1


def test_messages_that_will_leave_and_people_erased_since_are_told_of(lost):
    backup, file = lost
    with changing(backup) as db:
        message(db, NOW)
        db.execute("update outbox set settled_at = ''")
        message(db, NOW)
    with changing(file) as db:
        db.execute("pragma foreign_keys=on")
        db.execute("delete from persons")
        db.execute("insert into erasures (at) values ('2026-03-02')")
    done = restore(backup, file, NOW)
    assert (done.waiting, done.erased) == (1, 1)


def test_an_old_file_that_can_not_be_read_is_kept_aside_all_the_same(lost):
    backup, file = lost
    file.write_bytes(b"no database at all" * 300)
    done = restore(backup, file, NOW)
    assert done.kept.read_bytes().startswith(b"no database")
    assert done.erased is None
    assert counts(file) == counts(backup)


def test_two_restores_keep_both_old_files(lost):
    backup, file = lost
    first, second = restore(backup, file, NOW), restore(backup, file, NOW + timedelta(seconds=1))
    assert first.kept != second.kept
    with pytest.raises(CannotRestore, match="already exists"):
        restore(backup, file, NOW)


def a_page_overwritten(backup):
    damage(backup, "answers")


def references_broken(backup):
    with changing(backup) as db:
        db.execute("insert into alerts (person, run, level, because, at) values (99, '1', 'go', '', '')")


def newer(backup):
    with changing(backup) as db:
        db.execute("insert into _sqlite_migrations (migration_set, name, applied_at) values ('companion', 'later', '')")


def foreign(backup):
    backup.unlink()
    with changing(backup) as db:
        db.execute("create table recipes (name text)")


def no_database(backup):
    backup.write_text("a letter to my aunt\n" * 50)


def empty(backup):
    backup.write_bytes(b"")


def missing(backup):
    backup.unlink()


def files(folder):
    """All that is there but what SQLite makes for whoever looks."""
    return {path.name for path in folder.iterdir() if not path.name.endswith(("-wal", "-shm", ".lock"))}


@pytest.mark.parametrize(("spoil", "why"), [
    (a_page_overwritten, "damaged|malformed"), (references_broken, "missing rows"), (newer, "newer version"),
    (foreign, "no.* companion"), (no_database, "not a database"), (empty, "no.* companion"), (missing, "no file")])
def test_what_is_not_sound_is_refused_and_nothing_is_moved(lost, spoil, why):
    backup, file = lost
    spoil(backup)
    before = files(file.parent)
    with pytest.raises(CannotRestore, match=why) as told:
        restore(backup, file, NOW)
    assert "\n" not in str(told.value)
    assert counts(file)["refusals"] == 1
    assert files(file.parent) == before


def test_the_database_itself_is_no_backup_of_it(lost):
    _, file = lost
    with pytest.raises(CannotRestore, match="itself"):
        restore(file, file, NOW)


def test_a_full_disk_is_said_before_anything_is_moved(lost):
    backup, file = lost
    with pytest.raises(CannotRestore, match="too full"):
        restore(backup, file, NOW, free=lambda folder: 0)
    assert counts(file)["refusals"] == 1
