"""Reminders: the next few, and a file of them for the lifter's own calendar."""

from __future__ import annotations

from datetime import date, datetime
from itertools import islice

from companion.base.clock import zone_of
from companion.calendar.plan import SquatDay
from companion.calendar.preferences import answered_until, plan_from, preferences_from, prompted, zone_from
from companion.calendar.prompts import prompts
from companion.calendar.words import day_words
from companion.conversation.condition import Fact, Value, fact
from companion.conversation.effects import Calendar
from companion.conversation.flow import Ask, Do, Flow, Known, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from companion.reminders.kinds import REMINDER_KINDS
from companion.screening.levels import REFERRED
from companion.screening.limits import Work
from flows.shared import WELCOMED

SHOWN_MOST = 5
SEEN_FIRST = fact("safety.level").one_of(*REFERRED)


def coming_facts(known: Known) -> dict[str, Value]:
    """Return the next reminders in words, soonest first; each kind as its row lists it. None while they are paused."""
    if paused := known.facts.get("reminders.paused"):
        return {"any": f"paused_{paused}"}
    zone = zone_from(known.facts, known.now)
    today = date.fromisoformat(str(known.facts["today"]))
    done = answered_until(known.facts)
    held = any(known.facts.get(work.fact) == "closed" for work in (Work.SQUAT, Work.MOVE))
    rows: list[tuple[datetime, str]] = []
    for kind in REMINDER_KINDS.values():
        if kind.when == "before_squat_day" and prompted(known.facts) and not held:  # the row is the next of them only
            told = frozenset((done,) if done else ())
            for squat, at in islice(prompts(plan_from(known.facts), preferences_from(known.facts), zone, known.now, told), SHOWN_MOST):
                local = at.astimezone(zone_of(zone)).replace(tzinfo=None)
                rows.append((local, kind.listed.format(day=day_words(squat, today))))
        elif kind.listed and not kind.planned and (wall := known.facts.get(f"due.{kind.name}")):
            rows.append((datetime.fromisoformat(str(wall)), kind.listed))
    lines = [f"{_capital(day_words(SquatDay(at.date(), at.time()), today))}: {words}." for at, words in sorted(rows)[:SHOWN_MOST]]
    back = {"held": "yes"} if held and prompted(known.facts) and not plan_from(known.facts).empty else {}
    if lines:
        return {"any": "yes", "lines": "\n".join(lines), **back}
    return {"any": "held" if back else "no" if prompted(known.facts) else "off", **back}


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


FLOW = Flow(
    "reminders", version=1, title="My reminders", policy=Policy.TALK, gates=(WELCOMED,), at_start=coming_facts,
    facts=(Fact("any", values=("yes", "no", "off", "held", "paused_open", "paused_asked")), Fact("held", values=("yes",))),
    sentences=(r"(?:show |list |what are |tell )?(?:me )?(?:my |the )?next (?:five |few |5 )?(?:reminders?|squat days?|sessions?)",
               r"(?:show|tell|list|what are|when are)(?: me)? (?:my |the )(?:squat days?|reminders?)",
               r"when (?:do|am|is|are|will) (?:i|my) (?:next )?(?:squat(?:s|ting)?|reminders?|session|squat days?)(?: next| again)?\??"),
    command=("reminders", "next reminders", "calendar", "what is coming"),
    steps=(
        Tell("No reminder is planned. Say “my squat days” to set them up.", fact("any").is_("no")),
        Tell("Your reminders are off. “Reminder times” turns those of squat days on again.", fact("any").is_("off")),
        Tell("Your reminders are paused, and none is sent. Say “begin again” when you want them on; there is no hurry.",
             fact("any").is_("paused_open")),
        Tell("Your reminders are paused until you have answered what I asked. Say “go on” to answer it.", fact("any").is_("paused_asked")),
        Tell("{lines}", fact("any").is_("yes")),
        Tell("Reminders of squat days are held back while this stands: {limit.words}.",
             fact("held").is_("yes") & fact("limit.words").known),
        Tell("But first, please be seen: until a safety check has passed after that, I write nothing about squats or tests.",
             fact("any").is_("yes") & SEEN_FIRST),
        Ask("next", "Anything to do with them?", choice(
            ("file", "A file for my calendar", "file", "calendar", "ics"), ("days", "Change my squat days", "days", "change"),
            ("times", "Change the times", "times", "quiet hours"), ("nothing", "No, fine", "no", "nothing", "fine")),
            only_if=fact("any").is_("yes")),
        Do(Calendar(), fact("next").is_("file")),
        Run("squat_days", fact("next").is_("days")),
        Run("reminder_times", fact("next").is_("times")),
    ),
)
