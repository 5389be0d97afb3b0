"""Change over several sessions: a robust slope with its interval; and change of pain, detectable and important.

Theil-Sen: the median of the slopes between every two sessions, with the 95 % interval of Sen's ranks (scipy's
theilslopes); one poor session does not dominate it. scipy is imported when first used.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain
from typing import Final, Literal

from companion.screening.readings import NumberFormat, mean_of, metric, one_way
from companion.screening.sessions import ReadingSession
from companion.screening.sources import SOURCES, value, with_numbers

# Four sessions in perfect order have a two-sided p of 2/4! = .083, five 2/5! = .017 (Kendall's tau, plain counting).
SESSIONS: Final = int(value("trend_sessions"))
SURENESS: Final = value("trend_chance")
TOLD_WEEKS: Final = value("trend_told")
TOLD_OVER: Final = with_numbers("{trend_told:count weeks}")
_DAY: Final = 86_400.0
PAIN_DETECTABLE: Final = value("pain_detectable")
# What people call important, from and to, by the pain it starts from; a start of 0 counts as 1-4 (choice, the safe side).
_ONE, _TWO, _THREE, _FOUR = SOURCES["pain_important"].value
PAIN_IMPORTANT: Final = ((4.0, _ONE, _ONE), (7.0, _TWO, _TWO), (10.0, _THREE, _FOUR))


@dataclass(frozen=True, slots=True)
class Trend:
    """The slope of readings over sessions, in their unit per week, and its 95 % interval; more is better.

    "within_error": the interval holds 0. "cannot_say": too few days, or by eye; slope and interval are 0 then.
    """

    kind: Literal["better", "within_error", "worse", "cannot_say"]
    slope: float
    low: float
    high: float
    sessions: int
    words: str


@dataclass(frozen=True, slots=True)
class PainChange:
    """The change of pain (0-10), after minus before: ``detectable``, beyond measurement error; ``important``, what people starting
    there call so. Two different things in the source. Better must be detectable; worse need only be one of them (choice, the safe side)."""

    kind: Literal["better", "same", "worse"]
    amount: float
    detectable: bool
    important: bool
    words: str


def trend(sessions: Sequence[ReadingSession], show: NumberFormat = metric) -> Trend:
    """Return the trend of five sessions or more on different days, each by the mean of its repeats.

    Raises ValueError, with the reason, for no sessions, for two sides, and for different methods, placements, efforts or
    warm-ups. By eye the kind is "cannot_say".
    """
    first = one_way(tuple(chain.from_iterable(session.readings for session in sessions)))
    if any(not session.readings for session in sessions):
        raise ValueError("each session needs a reading")
    days = len({session.at.date() for session in sessions})
    if first.width:
        return Trend("cannot_say", 0.0, 0.0, 0.0, len(sessions), "By eye is too rough for a trend.")
    if days < SESSIONS:
        return Trend("cannot_say", 0.0, 0.0, 0.0, len(sessions),
                     f"A trend takes {SESSIONS} sessions on different days, done the same way; there are {days}.")
    from scipy.stats import theilslopes  # type: ignore[import-untyped]

    start = min(session.at for session in sessions)
    weeks = [(session.at - start).total_seconds() / _DAY / 7 for session in sessions]
    slope, _, low, high = map(float, theilslopes([mean_of(s.readings) for s in sessions], weeks, SURENESS))
    kind: Literal["better", "within_error", "worse"] = (
        "better" if low > 0 else "worse" if high < 0 else "within_error")
    change = TOLD_WEEKS * abs(slope)
    said = {"better": f"Over {days} days of testing: about {show(change, first.unit)} more in {TOLD_OVER}",
            "worse": f"Over {days} days of testing: about {show(change, first.unit)} less in {TOLD_OVER}",
            "within_error": f"Over {days} days of testing: no steady change beyond what chance gives"}[kind]
    return Trend(kind, slope, low, high, len(sessions), (
        f"{said} ({SURENESS * 100:g} %: {_signed(TOLD_WEEKS * low, first.unit, show)} to "
        f"{_signed(TOLD_WEEKS * high, first.unit, show)} in {TOLD_OVER})."))


def pain_change(before: float, after: float) -> PainChange:
    """Return the change of back or hip pain, compared with the detectable one and with the important one from that start.

    Raises ValueError outside 0-10.
    """
    if not (0 <= before <= 10 and 0 <= after <= 10):
        raise ValueError("pain is told from 0 to 10")
    amount = after - before
    low, high = next((least, most) for top, least, most in PAIN_IMPORTANT if before <= top)
    detectable, important = abs(amount) >= PAIN_DETECTABLE, abs(amount) >= low
    kind: Literal["better", "same", "worse"] = (
        "better" if amount < 0 and detectable else "worse" if amount > 0 and (detectable or important) else "same")
    was = f"Pain was {before:g} and is {after:g} now"
    if not amount:
        return PainChange(kind, amount, detectable, important, f"{was}: the same.")
    said = f"{was}: {_points(abs(amount))} {'less' if amount < 0 else 'more'}, {'beyond' if detectable else 'within'} " \
           f"measurement error ({PAIN_DETECTABLE:g})"
    matters = f"from {before:g} people call {f'{low:g} to ' if low < high else ''}{_points(high)} important"
    if detectable == important:
        tail = f"; {matters}." if important else "."
    elif detectable:
        tail = f", but {matters}."
    else:
        tail = f"; {matters}, so I count it as worse (our choice)." if amount > 0 else f", though {matters}."
    return PainChange(kind, amount, detectable, important, said + tail)


def _points(amount: float) -> str:
    return f"{amount:g} {'point' if amount == 1 else 'points'}"


def _signed(value: float, unit: str, show: NumberFormat) -> str:
    """Return a number with its sign and unit."""
    return f"{'-' if value < 0 else '+'}{show(abs(value), unit)}"
