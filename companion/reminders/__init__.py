"""Reminders: their kinds, planning, the decision on one that is due, and the sweep (APScheduler)."""

from typing import Final

SWEEP_SECONDS: Final = 20
"""Seconds between two sweeps; our choice."""
