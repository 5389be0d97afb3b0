"""From footage to a result, or the one reason why a film can't carry it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from companion.film.angles import Angles, angles_of
from companion.film.cards import BY_PLACE, ON_BODY, Place
from companion.film.footage import Footage, Unreadable
from companion.film.onset import Curve, Onset, binned, is_whole, onset_of
from companion.film.squats import STANDING_WITHIN, Curves, Descent, by_the_bone, curves_of, descents, standing_still

LEAST_SEEN: Final = 0.5
"""The share of frames in which each card must be found for a film to be read at all (choice)."""
MOST_SLIPPED: Final = 8.0
"""Degrees between the standing before and after the squats, from which a card has come off its place (choice)."""

MISSHAPEN: Final = 3.0
"""Degrees off its usual shape from which a card on the trunk is misread: twice the goal for an angle's error (choice)."""
MOST_MISSHAPEN: Final = 0.25
"""The part of a squat's way down, as frames, in which a card may be misread for the squat to count (choice)."""

NO_STANDING: Final = "I found no moment of standing still. Start the film, stand still for two seconds, then squat."
NO_SQUAT_SEEN: Final = "I see the cards but no squat: the thigh never goes down by 40°. Send the film that has the squats in it."
TOO_SHALLOW: Final = "Those squats are too shallow to show where rounding begins. Squat as deep as you usually do."
LOST_ON_THE_WAY: Final = ("Cards are lost or misread on the way down in every squat: they blur as they move. More light, three seconds "
                          "down, and film again.")
SLIPPED: Final = "A card has moved: standing before and after the squats differ by {by:.0f}°. Tape it to tight clothing and film again."


@dataclass(frozen=True, slots=True)
class SquatFilm:
    """A film of squats, read.

    ``squats`` and ``shapes``: those that count, each with its curve of flexion against depth; ``found``: how many there were, the others
    lost a card on the way down; ``onset`` over those that count; ``deepest``: how deep the thigh went (deg); ``amplitude``: the bend of
    the lower back there (deg); ``speed``: going down (deg/s); ``slipped``: standing after against before (deg). Medians over squats.
    """

    angles: Angles
    curves: Curves
    squats: tuple[Descent, ...]
    shapes: tuple[Curve, ...]
    found: int
    onset: Onset
    deepest: float
    amplitude: float
    speed: float
    slipped: float


def hidden(place: Place) -> str:
    """Return the line that says that a card can't be seen."""
    card = BY_PLACE[place]
    return (f"Card {card.number} ({card.title.lower()}) is hidden or out of view most of the time. Hands and clothes off it, side-on to "
            "the phone, and film again.")


def begun_still(footage: Footage, places: Sequence[Place], not_still: str) -> tuple[Angles, tuple[int, int]]:
    """Return the angles and the first and last frame of the still beginning. Raises Unreadable where one of the cards is seldom seen, and
    with ``not_still`` where nothing keeps still."""
    for place in places:
        if footage.share(place) < LEAST_SEEN:
            raise Unreadable(hidden(place))
    angles = angles_of(footage)
    still = standing_still(angles) if angles is not None else None
    if angles is None or still is None:
        raise Unreadable(not_still)
    return angles, still


def measured(footage: Footage) -> SquatFilm:
    """Return what a film of squats shows. Raises Unreadable with the one reason where it can't carry a result."""
    angles, standing = begun_still(footage, ON_BODY, NO_STANDING)
    curves = by_the_bone(curves_of(angles, standing))
    squats = descents(curves)
    if not squats:
        raise Unreadable(NO_SQUAT_SEEN)
    slipped = _slipped(curves, squats)
    if abs(slipped) > MOST_SLIPPED:
        raise Unreadable(SLIPPED.format(by=abs(slipped)))
    drawn = [(one, binned(*(values[one.begin:one.bottom + 1] for values in curves.exact))) for one in squats]
    whole = [(one, shape) for one, shape in drawn if is_whole(shape, one.deepest)
             and np.mean(angles.misshapen[one.begin:one.bottom + 1] > MISSHAPEN) <= MOST_MISSHAPEN]
    if not whole:
        raise Unreadable(LOST_ON_THE_WAY)
    shapes = tuple(shape for _, shape in whole)
    onset = onset_of(shapes)
    if onset is None:
        raise Unreadable(TOO_SHALLOW)
    return SquatFilm(angles, curves, tuple(one for one, _ in whole), shapes, len(squats), onset,
                     float(np.median([one.deepest for one, _ in whole])), float(np.median([shape.flexion[-3:].mean() for shape in shapes])),
                     float(np.median([one.speed for one, _ in whole])), slipped)


def _slipped(curves: Curves, squats: tuple[Descent, ...]) -> float:
    """Return how the bend of the lower back differs between standing after the squats and before, in degrees; 0 where they end the film."""
    after = np.flatnonzero((np.arange(len(curves.times)) > squats[-1].bottom) & (np.abs(curves.depth) < STANDING_WITHIN))
    late = curves.flexion[after]
    return float(np.nanmedian(late)) if np.isfinite(late).sum() >= 5 else 0.0
