"""The tables, as migrations. A released migration is never changed; a new one is added below it.

Moments are UTC text in RFC 3339, so that text order is time order. A migration is stored under its function's name.
"""

from __future__ import annotations

import sqlite3

from sqlite_utils import Database
from sqlite_utils.migrations import Migrations

from companion.record.chain import link_unlinked

migrations = Migrations("companion")

FIRST_TABLES = """
create table persons (
    id integer primary key, created_at text not null
) strict;
create table addresses (
    channel text not null, address text not null, person integer not null references persons on delete cascade,
    name text not null, gone_at text, gone_reason text,
    primary key (channel, address)
) strict, without rowid;
create index addresses_person on addresses (person);
create table sessions (
    person integer primary key references persons on delete cascade, session text not null, updated_at text not null
) strict;
create table runs (
    person integer not null references persons on delete cascade, run text not null, flow text not null,
    version integer not null, began_at text not null, ended_at text, ending text,
    primary key (person, run)
) strict, without rowid;
create table answers (
    id integer primary key, person integer not null references persons on delete cascade, run text not null,
    flow text not null, version integer not null, key text not null, side text not null, raw text not null,
    value any, unit text not null, status text not null, method text not null, placement text not null,
    replaces integer references answers, at text not null
) strict;
create index answers_person on answers (person, id);
create index answers_run on answers (person, run, key, id);
create trigger answers_stay before update on answers begin select raise(abort, 'the answer log is append-only'); end;
create table findings (
    id integer primary key, person integer not null references persons on delete cascade, run text not null,
    name text not null, value text not null, rule text not null, because text not null, at text not null
) strict;
create index findings_person on findings (person, name, id);
create table facts (
    person integer not null references persons on delete cascade, name text not null, value any not null,
    found integer not null, at text not null,
    primary key (person, name)
) strict, without rowid;
create table reminders (
    id integer primary key, person integer not null references persons on delete cascade, kind text not null,
    flow text not null, wall text not null, zone text not null, due_at text not null, state text not null,
    made_at text not null, settled_at text
) strict;
create index reminders_due on reminders (due_at) where state = 'open';
create index reminders_person on reminders (person, kind);
create table alerts (
    id integer primary key, person integer not null references persons on delete cascade, run text not null,
    level text not null, because text not null, at text not null
) strict;
create index alerts_person on alerts (person, id);
create table coaches (
    person integer not null references persons on delete cascade, coach integer not null references persons on delete cascade,
    since text not null, until text,
    primary key (person, coach)
) strict, without rowid;
create table outbox (
    id integer primary key, person integer not null references persons on delete cascade, channel text not null,
    address text not null, text text not null, buttons text not null, picture text, document text,
    must_arrive integer not null, timed integer not null, unasked integer not null, due_at text not null, made_at text not null,
    attempt integer not null default 0, tried_at text, settled_at text, message text, dropped text
) strict;
create index outbox_waiting on outbox (due_at, id) where settled_at is null;
create index outbox_person on outbox (person, id);
create table updates (
    channel text not null, update_id integer not null, at text not null, failed text,
    primary key (channel, update_id)
) strict, without rowid;
create table refusals (id integer primary key, at text not null, version integer not null) strict;
create table erasures (id integer primary key, at text not null) strict;

create view answer_log as
select a.id, n.name as person, a.at, a.flow, a.version, a.run, a.key, a.side, a.raw, a.value, a.unit, a.status,
    a.method, a.placement, a.replaces, r.ending
from answers a join runs r on r.person = a.person and r.run = a.run
join (select person, min(name) as name from addresses group by person) n on n.person = a.person;
create view findings_log as
select f.id, n.name as person, f.at, f.run, f.name, f.value, f.rule, f.because
from findings f join (select person, min(name) as name from addresses group by person) n on n.person = f.person;
"""


@migrations()
def first(db: Database) -> None:
    """Persons, their addresses and sessions, the answer log, findings, reminders, the outbox, update ids."""
    _execute(db, FIRST_TABLES)


@migrations()
def picture_files(db: Database) -> None:
    """A channel's file ids of pictures the bot has sent."""
    db.execute("create table picture_files (bot text not null, picture text not null, file text not null, at text not null, "
               "primary key (bot, picture)) strict, without rowid")


