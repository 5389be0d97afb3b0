"""A lifter's own measurement error: the published one to start from, their own repeats on top, never below it.

SEM from repeats: the differences of paired readings / sqrt(2), pooled over sessions by degrees of
freedom. The differences are not centred: a drift from one repeat to the next (leg raise about 9 %: Ayala 2012 J Sci Med
Sport 15:142, read) stays in as error, which errs on the safe side.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import sqrt
from statistics import fmean
from typing import Final

from companion.screening.protocols import error_of
from companion.screening.readings import Error, Reading, one_way
from companion.screening.screen import LoggedAnswer
from companion.screening.sessions import ReadingSession, all_sessions
from companion.screening.sources import value

# Weight of the published SEM against own repeats: five pairs (choice). Low enough for an unsteady hand to show within one
# or two screens, high enough for one bad pair not to decide.
PRIOR_PAIRS: Final = int(value("prior_pairs"))


@dataclass(frozen=True, slots=True)
class Repeats:
    """The spread of repeats within sessions, for one test and method.

    ``squares``: the squared distances from each session's own mean, summed (for a pair: difference squared / 2), in the
    reading's unit squared. ``df``: degrees of freedom, one less than the readings of each session, summed.
    """

    test: str
    method: str
    squares: float
    df: int


@dataclass(frozen=True, slots=True)
class Errors:
    """The measurement errors of one lifter: the published ones for their sex, and their own repeats."""

    sex: str | None = None
    repeats: tuple[Repeats, ...] = ()

    def of(self, test: str, method: str) -> Error:
        """Return this lifter's error for one test and method. Raises ValueError if none is published."""
        published = error_of(test, method, self.sex)
        own = [r for r in self.repeats if (r.test, r.method) == (test, method)]
        return updated(published, sum(r.squares for r in own), sum(r.df for r in own))


def updated(published: Error, squares: float, df: int) -> Error:
    """Return a published error updated with own repeats: variances pooled by degrees of freedom, never below the published one.

    The steady part of an error does not show in repeats, so it is taken out first and added back. With own repeats in it
    the result counts as this project's choice.
    """
    if not df:
        return published
    start = published.sem**2 - published.steady**2
    pooled = (PRIOR_PAIRS * start + squares) / (PRIOR_PAIRS + df)
    return replace(published, sem=max(published.sem, sqrt(pooled + published.steady**2)), own=df, standing="choice",
                   source=f"{published.source}; with {df} of your own repeats")


def repeats_of(sessions: Iterable[Iterable[Reading]]) -> tuple[Repeats, ...]:
    """Return the spread of repeats by test and method, pooled over sessions; readings by eye give none.

    Raises ValueError if the readings of one session were not all taken the same way.
    """
    pooled: dict[tuple[str, str], tuple[float, int]] = {}
    for session in sessions:
        readings = tuple(session)
        if len(readings) < 2 or one_way(readings).width:
            continue
        mean = fmean(reading.value for reading in readings)
        key = (readings[0].test, readings[0].method)
        squares, df = pooled.get(key, (0.0, 0))
        pooled[key] = (squares + sum((reading.value - mean) ** 2 for reading in readings), df + len(readings) - 1)
    return tuple(Repeats(test, method, squares, df) for (test, method), (squares, df) in sorted(pooled.items()))


def errors_from(answers: Iterable[LoggedAnswer], sex: str | None = None) -> Errors:
    """Return a lifter's errors from their answer log."""
    return errors_in(all_sessions(answers).values(), sex)


def errors_in(sessions: Iterable[Iterable[ReadingSession]], sex: str | None = None) -> Errors:
    """Return a lifter's errors from the sessions of all measured tests, both sides together."""
    return Errors(sex, repeats_of(session.readings for taken in sessions for session in taken))
