"""Hinge to squat: a hip hinge that sinks into a squat, back to the hinge, and up.

A year of squatting and the two tests before it, broomstick only: choice.
"""

from companion.conversation.condition import Value, fact
from companion.conversation.flow import Ask, Gate, Known, Tell
from companion.conversation.kinds import choice
from companion.screening.pairs import OPENINGS, opened
from companion.screening.protocols.hinge_to_squat import PROTOCOL
from companion.screening.screen import about_from, screen_from
from companion.screening.sources import with_numbers
from flows.block import did, done, watched_again
from flows.protocol_flow import flow_of
from flows.shared import BANDS, SHARP

YEARS = fact("about_you.years")
LONG_ENOUGH = fact("about_you.years") >= OPENINGS[PROTOCOL.id].years


def earned(known: Known) -> dict[str, Value]:
    """Return may_hinge, "yes" if this test is open to the lifter by their valid answers; runs that pain ended never count."""
    answers = list(known.answers())
    return {"may_hinge": "yes" if opened(PROTOCOL.id, screen_from(answers), about_from(answers)) else "no"}


EARNED = (
    Gate(~YEARS.known, "Before this one I need to know for how long you have squatted. Say “about you” to tell me."),
    Gate(~LONG_ENOUGH, "This one waits until you have squatted with a bar for a year or more. Nothing is missing "
         "without it: the other tests stand on their own."),
    Gate(~fact("may_hinge").is_("yes"), "This one opens once the arms-forward squat and the pause squat both went without pain, "
         "and your back kept its shape. Say their names when you want to do them."),
)
"""Gates after the safety check and before the warm-up, so that nobody warms up in vain."""

FLOW = flow_of(
    PROTOCOL, opened=EARNED, command=("hinge into squat", "hinge"), at_start=earned,
    steps=(
        watched_again(f"This shows {PROTOCOL.looks_at}. How will you "
                   "see it? Best is film from the side, phone at hip height, shirt tucked in."),
        Tell("Broomstick across your upper back, where a bar would lie. Only the stick: no bar for this. "
             "Feet as you usually squat; film from the side.", picture="hinge_setup"),
        did(with_numbers("Push the hips far back, knees nearly straight: the hinge. Then sink into your usual squat. Back into the hinge, "
                         "stand up. {hinge_times:Count times}, slowly."), "Only as low as you usually squat. Breathe. " + SHARP,
            ("hinge", "The hinge hurt"), ("squat", "The squat hurt"),
            picture=PROTOCOL.picture),
        Ask("hinge", "In the hinge, knees nearly straight: what did the lower back do? Look at the film first, if "
            "there is one.", choice(
                ("clean", "It kept its shape", "kept its shape", "clean", "nothing", "it did not round",
                 "it didn't round", "not rounded", "no rounding"),
                ("rounds", "It rounded", "rounded", "rounds", "a little")), only_if=done(), picture="hinge_watch"),
        Ask("sink", "And while you sank from the hinge into the squat: did it keep that shape?", choice(
            ("clean", "It kept its shape", "kept its shape", "clean", "yes", "it did", "it did not round",
             "not rounded"),
            ("breaks", "It lost its shape", "lost its shape", "breaks", "no", "it rounded", "rounded", "it tucked",
             "it did not", "it didn't", "a little")), only_if=done()),
        Ask("depth", "How deep was the thigh when it lost its shape?", BANDS, only_if=fact("sink").is_("breaks"),
            picture="squat_bands"),
    ),
)
