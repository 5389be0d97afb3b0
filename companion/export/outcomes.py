"""The export of outcomes: for each ruling what was tried and what the next look showed, of those who agreed, without names or dates."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from io import StringIO
from typing import Final

from companion.screening.outcomes import ScreenOutcome

COLUMNS: Final = ("lifter", "day", "cause", "part", "rows", "drill_times", "setup", "days_between", "start_before", "start_after", "deeper")
ROUNDING_STARTS: Final = ("well_above", "a_little_above", "parallel", "below", "never")


def as_outcomes_csv(of_each: Iterable[Iterable[ScreenOutcome]]) -> str:
    """Return a row an outcome. ``lifter`` numbers the lifters of this file only; ``day`` counts from the lifter's own first answer."""
    out = StringIO()
    writer = csv.writer(out)
    writer.writerow(COLUMNS)
    for lifter, outcomes in enumerate(of_each, 1):
        writer.writerows(
            (lifter, one.day, one.cause, one.part, " ".join(one.rows), one.primed, one.setup, one.days, ROUNDING_STARTS[one.before],
             ROUNDING_STARTS[one.after], "yes" if one.followed else "no") for one in outcomes)
    return out.getvalue()
