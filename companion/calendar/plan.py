"""A lifter's squat days: the days of a week, or every so many days, with single days added, left out or moved.

All is wall-clock time where the lifter is; a zone comes in only where a moment is wanted. A plan and a change to it are
both kept as text, in the answer log and among the facts.
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
"""Days between two squat days at most, where somebody squats every so many days; our choice."""

SINGLE_DAYS_KEPT: Final = 60
"""Single days kept at most, the latest; our choice."""

PAUSES_KEPT: Final = 12
"""Pauses with a beginning kept at most, the latest; our choice."""

WEEKDAYS: Final = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")
"""Names of RFC 5545, Monday first."""


@dataclass(frozen=True, slots=True)
class SquatDay:
    """One squat day: a local date and the wall-clock time of squatting."""

    day: date
    at: time


@dataclass(frozen=True, slots=True)
class Plan:
    """Which days are squat days.

    ``weekly``: (weekday 0 = Monday, time), sorted, one a weekday. ``every``: every so many days from ``start`` at ``at``
    (0: not). ``single``: single days by date, with the time squatted at, or None for a day left out; they beat the rules.
    ``back_on``: the first day after a pause; no day before it is a squat day. ``away``: pauses that begin on a day, as (first
    day, first day after it), sorted, one a first day.
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
        """Whether no day ever comes by a rule."""
        return not self.weekly and not self.every

    def paused_until(self, day: date) -> date | None:
        """The first day after the pauses that a date lies in; None where it lies in none."""
        back = max(day, self.back_on or day)
        for first, over in self.away:
            if first <= back < over:
                back = over
        return back if back > day else None

    def dumps(self) -> str:
        """As JSON text."""
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
        """From ``dumps``' text, also one from before pauses had a beginning; an empty plan from an empty text."""
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
    """Squat on these weekdays (0 = Monday), each at its time; takes the place of every rule before."""

    days: tuple[tuple[int, time], ...]

    def __str__(self) -> str:
        return "weekly " + ",".join(f"{WEEKDAYS[day]}={at:%H:%M}" for day, at in self.days)


@dataclass(frozen=True, slots=True)
class Every:
    """Squat every so many days from a date; takes the place of every rule before."""

    days: int
    at: time
    start: date

    def __str__(self) -> str:
        return f"every {self.days} {self.at:%H:%M} {self.start}"


@dataclass(frozen=True, slots=True)
class On:
    """Squat on one day at a time: an extra day, or another time on a day there is."""

    day: date
    at: time

    def __str__(self) -> str:
        return f"on {self.day} {self.at:%H:%M}"


@dataclass(frozen=True, slots=True)
class Skip:
    """Leave one day out."""

    day: date

    def __str__(self) -> str:
        return f"skip {self.day}"


@dataclass(frozen=True, slots=True)
class Move:
    """Squat on another day instead, at its time."""

    day: date
    to: date
    at: time

    def __str__(self) -> str:
        return f"move {self.day} {self.to} {self.at:%H:%M}"


@dataclass(frozen=True, slots=True)
class Pause:
    """No squat days before a date; a date that has passed ends a pause. Of pauses with a beginning those stay that begin
    after it."""

    back_on: date

    def __str__(self) -> str:
        return f"pause {self.back_on}"


@dataclass(frozen=True, slots=True)
class Away:
    """No squat days from a date on, until the first on which there may be one again."""

    first: date
    back_on: date

    def __str__(self) -> str:
        return f"away {self.first} {self.back_on}"


@dataclass(frozen=True, slots=True)
class Stay:
    """No pause that begins on a date after all."""

    first: date

    def __str__(self) -> str:
        return f"stay {self.first}"


@dataclass(frozen=True, slots=True)
class StopAll:
    """No squat days any more."""

    def __str__(self) -> str:
        return "stop"


Change = Weekly | Every | On | Skip | Move | Pause | Away | Stay | StopAll


def change_of(text: str) -> Change | None:
    """The change that a kept text stands for; None where it is none (it may come from anywhere)."""
    words = text.split()
    try:
        match words:
            case ["weekly", days]:
                rows = dict(row.split("=") for row in days.split(","))
                return Weekly(tuple(sorted((WEEKDAYS.index(day), _time(at)) for day, at in rows.items())))
            case ["every", days, at, start] if 1 <= int(days) <= LONGEST_GAP:
                return Every(int(days), _time(at), _day(start))
            case ["on", day, at]:
                return On(_day(day), _time(at))
            case ["skip", day]:
                return Skip(_day(day))
            case ["move", day, to, at]:
                return Move(_day(day), _day(to), _time(at))
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
    """A time as ``Change``s write it, and nothing else that is ISO 8601: one with an offset would not be wall-clock time."""
    at = time.fromisoformat(text)
    if f"{at:%H:%M}" != text:
        raise ValueError(text)
    return at


def _day(text: str) -> date:
    """A date somebody can mean: reckoning near the calendar's ends overflows."""
    day = date.fromisoformat(text)
    if not 2000 <= day.year < 2200:
        raise ValueError(text)
    return day


def changed(plan: Plan, change: Change) -> Plan:
    """The plan after a change. A new rule keeps the pauses with a beginning: who changes days before a holiday still goes."""
    match change:
        case Weekly(days):
            return Plan(weekly=days, away=plan.away)
        case Every(days, at, start):
            return Plan(every=days, at=at, start=start, away=plan.away)
        case On(day, at):
            return _with(plan, {day: at})
        case Skip(day):
            return _with(plan, {day: None})
        case Move(day, to, at):
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
    """The squat days from a date on, in order; without end where a rule has none."""
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
    """The dates a rule gives, by dateutil's rrule, on naive midnights: a date has no clock change."""
    midnight = time()
    rule: Iterator[datetime]
    if plan.every and plan.start:
        late = max(0, (first - plan.start).days)
        begin = plan.start + timedelta(days=late + -late % plan.every)  # not from the start: years of days would be walked through
        rule = iter(rrule(DAILY, interval=plan.every, dtstart=datetime.combine(begin, midnight)))
    elif plan.weekly:
        rule = iter(rrule(WEEKLY, byweekday=[day for day, _ in plan.weekly], dtstart=datetime.combine(first, midnight)))
    else:
        rule = iter(())
    return (moment.date() for moment in rule)


def next_days(plan: Plan, since: date, most: int) -> list[SquatDay]:
    """So many squat days from a date on, or fewer where there are no more."""
    return list(islice(squat_days(plan, since), most))


def is_squat_day(plan: Plan, day: date) -> bool:
    """Whether a date is a squat day."""
    return any(one.day == day for one in islice(squat_days(plan, day), 1))
