"""A person's squat days and open reminders as a calendar file."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from datetime import datetime

from companion.calendar.ical import calendar_text
from companion.calendar.preferences import Value, plan_from, zone_from
from companion.record import people, reminders
from companion.reminders.kinds import REMINDER_KINDS


def squat_days_calendar(db: sqlite3.Connection, person: int, facts: Mapping[str, Value], now: datetime) -> str:
    """Return an iCalendar text of the recurring squat days and of the listed open reminders that are not about one of them."""
    rows = [(one.kind, one.due_at, kind.listed.capitalize()) for one in reminders.open_reminders(db, person)
            if (kind := REMINDER_KINDS.get(one.kind)) and kind.listed and not kind.planned and one.round == 1]
    return calendar_text(plan_from(facts), zone_from(facts, now), now, "Squat days", rows, key=people.pseudonym_of(db, person))
