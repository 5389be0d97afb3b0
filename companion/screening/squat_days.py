"""The lifter's report of each squat day, from the answer log."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from typing import Final

from companion.base.clock import instant, local_date
from companion.screening.priming_trial import TrialDay
from companion.screening.screen import LoggedAnswer
from companion.screening.sources import value

DAY: Final = "squat_day"
AFTER: Final = "squat_after"
LOAD_PLANNED: Final = "plan"
"""The load said before the squats; that it was lifted is told afterwards only."""
TOLD_WITHIN: Final = timedelta(days=value("told_within"))
"""The longest time after a squat day for reporting it; our choice."""


@dataclass(frozen=True, slots=True)
class ToldDay:
    """One squat day as reported: its local date and the answers, each None if not given.

    ``back``: "still", "moved" or "cant_tell". ``kept``: "kept", "deeper" or "higher" than the depth set. ``depth``: a band,
    where none was set. ``film``: judged on film. ``hurt``: something hurt, on the day or as reported afterwards. ``load`` in kg as told
    afterwards, 0 without a bar; ``planned``: the one said before, which nobody may have lifted. ``felt``: movement felt, 0-10, on
    a day of the priming trial; ``lot``: that day's number in the trial, from 0. ``load_at``: when that load was told; ``over_at``:
    when that day was over.
    """

    day: date
    back: str | None = None
    kept: str | None = None
    depth: str | None = None
    film: bool = False
    hurt: bool = False
    load: float | None = None
    felt: float | None = None
    lot: int | None = None
    note: str = ""
    video: str = ""
    load_at: datetime | None = field(default=None, compare=False)
    planned: float | None = None
    over_at: datetime | None = field(default=None, compare=False)

    @property
    def lifted_by(self) -> datetime | None:
        """The latest that the load can have been lifted, for the limit that stood then: when it was told, or, told on a later day, the end
        of its own; None where none was told."""
        return self.load_at and min(self.load_at, self.over_at or self.load_at)

    @property
    def squatted(self) -> bool:
        """True if anything was reported of the squats themselves; False for a day that was only begun or without squats."""
        return self.hurt or self.felt is not None or any((self.back, self.kept, self.depth))


def about(asked: str, at: datetime, today: date) -> date:
    """Return the squat day in question: the date asked about if it is today or at most ``TOLD_WITHIN`` back; else today."""
    try:
        day = date.fromisoformat(asked)
    except ValueError:
        return today
    return day if timedelta() <= today - day <= TOLD_WITHIN else today


def days_told(answers: Iterable[LoggedAnswer], zone: str) -> tuple[ToldDay, ...]:
    """Return the squat days reported, oldest first, one a local date, with the last answer to each question. An answer that was
    skipped, withdrawn or given in pain counts as not given; one given in pain means that something hurt, whatever comes
    later, unless that pain itself is taken back. If lots were drawn twice on a date the first counts, so that a day has one number."""
    said: dict[str, dict[str, object]] = {}
    about_load: float | None = None
    for row in answers:
        if (row.flow, row.key, row.status) == ("about_you", "load", "ok") and isinstance(row.value, int | float):
            about_load = float(row.value)
        if row.flow not in (DAY, AFTER):
            continue
        told = said.setdefault(row.run, {"day": about(row.asked, row.at, local_date(row.at, zone)), "in_pain": frozenset()})
        pained: frozenset[object] = told["in_pain"]  # type: ignore[assignment]
        told["in_pain"] = pained | {row.key} if row.status == "in_pain" else pained - {row.key} if row.status == "no_pain" else pained
        told["pain"] = row.ending == "pain" or bool(told["in_pain"])
        key = LOAD_PLANNED if (row.flow, row.key) == (DAY, "load") else row.key
        told.pop(key, None)
        if row.status == "ok":
            told[key] = row.value
            if key == "load":
                told["load_at"] = row.at
    drawn = list(dict.fromkeys(told["day"] for told in said.values() if told.get("lot") == "draw"))
    days: dict[object, dict[str, object]] = {}
    for told in said.values():
        of_day = days.setdefault(told["day"], {})
        of_day["hurt_then"] = of_day.get("hurt_then") or told["pain"] or told.get("hurt") == "yes"
        of_day.update(told)
        if told["day"] in drawn:
            of_day["number"] = drawn.index(told["day"])
    found: list[ToldDay] = []
    for _, of_day in sorted(days.items(), key=lambda one: str(one[0])):
        found.append(_told(of_day, zone, next((kg for day in reversed(found) if (kg := day.load or day.planned)), about_load)))
    return tuple(found)


def day_over(day: date, zone: str) -> datetime:
    """Return when a local day is over."""
    return instant(day + timedelta(days=1), time(), zone)


def _told(told: dict[str, object], zone: str, load_before: float | None) -> ToldDay:
    day, felt, number, load_at = told["day"], told.get("felt"), told.get("number"), told.get("load_at")
    assert isinstance(day, date)
    planned = _kilos(told.get(LOAD_PLANNED), load_before)
    load = _kilos(told.get("load"), load_before if planned is None else planned)
    if told.get("done") == "no":
        planned = load = None
    return ToldDay(
        day, _word(told.get("back")), _word(told.get("kept")), _word(told.get("depth")), told.get("seen_by") == "film",
        bool(told.get("hurt_then")), load,
        float(felt) if isinstance(felt, int | float) else None, number if isinstance(number, int) else None,
        str(told.get("note", "")), str(told.get("video", "")), load_at if isinstance(load_at, datetime) else None, planned,
        day_over(day, zone))


def _kilos(load: object, same: float | None) -> float | None:
    """Return a load in kg; ``same``: the one that "the same" means. None where it is not known."""
    return 0.0 if load == "none" else same if load == "same" else float(load) if isinstance(load, int | float) else None


def _word(value: object) -> str | None:
    return value if isinstance(value, str) else None


def trial_seed(answers: Iterable[LoggedAnswer], person: str) -> str | None:
    """Return the seed of the priming trial's lots, the person and the moment they joined; None before that. It comes from the
    log, so every lot can be reproduced."""
    joined = next((row.at for row in answers if (row.flow, row.key, row.value, row.status) == ("trial", "join", "yes", "ok")), None)
    return f"{person} {joined.isoformat()}" if joined else None


def trial_days(days: Iterable[ToldDay], depths: Mapping[date, str] | None = None) -> list[TrialDay]:
    """Return the days that count in the priming trial: nothing hurt, and movement and load were reported. ``depths``: the depth
    set on a date, if any: days that kept to different depths are not comparable."""
    return [TrialDay(day.lot, day.felt, day.kept == "kept" if day.kept else None,
                f"{day.kept} {(depths or {}).get(day.day, '')}" if day.kept else day.depth or "", day.load)
            for day in days if day.lot is not None and day.felt is not None and day.load is not None and not day.hurt]
