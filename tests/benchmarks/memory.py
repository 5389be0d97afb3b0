"""How much a companion grows over 10,000 turns by 10,000 people, after the first 1,000; in a process of its own."""

from __future__ import annotations

import asyncio
import gc
import subprocess
import sys
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from companion.app.run import running_writer
from companion.app.service import Companion
from companion.base.clock import SystemClock
from companion.port import Address, Inbound, Typed
from tests.benchmarks.measured import Row
from tests.benchmarks.reminders import CHAT, fill

TURNS, FIRST = 10_000, 1_000
MEBI = 2**20


def resident() -> float:
    """Resident memory in MiB, from /proc."""
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * 4096 / MEBI


async def _turns(path: Path) -> float:
    companion = Companion(path, SystemClock())
    async with running_writer(companion):
        for number in range(1, TURNS + FIRST + 1):
            await companion.take(Inbound(Address("telegram", str(CHAT + number)), Typed("menu"), number, "Sam"))
            if number == FIRST:
                gc.collect()
                before = resident()
    gc.collect()
    grown = resident() - before
    companion.close()
    return grown


def rows() -> Iterator[Row]:
    """People who have agreed, each with a turn of their own."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "people.sqlite"
        fill(path, TURNS + FIRST, datetime.now(UTC))
        told = subprocess.run([sys.executable, "-m", "tests.benchmarks.memory", str(path)], check=True, capture_output=True, text=True)
    grown = float(told.stdout)
    yield Row(f"resident memory grown over {TURNS:,} turns by {TURNS:,} people", "-", grown, None, "MiB", grown, "at most", 5.0)


if __name__ == "__main__":
    print(asyncio.run(_turns(Path(sys.argv[1]))))
