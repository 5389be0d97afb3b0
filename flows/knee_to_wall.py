"""Knee to wall: the knee's travel past the toes with the heel down."""

from companion.conversation.condition import Fact, fact
from companion.conversation.flow import Ask, Jump, both, each_side
from companion.conversation.kinds import Ready, choice
from companion.conversation.number_kinds import Number
from companion.screening.protocols.knee_to_wall import PROTOCOL
from flows.protocol_flow import flow_of

DISTANCE = Number("cm", low=0, high=30, usual=(3, 20), example_value=11)
LEAN = Number("deg", low=0, high=70, usual=(15, 60), example_value=38, step=1)
ANKLE_CAUTION = "Stop if anything pinches or hurts, in the ankle or the back."

TAPE, LEVEL = fact("method").is_("tape"), fact("method").is_("level")
# A third reading if the first two differ by more than the detectable change: our choice, after the MDC of 1.9 cm or
# 4.7° in Powden 2015 Man Ther 20:524 (read).
APART = Fact("{side}_apart", 0, 30, step=0.1, of=lambda got, side: round(abs(
    float(got[f"{side}_1"]) - float(got[f"{side}_2"])), 2))
DEG_APART = Fact("{side}_deg_apart", 0, 70, step=1, of=lambda got, side: round(abs(
    float(got[f"{side}_deg_1"]) - float(got[f"{side}_deg_2"])), 2))

FLOW = flow_of(
    PROTOCOL, facts=both(APART, DEG_APART), command=("ankle test",),
    steps=(
        Ask("method", f"This looks at {PROTOCOL.looks_at}. Will you measure with a tape, or with the level on your phone? "
            "The tape is the more exact.", choice(("tape", "Tape", "tape measure", "ruler"), ("level", "Phone level",
                                                                                             "phone", "level")),
            then=(Jump(~fact("method").known, say="Without a way to measure there is nothing to keep here."),)),
        Ask("placement", "Where will the phone lie on the shin? Always take the same place.", choice(
            ("below_knee", "Just under the knee"), ("mid_shin", "Middle of the shin", "middle", "mid")), only_if=LEVEL),
        Ask("setup", "Bare feet, facing a wall. Lay the tape on the floor, zero at the wall. No free wall? A closed door "
            "or a wardrobe does.", Ready(), only_if=TAPE, picture="knee_to_wall_setup"),
        Ask("setup_level", "Bare feet, facing a wall, phone in your hand with the level open.", Ready(), only_if=LEVEL),
        *each_side(
            Ask("{side}_1", "Big toe of your {side} foot on the tape. Bend until the knee touches the wall, heel down. "
                "Move back until it only just touches. How many {unit} from toe to wall?", DISTANCE,
                caution=ANKLE_CAUTION, only_if=TAPE, method="tape", picture=PROTOCOL.picture),
            Ask("{side}_2", "Step off, then once more with the {side} foot. How many {unit}?", DISTANCE,
                caution=ANKLE_CAUTION, only_if=TAPE, method="tape"),
            Ask("{side}_3", "Those two were {apart:cm} apart. One last time, {side} foot: how many {unit}?", DISTANCE,
                caution=ANKLE_CAUTION, only_if=APART >= 1.9, method="tape"),
            Ask("{side}_deg_1", "Put the {side} foot in front, knee to the wall, heel down, as far back as you can. Hold the "
                "phone along the shin. How many degrees from upright?", LEAN, caution=ANKLE_CAUTION, only_if=LEVEL,
                method="level", placement="{placement}", picture="knee_to_wall_level_{placement}_{side}"),
            Ask("{side}_deg_2", "Step off, then once more with the {side} foot. How many degrees?", LEAN,
                caution=ANKLE_CAUTION, only_if=LEVEL, method="level", placement="{placement}"),
            Ask("{side}_deg_3", "Those two were {deg_apart:deg} apart. One last time, {side} foot: how many degrees?", LEAN,
                caution=ANKLE_CAUTION, only_if=DEG_APART >= 4.7, method="level", placement="{placement}"),
            Ask("{side}_limit", "What stopped the {side} knee: a pull in the calf, or a pinch at the front of the ankle?",
                choice(("calf", "Pull in the calf", "calf", "pull"), ("pinch", "Pinch in front", "pinch", "front"),
                       ("neither", "Neither"))),
        ),
    ),
)
