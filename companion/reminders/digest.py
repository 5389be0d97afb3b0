"""A coach's caseload by itself: every day, or on Mondays, at their hour."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from datetime import datetime, time, timedelta
from typing import Final

from companion.base.clock import instant, local_date
from companion.calendar.preferences import Value
from companion.record import reminders

DIGEST: Final = "digest"


def plan_digest(db: sqlite3.Connection, person: int, facts: Mapping[str, Value], zone: str, now: datetime) -> None:
    """Bring the open digest in line with what the coach wishes; none for who is no coach."""
    often, at = str(facts.get("coach.digest", "none")), str(facts.get("coach.digest_at", ""))
    if often == "none" or not at or facts.get("is_coach") != "yes":
        reminders.take_away(db, person, DIGEST, now)
        return
    hour, day = time.fromisoformat(at), local_date(now, zone)
    while instant(day, hour, zone) <= now or (often == "weekly" and day.weekday()):
        day += timedelta(days=1)
    stale = instant(day + timedelta(days=1), time(), zone)
    reminders.add(db, person, DIGEST, DIGEST, f"{day} {hour:%H:%M}", zone, instant(day, hour, zone), now, day.isoformat(), stale)
