"""Coaches: their links to lifters, the codes that make a link, and the audit log (``looks`` and ``acts``).

A code is random, works once, expires, and is stored only as a hash.
"""

from __future__ import annotations

import hashlib
import json
import re
import secrets
import sqlite3
from collections import Counter
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from companion.record import orders
from companion.record.timestamps import moment_of, text_of
from companion.record.unanswered import LIMIT_ASKED
from companion.screening.coach_acts import COACH_ACTS, UNLISTED
from companion.screening.levels import PASSING

LETTERS: Final = "abcdefghjkmnpqrstuvwxyz23456789"
"""Letters and digits that are not mistaken for each other; a code of twelve has 59 bits."""
CODE_LENGTH: Final = 12
CODE_LIFETIME: Final = timedelta(days=7)
"""Time for which a code can be used; our choice."""
TRIES_MOST: Final = 5
TRIES_WITHIN: Final = timedelta(hours=1)
"""Wrong codes a person may try within this time; our choice: guessing one would take longer than a code is valid."""

REPORT_NAME: Final = "report.html"

CLINICIANS_WORD: Final = ("referral", "limits", "limit_over", "clearance")
"""The flows in which a lifter says what a clinician told them: their alerts are news, and no alarm that waits to be seen."""

NOT_TAKEN_BACK: Final = ("not exists (select 1 from acts u where u.person = a.person and u.id > a.id and u.what = 'unreviewed' and "
                 "u.value = cast(a.id as text))")
"""SQL condition on an act ``a``, a review, a snooze or a dismissal: it was not taken back."""

REVIEW_STANDS: Final = f"a.what = 'reviewed' and {NOT_TAKEN_BACK}"
"""SQL condition on an act ``a``: it is a review that was not taken back."""


@dataclass(frozen=True, slots=True)
class Invitation:
    """An invitation to become a coach (from the operator) or a coach's lifter (from that coach), with the invited name."""

    id: int
    kind: str
    made_by: int | None
    name: str


class ReportWanted(NamedTuple):
    """A lifter's report that a coach asked for; ``to``: channel and address, None for every address of the coach."""

    coach: int
    lifter: int
    to: tuple[str, str] | None


def code_hash_of(code: str) -> str:
    """Return the stored hash of a code; capitals, spaces and dashes don't matter."""
    return hashlib.sha256(re.sub(r"[^a-z0-9]", "", code.lower()).encode()).hexdigest()


def invite(db: sqlite3.Connection, kind: str, made_by: int | None, name: str, at: datetime) -> str:
    """Create an invitation for a "lifter", a "coach" or another role and return its code, which is stored as a hash only."""
    code = new_code()
    keep_invitation(db, kind, made_by, name, code_hash_of(code), at)
    return code


def new_code() -> str:
    """Return a random code."""
    return "".join(secrets.choice(LETTERS) for _ in range(CODE_LENGTH))


def spaced(code: str) -> str:
    """Return a code in groups of four, for reading."""
    return " ".join(code[i:i + 4] for i in range(0, len(code), 4))


def keep_invitation(db: sqlite3.Connection, kind: str, made_by: int | None, name: str, code_hash: str, at: datetime) -> None:
    """Store an invitation by its code's hash; a second call changes nothing, as after a crash a request is carried out again."""
    db.execute("insert into invitations (kind, made_by, name, code_hash, made_at, expires_at) values (?, ?, ?, ?, ?, ?) "
               "on conflict (code_hash) do nothing",
               (kind, made_by, name, code_hash, text_of(at), text_of(at + CODE_LIFETIME)))


def open_invitation(db: sqlite3.Connection, code: str, at: datetime) -> Invitation | None:
    """Return a code's invitation; None where it is unknown, used or expired, or its coach has lost the role."""
    return _open(db, "code_hash", code_hash_of(code), at)


