"""A lifter's squat days: weekdays, or every few days, with single days added, skipped or moved.

All times are local wall-clock times; a zone is needed only for a moment. A plan and a change to it are both stored as text, in the
answer log and among the facts.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from itertools import islice
from typing import Final

from dateutil.rrule import DAILY, WEEKLY, rrule

LONGEST_GAP: Final = 14
"""Longest interval between squat days, in days; our choice."""

SINGLE_DAYS_KEPT: Final = 60
"""Most single days stored, the latest ones; our choice."""

PAUSES_KEPT: Final = 12
"""Most pauses with a start stored, the latest ones; our choice."""

WEEKDAYS: Final = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")
"""Weekday names of RFC 5545, Monday first."""


@dataclass(frozen=True, slots=True)
class SquatDay:
    """One squat day: a local date and the wall-clock time of squatting."""

    day: date
    at: time


@dataclass(frozen=True, slots=True)
class Plan:
    """A lifter's plan of squat days.

    ``weekly``: (weekday 0 = Monday, time), sorted, one per weekday. ``every``: an interval in days from ``start`` at ``at`` (0: none).
    ``single``: single days by date, with their time, or None for a skipped day; they override the rules. ``back_on``: first day after a
    pause; no earlier day is a squat day. ``away``: pauses with a start, as (first day, first day after), sorted, one per first day.
    """

    weekly: tuple[tuple[int, time], ...] = ()
    every: int = 0
    start: date | None = None
    at: time | None = None
    single: tuple[tuple[date, time | None], ...] = ()
    back_on: date | None = None
    away: tuple[tuple[date, date], ...] = ()

    @property
    def empty(self) -> bool:
        """True if no rule gives a squat day."""
        return not self.weekly and not self.every

    def paused_until(self, day: date) -> date | None:
        """Return the first day after the pauses that cover a date; None if none does."""
        back = max(day, self.back_on or day)
        for first, over in self.away:
            if first <= back < over:
                back = over
        return back if back > day else None

    def dumps(self) -> str:
        """Return the plan as JSON text."""
        kept: dict[str, object] = {}
        if self.weekly:
            kept["weekly"] = {WEEKDAYS[day]: f"{at:%H:%M}" for day, at in self.weekly}
        if self.every and self.start and self.at:
            kept |= {"every": self.every, "start": self.start.isoformat(), "at": f"{self.at:%H:%M}"}
        if self.single:
            kept["single"] = {day.isoformat(): f"{at:%H:%M}" if at else "" for day, at in self.single}
        if self.back_on:
            kept["back_on"] = self.back_on.isoformat()
        if self.away:
            kept["away"] = {first.isoformat(): over.isoformat() for first, over in self.away}
        return json.dumps(kept, separators=(",", ":"))

    @staticmethod
    def loads(text: str) -> Plan:
        """Return the plan from ``dumps``' text, of older versions too; an empty plan from an empty text."""
        kept = json.loads(text) if text else {}
        weekly = {WEEKDAYS.index(day): time.fromisoformat(at) for day, at in kept.get("weekly", {}).items()}
        single = {date.fromisoformat(day): time.fromisoformat(at) if at else None for day, at in kept.get("single", {}).items()}
        return Plan(tuple(sorted(weekly.items())), kept.get("every", 0),
                    date.fromisoformat(kept["start"]) if "start" in kept else None,
                    time.fromisoformat(kept["at"]) if "at" in kept else None, tuple(sorted(single.items())),
                    date.fromisoformat(kept["back_on"]) if "back_on" in kept else None,
                    tuple(sorted((date.fromisoformat(first), date.fromisoformat(over)) for first, over in kept.get("away", {}).items())))


@dataclass(frozen=True, slots=True)
class Weekly:
    """Squat on these weekdays (0 = Monday), each at its time. Replaces all earlier rules."""

    days: tuple[tuple[int, time], ...]

    def __str__(self) -> str:
        return "weekly " + ",".join(f"{WEEKDAYS[day]}={at:%H:%M}" for day, at in self.days)


@dataclass(frozen=True, slots=True)
class EveryNDays:
    """Squat at an interval of days from a date. Replaces all earlier rules."""

    days: int
    at: time
    start: date

    def __str__(self) -> str:
        return f"every {self.days} {self.at:%H:%M} {self.start}"


@dataclass(frozen=True, slots=True)
class On:
    """Squat on one day at a time: an extra day, or a new time for a planned one."""

    day: date
    at: time

    def __str__(self) -> str:
        return f"on {self.day} {self.at:%H:%M}"


@dataclass(frozen=True, slots=True)
class Skip:
    """Skip one day."""

    day: date

    def __str__(self) -> str:
        return f"skip {self.day}"


@dataclass(frozen=True, slots=True)
class MoveDay:
    """Squat on another day instead, at its time."""

    day: date
    to: date
    at: time

    def __str__(self) -> str:
        return f"move {self.day} {self.to} {self.at:%H:%M}"


@dataclass(frozen=True, slots=True)
class Pause:
    """No squat days before a date; a past date ends a pause. Pauses that start after it stay."""

    back_on: date

    def __str__(self) -> str:
        return f"pause {self.back_on}"


@dataclass(frozen=True, slots=True)
class Away:
    """No squat days from a date on, until ``back_on``."""

    first: date
    back_on: date

    def __str__(self) -> str:
        return f"away {self.first} {self.back_on}"


@dataclass(frozen=True, slots=True)
class Stay:
    """Cancel the pause that starts on a date."""

    first: date

    def __str__(self) -> str:
        return f"stay {self.first}"


