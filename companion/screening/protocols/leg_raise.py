"""Leg raise: lying on the back, knee straight, the leg's angle at which the lower back moves."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise
from math import sqrt
from typing import Final

from companion.screening.doubts import BelievedSpread, checked, odd_side, side_doubts
from companion.screening.evidence import FILM_UNPROVEN, EvidenceRow, Finding, Grade, by_id, found
from companion.screening.geometry import Lean, leg_raise_from_heel, leg_raise_from_level
from companion.screening.limits import Work
from companion.screening.protocol import FLOOR_MINUTES, Derived, EyeBand, FindingContext, Gain, Protocol
from companion.screening.readings import EYE_TOP, MDC_FACTOR, SIDES, Error, Reading, against_threshold
from companion.screening.safety import BodyPosition
from companion.screening.sources import SOURCES, sourced_error, sourced_line, value

_ID: Final = "leg_raise"


@dataclass(frozen=True, slots=True)
class LegRaise:
    """The straight leg lifted until the back moves: the level's reading (deg), the heel's height (cm), a band by eye, or a film's
    degrees."""

    method: str | None = None
    effort: str | None = None
    placement: str | None = None
    leg_length: float | None = None
    left_level: float | None = None
    left_lean: str | None = None
    left_heel: float | None = None
    left_eye: str | None = None
    left_end: str | None = None
    left_level_2: float | None = None
    left_heel_2: float | None = None
    left_level_3: float | None = None
    left_heel_3: float | None = None
    left_film_1: float | None = None
    left_film_2: float | None = None
    left_film_3: float | None = None
    left_film_photo: float | None = None
    left_check: float | None = None
    left_check_lean: str | None = None
    right_level: float | None = None
    right_lean: str | None = None
    right_heel: float | None = None
    right_eye: str | None = None
    right_end: str | None = None
    right_level_2: float | None = None
    right_heel_2: float | None = None
    right_level_3: float | None = None
    right_heel_3: float | None = None
    right_film_1: float | None = None
    right_film_2: float | None = None
    right_film_3: float | None = None
    right_film_photo: float | None = None
    right_check: float | None = None
    right_check_lean: str | None = None


# A heel's height adds to the level's: 1 cm of reading and 1.5 cm of doubt about the hip's height come to 2-3 degrees near 70.
HEEL_EXTRA: Final = value("heel_extra")
# By eye, degrees from the floor: (low, high) of each band.
EYE_BANDS: Final = dict(zip(("under_45", "45_60", "60_70", "70_80", "over_80"),
                            pairwise((0.0, *SOURCES["eye_bands"].value, EYE_TOP)), strict=True))
EYE_MDC: Final = value("eye_mdc")  # by eye the band itself is the error; a change must leave one whole 10-degree band out (choice)


EXTRA: Final = {"film": value("leg_raise_film_extra"), "photo": value("leg_raise_photo_extra"), "heel": HEEL_EXTRA}


def _with_others(level: Error) -> tuple[Error, ...]:
    """Return the error of the level, those of a card on film or in a photo, and that of the heel's height."""
    return level, *(Error(_ID, level.method.replace("level", way), sqrt(level.sem**2 + more**2), "deg", f"{level.source}; and {more:g} deg",
                          "choice", steady=more) for way, more in EXTRA.items())


# Women's errors: the larger, and used if the sex is not given. Published for the passive raise; a leg that lifts itself has the larger.
RAISE_ERRORS: Final = (
    *_with_others(sourced_error("leg_raise_sem_women", _ID, "level")),
    *_with_others(sourced_error("leg_raise_sem_own", _ID, "level_own")),
    Error(_ID, "eye", EYE_MDC / MDC_FACTOR, "deg", "a whole step by eye must lie between", "choice"))
RAISE_ERRORS_MEN: Final = _with_others(sourced_error("leg_raise_sem_men", _ID, "level"))

