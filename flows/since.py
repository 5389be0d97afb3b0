"""Since you last looked: what is new of a coach's lifters, the five that matter first."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY, asked_for

FLOW = Flow(
    "since", version=1, title="Since you last looked", policy=Policy.PAGE, gates=(COACHES_ONLY,), at_start=asked_for,
    command=("who needs me", "who needs me today", "since i last looked"),
    steps=(Do(Show("since", "{asked}")),),
)
