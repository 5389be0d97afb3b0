"""Questions about pain, a sign or a warning in the safety check that were put and not answered: what stands meanwhile, and what a coach
is told of after a while.

A run counts from its beginning until it is done, left or not; of runs of the same questions only the one that waits, or the last.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Mapping
from datetime import datetime
from typing import Final, NamedTuple

from companion.conversation.session import Session, waiting_beneath
from companion.record.timestamps import moment_of, text_of
from companion.screening.levels import REFERRED
from companion.screening.safety import Level, worst
from companion.screening.standing import OpenQuestions

WARNINGS: Final = ("weakness", "fall")
"""The questions of the safety check that ask for care the same day; "urgent" asks for both at once."""
_DOUBT: Final = ("yes", "unsure")

SAME_QUESTIONS: Final = ("u.flow = n.flow and u.flow in ('pain', 'signs') and u.run <> n.run and u.first_run = n.first_run and "
                        "n.first_run <> ''")
"""SQL condition on the runs ``u`` and ``n`` of one person: the same questions about pain or a sign, begun anew."""

TOLD_SINCE: Final = ("(with recursive told(at) as (select ({at}) union select b.began_at from told join runs b on b.person = {person} and "
                     "b.flow in ('pain', 'signs') and b.ending = 'left' and b.ended_at = told.at) select min(at) from told)")
"""SQL of the moment at which something was told: the beginning ``at`` of its questions, or that of those which ended as these were begun
anew."""

_UNFINISHED: Final = f"""
select u.person, u.flow, u.run, u.first_run, u.began_at,
    exists (select 1 from alerts a where a.person = u.person and a.run = u.run) or exists (
    select 1 from runs n join alerts a on a.person = n.person and a.run = n.run where n.person = u.person and {SAME_QUESTIONS}) from runs u
where u.flow in ('pain', 'signs', 'safety_check') and ifnull(u.ending, 'left') <> 'done' and u.began_at >= :after
    and not exists (select 1 from runs l where l.person = u.person and cast(l.run as integer) > cast(u.run as integer) and (
        l.flow = u.flow and (u.flow <> 'signs' or u.ended_at is not null) or
        u.flow <> 'pain' and l.flow = 'safety_check' and l.ending = 'done'))
