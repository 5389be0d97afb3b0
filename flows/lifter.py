"""Lifter: one lifter's page, for their coach."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY, asked_for

FLOW = Flow(
    "lifter", version=1, title="A lifter", policy=Policy.PAGE, command=None, gates=(COACHES_ONLY,), at_start=asked_for,
    steps=(Do(Show("lifter", "{asked}")),),
)
