"""Caseload: a coach's lifters, those who need them today first."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY, asked_for

FLOW = Flow(
    "caseload", version=1, title="My lifters", policy=Policy.PAGE, gates=(COACHES_ONLY,), at_start=asked_for,
    command=("lifters", "my lifters", "case load"),
    steps=(Do(Show("caseload", "{asked}")),),
)
