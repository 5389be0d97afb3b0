"""Knee to wall: the knee's travel past the toes with the heel down."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from companion.screening.doubts import BelievedSpread, checked, odd_side, side_doubts
from companion.screening.evidence import FILM_UNPROVEN, EvidenceRow, Finding, Grade, by_id, found
from companion.screening.geometry import furthest_reach
from companion.screening.limits import Work
from companion.screening.protocol import FLOOR_MINUTES, FindingContext, Gain, Protocol
from companion.screening.readings import SIDES, STANDING_WORDS, Reading, against_threshold, mean_of
from companion.screening.safety import BodyPosition
from companion.screening.sources import SOURCES, sourced_error, sourced_line, value

_ID: Final = "knee_to_wall"


@dataclass(frozen=True, slots=True)
class KneeToWall:
    """Up to three readings a side, cm by tape, or the shin's degrees from upright by level or film; a second look; the limit felt."""

    method: str | None = None
    placement: str | None = None
    left_1: float | None = None
    left_2: float | None = None
    left_3: float | None = None
    left_deg_1: float | None = None
    left_deg_2: float | None = None
    left_deg_3: float | None = None
    left_film_1: float | None = None
    left_film_2: float | None = None
    left_film_3: float | None = None
    left_film_photo: float | None = None
    left_check: float | None = None
    left_limit: str | None = None
    right_1: float | None = None
    right_2: float | None = None
    right_3: float | None = None
    right_deg_1: float | None = None
    right_deg_2: float | None = None
    right_deg_3: float | None = None
    right_film_1: float | None = None
    right_film_2: float | None = None
    right_film_3: float | None = None
    right_film_photo: float | None = None
    right_check: float | None = None
    right_limit: str | None = None


_LEVEL_MDC: Final = SOURCES["knee_to_wall_mdc_level"].value[0]
WALL_ERRORS: Final = (sourced_error("knee_to_wall_mdc_tape", _ID, "tape", mdc=True),
                      sourced_error("knee_to_wall_mdc_level", _ID, "level", mdc=True),
                      *(sourced_error(f"knee_to_wall_mdc_{way}", _ID, way, mdc=True) for way in ("film", "photo")))
KEY_OF: Final = {"tape": "{}_{}", "level": "{}_deg_{}", "film": "{}_film_{}", "photo": "{}_film_photo"}
"""The answer of a side's reading and its number, by method."""

TAPE_LEAST: Final = sourced_line("knee_to_wall_least", "enough for most squats, from", _ID)
TAPE_ENOUGH: Final = sourced_line("knee_to_wall_enough", "enough for most squats, to", _ID)
# Degrees are a series of their own, without a published threshold. The 10 and 12.5 cm thresholds are 0.4 SD under and 0.2 SD over the
# mean of Calatayud 2015 IJSPT 10:197 (11.6 +- 4.0 cm; 40.0 +- 5.8 deg, n = 26): 37.7 and 41.3, moved apart.
SHIN_LEAST: Final = sourced_line("shin_least", "enough for most squats, from", _ID)
SHIN_ENOUGH: Final = sourced_line("shin_enough", "enough for most squats, to", _ID)

_ROWS: Final = by_id(
    EvidenceRow("knee_to_wall_short", _ID, "The knee stays clearly under the line, with a pull in the calf",
        "calf", "for", Grade.MODERATE, sided=True),
    EvidenceRow("knee_to_wall_far", _ID, "The knee reaches the upper line or goes past it", "calf", "against", Grade.STRONG, sided=True),
    EvidenceRow("knee_to_wall_clear", _ID, "The knee is clearly over the lower line, mean of 3", "calf", "against", Grade.WEAK, sided=True),
    EvidenceRow("knee_to_wall_open", _ID, "The knee to wall decides nothing", "calf", "neither", Grade.NONE, sided=True, standing="choice"),
    EvidenceRow("knee_to_wall_pinch", _ID, "A pinch at the front of the ankle, so this side is not scored",
        "calf", "neither", Grade.NONE, sided=True,
        standing="choice", pinched=True),
)


# Sides up to 3 cm apart in healthy people (Hoch & McKeon 2011, second-hand); more than three times that, and its like in degrees, is
# taken for a slip until it is measured again (choice). The middle: Calatayud 2015 (read).
SPREADS: Final = {"cm": BelievedSpread(WALL_ERRORS[0].mdc, *SOURCES["knee_to_wall_sides"].value),
                  "deg": BelievedSpread(WALL_ERRORS[1].mdc, *SOURCES["shin_sides"].value)}


def readings(reached: KneeToWall, side: str) -> tuple[Reading, ...]:
    """Return the readings of one side that count: cm by tape, or degrees of the shin from upright by level."""
    return _counted(reached).get(side, ())


def _counted(reached: KneeToWall) -> dict[str, tuple[Reading, ...]]:
    """Return the readings of each side, after the second look at the odd one."""
    taken = {side: _taken(reached, side) for side in SIDES}
    return checked(taken, _looks(reached), SPREADS[unit_of(reached.method)])


def unit_of(method: str | None) -> str:
    """Return the unit of a method: cm by tape, degrees by the others."""
    return "cm" if method in (None, "tape") else "deg"


