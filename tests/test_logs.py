"""Logging: no token anywhere, no words of people above debug."""

from __future__ import annotations

import logging
import sys
from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from companion.logs import redact, set_up_logging

TOKEN = "4242:" + "Ab_-9" * 7


@pytest.fixture(autouse=True)
def _quiet_again() -> Iterator[None]:
    yield
    set_up_logging(logging.WARNING)


@given(st.text(), st.integers(1, 10**12), st.text("abcXYZ019_-", min_size=30), st.text())
def test_whatever_stands_around_it_a_token_is_taken_out(before: str, bot: int, secret: str, after: str) -> None:
    assert f"{bot}:{secret}" not in redact(f"{before}{bot}:{secret}{after}")


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
    assert "no route to /bot[token]/getMe" in shown
    assert TOKEN not in shown


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
