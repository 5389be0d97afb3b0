"""The load limit: the one that stood when a load was lifted, and how often the latest squat days went over it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final, Literal

from companion.screening.readings import NumberFormat
from companion.screening.sources import value
from companion.screening.squat_days import ToldDay

ROUNDING: Final = value("load_rounding")
"""Kilograms by which a load may pass the limit unnoticed: half a pound, which is what rounding to whole pounds can add (choice)."""

DAYS_JUDGED: Final = int(value("load_days"))
"""Squat days looked at: about four weeks of three a week (choice)."""


WHOSE: Final = {"load.limit": "from the tests", "load.raised": "from the tests, raised by a coach", "load.pin": "set by a coach",
                "load.told": "told by a clinician"}
"""The facts that hold a load limit, in words."""


@dataclass(frozen=True, slots=True)
class LimitSet:
    """One value of a limit: since when, whose (one of ``WHOSE``), in kg; None: no longer any."""

    at: datetime
    name: str
    kg: float | None


@dataclass(frozen=True, slots=True)
class OverLimit:
    """Squat days over the load limit, of the latest: on ``days`` of ``of``, by at most ``by`` kg; ``told``: when the last load of these was
    told or put right."""

    days: int
    of: int
    by: float
    told: datetime | None = None

    def words(self, show: NumberFormat) -> str:
        """Return that in words: "over the load limit on 9 of the last 12 squat days, by up to 40 kg"; "" where none was over."""
        if not self.days:
            return ""
        last = f"{self.days} of the last {self.of} squat days" if self.of > 1 else "the last squat day"
        return f"over the load limit on {last}, by {'up to ' if self.days > 1 else ''}{show(self.by, 'kg')}"


def limits_in(text: str) -> tuple[LimitSet, ...]:
    """Return the values limits have had, from a JSON list of (moment, name, kg); what is no number is no limit."""
    return tuple(LimitSet(datetime.fromisoformat(at), name, _kilos(kg)) for at, name, kg in json.loads(text or "[]"))


def _kilos(kg: str) -> float | None:
    try:
        return float(kg)
    except ValueError:
        return None


def limit_now(limits: Mapping[str, object]) -> tuple[str, float] | None:
    """Return the load limit that holds, as (whose, kg): the lowest of ``WHOSE``. A raised limit stands in place of that of the tests
    where it is above it, and lifts no other. None without any; whatever else is in ``limits`` is left out."""
    known = {name: kg for name in WHOSE if (kg := _kilos(str(limits.get(name)))) is not None}
    raised = known.pop("load.raised", None)
    if raised is not None and "load.limit" in known and raised > known["load.limit"]:
        del known["load.limit"]
        known["load.raised"] = raised
    return min(known.items(), key=lambda one: one[1], default=None)


def limit_at(limits: Sequence[LimitSet], at: datetime) -> float | None:
    """Return the limit that stood at a moment, in kg, as ``limit_now`` has it; None without any."""
    standing = {one.name: one.kg for one in sorted(limits, key=lambda one: one.at) if one.at <= at}
    found = limit_now(standing)
    return found[1] if found else None


def at_most(kg: float, show: NumberFormat) -> str:
    """Return a load limit in words: "at most 60 kg"; "no added load" for 0."""
    return f"at most {show(kg, 'kg')}" if kg else "no added load"


def over_by(load: float | None, limit: float | None) -> float:
    """Return by how many kg a load is over a limit; 0 where it is within it, or one of the two is not known."""
    return load - limit if load is not None and limit is not None and load - limit > ROUNDING else 0.0


def load_kept(day: ToldDay, limits: Sequence[LimitSet], bar: bool) -> Literal["", "over", "untold"]:
    """Return how a day's load stands against the limit that stood when it was lifted: "" within it, "over", or "untold".

    ``bar``: whether this lifter squats with one at all; who does not is not asked for a load.
    """
    if day.load is None or day.lifted_by is None:
        return "untold" if bar and any(one.kg is not None for one in limits) else ""
    return "over" if over_by(day.load, limit_at(limits, day.lifted_by)) else ""


def over_limit(days: Iterable[ToldDay], limits: Sequence[LimitSet], most: int = DAYS_JUDGED) -> OverLimit:
    """Return how the latest days on which somebody squatted stand against the limits of their time; at most so many days."""
    latest = [day for day in days if day.squatted][-most:]
    over = [(by, day.load_at) for day in latest if day.load_at and day.lifted_by and (
        by := over_by(day.load, limit_at(limits, day.lifted_by)))]
    return OverLimit(len(over), len(latest), max((by for by, _ in over), default=0.0), max((at for _, at in over), default=None))
