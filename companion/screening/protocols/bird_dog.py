"""Bird dog: stillness of the trunk while an arm and a leg lift. The side is that of the leg."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import EvidenceRow, Finding, Grade, by_feel, by_id, found
from companion.screening.protocol import BIRD_DOG_MINUTES, FindingContext, Noted, Protocol
from companion.screening.readings import SIDES
from companion.screening.safety import BodyPosition
from companion.screening.sources import value

_ID: Final = "bird_dog"
HOLD_SECONDS: Final = value("bird_dog_hold")
"""A hold is clean only if hips and back stayed still for all of it (choice: no norms with their reliability were found)."""

FILM_MOVES: Final = value("bird_dog_film_moves")


@dataclass(frozen=True, slots=True)
class BirdDog:
    """Opposite arm and leg lifted; the side is that of the leg. Holds in seconds."""

    seen_by: str | None = None
    left_shape: str | None = None
    left_hold: float | None = None
    left_slow: str | None = None
    left_film_pelvis: float | None = None
    left_film_back: float | None = None
    right_shape: str | None = None
    right_hold: float | None = None
    right_slow: str | None = None
    right_film_pelvis: float | None = None
    right_film_back: float | None = None

    def on_film(self, side: str) -> float | None:
        """Return how far pelvis or back moved at most on film with cards, in degrees; None where it was not filmed with them."""
        return max((got for part in ("pelvis", "back") if (got := getattr(self, f"{side}_film_{part}")) is not None), default=None)


_ROWS: Final = by_id(
    EvidenceRow("bird_dog_turns", _ID, "In the bird dog, a hip turns or the back sags", "control", "for", Grade.WEAK, sided=True),
    EvidenceRow("bird_dog_film", _ID, "On film with cards, pelvis or back move in the bird dog, so it does not count as still", "control",
        "neither", Grade.NONE, sided=True, standing="choice"),
    EvidenceRow("bird_dog_short", _ID, "In the bird dog, the hold ended early with nothing moving", "control", "neither", Grade.NONE,
        standing="choice"),
    EvidenceRow("bird_dog_clean", _ID, "In the bird dog, hips and back stay still on both sides", "control", "against", Grade.WEAK),
)


def findings(dog: BirdDog, context: FindingContext) -> Iterator[Finding]:
    """Yield a fault on a side, in the hold or the slow repetitions; clean only if both sides held all the time and both are clean.

    A hold given up early with nothing moving decides nothing: it may be the arm or the breath that ended it.
    """
    feel, turned = by_feel(dog.seen_by), False
    shapes = {side: (getattr(dog, f"{side}_shape"), getattr(dog, f"{side}_slow")) for side in SIDES}
    for side, shape in shapes.items():
        if "hip" in shape or "back" in shape:
            turned = True
            yield found(_ROWS["bird_dog_turns"], side=side, less=feel)
        elif (moved := dog.on_film(side)) is not None and moved >= FILM_MOVES:
            turned = True
            yield found(_ROWS["bird_dog_film"], side=side)
    held = {side: seconds for side in SIDES if (seconds := getattr(dog, f"{side}_hold")) is not None}
    if turned or not held:
        return
    if len(held) == len(SIDES) and min(held.values()) >= HOLD_SECONDS and all(
            hold in (None, "clean") and slow == "clean" for hold, slow in shapes.values()):
        yield found(_ROWS["bird_dog_clean"], less=feel)
    else:
        still = ", ".join(f"{side} {seconds:g} s" for side, seconds in held.items())
        yield found(_ROWS["bird_dog_short"], words=f"Bird dog: still for {still} of {HOLD_SECONDS:g} s, which decides nothing")


PROTOCOL: Final = Protocol(
    _ID, title="Bird dog", short_name="bird dog", looks_at="whether your back stays still while an arm and a leg move",
    minutes=BIRD_DOG_MINUTES, place=70, ease=10, needs=("floor", "mirror, film, friend or stick"),
    posture=BodyPosition.FLOOR, uses=(), part="control",
    record=BirdDog, rows=tuple(_ROWS.values()), findings=findings, noted=(Noted("hold", "s", "Bird dog, hold"),),
    picture="bird_dog_{side}",
)
