"""Films of three tests by a figure whose angles are known: knee to wall standing, leg raise and hip fold lying.

The figure stands on its foot in all of them, so that lying it hangs in the air; only what turns against what is read.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import exp, log
from typing import Final, get_args

import numpy as np

from companion.film.cards import Place
from companion.film.moves import MoveFilm, Movement
from tests.films.camera import Film, Phone, drawn_by_chance
from tests.films.figure import SOFTNESS, Looks, Squat, Taped, View


@dataclass(frozen=True, slots=True)
class Moving(Squat):
    """A test's movement: ``deepest`` is how far the segment turns, ``onset`` where the pelvis begins to turn with the folding thigh."""

    move: Movement = "shin"

    def angles(self, depth: float) -> dict[Place, float]:
        if self.move == "shin":
            return {"shank": depth, "thigh": -.3 * depth, "pelvis": 0.0, "ribs": 0.0}
        if self.move == "trunk":
            return {"shank": 0.0, "thigh": 0.0, "pelvis": 90 - depth, "ribs": 90 - .4 * depth}
        if self.move == "leg":
            return {"shank": -90 + depth, "thigh": -90 + depth, "pelvis": -90, "ribs": -90}
        turned = 0.0 if self.onset is None else self.gain * SOFTNESS * log(1 + exp((depth - self.onset) / SOFTNESS))
        return {"shank": -90, "thigh": -90 + depth, "pelvis": -90 + turned, "ribs": -90}


LYING: Final = Phone(size=(960, 540), rate=24, bits=1_000_000)
UPRIGHT: Final = Phone(size=(432, 768), rate=25, bits=900_000)
SLOW: Final = Moving(standing=.8, squats=1, down=1.3, up=.9, between=.3)


def _film(seed: int, squat: Moving, phone: Phone, view: View, taped: dict[Place, Taped], looks: Looks | None = None) -> Film:
    return Film(seed, squat, taped, view, looks or Looks(), phone)


MOVES: Final[dict[str, Film]] = {
    "a knee to the wall": _film(21, replace(SLOW, squats=2, deepest=38.0), UPRIGHT,
                                View(distance=2.9, high=.9, field=46, yaw=4, roll=2, wall=.3),
                                {"shank": Taped(turned=9, tilted=(6, -6))}),
    "a straight leg": _film(22, replace(SLOW, move="leg", deepest=72.0), LYING, View(distance=2.2, high=.6, field=44, yaw=-6, wall=.3),
                            {"shank": Taped(turned=-8)}),
    "a back that sags on hands and knees": _film(25, replace(SLOW, move="trunk", squats=3, deepest=15.0), UPRIGHT,
                                                 View(distance=2.4, high=.9, field=46, yaw=5), {"ribs": Taped(turned=9)}),
    "a hip that folds": _film(23, replace(SLOW, move="fold", deepest=125.0, onset=85.0, gain=.4), LYING,
                              View(distance=2.2, high=.6, field=44, roll=-2), {"thigh": Taped(turned=7), "pelvis": Taped(turned=-9)}),
    "a hip that folds, the pelvis still": _film(24, replace(SLOW, move="fold", deepest=120.0, onset=None), LYING,
                                                View(distance=2.2, high=.6, field=44, yaw=5), {}, Looks(faces=-1)),
}


def by_chance(seed: int) -> Film:
    """A film of a test by chance, within what a lifter at home may do, the three tests by turns; cards slide as in films of squats."""
    chance, film = np.random.default_rng(seed), drawn_by_chance(seed)
    move: Movement = ("shin", "leg", "fold")[seed % 3]
    low, high = {"shin": (20, 45), "leg": (35, 85), "fold": (100, 130)}[move]
    squat = replace(SLOW, move=move, squats=2 if move == "shin" else 1, deepest=chance.uniform(low, high),
                    onset=chance.uniform(50, 85) if move == "fold" else None, gain=chance.uniform(.25, .6))
    lying = move != "shin"
    view = replace(film.view, distance=chance.uniform(2.0, 2.8), field=44 if lying else 62, high=.6 if lying else .8)
    return replace(film, squat=squat, view=view, looks=replace(film.looks, arm=False, plate=False),
                   phone=replace(film.phone, size=(1280, 720) if lying else (720, 1280), flag=0, lens=0.0))


def told_of(found: Sequence[tuple[Film, MoveFilm | None]]) -> str:
    """The errors as lines, a test a line."""
    lines = []
    for move in get_args(Movement)[:3]:
        films = [(film, read) for film, read in found if film.squat.move == move]
        read = [(film, one) for film, one in films if one is not None]
        turns = np.array([one.turns[0] - film.squat.deepest for film, one in read])
        lines.append(f"{move}: {len(films)} films, {len(films) - len(read)} refused; the turn's error: mean {turns.mean():+.1f}°, standard "
                     f"deviation {turns.std():.1f}°, worst {np.abs(turns).max():.1f}°")
        if move == "fold":
            onsets = np.array([np.nan if one.onset.depth is None else one.onset.depth - film.squat.onset for film, one in read])
            seen = np.isfinite(onsets).sum()
            held = sum(one.onset.low <= film.squat.onset <= one.onset.high for film, one in read if one.onset.depth is not None)
            lines.append(f"  where the pelvis turns: median error {np.nanmedian(np.abs(onsets)):.1f}°, "
                         f"worst {np.nanmax(np.abs(onsets)):.1f}°, interval {held} of {seen}, missed {len(onsets) - seen}")
    return "\n".join(lines)
