"""Facts for the flow about squat days: the current plan, the change asked for, and the plan after it."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from itertools import islice, takewhile
from typing import Final

from companion.base.clock import instant, zone_of
from companion.calendar.plan import (
    WEEKDAYS,
    Away,
    EveryNDays,
    MoveDay,
    On,
    Pause,
    Plan,
    PlanChange,
    Skip,
    SquatDay,
    Stay,
    StopAll,
    change_of,
    changed,
    days_to_come,
    is_squat_day,
    next_days,
    squat_days,
)
from companion.calendar.preferences import answered_until, plan_from, zone_from
from companion.calendar.words import DAY_NAMES, date_words, day_words, listed, plan_words
from companion.conversation.condition import Facts, Value
from companion.conversation.flow import Known
from companion.language.days.dates import FARTHEST, NO_TIME_BETWEEN
from companion.language.days.reading import UnclearChange, read_change
from companion.language.days.rules import IncompleteChange, made
from companion.screening.sources import value

DAYS: Final = tuple((code, name) for code, name in zip(WEEKDAYS, DAY_NAMES, strict=True))
NO_TIME: Final = "??:??"
NAMED_MOST: Final = 4
"""The most squat days in a pause to name one by one; our choice."""

LATE: Final = timedelta(hours=value("late_day"))
"""The time after a squat day's hour from which "it" means the next one; our choice."""

LOOKED_AT: Final = 60
"""The number of squat days over which two plans are compared; our choice."""

_ASKED_FOR: Final = ("to", "extra", "until", "change", "first")
_MISSING_WORDS: Final = {"half": "In the morning or in the evening?", "time": "At what time?", "day": "Beginning on which day?",
                        "where": "Move {day} to which day? With a time, if that changes too.",
                        "back": "Away from {day}, and until when? Name the first day on which you squat again, or say “for a week”."}


def _today(facts: Facts) -> date:
    return date.fromisoformat(str(facts["today"]))


def coming(plan: Plan, facts: Facts, most: int = 2) -> str:
    """Return the next squat days still to come, in words: "tomorrow, 18:00, and Friday 4 December, 18:00"."""
    today = _today(facts)
    now = datetime.combine(today, time.fromisoformat(str(facts.get("clock", "00:00"))))
    return ", and ".join(day_words(one, today) for one in days_to_come(plan, now, most))


def _next(plan: Plan, facts: Facts) -> str:
    days = coming(plan, facts, 1)
    return f" Next: {days}." if days else " No squat day is planned now."


def since_when(known: Known, plan: Plan, today: date) -> date:
    """Return the first date that "it" and "the next one" can mean: tomorrow if today's was reported or is long past."""
    done, days = answered_until(known.facts), next_days(plan, today, 1)
    over = bool(days) and days[0].day == today and instant(today, days[0].at, zone_from(known.facts, known.now)) + LATE < known.now
    return today + timedelta(days=1) if over or (done and done >= today) else today


def plan_facts(known: Known) -> dict[str, Value]:
    """Return the current plan, and the request this was begun with: a change, an incomplete change, or unclear words."""
    plan, today = plan_from(known.facts), _today(known.facts)
    since = since_when(known, plan, today)
    days = next_days(plan, since, 1)
    local = known.now.astimezone(zone_of(zone_from(known.facts, known.now)))
    facts: dict[str, Value] = {"planned": "yes" if days or not plan.empty else "no", "plan_now": plan.dumps(), "given": "no",
                               "since": since.isoformat(), "clock": f"{local:%H:%M}", "today": today.isoformat()}
    if days:
        facts["next_day"] = days[0].day.isoformat()
    facts["plan_line"] = f"{plan_words(plan)}.{pauses_words(plan, today)} Next: {coming(plan, facts) or 'none'}."
    if known.asked:
        change = _asked(known.asked) or read_change(known.asked, plan, today, since)
        if isinstance(change, UnclearChange):
            facts["given_unclear"] = change.reason
        elif reason := _void(change, plan, today):
            facts |= {"given": "void", "given_void": f"{reason} Nothing has changed.{_next(plan, facts)}"}
        else:
            facts |= {"given": "yes", "given_change": str(change)}
    return facts


