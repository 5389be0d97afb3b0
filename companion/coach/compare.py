"""Comparisons for a coach: two lifters' latest readings side by side, or one lifter's readings of two days with the change between them."""

from __future__ import annotations

import re
from datetime import date, timedelta
from typing import Final

from companion.base.clock import local_date
from companion.coach.caseload import shortened
from companion.coach.concluded import concluded_of
from companion.coach.letters import Rows, tap
from companion.coach.measurements import numbers_table
from companion.coach.names import display_name, lifters_matching
from companion.coach.summary import LifterPage, lifter_page
from companion.conversation.effects import Say
from companion.conversation.prompt import in_rows
from companion.language.days.dates import read_date
from companion.language.units import shown
from companion.record import coaching
from companion.record.turn import Turn
from companion.screening.errors import errors_in
from companion.screening.protocols import protocol
from companion.screening.readings import mean_of
from companion.screening.retest import change
from companion.screening.screen import about_from
from companion.screening.sessions import ReadingSession, all_sessions

PAIRS_OFFERED: Final = 6
"""Earlier days to compare the latest with; our choice, three rows of buttons."""
NAME_TWO: Final = ("Name two of your lifters: “compare Sam and Mia”; or one, for their days: “compare Sam”, or “compare Sam 1 March and "
                   "20 April”.")
_AND: Final = re.compile(r" (?:and|with|to|vs) ")
_DAYS: Final = re.compile(r"([0-9]{1,18})(?:-([0-9]{4}-[0-9]{2}-[0-9]{2})-([0-9]{4}-[0-9]{2}-[0-9]{2}))?")


def compare(turn: Turn, of: str) -> Say:
    """Return the comparison asked for: two names as typed, or a lifter and two days; the choice of days where none are named."""
    asked = _DAYS.fullmatch(of)
    if asked is None:
        names = _AND.split(of)
        if len(names) == 2 and (typed := _typed_days(turn, *names)):
            return _two_days(turn, *typed)
        found = [lifters_matching(turn.db, turn.person, name) for name in names]
        if len(names) == 2 and all(len(whom) == 1 for whom in found):
            return _lifters(turn, found[0][0], found[1][0])
        if len(names) > 2 or len(found[0]) != 1 or len(names) == 2:
            return Say(NAME_TWO, _back())
        return _days_offered(turn, found[0][0])
    lifter = int(asked[1])
    if not coaching.sees(turn.db, turn.person, lifter):
        return Say(NAME_TWO, _back())
    try:
        days = date.fromisoformat(asked[2] or ""), date.fromisoformat(asked[3] or "")
    except ValueError:
        return _days_offered(turn, lifter)
    return _two_days(turn, lifter, *sorted(days))


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
    pages = [_page(turn, lifter) for lifter in (one, other)]
    names = [shortened(display_name(turn.db, turn.person, lifter), 22) for lifter in (one, other)]
    lines = [f"{names[0]} and {names[1]}: the latest readings. People differ, so a difference says nothing about a change."]
    told = [_readings(turn, lifter) for lifter in (one, other)]
    lines += [f"· {of}: {'; '.join(theirs.get(of, 'not measured') for theirs in told)}" for of in dict.fromkeys((*told[0], *told[1]))]
    for title in ("Depth", "Load"):
        held = [next((one.words for one in page.held if one.title == title), "none set") for page in pages]
        lines.append(f"· {title}: {held[0]}; {held[1]}")
    for cause in range(3):
        lines.append(f"· {pages[0].causes[cause].name.capitalize()}: " + "; ".join(
            page.causes[cause].ruling.replace("_", " ") or "no results yet" for page in pages))
    return Say("\n".join(lines), _back((names[0], one), (names[1], other)))


def _page(turn: Turn, lifter: int) -> LifterPage:
    coaching.audit_look(turn.db, lifter, turn.person, "numbers, compared", turn.now)
    return lifter_page(turn.db, turn.person, lifter, turn.now)


def _readings(turn: Turn, lifter: int) -> dict[str, str]:
    """Return the readings that count now, by test and side."""
    rows = numbers_table(concluded_of(turn.db, lifter, turn.now)).rows
    return {str(of): reading if isinstance(reading, str) else reading[0] for of, reading, *_ in rows}


def _sessions(turn: Turn, lifter: int) -> tuple[dict[tuple[str, str], tuple[ReadingSession, ...]], str, str]:
    """Return the sessions of each measured test and side, and the lifter's zone and units."""
    theirs = turn.of(lifter)
    return all_sessions(theirs.known.answers()), theirs.zone, str(theirs.known.facts.get("welcome.units", "metric"))


def _days_offered(turn: Turn, lifter: int) -> Say:
    sessions, zone, _ = _sessions(turn, lifter)
    days = sorted({local_date(one.at, zone) for of in sessions.values() for one in of}, reverse=True)
    name = display_name(turn.db, turn.person, lifter)
    if len(days) < 2:
        return Say(f"{name}: there is no second day with readings to compare.", _back((name, lifter)))
    taps = [tap(f"{day.day} {day:%b} and {days[0].day} {days[0]:%b}", "compare", f"{lifter}-{day}-{days[0]}")
            for day in days[1:PAIRS_OFFERED + 1]]
    return Say(f"{name}: which two days?", (*in_rows(taps, 2), *_back((name, lifter))))


def _two_days(turn: Turn, lifter: int, first: date, second: date) -> Say:
    coaching.audit_look(turn.db, lifter, turn.person, "numbers, two days compared", turn.now)
    sessions, zone, units = _sessions(turn, lifter)
    errors = errors_in(sessions.values(), about_from(turn.of(lifter).known.answers()).sex)
    name = display_name(turn.db, turn.person, lifter)
    lines = [f"{name}: {first.day} {first:%b} {first.year} and {second.day} {second:%b} {second.year}"]
    for (test, side), taken in sessions.items():
        then, now = ([one.readings for one in taken if local_date(one.at, zone) == day][-1:] for day in (first, second))
        if not then or not now:
            continue
        unit = now[0][0].unit
        means = " then, ".join(shown(round(mean_of(one[0]), 1), unit, units) for one in (then, now))
        try:
            told = change(then, now, errors.of(test, now[0][0].method), lambda value, unit: shown(value, unit, units)).words
        except ValueError as error:
            told = f"Not compared: {error}."
        lines.append(f"· {protocol(test).name}, {side}: {means} now. {told}")
    if len(lines) == 1:
        lines.append("No test was measured on both days.")
    return Say("\n".join(lines), _back((name, lifter)))


def _back(*lifters: tuple[str, int]) -> Rows:
    return in_rows([*(tap(f"See {name}", "lifter", one) for name, one in lifters), tap("My lifters", "caseload")], 2)
