"""The lifter's own best squat: the change that moved the rounding, checked by a small experiment, and what it gives them for now.

One trial of each change may be luck: the likeliest is picked from five noisy looks. So it is checked, plain, changed, plain, changed, and
counts only if every changed squat rounds later than every plain one and the gain exceeds the spread of the repeats. Sets without load
earn no kilos, and a set-up brings no pain or pinch, then or the next morning. The order, the rule and its numbers are our choice; that
heels, stance or tempo lessen rounding is common practice, and each is judged by what it does for this lifter.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from statistics import fmean
from typing import Final

from companion.screening.depth import BAND_WORDS, KEEP_ABOVE, NEVER_STARTS, Band, band_of
from companion.screening.evidence import EMPTY_BAR
from companion.screening.pairs import LOOK, ReferenceSquat, look_of
from companion.screening.protocol import GOING_DOWN
from companion.screening.readings import NumberFormat, metric
from companion.screening.screen import Screen
from companion.screening.sources import SOURCES

HEEL_LIFT: Final = SOURCES["heel_lift"].value[0]  # cm
HEEL_LIFT_WORDS, HELD_WEIGHT_WORDS = (f"{low:g} to {high:g} {SOURCES[name].unit}" for name in ("heel_lift", "held_weight")
                                      for low, high in (SOURCES[name].value,))


@dataclass(frozen=True, slots=True)
class SquatChange:
    """One change to the plain squat: what it is called, how it is done ("{rise}" and "{weight}" in the lifter's units), its caution."""

    name: str
    words: str
    say: str
    caution: str


CHANGES: Final = {one.name: one for one in (
    SquatChange("slow", f"{GOING_DOWN} down", f"count {GOING_DOWN} on the way down, come up as usual",
                "Keep breathing. Stop if anything hurts."),
    SquatChange("wide", "feet a hand's width wider", "each foot a hand's width further out",
                "Knees over the toes. Stop if hip, groin, knee or anything else hurts."),
    SquatChange("heels", "heels on {rise}", "both heels on thin books or plates, {rise} high, flat and steady",
                "Find your balance first. Stop if you wobble or anything hurts."),
    SquatChange("front", "the weight in front", "hold {weight} straight out at chest height; a bag will do",
                "Keep it light. Stop if back, shoulder or anything else hurts."))}
"""By name, the one with the least fuss first: slower, stance, heels, place of the weight."""

CHANGE_PAIRS: Final = tuple("+".join(pair) for pair in combinations(CHANGES, 2))
NAMES: Final = (*CHANGES, *CHANGE_PAIRS)
"""Every set-up there can be: one change, or two together."""
HELPED_BY_FEEL: Final = "by_feel"
"""What is proposed where a change helped in a squat that nobody saw: to look at it again."""


@dataclass(frozen=True, slots=True)
class SetUp:
    """A set-up to squat with for now. ``change``: of ``NAMES``. ``start``: the rank of the band in which the back starts to round with it
    (``depth.start_of``); None where a coach set it and nobody looked. ``plain``: the same without it. ``set_by``:
    the coach who set it and until when, in words."""

    change: str
    start: int | None = None
    plain: int | None = None
    set_by: str = ""

    @property
    def whose(self) -> str:
        """The coach who set it and until when, as a sentence to add; "" for one that was checked."""
        return f" {self.set_by[:1].upper()}{self.set_by[1:]}." if self.set_by else ""


@dataclass(frozen=True, slots=True)
class Checked:
    """The outcome of the experiment: the gain in bands, the widest spread of repeats, and whether it counts."""

    gain: float
    spread: int
    counts: bool
    start: int


def parts(change: str) -> tuple[SquatChange, ...]:
    """Return the single changes of a set-up; none for a name that is not known."""
    return tuple(CHANGES[name] for name in change.split("+") if name in CHANGES)


def called(change: str, show: NumberFormat = metric) -> str:
    """Return a set-up in words: "three seconds down and heels on 2 cm"; "" for none."""
    return " and ".join(one.words for one in parts(change)).format(rise=show(HEEL_LIFT, "cm"), weight="")


def proposal(look: ReferenceSquat, usual: Band | None = None, ruled_out: Collection[str] = ()) -> str:
    """Return the set-up worth checking, "" for none: the change that moved the start most, of equal ones the one with the least fuss.

    Where it alone does not clear the usual depth and a second one helped too, the two together. Only squats that somebody saw count,
    and none that brought a pinch.
    """
    gains = {name: gain for name in CHANGES if name not in ruled_out and (gain := look.moved(name) or 0) > 0}
    if not gains or look.seen_by not in ("film", "mirror", "friend"):
        return ""
    best, *rest = sorted(gains, key=lambda name: -gains[name])
    start, wanted = look.start(best), (usual or Band.BELOW).rank
    pair = "+".join(sorted((best, rest[0]), key=list(CHANGES).index)) if rest else ""
    return pair if pair and pair not in ruled_out and start is not None and start <= wanted else best


def checked(plain: Sequence[int], changed: Sequence[int]) -> Checked:
    """Return what the looks at the plain and the changed squat show, as ranks of the band where the rounding starts.

    Those of the squat look count too. With no effect at all, three changed squats would all come after four plain ones in one of 35
    orders, two after four in one of 15 (fewer where bands tie).
    """
    gain = fmean(changed) - fmean(plain)
    spread = max(max(plain) - min(plain), max(changed) - min(changed))
    return Checked(gain, spread, min(changed) > max(plain) and gain > spread, min(changed))


def without(look: ReferenceSquat, facts: Mapping[str, object], change: str) -> dict[str, str]:
    """Return what is known of set-ups once one is out: all that are out, and the one still worth checking, "none" for none."""
    out = list(dict.fromkeys((*filter(None, str(facts.get("setup.out", "")).split(",")), change)))
    return {"outs": ",".join(out), "left": proposal(look, band_of(str(facts.get("about_you.usual_depth", ""))), out) or "none"}


def depth_with(setup: SetUp, usual: Band | None) -> Band | None:
    """Return the deepest band to squat to with a set-up that was looked at: one above where the rounding starts, never below the usual
    depth; None where it starts at the highest band or nobody looked."""
    if setup.start is None or setup.start == 0:
        return None
    return min(list(Band)[max(setup.start - KEEP_ABOVE, 0)], usual or Band.BELOW)


def squat_for_now(setup: SetUp, depth: Band | None, most: float | None, usual: float | None, show: NumberFormat = metric, *,
                  body: bool = False) -> str:
    """Return the squat for now in words: what is changed, how deep, how heavy, and the trial that shows it. ``depth``, ``most``: what
    stands, the load in kg; ``usual``: the load they train with, past which no trial without load leads; ``body``: for body weight only."""
    light = most is not None and most < EMPTY_BAR
    light_trial, as_tried = ("", "") if setup.start is None else (": the trial had no load", ", as in the trial")
    load = ("body weight only" if body else f"begin with the empty bar{light_trial}" if "front" in setup.change and not light
            else f"no more than your {show(usual, 'kg')}{light_trial}" if usual and (most is None or usual <= most)
            else f"at most {show(most, 'kg')}" if most is not None else f"body weight{as_tried}")
    down = f", down to {BAND_WORDS[depth]}" if depth else ""
    shown = (f" In the check it rounded at: {start_words(setup.start)}. Plain: {start_words(setup.plain)}."
             if setup.start is not None and setup.plain is not None else "")
    return f"Your squat for now: {called(setup.change, show)}, all else as usual{down}. Load: {load}.{shown}{setup.whose}"


def without_luck(screen: Screen, luck: str) -> Screen:
    """Return the screen without the trial of a single change that did not hold in its check; of two together nothing follows for one."""
    look = look_of(screen)
    if luck not in CHANGES or LOOK.id not in screen:
        return screen
    left = replace(look, **{f"{luck}_{asked}": None for asked in ("rounds", "depth")})
    return replace(screen, records={**screen.records, LOOK.id: left})


def setup_from(facts: Mapping[str, object]) -> SetUp | None:
    """Return the set-up to squat with, from what was found: a coach's, else the one that was checked and left nothing the morning after;
    None for none."""
    if pin := str(facts.get("setup.pin", "")):
        return SetUp(pin, set_by=str(facts.get("setup.set_by", "")))
    if facts.get("setup.state") != "good" or not (change := str(facts.get("setup.change", ""))):
        return None
    start, plain = (rank_of(str(facts.get(f"setup.{name}", ""))) for name in ("start", "plain"))
    return SetUp(change, start, plain)


def start_words(rank: int) -> str:
    """Return where a rounding starts, in words."""
    return "not at all" if rank >= NEVER_STARTS else BAND_WORDS[list(Band)[rank]]


def rank_of(word: str) -> int | None:
    """Return the rank of an answer to "where does it start": a band, or "no" for not at all; None for anything else."""
    band = band_of(word)
    return NEVER_STARTS if word == "no" else band.rank if band is not None else None
