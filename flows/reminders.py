"""Reminders: the next few that will come, and a file of them for the lifter's own calendar."""

from __future__ import annotations

from datetime import date, datetime
from itertools import islice

from companion.base.clock import zone_of
from companion.calendar.plan import SquatDay
from companion.calendar.preferences import answered_until, plan_from, prompted, wishes_from, zone_from
from companion.calendar.prompts import prompts
from companion.calendar.words import day_words
from companion.conversation.condition import Fact, Value, fact
from companion.conversation.effects import Calendar
from companion.conversation.flow import Ask, Do, Flow, Known, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from flows.shared import WELCOMED

SHOWN = 5
SEEN_FIRST = fact("safety.level").one_of("clinician", "same_day", "emergency")
OTHERS = {"retest": "test again", "screen": "tests, when rested", "morning": "how it is the morning after"}


def coming_facts(known: Known) -> dict[str, Value]:
    """The next reminders in words, soonest first."""
    zone = zone_from(known.facts, known.now)
    today = date.fromisoformat(str(known.facts["today"]))
    done = answered_until(known.facts)
    rows: list[tuple[datetime, str]] = []
    if prompted(known.facts):
        told = frozenset((done,) if done else ())
        for squat, at in islice(prompts(plan_from(known.facts), wishes_from(known.facts), zone, known.now, told), SHOWN):
            local = at.astimezone(zone_of(zone)).replace(tzinfo=None)
            rows.append((local, f"squat day {day_words(squat, today)}"))
    for kind, words in OTHERS.items():
        if wall := known.facts.get(f"due.{kind}"):
            rows.append((datetime.fromisoformat(str(wall)), words))
    lines = [f"{_capital(day_words(SquatDay(at.date(), at.time()), today))}: {words}." for at, words in sorted(rows)[:SHOWN]]
    return {"any": "yes", "lines": "\n".join(lines)} if lines else {"any": "no" if prompted(known.facts) else "off"}


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


FLOW = Flow(
    "reminders", version=1, title="My reminders", policy=Policy.TALK, gates=(WELCOMED,), at_start=coming_facts,
    facts=(Fact("any", values=("yes", "no", "off")),),
    sentences=(r"(?:show |list |what are |tell )?(?:me )?(?:my |the )?next (?:five |few |5 )?(?:reminders?|squat days?|sessions?)",
               r"(?:show|tell|list|what are|when are)(?: me)? (?:my |the )(?:squat days?|reminders?)",
               r"when (?:do|am|is|are|will) (?:i|my) (?:next )?(?:squat(?:s|ting)?|reminders?|session|squat days?)(?: next| again)?\??"),
    command=("reminders", "next reminders", "calendar", "what is coming"),
    steps=(
        Tell("No reminder is planned. Say “my squat days” to set them up.", fact("any").is_("no")),
        Tell("Your reminders are off. “Reminder times” turns those of squat days on again.", fact("any").is_("off")),
        Tell("{lines}", fact("any").is_("yes")),
        Tell("But first you are to be seen: until a safety check has passed after that, I write nothing about squats or tests.",
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
