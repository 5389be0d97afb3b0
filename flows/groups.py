"""Groups: a coach's groups of lifters, and what can be done for each."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY, asked_for

FLOW = Flow(
    "groups", version=1, title="My groups", policy=Policy.PAGE, gates=(COACHES_ONLY,), at_start=asked_for, command=("my groups",),
    steps=(Do(Show("groups", "{asked}")),),
)
