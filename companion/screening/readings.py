"""Readings: numbers with how they were taken, their measurement error, and the lines they are held against.

SEM is the standard error of measurement of one reading; MDC95 = 1.96 * sqrt(2) * SEM (Weir 2005 J Strength Cond Res
19:231, read). Every published error is a trained rater's: a lifter alone at home is never taken to be more exact.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil, fsum, sqrt
from typing import Final, Literal

SourceStanding = Literal["read", "second-hand", "memory", "common practice", "choice"]
NumberFormat = Callable[[float, str], str]
SIDES: Final = ("left", "right")

Z_ONE_SIDED_95: Final = 1.645  # a line is passed or not: one-sided
MDC_FACTOR: Final = 1.96 * sqrt(2)  # 2.772
EYE_TOP: Final = 120.0  # deg: the outermost band by eye is as wide as a leg can go (choice)

STANDING_WORDS: Final[dict[SourceStanding, str]] = {
    "read": "published", "second-hand": "published, second-hand", "memory": "from memory",
    "common practice": "common practice", "choice": "our cautious choice"}


def metric(value: float, unit: str) -> str:
    """A number with its unit as plain text: one decimal for cm and kg where needed, whole degrees."""
    if unit == "deg":
        return f"{value:.0f}°"
    return f"{value:.1f}".removesuffix(".0") + f" {unit}"


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading: value in its unit (deg, cm), side, and how it was taken.

    ``width``: the whole width of the band that a reading by eye fell into, its value being the middle; 0 for a number.
    ``method`` names the effort too where that changes the reading ("level_own", "heel_strap"); ``warm_up`` what was done
    before it, "" where that is not known.
    """

    test: str
    value: float
    unit: str
    side: str
    method: str
    placement: str = ""
    repeat: int = 1
    width: float = 0.0
    warm_up: str = ""


@dataclass(frozen=True, slots=True)
class Error:
    """The measurement error of one test and method: SEM in the unit of the reading, and where it comes from.

    ``steady``: the part of it that is the same at every reading, and so never shows in repeats. ``own``: how many
    degrees of freedom of the lifter's own repeats are in it; 0 for the published one.
    """

    test: str
    method: str
    sem: float
    unit: str
    source: str
    standing: SourceStanding
    steady: float = 0.0
    own: int = 0

    @property
    def mdc(self) -> float:
        """The smallest change between two single readings that is not error: MDC95 = 1.96 * sqrt(2) * SEM."""
        return MDC_FACTOR * self.sem

    def of_mean(self, repeats: int) -> float:
        """The error of the mean of repeats: SEM / sqrt(repeats), but the steady part does not get less by repeating."""
        return sqrt(self.steady**2 + (self.sem**2 - self.steady**2) / repeats)


@dataclass(frozen=True, slots=True)
class Threshold:
    """A value that readings are held against, and who says so."""

    name: str
    test: str
    value: float
    unit: str
    source: str
    standing: SourceStanding


@dataclass(frozen=True, slots=True)
class ThresholdAnswer:
    """On which side of a line readings fall: clear (above, beyond error), short (below, beyond error), or close.

    ``margin``: mean minus line (by eye: from the nearer edge of the band, 0 where it touches or straddles the line).
    ``sem`` of one reading; ``standing`` of the line.
    """

    answer: Literal["clear", "short", "close"]
    margin: float
    words: str
    line: Threshold
    sem: float
    standing: SourceStanding


@dataclass(frozen=True, slots=True)
class Difference:
    """Left minus right, and whether it is more than error."""

    amount: float
    counts: bool
    words: str


def one_way(readings: Sequence[Reading]) -> Reading:
    """The first of readings that may be averaged: one test, side, unit, method, placement, warm-up.

    ValueError otherwise, saying why.
    """
    if not readings:
        raise ValueError("there is no reading")
    first = readings[0]
    for other in readings[1:]:
        _alike(first, other)
        if other.side != first.side:
            raise ValueError(f"{first.side} and {other.side} are not averaged")
    return first


def sessions_to_average(mdc: float, gain: float) -> int:
    """How many sessions to average at each end for a gain to show: the smallest k with MDC / sqrt(k) <= gain."""
    return max(1, ceil((mdc / gain) ** 2))


