"""Write back: a lifter writes to a coach through the bot."""

from companion.conversation.condition import fact
from companion.conversation.effects import Act
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import Words
from companion.conversation.policy import Policy
from flows.coach_shared import asked_of
from flows.shared import WELCOMED

FLOW = Flow(
    "note_to_coach", version=1, title="Write to my coach", policy=Policy.TALK, gates=(WELCOMED,), at_start=asked_of,
    command=("write to my coach", "tell my coach", "message my coach"),
    steps=(
        Ask("text", "What should I tell your coach? If something hurts, say so here too: I ask about it at once.",
            Words(limit=1000, example_text="Friday went well, film follows"), free=True, doubts=True),
        Do(Act("reply", "{of}", "{text}"), fact("text").known),
        Tell("Nothing was sent.", ~fact("text").known),
    ),
)
