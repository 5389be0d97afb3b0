"""The load limit against what was lifted, from the log: one reading of it, for a lifter's page, the caseload and what is new."""

from __future__ import annotations

import sqlite3
from datetime import datetime
from functools import partial
from typing import Final, NamedTuple

from companion.language.units import METRIC, shown
from companion.record.log import load_limits_of
from companion.record.timestamps import moment_of
from companion.screening.load_limit import limits_in, over_limit
from companion.screening.screen import LoggedAnswer
from companion.screening.squat_days import AFTER, DAY, days_told

RUNS_READ: Final = 60
"""Latest runs about squat days that are read: five a day for as many days as are judged; our choice."""

_ROWS: Final = f"""
select a.id, a.flow, a.run, a.key, a.value, a.status, r.ending, a.at, r.asked from answers a join (
    select person, run, ending, asked from runs where person = :person and flow in ('{DAY}', '{AFTER}') order by began_at desc limit :most
) r on r.person = a.person and r.run = a.run
union all select id, flow, run, key, value, status, '', at, '' from answers where id = (
    select max(id) from answers where person = :person and flow = 'about_you' and key = 'load' and status = 'ok')
"""


class OverLoad(NamedTuple):
    """Squat days over the load limit: when a load of theirs was told or put right last, and on how many of the latest, in words."""

    told: datetime
    words: str


def over_load_of(db: sqlite3.Connection, person: int) -> OverLoad | None:
    """Return how the latest squat days stand against the load limits of their time; None where none was over."""
    limits = limits_in(load_limits_of(db, person))
    least = min((one.kg for one in limits if one.kg is not None), default=None)
    rows = sorted(db.execute(_ROWS, {"person": person, "most": RUNS_READ})) if least is not None else []
    if not any(isinstance(row[4], int | float) and row[4] > (least or 0) for row in rows if row[3] == "load"):
        return None  # as for nearly everybody: nothing they named is above any limit they have had
    known = dict(db.execute("select name, value from facts where person = ? and name in ('welcome.zone', 'coach_welcome.zone', "
                            "'welcome.units')", (person,)))
    answers = (LoggedAnswer(flow, run, key, value, status, ending, "", "", moment_of(at), asked)
               for _, flow, run, key, value, status, ending, at, asked in rows)
    over = over_limit(days_told(answers, known.get("welcome.zone") or known.get("coach_welcome.zone") or "UTC+00:00"), limits)
    return None if over.told is None else OverLoad(over.told, over.words(partial(shown, system=known.get("welcome.units", METRIC))))
