"""What goes wrong without a kill: the file and the network. FAULTS says what the bot does then; the tests show it.

``companion run`` lives through all but three: a token that Telegram does not know, a second instance, and a file it can't
open, read or write. Those end it with one line and exit code 2, and with nothing confirmed to Telegram that is not kept.
"""

from __future__ import annotations

import asyncio
import logging
import re
import socket
import sqlite3
from collections.abc import AsyncIterator, Callable
from contextlib import AsyncExitStack, suppress
from datetime import timedelta
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from companion.app.outbox_store import CompanionOutbox
from companion.app.run import running_writer
from companion.app.service import Companion
from companion.channels.telegram import SecondInstance, TelegramSettings, WrongToken, run_telegram
from companion.conversation.effects import Say
from companion.record.people import person_at
from companion.record.persist import put_message
from companion.record.writer import CommitFailed
from tests.crash.nursery import Nursery
from tests.fakes.bot_api import TOKEN, BotApi, Fault, flood
from tests.fakes.clock import FakeClock
from tests.fakes.wire import Server
from tests.table import each_row

TESTS = Path(__file__).parents[1]


class Row(NamedTuple):
    """A fault, what the bot does, and the test that shows it."""

    fault: str
    does: str
    test: str


ENDS = "ends with one line and code 2; the update is given again at the next start"

FAULTS = (
    Row("disk full", ENDS, "test_a_file_that_fails_ends_the_bot_and_the_update_comes_again"),
    Row("a file that may not grow (EFBIG)", ENDS, "test_a_commit_that_stops_anywhere_is_kept_whole_or_not_at_all"),
    Row("an I/O error on commit", ENDS, "test_a_file_that_fails_ends_the_bot_and_the_update_comes_again"),
    Row("an I/O error while reading", ENDS, "test_an_outbox_that_can_not_be_read_ends_the_bot_in_one_line"),
    Row("an I/O error on commit and on the way back", "all that wait hear of it",
        "test_a_disk_that_fails_at_the_rollback_too_leaves_nobody_waiting"),
    Row("another program holds the file for longer than 5 s", ENDS, "test_a_file_that_fails_ends_the_bot_and_the_update_comes_again"),
    Row("the file becomes read-only", ENDS, "test_a_file_that_fails_ends_the_bot_and_the_update_comes_again"),
    Row("a damaged page", f"as soon as it is read, {ENDS}", "test_a_damaged_page_ends_the_bot_before_it_writes_into_the_file"),
    Row("a file or folder that can't be opened", "one line, code 2", "test_a_command_that_can_not_go_on_ends_with_one_line_and_code_2"),
    Row("a read-only file at the start", "one line, code 2", "test_a_command_that_can_not_go_on_ends_with_one_line_and_code_2"),
    Row("no database", "one line, code 2", "test_what_is_no_database_is_refused_in_one_line"),
    Row("a companion has the file already", "one line, code 2", "test_a_second_companion_on_the_same_file_is_refused"),
    Row("a file of a newer version", "one line, code 2", "test_a_file_made_by_a_newer_version_is_refused"),
    Row("SQL of ours that is wrong", "that turn fails and is answered kindly", "test_a_turn_whose_sql_is_wrong_does_not_end_the_bot"),
    Row("400 on a send", "that message is dropped, with a line", "test_a_message_that_telegram_never_takes_is_dropped"),
    Row("400 chat not found, 403 blocked", "nothing more to that chat until they write",
        "test_somebody_who_has_blocked_the_bot_is_found_out_by_a_send"),
    Row("401 or 404 at the start", "one line, code 2", "test_a_wrong_token_ends_in_one_clear_error_without_the_token"),
    Row("401 on polls", "after three in a row one line, code 2", "test_a_token_that_is_revoked_while_running_ends_the_channel"),
    Row("a single 401, 404 or 409 on a poll", "the poll is made again", "test_one_odd_refusal_of_a_poll_is_not_the_end"),
    Row("404 on a send", "it is sent again", "test_a_send_to_which_telegram_is_not_found_is_made_again"),
    Row("409: a second instance", "the newcomer ends, one line, code 2", "test_a_second_instance_gives_way_and_the_first_goes_on"),
    Row("429 on a send", "that chat waits as long as it says", "test_a_flood_wait_is_obeyed_on_the_wire"),
    Row("429 on a poll", "the next poll waits as long", "test_a_poll_that_is_told_to_wait_waits_as_long"),
    Row("429 at the start", "the start waits as long", "test_a_start_that_is_told_to_wait_waits_as_long"),
    Row("500, 502 at the start", "tried again, 1 s to 30 s apart", "test_it_waits_for_telegram_to_be_reached_at_the_start"),
    Row("500, 502 on a poll", "made again, 1 s to 30 s apart", "test_polls_that_fail_are_not_made_in_a_hurry"),
    Row("500, 502, a cut connection on a send", "it is sent again", "test_a_send_that_fails_on_the_way_is_tried_again"),
    Row("a send that hangs after it was taken, or cut JSON", "sent again only if it must arrive",
        "test_a_send_without_a_readable_answer_is_repeated_unless_it_is_a_courtesy"),
    Row("a poll that hangs after it was taken", "made again; nothing is lost", "test_a_poll_that_hangs_is_given_up_and_made_again"),
    Row("cut JSON on a poll", "made again", "test_a_poll_that_fails_is_made_again"),
    Row("connection refused", "tried again until somebody is there", "test_it_starts_before_there_is_a_network"),
    Row("a name that is not found", "tried again until it is", "test_it_starts_before_there_is_a_network"),
    Row("an hour without network", "within half a minute of its end all that waited is there",
        "test_after_an_hour_without_network_all_that_waited_comes_within_half_a_minute"),
    Row("an update twice, out of order, ids that start over", "each is taken once", "test_updates_twice_or_out_of_order_are_taken_once"),
    Row("an update id from two days ago", "it is a new one", "test_an_update_number_may_start_over"),
)


