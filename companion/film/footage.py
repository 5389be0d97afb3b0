"""The result of decoding: the corners of the cards in each frame, or the reason why a film can't be read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from companion.film.cards import BY_PATTERN, ON_BODY, Place

Floats = NDArray[np.float64]

MOST_SECONDS: Final = 120.0
"""The longest film that is read; our choice. A set of three squats takes twenty seconds."""
MOST_FRAMES: Final = 4000
"""Frames decoded at most, whatever the file says of its length: two minutes at 30, and some."""
MOST_PIXELS: Final = 4096 * 2304
MOST_BYTES: Final = 20 * 2**20
"""The largest file a bot may fetch, by Telegram's Bot API documentation (read)."""


class Unreadable(Exception):
    """The film can't be read; the message is one line for the lifter that says why and what to do."""


@dataclass(frozen=True, slots=True)
class Footage:
    """A film as the angles see it.

    ``times``: seconds from its first frame, rising, one a frame read; ``corners``: by place, an array (frames, 4, 2) in pixels, clockwise
    from the card's own upper left, NaN where it was not found; ``light``: the mean brightness of each frame, 0 to 255; ``size``: width
    and height as shown; ``mirrored``: true if the picture was turned round, as a selfie camera does; ``bits``: bits a second of the
    picture, 0 if unknown.
    """

    times: Floats
    corners: Mapping[Place, Floats]
    light: Floats
    size: tuple[int, int]
    mirrored: bool = False
    bits: float = 0.0

    def share(self, place: Place) -> float:
        """Return the share of frames in which a card was found."""
        found = self.corners.get(place)
        return 0.0 if found is None or not len(found) else float(np.isfinite(found[:, 0, 0]).mean())

    def side(self, place: Place) -> float:
        """Return the median length of a card's sides in pixels; NaN if it was never found."""
        found = self.corners.get(place)
        if found is None or not np.isfinite(found).any():
            return float("nan")
        return float(np.nanmedian(np.linalg.norm(found - np.roll(found, 1, axis=1), axis=2)))

    @property
    def missing(self) -> tuple[Place, ...]:
        """The places on the body whose card was never found."""
        return tuple(place for place in ON_BODY if self.share(place) == 0)


def footage_from(told: Mapping[str, Any]) -> Footage:
    """Return the footage that the decoding process wrote. Raises ValueError where the text is not of that shape: the process read a file
    nobody vouches for, so its answer is not trusted either."""
    try:
        frames = told["frames"]
        width, height = int(told["size"][0]), int(told["size"][1])
        times = np.array([float(frame[0]) for frame in frames])
        corners: dict[Place, Floats] = {}
        for pattern, card in BY_PATTERN.items():
            seen = np.full((len(frames), 4, 2), np.nan)
            for at, frame in enumerate(frames):
                if (found := frame[2].get(str(pattern))) is not None:
                    seen[at] = np.asarray(found, dtype=np.float64).reshape(4, 2)
            corners[card.place] = seen
        light = np.array([float(frame[1]) for frame in frames])
        bits, mirrored = float(told["bits"]), bool(told["mirrored"])
    except (KeyError, TypeError, IndexError, AttributeError) as error:
        raise ValueError(f"not a list of frames: {type(error).__name__}") from error
    if not len(times) or len(times) > MOST_FRAMES or (np.diff(times) <= 0).any() or not np.isfinite(times).all():
        raise ValueError("its times do not rise")
    return Footage(times, corners, light, (width, height), mirrored, bits)
