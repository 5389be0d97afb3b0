"""Hip fold: lying on the back, knee bent, the thigh's way to the chest before the lower back moves."""

from companion.conversation.condition import Fact, fact
from companion.conversation.flow import Ask, Tell, both, each_side
from companion.conversation.kinds import choice
from companion.conversation.number_kinds import Number
from companion.screening.protocols.hip_fold import PROTOCOL
from companion.screening.sources import with_numbers
from flows.block import FILMED, NO_FLOOR_TODAY, NOWHERE_TO_LIE, SIDES_HURT, did, done
from flows.by_film import FILMS_READ, films_unread, side_film
from flows.protocol_flow import flow_of

# 120° is textbook hip flexion with the knee bent (AAOS; 121 ± 13°, Roach & Miles 1991, from memory).
FOLD = Number("deg", 0, 160, usual=(60, 145), example_value=110, step=1)
FOLD_CAUTION = "Either side: stop at a pinch at the front of that hip, and at anything sharp, shooting, tingling or numb."
WHICH_FIRST = choice(
    ("fold", "Reached the fold", "fold", "reached", "reached it", "the fold", "fold first"),
    ("back", "Pressure changed first", "pressure", "pressure changed", "pressure first", "hands", "back moved", "back first"),
    ("belly", "My belly stopped it", "belly", "stomach", "tummy", "thigh met belly"),
    ("cant_tell", "Can't tell", "not sure", "unsure", "dunno", "don't know", "idk", "neither"))
PARTLY = ("a bit", "a little", "a tiny bit", "slightly", "a touch", "kind of", "kinda", "sort of", "maybe", "not sure", "unsure", "dunno",
          "don't know")
"""Said without a side, these count as a pinch in both hips: the careful answer."""


def _one(side: str) -> tuple[str, ...]:
    """Return the words for a pinch in one hip, also a slight one."""
    return (f"{side} one", f"yes {side}", *(f"{much} {there} {side}" for much in ("a bit", "a little") for there in ("on the", "in the")))


ON_FILM = fact("did").is_("filmed")
BY_BELLY = fact("left_first").is_("belly") | fact("right_first").is_("belly")

FLOW = flow_of(
    PROTOCOL, command=("hip test",), at_start=films_unread,
    facts=both(Fact("{side}_film_angle", 0, 160, step=.1)),
    steps=(
        Tell("First picture the bottom of your deepest squat: how close is the thigh to the belly? That is your squat's fold. Then lie on "
             "your back, legs long, both hands palms down under the curve of the lower back, light even pressure. Film from the side is "
             "optional.", picture="lying_setup"),
        Tell(with_numbers("With printed cards the film measures: card 2 on the side of the pelvis, card 3 on the outside of the thigh. "
                          "First lie still for {film_still:count seconds}. One film a leg, from its own side. Or send a photo of where "
                          "the pressure changes."), FILMS_READ),
        did("Left knee bent, thigh slowly to the chest, turned out as you squat, until the pressure clearly changes or your squat's "
            "fold. Then the right.", FOLD_CAUTION, *SIDES_HURT, also=(FILMED, NOWHERE_TO_LIE),
            picture="hip_fold_left"),
        *each_side(
            Ask("{side}_first", "The {side} leg: did the thigh reach your squat's fold first, or did the pressure on "
                "your hands change first?", WHICH_FIRST, only_if=done()),
            *side_film("Cards on? Send the film of the {side} leg, and I read where the pelvis begins to turn.", "fold", "{side}",
                       ON_FILM & FILMS_READ),
            Ask("{side}_angle", "From the film: how many degrees did the {side} thigh come up from the floor? "
                "Straight up is 90, past it is more. Skip it if you can't tell.", FOLD, only_if=ON_FILM & ~fact("{side}_film_angle").known,
                method="film")),
        Ask("pinched", "Was there a pinch at the front of a hip?", choice(
            ("none", "No", "no", "neither"), ("left", "Left", *_one("left")), ("right", "Right", *_one("right")),
            ("both", "Both", "yes", "both hips", *PARTLY)),
            only_if=done()),
        Tell("That is no stiff hip, and no test of it either: it counts as not tested. Rock back with the knees wide tells more.",
             BY_BELLY),
        Tell("Noted. A pinch is kept, but it does not count as a stiff muscle, and it gets no stretch.",
             fact("pinched").one_of("left", "right", "both")),
        *NO_FLOOR_TODAY,
    ),
)
