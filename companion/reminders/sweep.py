"""One sweep that looks for due reminders, at once and then every so many seconds, by APScheduler.

The rows are the truth, not the scheduler: a sweep that is late, or runs twice, sends nothing twice and loses nothing.
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
    """A trigger that fires so long from now, whenever the last was: an interval counted from the last would fire a year of times
    where the clock jumps a year ahead."""

    def __init__(self, every: timedelta) -> None:
        self.every = every

    def get_next_fire_time(self, previous_fire_time: datetime | None, now: datetime) -> datetime:
        """Return the next time after ``now``."""
        return now + self.every


def start_sweeping(sweep: Callable[[], Awaitable[object]], seconds: float = SWEEP_SECONDS, clock: Clock | None = None) -> AsyncIOScheduler:
    """Return a running scheduler that calls ``sweep`` now and every so many seconds on this loop; ``shutdown(wait=False)`` ends it.

    APScheduler waits for a time of day: where the clock is set back, it would wait until that comes again. So it is looked at
    by the loop's own clock, which is never set, and told to go on.
    """
    clock, every = clock or SystemClock(), timedelta(seconds=seconds)

    async def quietly() -> None:
        try:
            await sweep()
        except Exception as error:  # told here, since APScheduler also tells of one that is cut off at the end
            _log.error("a sweep failed: %s", type(error).__name__, exc_info=error)

    scheduler = AsyncIOScheduler(timezone="UTC")
    job = scheduler.add_job(quietly, FixedDelayTrigger(every), next_run_time=clock.now(), coalesce=True,
                            max_instances=1, misfire_grace_time=None)

    async def look() -> None:
        while True:
            await asyncio.sleep(seconds)
            if job.next_run_time > clock.now() + 2 * every:
                job.modify(next_run_time=clock.now())

    looking = asyncio.create_task(look())
    scheduler.add_listener(lambda event: looking.cancel(), EVENT_SCHEDULER_SHUTDOWN)
    scheduler.start()
    return scheduler
