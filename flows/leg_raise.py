"""Leg raise: lying on the back, knee straight, the leg's angle at which the lower back moves."""

from collections.abc import Callable
from functools import lru_cache

from companion.conversation.condition import ALWAYS, Condition, Fact, Facts, Value, fact
from companion.conversation.flow import SIDES, Ask, Jump, Known, Step, Tell, both, each_side, sided
from companion.conversation.kinds import Choice, Option, choice
from companion.conversation.number_kinds import Number
from companion.language.units import METRIC, shown
from companion.screening.doubts import apart
from companion.screening.errors import errors_from
from companion.screening.geometry import FLIP, HEEL_TOP, highest_heel
from companion.screening.protocols.leg_raise import PROTOCOL, RAISE_LEAST, SPREAD, LegRaise, readings, side_to_check
from companion.screening.readings import mean_of
from companion.screening.screen import about_from
from companion.screening.sources import SOURCES, with_numbers
from flows.block import NO_FLOOR_TODAY, NOWHERE_TO_LIE, SIDES_HURT, did, done
from flows.by_film import BY_CARDS, READ_SAYS, side_film, turns
from flows.protocol_flow import flow_of
from flows.shared import NO_LEVEL, NO_TAPE

LEVEL_SHOWN = Number("deg", 0, 90, usual=(0, 90), example_value=72, step=1)
HEEL = Number("cm", 0, 130, usual=(25, 110), example_value=88)
# Hip height .530 of stature (Drillis & Contini 1966, second-hand): 77 to 109 cm for 145 to 205 cm tall.
LEG_LENGTH = Number("cm", 50, 130, usual=(70, 112), example_value=88)

# Shooting pain, tingling or numbness below the knee is never a short hamstring (standard teaching, memory).
RAISE_CAUTION = "A pull behind the thigh is fine. Either side: stop at anything sharp, shooting, tingling or numb."

WATCH = {
    "level": "Note the degrees it shows.",
    "heel": "A helper or film marks it.",
    "eye": "Note how high; film helps.",
    "film": "A film of each leg.",
}
HANDS = {
    "own": "Slide both hands, palms down, under the curve of the lower back.",
    "strap": "Loop a strap or towel round one foot, both ends in one hand. Slide the other hand, palm down, "
             "under the curve of the lower back.",
}


def at_start(known: Known) -> dict[str, Value]:
    """Return how far off this lifter's readings may be, by method, and the leg's length from last time, as a sentence for the end of
    its question; "" if never measured."""
    answers = list(known.answers())
    errors = errors_from(answers, about_from(answers).sex)
    off: dict[str, Value] = {**READ_SAYS} | {f"{way}_off": round(errors.of(PROTOCOL.id, way).beyond, 3)
                             for method in ("level", "heel") for way in (method, f"{method}_own", f"{method}_strap")}
    length = known.facts.get(PROTOCOL.key("leg_length"))
    if length is None:
        return off | {"length_before": ""}
    was = shown(float(length), "cm", str(known.facts.get("welcome.units", METRIC)))
    return off | {"length_before": f" Last time it was {was}; that will do again."}


def _way(got: Facts, side: str) -> Value | None:
    """Return the method with the effort: own effort and strap give different readings."""
    return f"{got['method']}_{got['effort']}" if "effort" in got else got["method"]


def _placement(got: Facts, side: str) -> Value | None:
    """Return the part the level lies on: that of last time, else the shin, so that readings can be compared."""
    return got.get(PROTOCOL.key("placement"), "shin") if got["method"] == "level" else ""


def _watch(got: Facts, side: str) -> Value | None:
    return WATCH[str(got["method"])]


def _hands(got: Facts, side: str) -> Value | None:
    return HANDS[str(got.get("effort", "own"))]


def _too_high(got: Facts, side: str) -> Value | None:
    return "yes" if float(got[f"{side}_heel"]) > highest_heel(float(got["leg_length"])) else "no"


def _shown_by(name: str) -> Callable[[Facts, str], Value | None]:
    return lambda got, side: got[f"{got[name]}_check"] if got["method"] == "level" else None


