"""Squat days against what was set: load, depth, back, film and drill, a mark each for every day. Pure.

A depth is a ceiling, so a day above it is as set. A film is due once a week (``depth_progression``); a drill from the day it was set, and
not on a day on which the priming trial drew none.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final, Literal

from companion.screening.depth_progression import FILM_DAYS
from companion.screening.load_limit import DAYS_JUDGED, LimitSet, limit_at, over_by
from companion.screening.priming_trial import arm_of
from companion.screening.squat_days import ToldDay

Kept = Literal["kept", "off", "untold", ""]
"""As set, not as set, not told; "" where nothing was set."""

ASPECTS: Final = {"load": "load within", "depth": "depth kept", "back": "back still", "film": "filmed", "drill": "drill done"}
"""What is looked at, in the order of the strip, with the words for a day that was as set."""


@dataclass(frozen=True, slots=True)
class DayKept:
    """One squat day: its mark for each of ``ASPECTS``."""

    day: date
    marks: tuple[Kept, ...]


def compliance(days: Iterable[ToldDay], limits: Sequence[LimitSet], drilled: Collection[date], drill_since: date | None,
               seed: str | None = None) -> tuple[DayKept, ...]:
    """Return the marks of every day on which somebody squatted, oldest first. ``drilled``: days with the drill; ``drill_since``: from
    when one was set; ``seed``: of the priming trial's draws."""
    found: list[DayKept] = []
    filmed: date | None = None
    for day in (one for one in days if one.squatted):
        plain = seed is not None and day.lot is not None and arm_of(seed, day.lot) == "plain"
        if day.film or day.video:
            filmed = day.day
        found.append(DayKept(day.day, (_load(day, limits), _depth(day), _BACK.get(day.back or "", "untold"), _film(day.day, filmed),
                                       "" if drill_since is None or day.day < drill_since or plain else
                                       "kept" if day.day in drilled else "off")))
    return tuple(found)


_BACK: Final[dict[str, Kept]] = {"still": "kept", "moved": "off"}


def _load(day: ToldDay, limits: Sequence[LimitSet]) -> Kept:
    if day.load is None or day.lifted_by is None:
        return "untold" if any(one.kg is not None for one in limits) else ""
    limit = limit_at(limits, day.lifted_by)
    return "" if limit is None else "off" if over_by(day.load, limit) else "kept"


def _depth(day: ToldDay) -> Kept:
    return "off" if day.kept == "deeper" else "kept" if day.kept else "" if day.depth else "untold"


def _film(day: date, filmed: date | None) -> Kept:
    """Return "" for a day without a film within the week of one, which asks for none."""
    if filmed == day:
        return "kept"
    return "" if filmed is not None and day - filmed < timedelta(days=FILM_DAYS) else "off"


def compliance_words(days: Sequence[DayKept], most: int = DAYS_JUDGED) -> str:
    """Return the latest days in words: "last 12 squat days: load within 6 of 9 (2 not told), depth kept 8 of 12"; "" without any."""
    latest = days[-most:]
    if not latest:
        return ""
    told = []
    for n, words in enumerate(ASPECTS.values()):
        many = Counter(one.marks[n] for one in latest)
        of = many["kept"] + many["off"]
        untold = f"{many['untold']} not told" if many["untold"] else ""
        if of:
            told.append(f"{words} {many['kept']} of {of}" + (f" ({untold})" if untold else ""))
        elif untold:
            told.append(f"{words}: not told")
    return (f"last {len(latest)} squat days: " if len(latest) > 1 else "last squat day: ") + ", ".join(told)
