"""A lifter as a few rigid segments in the plane seen from the side, and how a squat is set up.

Lengths in cm, masses in kg, angles in degrees. Every field may be one number or an array of draws. Lengths as fractions
of stature: Drillis & Contini 1966; mass fractions and centres of mass from the upper end: Dempster; both as in Winter's
textbook (second-hand).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

from companion.screening.sources import SOURCES, value

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Many = float | NDArray[np.float64]

Bar = Literal["high", "low", "front", "arms", "none"]

ANKLE_HEIGHT, KNEE_HEIGHT, HIP_HEIGHT, SHOULDER_HEIGHT, FOOT_LENGTH = SOURCES["body_heights"].value
# Mass of one foot, shank and thigh; head, arms and trunk together. Of body mass.
FOOT_MASS, SHANK_MASS, THIGH_MASS, UPPER_MASS = SOURCES["body_masses"].value
# de Leva 1996 J Biomech 29:1223 (second-hand) gives the thigh more, .1416 men and .1478 women: the truth of one lifter is
# taken to lie between the two tables (choice).
THIGH_MASS_MOST: Final = value("thigh_mass_most")
# Centres of mass from the upper end; the upper body's from the hip, of the hip-to-shoulder length.
LEG_CENTRE, FOOT_CENTRE, UPPER_CENTRE = SOURCES["body_centres"].value
# Both arms, and how far their centre lies from the shoulder, in trunk lengths: .050 each and .530 of .332 of stature
# (Winter, from memory).
ARMS_MASS, _ARM_CENTRE, _ARM, _TRUNK, ARMS_REACH = SOURCES["arms"].value
ARMS_CENTRE: Final = _ARM_CENTRE * _ARM / _TRUNK

# Where the bar lies, in trunk lengths: along the trunk from the hip, and in front of its line (behind: negative). On the
# upper back 4 cm behind, lower down 6 cm behind, on the front of the shoulders 8 cm ahead of a 50 cm trunk (choice).
_HIGH_UP, _HIGH_AHEAD, _LOW_UP, _LOW_AHEAD, _SHOULDERS, _FRONT_AHEAD = SOURCES["bar_places"].value
BAR_ON_TRUNK: Final[dict[Bar, tuple[float, float]]] = {
    "high": (_HIGH_UP, _HIGH_AHEAD), "low": (_LOW_UP, _LOW_AHEAD), "front": (_SHOULDERS, _FRONT_AHEAD), "arms": (_SHOULDERS, 0.0),
    "none": (_SHOULDERS, 0.0)}


@dataclass(frozen=True, slots=True)
class Body:
    """Lengths of shank, thigh, trunk (hip to shoulder), foot and ankle height; body mass; one thigh's share of it."""

    shank: Many
    thigh: Many
    trunk: Many
    foot: Many
    ankle: Many
    mass: Many
    thigh_share: Many = THIGH_MASS

    @property
    def upper_share(self) -> Many:
        """Head, arms and trunk as a share of body mass: 1 minus both legs."""
        return 1 - 2 * (self.thigh_share + SHANK_MASS + FOOT_MASS)


@dataclass(frozen=True, slots=True)
class Setup:
    """The set-up of a squat: where the weight is held and its mass (kg), turn-out of the feet (deg), heel lift (cm).

    ``arms``: 0 hanging, 1 straight out in front; with the weight in outstretched hands ("arms") they are out.
    """

    bar: Bar = "none"
    load: Many = 0.0
    turn_out: Many = 0.0
    lift: Many = 0.0
    arms: Many = 0.0


def body_of(height: float, mass: float, *, shank: float | None = None, thigh: float | None = None,
            trunk: float | None = None) -> Body:
    """Return the body for a height (cm) and mass (kg); measured segment lengths (cm) replace those from the table.

    Raises ValueError for a height outside 120-230 cm, a mass outside 30-300 kg, or a length outside 15-90 cm.
    """
    if not 120 <= height <= 230 or not 30 <= mass <= 300:
        raise ValueError(f"{height:g} cm and {mass:g} kg are not likely")
    if any(length is not None and not 15 <= length <= 90 for length in (shank, thigh, trunk)):
        raise ValueError("a shank, thigh or trunk is 15 to 90 cm long")
    return Body(shank or (KNEE_HEIGHT - ANKLE_HEIGHT) * height, thigh or (HIP_HEIGHT - KNEE_HEIGHT) * height,
                trunk or (SHOULDER_HEIGHT - HIP_HEIGHT) * height, FOOT_LENGTH * height, ANKLE_HEIGHT * height, mass)
