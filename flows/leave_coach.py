"""Leave a coach: from this tap on they see nothing."""

from companion.conversation.effects import Link
from companion.conversation.flow import Do, Flow
from flows.coach_shared import asked_for
from flows.shared import WELCOMED

FLOW = Flow(
    "leave_coach", version=1, title="End a coach's view", counted=False, quiet=True, by_name=False, always=True, gates=(WELCOMED,),
    at_start=asked_for, steps=(Do(Link("withdraw", "{asked}")),),
)
