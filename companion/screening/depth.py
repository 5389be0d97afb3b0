"""The depth of the thigh at which the back starts to round, in four bands, and the shift between two squats."""

from __future__ import annotations

from typing import Final

from companion.screening.ordinal import Ranked
from companion.screening.sources import value


class Band(Ranked):
    """A depth of the thigh relative to parallel (top of the thigh level with the floor), the deepest last."""

    WELL_ABOVE = "well_above"
    A_LITTLE_ABOVE = "a_little_above"
    PARALLEL = "parallel"
    BELOW = "below"


NEVER_STARTS: Final = len(Band)  # start rank of a squat that does not round: past the deepest band

BAND_WORDS: Final = {
    Band.WELL_ABOVE: "well above parallel",
    Band.A_LITTLE_ABOVE: "a little above parallel",
    Band.PARALLEL: "parallel",
    Band.BELOW: "below parallel",
}

KEEP_ABOVE: Final = int(value("depth_keep"))  # bands above the start of rounding, the depth to keep to
BAND_STEP: Final = "One step of depth is all that this scale tells; how well you repeat it is not known."


def band_of(word: str | None) -> Band | None:
    """Return the band with this value; None for any other word."""
    return Band(word) if word in {band.value for band in Band} else None


def start_of(moves: str | None, depth: str | None) -> int | None:
    """Return the rank of the band in which the back starts to move, 0-3; NEVER_STARTS if it stays still, None if not known.

    ``moves`` is the answer of a squat ("no", "little", "some", "clearly", "cant_tell") or of a hand ("no", "yes",
    "cant_tell"). A movement without a depth counts as not known.
    """
    if moves == "no":
        return NEVER_STARTS
    band = band_of(depth)
    return band.rank if band is not None and moves in ("little", "some", "clearly", "yes") else None


TOP_STEP: Final = "both round in the top step of depth, where a change may not show"
"""The reason for which two squats at the same depth say less there (choice)."""


def hidden_at_top(before: int | None, after: int | None) -> str:
    """Return the reason for which the same depth twice counts for less: both in the top band; "" elsewhere."""
    return TOP_STEP if before == after == Band.WELL_ABOVE.rank else ""


def bands_later(before: int | None, after: int | None) -> int | None:
    """Return the number of bands between two starts: above 0 is later (deeper), below 0 earlier; None if one is not known."""
    return None if before is None or after is None else after - before
