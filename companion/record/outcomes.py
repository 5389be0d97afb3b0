"""Reads of what lifters who agreed to it let be counted: their answer logs and the set-ups found good, without a name."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from datetime import datetime
from typing import Final, NamedTuple

from companion.record.log import answers_of, as_answer
from companion.record.timestamps import moment_of
from companion.screening.screen import LoggedAnswer

AGREED: Final = "share_outcomes.agree"
POOLED: Final = "share_trial.agree"


class SharedLog(NamedTuple):
    """One lifter's answers, and the set-ups that were found good, each with its moment."""

    answers: tuple[LoggedAnswer, ...]
    setups: tuple[tuple[datetime, str], ...]


def shared_logs(db: sqlite3.Connection) -> Iterator[SharedLog]:
    """Return an iterator over the logs of those whose last word on it is yes, in no order that tells who they are."""
    for (person,) in db.execute("select person from facts where name = ? and value = 'yes' order by random()", (AGREED,)).fetchall():
        setups = db.execute("select at, value from findings where person = ? and name = 'setup.change' order by id", (person,))
        yield SharedLog(tuple(map(as_answer, answers_of(db, person))), tuple((moment_of(at), change) for at, change in setups))


def trial_logs(db: sqlite3.Connection) -> Iterator[tuple[int, str, tuple[LoggedAnswer, ...]]]:
    """Return an iterator over those whose last word on pooling their trial is yes: number, zone and answers."""
    for person, zone in db.execute(
            "select f.person, ifnull(z.value, 'UTC+00:00') from facts f left join facts z on z.person = f.person and z.name = "
            "'welcome.zone' where f.name = ? and f.value = 'yes' order by f.person", (POOLED,)).fetchall():
        yield person, zone, tuple(map(as_answer, answers_of(db, person)))
