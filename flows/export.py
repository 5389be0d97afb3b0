"""Export: a copy of everything stored about a person, in readable files."""

from companion.conversation.condition import fact
from companion.conversation.effects import Export
from companion.conversation.flow import Do, Flow, Tell

FLOW = Flow(
    "export", version=1, title="A copy of my data", counted=False, always=True, quiet=True,
    command=("export my data", "copy my data", "send me my data"),
    steps=(
        Tell("Nothing is kept about you, so there is nothing to copy.", ~fact("person").known),
        Do(Export()),
    ),
)
