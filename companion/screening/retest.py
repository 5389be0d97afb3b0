"""The date of the next test, and change beyond measurement error.

First retest week = MDC * T / gain with T = 6 weeks, within 2-8 weeks; all in ``numbers/`` under "retest". The gains are in
``Protocol.gain``. MDC95 = 1.96 * sqrt(2) * SEM, divided by sqrt(k) for means over k sessions at each end, never for the repeats
within one session.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import chain
from math import sqrt
from statistics import fmean
from typing import Final, Literal

from companion.base.clock import local_date
from companion.screening.about import About
from companion.screening.conclusion import Conclusion
from companion.screening.errors import Errors
from companion.screening.pairs import LOOK
from companion.screening.protocol import Gain
from companion.screening.protocols import error_of, protocol, protocols, route
from companion.screening.readings import (
    SIDES,
    STANDING_WORDS,
    Error,
    NumberFormat,
    Reading,
    SourceStanding,
    mean_of,
    metric,
    one_way,
    sessions_to_average,
)
from companion.screening.rulings import PartVerdict, Ruling, settling_test
from companion.screening.screen import LoggedAnswer, Screen
from companion.screening.sources import SOURCES, value

PROGRAMME_WEEKS: Final = value("programme_weeks")
SOONEST, LATEST = SOURCES["retest_bounds"].value
OTHER_WEEKS: Final = value("retest_other")
MONTHLY: Final = value("monthly")  # "usual training, film monthly"


@dataclass(frozen=True, slots=True)
class RetestItem:
    """One test to repeat: the weeks until then (0: any day, it is not settled), and the number of sessions."""

    test: str
    weeks: float
    sessions: int
    words: str
    standing: SourceStanding


@dataclass(frozen=True, slots=True)
class RetestPlan:
    """The tests to repeat, and the date. ``weeks``: 2-8, for one reminder; None if there is nothing to repeat."""

    weeks: float | None
    tests: tuple[RetestItem, ...]
    words: str

    @property
    def days(self) -> int | None:
        """The weeks as whole days from now."""
        return None if self.weeks is None else round(self.weeks * 7)


@dataclass(frozen=True, slots=True)
class ReadingChange:
    """The change between readings. ``amount``: after minus before; ``mdc``: the least that counts."""

    kind: Literal["better", "within_error", "worse", "cannot_say"]
    amount: float
    mdc: float
    words: str


def weeks_until_visible(mdc: float, gain: float, programme: float = PROGRAMME_WEEKS) -> float:
    """Return the weeks until the expected gain reaches the detectable change: MDC * T / gain; unbounded."""
    return mdc * programme / gain


def bounded(weeks: float) -> float:
    """Return the weeks limited to 2-8, to a tenth."""
    return round(min(max(weeks, SOONEST), LATEST), 1)


def plan(conclusion: Conclusion, screen: Screen, about: About, errors: Errors | None = None) -> RetestPlan:
    """Return the tests to repeat and the date: only parts likely, too close to call or untested, and the squat look.

    The date is that of the part with the drill; without one, the latest of all tests to repeat. ``errors``: the lifter's
    own measurement errors; None means the published ones for their sex. A greater error means a later date or more sessions.
    """
    errors = errors or Errors(about.sex)
    if conclusion.overall in ("normal", "no_rounding"):
        return RetestPlan(None, (), "Nothing needs testing again unless something changes.")
    if conclusion.overall == "unexplained":
        look = RetestItem(LOOK.id, MONTHLY, 1, "Film your squat from the side once a month.", "choice")
        return RetestPlan(MONTHLY, (look,), "Usual training. Film your squat from the side once a month.")
    weeks: dict[str, float] = {LOOK.id: OTHER_WEEKS}
    parts = [part for verdict in conclusion.verdicts for part in verdict.parts if part.ruling != Ruling.RULED_OUT]
    for part in parts:
        for test in _tests_of(part):
            due = weeks_of(test, screen, errors) if part.ruling == Ruling.LIKELY or part.part == conclusion.part else 0.0
            weeks[test] = max(due, weeks.get(test, 0.0))
    tests = tuple(_again(test, weeks[test], screen, errors) for test in route() if test in weeks)
    own = next((test for test, one in protocols().items() if one.gain and one.part == conclusion.part), "")
    due = weeks_of(own, screen, errors) if own else OTHER_WEEKS if conclusion.part else max(weeks.values())
    standing = STANDING_WORDS[_standing(_visible(own, screen, errors) if own else None)]
    return RetestPlan(due, tests, f"Test again in about {due:g} weeks ({standing}), with the same warm-up and the same methods. "
                            "Some of it can be done any day.")


def next_day(again: RetestPlan, answers: Iterable[LoggedAnswer], zone: str, today: date) -> date | None:
    """Return the day of the next test, counted from the last one: reading the results again moves no date. Tomorrow where that is past;
    None where nothing is to be repeated."""
    due = due_day(again, answers, zone, today)
    return max(due, today + timedelta(days=1)) if due else None


def due_day(again: RetestPlan, answers: Iterable[LoggedAnswer], zone: str, today: date) -> date | None:
    """Return the day from which a change could show, counted from the last test; None if nothing is to be repeated."""
    if again.days is None:
        return None
    return max((local_date(row.at, zone) for row in answers if row.flow in protocols()), default=today) + timedelta(days=again.days)


def change(before: Sequence[Sequence[Reading]], after: Sequence[Sequence[Reading]], error: Error | None = None,
           show: NumberFormat = metric) -> ReadingChange:
    """Return the change between the means over sessions, compared with MDC95; more is better.

    ``before`` and ``after``: the repeats of each session, all taken the same way (else ValueError, with the reason). MDC95 of
    means over k and n sessions is 1.96 * SEM * sqrt(1/k + 1/n): MDC / sqrt(k) if both are k. If a test's published gain needs
    several sessions to show, as for the calf, one session within MDC95 gives "cannot_say". By eye the bands must not touch.
    """
    first = one_way(tuple(chain.from_iterable((*before, *after))))
    if not before or not after or not all((*before, *after)):
        raise ValueError("each end needs a session with a reading")
    error = error or error_of(first.test, first.method)
    amount = fmean(map(mean_of, after)) - fmean(map(mean_of, before))
    mdc = error.mdc * sqrt((1 / len(before) + 1 / len(after)) / 2)
    if first.width:
        mdc = (_width(before) + _width(after)) / 2
    size = show(abs(amount), first.unit)
    gain = protocol(first.test).gain
    if gain and gain.sessions > 1 and min(len(before), len(after)) < 2 and abs(amount) <= mdc:
        wanted = sessions_to_average(_mdc(gain, error), gain.amount)
        return ReadingChange("cannot_say", amount, mdc, (
            f"The difference is {size}, but one session can't show {f'{gain.what} ' if gain.what else ''}change: "
            f"it takes the average of {wanted} sessions at each end."))
    limit = show(mdc, first.unit)
    if abs(amount) <= mdc:
        alike = "just over " if limit == size and abs(amount) < mdc else ""
        return ReadingChange("within_error", amount, mdc,
                      f"The difference of {size} is within measurement error ({alike}{limit}), so no change is shown.")
    alike = "just under " if limit == size else ""
    return ReadingChange("better" if amount > 0 else "worse", amount, mdc,
                  f"{size} {'more' if amount > 0 else 'less'} than before, "
                  f"which is beyond measurement error ({alike}{limit}).")


def _width(sessions: Iterable[Iterable[Reading]]) -> float:
    """Return the width of the widest band among readings by eye."""
    return max(reading.width for session in sessions for reading in session)


def _tests_of(part: PartVerdict) -> tuple[str, ...]:
    """Return the tests with findings about a part, without hints, and, unless it is likely, the most informative one to do next."""
    spoken = tuple(dict.fromkeys(f.row.test for f in part.because if not f.row.hint))
    return spoken if part.ruling == Ruling.LIKELY else (*spoken, settling_test(part.part, part.because))


def _visible(test: str, screen: Screen, errors: Errors) -> tuple[float, float] | None:
    """Return the detectable change and the expected gain of a measured test by the method used; None if it has none.

    The MDC of readings in the gain's own unit is in whole degrees, as printed.
    """
    one, record = protocol(test), screen.get(test)
    if one.gain is None or one.readings is None:
        return None
    if one.gain.mdc is not None:
        said = getattr(record, "method", None)
        method = said if said in {error.method for error in one.errors} else one.gain.method
        return _mdc(one.gain, errors.of(test, method)), one.gain.amount
    taken = [reading for side in SIDES for reading in (one.readings(record, side) if record else ())]
    if _unpublished(one.gain, record):
        return None
    return (round(errors.of(test, taken[0].method).mdc), one.gain.amount) if taken else None


def _unpublished(gain: Gain | None, record: object) -> bool:
    """True if the test was done by the effort for which no gain is published."""
    return gain is not None and bool(gain.not_by) and getattr(record, "effort", None) == gain.not_by


def _mdc(gain: Gain, error: Error) -> float:
    """Return the MDC for a gain, scaled by the ratio of the lifter's own error to the published one of the same method.

    The calf's gain is published in degrees only, so a tape's error enters by that ratio.
    """
    return error.mdc if gain.mdc is None else gain.mdc * error.sem / error_of(error.test, error.method).sem


def weeks_of(test: str, screen: Screen, errors: Errors) -> float:
    """Return the weeks until a gain could show in a test; OTHER_WEEKS if no gain is published."""
    visible = _visible(test, screen, errors)
    return OTHER_WEEKS if visible is None else bounded(weeks_until_visible(*visible))


def _again(test: str, weeks: float, screen: Screen, errors: Errors) -> RetestItem:
    """Return one row of the plan, with its sentence."""
    one, record = protocol(test), screen.get(test)
    if not weeks:
        return RetestItem(test, 0.0, 1, "Any day: it is not settled yet.", "choice")
    visible, unpublished = _visible(test, screen, errors), _unpublished(one.gain, record)
    standing = _standing(visible)
    sessions = 1 if visible is None else sessions_to_average(*visible)
    if (sessions > 1 or unpublished) and getattr(record, "method", None) == "eye":
        return RetestItem(test, weeks, 1, f"In {weeks:g} weeks. By eye only a large change shows; a phone level shows smaller ones.",
                     standing)
    if sessions > 1:
        what = f"{one.gain.what} work" if one.gain and one.gain.what else "this work"
        return RetestItem(test, weeks, sessions, (
            f"In {weeks:g} weeks, over {sessions} sessions on different days, so that I can average them: "
            f"{what} changes less than one session can show."), standing)
    why = ": no gain is published for a leg that lifts itself" if unpublished else ""
    return RetestItem(test, weeks, 1, f"In {weeks:g} weeks ({STANDING_WORDS[standing]}{why}).", standing)


def _standing(visible: tuple[float, float] | None) -> SourceStanding:
    """Return the standing of a retest date: the programmes' length is from memory, and without a gain the date is our choice."""
    return "choice" if visible is None else "memory"
