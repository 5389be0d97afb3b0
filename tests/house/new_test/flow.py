"""Seated hip rotation: on a chair, how far the foot swings outwards. Made up for a test of the house."""

from companion.screening.protocols.seated_hip_rotation import PROTOCOL

from companion.conversation.flow import Ask, each_side
from companion.conversation.kinds import Ready
from companion.conversation.number_kinds import Number
from flows.protocol_flow import flow_of

TURN = Number("deg", low=0, high=90, usual=(10, 60), example_value=35, step=1)

FLOW = flow_of(
    PROTOCOL,
    steps=(
        Ask("setup", f"This looks at {PROTOCOL.looks_at}. Sit on a high chair, feet off the floor, phone in your hand with the level "
            "open.", Ready()),
        *each_side(
            Ask("{side}", "Swing the {side} foot outwards, the knee stays where it is. Hold the phone along the shin. How many degrees "
                "from upright?", TURN, caution="Stop if the hip pinches or anything hurts.", method="level"),
        ),
    ),
)