@each_row("row", FAULTS, ids=[row.fault for row in FAULTS])
def test_every_fault_that_is_stated_has_its_test(row: Row) -> None:
    tests = {name for file in TESTS.rglob("test_*.py") for name in re.findall(r"def (test_\w+)\(", file.read_text(encoding="utf-8"))}
    assert row.test in tests


# the whole bot in this process ----------------------------------------------------------------------------


class Whole:
    """The companion on Telegram, whole, on a clock that stands still; may be started again on the same file."""

    def __init__(self, api: BotApi, database: Path, **settings: Any) -> None:
        self.api, self.database, self.clock = api, database, FakeClock()
        self.settings = TelegramSettings(TOKEN, **{"api_url": api.url, "patience": 3} | settings)

    async def __aenter__(self) -> Whole:
        self.companion, self.stop, self.work = Companion(self.database, self.clock), asyncio.Event(), AsyncExitStack()
        await self.work.enter_async_context(running_writer(self.companion))
        self.task = asyncio.create_task(run_telegram(
            self.settings, self.companion.take, CompanionOutbox(self.companion, "telegram"), self.clock, self.stop,
            lambda wake: setattr(self.companion, "on_commit", lambda channel: wake())))
        return self

    async def __aexit__(self, *_: object) -> None:
        self.stop.set()
        with suppress(Exception):  # what it raises is for those who wait for its end
            await self.ended()
        with suppress(CommitFailed):
            await self.work.aclose()
        with suppress(sqlite3.Error):
            self.companion.close()
        self.task.cancel()
        await asyncio.gather(self.task, return_exceptions=True)

    async def ended(self) -> None:
        """Until the channel ends; raises what it raises."""
        async with asyncio.timeout(5):
            while not self.task.done():  # a clean stop waits for what is due
                await self.clock.advance(1)
                await asyncio.sleep(0.002)
        await self.task

    async def moved_until(self, holds: Callable[[], bool], step: float = 1.0, most: float = 7200) -> float:
        """Let time pass until it holds; gives how many seconds did."""
        passed = 0.0
        while not holds():
            assert passed < most
            assert not self.task.done(), self.task
            await self.clock.advance(step)
            await asyncio.sleep(0.002)
            passed += step
        return passed

    async def heard(self, count: int) -> list[str]:
        """What was sent, once there is so much of it."""
        await self.moved_until(lambda: len(self.api.sent) >= count)
        return [one.text for one in self.api.sent]

    async def welcomed(self) -> None:
        """Somebody has agreed and is asked for their age."""
        await self.api.say(1, "hi")
        await self.heard(2)
        await self.api.say(1, "yes")
        assert (await self.heard(3))[-1] == "Are you 18 or over?"
        await self.api.until_confirmed()

    def answers(self) -> list[tuple[str, Any]]:
        return list(self.companion.db.execute("select key, value from answers order by id"))


