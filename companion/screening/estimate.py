"""The geometric estimate for one lifter: the depth at which length alone would start the tuck, and the changes that move it most.

It is called an estimate everywhere. It is no row of the evidence table: it makes nothing likely and rules nothing
out, and it is never a reason to go deeper or heavier.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot
from statistics import fmean
from typing import Final, Literal, cast

from companion.screening.about import About
from companion.screening.body import Bar
from companion.screening.depth import BAND_WORDS, NEVER_STARTS, Band
from companion.screening.errors import Errors
from companion.screening.geometry import SHIN_BY_TAPE_SD, furthest_reach, shin_from_distance
from companion.screening.pairs import ReferenceSquat, ankles, folds, look_of
from companion.screening.readings import NumberFormat, SourceStanding, mean_of, metric
from companion.screening.screen import Screen
from companion.screening.setups import HEEL_LIFT
from companion.screening.sources import SOURCES, value
from companion.screening.tuck import MASS, MASS_SD, Depths, Lifter, Spread, Squat, depths_of, draws_of, explained, gained

PointsAt = Literal["length", "strength_or_control", "open"]

# The bands as thigh angles, degrees below level (choice): the eye calls 5 degrees either way parallel.
BAND_EDGES: Final = dict(zip((Band.WELL_ABOVE, Band.A_LITTLE_ABOVE, Band.PARALLEL, Band.BELOW),
                             pairwise(SOURCES["depth_bands"].value), strict=True))
BY_FEEL: Final = value("depth_by_feel_sd")  # degrees
FOLD_SD: Final = value("fold_sd")  # degrees
PLACED_SD: Final = value("level_placed_sd")  # degrees
EXPLAINS_FROM: Final = value("length_explains")  # probability from which length explains the depth; under 1 minus this it does not
MOST_UNBALANCED: Final = value("unbalanced_most")  # of the draws
LITTLE: Final = value("little_help")  # degrees
HALF_A_BAND: Final = value("half_a_band")  # degrees
TRIED_TURN, TRIED_ANKLE, TRIED_HIP = SOURCES["changes_tried"].value  # degrees

FURTHEST: Final = value("knee_to_wall_furthest")  # cm
HELD_WEIGHT: Final = fmean(SOURCES["held_weight"].value)  # kg
_SEEN_AT: Final = {band: f"at {words}" if band == Band.PARALLEL else words for band, words in BAND_WORDS.items()}
ESTIMATE_CAUTION: Final = "Only an estimate. By itself it makes nothing likely. It is never a reason to go deeper or heavier."
HALF: Final = (
    f"In one study, ankle and hip range made up {value('depth_explained_men') * 100:g} % of squat depth in men. In women, ankle range and "
    f"shin strength made up {value('depth_explained_women') * 100:g} % (Kim 2015). The rest is open.")


@dataclass(frozen=True, slots=True)
class Help:
    """One change, the degrees by which it would move the depth, and the lifter's own trial of it.

    ``squat``: its name in the squat look, "" if it has none. ``trial``: bands moved, None if it does not count.
    ``agrees``: None if there is nothing to compare.
    """

    name: str
    gain: float
    squat: str = ""
    trial: int | None = None
    agrees: bool | None = None


@dataclass(frozen=True, slots=True)
class DepthEstimate:
    """The depth at which length alone would start the tuck of an unloaded squat, and its consequences. ``words``: sentences.

    ``explains``: the probability that length alone explains the depth seen, None if none was seen; ``points_at``: the cause
    it hints at. ``at_least``: the hip folded as far as the test goes, so its range may be greater. ``helps``: the greatest
    gain first. ``under_bar``: the depths with the lifter's own bar and load, None if these are not known.
    """

    depths: Depths
    seen: Band | None
    explains: float | None
    points_at: PointsAt
    at_least: bool
    helps: tuple[Help, ...]
    under_bar: Depths | None
    words: tuple[str, ...]
    standing: SourceStanding = "choice"


@dataclass(frozen=True, slots=True)
class NoEstimate:
    """The reason for no estimate: a missing input ("height", "ankle", "fold"), or "balance"."""

    reason: Literal["height", "ankle", "fold", "balance"]
    words: str


_NONE: Final = {
    "height": NoEstimate("height", "I can't estimate the depth: your height is not known."),
    "ankle": NoEstimate("ankle", "I can't estimate the depth: that takes the knee to wall on at least one side."),
    "fold": NoEstimate("fold", "I can't estimate the depth: that takes the hip's angle from film, in the hip fold test, without a pinch."),
    "balance": NoEstimate("balance", "I can't estimate the depth: with these numbers the model finds no posture in balance."),
}


def depth_estimate(screen: Screen, about: About, errors: Errors | None = None, show: NumberFormat = metric) -> DepthEstimate | NoEstimate:
    """Return the estimate for one lifter, or the reason for none.

    Lengths that were measured replace their shares of the height. The stiffer ankle and the hip that folds less count. The squat is
    that of the squat look: no load, arms anywhere between hanging and straight out.
    """
    if about.height is None or not 120 <= about.height <= 230:
        return _NONE["height"]
    ankle = stiffer_ankle(screen, about.height, errors or Errors(about.sex))
    if ankle is None:
        return _NONE["ankle"]
    fold, at_least = _fold(screen)
    if fold is None:
        return _NONE["fold"]
    mass = Spread(MASS, MASS_SD) if about.mass is None else Spread(about.mass)
    lifter = Lifter(about.height, ankle, fold, mass, shank=about.shin, thigh=about.thigh, trunk=about.trunk)
    drawn = draws_of(lifter, Squat())
    depths = depths_of(drawn)
    if depths.unbalanced > MOST_UNBALANCED:
        return _NONE["balance"]
    look = look_of(screen)
    seen, chance = _seen(look), None
    if seen is not None:
        blur = 0.0 if look.seen_by in ("film", "mirror", "friend") else BY_FEEL
        chance = explained(drawn, *BAND_EDGES[seen], blur=blur)
    helps = tuple(sorted((_help(name, gained(drawn, draws_of(lifter, squat)), trial, look)
                          for name, squat, trial in _changes(show)), key=lambda one: -one.gain))
    points_at = _points_at(chance, at_least)
    return DepthEstimate(depths, seen, chance, points_at, at_least, helps, _under_bar(lifter, about),
                         (*_depth_words(depths, at_least), ESTIMATE_CAUTION, *_seen_words(seen, chance, points_at, at_least),
                          *_help_words(helps), HALF))


def stiffer_ankle(screen: Screen, height: float, errors: Errors) -> Spread | None:
    """Return the shin's angle on the stiffer side; estimated from the distance only if no angle was measured, and from none that no shin of
    this height reaches: the height may have been told or put right after the test."""
    sides = []
    for taken in ankles(screen):
        if taken[0].unit == "deg":
            sem = errors.of(taken[0].test, taken[0].method).sem
            sides.append(Spread(mean_of(taken), hypot(sem, PLACED_SD)))
        elif mean_of(taken) <= min(FURTHEST, furthest_reach(height)):
            sides.append(Spread(shin_from_distance(mean_of(taken), height), SHIN_BY_TAPE_SD))
    return min(sides, key=lambda spread: spread.value, default=None)


def _fold(screen: Screen) -> tuple[Spread | None, bool]:
    """Return the hip fold's angle on the side that folds less, and True if it is only a lower bound.

    If the squat's fold was reached with the back still, the range is that much or more. A fold that a pinch ended is left
    out. A side on which the back moved decides over one on which it did not.
    """
    ended = folds(screen)
    angles = ended["back"] or ended["fold"]
    return (Spread(min(angles), FOLD_SD), not ended["back"]) if angles else (None, False)


def _seen(look: ReferenceSquat) -> Band | None:
    """Return the band in which the plain squat starts to round; None if it does not round or that is not known."""
    start = look.start("plain")
    return None if start is None or start == NEVER_STARTS else list(Band)[start]


def _points_at(chance: float | None, at_least: bool) -> PointsAt:
    """Return the cause that the chance points to; with a lower bound only, length can't be said to explain it."""
    if chance is None:
        return "open"
    if chance >= EXPLAINS_FROM:
        return "open" if at_least else "length"
    return "strength_or_control" if 1 - chance > EXPLAINS_FROM else "open"


