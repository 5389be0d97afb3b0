"""A person's squat days and open reminders as a calendar file."""

from __future__ import annotations

import sqlite3
from datetime import datetime

from companion.calendar.ical import calendar_text
from companion.calendar.preferences import plan_from, zone_from
from companion.record import people, reminders
from companion.record.context import known_of
from companion.record.persist import Document
from companion.reminders.kinds import KINDS


def calendar_file(db: sqlite3.Connection, person: int, now: datetime) -> Document:
    """Squat days as they recur, and each open reminder that is not about one of them."""
    facts = known_of(db, person, now).facts
    rows = [(one.kind, one.due_at, kind.listed.capitalize()) for one in reminders.open_of(db, person)
            if (kind := KINDS.get(one.kind)) and kind.listed and not kind.planned and one.round == 1]
    text = calendar_text(plan_from(facts), zone_from(facts, now), now, "Squat days", rows, key=people.key_of(db, person))
    return Document("squat-days.ics", text)
