"""The ordinary tests, timed: the whole suite, and the part without processes, browsers and the network."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator

from tests.benchmarks.measured import Row, seconds

UNIT = ("tests/conversation", "tests/screening", "tests/calendar", "tests/record", "tests/reminders", "tests/coach", "tests/pictures",
        "tests/test_clock.py", "tests/test_logs.py")


def _takes(*paths: str) -> float:
    return seconds(lambda: subprocess.run([sys.executable, "-m", "pytest", "-q", *paths], stdout=subprocess.DEVNULL, check=True))


def rows() -> Iterator[Row]:
    """Once each."""
    for what, paths, most in (("the unit part of the tests", UNIT, 45.0), ("the whole test suite", (), 240.0)):
        took = _takes(*paths)
        yield Row(what, "-", took, None, "s", took, "at most", most)
