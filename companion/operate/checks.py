"""Checks of the doctor, each a function from what was inspected to lines of text. Limits are our choices unless a source is given."""

from __future__ import annotations

import os
import re
import sqlite3
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from ipaddress import ip_address
from typing import Final
from urllib.parse import urlsplit

from companion.base.private import open_to_others
from companion.operate.backup import DAYS_KEPT, daily
from companion.operate.heartbeat import OFFSET, PAIN_LATE, POLL, POLL_LATE, UNSENT_LATE
from companion.operate.inspection import CheckResult, Inspection, Severity
from companion.operate.integrity import damage_of, megabytes, schema_of
from companion.operate.restore import kept_aside
from companion.operate.sqlite_faults import FAULTS
from companion.record.chain import chain_fault, head_beside
from companion.record.outbox import backlog
from companion.record.status import CLOCK_JUMP, LOG_CUT
from companion.record.timestamps import text_of
from companion.screening.sources import SOURCES, outdated

FINE, LOOK, BROKEN = Severity.FINE, Severity.LOOK, Severity.BROKEN
ResultLines = Iterator[tuple[Severity, str]]

TELEGRAM_KEEPS: Final = timedelta(hours=24)
"""Time Telegram keeps updates that are not taken (Bot API, getUpdates; from memory)."""

REMINDER_LATE: Final = timedelta(hours=1)
FAILED_WITHIN: Final = timedelta(days=7)
BACKUP_LATE: Final = timedelta(days=2)
CLOCK_OFF: Final = timedelta(seconds=30)
CLOCK_FAR_OFF: Final = timedelta(hours=1)
"""Far enough off that reminders come at the wrong hour, and a day's safety check may count for the wrong day."""

JUMP_LATELY: Final = timedelta(days=1)

FREE_LOW: Final = 500 * 10**6
FREE_OUT: Final = 50 * 10**6


@dataclass(frozen=True, slots=True)
class Check:
    """One check: its subject, its function, and the tables it reads; without these it is left out."""

    about: str
    of: Callable[[Inspection], ResultLines]
    tables: tuple[str, ...] | None = None


def results_of(check: Check, seen: Inspection) -> Iterator[CheckResult]:
    """Yield the results of one check; a read error becomes a result too."""
    if check.tables is not None and (seen.db is None or not seen.tables.issuperset(check.tables)):
        return
    try:
        for severity, line in check.of(seen):
            yield CheckResult(severity, check.about, line)
    except (sqlite3.DatabaseError, ValueError, TypeError) as error:
        yield CheckResult(BROKEN, check.about, f"can't be read ({error}): see the database line")


def settings(seen: Inspection) -> ResultLines:
    """Check the settings: API address, writable folder, retention."""
    url = urlsplit(seen.settings.api_url)
    if url.scheme == "http" and not _loopback(url.hostname or ""):
        yield LOOK, "COMPANION_API_URL is not https: the token and all messages cross the network unencrypted"
    folder = seen.path.absolute().parent
    if folder.exists() and not os.access(folder, os.W_OK | os.X_OK):
        yield BROKEN, f"this user can't write to {folder}: change its owner, or set COMPANION_DATABASE"
    if seen.settings.keep_months is not None:
        yield FINE, (f"answers older than {seen.settings.keep_months} months are deleted every night while `companion run` runs, "
                     "except those a decision still needs")
    yield FINE, f"the database is {seen.path}; {'a companion is running on it' if seen.running else 'no companion is running on it'}"


def _loopback(host: str) -> bool:
    try:
        return host == "localhost" or ip_address(host).is_loopback
    except ValueError:
        return False


def token(seen: Inspection) -> ResultLines:
    """Check the token's shape."""
    it = seen.settings.token
    if not it:
        yield FINE, "COMPANION_TOKEN is not set: `companion chat` works without, `companion run` needs it"
    elif not re.fullmatch(r"[\w:-]+", it, re.ASCII):
        yield BROKEN, "COMPANION_TOKEN has characters that no token can have: copy it again"
    elif not re.fullmatch(r"\d+:[A-Za-z0-9_-]{30,}", it):  # the usual shape, from memory
        yield LOOK, "COMPANION_TOKEN is not digits, a colon and about 35 characters: copy it again if it is refused"
    else:
        yield FINE, "COMPANION_TOKEN looks like a token; only Telegram can say whether it is right"


def sqlite(seen: Inspection) -> ResultLines:
    """Check the SQLite library's version."""
    yield from sqlite_of((sqlite3.sqlite_version_info[0], *sqlite3.sqlite_version_info[1:3]))


def sqlite_of(version: tuple[int, ...]) -> ResultLines:
    """Yield the version and its known faults."""
    it = (version[0], version[1], version[2])
    name = ".".join(map(str, it))
    yield FINE, f"version {name}"
    for fault in FAULTS:
        if fault.has(it):
            yield fault.severity, f"version {name}: {fault.line}"


