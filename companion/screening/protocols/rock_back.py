"""Rock back: on hands and knees, hips towards the heels, at which knee width the back stays still longest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import Finding, Grade, Row, by_id, found
from companion.screening.protocol import Protocol, Seen
from companion.screening.safety import Posture

ID: Final = "rock_back"
WIDTHS: Final = ("narrow", "middle", "wide")


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


ROWS: Final = by_id(
    Row("rock_early_hip", ID, "Rock back: moves early at every width; hip fold not reached", "hip", "for", Grade.MODERATE,
        sided=True),
    Row("rock_early_control", ID, "Rock back: moves early at every width; hip fold was reached", "control", "for",
        Grade.MODERATE),
    Row("rock_past_hip", ID, "Rock back: still past the squat's hip fold", "hip", "against", Grade.MODERATE),
    Row("rock_open", ID, "Rock back: decides nothing", "hip", "neither", Grade.NONE, standing="choice"),
)


def findings(rock: RockBack, seen: Seen) -> Iterator[Finding]:
    """What the widths say by themselves."""
    if rock.early:
        return
    if "past" in rock.widths and "early" not in rock.widths:
        yield found(ROWS["rock_past_hip"], *WIDTHS)
    elif {"early", "at_fold"} & set(rock.widths):
        yield found(ROWS["rock_open"], *WIDTHS)


PROTOCOL: Final = Protocol(
    ID, title="Rock back", short_name="rock back",
    looks_at="at which knee width the back stays still longest on the way to the heels",
    minutes=3, place=20, short=True, ease=6, needs=("floor", "phone on a stand, or a friend"), posture=Posture.LYING,
    part="hip", record=RockBack, rows=tuple(ROWS.values()), findings=findings, picture="rock_back",
)
