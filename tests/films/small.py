"""Twelve small films for every run: one for each thing that a home and a phone do to a film."""

from __future__ import annotations

from typing import Final

from tests.films.camera import Film, Phone
from tests.films.figure import Looks, Squat, Taped, View

SQUAT: Final = Squat(standing=.7, squats=2, down=.95, up=.6, between=.2, deepest=108, onset=72, gain=.5)
FLAT: Final = Squat(standing=.7, squats=2, down=.95, up=.6, between=.2, deepest=100, onset=None, drift=.02)
NEAR: Final = View(distance=2.4, high=.9, field=46)
PHONE: Final = Phone(size=(432, 768), rate=25, bits=900_000)


def _view(**more: float) -> View:
    return View(**{"distance": 2.4, "high": .9, "field": 46} | more)


def _phone(**more: object) -> Phone:
    return Phone(**{"size": (432, 768), "rate": 25, "bits": 900_000} | more)  # type: ignore[arg-type]


SMALL: Final[dict[str, Film]] = {
    "plain": Film(1, SQUAT, {}, NEAR, Looks(), PHONE),
    "an early onset": Film(2, Squat(.7, 2, .95, .6, .2, 112, 52, .35), {}, NEAR, Looks(faces=-1), PHONE),
    "a back that stays": Film(3, FLAT, {}, NEAR, Looks(), PHONE),
    "a back that stays, seen aslant": Film(4, FLAT, {"pelvis": Taped(turned=8), "ribs": Taped(turned=-9)}, _view(yaw=9), Looks(), PHONE),
    "turned aside by ten degrees": Film(5, SQUAT, {}, _view(yaw=10), Looks(faces=-1), PHONE),
    "rolled and tilted": Film(6, SQUAT, {}, _view(roll=3, tilt=4, high=1.05), Looks(), PHONE),
    "cards taped askew": Film(7, SQUAT, {"ribs": Taped(.02, -.02, 10, (6, -8)), "pelvis": Taped(-.02, .01, -10, (-8, 6)),
                                         "thigh": Taped(.02, .0, 7, (0, 9))}, NEAR, Looks(), PHONE),
    "cards that slide": Film(8, SQUAT, {"ribs": Taped(slides=1.5), "pelvis": Taped(slides=-1.5), "thigh": Taped(slides=3)}, NEAR,
                             Looks(), PHONE),
    "dim, noisy and squeezed": Film(9, SQUAT, {}, NEAR, Looks(light=.6), _phone(noise=7, gain=.8, bits=500_000)),
    "blurred, uneven times": Film(10, SQUAT, {}, NEAR, Looks(), _phone(uneven=True, blur=.8, shake=.3)),
    "a selfie, lying on its side in the file": Film(11, SQUAT, {}, NEAR, Looks(), _phone(mirrored=True, flag=90)),
    "an ultra-wide lens and a swinging arm": Film(12, SQUAT, {}, NEAR, Looks(arm=True), _phone(lens=-.06)),
}
