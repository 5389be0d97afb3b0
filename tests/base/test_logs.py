"""Logging: no token anywhere, no words of people above debug."""

from __future__ import annotations

import logging
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.base.logs import redact, set_up_logging
from companion.base.settings import Settings
from companion.channels.telegram import TelegramSettings
from companion.cli.main import main
from companion.operate.metrics import Metrics
from companion.port import Address
from companion.record.outbox import backlog
from tests.app.test_service import ABOUT, WELCOME, Life

TOKEN = "4242:" + "Ab_-9" * 7
TYPED = "a quokka hurts"


@pytest.fixture(autouse=True)
def _quiet_again() -> Iterator[None]:
    yield
    set_up_logging(logging.WARNING)


@given(st.text(), st.integers(1, 10**12), st.text("abcXYZ019_-", min_size=30), st.text())
def test_whatever_stands_around_it_a_token_is_taken_out(before: str, bot: int, secret: str, after: str) -> None:
    assert f"{bot}:{secret}" not in redact(f"{before}{bot}:{secret}{after}")


def test_a_webhooks_secret_is_taken_out_of_what_the_library_tells_at_debug(capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging("DEBUG")
    logging.getLogger("telegram.Bot").debug("Calling `%s` with `%s`", "setWebhook", {
        "secret_token": "a-right_Secret1", "url": "https://x.example/y"})
    shown = capsys.readouterr().err
    assert "a-right_Secret1" not in shown
    assert "'secret_token': '[secret]', 'url': 'https://x.example/y'" in shown


def test_ordinary_words_and_times_stay() -> None:
    assert redact("at 18:05, 3:1, https://example.org:8081/x") == "at 18:05, 3:1, https://example.org:8081/x"


def test_a_token_is_in_no_message_argument_traceback_or_stack(capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging()
    log = logging.getLogger("anything")
    try:
        raise ValueError(f"no route to /bot{TOKEN}/getMe")
    except ValueError:
        log.exception("asking %s", {"url": TOKEN}, stack_info=True)
    shown = capsys.readouterr().err
    assert "asking {'url': '[token]'}" in shown
    assert TOKEN not in shown


def _fails_on(words: str) -> None:
    try:
        int(words)
    except ValueError as error:
        raise RuntimeError(f"can't take {words}") from error


def test_a_traceback_tells_where_and_of_what_kind_and_not_what_was_written(capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging("DEBUG")
    try:
        _fails_on(TYPED)
    except RuntimeError as error:
        logging.getLogger("anything").error("a turn failed", exc_info=error)
        logging.getLogger("asyncio").error(f"future: {error!r}", exc_info=error)
        with_words = ExceptionGroup(TYPED, [error])
        logging.getLogger("anything").error("several", exc_info=with_words)
    shown = capsys.readouterr().err
    assert "quokka" not in shown
    assert "ValueError\n\nand then\n" in shown
    assert "in _fails_on" in shown
    assert "future: RuntimeError" in shown


def test_an_error_that_ends_the_process_tells_no_words_and_no_token_either(tmp_path: Path) -> None:
    program = tmp_path / "ends.py"
    program.write_text(f"from companion.base.logs import set_up_logging\nset_up_logging()\nwords = {f'quokka {TOKEN}'!r}\n"
                       "raise RuntimeError(words)\n")
    ended = subprocess.run([sys.executable, str(program)], capture_output=True, text=True, timeout=60, check=False,
                           env={"PYTHONPATH": str(Path(__file__).parents[2])})
    assert ended.returncode == 1
    assert "ended by an unexpected error: RuntimeError" in ended.stderr
    assert "raise RuntimeError(words)" in ended.stderr
    assert "quokka" not in ended.stderr
    assert TOKEN not in ended.stderr


def test_at_debug_an_errors_own_words_are_there(capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging("DEBUG")
    try:
        _fails_on(TYPED)
    except RuntimeError as error:
        logging.getLogger("anything").debug("a turn failed", exc_info=error)
    assert "can't take a quokka hurts" in capsys.readouterr().err


async def test_what_somebody_types_in_a_turn_that_fails_is_in_no_log(
        tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    set_up_logging("DEBUG")
    logging.getLogger().setLevel(logging.INFO)
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    await life.say("hello", *WELCOME, *ABOUT)

    def broken(book: object, session: object, event: object, known: object) -> None:
        raise RuntimeError(f"can't take {event!r}")

    monkeypatch.setattr("companion.app.conversations.step", broken)
    await life.say(TYPED)
    await life.stop()
    shown = capsys.readouterr().err
    assert "a turn failed (terminal): RuntimeError" in shown
    assert "in broken" in shown
    assert "quokka" not in shown
    assert b"can't take" not in life.path.read_bytes()


def test_the_token_is_in_no_repr_and_in_no_process_list() -> None:
    assert TOKEN not in repr(Settings(Path("companion.sqlite"), TOKEN))
    assert TOKEN not in repr(TelegramSettings(TOKEN))
    assert not [option for command in main.commands.values() for option in command.params if "token" in (option.name or "")]


async def test_the_token_and_what_people_write_are_in_no_metric(tmp_path: Path) -> None:
    life = Life(tmp_path / "companion.sqlite")
    await life.start()
    metrics = Metrics(life.clock, lambda now: backlog(life.db, now, "terminal"), lambda: False)
    life.companion.watch = metrics
    await life.say("hello", *WELCOME, "quokka", who=Address("terminal", "quillonvex"))
    page = str(metrics.answer("/metrics"))
    await life.stop()
    assert "companion_" in page
    assert "quokka" not in page
    assert "quillonvex" not in page


def test_what_the_library_says_above_debug_keeps_its_fixed_part_only(capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging()
    try:
        raise ValueError("private words")
    except ValueError:
        logging.getLogger("telegram.ext.ExtBot").critical("Received data was %r", "private words",
                                                          exc_info=sys.exc_info())
    shown = capsys.readouterr().err
    assert "Received data was %r (ValueError)" in shown
    assert "private words" not in shown


def test_the_library_that_logs_addresses_is_quiet_even_at_debug(capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging("DEBUG")
    logging.getLogger("httpx").info("HTTP Request: POST https://example.org/bot%s/getMe", TOKEN)
    assert "HTTP Request" not in capsys.readouterr().err


def test_debug_says_that_it_shows_what_people_write(capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging("DEBUG")
    assert "it shows what people write" in capsys.readouterr().err
    set_up_logging("INFO")
    assert capsys.readouterr().err == ""


def test_a_second_set_up_replaces_the_first(capsys: pytest.CaptureFixture[str]) -> None:
    set_up_logging()
    set_up_logging()
    logging.getLogger("anything").info("once")
    assert capsys.readouterr().err.count("once") == 1
