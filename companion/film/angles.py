"""Angles of the segments from the corners of their cards: each by its own perspective, roll and yaw by the card on the wall."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.signal import savgol_filter  # type: ignore[import-untyped]

from companion.film.cards import ON_BODY, Place
from companion.film.footage import Floats, Footage
from companion.film.tilt import turned_and_misshapen

LEAST_FRAMES: Final = 8
"""Frames under which it is a photo, in whatever file, and no film (choice)."""
BRIDGED: Final = 0.2
"""Seconds without a card that are bridged; longer gaps are left out (our choice: a squat's thigh turns by ten degrees in that time)."""
SMOOTHING: Final = 0.23
"""Seconds of the smoothing window (Savitzky-Golay, quadratic): a squat's own movement is ten times slower (choice)."""
TAPED_UPRIGHT: Final = 35.0
"""Degrees within which a card that was taped the right way up stands while its lifter does (choice)."""

TRUNK: Final[tuple[Place, ...]] = ("ribs", "pelvis")
"""The cards whose tilt does not change during a squat."""

_SQUARE: Final = np.array([[-.5, -.5], [.5, -.5], [.5, .5], [-.5, .5]])


@dataclass(frozen=True, slots=True)
class Angles:
    """Each segment's angle over time.

    ``times``: an even grid in seconds; ``raw``: by place, degrees that its card is turned clockwise in the picture, or against the wall's
    card where ``by_wall``, NaN where it was not seen; ``smooth``: the same, smoothed. ``misshapen``: degrees by which a trunk card's shape
    is off its usual one, the larger of two. ``left_out``: the share of frames in which a card on the body was missing.
    """

    times: Floats
    raw: Mapping[Place, Floats]
    smooth: Mapping[Place, Floats]
    misshapen: Floats
    by_wall: bool
    left_out: float

    @property
    def rate(self) -> float:
        """Samples a second."""
        return 1.0 / float(self.times[1] - self.times[0])


def local_maps(corners: Floats) -> Floats:
    """Return, for each card, how its own square lies at its centre: the derivative of its homography there. (n, 4, 2) gives (n, 2, 2),
    columns the card's right and down in pixels for one side of the square."""
    count = len(corners)
    u, v = _SQUARE[:, 0], _SQUARE[:, 1]
    x, y = corners[..., 0], corners[..., 1]
    left = np.zeros((count, 8, 8))
    left[:, 0:4, 0], left[:, 0:4, 1], left[:, 0:4, 2] = u, v, 1
    left[:, 4:8, 3], left[:, 4:8, 4], left[:, 4:8, 5] = u, v, 1
    left[:, 0:4, 6], left[:, 0:4, 7] = -u * x, -v * x
    left[:, 4:8, 6], left[:, 4:8, 7] = -u * y, -v * y
    h = np.linalg.solve(left, np.concatenate([x, y], axis=1)[..., None])[..., 0]
    found = np.empty((count, 2, 2))
    found[:, 0, 0], found[:, 0, 1] = h[:, 0] - h[:, 2] * h[:, 6], h[:, 1] - h[:, 2] * h[:, 7]
    found[:, 1, 0], found[:, 1, 1] = h[:, 3] - h[:, 5] * h[:, 6], h[:, 4] - h[:, 5] * h[:, 7]
    return found


def turning(maps: Floats) -> Floats:
    """Return the rotation nearest to each 2 × 2 map, in degrees clockwise as seen in a picture (y down)."""
    return np.asarray(np.degrees(np.arctan2(maps[:, 1, 0] - maps[:, 0, 1], maps[:, 0, 0] + maps[:, 1, 1])))


def angles_of(footage: Footage) -> Angles | None:
    """Return the angles in a film; None where it has too few frames to have any."""
    if len(footage.times) < LEAST_FRAMES:
        return None
    step = float(np.median(np.diff(footage.times)))
    grid = np.arange(footage.times[0], footage.times[-1] + step / 2, step)
    seen: dict[Place, NDArray[np.bool_]] = {place: np.asarray(np.isfinite(found).all(axis=(1, 2)))
                                            for place, found in footage.corners.items()}
    wall = _wall(footage, seen["wall"])
    raw: dict[Place, Floats] = {}
    misshapen = np.full(len(grid), np.nan)
    for place in ON_BODY:
        at = seen[place]
        if at.sum() < 4:
            raw[place] = np.full(len(grid), np.nan)
            continue
        corners = footage.corners[place][at]
        maps, where = local_maps(corners), (corners.mean(axis=1) - np.array(footage.size) / 2) / max(footage.size)
        if wall is not None:
            maps = np.asarray(np.linalg.solve(wall[at], maps), dtype=np.float64)
            where = np.linalg.solve(wall[at], where[..., None])[..., 0]
        turn = np.unwrap(np.radians(turning(maps)))
        if place in TRUNK:
            turn, off = turned_and_misshapen(maps, where)
            misshapen = np.fmax(misshapen, _on_grid(footage.times[at], off, grid, step))
        raw[place] = _on_grid(footage.times[at], np.degrees(turn), grid, step)
    smooth = {place: _smoothed(values, step) for place, values in raw.items()}
    missing = ~np.logical_and.reduce([seen[place] for place in ON_BODY])
    return Angles(grid, raw, smooth, misshapen, wall is not None, float(missing.mean()))


def _wall(footage: Footage, seen: NDArray[np.bool_]) -> Floats | None:
    """Return the map of the wall's card for each frame, of unit area; None if it was hardly seen.

    Its shape is taken over the whole film, as the camera stands; its turning over half a second, as a hand or a stabiliser moves.
    """
    if seen.sum() < max(LEAST_FRAMES, len(seen) / 4):
        return None
    maps = local_maps(footage.corners["wall"][seen])
    maps = np.asarray(maps / np.sqrt(np.abs(np.linalg.det(maps)))[:, None, None], dtype=np.float64)
    roll = np.radians(turning(maps))
    back = np.stack([np.cos(roll), np.sin(roll), -np.sin(roll), np.cos(roll)], axis=-1).reshape(-1, 2, 2)
    shape = np.median(back @ maps, axis=0)
    times = footage.times
    even = np.interp(times, times[seen], roll)
    width = max(3, round(0.5 / float(np.median(np.diff(times)))) | 1)
    if len(even) > width:
        even = np.asarray(savgol_filter(even, width, 1, mode="nearest"), dtype=np.float64)
    turn = np.stack([np.cos(even), -np.sin(even), np.sin(even), np.cos(even)], axis=-1).reshape(-1, 2, 2)
    return np.asarray(turn @ shape)


def _on_grid(times: Floats, values: Floats, grid: Floats, step: float) -> Floats:
    """Return values on an even grid: interpolated over short gaps, NaN in longer ones."""
    found = np.interp(grid, times, values, left=np.nan, right=np.nan)
    after = np.clip(np.searchsorted(times, grid), 1, len(times) - 1)
    before = times[after - 1]
    away = np.minimum(np.abs(times[after] - grid), np.abs(grid - before)) > step
    found[(times[after] - before > max(BRIDGED, 2.5 * step)) & away] = np.nan
    return np.asarray(found)


def _smoothed(values: Floats, step: float) -> Floats:
    """Return values smoothed within each unbroken stretch; a stretch shorter than the window is left out."""
    width = max(5, round(SMOOTHING / step) | 1)
    found, there = np.full_like(values, np.nan), np.isfinite(values)
    edges = np.flatnonzero(np.diff(np.concatenate([[0], there.astype(int), [0]])))
    for begin, end in zip(edges[::2], edges[1::2], strict=True):
        if end - begin >= width:
            found[begin:end] = savgol_filter(values[begin:end], width, 2)
    return found
