"""Operator requests: carried out at once where no companion is running, else queued as a file for the one that is.

Only one process ever writes the database (SQLite before 3.51.3 may damage a file that two write at the same instant). So a command
beside a running companion leaves a small private file next to the database; the next sweep carries it out and removes it. It holds
a code only as its hash.
"""

from __future__ import annotations

import json
import logging
import secrets
import sqlite3
from dataclasses import asdict, dataclass
from datetime import datetime
from pathlib import Path

from companion.base.private import private_file, private_folder, real_path
from companion.conversation.effects import Say
from companion.language.units import METRIC
from companion.record import coaching, log, orders
from companion.record.file import AlreadyRunning, open_for_writing
from companion.record.persist import put_message

_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class OperatorRequest:
    """A request: "invite" stores the code's hash for a coach called ``name``, in a role; "end" ends the coach of this name and number
    (``person``; 0 for the only one of that name)."""

    what: str
    name: str
    code_hash: str = ""
    person: int = 0
    role: str = "coach"


def submit(database: Path, request: OperatorRequest, at: datetime) -> bool:
    """Carry out a request; returns False where it is queued for the running companion. Raises CannotOpen, OSError."""
    try:
        db, lock = open_for_writing(database)
    except AlreadyRunning:
        _leave(database, request)
        return False
    try:
        db.execute("begin immediate")
        carry_out(db.conn, request, at)
        db.execute("commit")
    finally:
        db.close()
        lock.close()
    return True


def carry_out(db: sqlite3.Connection, request: OperatorRequest, at: datetime) -> None:
    """Carry out a request in the current transaction; an unknown one is ignored."""
    if request.what == "invite":
        coaching.keep_invitation(db, request.role, None, request.name, request.code_hash, at)
    elif request.what == "end":
        there = [person for person, called, _ in coaching.coaches_with_lifters(db)
                 if called == request.name and request.person in (0, person)]
        if len(there) > 1:
            _log.error("several coaches have this name, so none was ended: give the number instead")
            return
        for person in there:
            lifters = coaching.lifters_of(db, person)
            coaching.end_coach(db, person, at)
            for lifter in lifters:  # they may rely on the coach being alerted
                units = log.facts_of(db, lifter).get("welcome.units")
                holds = orders.lapsed_words(db, lifter, at, str(units.value) if units else METRIC)
                put_message(db, lifter, Say(f"{request.name} is no longer a coach here. They can't see your answers any more, and I no "
                                            f"longer tell them when something hurts.{holds}"), at)


def pending(database: Path) -> list[Path]:
    """Return the files of queued requests, oldest first."""
    return sorted(_folder(database).glob("*.json"), key=lambda path: path.stat().st_mtime)


def read_request(path: Path) -> OperatorRequest | None:
    """Return a queued request; None where the file can't be read as one."""
    try:
        return OperatorRequest(**json.loads(path.read_text(encoding="utf-8")))
    except (OSError, ValueError, TypeError) as error:
        _log.error("a queued operator request can't be read: %s", type(error).__name__)
        return None


def _leave(database: Path, request: OperatorRequest) -> None:
    folder = _folder(database)
    private_folder(folder)
    path = folder / f"{secrets.token_hex(8)}.new"
    private_file(path)
    path.write_text(json.dumps(asdict(request)), encoding="utf-8")
    path.rename(path.with_suffix(".json"))


def _folder(database: Path) -> Path:
    return real_path(database, ".asked")  # the same folder by whatever name the file is opened
