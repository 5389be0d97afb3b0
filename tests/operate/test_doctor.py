"""The doctor: what it says of a bot that is well, ill, running, stopped, or not there."""

from datetime import timedelta

import pytest

from companion.base.settings import read_settings
from companion.operate import checks
from companion.operate.backup import back_up, nightly
from companion.operate.doctor import examine, exit_code, result_line
from companion.operate.heartbeat import OFFSET, POLL
from companion.operate.inspection import Severity
from companion.operate.restore import restore
from companion.record.status import CLOCK_JUMP, set_mark
from companion.record.timestamps import text_of
from companion.screening.sources import SOURCES
from tests.operate.build import NOW, TOKEN, changing, damage, in_use, killed, made, message, reminder, settings

ROOM = 10**12


@pytest.fixture
def file(tmp_path):
    """The file of a bot that is well."""
    path = made(tmp_path / "c.sqlite")
    with changing(path) as db:
        set_mark(db, POLL, 1.0, NOW - timedelta(seconds=40))
        set_mark(db, OFFSET, 0.4, NOW - timedelta(seconds=40))
    nightly(path, tmp_path / "backups", NOW, free=lambda folder: ROOM)
    return path


def found(path, now=NOW, token=TOKEN, free=ROOM, backups="beside", **more):
    folder = path.with_name("backups") if backups == "beside" else None
    return examine(settings(path, token, **more), path, folder, now, free=lambda folder: free)


def of(findings, about):
    """What was found about one thing: its severity and lines."""
    mine = [finding for finding in findings if finding.about == about]
    return max(finding.severity for finding in mine), " ".join(finding.line for finding in mine)


def test_a_bot_that_is_well_is_fine_in_every_line(file):
    findings = found(file)
    assert exit_code(findings) == 0, [result_line(finding) for finding in findings if finding.severity]
    assert {finding.about for finding in findings} == {check.about for check in checks.CHECKS}
    assert all("\n" not in result_line(finding) for finding in findings)


def test_a_source_that_nobody_has_looked_at_for_two_years_is_said(file):
    assert of(found(file), "evidence")[0] is Severity.FINE
    severity, line = of(found(file, now=NOW + timedelta(days=3 * 366)), "evidence")
    assert severity is Severity.LOOK
    assert next(iter(SOURCES)) in line


def test_it_looks_while_the_bot_runs_and_stops_nobody(file):
    with in_use(file) as db:
        db.execute("begin immediate")
        db.execute("insert into refusals (at, version) values ('', 1)")
        findings = found(file)
        db.execute("commit")
    assert exit_code(findings) == 0
    assert "a companion is running" in of(findings, "settings")[1]
    assert "no companion is running" in of(found(file), "settings")[1]


def test_a_bot_that_was_killed_is_not_taken_for_running(file):
    killed(file.with_name("c.sqlite.lock"), "begin exclusive")
    assert "no companion is running" in of(found(file), "settings")[1]


def test_it_changes_nothing(file):
    before = {path.name: path.read_bytes() for path in file.parent.iterdir() if path.is_file()}
    found(file)
    after = {path.name: path.read_bytes() for path in file.parent.iterdir() if path.is_file()}
    assert {name: after[name] for name in before} == before
    assert set(after) - set(before) <= {"c.sqlite-wal", "c.sqlite-shm"}


def test_it_says_how_long_answers_are_kept_where_that_is_limited(file):
    assert "older than" not in of(found(file), "settings")[1]
    assert "answers older than 18 months are deleted" in of(found(file, keep_months=18), "settings")[1]


def test_a_file_that_is_not_there_is_something_to_look_at(tmp_path):
    findings = found(tmp_path / "none.sqlite")
    assert exit_code(findings) == 1
    assert "there is none" in of(findings, "database")[1]
    assert not (tmp_path / "none.sqlite").exists()


