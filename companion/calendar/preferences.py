"""A person's calendar facts: their plan, when they want to be prompted, and their time zone."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime, time, timedelta
from typing import Final

from companion.base.clock import instant, local_date
from companion.calendar.plan import Plan
from companion.calendar.prompts import Preferences

Value = float | str

PLAN: Final = "squat.plan"
PREFERENCES: Final = "squat.wishes"
NO_PROMPTS: Final = "squat.no_prompts"
ANSWERED_UNTIL: Final = "squat.answered"
"""The latest squat day reported on; no follow-up asks about it or earlier days."""


def plan_from(facts: Mapping[str, Value]) -> Plan:
    """Return the stored plan; an empty one if there is none."""
    return Plan.loads(str(facts.get(PLAN, "")))


def preferences_from(facts: Mapping[str, Value]) -> Preferences:
    """Return when they want to hear of squat days; the defaults if they have not said."""
    return Preferences.loads(str(facts.get(PREFERENCES, "")))


def prompted(facts: Mapping[str, Value]) -> bool:
    """True if they want prompts for squat days."""
    return facts.get(NO_PROMPTS) != "yes"


def answered_until(facts: Mapping[str, Value]) -> date | None:
    """Return the latest squat day they have reported on."""
    day = str(facts.get(ANSWERED_UNTIL, ""))
    return date.fromisoformat(day) if day else None


def zone_from(facts: Mapping[str, Value], now: datetime) -> str:
    """Return their current zone: the one they travel in until its last day, else their own; UTC if unknown."""
    home = str(facts.get("welcome.zone") or facts.get("coach_welcome.zone") or "UTC+00:00")
    away = str(facts.get("zone.away", ""))
    last = str(facts.get("zone.until", ""))
    if away and (not last or local_date(now, away).isoformat() <= last):
        return away
    return home


def away_until(facts: Mapping[str, Value], now: datetime) -> datetime | None:
    """Return when the zone they travel in ends, in UTC: the end of its last day there. None if they are not away or gave no end."""
    away, last = str(facts.get("zone.away", "")), str(facts.get("zone.until", ""))
    if not away or not last or zone_from(facts, now) != away:
        return None
    over = instant(date.fromisoformat(last) + timedelta(days=1), time(), away)
    return over if over > now else None
