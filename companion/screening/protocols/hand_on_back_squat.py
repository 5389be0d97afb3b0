"""Hand-on-back squat: the depth at which the curve of the lower back starts to move, as usual and when kept still."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.depth import NEVER_STARTS, bands_later, hidden_at_top, start_of
from companion.screening.evidence import EvidenceRow, Finding, Grade, by_id, found
from companion.screening.limits import Work
from companion.screening.protocol import SQUAT_MINUTES, FindingContext, Protocol
from companion.screening.safety import BodyPosition

_ID: Final = "hand_on_back_squat"


@dataclass(frozen=True, slots=True)
class HandOnBackSquat:
    """Movement of the lower back's curve under the hand and the depth where it starts: as usual, and when trying to keep it still."""

    usual_moves: str | None = None
    usual_depth: str | None = None
    cued_moves: str | None = None
    cued_depth: str | None = None

    def start(self, squat: str) -> int | None:
        """Return where the curve starts to move in the "usual" or the "cued" set (``start_of``); one answer may tell both."""
        moves, depth = getattr(self, f"{squat}_moves"), getattr(self, f"{squat}_depth")
        return start_of(moves or {"no": "no", "cant_tell": "cant_tell", None: None}.get(depth, "yes"), depth)


_ROWS: Final = by_id(
    EvidenceRow("hand_later_control", _ID, "When you try to keep it still, your back moves later", "control", "for", Grade.MODERATE),
    EvidenceRow("hand_same_control", _ID, "When you try to keep it still, your back moves at the same depth",
        "control", "against", Grade.MODERATE),
    EvidenceRow("hand_open", _ID, "The hand-on-back squat decides nothing", "control", "neither", Grade.NONE, standing="choice"),
)


def findings(hand: HandOnBackSquat, context: FindingContext) -> Iterator[Finding]:
    """Yield the cued set compared with the usual one; a back that never moves, or moves earlier when cued, decides nothing."""
    usual = hand.start("usual")
    moved = bands_later(usual, hand.start("cued"))
    if usual == NEVER_STARTS or (moved is not None and moved < 0):
        yield found(_ROWS["hand_open"])
    elif moved is not None:
        yield found(_ROWS["hand_later_control" if moved else "hand_same_control"], less=hidden_at_top(usual, hand.start("cued")),
                    bands=moved)


PROTOCOL: Final = Protocol(
    _ID, title="Hand-on-back squat", short_name="hand-on-back squat",
    looks_at="at which depth the curve of the lower back starts to move, as usual and when kept still",
    minutes=SQUAT_MINUTES, place=60, ease=4, posture=BodyPosition.STANDING, uses=(Work.SQUAT,), part="control", record=HandOnBackSquat,
    rows=tuple(_ROWS.values()), findings=findings, picture="hand_on_back",
)
