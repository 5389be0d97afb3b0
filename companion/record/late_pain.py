"""Pain told late: which answers of today it makes void, and how they count again when it is taken back. The log only grows."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from companion.base.clock import local_date
from companion.conversation.effects import CountAgain, Record, Void
from companion.record.persist import LATEST, answer, void_run
from companion.record.timestamps import moment_of, text_of
from companion.record.turn import Turn

LATER = timedelta(milliseconds=1)
"""Of two rows of one moment the one that does not count is taken for the later, so what counts again is the next moment's."""


def void(turn: Turn, told: Void) -> None:
    """Mark what was answered today, where the person is, in these flows as given in pain."""
    zone = turn.zone
    today = local_date(turn.now, zone)
    for flow in told.flows.split():
        runs = turn.db.execute("select run, max(at) from answers where person = ? and flow = ? group by run", (turn.person, flow))
        for run in [run for run, at in runs if local_date(moment_of(at), zone) == today]:
            void_run(turn, run)
    turn.changed()


def count_again(turn: Turn, told: CountAgain) -> None:
    """Let what pain made void since a moment count again, and take back that something hurt there.

    A run that pain ended is done again where it had ended before that moment, and else left.
    """
    since, flows = text_of(datetime.fromisoformat(told.since)), set(told.flows.split())
    hurt: dict[str, list[str]] = {}
    for run, flow, key in turn.db.execute("select distinct run, flow, key from answers where person = ? and status = 'in_pain' and "
                                          "at >= ? order by id", (turn.person, since)).fetchall():
        if not flows or flow in flows:
            hurt.setdefault(run, []).append(key)
    later = replace(turn, now=turn.now + LATER)
    for run, keys in hurt.items():
        rows = [row for row in (Record(*one) for one in turn.db.execute(LATEST, (turn.person, run))) if row.key in keys]
        for row in rows:
            answer(turn, replace(row, raw="", value=None, unit="", status="no_pain"))
        for row in rows:
            if row.value is not None and row.status in ("ok", "in_pain"):
                answer(later, replace(row, status="ok"))
        turn.db.execute("update runs set ending = iif(ended_at < ?, 'done', 'left') where person = ? and run = ? and ending = 'pain'",
                        (since, turn.person, run))
    turn.changed()
