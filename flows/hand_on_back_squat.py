"""Hand-on-back squat: the depth at which the curve of the lower back starts to move, as usual and when kept still."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Tell
from companion.screening.protocols.hand_on_back_squat import PROTOCOL
from companion.screening.sources import with_numbers
from flows.block import STARTS, did, done
from flows.protocol_flow import flow_of
from flows.shared import BANDS, SHARP

USUAL = fact("usual_depth")
# Without movement in the usual set there is nothing to compare the second with.
USUAL_MOVED = USUAL.one_of(*(band.value for band in BANDS.choices))
HAND_CAUTION = "A chair within reach, in case you sway. " + SHARP

FLOW = flow_of(
    PROTOCOL, command=("hand on back",),
    steps=(
        Tell(with_numbers("Two sets of {set_squats:count squats}, {slow_down:count seconds} down, in one go. One palm flat on the curve of "
                          "your lower back, just above the tailbone, the other arm ahead. Film or a mirror beside you helps to see the "
                          "depth. First set: as usual, change nothing. A chair within reach; stop if anything hurts."),
             picture=PROTOCOL.picture),
        did("Second set: just as slow and deep, but keep the curve still under your palm. Notice both times where it starts to move.",
            HAND_CAUTION, ("usual", "As usual hurt"), ("cued", "Kept still hurt")),
        Ask("usual_depth", "As usual: how deep was the thigh when the curve started to move?", STARTS, only_if=done(),
            picture="squat_bands"),
        Ask("cued_depth", "While you tried to keep it still: how deep was the thigh when it moved?", STARTS, only_if=USUAL_MOVED),
        Tell("It stayed still, so there is nothing to compare the other set with. That is all here.", USUAL.is_("no")),
        Tell("That happens: a palm is a rough tool. It counts as not tested, not against you.", USUAL.is_("cant_tell")),
    ),
)
