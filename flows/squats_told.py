"""Squats told: which day's squats somebody wants to tell of, where they begin it; then the questions on that day."""

from __future__ import annotations

from datetime import date

from companion.calendar.preferences import answered_until
from companion.conversation.aims import SAID_OVER
from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.day_kinds import NO_DAY, PastDay
from companion.conversation.effects import Find, Replan
from companion.conversation.flow import Ask, Do, Flow, Known, Run, Tell
from companion.conversation.policy import Policy
from companion.language.days.past import past_days
from companion.screening.squat_days import TOLD_WITHIN
from flows.day_facts import begun_on, today_of
from flows.shared import WELCOMED
from flows.squat_after import CARE_FIRST


def told_facts(known: Known) -> dict[str, Value]:
    """Return the day to tell of where it is known: the one that was named, or today where a squat day was begun here."""
    today = today_of(known)
    days = past_days(known.asked, today)
    facts: dict[str, Value] = {"today_answered": max(today, answered_until(known.facts) or today).isoformat()}
    named = min(days) if len(days) == 1 else today if not days and begun_on(known, today) else None
    if named is not None and today - named <= TOLD_WITHIN:
        facts["of_day"] = named.isoformat()
    return facts


def day_of(got: Facts, side: str) -> Value | None:
    """Return the day that was named, as it was begun or as it was answered; None for no day."""
    day = got.get("day", got.get("of_day"))
    return None if day == NO_DAY else day


def names_one(asked: str, facts: Facts) -> bool:
    """True if words name a day whose squats can be told of now; of today only where they were not told, and its squat day is not open,
    which asks of them itself."""
    today = str(facts.get("today", ""))
    days = {day.isoformat() for day in past_days(asked, date.fromisoformat(today))} if today else set()
    asked_of = facts.get("squat.answered") == today or facts.get(SAID_OVER) == "squat_day"
    return bool(days) and not (days == {today} and asked_of)


FLOW = Flow(
    "squats_told", version=1, title="How it went", policy=Policy.TALK, gates=(WELCOMED, *CARE_FIRST), at_start=told_facts,
    command=("done squatting", "after squats"), fits=names_one, at_rest=True, over=("squat_after", "squat_day"),
    sentences=(r"(?:ok |so |well |hi )?(?:i(?:'ve| have)? (?:only |already |just )?(?:squatted|did (?:my |some )?squats)|"
               r"(?:only |already |just )?squatted)\b(?P<asked>.*)",),
    facts=(Fact("of_day", values=("2026-03-01", "2026-03-02")), Fact("told_day", of=day_of)),
    steps=(
        Ask("day", "On which day did you squat?", PastDay("I have not squatted"), only_if=~fact("of_day").known),
        Run("squat_after", fact("of_day").known | (fact("day").known & ~fact("day").is_(NO_DAY)), asked="{told_day}"),
        Do(Find("squat.answered", "{today_answered}", "told by the lifter"), fact("day").is_(NO_DAY)),
        Do(Replan(), fact("day").is_(NO_DAY)),
        Tell("All right, no squats then. The next squat day stays as it is.", fact("day").is_(NO_DAY)),
    ),
)
