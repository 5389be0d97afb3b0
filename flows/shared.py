"""Parts shared by several flows: safety gates, depth bands, ways to watch a squat, and cautions."""

from __future__ import annotations

from functools import reduce
from operator import and_, or_

from companion.conversation.condition import Condition, Some, fact
from companion.conversation.flow import Ask, Gate, Offer, Tell
from companion.conversation.kinds import Choice, Option, choice
from companion.screening.levels import LEVEL_WORDS, SEEN, SEEN_TOMORROW, URGENT_LEVELS
from companion.screening.limits import Work
from companion.screening.safety import Level
from companion.screening.sources import with_numbers

LEVEL = fact("safety.level")

EMERGENCY, SAME_DAY, CLINICIAN, NOT_TODAY, NO_LOAD = (LEVEL_WORDS[level].lifter for level in (
    Level.EMERGENCY, Level.SAME_DAY, Level.CLINICIAN, Level.NOT_TODAY, Level.NO_LOAD))
BARRED = "Lying on the back and deep folds are left out in pregnancy, so I don't offer this test. That is a precaution."

CAUDA_EQUINA = "New trouble with bladder or bowel; numbness between the legs; weakness in both legs; loss of sexual function."
"""Its red flags, which are always asked in one breath."""

CALL_FIRST = "Stop there, and get comfortable. If it is there now: call your emergency number first, and answer me later."
"""Said to chest pain, faintness or breathlessness in somebody's words, before anything is asked."""

LEG_FIRST = "Stop there, and get comfortable. A leg that has become weak needs to be seen today, also if you stop answering here."
"""The same to a weak leg or a foot that drops."""

_SEEN_FIRST = fact("safety.may_open").is_("no")

WELCOMED = Gate(~fact("welcome.zone_right").is_("yes"), "The few questions at the beginning come first.", first="welcome")
"""The gate before all else: consent, age, units, time zone."""

AGE = fact("safety.age")
TAKEN_AS_YOUNG = AGE.is_("under_18") | (fact("welcome.adult").is_("no") & ~AGE.is_("grown"))
"""True of somebody who said that they are under 18, and has not put it right since."""

OF_AGE = Gate(TAKEN_AS_YOUNG & ~fact("coach").is_("yes"), "Under 18, this only works with a coach who is linked to you here, and there is "
              "none now. If I have your age wrong, say “my age”.")
"""Under 18, nothing that moves the body opens without a coach, also if a coach has left since."""

SEEN_SINCE = LEVEL.one_of(*URGENT_LEVELS) & fact("safety.seen").is_("yes")
SEEN_TODAY = Gate(SEEN_SINCE & _SEEN_FIRST, SEEN_TOMORROW)
"""The gate for somebody who was to be seen at once and has been: from tomorrow the safety check."""

CLOSING_LEVELS = (Gate(SEEN_SINCE, SEEN), Gate(LEVEL.is_("emergency"), EMERGENCY), Gate(LEVEL.is_("same_day"), SAME_DAY),
            Gate(LEVEL.is_("clinician"), CLINICIAN), Gate(LEVEL.is_("not_today"), NOT_TODAY))
"""Gates for a level that closes tests and drills already, told before anything is asked."""

BEGUN_AGAIN = Gate(fact("crisis").is_("open"), first="begin_again")
"""The gate after thoughts of self-harm: nothing opens before the lifter begins again."""

ANSWERED_OF_HARM = Gate(fact("crisis").is_("asked"), first="crisis")
"""The gate while it is asked whether there are such thoughts, also if the question was left."""

AT_ALL = (WELCOMED, OF_AGE, BEGUN_AGAIN, ANSWERED_OF_HARM)
"""Gates before anything that moves the body or leads to that, today or later."""

OFFER_UNDO = Tell(with_numbers("If that was a wrong tap, you can undo it once, within {undone_within:count minutes}. I then ask each red "
                               "flag again."),
            offers=(Offer("That was a wrong tap", "wrong_tap"),))
"""The way back from a tap that closed everything."""
BY = ("tap", "words")


def closed_by_tap(**closes: Condition) -> Condition:
    """True if one of these answers closed everything, and each that did was tapped, not typed. ``closes``: when, by answer."""
    tapped = [~when | fact(f"{key}_by").is_("tap") for key, when in closes.items()]
    return reduce(or_, closes.values()) & reduce(and_, tapped) & ~fact("safety.undone.today").known


ASKED_THE_MORNING_AFTER = Gate(fact("pain.follow").is_("open") & ~fact("pain.follow.today").known, first="morning")
"""The gate from the day after something hurt, wherever it did: how it is comes first, each day until it is back to usual."""

NOT_AGAIN_TODAY = Gate(
    LEVEL.is_("not_today") & _SEEN_FIRST & (fact("pain.follow").is_("open") | fact("safety.checked.today").known),
    "A safety check can't open today any more; from tomorrow it can. If something else is wrong, write what it is.")
