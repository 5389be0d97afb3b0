"""The next test: the open one that could still change most, with what is still open and in how many minutes; or that it is decided."""

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Do, Flow, Offer, Run, Tell
from companion.conversation.policy import Policy
from companion.screening.pairs import LOOK, OPENINGS
from companion.screening.protocols import route
from companion.screening.sources import value
from flows.screen_facts import YEARS, what_is_open

CHOSEN_FROM = tuple(test for test in route() if test != LOOK.id)
NEXT = Fact("next", values=CHOSEN_FROM)
LIMIT_SHUTS = fact("shut").is_("yes")
YEARS_WANTED = max(one.years for one in OPENINGS.values())
OPENED = NEXT.one_of(*(test for test in CHOSEN_FROM if test not in OPENINGS)) | (fact("about_you.years") >= YEARS_WANTED)
"""True unless the next test waits for years of squatting that they do not have; a test that is locked is not offered."""

FLOW = Flow(
    "next_test", version=1, title="Next test", policy=Policy.TALK, command=None, at_start=what_is_open,
    facts=(NEXT, Fact("shut", values=("yes",))),
    steps=(
        Do(Find("screen.state", "decided",
                f"nothing open could change ruling, drill or set-up in {value('could_change'):g} of 100 draws (choice)"),
           ~NEXT.known & ~LIMIT_SHUTS),
        Do(Find("screen.state", "shut", "a clinician's limit closes the tests that are left"), ~NEXT.known & LIMIT_SHUTS),
        Tell("That is enough: nothing that is left could change the outcome. All tests are still there: say “full screen”.",
             ~NEXT.known & ~LIMIT_SHUTS),
        Tell("You were told: {limit.words}. That closes tests I need to go on. Once it is over, or somebody has cleared you, say “screen”. "
             "“Full screen” has the tests that are still open.",
             ~NEXT.known & LIMIT_SHUTS),
        Run("about_you", NEXT.one_of(*OPENINGS) & ~YEARS.known, asked="years"),
        Do(Find("screen.open", "{rest}", "open tests that could still change something"), NEXT.known),
        Tell("Next: {title}, about {minutes:g} minutes: it tells the most now. Still to find out: {still}. At most {left:g} tests left, "
             "about {minutes_left:g} minutes.", NEXT.known & OPENED,
             offers=(Offer("Show results now", "outcome"), Offer("All the tests", "full_screen"))),
        *(Run(test, NEXT.is_(test) & OPENED) for test in CHOSEN_FROM),
    ),
)
