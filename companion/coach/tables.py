"""A page before any markup: tables of texts, and moments as a lifter's clock shows them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, tzinfo

from companion.base.clock import zone_of

Cell = str | tuple[str, ...]
"""A text, or several that stand under each other."""


@dataclass(frozen=True, slots=True)
class TableSection:
    """Some rows of a table under a heading of their own. ``gone``: the numbers of the rows that were replaced or taken back."""

    title: str
    rows: tuple[tuple[Cell, ...], ...]
    gone: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Table:
    """A table: its name in the page, its caption, its columns, and rows of as many cells, the first of which names the row.
    ``folds`` stand in place of ``rows`` in a long one; ``empty`` is said where there is no row."""

    name: str
    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...] = ()
    folds: tuple[TableSection, ...] = ()
    empty: str = ""
    note: str = ""

    @property
    def bodies(self) -> tuple[TableSection, ...]:
        """Its rows as folds, the only one without a title where it has none."""
        return self.folds or ((TableSection("", self.rows),) if self.rows else ())


@dataclass(frozen=True, slots=True)
class LocalTimes:
    """Writes moments and days as they are where the lifter is."""

    zone: str

    @property
    def there(self) -> tzinfo:
        """The zone as a tzinfo."""
        return zone_of(self.zone)

    def moment(self, at: datetime) -> str:
        """"2 Mar 2026, 18:05"."""
        there = at.astimezone(self.there)
        return f"{there.day} {there:%b %Y, %H:%M}"

    def text(self, at: str) -> str:
        """The same of a kept moment."""
        return self.moment(datetime.fromisoformat(at))

    def clock(self, at: datetime) -> str:
        """"18:05"."""
        return f"{at.astimezone(self.there):%H:%M}"

    def day(self, day: date) -> str:
        """"2 Mar 2026"."""
        return f"{day.day} {day:%b %Y}"