def pauses_words(plan: Plan, today: date) -> str:
    """Return the current pause and the next one: " Paused until Friday 6 March. Paused from … until …."; "" for none."""
    now = plan.paused_until(today)
    later = next((row for row in plan.away if row[0] > (now or today)), None)
    return (f" Paused until {date_words(now, today)}." if now else "") + (
        f" Paused from {date_words(later[0], today)} until {date_words(later[1], today)}." if later else "")


def _asked(text: str) -> PlanChange | IncompleteChange | None:
    """Return the change in a button's payload; None if there is none, or if an incomplete one names no day."""
    change = made(text)
    if isinstance(change, IncompleteChange) and not text.startswith(("weekly ", "every ")) and text.split()[1].startswith("?"):
        return None
    return change


def open_text(got: Facts, side: str) -> Value:
    """Return the change so far in the calendar's notation, with placeholders for missing parts; "" for none."""
    if "rest" in got:
        return got["rest"]
    if got.get("given") == "yes":
        return got["given_change"]
    if got.get("change") == "skip_next":
        return f"skip {got['next_day']}" if "next_day" in got else ""
    if got.get("change") == "stop_all":
        return "stop"
    days = [str(got[key]) for key in ("first", *(f"day_{n}" for n in range(1, 8))) if str(got.get(key, "")) in WEEKDAYS]
    if days:
        return "weekly " + ",".join(f"{day}={NO_TIME}" for day in WEEKDAYS if day in days)
    return next((got[key] for key in _ASKED_FOR if key in got and made(str(got[key]))), "")


def missing(got: Facts, side: str) -> Value:
    """Return the missing part of the change: "half" (morning or evening), "time", "day", or "nothing"."""
    change = made(str(open_text(got, "")))
    return change.wants if isinstance(change, IncompleteChange) else "nothing"


def rest_words(got: Facts, side: str) -> Value:
    """Return the question for the missing part."""
    wants, open_now = str(missing(got, "")), str(open_text(got, ""))
    if wants == "day" and open_now.startswith("move "):
        return _MISSING_WORDS["where"].format(day=date_words(date.fromisoformat(open_now.split()[1]), _today(got)))
    if wants == "day" and open_now.startswith("away "):
        return _MISSING_WORDS["back"].format(day=date_words(date.fromisoformat(open_now.split()[1]), _today(got)))
    return _MISSING_WORDS.get(wants, "")


def what(got: Facts, side: str) -> Value:
    """Return the kind of change: its first word, or "none"."""
    return str(open_text(got, "")).partition(" ")[0] or "none"


def _after(got: Facts) -> Plan | None:
    change = change_of(str(open_text(got, "")))
    return changed(Plan.loads(str(got.get("plan_now", ""))), change) if change else None


def new_plan(got: Facts, side: str) -> Value | None:
    """Return the plan after the change, as stored; None without a change."""
    plan = _after(got)
    return plan.dumps() if plan else None


def understood(got: Facts, side: str) -> Value | None:
    """Return a new plan in words, with its next two dates, for the lifter to confirm."""
    plan = _after(got)
    if plan is None:
        return None
    if plan.empty and what(got, "") == "stop":
        return "No squat days and no reminders of them any more."
    lost = _lost(Plan.loads(str(got.get("plan_now", ""))), plan)
    return f"{plan_words(plan)}{lost}.{pauses_words(plan, _today(got))} The next two: {coming(plan, got)}."


def _lost(before: Plan, after: Plan) -> str:
    """Return the weekdays that a new week leaves out, in words, so that nobody loses one unnoticed."""
    lost = [DAY_NAMES[day] for day, _ in before.weekly if day not in dict(after.weekly)] if after.weekly else []
    return f", and no longer {listed(lost)}" if lost else ""