SQUAT_DAY_TABLES = """
alter table runs add column asked text not null default '';
alter table reminders add column day text not null default '';
alter table reminders add column stale_at text;
alter table reminders add column round integer not null default 1;
create unique index reminders_once on reminders (person, kind, day) where state = 'sent' and day <> '';
alter table outbox add column stale_at text;
alter table outbox add column reminder integer;
alter table outbox add column document_name text;
create index outbox_next on outbox (channel, unasked, due_at, id) where settled_at is null;
create index outbox_chat on outbox (channel, address, due_at, id) where settled_at is null;
create index outbox_stale on outbox (stale_at) where settled_at is null and stale_at is not null;
create table marks (name text primary key, value any, at text not null) strict, without rowid;
"""


@migrations()
def squat_days(db: Database) -> None:
    """Reminders about a day, which go stale; the order of the outbox; marks of the running bot."""
    _execute(db, SQUAT_DAY_TABLES)


COACH_TABLES = """
create table coach_roles (
    person integer primary key references persons on delete cascade, name text not null, since text not null, until text
) strict;
create table invitations (
    id integer primary key, kind text not null, made_by integer references persons on delete cascade, name text not null,
    code_hash text not null unique, made_at text not null, expires_at text not null, used_at text,
    used_by integer references persons on delete set null
) strict;
create table code_tries (
    id integer primary key, person integer not null references persons on delete cascade, at text not null
) strict;
create index code_tries_person on code_tries (person, at);
create table looks (
    id integer primary key, person integer not null references persons on delete cascade,
    coach integer references persons on delete set null, coach_name text not null, what text not null, at text not null
) strict;
create index looks_person on looks (person, id);
create table acts (
    id integer primary key, person integer not null references persons on delete cascade,
    coach integer references persons on delete set null, coach_name text not null, what text not null,
    value text not null, reason text not null, at text not null
) strict;
create index acts_person on acts (person, id);
create index coaches_coach on coaches (coach) where until is null;
create index findings_latest on findings (person, at);
create index alerts_latest on alerts (person, at);
alter table outbox add column about integer references persons on delete cascade;
create index outbox_about on outbox (about) where about is not null;

create view squat_days_log as
select n.name as person, a.at, r.asked as about_day, a.flow, a.key, a.raw, a.value, a.unit, a.status, r.ending
from answers a join runs r on r.person = a.person and r.run = a.run
join (select person, min(name) as name from addresses group by person) n on n.person = a.person
where a.flow in ('squat_day', 'squat_after');
create view caseload as
select n.name as person, c.name as coach,
    (select value from facts f where f.person = k.person and f.name = 'safety.level') as safety_level,
    (select value from facts f where f.person = k.person and f.name = 'overall') as result,
    (select value from facts f where f.person = k.person and f.name = 'depth.step') as depth_step,
    (select max(at) from alerts a where a.person = k.person) as last_alert,
    (select at from answers a where a.person = k.person order by id desc limit 1) as last_answer,
    (select min(due_at) from reminders r where r.person = k.person and r.state = 'open') as next_reminder
from coaches k join coach_roles c on c.person = k.coach and c.until is null
join (select person, min(name) as name from addresses group by person) n on n.person = k.person
where k.until is null;
"""


@migrations()
def coaching(db: Database) -> None:
    """Coaches, invitations, and the audit log; views of squat days and of the caseload."""
    _execute(db, COACH_TABLES)


