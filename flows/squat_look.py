"""Squat look: the depth at which the back rounds without load, and the single changes that move it."""

from collections.abc import Callable
from dataclasses import replace
from random import Random

from companion.conversation.condition import Condition, Fact, Facts, Some, Value, fact
from companion.conversation.effects import Find
from companion.conversation.flow import Ask, Do, Known, Run, Tell
from companion.conversation.kinds import YesNo, choice
from companion.conversation.number_kinds import Number
from companion.language.units import METRIC
from companion.screening.depth import band_of
from companion.screening.protocols.squat_look import PROTOCOL, SquatLook
from companion.screening.setups import CHANGES, HELPED_BY_FEEL, NAMES, proposal
from companion.screening.sources import counted, with_numbers
from flows.block import AMOUNTS, STARTS, did, done
from flows.protocol_flow import flow_of
from flows.shared import BANDS, BODY_WEIGHT, NO_BAR, NO_PHONE, watched_by

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
KILOS = Number("kg", 0, 500, usual=(15, 300), example_value=80)
"""The same range as the usual load in about_you."""


TITLES = {"heels": "Heels up", "front": "Weight in front", "slow": "Slower", "wide": "Wider"}
"""Each change's heading, and the label of what hurt."""

SLOTS = tuple(f"change_{n}" for n in range(1, len(CHANGES) + 1))

SET_UP = {
    "film": "Film all {sets} in one go, then look.",
    "mirror": "Glance at the mirror; note each start.",
    "friend": "Somebody side-on notes each start.",
    "feel": "Note where you feel each start.",
}


def drawn_order(known: Known) -> dict[str, Value]:
    """Return the changes in this run's random order, in the lifter's units. The same run always gives the same order."""
    bare = BODY_WEIGHT.holds(known.facts)
    order = [CHANGES[name] for name in TITLES if not (bare and name == "front")]
    Random(f"{PROTOCOL.id} {known.facts.get('person', '')} {known.run}").shuffle(order)
    amounts = AMOUNTS.get(str(known.facts.get("welcome.units")), AMOUNTS[METRIC])
    drawn: dict[str, Value] = {}
    for slot, change in zip(SLOTS, order, strict=False):
        title = TITLES[change.name]
        drawn |= {slot: change.name, f"{slot}_title": title,
                  f"{slot}_say": f"{title}: {change.say.format(**amounts)}. {change.caution}"}
    return drawn | {"fourth": f"5. {drawn['change_4_say']}\n" if "change_4" in drawn else "",
                    "film_tip": "" if NO_PHONE.holds(known.facts) else
                    with_numbers(" Film is worth the most: phone at hip height, {phone_steps_0:count} big steps away.")}


def _set_up(got: Facts, side: str) -> Value | None:
    sets = 2 + sum(slot in got for slot in SLOTS)  # a plain one before and after
    return SET_UP[str(got.get("seen_by", "feel"))].format(sets=counted(sets))


def _proposed(got: Facts, side: str) -> Value:
    """Return the set-up worth checking after these squats, "by_feel" where nobody saw what helped, "none" for none."""
    look = SquatLook(**{key: got.get(key) for key in SquatLook.__dataclass_fields__})  # type: ignore[arg-type]
    out = str(got.get("setup.out", "")).split(",")
    usual = band_of(str(got.get("about_you.usual_depth", "")))
    return proposal(look, usual, out) or (HELPED_BY_FEEL if proposal(replace(look, seen_by="film"), usual, out) else "none")


def _depth_in(slot: str) -> Callable[[Facts, str], Value | None]:
    """Return the function that reads a slot's answer, which is logged under its change's name."""
    def of(got: Facts, side: str) -> Value | None:
        """Return where the rounding starts in this slot."""
        return got[f"{got[slot]}_depth"]

    return of


def _seen(name: str) -> Condition:
    """Return the condition that rounding was seen in this set, so that its depth is asked."""
    return fact(f"{name}_rounds").one_of("little", "some", "clearly")


