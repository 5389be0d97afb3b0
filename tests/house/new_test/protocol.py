"""Seated hip rotation: on a chair, how far the foot swings outwards. Made up for a test of the house: no number of it is real."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import Finding, Grade, Row, by_id, found
from companion.screening.protocol import Protocol, Seen
from companion.screening.readings import SIDES, Error, Line, Reading, against_line
from companion.screening.safety import Posture

ID: Final = "seated_hip_rotation"


@dataclass(frozen=True, slots=True)
class SeatedHipRotation:
    """The shin's degrees from upright, by phone level."""

    left: float | None = None
    right: float | None = None


ERROR: Final = Error(ID, "level", 3.0, "deg", "made up", "choice")
LINE: Final = Line("enough for a test of the house", ID, 30.0, "deg", "made up", "choice")
ROWS: Final = by_id(
    Row("seated_hip_short", ID, "Seated hip rotation clear short of the line", "hip", "for", Grade.STRONG, sided=True),
    Row("seated_hip_clear", ID, "Seated hip rotation clear above the line", "hip", "against", Grade.MODERATE, sided=True),
    Row("seated_hip_close", ID, "Seated hip rotation too close to the line", "hip", "neither", Grade.NONE, sided=True),
)


def readings(turned: SeatedHipRotation, side: str) -> tuple[Reading, ...]:
    """The reading of one side; none where it was not taken."""
    value = getattr(turned, side)
    return () if value is None else (Reading(ID, value, "deg", side, "level"),)


def findings(turned: SeatedHipRotation, seen: Seen) -> Iterator[Finding]:
    """Each side against the line."""
    for side in SIDES:
        if taken := readings(turned, side):
            answer = against_line(taken, LINE, seen.error(ID, "level"), seen.show)
            yield found(ROWS[f"seated_hip_{answer.answer}"], side, side=side, words=f"seated hip rotation {answer.words}")


PROTOCOL: Final = Protocol(
    ID, title="Seated hip rotation", short_name="seated hip rotation", looks_at="how far each hip turns", minutes=4, place=55,
    ease=11, needs=("chair", "phone level"), posture=Posture.FLOOR, part="hip", record=SeatedHipRotation, rows=tuple(ROWS.values()),
    findings=findings, readings=readings, errors=(ERROR,), lines=(LINE,),
)
