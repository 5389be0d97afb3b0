"""The outbox: messages written in the same commit as the answers they follow from, and settled as they are sent or dropped."""

from __future__ import annotations

import json
import re
import sqlite3
from collections import Counter
from datetime import datetime, timedelta
from functools import lru_cache
from typing import Final, NamedTuple

from companion.conversation.effects import Say
from companion.language.phrases import label_key
from companion.port import Address, Button, Outgoing, Rank
from companion.record.timestamps import moment_of, text_of

MOST_AT_ONCE = 200
"""Messages read at once, one per address; our choice: fairness is between the chats among them, and a flood from more accounts than
that is served in the order in which it came."""

_COLUMNS = "id, channel, address, text, buttons, picture, document, attempt, document_name, rank"

_NO_CODE = "text = iif(fleeting, 'A message with a code, which is not kept.', text)"

_LEAVES = ("{0}.settled_at is null and {0}.channel = :channel and {0}.due_at <= :at and "
           "({0}.stale_at is null or {0}.stale_at > :at)")


def due(db: sqlite3.Connection, channel: str, now: datetime, only: str | None = None) -> list[Outgoing]:
    """Return the next due message of each address of a channel, or of the address ``only``, by rank and then the oldest first. Within
    an address pain comes first, then replies, then unasked messages, each in order. Stale messages are left for the sweep to settle."""
    rows = db.execute(
        f"select {_COLUMNS} from outbox o where {_LEAVES.format('o')} and ifnull(:only = address, 1) and not exists (select 1 from "
        f"outbox b where {_LEAVES.format('b')} and b.address = o.address and (b.rank > 0, b.unasked, b.due_at, b.id) < "
        "(o.rank > 0, o.unasked, o.due_at, o.id)) order by rank, due_at, id limit :most",
        {"channel": channel, "at": text_of(now), "only": only, "most": MOST_AT_ONCE})
    return [_outgoing(row) for row in rows]


OFFERED_IN: Final = 3
"""Last messages whose buttons can be typed by their words; our choice: a page, a note and the menu."""
_NUMBERED: Final = re.compile(r"[0-9]+ ")


def offered_to(db: sqlite3.Connection, person: int) -> dict[str, str]:
    """Return the data of the buttons below the last messages to a person, by label in normal form, without its number too, and in the last
    message by what stands before a colon ("Tom Hale: at most 80 kg"); none that would be two buttons of one message."""
    found: dict[str, str] = {}
    for n, (buttons,) in enumerate(db.execute("select buttons from outbox where person = ? and buttons <> '[]' order by id desc limit ?",
                                              (person, OFFERED_IN))):
        labels = [(one, data) for row in json.loads(buttons) for label, data in row for one in _said_as(label_key(label), n == 0)]
        many = Counter(label for label, _ in labels)
        found = {label: data for label, data in labels if many[label] == 1} | found
    return found


def _said_as(label: str, latest: bool) -> set[str]:
    """Return the ways in which a button's label may be typed."""
    return {label, _NUMBERED.sub("", label, count=1), label.partition(":")[0] if latest else label}


def invited_to(db: sqlite3.Connection, person: int) -> list[str]:
    """Return the data of the first button of each reminder that reached a person and after which nothing else was said, the latest first.
    A reminder that has not left yet is none."""
    found: list[str] = []
    for buttons, reminder in db.execute(
            "select buttons, reminder from outbox where person = ? and dropped is null and (reminder is null or settled_at is not null) "
            "order by id desc limit ?", (person, OFFERED_IN)):
        if reminder is None:
            break
        found += [data for row in json.loads(buttons)[:1] for _, data in row[:1]]
    return list(dict.fromkeys(found))


def next_due(db: sqlite3.Connection, channel: str, now: datetime) -> datetime | None:
    """Return the time of the next message that is not due yet; None where there is none."""
    row = db.execute("select due_at from outbox where settled_at is null and +channel = ? and due_at > ? order by due_at limit 1",
                     (channel, text_of(now))).fetchone()  # the plus makes SQLite use the index on time, not walk all that wait
    return moment_of(row[0]) if row else None


class Backlog(NamedTuple):
    """The messages due and not sent: how many wait, since when the oldest is due, and since when the oldest answer to pain is."""

    waiting: int = 0
    oldest: datetime | None = None
    pain: datetime | None = None


def backlog(db: sqlite3.Connection, now: datetime, channel: str = "") -> Backlog:
    """Return what is due and not sent on a channel, or on all but the terminal, where a message waits until its screen opens. What is
    owed to strangers counts too; what has gone stale, and may wait for the end of quiet hours to be dropped, does not."""
    count, oldest, pain = db.execute(
        "select count(*), min(at), min(iif(hurts, at, null)) from (select ifnull(waits_since, due_at) as at, rank = 0 as hurts from outbox "
        "where settled_at is null and due_at <= :at and (stale_at is null or stale_at > :at) and "
        "iif(:channel = '', channel <> 'terminal', channel = :channel) union all select "
        "at, kind in ('pain', 'crisis') from owed where at <= :at and iif(:channel = '', channel <> 'terminal', channel = :channel))",
        {"at": text_of(now), "channel": channel}).fetchone()
    return Backlog(count, moment_of(oldest) if oldest else None, moment_of(pain) if pain else None)


