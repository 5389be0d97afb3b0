"""The chain over the answer log: each answer is bound to all before it, so that a changed, missing or cut row shows.

An answer's row holds its link: a commitment to its content, salted so that nothing can be guessed from it, and a hash over the link
before it and that commitment. Deleting an answer leaves its link without the salt in ``chain`` (a trigger): that binds the others and
tells nothing. The latest link, the head, is also kept in a small file beside the database: a tail that was cut off shows there.
"""

from __future__ import annotations

import contextlib
import os
import sqlite3
from hashlib import sha256
from json.encoder import encode_basestring_ascii as _quoted
from pathlib import Path
from typing import Final, NamedTuple

from companion.base.private import private_file, real_path

FIRST: Final = sha256(b"answer log").digest()
"""What the first link is bound to."""

SALT_BYTES: Final = 16

CONTENT: Final = "person, run, flow, version, key, side, raw, value, unit, status, method, placement, replaces, at"
"""The columns of an answer that its link commits to. Part of the format, like the two functions below: never to be changed."""

class Head(NamedTuple):
    """The latest link: its number, which is its answer's, and its hash."""

    number: int
    hash: bytes


def commitment(salt: bytes, content: tuple[object, ...]) -> bytes:
    """Return the commitment to an answer's content: over the salt and the JSON list of the values, which is put together here in half
    the time of the json module."""
    values = ",".join([_quoted(value) if value.__class__ is str else "null" if value is None else repr(value) for value in content])
    return sha256(salt + b"[%b]" % values.encode("ascii")).digest()


def bound(before: bytes, number: int, commits: bytes) -> bytes:
    """Return a link's hash."""
    return sha256(before + number.to_bytes(8, "big") + commits).digest()


_APPEND: Final = f"insert into answers (id, {CONTENT}, salt, commits, hash) values (?{', ?' * (CONTENT.count(',') + 1)}, ?, ?, ?)"


class Chain:
    """The end of the chain, kept in memory by the one writer, so that an answer costs no look for it."""

    def __init__(self) -> None:
        self._head: Head | None = None
        self._last = 0  # the latest answer's number; above the head's where something else wrote an answer
        self._noted = False
        self._salts, self._used = b"", 0

    def append(self, db: sqlite3.Connection, content: tuple[object, ...]) -> None:
        """Add an answer with its link, by a number that is never used again."""
        before = self._head or self._end(db)
        number, salt = self._last + 1, self._salt()
        commits = commitment(salt, content)
        self._head, self._last, self._noted = Head(number, bound(before.hash, number, commits)), number, False
        db.execute(_APPEND, (number, *content, salt, commits, self._head.hash))

    def forget(self) -> None:
        """Read the end anew with the next answer: one was rolled back."""
        self._head = None

    def note(self, db: sqlite3.Connection, outside: HeadFile) -> None:
        """Write the head of what is committed outside, where it may have moved."""
        if not self._noted:
            outside.note(self._head or self._end(db))
            self._noted = True

    def _end(self, db: sqlite3.Connection) -> Head:
        """Read the end of the chain; also the number of an answer that something else wrote after it."""
        self._head, last = head_in(db), db.execute("select max(id) from answers").fetchone()[0]
        self._last = max(self._head.number, last or 0)
        return self._head

    def _salt(self) -> bytes:
        """Return random bytes, drawn for a thousand answers at once."""
        if self._used == len(self._salts):
            self._salts, self._used = os.urandom(1000 * SALT_BYTES), 0
        self._used += SALT_BYTES
        return self._salts[self._used - SALT_BYTES:self._used]


def link_unlinked(db: sqlite3.Connection) -> None:
    """Add links to answers that are newer than the last link, or all where there is none: for a file from before the chain, whose
    answers may still be changed."""
    head = head_in(db)
    last = head.hash
    for number, *content in db.execute(f"select id, {CONTENT} from answers where id > ? order by id", (head.number,)).fetchall():
        salt = os.urandom(SALT_BYTES)
        commits = commitment(salt, tuple(content))
        last = bound(last, number, commits)
        db.execute("update answers set salt = ?, commits = ?, hash = ? where id = ?", (salt, commits, last, number))


def head_in(db: sqlite3.Connection) -> Head:
    """Return the latest link of a file, be its answer still there or not; number 0 where there is none."""
    row = db.execute("select * from (select id, hash from answers where hash is not null order by id desc limit 1) union all select * from "
                     "(select number, hash from chain order by number desc limit 1) order by 1 desc limit 1").fetchone()
    return Head(row[0], row[1]) if row else Head(0, FIRST)


def chain_fault(db: sqlite3.Connection, outside: Head | None = None) -> str:
    """Return, in one line, the first row of the answer log that is not as it was written; "" if all are. ``outside``: the head kept
    beside the file. A file from before the chain has no fault."""
    if "hash" not in [column[1] for column in db.execute("pragma table_info(answers)")]:
        return ""
    last, before = FIRST, 0
    rows = db.execute(f"select id, salt, commits, hash, {CONTENT} from answers union all select number, null, commits, hash, "
                      f"{', '.join('null' for _ in CONTENT.split(', '))} from chain order by 1")
    for number, salt, commits, is_bound, *content in rows:
        if is_bound is None:
            return f"answer {number} was written by something else"
        last = bound(last, number, commits)
        if last != is_bound:
            return (f"the chain of the answer log breaks at answer {number}" if number == before + 1 else
                    f"answer {before + 1} is missing" if number > before else f"answer {number} is there twice")
        if salt is not None and commitment(salt, tuple(content)) != commits:
            return f"answer {number} is not what was written"
        before = number
    return cut(db, outside)


def cut(db: sqlite3.Connection, outside: Head | None) -> str:
    """Return, in one line, that answers were lost after the last one there; "" if none were."""
    if outside is None or outside.number == 0 or db.execute(
            "select 1 from answers where id = :number and hash = :hash union all select 1 from chain where number = :number and "
            "hash = :hash", outside._asdict()).fetchone():
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

    def note(self, head: Head) -> None:
        """Write the head. A disk that takes no more is the database's to report."""
        with contextlib.suppress(OSError):
            os.pwrite(self._handle, b"%020d %s\n" % (head.number, head.hash.hex().encode("ascii")), 0)

    def close(self) -> None:
        """Close the file."""
        os.close(self._handle)


def head_path(database: Path) -> Path:
    """Return where the head of a database is kept."""
    return real_path(database, ".head")


def head_beside(database: Path) -> Head | None:
    """Return the head kept beside a database; None where there is none, or none that can be read."""
    try:
        number, _, is_bound = head_path(database).read_text(encoding="ascii").strip().partition(" ")
        return Head(int(number), bytes.fromhex(is_bound))
    except (OSError, ValueError):
        return None
