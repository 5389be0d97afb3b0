"""Hip fold: lying on the back, knee bent, the thigh's way to the chest before the lower back moves."""

from companion.conversation.condition import fact
from companion.conversation.flow import END, Ask, Jump, Tell, sided
from companion.conversation.kinds import Ready, YesNo, choice
from companion.conversation.number_kinds import Number
from companion.screening.protocols.hip_fold import PROTOCOL
from flows.protocol_flow import flow_of

# 120° is textbook hip flexion with the knee bent (AAOS; 121 ± 13°, Roach & Miles 1991, from memory).
FOLD = Number("deg", 0, 160, usual=(60, 145), example_value=110, step=1)
FOLD_CAUTION = "Stop at a pinch at the front of the hip, and at anything sharp, shooting, tingling or numb."
FILMING = fact("filming").is_("yes")

def _leg(onward: str) -> tuple[Ask | Tell, ...]:
    """Return one side's questions; skipping the movement jumps ``onward``."""
    return (
        Ask("{side}_do", "Bend the {side} knee to a right angle and bring the thigh slowly towards the chest, "
            "turned out as in your squat. Stop when the pressure on your hands clearly changes, or at your "
            "squat's fold. Then lower it.", Ready("Done"), caution=FOLD_CAUTION,
            then=(Jump(~fact("{side}_do").known, onward),), picture=PROTOCOL.picture),
        Ask("{side}_first", "The {side} leg: did the thigh reach your squat's fold first, or did the pressure on "
            "your hands change first?", choice(
                ("fold", "Reached the fold", "fold", "reached", "reached it", "the fold", "fold first"),
                ("back", "Pressure changed first", "pressure", "pressure changed", "pressure first", "hands",
                 "back moved", "back first"),
                ("belly", "My belly stopped it", "belly", "stomach", "tummy", "thigh met belly"),
                ("cant_tell", "Can't tell", "not sure", "unsure", "dunno", "don't know", "idk", "neither"))),
        Tell("That is no stiff hip, and no test of it either: it counts as not tested. Rock back with the knees wide tells more.",
             only_if=fact("{side}_first").is_("belly")),
        Ask("{side}_pinch", "Was there a pinch at the front of the {side} hip?", YesNo(partly="yes")),
        Tell("Noted. A pinch is kept, but it does not count as a stiff muscle, and it gets no stretch.",
             only_if=fact("{side}_pinch").is_("yes")),
        Ask("{side}_angle", "From the film: how many degrees did the {side} thigh come up from the floor? "
            "Straight up is 90, past it is more. Skip it if you can't tell.", FOLD, only_if=FILMING, method="film"),
    )


FLOW = flow_of(
    PROTOCOL, command=("hip test",),
    steps=(
        Ask("filming", f"This looks at {PROTOCOL.looks_at}. Your hands feel for it, so film is optional. "
            "Will you film it from the side as well?", YesNo()),
        Ask("setup_film", "Prop the phone sideways near the floor, three big steps away, and let it film "
            "both legs. You look at the film afterwards.", Ready(), only_if=FILMING),
        Ask("setup_fold", "First picture the bottom of your deepest squat: how close is the thigh to the "
            "belly? That is your squat's fold. Film of it helps.", Ready(), picture="squat_fold"),
        Ask("setup", "Lie on your back on a mat or carpet, legs long. Slide both hands, palms down, under "
            "the curve of the lower back. Feel light, even pressure on both. Read each message first, then "
            "lie down.", Ready(), picture="lying_setup"),
        *sided(_leg("right_do"), "left"),
        *sided(_leg(END), "right"),
    ),
)
