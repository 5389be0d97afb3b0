"""Pause squat: does the back keep its shape where the squat stands still, at a depth where moving is clean."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_feel, by_id, found
from companion.screening.protocol import FindingContext, Protocol
from companion.screening.safety import BodyPosition

_ID: Final = "pause_squat"


@dataclass(frozen=True, slots=True)
class PauseSquat:
    """Three stops on the way down: the moving squat beside it, which stop was hard, the shape, and the second go.

    ``with_`` is the answer key "with": a word Python keeps for itself.
    """

    with_: str | None = None
    moving: str | None = None
    hard: str | None = None
    shape: str | None = None
    again: str | None = None
    seen_by: str | None = None


_ROWS: Final = by_id(
    EvidenceRow("pause_fails", _ID, "Stops fail twice where the moving squat is clean", "trunk", "for", Grade.MODERATE),
    EvidenceRow("pause_clean_body", _ID, "Stops clean, body weight", "trunk", "against", Grade.WEAK),
    EvidenceRow("pause_clean_bar", _ID, "Stops clean, with the bar", "trunk", "against", Grade.MODERATE),
    EvidenceRow("pause_open", _ID, "Stops: decide nothing", "trunk", "neither", Grade.NONE, standing="choice"),
)


def findings(pause: PauseSquat, context: FindingContext) -> Iterator[Finding]:
    """Fails only where it failed twice and the moving squat was clean; clean only where a hard stop was clean again."""
    keys = ("seen_by", "with", "moving", "hard", "shape", "again")
    feel, load = by_feel(pause.seen_by), "with the bar" if pause.with_ == "bar" else "at body weight"
    if (pause.moving, pause.shape, pause.again) == ("clean", "rounds", "rounds"):
        yield found(_ROWS["pause_fails"], *keys, less=feel, load=load)
    elif pause.shape == "clean" and (pause.again == "clean" or (pause.hard == "none" and pause.again is None)):
        yield found(_ROWS["pause_clean_bar" if pause.with_ == "bar" else "pause_clean_body"], *keys, less=feel,
                    load=load, words="Stops clean")
    elif pause.shape in ("clean", "rounds"):
        yield found(_ROWS["pause_open"], *keys, load=load)


PROTOCOL: Final = Protocol(
    _ID, title="Pause squat", short_name="pause squat", looks_at="whether your back keeps its shape when a squat stands still",
    minutes=5, place=90, ease=7, needs=("mirror or film",), posture=BodyPosition.STANDING, part="trunk", record=PauseSquat,
    rows=tuple(_ROWS.values()), findings=findings, picture="pause_stops",
)
