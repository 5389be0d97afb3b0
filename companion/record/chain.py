"""The chain over the answer log: each answer is bound to all before it, so that a changed, missing or cut row shows.

A link holds a commitment to its answer's content, salted so that nothing can be guessed from it, and a hash over the link before it and
that commitment. Deleting an answer deletes its salt with it (a trigger): what is left binds the others and tells nothing. The latest
link, the head, is also kept in a small file beside the database: a tail that was cut off shows there.
"""

from __future__ import annotations

import contextlib
import json
import os
import sqlite3
from hashlib import sha256
from pathlib import Path
from typing import Final, NamedTuple

from companion.base.private import private_file

FIRST: Final = sha256(b"answer log").digest()
"""What the first link is bound to."""

SALT_BYTES: Final = 16

CONTENT: Final = "person, run, flow, version, key, side, raw, value, unit, status, method, placement, replaces, at"
"""The columns of an answer that its link commits to. Part of the format, like the functions below: never to be changed."""

_JSON: Final = json.JSONEncoder(separators=(",", ":"))


class Head(NamedTuple):
    """The latest link: its number, which is its answer's, and its hash."""

    number: int
    hash: bytes


def commitment(salt: bytes, content: tuple[object, ...]) -> bytes:
    """Return the commitment to an answer's content."""
    return sha256(salt + _JSON.encode(content).encode("ascii")).digest()


def bound(before: bytes, number: int, commits: bytes) -> bytes:
    """Return a link's hash."""
    return sha256(before + number.to_bytes(8, "big") + commits).digest()


def next_link(db: sqlite3.Connection) -> tuple[int, bytes]:
    """Return the number of the next answer, which is never used again, and the hash its link is bound to."""
    row = db.execute("select max(number, ifnull((select max(id) from answers), 0)), hash from chain order by number desc "
                     "limit 1").fetchone()
    return (row[0] + 1, row[1]) if row else (1 + (db.execute("select max(id) from answers").fetchone()[0] or 0), FIRST)


def append(db: sqlite3.Connection, number: int, before: bytes, content: tuple[object, ...]) -> bytes:
    """Add the link of an answer, bound to the hash ``before``; returns its own."""
    salt = os.urandom(SALT_BYTES)
    commits = commitment(salt, content)
    is_bound = bound(before, number, commits)
    db.execute("insert into chain (number, salt, commits, hash) values (?, ?, ?, ?)", (number, salt, commits, is_bound))
    return is_bound


def link_unlinked(db: sqlite3.Connection) -> None:
    """Add links for answers that are newer than the last link, or all where there is none: for a file from before the chain."""
    head = head_in(db)
    last = head.hash
    for number, *content in db.execute(f"select id, {CONTENT} from answers where id > ? order by id", (head.number,)).fetchall():
        last = append(db, number, last, tuple(content))


def head_in(db: sqlite3.Connection) -> Head:
    """Return the latest link of a file; number 0 where there is none."""
    row = db.execute("select number, hash from chain order by number desc limit 1").fetchone()
    return Head(row[0], row[1]) if row else Head(0, FIRST)


def chain_fault(db: sqlite3.Connection, outside: Head | None = None) -> str:
    """Return, in one line, the first row of the answer log that is not as it was written; "" if all are. ``outside``: the head kept
    beside the file. A file from before the chain has no fault."""
    if db.execute("select 1 from sqlite_master where name = 'chain'").fetchone() is None:
        return ""
    last = FIRST
    rows = db.execute(f"select c.number, c.salt, c.commits, c.hash, a.id, {CONTENT} from chain c left join answers a on a.id = c.number "
                      "order by c.number")
    for number, salt, commits, is_bound, answer, *content in rows:
        last = bound(last, number, commits)
        if last != is_bound:
            return f"the chain of the answer log breaks at answer {number}"
        if (salt is None) != (answer is None):
            return f"answer {number} is missing" if salt else f"answer {number} was written by something else"
        if salt is not None and commitment(salt, tuple(content)) != commits:
            return f"answer {number} is not what was written"
    loose = db.execute("select min(id) from answers where not exists (select 1 from chain where number = id)").fetchone()[0]
    if loose is not None:
        return f"answer {loose} was written by something else"
    return cut(db, outside)


def cut(db: sqlite3.Connection, outside: Head | None) -> str:
    """Return, in one line, that answers were lost after the last one there; "" if none were."""
    if outside is None or outside.number == 0 or db.execute("select 1 from chain where number = ? and hash = ?", outside).fetchone():
        return ""
    return f"the answer log ends at answer {head_in(db).number} but had gone on to {outside.number}: what came after it is lost"


class HeadFile:
    """The head outside the database, rewritten in place after each commit that moved it. Not synchronised to the disk: after a power
    cut it may be behind the file, never ahead."""

    def __init__(self, database: Path) -> None:
        """Open or create the file beside the database. Raises OSError."""
        path = head_path(database)
        private_file(path)
        self._handle = os.open(path, os.O_WRONLY)
        self._last: Head | None = None

    def note(self, head: Head) -> None:
        """Write the head where it is a new one. A disk that takes no more is the database's to report."""
        if head != self._last:
            with contextlib.suppress(OSError):
                os.pwrite(self._handle, f"{head.number:020} {head.hash.hex()}\n".encode("ascii"), 0)
                self._last = head

    def close(self) -> None:
        """Close the file."""
        os.close(self._handle)


def head_path(database: Path) -> Path:
    """Return where the head of a database is kept."""
    real = database.resolve()
    return real.with_name(real.name + ".head")


def head_beside(database: Path) -> Head | None:
    """Return the head kept beside a database; None where there is none, or none that can be read."""
    try:
        number, _, is_bound = head_path(database).read_text(encoding="ascii").strip().partition(" ")
        return Head(int(number), bytes.fromhex(is_bound))
    except (OSError, ValueError):
        return None
