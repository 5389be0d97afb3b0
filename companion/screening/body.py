"""A lifter as a few rigid segments in the plane seen from the side, and how a squat is set up.

Lengths in cm, masses in kg, angles in degrees. Every field may be one number or an array of draws. Lengths as fractions
of stature: Drillis & Contini 1966; mass fractions and centres of mass from the upper end: Dempster; both as in Winter's
textbook (second-hand).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Many = float | NDArray[np.float64]

Bar = Literal["high", "low", "front", "arms", "none"]

ANKLE_HEIGHT: Final = 0.039
KNEE_HEIGHT: Final = 0.285
HIP_HEIGHT: Final = 0.530
SHOULDER_HEIGHT: Final = 0.818
FOOT_LENGTH: Final = 0.152
# Mass of one foot, shank and thigh; head, arms and trunk together. Of body mass.
FOOT_MASS: Final = 0.0145
SHANK_MASS: Final = 0.0465
THIGH_MASS: Final = 0.100
UPPER_MASS: Final = 0.678
# de Leva 1996 J Biomech 29:1223 (second-hand) gives the thigh more, .1416 men and .1478 women: the truth of one lifter is
# taken to lie between the two tables (choice).
THIGH_MASS_MOST: Final = 0.1478
# Centres of mass from the upper end; the upper body's from the hip, of the hip-to-shoulder length.
LEG_CENTRE: Final = 0.433
FOOT_CENTRE: Final = 0.5
UPPER_CENTRE: Final = 0.626
# Both arms, and how far their centre lies from the shoulder, in trunk lengths: .050 each and .530 of .332 of stature
# (Winter, from memory).
ARMS_MASS: Final = 0.100
ARMS_CENTRE: Final = 0.530 * 0.332 / 0.288
ARMS_REACH: Final = 1.3  # shoulder to a weight in the hands, in trunk lengths: .38 of stature (from memory, rounded)

# Where the bar lies, in trunk lengths: along the trunk from the hip, and in front of its line (behind: negative). On the
# upper back 4 cm behind, lower down 6 cm behind, on the front of the shoulders 8 cm ahead of a 50 cm trunk (choice).
BAR_ON_TRUNK: Final[dict[Bar, tuple[float, float]]] = {
    "high": (1.04, -0.08), "low": (0.92, -0.12), "front": (1.00, 0.16), "arms": (1.00, 0.0), "none": (1.00, 0.0)}


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
