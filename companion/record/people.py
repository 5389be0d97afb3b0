"""Persons, their addresses, sessions and consents; update ids; erasing."""

from __future__ import annotations

import sqlite3
from datetime import datetime, timedelta
from typing import NamedTuple

from companion.conversation.session import Session
from companion.record.personal_data import erase_from_coaches
from companion.record.timestamps import moment_of, text_of

SEEN_FOR = timedelta(days=2)
"""Time for which an update id counts as seen: Telegram repeats an update for 24 hours at most, and ids can start over after a
week without any."""


def seen_before(db: sqlite3.Connection, channel: str, update_id: int, at: datetime) -> bool:
    """Store an update's id; returns True where it was there already."""
    done = db.execute("insert into updates (channel, update_id, at) values (?, ?, ?) on conflict do update set at = excluded.at, "
                      "failed = null where at < ?", (channel, update_id, text_of(at), text_of(at - SEEN_FOR)))
    return done.rowcount == 0


def note_failed(db: sqlite3.Connection, channel: str, update_id: int, at: datetime, why: str) -> None:
    """Mark an update as failed, so that it is not tried for ever."""
    db.execute("insert or replace into updates (channel, update_id, at, failed) values (?, ?, ?, ?)",
               (channel, update_id, text_of(at), why))


def person_at(db: sqlite3.Connection, channel: str, address: str) -> int | None:
    """Return the person at an address, or None for a stranger."""
    row = db.execute("select person from addresses where channel = ? and address = ?", (channel, address)).fetchone()
    return row[0] if row else None


class Named(NamedTuple):
    """A person as the operator tells them from others: number, name, and the day they first wrote."""

    number: int
    name: str
    since: str


_NAMED = ("select p.id, (select min(name) from addresses a where a.person = p.id), substr(p.created_at, 1, 10) from persons p where "
          "exists (select 1 from addresses a where a.person = p.id")


def people_named(db: sqlite3.Connection, name: str) -> list[Named]:
    """Return everybody with this name or address, by number."""
    return [Named(*row) for row in db.execute(f"{_NAMED} and (a.name = :name or a.address = :name)) order by p.id", {"name": name})]


def people_numbered(db: sqlite3.Connection, number: int | None = None) -> list[Named]:
    """Return the person of this number, or everybody, by number."""
    return [Named(*row) for row in db.execute(f"{_NAMED}) and ifnull(:number = p.id, 1) order by p.id", {"number": number})]


def add_person(db: sqlite3.Connection, channel: str, address: str, name: str, at: datetime) -> int:
    """Add a person at a new address and return their number. The number of an erased person is never used again, since a button
    about them may still be tapped."""
    ever = db.execute("select max((select ifnull(max(id), 0) from persons), (select count(*) from persons) + (select count(*) from "
                      "erasures))").fetchone()[0]
    person = db.execute("insert into persons (id, created_at) values (?, ?)", (ever + 1, text_of(at))).lastrowid
    assert person is not None
    db.execute("insert into addresses (channel, address, person, name) values (?, ?, ?, ?)",
               (channel, address, person, name or address))
    return person


def addresses_of(db: sqlite3.Connection, person: int) -> list[tuple[str, str]]:
    """Return a person's reachable addresses: (channel, address)."""
    return db.execute("select channel, address from addresses where person = ? and gone_at is null order by channel, "
                      "address", (person,)).fetchall()


def mark_gone(db: sqlite3.Connection, channel: str, address: str, at: datetime, reason: str) -> None:
    """Mark an address as unreachable until somebody writes from it. If it was the person's last, their reminders are held."""
    db.execute("update addresses set gone_at = ?, gone_reason = ? where channel = ? and address = ?",
               (text_of(at), reason, channel, address))
    db.execute("update reminders set state = 'held' where state = 'open' and person in (select person from addresses where "
               "channel = ? and address = ?) and not exists (select 1 from addresses a where a.person = reminders.person and "
               "a.gone_at is null)", (channel, address))