def stale(db: sqlite3.Connection, now: datetime) -> list[int]:
    """Return the numbers of unsent messages that have gone stale."""
    return [row[0] for row in db.execute("select id from outbox where settled_at is null and stale_at <= ? order by stale_at, id",
                                         (text_of(now),))]


def waiting_message(db: sqlite3.Connection, id: int) -> tuple[int, int | None] | None:
    """Return the person and the reminder of an unsent message; None where it is settled."""
    row: tuple[int, int | None] | None = db.execute(
        "select person, reminder from outbox where id = ? and settled_at is null", (id,)).fetchone()
    return row


def extend(db: sqlite3.Connection, id: int, now: datetime, until: datetime | None) -> None:
    """Make an unsent message that went stale due again, and set when it does so anew (None: never)."""
    db.execute("update outbox set due_at = ?, stale_at = ? where id = ?", (text_of(now), text_of(until) if until else None, id))


def withdraw_offer(db: sqlite3.Connection, person: int, reminder: int, at: datetime) -> bool:
    """Drop the unsent messages of a reminder; returns True if there were any, and none of its messages had been sent."""
    dropped = db.execute("update outbox set settled_at = ?, dropped = 'too late' where person = ? and reminder = ? and settled_at is null",
                         (text_of(at), person, reminder)).rowcount
    return dropped > 0 and db.execute("select 1 from outbox where person = ? and reminder = ? and message is not null",
                                      (person, reminder)).fetchone() is None


def hold_offers(db: sqlite3.Connection, person: int, until: datetime) -> None:
    """Keep the unsent messages of a person's reminders until a moment."""
    db.execute("update outbox set due_at = :at where person = :person and reminder is not null and settled_at is null and due_at < :at",
               {"at": text_of(until), "person": person})


def withdraw_missed(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """Drop unsent messages about missed reminders, where a later one replaces them."""
    db.execute("update outbox set settled_at = ?, dropped = 'said anew' where person = ? and settled_at is null and reminder in "
               "(select id from reminders where person = ? and state = 'stale')", (text_of(at), person, person))


def clock_moved(db: sqlite3.Connection, now: datetime, by: timedelta) -> None:
    """Move the unsent messages with a clock that was set, so that what was due stays due and what was not waits as long as before.
    ``by``: how far the clock was set, to ``now``."""
    before = now - by
    rows = db.execute("select made_at, due_at, waits_since, id from outbox where settled_at is null and (made_at > :now or "
                      "due_at > :before and made_at <= :before)", {"now": text_of(now), "before": text_of(before)}).fetchall()
    db.executemany("update outbox set made_at = ?, due_at = ?, waits_since = ? where id = ?", [
        (*(one and text_of(moment_of(one) + by) for one in moments), id) for *moments, id in rows])


def catch_up(db: sqlite3.Connection, now: datetime) -> int:
    """Make due from now what was made, as its row says, at a later moment: the clock was set back while nothing ran. Returns the
    number of messages."""
    rows = db.execute("select id, made_at, due_at from outbox where settled_at is null and made_at > ?", (text_of(now),)).fetchall()
    db.executemany("update outbox set made_at = ?, due_at = ?, waits_since = null where id = ?", [
        (text_of(now), text_of(now + (moment_of(due) - moment_of(made))), id) for id, made, due in rows])
    return len(rows)


def _outgoing(row: tuple[int, str, str, str, str, str | None, str | None, int, str | None, int]) -> Outgoing:
    return Outgoing(row[0], Address(row[1], row[2]), row[3], _buttons(row[4]), row[5], row[6], row[7], row[8] or "", Rank(row[9]))


@lru_cache(500)  # many people are asked the same question
def _buttons(text: str) -> tuple[tuple[Button, ...], ...]:
    return tuple(tuple(Button(label, data) for label, data in line) for line in json.loads(text))


def mark_sent(db: sqlite3.Connection, id: int, at: datetime, message: str) -> None:
    """Mark a message as sent. Its document is deleted, and a code in its text."""
    db.execute(f"update outbox set settled_at = ?, message = ?, document = null, {_NO_CODE} where id = ?", (text_of(at), message, id))


def mark_dropped(db: sqlite3.Connection, id: int, at: datetime, reason: str) -> None:
    """Mark a message as dropped, with the reason."""
    db.execute(f"update outbox set settled_at = ?, dropped = ?, document = null, {_NO_CODE} where id = ?", (text_of(at), reason, id))


def mark_tried(db: sqlite3.Connection, id: int, at: datetime) -> None:
    """Count a failed attempt at sending a message, which stays in the outbox."""
    db.execute("update outbox set attempt = attempt + 1, tried_at = ? where id = ?", (text_of(at), id))


def drop_for(db: sqlite3.Connection, channel: str, address: str, at: datetime, reason: str) -> int:
    """Drop all unsent messages to an address; returns their count."""
    return db.execute(f"update outbox set settled_at = ?, dropped = ?, document = null, {_NO_CODE} where channel = ? and address = ? "
                      "and settled_at is null", (text_of(at), reason, channel, address)).rowcount


def unsaved(id: int, to: Address, say: Say, rank: Rank = Rank.ANSWER) -> Outgoing:
    """Return a message that is not stored: its recipient has not given consent, or was erased."""
    buttons = tuple(tuple(Button(tap.label, tap.data) for tap in row) for row in say.buttons)
    return Outgoing(id, to, say.text, buttons, say.picture or None, rank=rank)
