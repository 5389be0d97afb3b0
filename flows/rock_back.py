"""Rock back: on hands and knees, hips towards the heels; the knee width at which the back stays still longest."""

from companion.conversation.flow import Ask, Tell
from companion.conversation.kinds import choice
from companion.screening.protocols.rock_back import PROTOCOL
from companion.screening.sources import with_numbers
from flows.block import NO_FLOOR_TODAY, NOWHERE_TO_LIE, did, done
from flows.protocol_flow import flow_of
from flows.shared import NO_PHONE

WHEN_ROUNDED = choice(
    ("early", "Before the squat's fold", "before", "early", "earlier"),
    ("at_fold", "About at the fold", "at the fold", "about there", "about", "same"),
    ("past", "Later, or not at all", "later", "after", "past", "not at all", "never", "still", "stayed still"),
    ("belly", "Belly or knees stopped it", "belly", "stomach", "knees", "knee"),
    ("cant_tell", "Can't tell", "not sure", "unsure", "dunno", "don't know", "idk"),
)
ROCK_CAUTION = "Each time: stop if a hip or knee pinches, or at anything sharp, shooting, tingling or numb."
WIDTHS = {"narrow": "close together", "middle": "as wide as the hips", "wide": "clearly wider than the hips"}
WATCHED_HOW = (
    (with_numbers("Prop the phone sideways near the floor, {phone_steps_0:count} big steps away, and film; or let a friend watch from the "
                  "side."), ~NO_PHONE),
    ("Let a friend watch from the side; alone, feel for the moment at which the back gives up its curve.", NO_PHONE))

FLOW = flow_of(
    PROTOCOL,
    steps=(
        *(Tell("Picture the bottom of your deepest squat: how close is the thigh to the belly? That is your squat's fold, to compare "
               f"with. {how}", when, picture="squat_fold") for how, when in WATCHED_HOW),
        did(with_numbers("On hands and knees, back in its own easy curve. Rock the hips slowly to the heels and come forward. "
                         "{rock_times:Count times} each: knees together, hip-wide, clearly wider."),
            ROCK_CAUTION, ("narrow", "Together hurt"), ("middle", "Hip-wide hurt"), ("wide", "Wide hurt"), also=(NOWHERE_TO_LIE,),
            picture=f"{PROTOCOL.picture}_setup"),
        *(Ask(name, f"Knees {words}: when did the lower back begin to round?", WHEN_ROUNDED, only_if=done(),
              picture=f"{PROTOCOL.picture}_{name}") for name, words in WIDTHS.items()),
        *NO_FLOOR_TODAY,
    ),
)
