"""How long hypothesis looks: ``ci`` by default, the same every time; ``night`` for hours, by HYPOTHESIS_PROFILE=night."""

from __future__ import annotations

import os

from hypothesis import HealthCheck, Phase, settings

_SLOW = (HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much)

settings.register_profile("ci", max_examples=160, stateful_step_count=50, deadline=None, derandomize=True, database=None,
                          phases=(Phase.explicit, Phase.generate), suppress_health_check=_SLOW)
"""Without shrinking: a failure is told at once, with all its steps; the night's profile makes it short."""
settings.register_profile("night", max_examples=4_000, stateful_step_count=120, deadline=None, print_blob=True,
                          suppress_health_check=_SLOW)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci"))
