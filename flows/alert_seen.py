"""Alert seen: a coach says that they have seen what a lifter told."""

from companion.conversation.effects import Act
from companion.conversation.flow import Do, Flow
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY, asked_of

FLOW = Flow(
    "alert_seen", version=1, title="Seen", policy=Policy.VIEW, command=None, gates=(COACHES_ONLY,), at_start=asked_of,
    steps=(Do(Act("seen", "{of}", "{asked_what}")),),
)
