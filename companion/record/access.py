"""Access of a coach to a lifter's record: all but what they said about harming themselves, whatever they answered.

Every reader of ``companion.coach`` has the log and the findings from here. Of a crisis a coach knows only the alert that the lifter agreed
to, which says no more than that they ask for a call.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from typing import Final

from companion.record import log
from companion.record.log import KeptFact, KeptFinding, LogRow

WITHHELD_FLOWS: Final = ("crisis", "begin_again")
WITHHELD_VALUE: Final = "self_harm"
"""The answer by which somebody says that this is what doubtful words meant."""
_WITHHELD: Final = "crisis"

ANSWER_SHARED: Final = f"flow not in {WITHHELD_FLOWS} and ifnull(value, '') <> '{WITHHELD_VALUE}'"
"""SQL condition on an answer: a coach may read it."""


def answers_of(db: sqlite3.Connection, person: int) -> Iterator[LogRow]:
    """Return the answers that a coach may read, oldest first."""
    return (row for row in log.answers_of(db, person) if row.flow not in WITHHELD_FLOWS and row.value != WITHHELD_VALUE)


def findings_of(db: sqlite3.Connection, person: int) -> dict[str, KeptFinding]:
    """Return the latest findings that a coach may read, by name."""
    return {name: found for name, found in log.findings_of(db, person).items() if _shared(name)}


def facts_of(db: sqlite3.Connection, person: int) -> dict[str, KeptFact]:
    """Return the facts that a coach may read, by name."""
    return {name: fact for name, fact in log.facts_of(db, person).items() if _shared(name) and fact.value != WITHHELD_VALUE}


def _shared(name: str) -> bool:
    return not name.startswith(_WITHHELD) and name.partition(".")[0] not in WITHHELD_FLOWS