def invitation(db: sqlite3.Connection, id: int, at: datetime) -> Invitation | None:
    """Return an invitation by its number, while it is open and its coach has the role."""
    return _open(db, "id", id, at)


def _open(db: sqlite3.Connection, column: str, value: str | int, at: datetime) -> Invitation | None:
    row = db.execute(f"select id, kind, made_by, name from invitations where {column} = ? and used_at is null and expires_at > ? and "
                     "(made_by is null or exists (select 1 from coach_roles where person = made_by and until is null))",
                     (value, text_of(at))).fetchone()
    return Invitation(*row) if row else None


def taker_of(db: sqlite3.Connection, code: str, giver: int, at: datetime) -> tuple[int, int] | None:
    """Return the coach whose code for a lifter another coach was given to hand lifters over, and the invitation; None where it is none
    such, has expired, or somebody else has used it. It can be used for several lifters."""
    row: tuple[int, int] | None = db.execute(
        "select i.made_by, i.id from invitations i join coach_roles c on c.person = i.made_by and c.until is null and c.role = 'coach' "
        "where i.code_hash = ? and i.kind = 'lifter' and i.made_by <> ? and i.expires_at > ? and (i.used_by is null or i.used_by = ?)",
        (code_hash_of(code), giver, text_of(at), giver)).fetchone()
    return row


def handing_over(db: sqlite3.Connection, lifter: int, taker: int) -> list[tuple[int, str]]:
    """Return the coaches now who have last asked to hand a lifter over to this one: number and name."""
    return db.execute(
        "select a.coach, a.coach_name from acts a join coaches k on k.person = a.person and k.coach = a.coach and k.until is null and "
        "a.at >= k.since where a.person = ? and a.what = 'hand_over' and a.value like ? || ' %' and a.coach <> ? and not exists (select 1 "
        "from acts l where l.person = a.person and l.coach = a.coach and l.what = 'hand_over' and l.id > a.id)",
        (lifter, taker, taker)).fetchall()


def may_try(db: sqlite3.Connection, person: int, at: datetime) -> bool:
    """True if a person may try a code now."""
    tried = db.execute("select count(*) from code_tries where person = ? and at > ?", (person, text_of(at - TRIES_WITHIN))).fetchone()[0]
    return bool(tried < TRIES_MOST)


