"""Rows of the evidence table: what a finding of a test says about which part, and how much. Each test holds its own
(``protocols/``), for a coach to read and judge.

Grades are this project's choice, the findings are common practice; where a trial stands behind a row it is named.
direction: "for" speaks for a part being behind the rounding, "against" speaks against it, "neither" decides nothing.
sided: the row counts for the side it was found on; other rows count for both sides.
hint: an unspecific sign; alone it does not make a part "tested".
pinched: a joint pinched, so its part gets no stretch.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from companion.screening.ordinal import Ranked
from companion.screening.readings import SourceStanding

Direction = Literal["for", "against", "neither"]


class Grade(Ranked):
    """How much a finding is worth."""

    NONE = "none"
    WEAK = "weak"
    MODERATE = "moderate"
    STRONG = "strong"


@dataclass(frozen=True, slots=True)
class EvidenceRow:
    """One row of the table."""

    id: str
    test: str
    finding: str
    part: str
    direction: Direction
    grade: Grade
    sided: bool = False
    hint: bool = False
    standing: SourceStanding = "common practice"
    pinched: bool = False


# Cause: its parts. A part's words are for the lifter.
PARTS_BY_CAUSE: Final = {"length": ("hip", "hamstrings", "calf"), "strength": ("trunk",), "control": ("control",)}
PART_WORDS: Final = {"hip": "hip", "hamstrings": "hamstrings", "calf": "calf", "trunk": "trunk strength",
                     "control": "control"}


@dataclass(frozen=True, slots=True)
class Finding:
    """A row that a screen shows: its side ("" for both), its grade here, in words, the load where it was under one.

    ``answers`` are the answers it came from, as "flow.key": those that were given, enough to find it again.
    """

    row: EvidenceRow
    grade: Grade
    words: str
    side: str = ""
    load: str = ""
    answers: tuple[str, ...] = ()

    @property
    def part(self) -> str:
        """The part it speaks about."""
        return self.row.part


def by_id(*rows: EvidenceRow) -> dict[str, EvidenceRow]:
    """Rows by their id, in the order given."""
    return {row.id: row for row in rows}


def found(row: EvidenceRow, *keys: str, side: str = "", less: str = "", load: str = "", words: str = "") -> Finding:
    """Return the finding of one row.

    ``keys``: the answers it rests on, with their flow ("about_you.sex") where that is another one than the row's test.
    ``less``: why it counts one grade less, "" where it does not. ``words``: in place of the row's own.
    """
    grade = list(Grade)[max(row.grade.rank - 1, 0)] if less else row.grade
    named = f"{side.capitalize()}: {words or row.finding}" if side else words or row.finding
    at = f", {load}" if load else ""
    why = f" Counts less: {less}." if less else ""
    return Finding(row, grade, f"{named}{at}.{why}", side, load,
                   tuple(key if "." in key else f"{row.test}.{key}" for key in keys))


def by_feel(seen_by: str | None) -> str:
    """Return why a squat that nobody and nothing saw counts less, "" where it was seen; not said counts as by feel."""
    return "by feel" if seen_by in (None, "feel") else ""
