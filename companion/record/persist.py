"""Effects turned into rows, within one turn's transaction."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from functools import lru_cache
from typing import NamedTuple

from companion.base.clock import instant
from companion.conversation.effects import (
    Act,
    Alert,
    Began,
    Calendar,
    Effect,
    Ended,
    Erase,
    Export,
    Find,
    Link,
    Record,
    Redeem,
    Remind,
    Reopened,
    Replan,
    Say,
    Show,
    StopReminders,
    Tap,
)
from companion.record import reminders
from companion.record.people import addresses_of
from companion.record.reminders import Reminder
from companion.record.timestamps import text_of


class Document(NamedTuple):
    """A file that goes with a message: its name and its text."""

    name: str
    text: str


def keep(db: sqlite3.Connection, person: int, effects: Iterable[Effect], now: datetime, zone: str,
         to: tuple[str, str] | None = None, offer: Reminder | None = None) -> None:
    """Keep what a step wanted: answers, findings, reminders, alerts and messages to ``to`` (else to every address).
    ``offer``: the reminder its messages are for, with which they go stale."""
    for effect in effects:
        match effect:
            case Say():
                put_message(db, person, effect, now, to, offer=offer)
            case Began():
                db.execute("insert or ignore into runs (person, run, flow, version, began_at, asked) values (?, ?, ?, ?, ?, ?)",
                           (person, effect.run, effect.flow, effect.version, text_of(now), effect.asked))
            case Ended():
                db.execute("update runs set ended_at = ?, ending = ? where person = ? and run = ?",
                           (text_of(now), effect.ending, person, effect.run))
            case Reopened():
                db.execute("update runs set ended_at = null, ending = null where person = ? and run = ?", (person, effect.run))
            case Record():
                _record(db, person, effect, now)
            case Find():
                db.execute("insert into findings (person, run, name, value, rule, because, at) values (?, ?, ?, ?, ?, ?, ?)",
                           (person, effect.run, effect.name, effect.value, effect.rule, effect.because, text_of(now)))
                _fact(db, person, effect.name, effect.value, 1, now)
            case Remind():
                _remind(db, person, effect, now, zone)
            case Alert():
                _alert(db, person, effect, now)
            case Export() | Erase() | StopReminders() | Replan() | Calendar() | Redeem() | Link() | Show() | Act():
                pass  # by the turn itself, once the rest is kept


def _record(db: sqlite3.Connection, person: int, row: Record, now: datetime) -> None:
    db.execute(
        "insert into answers (person, run, flow, version, key, side, raw, value, unit, status, method, placement, at, replaces) "
        "values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
        "(select id from answers where person = ? and run = ? and key = ? order by id desc limit 1))",
        (person, row.run, row.flow, row.version, row.key, row.side, row.raw, row.value, row.unit, row.status,
         row.method, row.placement, text_of(now), person, row.run, row.key))
    name = f"{row.flow}.{row.key}"
    if row.status == "ok" and row.value is not None:
        _fact(db, person, name, row.value, 0, now)
    elif row.status == "withdrawn":
        db.execute("delete from facts where person = ? and name = ?", (person, name))


def _fact(db: sqlite3.Connection, person: int, name: str, value: float | str, found: int, now: datetime) -> None:
    db.execute("insert into facts values (?, ?, ?, ?, ?) on conflict (person, name) do update set "
               "value = excluded.value, at = excluded.at", (person, name, value, found, text_of(now)))


def _remind(db: sqlite3.Connection, person: int, wanted: Remind, now: datetime, zone: str) -> None:
    if not wanted.date:
        reminders.take_away(db, person, wanted.kind, now)
        return
    day, at = date.fromisoformat(wanted.date), time(wanted.hour)
    stale = instant(day + timedelta(days=1), time(), zone) if wanted.that_day else None
    reminders.add(db, person, wanted.kind, wanted.flow, f"{day} {at:%H:%M}", zone, instant(day, at, zone), now,
                  day.isoformat() if wanted.that_day else "", stale)


def _alert(db: sqlite3.Connection, person: int, alert: Alert, now: datetime) -> None:
    db.execute("insert into alerts (person, run, level, because, at) values (?, ?, ?, ?, ?)",
               (person, alert.run, alert.level, alert.because, text_of(now)))


def put_message(db: sqlite3.Connection, person: int, say: Say, now: datetime, to: tuple[str, str] | None = None,
                document: Document | None = None, offer: Reminder | None = None, about: int | None = None,
                fleeting: bool = False) -> None:
    """Put a message in the outbox, for one address or for all a person has. ``about``: the lifter it tells a coach of; ``fleeting``:
    its words are not kept once it has gone."""
    buttons = _buttons_text(say.buttons)
    due = text_of(now + timedelta(seconds=say.after) if say.after else now)
    for channel, address in [to] if to else addresses_of(db, person):
        db.execute("insert into outbox (person, channel, address, text, buttons, picture, document, must_arrive, timed, "
                   "unasked, due_at, made_at, document_name, stale_at, reminder, about, fleeting) "
                   "values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                   (person, channel, address, say.text, buttons, say.picture or None, document and document.text, say.must_arrive,
                    say.after > 0, to is None, due, text_of(now), document and document.name,
                    text_of(offer.stale_at) if offer and offer.stale_at else None, offer and offer.id, about, fleeting))


@lru_cache(500)  # the same question asked of many
def _buttons_text(buttons: tuple[tuple[Tap, ...], ...]) -> str:
    return json.dumps([[[tap.label, tap.data] for tap in row] for row in buttons], ensure_ascii=False)


def take_back_timed(db: sqlite3.Connection, person: int, now: datetime) -> int:
    """The person wrote while a hold was being counted: what still waits for its time is not sent any more; gives how
    many messages that are."""
    return db.execute("update outbox set settled_at = ?, dropped = 'the person wrote first' where person = ? and timed = 1 "
               "and settled_at is null and due_at > ?", (text_of(now), person, text_of(now))).rowcount
