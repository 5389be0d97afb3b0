"""Hip fold: lying on the back, knee bent, the thigh's way to the chest before the lower back moves."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_id, found
from companion.screening.limits import Work
from companion.screening.protocol import FLOOR_MINUTES, FindingContext, Noted, Protocol
from companion.screening.readings import SIDES
from companion.screening.safety import BodyPosition

_ID: Final = "hip_fold"


@dataclass(frozen=True, slots=True)
class HipFold:
    """By side: the first to come, the squat's fold or a move of the back; a pinch at the front; the angle in degrees if taken, by eye
    on a film or from its cards.
    ``pinched``: the sides that pinched, where it was asked once: none, left, right or both."""

    left_first: str | None = None
    left_pinch: str | None = None
    left_angle: float | None = None
    right_first: str | None = None
    right_pinch: str | None = None
    right_angle: float | None = None
    pinched: str | None = None
    left_film_angle: float | None = None
    right_film_angle: float | None = None

    def pinch(self, side: str) -> str | None:
        """Return whether the front of this hip pinched, "yes" or "no"; asked for each side or once for both, None if not at all."""
        told: str | None = getattr(self, f"{side}_pinch")
        return told or (None if self.pinched is None else "yes" if self.pinched in (side, "both") else "no")

    def angle(self, side: str) -> float | None:
        """Return how far the thigh came before the back moved, in degrees from the floor, by cards where there were some; None if it
        was not taken."""
        by_cards: float | None = getattr(self, f"{side}_film_angle")
        by_eye: float | None = getattr(self, f"{side}_angle")
        return by_eye if by_cards is None else by_cards

    def reached(self, side: str) -> bool | None:
        """Return True if the hip folded as far as in the squat with the back still; None if not known or pinched."""
        if self.pinch(side) != "no":
            return None
        return {"fold": True, "back": False}.get(getattr(self, f"{side}_first"))


_ROWS: Final = by_id(
    EvidenceRow("hip_fold_back", _ID, "The back moves before the hip bends as in your squat",
        "hip", "for", Grade.MODERATE, sided=True),
    EvidenceRow("hip_fold_reached", _ID, "The hip bends as in your squat, with the back still",
        "hip", "against", Grade.STRONG, sided=True),
    EvidenceRow("hip_fold_pinch", _ID, "A pinch at the front of the hip, so this side is not scored",
        "hip", "neither", Grade.NONE, sided=True,
        standing="choice", pinched=True),
)


def findings(fold: HipFold, context: FindingContext) -> Iterator[Finding]:
    """Yield the finding of each side; a side with a pinch, or without an answer about one, is not scored."""
    for side in SIDES:
        first, pinch = getattr(fold, f"{side}_first"), fold.pinch(side)
        row = {"back": "hip_fold_back", "fold": "hip_fold_reached"}.get(first) if pinch == "no" else None
        if pinch == "yes":
            row = "hip_fold_pinch"
        if row:
            yield found(_ROWS[row], side=side)


PROTOCOL: Final = Protocol(
    _ID, title="Hip fold", short_name="hip fold", looks_at="the room in each hip", minutes=FLOOR_MINUTES, place=30, ease=1,
    needs=("floor",),
    posture=BodyPosition.LYING, uses=(Work.BEND, Work.STRETCH_HIP), part="hip", record=HipFold,
    rows=tuple(_ROWS.values()), findings=findings,
    noted=(Noted("angle", "deg", "Hip fold, angle of the thigh"),
           Noted("film_angle", "deg", "Hip fold, angle by cards on film")), picture="hip_fold_{side}",
)
