"""A card's turn in the picture, freed of what its own tilt does to it as it moves across the picture; and how far it is out of shape.

A card that is taped with a tilt out of the plane of the squat seems to turn as it comes down in the picture, since it is looked at along
another ray: of 10° tilt and a picture's quarter about 1°. That same tilt changes the card's shape by as much, so it is read from the shape
over all frames; neither the lens nor the card's size need be known. It holds for cards that keep their tilt: on the trunk, not on a thigh,
which turns out as the knees do.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from companion.film.footage import Floats

SHAPE_ERROR: Final = 0.01
"""The usual error of a card's shape (0.6°), as a part of its side; from there on a frame counts less (Huber 1964)."""
TILT_UNKNOWN: Final = 0.03
"""What a tilt of 0 counts beside the frames: 10° (0.17) are usual, frames err by SHAPE_ERROR, some ten neighbours alike."""
SHAPE_ROUNDS: Final = 4


def turned_and_misshapen(maps: Floats, places: Floats) -> tuple[Floats, Floats]:
    """Return the turn of a card in each frame in radians, unbroken, and by how many degrees its shape is off its usual one: corners that
    err by chance turn a card by as much as they bend it. ``maps``: as by local_maps; ``places``: where it is, from the picture's middle,
    as a part of its longer side."""
    # a map of the plane as complex numbers: v becomes keeps * v + bends * conj(v)
    keeps = (maps[:, 0, 0] + maps[:, 1, 1] + 1j * (maps[:, 1, 0] - maps[:, 0, 1])) / 2
    bends = (maps[:, 0, 0] - maps[:, 1, 1] + 1j * (maps[:, 1, 0] + maps[:, 0, 1])) / 2
    turned_back = np.conj(keeps) / np.abs(keeps)
    shape, place = bends * turned_back / np.abs(keeps), (places[:, 0] + 1j * places[:, 1]) * turned_back
    # by a tilt t, whose parts are its sines, the shape is its usual one less place * t / 2, and the turn off by the half of conj(place) * t
    causes: NDArray[np.complex128] = np.column_stack([np.ones(len(shape)), -place / 2])
    weights = np.ones(len(shape))
    for _ in range(SHAPE_ROUNDS):
        weighed = np.conj(causes.T) * weights
        found = np.linalg.solve(weighed @ causes + np.diag([0, TILT_UNKNOWN / 4]), weighed @ shape)
        off = np.abs(shape - causes @ found)
        weights = 1 / np.maximum(1, off / SHAPE_ERROR)
    turn = np.unwrap(np.angle(keeps)) - (np.conj(place) * found[1]).imag / 2
    return np.asarray(turn), np.asarray(np.degrees(off))
