"""Hand-on-back squat: the depth at which the curve of the lower back starts to move, as usual and when kept still.

Three squats a set, three seconds down: choice.
"""

from companion.conversation.condition import fact
from companion.conversation.flow import END, Ask, Jump, Tell
from companion.conversation.kinds import Ready, choice
from companion.screening.protocols.hand_on_back_squat import PROTOCOL
from flows.protocol_flow import flow_of
from flows.shared import BANDS, SHARP

CURVE_MOVED = choice(
    ("yes", "It moved", "moved", "it flattened", "it rounded", "a little", "a bit", "yeah", "yep", "kinda", "sort of", "it did"),
    ("no", "It stayed still", "still", "stayed still", "no movement", "it did not move", "it didn't move", "it kept", "nope", "it held",
     "did not move", "didn't move", "not moved"),
    ("cant_tell", "Can't tell", "cannot tell", "not sure", "unsure", "don't know", "no idea"),
)
USUAL_MOVES = fact("usual_moves")
# Without movement in the usual set there is nothing to compare the second with.
USUAL_MOVED = USUAL_MOVES.is_("yes")
HAND_CAUTION = "A chair within reach, in case you sway. " + SHARP

FLOW = flow_of(
    PROTOCOL, command=("hand on back",),
    steps=(
        Ask("setup", "You will squat with one palm flat on the curve of your lower back, just above the tailbone, "
            "the other arm ahead. Feet as you usually squat. A mirror beside you, or film, helps to see the depth. "
            "If you film, start it now.", Ready(), picture=PROTOCOL.picture),
        Ask("usual_do", "Palm on the curve. Three slow squats as you usually do them, three seconds down. Change "
            "nothing; notice when the curve starts to move under your palm. Then tap Done.", Ready("Done"),
            caution=HAND_CAUTION, then=(Jump(~fact("usual_do").known, END),)),
        Ask("usual_moves", "Did the curve move under your palm, flatten or round?", CURVE_MOVED),
        Ask("usual_depth", "How deep was the thigh when it started to move?", BANDS, only_if=USUAL_MOVED,
            picture="squat_bands"),
        Ask("cued_do", "Rest a moment. Palm in the same place. Three more, just as slow and just as deep; this time "
            "try to keep the curve still under it. Then tap Done.", Ready("Done"), caution=HAND_CAUTION, only_if=USUAL_MOVED),
        Ask("cued_moves", "While you tried to keep it still: did the curve move?", CURVE_MOVED,
            only_if=fact("cued_do").known),
        Ask("cued_depth", "How deep was the thigh when it started this time?", BANDS,
            only_if=fact("cued_moves").is_("yes")),
        Tell("It stayed still, so there is nothing to compare a second set with. That is all here.", USUAL_MOVES.is_("no")),
        Tell("That happens: a palm is a rough tool. It counts as not tested, not against you.",
             USUAL_MOVES.is_("cant_tell")),
    ),
)
