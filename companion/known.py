"""What is known of a person, put together from the record and the screening's rules, for one step."""

from __future__ import annotations

import sqlite3
from datetime import datetime

from companion.calendar.wishes import zone_from
from companion.clock import local_date
from companion.conversation.condition import Value
from companion.conversation.flow import Known
from companion.record import coaching, log, reminders
from companion.screening.safety import Level, opens
from companion.screening.screen import Answer

SAFETY = "safety.level"


def known_of(db: sqlite3.Connection, person: int, now: datetime) -> Known:
    """What a step may know: latest answers and findings by name; "NAME.today" where one was concluded today, where the
    person is; "due.KIND", the wall time of each reminder to come; the safety level as it stands now, and whether a new
    check may open it ("safety.may_open")."""
    kept = log.facts_of(db, person)
    facts: dict[str, Value] = {name: one.value for name, one in kept.items()}
    zone = zone_from(facts, now)
    today = local_date(now, zone)
    facts |= {f"{name}.today": "yes" for name, one in kept.items() if one.found and local_date(one.at, zone) == today}
    facts["coach"] = "yes" if log.coached(db, person) else "no"
    facts["is_coach"] = "yes" if coaching.coach_name(db, person) is not None else "no"
    facts["today"] = today.isoformat()
    facts["person"] = str(person)
    facts |= {f"due.{one.kind}": one.wall for one in reminders.open_of(db, person)}
    if safety := kept.get(SAFETY):
        level, since = Level(str(safety.value)), local_date(safety.at, zone)
        facts[SAFETY] = Level.GO.value if opens(level, since, today) else level.value
        facts["safety.may_open"] = "yes" if today > since else "no"
    return Known(facts, now, lambda: [
        Answer(row.flow, row.run, row.key, row.value, row.status, row.ending, row.method, row.placement, row.at,
               row.asked)
        for row in log.answers_of(db, person)])
