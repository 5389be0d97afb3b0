"""Squat look: the depth at which the back rounds without load, and the single changes that move it."""

from collections.abc import Callable
from itertools import pairwise
from random import Random

from companion.conversation.condition import Condition, Fact, Facts, Some, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Jump, Known, Tell
from companion.conversation.kinds import Media, Ready, YesNo, choice
from companion.conversation.number_kinds import Number
from companion.language.units import IMPERIAL
from companion.screening.depth import band_of
from companion.screening.protocols.squat_look import PROTOCOL, SquatLook
from companion.screening.setups import CHANGES, NAMES, proposal
from flows.protocol_flow import flow_of
from flows.shared import BANDS, BODY_WEIGHT, SHARP, watched_by

ROUNDS = choice(
    ("no", "No", "none", "not at all", "stays flat", "stayed flat", "nope", "nah", "nothing", "no rounding", "no tuck", "it kept", "kept",
     "it held", "kept its shape", "it didn't", "it doesn't", "didn't round", "doesn't round", "no change"),
    ("little", "A little", "little", "a bit", "bit", "slightly", "kinda", "kind of", "sort of", "a touch", "a tiny bit", "yes a bit",
     "yes a little", "just a little", "barely"),
    ("clearly", "Clearly", "clear", "a lot", "lots", "yes clearly", "yes", "yeah", "yep", "yup", "it does", "it did", "it rounds",
     "it rounded", "yes it does", "yes it rounds", "definitely", "for sure", "quite a bit"),
    ("some", "In some of them", "some", "in some", "some of them", "in one", "in one of them", "in two", "in two of them", "sometimes",
     "only in the last one", "only the last one", "only the last", "the last one", "in the last one", "just the last one", "one of three",
     "two of three", "1 of 3", "2 of 3", "not in all of them", "only the first", "only in the first one"),
    ("cant_tell", "Can't tell", "can't say", "can't see", "couldn't see", "couldn't tell", "not sure", "unsure", "dunno", "no idea",
     "don't know", "idk", "hard to say", "maybe"),
)
# Not a plain Ready: a choice has a Skip button, for somebody with nothing to stand on or to hold.
DONE_OR_SKIP = choice(("ready", "Done", "ready", "ok", "okay", "yes", "finished", "did it", "all done", "done it",
               "k", "yep", "👍"))
KILOS = Number("kg", 0, 500, usual=(15, 300), example_value=80)
"""The same range as the usual load in about_you."""


TITLES = {"heels": ("Heels up", " Nothing to stand on? Tap Skip."), "front": ("Weight in front", " Nothing to hold? Tap Skip."),
          "slow": ("Slower", ""), "wide": ("Wider", "")}
"""Each change's heading, and what is said to whom has nothing for it."""

SLOTS = tuple(f"change_{n}" for n in range(1, len(CHANGES) + 1))
# 2-3 cm under the heels and a light 2-5 kg weight: common practice, no source.
AMOUNTS = {"metric": {"rise": "2 to 3 cm", "weight": "2 to 5 kg"},
           IMPERIAL: {"rise": "about an inch", "weight": "5 to 10 lb"}}

SET_UP = {
    "film": "Lean the phone side-on to you, at hip height, three big steps away, so that all of you is in "
            "view. Tuck your shirt in. Each time: read the message, start filming, squat, look at the film, "
            "come back here.",
    "mirror": "Stand side-on to the mirror and tuck your shirt in. Glance across at the bottom, without "
              "twisting.",
    "friend": "Somebody stands side-on, three big steps away, eyes at hip height, and watches your lower back. Tuck your shirt in.",
    "feel": "Tuck your shirt in and clear some floor. By feel it counts for less than on film, and that is "
            "all right.",
}


def drawn_order(known: Known) -> dict[str, Value]:
    """Return the changes in this run's random order, in the lifter's units. The same run always gives the same order."""
    bare = BODY_WEIGHT.holds(known.facts)
    order = [CHANGES[name] for name in TITLES if not (bare and name == "front")]
    Random(f"{PROTOCOL.id} {known.facts.get('person', '')} {known.run}").shuffle(order)
    amounts = AMOUNTS.get(str(known.facts.get("welcome.units")), AMOUNTS["metric"])
    drawn: dict[str, Value] = {}
    for slot, change in zip(SLOTS, order, strict=False):
        title, nothing = TITLES[change.name]
        drawn |= {slot: change.name, f"{slot}_say": f"{title}: {change.say.format(**amounts)}. Three squats, all else as usual.{nothing}",
                  f"{slot}_caution": change.caution}
    return drawn


def _set_up(got: Facts, side: str) -> Value | None:
    return SET_UP[str(got.get("seen_by", "feel"))]


def _proposed(got: Facts, side: str) -> Value:
    """Return the set-up worth checking after these squats, "none" for none."""
    look = SquatLook(**{key: got.get(key) for key in SquatLook.__dataclass_fields__})  # type: ignore[arg-type]
    out = str(got.get("setup.out", "")).split(",")
    return proposal(look, band_of(str(got.get("about_you.usual_depth", ""))), out) or "none"


def _rounds_in(slot: str) -> Callable[[Facts, str], Value | None]:
    """Return the function that reads a slot's answer, which is logged under its change's name."""
    def of(got: Facts, side: str) -> Value | None:
        """Return the answer on rounding in this slot."""
        return got[f"{got[slot]}_rounds"]

    return of


def _seen(name: str) -> Condition:
    """Return the condition that rounding was seen in this set, so that its depth is asked."""
    return fact(f"{name}_rounds").one_of("little", "some", "clearly")


