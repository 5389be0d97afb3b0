"""The points of one posture, reckoned anew from the joints up: what ``posture`` balances is held against it, and it against MuJoCo."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from companion.screening.body import (
    ARMS_CENTRE,
    ARMS_MASS,
    ARMS_REACH,
    BAR_ON_TRUNK,
    FOOT_MASS,
    LEG_CENTRE,
    SHANK_MASS,
    UPPER_CENTRE,
    Body,
    Setup,
)
from companion.screening.posture import _arms, _foot, _thigh, lift_angle


@dataclass(frozen=True, slots=True)
class Points:
    """The joints, the weight and the common centre of mass: (x, y) in cm."""

    ankle: tuple[float, float]
    knee: tuple[float, float]
    hip: tuple[float, float]
    shoulder: tuple[float, float]
    weight: tuple[float, float]
    centre: tuple[float, float]


def points_of(body: Body, setup: Setup, shin: float, depth: float, lean: float) -> Points:
    """Return the points of one posture (numbers, not arrays): shank's lean, thigh below level and trunk's lean in degrees."""
    tilt = lift_angle(body, setup.lift)
    foot, ankle = (np.array(point, dtype=float) for point in _foot(body, tilt))
    s, d, lean_ = np.radians([shin, depth, lean])
    knee = ankle + body.shank * np.array([np.sin(s), np.cos(s)])
    hip = knee - _thigh(body, setup) * np.array([np.cos(d), np.sin(d)])
    up, front = np.array([np.sin(lean_), np.cos(lean_)]), np.array([np.cos(lean_), -np.sin(lean_)])
    shoulder = hip + body.trunk * up
    along, ahead = BAR_ON_TRUNK[setup.bar]
    weight = hip + body.trunk * (along * up + ahead * front)
    if setup.bar == "arms":
        weight = weight + ARMS_REACH * body.trunk * np.array([1, 0])
    load = setup.load if setup.bar != "none" else 0.0
    # The arms' centre moves from hanging along the trunk to straight ahead of the shoulder.
    out = ARMS_MASS * ARMS_CENTRE * _arms(setup) * body.trunk * (np.array([1, 0]) + up)
    moments = (2 * FOOT_MASS * foot + 2 * SHANK_MASS * (knee + (ankle - knee) * LEG_CENTRE)
               + 2 * body.thigh_share * (hip + (knee - hip) * LEG_CENTRE)
               + body.upper_share * (hip + UPPER_CENTRE * body.trunk * up) + out)
    centre = (moments * body.mass + load * weight) / (body.mass + load)
    return Points(*((float(x), float(y)) for x, y in (ankle, knee, hip, shoulder, weight, centre)))
