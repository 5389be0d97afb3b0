"""The screen: all tests or the short route, in a fixed order, in one go or over several days."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

from companion.conversation.condition import Condition, Fact, Facts, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Jump, Known, Run, Tell
from companion.conversation.kinds import YesNo, choice
from companion.conversation.policy import Policy
from companion.screening.pairs import COMMON as NEED_NO_MORE
from companion.screening.pairs import LOOK, OPENINGS
from companion.screening.protocol import Protocol
from companion.screening.protocols import protocols, route, routed, short_route
from companion.screening.safety import Level
from companion.screening.setups import NAMES
from companion.screening.sources import value
from flows.outcome_facts import told_at
from flows.shared import AT_ALL, CLOSING_LEVELS, LIMIT_DUE, closes, limited

COUNTS_FOR = timedelta(days=value("screen_counts"))
"""A test done longer ago than this is done again in a new screen (choice)."""

FULL_MINUTES = 5 * round(sum(one.minutes for one in routed().values()) / 5)
"""The duration of the full screen, to five minutes."""

SHORT_MINUTES = 3 * len(short_route())
"""Three minutes a test, as announced so far (choice). The tests' own minutes, with reading and set-up, add up to more."""


def tests_done(known: Known, since: datetime | None) -> set[str]:
    """Return the tests done within ``COUNTS_FOR``, and after a moment if one is given."""
    earliest = max(known.now - COUNTS_FOR, since or known.now - COUNTS_FOR)
    return {row.flow for row in known.answers() if row.flow in routed() and row.ending == "done" and row.status == "ok"
            and row.at > earliest}


def done_already(known: Known) -> dict[str, Value]:
    """Return the tests that count already: done within ``COUNTS_FOR`` and since the results of the last whole screen."""
    done = tests_done(known, told_at(known, "screen.told"))
    return {f"done_{test}": "yes" for test in route() if test in done} | {"done_before": float(len(done))}


def _route(got: Facts) -> tuple[str, ...]:
    return short_route() if got.get("route") == "short" else route()


def _place(test: str) -> Fact:
    def of(got: Facts, side: str) -> Value | None:
        """Return the test's place on the chosen route, from 1; None if it is not on it."""
        return float(_route(got).index(test) + 1) if test in _route(got) else None

    return Fact(f"place_{test}", 1, len(route()), step=1, of=of)


def total(got: Facts, side: str) -> Value | None:
    """Return the number of tests on the chosen route."""
    return float(len(_route(got)))


SHORT_ROUTE = fact("route").is_("short")
FULL_ROUTE = ~SHORT_ROUTE
LEVEL = fact("safety.level")
NOT_CHECKED_TODAY = ~fact("safety.level.today").known
RESTED = (~(fact("warm").is_("later") & fact("warm.today").known)
          & ~(fact("safety.sore").is_("yes") & fact("safety.sore.today").known))
SQUATS_OPEN = RESTED & (NOT_CHECKED_TODAY | LEVEL.is_("go"))
FLOOR_OPEN = RESTED & (NOT_CHECKED_TODAY | LEVEL.one_of("go", "no_load"))
PLAIN_ROUNDS = fact(NEED_NO_MORE.rounds)
NO_PAIN = fact("safety_check.pain") <= 0
CLEAN_LOADED = ~fact(NEED_NO_MORE.loaded).one_of(*NEED_NO_MORE.not_loaded)
REST_OPTIONAL = CLEAN_LOADED & (PLAIN_ROUNDS.is_("no") | (
    NO_PAIN & PLAIN_ROUNDS.one_of("little", "some") & fact(NEED_NO_MORE.depth).one_of(*NEED_NO_MORE.deep)))
WANTS_MORE = ~fact("all_the_same").is_("no")


def open_for(test: Protocol[Any]) -> Condition:
    """Return the condition under which the safety level and a clinician's limits let a test be offered; its own gates follow."""
    return (FLOOR_OPEN if Level.NO_LOAD in test.posture.levels else SQUATS_OPEN) & ~closes(*test.uses)


def _wanted(test: Protocol[Any]) -> Condition:
    """Return the condition for offering a test: on the route, not done, open at this level, and suitable for the lifter."""
    wanted: Condition = open_for(test) & ~fact(f"done_{test.id}").known & WANTS_MORE
    if not test.short:
        wanted = wanted & FULL_ROUTE
    if test.posture.barred_in_pregnancy:
        wanted = wanted & ~fact("safety_check.pregnant").one_of("yes", "unsure")
    if opening := OPENINGS.get(test.id):
        wanted = wanted & (fact("about_you.years") >= opening.years)
        for other, key in opening.clean:
            wanted = wanted & fact(protocols()[other].key(key)).is_("clean")
        for other, key in opening.not_rounding:
            wanted = wanted & ~fact(protocols()[other].key(key)).is_("rounds")
    return wanted


def _leg(test: Protocol[Any]) -> tuple[Ask | Run, ...]:
    say = (f"Test {{place_{test.id}}} of {{total}}: {test.title.lower()}, about {test.minutes} minutes. Ready for it? "
           "You can also stop here and go on another day.")
    go = fact(f"go_{test.id}")
    return (
        Ask(f"go_{test.id}", say, choice(("now", "Go on", "yes", "ready", "ok"), ("skip", "Leave this one out", "no"),
                                      ("later", "Stop for today", "later", "stop", "another day")), only_if=_wanted(test),
            then=(Jump(go.is_("later"), say="Good. It is all kept. Say “screen” another day and we go on from there."),)),
        Run(test.id, go.is_("now")),
    )


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

FLOW = Flow(
    "screen", version=1, title="Screen", policy=Policy.TALK, command=("full screen", "test me"),
    gates=(*AT_ALL, *CLOSING_LEVELS, LIMIT_DUE, limited()), at_start=done_already,
    invite=f"You are rested by now, so the tests can go on. About {FULL_MINUTES} minutes in all, in as many parts as you like; safety "
           "check and warm-up first. Tap below, or say “screen” when it suits you.",
    facts=(Fact("total", 1, len(route()), step=1, of=total), *map(_place, route())),
    steps=(
        Tell("Tests done already: {done_before}. They count, and we go on from there.", fact("done_before") >= 1),
        Ask("route", f"The full screen takes about {FULL_MINUTES} minutes, and you can spread it over days. The short route takes about "
            f"{SHORT_MINUTES} and rules out less. Which one?", choice(("full", "Full screen", "full", "all", "long"),
                                                        ("short", "Short route", "short", "quick"))),
        *(step for test in routed().values() for step in (*_leg(test), *(AFTER_LOOK if test is LOOK else ()))),
        Tell("That is as far as it goes today. What you did is kept; say “screen” another day to go on.",
             ~FLOOR_OPEN & ~NOT_CHECKED_TODAY & LEVEL.one_of("go", "no_load", "not_today")),
        Run("outcome", FLOOR_OPEN),
        Do(Find("screen.told", "{outcome.at}", "the results of a whole screen"), fact("outcome.at").known & FLOOR_OPEN),
    ),
)