@dataclass(frozen=True, slots=True)
class StopAll:
    """No more squat days."""

    def __str__(self) -> str:
        return "stop"


PlanChange = Weekly | EveryNDays | On | Skip | MoveDay | Pause | Away | Stay | StopAll


def change_of(text: str) -> PlanChange | None:
    """Parse a stored change; None if the text is not one (it may come from anywhere)."""
    words = text.split()
    try:
        match words:
            case ["weekly", days]:
                rows = dict(row.split("=") for row in days.split(","))
                return Weekly(tuple(sorted((WEEKDAYS.index(day), _time(at)) for day, at in rows.items())))
            case ["every", days, at, start] if 1 <= int(days) <= LONGEST_GAP:
                return EveryNDays(int(days), _time(at), _day(start))
            case ["on", day, at]:
                return On(_day(day), _time(at))
            case ["skip", day]:
                return Skip(_day(day))
            case ["move", day, to, at]:
                return MoveDay(_day(day), _day(to), _time(at))
            case ["pause", day]:
                return Pause(_day(day))
            case ["away", first, day]:
                return Away(_day(first), _day(day))
            case ["stay", day]:
                return Stay(_day(day))
            case ["stop"]:
                return StopAll()
    except ValueError:
        pass
    return None


def _time(text: str) -> time:
    """Parse a time as changes write it, HH:MM only: ISO 8601 allows an offset, which would not be wall-clock time."""
    at = time.fromisoformat(text)
    if f"{at:%H:%M}" != text:
        raise ValueError(text)
    return at


def _day(text: str) -> date:
    """Parse a date from 2000 to 2199: arithmetic near the calendar's ends overflows. Raises ValueError."""
    day = date.fromisoformat(text)
    if not 2000 <= day.year < 2200:
        raise ValueError(text)
    return day


def changed(plan: Plan, change: PlanChange) -> Plan:
    """Return the plan after a change. A new rule keeps the pauses with a start, since a holiday stays a holiday."""
    match change:
        case Weekly(days):
            return Plan(weekly=days, away=plan.away)
        case EveryNDays(days, at, start):
            return Plan(every=days, at=at, start=start, away=plan.away)
        case On(day, at):
            return _with(plan, {day: at})
        case Skip(day):
            return _with(plan, {day: None})
        case MoveDay(day, to, at):
            return _with(plan, {day: None} | {to: at})
        case Pause(back_on):
            return replace(plan, back_on=back_on, away=tuple(row for row in plan.away if row[0] > back_on))
        case Away(first, back_on):
            rows = {**dict(plan.away), first: back_on}
            return replace(plan, away=tuple(sorted(row for row in rows.items() if row[0] < row[1])[-PAUSES_KEPT:]))
        case Stay(first):
            return replace(plan, away=tuple(row for row in plan.away if row[0] != first))
        case StopAll():
            return Plan()


def _with(plan: Plan, days: dict[date, time | None]) -> Plan:
    single = sorted({**dict(plan.single), **days}.items())
    return replace(plan, single=tuple(single[-SINGLE_DAYS_KEPT:]))


def squat_days(plan: Plan, since: date) -> Iterator[SquatDay]:
    """Yield the squat days from a date on, in order; endless if there is a rule."""
    first = max(since, plan.back_on or since)
    single = {day: at for day, at in plan.single if day >= first and not plan.paused_until(day)}
    times = dict(plan.weekly)
    waiting = sorted(day for day, at in single.items() if at)
    for day in _by_rule(plan, first):
        if plan.paused_until(day):
            continue
        while waiting and waiting[0] < day:
            yield _on(waiting.pop(0), single)
        if waiting and waiting[0] == day:
            waiting.pop(0)
        at = single.get(day, plan.at if plan.every else times[day.weekday()])
        if at:
            yield SquatDay(day, at)
    for day in waiting:
        yield _on(day, single)


def _on(day: date, single: dict[date, time | None]) -> SquatDay:
    at = single[day]
    assert at is not None
    return SquatDay(day, at)


def _by_rule(plan: Plan, first: date) -> Iterator[date]:
    """Yield the dates of the rule, by dateutil's rrule on naive midnights, which know no clock change."""
    midnight = time()
    rule: Iterator[datetime]
    if plan.every and plan.start:
        late = max(0, (first - plan.start).days)
        begin = plan.start + timedelta(days=late + -late % plan.every)  # not from the start, which would step through years of days
        rule = iter(rrule(DAILY, interval=plan.every, dtstart=datetime.combine(begin, midnight)))
    elif plan.weekly:
        rule = iter(rrule(WEEKLY, byweekday=[day for day, _ in plan.weekly], dtstart=datetime.combine(first, midnight)))
    else:
        rule = iter(())
    return (moment.date() for moment in rule)


def next_days(plan: Plan, since: date, most: int) -> list[SquatDay]:
    """Return the next squat days from a date on, at most ``most``."""
    return list(islice(squat_days(plan, since), most))


def days_to_come(plan: Plan, now: datetime, most: int) -> list[SquatDay]:
    """Return the next squat days whose hour is ahead, at most ``most``. ``now``: as the lifter's wall clock has it."""
    days = next_days(plan, now.date(), most + 1)
    return [one for one in days if (one.day, one.at) > (now.date(), now.time().replace(second=0, microsecond=0))][:most]


def is_squat_day(plan: Plan, day: date) -> bool:
    """True if a date is a squat day."""
    return any(one.day == day for one in islice(squat_days(plan, day), 1))
