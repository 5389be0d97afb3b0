"""Known faults of SQLite versions that matter here, as data."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from companion.operate.inspection import Severity

Version = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault of SQLite: first version with it, first without, older branches that have the fix too, and what to do."""

    since: Version
    fixed: Version
    also_fixed: tuple[Version, ...]
    severity: Severity
    line: str

    def has(self, version: Version) -> bool:
        """True if a version has it. A distribution that patches SQLite without a new version number can't be told apart."""
        mended = any(version[:2] == fix[:2] and version >= fix for fix in self.also_fixed)
        return self.since <= version < self.fixed and not mended


FAULTS: Final = (
    # Release notes of 3.37.0: strict tables came with it (read in a search excerpt of sqlite.org/releaselog/3_37_2.html).
    Fault((0, 0, 0), (3, 37, 0), (), Severity.BROKEN,
          "it is too old for this database, which needs 3.37 or newer: use a newer Python or system"),
    # "a potential database corruption bug introduced in 3.35.0", fixed in 3.37.2: second-hand, from release notes of others. That it takes
    # a rolled-back savepoint with temporary files in memory: from memory.
    Fault((3, 35, 0), (3, 37, 2), (), Severity.LOOK,
          "a rolled-back savepoint can damage a file in this version: use 3.37.2 or newer"),
    # The WAL-reset bug, sqlite.org/wal.html#walresetbug: 3.7.0 to 3.51.2, fixed in 3.51.3, 3.50.7 and 3.44.6. Second-hand: several issue
    # threads that quote that page. It takes two connections that write or empty the log at the same instant; a companion has one, and
    # everything else here opens the file read-only. So it is listed as fine.
    Fault((3, 7, 0), (3, 51, 3), ((3, 44, 6), (3, 50, 7)), Severity.FINE,
          "before 3.51.3, two programs that write at the same instant can damage a file (the WAL-reset bug). The companion is "
          "the only writer: open the file with no other program that writes while it runs"),
)
