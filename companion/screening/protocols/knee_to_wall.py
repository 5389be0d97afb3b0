"""Knee to wall: how far the knee travels past the toes while the heel stays down."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from companion.screening.evidence import Finding, Grade, Row, by_id, found
from companion.screening.protocol import Gain, Protocol, Seen
from companion.screening.readings import MDC_FACTOR, SIDES, STANDING_WORDS, Error, Line, Reading, against_line, mean_of
from companion.screening.safety import Posture

ID: Final = "knee_to_wall"


@dataclass(frozen=True, slots=True)
class KneeToWall:
    """Up to three readings a side: cm by tape, or the shin's degrees from upright by level; and what ended it."""

    method: str | None = None
    placement: str | None = None
    left_1: float | None = None
    left_2: float | None = None
    left_3: float | None = None
    left_deg_1: float | None = None
    left_deg_2: float | None = None
    left_deg_3: float | None = None
    left_limit: str | None = None
    right_1: float | None = None
    right_2: float | None = None
    right_3: float | None = None
    right_deg_1: float | None = None
    right_deg_2: float | None = None
    right_deg_3: float | None = None
    right_limit: str | None = None


ERRORS: Final = (
    Error(ID, "tape", 1.9 / MDC_FACTOR, "cm", "Powden 2015 Man Ther 20:524: MDC 1.9 cm", "read"),
    Error(ID, "level", 4.7 / MDC_FACTOR, "deg", "Powden 2015 Man Ther 20:524: MDC 4.7 deg", "read"))

LEAST: Final = Line("enough for most squats, from", ID, 10.0, "cm", "4 in", "common practice")
ENOUGH: Final = Line("enough for most squats, to", ID, 12.5, "cm", "5 in", "common practice")
# Degrees are a series of their own; no printed line. The 10 and 12.5 cm lines stand 0.4 SD under and 0.2 SD over the
# mean of Calatayud 2015 IJSPT 10:197 (11.6 +- 4.0 cm; 40.0 +- 5.8 deg, n = 26): 37.7 and 41.3, moved apart.
SHIN_LEAST: Final = Line("enough for most squats, from", ID, 37.0, "deg", "after Calatayud 2015", "choice")
SHIN_ENOUGH: Final = Line("enough for most squats, to", ID, 42.0, "deg", "after Calatayud 2015", "choice")

ROWS: Final = by_id(
    Row("knee_to_wall_short", ID, "Knee to wall clear short, pull in the calf", "calf", "for", Grade.MODERATE, sided=True),
    Row("knee_to_wall_far", ID, "Knee to wall at the upper line or past it", "calf", "against", Grade.STRONG, sided=True),
    Row("knee_to_wall_clear", ID, "Knee to wall clear of the lower line, mean of 3", "calf", "against", Grade.WEAK, sided=True),
    Row("knee_to_wall_open", ID, "Knee to wall decides nothing", "calf", "neither", Grade.NONE, sided=True, standing="choice"),
    Row("knee_to_wall_pinch", ID, "A pinch at the front of the ankle: not scored", "calf", "neither", Grade.NONE, sided=True,
        standing="choice", pinched=True),
)


def readings(reached: KneeToWall, side: str) -> tuple[Reading, ...]:
    """The knee-to-wall readings of one side: cm by tape, or degrees of the shin from upright by level."""
    by_level = reached.method == "level"
    if not by_level and reached.method != "tape":
        return ()
    names = [f"{side}_deg_{n}" if by_level else f"{side}_{n}" for n in (1, 2, 3)]
    values = [value for name in names if (value := getattr(reached, name)) is not None]
    unit, placement = ("deg", reached.placement or "") if by_level else ("cm", "")
    return tuple(Reading(ID, value, unit, side, str(reached.method), placement, number)
                 for number, value in enumerate(values, 1))


def findings(reached: KneeToWall, seen: Seen) -> Iterator[Finding]:
    """Each side against the two lines of its own series. Without a pull in the calf a short reading decides nothing.

    An ankle angle by phone level is trusted less than the tape (ICC .65-.82, Zunko & Vauhnik 2021 PeerJ 9:e11977, read; the
    step down is our choice).
    """
    show = seen.show
    for side in SIDES:
        taken = readings(reached, side)
        limit = getattr(reached, f"{side}_limit")
        if not taken:
            continue
        by_level = taken[0].unit == "deg"
        least, enough = (SHIN_LEAST, SHIN_ENOUGH) if by_level else (LEAST, ENOUGH)
        less = "a phone level is trusted less" if by_level else ""
        keys = ("method", "placement", *(f"{side}_{'deg_' if by_level else ''}{n}" for n in (1, 2, 3)), f"{side}_limit")
        answer = against_line(taken, least, seen.error(ID, taken[0].method), show)
        mean = mean_of(taken)
        words = f"knee to wall {answer.words}"
        if limit == "pinch":
            yield found(ROWS["knee_to_wall_pinch"], *keys, side=side)
        elif limit in ("calf", "neither") and mean >= enough.value and answer.answer == "clear":
            yield found(ROWS["knee_to_wall_far"], *keys, side=side, less=less, words=(
                f"knee to wall {show(mean, taken[0].unit)}: reaches the {show(enough.value, enough.unit)} line "
                f"({STANDING_WORDS[enough.standing]})"))
        elif limit in ("calf", "neither") and answer.answer == "clear" and len(taken) == 3:
            yield found(ROWS["knee_to_wall_clear"], *keys, side=side, less=less, words=words)
        elif limit == "calf" and answer.answer == "short":
            yield found(ROWS["knee_to_wall_short"], *keys, side=side, less=less, words=words)
        else:
            yield found(ROWS["knee_to_wall_open"], *keys, side=side, words=words)


PROTOCOL: Final = Protocol(
    ID, title="Knee to wall", short_name="knee to wall", looks_at="the calf and ankle", minutes=4, place=50, short=True, ease=3,
    needs=("wall", "tape"), posture=Posture.STANDING, part="calf", record=KneeToWall, rows=tuple(ROWS.values()),
    findings=findings, readings=readings, errors=ERRORS, lines=(LEAST, ENOUGH, SHIN_LEAST, SHIN_ENOUGH),
    picture="knee_to_wall_{side}",
    # 15-30 min of stretching in all: +3.03 deg, Radford 2006 Br J Sports Med 40:870 (read); MDC: Powden 2015, as above (read).
    gain=Gain(3.03, mdc=4.7, method="tape", what="calf"),
)
