"""A start with 100,000 reminders to come, up to the end of the first sweep, against APScheduler given as many date jobs in memory."""

from __future__ import annotations

import asyncio
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from apscheduler.schedulers.background import BackgroundScheduler

from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from tests.benchmarks.measured import ROUNDS, Row, compare, seconds
from tests.benchmarks.reminders import fill

REMINDERS = 100_000


def _nothing() -> None:
    """What a job would do."""


async def _first_sweep(path: Path) -> None:
    companion = Companion(path, SystemClock())
    async with running_writer(companion):
        await companion.sweep()
    companion.close()


def _jobs(now: datetime) -> None:
    scheduler = BackgroundScheduler(timezone="UTC")
    scheduler.start(paused=True)
    for number in range(REMINDERS):
        scheduler.add_job(_nothing, "date", run_date=now + timedelta(days=1, seconds=number))
    scheduler.shutdown(wait=False)


def rows() -> Iterator[Row]:
    """50,000 lifters with two reminders each."""
    ours, theirs, now = [], [], datetime.now(UTC)
    with TemporaryDirectory() as folder:
        path = Path(folder) / "many.sqlite"
        fill(path, REMINDERS // 2, now)
        for _ in range(ROUNDS):
            ours.append(1 / seconds(lambda: asyncio.run(_first_sweep(path))))
            theirs.append(1 / seconds(lambda: _jobs(now)))
    yield compare(f"starts to the first sweep done, {REMINDERS:,} reminders to come",
                  "APScheduler, as many date jobs in memory",
                  ours, theirs, "a second", "at least", 20.0)