def _change(slot: str, *skipped: Jump) -> tuple[Ask, ...]:
    """Return one slot's set and its questions; ``skipped``: the jumps if the set is skipped."""
    return (
        Ask(f"{slot}_do", f"{{{slot}_say}}", DONE_OR_SKIP, caution=f"{{{slot}_caution}}", only_if=ROUNDED & fact(slot).known, then=skipped,
            picture=f"squat_{{{slot}}}"),
        Ask(f"{slot}_rounds", "With that change: does the lower back round, or the tail tuck under?", ROUNDS,
            only_if=ROUNDED, log_as=f"{{{slot}}}_rounds"),
        Ask(f"{slot}_depth", "And how deep is the thigh when it starts now?", BANDS,
            only_if=ROUNDED & _seen(slot), log_as=f"{{{slot}}}_depth"),
    )


def _left_out(name: str) -> Condition:
    """Return the condition that the set was skipped."""
    return ~fact(f"{name}_do").known


# The changes are compared with the depth of the plain set: without one there is nothing to compare.
ROUNDED = _seen("plain") & fact("plain_depth").known
ANY_CHANGE_TRIED = ROUNDED & Some(tuple(fact(f"{slot}_rounds").known for slot in SLOTS))
FILMED = fact("seen_by").is_("film")
LOAD_FILMED = fact("load_film").is_("yes")
# Some rounding at depth is normal, in trained lifters too: McKean 2010 J Strength Cond Res 24:2731 (read).
COMMON_ROUNDING = fact("plain_rounds").one_of("little", "some") & fact("plain_depth").one_of("parallel", "below")

FLOW = flow_of(
    PROTOCOL, at_start=drawn_order, command=("squat film", "film my squat"),
    facts=(Fact("set_up", of=_set_up), Fact("proposed", values=(*NAMES, "none"), of=_proposed),
           *(Fact(f"{slot}_rounds", values=("no", "little", "some", "clearly", "cant_tell"), of=_rounds_in(slot))
             for slot in SLOTS)),
    steps=(
        watched_by("A few squats without load, seen from the side: does the back round, and where? How will "
                   "you see them? Film is worth the most."),
        Ask("setup", "{set_up}", Ready(), picture="view_{seen_by}"),
        Ask("plain_do", "Three squats without load: your usual stance, depth and speed. Watch the lower back "
            "and the tail near the bottom.", Ready("Done"), caution=SHARP,
            then=(Jump(_left_out("plain"), "load_film"),), picture=PROTOCOL.picture),
        Ask("plain_rounds", "In any of the three: does the lower back round, or the tail tuck under?", ROUNDS),
        Ask("plain_depth", "How deep is the thigh when it starts? Parallel: the top of the thigh level with "
            "the floor.", BANDS, only_if=_seen("plain"), picture="squat_bands"),
        Tell("Your back does not round without load, so there is no depth for a change to move. Those sets are left out.",
             only_if=fact("plain_rounds").is_("no")),
        Tell("Then there is no depth to compare with, so the squats with one change are left out. Film from "
             "the side often shows it; you can do this again any day.",
             only_if=~ROUNDED & ~fact("plain_rounds").is_("no")),
        Tell("A little rounding at parallel or below is common if nothing hurts. Trained lifters have it too.",
             only_if=ROUNDED & COMMON_ROUNDING),
        Tell("Now a few short sets with one thing changed in each, in a mixed order, and the plain squat once "
             "more. Rest as long as you like in between.", only_if=ROUNDED),
        *(ask for slot, after in pairwise(SLOTS) for ask in _change(slot,
          Jump(_left_out(slot) & fact(after).known, f"{after}_do"), Jump(_left_out(slot) & ANY_CHANGE_TRIED, "again_do"),
          Jump(_left_out(slot), "load_film"))),
        *_change(SLOTS[-1], Jump(_left_out(SLOTS[-1]) & ANY_CHANGE_TRIED, "again_do"),
                 Jump(_left_out(SLOTS[-1]), "load_film")),
        Ask("again_do", "Last set: three squats exactly as the first, nothing changed.", Ready("Done"),
            caution=SHARP, only_if=ANY_CHANGE_TRIED, then=(Jump(_left_out("again"), "load_film"),),
            picture=PROTOCOL.picture),
        Ask("again_rounds", "Does the lower back round, or the tail tuck under?", ROUNDS,
            only_if=ANY_CHANGE_TRIED),
        Ask("again_depth", "How deep is the thigh when it starts?", BANDS,
            only_if=ANY_CHANGE_TRIED & _seen("again")),
        Ask("load_film", "Do you have film of your own working sets, from the side? Only film you have "
            "already: nothing is loaded for this.", YesNo()),
        Ask("load_rounds", "Take the heaviest of those sets. Does the lower back round, or the tail tuck "
            "under?", ROUNDS, only_if=LOAD_FILMED),
        Ask("load_depth", "How deep is the thigh when it starts there?", BANDS,
            only_if=LOAD_FILMED & _seen("load"), picture="squat_bands"),
        Ask("load_kg", "How heavy was the bar on that film, plates and all, in {unit}?", KILOS,
            only_if=LOAD_FILMED),
        Ask("clean_kg", "And the heaviest set on film in which it does not round earlier than without load, in {unit}? None: tap Skip.",
            KILOS, only_if=LOAD_FILMED & _seen("load")),
        Ask("video", "If you like, send one of the videos. It is kept with your answers, and your coach can "
            "see it if you have one here. If not, tap Skip.", Media(("video",)), only_if=FILMED),
        Do(Find("setup.luck", "", "new trials, so nothing is luck yet")),
        Do(Find("setup.proposed", "{proposed}", "the change that moved the rounding most for the least fuss (choice)"), ANY_CHANGE_TRIED),
    ),
)
