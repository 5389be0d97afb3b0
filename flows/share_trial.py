"""Pool my trial: whether a lifter's priming trial may be pooled with those of others who agree; then both results are told."""

from companion.conversation.condition import fact
from companion.conversation.effects import Show
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import YesNo
from companion.conversation.policy import Policy
from flows.shared import WELCOMED

FLOW = Flow(
    "share_trial", version=1, title="Pool my priming trial", policy=Policy.RIGHTS, gates=(WELCOMED,), command=("pool my trial",),
    parked="All right, nothing was changed.",
    steps=(
        Ask("agree", "Few pairs of days say little about one lifter. May your priming trial be pooled with those of others here who agree? "
            "You see yours alone and with the group; your coach sees both; others see the group's only. You can take it back here at any "
            "time.", YesNo(), safety=True),
        Do(Show("pooled_trial"), fact("agree").is_("yes")),
        Tell("Your trial is not pooled.", fact("agree").is_("no")),
    ),
)