def said_done(got: Facts, side: str) -> Value | None:
    """Return the confirmation of a change."""
    plan, today, change = _after(got), _today(got), change_of(str(open_text(got, "")))
    if plan is None:
        return None
    following = _next(plan, got)
    match change:
        case Skip(day):
            return f"Left out: {date_words(day, today)}.{following}"
        case MoveDay(day, to, at):
            return f"Moved: {date_words(day, today)} to {date_words(to, today)}, {at:%H:%M}.{following}"
        case On(day, at):
            return f"Kept: {date_words(day, today)}, {at:%H:%M}.{following}"
        case Pause(back_on) if back_on > today:
            return (f"Paused until {date_words(back_on, today)}: I write nothing about squat days before then.{following} "
                    "“Unpause” ends it sooner.")
        case Pause():
            return f"The pause is over.{following}"
        case Away(first, back_on):
            gone = _gone(Plan.loads(str(got.get("plan_now", ""))), first, back_on, today)
            two = coming(plan, got)
            return (f"Paused from {date_words(first, today)} until {date_words(back_on, today)}, when squat days go on. {gone}"
                    f"{f' The next two: {two}.' if two else ''} “Unpause” takes it back.")
        case Stay(first):
            return f"No pause from {date_words(first, today)}.{following}"
        case StopAll():
            return "Done: no squat days any more, and no reminders of them."
        case _:
            return f"Kept.{following} “My reminders” shows what I will send, and has a file for your calendar."


def _gone(before: Plan, first: date, back_on: date, today: date) -> str:
    """Return the squat days that fall into a pause, in words."""
    days = [one.day for one in takewhile(lambda one: one.day < back_on, squat_days(before, first))]
    if len(days) > NAMED_MOST:
        return f"Left out: {len(days)} squat days, from {date_words(days[0], today)} to {date_words(days[-1], today)}."
    return f"Left out: {listed([date_words(day, today) for day in days])}." if days else "There is no squat day in it."


def undo(got: Facts, side: str) -> Value | None:
    """Return the change that undoes a change of single days or a pause; None for a new week."""
    change = change_of(str(open_text(got, "")))
    before = Plan.loads(str(got.get("plan_now", "")))
    if isinstance(change, Skip) and is_squat_day(before, change.day):
        return f"on {change.day} {next_days(before, change.day, 1)[0].at:%H:%M}"
    if isinstance(change, MoveDay) and is_squat_day(before, change.day):
        return f"move {change.to} {change.day} {next_days(before, change.day, 1)[0].at:%H:%M}"
    if isinstance(change, On):
        was = _planned(before, change.day)
        return f"on {was.day} {was.at:%H:%M}" if was else f"skip {change.day}"
    if isinstance(change, Pause):
        # A pause that replaced one with a beginning can be undone only if that restores the same days.
        today = _today(got)
        ways: tuple[PlanChange, ...] = (Pause(before.back_on or today), *(Away(*row) for row in before.away))
        after, days = changed(before, change), list(islice(squat_days(before, today), LOOKED_AT))
        return next((str(way) for way in ways if list(islice(squat_days(changed(after, way), today), LOOKED_AT)) == days), None)
    if isinstance(change, Away | Stay):
        back_on = dict(before.away).get(change.first)
        return f"away {change.first} {back_on}" if back_on else f"stay {change.first}"
    return None


def _planned(plan: Plan, day: date) -> SquatDay | None:
    """Return the squat day planned for a date, or None."""
    return next((one for one in next_days(plan, day, 1) if one.day == day), None)


def _void(change: PlanChange | IncompleteChange, plan: Plan, today: date) -> str:
    """Return the reason for which a button's change can't be made, "" if it can: a button may be weeks old, or tapped twice."""
    if isinstance(change, IncompleteChange):
        words = str(change).split()
        change = Skip(date.fromisoformat(words[1])) if words[0] == "move" else change
    match change:
        case Skip(day) | MoveDay(day, _, _) if day < today:
            return f"{_capital(date_words(day, today))} has passed."
        case Skip(day) | MoveDay(day, _, _) if not is_squat_day(plan, day):
            left_out = dict(plan.single).get(day, ...) is None
            return f"{_capital(date_words(day, today))} is {'left out already' if left_out else 'no squat day'}."
        case On(day, _) | MoveDay(_, day, _) if day < today:
            return f"{_capital(date_words(day, today))} has passed."
        case On(day, _) | MoveDay(_, day, _) | Pause(day) | Away(_, day) | EveryNDays(_, _, day) if day > today + FARTHEST:
            return "That is more than a year ahead."
        case Away(_, day) if day <= today:
            return f"{_capital(date_words(day, today))} has come." if day == today else f"{_capital(date_words(day, today))} has passed."
        case Away(first, day) if day <= first:
            return NO_TIME_BETWEEN
        case Stay(first) if first not in dict(plan.away):
            return f"No pause begins on {date_words(first, today)}."
    return ""


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
