"""Reminders: their kinds, from a plan to open rows, what becomes of one that is due, and the sweep. APScheduler stands here."""

from typing import Final

SWEEP_SECONDS: Final = 20
"""Seconds between two looks for what is due; our choice."""
