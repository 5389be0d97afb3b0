"""Removal of rows that are old enough, found and removed a few at a time. What has to stay is decided elsewhere (app.retention)."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from companion.record.timestamps import moment_of, text_of

UPDATES_KEPT: Final = timedelta(days=14)
"""Our choice: Telegram gives an update again for 24 hours at most (people.SEEN_FOR), and the doctor tells of those that
failed within a week."""

MESSAGES_KEPT: Final = timedelta(days=90)
"""Time for which a message that was sent or given up stays; our choice. Until then a copy of somebody's data shows it; it is made of
answers and findings, and alerts, looks and acts of coaches have rows of their own."""

PERSONS_AT_ONCE: Final = 20
ROWS_AT_ONCE: Final = 500
"""Looked through in one commit; our choices, so that a turn waits a few milliseconds at most."""


class Walked(NamedTuple):
    """The last row looked at (None: the rest need not be), and how many were removed."""

    upto: int | None
    removed: int


class Run(NamedTuple):
    """A run with answers: when it began, when it was over (where it never was: when it began), and what it was begun with."""

    run: str
    flow: str
    began: datetime
    over: datetime
    ending: str | None
    asked: str


class Someone(NamedTuple):
    """People to look at, of those up to a number; ``upto`` is None where there is nobody after them."""

    persons: list[int]
    upto: int | None


def aged(db: sqlite3.Connection, after: int, cut: datetime, before: datetime | None, looked: datetime | None) -> Someone:
    """Return, of the next PERSONS_AT_ONCE people, those with a run over by ``cut`` and something new since they were last looked at, which
    was at ``looked`` for ``before``: runs that were over between these two, runs since, or a conversation left between the two."""
    numbers = [row[0] for row in db.execute("select id from persons where id > ? order by id limit ?", (after, PERSONS_AT_ONCE))]
    if not numbers:
        return Someone([], None)
    found = db.execute(
        "select person from runs where person between :first and :last group by person having "
        "min(ifnull(ended_at, began_at)) <= :cut and (max(ifnull(ended_at, began_at)) > :looked or "
        "sum(ifnull(ended_at, began_at) > :before and ifnull(ended_at, began_at) <= :cut) > 0 or exists (select 1 from sessions s "
        "where s.person = runs.person and s.updated_at > :before and s.updated_at <= :cut))",
        {"first": numbers[0], "last": numbers[-1], "cut": text_of(cut), "before": text_of(before) if before else "",
         "looked": text_of(looked) if looked else ""})
    return Someone([row[0] for row in found], numbers[-1])


def runs_of(db: sqlite3.Connection, person: int) -> list[Run]:
    """Return a person's runs that have answers, the oldest first."""
    rows = db.execute(
        "select run, flow, began_at, ifnull(ended_at, began_at), ending, asked from runs r where person = ? and exists "
        "(select 1 from answers a where a.person = r.person and a.run = r.run) order by began_at, length(run), run", (person,))
    return [Run(run, flow, moment_of(began), moment_of(over), ending, asked) for run, flow, began, over, ending, asked in rows]


def rested_on(db: sqlite3.Connection, person: int) -> frozenset[str]:
    """Return the runs in which what stands now was concluded, and that of the latest alert from pain."""
    return frozenset(run for (run,) in db.execute(
        "select run from findings where id in (select max(id) from findings where person = :person group by name) union "
        "select run from alerts where id = (select max(a.id) from alerts a join runs u on u.person = a.person and u.run = a.run and "
        "u.flow in ('pain', 'morning') where a.person = :person)", {"person": person}))


def give_up(db: sqlite3.Connection, person: int, runs: Iterable[str]) -> None:
    """Count runs that nobody will go on with as left, with their last answer."""
    db.executemany("update runs set ending = 'left', ended_at = ifnull((select max(at) from answers a where a.person = runs.person and "
                   "a.run = runs.run), began_at) where person = ? and run = ? and ended_at is null", [(person, run) for run in runs])


def remove_answers(db: sqlite3.Connection, person: int, runs: Iterable[str]) -> int:
    """Remove the answers of whole runs, so that none is left that replaced one; the runs stay. Returns how many answers that were."""
    return sum(db.execute("delete from answers where person = ? and run = ?", (person, run)).rowcount for run in runs)


def remove_updates(db: sqlite3.Connection, after: tuple[str, int], now: datetime) -> tuple[str, int] | None:
    """Of the next ROWS_AT_ONCE update ids, remove those that are not needed any more; the last looked at, None at the end. They are
    walked by their key: an index on the time would cost every turn, and ids can start over."""
    last: tuple[str, int] | None = db.execute(
        "select channel, update_id from (select channel, update_id from updates where (channel, update_id) > (?, ?) order by channel, "
        "update_id limit ?) order by channel desc, update_id desc limit 1", (*after, ROWS_AT_ONCE)).fetchone()
    if last is not None:
        db.execute("delete from updates where (channel, update_id) > (?, ?) and (channel, update_id) <= (?, ?) and at < ?",
                   (*after, *last, text_of(now - UPDATES_KEPT)))
    return last


def remove_messages(db: sqlite3.Connection, after: int, before: datetime) -> Walked:
    """Of the next ROWS_AT_ONCE messages, remove those settled before a moment; where one is younger, so are those after them."""
    cut = text_of(before)
    last, young = db.execute("select max(id), max(made_at) > ? from (select id, made_at from outbox where id > ? order by id limit ?)",
                             (cut, after, ROWS_AT_ONCE)).fetchone()
    if last is None:
        return Walked(None, 0)
    removed = db.execute("delete from outbox where id > ? and id <= ? and settled_at < ?", (after, last, cut)).rowcount
    return Walked(None if young else last, removed)
