"""Arms-forward squat: the trunk's shape with the weight in front.

Heels up as in the squat look.
"""

from companion.conversation.condition import fact
from companion.conversation.flow import Ask, Tell
from companion.conversation.kinds import Option, Ready, YesNo, choice
from companion.screening.protocols.arms_forward_squat import PROTOCOL
from companion.screening.setups import HEEL_LIFT_WORDS
from companion.screening.sources import with_numbers
from flows.block import SEEN_BY, did, done, watched_again
from flows.protocol_flow import flow_of
from flows.shared import BANDS, BODY_WEIGHT, NO_BAR, SHARP

LOADED, EMPTY = fact("bar").is_("loaded"), fact("bar").is_("empty")
SQUATS_DONE = done() | fact("watch").known
FILMED_HERE = fact("seen_by").is_("film") | ~fact("seen_by").known & SEEN_BY.is_("film")
FAULTY, ROLLED = fact("fault").one_of("rolled", "chest", "back"), fact("fault").is_("rolled")
# Heels up after any fault, for a stiff ankle drops the chest too; less deep only where it rolled, for less depth
# hides the other faults by itself. Neither with a load: that was film only.
HEELS_TRY, SHALLOW_TRY = FAULTY & ~LOADED, ROLLED & ~LOADED
CURED = fact("heels_help").is_("yes") | fact("shallow_help").is_("yes")

LET_GO = "If it slips, let it go and step back. Keep breathing. " + SHARP
HELD_SHAPE = YesNo(yes="It held", no="It did not", also_yes=("it kept", "kept", "held"), partly="no")

FLOW = flow_of(
    PROTOCOL, rests_on=("bar",), command=("arms forward",),
    steps=(
        watched_again(f"This shows {PROTOCOL.looks_at}. How will you see it? "
                   "Best is film from the side, phone at hip height, shirt tucked in."),
        Ask("bar", "For this test you hold a broomstick or an empty bar across the front of your shoulders, arms straight ahead. "
            "Which will you use? If you have never front squatted, take the broomstick. Add no weights. Film of heavier sets "
            "counts only if you have it.", choice(
                ("stick", "Broomstick", "stick", "broom", "mop", "pole", "umbrella", "towel"),
                Option("empty", "Empty bar", ("empty", "bar", "barbell"), only_if=~BODY_WEIGHT & ~NO_BAR),
                Option("loaded", "Film of loaded sets", ("loaded", "film", "loaded film", "old film", "video"),
                       only_if=FILMED_HERE))),
        Tell("Stick at hand, feet as you usually squat, clear floor around you. Film from the side.", ~(EMPTY | LOADED) & fact("bar").known,
             picture="arms_forward_setup"),
        Tell("Empty bar in a rack, at the height of your armpits. Safety arms just below your deepest point, nothing in front of "
             "you. Film from the side. No safety arms? Say “back” and take the stick.", EMPTY, picture="arms_forward_setup_bar"),
        Ask("watch", "Nothing to lift, then. Open that film and watch one set from the side: the bar, the chest, the "
            "lower back.", Ready("Seen it"), only_if=LOADED),
        did(with_numbers("Across the front of your shoulders, off the throat, arms straight ahead, hands open. {arms_squats:Count} slow "
                         "squats, {slow_down:count seconds} down."),
            LET_GO, ("squats", "That hurt"), only_if=~LOADED, picture=PROTOCOL.picture),
        Ask("fault", "What changed first, if anything? Look at the film before you answer, if there is one. If you "
            "can't tell, skip this.", choice(
                ("clean", "Nothing, it all held", "nothing", "all held", "it held", "held", "it kept", "none", "no", "nope", "not rounded"),
                ("rolled", "It rolled down the arms", "it rolled", "bar rolled", "stick rolled", "the bar rolled",
                 "the stick rolled", "it rolls"),
                ("chest", "The chest fell", "chest fell", "chest dropped", "my chest fell"),
                ("back", "The lower back rounded", "back rounded", "the back rounded", "my back rounded",
                 "it rounded", "rounded", "lower back")), only_if=SQUATS_DONE),
        Ask("depth", "How deep was the thigh when that began?", BANDS, only_if=FAULTY, picture="squat_bands"),
        did(with_numbers("Rest a moment. {set_squats:Count} more, heels on a firm board or two small plates, an inch "
                         f"({HEEL_LIFT_WORDS}) high."),
            "Both heels must stand steady. " + LET_GO, ("heels", "Heels up hurt"), key="heels_do", only_if=HEELS_TRY,
            picture="squat_heels"),
        Ask("heels_help", "Heels up: did it all hold this time?", HELD_SHAPE, only_if=done("heels_do")),
        did(with_numbers("Rest a moment. {set_squats:Count} last ones, heels flat again, only down to just above where it began to roll."),
            LET_GO, ("shallow", "Less deep hurt"), key="shallow_do", only_if=SHALLOW_TRY, picture="arms_forward_shallow"),
        Ask("shallow_help", "Less deep: did it all hold?", HELD_SHAPE, only_if=done("shallow_do")),
        Tell("It held once that was changed. So this was shoulders, ankles or depth, not the trunk, and it does not "
             "count against your trunk.", CURED),
        Tell("It all held. A stick weighs next to nothing, so this says little about the trunk under a load.",
             fact("fault").is_("clean") & ~(EMPTY | LOADED)),
    ),
)
