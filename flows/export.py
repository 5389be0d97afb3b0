"""Export: a copy of everything stored about a person, in readable files."""

from dataclasses import replace

from companion.conversation.condition import fact
from companion.conversation.effects import Export
from companion.conversation.flow import Do, Flow, Tell
from companion.conversation.policy import Policy

FLOW = Flow(
    "export", version=1, title="A copy of my data", policy=replace(Policy.RIGHTS, quiet=True),
    command=("export my data", "copy my data", "send me my data"),
    steps=(
        Tell("Nothing is kept about you, so there is nothing to copy.", ~fact("person").known),
        Do(Export()),
    ),
)
