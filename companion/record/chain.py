"""The chain over the answer log: each answer is bound to all before it, so that a changed, missing or cut row shows.

An answer's row holds its link: a commitment to its content, salted so that nothing can be guessed from it, and a hash over the link
before it and that commitment. Deleting an answer leaves its link without the salt in ``chain`` (a trigger): that binds the others and
tells nothing. The latest link, the head, is also kept in a small file beside the database: a tail that was cut off shows there.
"""

from __future__ import annotations

import json
import os
import sqlite3
from binascii import hexlify
from collections.abc import Iterator
from hashlib import blake2b, sha256
from pathlib import Path
from typing import Final, NamedTuple

from companion.base.private import private_file, real_path

FIRST: Final = sha256(b"answer log").digest()
"""What the first link is bound to."""

SALT_BYTES: Final = 16

CONTENT: Final = "person, run, flow, version, key, side, raw, value, unit, status, method, placement, replaces, at"
"""The columns of an answer that its link commits to. Part of the format, like the functions below: never to be changed."""


class Head(NamedTuple):
    """The latest link: its number, which is its answer's, and its hash."""

    number: int
    hash: bytes


def commitment(salt: bytes, content: tuple[object, ...]) -> bytes:
    """Return the commitment to an answer's content: over the salt and the values as ``ascii`` writes a tuple of them. BLAKE2b is the
    interpreter's own: SHA-256 starts OpenSSL anew for each, which after a commit takes longer than the hash."""
    return blake2b(b"%b%a" % (salt, content), digest_size=32).digest()


def bound(before: bytes, number: int, commits: bytes) -> bytes:
    """Return a link's hash."""
    return blake2b(b"%b%d %b" % (before, number, commits), digest_size=32).digest()


def first_commitment(salt: bytes, content: tuple[object, ...]) -> bytes:
    """Return a commitment as links were first made, of which files are full: over the salt and the JSON list of the values."""
    return sha256(salt + json.dumps(content, separators=(",", ":")).encode("ascii")).digest()


def first_bound(before: bytes, number: int, commits: bytes) -> bytes:
    """Return a link's hash as links were first made."""
    return sha256(before + number.to_bytes(8, "big", signed=True) + commits).digest()


KINDS: Final = ((bound, commitment), (first_bound, first_commitment))
"""How links are made, and were at first. A link tells its kind by its hash, which only one of them gives."""

_APPEND: Final = f"insert into answers ({CONTENT}, id, salt, commits, hash) values (?{', ?' * (CONTENT.count(',') + 4)})"


class Chain:
    """The end of the chain, kept in memory by the one writer, so that an answer costs no look for it. ``outside``: where the head is
    kept too."""

    def __init__(self, outside: HeadFile | None = None) -> None:
        self._outside = outside
        self._number = self._last = 0  # the latest link's; the latest answer's, which is above it where something else wrote one
        self._hash: bytes | None = None  # None until the end was read
        self._noted = False
        self._salts = _salts()

    def append(self, db: sqlite3.Connection, content: tuple[object, ...]) -> None:
        """Add an answer with its link, by a number that is never used again."""
        before = self._hash or self._end(db)
        self._number = self._last = number = self._last + 1
        self._noted = False
        salt = next(self._salts)
        commits = commitment(salt, content)
        self._hash = is_bound = bound(before, number, commits)
        db.execute(_APPEND, (*content, number, salt, commits, is_bound))

    def forget(self) -> None:
        """Read the end anew with the next answer: one was rolled back."""
        self._hash = None

    def note(self, db: sqlite3.Connection) -> None:
        """Write the head of what is committed outside, where it may have moved."""
        if not self._noted and self._outside is not None:
            is_bound = self._hash or self._end(db)
            self._outside.note(self._number, is_bound)
            self._noted = True

    def _end(self, db: sqlite3.Connection) -> bytes:
        """Read the end of the chain; also the number of an answer that something else wrote after it."""
        (self._number, self._hash), last = head_in(db), db.execute("select max(id) from answers").fetchone()[0]
        self._last = max(self._number, last or 0)
        return self._hash


def _salts() -> Iterator[bytes]:
    """Yield random bytes without end, drawn for a thousand answers at once."""
    while True:
        drawn = os.urandom(1000 * SALT_BYTES)
        for at in range(0, len(drawn), SALT_BYTES):
            yield drawn[at:at + SALT_BYTES]


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
        committing = next((committing for binding, committing in KINDS if binding(last, number, commits) == is_bound), None)
        if committing is None:
            return (f"answer {before + 1} is missing" if number > before + 1 else f"answer {number} is there twice" if number == before
                    else f"the chain of the answer log breaks at answer {number}")
        if salt is not None and committing(salt, tuple(content)) != commits:
            return f"answer {number} is not what was written"
        last, before = is_bound, number
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

    def note(self, number: int, is_bound: bytes) -> None:
        """Write the head. A disk that takes no more is the database's to report."""
        try:  # noqa: SIM105  suppress would take as long as the write
            os.pwrite(self._handle, b"%020d %b\n" % (number, hexlify(is_bound)), 0)
        except OSError:
            pass

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