def mean_of(readings: Sequence[Reading]) -> float:
    """The mean of repeats taken one way."""
    one_way(readings)
    return fsum(reading.value for reading in readings) / len(readings)


def against_threshold(readings: Sequence[Reading], line: Threshold, error: Error, show: NumberFormat = metric) -> ThresholdAnswer:
    """Repeats of one reading held against a line: beyond 1.645 * SEM / sqrt(repeats) it is clear or short, else close.

    What is the same at every repeat (a heel's height: where the hip is) does not get less by repeating.

    By eye the whole band counts as error: a band that straddles or touches the line is close.
    """
    first = one_way(readings)
    if (first.test, first.unit) != (line.test, line.unit):
        raise ValueError(f"{first.test} in {first.unit} can't be held against a line in {line.unit} for {line.test}")
    mean = mean_of(readings)
    if first.width:
        low = min(reading.value - reading.width / 2 for reading in readings)
        high = max(reading.value + reading.width / 2 for reading in readings)
        margin = max(low - line.value, 0.0) + min(high - line.value, 0.0)
        beyond = 0.0
    else:
        margin, beyond = mean - line.value, Z_ONE_SIDED_95 * error.of_mean(len(readings))
    answer: Literal["clear", "short", "close"] = (
        "clear" if margin > beyond else "short" if margin < -beyond else "close")
    return ThresholdAnswer(answer, margin, _line_words(answer, first, mean, beyond, line, show), line, error.sem,
                      line.standing)


def side_difference(left: Sequence[Reading], right: Sequence[Reading], error: Error, show: NumberFormat = metric) -> Difference:
    """Left against right, taken the same way: counts beyond 1.645 * SEM * sqrt(1/repeats left + 1/repeats right).

    With as many repeats on each side that is sqrt(2) * 1.645 * SEM / sqrt(repeats): one-sided like a line, for the
    error of a difference (choice). By eye it counts where the two bands do not touch.
    """
    one, other = one_way(left), one_way(right)
    _alike(one, other)
    amount = mean_of(left) - mean_of(right)
    beyond = Z_ONE_SIDED_95 * error.sem * sqrt(1 / len(left) + 1 / len(right))
    if one.width:
        beyond = (one.width + other.width) / 2
    counts = abs(amount) > beyond
    size = show(abs(amount), one.unit)
    if counts:
        more = "left" if amount > 0 else "right"
        return Difference(amount, True, f"The {more} side has {size} more: beyond measurement error.")
    return Difference(amount, False, f"Left and right are {size} apart: within measurement error.")


def _alike(one: Reading, other: Reading) -> None:
    """ValueError where two readings are not of one kind."""
    for what, a, b in (("test", one.test, other.test), ("unit", one.unit, other.unit),
                       ("method", one.method, other.method), ("placement", one.placement, other.placement),
                       ("warm-up", one.warm_up, other.warm_up)):
        if a != b:
            raise ValueError(f"readings with a different {what} can't be compared: {a or 'not said'}, {b or 'not said'}")


def _line_words(answer: str, first: Reading, mean: float, beyond: float, line: Threshold, show: NumberFormat) -> str:
    """What a line's answer says, in one sentence."""
    at = f"the {show(line.value, line.unit)} line ({STANDING_WORDS[line.standing]})"
    seen = _by_eye(first, show) if first.width else show(mean, first.unit)
    if answer == "close":
        doubt = "the eye is too rough here" if first.width else f"it may be {show(beyond, first.unit)} off"
        return f"{seen}: too close to {at} to call, {doubt}"
    return f"{seen}: clear of {at}" if answer == "clear" else f"{seen}: clear short of {at}"


def _by_eye(reading: Reading, show: NumberFormat) -> str:
    """The band of a reading by eye."""
    low, high = (reading.value + way * reading.width / 2 for way in (-1, 1))
    if low <= 0:
        return f"under {show(high, reading.unit)} by eye"
    top = f" to {show(high, reading.unit)}" if high < EYE_TOP else ""
    return f"{show(low, reading.unit)}{top or ' or more'} by eye"
