"""Which files are mutated, and which tests have to miss what is taken out. A file that moves costs one line here."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

DOORS: Final = "tests/test_doors.py"


@dataclass(frozen=True, slots=True)
class Target:
    """One file. ``stages``: what pytest is given, one run after the other until one fails, the quickest to fail first. ``only``:
    the functions and constants that are guards (none: all); ``but``: those that are none."""

    file: str
    stages: tuple[str, ...]
    only: tuple[str, ...] = ()
    but: tuple[str, ...] = ()


SAFETY_TESTS: Final = "tests/screening/test_safety.py"
CHECK_TESTS: Final = "tests/flows/test_safety_check.py tests/flows/test_pain.py"

TARGETS: Final = (
    Target("companion/screening/safety.py", (SAFETY_TESTS, CHECK_TESTS)),
    Target("flows/shared.py", (DOORS,), but=("BANDS", "WATCHED", "watched_by")),
    Target("flows/safety_facts.py", (CHECK_TESTS,)),
)
