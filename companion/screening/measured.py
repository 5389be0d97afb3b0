"""What a test's answers measure: readings with their method, from the records."""

from __future__ import annotations

from companion.screening.geometry import Lean, leg_raise_from_heel, leg_raise_from_level
from companion.screening.readings import EYE_BANDS, Reading
from companion.screening.records import KneeToWall, LegRaise


def leg_raise_readings(raised: LegRaise, side: str) -> tuple[Reading, ...]:
    """The straight-leg-raise angles of one side, in degrees from the floor; empty where none can be told.

    A raise by own effort and one with a strap are different methods. A number that gives no angle (a level that may be
    near flat or near upright, a heel above 75 degrees, no leg length) is no reading.
    """
    way = f"{raised.method}_{raised.effort}" if raised.effort else str(raised.method)
    if raised.method == "eye":
        band = EYE_BANDS.get(getattr(raised, f"{side}_eye") or "")
        if band is None:
            return ()
        return (Reading("leg_raise", sum(band) / 2, "deg", side, way, width=band[1] - band[0]),)
    angles = []
    for repeat in ("", "_2"):
        try:
            angle = _raised(raised, side, repeat)
        except ValueError:
            continue
        if angle is not None:
            angles.append(angle)
    placement = (raised.placement or "") if raised.method == "level" else ""
    return tuple(Reading("leg_raise", angle, "deg", side, way, placement, number)
                 for number, angle in enumerate(angles, 1))


def knee_to_wall_readings(reached: KneeToWall, side: str) -> tuple[Reading, ...]:
    """The knee-to-wall readings of one side: cm by tape, or degrees of the shin from upright by level."""
    by_level = reached.method == "level"
    if not by_level and reached.method != "tape":
        return ()
    names = [f"{side}_deg_{n}" if by_level else f"{side}_{n}" for n in (1, 2, 3)]
    values = [value for name in names if (value := getattr(reached, name)) is not None]
    unit, placement = ("deg", reached.placement or "") if by_level else ("cm", "")
    return tuple(Reading("knee_to_wall", value, unit, side, str(reached.method), placement, number)
                 for number, value in enumerate(values, 1))


def _raised(raised: LegRaise, side: str, repeat: str) -> float | None:
    """One angle of a raise by level or heel; None where it was not taken. ValueError where it gives no angle."""
    if raised.method == "level":
        shown: float | None = getattr(raised, f"{side}_level{repeat}")
        lean: Lean | None = getattr(raised, f"{side}_lean")
        return None if shown is None else leg_raise_from_level(shown, lean)
    heel: float | None = getattr(raised, f"{side}_heel{repeat}")
    if raised.method != "heel" or heel is None or raised.leg_length is None:
        return None
    return leg_raise_from_heel(heel, raised.leg_length)
