"""The full screen: every test in a fixed order, in one go or over several days."""

from __future__ import annotations

from typing import Any

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Flow, Jump, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from companion.screening.pairs import LOOK, OPENINGS
from companion.screening.protocol import Protocol
from companion.screening.protocols import route, routed
from flows.screen import AFTER_LOOK, AS_FAR_AS_TODAY, WANTS_MORE
from flows.screen_facts import FLOOR_OPEN, FULL_MINUTES, YEARS, done_already, wanted
from flows.shared import AT_ALL, CLOSING_LEVELS, LIMIT_DUE, LIMIT_OPEN, limited


def _left(test: str) -> Fact:
    def of(got: Facts, side: str) -> Value:
        """Return how many tests are left from this one on, without those done already."""
        return float(sum(f"done_{other}" not in got for other in route()[route().index(test):]))

    return Fact(f"left_{test}", 0, len(route()), step=1, of=of)


def _leg(test: Protocol[Any]) -> tuple[Ask | Run, ...]:
    say = (f"Next: {test.title.lower()}, about {test.minutes} minutes. At most {{left_{test.id}:g}} left. Ready for it? "
           "You can also stop here and go on another day.")
    go = fact(f"go_{test.id}")
    years = (Run("about_you", wanted(test, years_told=False) & ~YEARS.known & WANTS_MORE, asked="years"),) if test.id in OPENINGS else ()
    return (
        *years,
        Ask(f"go_{test.id}", say, choice(("now", "Go on", "yes", "ready", "ok"), ("skip", "Leave this one out", "no"),
                                      ("later", "Stop for today", "later", "stop", "another day")), only_if=wanted(test) & WANTS_MORE,
            then=(Jump(go.is_("later"), say="Good. It is all kept. Say “full screen” another day and we go on from there."),)),
        Run(test.id, go.is_("now")),
    )


FLOW = Flow(
    "full_screen", version=1, title="Full screen", policy=Policy.TALK, command=("all tests", "every test", "all the tests"),
    gates=(*AT_ALL, *CLOSING_LEVELS, LIMIT_OPEN, LIMIT_DUE, limited()), at_start=done_already, facts=tuple(map(_left, route())),
    steps=(
        Tell("Tests done already: {done_before:g}. They count, and we go on from there.", fact("done_before") >= 1),
        Tell(f"Every test there is, about {FULL_MINUTES} minutes; you can spread it over days. “Screen” is shorter: it ends when nothing "
             "left could change the outcome.", fact("done_before") < 1),
        *(step for test in routed().values() for step in (*_leg(test), *(AFTER_LOOK if test is LOOK else ()))),
        AS_FAR_AS_TODAY,
        Run("outcome", FLOOR_OPEN),
        Do(Find("screen.told", "{outcome.at}", "the results of a whole screen"), fact("outcome.at").known & FLOOR_OPEN),
    ),
)