@pytest.mark.parametrize("content", [b"a letter to my aunt\n" * 300, b"SQLite format 3\x00" + b"\xff" * 5000])
def test_a_file_that_is_no_database_is_broken(tmp_path, content):
    (tmp_path / "c.sqlite").write_bytes(content)
    severity, line = of(found(tmp_path / "c.sqlite"), "database")
    assert severity == Severity.BROKEN
    assert "restore" in line
    assert "empty" not in line


def test_an_empty_file_is_filled_at_the_next_start(tmp_path):
    (tmp_path / "c.sqlite").touch(mode=0o600)
    assert of(found(tmp_path / "c.sqlite"), "database")[0] == Severity.LOOK


def test_a_folder_in_its_place_is_broken(tmp_path):
    (tmp_path / "c.sqlite").mkdir()
    assert of(found(tmp_path / "c.sqlite"), "database")[0] == Severity.BROKEN


def test_anothers_database_is_broken(tmp_path):
    with changing(tmp_path / "c.sqlite") as db:
        db.execute("create table recipes (name text)")
    severity, line = of(found(tmp_path / "c.sqlite"), "database")
    assert severity == Severity.BROKEN
    assert "not a companion database" in line


@pytest.mark.parametrize("table", ["answers", "outbox", "updates", "reminders", "answers_person", "marks", "_sqlite_migrations"])
def test_a_page_of_random_bytes_is_found_and_the_backup_is_named(file, table):
    damage(file, table)
    findings = found(file)
    assert exit_code(findings) == 2
    severity, line = of(findings, "database")
    assert severity == Severity.BROKEN
    assert "companion-2026-03-02.sqlite" in line


def test_a_row_that_belongs_to_nobody_is_found(file):
    with changing(file) as db:
        db.execute("insert into alerts (person, run, level, because, at) values (99, '1', 'go', '', '')")
    assert "alerts" in of(found(file), "database")[1]


def test_a_newer_schema_is_broken_and_an_older_one_is_not(file):
    with changing(file) as db:
        db.execute("insert into _sqlite_migrations (migration_set, name, applied_at) values ('companion', 'later', '')")
    severity, line = of(found(file), "schema")
    assert severity == Severity.BROKEN
    assert "update the companion" in line
    with changing(file) as db:
        db.execute("delete from _sqlite_migrations where name <> 'first'")
        db.execute("drop table marks")
    severity, line = of(found(file), "schema")
    assert severity == Severity.FINE
    assert "next start" in line


def test_a_file_without_marks_says_that_no_poll_is_known(file):
    with changing(file) as db:
        db.execute("drop table marks")
    assert of(found(file), "poll")[0] == Severity.FINE
    with in_use_as_it_is(file):
        assert of(found(file), "poll")[0] == Severity.LOOK


def in_use_as_it_is(path):
    """Its lock held, without bringing its schema up to date."""
    import contextlib

    from companion.record.file import InstanceLock
    return contextlib.closing(InstanceLock(path))


@pytest.mark.parametrize(("token", "severity"), [
    ("", Severity.FINE), (TOKEN, Severity.FINE), ("4242:short", Severity.LOOK), ("secret words", Severity.BROKEN),
    ("4242:\N{LATIN SMALL LETTER E WITH ACUTE}" + "a" * 40, Severity.BROKEN)])
def test_a_token_is_judged_by_its_shape_and_never_shown(file, token, severity):
    findings = found(file, token=token)
    assert of(findings, "token")[0] == severity
    assert not token or not any(token in result_line(finding) or "short" in result_line(finding) for finding in findings)


@pytest.mark.parametrize(("url", "severity"), [
    ("https://api.telegram.org", 0), ("http://127.0.0.1:8081", 0), ("http://[::1]:8081", 0), ("http://localhost", 0),
    ("http://bots.example.org", 1)])
def test_an_address_that_shows_the_token_to_the_network_is_warned_of(file, url, severity):
    assert of(found(file, api_url=url), "settings")[0] == severity


@pytest.mark.parametrize(("age", "severity", "word"), [
    (timedelta(minutes=5), 0, "last good poll"), (timedelta(minutes=6), 1, "companion run"),
    (timedelta(hours=24), 1, "until 2026-03-03T18:05"), (timedelta(hours=25), 2, "lost"), (-timedelta(minutes=6), 1, "set back")])