def _record(got: Facts, *more: str) -> LegRaise:
    keys = (*_LIFTED, *more)
    return _lift(keys, tuple(map(got.get, keys)))


@lru_cache(maxsize=1024)
def _lift(keys: tuple[str, ...], values: tuple[Value | None, ...]) -> LegRaise:
    """Return the record of these answers; a step asks for it many times."""
    return LegRaise(**dict(zip(keys, values, strict=True)))  # type: ignore[arg-type]


_doubted = lru_cache(maxsize=1024)(side_to_check)


def _again(repeats: int) -> Callable[[Facts, str], Value | None]:
    """Return the function that says whether one more reading is wanted after so many: their mean stands within error of the line that
    decides, or they differ by the detectable change (choice). None if they give no angle."""
    def of(got: Facts, side: str) -> Value | None:
        if got["method"] not in ("level", "heel") or len(taken := readings(_record(got), side)[:repeats]) < repeats:
            return None
        near = abs(mean_of(taken) - RAISE_LEAST.value) <= float(got[f"{_way(got, side)}_off"])
        return "yes" if near or apart(taken, SPREAD.mdc) else "no"

    return of


def _odd(got: Facts, side: str) -> Value | None:
    """Return the side to look at once more, since the two are too far apart to be believed; None for neither."""
    return _doubted(_record(got)) or None


def _other(got: Facts, side: str) -> Value | None:
    """Return the side that is not the odd one, where that came out the same and the two are still too far apart; None else."""
    odd = str(got["odd"])
    doubted = _doubted(_record(got, f"{odd}_check", f"{odd}_check_lean"))
    return doubted if doubted != odd and doubted else None


LIFT_ANSWERS = frozenset(("method", "effort", "leg_length", *(f"{side}_{key}" for side in SIDES for key in (
    "level", "lean", "heel", "level_2", "heel_2", "level_3", "heel_3", "film_1", "film_2", "film_3", "film_photo"))))
_LIFTED = tuple(sorted(LIFT_ANSWERS))
TOO_HIGH = Fact("{side}_too_high", values=("yes", "no"), of=_too_high)
SECOND = Fact("{side}_second", values=("yes", "no"), of=_again(1))
THIRD_LIFT = Fact("{side}_third", values=("yes", "no"), of=_again(2))
ODD, OTHER = Fact("odd", values=SIDES, of=_odd), Fact("other", values=SIDES, of=_other)
SHOWN_NOW, OTHER_SHOWN = (Fact(name, 0, 90, step=1, of=_shown_by(side)) for name, side in (("shown_now", "odd"), ("other_shown", "other")))

BY_LEVEL, BY_HEEL, BY_EYE, BY_FILM = (fact("method").is_(name) for name in ("level", "heel", "eye", "film"))
ONCE_MORE = (BY_LEVEL & fact("{side}_level").known | BY_HEEL & fact("{side}_heel").known) & SECOND.is_("yes")
ONE_LAST = ONCE_MORE & THIRD_LIFT.is_("yes")
ONE_MORE_ROUND = {"_2": ONCE_MORE, "_3": ONE_LAST}
EITHER_ONCE_MORE, EITHER_ONE_LAST = (sided(one, "left") | sided(one, "right") for one in (ONCE_MORE, ONE_LAST))
HEEL_SERVES = ~(fact("left_too_high").is_("yes") | fact("right_too_high").is_("yes"))


def _degrees(low: int, high: int) -> tuple[str, ...]:
    """Return other words for a band: each whole number in it."""
    return tuple(f"{n}{sign}" for n in range(low, high + 1) for sign in ("", "°"))


_A, _B, _C, _D = map(int, SOURCES["eye_bands"].value)
BANDS_BY_EYE = choice(
    ("under_45", f"Under {_A}°", "less than half way", f"below {_A}", *_degrees(10, _A - 1)),
    ("45_60", f"{_A} to {_B}°", f"{_A}-{_B}", f"{_A} to {_B}", *_degrees(_A + 1, _B - 1)),
    ("60_70", f"{_B} to {_C}°", f"{_B}-{_C}", f"{_B} to {_C}", *_degrees(_B + 1, _C - 1)),
    ("70_80", f"{_C} to {_D}°", f"{_C}-{_D}", f"{_C} to {_D}", *_degrees(_C + 1, _D - 1)),
    ("over_80", f"Over {_D}°", f"more than {_D}", f"above {_D}", "straight up", *_degrees(_D + 1, 130)),
)


