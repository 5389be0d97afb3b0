"""Rock back: on hands and knees, hips towards the heels, at which knee width the back stays still longest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_id, found
from companion.screening.protocol import FindingContext, Protocol
from companion.screening.safety import BodyPosition

_ID: Final = "rock_back"
KNEE_WIDTHS: Final = ("narrow", "middle", "wide")


@dataclass(frozen=True, slots=True)
class RockBack:
    """When the back moved at three knee widths: before the hip fold of the squat, about there, or past it."""

    narrow: str | None = None
    middle: str | None = None
    wide: str | None = None

    @property
    def widths(self) -> tuple[str | None, ...]:
        """What was seen at each width: early, at_fold, past or cant_tell."""
        return self.narrow, self.middle, self.wide

    @property
    def early(self) -> bool:
        """True if the back moved early at every width, which is read beside another test."""
        return all(width == "early" for width in self.widths)


_ROWS: Final = by_id(
    EvidenceRow("rock_early_hip", _ID, "Rock back: moves early at every width; hip fold not reached", "hip", "for", Grade.MODERATE,
        sided=True),
    EvidenceRow("rock_early_control", _ID, "Rock back: moves early at every width; hip fold was reached", "control", "for",
        Grade.MODERATE),
    EvidenceRow("rock_past_hip", _ID, "Rock back: still past the squat's hip fold", "hip", "against", Grade.MODERATE),
    EvidenceRow("rock_open", _ID, "Rock back: decides nothing", "hip", "neither", Grade.NONE, standing="choice"),
)


def findings(rock: RockBack, context: FindingContext) -> Iterator[Finding]:
    """What the widths say by themselves."""
    if rock.early:
        return
    if "past" in rock.widths and "early" not in rock.widths:
        yield found(_ROWS["rock_past_hip"], *KNEE_WIDTHS)
    elif {"early", "at_fold"} & set(rock.widths):
        yield found(_ROWS["rock_open"], *KNEE_WIDTHS)


PROTOCOL: Final = Protocol(
    _ID, title="Rock back", short_name="rock back",
    looks_at="at which knee width the back stays still longest on the way to the heels",
    minutes=3, place=20, short=True, ease=6, needs=("floor", "phone on a stand, or a friend"), posture=BodyPosition.LYING,
    part="hip", record=RockBack, rows=tuple(_ROWS.values()), findings=findings, picture="rock_back",
)
