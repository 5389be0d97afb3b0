"""Share outcomes: whether what the tests found, what was tried and what changed may be counted, to see if the rules hold."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Flow, Tell
from companion.conversation.kinds import YesNo
from companion.conversation.policy import Policy
from flows.shared import WELCOMED

FLOW = Flow(
    "share_outcomes", version=1, title="Let outcomes be counted", policy=Policy.RIGHTS, gates=(WELCOMED,), command=("share outcomes",),
    parked="All right, nothing was changed.",
    steps=(
        Ask("agree", "Nobody knows yet how good these rules are. May whoever runs this bot count what your tests found, what you tried and "
            "what changed? Without your name or words, and with days counted from your start instead of dates. You can take it back here "
            "at any time.", YesNo(), safety=True),
        Tell("Thank you. Say “share outcomes” to take it back.", fact("agree").is_("yes")),
        Tell("Nothing of yours is counted.", fact("agree").is_("no")),
    ),
)
