"""What the conversation about squat days says and works out: the plan as it is, what was asked for, the plan after it."""

from __future__ import annotations

from datetime import date
from typing import Final

from companion.calendar.plan import WEEKDAYS, Move, Pause, Plan, Skip, change_of, changed, is_squat_day, next_days
from companion.calendar.reading import Unclear, read_change
from companion.calendar.rule_words import Half, made
from companion.calendar.wishes import plan_from
from companion.calendar.words import DAY_NAMES, date_words, day_words, plan_words
from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known

DAYS: Final = tuple((code, name) for code, name in zip(WEEKDAYS, DAY_NAMES, strict=True))
NO_TIME: Final = "??:??"
_ASKED_FOR: Final = ("to", "extra", "until", "change", "first", "given_change")
_MISSING_WORDS: Final = {"half": "In the morning or in the evening?", "time": "At what time?", "day": "Beginning on which day?"}


def _today(facts: Facts) -> date:
    return date.fromisoformat(str(facts["today"]))


def coming(plan: Plan, today: date, most: int = 2) -> str:
    """The next squat days in words: "tomorrow, 18:00, and Friday 4 December, 18:00"."""
    return ", and ".join(day_words(one, today) for one in next_days(plan, today, most))


def plan_facts(known: Known) -> dict[str, Value]:
    """The plan as it stands, and what this was begun with: a change, half of one, or words that are neither."""
    plan, today = plan_from(known.facts), _today(known.facts)
    days = next_days(plan, today, 1)
    facts: dict[str, Value] = {"planned": "yes" if days or not plan.empty else "no", "plan_now": plan.dumps(), "given": "no"}
    if days:
        facts["next_day"] = days[0].day.isoformat()
    paused = f" Paused until {date_words(plan.back_on, today)}." if plan.back_on and plan.back_on > today else ""
    facts["plan_line"] = f"{plan_words(plan)}.{paused} Next: {coming(plan, today)}."
    if known.asked:
        change = made(known.asked) or read_change(known.asked, plan, today)
        if isinstance(change, Unclear):
            facts["given_unclear"] = change.reason
        else:
            facts |= {"given": "yes", "given_change": str(change)}
    return facts


def open_text(got: Facts, side: str) -> Value:
    """The change so far, as the calendar writes it, with holes where something is missing; "" for none."""
    if "rest" in got:
        return got["rest"]
    if got.get("change") == "skip_next":
        return f"skip {got['next_day']}" if "next_day" in got else ""
    if got.get("change") == "stop_all":
        return "stop"
    days = [str(got[key]) for key in (f"day_{n}" for n in range(1, 8)) if str(got.get(key, "")) in WEEKDAYS]
    if days:
        return "weekly " + ",".join(f"{day}={NO_TIME}" for day in WEEKDAYS if day in days)
    return next((got[key] for key in _ASKED_FOR if key in got and made(str(got[key]))), "")


def missing(got: Facts, side: str) -> Value:
    """What the change still wants: "half" (morning or evening), "time", "day", or "nothing"."""
    change = made(str(open_text(got, "")))
    return change.wants if isinstance(change, Half) else "nothing"


def rest_words(got: Facts, side: str) -> Value:
    """The question for what is missing."""
    return _MISSING_WORDS.get(str(missing(got, "")), "")


def what(got: Facts, side: str) -> Value:
    """The kind of change: its first word, or "none"."""
    return str(open_text(got, "")).partition(" ")[0] or "none"


def _after(got: Facts) -> Plan | None:
    change = change_of(str(open_text(got, "")))
    return changed(Plan.loads(str(got.get("plan_now", ""))), change) if change else None


def new_plan(got: Facts, side: str) -> Value | None:
    """The plan with the change made, as kept; not known where there is none."""
    plan = _after(got)
    return plan.dumps() if plan else None


def understood(got: Facts, side: str) -> Value | None:
    """What was understood of a new plan, with its next two dates."""
    plan, today = _after(got), _today(got)
    if plan is None:
        return None
    if plan.empty and what(got, "") == "stop":
        return "No squat days and no reminders of them any more."
    return f"{plan_words(plan)}. The next two: {coming(plan, today)}."


def said_done(got: Facts, side: str) -> Value | None:
    """What is said once a change is made."""
    plan, today, change = _after(got), _today(got), change_of(str(open_text(got, "")))
    if plan is None:
        return None
    days = coming(plan, today, 1)
    following = f" Next: {days}." if days else " No squat day is planned now."
    match change:
        case Skip(day):
            return f"Left out: {date_words(day, today)}.{following}"
        case Move(day, to, at):
            return f"Moved: {date_words(day, today)} to {date_words(to, today)}, {at:%H:%M}.{following}"
        case Pause(back_on):
            return f"Paused until {date_words(back_on, today)}: nothing about squat days before it.{following}"
        case _:
            return f"Kept.{following}"


def undo(got: Facts, side: str) -> Value | None:
    """The change that takes a day's skip or move back."""
    change = change_of(str(open_text(got, "")))
    before = Plan.loads(str(got.get("plan_now", "")))
    if isinstance(change, Skip) and is_squat_day(before, change.day):
        return f"on {change.day} {next_days(before, change.day, 1)[0].at:%H:%M}"
    if isinstance(change, Move) and is_squat_day(before, change.day):
        return f"move {change.to} {change.day} {next_days(before, change.day, 1)[0].at:%H:%M}"
    return None
