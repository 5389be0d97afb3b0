"""Lifter's log: every answer as given, page by page, for their coach."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY, asked_for

FLOW = Flow(
    "lifter_log", version=1, title="A lifter's log", policy=Policy.PAGE, command=None, gates=(COACHES_ONLY,), at_start=asked_for,
    steps=(Do(Show("lifter_log", "{asked}")),),
)
