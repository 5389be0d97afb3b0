"""Arms-forward squat: the trunk's shape with the weight in front."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EMPTY_BAR, EvidenceRow, Finding, Grade, by_feel, by_id, found, lighter
from companion.screening.limits import Work
from companion.screening.protocol import SQUAT_MINUTES, FindingContext, Protocol
from companion.screening.safety import BodyPosition

_ID: Final = "arms_forward_squat"
FAULT_ANSWERS: Final = ("rolled", "chest", "back")
_LOADS: Final = {"stick": "", "empty": "with an empty bar", "loaded": "with a loaded bar"}
_KILOS: Final = {"stick": 0.0, "empty": EMPTY_BAR}


@dataclass(frozen=True, slots=True)
class ArmsForwardSquat:
    """Front-rack squat with straight arms: the fault, its depth, and the second tries with heels up and less depth."""

    bar: str | None = None
    fault: str | None = None
    depth: str | None = None
    heels_help: str | None = None
    shallow_help: str | None = None
    seen_by: str | None = None

    @property
    def load(self) -> str | None:
        """The bar held, in words: "" for a stick, None if not known."""
        return _LOADS.get(self.bar or "")

    @property
    def kg(self) -> float | None:
        """The load held in kg; None if not known."""
        return _KILOS.get(self.bar or "")

    @property
    def uncured(self) -> bool:
        """True if neither heels up nor less depth cured the fault; a cured fault is due to shoulder, ankle or depth."""
        return self.heels_help == "no" and self.shallow_help in (("no",) if self.fault == "rolled" else ("no", None))


_ROWS: Final = by_id(
    EvidenceRow("arms_clean_stick", _ID, "In the arms-forward squat with a stick, it all holds", "trunk", "neither", Grade.NONE, hint=True),
    EvidenceRow("arms_clean_bar", _ID, "In the arms-forward squat with a bar, it all holds", "trunk", "against", Grade.MODERATE,
        bar=True),
    EvidenceRow(
        "arms_fail_stick", _ID, "In the arms-forward squat with a stick, something gives way above the depth at which your squat rounds",
        "trunk", "for", Grade.WEAK, twice=True),
    EvidenceRow(
        "arms_fail_bar", _ID, "In the arms-forward squat with a bar, something gives way above the depth at which your squat rounds",
        "trunk", "for", Grade.MODERATE, twice=True, bar=True),
    EvidenceRow("arms_open", _ID, "The arms-forward squat is not scored: raised heels or less depth may explain it",
        "trunk", "neither", Grade.NONE, hint=True, standing="choice"),
)


def findings(arms: ArmsForwardSquat, context: FindingContext) -> Iterator[Finding]:
    """Yield the finding of a clean squat; a fault is judged in ``pairs``, with the depth at which the lifter's squat rounds."""
    load = arms.load
    if load is not None and arms.fault == "clean":
        yield found(_ROWS["arms_clean_bar" if load else "arms_clean_stick"], load=load, kg=arms.kg,
                    less=by_feel(arms.seen_by) or lighter(arms.kg, context.about.load),
                    words=load and "In the arms-forward squat, it all holds")


PROTOCOL: Final = Protocol(
    _ID, title="Arms-forward squat", short_name="arms-forward squat",
    looks_at="whether your trunk keeps its shape with the weight in front", minutes=SQUAT_MINUTES, place=80, ease=8, needs=("stick",),
    posture=BodyPosition.STANDING, uses=(Work.SQUAT,), part="trunk", record=ArmsForwardSquat, rows=tuple(_ROWS.values()), findings=findings,
    picture="arms_forward",
)
