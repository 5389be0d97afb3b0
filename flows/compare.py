"""Compare: two of a coach's lifters side by side, or two days of one."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY, IS_COACH, asked_for

FLOW = Flow(
    "compare", version=1, title="Compare", policy=Policy.PAGE, command=None, gates=(COACHES_ONLY,), at_start=asked_for,
    sentences=(r"(?:please )?compare (?P<asked>.{2,80})",), said_by=IS_COACH,
    steps=(Do(Show("compare", "{asked}")),),
)
