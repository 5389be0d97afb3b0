"""What the parts of the companion tell, and the commands as a person runs them."""

import os

import pytest
from click.testing import CliRunner

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import stopwatch
from companion.base.settings import BadSettings, read_settings
from companion.channels.telegram.poll import _moment
from companion.cli.main import main
from companion.operate.integrity import open_read_only
from companion.operate.metrics import Metrics
from companion.port import Address, Inbound, Typed
from companion.record.file import BUSY_MS
from companion.record.outbox import backlog
from tests.fakes.clock import FakeClock
from tests.operate.build import NOW, damage, in_use, killed, made, mode

ILKA = Address("telegram", "77")


async def test_turns_messages_and_commits_are_told_to_who_counts(tmp_path):
    companion, clock = Companion(tmp_path / "c.sqlite", FakeClock()), FakeClock()
    metrics = Metrics(clock, lambda now: backlog(companion.db.conn, now, "telegram"), lambda: False)
    companion.watch, companion.writer.on_commit = metrics, metrics.committed
    async with running_writer(companion):
        for words in ("hello", "yes", "yes"):
            await companion.take(Inbound(ILKA, Typed(words), name="Ilka"))
        assert 'companion_outbox_waiting 0.0' not in text(metrics)
        store = CompanionOutbox(companion, "telegram")
        first, = await store.due(NOW)
        await store.mark_sent(first.id, NOW, "1")
        second, = await store.due(NOW)
        await store.mark_dropped(second.id, NOW, "may have arrived")
        await store.mark_gone(ILKA, NOW, "blocked")
        companion._turn = lambda db, inbound: {}["a fault of ours"]
        await companion.take(Inbound(ILKA, Typed("175"), name="Ilka"))
    said = text(metrics)
    assert "companion_turns_taken_total 3.0" in said
    assert "companion_turns_failed_total 1.0" in said
    assert "companion_messages_sent_total 1.0" in said
    assert 'companion_messages_dropped_total{reason="may_have_arrived"} 1.0' in said
    assert 'companion_messages_dropped_total{reason="gone"} 0.0' not in said
    assert "companion_commit_seconds_count 0.0" not in said
    companion.close()


def text(metrics):
    return metrics.answer("/metrics").body.decode()


@pytest.mark.parametrize("then", ["a turn", "a sweep"])
async def test_what_was_erased_leaves_the_log_once_no_reader_holds_it_up_and_nobody_waits_for_that(tmp_path, then):
    companion, log = Companion(tmp_path / "c.sqlite", FakeClock()), tmp_path / "c.sqlite-wal"

    async def turn(number):
        await companion.take(Inbound(ILKA, Typed("hello"), update_id=number, name="Ilka"))
    async with running_writer(companion):
        with open_read_only(tmp_path / "c.sqlite") as reader:
            reader.execute("begin")
            reader.execute("select count(*) from persons").fetchone()
            companion.erased, took = True, stopwatch()
            await turn(1)
            assert took() < 2, "everybody waits for one who reads"
            assert log.stat().st_size > 0
        await (turn(1) if then == "a turn" else companion.sweep())
        assert log.stat().st_size == 0
    assert companion.db.execute("pragma busy_timeout").fetchone() == (BUSY_MS,)
    companion.close()


async def test_what_a_killed_process_left_in_the_log_goes_once_no_reader_holds_it_up(tmp_path):
    file, log = made(tmp_path / "c.sqlite"), tmp_path / "c.sqlite-wal"
    killed(file, "insert into refusals (at, version) values ('quokka', 1)")
    with open_read_only(file) as reader:
        reader.execute("begin")
        assert reader.execute("select count(*) from refusals").fetchone() == (1,)
        took = stopwatch()
        companion = Companion(file, FakeClock())
        assert took() < 2
        assert b"quokka" in log.read_bytes()
    async with running_writer(companion):
        await companion.sweep()
    assert log.stat().st_size == 0
    companion.close()


def test_a_new_database_is_its_owners_only(tmp_path):
    before = os.umask(0)
    try:
        with in_use(tmp_path / "new" / "c.sqlite"):
            assert {mode(path) for path in (tmp_path / "new").iterdir()} == {0o600}
    finally:
        os.umask(before)
    assert mode(tmp_path / "new") == 0o700


@pytest.mark.parametrize(("date", "there"), [("Mon, 02 Mar 2026 18:05:00 GMT", NOW), ("", None), ("soon", None)])
def test_an_http_date_is_a_moment_or_nothing(date, there):
    assert _moment(date) == there


@pytest.fixture
def run(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for name in list(os.environ):
        if name.startswith("COMPANION_"):
            monkeypatch.delenv(name)
    monkeypatch.setenv("COMPANION_DATABASE", str(tmp_path / "c.sqlite"))
    return lambda *words: CliRunner().invoke(main, words)


def test_the_doctors_exit_code_follows_the_worst(run, tmp_path):
    assert run("doctor").exit_code == 1
    made(tmp_path / "c.sqlite")
    assert run("doctor").exit_code == 0
    damage(tmp_path / "c.sqlite", "answers")
    told = run("doctor")
    assert told.exit_code == 2
    assert "BROKEN  database" in told.output


def test_a_backup_is_written_and_brought_back(run, tmp_path):
    made(tmp_path / "c.sqlite")
    assert "checked" in run("backup", "b.sqlite").output
    assert run("backup", "b.sqlite").exit_code == 2
    assert run("backup", "--replace", "b.sqlite").exit_code == 0
    (tmp_path / "c.sqlite").write_text("spoilt")
    assert run("restore", "b.sqlite").exit_code == 2
    assert (tmp_path / "c.sqlite").read_text() == "spoilt"
    done = run("restore", "--yes", "b.sqlite")
    assert done.exit_code == 0, done.output
    assert "c.before-" in done.output
    assert run("doctor").exit_code == 0


@pytest.mark.parametrize("words", [("backup", "b.sqlite"), ("restore", "--yes", "b.sqlite"), ("restore", "b.sqlite")])
def test_what_can_not_be_done_is_one_line_and_exit_code_2(run, words):
    told = run(*words)
    assert told.exit_code == 2
    assert told.stderr.count("\n") == 1


def test_a_running_companion_keeps_its_file(run, tmp_path):
    made(tmp_path / "c.sqlite")
    run("backup", "b.sqlite")
    with in_use(tmp_path / "c.sqlite"):
        told = run("restore", "--yes", "b.sqlite")
    assert told.exit_code == 2
    assert "stop it first" in told.stderr


def test_backups_lie_beside_the_database_elsewhere_or_nowhere(tmp_path):
    database = tmp_path / "c.sqlite"
    assert read_settings({}).backup_folder(database) == tmp_path / "backups"
    assert read_settings({"COMPANION_BACKUPS": "/mnt/x"}).backup_folder(database).as_posix() == "/mnt/x"
    assert read_settings({"COMPANION_BACKUPS": "none"}).backup_folder(database) is None


@pytest.mark.parametrize("port", ["0", "65536", "-1", "http", "९"])
def test_a_port_that_is_none_is_refused(port):
    assert read_settings({"COMPANION_METRICS_PORT": "9000"}).metrics_port == 9000
    with pytest.raises(BadSettings, match="COMPANION_METRICS_PORT"):
        read_settings({"COMPANION_METRICS_PORT": port})
