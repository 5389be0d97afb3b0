"""Hinge to squat: a hip hinge that sinks into a squat, back to the hinge, and up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_feel, by_id, found
from companion.screening.limits import Work
from companion.screening.protocol import SQUAT_MINUTES, FindingContext, Protocol
from companion.screening.safety import BodyPosition

_ID: Final = "hinge_to_squat"


@dataclass(frozen=True, slots=True)
class HingeToSquat:
    """A hinge that sinks into a squat: shape in the hinge, shape while sinking, and the depth at which it broke."""

    hinge: str | None = None
    sink: str | None = None
    depth: str | None = None
    seen_by: str | None = None

    @property
    def breaks(self) -> bool:
        """True if the hinge was clean and sinking broke it; ``pairs`` compares that with the depth of the lifter's own rounding."""
        return (self.hinge, self.sink) == ("clean", "breaks")


_ROWS: Final = by_id(
    EvidenceRow("hinge_rounds", _ID, "In the hinge, with the knees nearly straight, your back rounds", "hamstrings", "for", Grade.WEAK),
    EvidenceRow("hinge_breaks", _ID,
        "Your hinge keeps its shape, but sinking from it breaks the shape above the depth at which your squat rounds",
        "control", "for", Grade.MODERATE),
    EvidenceRow("hinge_clean", _ID, "Your back keeps its shape in the hinge and while you sink from it", "control", "against", Grade.WEAK),
)


def findings(hinge: HingeToSquat, context: FindingContext) -> Iterator[Finding]:
    """Yield the finding of a hinge that rounds, or of one that stays clean while sinking."""
    feel = by_feel(hinge.seen_by)
    if hinge.hinge == "rounds":
        yield found(_ROWS["hinge_rounds"], less=feel)
    elif hinge.hinge == "clean" and hinge.sink == "clean":
        yield found(_ROWS["hinge_clean"], less=feel)


PROTOCOL: Final = Protocol(
    _ID, title="Hinge to squat", short_name="hinge into squat",
    looks_at="whether your back stays still while you go from a hinge into a squat", minutes=SQUAT_MINUTES, place=100, ease=9,
    needs=("stick",), posture=BodyPosition.STANDING, uses=(Work.SQUAT, Work.BEND), part="control",
    record=HingeToSquat, rows=tuple(_ROWS.values()),
    findings=findings, picture="hinge_to_squat",
)
