"""Coaches as rows: who looks after whom, the codes that link them, what was looked at and done.

A code is random, used once, runs out, and is kept only as a hash.
"""

from __future__ import annotations

import hashlib
import json
import re
import secrets
import sqlite3
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from companion.record.timestamps import moment_of, text_of
from companion.screening.coach_acts import UNLISTED

LETTERS: Final = "abcdefghjkmnpqrstuvwxyz23456789"
"""Letters and digits that are not taken for each other; a code of twelve has 59 bits."""
CODE_LENGTH: Final = 12
CODE_LASTS: Final = timedelta(days=7)
"""Our choice."""
TRIES_MOST: Final = 5
TRIES_WITHIN: Final = timedelta(hours=1)
"""Wrong codes one person may try within so long; our choice: guessing one would take longer than the codes last."""

REPORT_NAME: Final = "report.html"

STANDS_REVIEWED: Final = ("a.what = 'reviewed' and not exists (select 1 from acts u where u.person = a.person and u.id > a.id and "
                          "u.what = 'unreviewed' and u.value = cast(a.id as text))")
"""Of an act ``a``: it is a review that was not taken back."""


@dataclass(frozen=True, slots=True)
class Invitation:
    """A code that was made: for a coach (by the operator) or for a lifter (by a coach), with the name it was made for."""

    id: int
    kind: str
    made_by: int | None
    name: str


class ReportWanted(NamedTuple):
    """A report that a coach asked for of a lifter, and where it is to go (None: to every address of the coach)."""

    coach: int
    lifter: int
    to: tuple[str, str] | None


def hashed(code: str) -> str:
    """Return the hash that is kept of a code; capitals, spaces and dashes don't matter."""
    return hashlib.sha256(re.sub(r"[^a-z0-9]", "", code.lower()).encode()).hexdigest()


def invite(db: sqlite3.Connection, kind: str, made_by: int | None, name: str, at: datetime) -> str:
    """Make a code for a "coach" or a "lifter"; returns it, for it is kept as a hash only."""
    code = new_code()
    keep_invitation(db, kind, made_by, name, hashed(code), at)
    return code


def new_code() -> str:
    """Return a random code."""
    return "".join(secrets.choice(LETTERS) for _ in range(CODE_LENGTH))


def spaced(code: str) -> str:
    """Return a code as it is shown: in groups of four."""
    return " ".join(code[i:i + 4] for i in range(0, len(code), 4))


def keep_invitation(db: sqlite3.Connection, kind: str, made_by: int | None, name: str, code_hash: str, at: datetime) -> None:
    """Keep what a code is good for, by its hash; once, where a request was left over by a process killed after it."""
    db.execute("insert into invitations (kind, made_by, name, code_hash, made_at, expires_at) values (?, ?, ?, ?, ?, ?) "
               "on conflict (code_hash) do nothing",
               (kind, made_by, name, code_hash, text_of(at), text_of(at + CODE_LASTS)))


def open_invitation(db: sqlite3.Connection, code: str, at: datetime) -> Invitation | None:
    """Return the invitation a code stands for; None where it is none, is used, has run out, or its coach is no coach any more."""
    row = db.execute("select id, kind, made_by, name from invitations where code_hash = ? and used_at is null and expires_at > ? and "
                     "(made_by is null or exists (select 1 from coach_roles where person = made_by and until is null))",
                     (hashed(code), text_of(at))).fetchone()
    return Invitation(*row) if row else None


def invitation(db: sqlite3.Connection, id: int, at: datetime) -> Invitation | None:
    """Return an invitation by its number, while it is open and its coach is one."""
    row = db.execute("select id, kind, made_by, name from invitations where id = ? and used_at is null and expires_at > ? and "
                     "(made_by is null or exists (select 1 from coach_roles where person = made_by and until is null))",
                     (id, text_of(at))).fetchone()
    return Invitation(*row) if row else None


def may_try(db: sqlite3.Connection, person: int, at: datetime) -> bool:
    """True if a person may try a code now."""
    tried = db.execute("select count(*) from code_tries where person = ? and at > ?", (person, text_of(at - TRIES_WITHIN))).fetchone()[0]
    return bool(tried < TRIES_MOST)


