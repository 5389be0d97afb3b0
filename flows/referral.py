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
from companion.language.being_seen import (
    BEING_SEEN,
    SEEN_PLAINLY,
    appointment,
    been_seen,
    only_says_seen,
    saw_somebody,
    tells_what_was_said,
    will_not_go,
)
from companion.language.clearances import says_cleared
from companion.language.half import in_doubt
from companion.language.passed_on import in_whole_words
from companion.screening.levels import REFERRED, URGENT_LEVELS
from companion.screening.limits import WORDS_MOST
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
    if seen in ("booked", "no", "going"):
        return stood | {"told": seen, "told_words": known.asked}
    if tells_what_was_said(known.asked) or (not seen and saw_somebody(known.asked)):
        return stood | {"wrote": known.asked}
    return stood | ({"told_words": known.asked} if seen else {})


def next_time(got: Facts, side: str) -> Value:
    """Return the date on which it is asked again: the day after the appointment, where it is known and they may wait for it."""
    today = date.fromisoformat(str(got["today"]))
    went = went_now(got, side)
    again = today + timedelta(days=1 if went == "going" else AGAIN.get(str(got.get("stood")), 1))
    booked = appointment(_how_told(got), today) if went == "booked" else None
    after = booked + timedelta(days=1) if booked and got.get("stood") == Level.CLINICIAN.value else again
    return max(after, today + timedelta(days=1)).isoformat()


def _how_told(got: Facts) -> str:
    return str(got.get("went_said", got.get("told_words", "")))


def booked_as(got: Facts, side: str) -> Value:
    """Return what a coach is told beside that it is booked: the lifter's words, and that its day is later than they were to be seen."""
    words, today = _how_told(got), date.fromisoformat(str(got["today"]))
    day = appointment(words, today)
    late = day is not None and day > today and got.get("stood") in URGENT_LEVELS
    return (f": “{in_whole_words(words, WORDS_MOST)}”" if words else "") + (". That is too late: they are to be seen today" if late else "")


def booked_today(got: Facts, side: str) -> Value | None:
    """Return "yes" if their words say that it is booked for today."""
    today = date.fromisoformat(str(got["today"]))
    return "yes" if appointment(_how_told(got), today) == today else None


def refuses(got: Facts, side: str) -> Value | None:
    """Return "yes" if their words say that they do not want to be seen, or can't."""
    return "yes" if will_not_go(_how_told(got)) else None


def went_now(got: Facts, side: str) -> Value | None:
    """Return "yes", "booked", "going" or "no": their answer, or what they wrote."""
    return got.get("went", got.get("told"))


def said_now(got: Facts, side: str) -> Value | None:
    """Return what was said, in their words; where they don't know, those in which they wrote that they were seen; None for neither."""
    if got.get("went") != "yes":
        return got.get("said")
    said = got.get("said", got.get("wrote"))
    wrote = next((words for key in ("went_said", "told_words") if only_says_seen(words := str(got.get(key, "")))), None)
    return wrote if wrote and (said is None or in_doubt(str(said))) else said


def limit_said(got: Facts, side: str) -> Value | None:
    """Return what was said, if that sets a limit, or may; None for what says only that they were seen, or that they don't know."""
    said = str(said_now(got, side) or got.get("wrote", ""))  # a limit holds also where it was said of something else
    return None if in_doubt(said) or only_says_seen(said) else limits_told(said)


def go_now(got: Facts, side: str) -> Value:
    """Return a line for whoever was to go at once, before they are asked again; "" for anybody else."""
    at_once = got.get("stood") == Level.EMERGENCY.value
    return "If you have not been seen: go to an emergency department now, or call your emergency number. " if at_once else ""


def quoted(got: Facts, side: str) -> Value:
    """Return a line with the words that say that they were seen, before they are asked whether that was about this; "" for none."""
    wrote = str(got.get("wrote", got.get("told_words", "")))
    return f"You wrote “{in_whole_words(wrote, WORDS_MOST)}”. " if wrote else ""


STOOD = Fact("stood", values=tuple(level.value for level in Level))
WORSE = Fact("worse", values=("its worse",))
WROTE = Fact("wrote", values=("doctor said its nothing",))
"""Words that say that they were seen, and what came of it."""
TOLD_THEM = Fact("told", values=("booked", "no", "going"))
REFUSES = Fact("refuses", values=("yes",), of=refuses)
"""True if they wrote that they do not want to be seen, or can't."""
SENT, WENT = STOOD.one_of(*REFERRED), Fact("went_now", values=("yes", "booked", "no", "going"), of=went_now)
LIMIT_SAID = Fact("limit_said", of=limit_said)
CLEARS = Fact("clears", of=lambda got, side: said if says_cleared(said := str(said_now(got, side) or "")) else "")
TO_BE_SEEN_NOW = STOOD.one_of(*URGENT_LEVELS)
BOOKED_TODAY = Fact("booked_today", values=("yes",), of=booked_today)
BOOKED_IN_TIME = STOOD.is_("same_day") & WENT.is_("booked") & BOOKED_TODAY.known
"""True if they are to be seen today, and it is booked for today."""
STILL_NOT_SEEN = WENT.one_of("booked", "no")
TOLD_AGAIN = STILL_NOT_SEEN | WENT.is_("going")
WORSE_AT_ONCE = STOOD.is_("emergency") & WORSE.known