def _changes(show: NumberFormat) -> tuple[tuple[str, Squat, str], ...]:
    """Return the changes that could help: in words, as a squat, and by the name of their trial in the squat look."""
    return ((f"{show(HEEL_LIFT, 'cm')} under the heels", Squat(lift=HEEL_LIFT), "heels"),
            (f"feet {TRIED_TURN:g}° further out", Squat(turned=TRIED_TURN), "wide"),
            ("a light weight held in front", Squat("arms", HELD_WEIGHT), "front"),
            (f"{TRIED_ANKLE:g}° more ankle", Squat(ankle=TRIED_ANKLE), ""),
            (f"{TRIED_HIP:g}° more in the hip", Squat(fold=TRIED_HIP), ""))


def _help(name: str, gain: float, squat: str, look: ReferenceSquat) -> Help:
    """Return one change compared with its trial. They disagree if a gain of half a band or more showed nothing, if next to no
    gain showed a band, if less than half a band showed two, or if the trial went the other way (choice).
    """
    moved = look.moved(squat) if squat else None
    if moved is None:
        return Help(name, gain, squat)
    if moved < 0:
        agrees = gain < LITTLE
    elif moved == 0:
        agrees = gain < HALF_A_BAND
    else:
        agrees = gain >= (LITTLE if moved == 1 else HALF_A_BAND)
    return Help(name, gain, squat, moved, agrees)