def note_try(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """Count a wrong code; tries older than TRIES_WITHIN are deleted."""
    db.execute("delete from code_tries where person = ? and at <= ?", (person, text_of(at - TRIES_WITHIN)))
    db.execute("insert into code_tries (person, at) values (?, ?)", (person, text_of(at)))


def use_up(db: sqlite3.Connection, id: int, person: int, at: datetime) -> bool:
    """Mark an invitation as used; returns False where it already was."""
    return db.execute("update invitations set used_at = ?, used_by = ? where id = ? and used_at is null",
                      (text_of(at), person, id)).rowcount == 1


def make_coach(db: sqlite3.Connection, person: int, name: str, at: datetime, role: str = "coach") -> None:
    """Give somebody a role, that of a coach or another. Whoever had another one loses the links made in it: lifters agreed to that one."""
    if role_of(db, person) not in ("", role):
        end_coach(db, person, at)
    db.execute("insert into coach_roles (person, name, since, role) values (?, ?, ?, ?) on conflict (person) do update set "
               "name = excluded.name, since = excluded.since, role = excluded.role, until = null", (person, name, text_of(at), role))


def role_of(db: sqlite3.Connection, person: int) -> str:
    """Return somebody's role now; "" for none."""
    row = db.execute("select role from coach_roles where person = ? and until is null", (person,)).fetchone()
    return row[0] if row else ""


def has_coached(db: sqlite3.Connection, person: int, lifter: int) -> bool:
    """True if somebody has ever set or overruled something for a lifter."""
    set_by = [act.name for act in COACH_ACTS.values() if act.sets]
    return db.execute("select 1 from acts where person = ? and coach = ? and what in (select value from json_each(?))",
                      (lifter, person, json.dumps(set_by))).fetchone() is not None


def end_coach(db: sqlite3.Connection, person: int, at: datetime) -> None:
    """End the role of coach and every link that came with it."""
    for lifter in lifters_of(db, person):
        withdraw(db, lifter, person, at, "the coach is none any more")
    db.execute("update coach_roles set until = ? where person = ? and until is null", (text_of(at), person))


def coach_name(db: sqlite3.Connection, person: int) -> str | None:
    """Return somebody's name as a coach; None where they are not one now."""
    row = db.execute("select name from coach_roles where person = ? and until is null", (person,)).fetchone()
    return row[0] if row else None


def coaches_with_lifters(db: sqlite3.Connection) -> list[tuple[int, str, int]]:
    """Return every current coach: number, name and count of lifters."""
    return db.execute("select c.person, c.name, (select count(*) from coaches k where k.coach = c.person and k.until is null) "
                      "from coach_roles c where c.until is null order by c.name").fetchall()


def link(db: sqlite3.Connection, lifter: int, coach: int, at: datetime) -> None:
    """Let the coach see the lifter's answers from now on."""
    db.execute("insert into coaches (person, coach, since) values (?, ?, ?) on conflict (person, coach) do update set "
               "since = excluded.since, until = null", (lifter, coach, text_of(at)))
    audit_look(db, lifter, coach, "agreed", at)


def withdraw(db: sqlite3.Connection, lifter: int, coach: int, at: datetime, what: str = "withdrawn") -> bool:
    """End a coach's link to a lifter. Unsent messages about the lifter, and unsent lists with their button, are dropped, and the
    coach's orders lapse. Returns False where there was no link."""
    done = db.execute("update coaches set until = ? where person = ? and coach = ? and until is null",
                      (text_of(at), lifter, coach)).rowcount == 1
    if done:
        audit_look(db, lifter, coach, what, at)
        orders.ended(db, lifter, coach_name(db, coach), at)
        db.execute("update outbox set settled_at = ?, dropped = 'withdrawn', document = null where person = ? and settled_at is null and "
                   "(about = ? or instr(buttons, ?))", (text_of(at), coach, lifter, f'"go.lifter.{lifter}"'))
    return done


def sees(db: sqlite3.Connection, coach: int, lifter: int) -> bool:
    """True if ``coach`` is a coach now, and this lifter's."""
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
    """Return the lifters a coach sees now, each with their name in the channel; none if the person is not a coach."""
    return dict(db.execute("select k.person, ifnull((select min(name) from addresses a where a.person = k.person), '') from coaches k "
                           "join coach_roles c on c.person = k.coach and c.until is null where k.coach = ? and k.until is null",
                           (coach,)).fetchall())


def told_apart(db: sqlite3.Connection, coach: int) -> dict[int, str]:
    """Return the lifters a coach sees now with a short name each, with their number where two are called the same."""
    names = {one: " ".join(name.split())[:22] or "somebody" for one, name in names_of_lifters(db, coach).items()}
    alike = Counter(name.casefold() for name in names.values())
    return {one: name if alike[name.casefold()] == 1 else f"{name} (no. {one})" for one, name in names.items()}


def codes_of_lifters(db: sqlite3.Connection, coach: int) -> dict[int, str]:
    """Return the invited name of each lifter who used a code of this coach; the latest where there were several."""
    return dict(db.execute("select used_by, name from invitations where made_by = ? and used_by is not null order by id",
                           (coach,)).fetchall())


def audit_look(db: sqlite3.Connection, lifter: int, coach: int, what: str, at: datetime) -> None:
    """Add a coach's look at a lifter's data to the audit log, which the lifter can read."""
    db.execute("insert into looks (person, coach, coach_name, what, at) values (?, ?, ?, ?, ?)",
               (lifter, coach, coach_name(db, coach) or "", what, text_of(at)))


def latest_looks(db: sqlite3.Connection, lifter: int, most: int = 20) -> list[tuple[str, str, str]]:
    """Return the latest looks at a lifter's data: (time, coach's name, what), newest first."""
    return db.execute("select at, coach_name, what from looks where person = ? order by id desc limit ?", (lifter, most)).fetchall()


def alerted_since(db: sqlite3.Connection, lifter: int, since: datetime) -> bool:
    """True if an alert was raised about a lifter since a moment."""
    return db.execute("select 1 from alerts where person = ? and at >= ?", (lifter, text_of(since))).fetchone() is not None


class Unseen(NamedTuple):
    """An alert no coach has seen: whose, its number, level and words, when it was raised, the flow and how its run ended (None: not yet),
    how often it was sent again, whether the lifter was told that nobody has seen it, or has said since that they were seen or cleared;
    whether waiting for a coach may harm, as they were sent to be seen, asked for a call, or left questions open; and whether the lifter was
    told the same of another alert that nobody has seen either."""

    person: int
    id: int
    level: str
    because: str
    at: datetime
    flow: str
    ending: str | None
    again: int
    told: bool
    seen_since: bool
    urgent: bool
    told_before: bool


_URGENT: Final = ("(a.level not in (select value from json_each(:passing)) or ifnull(r.ending, 'left') <> 'done' "
                  f"and not {LIMIT_ASKED})")


def alerts_unseen(db: sqlite3.Connection, before: datetime, after: datetime) -> list[Unseen]:
    """Return the alerts between the two moments that no coach has seen, the latest of each person whom somebody coached then and still
    does, of the urgent ones where there are any: a small pain hides no emergency. What was answered about a referral or a limit is no
    alarm."""
    rows = db.execute(
        "select a.person, a.id, a.level, a.because, a.at, ifnull(r.flow, ''), r.ending, a.again, a.unseen_told_at is not null, "
        "exists (select 1 from facts f where f.person = a.person and f.at >= a.at and f.value = 'yes' and f.name in "
        f"('referral.went', 'clearance.right', 'safety_check.seen')), {_URGENT}, exists (select 1 from alerts t where t.person = a.person "
        f"and t.seen_at is null and t.unseen_told_at is not null), max({_URGENT} * (1 << 40) + a.id) "
        "from alerts a left join runs r on r.person = a.person and r.run = a.run "
        f"where a.seen_at is null and a.at between :after and :before and ifnull(r.flow, '') not in {CLINICIANS_WORD} and exists "
        "(select 1 from coaches k join coach_roles c on c.person = k.coach and c.until is null where k.person = a.person and "
        "k.until is null and k.since <= a.at) group by a.person",
        {"after": text_of(after), "before": text_of(before), "passing": json.dumps(PASSING)})
    return [Unseen(person, id, level, because, moment_of(at), flow, ending, again, *map(bool, noted))
            for person, id, level, because, at, flow, ending, again, *noted, _ in rows.fetchall()]


def note_sent_again(db: sqlite3.Connection, alert: int) -> None:
    """Note that an alert was sent to its coaches again."""
    db.execute("update alerts set again = again + 1 where id = ?", (alert,))


def note_seen(db: sqlite3.Connection, lifter: int, alert: int | None, at: datetime) -> None:
    """Note that a coach saw a lifter's alerts, up to one (None: all of them)."""
    db.execute("update alerts set seen_at = ? where person = ? and ifnull(id <= ?, 1) and seen_at is null", (text_of(at), lifter, alert))


def unseen_of(db: sqlite3.Connection, coach: int) -> list[tuple[int, int]]:
    """Return the lifters of a coach with alerts that no coach has seen, the latest first, each with the number of the last of them."""
    return db.execute("select a.person, max(a.id) from alerts a join coaches k on k.person = a.person and k.coach = ? and k.until is null "
                      "and k.since <= a.at where a.seen_at is null group by a.person order by 2 desc", (coach,)).fetchall()


def note_unseen_told(db: sqlite3.Connection, lifter: int, alert: int, at: datetime) -> None:
    """Note that a lifter was told that no coach has seen their alerts, up to this one."""
    db.execute("update alerts set unseen_told_at = ? where person = ? and id <= ? and unseen_told_at is null", (text_of(at), lifter, alert))


def reports_owed(db: sqlite3.Connection, since: datetime) -> list[ReportWanted]:
    """Return the reports asked for since a moment (seen by their look) that were never made because the process ended; only where
    the link still holds."""
    rows = db.execute("select distinct l.coach, l.person, a.channel, a.address from looks l join addresses a on a.person = l.coach and "
                      "a.gone_at is null join coaches k on k.person = l.person and k.coach = l.coach and k.until is null and "
                      "k.since <= l.at where l.what = 'report' and l.at > ? and not exists (select 1 from outbox o where "
                      "o.about = l.person and o.person = l.coach and o.document_name = ? and o.made_at >= l.at)",
                      (text_of(since), REPORT_NAME))
    return [ReportWanted(coach, lifter, (channel, address)) for coach, lifter, channel, address in rows]


def audit_act(db: sqlite3.Connection, lifter: int, coach: int, what: str, value: str, reason: str, at: datetime,
              until: str = "") -> int:
    """Add a coach's act for a lifter to the audit log; returns its number. "unreviewed" takes back the one whose number is
    its value. ``until``: the day on which an order ends by itself, "" for none."""
    return db.execute("insert into acts (person, coach, coach_name, what, value, reason, at, until) values (?, ?, ?, ?, ?, ?, ?, ?)",
                      (lifter, coach, coach_name(db, coach) or "", what, value, reason, text_of(at), until)).lastrowid or 0


def last_act_of(db: sqlite3.Connection, coach: int) -> tuple[int, int, str, str] | None:
    """Return a coach's last act for a lifter of theirs that was not taken back: its number, the lifter, what and value; None for none."""
    row: tuple[int, int, str, str] | None = db.execute(
        "select a.id, a.person, a.what, a.value from acts a join coaches k on k.person = a.person and k.coach = a.coach and k.until is "
        "null where a.coach = ? and a.what not in ('unreviewed', 'seen') and not exists (select 1 from acts b where b.coach = a.coach and "
        "b.person = a.person and b.what = 'unreviewed' and b.value = cast(a.id as text)) order by a.id desc limit 1", (coach,)).fetchone()
    return row


class ActRow(NamedTuple):
    """An act of a coach for a lifter: when (stored text), the coach's name, what, value and reason."""

    at: str
    coach: str
    what: str
    value: str
    reason: str


def latest_acts(db: sqlite3.Connection, lifter: int, most: int = 20) -> list[ActRow]:
    """Return the latest listed acts for a lifter, newest first."""
    rows = db.execute("select at, coach_name, what, value, reason from acts where person = ? and what not in (select value from "
                      "json_each(?)) order by id desc limit ?", (lifter, json.dumps(UNLISTED), most))
    return list(map(ActRow._make, rows))


def reviewed_at(db: sqlite3.Connection, lifter: int, coach: int) -> str:
    """Return the time of this coach's last review of the lifter; "" for never."""
    row = db.execute(f"select max(at) from acts a where person = ? and coach = ? and {REVIEW_STANDS}", (lifter, coach)).fetchone()
    return row[0] or ""


def stands(db: sqlite3.Connection, lifter: int, coach: int, act: int) -> bool:
    """True if an act is a review, a snooze or a dismissal of this lifter by this coach that was not taken back."""
    return db.execute("select 1 from acts a where id = ? and person = ? and coach = ? and what in ('reviewed', 'snooze', 'dismiss') "
                      f"and {NOT_TAKEN_BACK}", (act, lifter, coach)).fetchone() is not None
