"""Nightly housekeeping of the running bot: remove old rows and answers, make a backup."""

from __future__ import annotations

import logging
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Final, NoReturn

from companion.app.retention import months_before, removable_runs
from companion.app.service import Companion
from companion.conversation.reported import TOGETHER
from companion.operate.backup import tonight
from companion.record import expiry, status
from companion.record.writer import CommitFailed

_log = logging.getLogger(__name__)

LOOK_SECONDS: Final = 3600
"""Seconds between two checks for today's housekeeping; our choice."""

RUNS_AT_ONCE: Final = 10
"""Runs whose answers are removed in one commit: some 70 answers, a few milliseconds; our choice."""

OLD_ROWS_REMOVED: Final = "tidied"
"""Name of the mark of the last day on which old rows were removed."""

OLD_ANSWERS_REMOVED: Final = "thinned"
"""Name of the mark of the last time old answers were removed; its value is the number of months they were kept."""


async def nightly(companion: Companion, backups: Path | None) -> NoReturn:
    """Do today's housekeeping if it is not done, now and every LOOK_SECONDS, until cancelled. The backup comes last, so that removed
    data is not in it. ``backups``: the folder of daily backups, None for none. Not a scheduler job: APScheduler logs an error for a
    job that is cut off at shutdown."""
    while True:
        await tidy(companion)
        if backups is not None:
            await tonight(companion.path, backups, companion.clock)
        await companion.clock.sleep(LOOK_SECONDS)


async def tidy(companion: Companion) -> None:
    """Remove old rows and answers, if not done today: in small commits, so that no turn waits long. A failure is logged and tried
    again at the next check; a file that can't be written ends the bot through its writer."""
    try:
        gone = await _remove_old_rows(companion)
        if companion.keep_months is not None:
            gone = await _remove_old_answers(companion, companion.keep_months) or gone
        if gone:
            companion.forget_erased()
    except CommitFailed:
        pass  # the writer ends the bot
    except Exception as error:
        _log.error("the nightly housekeeping failed: %s", type(error).__name__, exc_info=error)


async def _remove_old_rows(companion: Companion) -> bool:
    """Remove old update ids and messages; returns True if a message was removed."""
    do, now = companion.writer.do, companion.clock.now()
    if _same_day(await do(partial(status.mark_of, name=OLD_ROWS_REMOVED)), now):
        return False
    before = now - expiry.MESSAGES_KEPT
    if companion.keep_months is not None:  # messages repeat answers
        before = max(before, months_before(now, companion.keep_months))
    await do(partial(expiry.forget_unread, before=now - TOGETHER))
    update: tuple[str, int] | None = ("", 0)
    while update is not None:
        update = await do(partial(expiry.remove_updates, after=update, now=now))
    upto: int | None = 0
    removed = 0
    while upto is not None:
        upto, gone = await do(partial(expiry.remove_messages, after=upto, before=before))
        removed += gone
    await do(partial(status.set_mark, name=OLD_ROWS_REMOVED, value=1.0, at=now))
    return removed > 0


async def _remove_old_answers(companion: Companion, months: int) -> bool:
    """Remove everybody's answers that are older than so many months and not needed; returns True if any were removed."""
    do, now = companion.writer.do, companion.clock.now()
    last = await do(partial(status.mark_of, name=OLD_ANSWERS_REMOVED))
    if _same_day(last, now) and last is not None and last[0] == months:
        return False
    cut, before = months_before(now, months), None
    if last is not None and isinstance(last[0], float) and last[1] <= now:
        before = months_before(last[1], int(last[0]))
    looked = last[1] if before is not None and last is not None else None
    answers, persons, failed = 0, 0, False
    upto: int | None = 0
    while upto is not None:
        some, upto = await do(partial(expiry.candidates, after=upto, cut=cut, before=before, looked=looked))
        for person in some:
            gone = await _remove_answers_of(companion, person, cut)
            failed = failed or gone is None
            if gone:
                answers, persons = answers + gone, persons + 1
                companion.on_erase(person)
    if answers:
        _log.info("answers older than %d months were removed; answers: %d, persons: %d", months, answers, persons)
    if not failed:
        await do(partial(status.set_mark, name=OLD_ANSWERS_REMOVED, value=float(months), at=now))
    return answers > 0


async def _remove_answers_of(companion: Companion, person: int, cut: datetime) -> int | None:
    """Remove one person's old answers that are not needed; returns the count, None where it failed."""
    do, answers = companion.writer.do, 0
    try:
        runs = await do(partial(removable_runs, person=person, cut=cut))
        for first in range(0, len(runs), RUNS_AT_ONCE):
            answers += await do(partial(expiry.remove_answers, person=person, runs=runs[first:first + RUNS_AT_ONCE]))
        return answers
    except Exception as error:
        if companion.writer.broken:
            raise
        _log.error("old answers of one person could not be removed: %s", type(error).__name__, exc_info=error)
        return None


def _same_day(mark: tuple[float | str, datetime] | None, now: datetime) -> bool:
    """True if a mark was made today, in UTC like a backup's day."""
    return mark is not None and mark[1].date() == now.date()