def _looks(reached: KneeToWall) -> dict[str, Reading]:
    """Return the second look at a side, where there was one."""
    firsts = {side: _taken(reached, side) for side in SIDES}
    return {side: replace(firsts[side][0], value=value, repeat=4) for side in SIDES
            if firsts[side] and (value := getattr(reached, f"{side}_check")) is not None}


def side_to_check(reached: KneeToWall) -> str:
    """Return the side to look at once more, since the two are too far apart to be believed; "" for neither."""
    return odd_side(_counted(reached), SPREADS[unit_of(reached.method)], _looks(reached))


def doubts(reached: KneeToWall, context: FindingContext) -> dict[str, str]:
    """Return, by side, why its readings are not scored and what to repeat."""
    taken, show = _counted(reached), context.show
    unit = unit_of(reached.method)
    found = side_doubts(taken, _looks(reached), SPREADS[unit], "knee to wall", show)
    most = furthest_reach(context.about.height)
    return found | {side: f"Knee to wall, {side}: {show(mean_of(readings), 'cm')} can't be, the shin would lie nearly flat. "
                          f"Measure the {side} side again, zero of the tape at the wall."
                    for side, readings in taken.items() if unit == "cm" and any(one.value > most for one in readings)}


def _taken(reached: KneeToWall, side: str) -> tuple[Reading, ...]:
    method = reached.method
    if method not in KEY_OF:
        return ()
    values = [value for n in (1, 2, 3) if (value := getattr(reached, KEY_OF[method].format(side, n))) is not None]
    if method == "film" and not values and (photo := getattr(reached, f"{side}_film_photo")) is not None:
        method, values = "photo", [photo]
    placement = (reached.placement or "") if method == "level" else ""
    return tuple(Reading(_ID, value, unit_of(method), side, method, placement, number)
                 for number, value in enumerate(values, 1))


_UNSCORED: Final = {"other": ". But a brace, shoe or slip stopped it, so it decides nothing",
                    **dict.fromkeys(("cant_tell", "None"), ". But what stopped it is not known, so it decides nothing"),
                    "neither": ". But it was without a pull in the calf, so it decides nothing"}
"""Why a reading past a line is not scored, by what stopped the knee."""


def findings(reached: KneeToWall, context: FindingContext) -> Iterator[Finding]:
    """Yield each side compared with the two thresholds of its series. A short reading without a pull in the calf decides nothing.

    An ankle angle by phone level is trusted less than the tape: "phone_level_icc" in ``numbers/``, one study of several and the
    lowest; the step down is our choice.
    """
    show, unsettled = context.show, doubts(reached, context)
    for side in SIDES:
        taken = readings(reached, side)
        limit = getattr(reached, f"{side}_limit")
        if not taken:
            continue
        method = taken[0].method
        least, enough = (TAPE_LEAST, TAPE_ENOUGH) if unit_of(method) == "cm" else (SHIN_LEAST, SHIN_ENOUGH)
        less = {"level": "a phone level is trusted less", **dict.fromkeys(("film", "photo"), FILM_UNPROVEN)}.get(method, "")
        answer = against_threshold(taken, least, context.error(_ID, taken[0].method), show)
        mean, margin = mean_of(taken), abs(answer.margin) / answer.sem
        words = f"knee to wall {answer.words}"
        if side in unsettled:
            yield found(_ROWS["knee_to_wall_open"], side=side, words=unsettled[side].rstrip("."))
        elif limit == "pinch":
            yield found(_ROWS["knee_to_wall_pinch"], side=side)
        elif limit in ("calf", "neither") and mean >= enough.value and answer.answer == "clear":
            yield found(_ROWS["knee_to_wall_far"], side=side, less=less, margin=margin, words=(
                f"knee to wall {show(mean, taken[0].unit)}, which reaches the {enough.shown(show)} line "
                f"({STANDING_WORDS[enough.standing]})"))
        elif limit in ("calf", "neither") and answer.answer == "clear" and len(taken) == 3:
            yield found(_ROWS["knee_to_wall_clear"], side=side, less=less, words=words, margin=margin)
        elif limit == "calf" and answer.answer == "short":
            yield found(_ROWS["knee_to_wall_short"], side=side, less=less, words=words, margin=margin)
        else:
            why = _UNSCORED.get(str(limit), "") if answer.answer == "short" or (answer.answer == "clear" and limit != "neither") else ""
            yield found(_ROWS["knee_to_wall_open"], side=side, words=f"{words}{why}")


PROTOCOL: Final = Protocol(
    _ID, title="Knee to wall", short_name="knee to wall", looks_at="the calf and ankle", minutes=FLOOR_MINUTES, place=50, ease=3,
    needs=("wall", "tape"), posture=BodyPosition.STANDING, uses=(Work.STRETCH_CALF,), part="calf", record=KneeToWall,
    rows=tuple(_ROWS.values()),
    findings=findings, readings=readings, doubts=doubts, errors=WALL_ERRORS, thresholds=(TAPE_LEAST, TAPE_ENOUGH, SHIN_LEAST, SHIN_ENOUGH),
    lines_named=r"knee to wall|knee-to-wall|wall|10 ?cm|12\.5(?: ?cm)?|[45] ?(?:in|inch|inches)|37|42",
    picture="knee_to_wall_{side}",
    gain=Gain(value("gain_calf"), mdc=_LEVEL_MDC, method="tape", what="calf"),
)
