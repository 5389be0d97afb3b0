"""The depth at which the lower back begins to round: a line of two pieces through flexion against depth, with its interval."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from companion.film.footage import Floats

BIN: Final = 1.5
"""Degrees of depth that one point of a squat's curve stands for, so that slow parts don't weigh more than fast ones."""
MOST_SKIPPED: Final = 4
"""Bins without a sample that are bridged: at 24 frames a second a quick squat's thigh turns by six degrees a frame."""
MOST_HOLE: Final = 10.0
"""Degrees of depth without a point from which a squat tells nothing of its onset (choice; the goal for the onset's error is 6)."""
STARTS_BY: Final = 30.0
LEAST_PIECE: Final = 12.0
"""Degrees of depth at either end within which no kink is looked for: a piece needs points of its own."""
TURN: Final = 10.0
"""Degrees of depth to either side of the kink over which one line bends into the other: no back turns at a point (choice)."""
TRUSTED: Final = 0.5
"""Degrees off the two lines up to which a point counts fully, then the less the further off (Huber 1964): a card blurred by its movement
is read wrong at times. Choice; the usual error of an angle on drawn films."""
REWEIGHINGS: Final = 6
"""How often the points are weighed anew."""
LEAST_BEND: Final = 3.0
"""Degrees that the back must bend beyond its line before the kink, to be called rounding: under that it is within what cards on cloth
show for a still back (choice; twice the goal for an angle's error)."""
LEAST_KINK: Final = 0.1
"""Degrees of flexion a degree of depth by which the second line is steeper at least: less is a back that bends evenly (choice)."""
ONSET_DRAWS: Final = 300
BLOCK: Final = 6
"""Points of a curve whose errors are drawn together, since neighbours err alike."""
CONFIDENCE: Final = 0.95
CARDS_SLIP: Final = 3.0
"""The standard deviation in degrees of the depth that is added for what repeating can't show: cards sliding over bone, taping, the camera's
yaw; told by the row film_cards_slip. Choice after two studies of skin over the thigh (tests/films/README.md)."""


@dataclass(frozen=True, slots=True)
class Curve:
    """One squat down: depth (deg) and flexion (deg), one point a bin."""

    depth: Floats
    flexion: Floats


@dataclass(frozen=True, slots=True)
class Onset:
    """The outcome of the fit. ``depth``: where rounding begins, None if it does not; ``low`` and ``high``: its interval; ``bend``: the
    flexion beyond the first line at the deepest point (deg); ``slope``: degrees of flexion a degree of depth after it; ``spread``: the
    standard deviation by repetition alone, for a comparison within one taping."""

    depth: float | None
    low: float | None
    high: float | None
    bend: float
    slope: float
    spread: float


def is_whole(curve: Curve, deepest: float) -> bool:
    """True if a squat's curve has points nearly all the way down to its deepest point (deg), so that the kink can't hide in a hole."""
    if len(curve.depth) < 2:
        return False
    return bool(np.diff(curve.depth).max() <= MOST_HOLE and curve.depth[0] <= STARTS_BY and curve.depth[-1] >= deepest - MOST_HOLE)


def binned(depth: Floats, flexion: Floats) -> Curve:
    """Return a squat's curve in even bins of depth, each the median of its samples, interpolated where a fast descent skips a bin or two;
    where cards were lost for longer there are no points, so that nothing invented pulls at the kink."""
    there = np.isfinite(depth) & np.isfinite(flexion)
    depth, flexion = depth[there], flexion[there]
    if len(depth) < 4:
        return Curve(np.empty(0), np.empty(0))
    order = np.argsort(depth, kind="stable")
    at = np.arange(np.ceil(depth.min() / BIN), np.floor(depth.max() / BIN) + 1) * BIN
    index = np.round(depth[order] / BIN).astype(int)
    levels = np.unique(index)
    middles = np.array([np.median(flexion[order][index == level]) for level in levels])
    curve = np.interp(at, levels * BIN, middles)
    after = np.clip(np.searchsorted(levels * BIN, at), 1, max(1, len(levels) - 1)) if len(levels) > 1 else np.zeros(len(at), int)
    kept = np.isin(np.round(at / BIN), levels) | ((levels[after] - levels[after - 1]) <= MOST_SKIPPED + 1)
    return Curve(at[kept], curve[kept])


