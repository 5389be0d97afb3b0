"""Knee to wall: the knee's travel past the toes with the heel down."""

from collections.abc import Callable
from dataclasses import replace
from statistics import fmean

from companion.conversation.condition import Fact, Facts, Value, fact
from companion.conversation.flow import SIDES, Ask, Jump, Known, Run, Tell, both, sided
from companion.conversation.kinds import Option, choice
from companion.conversation.number_kinds import Number
from companion.screening.errors import errors_from
from companion.screening.geometry import furthest_reach
from companion.screening.protocols.knee_to_wall import KEY_OF, PROTOCOL, SPREADS, KneeToWall, side_to_check
from companion.screening.screen import about_from
from companion.screening.sources import with_numbers
from flows.by_film import BY_CARDS, READ_SAYS, side_film, turns
from flows.protocol_flow import flow_of
from flows.shared import NO_LEVEL, NO_TAPE

DISTANCE = Number("cm", low=0, high=30, usual=(3, 20), example_value=11)
LEAN = Number("deg", low=0, high=70, usual=(15, 60), example_value=38, step=1)
SAME = ("same", "the same", "same again", "same as before", "same number", "no change", "exactly the same", "same as the first")
AS_LEFT = (*SAME, "both the same", "same as left", "same as the left", "same as the other", "same as the other one", "same both sides")
"""Words for the number before: of the same foot, and of the left one."""
ANKLE_CAUTION = "Stop if anything pinches or hurts, in the ankle or the back."

TAPE, LEVEL, FILM = (fact("method").is_(method) for method in ("tape", "level", "film"))


def limits(known: Known) -> dict[str, Value]:
    """Return how far off a reading of this lifter may be, by method."""
    answers = list(known.answers())
    about = about_from(answers)
    errors = errors_from(answers, about.sex)
    return {**READ_SAYS, **{f"{method}_off": round(errors.of(PROTOCOL.id, method).beyond, 3) for method in ("tape", "level")}}


def _most(got: Facts, side: str) -> Value:
    """Return the distance past which no shin of their height reaches."""
    height = got.get("about_you.height")
    return round(furthest_reach(height if isinstance(height, float) else None), 1)


def _again(key: str, method: str, repeats: int) -> Callable[[Facts, str], Value]:
    """Return the function that says whether one more reading is wanted after so many: they stand within error of the lines or between
    them, where the mean of three counts (choice), or differ by the detectable change (Powden 2015 Man Ther 20:524, read)."""
    unit = "cm" if method == "tape" else "deg"
    low, high = sorted(one.value for one in PROTOCOL.thresholds_in(unit))

    def of(got: Facts, side: str) -> Value:
        taken = [float(got[f"{side}_{key}{n}"]) for n in range(1, repeats + 1)]
        off = float(got[f"{method}_off"])
        near = low - off <= fmean(taken) <= high + off
        return "yes" if near or round(max(taken) - min(taken), 2) >= SPREADS[unit].mdc - 1e-9 else "no"

    return of


def _too_far(got: Facts, side: str) -> Value:
    values = [got.get(f"{side}_{n}") for n in (1, 2, 3)]
    return "yes" if any(value is not None and float(value) > float(got["most"]) for value in values) else "no"


def _odd(got: Facts, side: str) -> Value | None:
    """Return the side to look at once more, since the two are too far apart to be believed; None for neither."""
    return side_to_check(_record(got)) or None


def _other(got: Facts, side: str) -> Value | None:
    """Return the side that is not the odd one, where that came out the same and the two are still too far apart; None else."""
    odd = str(got["odd"])
    doubted = side_to_check(_record(got, f"{odd}_check"))
    return doubted if doubted != odd and doubted else None


def _record(got: Facts, *more: str) -> KneeToWall:
    return KneeToWall(**{key: got.get(key) for key in (*REACH_ANSWERS, *more)})  # type: ignore[arg-type]


