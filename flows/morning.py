"""The morning after something hurt: is it back to usual? If not, no load today, and the coach hears of it.

Not back to usual by the next morning: no loaded drill, tell the coach (after Thomeé 1997 and Silbernagel 2007, tendon and
knee, not back; from memory). If it is worse, or there are new signs, the pain questions follow.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Final

from companion.calendar.plan import is_squat_day
from companion.calendar.preferences import answered_until, plan_from
from companion.calendar.prompts import MORNING
from companion.conversation.condition import Fact, Facts, Value
from companion.conversation.effects import Alert, Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Known, Offer, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from companion.language.how_it_is import how_it_is_asked
from companion.screening.levels import REFERRED
from companion.screening.safety import Level, worst
from flows.safety_facts import tomorrow, what_hurt
from flows.shared import WELCOMED

HOWS: Final = ("usual", "better", "same", "worse")
TOLD_BEFORE = Fact("said", values=HOWS)
"""How it is, where they said so before they were asked."""


def how_now(got: Facts, side: str) -> Value | None:
    """Return how it is: their answer, or what they said before they were asked."""
    return got.get("how", got.get("said"))


HOW_NOW = Fact("how_now", values=HOWS, of=how_now)
LEVEL_STOOD = Fact("stood", values=tuple(level.value for level in Level))
SEEN_FIRST_STILL = LEVEL_STOOD.one_of(*REFERRED)
DAY_CLOSED = ~HOW_NOW.is_("usual") & ~SEEN_FIRST_STILL
"""True if the answer closes the day; where somebody was sent to be seen, that stands whatever it is."""


def what_stood(known: Known) -> dict[str, Value]:
    """Return the level this morning, what hurt, how it is, if they said so, and yesterday's squat day if it has not been reported."""
    yesterday = date.fromisoformat(str(known.facts["today"])) - timedelta(days=1)
    facts: dict[str, Value] = {"stood": str(known.facts.get("safety.level", "go")),
                               "hurt": what_hurt(known)}
    if known.asked in HOWS:
        facts["said"] = known.asked
    if is_squat_day(plan_from(known.facts), yesterday) and (answered_until(known.facts) or date.min) < yesterday:
        facts["untold"] = yesterday.isoformat()
    return facts


def level_now(got: Facts, side: str) -> Value:
    """Return the level after the answer: no load until back to usual, and never freer than the level this morning."""
    found = {"usual": Level.GO, "better": Level.NO_LOAD}.get(str(how_now(got, side)), Level.NOT_TODAY)
    return worst((found, Level(str(got.get("stood", "go"))))).value


UNTOLD = Fact("untold", values=("2026-03-01",))
LEVEL_NOW = Fact("level", values=tuple(level.value for level in Level), of=level_now)

FLOW = Flow(
    "morning", version=1, title="The morning after", policy=Policy.FOLLOW_UP, command=None, gates=(WELCOMED,), at_start=what_stood,
    facts=(LEVEL_STOOD, LEVEL_NOW, TOLD_BEFORE, HOW_NOW, UNTOLD, Fact("hurt", values=("your knee",)), Fact("tomorrow", of=tomorrow)),
    invite="Something hurt lately. How is it this morning?",
    steps=(
        Ask("how", "You told me that {hurt} hurt. Is it back to usual?", replace(choice(
            ("usual", "Back to usual", "yes", "gone", "fine", "good", "normal"),
            ("better", "Better, not gone", "better", "a bit", "almost"),
            ("same", "The same", "same", "no", "not really"), ("worse", "Worse, or something new", "worse", "new")),
            told_by=how_it_is_asked, told_first=True), safety=True, only_if=~TOLD_BEFORE.known),
        Do(Find("pain.morning", "{how_now}", "asked the morning after")),
        Do(Find("pain.follow", "over", "back to usual"), HOW_NOW.is_("usual")),
        Do(Find("pain.follow", "open", "not back to usual: asked about the next day"), ~HOW_NOW.is_("usual")),
        Do(Find("safety.level", "{level}", "not back to usual the morning after", "the morning after: {how_now}"), DAY_CLOSED),
        Do(Find("safety.why", "morning", "the answers that weighed"), DAY_CLOSED),
        Do(Alert("{level}", "yesterday something hurt, and this morning it is not back to usual ({how_now})"), ~HOW_NOW.is_("usual")),
        Tell("What I said about being seen still holds. Once a doctor or physiotherapist has seen you, say “safety check”.",
             SEEN_FIRST_STILL & ~HOW_NOW.is_("worse")),
        Tell("Good. Today's safety check still comes first, before you squat or test.", HOW_NOW.is_("usual") & ~SEEN_FIRST_STILL),
        Tell("Then no squats and no loaded drill today; walk and move gently. If it is not gone by tomorrow, see a doctor or "
             "physiotherapist.", HOW_NOW.is_("better") & ~SEEN_FIRST_STILL),
        Tell("Then no squats, no tests and no drills today. Please see a doctor or physiotherapist about it.",
             HOW_NOW.is_("same") & ~SEEN_FIRST_STILL),
        Do(Remind("morning", "morning", "{tomorrow}", hour=MORNING.hour, that_day=True),
           HOW_NOW.one_of("better", "same") & ~SEEN_FIRST_STILL),
        Run("pain", HOW_NOW.is_("worse")),
        Tell("If you like, tell me how yesterday's squats went until it hurt.", UNTOLD.known & ~SEEN_FIRST_STILL & ~HOW_NOW.is_("worse"),
             offers=(Offer("How they went", "squat_after", "{untold}"),)),
    ),
)