class _Fits:
    """Least squares for every place of the kink at once: each design becomes an orthonormal base, so that a draw costs one product.
    ``weights``: what each point counts, all of them the same where it is None."""

    def __init__(self, curves: tuple[Curve, ...], weights: Floats | None = None) -> None:
        self.depth = np.concatenate([curve.depth for curve in curves])
        self.root = np.sqrt(np.ones(len(self.depth)) if weights is None else weights)[:, None]
        self.offsets = np.repeat(np.eye(len(curves)), [len(curve.depth) for curve in curves], axis=0)
        self.top = float(np.median([curve.depth.max() for curve in curves]))
        low = float(np.median([curve.depth.min() for curve in curves]))
        self.places = np.arange(low + LEAST_PIECE, self.top - LEAST_PIECE + .01, .5)
        self.bases = [np.linalg.qr(self.design(place) * self.root)[0] for place in self.places]

    def design(self, place: float) -> Floats:
        """Return the columns: an offset a squat, the first slope, and the change of slope about the kink."""
        past = self.depth - place
        bend = np.where(past < TURN, np.maximum(0.0, past + TURN)**2 / (4 * TURN), past)
        return np.column_stack([self.offsets, self.depth, bend])

    def best(self, values: Floats) -> Floats:
        """Return the place of the kink for each column of values."""
        explained = np.stack([((base.T @ (values * self.root))**2).sum(axis=0) for base in self.bases])
        return np.asarray(self.places[explained.argmax(axis=0)])

    def at(self, place: float, values: Floats) -> Floats:
        """Return the coefficients with the kink at a place."""
        return np.asarray(np.linalg.lstsq(self.design(place) * self.root, values * self.root[:, 0], rcond=None)[0])


def onset_of(curves: tuple[Curve, ...], seed: int = 0) -> Onset | None:
    """Return where rounding begins over all squats of a film, with an interval by bootstrap: errors are drawn in blocks, and whole squats'
    errors from one another. None if no squat is deep enough to show it. The same curves always give the same result."""
    curves = tuple(curve for curve in curves if len(curve.depth) * BIN > 2 * LEAST_PIECE + 6)
    if not curves:
        return None
    evenly = fits = _Fits(curves)
    if len(fits.places) < 2:
        return None
    values = np.concatenate([curve.flexion for curve in curves])
    for _ in range(REWEIGHINGS):
        place = float(fits.best(values[:, None])[0])
        found = fits.at(place, values)
        fitted = fits.design(place) @ found
        off = values - fitted
        fits = _Fits(curves, 1 / np.maximum(1.0, np.abs(off) / TRUSTED))
    slope, change = float(found[-2]), float(found[-1])
    bend = change * (fits.top - place)
    # errors as least squares would have to see them, for the kink to move as much as it does with weights
    errors = np.clip(off, -TRUSTED, TRUSTED) / np.mean(np.abs(off) < TRUSTED)
    places = evenly.best(_draws(curves, fitted, errors, seed))
    spread = float(np.std(places))
    if bend < LEAST_BEND or change < LEAST_KINK:
        return Onset(None, None, None, bend, slope + change, spread)
    chance = np.random.default_rng(seed + 1)
    wide = places + chance.normal(0, CARDS_SLIP, len(places))
    low, high = np.quantile(wide, [(1 - CONFIDENCE) / 2, (1 + CONFIDENCE) / 2])
    return Onset(place, float(min(low, place)), float(max(high, place)), bend, slope + change, spread)


def _draws(curves: tuple[Curve, ...], fitted: Floats, off: Floats, seed: int) -> Floats:
    """Return new curves: the fitted ones with errors put together from blocks of any squat's errors."""
    chance = np.random.default_rng(seed)
    ends = np.cumsum([len(curve.depth) for curve in curves])
    errors = np.split(off, ends[:-1])
    drawn = np.empty((len(off), ONSET_DRAWS))
    begin = 0
    for end in ends:
        length = end - begin
        for draw in range(ONSET_DRAWS):
            told: list[Floats] = []
            while sum(map(len, told)) < length:
                error = errors[chance.integers(len(errors))]
                start = int(chance.integers(max(1, len(error) - BLOCK + 1)))
                told.append(error[start:start + BLOCK] * chance.choice((-1.0, 1.0)))
            drawn[begin:end, draw] = fitted[begin:end] + np.concatenate(told)[:length]
        begin = end
    return drawn
