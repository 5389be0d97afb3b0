"""The screen: first the squat look, then whichever open test could change most, until nothing open could change the outcome."""

from __future__ import annotations

from companion.conversation.condition import fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Jump, Offer, Run, Tell
from companion.conversation.kinds import YesNo
from companion.conversation.policy import Policy
from companion.screening.pairs import LOOK
from companion.screening.protocols import route
from companion.screening.setups import NAMES
from flows.screen_facts import FLOOR_OPEN, LEVEL, NOT_CHECKED_TODAY, SCREEN_MINUTES, SQUATS_OPEN, done_already, wanted
from flows.shared import AT_ALL, CLOSING_LEVELS, LIMIT_DUE, LIMIT_OPEN, limited

PLAIN_ROUNDS = fact(LOOK.key("plain_rounds"))
NO_PAIN = fact("safety_check.pain") <= 0
CLEAN_LOADED = ~fact(LOOK.key("load_rounds")).one_of("little", "some", "clearly")
REST_OPTIONAL = CLEAN_LOADED & (PLAIN_ROUNDS.is_("no") | (
    NO_PAIN & PLAIN_ROUNDS.one_of("little", "some") & fact(LOOK.key("plain_depth")).one_of("parallel", "below")))
"""True where the other tests are optional: never rounding without load, or a little of it that deep without pain (McKean 2010 J Strength
Cond Res 24:2731, read), and none on film under load."""
WANTS_MORE = ~fact("all_the_same").is_("no")
LOOKED = fact(Run(LOOK.id).key).is_("done")
NORMAL = (
    Tell("You saw no rounding without load. That is good news; the other tests are optional.",
         LOOKED & REST_OPTIONAL & PLAIN_ROUNDS.is_("no")),
    Tell("A little rounding that deep is common, in trained lifters too, and often fine without pain. The other tests are "
         "optional.", LOOKED & REST_OPTIONAL & ~PLAIN_ROUNDS.is_("no")),
    Ask("all_the_same", "Go on with the other tests all the same?", YesNo(yes="Yes, go on", no="No, show results"),
        only_if=REST_OPTIONAL & LOOKED),
)
"""After the squat look: little or no rounding makes the rest optional."""

AFTER_LOOK = (Run("best_squat", LOOKED & fact("setup.proposed").one_of(*NAMES) & fact("setup.proposed.today").known & SQUATS_OPEN), *NORMAL)
"""What moved the rounding is checked while the phone still stands there."""

AS_FAR_AS_TODAY = Tell("That is as far as it goes today. What you did is kept; say “screen” another day to go on.",
                       ~FLOOR_OPEN & ~NOT_CHECKED_TODAY & LEVEL.one_of("go", "no_load", "not_today"))
LOOK_FIRST = wanted(LOOK)
MORE_TESTS = FLOOR_OPEN & WANTS_MORE
UNDECIDED = fact("screen.state").is_("open") & MORE_TESTS

FLOW = Flow(
    "screen", version=2, title="Screen", policy=Policy.TALK, command=("test me", "short screen", "short route"),
    gates=(*AT_ALL, *CLOSING_LEVELS, LIMIT_OPEN, LIMIT_DUE, limited()), at_start=done_already,
    invite=f"You are rested by now, so the tests can go on. About {SCREEN_MINUTES} minutes in all, in as many parts as you like; safety "
           "check and warm-up first. Tap below, or say “screen” when it suits you.",
    steps=(
        Tell("Tests done already: {done_before:g}. They count, and we go on from there.", fact("done_before") >= 1),
        Do(Find("screen.state", "open", "a screen has begun")),
        Do(Find("screen.open", ",".join(route()), "a screen has begun")),
        Tell(f"Most need about {SCREEN_MINUTES} minutes in all. First your squat, after a safety check and a warm-up; what it shows "
             f"decides which tests follow: at most {len(route()) - 1}, mostly half of them. You can stop after any.", LOOK_FIRST,
             offers=(Offer("All the tests", "full_screen"),)),
        Run(LOOK.id, LOOK_FIRST),
        *AFTER_LOOK,
        Run("next_test", MORE_TESTS, then=(Jump(UNDECIDED, "run_next_test"),)),
        AS_FAR_AS_TODAY,
        Run("outcome", FLOOR_OPEN),
        Do(Find("screen.told", "{outcome.at}", "the results of a whole screen"), fact("outcome.at").known & FLOOR_OPEN),
    ),
)
