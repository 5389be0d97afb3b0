"""One sweep that looks for due reminders, every so many seconds, by APScheduler.

The rows are the truth, not the scheduler: a sweep that is late, or runs twice, sends nothing twice and loses nothing.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import Final

from apscheduler.schedulers.asyncio import AsyncIOScheduler

SWEEP_SECONDS: Final = 20


def start_sweeping(sweep: Callable[[], Awaitable[object]], seconds: int = SWEEP_SECONDS) -> AsyncIOScheduler:
    """A running scheduler that calls ``sweep`` every so many seconds on this loop; ``shutdown(wait=False)`` ends it."""
    scheduler = AsyncIOScheduler(timezone="UTC")
    scheduler.add_job(sweep, "interval", seconds=seconds, coalesce=True, max_instances=1, misfire_grace_time=None)
    scheduler.start()
    return scheduler
