"""Leave a coach: from this tap on they see nothing."""

from dataclasses import replace

from companion.conversation.effects import Link
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import asked_for
from flows.shared import WELCOMED

FLOW = Flow(
    "leave_coach", version=1, title="End a coach's view", policy=replace(Policy.RIGHTS, quiet=True), command=None, gates=(WELCOMED,),
    at_start=asked_for, steps=(Do(Link("withdraw", "{asked}")),),
)
