"""Change over several sessions: a robust slope with its interval; and change of pain, by the points that count.

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

# Four sessions in perfect order have a two-sided p of 2/4! = .083, five 2/5! = .017 (Kendall's tau, plain counting).
SESSIONS: Final = 5
SURENESS: Final = 0.95
_DAY: Final = 86_400.0
# Points of 0-10 pain that count, by starting pain: 1 at 1-4, 2 at 5-7, 3-4 at 8-10, n = 1,232 (doi 10.1055/a-1304-3677,
# read). Better asks for the larger of 3-4, worse for the smaller; a start of 0 counts as 1-4 (choice, the safe side).
PAIN_STEPS: Final = ((4.0, 1.0, 1.0), (7.0, 2.0, 2.0), (10.0, 4.0, 3.0))  # start up to, to be better, to be worse


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
    """The change of pain (0-10), after minus before; ``needed``: the points that count in that direction."""

    kind: Literal["better", "same", "worse"]
    amount: float
    needed: float
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
    month = 4 * abs(slope)
    said = {"better": f"Over {days} days of testing: about {show(month, first.unit)} more in four weeks",
            "worse": f"Over {days} days of testing: about {show(month, first.unit)} less in four weeks",
            "within_error": f"Over {days} days of testing: no steady change beyond what chance gives"}[kind]
    return Trend(kind, slope, low, high, len(sessions), (
        f"{said} (95 %: {_signed(4 * low, first.unit, show)} to {_signed(4 * high, first.unit, show)} in four weeks)."))


def pain_change(before: float, after: float) -> PainChange:
    """Return the change of back or hip pain, compared with the points that count from that start. Raises ValueError outside 0-10."""
    if not (0 <= before <= 10 and 0 <= after <= 10):
        raise ValueError("pain is told from 0 to 10")
    amount = after - before
    fewer, more = next((down, up) for top, down, up in PAIN_STEPS if before <= top)
    needed = fewer if amount <= 0 else more
    kind: Literal["better", "same", "worse"] = (
        "same" if abs(amount) < needed else "better" if amount < 0 else "worse")
    points = f"{abs(amount):g} {'point' if abs(amount) == 1 else 'points'} {'less' if amount < 0 else 'more'}"
    said = {"better": f"{points}, which counts", "worse": f"{points}, which counts",
            "same": f"{points}, which is within error" if amount else "the same"}[kind]
    return PainChange(kind, amount, needed, (
        f"Pain was {before:g} and is {after:g} now: {said} (from {before:g} it takes a change of {needed:g})."))


def _signed(value: float, unit: str, show: NumberFormat) -> str:
    """Return a number with its sign and unit."""
    return f"{'-' if value < 0 else '+'}{show(abs(value), unit)}"
