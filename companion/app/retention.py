"""Retention: which old answers of a person may be removed. Those that a current decision rests on are kept, however old.

The answers of a run are removed together or not at all, so that none is left without the one it replaced, and no test by half. Of
each test, the newest runs are kept that give the same result as all of them: no newer run goes before an older one. A run that
never ended counts from its beginning; a conversation abandoned that long ago is closed first, except for open questions about
safety, pain and consent. So that no decision changes, these are kept however old:

- facts, findings, alerts and the run rows; the answers of all runs in which somebody gave a consent;
- of every flow, the newest finished run; the runs of the current findings (``safety.level``, a clearance, the depth) and of the
  latest alert from pain; and those a session can still continue;
- of the safety check, pain, the morning after and about you, the run of the latest answer to each question; and the safety check
  before each of the last two results, whose pain is compared with later pain;
- of each test, the newest runs that give the same screen as all of them, now and at the last two results, with as many days
  before each as a retest averages; so a run ended by pain is not removed before the runs it made invalid;
- of the squat days, those that determine the depth; all since the first draw of the trial; and the run of joining it.

Trends, charts and the log show only what is left. The lifter's own measurement error rests on fewer repeats then, which brings
it closer to the published one, never below it.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, datetime
from itertools import takewhile
from typing import Final

from dateutil.relativedelta import relativedelta

from companion.base.clock import local_date
from companion.calendar.preferences import zone_from
from companion.conversation.session import Session
from companion.record import expiry, log, people
from companion.record.expiry import OldRun
from companion.record.log import KeptFact, LogRow
from companion.screening.depth import band_of
from companion.screening.protocols import measured, protocol, route
from companion.screening.screen import LoggedAnswer, screen_from
from companion.screening.sessions import WARM_FOR
from companion.screening.squat_days import AFTER, DAY, about, days_told

AGREEMENTS: Final = frozenset(("welcome", "coach_welcome", "consent_again", "link_request", "leave_coach"))
"""Flows in which somebody gives a consent: their answers are never removed."""

KEPT_BY_QUESTION: Final = frozenset(("safety_check", "pain", "morning", "about_you"))
"""Flows of which the run of the latest answer to each question is kept: not every run asks for clearance, limits and history."""

KEPT_OPEN: Final = frozenset(("welcome", "coach_welcome", "consent_again", "safety_check", "pain", "morning"))
"""Flows whose question stays open however long nobody answers."""


def months_before(now: datetime, months: int) -> datetime:
    """Return the moment so many calendar months earlier; in a shorter month its last day."""
    return now - relativedelta(months=months)


def removable_runs(db: sqlite3.Connection, person: int, cut: datetime) -> list[str]:
    """Return a person's runs, oldest first, that were over by ``cut`` (begun by it, where they never ended) and whose answers are not
    needed. Conversations abandoned by then are closed first, so that nobody continues one of these runs before its answers are
    removed."""
    runs = expiry.runs_of(db, person)
    session = people.load_session(db, person)
    left = without_abandoned(session, cut, {run.run for run in runs if run.began <= cut})
    if left != session:
        expiry.abandon(db, person, _runs_in(session) - _runs_in(left))
        people.save_session(db, person, left, _moment(session.at) or cut)
        runs = expiry.runs_of(db, person)
    if all(run.over > cut for run in runs):
        return []
    facts = log.facts_of(db, person)
    stay = kept_runs(runs, list(log.answers_of(db, person)), facts, cut) | expiry.decisive_runs(db, person) | _runs_in(left)
    return [run.run for run in runs if run.run not in stay]


def without_abandoned(session: Session, cut: datetime, before: set[str]) -> Session:
    """Return a session without abandoned conversations: parked flows begun by ``cut``, and the open question if nobody has written
    since, unless it is one that is kept open. ``before``: the runs begun by ``cut``."""
    at = _moment(session.at)
    parked = tuple(stack for stack in session.parked if not any(frame.run in before for frame in stack))
    last = None if session.last and session.last.run in before else session.last
    if at is None or at > cut:
        return session._replace(parked=parked, last=last)
    if any(frame.flow in KEPT_OPEN for frame in session.stack):
        return session._replace(parked=(), last=None)
    return session._replace(stack=(), parked=(), last=None, aside=None)


def _runs_in(session: Session) -> frozenset[str]:
    """Return the runs a session can still continue."""
    stacks = (session.stack, *session.parked, (session.last,) if session.last else ())
    return frozenset(frame.run for stack in stacks for frame in stack)


def kept_runs(runs: Sequence[OldRun], rows: Sequence[LogRow], facts: Mapping[str, KeptFact], cut: datetime) -> frozenset[str]:
    """Return the runs whose answers are kept. ``runs``: those with answers, ``rows``: the whole log, both oldest first."""
    zone = zone_from({name: kept.value for name, kept in facts.items()}, cut)
    answers = list(map(log.as_answer, rows))
    moments = [at for at in (_told(facts, "outcome.before"), _told(facts, "outcome.at")) if at is not None]
    stay = {run.run for run in runs if run.over > cut or run.flow in AGREEMENTS}
    stay |= set({run.flow: run.run for run in runs if run.ending == "done"}.values())
    stay |= set({(row.flow, row.key): row.run for row in answers if row.flow in KEPT_BY_QUESTION and row.status == "ok"}.values())
    for at in moments:  # pain reported before the results is compared with pain since
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
    return frozenset(stay.union(joined[:1]))  # the trial's draws are seeded by the moment of joining


def _of_test(runs: Sequence[OldRun], answers: Sequence[LoggedAnswer], moments: Sequence[datetime], zone: str) -> set[str]:
    """Return the runs of one test that are kept: as many sessions before each result as a retest averages, and earlier ones until
    the screen is the same as with all of them, now and at each result."""
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
        """True if the runs from ``start`` on give the same screens as all of them."""
        there = frozenset(names[start:])
        tail = [row for row in answers if row.run in there]
        return all(screen_from(row for row in tail if row.at <= end) == all_of_it for end, all_of_it in zip(ends, whole, strict=True))

    low = 0  # binary search: if some of the newest runs suffice, more of them do too
    while low < first:
        middle = (low + first + 1) // 2
        low, first = (middle, first) if same(middle) else (low, middle - 1)
    return set(names[low:])


def _days_since(facts: Mapping[str, KeptFact], zone: str) -> str | None:
    """Return the date from which squat days determine the depth to keep to: "" for all, None where no depth is set."""
    since = []
    if band_of(_text(facts, "depth.pin")):
        since.append(_text(facts, "depth.pinned_on"))
    if band_of(_text(facts, "depth.keep")):
        told = _told(facts, "outcome.at")
        since.append(local_date(told, zone).isoformat() if told else "")
    return min(since, default=None)


def _of_days(runs: Sequence[OldRun], answers: Sequence[LoggedAnswer], since: str | None, zone: str) -> set[str]:
    """Return the runs about squat days that are kept: those that determine the depth, all since the first draw of the trial, and
    enough before them that each of these days reads the same as with the whole log."""
    drawn = {row.run for row in answers if row.flow == DAY and row.key == "lot"}
    older: Callable[[OldRun], bool] = lambda run: run.run not in drawn and (  # noqa: E731
        since is None or about(run.asked, run.began, local_date(run.began, zone)).isoformat() < since)
    first = len(list(takewhile(older, runs)))
    for flow in (DAY, AFTER):
        first = min(first, max((n for n, run in enumerate(runs) if run.flow == flow and run.ending == "done"), default=first))
    names, back, whole = [run.run for run in runs], 1, days_told(answers, zone)

    def same(start: int) -> bool:
        """True if the days left without the first ``start`` runs read the same as with all of them."""
        gone = frozenset(names[:start])
        told = days_told((row for row in answers if row.run not in gone), zone)
        return told == whole[len(whole) - len(told):]

    while first > 0 and not same(first):
        first, back = max(0, first - back), back * 2  # in growing steps, so that a long log is not walked day by day
    return set(names[first:])


def _text(facts: Mapping[str, KeptFact], name: str) -> str:
    return str(facts[name].value) if name in facts else ""


def _told(facts: Mapping[str, KeptFact], name: str) -> datetime | None:
    return _moment(_text(facts, name))


def _moment(text: str) -> datetime | None:
    try:
        at = datetime.fromisoformat(text)
    except ValueError:
        return None
    return at if at.tzinfo else at.replace(tzinfo=UTC)
