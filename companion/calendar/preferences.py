"""What of a person's facts the calendar rests on: their plan, their wishes, and the zone they are in."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime, time, timedelta
from typing import Final

from companion.base.clock import instant, local_date
from companion.calendar.plan import Plan
from companion.calendar.prompts import Wishes

Value = float | str

PLAN: Final = "squat.plan"
WISHES: Final = "squat.wishes"
NO_PROMPTS: Final = "squat.no_prompts"
ANSWERED: Final = "squat.answered"
"""The latest squat day that has been told about: nothing more is asked of it or of those before."""


def plan_from(facts: Mapping[str, Value]) -> Plan:
    """The plan as kept; an empty one where there is none yet."""
    return Plan.loads(str(facts.get(PLAN, "")))


def wishes_from(facts: Mapping[str, Value]) -> Wishes:
    """When they want to hear of a squat day; the usual where they have not said."""
    return Wishes.loads(str(facts.get(WISHES, "")))


def prompted(facts: Mapping[str, Value]) -> bool:
    """Whether they want to hear of squat days at all."""
    return facts.get(NO_PROMPTS) != "yes"


def answered_until(facts: Mapping[str, Value]) -> date | None:
    """The latest squat day they have told about."""
    day = str(facts.get(ANSWERED, ""))
    return date.fromisoformat(day) if day else None


def zone_from(facts: Mapping[str, Value], now: datetime) -> str:
    """The zone they are in now: the one they are away in until its last day, else their own; UTC until they have said."""
    home = str(facts.get("welcome.zone") or facts.get("coach_welcome.zone") or "UTC+00:00")
    away = str(facts.get("zone.away", ""))
    last = str(facts.get("zone.until", ""))
    if away and (not last or local_date(now, away).isoformat() <= last):
        return away
    return home


def away_until(facts: Mapping[str, Value], now: datetime) -> datetime | None:
    """When the zone they are in ends by itself, in UTC: as the last day there is over. None where it does not."""
    away, last = str(facts.get("zone.away", "")), str(facts.get("zone.until", ""))
    if not away or not last or zone_from(facts, now) != away:
        return None
    over = instant(date.fromisoformat(last) + timedelta(days=1), time(), away)
    return over if over > now else None
