"""Referral: the day after somebody was told to be seen, and until they were: did they go, and what was said?"""

from __future__ import annotations

from datetime import date, timedelta
from typing import Final

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.day_kinds import BeenSeen
from companion.conversation.effects import Alert, Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Known, Run, Tell
from companion.conversation.kinds import Words, YesNo, choice
from companion.conversation.policy import Policy
from companion.language.being_seen import BEING_SEEN, appointment, been_seen, tells_what_was_said
from companion.language.clearances import says_cleared
from companion.language.half import in_doubt
from companion.screening.levels import REFERRED
from companion.screening.safety import Level
from companion.screening.sources import SOURCES
from flows.safety_check import TOLD
from flows.safety_facts import limits_told
from flows.shared import CLINICIAN, EMERGENCY, SAME_DAY, WELCOMED

_SOON, _LATER = map(int, SOURCES["referral_days"].value)
AGAIN: Final = {Level.CLINICIAN.value: _LATER, Level.SAME_DAY.value: _SOON, Level.EMERGENCY.value: _SOON}
"""Days until it is asked again, by how soon somebody was to be seen; our choice."""


def what_stands(known: Known) -> dict[str, Value]:
    """Return the level that sent them, and the words they wrote: that it is worse, that they are to be seen, or what was said."""
    stood: dict[str, Value] = {"stood": str(known.facts.get("safety.level", "go"))}
    seen = been_seen(known.asked)
    if "worse" in known.asked.split()[-3:]:
        return stood | {"worse": known.asked}
    if seen in ("booked", "no"):
        return stood | {"told": seen, "booked_words": known.asked}
    return stood | ({"wrote": known.asked} if tells_what_was_said(known.asked) else {})


def next_time(got: Facts, side: str) -> Value:
    """Return the date on which it is asked again: the day after the appointment, where it is known, unless that is an emergency."""
    today = date.fromisoformat(str(got["today"]))
    again = today + timedelta(days=AGAIN.get(str(got.get("stood")), 1))
    booked = appointment(str(got.get("went_said", got.get("booked_words", ""))), today) if went_now(got, side) == "booked" else None
    after = booked + timedelta(days=1) if booked and got.get("stood") != Level.EMERGENCY.value else again
    return max(after, today + timedelta(days=1)).isoformat()


def went_now(got: Facts, side: str) -> Value | None:
    """Return "yes", "booked" or "no": their answer, or what they wrote."""
    return got.get("went", got.get("told"))


def said_now(got: Facts, side: str) -> Value | None:
    """Return what was said, in their words; None where they have not told that."""
    return got.get("said", got.get("wrote")) if got.get("went") == "yes" else got.get("said")


def go_now(got: Facts, side: str) -> Value:
    """Return a line for whoever was to go at once, before they are asked again; "" for anybody else."""
    at_once = got.get("stood") == Level.EMERGENCY.value
    return "If you have not been seen: go to an emergency department now, or call your emergency number. " if at_once else ""


STOOD = Fact("stood", values=tuple(level.value for level in Level))
WORSE = Fact("worse", values=("its worse",))
WROTE = Fact("wrote", values=("doctor said its nothing",))
"""Words that say that they were seen, and what came of it."""
TOLD_THEM = Fact("told", values=("booked", "no"))
SENT, WENT = STOOD.one_of(*REFERRED), Fact("went_now", values=("yes", "booked", "no"), of=went_now)
LIMIT_SAID = Fact("limit_said", of=lambda got, side: None if in_doubt(said := str(said_now(got, side) or "")) else limits_told(said))
CLEARS = Fact("clears", of=lambda got, side: said if says_cleared(said := str(said_now(got, side) or "")) else "")
STILL_NOT_SEEN = WENT.one_of("booked", "no")

WORSE_NOW: Final = (r"(?P<asked>(?:it'?s |it is |its |it |i'?m |i feel |feels |this is )?(?:got |getting |become |much |a lot |even |now )*"
                    r"worse(?: now| today| this morning)?)")
"""Whole messages that it is worse, of somebody who was sent."""

FLOW = Flow(
    "referral", version=1, title="Being seen", policy=Policy.TOLD, command=None, gates=(WELCOMED,), at_start=what_stands,
    sentences=(*BEING_SEEN, WORSE_NOW), said_by=fact("safety.level").one_of(*REFERRED), at_rest=True,
    facts=(STOOD, WORSE, WROTE, TOLD_THEM, Fact("booked_words", values=("booked for thursday",)), WENT, Fact("next_time", of=next_time),
           Fact("said_now", of=said_now), Fact("go_now", of=go_now), LIMIT_SAID, CLEARS),
    invite="{go_now}I asked you to be seen about what you told me. Did you go? What was said?",
    steps=(
        Do(Alert("{stood}", "was sent to be seen, and writes now: “{worse}”"), SENT & WORSE.known),
        Tell("Then don't wait: call your doctor or an urgent care line now. Numb between the legs, no control of bladder or bowel, or "
             "chest pain? Your emergency number.", SENT & WORSE.known, must_arrive=True),
        Ask("went", "{go_now}Have you been seen about what you told me?", BeenSeen(choice(
            ("yes", "Yes, I went", "yes", "i went", "i did", "done"),
            ("booked", "It is booked", "booked", "appointment", "i have an appointment"),
            ("no", "Not yet", "no", "not yet", "i didn't")).choices), safety=True, only_if=SENT & ~TOLD_THEM.known),
        Ask("said", "What was said? A few words are enough. If you have a coach here, they read them.",
            Words(limit=300, example_text="nothing serious, no load for two weeks", tried=("nothing serious",)), free=True, signs=TOLD,
            only_if=WENT.is_("yes") & ~WROTE.known),
        Do(Find("referral.went", "{went_now}", "asked after a referral", "{said_now}"), WENT.known),
        Do(Find("safety.seen", "{went_now}", "asked after a referral"), WENT.known),
        Do(Alert("{stood}", "has been seen. Told, in their words: {said_now}"), WENT.is_("yes")),
        Do(Alert("{stood}", "has not been seen yet; an appointment is booked"), WENT.is_("booked")),
        Do(Alert("{stood}", "has not been seen yet"), WENT.is_("no")),
        Do(Remind("referral", "referral", ""), ~STILL_NOT_SEEN),
        Do(Remind("referral", "referral", "{next_time}"), STILL_NOT_SEEN),
        Ask("may_train", "Did they say that you may train?", YesNo(unsure=True, tells=says_cleared), safety=True,
            only_if=WENT.is_("yes") & ~LIMIT_SAID.known),
        Run("limits", WENT.is_("yes") & LIMIT_SAID.known, asked="{limit_said}"),
        Run("clearance", fact("may_train").is_("yes"), asked="{clears}"),
        Tell("Thank you for telling me. Once you have been told that you may train, say “safety check”: only that opens squats and "
             "tests again.", WENT.is_("yes") & ~fact("may_train").is_("yes")),
        Tell("Good that it is booked. If anything gets worse before then, don't wait for it.", WENT.is_("booked")),
        Tell(EMERGENCY, STILL_NOT_SEEN & STOOD.is_("emergency"), must_arrive=True, last=True),
        Tell(SAME_DAY, STILL_NOT_SEEN & STOOD.is_("same_day"), must_arrive=True, last=True),
        Tell(CLINICIAN, WENT.is_("no") & STOOD.is_("clinician"), must_arrive=True),
        Tell("I ask again on {next_time:date}.", STILL_NOT_SEEN),
        Tell("As far as I know, you no longer need to be seen first.", ~SENT),
    ),
)
