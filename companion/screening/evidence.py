"""Rows of the evidence table: the part a test's finding speaks about, its direction and its grade. Each test holds its own
(``protocols/``), for a coach to read and judge.

Grades are this project's choice, the findings are common practice; where a trial stands behind a row it is named.
direction: "for" means the part is behind the rounding, "against" that it is not, "neither" decides nothing.
sided: the row counts for the side it was found on; other rows count for both sides.
hint: an unspecific sign; alone it does not make a part "tested".
pinched: a joint pinched, so its part must not be stretched.
trial: the lifter's own squat with one thing changed, and not a range taken on the floor.
twice: it shows only where a second try shows it too.
bar: it shows only with an empty bar in the hands or on the back.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from companion.screening.ordinal import Ranked
from companion.screening.readings import SourceStanding
from companion.screening.sources import value

Direction = Literal["for", "against", "neither"]


class Grade(Ranked):
    """The weight of a finding, the least first."""

    NONE = "none"
    WEAK = "weak"
    MODERATE = "moderate"
    STRONG = "strong"


@dataclass(frozen=True, slots=True)
class EvidenceRow:
    """One row of the evidence table; ``finding`` is its sentence, without the full stop."""

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
    trial: bool = False
    twice: bool = False
    bar: bool = False


EMPTY_BAR: Final = value("empty_bar")  # kg, the usual one; a lighter one only makes evidence lighter

# Cause: its parts. A part's words are for the lifter.
PARTS_BY_CAUSE: Final = {"length": ("hip", "hamstrings", "calf"), "strength": ("trunk",), "control": ("control",)}
PART_WORDS: Final = {"hip": "hip", "hamstrings": "hamstrings", "calf": "calf", "trunk": "trunk strength",
                     "control": "control"}


@dataclass(frozen=True, slots=True)
class Finding:
    """A row that applies to a screen: its grade here, its sentence, its side ("" for both), the load it was under.

    ``kg``: the load as a number, 0 without any; None
    if it was not told or load has nothing to do with it. ``margin``: how far a reading lies past its line, in standard errors.
    ``bands``: by how many bands of depth a change moved the rounding, as told by eye; both None where they do not apply.
    ``looks``: how many squats looked at only once that compares, 1 where the plain one was repeated.
    """

    row: EvidenceRow
    grade: Grade
    words: str
    side: str = ""
    load: str = ""
    kg: float | None = None
    margin: float | None = None
    bands: int | None = None
    looks: int = 2

    @property
    def part(self) -> str:
        """The part it is about."""
        return self.row.part


def by_id(*rows: EvidenceRow) -> dict[str, EvidenceRow]:
    """Rows by their id, in the order given."""
    return {row.id: row for row in rows}


FILM_UNPROVEN: Final = "a card on film is unproven on people"
"""The reason for which an angle by film counts less."""


def found(row: EvidenceRow, *, side: str = "", less: str = "", load: str = "", words: str = "", kg: float | None = None,
          margin: float | None = None, bands: int | None = None, looks: int = 2) -> Finding:
    """Return the finding of one row.

    ``less``: the reason for counting one grade less, "" for none. ``words``: replaces the row's own sentence. ``load``: in words, "" for
    none, and ``kg`` as a number. ``margin``, ``bands``, ``looks``: what a reading or a depth by eye may be off by, as ``Finding`` has them.
    """
    grade = list(Grade)[max(row.grade.rank - 1, 0)] if less else row.grade
    said = words or row.finding
    named = f"{side.capitalize()}: {said[:1].lower()}{said[1:]}" if side else said
    at = f" ({load})" if load else ""
    why = f" This counts for less: {less}." if less else ""
    return Finding(row, grade, f"{named}{at}.{why}", side, load, kg, margin, bands, looks)


def lighter(kg: float | None, usual: float | None) -> str:
    """Return the reason for which a clean set with a bar counts less, "" for none: strength that gives way above a load can't be cleared
    below it. Rows without a bar have their low grade already."""
    return "it was lighter than your working load" if kg and usual and kg < usual else ""


def by_feel(seen_by: str | None) -> str:
    """Return the reason for which a squat judged by feel counts less, "" if it was seen; no answer counts as by feel."""
    return "it was judged by feel" if seen_by in (None, "feel") else ""
