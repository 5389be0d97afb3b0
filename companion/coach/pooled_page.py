"""Priming trials of those who agreed to it, pooled, in words for a lifter and for a coach's page."""

from __future__ import annotations

import sqlite3

from companion.coach.names import display_name
from companion.conversation.effects import Say
from companion.record import coaching
from companion.record.outcomes import trial_logs
from companion.screening.pooled_trial import LIFTERS_LEAST, PooledTrial, pool
from companion.screening.priming_trial import pairs_of
from companion.screening.squat_days import days_told, trial_days, trial_seed

POOLED_MEANS: str = "Movement felt without the drill less with it, in points of 0 to 10: above 0 speaks for the drill."


def pooled_trial(db: sqlite3.Connection) -> PooledTrial | None:
    """Return the pooled trial of everybody who agreed to it; None where there are too few."""
    differences = {}
    for person, zone, answers in trial_logs(db):
        if seed := trial_seed(answers, str(person)):
            pairs, _ = pairs_of(seed, trial_days(days_told(answers, zone)))
            differences[person] = [plain.felt - primed.felt for primed, plain in pairs]
    return pool(differences)


def own_say(db: sqlite3.Connection, person: int) -> Say:
    """Return a lifter's own difference, alone and with the group."""
    found = pooled_trial(db)
    if found is None or person not in found.pooled:
        return Say(f"Nothing to pool yet: it takes {LIFTERS_LEAST} lifters who agree, each with a pair of squat days with and without the "
                   "drill. Say “pool my trial” to look again.")
    return Say(f"{POOLED_MEANS} Yours alone: {found.alone[person].words}. With the help of {len(found.pooled)} lifters: "
               f"{found.pooled[person].words}. The group: {found.group.words}.")


def pooled_rows(db: sqlite3.Connection, coach: int) -> tuple[tuple[str, str], ...]:
    """Return the group's difference and those of a coach's lifters in it, as (term, words); none where there are too few."""
    found = pooled_trial(db)
    if found is None:
        return ()
    mine = [lifter for lifter in coaching.lifters_of(db, coach) if lifter in found.pooled]
    return ((f"{len(found.pooled)} lifters who agreed", found.group.words),
            *((display_name(db, coach, lifter), f"alone {found.alone[lifter].words}; with the group {found.pooled[lifter].words}")
              for lifter in mine))
