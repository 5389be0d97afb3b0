"""Squat days in plain words."""

from __future__ import annotations

from datetime import date, time
from typing import Final

from companion.calendar.plan import Plan, SquatDay

DAY_NAMES: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTH_NAMES: Final = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
                      "November", "December")

YEAR_SHOWN_FROM: Final = 300
"""Days ahead from which a date is written with its year; our choice."""


def plan_words(plan: Plan) -> str:
    """Return a plan's rule in words: "Every Tuesday and Friday at 18:00", "Every other day at 18:00". Single days and pauses are left
    out."""
    if plan.every and plan.at:
        often = {1: "Every day", 2: "Every other day"}.get(plan.every, f"Every {plan.every} days")
        return f"{often} at {plan.at:%H:%M}"
    if not plan.weekly:
        return "No regular squat days"
    by_time: dict[time, list[str]] = {}
    for day, at in plan.weekly:
        by_time.setdefault(at, []).append(DAY_NAMES[day])
    parts = [f"{listed(names)} at {at:%H:%M}" for at, names in by_time.items()]
    return f"Every {parts[0]}" if len(parts) == 1 else ", ".join(parts)


def day_words(squat: SquatDay, today: date) -> str:
    """Return a squat day in words, relative to a date: "today, 18:00", "tomorrow, 18:00", "Tuesday 1 December, 18:00"."""
    return f"{date_words(squat.day, today)}, {squat.at:%H:%M}"


def date_words(day: date, today: date) -> str:
    """Return a date in words, relative to another: "today", "tomorrow", "Tuesday 1 December", with its year if far off."""
    ahead = (day - today).days
    if ahead in (0, 1):
        return ("today", "tomorrow")[ahead]
    words = f"{DAY_NAMES[day.weekday()]} {day.day} {MONTH_NAMES[day.month - 1]}"
    return words if abs(ahead) < YEAR_SHOWN_FROM else f"{words} {day.year}"


def listed(names: list[str]) -> str:
    """Join names: "Monday", "Monday and Friday", "Monday, Wednesday and Friday"; all seven weekdays become "day"."""
    if len(names) == len(DAY_NAMES):
        return "day"
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))
