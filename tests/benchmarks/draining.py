"""3,000 reminders that fall due at once, out through the whole channel, against the limit itself: 30 messages a second."""

from __future__ import annotations

import asyncio
import sys
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.channels.drainer import TELEGRAM_LIMITS
from tests.benchmarks.measured import Row
from tests.benchmarks.reminders import burst, fall_due, fill, lines

DUE = 3_000


async def _rate(folder: Path) -> float:
    """Messages a second; what came of them stands on standard error."""
    path = folder / "due.sqlite"
    fill(path, DUE + 10, datetime.now(UTC))
    companion = Companion(path, SystemClock())
    async with running_writer(companion):
        fall_due(companion.db.conn, DUE, datetime.now(UTC))
        told = await burst(companion, DUE)
    companion.close()
    for line in lines(told, DUE):
        print(line, file=sys.stderr)
    times = [at for _, text, at in told["sent"] if text.startswith("Squat day")]
    return len(told["sent"]) / (times[-1] - times[0])


def rows() -> Iterator[Row]:
    """Once, for it takes its hundred seconds whatever the machine does."""
    with TemporaryDirectory() as folder:
        rate = asyncio.run(_rate(Path(folder)))
    limit = float(TELEGRAM_LIMITS.in_window)
    yield Row(f"{DUE:,} due reminders drained (one round)", "the limit itself", rate, limit, "a second", rate / limit, "at least", 0.93)