REACH_ANSWERS = frozenset(("method", *(key.format(side, n) for key in KEY_OF.values() for side in SIDES for n in (1, 2, 3))))
MOST = Fact("most", 0, 60, step=0.1, of=_most)
SECOND_REACH = Fact("{side}_second", values=("yes", "no"), of=_again("", "tape", 1))
THIRD_REACH = Fact("{side}_third", values=("yes", "no"), of=_again("", "tape", 2))
DEG_SECOND = Fact("{side}_deg_second", values=("yes", "no"), of=_again("deg_", "level", 1))
DEG_THIRD = Fact("{side}_deg_third", values=("yes", "no"), of=_again("deg_", "level", 2))
TOO_FAR = Fact("{side}_too_far", values=("yes", "no"), of=_too_far)
ODD, OTHER = Fact("odd", values=SIDES, of=_odd), Fact("other", values=SIDES, of=_other)
CANNOT_BE = "More than {most:cm} can't be: the shin would lie nearly flat. Zero of the tape at the wall, big toe on it."


def _once_more(n: int) -> tuple[Jump, ...]:
    return (Jump(TOO_FAR.is_("yes"), f"{{side}}_{n}", CANNOT_BE),)

TAKE = (
    Ask("{side}_1", "Big toe of your {side} foot on the tape. Bend until the knee touches the wall, heel down. "
        "Move back until it only just touches. How many {unit} from toe to wall?", DISTANCE,
        caution=ANKLE_CAUTION, only_if=TAPE, method="tape", picture=PROTOCOL.picture, then=_once_more(1)),
    Ask("{side}_2", "That is close to a line. Step off, then once more with the {side} foot. How many {unit}?",
        replace(DISTANCE, called=(SAME, "{side}_1")),
        caution=ANKLE_CAUTION, only_if=SECOND_REACH.is_("yes"), method="tape", then=_once_more(2)),
    Ask("{side}_3", "Those two are apart or close to a line, and a third settles it. Once more, {side} foot: how many {unit}?", DISTANCE,
        caution=ANKLE_CAUTION, only_if=THIRD_REACH.is_("yes"), method="tape", then=_once_more(3)),
    Ask("{side}_deg_1", "Put the {side} foot in front, knee to the wall, heel down, as far back as you can. Hold the "
        "phone along the shin. How many degrees from upright?", LEAN, caution=ANKLE_CAUTION, only_if=LEVEL,
        method="level", placement="{placement}", picture="knee_to_wall_level_{placement}_{side}"),
    Ask("{side}_deg_2", "That is close to a line. Step off, then once more with the {side} foot. How many degrees?",
        replace(LEAN, called=(SAME, "{side}_deg_1")),
        caution=ANKLE_CAUTION, only_if=DEG_SECOND.is_("yes"), method="level",
        placement="{placement}"),
    Ask("{side}_deg_3", "Those two are apart or close to a line, and a third settles it. Once more, {side} foot: how many degrees?", LEAN,
        caution=ANKLE_CAUTION, only_if=DEG_THIRD.is_("yes"), method="level", placement="{placement}"),
)


def _as_left(asks: tuple[Ask, ...]) -> tuple[Ask, ...]:
    """Return the right side's questions, of which the first can be answered by the left side's number."""
    return tuple(replace(ask, kind=replace(ask.kind, called=(AS_LEFT, ask.key.replace("right", "left")))) if ask.key.endswith("_1")
                 and isinstance(ask.kind, Number) else ask for ask in asks)


BENDS = side_film(with_numbers("Film the {side} leg: card 4 outside on the shin, arrow up. Phone side-on, at knee height, "
                               "{phone_steps_1:count} big steps away. Stand still {film_still:count seconds}, then "
                               "{film_bends_0:count times} knee to the wall, {film_bends_1:count seconds} each. Send it."),
                  "shin", "{side}", FILM, ANKLE_CAUTION, "knee_to_wall_{side}")