# The changes are compared with the depth of the plain set: without one there is nothing to compare.
ROUNDED = _seen("plain") & fact("plain_depth").known
ANY_CHANGE_TRIED = ROUNDED & Some(tuple(fact(f"{slot}_depth").known for slot in SLOTS))
LOOK_DONE = done()
LOAD_FILMED = fact("load_film").is_("yes")
# Some rounding at depth is normal, in trained lifters too: McKean 2010 J Strength Cond Res 24:2731 (read).
COMMON_ROUNDING = fact("plain_rounds").one_of("little", "some") & fact("plain_depth").one_of("parallel", "below")

FLOW = flow_of(
    PROTOCOL, at_start=drawn_order, rests_on=SLOTS, command=("squat film", "film my squat"),
    facts=(Fact("set_up", of=_set_up), Fact("proposed", values=(*NAMES, HELPED_BY_FEEL, "none"), of=_proposed),
           *(Fact(f"{slot}_depth", values=tuple(option.value for option in STARTS.options), of=_depth_in(slot)) for slot in SLOTS)),
    steps=(
        watched_by("A few sets without load, seen from the side: does the back round, and where? How will you see them? Shirt tucked in."
                   "{film_tip}"),
        Tell(with_numbers("{set_squats:Count squats} a set, in this order; copy it if you like.\n1. Plain: usual stance, depth and speed. "
                          "Stop if anything hurts.\n2. {change_1_say}"), picture="view_{seen_by}"),
        Tell("3. {change_2_say}\n4. {change_3_say}", picture="squat_{change_1}"),
        did("{fourth}Last: plain again. {set_up}", "Stop at once if anything hurts.", ("plain", "Plain hurt"),
            *((name, f"{title} hurt") for name, title in TITLES.items()), picture=PROTOCOL.picture),
        Ask("plain_rounds", "The first set, plain: does the lower back round, or the hips roll under?", ROUNDS, only_if=LOOK_DONE),
        Ask("plain_depth", "How deep is the thigh when it starts? Parallel: the top of the thigh level with "
            "the floor.", BANDS, only_if=LOOK_DONE & _seen("plain"), picture="squat_bands"),
        Tell("Your back does not round without load, so there is no depth for a change to move. Those sets are left out.",
             only_if=fact("plain_rounds").is_("no")),
        Tell("Then there is no depth to compare with, so the squats with one change are left out. Film from "
             "the side often shows it; you can do this again any day.", only_if=LOOK_DONE & ~ROUNDED & ~fact("plain_rounds").is_("no")),
        Tell("A little rounding at parallel or below is common if nothing hurts. Trained lifters have it too.",
             only_if=ROUNDED & COMMON_ROUNDING),
        *(Ask(f"{slot}_depth", f"{{{slot}_title}}: where does it start now? If you left this set out, tap Skip.", STARTS,
              only_if=ROUNDED & fact(slot).known, log_as=f"{{{slot}}}_depth") for slot in SLOTS),
        Ask("again_depth", "The last set, plain again: where does it start?", STARTS, only_if=ANY_CHANGE_TRIED),
        Run("about_you", ~fact("about_you.load").known & ~NO_BAR, asked="load", checks=True),
        Ask("load_film", "Do you have film of your own working sets, from the side? Only film you have "
            "already: nothing is loaded for this.", YesNo()),
        Ask("load_rounds", "Take the heaviest of those sets. Does the lower back round, or the hips roll "
            "under?", ROUNDS, only_if=LOAD_FILMED),
        Ask("load_depth", "How deep is the thigh when it starts there?", BANDS,
            only_if=LOAD_FILMED & _seen("load"), picture="squat_bands"),
        Ask("load_kg", "How heavy was the bar on that film, plates and all, in {unit}?", KILOS,
            only_if=LOAD_FILMED),
        Ask("clean_kg", "And the heaviest set on film in which it does not round earlier than without load, in {unit}? None: tap Skip.",
            KILOS, only_if=LOAD_FILMED & _seen("load")),
        Tell("To keep one of the videos for your coach, say “film”.", fact("seen_by").is_("film") & fact("coach").is_("yes") & LOOK_DONE),
        Do(Find("setup.luck", "", "new trials, so nothing is luck yet"), ANY_CHANGE_TRIED),
        Do(Find("setup.proposed", "{proposed}", "the change that moved the rounding most for the least fuss (choice)"), ANY_CHANGE_TRIED),
    ),
)
