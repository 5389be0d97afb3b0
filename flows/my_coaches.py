"""My coaches: the coaches who see this lifter's answers, what they looked at, and a button to end it."""

from dataclasses import replace

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import IS_COACH
from flows.shared import WELCOMED

LIFTERS_WELCOMED = replace(WELCOMED, shut=WELCOMED.shut & ~IS_COACH)
"""A coach who is no lifter has answers of their own to nobody, and is told so without a welcome."""

FLOW = Flow(
    "my_coaches", version=1, title="My coaches", policy=replace(Policy.RIGHTS, quiet=True), gates=(LIFTERS_WELCOMED,),
    command=("coaches", "my coach", "coach", "who sees my answers"),
    steps=(Do(Show("my_coaches")),),
)
