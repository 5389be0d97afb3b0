"""Pause squat: the back's shape at stops, at a depth where the moving squat is clean.

One to two seconds a stop: common practice, no source. Three moving squats, two with stops, two again: choice.
"""

from companion.conversation.condition import fact
from companion.conversation.flow import END, Ask, Jump, Tell
from companion.conversation.kinds import Option, Ready, choice
from companion.screening.protocols.pause_squat import PROTOCOL
from flows.protocol_flow import flow_of
from flows.shared import BODY_WEIGHT, NO_BAR, SHARP, watched_by

WITH_BAR = fact("with").is_("bar")
HARD = fact("hard").one_of("top", "middle", "bottom")
# A second try also if the back rounded and no stop felt hard: only rounding twice counts.
ROUNDED_AT_STOPS = fact("shape").is_("rounds")

PAUSE_CAUTION = "Keep breathing, don't strain, and come up early if you need to. " + SHARP
KEPT = choice(
    ("clean", "It kept its shape", "kept its shape", "it kept", "kept", "it held", "clean", "nothing", "it did not round",
     "it didn't round",
     "not rounded", "no rounding"),
    ("rounds", "It rounded", "rounded", "rounds", "it tucked", "it tucked under", "tucked under", "a little", "a bit", "kinda", "sort of"),
)

FLOW = flow_of(
    PROTOCOL, command=("paused squat", "pause squats"),
    steps=(
        watched_by(f"This shows {PROTOCOL.looks_at}. How will you see it? "
                   "A film from the side, phone at hip height, or a mirror; shirt tucked in."),
        Ask("with", "Body weight or an empty bar? If you have not done this before, start with body weight.", choice(
            ("body", "Body weight", "bodyweight", "body", "nothing", "none", "no bar"),
            Option("bar", "Empty bar", ("bar", "empty", "barbell"), only_if=~BODY_WEIGHT & ~NO_BAR))),
        Ask("setup", "Feet as you usually squat, clear floor around you. Choose a depth at which your lower back "
            "keeps its shape while you move, and keep to it throughout. If you film, start it now.", Ready(),
            only_if=~WITH_BAR),
        Ask("setup_bar", "No plates; bar in a rack, carried as you usually do. Choose a depth at which your lower "
            "back keeps its shape while you move, safety arms just below it. If you film, start it now. No safety "
            "arms? Say “back” and take body weight.", Ready(), only_if=WITH_BAR),
        Ask("moving_do", "First without stops: three slow squats to that depth, three seconds down. Then tap Done.",
            Ready("Done"), caution=PAUSE_CAUTION, then=(Jump(~fact("moving_do").known, "stops_do"),),
            picture="squat_slow"),
        Ask("moving", "Moving, down to that depth: what did the lower back do?", KEPT),
        Ask("less_deep", "Then choose a depth above where it rounded. Three slow squats to there, without stops. "
            "Then tap Done.", Ready("Done"), caution=PAUSE_CAUTION, only_if=fact("moving").is_("rounds"),
            then=(Jump(~fact("less_deep").known, END, "Then we leave the stops out today."),)),
        Ask("moving_higher", "And at that depth: what did the lower back do?", KEPT, log_as="moving",
            only_if=fact("less_deep").known, then=(Jump(fact("moving").is_("rounds"), END, "Then we leave the stops "
            "out today: they only tell something at a depth that is clean while you move."),)),
        Ask("stops_do", "Same depth, now with three stops on the way down: near the top, half way, and at the "
            "bottom. One to two seconds each, then stand up. Two squats like that.", Ready("Done"),
            caution=PAUSE_CAUTION, then=(Jump(~fact("stops_do").known, END),), picture=PROTOCOL.picture),
        Ask("hard", "Which stop was hard to hold? If more than one, the hardest.", choice(
            ("none", "None of them", "none", "no stop", "all fine", "all easy", "neither"),
            ("top", "Near the top", "top", "the top one", "first"),
            ("middle", "Half way", "middle", "halfway", "the middle one", "second"),
            ("bottom", "At the bottom", "bottom", "the bottom one", "third", "lowest"))),
        Ask("shape", "At the stops: what did the lower back do? Look at the film before you answer, if there is "
            "one.", KEPT, picture="pause_watch"),
        Ask("again_do", "Rest a moment. Then practise the {hard} stop: two squats that stop only there, one to two "
            "seconds, no deeper than before. Then tap Done.", Ready("Done"), caution=PAUSE_CAUTION, only_if=HARD),
        Ask("again_all", "Rest a moment. Then the same once more, to see whether it rounds again: two squats with "
            "all three stops. Then tap Done.", Ready("Done"), caution=PAUSE_CAUTION, only_if=ROUNDED_AT_STOPS & ~HARD),
        Ask("again", "This second time: what did the lower back do?", KEPT,
            only_if=fact("again_do").known | fact("again_all").known),
        Tell("The {hard} stop is one to practise. You may add a stop just before and just after it, never deeper "
             "than where your back keeps its shape.", HARD),
    ),
)
