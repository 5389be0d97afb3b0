"""Rock back: on hands and knees, hips towards the heels; the knee width at which the back stays still longest."""

from companion.conversation.condition import fact
from companion.conversation.flow import END, Ask, Jump
from companion.conversation.kinds import Ready, choice
from companion.screening.protocols.rock_back import PROTOCOL
from flows.protocol_flow import flow_of

WHEN_ROUNDED = choice(
    ("early", "Before the squat's fold", "before", "early", "earlier"),
    ("at_fold", "About at the fold", "at the fold", "about there", "about", "same"),
    ("past", "Later, or not at all", "later", "after", "past", "not at all", "never", "still", "stayed still"),
    ("belly", "Belly or knees stopped it", "belly", "stomach", "knees", "knee"),
    ("cant_tell", "Can't tell", "not sure", "unsure", "dunno", "don't know", "idk"),
)
ROCK_CAUTION = ("Stop if the front of a hip or a knee pinches, or at anything sharp, shooting, tingling or numb. "
           "A cushion is fine.")
WIDTH_PROMPTS = {
    "narrow": "Knees together, or nearly.",
    "middle": "Now the knees as wide as your hips.",
    "wide": "Last: the knees clearly wider than your hips, feet in line with them.",
}


def _width(name: str, onward: str) -> tuple[Ask, ...]:
    """Return one width's movement and its question; skipping the movement jumps ``onward``."""
    return (
        Ask(f"{name}_do", f"{WIDTH_PROMPTS[name]} From hands and knees, rock the hips slowly towards the heels, "
            "then come forward. Twice. Leave the back as it is.", Ready("Done"), caution=ROCK_CAUTION,
            then=(Jump(~fact(f"{name}_do").known, onward),), picture=f"{PROTOCOL.picture}_{name}"),
        Ask(name, "Compared with the fold of your deepest squat: when did the lower back begin to round?",
            WHEN_ROUNDED),
    )


FLOW = flow_of(
    PROTOCOL,
    steps=(
        Ask("setup_fold", "First picture the bottom of your deepest squat: how close is the thigh to the "
            "belly? That is your squat's fold, to compare with. Film of it helps.", Ready(),
            picture="squat_fold"),
        Ask("setup", "Prop the phone sideways near the floor, three big steps away, and film; or let a "
            "friend watch from the side. Hands under the shoulders, back in its own easy curve. Read each "
            "message before you start.", Ready(), picture=f"{PROTOCOL.picture}_setup"),
        *_width("narrow", "middle_do"),
        *_width("middle", "wide_do"),
        *_width("wide", END),
    ),
)
