"""My coaches: the coaches who see this lifter's answers, what they looked at, and a button to end it."""

from dataclasses import replace

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.shared import WELCOMED

FLOW = Flow(
    "my_coaches", version=1, title="My coaches", policy=replace(Policy.RIGHTS, quiet=True), gates=(WELCOMED,),
    command=("coaches", "my coach", "coach", "who sees my answers"),
    steps=(Do(Show("my_coaches")),),
)
