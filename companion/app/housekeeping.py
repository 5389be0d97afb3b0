"""Nightly housekeeping of the running bot: remove rows that are needed no more and answers older than the setting, make a backup."""

from __future__ import annotations

import logging
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Final, NoReturn

from companion.app.retention import going, months_before
from companion.app.service import Companion
from companion.operate.backup import tonight
from companion.record import expiry, status
from companion.record.writer import CommitFailed

_log = logging.getLogger(__name__)

LOOK_SECONDS: Final = 3600
"""Seconds between two looks whether today's is done; our choice."""

RUNS_AT_ONCE: Final = 10
"""Runs whose answers go in one commit: some 70 answers, a few milliseconds; our choice."""

TIDIED: Final = "tidied"
"""The mark of the last day on which rows that are needed no more were looked for."""

THINNED: Final = "thinned"
"""The mark of when answers were thinned last; its value is the moment they had to be older than."""


async def every_night(companion: Companion, backups: Path | None) -> NoReturn:
    """Look now and every LOOK_SECONDS, until cancelled, whether today's tidying and today's backup are done: what goes today is not
    in it any more. ``backups``: the folder of daily backups, None for none. No job of the scheduler's: that logs a job it cuts off at
    the end as an error."""
    while True:
        await tidy(companion)
        if backups is not None:
            await tonight(companion.path, backups, companion.clock)
        await companion.clock.sleep(LOOK_SECONDS)


async def tidy(companion: Companion) -> None:
    """Today's tidying, where it has not been done: every step a small commit of its own, so that no turn waits long. One that fails
    is logged and tried at the next look; a file that can't be written ends the bot, not this."""
    try:
        gone = await _sweep_out(companion)
        if companion.keep_months is not None:
            gone = await _thin_all(companion, companion.keep_months) or gone
        if gone:
            companion.forget_erased()
    except CommitFailed:
        pass  # the writer itself ends the bot for that
    except Exception as error:
        _log.error("the nightly tidying failed: %s", type(error).__name__, exc_info=error)


async def _sweep_out(companion: Companion) -> bool:
    """Update ids and messages that are needed no more. Whether a message went."""
    do, now = companion.writer.do, companion.clock.now()
    if _same_day(await do(partial(status.noted, name=TIDIED)), now):
        return False
    before = now - expiry.MESSAGES_KEPT
    if companion.keep_months is not None:  # messages say answers over again
        before = max(before, months_before(now, companion.keep_months))
    update: tuple[str, int] | None = ("", 0)
    while update is not None:
        update = await do(partial(expiry.remove_updates, after=update, now=now))
    messages, removed = expiry.Walked(0, 0), 0
    while messages.upto is not None:
        messages = await do(partial(expiry.remove_messages, after=messages.upto, before=before))
        removed += messages.removed
    await do(partial(status.note, name=TIDIED, value=1.0, at=now))
    return removed > 0


async def _thin_all(companion: Companion, months: int) -> bool:
    """The answers of everybody who has some that may have become old enough. Whether any went."""
    do, now = companion.writer.do, companion.clock.now()
    last = await do(partial(status.noted, name=THINNED))
    if _same_day(last, now) and last is not None and last[0] == months:
        return False
    cut, before = months_before(now, months), None
    if last is not None and isinstance(last[0], float) and last[1] <= now:
        before = months_before(last[1], int(last[0]))
    looked = last[1] if before is not None and last is not None else None
    answers, persons, someone, failed = 0, 0, expiry.Someone([], 0), False
    while someone.upto is not None:
        someone = await do(partial(expiry.aged, after=someone.upto, cut=cut, before=before, looked=looked))
        for person in someone.persons:
            gone = await _thin_one(companion, person, cut)
            failed = failed or gone is None
            if gone:
                answers, persons = answers + gone, persons + 1
                companion.on_erase(person)
    if answers:
        _log.info("what is older than %d months was thinned; answers: %d, persons: %d", months, answers, persons)
    if not failed:
        await do(partial(status.note, name=THINNED, value=float(months), at=now))
    return answers > 0


async def _thin_one(companion: Companion, person: int, cut: datetime) -> int | None:
    """Remove one person's answers that may go; returns how many, None where that failed, which takes nothing of the others with it."""
    do, answers = companion.writer.do, 0
    try:
        runs = await do(partial(going, person=person, cut=cut))
        for first in range(0, len(runs), RUNS_AT_ONCE):
            answers += await do(partial(expiry.remove_answers, person=person, runs=runs[first:first + RUNS_AT_ONCE]))
        return answers
    except Exception as error:
        if companion.writer.broken:
            raise
        _log.error("answers of one person could not be thinned: %s", type(error).__name__, exc_info=error)
        return None


def _same_day(mark: tuple[float | str, datetime] | None, now: datetime) -> bool:
    """True if a mark was made today; a day is UTC's, as a backup's is."""
    return mark is not None and mark[1].date() == now.date()