@pytest.fixture
async def api() -> AsyncIterator[BotApi]:
    async with BotApi() as api:
        yield api


# the file -------------------------------------------------------------------------------------------------


class FailingCommit:
    """A connection whose commits fail as on a disk that does."""

    def __init__(self, db: sqlite3.Connection) -> None:
        self._db = db

    def __getattr__(self, name: str) -> Any:
        return getattr(self._db, name)

    def execute(self, sql: str, *parameters: Any) -> sqlite3.Cursor:
        if sql == "commit":
            raise sqlite3.OperationalError("disk I/O error")
        return self._db.execute(sql, *parameters)


def _full(whole: Whole) -> None:
    pages = whole.companion.db.execute("pragma page_count").fetchone()[0]
    whole.companion.db.execute(f"pragma max_page_count={pages}").fetchall()


def _read_only(whole: Whole) -> None:
    whole.companion.db.execute("pragma query_only=on").fetchall()


def _locked(whole: Whole) -> None:
    other = sqlite3.connect(whole.database, isolation_level=None)
    other.execute("begin immediate")
    whole.work.callback(other.close)
    whole.companion.db.execute("pragma busy_timeout=0").fetchall()  # else it waits 5 s, in case it is soon let go


def _io_error(whole: Whole) -> None:
    whole.companion.writer._db = FailingCommit(whole.companion.db.conn)  # type: ignore[assignment]


@pytest.mark.parametrize(("fail", "line"), [
    (_full, "the database could not be written: database or disk is full"),
    (_read_only, "the database could not be written: attempt to write a readonly database"),
    (_locked, "the database could not be written: database is locked"),
    (_io_error, "the database could not be written: disk I/O error")], ids=["full", "read-only", "locked", "I/O error"])
async def test_a_file_that_fails_ends_the_bot_and_the_update_comes_again(
        api: BotApi, tmp_path: Path, fail: Callable[[Whole], None], line: str) -> None:
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await whole.welcomed()
        fail(whole)
        for number in range(100):  # until the last free page is used up
            with suppress(asyncio.TimeoutError):
                await api.say(1, "what do you mean" if number else "yes")
                await api._until(lambda: not api.waiting or whole.task.done(), 0.2)
            if whole.task.done():
                break
            await whole.clock.advance(1)
        with pytest.raises(CommitFailed) as failed:
            await whole.ended()
        assert str(failed.value) == line
        assert len(api.waiting) == 1
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        whole.clock.at += timedelta(hours=1)
        await api.until_confirmed()
        assert whole.answers() == [("consent", "yes"), ("adult", "yes")]
        assert whole.companion.db.execute("pragma integrity_check").fetchall() == [("ok",)]


async def test_an_outbox_that_can_not_be_read_ends_the_bot_in_one_line(
        api: BotApi, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*args: object) -> None:
        raise sqlite3.OperationalError("disk I/O error")

    monkeypatch.setattr("companion.record.outbox.due", broken)
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        with pytest.raises(CommitFailed, match=r"^the database could not be read: disk I/O error$"):
            await whole.ended()


