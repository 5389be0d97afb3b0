"""The context of a turn: what is known of a person, from the record and the screening's rules, for one step."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from datetime import datetime
from typing import Final

from companion.base.clock import local_date
from companion.calendar.preferences import zone_from
from companion.conversation.condition import Value
from companion.conversation.flow import Known
from companion.record import log
from companion.record.timestamps import moment_of
from companion.screening.safety import Level, opens

SAFETY = "safety.level"
AGREED: Final = (("consent.lifter", "welcome.consent"), ("consent.coach", "coach_welcome.consent"))
"""The names of agreements, and the answers they were before texts had versions."""


def known_of(db: sqlite3.Connection, person: int, now: datetime) -> Known:
    """Return what a step may know: latest answers and findings by name; "NAME.today" where one was concluded today, where the
    person is; "due.KIND", the wall time of each reminder to come; the safety level as it stands now, and whether a new
    check may open it ("safety.may_open"); the version of each text they agreed to ("consent.lifter", "consent.coach")."""
    rows = log.known_of(db, person)
    facts: dict[str, Value] = {"coach": "no", "is_coach": "no"}
    facts |= {name: value for name, value, _ in rows}
    zone = zone_from(facts, now)
    today = local_date(now, zone)
    since_of = {name: local_date(moment_of(since), zone) for name, _, since in rows if since}
    facts |= {f"{name}.today": "yes" for name, since in since_of.items() if since == today}
    facts |= {"today": today.isoformat(), "person": str(person)}
    facts |= _agreed(facts)
    if SAFETY in since_of:
        level, since = Level(str(facts[SAFETY])), since_of[SAFETY]
        facts[SAFETY] = Level.GO.value if opens(level, since, today) else level.value
        facts["safety.may_open"] = "yes" if today > since else "no"
    return Known(facts, now, lambda: list(map(log.as_answer, log.answers_of(db, person))))


def _agreed(facts: Mapping[str, Value]) -> dict[str, Value]:
    """Return the versions agreed to before texts had any: version 1. Nobody is kept who has not agreed once; so one of the two is
    always known, and a no that came after is one."""
    agreed: dict[str, Value] = {name: "1" for name, answer in AGREED if name not in facts and facts.get(answer) == "yes"}
    if not agreed and not any(name in facts for name, _ in AGREED):
        agreed["consent.lifter"] = "no" if facts.get("welcome.consent") == "no" else "1"
    return agreed
