"""How deep the thigh is where the back starts to round, in four bands, and how far a change moved it."""

from __future__ import annotations

from typing import Final

from companion.screening.ordinal import Ranked


class Band(Ranked):
    """Where the thigh stands against parallel, the deepest last."""

    WELL_ABOVE = "well_above"
    A_LITTLE_ABOVE = "a_little_above"
    PARALLEL = "parallel"
    BELOW = "below"


NEVER_STARTS: Final = len(Band)  # the start of a squat that does not round at all: past the deepest band

BAND_WORDS: Final = {
    Band.WELL_ABOVE: "well above parallel",
    Band.A_LITTLE_ABOVE: "a little above parallel",
    Band.PARALLEL: "parallel",
    Band.BELOW: "below parallel",
}


def band_of(word: str | None) -> Band | None:
    """The band of a kept answer; None where there is none."""
    return Band(word) if word in {band.value for band in Band} else None


def start_of(moves: str | None, depth: str | None) -> int | None:
    """Where the back starts to move: a band's rank 0-3, NEVER where it does not, None where that is not known.

    ``moves`` is the answer of a squat ("no", "little", "clearly", "cant_tell") or of a hand ("no", "yes",
    "cant_tell"). A movement without its depth is not known.
    """
    if moves == "no":
        return NEVER_STARTS
    band = band_of(depth)
    return band.rank if band is not None and moves in ("little", "clearly", "yes") else None


def bands_later(before: int | None, after: int | None) -> int | None:
    """By how many bands the start moved: above 0 is later (deeper), below 0 earlier; None where one is not known."""
    return None if before is None or after is None else after - before
