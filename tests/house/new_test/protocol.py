"""Seated hip rotation: on a chair, how far the foot swings outwards. Made up for a test of the house: no number of it is real."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_id, found
from companion.screening.protocol import FindingContext, Protocol
from companion.screening.readings import SIDES, Error, Reading, Threshold, against_threshold
from companion.screening.safety import BodyPosition

_ID: Final = "seated_hip_rotation"


@dataclass(frozen=True, slots=True)
class SeatedHipRotation:
    """The shin's degrees from upright, by phone level."""

    left: float | None = None
    right: float | None = None


ERROR: Final = Error(_ID, "level", 3.0, "deg", "made up", "choice")
LINE: Final = Threshold("enough for a test of the house", _ID, 30.0, "deg", "made up", "choice")
_ROWS: Final = by_id(
    EvidenceRow("seated_hip_short", _ID, "Seated hip rotation clear short of the line", "hip", "for", Grade.STRONG, sided=True),
    EvidenceRow("seated_hip_clear", _ID, "Seated hip rotation clear above the line", "hip", "against", Grade.MODERATE, sided=True),
    EvidenceRow("seated_hip_close", _ID, "Seated hip rotation too close to the line", "hip", "neither", Grade.NONE, sided=True),
)


def readings(turned: SeatedHipRotation, side: str) -> tuple[Reading, ...]:
    """The reading of one side; none where it was not taken."""
    value = getattr(turned, side)
    return () if value is None else (Reading(_ID, value, "deg", side, "level"),)


def findings(turned: SeatedHipRotation, context: FindingContext) -> Iterator[Finding]:
    """Each side against the line."""
    for side in SIDES:
        if taken := readings(turned, side):
            answer = against_threshold(taken, LINE, context.error(_ID, "level"), context.show)
            yield found(_ROWS[f"seated_hip_{answer.answer}"], side=side, words=f"seated hip rotation {answer.words}")


PROTOCOL: Final = Protocol(
    _ID, title="Seated hip rotation", short_name="seated hip rotation", looks_at="how far each hip turns", minutes=4, place=55,
    ease=11, needs=("chair", "phone level"), posture=BodyPosition.FLOOR, uses=(), part="hip",
    record=SeatedHipRotation, rows=tuple(_ROWS.values()),
    findings=findings, readings=readings, errors=(ERROR,), thresholds=(LINE,),
)
