"""Finding and removing old rows, a batch at a time. app.retention decides which answers are kept."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from companion.record.timestamps import moment_of, text_of

UPDATES_KEPT: Final = timedelta(days=14)
"""Time for which update ids are kept; our choice: Telegram repeats an update for 24 hours at most (people.SEEN_FOR), and the
doctor reports those that failed within a week."""

MESSAGES_KEPT: Final = timedelta(days=90)
"""Time for which a sent or dropped message is kept; our choice. Until then it is in a copy of the person's data. It only repeats
answers, findings, alerts, looks and acts, which have rows of their own."""

PERSONS_AT_ONCE: Final = 20
ROWS_AT_ONCE: Final = 500
"""People or rows looked through in one commit; our choices, so that a turn waits a few milliseconds at most."""


class OldRun(NamedTuple):
    """A run that has answers. ``over``: its end, or its beginning where it never ended; ``asked``: its subject, such as a day."""

    run: str
    flow: str
    began: datetime
    over: datetime
    ending: str | None
    asked: str


def candidates(db: sqlite3.Connection, after: int, cut: datetime, before: datetime | None,
               looked: datetime | None) -> tuple[list[int], int | None]:
    """Return those of the next PERSONS_AT_ONCE people who have a run over by ``cut`` and something new since the last pass, which was
    at ``looked`` with the cut ``before``: a run over since that pass or between the two cuts, or a conversation left between them; and
    the last number looked at, None at the end."""
    numbers = [row[0] for row in db.execute("select id from persons where id > ? order by id limit ?", (after, PERSONS_AT_ONCE))]
    if not numbers:
        return [], None
    found = db.execute(
        "select person from runs where person between :first and :last group by person having "
        "min(ifnull(ended_at, began_at)) <= :cut and (max(ifnull(ended_at, began_at)) > :looked or "
        "sum(ifnull(ended_at, began_at) > :before and ifnull(ended_at, began_at) <= :cut) > 0 or exists (select 1 from sessions s "
        "where s.person = runs.person and s.updated_at > :before and s.updated_at <= :cut))",
        {"first": numbers[0], "last": numbers[-1], "cut": text_of(cut), "before": text_of(before) if before else "",
         "looked": text_of(looked) if looked else ""})
    return [row[0] for row in found], numbers[-1]


def runs_of(db: sqlite3.Connection, person: int) -> list[OldRun]:
    """Return a person's runs that have answers, oldest first."""
    rows = db.execute(
        "select run, flow, began_at, ifnull(ended_at, began_at), ending, asked from runs r where person = ? and exists "
        "(select 1 from answers a where a.person = r.person and a.run = r.run) order by began_at, length(run), run", (person,))
    return [OldRun(run, flow, moment_of(began), moment_of(over), ending, asked) for run, flow, began, over, ending, asked in rows]


def decisive_runs(db: sqlite3.Connection, person: int) -> frozenset[str]:
    """Return the runs that the current findings and the latest alert from pain come from."""
    return frozenset(run for (run,) in db.execute(
        "select run from findings where id in (select max(id) from findings where person = :person group by name) union "
        "select run from alerts where id = (select max(a.id) from alerts a join runs u on u.person = a.person and u.run = a.run and "
        "u.flow in ('pain', 'morning') where a.person = :person)", {"person": person}))


def abandon(db: sqlite3.Connection, person: int, runs: Iterable[str]) -> None:
    """End runs that nobody will continue as "left", at their last answer."""
    db.executemany("update runs set ending = 'left', ended_at = ifnull((select max(at) from answers a where a.person = runs.person and "
                   "a.run = runs.run), began_at) where person = ? and run = ? and ended_at is null", [(person, run) for run in runs])


def remove_answers(db: sqlite3.Connection, person: int, runs: Iterable[str]) -> int:
    """Remove the answers of whole runs, so that no answer stays without the one it replaced; the runs stay. Returns the count."""
    return sum(db.execute("delete from answers where person = ? and run = ?", (person, run)).rowcount for run in runs)


def remove_updates(db: sqlite3.Connection, after: tuple[str, int], now: datetime) -> tuple[str, int] | None:
    """Remove those of the next ROWS_AT_ONCE update ids that are older than UPDATES_KEPT. Returns the last one looked at, None at the
    end. Goes by the primary key: an index on the time would cost every turn, and ids can start over."""
    last: tuple[str, int] | None = db.execute(
        "select channel, update_id from (select channel, update_id from updates where (channel, update_id) > (?, ?) order by channel, "
        "update_id limit ?) order by channel desc, update_id desc limit 1", (*after, ROWS_AT_ONCE)).fetchone()
    if last is not None:
        db.execute("delete from updates where (channel, update_id) > (?, ?) and (channel, update_id) <= (?, ?) and at < ?",
                   (*after, *last, text_of(now - UPDATES_KEPT)))
    return last


def forget_unread(db: sqlite3.Connection, before: datetime) -> None:
    """Remove messages that came to nothing from the sessions of those who wrote nothing since a moment."""
    db.execute("update sessions set session = json_set(session, '$.unread', json('[]')) where updated_at < ? and "
               "json_array_length(session, '$.unread') > 0", (text_of(before),))


def remove_messages(db: sqlite3.Connection, after: int, before: datetime) -> tuple[int | None, int]:
    """Remove those of the next ROWS_AT_ONCE messages that were settled before a moment. Stops at one made after it, as all later
    ones are. Returns the last number looked at (None: no more to look at), and the count removed."""
    cut = text_of(before)
    last, young = db.execute("select max(id), max(made_at) > ? from (select id, made_at from outbox where id > ? order by id limit ?)",
                             (cut, after, ROWS_AT_ONCE)).fetchone()
    if last is None:
        return None, 0
    removed = db.execute("delete from outbox where id > ? and id <= ? and settled_at < ?", (after, last, cut)).rowcount
    return None if young else last, removed
