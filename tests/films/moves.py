"""Films of three tests by a figure whose angles are known: knee to wall standing, leg raise and hip fold lying.

The figure stands on its foot in all of them, so that lying it hangs in the air; only what turns against what is read.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import exp, log
from typing import Final

from companion.film.cards import Place
from companion.film.moves import Movement
from tests.films.camera import Film, Phone
from tests.films.figure import SOFTNESS, Looks, Squat, Taped, View


@dataclass(frozen=True, slots=True)
class Moving(Squat):
    """A test's movement: ``deepest`` is how far the segment turns, ``onset`` where the pelvis begins to turn with the folding thigh."""

    move: Movement = "shin"

    def angles(self, depth: float) -> dict[Place, float]:
        if self.move == "shin":
            return {"shank": depth, "thigh": -.3 * depth, "pelvis": 0.0, "ribs": 0.0}
        if self.move == "leg":
            return {"shank": -90 + depth, "thigh": -90 + depth, "pelvis": -90, "ribs": -90}
        turned = 0.0 if self.onset is None else self.gain * SOFTNESS * log(1 + exp((depth - self.onset) / SOFTNESS))
        return {"shank": -90, "thigh": -90 + depth, "pelvis": -90 + turned, "ribs": -90}


LYING: Final = Phone(size=(1280, 720), rate=24, bits=1_500_000)
UPRIGHT: Final = Phone(size=(432, 768), rate=25, bits=900_000)
SLOW: Final = Moving(standing=.8, squats=1, down=1.3, up=.9, between=.3)


def _film(seed: int, squat: Moving, phone: Phone, view: View, taped: dict[Place, Taped], looks: Looks | None = None) -> Film:
    return Film(seed, squat, taped, view, looks or Looks(), phone)


MOVES: Final[dict[str, Film]] = {
    "a knee to the wall": _film(21, replace(SLOW, squats=2, deepest=38.0), UPRIGHT, View(distance=2.4, high=.9, field=46, yaw=8, roll=2),
                                {"shank": Taped(turned=9, tilted=(6, -6))}),
    "a straight leg": _film(22, replace(SLOW, move="leg", deepest=72.0), LYING, View(distance=2.2, high=.6, field=44, yaw=-6),
                            {"shank": Taped(turned=-8)}),
    "a hip that folds": _film(23, replace(SLOW, move="fold", deepest=125.0, onset=85.0, gain=.4), LYING,
                              View(distance=2.2, high=.6, field=44, roll=-2), {"thigh": Taped(turned=7), "pelvis": Taped(turned=-9)}),
    "a hip that folds, the pelvis still": _film(24, replace(SLOW, move="fold", deepest=120.0, onset=None), LYING,
                                                View(distance=2.2, high=.6, field=44, yaw=5), {}, Looks(faces=-1)),
}
