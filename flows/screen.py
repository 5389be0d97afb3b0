"""The screen: the tests in a sensible order, all of them or the short route, in one go or on several days."""

from __future__ import annotations

from datetime import datetime, timedelta

from companion.conversation.condition import Condition, Fact, Facts, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Jump, Known, Run, Tell
from companion.conversation.kinds import YesNo, choice
from companion.conversation.policy import Policy
from companion.screening.safety import FLOOR_TESTS, LYING_OR_FOLD_TESTS
from companion.screening.screen import ROUTE, SHORT_ROUTE
from flows.home import TESTS
from flows.outcome_facts import told_at
from flows.shared import OF_AGE, STANDING, WELCOMED

COUNTS_FOR = timedelta(days=14)
"""A test done longer ago than this is done again in a new screen (choice)."""

TITLES = dict(TESTS)
MINUTES = {"squat_look": 10, "rock_back": 3, "hip_fold": 5, "leg_raise": 6, "knee_to_wall": 4, "hand_on_back_squat": 3,
           "bird_dog": 5, "arms_forward_squat": 4, "pause_squat": 5, "hinge_to_squat": 4}


def tests_done(known: Known, since: datetime | None) -> set[str]:
    """The tests done lately, and after a moment if one is given."""
    earliest = max(known.now - COUNTS_FOR, since or known.now - COUNTS_FOR)
    return {row.flow for row in known.answers() if row.flow in ROUTE and row.ending == "done" and row.status == "ok"
            and row.at > earliest}


def done_already(known: Known) -> dict[str, Value]:
    """Which tests count already: done lately, and since the results of the last whole screen."""
    done = tests_done(known, told_at(known, "screen.told"))
    return {f"done_{test}": "yes" for test in ROUTE if test in done} | {"done_before": float(len(done))}


def _route(got: Facts) -> tuple[str, ...]:
    return SHORT_ROUTE if got.get("route") == "short" else ROUTE


def _place(test: str) -> Fact:
    def of(got: Facts, side: str) -> Value | None:
        return float(_route(got).index(test) + 1) if test in _route(got) else None

    return Fact(f"place_{test}", 1, len(ROUTE), step=1, of=of)


def total(got: Facts, side: str) -> Value | None:
    """How many tests the route has."""
    return float(len(_route(got)))


SHORT = fact("route").is_("short")
FULL = ~SHORT
LEVEL = fact("safety.level")
UNCHECKED = ~fact("safety.level.today").known
RESTED = (~(fact("warm").is_("later") & fact("warm.today").known)
          & ~(fact("safety.sore").is_("yes") & fact("safety.sore.today").known))
OPEN = RESTED & (UNCHECKED | LEVEL.is_("go"))
OPEN_FLOOR = RESTED & (UNCHECKED | LEVEL.one_of("go", "no_load"))
ROUNDS = fact("squat_look.plain_rounds")
NO_PAIN = fact("safety_check.pain") <= 0
CLEAN_LOADED = ~fact("squat_look.load_rounds").one_of("little", "clearly")
COMMON = CLEAN_LOADED & (ROUNDS.is_("no") | (NO_PAIN & ROUNDS.is_("little")
                                             & fact("squat_look.plain_depth").one_of("parallel", "below")))
GOES_ON = ~fact("all_the_same").is_("no")


def _wanted(test: str) -> Condition:
    """When a test comes: on the route, not done, open by the safety level, and right for this lifter."""
    wanted: Condition = (OPEN_FLOOR if test in FLOOR_TESTS else OPEN) & ~fact(f"done_{test}").known & GOES_ON
    if test not in SHORT_ROUTE:
        wanted = wanted & FULL
    if test in LYING_OR_FOLD_TESTS:
        wanted = wanted & ~fact("safety_check.pregnant").one_of("yes", "unsure")
    if test == "hinge_to_squat":
        wanted = (wanted & (fact("about_you.years") >= 1) & fact("arms_forward_squat.fault").is_("clean")
                  & fact("pause_squat.shape").is_("clean") & ~fact("pause_squat.again").is_("rounds"))
    return wanted


def _leg(test: str) -> tuple[Ask | Run, ...]:
    say = (f"Test {{place_{test}}} of {{total}}: {TITLES[test].lower()}, about {MINUTES[test]} minutes. Ready for it? "
           "You can also stop here and go on another day.")
    go = fact(f"go_{test}")
    return (
        Ask(f"go_{test}", say, choice(("now", "Go on", "yes", "ready", "ok"), ("skip", "Leave this one out", "no"),
                                      ("later", "Stop for today", "later", "stop", "another day")), only_if=_wanted(test),
            then=(Jump(go.is_("later"), say="Good. It is all kept. Say “screen” another day and we go on from there."),)),
        Run(test, go.is_("now")),
    )


LOOKED = fact("run_squat_look").is_("done")
NORMAL = (
    Tell("You saw no rounding without load. That is good news; the other tests are optional.",
         LOOKED & COMMON & ROUNDS.is_("no")),
    Tell("A little rounding that deep is common, in trained lifters too, and often fine without pain. The other tests are "
         "optional.", LOOKED & COMMON & ~ROUNDS.is_("no")),
    Ask("all_the_same", "Go on with the other tests all the same?", YesNo(yes="Yes, go on", no="No, show results"),
        only_if=COMMON & LOOKED),
)
"""Normal first: little or no rounding makes the rest optional."""

FLOW = Flow(
    "screen", version=1, title="Screen", policy=Policy.TALK, minutes=50, command=("full screen", "test me"),
    gates=(WELCOMED, OF_AGE, *STANDING), at_start=done_already,
    invite="You are rested by now, so the tests can go on. About 50 minutes in all, in as many parts as you like; safety "
           "check and warm-up first. Tap below, or say “screen” when it suits you.",
    facts=(Fact("total", 1, len(ROUTE), step=1, of=total), *map(_place, ROUTE)),
    steps=(
        Tell("Tests done already: {done_before}. They count, and we go on from there.", fact("done_before") >= 1),
        Ask("route", "The full screen takes about 50 minutes, and you can spread it over days. The short route takes about "
            "12 and rules out less. Which one?", choice(("full", "Full screen", "full", "all", "long"),
                                                        ("short", "Short route", "short", "quick"))),
        *_leg("squat_look"),
        *NORMAL,
        *(step for test in ROUTE[1:] for step in _leg(test)),
        Tell("That is as far as it goes today. What you did is kept; say “screen” another day to go on.",
             ~OPEN_FLOOR & ~UNCHECKED & LEVEL.one_of("go", "no_load", "not_today")),
        Run("outcome", OPEN_FLOOR),
        Do(Find("screen.told", "{outcome.at}", "the results of a whole screen"), fact("outcome.at").known & OPEN_FLOOR),
    ),
)
