"""Invite a lifter: a code and a link that work once, for the lifter to agree or not."""

from dataclasses import replace

from companion.conversation.condition import fact
from companion.conversation.effects import Act
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import Words
from companion.conversation.policy import Policy
from flows.coach_shared import COACHES_ONLY

FLOW = Flow(
    "invite_lifter", version=1, title="Invite a lifter", policy=replace(Policy.ABOUT_OTHERS, reopens=True), gates=(COACHES_ONLY,),
    command=("invite", "add a lifter", "new lifter"),
    steps=(
        Ask("whom", "Who is the code for? You read this when they agree; they see only your name.",
            Words(limit=60, example_text="Mara, Tuesdays"), free=True),
        Do(Act("invite", "", "{whom}"), fact("whom").known),
        Tell("No code was made.", ~fact("whom").known),
    ),
)