def mark_back(db: sqlite3.Connection, channel: str, address: str) -> None:
    """Mark an address as reachable again and reopen the reminders that were held."""
    back = db.execute("update addresses set gone_at = null, gone_reason = null where channel = ? and address = ? "
                      "and gone_at is not null returning person", (channel, address)).fetchone()
    if back:
        db.execute("update reminders set state = 'open' where person = ? and state = 'held' and not exists (select 1 from reminders o "
                   "where o.person = reminders.person and o.kind = reminders.kind and o.state = 'open')", back)


class Sender(NamedTuple):
    """The person at an address, with their session. ``gone``: true if the address was unreachable; ``timing``: true during a timed
    hold."""

    person: int
    gone: bool
    timing: bool
    session: Session


def sender_at(db: sqlite3.Connection, channel: str, address: str) -> Sender | None:
    """Return the person at an address, or None for a stranger."""
    row = db.execute("select a.person, a.gone_at is not null, exists (select 1 from outbox o where o.person = a.person and o.timed = 1 "
                     "and o.settled_at is null), s.session from addresses a left join sessions s on s.person = a.person "
                     "where a.channel = ? and a.address = ?", (channel, address)).fetchone()
    return Sender(row[0], bool(row[1]), bool(row[2]), Session.loads(row[3]) if row[3] else Session()) if row else None


def load_session(db: sqlite3.Connection, person: int) -> Session:
    """Return a person's session; an empty one where there is none."""
    row = db.execute("select session from sessions where person = ?", (person,)).fetchone()
    return Session.loads(row[0]) if row else Session()


def save_session(db: sqlite3.Connection, person: int, session: Session, at: datetime) -> None:
    """Save a person's session."""
    db.execute("insert into sessions values (?, ?, ?) on conflict (person) do update set session = excluded.session, "
               "updated_at = excluded.updated_at", (person, session.dumps(), text_of(at)))


def name_of(db: sqlite3.Connection, person: int) -> str:
    """Return a person's name in the channel; "" where there is none."""
    row = db.execute("select min(name) from addresses where person = ?", (person,)).fetchone()
    return row[0] or ""


def pseudonym_of(db: sqlite3.Connection, person: int) -> str:
    """Return a stable text that identifies a person outside this file without their name."""
    row = db.execute("select id, created_at from persons where id = ?", (person,)).fetchone()
    return f"{row[0]} {row[1]}"


def note_refusal(db: sqlite3.Connection, at: datetime, version: int) -> None:
    """Count a refused consent, without the person."""
    db.execute("insert into refusals (at, version) values (?, ?)", (text_of(at), version))


class Agreement(NamedTuple):
    """A consent: as "lifter" or "coach", the version of the text ("no": withdrawn), and its time."""

    of: str
    version: str
    at: datetime


def agreements(db: sqlite3.Connection, person: int) -> list[Agreement]:
    """Return a person's consents, oldest first. One given before texts had versions is stored as an answer only, and counts as
    version 1."""
    rows = db.execute(
        "select name, value, at from findings where person = :person and name in ('consent.lifter', 'consent.coach') union all "
        "select w.name, '1', f.at from facts f join (select 'consent.lifter' as name, 'welcome.consent' as answer union all "
        "select 'consent.coach', 'coach_welcome.consent') w on f.name = w.answer where f.person = :person and f.value = 'yes' and "
        "not exists (select 1 from findings o where o.person = f.person and o.name = w.name and o.value = '1' and o.at <= f.at) "
        "order by 3, 2",
        {"person": person})
    return [Agreement(name.partition(".")[2], version, moment_of(at)) for name, version, at in rows]


def erase(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """Delete every row of a person, and mentions of them in their coaches' rows. Only the fact of an erasure is kept."""
    erase_from_coaches(db, person)
    db.execute("delete from persons where id = ?", (person,))
    db.execute("insert into erasures (at) values (?)", (text_of(at),))
