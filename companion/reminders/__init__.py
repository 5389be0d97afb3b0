"""What is due, and the sweep that looks for it. APScheduler stands here."""

from typing import Final

SWEEP_SECONDS: Final = 20
"""How often what is due is looked for: our choice."""
