"""Handlers of the effects that write rows, within a turn's transaction; and adding messages to the outbox."""

from __future__ import annotations

import json
import sqlite3
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from functools import lru_cache
from typing import Final, NamedTuple

from companion.base.clock import instant
from companion.conversation.effects import Alert, Began, Ended, Find, Record, Remind, Reopened, Say, Tap
from companion.port import Rank
from companion.record import reminders
from companion.record.people import addresses_of
from companion.record.reminders import Reminder
from companion.record.timestamps import text_of
from companion.record.turn import Turn
from companion.record.unanswered import SAME_QUESTIONS
from companion.screening.sources import value


class Document(NamedTuple):
    """A file sent with a message: its name and text."""

    name: str
    text: str


def message(turn: Turn, say: Say) -> None:
    """Add a message to the outbox: for the address the person writes from, else for all of theirs."""
    put_message(turn.db, turn.person, say, turn.now, turn.to, offer=turn.offer, rank=turn.rank)


def began(turn: Turn, run: Began) -> None:
    """Store the beginning of a run."""
    turn.db.execute("insert or ignore into runs (person, run, flow, version, began_at, asked, first_run) values (?, ?, ?, ?, ?, ?, ?)",
                    (turn.person, run.run, run.flow, run.version, text_of(turn.now), run.asked, run.first_run or run.run))


def ended(turn: Turn, run: Ended) -> None:
    """Store a run's end and how it ended. If it had ended before and pain is told of it since, its answers are void."""
    if run.ending == "pain" and turn.db.execute("select ended_at from runs where person = ? and run = ? and ended_at is not null",
                                                (turn.person, run.run)).fetchone():
        void_run(turn, run.run)
        return
    turn.db.execute("update runs set ended_at = ?, ending = ? where person = ? and run = ?",
                    (text_of(turn.now), run.ending, turn.person, run.run))


def reopened(turn: Turn, run: Reopened) -> None:
    """Reopen a run that had ended."""
    turn.db.execute("update runs set ended_at = null, ending = null where person = ? and run = ?", (turn.person, run.run))


def answer(turn: Turn, row: Record) -> None:
    """Append an answer to the log, with the row it replaces. An answer becomes a fact; a withdrawn one removes it."""
    replaced = turn.db.execute("select id from answers where person = ? and run = ? and key = ? order by id desc limit 1",
                               (turn.person, row.run, row.key)).fetchone()
    turn.chain.append(turn.db, (turn.person, row.run, row.flow, row.version, row.key, row.side, row.raw, row.value, row.unit, row.status,
                                row.method, row.placement, replaced[0] if replaced else None, text_of(turn.now)))
    name = f"{row.flow}.{row.key}"
    if row.status == "ok" and row.value is not None:
        _fact(turn, name, row.value, 0)
    elif row.status == "withdrawn" or (row.status == "in_pain" and row.value is not None):
        turn.db.execute("delete from facts where person = ? and name = ?", (turn.person, name))
        turn.changed()


LATEST_ROWS: Final = """
select run, flow, version, key, side, raw, value, unit, status, method, placement from answers a where person = ? and run = ?
and not exists (select 1 from answers l where l.person = a.person and l.run = a.run and l.key = a.key and l.id > a.id) order by id
"""
"""The latest row of each key of a run, with the columns of a ``Record``."""


def void_run(turn: Turn, run: str) -> None:
    """Mark each standing answer of a run as given in pain, by a row that replaces it; the run ends with pain, when it ended."""
    for row in [Record(*one) for one in turn.db.execute(LATEST_ROWS, (turn.person, run))]:
        if row.status == "ok" and row.value is not None:
            answer(turn, replace(row, status="in_pain"))
    turn.db.execute("update runs set ending = 'pain', ended_at = ifnull(ended_at, ?) where person = ? and run = ?",
                    (text_of(turn.now), turn.person, run))


def finding(turn: Turn, found: Find) -> None:
    """Append a finding, which becomes a fact."""
    turn.db.execute("insert into findings (person, run, name, value, rule, because, at) values (?, ?, ?, ?, ?, ?, ?)",
                    (turn.person, found.run, found.name, found.value, found.rule, found.because, text_of(turn.now)))
    _fact(turn, found.name, found.value, 1)


def _fact(turn: Turn, name: str, value: float | str, found: int) -> None:
    turn.db.execute("insert into facts values (?, ?, ?, ?, ?) on conflict (person, name) do update set "
                    "value = excluded.value, at = excluded.at", (turn.person, name, value, found, text_of(turn.now)))
    turn.changed()


