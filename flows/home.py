"""Home: the menu, which runs when nothing else does."""

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.flow import PARKED, Ask, Flow, Gate, Run
from companion.conversation.kinds import Option, choice
from companion.conversation.policy import Policy
from companion.screening.levels import SEEN_MENU, URGENT_LEVELS, words_of
from companion.screening.protocols import routed
from flows.coach_shared import IS_COACH
from flows.shared import LEVEL

PICK = fact("pick")
LIFTS = ~IS_COACH | fact("welcome.zone_right").is_("yes")
"""True for a lifter; a coach who does not squat here is not offered a lifter's options."""

AS_LIFTER = "Begin with “Find out why my back rounds”."
AS_COACH = "Say “who needs me”, “find Sam”, “cap Sam at 80”, “compare Sam and Mia”, “my groups” or “invite a lifter”; “undo” too."


SEEN_AT_ONCE = LEVEL.one_of(*URGENT_LEVELS)
MAY_MOVE = LIFTS & ~SEEN_AT_ONCE
"""True where squats and tests are offered: not to somebody who has to be seen at once."""


def begins(got: Facts, side: str) -> Value:
    """Return what is said first, for a lifter or a coach."""
    return AS_COACH if got.get("is_coach") == "yes" else stands(got, side) or AS_LIFTER


def stands(got: Facts, side: str) -> Value:
    """Return what stands before all else, for somebody who has to be seen at once; "" for anybody else."""
    menu = words_of(got.get("safety.level")).menu
    return SEEN_MENU if menu and got.get("safety.seen") == "yes" else menu


def stands_line(got: Facts, side: str) -> Value:
    """Return that as a line above the menu."""
    return f"{told} " if (told := stands(got, side)) else ""


TESTS = tuple((test, one.title) for test, one in routed().items())

FLOW = Flow(
    "home", version=1, title="Menu", policy=Policy.MENU, command=("home", "/start", "what next", "options"),
    facts=(Fact("begins", of=begins), Fact("stands_line", of=stands_line)),
    gates=(Gate(fact("link.status").one_of("lifter", "coach"), first="link_request"),
           Gate(~IS_COACH & ~fact("welcome.zone_right").is_("yes"), "The few questions at the beginning come first.", first="welcome")),
    steps=(
        Ask("pick", "{stands_line}What would you like to do?", choice(
            Option("go_on", "Go on where I stopped", ("go on", "resume", "continue", "carry on", "carry on where we left off",
                                                         "pick up where we left off"), only_if=fact("parked_title").known),
            Option("since", "Since you last looked", ("since", "who needs me"), only_if=IS_COACH),
            Option("caseload", "My lifters", ("lifters", "caseload"), only_if=IS_COACH),
            Option("invite_lifter", "Invite a lifter", ("invite",), only_if=IS_COACH),
            Option("digest", "Digest", ("my digest",), only_if=IS_COACH),
            Option("screen", "Find out why my back rounds", ("screen", "start", "test me", "begin"), only_if=MAY_MOVE),
            Option("one", "One test", ("single test", "a test", "test"), only_if=MAY_MOVE),
            Option("squat_day", "Squatting today", ("squat", "squat today", "squatting"), only_if=MAY_MOVE),
            Option("squat_days", "My squat days", ("squat days", "days", "skip it", "skip", "reschedule"), only_if=LIFTS),
            Option("prime", "Priming drill", ("drill", "prime", "warm up drill"), only_if=MAY_MOVE),
            Option("trial", "Does the drill help me?", ("trial", "priming trial"), only_if=~SEEN_AT_ONCE & ~fact("drill").is_("none")
                   & fact("drill").known),
            Option("outcome", "My results", ("results", "result", "findings"), only_if=LIFTS),
            Option("retest", "Test again", ("retest", "re-test"), only_if=MAY_MOVE),
            Option("progress", "How far I am", ("progress", "how far"), only_if=LIFTS),
            Option("about_you", "About me", ("my details", "details"), only_if=LIFTS),
            Option("my_coaches", "My coaches", ("coaches", "coach"), only_if=fact("coach").is_("yes")),
            Option("my_data", "My data", ("data", "privacy")),
        )),
        Ask("test", "Which test?", choice(*TESTS), only_if=PICK.is_("one")),
        Run(PARKED, PICK.is_("go_on")),
        *(Run(flow, PICK.is_(flow)) for flow in (
            "screen", "squat_day", "squat_days", "prime", "trial", "outcome", "retest", "progress", "about_you", "my_data",
            "my_coaches", "since", "caseload", "invite_lifter", "digest")),
        *(Run(flow, fact("test").is_(flow)) for flow, _ in TESTS),
    ),
)
