"""Comparisons for a coach: two lifters' latest readings side by side, or one lifter's readings of two days with the change between them."""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime, timedelta
from itertools import product
from typing import Final, NamedTuple

from companion.base.clock import local_date
from companion.calendar.preferences import zone_from
from companion.coach.caseload import shortened
from companion.coach.concluded import concluded_of
from companion.coach.letters import NAMED_NOBODY, Rows, tap
from companion.coach.lifter_messages import RULINGS
from companion.coach.measurements import numbers_table
from companion.coach.names import display_name, lifters_matching
from companion.coach.summary import LifterPage, lifter_page
from companion.conversation.effects import Say
from companion.conversation.flow import Known
from companion.conversation.prompt import in_rows
from companion.language.days.dates import read_date
from companion.language.units import METRIC, shown
from companion.record import coaching
from companion.record.turn import Turn
from companion.screening.errors import Errors, errors_in
from companion.screening.protocols import protocol
from companion.screening.readings import mean_of
from companion.screening.retest import change
from companion.screening.screen import about_from
from companion.screening.sessions import ReadingSession, all_sessions

PAIRS_OFFERED: Final = 6
"""Earlier days to compare the latest with; our choice, three rows of buttons."""
NAME_TWO: Final = ("Name two of your lifters: “compare Sam and Mia”; or one, for their days: “compare Sam”, or “compare Sam 1 March and "
                   "20 April”.")
COMPARED_LAST: Final = ("Depth", "Load", "Length", "Strength", "Control")
"""What two lifters are compared by besides their readings."""
_AND: Final = re.compile(r" (?:and|with|to|vs) ")
_DAYS: Final = re.compile(r"([0-9]{1,18})(?:-([0-9]{4}-[0-9]{2}-[0-9]{2})-([0-9]{4}-[0-9]{2}-[0-9]{2})|\+([0-9]{1,18}))?")


def compare(turn: Turn, of: str) -> Say:
    """Return the comparison asked for: two names as typed, or a lifter and two days; the choice of days where none are named."""
    asked = _DAYS.fullmatch(of)
    if asked is None:
        names = _AND.split(of)
        if len(names) == 2 and (typed := _typed_days(turn, *names)):
            return _two_days(turn, *typed)
        return _named(turn, names)
    if asked[4]:
        return _lifters(turn, int(asked[1]), int(asked[4]))
    lifter = int(asked[1])
    if not coaching.sees(turn.db, turn.person, lifter):
        return Say(NAME_TWO, _back())
    try:
        days = date.fromisoformat(asked[2] or ""), date.fromisoformat(asked[3] or "")
    except ValueError:
        return _days_offered(turn, lifter)
    return _two_days(turn, lifter, *sorted(days))


def _named(turn: Turn, names: list[str]) -> Say:
    """Return the comparison of one lifter's days or of two lifters; where a name may be several, a button for each choice."""
    found = [lifters_matching(turn.db, turn.person, name) for name in names]
    if len(names) > 2 or not all(found):
        return Say(f"{NAMED_NOBODY} {NAME_TWO}" if any(found) and len(names) == 2 else NAME_TWO, _back())
    if len(names) == 1:
        if len(found[0]) == 1:
            return _days_offered(turn, found[0][0])
        taps = [tap(display_name(turn.db, turn.person, one), "compare", one) for one in found[0][:PAIRS_OFFERED]]
        return Say("Which one?", (*in_rows(taps, 2), *_back()))
    pairs = list(dict.fromkeys(frozenset(pair) for pair in product(*found) if pair[0] != pair[1]))
    if len(pairs) == 1:
        return _lifters(turn, *sorted(pairs[0], key=lambda one: one not in found[0]))
    taps = [tap(" and ".join(shortened(display_name(turn.db, turn.person, one), 13) for one in sorted(pair)), "compare", "+".join(
        map(str, sorted(pair)))) for pair in pairs[:PAIRS_OFFERED]]
    return Say("Which two?" if taps else NAME_TWO, (*in_rows(taps, 1), *_back()))


def _typed_days(turn: Turn, one: str, other: str) -> tuple[int, date, date] | None:
    """Return the lifter and the two days of "Sam 1 March and 20 April", as the days of the last year; None where it is no such thing."""
    since = local_date(turn.now, turn.zone) - timedelta(days=365)
    last = read_date(other, since)
    words = one.split()
    for n in range(1, len(words)):
        first = read_date(" ".join(words[n:]), since) if last else None
        if first and last and len(whom := lifters_matching(turn.db, turn.person, " ".join(words[:n]))) == 1:
            return whom[0], min(first, last), max(first, last)
    return None


