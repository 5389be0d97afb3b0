"""What a row of the table is made of: two ways to do one thing, timed by turns, and how they compare."""

from __future__ import annotations

import os
import platform
import sqlite3
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from statistics import median
from time import perf_counter
from typing import Literal

ROUNDS = 7
"""Rounds a median is taken of, at the least."""


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table. ``ours`` and ``theirs`` are medians in ``unit``; ``ratio`` is what is wanted ``bound``."""

    what: str
    against: str
    ours: float
    theirs: float | None
    unit: str
    ratio: float
    wanted: Literal["at most", "at least", "told only"]
    bound: float = 0.0

    @property
    def met(self) -> bool:
        """Whether the figure is as it should be."""
        return {"at most": self.ratio <= self.bound, "at least": self.ratio >= self.bound, "told only": True}[self.wanted]


def compare(what: str, against: str, ours: Sequence[float], theirs: Sequence[float], unit: str,
            wanted: Literal["at most", "at least", "told only"], bound: float = 0.0) -> Row:
    """A row from samples of both: the ratio is ours over theirs, of the medians."""
    mine, other = median(ours), median(theirs)
    return Row(what, against, mine, other, unit, mine / other, wanted, bound)


def seconds(work: Callable[[], object]) -> float:
    """How long a thing takes."""
    begin = perf_counter()
    work()
    return perf_counter() - begin


def by_turns(*works: Callable[[], float], rounds: int = ROUNDS) -> list[list[float]]:
    """Each work's figures, one a round; in every second round the other way about, so that neither always comes first."""
    for work in works:
        work()  # what is done once only, such as filling caches, is nobody's
    got: list[list[float]] = [[] for _ in works]
    for turn in range(rounds):
        places = range(len(works)) if turn % 2 == 0 else reversed(range(len(works)))
        for place in places:
            got[place].append(works[place]())
    return got


def percentile(figures: Sequence[float], share: float) -> float:
    """The figure below which so large a share lies."""
    ordered = sorted(figures)
    return ordered[min(len(ordered) - 1, int(share * len(ordered)))]


def machine() -> str:
    """The machine in one line, and how busy it is."""
    load = ", ".join(f"{one:.1f}" for one in os.getloadavg())
    return (f"{platform.machine()}, {os.cpu_count()} cores, {platform.system()} {platform.release()}, Python {platform.python_version()}, "
            f"SQLite {sqlite3.sqlite_version}; load {load}")


def table(rows: Iterable[Row]) -> str:
    """The rows as a Markdown table."""
    lines = ["| what | against | this | that | ratio | wanted | |", "|---|---|---|---|---|---|---|"]
    for row in rows:
        wanted = "" if row.wanted == "told only" else f"{row.wanted} {row.bound:g}"
        that = "" if row.theirs is None else f"{row.theirs:.4g} {row.unit}"
        verdict = "" if row.wanted == "told only" else "yes" if row.met else "MISSED"
        lines.append(f"| {row.what} | {row.against} | {row.ours:.4g} {row.unit} | {that} | {row.ratio:.3g} | {wanted} | {verdict} |")
    return "\n".join(lines)
