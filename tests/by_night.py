"""Whether all is tried that can be, or, as on every change, a part: HYPOTHESIS_PROFILE=night says so (tests/benchmarks/README.md)."""

from __future__ import annotations

import os
from typing import Final

BY_NIGHT: Final = os.environ.get("HYPOTHESIS_PROFILE") == "night"