def _leaning(shown: str) -> Choice:
    """Return the ways a level's number can be meant; near flat only where it can be."""
    return choice(("short", "Short of straight up", "short", "nearly straight up", "nearly up", "not quite", "nearer upright"),
                  ("past", "Past straight up", "past", "past upright", "over"),
                  Option("flat", "Less than half way up", ("flat", "nearer flat", "nearer to flat", "low"), only_if=fact(shown) <= FLIP))


def _lifted(n: int) -> str:
    """Return the text of a round in which both legs come up."""
    again = {1: "Left leg up slowly, knee straight, foot relaxed, until the back clearly presses or lifts, or the knee bends. Then "
                "the right.",
             2: "That is close to a line I compare it with, so both once more, the same way: left, then right.",
             3: "A third time settles it, for those are apart or close to the line. Both the same way: left, then right."}[n]
    return f"{again} {{watch}}"


def _round(n: int, key: str, wanted: Condition) -> tuple[Step, ...]:
    """Return one round: both legs, then what hurt, then both numbers. ``key``: the end of its answers' names."""
    lift = did(_lifted(n), RAISE_CAUTION, *SIDES_HURT, key=f"did{key}", only_if=wanted, also=() if key else (NOWHERE_TO_LIE,),
               picture="leg_raise_left")
    lean = () if key else (
        Ask("{side}_lean", "A phone shows the same number short of straight up and past it. Where did the {side} leg "
            "come to?", _leaning("{side}_level"), only_if=BY_LEVEL & fact("{side}_level").known),)
    eye = () if key else (
        Ask("{side}_eye", "How high did the {side} leg come? Half way up is 45°, straight up is 90°.",
            BANDS_BY_EYE, only_if=BY_EYE & done(), method="{way}", picture="leg_raise_eye_{side}"),)
    film = () if key else side_film("Send the film of the {side} leg.", "leg", "{side}", BY_FILM & done())
    more = done(f"did{key}") & ONE_MORE_ROUND.get(key, ALWAYS)
    return (lift, *each_side(
        Ask(f"{{side}}_level{key}", "How many degrees did the phone show, {side} leg?", LEVEL_SHOWN, only_if=BY_LEVEL & more,
            method="{way}", placement="{placed}"),
        *lean,
        Ask(f"{{side}}_heel{key}", "How many {unit} from the floor to the back of the {side} heel?", HEEL, only_if=BY_HEEL & more,
            method="{way}", then=(Jump(TOO_HIGH.is_("yes"), "method", f"That is above {HEEL_TOP:g}°, where a heel's height says too "
                                       "little. Take the level or your eye, and start again."),) if not key else ()),
        *eye, *film))



def _look_again(key: str, which: Fact, shown: Fact, why: str, after: Condition = ALWAYS) -> tuple[Ask, ...]:
    """Return one more look at a side. ``key``: the beginning of its questions' names; ``which``: the side; ``shown``: its number;
    ``after``: what must hold before."""
    leg = f"{{{which.name}}}"
    again = which.known & done(f"{key}_do")
    return (
        did(f"{why}: the {leg} leg, the same way. {{watch}}", RAISE_CAUTION, ("odd", "That hurt"), key=f"{key}_do",
            only_if=which.known & after & (BY_LEVEL | BY_HEEL)),
        Ask(f"{key}_level", f"How many degrees does the phone show now, {leg} leg?", LEVEL_SHOWN, only_if=again & BY_LEVEL,
            method="{way}", placement="{placed}", log_as=f"{leg}_check"),
        Ask(f"{key}_lean", f"And where did the {leg} leg come to?", _leaning(shown.name), only_if=again & BY_LEVEL & shown.known,
            log_as=f"{leg}_check_lean"),
        Ask(f"{key}_heel", f"How many {{unit}} now, {leg} heel?", HEEL, only_if=again & BY_HEEL, method="{way}", log_as=f"{leg}_check"))