"""The gate before a safety check where pain or a check has closed today: another would ask much and open nothing."""

LIMIT_OPEN = Gate(fact("limit.open").is_("yes"), "You told me of a limit, and what it is stays open. Until you have answered, nothing that "
                  "moves opens here: say “my limits”.", first="limits")
"""The gate while what a clinician told somebody is still asked about: that comes first."""

LIMIT_DUE = Gate(fact("limit.due").is_("yes"), "What a clinician told you has come to its date, and whether it is over is still open.",
                 first="limit_over")
"""The gate on the date of a limit: it stands until it was asked about."""


def closes(*uses: Work) -> Condition:
    """Return the condition that a clinician's limit closes work of these kinds, or all that moves."""
    return Some(tuple(fact(work.fact).is_("closed") for work in (Work.MOVE, *uses)))


def limited(*uses: Work) -> Gate:
    """Return the gate before work of these kinds."""
    return Gate(closes(*uses), "You were told to leave that out: {limit.words}. Once somebody has cleared you, say “cleared”.",
                throughout=True)


CLOSED = (
    *AT_ALL,
    SEEN_TODAY,
    Gate(LEVEL.is_("emergency") & _SEEN_FIRST, EMERGENCY),
    Gate(LEVEL.is_("same_day") & _SEEN_FIRST, SAME_DAY),
    ASKED_THE_MORNING_AFTER,
    Gate(LEVEL.is_("not_today") & _SEEN_FIRST, NOT_TODAY),
    LIMIT_OPEN,
    Gate(~fact("safety.checked.today").known | fact("safety.checked").is_("undone"),
         "Without today's safety check no test and no squat opens here.",
         first="safety_check"),
    *CLOSING_LEVELS,
    LIMIT_DUE,
)
"""Gates before anything that moves the body: how it is after pain, no limit that is still asked about, today's safety check, no level that
closes it, no limit whose date has come. Where today is closed already, nothing more is asked."""

FLOOR = CLOSED
SQUAT = (*CLOSED, Gate(LEVEL.is_("no_load"), NO_LOAD))
"""Gates before squats, loaded or whole-body work."""

SORE = Gate(fact("safety.sore").is_("yes") & fact("safety.sore.today").known,
            "You told me you are sore from training, and that changes the numbers. This test waits; nothing is locked.")

BODY_WEIGHT = fact("safety.body_first").is_("yes") | fact(Work.LOAD.fact).is_("closed")
"""True if only body weight is allowed: an old disc injury, pregnancy, or a clinician's limit."""

NO_BAR = fact("about_you.bar").is_("none") | fact("bar.bar").is_("none")
"""True if they said that they have no bar."""

WARM = Gate(~(fact("warm.today").known & fact("warm").is_("done")), "This test waits until you are warmed up and rested.",
            first="warm_up")
"""The gate before a scored test: the fixed warm-up today, and no heavy squats or deadlifts in the two days before."""

SCORED = (SORE, WARM)
"""Gates before a scored test: rested, not sore, warmed up."""

NOT_PREGNANT = Gate(fact("safety_check.pregnant").one_of("yes", "unsure") | fact("safety.pregnant").one_of("yes", "unsure"), BARRED)
"""The gate before lying on the back or folding deeply."""

BANDS: Choice = choice(
    ("well_above", "Well above parallel", "high", "well above", "high up", "half way", "halfway", "half squat", "quarter squat"),
    ("a_little_above", "A little above", "little above", "just above", "a bit above", "almost parallel", "nearly parallel",
     "just short of parallel"),
    ("parallel", "About parallel", "parallel", "at parallel", "level", "level with the floor", "horizontal", "right at parallel"),
    ("below", "Below parallel", "below", "deep", "under", "all the way down", "rock bottom", "full depth", "past parallel",
     "at the bottom", "ass to grass"),
)
"""The depth of the thigh, from the side; parallel: the top of the thigh level with the floor."""

AT_HAND = fact("about_you.view")
NO_PHONE = AT_HAND.one_of("mirror", "neither")
WATCHED: Choice = choice(
    Option("film", "Film, from the side", ("film", "video", "camera", "phone"), only_if=~NO_PHONE),
    Option("mirror", "Mirror", ("in a mirror",), only_if=~AT_HAND.is_("neither")),
    ("friend", "A friend watches", "friend", "partner", "somebody"),
    ("feel", "By feel", "feel", "felt it"),
)
"""What they have at hand decides which of these is offered; without film and mirror a friend's eye is still better than feel."""

NO_TAPE, NO_LEVEL = fact("about_you.tape").is_("no"), fact("about_you.level").is_("no")
"""What is not at hand, as far as they said; not asked counts as there."""

SHARP = "Stop at once if anything hurts: sharp, shooting, tingling or numb."


def watched_by(say: str = "How will you see it?") -> Ask:
    """Return the question about the way this squat is watched; judged by feel, its findings count less."""
    return Ask("seen_by", say, WATCHED)
