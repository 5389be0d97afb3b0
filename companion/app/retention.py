"""Retention: which answers of a person may go with time. What a decision of today still rests on stays, however old.

Runs go whole or not at all, so that an answer is never there without what it replaced, nor half a test. What stays of each kind
is the shortest tail of its runs that says the same as all of them: a newer run never goes while an older one stays in its place.
A run never ended counts from its beginning; a conversation left that long ago is given up first, but for open questions of
safety, pain and consent. What stays, however old, so that no decision becomes another:

- facts, findings, alerts, and the runs themselves; all runs in which somebody agreed to something;
- of every flow the newest finished run; the runs in which what stands now was concluded (``safety.level``, a clearance, the
  depth), that of the latest alert from pain, and what a session can still go on with;
- of the safety check, pain, the morning after and about you, the run of the latest answer to each question; the check before
  each of the last two results, whose pain is compared with now;
- of each test the shortest tail of its runs that gives the same screen as all of them, now and as of the last two results,
  with as many days before each as a retest averages; so a run that pain ended never goes before what it made void;
- of the squat days those the depth is worked out from, all since the first lot of the trial, and the moment of joining it.

Trends, charts and the log then show what is left; the lifter's own error rests on fewer repeats, which brings it nearer to the
published one, never below it.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, date, datetime, timedelta
from itertools import takewhile
from typing import Final

from companion.base.clock import local_date
from companion.calendar.preferences import zone_from
from companion.conversation.session import Session
from companion.record import expiry, log, people
from companion.record.expiry import Run
from companion.record.log import Kept, Row
from companion.screening.depth import band_of
from companion.screening.protocols import measured, protocol, route
from companion.screening.screen import LoggedAnswer, screen_from
from companion.screening.sessions import WARM_FOR
from companion.screening.squat_days import AFTER, DAY, about, days_told

AGREEMENTS: Final = frozenset(("welcome", "coach_welcome", "consent_again", "link_request", "leave_coach"))
"""Flows in which somebody agrees to something: their answers never go."""

WEIGHED: Final = frozenset(("safety_check", "pain", "morning", "about_you"))
"""Of these the run of the latest answer to each question stays: clearance, limits and history are not asked every time."""

HOLDING: Final = frozenset(("welcome", "coach_welcome", "consent_again", "safety_check", "pain", "morning"))
"""Questions that stay open however long nobody answers."""

def months_before(now: datetime, months: int) -> datetime:
    """Return the moment so many calendar months before; the last day of a shorter month."""
    year, month = divmod(now.year * 12 + now.month - 1 - months, 12)
    last = (date(year + (month == 11), (month + 1) % 12 + 1, 1) - timedelta(days=1)).day
    return now.replace(year=year, month=month + 1, day=min(now.day, last))


def going(db: sqlite3.Connection, person: int, cut: datetime) -> list[str]:
    """Return the runs of a person that were over by ``cut`` (those never ended: begun by it) and whose answers nothing of today rests on,
    oldest first. What they left half done that long ago is given up first, so that nobody goes on with one of these meanwhile; what
    comes meanwhile can only make more of them go."""
    runs = expiry.runs_of(db, person)
    session = people.load_session(db, person)
    left = let_go(session, cut, {run.run for run in runs if run.began <= cut})
    if left != session:
        expiry.give_up(db, person, _runs_in(session) - _runs_in(left))
        people.save_session(db, person, left, _moment(session.at) or cut)
        runs = expiry.runs_of(db, person)
    if all(run.over > cut for run in runs):
        return []
    facts = log.facts_of(db, person)
    stay = staying(runs, list(log.answers_of(db, person)), facts, cut) | expiry.rested_on(db, person) | _runs_in(left)
    return [run.run for run in runs if run.run not in stay]


def let_go(session: Session, cut: datetime, before: set[str]) -> Session:
    """Return a session without what was left so long ago: parked flows begun by then, and where nobody wrote since, what was
    asked last, but for questions that hold. ``before``: the runs begun by ``cut``."""
    at = _moment(session.at)
    parked = tuple(stack for stack in session.parked if not any(frame.run in before for frame in stack))
    last = None if session.last and session.last.run in before else session.last
    if at is None or at > cut:
        return session._replace(parked=parked, last=last)
    if any(frame.flow in HOLDING for frame in session.stack):
        return session._replace(parked=(), last=None)
    return session._replace(stack=(), parked=(), last=None, aside=None)


def _runs_in(session: Session) -> frozenset[str]:
    """Return the runs that a session may still go on with."""
    stacks = (session.stack, *session.parked, (session.last,) if session.last else ())
    return frozenset(frame.run for stack in stacks for frame in stack)


def staying(runs: Sequence[Run], rows: Sequence[Row], facts: Mapping[str, Kept], cut: datetime) -> frozenset[str]:
    """Return the runs whose answers stay. ``runs``: those with answers, oldest first; ``rows``: the whole log, oldest first."""
    zone = zone_from({name: kept.value for name, kept in facts.items()}, cut)
    answers = list(map(log.as_answer, rows))
    moments = [at for at in (_told(facts, "outcome.before"), _told(facts, "outcome.at")) if at is not None]
    stay = {run.run for run in runs if run.over > cut or run.flow in AGREEMENTS}
    stay |= set({run.flow: run.run for run in runs if run.ending == "done"}.values())
    stay |= set({(row.flow, row.key): row.run for row in answers if row.flow in WEIGHED and row.status == "ok"}.values())
    for at in moments:  # pain as it was told before the results is held against pain since
        stay |= {run.run for run in runs if run.flow == "safety_check" and run.ending == "done" and run.began <= at and not any(
            later.flow == "safety_check" and later.ending == "done" and run.began < later.began <= at for later in runs)}
    of_flow: dict[str, list[LoggedAnswer]] = {}
    for row in answers:
        of_flow.setdefault(row.flow, []).append(row)
    for test in route():
        stay |= _of_test([run for run in runs if run.flow == test], of_flow.get(test, []), moments, zone)
    tests = frozenset(one.id for one in measured())
    readings = [run for run in runs if run.flow in tests and run.run in stay]
    stay |= {warm.run for warm in runs if warm.flow == "warm_up"
             and any(warm.over >= run.began - WARM_FOR and warm.began <= run.over for run in readings)}
    days = [row for row in answers if row.flow in (DAY, AFTER, "about_you")]
    stay |= _of_days([run for run in runs if run.flow in (DAY, AFTER)], days, _days_since(facts, zone), zone)
    joined = [row.run for row in answers if (row.flow, row.key, row.value, row.status) == ("trial", "join", "yes", "ok")]
    return frozenset(stay.union(joined[:1]))  # the lots are drawn from the moment of the first


def _of_test(runs: Sequence[Run], answers: Sequence[LoggedAnswer], moments: Sequence[datetime], zone: str) -> set[str]:
    """Return the runs of one test that stay: from as many sessions before each result as a retest averages, and further back
    until the screen is the same as with all of them, now and as it was at each result."""
    if not runs:
        return set()
    first, ends = len(runs), [*moments, datetime.max.replace(tzinfo=UTC)]
    many = max(one.sessions for one in measured()) if protocol(runs[0].flow).readings else 1
    for end in ends:
        days = {number: local_date(run.began, zone) for number, run in enumerate(runs)
                if run.ending == "done" and run.began <= end}
        wanted = sorted(set(days.values()))[-many:]
        first = min([first, *(number for number, day in days.items() if day in wanted)])
    names, whole = [run.run for run in runs], [screen_from(row for row in answers if row.at <= end) for end in ends]

    def same(start: int) -> bool:
        there = frozenset(names[start:])
        tail = [row for row in answers if row.run in there]
        return all(screen_from(row for row in tail if row.at <= end) == all_of_it for end, all_of_it in zip(ends, whole, strict=True))

    low = 0  # a longer tail than one that says the same does so, too
    while low < first:
        middle = (low + first + 1) // 2
        low, first = (middle, first) if same(middle) else (low, middle - 1)
    return set(names[low:])


def _days_since(facts: Mapping[str, Kept], zone: str) -> str | None:
    """Return the date from which on the squat days make the depth to keep to: "" for all, None where none is set."""
    since = []
    if band_of(_text(facts, "depth.pin")):
        since.append(_text(facts, "depth.pinned_on"))
    if band_of(_text(facts, "depth.keep")):
        told = _told(facts, "outcome.at")
        since.append(local_date(told, zone).isoformat() if told else "")
    return min(since, default=None)


def _of_days(runs: Sequence[Run], answers: Sequence[LoggedAnswer], since: str | None, zone: str) -> set[str]:
    """Return the runs about squat days that stay: those the depth is worked out from, all since the first lot of the trial, and
    so many before that each of their days says the same as it does with all of them."""
    drawn = {row.run for row in answers if row.flow == DAY and row.key == "lot"}
    older: Callable[[Run], bool] = lambda run: run.run not in drawn and (  # noqa: E731
        since is None or about(run.asked, run.began, local_date(run.began, zone)).isoformat() < since)
    first = len(list(takewhile(older, runs)))
    for flow in (DAY, AFTER):
        first = min(first, max((n for n, run in enumerate(runs) if run.flow == flow and run.ending == "done"), default=first))
    names, back, whole = [run.run for run in runs], 1, days_told(answers, zone)

    def same(start: int) -> bool:
        gone = frozenset(names[:start])
        told = days_told((row for row in answers if row.run not in gone), zone)
        return told == whole[len(whole) - len(told):]

    while first > 0 and not same(first):
        first, back = max(0, first - back), back * 2  # a little more than is needed, so that a long log is not walked day by day
    return set(names[first:])


def _text(facts: Mapping[str, Kept], name: str) -> str:
    return str(facts[name].value) if name in facts else ""


def _told(facts: Mapping[str, Kept], name: str) -> datetime | None:
    return _moment(_text(facts, name))


def _moment(text: str) -> datetime | None:
    try:
        at = datetime.fromisoformat(text)
    except ValueError:
        return None
    return at if at.tzinfo else at.replace(tzinfo=UTC)
