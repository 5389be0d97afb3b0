"""Begin again: after somebody wrote of harming themselves, nothing goes on until they say so."""

from dataclasses import replace

from companion.conversation.condition import Fact, fact
from companion.conversation.effects import Find, Replan
from companion.conversation.flow import PARKED, Ask, Do, Flow, Run, Tell
from companion.conversation.kinds import choice
from companion.conversation.policy import Policy
from flows.crisis import COACH_ASKED, CRISIS, HELP, HELPS, UNSAFE

SAFE = tuple(f"{lead}{said}{end}" for lead in ("", "yes ", "yes, ") for said in ("i'm safe", "i am safe", "safe", "i'm ok", "i'm fine")
             for end in ("", " now", " yes", ", yes"))
"""Words that somebody is safe now, which begin again; what they mean is said back."""

FLOW = Flow(
    "begin_again", version=1, title="Begin again", policy=replace(Policy.SIGNS, stops=False, quiet=True),
    facts=(Fact("crisis", values=("open", "asked", "over")),),
    steps=(
        Ask("begin", "Good to hear from you. Are you safe just now, and would you like to go on here?", choice(
            ("yes", "Yes, begin again", "begin again", "yes", "go on", *SAFE), ("later", "Not yet", "no", "later"),
            ("unsafe", "I am not safe", *UNSAFE)), safety=True, back=False, unread=HELPS, only_if=CRISIS),
        Do(Find("crisis", "over", "began again"), fact("begin").is_("yes")),
        Do(Replan(), fact("begin").is_("yes")),
        Tell("Good to have you back. Reminders that you had set are on again.",
             fact("begin").is_("yes") & fact("welcome.zone_right").known),
        Tell("Good to have you back.", fact("begin").is_("yes") & ~fact("welcome.zone_right").known),
        Tell(HELP, fact("begin").one_of("later", "unsafe"), must_arrive=True),
        *(replace(step, only_if=step.only_if & fact("begin").is_("unsafe")) for step in COACH_ASKED),
        Tell("No hurry. Write whenever you like.", fact("begin").is_("later")),
        Tell("Nothing is stopped, so there is nothing to begin again. “Menu” shows what there is.", ~CRISIS),
        Run(PARKED, fact("begin").is_("yes")),
    ),
)