WORSE_NOW: Final = (r"(?P<asked>(?:it'?s |it is |its |it |i'?m |i feel |feels |this is )?(?:got |getting |become |much |a lot |even |now )*"
                    r"worse(?: now| today| this morning)?)")
"""Whole messages that it is worse, of somebody who was sent."""

FLOW = Flow(
    "referral", version=1, title="Being seen", policy=Policy.TOLD, command=None, gates=(WELCOMED,), at_start=what_stands,
    heard_first=SEEN_PLAINLY, sentences=(*BEING_SEEN, WORSE_NOW), said_by=fact("safety.level").one_of(*REFERRED), at_rest=True,
    facts=(STOOD, WORSE, WROTE, TOLD_THEM, REFUSES, Fact("told_words", values=("booked for thursday", "i dont want to go")), WENT,
           Fact("how_told", of=lambda got, side: _how_told(got)), Fact("next_time", of=next_time),
           Fact("booked_as", of=booked_as), BOOKED_TODAY,
           Fact("said_now", of=said_now), Fact("go_now", of=go_now), Fact("quoted", of=quoted),
           LIMIT_SAID, CLEARS),
    invite="{go_now}I asked you to be seen about what you told me. Did you go? What was said?",
    steps=(
        Do(Alert("{stood}", "was sent to be seen, and writes now: “{worse}”"), SENT & WORSE.known),
        Tell("Then don't wait: call your doctor or an urgent care line now. Numb between the legs, no control of bladder or bowel, or "
             "chest pain? Your emergency number.", SENT & WORSE.known & ~WORSE_AT_ONCE, must_arrive=True),
        Ask("went", "{go_now}{quoted}Have you been seen about what you told me?", BeenSeen(choice(
            ("yes", "Yes, I went", "yes", "i went", "i did", "done"),
            ("booked", "It is booked", "booked", "appointment", "i have an appointment"),
            ("going", "On my way", "on my way", "going now"),
            ("no", "Not yet", "no", "not yet", "i didn't")).choices), safety=True, only_if=SENT & ~TOLD_THEM.known & ~WORSE_AT_ONCE),
        Ask("said", "What was said? A few words are enough. If you have a coach here, they read them.",
            Words(limit=300, example_text="nothing serious, no load for two weeks", tried=("nothing serious",)), free=True, signs=TOLD,
            only_if=WENT.is_("yes") & ~WROTE.known),
        Do(Find("referral.went", "{went_now}", "asked after a referral", "{said_now}"), WENT.known),
        Do(Find("safety.seen", "{went_now}", "asked after a referral"), WENT.known),
        Do(Alert("{stood}", "has been seen. Told, in their words: {said_now}"), WENT.is_("yes")),
        Do(Alert("{stood}", "has not been seen yet; an appointment is booked{booked_as}"), WENT.is_("booked")),
        Do(Alert("{stood}", "writes that they are on the way to be seen, or there"), WENT.is_("going")),
        Do(Alert("{stood}", "has not been seen yet"), WENT.is_("no") & ~REFUSES.known),
        Do(Alert("{stood}", "has not been seen, and writes: “{how_told}”"), WENT.is_("no") & REFUSES.known),
        Do(Remind("referral", "referral", ""), ~TOLD_AGAIN & ~WORSE_AT_ONCE),
        Do(Remind("referral", "referral", "{next_time}"), TOLD_AGAIN),
        Ask("may_train", "Did they say that you may train?", YesNo(unsure=True, tells=says_cleared), safety=True,
            only_if=WENT.is_("yes") & ~LIMIT_SAID.known),
        Run("limits", WENT.known & LIMIT_SAID.known, asked="{limit_said}"),
        Run("clearance", fact("may_train").is_("yes"), asked="{clears}"),
        Tell("Thank you for telling me. Once you have been told that you may train, say “safety check”: only that opens squats and "
             "tests again.", WENT.is_("yes") & ~fact("may_train").is_("yes")),
        Tell("Good. Stay with them, and tell them what you told me. I ask tomorrow how it went; nothing here needs an answer now.",
             WENT.is_("going"), last=True),
        Tell("I can see that you would rather not. What you told me may get harder to treat if it waits, so please let somebody look at "
             "it. Take somebody with you, or begin with a phone call.", WENT.is_("no") & REFUSES.known, must_arrive=True),
        Tell("Good that it is booked. If anything gets worse before then, don't wait for it.", WENT.is_("booked") & ~TO_BE_SEEN_NOW),
        Tell("Good that it is today. Tell them what you told me. If it gets worse before then, don't wait: your doctor or an urgent care "
             "line; in an emergency, your emergency number.", BOOKED_IN_TIME, must_arrive=True, last=True),
        Tell("Good that it is booked. Is it not today? Then don't wait for it.", WENT.is_("booked") & TO_BE_SEEN_NOW & ~BOOKED_IN_TIME,
             must_arrive=True),
        Tell(EMERGENCY, (STILL_NOT_SEEN | WORSE_AT_ONCE) & STOOD.is_("emergency"), must_arrive=True, last=True),
        Tell(SAME_DAY, STILL_NOT_SEEN & STOOD.is_("same_day") & ~BOOKED_IN_TIME, must_arrive=True, last=True),
        Tell(CLINICIAN, WENT.is_("no") & STOOD.is_("clinician"), must_arrive=True),
        Tell("I ask again on {next_time:date}.", STILL_NOT_SEEN),
        Tell("As far as I know, you no longer need to be seen first.", ~SENT),
    ),
)