RAISE_LEAST: Final = sourced_line("leg_raise_least", "least that serves a squat", _ID)
RAISE_COMFORTABLE: Final = sourced_line("leg_raise_comfortable", "comfortable", _ID)

_ROWS: Final = by_id(
    EvidenceRow("leg_raise_short", _ID, "The straight leg stays clearly under the line", "hamstrings", "for", Grade.MODERATE, sided=True),
    EvidenceRow("leg_raise_clear", _ID, "The straight leg comes clearly over the line", "hamstrings", "against", Grade.STRONG, sided=True),
    EvidenceRow("leg_raise_open", _ID, "The straight leg is too close to the line to call", "hamstrings", "neither", Grade.NONE, sided=True,
        standing="choice"),
)
_SHOWN: Final = {"short": "leg_raise_short", "clear": "leg_raise_clear", "close": "leg_raise_open"}
_REPEATS: Final = {"level": ("level", "level_2", "level_3"), "film": ("film_1", "film_2", "film_3"), "heel": ("heel", "heel_2", "heel_3")}
# Sides differ by 5.0 +- 3.5 degrees (BMC Musculoskelet Disord 2012;13:245, read); more than eight SD past that is taken for a slip
# until it is measured again (choice). The middle: Youdas 2005, men and women (memory).
SPREAD: Final = BelievedSpread(RAISE_ERRORS[0].mdc, *SOURCES["leg_raise_sides"].value)


def readings(raised: LegRaise, side: str) -> tuple[Reading, ...]:
    """Return the straight-leg-raise angles of one side that count, in degrees from the floor; empty if there are none."""
    return _counted(raised).get(side, ())


@lru_cache  # several facts of one step ask for them
def _counted(raised: LegRaise) -> dict[str, tuple[Reading, ...]]:
    """Return the readings of each side, after the second look at the odd one."""
    return checked({side: _taken(raised, side) for side in SIDES}, _looks(raised), SPREAD)


def _looks(raised: LegRaise) -> dict[str, Reading]:
    """Return the second look at a side, where there was one that gives an angle."""
    found = {}
    for side in SIDES:
        first = _taken(raised, side)
        with suppress(ValueError):
            if first and (angle := _raised(raised, side, "check")) is not None:
                found[side] = replace(first[0], value=angle, repeat=4)
    return found


def side_to_check(raised: LegRaise) -> str:
    """Return the side to look at once more, since the two are too far apart to be believed; "" for neither."""
    return odd_side(_counted(raised), SPREAD, _looks(raised))


def doubts(raised: LegRaise, context: FindingContext) -> dict[str, str]:
    """Return, by side, why its readings are not scored and what to repeat."""
    found = side_doubts(_counted(raised), _looks(raised), SPREAD, "leg raise", context.show)
    unclear = [side for side in SIDES if raised.method == "level" and not _taken(raised, side)
               and getattr(raised, f"{side}_level") is not None]
    return found | {side: f"Leg raise, {side}: {context.show(getattr(raised, f'{side}_level'), 'deg')} can be short of "
                          f"straight up or past it. Raise the {side} leg again." for side in unclear}


def _taken(raised: LegRaise, side: str) -> tuple[Reading, ...]:
    """Return one side's angles as taken, in degrees from the floor.

    A raise by own effort and one with a strap are different methods. A number that gives no angle (a level that may be
    near flat or near upright, a heel above 75 degrees, no leg length) is no reading.
    """
    way = f"{raised.method}_{raised.effort}" if raised.effort else str(raised.method)
    if raised.method == "eye":
        band = EYE_BANDS.get(getattr(raised, f"{side}_eye") or "")
        if band is None:
            return ()
        return (Reading(_ID, sum(band) / 2, "deg", side, way, width=band[1] - band[0]),)
    angles = []
    for repeat in _REPEATS.get(str(raised.method), ()):
        try:
            angle = _raised(raised, side, repeat)
        except ValueError:
            continue
        if angle is not None:
            angles.append(angle)
    photo: float | None = getattr(raised, f"{side}_film_photo")
    if raised.method == "film" and not angles and photo is not None:
        angles, way = [photo], way.replace("film", "photo")
    placement = (raised.placement or "") if raised.method == "level" else ""
    return tuple(Reading(_ID, angle, "deg", side, way, placement, number) for number, angle in enumerate(angles, 1))


