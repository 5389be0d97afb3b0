"""Persons, their addresses and where they are in the conversation; update ids; erasing."""

from __future__ import annotations

import sqlite3
from datetime import datetime, timedelta
from typing import NamedTuple

from companion.conversation.session import Session
from companion.record.personal_data import erase_elsewhere
from companion.record.timestamps import moment_of, text_of

SEEN_FOR = timedelta(days=2)
"""Telegram gives an update again for 24 hours at most; ids can start over after a week without any."""


def seen_before(db: sqlite3.Connection, channel: str, update_id: int, at: datetime) -> bool:
    """Note an update's id; returns True where it had been noted already."""
    done = db.execute("insert into updates (channel, update_id, at) values (?, ?, ?) on conflict do update set at = excluded.at, "
                      "failed = null where at < ?", (channel, update_id, text_of(at), text_of(at - SEEN_FOR)))
    return done.rowcount == 0


def note_failed(db: sqlite3.Connection, channel: str, update_id: int, at: datetime, why: str) -> None:
    """Note that an update was taken but could not be handled, so that it is not tried for ever."""
    db.execute("insert or replace into updates (channel, update_id, at, failed) values (?, ?, ?, ?)",
               (channel, update_id, text_of(at), why))


def person_at(db: sqlite3.Connection, channel: str, address: str) -> int | None:
    """Return the person at an address, or None for a stranger."""
    row = db.execute("select person from addresses where channel = ? and address = ?", (channel, address)).fetchone()
    return row[0] if row else None


def person_named(db: sqlite3.Connection, name: str) -> int | None:
    """Return the person whose name or address is this, or None; the earliest where several share it."""
    row = db.execute("select min(person) from addresses where name = ? or address = ?", (name, name)).fetchone()
    return row[0] if row else None


def names(db: sqlite3.Connection) -> list[str]:
    """Return every person's name, in order."""
    return [row[0] for row in db.execute("select min(name) from addresses group by person order by 1")]


def add_person(db: sqlite3.Connection, channel: str, address: str, name: str, at: datetime) -> int:
    """Add a new person at a new address; returns their number. That number was never somebody else's who was erased: a button
    that was sent about that one may be tapped yet."""
    ever = db.execute("select max((select ifnull(max(id), 0) from persons), (select count(*) from persons) + (select count(*) from "
                      "erasures))").fetchone()[0]
    person = db.execute("insert into persons (id, created_at) values (?, ?)", (ever + 1, text_of(at))).lastrowid
    assert person is not None
    db.execute("insert into addresses (channel, address, person, name) values (?, ?, ?, ?)",
               (channel, address, person, name or address))
    return person


def addresses_of(db: sqlite3.Connection, person: int) -> list[tuple[str, str]]:
    """Return the addresses a person can be written to: (channel, address), those that are gone left out."""
    return db.execute("select channel, address from addresses where person = ? and gone_at is null order by channel, "
                      "address", (person,)).fetchall()


def mark_gone(db: sqlite3.Connection, channel: str, address: str, at: datetime, reason: str) -> None:
    """Note that nobody can be reached there any more, until they write again. Where that was the last way to reach them, their
    reminders are held."""
    db.execute("update addresses set gone_at = ?, gone_reason = ? where channel = ? and address = ?",
               (text_of(at), reason, channel, address))
    db.execute("update reminders set state = 'held' where state = 'open' and person in (select person from addresses where "
               "channel = ? and address = ?) and not exists (select 1 from addresses a where a.person = reminders.person and "
               "a.gone_at is null)", (channel, address))


def mark_back(db: sqlite3.Connection, channel: str, address: str) -> None:
    """Note that they wrote: they are there, and what was held is open again."""
    back = db.execute("update addresses set gone_at = null, gone_reason = null where channel = ? and address = ? "
                      "and gone_at is not null returning person", (channel, address)).fetchone()
    if back:
        db.execute("update reminders set state = 'open' where person = ? and state = 'held' and not exists (select 1 from reminders o "
                   "where o.person = reminders.person and o.kind = reminders.kind and o.state = 'open')", back)


class Here(NamedTuple):
    """The person at an address: whether they counted as gone, whether a hold is being timed for them, and where they are."""

    person: int
    gone: bool
    counting: bool
    session: Session


def here(db: sqlite3.Connection, channel: str, address: str) -> Here | None:
    """Return the person who writes, or None for a stranger."""
    row = db.execute("select a.person, a.gone_at is not null, exists (select 1 from outbox o where o.person = a.person and o.timed = 1 "
                     "and o.settled_at is null), s.session from addresses a left join sessions s on s.person = a.person "
                     "where a.channel = ? and a.address = ?", (channel, address)).fetchone()
    return Here(row[0], bool(row[1]), bool(row[2]), Session.loads(row[3]) if row[3] else Session()) if row else None


def load_session(db: sqlite3.Connection, person: int) -> Session:
    """Return where a person is; an empty session where they have not begun."""
    row = db.execute("select session from sessions where person = ?", (person,)).fetchone()
    return Session.loads(row[0]) if row else Session()


def save_session(db: sqlite3.Connection, person: int, session: Session, at: datetime) -> None:
    """Save where a person is."""
    db.execute("insert into sessions values (?, ?, ?) on conflict (person) do update set session = excluded.session, "
               "updated_at = excluded.updated_at", (person, session.dumps(), text_of(at)))


def name_of(db: sqlite3.Connection, person: int) -> str:
    """Return what the channel calls a person."""
    row = db.execute("select min(name) from addresses where person = ?", (person,)).fetchone()
    return row[0] or ""


def key_of(db: sqlite3.Connection, person: int) -> str:
    """Return what stands for a person outside this file: the same each time, and no name."""
    row = db.execute("select id, created_at from persons where id = ?", (person,)).fetchone()
    return f"{row[0]} {row[1]}"


def note_refusal(db: sqlite3.Connection, at: datetime, version: int) -> None:
    """Note that somebody did not agree that answers are kept; who it was is not kept either."""
    db.execute("insert into refusals (at, version) values (?, ?)", (text_of(at), version))


class Agreement(NamedTuple):
    """One agreement: as a lifter or a coach, to which version of the text ("no": took it back), and when."""

    of: str
    version: str
    at: datetime


def agreements(db: sqlite3.Connection, person: int) -> list[Agreement]:
    """Return every agreement, the oldest first. What was agreed to before texts had versions was version 1, and stands as an
    answer only."""
    rows = db.execute(
        "select name, value, at from findings where person = :person and name in ('consent.lifter', 'consent.coach') union all "
        "select w.name, '1', f.at from facts f join (select 'consent.lifter' as name, 'welcome.consent' as answer union all "
        "select 'consent.coach', 'coach_welcome.consent') w on f.name = w.answer where f.person = :person and f.value = 'yes' and "
        "not exists (select 1 from findings o where o.person = f.person and o.name = w.name and o.value = '1' and o.at <= f.at) "
        "order by 3, 2",
        {"person": person})
    return [Agreement(name.partition(".")[2], version, moment_of(at)) for name, version, at in rows]


def erase(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """Remove every row of a person, and what stands of them among their coaches' rows; that somebody was erased is remembered, not who."""
    erase_elsewhere(db, person)
    db.execute("delete from persons where id = ?", (person,))
    db.execute("insert into erasures (at) values (?)", (text_of(at),))
