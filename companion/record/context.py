"""The context of a turn: the facts about a person that one step may use, from the record and the screening's rules."""

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

SAFETY_LEVEL = "safety.level"
CONSENT_ANSWERS: Final = (("consent.lifter", "welcome.consent"), ("consent.coach", "coach_welcome.consent"))
"""Each consent's fact, and the answer that stood for it before consent texts had versions."""


def known_of(db: sqlite3.Connection, person: int, now: datetime) -> Known:
    """Return the facts a step may use: latest answers and findings by name; "NAME.today" for findings made today, in the person's
    zone; "due.KIND", the wall time of each open reminder; the current safety level, and "safety.may_open" if a new check may raise
    it; the version of each consent text they agreed to ("consent.lifter", "consent.coach")."""
    rows = log.known_rows(db, person)
    facts: dict[str, Value] = {"coach": "no", "is_coach": "no"}
    facts |= {name: value for name, value, _ in rows}
    zone = zone_from(facts, now)
    today = local_date(now, zone)
    since_of = {name: local_date(moment_of(since), zone) for name, _, since in rows if since}
    facts |= {f"{name}.today": "yes" for name, since in since_of.items() if since == today}
    facts |= {"today": today.isoformat(), "person": str(person)}
    facts |= _agreed(facts)
    if SAFETY_LEVEL in since_of:
        level, since = Level(str(facts[SAFETY_LEVEL])), since_of[SAFETY_LEVEL]
        facts[SAFETY_LEVEL] = Level.GO.value if opens(level, since, today) else level.value
        facts["safety.may_open"] = "yes" if today > since else "no"
    return Known(facts, now, lambda: list(map(log.as_answer, log.answers_of(db, person))))


def _agreed(facts: Mapping[str, Value]) -> dict[str, Value]:
    """Return version 1 for consents given before texts had versions. Everybody in the file has agreed once, so one of the two is
    always known; a later "no" counts as no."""
    agreed: dict[str, Value] = {name: "1" for name, answer in CONSENT_ANSWERS if name not in facts and facts.get(answer) == "yes"}
    if not agreed and not any(name in facts for name, _ in CONSENT_ANSWERS):
        agreed["consent.lifter"] = "no" if facts.get("welcome.consent") == "no" else "1"
    return agreed