def _raised(raised: LegRaise, side: str, key: str) -> float | None:
    """Return one angle of a raise by level, film or heel, from its answer; None if not taken. Raises ValueError if it gives no angle."""
    number: float | None = getattr(raised, f"{side}_{key}")
    if number is None:
        return None
    if raised.method == "level":
        return leg_raise_from_level(number, _leaning(getattr(raised, f"{side}_check_lean" if key == "check" else f"{side}_lean")))
    if raised.method == "film":
        return number
    if raised.method != "heel" or raised.leg_length is None:
        return None
    return leg_raise_from_heel(number, raised.leg_length)


def findings(raised: LegRaise, context: FindingContext) -> Iterator[Finding]:
    """Yield each side compared with the 70-degree threshold, with the error of its method."""
    unsettled = doubts(raised, context)
    for side in SIDES:
        taken = readings(raised, side)
        if side in unsettled:
            yield found(_ROWS["leg_raise_open"], side=side, words=unsettled[side].rstrip("."))
        elif taken:
            answer = against_threshold(taken, RAISE_LEAST, context.error(_ID, taken[0].method), context.show)
            yield found(_ROWS[_SHOWN[answer.answer]], side=side,
                        words=f"straight leg {answer.words}", less=FILM_UNPROVEN if raised.method == "film" else "",
                        margin=None if taken[0].width else abs(answer.margin) / answer.sem)


def _way(key: str) -> str:
    """Return the method of an answer key, "" for none: "left_heel_2" gives "heel"."""
    part = key.partition("_")[2].partition("_")[0]
    return part if part in ("level", "heel", "film", "eye") else ""


def _angle(key: str, side: str, value: float | str | None, said: Mapping[str, float | str | None]) -> float | EyeBand | None:
    """Return the angle from the floor that an answer stands for, a band if read by eye; None if there is none."""
    part = _way(key)
    if part == "eye":
        low, high = EYE_BANDS.get(str(value), (0.0, EYE_TOP))
        return (low if low > 0 else None, high if high < EYE_TOP else None)
    if value is None or isinstance(value, str):
        return None
    if part == "film":
        return value
    lean, leg = said.get(f"{side}_lean"), said.get("leg_length")
    try:
        if part == "level":
            return leg_raise_from_level(value, _leaning(lean))
        return leg_raise_from_heel(value, 0.0 if leg is None or isinstance(leg, str) else leg)
    except ValueError:
        return None


def _leaning(said: float | str | None) -> Lean | None:
    match said:
        case "short" | "past" | "flat":
            return said
        case _:
            return None


PROTOCOL: Final = Protocol(
    _ID, title="Leg raise", short_name="leg raise", looks_at="the hamstrings", minutes=FLOOR_MINUTES, place=40, ease=2,
    needs=("floor", "phone level, or tape"), posture=BodyPosition.LYING, uses=(Work.BEND, Work.STRETCH_HAMSTRINGS), part="hamstrings",
    record=LegRaise,
    rows=tuple(_ROWS.values()), findings=findings, readings=readings, doubts=doubts, errors=RAISE_ERRORS, errors_men=RAISE_ERRORS_MEN,
    thresholds=(RAISE_LEAST, RAISE_COMFORTABLE),
    lines_named=r"leg raise|straight leg|[78]0 ?(?:°|degrees?|deg)?|95", picture="leg_raise_{side}",
    gain=Gain(value("gain_hamstrings"), not_by="own"),
    derived=Derived("leg_raise.angle", "Straight-leg raise, degrees from the floor", "deg", _way, _angle),
)
