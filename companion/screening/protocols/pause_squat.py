"""Pause squat: the back's shape at stops, at a depth where the moving squat is clean."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EMPTY_BAR, EvidenceRow, Finding, Grade, by_feel, by_id, found, lighter
from companion.screening.limits import Work
from companion.screening.protocol import SQUAT_MINUTES, FindingContext, Protocol
from companion.screening.safety import BodyPosition

_ID: Final = "pause_squat"


@dataclass(frozen=True, slots=True)
class PauseSquat:
    """Three stops on the way down: the moving squat for comparison, the hardest stop, the shape, and the second try.

    ``with_`` is the answer key "with", a reserved word in Python.
    """

    with_: str | None = None
    moving: str | None = None
    hard: str | None = None
    shape: str | None = None
    again: str | None = None
    seen_by: str | None = None


_ROWS: Final = by_id(
    EvidenceRow("pause_fails", _ID, "With stops, your back rounds twice, at a depth where it keeps its shape while you move",
        "trunk", "for", Grade.MODERATE, twice=True),
    EvidenceRow("pause_clean_body", _ID, "With stops, your back keeps its shape at body weight", "trunk", "against", Grade.WEAK),
    EvidenceRow("pause_clean_bar", _ID, "With stops, your back keeps its shape with the bar", "trunk", "against", Grade.MODERATE,
        bar=True),
    EvidenceRow("pause_open", _ID, "The pause squat decides nothing", "trunk", "neither", Grade.NONE, standing="choice"),
)


def findings(pause: PauseSquat, context: FindingContext) -> Iterator[Finding]:
    """Yield the finding: a fail needs two fails and a clean moving squat; clean needs a hard stop to be clean a second time."""
    feel, load = by_feel(pause.seen_by), "with the bar" if pause.with_ == "bar" else "at body weight"
    kg = EMPTY_BAR if pause.with_ == "bar" else 0.0
    if (pause.moving, pause.shape, pause.again) == ("clean", "rounds", "rounds"):
        yield found(_ROWS["pause_fails"], less=feel, load=load, kg=kg)
    elif pause.shape == "clean" and (pause.again == "clean" or (pause.hard == "none" and pause.again is None)):
        yield found(_ROWS["pause_clean_bar" if kg else "pause_clean_body"], less=feel or lighter(kg, context.about.load), load=load, kg=kg,
                    words="With stops, your back keeps its shape")
    elif pause.shape in ("clean", "rounds"):
        yield found(_ROWS["pause_open"], load=load)


PROTOCOL: Final = Protocol(
    _ID, title="Pause squat", short_name="pause squat", looks_at="whether your back keeps its shape when a squat stands still",
    minutes=SQUAT_MINUTES, place=90, ease=7, needs=("mirror or film",), posture=BodyPosition.STANDING, uses=(Work.SQUAT,), part="trunk",
    record=PauseSquat,
    rows=tuple(_ROWS.values()), findings=findings, picture="pause_stops",
)
