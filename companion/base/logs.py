"""One logging set-up: to standard error, without the token, and without people's words above debug."""

from __future__ import annotations

import logging
import re
import sys
import traceback
from collections.abc import Iterator
from types import TracebackType
from typing import Final

_TOKEN: Final = re.compile(r"\d+:[A-Za-z0-9_-]{30,}")
_SECRET: Final = re.compile(r"(secret_token\W+)[A-Za-z0-9_-]+")
"""The webhook's secret, as python-telegram-bot tells of it at debug."""

_QUIET: Final = ("httpx", "httpcore", "apscheduler", "transitions")
"""httpx and httpcore log each address with the token in it; APScheduler logs every sweep, transitions every
arrow."""

_FORMATTER: Final = logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s")


def redact(text: str) -> str:
    """The text with whatever has the shape of a bot's token taken out, and a webhook's secret."""
    return _SECRET.sub(r"\1[secret]", _TOKEN.sub("[token]", text))


def where(error: BaseException) -> str:
    """A traceback without what the errors say, which may be what somebody wrote: their kinds, and the lines of the code."""
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
    """Takes tokens out of every record, and people's words out of those above debug.

    An error's own text may hold what somebody wrote, so of a traceback only the kinds of error and the lines of the code stay;
    it goes from the message too, where asyncio puts it. python-telegram-bot puts the raw data of an update or an answer into its
    error records; of these only the fixed part of the message stays, with the kind of error.
    """

    def filter(self, record: logging.LogRecord) -> bool:
        if record.name.partition(".")[0] == "telegram" and record.levelno > logging.DEBUG:
            error = record.exc_info[1] if isinstance(record.exc_info, tuple) else None
            record.msg = f"{record.msg} ({type(error).__name__})" if error else str(record.msg)
            record.args, record.exc_info, record.exc_text = None, None, None
        said, record.args = record.getMessage(), None
        if isinstance(record.exc_info, tuple) and (failed := record.exc_info[1]):
            strict = record.levelno > logging.DEBUG
            record.exc_text = where(failed) if strict else _FORMATTER.formatException(record.exc_info)
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
    """What ends the process by surprise is told as any other error is: the interpreter would print the error's own words."""
    if issubclass(kind, Exception):
        logging.getLogger(__name__).critical("ended by a fault of its own: %s", kind.__name__, exc_info=error)
    else:
        sys.__excepthook__(kind, error, trace)


class _Handler(logging.StreamHandler):  # type: ignore[type-arg]
    """Ours, so that a second set-up replaces it and no other."""


def set_up_logging(level: int | str = logging.INFO) -> None:
    """Log to standard error from this level up, an error that ends the process too. At debug what people write is logged, and a line
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
    logging.getLogger("apscheduler.executors").setLevel(logging.CRITICAL)  # the sweep tells of its own failures
    if root.level <= logging.DEBUG:
        logging.getLogger(__name__).warning("debug logging is on: it shows what people write")