ODD_LEG = (
    *_look_again("check", ODD, SHOWN_NOW, "Left and right differ more than sides mostly do, so one more look"),
    *_look_again("other", OTHER, OTHER_SHOWN, "Still that far apart, so one look at the other side too",
                 SHOWN_NOW.known | BY_HEEL & (fact("left_check").known | fact("right_check").known)))

FLOW = flow_of(
    PROTOCOL, command=("straight leg raise", "hamstring test"),
    at_start=at_start,
    facts=(Fact("way", of=_way), Fact("placed", of=_placement), Fact("watch", of=_watch),
           Fact("hands", of=_hands), *both(TOO_HIGH, SECOND, THIRD_LIFT), ODD, SHOWN_NOW, OTHER, OTHER_SHOWN, *turns(130)),
    steps=(
        Ask("effort", f"This looks at {PROTOCOL.looks_at}: lying down, a straight leg comes up until the lower back "
            "moves. Will the leg lift itself, or will you pull it up with a strap or towel? Take the same way "
            "each time.", choice(
                ("own", "It lifts itself", "own", "itself", "own effort", "by itself", "lift"),
                ("strap", "Strap or towel", "strap", "towel", "belt", "band", "pull"))),
        Ask("method", "How will you read the height? The phone level is the most exact. Heel height works only "
            f"up to {HEEL_TOP:g}°. By eye is the roughest.", choice(
                Option("level", "Phone level", ("level", "phone"), only_if=~NO_LEVEL),
                Option("heel", "Heel height", ("heel", "tape", "tape measure"), only_if=HEEL_SERVES & ~NO_TAPE),
                BY_CARDS, ("eye", "By eye", "eye", "film", "look")),
            then=(Jump(~fact("method").known, say="Left out for today. Say “leg raise” any day to do it."),)),
        Ask("leg_length", "How long is the leg? Lying flat: from the bony bump at the side of the hip to the "
            "heel, in {unit}.{length_before}", LEG_LENGTH, only_if=BY_HEEL,
            then=(Jump(~fact("leg_length").known, say="Without the leg's length the heel's height gives no angle. Say “leg raise” "
                       "to take another way."),)),
        Tell(with_numbers("Tie the phone along the front of the {placed}, level open, screen towards you. Or prop it sideways near the "
                          "floor, {phone_steps_0:count} big steps away, film, and hold a level to the film afterwards. The same way each "
                          "time."), BY_LEVEL,
             picture="leg_raise_setup_level_{placed}"),
        Tell(with_numbers("Lie alongside a wall or open door frame. Stick the tape to it, zero on the floor. Prop the phone sideways, "
                          "{phone_steps_0:count} big steps away, and film; or let somebody mark the back of the heel."),
             BY_HEEL, picture="leg_raise_setup_heel"),
        Tell(with_numbers("Card 4 on the outside of the shin that faces the phone; phone sideways on a stand near the floor, "
                          "{phone_steps_0:count} big steps away. Left leg from the left, tape the card over, right from the right. Lie "
                          "still for {film_still:count seconds} first. Or a photo at the top, card 5 upright: rougher, up to 75°."),
             BY_FILM),
        Tell(with_numbers("Prop the phone sideways near the floor, {phone_steps_0:count} big steps away, and film; you judge from the film "
                          "afterwards. Or let somebody look."), BY_EYE),
        Tell("Lie on your back, legs long. {hands} Feel light, even pressure. Read the next message first, then lie down. Left and right "
             "alike: stop at anything sharp, shooting, tingling or numb.", picture="leg_raise_setup_{effort}"),
        *_round(1, "", ALWAYS),
        *NO_FLOOR_TODAY,
        *_round(2, "_2", done() & EITHER_ONCE_MORE),
        *_round(3, "_3", done("did_2") & EITHER_ONE_LAST),
        *ODD_LEG,
    ),
)
