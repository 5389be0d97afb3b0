"""A pinch or an ache at the front of a hip or knee: a finding of its own, on which days it was told, and what follows.

It is no stiff muscle and no cause of rounding. It ends depth progress until it is gone, and after two days it is suggested to be seen
(our cautious choice).
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from typing import Final

from companion.base.clock import local_date
from companion.screening.screen import LoggedAnswer
from companion.screening.sources import counted, value

DAYS_TO_BE_SEEN: Final = int(value("pinch_days"))
HELD: Final = "No step deeper while the front of a hip or knee pinches: no depth is worth that."
_SAID: Final = {**dict.fromkeys(("yes", "hip", "left", "right", "both"), "hip"), "knee": "knee"}


def pinch_days(answers: Iterable[LoggedAnswer], zone: str) -> dict[date, str]:
    """Return the days on which a pinch or ache was told, with its place ("hip" or "knee"), since the last day on which it was asked
    about everywhere and there was none."""
    told: dict[date, set[str]] = {}
    for row in answers:
        if row.status == "ok" and (row.key.endswith("_pinch") or row.key == "pinched" or (row.flow, row.key) == ("best_squat", "front")):
            told.setdefault(local_date(row.at, zone), set()).add(_SAID.get(str(row.value), ""))
    found: dict[date, str] = {}
    for day, places in sorted(told.items()):
        where = sorted(places - {""})
        if where:
            found[day] = where[0]
        else:
            found.clear()
    return found


def pinch_words(days: dict[date, str]) -> str:
    """Return what is said of it with the results; "" without any."""
    if not days:
        return ""
    where = " and ".join(sorted(set(days.values())))
    seen = (f" That is {counted(DAYS_TO_BE_SEEN, 'days')} or more: let a doctor or physiotherapist look at it."
            if len(days) >= DAYS_TO_BE_SEEN else "")
    return f"The front of your {where} pinched or ached. That says nothing about your back; it holds the depth where it is.{seen}"