async def test_a_disk_that_fails_at_the_rollback_too_leaves_nobody_waiting(api: BotApi, tmp_path: Path) -> None:
    class Worse(FailingCommit):
        def rollback(self) -> None:
            raise sqlite3.OperationalError("disk I/O error")

    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await whole.welcomed()
        whole.companion.writer._db = Worse(whole.companion.db.conn)  # type: ignore[assignment]
        await api.say(1, "yes")
        with pytest.raises(CommitFailed, match="disk I/O error"):
            await whole.ended()
        assert len(api.waiting) == 1


async def test_a_damaged_page_ends_the_bot_before_it_writes_into_the_file(api: BotApi, tmp_path: Path) -> None:
    database = tmp_path / "c.sqlite"
    async with Whole(api, database) as whole:
        await whole.welcomed()
        page, size = (whole.companion.db.execute(query).fetchone()[0] for query in (
            "select rootpage from sqlite_master where name = 'sessions'", "pragma page_size"))
    at, sound = (page - 1) * size, database.read_bytes()
    database.write_bytes(sound[:at] + b"\x55" * size + sound[at + size:])
    damaged = database.read_bytes()
    async with Whole(api, database) as whole:
        await api.say(1, "yes")
        with pytest.raises(CommitFailed, match=r"^the database could not be written: database disk image is malformed$"):
            await whole.ended()
        assert len(api.waiting) == 1
        assert not whole.companion.db.execute("select 1 from updates where failed is not null").fetchall()
    assert database.read_bytes() == damaged
    database.write_bytes(sound)  # as from a backup
    async with Whole(api, database) as whole:
        await api.until_confirmed()
        assert whole.answers() == [("consent", "yes"), ("adult", "yes")]


async def test_a_turn_whose_sql_is_wrong_does_not_end_the_bot(
        api: BotApi, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture) -> None:
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await whole.welcomed()
        with monkeypatch.context() as patched:
            patched.setattr("companion.record.people.sender_at", lambda db, *address: db.execute("select nothing from nowhere"))
            await api.say(1, "yes")
            assert (await whole.heard(4))[-1].startswith("Something went wrong on my side")
        assert "a turn failed (telegram): OperationalError" in caplog.text
        await api.say(1, "yes")
        assert (await whole.heard(5))[-1] == "Which units do you use?"


# the command ----------------------------------------------------------------------------------------------


def _unknown_token(api: BotApi, folder: Path) -> dict[str, Any]:
    api.token = "4242:another_token_of_the_right_shape_000000000"
    return {}


def _second(api: BotApi, folder: Path) -> dict[str, Any]:
    api.fail("getUpdates", *[Fault(409, "Conflict: terminated by other getUpdates request")] * 20)
    return {}


def _no_folder(api: BotApi, folder: Path) -> dict[str, Any]:
    (folder / "file").write_text("")
    return {"database": folder / "file" / "c.sqlite"}


def _a_folder(api: BotApi, folder: Path) -> dict[str, Any]:
    return {"database": folder}


def _may_not_write(api: BotApi, folder: Path) -> dict[str, Any]:
    Companion(folder / "c.sqlite", FakeClock()).close()
    (folder / "c.sqlite").chmod(0o400)
    return {"without_power": True}


def _may_not_enter(api: BotApi, folder: Path) -> dict[str, Any]:
    (folder / "closed").mkdir(mode=0o500)
    return {"without_power": True, "database": folder / "closed" / "c.sqlite"}


def _held(api: BotApi, folder: Path) -> dict[str, Any]:
    Companion(folder / "c.sqlite", FakeClock()).close()
    return {"held": True}


def _may_not_grow(api: BotApi, folder: Path) -> dict[str, Any]:
    Companion(folder / "c.sqlite", FakeClock()).close()
    api.fail("getMe", Fault(502))
    return {"largest_file": 60_000}


