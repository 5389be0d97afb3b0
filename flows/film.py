"""Film: a video or photo of the squat for the log, and for the coach who asked for it."""

from companion.conversation.condition import fact
from companion.conversation.effects import Act
from companion.conversation.flow import Ask, Do, Flow, Tell
from companion.conversation.kinds import Media, Words
from companion.conversation.policy import Policy
from flows.shared import WELCOMED

FLOW = Flow(
    "film", version=1, title="Send a film", policy=Policy.TALK, gates=(WELCOMED,), command=("send a film", "send a video", "video"),
    steps=(
        Ask("video", "Send the film or photo here: from the side, at hip height. Only film what you already do; nothing is loaded for it.",
            Media()),
        Ask("note", "A few words with it? Which load, which set. Skip it if you like.",
            Words(limit=200, example_text="third set, 80 kg", optional=True), free=True, doubts=True, only_if=fact("video").known),
        Do(Act("film", "", "{video}", "{note}"), fact("video").known),
        Tell("Kept in your log.", fact("video").known),
        Tell("Nothing was sent.", ~fact("video").known),
    ),
)
