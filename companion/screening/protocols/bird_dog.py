"""Bird dog: stillness of the trunk while an arm and a leg lift. The side is that of the leg."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_feel, by_id, found
from companion.screening.protocol import FindingContext, Noted, Protocol
from companion.screening.readings import SIDES
from companion.screening.safety import BodyPosition

_ID: Final = "bird_dog"


@dataclass(frozen=True, slots=True)
class BirdDog:
    """Opposite arm and leg lifted; the side is that of the leg. Holds in seconds."""

    seen_by: str | None = None
    left_shape: str | None = None
    left_hold: float | None = None
    left_slow: str | None = None
    right_shape: str | None = None
    right_hold: float | None = None
    right_slow: str | None = None


_ROWS: Final = by_id(
    EvidenceRow("bird_dog_turns", _ID, "In the bird dog, a hip turns or the back sags", "control", "for", Grade.WEAK, sided=True),
    EvidenceRow("bird_dog_clean", _ID, "In the bird dog, hips and back stay still on both sides", "control", "against", Grade.WEAK),
)


def findings(dog: BirdDog, context: FindingContext) -> Iterator[Finding]:
    """Yield a fault on a side, in the hold or the slow repetitions; clean only if both are clean on both sides."""
    feel = by_feel(dog.seen_by)
    shapes = {side: (getattr(dog, f"{side}_shape"), getattr(dog, f"{side}_slow")) for side in SIDES}
    for side, shape in shapes.items():
        if "hip" in shape or "back" in shape:
            yield found(_ROWS["bird_dog_turns"], "seen_by", f"{side}_shape", f"{side}_slow", side=side, less=feel)
    if all(shape == ("clean", "clean") for shape in shapes.values()):
        yield found(_ROWS["bird_dog_clean"], "seen_by", "left_shape", "left_slow", "right_shape", "right_slow", less=feel)


PROTOCOL: Final = Protocol(
    _ID, title="Bird dog", short_name="bird dog", looks_at="whether your back stays still while an arm and a leg move",
    minutes=5, place=70, ease=10, needs=("floor", "mirror, film, friend or stick"), posture=BodyPosition.FLOOR, uses=(), part="control",
    record=BirdDog, rows=tuple(_ROWS.values()), findings=findings, noted=(Noted("hold", "s", "Bird dog, hold"),),
    picture="bird_dog_{side}",
)
