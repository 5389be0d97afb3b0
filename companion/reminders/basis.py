"""The input of planning a person's reminders, and its result."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property

from companion.base.clock import zone_of
from companion.calendar.plan import Plan
from companion.calendar.preferences import Value, answered_until, plan_from, preferences_from, zone_from
from companion.calendar.prompts import Preferences
from companion.record import reminders
from companion.record.reminders import Reminder


@dataclass(frozen=True)
class PlanningBasis:
    """One person's facts and reminders at a moment. ``settled``: the reminder just decided on, if any; the next of its kind is the
    one after it, even if that is due already."""

    db: sqlite3.Connection
    person: int
    facts: Mapping[str, Value]
    now: datetime
    settled: Reminder | None = None

    @cached_property
    def zone(self) -> str:
        """Their zone now."""
        return zone_from(self.facts, self.now)

    @cached_property
    def plan(self) -> Plan:
        """Their squat days."""
        return plan_from(self.facts)

    @cached_property
    def wishes(self) -> Preferences:
        """Their preferences: prompt times and quiet hours."""
        return preferences_from(self.facts)

    @cached_property
    def answered(self) -> date | None:
        """The latest squat day they have reported; None for none."""
        return answered_until(self.facts)

    @cached_property
    def standing(self) -> Mapping[str, Reminder]:
        """Their open reminders, by kind."""
        return {one.kind: one for one in reminders.open_reminders(self.db, self.person)}

    def told(self, kind: str) -> frozenset[date]:
        """Return the days for which this kind is settled."""
        return reminders.settled_days(self.db, self.person, kind, self.now)


@dataclass(frozen=True, slots=True)
class PlannedReminder:
    """A reminder to be opened. ``at``: its moment; ``said``: the planned wall time; ``day``: the local date it is about, "" for
    none; ``stale``: the moment it becomes too late (None: never)."""

    at: datetime
    said: str
    day: str = ""
    stale: datetime | None = None


def wall_time(moment: datetime, zone: str) -> str:
    """Return a moment as wall time: "2026-12-01 18:00"."""
    return moment.astimezone(zone_of(zone)).strftime("%Y-%m-%d %H:%M")


def was_postponed(standing: Reminder) -> bool:
    """True if a reminder was postponed beyond its planned time."""
    return wall_time(standing.due_at, standing.zone) > standing.wall
