"""Alert seen: a coach says that they have seen what a lifter told."""

from companion.conversation.effects import Act
from companion.conversation.flow import Do, Flow
from flows.coach_shared import COACHES, asked_of

FLOW = Flow(
    "alert_seen", version=1, title="Seen", counted=False, quiet=True, by_name=False, gates=(COACHES,), at_start=asked_of,
    steps=(Do(Act("seen", "{of}", "{asked_what}")),),
)
