"""Lifter's report: the whole page as a document, for their coach."""

from companion.conversation.effects import Show
from companion.conversation.flow import Do, Flow
from flows.coach_shared import COACHES_ONLY, asked_for

FLOW = Flow(
    "lifter_report", version=1, title="A lifter's report", counted=False, quiet=True, by_name=False, gates=(COACHES_ONLY,),
    at_start=asked_for, steps=(Do(Show("lifter_report", "{asked}")),),
)
