"""Tests by film: the shin's lean at the wall, the height of a straight leg, where the pelvis begins to turn as the hip folds, and how still
pelvis and lower back are kept on hands and knees.

Each film begins still, which gives zero; so neither how a card was taped nor the camera's roll counts. A photo of one of the first three
has no such beginning: it is held against the wall's card, and is as far off as the card is taped askew.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, Literal

import numpy as np
from scipy.signal import find_peaks  # type: ignore[import-untyped]

from companion.film.angles import LEAST_FRAMES, Angles, local_maps, turning
from companion.film.cards import Place
from companion.film.footage import Floats, Footage, Unreadable
from companion.film.measure import begun_still, hidden
from companion.film.onset import Onset, binned, is_whole, onset_of
from companion.film.squats import curves_of, descents, still_stretches

Movement = Literal["shin", "leg", "fold", "trunk"]

CARDS_OF: Final[dict[Movement, tuple[Place, ...]]] = {"shin": ("shank",), "leg": ("shank",), "fold": ("pelvis", "thigh"),
                                                      "trunk": ("ribs", "pelvis")}
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
ON_ALL_FOURS: Final = 40.0
"""Degrees within which the ribs are level on hands and knees (choice)."""
NOT_DOWN: Final = "I find no still moment on hands and knees. Card 5 upright behind you; keep still two seconds, then the arm and the leg."
NO_PHOTO: Final = "A photo shows no stillness. Send a film: two seconds on hands and knees first, then the arm and the leg."
ASKEW: Final = "By that photo the card lies across the bone, or past 75°, where photos say too little. Arrow up, or a film."
PHOTO_MOST: Final = 75.0
"""Degrees past which one photo does not tell a leg short of upright from one past it (choice; the same bound as the heel's height has)."""
BENT: Final = "The knee bends by {by:.0f}° on the way up. Keep it straight, stop where it would bend, and film again."


@dataclass(frozen=True, slots=True)
class MoveFilm:
    """A film of one of these tests, read.

    ``turns``: the furthest turn of each try in degrees from still, at most three; of the hip fold that of the thigh; of the bird dog
    that of the pelvis and that of the ribs against it. ``onset``: of the hip fold, where on the thigh's way the pelvis begins to turn.
    ``photo``: it is one picture without a still beginning.
    """

    move: Movement
    turns: tuple[float, ...]
    onset: Onset | None = None
    photo: bool = False


def moved(footage: Footage, move: Movement) -> MoveFilm:
    """Return what a film of one of the tests shows. Raises Unreadable with the one reason where it can't carry a result."""
    if len(footage.times) < LEAST_FRAMES:
        return MoveFilm(move, (_in_a_photo(footage, move),), photo=True)
    angles, still = begun_still(footage, CARDS_OF[move], NO_STILL)
    if move == "trunk":
        return _kept_still(angles)
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
    return MoveFilm(move, tuple(_furthest(turn, at) for at in tries)[:MOST_REPEATS])


def _in_a_photo(footage: Footage, move: Movement) -> float:
    """Return the angle that one photo shows: the shin from upright, the leg from the floor, or the thigh against the pelvis."""
    if move == "trunk":
        raise Unreadable(NO_PHOTO)
    for place in CARDS_OF[move] if move == "fold" else (*CARDS_OF[move], "wall"):
        if footage.share(place) == 0:
            raise Unreadable(hidden(place))
    wall = local_maps(footage.corners["wall"][:1])

    def turn(place: Place) -> float:
        """Return how far a card is turned, in the wall's own perspective where its card is seen."""
        maps = local_maps(footage.corners[place][:1])
        return float(turning(np.asarray(np.linalg.solve(wall, maps) if footage.share("wall") else maps, dtype=np.float64))[0])

    def apart(one: float, other: float) -> float:
        """Return the angle between two turns, 0 to 180."""
        return abs((one - other + 180) % 360 - 180)

    if move == "fold":
        return apart(turn("pelvis"), turn("thigh"))
    shin = turn("shank")
    if move == "leg" and footage.share("thigh") and (bent := apart(shin, turn("thigh"))) > KNEE_BENT:
        raise Unreadable(BENT.format(by=bent))
    found = apart(shin, 0) - (90 if move == "leg" else 0)  # the card's top is towards the hip, so a leg that lies is turned by 90
    if not 0 <= found <= PHOTO_MOST:
        raise Unreadable(ASKEW)
    return found


def _kept_still(angles: Angles) -> MoveFilm:
    """Return how far the pelvis turned on hands and knees, and the ribs against it, from the first still moment there to the last: before
    and after it somebody gets down and up again."""
    level = np.abs(np.abs((angles.smooth["ribs"] + 180) % 360 - 180) - 90) < ON_ALL_FOURS
    down = replace(angles, smooth={place: np.where(level, values, np.nan) for place, values in angles.smooth.items()})
    still = still_stretches(down)
    if not still:
        raise Unreadable(NOT_DOWN)
    pelvis, ribs = ((values - np.nanmedian(values[slice(*still[0])]))[still[0][0]:still[-1][1]]
                    for values in (down.smooth["pelvis"], down.smooth["ribs"]))
    return MoveFilm("trunk", tuple(float(np.nanmax(np.abs(one))) for one in (pelvis, ribs - pelvis)))


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
    return MoveFilm("fold", tuple(one.deepest for one, _ in whole)[:MOST_REPEATS], onset)
