"""Hand-on-back squat: at which depth the curve of the lower back starts to move, as usual and when kept still."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.depth import NEVER, bands_later, start_of
from companion.screening.evidence import Finding, Grade, Row, by_id, found
from companion.screening.protocol import Protocol, Seen
from companion.screening.safety import Posture

ID: Final = "hand_on_back_squat"


@dataclass(frozen=True, slots=True)
class HandOnBackSquat:
    """Where the curve of the lower back starts to move under the hand: as usual, and when told to keep it still."""

    usual_moves: str | None = None
    usual_depth: str | None = None
    cued_moves: str | None = None
    cued_depth: str | None = None


ROWS: Final = by_id(
    Row("hand_later_control", ID, "Told to keep it still, the back moves later", "control", "for", Grade.MODERATE),
    Row("hand_same_control", ID, "Told to keep it still: no change", "control", "against", Grade.MODERATE),
    Row("hand_open", ID, "Hand on the back: decides nothing", "control", "neither", Grade.NONE, standing="choice"),
)


def findings(hand: HandOnBackSquat, seen: Seen) -> Iterator[Finding]:
    """The cued set against the usual one; a back that never moves, or moves earlier when told, decides nothing."""
    keys = ("usual_moves", "usual_depth", "cued_moves", "cued_depth")
    usual = start_of(hand.usual_moves, hand.usual_depth)
    moved = bands_later(usual, start_of(hand.cued_moves, hand.cued_depth))
    if usual == NEVER or (moved is not None and moved < 0):
        yield found(ROWS["hand_open"], *keys)
    elif moved is not None:
        yield found(ROWS["hand_later_control" if moved else "hand_same_control"], *keys)


PROTOCOL: Final = Protocol(
    ID, title="Hand-on-back squat", short_name="hand-on-back squat",
    looks_at="at which depth the curve of the lower back starts to move, as usual and when kept still",
    minutes=3, place=60, short=True, ease=4, posture=Posture.STANDING, part="control", record=HandOnBackSquat,
    rows=tuple(ROWS.values()), findings=findings, picture="hand_on_back",
)