@pytest.mark.parametrize(("fault", "line"), [
    (_unknown_token, "Telegram does not accept this token: check COMPANION_TOKEN"),
    (_second, "another program is already receiving this bot's messages: stop it first"),
    (_no_folder, "can't open the database {database}: "),
    (_a_folder, "can't open the database {database}: "),
    (_may_not_write, "can't open the database {database}: attempt to write a readonly database"),
    (_may_not_enter, "can't open the database {database}: [Errno 13] Permission denied"),
    (_held, "can't open the database {database}: database is locked"),
    (_may_not_grow, "the database could not be written: ")],
    ids=["token", "second instance", "no folder", "a folder", "read-only file", "closed folder", "held by another", "no room"])
async def test_a_command_that_can_not_go_on_ends_with_one_line_and_code_2(
        fault: Callable[[BotApi, Path], dict[str, Any]], line: str, api: BotApi, nursery: Nursery, tmp_path: Path) -> None:
    more = {"database": tmp_path / "c.sqlite"} | fault(api, tmp_path)
    database = str(more.pop("database"))
    other = sqlite3.connect(database if more.pop("held", False) else ":memory:", isolation_level=None)
    other.execute("begin exclusive")
    bot = await nursery.bear(
        tmp_path / "log.txt", kind="command", words=["run", "--database", database],
        environment={"COMPANION_TOKEN": TOKEN, "COMPANION_API_URL": api.url, "XDG_DATA_HOME": str(tmp_path)}, **more)
    ending = asyncio.ensure_future(bot.until_it_says("stopped"))
    while not ending.done():
        await api.say(1, "hi")
        await asyncio.wait([ending], timeout=0.05)
    bot.let_go()
    await ending
    other.close()
    log = (tmp_path / "log.txt").read_text(encoding="utf-8")
    assert bot.code == 2, log
    assert log.splitlines()[-1].startswith("companion: " + line.format(database=database))
    assert log.count("\ncompanion: ") + log.startswith("companion: ") == 1
    assert "Traceback" not in log
    assert TOKEN.partition(":")[2] not in log


