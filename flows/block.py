"""One-phone blocks: the sets of a test are done in one go, and one card follows, which begins with what hurt.

Nothing is tapped while the phone films or the hands are under the back. A set that hurt leads to the pain questions and ends the test, so
nothing of it is scored. The card's first question is asked with the movement, so that it waits on the screen when they come back.
"""

from __future__ import annotations

from companion.conversation.condition import ALWAYS, Condition, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Tell
from companion.conversation.kinds import Choice, Option, choice
from companion.language.units import IMPERIAL, METRIC
from companion.screening.pairs import LOOK
from companion.screening.setups import HEEL_LIFT_WORDS, HELD_WEIGHT_WORDS
from companion.screening.sources import with_numbers
from flows.shared import BANDS, WATCHED

WENT_WELL = Option("none", "Done, nothing hurt", ("done", "no", "none", "nothing", "nothing hurt", "none of them", "no set"))
FILMED = Option("filmed", "Done and filmed, nothing hurt", ("filmed", "filmed it", "done and filmed"))
NOT_SURE_WHICH = Option("some", "It hurt, not sure which", (
    "yes", "it hurt", "not sure", "don't know which", "a bit", "a little", "slightly", "kind of", "kinda", "sort of", "maybe", "i think so",
    "dunno", "don't know", "both", "all of them"))
"""Any doubt whether a set hurt is taken as hurt."""
LEFT_OUT = Option("left_out", "Leave it out", ("leave it out", "leave this one out", "not today", "leave this out"))
NOWHERE_TO_LIE = Option("no_floor", "I can't get down there", ("no floor", "no room", "can't get down", "no space", "can't lie down"))
SIDES_HURT = (("left", "Left hurt"), ("right", "Right hurt"))

STARTS = choice(Option("no", "Not at all", ("no", "none", "nowhere", "never", "stayed flat", "it stayed still", "still", "it kept",
                "it held", "it didn't move", "didn't move", "it stayed flat")), *BANDS.choices,
                Option("cant_tell", "Can't tell", ("not sure", "don't know", "no idea", "unsure", "idk")))
"""Where the rounding starts in a set, also that it does not."""


AMOUNTS = {METRIC: {"rise": HEEL_LIFT_WORDS, "weight": HELD_WEIGHT_WORDS}, IMPERIAL: {
    "rise": "about an inch", "weight": with_numbers("{held_weight_pounds_0} to {held_weight_pounds_1} lb")}}
"""What is usual under the heels and held in front, by the lifter's units."""

SEEN_BY = fact(LOOK.key("seen_by"))
LOOK_SEEN = SEEN_BY.one_of("film", "mirror", "friend")


def watched_again(say: str) -> Ask:
    """Return the same question of a later test: it is watched as the squat look was, if somebody saw that (``screen_from``)."""
    return Ask("seen_by", say, WATCHED, only_if=~LOOK_SEEN)


def did(say: str, caution: str, *sets: tuple[str, str], key: str = "did", only_if: Condition = ALWAYS, picture: str = "",
        also: tuple[Option, ...] = ()) -> Ask:
    """Return the message with the last of the sets and the question that waits after all of them: did any set hurt, and which?

    ``sets``: each set's answer and label; ``also``: other answers. What follows asks with ``done``.
    """
    hurt = tuple(Option(value, label, (label.lower().removesuffix(" hurt"),)) for value, label in sets)
    return Ask(key, f"{say} Then: did any set hurt? Which?", Choice((WENT_WELL, *hurt, NOT_SURE_WHICH, *also, LEFT_OUT)), caution=caution,
               only_if=only_if, safety=True, hurts=(*(one.value for one in hurt), NOT_SURE_WHICH.value), picture=picture)


def done(key: str = "did") -> Condition:
    """Return the condition that the sets were done and nothing hurt."""
    return fact(key).one_of(WENT_WELL.value, FILMED.value)


NO_FLOOR_TODAY = (
    Do(Find("at_hand.floor", "no", "they said that they can't get down there today"), fact("did").is_("no_floor")),
    Tell("Then tests on the floor wait. Lying ones also go on a firm bed; say their name to do them there. Standing ones go on: squats, "
         "knee to wall, hand on back.", fact("did").is_("no_floor")),
)
"""What follows where they can't get down on the floor: those tests are closed for today, and the others go on."""