LIMIT = Ask("{side}_limit", "What stopped the {side} knee: a pull in the calf, or a pinch at the front of the ankle?",
    choice(("calf", "Pull in the calf", "calf", "pull"), ("pinch", "Pinch in front", "pinch", "front"),
           ("neither", "Neither"), ("other", "Brace, shoe or a slip", "brace", "shoe", "slipped", "socks", "slippery", "it slipped"),
           ("cant_tell", "I don't know", "don't know", "not sure", "idk", "unsure")))
LOOKED_AGAIN = fact("left_check").known | fact("right_check").known
ODD_FOOT = (
    Ask("check", "Left and right differ more than sides mostly do. One more look at the {odd} foot, from the big toe to the wall: "
        "how many {unit}?", DISTANCE, caution=ANKLE_CAUTION, only_if=ODD.known & TAPE, method="tape",
        log_as="{odd}_check"),
    Ask("check_deg", "Left and right differ more than sides mostly do. One more look at the {odd} foot: how many degrees from "
        "upright?", LEAN, caution=ANKLE_CAUTION, only_if=ODD.known & LEVEL, method="level", placement="{placement}",
        log_as="{odd}_check"),
    Ask("other_check", "Still that far apart, and the slip may be there. One look at the {other} foot too: how many {unit} from the big "
        "toe to the wall?", DISTANCE, caution=ANKLE_CAUTION, only_if=OTHER.known & LOOKED_AGAIN & TAPE, method="tape",
        log_as="{other}_check"),
    Ask("other_check_deg", "Still that far apart, and the slip may be there. One look at the {other} foot too: how many degrees from "
        "upright?", LEAN, caution=ANKLE_CAUTION, only_if=OTHER.known & LOOKED_AGAIN & LEVEL, method="level", placement="{placement}",
        log_as="{other}_check"),
)

FLOW = flow_of(
    PROTOCOL, facts=(MOST, *both(SECOND_REACH, THIRD_REACH, DEG_SECOND, DEG_THIRD, TOO_FAR), ODD, OTHER, *turns(70)), at_start=limits,
    command=("ankle test",),
    steps=(
        Ask("method", f"This looks at {PROTOCOL.looks_at}. Will you measure with a tape, or with the level on your phone? "
            "The tape is the more exact.", choice(
                Option("tape", "Tape", ("tape measure", "ruler"), only_if=~NO_TAPE),
                Option("level", "Phone level", ("phone", "level"), only_if=~NO_LEVEL), BY_CARDS,
                ("none", "Neither is at hand", "neither", "none", "nothing")),
            then=(Jump(~fact("method").known | fact("method").is_("none"), say="Then mark the toe's place on a strip of paper against the "
                       "wall and keep it: measured with a ruler another day, it counts. Say “knee to wall” then."),)),
        Ask("placement", "Where will the phone lie on the shin? Always take the same place.", choice(
            ("below_knee", "Just under the knee"), ("mid_shin", "Middle of the shin", "middle", "mid")), only_if=LEVEL),
        Run("about_you", TAPE & ~fact("about_you.height").known, asked="height", checks=True),
        Tell("Bare feet, facing a wall. Lay the tape on the floor, zero at the wall. No free wall? A closed door "
            "or a wardrobe does.", TAPE, picture="knee_to_wall_setup"),
        Tell("Bare feet, facing a wall or a closed door, phone in your hand with the level open.", LEVEL),
        Tell("Bare feet, facing a wall, the phone on a stand. First find the place: the foot as far back as the heel allows. "
             "One photo there, card 5 upright behind you, will do too; it is rougher.", FILM),
        *sided((*TAKE, *BENDS, LIMIT), "left"),
        *_as_left(sided(TAKE, "right")), *sided(BENDS, "right"), *ODD_FOOT, sided(LIMIT, "right"),
        Tell("Something else stopped it, so it is kept and not scored. Bare feet, a floor that grips, nothing strapped on: then say “knee "
             "to wall” again.", fact("left_limit").is_("other") | fact("right_limit").is_("other")),
    ),
)
