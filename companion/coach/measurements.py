"""The measurements of a report, left beside right, with their lines and errors; and the sources of these."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from typing import Any, Final

from companion.coach.concluded import LifterConclusion
from companion.coach.tables import Cell, LocalTimes, Table
from companion.export.questions import in_words
from companion.screening.errors import Errors
from companion.screening.protocol import Protocol
from companion.screening.protocols import measured, protocol, protocols
from companion.screening.readings import SIDES, STANDING_WORDS, Error, NumberFormat, Reading, against_threshold, mean_of
from companion.screening.retest import change
from companion.screening.screen import Screen
from companion.screening.sessions import ReadingSession, sessions_of
from companion.screening.sources import SOURCES, filled
from companion.screening.trend import SESSIONS, trend

_NOTHING: Final = "–"
_RULES: Final = ("rule", "evidence_weights", "ruling_holds", "depth_keep", "load_share", "load_bracket", "mdc", "pain_detectable",
                 "programme_weeks", "prime_dose", "stretch_dose")
"""The rows that are listed whatever was measured, for paper, where nothing can be tapped."""


def numbers_table(found: LifterConclusion) -> Table:
    """Return the current readings as a table, a row for each test and side: lines, measurement error and change."""
    rows, screen, errors, show, when = list[tuple[Cell, ...]](), found.screen, found.errors, found.show, LocalTimes(found.zone)
    for one in measured():
        for side in SIDES:
            taken, sessions = _readings(screen, one, side), sessions_of(found.answers, one.id, side)
            if taken:
                rows.append((f"{one.name}, {side}", *_measured(taken, sessions, errors, show, when)))
            elif sessions:
                rows.append((f"{one.name}, {side}", _NOTHING, "Stopped for pain since, so it counts as not tested.", _NOTHING, _NOTHING,
                             _NOTHING))
    for test, one in protocols().items():
        for noted in one.noted:
            for side in SIDES:
                value = getattr(screen.get(test), f"{side}_{noted.key}", None)
                if value is not None:
                    rows.append((f"{noted.title}, {side}", show(value, noted.unit), "as reported", "no line is used", "none published",
                                 _NOTHING))
    return Table("numbers", "Numbers that count now, side by side",
                 ("Test and side", "Reading", "How it was taken", "Held against", "Measurement error", "Change"), tuple(rows),
                 empty="Nothing has been measured yet.")


def _readings(screen: Screen, one: Protocol[Any], side: str) -> tuple[Reading, ...]:
    return one.readings(screen[one.id], side) if one.readings and one.id in screen else ()


def _measured(taken: tuple[Reading, ...], sessions: Sequence[ReadingSession], errors: Errors, show: NumberFormat,
              when: LocalTimes) -> tuple[Cell, ...]:
    first, values = taken[0], [one.value for one in taken]
    error = errors.of(first.test, first.method)
    each = f"mean of {', '.join(show(round(value, 1), first.unit) for value in values)}" if len(values) > 1 else ""
    at = next((when.day(one.at.date()) for one in reversed(sessions) if [r.value for r in one.readings] == values), "")
    how = ", ".join(filter(None, (in_words(first.method), in_words(first.placement), f"on {at}" if at else "")))
    lines = tuple(f"{line.name}: {against_threshold(taken, line, error, show).words}"
                  for line in protocol(first.test).thresholds_in(first.unit))
    reading = f"{show(round(mean_of(taken), 1), first.unit)}{' by eye, the middle of a band' if first.width else ''}"
    return (tuple(filter(None, (reading, each))), f"by {how}", lines or _NOTHING, _error(error, show),
            tuple(_changes(sessions, errors, show, when)) or "one session so far")


def _error(error: Error, show: NumberFormat) -> tuple[str, ...]:
    own = f"; from {error.own} of their own repeats too" if error.own else ""
    return (f"{show(round(error.sem, 1), error.unit)} standard error of measurement",
            f"{show(round(error.mdc, 1), error.unit)} least change that is not error, two single readings{own}")


def _changes(sessions: Sequence[ReadingSession], errors: Errors, show: NumberFormat, when: LocalTimes) -> list[str]:
    """Return the change from the first to the last sessions, as many of each as a retest averages, and the trend if there are enough."""
    if len(sessions) < 2:
        return []
    first = sessions[-1].readings[0]
    many = min(protocol(first.test).sessions, len(sessions) // 2)
    since = f"Since {when.day(sessions[0].at.date())}"
    try:
        told = change([one.readings for one in sessions[:many]], [one.readings for one in sessions[-many:]],
                      errors.of(first.test, first.method), show)
        said = [f"{since}: {told.words}"]
        if len({one.at.date() for one in sessions}) >= SESSIONS:
            said.append(trend(sessions, show).words)
    except ValueError as error:  # another method, placement or warm-up
        return [f"{since}: not compared, {error}."]
    return said


def details(screen: Screen, show: NumberFormat) -> tuple[Table, ...]:
    """Return the tables of tests that have their own, such as the depth of rounding in each squat of the squat look; of a test off the
    route only where it was done."""
    told = (one.detail(screen.get(test), show) for test, one in protocols().items() if one.detail and (one.on_route or test in screen))
    return tuple(Table(one.name, one.caption, one.columns, one.rows, empty=one.empty, note=one.note) for one in told)


def sources_of(screen: Screen, errors: Errors, show: NumberFormat) -> Table:
    """Return the source and the standing (read, second-hand, choice …) of each line, error and rule as a table."""
    rows: list[tuple[Cell, ...]] = []
    readings = [one for test in measured() for side in SIDES for one in _readings(screen, test, side)]
    kinds = {(one.test, one.unit) for one in readings}
    for line in chain.from_iterable(test.thresholds for test in measured()):
        if not kinds or (line.test, line.unit) in kinds:
            rows.append((f"{protocol(line.test).name}: {line.shown(show)}, {line.name}", line.source,
                         STANDING_WORDS[line.standing]))
    for test, method in sorted({(one.test, one.method) for one in readings}):
        error = errors.of(test, method)
        rows.append((f"{protocol(test).name} by {in_words(method)}: error {show(round(error.sem, 1), error.unit)} a reading", error.source,
                     STANDING_WORDS[error.standing]))
    rows += [(filled(row, row.says, show), row.source or "this project's own", STANDING_WORDS[row.standing])
             for row in map(SOURCES.__getitem__, _RULES)]
    return Table("sources", "Lines, errors and rules, with their sources", ("What", "Source", "Standing"), tuple(rows))
