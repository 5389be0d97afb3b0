"""The ordinary tests, timed, as the README runs them: the whole suite, and its unit part (``-m unit``, see tests/conftest.py)."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator

from tests.benchmarks.measured import Row, seconds


def _takes(*options: str) -> float:
    return seconds(lambda: subprocess.run([sys.executable, "-m", "pytest", *options], stdout=subprocess.DEVNULL, check=True))


def rows() -> Iterator[Row]:
    """Once each."""
    for what, options, most in (("the unit part of the tests", ("-m", "unit"), 45.0), ("the whole test suite", (), 240.0)):
        took = _takes(*options)
        yield Row(what, "-", took, None, "s", took, "at most", most)
