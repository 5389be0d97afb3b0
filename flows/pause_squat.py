"""Pause squat: the back's shape at stops, at a depth where the moving squat is clean."""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Tell
from companion.conversation.kinds import Option, choice
from companion.screening.protocols.pause_squat import PROTOCOL
from companion.screening.sources import with_numbers
from flows.block import did, done, watched_again
from flows.protocol_flow import flow_of
from flows.shared import BODY_WEIGHT, NO_BAR, SHARP

WITH_BAR = fact("with").is_("bar")
HARD = fact("hard").one_of("top", "middle", "bottom")
# A second try also if the back rounded and no stop felt hard: only rounding twice counts.
ROUNDED_AT_STOPS = fact("shape").is_("rounds")

ROUNDS_MOVING = fact("moving").is_("rounds")
MOVED_CLEAN = done() & ~ROUNDS_MOVING

PAUSE_CAUTION = "Keep breathing, don't strain, and come up early if you need to. " + SHARP
KEPT = choice(
    ("clean", "It kept its shape", "kept its shape", "it kept", "kept", "it held", "clean", "nothing", "it did not round",
     "it didn't round",
     "not rounded", "no rounding"),
    ("rounds", "It rounded", "rounded", "rounds", "it tucked", "it tucked under", "tucked under", "a little", "a bit", "kinda", "sort of"),
)

FLOW = flow_of(
    PROTOCOL, rests_on=("with",), command=("paused squat", "pause squats"),
    steps=(
        watched_again(f"This shows {PROTOCOL.looks_at}. How will you see it? "
                   "A film from the side, phone at hip height, or a mirror; shirt tucked in."),
        Ask("with", "Body weight or an empty bar? If you have not done this before, start with body weight.", choice(
            ("body", "Body weight", "bodyweight", "body", "nothing", "none", "no bar"),
            Option("bar", "Empty bar", ("bar", "empty", "barbell"), only_if=~BODY_WEIGHT & ~NO_BAR))),
        Tell(with_numbers("Feet as you usually squat, clear floor around you; film from the side. Two sets, to a depth at which your lower "
                          "back keeps its shape while you move. First: {set_squats:count} slow squats without stops, "
                          "{slow_down:count seconds} down. Stop if anything hurts."), ~WITH_BAR),
        Tell(with_numbers("No plates; bar in a rack, safety arms just below your depth; film from the side. No safety arms? Say “back”. "
                          "Two sets, to a depth at which your lower back keeps its shape. First: {set_squats:count} slow squats without "
                          "stops. Stop if anything hurts."), WITH_BAR),
        did(with_numbers("Second, same depth: {stop_squats:count squats}. Stop on the way down near the top, half way and at the bottom, "
                         "{drill_stop_0:count} to {drill_stop_1:count seconds} each."),
            PAUSE_CAUTION, ("moving", "Without stops hurt"), ("stops", "With stops hurt"), picture=PROTOCOL.picture),
        Ask("moving", "First set, moving: what did the lower back do?", KEPT, only_if=done()),
        Tell("Then the stops say nothing: they only tell something at a depth where your back keeps its shape while you move. "
             "Say “pause squat” to do it less deep.", ROUNDS_MOVING),
        Ask("hard", "Second set: which stop was hard to hold? If more than one, the hardest.", choice(
            ("none", "None of them", "none", "no stop", "all fine", "all easy", "neither"),
            ("top", "Near the top", "top", "the top one", "first"),
            ("middle", "Half way", "middle", "halfway", "the middle one", "second"),
            ("bottom", "At the bottom", "bottom", "the bottom one", "third", "lowest")), only_if=MOVED_CLEAN),
        Ask("shape", "At the stops: what did the lower back do? Look at the film before you answer, if there is "
            "one.", KEPT, only_if=MOVED_CLEAN, picture="pause_watch"),
        did(with_numbers("Rest a moment. Then the {hard} stop alone: {stop_squats:count squats} that stop only there, "
                         "{drill_stop_0:count} to {drill_stop_1:count seconds}, no deeper than before."),
            PAUSE_CAUTION, ("again", "That hurt"), key="again_do", only_if=HARD & MOVED_CLEAN),
        did(with_numbers("Rest a moment. Then once more, to see whether it rounds again: {stop_squats:count squats} with all "
                         "{drill_stops_0:count stops}."), PAUSE_CAUTION,
            ("again", "That hurt"), key="again_all", only_if=ROUNDED_AT_STOPS & ~HARD & MOVED_CLEAN),
        Ask("again", "This second time: what did the lower back do?", KEPT, only_if=done("again_do") | done("again_all")),
        Tell("The {hard} stop is one to practise. You may add a stop just before and just after it, never deeper "
             "than where your back keeps its shape.", HARD),
    ),
)