"""
"""A sign that is parked waits beside a later one; every other run is over once the same is asked again, and a safety check asks anew."""


class Unfinished(NamedTuple):
    """Questions left open: whose, the flow and run, the run they were first begun as ("" for this one), when they began, and whether a
    coach was alerted in that run, or when they were begun before."""

    person: int
    flow: str
    run: str
    first_run: str
    began: datetime
    alerted: bool


def unfinished(db: sqlite3.Connection, after: datetime | None = None, person: int | None = None) -> Iterator[Unfinished]:
    """Return what was left open, of everybody or one person; ``after``: none that began before. A safety check only where a warning
    was answered with yes or not sure."""
    rows = db.execute(_UNFINISHED + ("order by u.began_at" if person is None else "and u.person = :person order by u.began_at"),
                      {"after": text_of(after) if after else "", "person": person}).fetchall()
    for whose, flow, run, first_run, began, alerted in rows:
        if flow != "safety_check" or _warned(db, whose, run):
            yield Unfinished(whose, flow, run, first_run, moment_of(began), bool(alerted))


def _warned(db: sqlite3.Connection, person: int, run: str) -> bool:
    """True if a safety check was left after yes or not sure at a warning."""
    got = {key: value for key, _, value in answers_in_run(db, person, run)}
    return any(got.get(key) in _DOUBT for key in WARNINGS) or (
        got.get("urgent") in _DOUBT and any(got.get(key) is None for key in WARNINGS))


def hurt_asked(db: sqlite3.Connection, after: datetime | None = None) -> Iterator[tuple[int, datetime, str, str]]:
    """Return everybody who was asked "Did something hurt?" and has not answered: (person, since, run, their words): the run
    that is open, or the last one; the words are "" where the question followed a stop alone."""
    since = text_of(after) if after else ""
    for person, text in db.execute("select person, session from sessions where (instr(session, '\"about\":\"ache\"') or "
                                   "instr(session, '\"about\":\"stop\"')) and updated_at >= ?", (since,)).fetchall():
        session = Session.loads(text)
        if session.aside is not None and session.aside.if_hurt and session.at:
            yield person, moment_of(session.at), session.top.run if session.stack else str(session.runs), session.aside.text


def open_questions(db: sqlite3.Connection, person: int | None = None) -> Mapping[int, OpenQuestions]:
    """Return what each person, or one, was asked and has not answered, beside questions about pain; a sign before a safety check."""
    found = {whose: OpenQuestions("hurt", since, said=said) for whose, since, _, said in hurt_asked(db) if person in (None, whose)}
    for one in sorted(unfinished(db, person=person), key=lambda one: one.flow == "signs"):
        if one.flow != "pain":
            about = "limit" if limit_asked(db, one.person, one.run) else one.flow
            found[one.person] = OpenQuestions(about, one.began, _told(db, one), words_of_run(db, one.person, one.run))
    return found


def _told(db: sqlite3.Connection, one: Unfinished) -> Level | None:
    """Return the level that was told before the questions, or with the alert of a sign that was sure; None where none was."""
    rows = db.execute("select value from (select value from findings where person = :person and name = 'safety.level' and run <> :run "
                      "order by id desc limit 1) union all select level from alerts where person = :person and run = :run and :sign",
                      {"person": one.person, "run": one.run, "sign": one.flow == "signs"}).fetchall()
    levels = [Level(value) for value, in rows if value in REFERRED]
    return worst(levels) if levels else None


def told_since(db: sqlite3.Connection, person: int, run: str) -> datetime | None:
    """Return since when what the questions of a run are about is told, of pain or a sign; None for any other run."""
    at = "select began_at from runs where person = :person and run = :run and flow in ('pain', 'signs')"
    (told,) = db.execute(f"select {TOLD_SINCE.format(at=at, person=':person')}", {"person": person, "run": run}).fetchone()
    return moment_of(told) if told else None


LIMIT_ASKED: Final = ("exists (select 1 from runs l where l.person = r.person and l.flow = 'limits' and l.ending is null and "
                     "cast(l.run as integer) > cast(r.run as integer))")
"""SQL condition on a run ``r`` of questions about a sign: they are answered, and what waits is how the limit told in it was understood."""


def limit_asked(db: sqlite3.Connection, person: int, run: str) -> bool:
    """True if that is so of a run."""
    return db.execute(f"select 1 from runs r where r.person = ? and r.run = ? and r.flow = 'signs' and {LIMIT_ASKED}",
                      (person, run)).fetchone() is not None


def words_of_run(db: sqlite3.Connection, person: int, run: str) -> str:
    """Return the words that a run began with, and those told meanwhile of something else that waits for it; "" where they are not known
    any more, or were not kept."""
    rows = db.execute("select session from sessions where person = ?", (person,)).fetchall()
    stacks = (stack for text, in rows for session in (Session.loads(text),) for stack in (session.stack, *session.parked))
    upto = next((stack[:n + 1] for stack in stacks for n, frame in enumerate(stack) if frame.run == run), ())
    said = (str(one.got.get("said", "")) for one in (*upto[-1:], *waiting_beneath(upto)))
    return "; ".join(dict.fromkeys(filter(None, said)))


def answers_in_run(db: sqlite3.Connection, person: int, run: str) -> list[tuple[str, str, float | str | None]]:
    """Return the current answers of a run: (key, text as written, value)."""
    return db.execute("select key, raw, value from answers a where person = ? and run = ? and status = 'ok' and not exists (select 1 "
                      "from answers l where l.person = a.person and l.run = a.run and l.key = a.key and l.id > a.id) order by id",
                      (person, run)).fetchall()
