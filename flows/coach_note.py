"""Note: a coach writes to a lifter through the bot; the message names the coach."""

from companion.conversation.condition import fact
from companion.conversation.effects import Act
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import Words, YesNo
from companion.conversation.policy import Policy
from flows.coach_shared import TO_A_LIFTER, asked_of

SEND_CONFIRMED = fact("sure").is_("yes")

FLOW = Flow(
    "coach_note", version=3, title="Write to a lifter", policy=Policy.ABOUT_OTHERS, command=None,
    gates=TO_A_LIFTER,
    at_start=asked_of,
    steps=(
        Ask("text", "For {whom}: what should I pass on? It goes out in your name, and is kept with what you did for them.",
            Words(limit=1000, example_text="stay at parallel this week, and send me a film"), free=True),
        Ask("sure", "Send it to {whom} like this?", YesNo(yes="Send it", no="No"), only_if=fact("text").known),
        Do(Act("note", "{of}", "{text}"), SEND_CONFIRMED),
        Tell("Nothing was sent to {whom}.", ~SEND_CONFIRMED),
    ),
)
