"""Requests of the operator: carried out at once where no companion has the file open, else left for the one that has.

One process writes the file, always (SQLite before 3.51.3 may damage one that two write at the same instant), so a command beside
a running companion leaves a small private file next to it, which the next sweep carries out and removes. A code is in it only as
its hash.
"""

from __future__ import annotations

import json
import logging
import secrets
import sqlite3
from dataclasses import asdict, dataclass
from datetime import datetime
from pathlib import Path

from companion.base.private import private_file, private_folder
from companion.conversation.effects import Say
from companion.record import coaching
from companion.record.file import AlreadyRunning, open_for_writing
from companion.record.persist import put_message

_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Request:
    """"invite": keep the hash of a code for the coach called ``name``; "end": end the coach called so whose number is ``person``
    (0: the only one of that name)."""

    what: str
    name: str
    code_hash: str = ""
    person: int = 0


def ask(database: Path, request: Request, at: datetime) -> bool:
    """Have a request carried out; returns False where it waits for the companion that is running. Raises CannotOpen, OSError."""
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


def carry_out(db: sqlite3.Connection, request: Request, at: datetime) -> None:
    """Do what was asked; what is not known is passed over."""
    if request.what == "invite":
        coaching.keep_invitation(db, "coach", None, request.name, request.code_hash, at)
    elif request.what == "end":
        there = [person for person, called in coaching.coaches_named(db) if called == request.name and request.person in (0, person)]
        if len(there) > 1:
            _log.error("several coaches have the name of the one to end, so none is ended: ask with a number")
            return
        for person in there:
            for lifter in coaching.lifters_of(db, person):  # they may count on being heard
                put_message(db, lifter, Say(f"{request.name} is no coach here any more: they see nothing of you, and hear nothing from "
                                            "me.", must_arrive=True), at)
            coaching.end_coach(db, person, at)


def waiting(database: Path) -> list[Path]:
    """Return the requests that were left, oldest first."""
    return sorted(_folder(database).glob("*.json"), key=lambda path: path.stat().st_mtime)


def taken(path: Path) -> Request | None:
    """Return a request that was left; None for a file that is none."""
    try:
        return Request(**json.loads(path.read_text(encoding="utf-8")))
    except (OSError, ValueError, TypeError) as error:
        _log.error("a request that was left can't be read: %s", type(error).__name__)
        return None


def _leave(database: Path, request: Request) -> None:
    folder = _folder(database)
    private_folder(folder)
    path = folder / f"{secrets.token_hex(8)}.new"
    private_file(path)
    path.write_text(json.dumps(asdict(request)), encoding="utf-8")
    path.rename(path.with_suffix(".json"))


def _folder(database: Path) -> Path:
    return database.with_name(database.name + ".asked")
