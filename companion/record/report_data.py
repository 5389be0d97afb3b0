"""The rows a report reads beside the answer log and the facts: alerts, and how a finding has changed."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from companion.record.caseload import STANDING, Standing
from companion.record.coaching import STANDS_REVIEWED
from companion.record.timestamps import moment_of


@dataclass(frozen=True, slots=True)
class Alert:
    """One alert: its level, what it rests on in words, and when the coach was told."""

    level: str
    because: str
    at: datetime


@dataclass(frozen=True, slots=True)
class Found:
    """One conclusion as it was kept: its value, the rule that made it, what it rests on, and when."""

    value: str
    rule: str
    because: str
    at: datetime


def alerts_of(db: sqlite3.Connection, person: int) -> list[Alert]:
    """Return every alert about a person, the newest first."""
    return [Alert(level, because, moment_of(at)) for level, because, at in db.execute(
        "select level, because, at from alerts where person = ? order by id desc", (person,))]


def history_of(db: sqlite3.Connection, person: int, name: str) -> list[Found]:
    """Return every value a finding has had, the oldest first."""
    return [Found(value, rule, because, moment_of(at)) for value, rule, because, at in db.execute(
        "select value, rule, because, at from findings where person = ? and name = ? order by id", (person, name))]


_EVERYONE: Final = f"""
with m as materialized (
    select p.id as person, p.created_at as since,
        (select max(at) from acts a where a.person = p.id and {STANDS_REVIEWED}) as reviewed
    from persons p where not exists (select 1 from coach_roles c where c.person = p.id)
        or exists (select 1 from runs r where r.person = p.id and r.flow = 'about_you'))
"""


def standings_of_all(db: sqlite3.Connection) -> list[Standing]:
    """Return the standing of every lifter, linked to a coach or not, for the operator; a coach who tests themself is among them.
    ``linked`` is since when they are known, ``reviewed`` the last review by any coach."""
    return list(map(Standing._make, db.execute(f"{_EVERYONE}{STANDING}")))