OUTBOX_AUTOINCREMENT = """
create table outbox_anew (
    id integer primary key autoincrement, person integer not null references persons on delete cascade, channel text not null,
    address text not null, text text not null, buttons text not null, picture text, document text,
    must_arrive integer not null, timed integer not null, unasked integer not null, due_at text not null, made_at text not null,
    attempt integer not null default 0, tried_at text, settled_at text, message text, dropped text,
    stale_at text, reminder integer, document_name text, about integer references persons on delete cascade
) strict;
insert into outbox_anew (id, person, channel, address, text, buttons, picture, document, must_arrive, timed, unasked, due_at,
    made_at, attempt, tried_at, settled_at, message, dropped, stale_at, reminder, document_name, about)
select id, person, channel, address, text, buttons, picture, document, must_arrive, timed, unasked, due_at,
    made_at, attempt, tried_at, settled_at, message, dropped, stale_at, reminder, document_name, about from outbox;
drop table outbox;
alter table outbox_anew rename to outbox;
create index outbox_waiting on outbox (due_at, id) where settled_at is null;
create index outbox_person on outbox (person, id);
create index outbox_next on outbox (channel, unasked, due_at, id) where settled_at is null;
create index outbox_chat on outbox (channel, address, due_at, id) where settled_at is null;
create index outbox_stale on outbox (stale_at) where settled_at is null and stale_at is not null;
create index outbox_about on outbox (about) where about is not null;
create index outbox_timed on outbox (person) where timed = 1 and settled_at is null;
create index answers_replaces on answers (replaces) where replaces is not null;
"""


@migrations()
def numbered_once(db: Database) -> None:
    """Outbox ids that are never used again, so that a message being sent can't be mistaken for another after an erasure; and an
    index for deleting answers."""
    _execute(db, OUTBOX_AUTOINCREMENT)


@migrations()
def pain_runs_and_codes(db: Database) -> None:
    """An index of pain runs, which every sweep reads; and messages with a code, whose text is deleted once sent."""
    db.execute("create index runs_of_pain on runs (began_at) where flow = 'pain'")
    db.execute("alter table outbox add column fleeting integer not null default 0")


@migrations()
def hurt_asked(db: Database) -> None:
    """Sessions that stand at "Did something hurt?", of which few do: looked for at every sweep."""
    db.execute("create index sessions_hurt_asked on sessions (updated_at) where instr(session, '\"about\":\"ache\"') or "
               "instr(session, '\"about\":\"stop\"')")


@migrations()
def alerts_seen(db: Database) -> None:
    """Moments of alerts: seen by a coach, and the lifter told that none had; the few without either are looked for at every sweep."""
    db.execute("alter table alerts add column seen_at text")
    db.execute("alter table alerts add column unseen_told_at text")
    db.execute("create index alerts_unseen on alerts (at) where seen_at is null and unseen_told_at is null")


DELIVERY = """
alter table outbox add column rank integer not null default 3;
update outbox set rank = 4 where unasked = 1 and settled_at is null;
drop index outbox_next;
create index outbox_next on outbox (channel, rank, due_at, id) where settled_at is null;
create table owed (
    channel text not null, address text not null, kind text not null, at text not null,
    primary key (channel, address)
) strict, without rowid;
"""


@migrations()
def delivery(db: Database) -> None:
    """Ranks of messages; and what is owed to people who have not given consent, without a word of theirs or ours."""
    _execute(db, DELIVERY)


VIEWS_WITH_NUMBERS = """
drop view answer_log;
drop view findings_log;
drop view squat_days_log;
drop view caseload;
create view answer_log as
select a.id, n.name as person, a.at, a.flow, a.version, a.run, a.key, a.side, a.raw, a.value, a.unit, a.status,
    a.method, a.placement, a.replaces, r.ending, a.person as number
from answers a join runs r on r.person = a.person and r.run = a.run
join (select person, min(name) as name from addresses group by person) n on n.person = a.person;
create view findings_log as
select f.id, n.name as person, f.at, f.run, f.name, f.value, f.rule, f.because, f.person as number
from findings f join (select person, min(name) as name from addresses group by person) n on n.person = f.person;
create view squat_days_log as
select n.name as person, a.at, r.asked as about_day, a.flow, a.key, a.raw, a.value, a.unit, a.status, r.ending, a.person as number
from answers a join runs r on r.person = a.person and r.run = a.run
join (select person, min(name) as name from addresses group by person) n on n.person = a.person
where a.flow in ('squat_day', 'squat_after');
create view caseload as
select n.name as person, c.name as coach,
    (select value from facts f where f.person = k.person and f.name = 'safety.level') as safety_level,
    (select value from facts f where f.person = k.person and f.name = 'overall') as result,
    (select value from facts f where f.person = k.person and f.name = 'depth.step') as depth_step,
    (select max(at) from alerts a where a.person = k.person) as last_alert,
    (select at from answers a where a.person = k.person order by id desc limit 1) as last_answer,
    (select min(due_at) from reminders r where r.person = k.person and r.state = 'open') as next_reminder,
    k.person as number, k.coach as coach_number
from coaches k join coach_roles c on c.person = k.coach and c.until is null
join (select person, min(name) as name from addresses group by person) n on n.person = k.person
where k.until is null;
"""