def _under_bar(lifter: Lifter, about: About) -> Depths | None:
    """Return the depths with the lifter's own bar and load; None if these are not known or no posture balances."""
    if about.bar not in ("high", "low", "front") or about.load is None or about.mass is None:
        return None
    depths = depths_of(draws_of(lifter, Squat(cast(Bar, about.bar), about.load)))
    return depths if depths.unbalanced <= MOST_UNBALANCED else None


def _at(depth: float) -> str:
    """Return a thigh angle in words, rounded to 5 degrees: the estimate is no better."""
    whole = 5 * round(depth / 5)
    return "parallel" if not whole else f"{abs(whole)}° {'below' if whole > 0 else 'above'} parallel"


def _depth_words(depths: Depths, at_least: bool) -> tuple[str, ...]:
    """Return the sentence on the depth at which length alone would start the tuck."""
    start = "at the earliest " if at_least else ""
    if depths.never > 0.5:
        return (f"Estimate: length alone would probably not start a tuck at all. 80 % range: {start}from {_at(depths.low)}.",)
    return (f"Estimate: length alone would start the tuck {start}at about {_at(depths.median)}. "
            f"80 % range: {_at(depths.low)} to {_at(depths.high)}.",)


def _seen_words(seen: Band | None, chance: float | None, points_at: PointsAt, at_least: bool) -> tuple[str, ...]:
    """Return the sentence that compares the depth seen with the estimate; none if no depth was seen."""
    if seen is None or chance is None:
        return ()
    meaning = {"length": "Length can explain it.", "open": "That leaves it open.",
               "strength_or_control": "It starts earlier: a hint at strength or control."}[points_at]
    how = "at most" if at_least else "about"
    percent = min(max(5 * round(chance * 20), 5), 95)
    return (f"You saw it start {_SEEN_AT[seen]}. The estimated chance that length alone explains that is {how} {percent} %. "
            f"{meaning}",)


def _help_words(helps: Sequence[Help]) -> Iterator[str]:
    """Yield the sentences on the most helpful changes, and on trials that contradict the estimate."""
    best = [one for one in helps if one.gain >= LITTLE]
    if best:
        said = ", ".join(f"{one.name} ({one.gain:.0f}°)" for one in best[:3])
        yield f"By the estimate, some things would make it start later. First {said}."
    for one in helps:
        if one.agrees is False:
            assert one.trial is not None
            bands = f"{abs(one.trial)} step{'' if abs(one.trial) == 1 else 's'}"
            showed = "no change" if not one.trial else f"{bands} {'later' if one.trial > 0 else 'earlier'}"
            expects = f"about {one.gain:.0f}° deeper" if one.gain >= LITTLE else "next to no change"
            yield (f"{one.name[0].upper()}{one.name[1:]}: the estimate expects {expects}, your trial showed {showed}. "
                   "Your trial counts for more.")
