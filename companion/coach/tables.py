"""Tables of texts without markup, and times in a lifter's zone."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, tzinfo

from companion.base.clock import zone_of

Cell = str | tuple[str, ...]
"""A text, or several lines of text."""


@dataclass(frozen=True, slots=True)
class TableSection:
    """Rows of a table under a heading. ``gone``: the indices of rows that were replaced or taken back."""

    title: str
    rows: tuple[tuple[Cell, ...], ...]
    gone: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Table:
    """A table. ``name``: its id in the page; ``rows``: a cell per column, the first names the row; ``folds``: sections in place of
    ``rows`` in a long table; ``empty``: the text shown where there is no row."""

    name: str
    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...] = ()
    folds: tuple[TableSection, ...] = ()
    empty: str = ""
    note: str = ""

    @property
    def bodies(self) -> tuple[TableSection, ...]:
        """The sections; where there are none, the rows as one section without a title."""
        return self.folds or ((TableSection("", self.rows),) if self.rows else ())


@dataclass(frozen=True, slots=True)
class LocalTimes:
    """Writes moments and days in a time zone."""

    zone: str

    @property
    def there(self) -> tzinfo:
        """The zone as a tzinfo."""
        return zone_of(self.zone)

    def moment(self, at: datetime) -> str:
        """Return a moment as "2 Mar 2026, 18:05"."""
        there = at.astimezone(self.there)
        return f"{there.day} {there:%b %Y, %H:%M}"

    def text(self, at: str) -> str:
        """Return a stored moment as "2 Mar 2026, 18:05"."""
        return self.moment(datetime.fromisoformat(at))

    def clock(self, at: datetime) -> str:
        """Return a moment as "18:05"."""
        return f"{at.astimezone(self.there):%H:%M}"

    def day(self, day: date) -> str:
        """Return a day as "2 Mar 2026"."""
        return f"{day.day} {day:%b %Y}"


def wall_words(wall: str) -> str:
    """Return a reminder's wall time "2026-03-10 18:00" for reading."""
    try:
        at = datetime.fromisoformat(wall)
    except ValueError:
        return wall
    return f"{at:%a} {at.day} {at:%b %Y, %H:%M}"