def remind(turn: Turn, wanted: Remind) -> None:
    """Open a reminder at a wall-clock hour in the person's zone; without a date, only cancel the open one of its kind."""
    turn.changed()
    if not wanted.date:
        reminders.cancel(turn.db, turn.person, wanted.kind, turn.now)
        return
    zone, day, at = turn.zone, date.fromisoformat(wanted.date), time(int(value("date_hour")) if wanted.hour is None else wanted.hour)
    stale = instant(day + timedelta(days=1), time(), zone) if wanted.that_day else None
    reminders.add(turn.db, turn.person, wanted.kind, wanted.flow, f"{day} {at:%H:%M}", zone, instant(day, at, zone), turn.now,
                  day.isoformat() if wanted.that_day else "", stale)


def alert(turn: Turn, told: Alert) -> int:
    """Keep an alert and return its number; who hears of it is not decided here."""
    return turn.db.execute("insert into alerts (person, run, level, because, at) values (?, ?, ?, ?, ?)",
                    (turn.person, told.run, told.level, told.because, text_of(turn.now))).lastrowid or 0


def alerted_with(turn: Turn, told: Alert, words: str) -> bool:
    """True if an alert of the same level, of this run or of the same questions when they were begun before, began with the same
    words."""
    return _alerted(turn, told, f"instr(a.because, :words) = 1 and (u.run = n.run or {SAME_QUESTIONS})", words)


def alerted_before(turn: Turn, told: Alert) -> bool:
    """True if the same alert was raised when these questions were begun before: nothing new was told since."""
    return _alerted(turn, told, f"instr(a.because, :words) = 1 and {SAME_QUESTIONS}", told.because)


def _alerted(turn: Turn, told: Alert, where: str, words: str) -> bool:
    return turn.db.execute(
        "select 1 from alerts a join runs u on u.person = a.person and u.run = a.run join runs n on n.person = a.person and n.run = :run "
        f"where a.person = :person and a.level = :level and {where}",
        {"run": told.run, "person": turn.person, "level": told.level, "words": words}).fetchone() is not None


def put_message(db: sqlite3.Connection, person: int, say: Say, now: datetime, to: tuple[str, str] | None = None,
                document: Document | None = None, offer: Reminder | None = None, about: int | None = None,
                fleeting: bool = False, rank: Rank | None = None) -> None:
    """Add a message to the outbox, for one address (``to``: channel, address) or all of a person's. ``offer``: the reminder it
    belongs to; ``about``: the lifter a coach's message is about; ``fleeting``: the text is deleted once sent; ``rank``: its class,
    else an answer where there is an address, a reminder where the bot begins."""
    buttons, picture, asked = _buttons_text(say.buttons), say.picture or None, to is not None
    rank = Rank.COURTESY if not say.must_arrive else rank if rank is not None else Rank.ANSWER if asked else Rank.REMINDER
    due = text_of(now + timedelta(seconds=say.after) if say.after else now)
    for channel, address in [to] if to else addresses_of(db, person):
        since = _collapse(db, channel, address, say.text, buttons) if asked and not say.after and document is None else None
        db.execute("insert into outbox (person, channel, address, text, buttons, picture, document, must_arrive, timed, "
                   "unasked, due_at, made_at, document_name, stale_at, reminder, about, fleeting, rank, waits_since) "
                   "values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                   (person, channel, address, say.text, buttons, picture, document and document.text, say.must_arrive,
                    say.after > 0, not asked, due, text_of(now), document and document.name,
                    text_of(offer.stale_at) if offer and offer.stale_at else None, offer and offer.id, about, fleeting, rank, since))


def _collapse(db: sqlite3.Connection, channel: str, address: str, text: str, buttons: str) -> str | None:
    """Remove a waiting answer that is about to be said again: one is enough, and the later one stands where the conversation is. Returns
    since when it has waited, None where there was none."""
    return min((since for since, in db.execute(
        "delete from outbox where settled_at is null and channel = ? and address = ? and text = ? and buttons = ? and timed = 0 and "
        "unasked = 0 and document is null and reminder is null returning ifnull(waits_since, due_at)",
        (channel, address, text, buttons))), default=None)


@lru_cache(500)  # many people are asked the same question
def _buttons_text(buttons: tuple[tuple[Tap, ...], ...]) -> str:
    return json.dumps([[[tap.label, tap.data] for tap in row] for row in buttons], ensure_ascii=False)


def cancel_timed(db: sqlite3.Connection, person: int, now: datetime) -> int:
    """Drop the unsent messages of a timed hold, since the person wrote first; returns their count."""
    return db.execute("update outbox set settled_at = ?, dropped = 'the person wrote first' where person = ? and timed = 1 "
               "and settled_at is null and due_at > ?", (text_of(now), person, text_of(now))).rowcount
