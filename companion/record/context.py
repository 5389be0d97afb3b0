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
from companion.record.timestamps import moment_of, text_of
from companion.screening.standing import SafetyStanding, standing_of

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
    stands = standing_in(facts, next((moment_of(since) for name, _, since in rows if name == SAFETY), None), now)
    if stands.level is not None:
        facts[SAFETY] = stands.level.value
        facts["safety.may_open"] = "yes" if today > since_of[SAFETY] else "no"
    return Known(facts, now, lambda: list(map(log.as_answer, log.answers_of(db, person))))


def standing_in(facts: Mapping[str, Value], since: datetime | None, now: datetime) -> SafetyStanding:
    """Return the safety standing that facts as kept amount to; ``since``: the moment the level was found."""
    pain = facts.get(log.PAIN_OPEN)
    return standing_of(facts.get(SAFETY), since, str(facts.get("safety.why", "")), moment_of(str(pain)) if pain else None, now,
                       zone_from(facts, now))


def standing_now(db: sqlite3.Connection, person: int, now: datetime) -> SafetyStanding:
    """Return the safety standing of one person."""
    kept = log.facts_of(db, person)
    facts = {name: one.value for name, one in kept.items()}
    pain = log.pain_open_of(db, person)
    return standing_in(facts | ({log.PAIN_OPEN: text_of(pain)} if pain else {}), kept[SAFETY].at if SAFETY in kept else None, now)


def _agreed(facts: Mapping[str, Value]) -> dict[str, Value]:
    """Return the versions agreed to before texts had any: version 1. Nobody is kept who has not agreed once; so one of the two is
    always known, and a no that came after is one."""
    agreed: dict[str, Value] = {name: "1" for name, answer in AGREED if name not in facts and facts.get(answer) == "yes"}
    if not agreed and not any(name in facts for name, _ in AGREED):
        agreed["consent.lifter"] = "no" if facts.get("welcome.consent") == "no" else "1"
    return agreed
