"""Readings: measured numbers with their method, their measurement error, and the thresholds they are compared with.

SEM is the standard error of measurement of one reading; MDC95 = 1.96 * sqrt(2) * SEM ("mdc" in ``numbers/``).
Every published error is that of a trained rater: a lifter alone at home is never assumed to be more exact.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil, fsum, sqrt
from typing import Final, Literal

SourceStanding = Literal["read", "second-hand", "memory", "common practice", "choice"]
NumberFormat = Callable[[float, str], str]
SIDES: Final = ("left", "right")

Z_ONE_SIDED_95: Final = 1.645  # one-sided: a threshold is passed or not
Z_TWO_SIDED_95: Final = 1.96
MDC_FACTOR: Final = Z_TWO_SIDED_95 * sqrt(2)  # 2.772
EYE_TOP: Final = 120.0  # deg: the outermost band by eye is as wide as a leg can go (choice)

STANDING_WORDS: Final[dict[SourceStanding, str]] = {
    "read": "published", "second-hand": "published, second-hand", "memory": "from memory",
    "common practice": "common practice", "choice": "our cautious choice"}


def metric(value: float, unit: str) -> str:
    """Return a number with its unit as plain text: whole degrees, else one decimal if needed."""
    if unit == "deg":
        return f"{value:.0f}°"
    return f"{value:.1f}".removesuffix(".0") + f" {unit}"


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading: value in its unit (deg, cm), side and method.

    ``width``: the full width of the band of a reading by eye, whose value is the middle; 0 for a measured number.
    ``method`` includes the effort if that changes the reading ("level_own", "heel_strap"); ``warm_up``: the warm-up before
    it, "" if not known.
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
    """The measurement error of one test and method: SEM in the unit of the reading, and its source.

    ``steady``: the part that is the same at every reading, and so never shows in repeats. ``own``: degrees of freedom from
    the lifter's own repeats; 0 for the published error.
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
        """The minimal detectable change between two single readings: MDC95 = 1.96 * sqrt(2) * SEM."""
        return MDC_FACTOR * self.sem

    @property
    def beyond(self) -> float:
        """The distance from a threshold at which a reading, or the mean of a session's repeats, is past it: 1.645 * SEM.

        Repeats of one minute share what makes a session differ from the next, so the SEM is never divided by their number.
        """
        return Z_ONE_SIDED_95 * self.sem


@dataclass(frozen=True, slots=True)
class Threshold:
    """A value that readings are compared with, and its source; called a line in messages. ``inches``: what readers of inches are told,
    where the rule is in inches; 0: the value, converted."""

    name: str
    test: str
    value: float
    unit: str
    source: str
    standing: SourceStanding
    inches: float = 0.0

    def shown(self, show: NumberFormat) -> str:
        """Return the value in the reader's units."""
        words = show(self.value, self.unit)
        return f"{self.inches:g} in" if self.inches and words.endswith(" in") else words


@dataclass(frozen=True, slots=True)
class ThresholdAnswer:
    """The result of comparing readings with a threshold: clear (above, beyond error), short (below, beyond error), or close.

    ``margin``: mean minus threshold (by eye: from the nearer edge of the band, 0 if it touches or straddles the threshold).
    ``seen``: the readings in words, ``compared``: the result in words. ``sem`` of one reading; ``standing`` of the threshold.
    """

    answer: Literal["clear", "short", "close"]
    margin: float
    seen: str
    compared: str
    line: Threshold
    sem: float
    standing: SourceStanding

    @property
    def words(self) -> str:
        """Both, as the end of a sentence: "14 cm, clearly over the 10 cm line (common practice)"."""
        return f"{self.seen}, {self.compared}"


@dataclass(frozen=True, slots=True)
class Difference:
    """Left minus right; ``counts``: True if that is beyond measurement error."""

    amount: float
    counts: bool
    words: str


def one_way(readings: Sequence[Reading]) -> Reading:
    """Return the first of readings that may be averaged: same test, side, unit, method, placement and warm-up.

    Raises ValueError otherwise, with the reason.
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
    """Return the number of sessions to average at each end to detect a gain: the smallest k with MDC / sqrt(k) <= gain."""
    return max(1, ceil((mdc / gain) ** 2))


def mean_of(readings: Sequence[Reading]) -> float:
    """Return the mean of repeats. Raises ValueError if they were not taken the same way."""
    one_way(readings)
    return fsum(reading.value for reading in readings) / len(readings)


def against_threshold(readings: Sequence[Reading], line: Threshold, error: Error, show: NumberFormat = metric) -> ThresholdAnswer:
    """Return the comparison of a session's readings with a threshold: beyond 1.645 * SEM they are clear or short, else close.

    By eye the whole band counts as error: a band that straddles or
    touches the threshold is close. Raises ValueError for another test or unit, or readings not taken the same way.
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
        margin, beyond = mean - line.value, error.beyond
    answer: Literal["clear", "short", "close"] = (
        "clear" if margin > beyond else "short" if margin < -beyond else "close")
    seen = _by_eye(first, show) if first.width else show(mean, first.unit)
    return ThresholdAnswer(answer, margin, seen, _compared(answer, first, beyond, line, show), line, error.sem, line.standing)


def side_difference(left: Sequence[Reading], right: Sequence[Reading], error: Error, show: NumberFormat = metric) -> Difference:
    """Return left minus right; it counts beyond MDC95, as a change between two sessions does.

    By eye it counts if the two bands do not touch. Raises ValueError if not taken the same way.
    """
    one, other = one_way(left), one_way(right)
    _alike(one, other)
    amount = mean_of(left) - mean_of(right)
    beyond = error.mdc
    if one.width:
        beyond = (one.width + other.width) / 2
    counts = abs(amount) > beyond
    size = show(abs(amount), one.unit)
    if counts:
        more = "left" if amount > 0 else "right"
        return Difference(amount, True, f"The {more} side has {size} more, which is beyond measurement error.")
    return Difference(amount, False, f"Left and right are {size} apart, which is within measurement error.")


def _alike(one: Reading, other: Reading) -> None:
    """Raise ValueError if two readings were not taken the same way."""
    for what, a, b in (("test", one.test, other.test), ("unit", one.unit, other.unit),
                       ("method", one.method, other.method), ("placement", one.placement, other.placement),
                       ("warm-up", one.warm_up, other.warm_up)):
        if a != b:
            raise ValueError(f"readings with a different {what} can't be compared: {a or 'not said'}, {b or 'not said'}")


def _compared(answer: str, first: Reading, beyond: float, line: Threshold, show: NumberFormat) -> str:
    """Return the result of a comparison in words."""
    at = f"the {line.shown(show)} line ({STANDING_WORDS[line.standing]})"
    if answer == "close":
        doubt = "the eye is too rough here" if first.width else f"the reading may be {show(beyond, first.unit)} off"
        return f"too close to {at} to call: {doubt}"
    return f"clearly {'over' if answer == 'clear' else 'under'} {at}"


def _by_eye(reading: Reading, show: NumberFormat) -> str:
    """Return the band of a reading by eye, in words."""
    low, high = (reading.value + way * reading.width / 2 for way in (-1, 1))
    if low <= 0:
        return f"under {show(high, reading.unit)} by eye"
    top = f" to {show(high, reading.unit)}" if high < EYE_TOP else ""
    return f"{show(low, reading.unit)}{top or ' or more'} by eye"
