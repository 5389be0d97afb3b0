"""Messages on their way: rows put there with the answers they follow from, taken out as they are delivered."""

from __future__ import annotations

import json
import sqlite3
from datetime import datetime
from functools import lru_cache

from companion.conversation.effects import Say
from companion.port import Address, Button, Outgoing
from companion.record.timestamps import moment_of, text_of

MOST_AT_ONCE = 200
"""Messages looked at together, one an address; our choice, to keep the queue in memory short."""

_COLUMNS = "id, channel, address, text, buttons, picture, document, must_arrive, attempt, document_name"

_NO_CODE = "text = iif(fleeting, 'A message with a code, which is not kept.', text)"

_LEAVES = ("{0}.settled_at is null and {0}.channel = :channel and {0}.due_at <= :at and "
           "({0}.stale_at is null or {0}.stale_at > :at)")


def due(db: sqlite3.Connection, channel: str, now: datetime, only: str | None = None) -> list[Outgoing]:
    """Return the oldest message whose time has come, for each address of a channel: replies before what was not asked for, within an
    address too, so that who writes while thousands of reminders leave is answered at once. ``only``: of one address. What has
    gone stale stays for the sweep to settle."""
    rows = db.execute(
        f"select {_COLUMNS} from outbox o where {_LEAVES.format('o')} and ifnull(:only = address, 1) and not exists (select 1 from "
        f"outbox b where {_LEAVES.format('b')} and b.address = o.address and (b.unasked, b.due_at, b.id) < (o.unasked, o.due_at, o.id)) "
        "order by unasked, due_at, id limit :most", {"channel": channel, "at": text_of(now), "only": only, "most": MOST_AT_ONCE})
    return [_outgoing(row) for row in rows]


def next_due(db: sqlite3.Connection, channel: str, now: datetime) -> datetime | None:
    """Return when the next message that can't leave yet is due; None where there is none."""
    row = db.execute("select due_at from outbox where settled_at is null and +channel = ? and due_at > ? order by due_at limit 1",
                     (channel, text_of(now))).fetchone()  # the plus: by time, so that thousands that wait are not walked through
    return moment_of(row[0]) if row else None


def waiting(db: sqlite3.Connection, channel: str, now: datetime) -> tuple[int, datetime | None]:
    """Return the number of messages of a channel that are due and not sent, and since when the oldest is."""
    count, oldest = db.execute("select count(*), min(due_at) from outbox where settled_at is null and channel = ? and due_at <= ?",
                               (channel, text_of(now))).fetchone()
    return count, moment_of(oldest) if oldest else None


def gone_stale(db: sqlite3.Connection, now: datetime) -> list[int]:
    """Return the numbers of messages that wait and may not leave any more."""
    return [row[0] for row in db.execute("select id from outbox where settled_at is null and stale_at <= ? order by stale_at, id",
                                         (text_of(now),))]


def waiting_one(db: sqlite3.Connection, id: int) -> tuple[int, int | None] | None:
    """Return the person a waiting message is for and the reminder it is of; None where it is settled."""
    row: tuple[int, int | None] | None = db.execute(
        "select person, reminder from outbox where id = ? and settled_at is null", (id,)).fetchone()
    return row


def stay(db: sqlite3.Connection, id: int, until: datetime | None) -> None:
    """Let a waiting message leave after all, until then (None: without end)."""
    db.execute("update outbox set stale_at = ? where id = ?", (text_of(until) if until else None, id))


def take_back_offer(db: sqlite3.Connection, person: int, reminder: int, at: datetime) -> bool:
    """Take back whatever waits of a reminder; returns True if nothing of it had arrived."""
    db.execute("update outbox set settled_at = ?, dropped = 'too late' where person = ? and reminder = ? and settled_at is null",
               (text_of(at), person, reminder))
    return db.execute("select 1 from outbox where person = ? and reminder = ? and message is not null",
                      (person, reminder)).fetchone() is None


def take_back_missed(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """Take back what waits to say that a reminder was missed: a later one says it."""
    db.execute("update outbox set settled_at = ?, dropped = 'said anew' where person = ? and settled_at is null and reminder in "
               "(select id from reminders where person = ? and state = 'stale')", (text_of(at), person, person))


def _outgoing(row: tuple[int, str, str, str, str, str | None, str | None, int, int, str | None]) -> Outgoing:
    return Outgoing(row[0], Address(row[1], row[2]), row[3], _buttons(row[4]), row[5], row[6], bool(row[7]), row[8], row[9] or "")


@lru_cache(500)  # the same question asked of many
def _buttons(text: str) -> tuple[tuple[Button, ...], ...]:
    return tuple(tuple(Button(label, data) for label, data in line) for line in json.loads(text))


def mark_sent(db: sqlite3.Connection, id: int, at: datetime, message: str) -> None:
    """Note that a message arrived. A document it carried is not kept, nor a code it told."""
    db.execute(f"update outbox set settled_at = ?, message = ?, document = null, {_NO_CODE} where id = ?", (text_of(at), message, id))


def mark_dropped(db: sqlite3.Connection, id: int, at: datetime, reason: str) -> None:
    """Note that a message will not be sent (again), and why."""
    db.execute(f"update outbox set settled_at = ?, dropped = ?, document = null, {_NO_CODE} where id = ?", (text_of(at), reason, id))


def mark_tried(db: sqlite3.Connection, id: int, at: datetime) -> None:
    """Note that a message was tried without success and waits for another try."""
    db.execute("update outbox set attempt = attempt + 1, tried_at = ? where id = ?", (text_of(at), id))


def drop_for(db: sqlite3.Connection, channel: str, address: str, at: datetime, reason: str) -> int:
    """Give up whatever waits for this address; returns how many messages that are."""
    return db.execute(f"update outbox set settled_at = ?, dropped = ?, document = null, {_NO_CODE} where channel = ? and address = ? "
                      "and settled_at is null", (text_of(at), reason, channel, address)).rowcount


def unkept(id: int, to: Address, say: Say) -> Outgoing:
    """Return a message that is never kept in the file: to somebody who has not agreed to that, or whose rows are gone."""
    buttons = tuple(tuple(Button(tap.label, tap.data) for tap in row) for row in say.buttons)
    return Outgoing(id, to, say.text, buttons, say.picture or None)
