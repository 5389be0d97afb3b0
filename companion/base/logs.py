"""Logging to standard error, without the bot token, and without people's words above debug level."""

from __future__ import annotations

import logging
import re
import sys
import traceback
from collections.abc import Iterator
from types import TracebackType
from typing import Final

_TOKEN: Final = re.compile(r"\d+:[A-Za-z0-9_-]{30,}")
_WEBHOOK_SECRET: Final = re.compile(r"(secret_token\W+)[A-Za-z0-9_-]+")
"""The webhook's secret, as python-telegram-bot logs it at debug level."""

_QUIET: Final = ("httpx", "httpcore", "apscheduler", "transitions")
"""Loggers set to warning: httpx and httpcore log URLs that contain the token; APScheduler logs every sweep, transitions every arrow."""

_FORMATTER: Final = logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s")


def redact(text: str) -> str:
    """Return the text with bot tokens and the webhook's secret replaced."""
    return _WEBHOOK_SECRET.sub(r"\1[secret]", _TOKEN.sub("[token]", text))


def traceback_without_messages(error: BaseException) -> str:
    """Return a traceback of exception types and code lines only; an exception's message may quote what somebody wrote."""
    told = traceback.TracebackException.from_exception(error)
    return "".join(_without_words(told)).rstrip()


def _without_words(told: traceback.TracebackException) -> Iterator[str]:
    before = told.__cause__ or (None if told.__suppress_context__ else told.__context__)
    if before:
        yield from _without_words(before)
        yield "\nand then\n"
    yield "Traceback (most recent call last):\n"
    yield from told.stack.format()
    yield f"{_kind_of(told)}\n"
    for one in told.exceptions or ():
        yield from _without_words(one)


class Redaction(logging.Filter):
    """Removes tokens from every log record, and people's words from records above debug level.

    An exception's message may quote what somebody wrote, so a traceback keeps only exception types and code lines; the message is also
    removed from the log text, where asyncio repeats it. python-telegram-bot logs raw updates and responses with its errors; of these
    only the constant part of the log message stays, with the exception type.
    """

    def filter(self, record: logging.LogRecord) -> bool:
        """Redact a record in place; always True, so that it is logged."""
        if record.name.partition(".")[0] == "telegram" and record.levelno > logging.DEBUG:
            error = record.exc_info[1] if isinstance(record.exc_info, tuple) else None
            record.msg = f"{record.msg} ({type(error).__name__})" if error else str(record.msg)
            record.args, record.exc_info, record.exc_text = None, None, None
        said, record.args = record.getMessage(), None
        if isinstance(record.exc_info, tuple) and (failed := record.exc_info[1]):
            strict = record.levelno > logging.DEBUG
            record.exc_text = traceback_without_messages(failed) if strict else _FORMATTER.formatException(record.exc_info)
            said = said.replace(repr(failed), type(failed).__name__) if strict else said
        record.msg = redact(said)
        if record.exc_text:
            record.exc_text = redact(record.exc_text)
        if record.stack_info:
            record.stack_info = redact(record.stack_info)
        return True



def _kind_of(told: traceback.TracebackException) -> str:
    """Return the name of the exception's class, without its module."""
    named = getattr(told, "exc_type_str", None)  # from Python 3.13 on, where exc_type is deprecated
    return (named or (told.exc_type.__name__ if told.exc_type else "error")).rpartition(".")[2]


def _told_at_the_end(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
    """Log an uncaught exception through our handler; the interpreter would print its message, which may quote somebody."""
    if issubclass(kind, Exception):
        logging.getLogger(__name__).critical("ended by an unexpected error: %s", kind.__name__, exc_info=error)
    else:
        sys.__excepthook__(kind, error, trace)


class _Handler(logging.StreamHandler):  # type: ignore[type-arg]
    """Our own handler, so that a second set-up replaces it and no other."""


def set_up_logging(level: int | str = logging.INFO) -> None:
    """Log to standard error from this level up, uncaught exceptions included. At debug level people's messages are logged, and a warning
    says so."""
    root = logging.getLogger()
    for handler in [one for one in root.handlers if isinstance(one, _Handler)]:
        root.removeHandler(handler)
    handler = _Handler()
    handler.setFormatter(_FORMATTER)
    handler.addFilter(Redaction())
    root.addHandler(handler)
    root.setLevel(level)
    for name in _QUIET:
        logging.getLogger(name).setLevel(logging.WARNING)
    sys.excepthook = _told_at_the_end
    logging.getLogger("apscheduler.executors").setLevel(logging.CRITICAL)  # the sweep logs its own failures
    if root.level <= logging.DEBUG:
        logging.getLogger(__name__).warning("debug logging is on: it shows what people write")
