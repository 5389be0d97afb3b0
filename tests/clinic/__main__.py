"""The clinic by command: ``python -m tests.clinic [LIFTERS]`` (2,000 if not said), from the project's root; prints the README's table."""

from __future__ import annotations

import sys

from tests.clinic.rounds import figures, table, visits

print(table(figures(visits(int(sys.argv[1]) if len(sys.argv) > 1 else 2_000))))
