"""Late pain: it voids answers of the last session, and they count again if it is taken back. The log is append-only."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from companion.conversation.effects import LAST_SESSION, CountAgain, Record, Void
from companion.record.persist import LATEST_ROWS, answer, void_run
from companion.record.timestamps import text_of
from companion.record.turn import Turn

LATER = timedelta(milliseconds=1)
"""Of two rows at one time the void one is taken as the later, so an answer that counts again gets the next millisecond."""


def void(turn: Turn, told: Void) -> None:
    """Mark what was answered in the last session in these flows as given in pain."""
    since = text_of(turn.now - LAST_SESSION)
    for flow in told.flows.split():
        runs = turn.db.execute("select run from answers where person = ? and flow = ? group by run having max(at) >= ?",
                               (turn.person, flow, since)).fetchall()
        for run, in runs:
            void_run(turn, run)
    turn.changed()


def count_again(turn: Turn, told: CountAgain) -> None:
    """Make answers voided by pain since a moment count again, and withdraw that something hurt there.

    A run that pain ended is "done" again if it had ended before that moment, else "left".
    """
    since, flows = text_of(datetime.fromisoformat(told.since)), set(told.flows.split())
    hurt: dict[str, list[str]] = {}
    for run, flow, key in turn.db.execute("select distinct run, flow, key from answers where person = ? and status = 'in_pain' and "
                                          "at >= ? order by id", (turn.person, since)).fetchall():
        if not flows or flow in flows:
            hurt.setdefault(run, []).append(key)
    later = replace(turn, now=turn.now + LATER)
    for run, keys in hurt.items():
        rows = [row for row in (Record(*one) for one in turn.db.execute(LATEST_ROWS, (turn.person, run))) if row.key in keys]
        for row in rows:
            answer(turn, replace(row, raw="", value=None, unit="", status="no_pain"))
        for row in rows:
            if row.value is not None and row.status in ("ok", "in_pain"):
                answer(later, replace(row, status="ok"))
        turn.db.execute("update runs set ending = iif(ended_at < ?, 'done', 'left') where person = ? and run = ? and ending = 'pain'",
                        (since, turn.person, run))
    turn.changed()