def disk(seen: Inspection) -> ResultLines:
    """Check the free disk space."""
    size = seen.path.stat().st_size if seen.path.is_file() else 0
    if seen.free is None:
        yield LOOK, "free space is unknown"
    elif seen.free < FREE_OUT:
        yield BROKEN, f"{megabytes(seen.free)} free: make space now, the bot stops when it can't write"
    elif seen.free < max(FREE_LOW, 2 * size):
        yield LOOK, f"{megabytes(seen.free)} free: make space soon, a backup needs {megabytes(size)}"
    else:
        yield FINE, f"{megabytes(seen.free)} free"


def database(seen: Inspection) -> ResultLines:
    """Check that the database exists, is ours and is undamaged."""
    if seen.trouble:
        yield BROKEN, f"{seen.path} can't be read ({seen.trouble}): {_bring_back(seen)}"
    if seen.db is None:
        if not seen.trouble:
            yield LOOK, (f"there is none at {seen.path} yet: `companion chat` or `companion run` makes one. If there should be "
                         f"one, check COMPANION_DATABASE, or {_bring_back(seen)}")
    elif not seen.tables:
        yield LOOK, f"{seen.path} is empty: `companion chat` or `companion run` fills it"
    elif not {"persons", "_sqlite_migrations"} <= seen.tables:
        yield BROKEN, f"{seen.path} is not a companion database: check COMPANION_DATABASE"
    else:
        damage = damage_of(seen.db)
        yield (BROKEN, f"damaged ({damage}): {_bring_back(seen)}") if damage else (FINE, "sound")


def answer_log(seen: Inspection) -> ResultLines:
    """Check the chain over the answer log, against its head outside the file too."""
    assert seen.db is not None
    fault = chain_fault(seen.db, head_beside(seen.path))
    lost = seen.marks.get(LOG_CUT)
    if fault:
        yield BROKEN, f"{fault}: {_bring_back(seen)}, or find out who changed the file"
    else:
        yield FINE, "every answer is as it was written"
    if lost is not None:
        yield LOOK, f"at the start of {text_of(lost.at)}, {lost.value}; a backup may have it"


def _bring_back(seen: Inspection) -> str:
    stop = "stop the companion, then " if seen.running else ""
    return f"{stop}`companion restore` the newest backup ({_newest(seen) or 'none is known'})"


def _newest(seen: Inspection) -> str:
    if seen.backups is None or not seen.backups.is_dir():
        return ""
    return next((str(seen.backups / name) for name in reversed(daily(os.listdir(seen.backups)))), "")


def schema(seen: Inspection) -> ResultLines:
    """Check the schema's version."""
    assert seen.db is not None
    it = schema_of(seen.db)
    if it.unknown:
        yield BROKEN, f"made by a newer version of the companion ({it.unknown[-1]}): update the companion"
    elif it.waiting:
        yield FINE, f"at “{(it.applied or ('nothing',))[-1]}”; the next start brings it to “{it.waiting[-1]}”"
    else:
        yield FINE, f"at “{it.applied[-1]}”, the newest"


def private(seen: Inspection) -> ResultLines:
    """Check that only the owner can read the files."""
    folder = [seen.backups / name for name in daily(os.listdir(seen.backups))] if seen.backups and seen.backups.is_dir() else []
    log, secrets = seen.path.with_name(seen.path.name + "-wal"), seen.settings.secrets_in
    open_ones = [path for path in (seen.path, log, *folder) if path.is_file() and open_to_others(path)]
    if secrets is not None and secrets.is_file() and open_to_others(secrets):
        yield LOOK, f"others on this machine can read the bot's token or secret: chmod 600 {secrets}"
    if open_ones:
        yield LOOK, f"others on this machine can read health answers: chmod 600 {' '.join(map(str, open_ones[:3]))}"
    else:
        yield FINE, "only their owner can read the database and the backups"


def backups(seen: Inspection) -> ResultLines:
    """Check the age of the latest backup, and files kept by a restore."""
    at_risk = LOOK if seen.settings.token else FINE  # `companion run` makes the daily backup
    newest = _newest(seen)
    if seen.backups is None:
        yield FINE, "daily backups are turned off: make your own with `companion backup FILE`"
    elif not newest:
        yield at_risk, f"none in {seen.backups} yet: `companion run` makes one a day, `companion backup FILE` makes one now"
    else:
        day = datetime.fromisoformat(f"{newest[-17:-7]}T00:00:00+00:00")
        late = seen.now - day > BACKUP_LATE
        yield at_risk if late else FINE, f"the newest is {newest}" + ("; `companion backup FILE` makes one now" if late else "")
    for path, since in kept_aside(seen.path):
        yield LOOK if seen.now - since > timedelta(days=DAYS_KEPT) else FINE, (
            f"{path} was kept by a restore and holds data that people have erased since: remove it once all is well")


