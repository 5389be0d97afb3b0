"""Scheduling the sweep by APScheduler: now and then every few seconds.

The database holds what is due, not the scheduler: a sweep that is late or runs twice sends nothing twice and loses nothing.
"""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable
from datetime import datetime, timedelta

from apscheduler.events import EVENT_SCHEDULER_SHUTDOWN
from apscheduler.schedulers.asyncio import AsyncIOScheduler
from apscheduler.triggers.base import BaseTrigger

from companion.base.clock import Clock, SystemClock
from companion.reminders import SWEEP_SECONDS

_log = logging.getLogger(__name__)


class FixedDelayTrigger(BaseTrigger):  # type: ignore[misc]  # APScheduler has no types
    """A trigger that fires a fixed time from now. An interval counted from the last run would fire a year of times if the clock jumped
    a year ahead."""

    def __init__(self, every: timedelta) -> None:
        self.every = every

    def get_next_fire_time(self, previous_fire_time: datetime | None, now: datetime) -> datetime:
        """Return the next time after ``now``."""
        return now + self.every


def start_sweeping(sweep: Callable[[], Awaitable[object]], seconds: float = SWEEP_SECONDS, clock: Clock | None = None) -> AsyncIOScheduler:
    """Return a running scheduler that calls ``sweep`` now and every so many seconds on this loop; ``shutdown(wait=False)`` ends it.

    APScheduler waits for a time of day, so after the clock is set back it would wait until that comes again. A watchdog on the
    loop's monotonic clock makes it go on.
    """
    clock, every = clock or SystemClock(), timedelta(seconds=seconds)

    async def quietly() -> None:
        """Sweep, and log a failure."""
        try:
            await sweep()
        except Exception as error:  # logged here, since APScheduler would also log a sweep cut off at shutdown
            _log.error("a sweep failed: %s", type(error).__name__, exc_info=error)

    scheduler = AsyncIOScheduler(timezone="UTC")
    job = scheduler.add_job(quietly, FixedDelayTrigger(every), next_run_time=clock.now(), coalesce=True, max_instances=1,
                            misfire_grace_time=None)

    async def watch() -> None:
        """Bring the next sweep forward if the clock was set back."""
        while True:
            await asyncio.sleep(seconds)
            if job.next_run_time > clock.now() + 2 * every:
                job.modify(next_run_time=clock.now())

    watching = asyncio.create_task(watch())
    scheduler.add_listener(lambda event: watching.cancel(), EVENT_SCHEDULER_SHUTDOWN)
    scheduler.start()
    return scheduler
