"""When to test again, and whether something changed.

First retest week = MDC * T / gain with T = 6 weeks (memory; linear gain is an assumption), within 2-8 weeks (choice).
Gains: straight-leg raise +12.04 deg (Medeiros 2016 Physiother Theory Pract 32:438, read), calf 3.03 deg (Radford 2006
Br J Sports Med 40:870, read). MDC95 = 1.96 * sqrt(2) * SEM (Weir 2005 J Strength Cond Res 19:231, read); with means
over sessions at each end /sqrt(k), never for the repeats within one session.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import chain
from math import ceil, sqrt
from statistics import fmean
from typing import Final, Literal

from companion.screening.conclusion import Conclusion
from companion.screening.errors import Errors
from companion.screening.measured import leg_raise_readings
from companion.screening.readings import STANDING_WORDS, Error, Reading, Show, Standing, error_of, mean_of, metric, one_way
from companion.screening.records import About
from companion.screening.rulings import PartVerdict, Ruling, settling_test
from companion.screening.screen import ROUTE, SIDES, Screen

PROGRAMME_WEEKS: Final = 6.0  # how long the programmes behind the gains lasted (memory)
SOONEST: Final = 2.0
LATEST: Final = 8.0
RAISE_GAIN: Final = 12.04  # deg, 9.61-14.47, 19 studies
CALF_GAIN: Final = 3.03  # deg, 15-30 min of stretching in all
CALF_MDC: Final = 4.7  # deg, Powden 2015 Man Ther 20:524 (read)
OTHER_WEEKS: Final = 4.0  # strength, control, hip: no published gain in these tests (choice)
MONTHLY: Final = 4.0  # "usual training, film monthly"


@dataclass(frozen=True, slots=True)
class Again:
    """One test to repeat: after how many weeks (0: any day, it was not settled), and over how many sessions."""

    test: str
    weeks: float
    sessions: int
    words: str
    standing: Standing


@dataclass(frozen=True, slots=True)
class Plan:
    """When to test again, and what. ``weeks``: None where there is nothing to repeat; else 2-8, for one reminder."""

    weeks: float | None
    tests: tuple[Again, ...]
    words: str

    @property
    def days(self) -> int | None:
        """The weeks as whole days from now."""
        return None if self.weeks is None else round(self.weeks * 7)


@dataclass(frozen=True, slots=True)
class Change:
    """Whether readings changed beyond error. ``amount``: after minus before; ``mdc``: what it had to pass."""

    kind: Literal["better", "within_error", "worse", "cannot_say"]
    amount: float
    mdc: float
    words: str


def weeks_until_visible(mdc: float, gain: float, programme: float = PROGRAMME_WEEKS) -> float:
    """Weeks until the expected gain reaches the detectable change: MDC * T / gain; unbounded."""
    return mdc * programme / gain


def bounded(weeks: float) -> float:
    """Weeks within 2-8, to a tenth."""
    return round(min(max(weeks, SOONEST), LATEST), 1)


def sessions_to_average(mdc: float, gain: float) -> int:
    """How many sessions to average at each end for a gain to show: the smallest k with MDC / sqrt(k) <= gain."""
    return max(1, ceil((mdc / gain) ** 2))


CALF_SESSIONS: Final = sessions_to_average(CALF_MDC, CALF_GAIN)  # 3


def plan(conclusion: Conclusion, screen: Screen, about: About, errors: Errors | None = None) -> Plan:
    """What to repeat, and when: only what was likely, too close to call or untested, and the squat look beside it.

    The date is that of the part that gets the drill; without one, the latest that any repeated test asks for.
    ``errors``: the lifter's own measurement errors; None means the published ones for their sex. A greater error takes
    longer to see past, and where one retest can't, more sessions.
    """
    errors = errors or Errors(about.sex)
    if conclusion.overall in ("normal", "no_rounding"):
        return Plan(None, (), "Nothing needs testing again unless something changes.")
    if conclusion.overall == "unexplained":
        look = Again("squat_look", MONTHLY, 1, "Film your squat from the side once a month.", "choice")
        return Plan(MONTHLY, (look,), "Usual training. Film your squat from the side once a month.")
    weeks: dict[str, float] = {"squat_look": OTHER_WEEKS}
    parts = [part for verdict in conclusion.verdicts for part in verdict.parts if part.ruling != Ruling.RULED_OUT]
    for part in parts:
        for test in _tests_of(part):
            due = _weeks(test, screen, errors) if part.ruling == Ruling.LIKELY or part.part == conclusion.part else 0.0
            weeks[test] = max(due, weeks.get(test, 0.0))
    tests = tuple(_again(test, weeks[test], screen, errors) for test in ROUTE if test in weeks)
    own = {"hamstrings": "leg_raise", "calf": "knee_to_wall"}.get(conclusion.part)
    due = _weeks(own, screen, errors) if own else OTHER_WEEKS if conclusion.part else max(weeks.values())
    return Plan(due, tests, f"Test again in about {due:g} weeks, with the same warm-up and the same methods. "
                            "Some of it can be done any day.")


def change(before: Sequence[Sequence[Reading]], after: Sequence[Sequence[Reading]], error: Error | None = None,
           show: Show = metric) -> Change:
    """Whether the mean over the sessions after differs from that before beyond MDC95.

    ``before`` and ``after``: the repeats of each session, all taken one way (ValueError otherwise, saying why). More is
    better. MDC95 of means over k and n sessions is 1.96 * SEM * sqrt(1/k + 1/n): MDC / sqrt(k) where both are k. Within
    it, one calf session at either end can't show what calf work gives in weeks: it can't be said. By eye the bands must not
    touch.
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
    if first.test == "knee_to_wall" and min(len(before), len(after)) < 2 and abs(amount) <= mdc:
        wanted = sessions_to_average(_calf_mdc(error), CALF_GAIN)
        return Change("cannot_say", amount, mdc, (
            f"{size} apart, but one session can't show calf change: "
            f"average {wanted} sessions at each end."))
    if abs(amount) <= mdc:
        return Change("within_error", amount, mdc,
                      f"{size} apart: within measurement error ({show(mdc, first.unit)}), so no change is shown.")
    return Change("better" if amount > 0 else "worse", amount, mdc,
                  f"{size} {'more' if amount > 0 else 'less'} than before: "
                  f"beyond measurement error ({show(mdc, first.unit)}).")


