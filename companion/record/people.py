"""Persons, their addresses and where they are in the conversation; update ids; erasing."""

from __future__ import annotations

import sqlite3
from datetime import datetime, timedelta

from companion.conversation.session import Session
from companion.record.held import erase_elsewhere
from companion.record.moments import text_of

UPDATES_KEPT = timedelta(days=2)
"""Telegram gives an update again for 24 hours at most; ids can start over after a week without any."""


def seen_before(db: sqlite3.Connection, channel: str, update_id: int, at: datetime) -> bool:
    """Note an update's id; True where it had been noted already."""
    db.execute("delete from updates where channel = ? and update_id = ? and at < ?",
               (channel, update_id, text_of(at - UPDATES_KEPT)))
    done = db.execute("insert or ignore into updates (channel, update_id, at) values (?, ?, ?)",
                      (channel, update_id, text_of(at)))
    return done.rowcount == 0


def note_failed(db: sqlite3.Connection, channel: str, update_id: int, at: datetime, why: str) -> None:
    """Note that an update was taken but could not be handled, so that it is not tried for ever."""
    db.execute("insert or replace into updates (channel, update_id, at, failed) values (?, ?, ?, ?)",
               (channel, update_id, text_of(at), why))


def person_at(db: sqlite3.Connection, channel: str, address: str) -> int | None:
    """The person at an address, or None for a stranger."""
    row = db.execute("select person from addresses where channel = ? and address = ?", (channel, address)).fetchone()
    return row[0] if row else None


def person_named(db: sqlite3.Connection, name: str) -> int | None:
    """The person whose name or address is this, or None; the earliest where several share it."""
    row = db.execute("select min(person) from addresses where name = ? or address = ?", (name, name)).fetchone()
    return row[0] if row else None


def names(db: sqlite3.Connection) -> list[str]:
    """Every person's name, in order."""
    return [row[0] for row in db.execute("select min(name) from addresses group by person order by 1")]


def add_person(db: sqlite3.Connection, channel: str, address: str, name: str, at: datetime) -> int:
    """A new person at a new address."""
    person = db.execute("insert into persons (created_at) values (?)", (text_of(at),)).lastrowid
    assert person is not None
    db.execute("insert into addresses (channel, address, person, name) values (?, ?, ?, ?)",
               (channel, address, person, name or address))
    return person


def addresses_of(db: sqlite3.Connection, person: int) -> list[tuple[str, str]]:
    """Where a person can be written to: (channel, address), those that are gone left out."""
    return db.execute("select channel, address from addresses where person = ? and gone_at is null order by channel, "
                      "address", (person,)).fetchall()


def mark_gone(db: sqlite3.Connection, channel: str, address: str, at: datetime, reason: str) -> None:
    """Nobody can be reached there any more, until they write again. Where that was the last way to reach them, their
    reminders are held."""
    db.execute("update addresses set gone_at = ?, gone_reason = ? where channel = ? and address = ?",
               (text_of(at), reason, channel, address))
    db.execute("update reminders set state = 'held' where state = 'open' and person in (select person from addresses where "
               "channel = ? and address = ?) and not exists (select 1 from addresses a where a.person = reminders.person and "
               "a.gone_at is null)", (channel, address))


def mark_back(db: sqlite3.Connection, channel: str, address: str) -> None:
    """They wrote: they are there, and what was held is open again."""
    back = db.execute("update addresses set gone_at = null, gone_reason = null where channel = ? and address = ? "
                      "and gone_at is not null returning person", (channel, address)).fetchone()
    if back:
        db.execute("update reminders set state = 'open' where person = ? and state = 'held' and not exists (select 1 from reminders o "
                   "where o.person = reminders.person and o.kind = reminders.kind and o.state = 'open')", back)


def load_session(db: sqlite3.Connection, person: int) -> Session:
    """Where a person is; an empty session where they have not begun."""
    row = db.execute("select session from sessions where person = ?", (person,)).fetchone()
    return Session.loads(row[0]) if row else Session()


def save_session(db: sqlite3.Connection, person: int, session: Session, at: datetime) -> None:
    """Keep where a person is."""
    db.execute("insert into sessions values (?, ?, ?) on conflict (person) do update set session = excluded.session, "
               "updated_at = excluded.updated_at", (person, session.dumps(), text_of(at)))


def name_of(db: sqlite3.Connection, person: int) -> str:
    """What the channel calls a person."""
    row = db.execute("select min(name) from addresses where person = ?", (person,)).fetchone()
    return row[0] or ""


def key_of(db: sqlite3.Connection, person: int) -> str:
    """What stands for a person outside this file: the same each time, and no name."""
    row = db.execute("select id, created_at from persons where id = ?", (person,)).fetchone()
    return f"{row[0]} {row[1]}"


def note_refusal(db: sqlite3.Connection, at: datetime, version: int) -> None:
    """Somebody did not agree that answers are kept; who it was is not kept either."""
    db.execute("insert into refusals (at, version) values (?, ?)", (text_of(at), version))


def erase(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """Remove every row of a person, and what stands of them among their coaches' rows; that somebody was erased is remembered, not who."""
    erase_elsewhere(db, person)
    db.execute("delete from persons where id = ?", (person,))
    db.execute("insert into erasures (at) values (?)", (text_of(at),))