@migrations()
def views_with_numbers(db: Database) -> None:
    """The views with each person's number, since several people may have one name."""
    _execute(db, VIEWS_WITH_NUMBERS)


CHAIN = """
create table chain (number integer primary key, salt blob, commits blob not null, hash blob not null) strict;
create trigger chain_stays before update of number, commits, hash on chain begin select raise(abort, 'the chain is append-only'); end;
create trigger chain_forgets after delete on answers begin update chain set salt = null where number = old.id; end;
"""


@migrations()
def answer_chain(db: Database) -> None:
    """The chain over the answer log; the next migration links the answers there."""
    _execute(db, CHAIN)


@migrations()
def orders_that_end(db: Database) -> None:
    """The day on which a coach's order ends by itself, and the moment at which it ended before its coach ended it."""
    db.execute("alter table acts add column until text not null default ''")
    db.execute("alter table acts add column lapsed_at text")
    db.execute("create index acts_ending on acts (id) where until <> '' and lapsed_at is null")


LINKS_IN_ROWS = """
drop trigger answers_stay;
drop trigger chain_forgets;
alter table answers add column salt blob;
alter table answers add column commits blob;
alter table answers add column hash blob;
update answers set (salt, commits, hash) = (select salt, commits, hash from chain where number = id);
delete from chain where number in (select id from answers);
alter table chain drop column salt;
"""

LINKS_STAY = """
create trigger answers_stay before update on answers begin select raise(abort, 'the answer log is append-only'); end;
create trigger chain_keeps after delete on answers when old.hash is not null
begin insert into chain (number, commits, hash) values (old.id, old.commits, old.hash); end;
"""


@migrations()
def links_in_rows(db: Database) -> None:
    """The links of the chain in the rows of their answers, one page less to write for an answer; ``chain`` keeps those of answers that
    are gone. Answers from before the chain get theirs."""
    _execute(db, LINKS_IN_ROWS)
    link_unlinked(db.conn)
    _execute(db, LINKS_STAY)


@migrations()
def roles(db: Database) -> None:
    """The role of a coach: coach, clinician or read-only."""
    db.execute("alter table coach_roles add column role text not null default 'coach'")


@migrations()
def acts_for_several(db: Database) -> None:
    """A mark on acts done for several lifters at once, which are no look at any one of them."""
    db.execute("alter table acts add column several integer not null default 0")


@migrations()
def waits_since(db: Database) -> None:
    """Since when a message waits that took the place of the same one; null where it took none."""
    db.execute("alter table outbox add column waits_since text")


@migrations()
def left_open(db: Database) -> None:
    """Indexes of what every sweep reads: what was left open about pain, signs and warnings, in place of pain alone, and the alerts that
    no coach has seen; and a count of how often one was sent again."""
    db.execute("drop index runs_of_pain")
    db.execute("create index runs_unfinished on runs (began_at) where flow in ('pain', 'signs', 'safety_check') and "
               "ifnull(ending, 'left') <> 'done'")
    db.execute("alter table alerts add column again integer not null default 0")
    db.execute("drop index alerts_unseen")
    db.execute("create index alerts_unseen on alerts (at) where seen_at is null")


@migrations()
def begun_anew(db: Database) -> None:
    """The run that a run was first begun as, where its questions began anew; "" of those from before."""
    db.execute("alter table runs add column first_run text not null default ''")


def _execute(db: Database, script: str) -> None:
    """Execute a script's statements one by one; ``executescript`` would commit the migration's transaction."""
    waiting = ""
    for line in script.splitlines(keepends=True):
        waiting += line
        if sqlite3.complete_statement(waiting):
            db.execute(waiting)
            waiting = ""