def poll(seen: Inspection) -> ResultLines:
    """Check when a poll was last answered."""
    mark = seen.marks.get(POLL)
    if not seen.settings.token and mark is None:
        return
    do = "check the network and the log" if seen.running else "start it with `companion run`"
    if mark is None:
        yield LOOK if seen.running else FINE, f"no poll has been answered yet: {do}"
        return
    age, at = seen.now - mark.at, f"the last good poll was at {text_of(mark.at)}"
    if age < -POLL_LATE:
        yield LOOK, f"{at}, which is in the future: this machine's clock was set back, correct it"
    elif age > TELEGRAM_KEEPS:
        yield BROKEN, f"{at}: Telegram keeps messages for only 24 hours, so older ones are lost. To get the rest, {do}"
    elif age > POLL_LATE:
        yield LOOK, f"{at}: messages since then wait at Telegram until {text_of(mark.at + TELEGRAM_KEEPS)}; {do}"
    else:
        yield FINE, at


def updates(seen: Inspection) -> ResultLines:
    """Check for messages from people that could not be handled."""
    assert seen.db is not None
    count, first, why = seen.db.execute(
        "select count(*), min(at), failed from updates where failed is not null and at >= ?",
        (text_of(seen.now - FAILED_WITHIN),)).fetchone()
    if count:
        yield LOOK, (f"{count} messages from people could not be handled, the oldest at {first} ({why}); they were told so. "
                     "Look for “a turn failed” in the log and report it")
    else:
        yield FINE, "every message taken this week was handled"


def unsent(seen: Inspection) -> ResultLines:
    """Check for messages that wait too long."""
    assert seen.db is not None
    there = backlog(seen.db, seen.now)
    do = "check the network and the log" if seen.running else "start the bot, it sends what is not too late"
    if there.pain and seen.now - there.pain > PAIN_LATE:
        yield BROKEN, f"an answer to pain waits to be sent since {text_of(there.pain)}: {do}"
    if there.oldest and seen.now - there.oldest > UNSENT_LATE:
        yield LOOK, f"{there.waiting} wait to be sent, the oldest since {text_of(there.oldest)}: {do}"
    else:
        yield FINE, f"{there.waiting} wait to be sent"


def reminders(seen: Inspection) -> ResultLines:
    """Check for overdue reminders."""
    assert seen.db is not None
    count, oldest = seen.db.execute(
        "select count(*), min(due_at) from reminders r where state = 'open' and due_at <= ? and exists "
        "(select 1 from addresses a where a.person = r.person and gone_at is null)",
        (text_of(seen.now - REMINDER_LATE),)).fetchone()
    if count:
        do = "see the log" if seen.running else "start the bot, it sends what is not too late"
        yield LOOK, f"{count} are overdue, the oldest since {oldest}: {do}"
    else:
        yield FINE, "none is overdue"


def clock(seen: Inspection) -> ResultLines:
    """Check this machine's clock against Telegram's, and whether it was set lately."""
    jump = seen.marks.get(CLOCK_JUMP)
    if jump is not None and abs(seen.now - jump.at) < JUMP_LATELY:
        yield LOOK, (f"it was set by {float(jump.value):+.0f} s at {text_of(jump.at)}; what waited was moved with it. Turn on network time "
                     "if nobody did it")
    mark = seen.marks.get(OFFSET)
    if mark is None:
        return
    off = timedelta(seconds=float(mark.value))
    if abs(off) <= CLOCK_OFF:
        yield FINE, f"within {CLOCK_OFF.seconds} s of Telegram's at {text_of(mark.at)}"
        return
    yield BROKEN if abs(off) > CLOCK_FAR_OFF else LOOK, (
        f"{abs(off.total_seconds()):.0f} s {'behind' if off > timedelta(0) else 'ahead of'} Telegram's at {text_of(mark.at)}: "
        "turn on network time, or reminders come at the wrong time")


def evidence(seen: Inspection) -> ResultLines:
    """Check for rows of the table of sources that nobody has held against their source for two years."""
    old = outdated(seen.now.date())
    if old:
        named = ", ".join(row.id for row in old[:3])
        yield LOOK, (f"{len(old)} of {len(SOURCES)} numbers were last checked over two years ago ({named}"
                     f"{', …' if len(old) > 3 else ''}): a newer companion may have newer ones")
    else:
        yield FINE, f"all {len(SOURCES)} numbers were checked within two years"


CHECKS: Final = (
    Check("settings", settings),
    Check("token", token),
    Check("SQLite", sqlite),
    Check("disk", disk),
    Check("database", database),
    Check("answers", answer_log, ("answers", "chain")),
    Check("schema", schema, ("_sqlite_migrations", "persons")),
    Check("private", private),
    Check("backups", backups),
    Check("poll", poll, ("updates",)),
    Check("handled", updates, ("updates",)),
    Check("messages", unsent, ("outbox", "owed")),
    Check("reminders", reminders, ("reminders", "addresses")),
    Check("clock", clock, ("marks",)),
    Check("evidence", evidence),
)
