"""Three tests by film: the shin's lean at the wall, the height of a straight leg, and where the pelvis begins to turn as the hip folds.

Each film begins still, standing or lying, which gives zero; so neither how a card was taped nor the camera's roll counts.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
from scipy.signal import find_peaks  # type: ignore[import-untyped]

from companion.film.angles import Angles
from companion.film.cards import Place
from companion.film.footage import Floats, Footage, Unreadable
from companion.film.measure import begun_still
from companion.film.onset import Onset, binned, is_whole, onset_of
from companion.film.squats import curves_of, descents

Movement = Literal["shin", "leg", "fold"]

CARDS_OF: Final[dict[Movement, tuple[Place, ...]]] = {"shin": ("shank",), "leg": ("shank",), "fold": ("pelvis", "thigh")}
LEAST_TURN: Final[dict[Movement, float]] = {"shin": 10.0, "leg": 20.0, "fold": 40.0}
"""Degrees that the card must turn for it to count as the movement (choice)."""
HELD_WITHIN: Final = 1.5
"""Degrees under the furthest point that belong to it; their median is what is read, so that a single frame does not decide (choice)."""
MOST_REPEATS: Final = 3

NO_STILL: Final = "I found no still moment. Start the film, keep still for two seconds, then move."
NO_MOVE: Final = "I see the cards but nothing that moves. Send the film that has the movement in it, from its still beginning on."
LOST: Final = "A card is lost on the way in every try. Slower, more light, hands and clothes off the cards, and film again."
KNEE_BENT: Final = 12.0
"""Degrees between thigh and shin, where both cards are seen, from which the knee of a straight leg has bent (choice)."""
BENT: Final = "The knee bends by {by:.0f}° on the way up. Keep it straight, stop where it would bend, and film again."


@dataclass(frozen=True, slots=True)
class MoveFilm:
    """A film of one of these tests, read.

    ``turns``: the furthest turn of each try in degrees from still, at most three; of the hip fold that of the thigh. ``onset``: of the hip
    fold, where on the thigh's way the pelvis begins to turn; None for the others.
    """

    move: Movement
    angles: Angles
    still: tuple[int, int]
    turns: tuple[float, ...]
    onset: Onset | None = None


def moved(footage: Footage, move: Movement) -> MoveFilm:
    """Return what a film of one of the tests shows. Raises Unreadable with the one reason where it can't carry a result."""
    angles, still = begun_still(footage, CARDS_OF[move], NO_STILL)
    if move == "fold":
        return _folded(angles, still)
    turn = _turned(angles, "shank", still)
    tries = _tries(turn, angles, LEAST_TURN[move])
    if not tries:
        raise Unreadable(NO_MOVE)
    if move == "leg":
        bent = np.abs(_turned(angles, "thigh", still)[list(tries)] - turn[list(tries)])
        if np.isfinite(bent).any() and np.nanmax(bent) > KNEE_BENT:
            raise Unreadable(BENT.format(by=np.nanmax(bent)))
    return MoveFilm(move, angles, still, tuple(_furthest(turn, at) for at in tries)[:MOST_REPEATS])


def _turned(angles: Angles, place: Place, still: tuple[int, int]) -> Floats:
    """Return a segment's turn from still in degrees, positive the way it turns most."""
    within = angles.smooth[place][slice(*still)]
    turn = np.asarray(angles.smooth[place] - (np.nanmedian(within) if np.isfinite(within).any() else np.nan))
    return -turn if np.isfinite(turn).any() and np.nanmax(turn) < -np.nanmin(turn) else turn


def _tries(turn: Floats, angles: Angles, least: float) -> tuple[int, ...]:
    """Return the samples at which the turn is furthest, one a try; a hold at the end of the film counts too."""
    ended = np.append(np.nan_to_num(turn, nan=0.0), 0.0)
    peaks, _ = find_peaks(ended, height=least, prominence=least * .75, distance=max(1, round(.6 * angles.rate)))
    return tuple(peaks.tolist())


def _furthest(turn: Floats, at: int) -> float:
    """Return the turn around its furthest point: the median of the unbroken stretch that is nearly as far."""
    near = turn >= turn[at] - HELD_WITHIN
    begin = at - int(np.argmin(near[:at + 1][::-1])) + 1 if not near[:at + 1].all() else 0
    end = at + int(np.argmin(near[at:])) if not near[at:].all() else len(turn)
    return float(np.median(turn[begin:end]))


def _folded(angles: Angles, still: tuple[int, int]) -> MoveFilm:
    """Return where the pelvis begins to turn with the thigh, by the fit that finds the onset of rounding."""
    curves = curves_of(angles, still)
    folds = descents(curves)
    if not folds:
        raise Unreadable(NO_MOVE)
    pelvis = angles.raw["pelvis"]
    turned = -curves.faces * (pelvis - np.nanmedian(pelvis[slice(*still)]))
    drawn = [(one, binned(curves.exact[0][one.begin:one.bottom + 1], turned[one.begin:one.bottom + 1])) for one in folds]
    whole = [(one, shape) for one, shape in drawn if is_whole(shape, one.deepest)]
    onset = onset_of(tuple(shape for _, shape in whole)) if whole else None
    if onset is None:
        raise Unreadable(LOST)
    return MoveFilm("fold", angles, still, tuple(one.deepest for one, _ in whole)[:MOST_REPEATS], onset)