def note_try(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """Note that a wrong code was tried; older tries are forgotten."""
    db.execute("delete from code_tries where person = ? and at <= ?", (person, text_of(at - TRIES_WITHIN)))
    db.execute("insert into code_tries (person, at) values (?, ?)", (person, text_of(at)))


def use(db: sqlite3.Connection, id: int, person: int, at: datetime) -> bool:
    """Use an invitation up; returns False where something else had used it already."""
    return db.execute("update invitations set used_at = ?, used_by = ? where id = ? and used_at is null",
                      (text_of(at), person, id)).rowcount == 1


def make_coach(db: sqlite3.Connection, person: int, name: str, at: datetime) -> None:
    """Give somebody the role of coach."""
    db.execute("insert into coach_roles (person, name, since) values (?, ?, ?) on conflict (person) do update set "
               "name = excluded.name, since = excluded.since, until = null", (person, name, text_of(at)))


def end_coach(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """Take the role of coach away, with every view that came with it."""
    for lifter in lifters_of(db, person):
        withdraw(db, lifter, person, at, "the coach is none any more")
    db.execute("update coach_roles set until = ? where person = ? and until is null", (text_of(at), person))


def coach_name(db: sqlite3.Connection, person: int) -> str | None:
    """Return the name somebody has as a coach; None where they are none now."""
    row = db.execute("select name from coach_roles where person = ? and until is null", (person,)).fetchone()
    return row[0] if row else None


def coaches_named(db: sqlite3.Connection) -> list[tuple[int, str]]:
    """Return every coach there is now: number and name."""
    return db.execute("select person, name from coach_roles where until is null order by name").fetchall()


def coaches_with_lifters(db: sqlite3.Connection) -> list[tuple[int, str, int]]:
    """Return every coach there is now: number, name, and how many lifters they see."""
    return db.execute("select c.person, c.name, (select count(*) from coaches k where k.coach = c.person and k.until is null) "
                      "from coach_roles c where c.until is null order by c.name").fetchall()


def link(db: sqlite3.Connection, lifter: int, coach: int, at: datetime) -> None:
    """Let the coach see the lifter's answers from now on."""
    db.execute("insert into coaches (person, coach, since) values (?, ?, ?) on conflict (person, coach) do update set "
               "since = excluded.since, until = null", (lifter, coach, text_of(at)))
    note_look(db, lifter, coach, "agreed", at)


def withdraw(db: sqlite3.Connection, lifter: int, coach: int, at: datetime, what: str = "withdrawn") -> bool:
    """End a coach's view of a lifter: messages about them that wait are not sent, lists with their button on them neither. Returns
    False where there was no link."""
    done = db.execute("update coaches set until = ? where person = ? and coach = ? and until is null",
                      (text_of(at), lifter, coach)).rowcount == 1
    if done:
        note_look(db, lifter, coach, what, at)
        db.execute("update outbox set settled_at = ?, dropped = 'withdrawn', document = null where person = ? and settled_at is null and "
                   "(about = ? or instr(buttons, ?))", (text_of(at), coach, lifter, f'"go.lifter.{lifter}"'))
    return done


def sees(db: sqlite3.Connection, coach: int, lifter: int) -> bool:
    """True if somebody is a coach, and this lifter's coach, now."""
    return db.execute("select 1 from coaches k join coach_roles c on c.person = k.coach and c.until is null where k.person = ? and "
                      "k.coach = ? and k.until is null", (lifter, coach)).fetchone() is not None


def coaches_of(db: sqlite3.Connection, lifter: int) -> list[tuple[int, str]]:
    """Return a lifter's coaches now: number and name."""
    return db.execute("select c.person, c.name from coaches k join coach_roles c on c.person = k.coach and c.until is null "
                      "where k.person = ? and k.until is null order by c.name", (lifter,)).fetchall()


def lifters_of(db: sqlite3.Connection, coach: int) -> list[int]:
    """Return the lifters linked to somebody now."""
    return [person for (person,) in db.execute("select person from coaches where coach = ? and until is null", (coach,)).fetchall()]


def names_of_lifters(db: sqlite3.Connection, coach: int) -> dict[int, str]:
    """Return the lifters a coach sees now, each with what the channel calls them; nobody for somebody who is no coach."""
    return dict(db.execute("select k.person, ifnull((select min(name) from addresses a where a.person = k.person), '') from coaches k "
                           "join coach_roles c on c.person = k.coach and c.until is null where k.coach = ? and k.until is null",
                           (coach,)).fetchall())


def codes_of_lifters(db: sqlite3.Connection, coach: int) -> dict[int, str]:
    """Return the name that a coach's code was made for, of each who came by one; the latest where there were several."""
    return dict(db.execute("select used_by, name from invitations where made_by = ? and used_by is not null order by id",
                           (coach,)).fetchall())


def note_look(db: sqlite3.Connection, lifter: int, coach: int, what: str, at: datetime) -> None:
    """Note that a coach looked at something of a lifter; the lifter can read it."""
    db.execute("insert into looks (person, coach, coach_name, what, at) values (?, ?, ?, ?, ?)",
               (lifter, coach, coach_name(db, coach) or "", what, text_of(at)))


def looks_at(db: sqlite3.Connection, lifter: int, most: int = 20) -> list[tuple[str, str, str]]:
    """Return the latest looks at a lifter: (when, which coach, at what), the newest first."""
    return db.execute("select at, coach_name, what from looks where person = ? order by id desc limit ?", (lifter, most)).fetchall()


class Unseen(NamedTuple):
    """An alert no coach has seen: whose, its number, level and words, and when it was raised."""

    person: int
    id: int
    level: str
    because: str
    at: datetime


def alerts_unseen(db: sqlite3.Connection, before: datetime, after: datetime) -> list[Unseen]:
    """Return the alerts between the two moments that no coach has seen and of which the lifter has not been told so, the latest of
    each person whom somebody coached then and still does. What was answered about a referral is no alarm."""
    rows = db.execute(
        "select a.person, max(a.id), a.level, a.because, a.at from alerts a left join runs r on r.person = a.person and r.run = a.run "
        "where a.seen_at is null and a.unseen_told_at is null and a.at between ? and ? and ifnull(r.flow, '') <> 'referral' and exists "
        "(select 1 from coaches k join coach_roles c on c.person = k.coach and c.until is null where k.person = a.person and "
        "k.until is null and k.since <= a.at) group by a.person", (text_of(after), text_of(before)))
    return [Unseen(person, id, level, because, moment_of(at)) for person, id, level, because, at in rows.fetchall()]


def note_seen(db: sqlite3.Connection, lifter: int, alert: int | None, at: datetime) -> None:
    """Note that a coach saw a lifter's alerts, up to one (None: all of them)."""
    db.execute("update alerts set seen_at = ? where person = ? and ifnull(id <= ?, 1) and seen_at is null", (text_of(at), lifter, alert))


def note_unseen_told(db: sqlite3.Connection, lifter: int, alert: int, at: datetime) -> None:
    """Note that a lifter was told that no coach has seen their alerts, up to this one."""
    db.execute("update alerts set unseen_told_at = ? where person = ? and id <= ? and unseen_told_at is null", (text_of(at), lifter, alert))


def reports_owed(db: sqlite3.Connection, since: datetime) -> list[ReportWanted]:
    """Return the reports that were asked for since then and never made, as the process had ended before, where the view has not
    been ended. That one was asked for is seen by the look."""
    rows = db.execute("select distinct l.coach, l.person, a.channel, a.address from looks l join addresses a on a.person = l.coach and "
                      "a.gone_at is null join coaches k on k.person = l.person and k.coach = l.coach and k.until is null and "
                      "k.since <= l.at where l.what = 'report' and l.at > ? and not exists (select 1 from outbox o where "
                      "o.about = l.person and o.person = l.coach and o.document_name = ? and o.made_at >= l.at)",
                      (text_of(since), REPORT_NAME))
    return [ReportWanted(coach, lifter, (channel, address)) for coach, lifter, channel, address in rows]


def note_act(db: sqlite3.Connection, lifter: int, coach: int, what: str, value: str, reason: str, at: datetime) -> int:
    """Note that a coach did something for a lifter; returns the number of the act. "unreviewed" takes back the review whose
    number is its value."""
    return db.execute("insert into acts (person, coach, coach_name, what, value, reason, at) values (?, ?, ?, ?, ?, ?, ?)",
                      (lifter, coach, coach_name(db, coach) or "", what, value, reason, text_of(at))).lastrowid or 0


def acts_for(db: sqlite3.Connection, lifter: int, most: int = 20) -> list[tuple[str, str, str, str, str]]:
    """Return the latest acts for a lifter that are listed: (when, which coach, what, value, reason), the newest first."""
    return db.execute("select at, coach_name, what, value, reason from acts where person = ? and what not in (select value from "
                      "json_each(?)) order by id desc limit ?", (lifter, json.dumps(UNLISTED), most)).fetchall()


def reviewed_at(db: sqlite3.Connection, lifter: int, coach: int) -> str:
    """Return when this coach last marked the lifter as reviewed; "" for never."""
    row = db.execute(f"select max(at) from acts a where person = ? and coach = ? and {STANDS_REVIEWED}", (lifter, coach)).fetchone()
    return row[0] or ""


def stands_reviewed(db: sqlite3.Connection, lifter: int, coach: int, act: int) -> bool:
    """True if an act is a review of this lifter by this coach that was not taken back."""
    return db.execute(f"select 1 from acts a where id = ? and person = ? and coach = ? and {STANDS_REVIEWED}",
                      (act, lifter, coach)).fetchone() is not None