# the network ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("status", [401, 404, 409])
async def test_one_odd_refusal_of_a_poll_is_not_the_end(
        status: int, api: BotApi, tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    api.fail("getUpdates", *[Fault(status, "odd")] * 2)
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await api.say(1, "hi")
        assert len(await whole.heard(2)) == 2
    assert f"a poll failed (odd ({status})); the next in 1 s" in caplog.text


@pytest.mark.parametrize(("status", "error"), [(401, WrongToken), (404, WrongToken), (409, SecondInstance)])
async def test_three_refusals_of_a_poll_are(status: int, error: type[Exception], api: BotApi, tmp_path: Path) -> None:
    api.fail("getUpdates", *[Fault(status, "odd")] * 3)
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        with pytest.raises(error):
            await asyncio.gather(whole.ended(), whole.moved_until(whole.task.done))


async def test_a_send_to_which_telegram_is_not_found_is_made_again(api: BotApi, tmp_path: Path) -> None:
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await whole.welcomed()
        api.fail("sendMessage", Fault(404, "Not Found"))
        await api.say(1, "yes")
        assert (await whole.heard(4))[-1] == "Which units do you use?"


async def test_a_poll_that_is_told_to_wait_waits_as_long(api: BotApi, tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    api.fail("getUpdates", flood(40))
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await api.until_called("getUpdates")
        await api.say(1, "hi")
        assert 39 <= await whole.moved_until(lambda: len(api.sent) == 1) <= 45
    assert "the next in 40 s" in caplog.text


async def test_a_start_that_is_told_to_wait_waits_as_long(api: BotApi, tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    api.fail("getMe", flood(40))
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await api.until_called("getMe")
        assert 39 <= await whole.moved_until(lambda: any(call.method == "getUpdates" for call in api.calls)) <= 45
    assert "trying again in 40 s" in caplog.text


async def test_a_poll_that_hangs_is_given_up_and_made_again(api: BotApi, tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    async with Whole(api, tmp_path / "c.sqlite", answer_seconds=0.2, poll_seconds=0) as whole:
        await whole.welcomed()
        api.fail("getUpdates", Fault(how="hang", accepted=True))
        await api.say(1, "yes")
        assert (await whole.heard(4))[-1] == "Which units do you use?"
        assert whole.answers() == [("consent", "yes"), ("adult", "yes")]
    assert "a poll failed (Timed out)" in caplog.text


@pytest.mark.parametrize("name", ["127.0.0.1", "telegram.test"])
async def test_it_starts_before_there_is_a_network(
        name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture) -> None:
    """A refused connection; a name that nobody knows."""
    async with BotApi() as first:
        port = first._server.port
    resolve, there = asyncio.BaseEventLoop.getaddrinfo, False

    async def getaddrinfo(loop: Any, host: Any, *args: Any, **options: Any) -> Any:
        if host in ("telegram.test", b"telegram.test"):
            if not there:
                raise socket.gaierror(socket.EAI_NONAME, "Name or service not known")
            host = "127.0.0.1"
        return await resolve(loop, host, *args, **options)

    monkeypatch.setattr(asyncio.BaseEventLoop, "getaddrinfo", getaddrinfo)
    later = BotApi(port=port)
    async with Whole(later, tmp_path / "c.sqlite", api_url=f"http://{name}:{port}") as whole:
        await whole.moved_until(lambda: "trying again in 30 s" in caplog.text)
        async with later:
            there = True
            await later.say(1, "hi")
            assert await whole.moved_until(lambda: len(later.sent) == 2) <= 35
            whole.stop.set()
            await whole.ended()
    assert "Telegram can't be reached" in caplog.text


async def test_after_an_hour_without_network_all_that_waited_comes_within_half_a_minute(
        api: BotApi, tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    caplog.set_level(logging.INFO)
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await whole.welcomed()
        await api._server.__aexit__()
        await whole.companion.writer.do(lambda db: put_message(
            db, person_at(db, "telegram", "1") or 0, Say("A reminder."), whole.clock.now()))
        whole.companion.on_commit("telegram")
        before = len(caplog.records)
        end = whole.clock.now() + timedelta(hours=1)
        await whole.moved_until(lambda: whole.clock.now() >= end, 5)
        tries = len(caplog.records) - before
        api._server = Server(api._answer, api._server.port)
        await api._server.__aenter__()
        await api.say(1, "yes")
        assert await whole.moved_until(lambda: len(api.sent) == 5) <= 34  # half a minute, then a second between messages
        assert {one.text for one in api.sent[3:]} == {"A reminder.", "Which units do you use?"}
    assert 60 <= tries <= 300
    assert "polls are answered again" in caplog.text


@pytest.mark.parametrize("ids", [
    (10, 10, 11), (11, 10, 12), (10, 11, 3), (2_000_000_000, 5, 6), (12, 11, 10)],
    ids=["twice", "out of order", "starting over", "starting far below", "backwards"])
async def test_updates_twice_or_out_of_order_are_taken_once(ids: tuple[int, ...], api: BotApi, tmp_path: Path) -> None:
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await whole.welcomed()
        whole.stop.set()
        await whole.ended()
    words = dict(zip(dict.fromkeys(ids), ("yes", "metric", "Porto"), strict=False))
    for number in ids:
        message = api._message(1, "Sam") | {"text": words[number]}
        api._waiting.append({"update_id": number, "message": message})
    async with Whole(api, tmp_path / "c.sqlite") as whole:
        await whole.moved_until(lambda: not api.waiting)
        assert whole.answers() == [("consent", "yes"), ("adult", "yes"), ("units", "metric"), ("zone", "Europe/Lisbon")][:1 + len(words)]