def _width(sessions: Iterable[Iterable[Reading]]) -> float:
    """The widest band among readings by eye."""
    return max(reading.width for session in sessions for reading in session)


def _tests_of(part: PartVerdict) -> tuple[str, ...]:
    """The tests that spoke about a part, hints aside, and where it is open the one that would tell most next."""
    spoken = tuple(dict.fromkeys(f.row.test for f in part.because if not f.row.hint))
    return spoken if part.ruling == Ruling.LIKELY else (*spoken, settling_test(part.part, part.because))


def _visible(test: str, screen: Screen, errors: Errors) -> tuple[float, float] | None:
    """The detectable change and the expected gain of a measured test by the method that was used; None without one.

    MDCs of the leg raise in whole degrees, as printed.
    """
    if test == "knee_to_wall":
        wall = screen.knee_to_wall
        method = "level" if wall is not None and wall.method == "level" else "tape"
        return _calf_mdc(errors.of(test, method)), CALF_GAIN
    if test == "leg_raise" and screen.leg_raise is not None:
        for side in SIDES:
            for reading in leg_raise_readings(screen.leg_raise, side):
                return round(errors.of(test, reading.method).mdc), RAISE_GAIN
    return None


def _calf_mdc(error: Error) -> float:
    """The MDC of 4.7 degrees, wider by as much as a lifter's own error is than the published one of the same method.

    The calf's gain is known in degrees only, so a tape's error counts by that ratio.
    """
    return CALF_MDC * error.sem / error_of(error.test, error.method).sem


def _weeks(test: str, screen: Screen, errors: Errors) -> float:
    """Weeks until a gain could show in a test; a choice where no gain is published."""
    visible = _visible(test, screen, errors)
    return OTHER_WEEKS if visible is None else bounded(weeks_until_visible(*visible))


def _again(test: str, weeks: float, screen: Screen, errors: Errors) -> Again:
    """One row of the plan, in words."""
    standing: Standing = "memory" if test in ("leg_raise", "knee_to_wall") else "choice"
    if not weeks:
        return Again(test, 0.0, 1, "Any day, it is not settled yet.", "choice")
    visible = _visible(test, screen, errors)
    sessions = 1 if visible is None else sessions_to_average(*visible)
    if test == "leg_raise" and screen.leg_raise is not None and screen.leg_raise.method == "eye" and sessions > 1:
        return Again(test, weeks, 1, f"In {weeks:g} weeks. By eye only a large change shows; a phone level shows less.",
                     standing)
    if sessions > 1:
        what = "calf work" if test == "knee_to_wall" else "this work"
        return Again(test, weeks, sessions, (
            f"In {weeks:g} weeks, {sessions} sessions on different days, averaged: "
            f"{what} gives less than one session can show."), standing)
    return Again(test, weeks, 1, f"In {weeks:g} weeks ({STANDING_WORDS[standing]}).", standing)
