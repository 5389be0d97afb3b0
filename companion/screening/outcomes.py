"""The outcomes of rulings: what was concluded, what was tried, and where the rounding starts at the next look at the squat.

A ruling "likely" predicts that, after its drill was done, the rounding starts deeper. Whether it did is a count for each evidence row
that decided the ruling. It shows what use says of the rules, not what causes what: nobody was left without a drill to compare with. It
changes no weight. A deeper start is one band or more (``depth_band`` in ``numbers/``).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from math import sqrt
from typing import Final

from companion.screening.conclusion import conclude
from companion.screening.pairs import LOOK, look_of
from companion.screening.protocols import rows
from companion.screening.readings import Z_TWO_SIDED_95
from companion.screening.rulings import Ruling
from companion.screening.screen import LoggedAnswer, about_from, runs_of, screen_from
from companion.screening.sources import value

LOOKS_APART: Final = timedelta(days=value("looks_apart"))
"""The shortest time between two looks that are compared."""
TIMES: Final = int(value("drill_times"))
"""How often the drill must have been done between them."""
DEEPER: Final = int(value("depth_band"))
"""Bands by which the rounding must start deeper to count."""
OUTCOMES_ENOUGH: Final = int(value("outcomes_enough"))
"""The fewest outcomes of a row of which a share is told."""


@dataclass(frozen=True, slots=True)
class ScreenOutcome:
    """A cause that was called likely and what the next look at the squat showed.

    ``rows``: the evidence rows that decided it; ``part``: what was drilled; ``primed``: how often; ``setup``: the set-up that was checked
    in between, "" for none; ``before`` and ``after``: the rank of the band where the rounding starts (``depth.Band``, 4: it does not);
    ``day`` and ``days``: days from the lifter's first answer to the ruling's look, and from there to the next.
    """

    cause: str
    part: str
    rows: tuple[str, ...]
    primed: int
    setup: str
    before: int
    after: int
    day: int
    days: int

    @property
    def tried(self) -> bool:
        """True if the drill was done often enough for the prediction to count."""
        return self.primed >= TIMES

    @property
    def followed(self) -> bool:
        """True if the rounding starts deeper than before, by a band or more."""
        return self.after - self.before >= DEEPER


@dataclass(frozen=True, slots=True)
class RowTally:
    """The count of an evidence row: of the rulings it decided whose drill was tried, those followed by a deeper start."""

    row: str
    words: str
    followed: int
    of: int

    @property
    def enough(self) -> bool:
        """True if there are enough outcomes for a share to be told."""
        return self.of >= OUTCOMES_ENOUGH


def outcomes_of(answers: Iterable[LoggedAnswer], setups: Sequence[tuple[datetime, str]] = ()) -> tuple[ScreenOutcome, ...]:
    """Return the outcomes in one lifter's log, the oldest first. Two looks less than ``LOOKS_APART`` apart are one. ``setups``: the set-ups
    that were found good, each with its moment."""
    log = sorted(answers, key=lambda row: row.at)
    looks = sorted(run.at for run in runs_of(log, LOOK.id) if run.record.start("plain") is not None)
    found: list[ScreenOutcome] = []
    while looks:
        later = [at for at in looks if at - looks[0] >= LOOKS_APART]
        if later and (one := _between(log, looks[0], later[0], setups)):
            found.append(one)
        looks = later
    return tuple(found)


def _between(log: Sequence[LoggedAnswer], first: datetime, then: datetime, setups: Sequence[tuple[datetime, str]]) -> ScreenOutcome | None:
    """Return what came between two looks; None if no cause was called likely before the second, or a start is not known."""
    before = [row for row in log if row.at < then]
    screen = screen_from(before)
    concluded = conclude(screen, about_from(before))
    later = screen_from(row for row in log if row.flow == LOOK.id and row.at >= then)
    start, after = (look_of(one).start("plain") for one in (screen, later))
    verdict = next((one for one in concluded.verdicts if one.ruling is Ruling.LIKELY and one.part == concluded.part), None)
    if verdict is None or start is None or after is None:
        return None
    parts = {verdict.part, *verdict.together}
    deciding = tuple(dict.fromkeys(one.row.id for one in verdict.because if one.row.direction == "for" and one.row.part in parts))
    primed = len({row.run for row in before if row.flow == "prime" and row.ending == "done" and row.at >= first})
    setup = next((change for at, change in reversed(setups) if first <= at < then), "")
    return ScreenOutcome(verdict.cause, verdict.part, deciding, primed, setup, start, after, (first - log[0].at).days, (then - first).days)


def tallies(outcomes: Iterable[ScreenOutcome]) -> tuple[RowTally, ...]:
    """Return the count of each evidence row that decided a ruling whose drill was tried, those with the most outcomes first."""
    followed: Counter[str] = Counter()
    of: Counter[str] = Counter()
    for one in outcomes:
        if one.tried:
            of.update(one.rows)
            followed.update(one.rows if one.followed else ())
    words = {name: row.finding for name, row in rows().items()}
    return tuple(RowTally(row, words.get(row, row), followed[row], of[row]) for row in sorted(of, key=lambda row: (-of[row], row)))


def interval(followed: int, of: int) -> tuple[float, float]:
    """Return the 95 % interval of a share by Wilson's score (Wilson 1927 J Am Stat Assoc 22:209, from memory), from 0 to 1.

    Raises ValueError for a share of nothing.
    """
    if not 0 <= followed <= of or of == 0:
        raise ValueError(f"{followed} of {of} is no share")
    share, z2 = followed / of, Z_TWO_SIDED_95**2
    middle, half = share + z2 / (2 * of), Z_TWO_SIDED_95 * sqrt(share * (1 - share) / of + z2 / (4 * of**2))
    return max(0.0, (middle - half) / (1 + z2 / of)), min(1.0, (middle + half) / (1 + z2 / of))
