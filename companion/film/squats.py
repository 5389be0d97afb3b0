"""Squats found in the angles: standing still gives zero, the thigh gives the depth, ribs against pelvis the bend of the lower back."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from scipy.signal import find_peaks  # type: ignore[import-untyped]

from companion.film.angles import TAPED_UPRIGHT, Angles
from companion.film.cards import ON_BODY, Place
from companion.film.footage import Floats

STILL_SPEED: Final = 8.0
"""Degrees a second of the thigh below which somebody stands still (choice; breathing and sway stay under 3)."""
STILL_SECONDS: Final = 0.4
SPEED_OVER: Final = 0.3
"""Seconds over which a speed is taken (choice): from frame to frame, at 60 a second, a card's usual error would be taken for movement."""
LEAST_SAMPLES: Final = 4
"""Samples of each card within a stretch of standing, of which zero is the median."""
STANDING_WITHIN: Final = 10.0
"""Degrees of the thigh within which a lifter is standing between squats (choice)."""
LEAST_DEPTH: Final = 40.0
"""Degrees that the thigh goes down at least for it to count as a squat (choice)."""
THIGH_LAGS: Final = 1.9
"""Degrees that the thigh's card stays behind the bone as the hip bends by ``HIP_BENT``: by skin markers the hip is read as 1.9° less bent
than by X-rays, walking (Fiorentino 2017 Gait Posture 55:184); told by the row film_thigh_lags."""
HIP_BENT: Final = 130.0
"""Degrees of a fully bent hip (choice)."""
APART: Final = 0.6
"""Seconds between the lowest points of two squats at least (choice)."""


@dataclass(frozen=True, slots=True)
class Curves:
    """A film's angles from standing still, in degrees.

    ``depth`` of the thigh (90: level with the floor); ``pelvis``, ``ribs`` and ``shank`` leaning forward; ``exact``: depth and flexion as
    they were read, unsmoothed, since smoothing would round off the kink that is looked for. ``standing``: where in ``times`` zero was
    taken; ``faces``: 1 if the lifter looks to the right of the picture, -1 to the left.
    """

    times: Floats
    depth: Floats
    pelvis: Floats
    ribs: Floats
    shank: Floats
    exact: tuple[Floats, Floats]
    standing: tuple[int, int]
    faces: int

    @property
    def flexion(self) -> Floats:
        """The bend of the lower back, by ribs against pelvis; rounding is above 0."""
        return self.ribs - self.pelvis

    @property
    def hip(self) -> Floats:
        """The fold of the hip, by pelvis against thigh."""
        return self.pelvis + self.depth


@dataclass(frozen=True, slots=True)
class Descent:
    """One squat on its way down: where it begins and ends in the film's samples, its depth at the lowest point (deg), and its speed over
    the middle of the way (deg a second)."""

    begin: int
    bottom: int
    deepest: float
    speed: float


def still_stretches(angles: Angles) -> list[tuple[int, int]]:
    """Return the stretches in which every card that is seen keeps still, as first and last frame."""
    seen = [angles.smooth[place] for place in ON_BODY if np.isfinite(angles.smooth[place]).any()]
    if not seen:
        return []
    at, reach = np.arange(len(angles.times)), max(1, round(SPEED_OVER / 2 * angles.rate))
    early, late = np.maximum(at - reach, 0), np.minimum(at + reach, len(at) - 1)
    speeds = np.stack([np.abs(values[late] - values[early]) / (angles.times[late] - angles.times[early]) for values in seen])
    # a card that an arm hides for a moment does not break the stretch, as long as two others tell
    still = (np.nan_to_num(speeds, nan=0.0).max(axis=0) < STILL_SPEED) & (np.isfinite(speeds).sum(axis=0) >= min(2, len(seen)))
    edges = np.flatnonzero(np.diff(np.concatenate([[0], still.astype(int), [0]])))
    return [(int(begin), int(end)) for begin, end in zip(edges[::2], edges[1::2], strict=True)
            if angles.times[end - 1] - angles.times[begin] >= STILL_SECONDS
            and all(np.isfinite(values[begin:end]).sum() >= LEAST_SAMPLES for values in seen)]


def standing_still(angles: Angles) -> tuple[int, int] | None:
    """Return the first stretch in which the lifter stands still with the cards as they were taped; the first still one if none is upright;
    None if there is none."""
    long = still_stretches(angles)
    upright = [at for at in long if all(abs((float(np.nanmedian(angles.smooth[place][slice(*at)])) + 180) % 360 - 180) < TAPED_UPRIGHT
                                        for place in ON_BODY if np.isfinite(angles.smooth[place]).any())]
    return next(iter(upright or long), None)


def curves_of(angles: Angles, standing: tuple[int, int]) -> Curves:
    """Return the angles from standing. Which way the lifter faces follows from the thigh, whose top can only go back in a squat."""
    def zeroed(values: Floats) -> Floats:
        """Return angles from their median while standing."""
        within = values[slice(*standing)]
        return np.asarray(values - (np.nanmedian(within) if np.isfinite(within).any() else np.nan))

    smooth: dict[Place, Floats] = {place: zeroed(angles.smooth[place]) for place in ON_BODY}
    raw: dict[Place, Floats] = {place: zeroed(angles.raw[place]) for place in ON_BODY}
    moved = smooth["thigh"][np.isfinite(smooth["thigh"])]
    faces = -1 if len(moved) and abs(moved.max()) > abs(moved.min()) else 1
    # clockwise in the picture is forward for somebody who looks to the right
    return Curves(angles.times, -faces * smooth["thigh"], faces * smooth["pelvis"], faces * smooth["ribs"], faces * smooth["shank"],
                  (-faces * raw["thigh"], faces * (raw["ribs"] - raw["pelvis"])), standing, faces)


def by_the_bone(curves: Curves) -> Curves:
    """Return the curves of a squat with the thigh's known lag behind its bone taken off the depth."""
    lag = THIGH_LAGS * np.nan_to_num(curves.pelvis + curves.depth) / HIP_BENT
    return replace(curves, depth=curves.depth + lag, exact=(curves.exact[0] + lag, curves.exact[1]))


def descents(curves: Curves) -> tuple[Descent, ...]:
    """Return the squats, each from the last moment of standing to its lowest point."""
    depth = np.nan_to_num(curves.depth, nan=-1.0)
    step = float(curves.times[1] - curves.times[0])
    bottoms, _ = find_peaks(depth, height=LEAST_DEPTH, prominence=LEAST_DEPTH * .75, distance=max(1, round(APART / step)))
    found: list[Descent] = []
    for bottom in bottoms.tolist():
        before = np.flatnonzero(np.isfinite(curves.depth[:bottom]) & (curves.depth[:bottom] < STANDING_WITHIN))
        if not len(before):
            continue
        begin, deepest = int(before[-1]), float(depth[bottom])
        way = curves.depth[begin:bottom + 1]
        middle = np.flatnonzero((way > deepest * .25) & (way < deepest * .75))
        speed = float((way[middle[-1]] - way[middle[0]]) / (step * max(1, middle[-1] - middle[0]))) if len(middle) > 1 else float("nan")
        found.append(Descent(begin, bottom, deepest, speed))
    return tuple(found)
