"""Rock back: on hands and knees, hips towards the heels; the knee width at which the back stays still longest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_id, found
from companion.screening.limits import Work
from companion.screening.protocol import FLOOR_MINUTES, FindingContext, Protocol
from companion.screening.safety import BodyPosition

_ID: Final = "rock_back"
KNEE_WIDTHS: Final = ("narrow", "middle", "wide")


@dataclass(frozen=True, slots=True)
class RockBack:
    """Movement of the back at three knee widths: before the squat's hip fold, about there, or past it."""

    narrow: str | None = None
    middle: str | None = None
    wide: str | None = None

    @property
    def widths(self) -> tuple[str | None, ...]:
        """The answer at each width: early, at_fold, past, belly (something else stopped it) or cant_tell."""
        return self.narrow, self.middle, self.wide

    @property
    def early(self) -> bool:
        """True if the back moved early at every width; ``pairs`` judges that with the hip fold."""
        return all(width == "early" for width in self.widths)


_ROWS: Final = by_id(
    EvidenceRow("rock_early_hip", _ID,
        "Rocking back, your back moves early at every knee width, and this hip did not bend as far as in your squat",
        "hip", "for", Grade.MODERATE, sided=True),
    EvidenceRow("rock_early_control", _ID,
        "Rocking back, your back moves early at every knee width, though both hips bent as far as in your squat",
        "control", "for", Grade.MODERATE),
    EvidenceRow("rock_past_hip", _ID, "Rocking back, your back stays still past the depth of your squat", "hip", "against", Grade.MODERATE),
    EvidenceRow("rock_open", _ID, "The rock back decides nothing", "hip", "neither", Grade.NONE, standing="choice"),
)


def findings(rock: RockBack, context: FindingContext) -> Iterator[Finding]:
    """Yield the finding of the widths alone."""
    if rock.early:
        return
    if "past" in rock.widths and "early" not in rock.widths:
        yield found(_ROWS["rock_past_hip"])
    elif {"early", "at_fold"} & set(rock.widths):
        yield found(_ROWS["rock_open"])


PROTOCOL: Final = Protocol(
    _ID, title="Rock back", short_name="rock back",
    looks_at="at which knee width the back stays still longest on the way to the heels",
    minutes=FLOOR_MINUTES, place=20, ease=6, needs=("floor", "phone on a stand, or a friend"), posture=BodyPosition.LYING,
    uses=(Work.BEND, Work.STRETCH_HIP), part="hip", record=RockBack, rows=tuple(_ROWS.values()), findings=findings, picture="rock_back",
)