def test_the_last_good_poll_tells_what_waits_and_what_is_lost(file, age, severity, word):
    with changing(file) as db:
        set_mark(db, POLL, 1.0, NOW)
    got, line = of(found(file, now=NOW + age), "poll")
    assert got == severity
    assert word in line


def test_a_bot_that_runs_and_is_not_answered_is_not_told_to_start(file):
    with in_use(file):
        line = of(found(file, now=NOW + timedelta(minutes=10)), "poll")[1]
    assert "network" in line
    assert "companion run" not in line


def test_what_could_not_be_handled_is_told_with_its_moment_for_a_week(file):
    with changing(file) as db:
        db.execute("insert into updates values ('telegram', 5, ?, 'KeyError')", (text_of(NOW - timedelta(days=1)),))
        db.execute("insert into updates values ('telegram', 6, ?, null)", (text_of(NOW - timedelta(days=2)),))
    severity, line = of(found(file), "handled")
    assert severity == Severity.LOOK
    assert line.startswith("1 messages")
    assert "2026-03-01" in line
    assert "KeyError" in line
    assert of(found(file, now=NOW + timedelta(days=7)), "handled")[0] == Severity.FINE
    with changing(file) as db:
        db.execute("insert into updates values ('telegram', 7, ?, 'ZeroDivisionError')", (text_of(NOW - timedelta(hours=1)),))
    assert "the oldest at 2026-03-01T18:05:00.000Z (KeyError)" in of(found(file), "handled")[1]


@pytest.mark.parametrize(("channel", "age", "severity"), [
    ("telegram", timedelta(minutes=10), 0), ("telegram", timedelta(minutes=11), 1), ("terminal", timedelta(days=9), 0),
    ("telegram", -timedelta(days=1), 0)])
def test_a_message_that_waits_too_long_is_told_of(file, channel, age, severity):
    with changing(file) as db:
        message(db, NOW - age, channel)
    assert of(found(file), "messages")[0] == severity


def test_the_oldest_waiting_message_gives_the_moment(file):
    with changing(file) as db:
        message(db, NOW - timedelta(minutes=30))
        message(db, NOW - timedelta(minutes=5))
    assert "2 wait to be sent, the oldest since 2026-03-02T17:35" in of(found(file), "messages")[1]


def test_an_answer_to_pain_that_waits_is_broken_and_a_clock_that_was_set_is_told_of(file):
    with changing(file) as db:
        db.execute("insert into owed values ('telegram', '5', 'pain', ?)", (text_of(NOW - timedelta(seconds=20)),))
        assert of(found(file), "messages")[0] == Severity.FINE
        db.execute("update owed set at = ?", (text_of(NOW - timedelta(seconds=40)),))
        set_mark(db, CLOCK_JUMP, -3600.0, NOW - timedelta(hours=1))
    worst = [one for one in found(file) if one.severity is Severity.BROKEN]
    assert [one.line[:42] for one in worst] == ["an answer to pain waits to be sent since 2"]
    assert any(one.about == "clock" and "set by -3600 s" in one.line for one in found(file))


def test_an_overdue_reminder_is_told_of_unless_its_person_is_gone(file):
    with changing(file) as db:
        reminder(db, NOW - timedelta(minutes=59))
        assert of(found(file), "reminders")[0] == Severity.FINE
        reminder(db, NOW - timedelta(minutes=61))
        assert of(found(file), "reminders")[0] == Severity.LOOK
        db.execute("update addresses set gone_at = ?", (text_of(NOW),))
        assert of(found(file), "reminders")[0] == Severity.FINE


@pytest.mark.parametrize(("free", "severity"), [(10**12, 0), (400 * 10**6, 1), (40 * 10**6, 2)])
def test_a_disk_that_fills_is_told_of(file, free, severity):
    assert of(found(file, free=free), "disk")[0] == severity


