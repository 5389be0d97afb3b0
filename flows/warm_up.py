"""Warm-up: the same three minutes before every test and retest, so that readings can be compared."""

from datetime import date, timedelta

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.effects import Find, Remind
from companion.conversation.flow import Ask, Do, Flow, Jump, Tell
from companion.conversation.kinds import Hold, Ready, YesNo
from companion.screening.limits import Work
from companion.screening.sources import SOURCES, value, with_numbers
from flows.shared import FLOOR, LEVEL, closes, limited

REST = timedelta(days=value("stretched_rest"))
HOURS = f"{REST / timedelta(hours=1):g} hours"
"""No scored test within this of heavy squats or deadlifts: our choice."""

WALK = Hold(seconds=int(SOURCES["warm_up_walk"].value[0]), count_in=0,
            go=with_numbers("Walk on the spot: {warm_up_walk_0:count minutes} from now."),
            over=with_numbers("That is {warm_up_walk_0:count minutes}."))
# Chest pain, faintness or unusual breathlessness on effort stops it: ACSM logic, Riebe 2015 (read).
EASY = "Stop if anything hurts, or if you feel faint, tight in the chest or short of breath."


def _after_rest(got: Facts, side: str) -> Value | None:
    return (date.fromisoformat(str(got["today"])) + REST).isoformat()


HEAVY, RESTED = fact("heavy").is_("yes"), fact("heavy").is_("no")
NO_SQUATS = LEVEL.is_("no_load") | closes(Work.SQUAT)
WALKED = fact("walk").known & fact("walk_more").known
WARMED_UP = RESTED & WALKED & (fact("squats").known | NO_SQUATS)

FLOW = Flow(
    "warm_up", version=1, title="Warm-up", needs=("chair",), gates=(*FLOOR, limited()), command=("warmup",),
    facts=(Fact("after_rest", of=_after_rest),),
    steps=(
        Ask("heavy", f"Heavy squats or deadlifts in the last {HOURS}? Tired muscles would change the numbers.",
            YesNo(partly="yes"), then=(Jump(~fact("heavy").known, say="I need that answer before a test, so the tests wait. "
                                "Say “warm up” whenever you like."),)),
        Do(Find("warm", "later", f"no scored test within {HOURS} of heavy squats or deadlifts: our choice"),
           only_if=HEAVY),
        Do(Remind("screen", "screen", "{after_rest}"), only_if=HEAVY),
        Tell("Good training, wrong day for numbers. The tests wait until you are rested; nothing is lost. I "
             "will offer them on {after_rest:date}.", only_if=HEAVY),
        Ask("walk", with_numbers("A short warm-up, the same before every test. First walk on the spot for {warm_up_walk_0:count minutes}, "
                                 "arms loose. Tap Start and I keep the time."), WALK, caution=EASY, only_if=RESTED,
            picture="warm_up_walk"),
        Ask("squats", with_numbers("Now {warm_up_squats:count} easy squats to a chair, no weight: sit down, stand up. Use your hands if "
                                   "you like."), Ready("Done"), caution=EASY, only_if=RESTED & ~NO_SQUATS, picture="warm_up_chair"),
        Ask("walk_more", with_numbers("{warm_up_walk_0:Count more minutes} on the spot, as gently as you like."), WALK, caution=EASY,
            only_if=RESTED),
        Do(Find("warm", "done", "fixed warm-up"), only_if=WARMED_UP),
        Tell("Warm enough for the tests.", only_if=WARMED_UP),
        Tell("A part of the warm-up was left out, so the tests wait. Say “warm up” to do it.",
             only_if=RESTED & ~WARMED_UP),
    ),
)