def _lifters(turn: Turn, one: int, other: int) -> Say:
    if not all(coaching.sees(turn.db, turn.person, each) for each in (one, other)):
        return Say(NAME_TWO, _back())
    pages = [_page(turn, lifter) for lifter in (one, other)]
    names = [shortened(display_name(turn.db, turn.person, lifter), 22) for lifter in (one, other)]
    lines = [f"{names[0]} and {names[1]}: the latest readings. People differ, so a difference says nothing about a change."]
    told = [dict(stands(turn.db, lifter, page, turn.now)) for lifter, page in zip((one, other), pages, strict=True)]
    lines += [f"· {of}: {'; '.join(theirs.get(of, 'not measured') for theirs in told)}" for of in sorted(
        {**told[0], **told[1]}, key=COMPARED_LAST.__contains__)]
    return Say("\n".join(lines), _back((names[0], one), (names[1], other)))


def stands(db: sqlite3.Connection, lifter: int, page: LifterPage, now: datetime) -> Iterator[tuple[str, str]]:
    """Yield how a lifter stands, as another is compared with them: the reading of each test and side that counts now, the depth and load
    to keep to, and each cause."""
    for of, reading, *_ in numbers_table(concluded_of(db, lifter, now)).rows:
        yield str(of), reading if isinstance(reading, str) else reading[0]
    for title in COMPARED_LAST[:2]:
        yield title, next((one.words for one in page.held if one.title == title), "none set")
    for cause in page.causes:
        yield cause.name.capitalize(), RULINGS.get(cause.ruling, "no results yet")


def _page(turn: Turn, lifter: int) -> LifterPage:
    coaching.audit_look(turn.db, lifter, turn.person, "numbers, compared", turn.now)
    return lifter_page(turn.db, turn.person, lifter, turn.now)


class Measured(NamedTuple):
    """The measurements of a lifter: the sessions of each test and side, their errors, and the lifter's zone and units."""

    sessions: Mapping[tuple[str, str], Sequence[ReadingSession]]
    errors: Errors
    zone: str
    units: str

    @property
    def days(self) -> list[date]:
        """The days with a reading, the latest first."""
        return sorted({local_date(one.at, self.zone) for of in self.sessions.values() for one in of}, reverse=True)

    def changes(self, first: date, second: date) -> Iterator[tuple[str, str]]:
        """Yield (test and side, both readings and the change between them) of each test that was measured on both days."""
        for (test, side), taken in self.sessions.items():
            then, now = ([one.readings for one in taken if local_date(one.at, self.zone) == day][-1:] for day in (first, second))
            if not then or not now:
                continue
            means = " then, ".join(shown(round(mean_of(one[0]), 1), now[0][0].unit, self.units) for one in (then, now))
            try:
                told = change(then, now, self.errors.of(test, now[0][0].method), lambda value, unit: shown(value, unit, self.units)).words
            except ValueError as error:
                told = f"Not compared: {error}."
            yield f"{protocol(test).name}, {side}", f"{means} now. {told}"


def measured_of(known: Known) -> Measured:
    """Return what was measured of the lifter whose facts and answers these are."""
    answers = known.answers()
    sessions = all_sessions(answers)
    return Measured(sessions, errors_in(sessions.values(), about_from(answers).sex), zone_from(known.facts, known.now),
                    str(known.facts.get("welcome.units", METRIC)))


def days_words(first: date, second: date) -> str:
    """Return the two days that are compared: "31 Jan 2026 and 10 Mar 2026"."""
    return f"{first.day} {first:%b} {first.year} and {second.day} {second:%b} {second.year}"


def _days_offered(turn: Turn, lifter: int) -> Say:
    days, name = measured_of(turn.of(lifter).known).days, display_name(turn.db, turn.person, lifter)
    if len(days) < 2:
        return Say(f"{name}: there is no second day with readings to compare.", _back((name, lifter)))
    taps = [tap(f"{day.day} {day:%b} and {days[0].day} {days[0]:%b}", "compare", f"{lifter}-{day}-{days[0]}")
            for day in days[1:PAIRS_OFFERED + 1]]
    return Say(f"{name}: which two days?", (*in_rows(taps, 2), *_back((name, lifter))))


def _two_days(turn: Turn, lifter: int, first: date, second: date) -> Say:
    coaching.audit_look(turn.db, lifter, turn.person, "numbers, two days compared", turn.now)
    name = display_name(turn.db, turn.person, lifter)
    told = [f"· {of}: {words}" for of, words in measured_of(turn.of(lifter).known).changes(first, second)]
    lines = [f"{name}: {days_words(first, second)}", *(told or ["No test was measured on both days."])]
    return Say("\n".join(lines), _back((name, lifter)))


def _back(*lifters: tuple[str, int]) -> Rows:
    return in_rows([*(tap(f"See {name}", "lifter", one) for name, one in lifters), tap("My lifters", "caseload")], 2)