@pytest.mark.parametrize(("off", "severity", "word"), [
    (29.0, 0, "within"), (31.0, 1, "behind"), (-31.0, 1, "ahead of"), (-4000.0, 2, "ahead of"), ("nonsense", 2, "can't be read")])
def test_a_clock_that_differs_from_the_chats_is_told_of(file, off, severity, word):
    with changing(file) as db:
        set_mark(db, OFFSET, off, NOW)
    got, line = of(found(file), "clock")
    assert got == severity
    assert word in line


def test_what_others_can_read_is_told_of(file):
    file.chmod(0o644)
    severity, line = of(found(file), "private")
    assert severity == Severity.LOOK
    assert f"chmod 600 {file}" in line
    file.chmod(0o600)
    (file.parent / "backups" / "companion-2026-03-02.sqlite").chmod(0o640)
    assert of(found(file), "private")[0] == Severity.LOOK


def test_an_old_file_that_a_restore_kept_is_named_and_told_of_after_a_week(file, tmp_path):
    back_up(file, tmp_path / "b.sqlite")
    kept = restore(tmp_path / "b.sqlite", file, NOW).kept
    severity, line = of(found(file), "backups")
    assert severity == Severity.FINE
    assert f"{kept} was kept by a restore" in line
    week = of(found(file, now=NOW + timedelta(days=8), token=""), "backups")
    assert week[0] == Severity.LOOK
    kept.unlink()
    assert "restore" not in of(found(file), "backups")[1]


def test_what_is_in_the_log_of_writes_is_looked_at_too(file):
    with in_use(file) as db:
        db.execute("insert into refusals (at, version) values ('', 1)")
        file.with_name("c.sqlite-wal").chmod(0o644)
        assert "c.sqlite-wal" in of(found(file), "private")[1]


def test_a_settings_file_with_the_token_in_it_that_others_can_read_is_told_of(file, tmp_path):
    toml = tmp_path / "companion.toml"
    toml.write_text(f'COMPANION_TOKEN = "{TOKEN}"\n')
    for mode, severity in ((0o644, Severity.LOOK), (0o600, Severity.FINE)):
        toml.chmod(mode)
        findings = examine(read_settings({}, toml), file, None, NOW, free=lambda folder: ROOM)
        assert of(findings, "private")[0] == severity
        assert TOKEN not in str(findings)
    assert f"chmod 600 {toml}" not in of(findings, "private")[1]
    toml.write_text(f'COMPANION_DATABASE = "{file}"\n')
    assert read_settings({"COMPANION_TOKEN": TOKEN}, toml).secrets_in is None


def test_backups_that_stopped_are_told_of(file):
    assert of(found(file, now=NOW + timedelta(days=1)), "backups")[0] == Severity.FINE
    assert of(found(file, now=NOW + timedelta(days=2)), "backups")[0] == Severity.LOOK
    assert of(found(file, now=NOW + timedelta(days=2), token=""), "backups")[0] == Severity.FINE
    severity, line = of(found(file, backups="off"), "backups")
    assert severity == Severity.FINE
    assert "turned off" in line


@pytest.mark.parametrize(("version", "severity", "word"), [
    ((3, 36, 0), 2, "too old"), ((3, 37, 1), 1, "savepoint"), ((3, 37, 2), 0, "WAL-reset"), ((3, 40, 1), 0, "WAL-reset"),
    ((3, 44, 5), 0, "WAL-reset"), ((3, 50, 6), 0, "WAL-reset"), ((3, 51, 2), 0, "WAL-reset")])
def test_a_version_of_sqlite_is_told_with_its_faults(version, severity, word):
    said = list(checks.sqlite_of(version))
    assert max(one for one, _ in said) == severity
    assert any(word in line for _, line in said)


@pytest.mark.parametrize("version", [(3, 44, 6), (3, 50, 7), (3, 51, 3), (3, 53, 0)])
def test_a_mended_version_of_sqlite_has_no_fault(version):
    assert [one for one, _ in checks.sqlite_of(version)] == [Severity.FINE]


def test_the_worst_finding_is_the_exit_code():
    assert exit_code([]) == 0
