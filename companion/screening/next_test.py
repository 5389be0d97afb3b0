"""The test to do next: the open one that could still change most; none where nothing open could.

What the open tests may show is drawn beside the draws of ``certainty``, 2,000 at once. First whether each part is behind the rounding:
from the findings so far, and one in four before any. Then what a test shows of it. The rule is read in every draw without the open tests,
with all of them, and with all but one. Choices, all of them, held against the clinic (tests/clinic), their numbers in the table of sources:

- a row shows so often where it tells the truth, and where it does not so many times less often, by its grade; of rows of one direction
  about one part the strongest stands for all;
- what only a second try shows ("twice" in the table) shows as seldom as two tries would;
- one side may show something else than the other;
- findings so far are taken at their word, and drawn as in ``certainty`` only for a cause whose ruling hangs on them;
- control and strength, which squats looked at by eye decide, hold in hardly enough draws where two moderate findings carry them, so that
  a weak one against them undoes that.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from math import log, sqrt
from statistics import NormalDist
from typing import TYPE_CHECKING, Final

from companion.screening.certainty import HOLDS_FROM, RULING_DRAWS, WEIGHT_SPREAD, drawn, ruled, source_of, tests_in
from companion.screening.evidence import EMPTY_BAR, PARTS_BY_CAUSE, EvidenceRow, Finding, Grade, found, lighter
from companion.screening.protocols import protocol
from companion.screening.readings import SIDES
from companion.screening.rulings import TESTS_AGREEING, Ruling, Verdict
from companion.screening.sources import SOURCES, value

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Ints = NDArray[np.int64]
    Truths = NDArray[np.bool_]

COULD_CHANGE: Final = value("could_change") / 100
"""What is open could change the outcome if it does in at least this share of draws, all of it together."""
WORTH_DOING: Final = value("worth_doing") / 100
"""A test is left out once its result would be missed in fewer draws than this."""

BEHIND: Final = value("behind_before") / 100
SHOWS: Final = {"for": SOURCES["test_shows"].value[0] / 100, "against": SOURCES["test_shows"].value[1] / 100}
TIMES_LIKELIER: Final = dict(zip((Grade.WEAK, Grade.MODERATE, Grade.STRONG), SOURCES["times_likelier"].value, strict=True))
ONE_SIDE: Final = value("one_side_differs") / 100
WEAK_TIPS: Final = NormalDist().cdf(-log(sqrt(SOURCES["evidence_weights"].value[1])) / WEIGHT_SPREAD)
"""The share of draws in which a weak finding is drawn as a moderate one, and so speaks against a ruling that it would not undo."""
_SIGN: Final = {"for": 1, "against": -1}
NO_ROWS: Final[Mapping[str, EvidenceRow]] = {}
_PARTS: Final = tuple(part for parts in PARTS_BY_CAUSE.values() for part in parts)
_CAUSE: Final = {part: cause for cause, parts in PARTS_BY_CAUSE.items() for part in parts}


@dataclass(frozen=True, slots=True)
class StillOpen:
    """The tests still open. ``share``: of draws in which all open tests together change the outcome; ``tests``: those worth doing, the one
    to do next first, each with the share in which its result would be missed."""

    share: float
    tests: tuple[tuple[str, float], ...]


def holds_firmly(verdict: Verdict) -> bool:
    """True if a cause is likely or ruled out in so many draws that a weak finding can't undo it."""
    return verdict.share is not None and verdict.share >= HOLDS_FROM + WEAK_TIPS


def still_open(findings: Sequence[Finding], verdicts: Sequence[Verdict], tests: Collection[str],
               waiting: Mapping[str, EvidenceRow] = NO_ROWS, usual: float | None = None, bar: bool = True) -> StillOpen:
    """Return what tests that are open to a lifter could still change: a ruling, or the part to drill. The order of ``tests`` settles ties.
    ``waiting``: rows of tests already done that show if another test, by which they are named, speaks for its part (``pairs``);
    ``usual``: the working load in kg, None if not known; ``bar``: false for who has none at hand, or may use none."""
    import numpy as np

    so_far = sorted((one for one in findings if one.part in _PARTS and one.row.direction in _SIGN and one.grade > Grade.NONE),
                    key=lambda one: (one.row.id, one.side, one.words))
    to_come = [(test, one) for test in tests for one in _could_show(test, waiting.get(test), lighter(EMPTY_BAR, usual), bar)]
    if not to_come:
        return StillOpen(0.0, ())
    hangs = {verdict.cause for verdict in verdicts if verdict.leaning}
    firm = {verdict.cause for verdict in verdicts if holds_firmly(verdict)}
    grades, signs = _so_far(so_far, hangs)
    coming = [_shown(test, one, _behind(so_far, one.part)) for test, one in to_come]
    about = [*so_far, *(one for _, one in to_come)]
    given_by = [*("" for _ in so_far), *(test for test, _ in to_come)]
    grades = np.vstack([grades, *(np.where(there, one.grade.rank, 0)[None] for (_, one), there in zip(to_come, coming, strict=True))])
    signs = np.vstack([signs, *(np.where(there, _SIGN[one.row.direction], 0)[None]
                                for (_, one), there in zip(to_come, coming, strict=True))])

    @cache
    def ruling(cause: str, rows: tuple[int, ...]) -> Ints:
        """Return the ruling on a cause in every draw, from its own rows: likely, ruled out or open."""
        own = list(rows)
        if not own:
            return np.zeros(RULING_DRAWS, dtype=np.int64)
        found, grade, sign = [about[n] for n in own], grades[own], signs[own]
        ranks = ruled(PARTS_BY_CAUSE[cause], found, grade, sign)
        told = np.select([ranks == Ruling.LIKELY.rank, ranks == Ruling.RULED_OUT.rank], [2, 1], 0)
        by_eye = cause not in firm and len(PARTS_BY_CAUSE[cause]) == 1
        return np.where(_undone(found, grade, np.where(told == 1, -sign, sign)), 0, told) if by_eye else told

    @cache
    def heaviest(rows: tuple[int, ...]) -> Ints:
        """Return in every draw which part of length decides, as ``rulings`` chooses it."""
        own = [[n for n in rows if about[n].part == part] for part in PARTS_BY_CAUSE["length"]]
        return np.asarray(np.argmax([_decides([about[n] for n in those], grades[those], signs[those]) for those in own], axis=0))

    def without(*left_out: str) -> Ints:
        """Return what is told in every draw, without the results of some of the open tests: each cause, and of length the part to drill."""
        rows = {cause: tuple(n for n, test in enumerate(given_by) if test not in left_out and about[n].part in parts)
                for cause, parts in PARTS_BY_CAUSE.items()}
        told = np.array([ruling(cause, own) for cause, own in rows.items()])
        drilled = (told[0] == 2) | ((told[0] == 0) & (np.sum(told == 1, axis=0) == len(told) - 1))
        return np.vstack([told, np.where(drilled, heaviest(rows["length"]), -1)])

    nothing, everything = without(*tests), without()
    share = float((nothing != everything).any(axis=0).mean())
    missed = {test: float((everything != without(test)).any(axis=0).mean()) for test in tests}
    alone = {test: float((nothing != without(*(other for other in tests if other != test))).any(axis=0).mean()) for test in tests}
    worth = sorted((test for test in tests if missed[test] >= WORTH_DOING),
                   key=lambda test: -(missed[test] + alone[test]) / protocol(test).minutes)
    return StillOpen(share, tuple((test, missed[test]) for test in worth) if share >= COULD_CHANGE else ())


@cache
def _could_show(test: str, waiting: EvidenceRow | None, light: str, bar: bool) -> tuple[Finding, ...]:
    """Return what a test may show: for each part, direction and side the strongest of its rows; and the row that waits for it. ``light``:
    why a set with the empty bar that stays clean says less, "" where it says all."""
    strongest: dict[tuple[str, str, str], Finding] = {}
    for row in protocol(test).rows:
        one = found(row, less=light if row.bar and row.direction == "against" else "")
        if row.direction in _SIGN and row.part in _PARTS and one.grade > Grade.NONE and (bar or not row.bar):
            for side in SIDES if row.sided else ("",):
                at = (row.part, row.direction, side)
                if at not in strongest or one.grade > strongest[at].grade:
                    strongest[at] = replace(one, side=side)
    also = [Finding(waiting, waiting.grade, waiting.finding, side) for side in SIDES] if waiting else []
    return (*strongest.values(), *also)


def _decides(about: Sequence[Finding], grades: Ints, signs: Ints) -> Ints:
    """Return in every draw how far findings about one part make it the one that decides: by the weight of those moderate or more on a side
    where none such speaks against it, then by all that speaks for it."""
    import numpy as np

    weights = np.array((0, *SOURCES["evidence_weights"].value), dtype=np.int64)[grades] * (signs > 0)
    sides = np.array([[one.side in ("", side) for one in about] for side in SIDES], dtype=np.bool_)[:, :, None] & (
        grades >= Grade.MODERATE.rank)
    clear = ~(sides & (signs < 0)).any(axis=1)
    return np.asarray(100 * (clear * (sides * weights).sum(axis=1)).max(axis=0) + weights.sum(axis=0))


def _undone(about: Sequence[Finding], grades: Ints, signs: Ints) -> Truths:
    """Return in which draws a weak finding undoes a ruling: no strong one and no more than the fewest tests carry it. ``signs``: above 0
    for the ruling."""
    import numpy as np

    carries = (signs > 0) & (grades >= Grade.MODERATE.rank)
    bare = (tests_in(about, range(len(about)), carries) <= TESTS_AGREEING) & ~(carries & (grades == Grade.STRONG.rank)).any(axis=0)
    return np.asarray(bare & ((signs < 0) & (grades == Grade.WEAK.rank)).any(axis=0))


def _so_far(findings: Sequence[Finding], hangs: Collection[str]) -> tuple[Ints, Ints]:
    """Return grades and signs of the findings so far in every draw; as they are, but for causes whose ruling hangs on them."""
    import numpy as np

    if not findings:
        return np.zeros((0, RULING_DRAWS), dtype=np.int64), np.zeros((0, RULING_DRAWS), dtype=np.int64)
    grades, signs = drawn(findings)
    for n, one in enumerate(findings):
        if _CAUSE[one.part] not in hangs:
            grades[n], signs[n] = one.grade.rank, _SIGN[one.row.direction]
    return grades, signs


@cache
def _luck(name: str) -> Floats:
    """Return the same even draws for a name every time."""
    return source_of(name).random(RULING_DRAWS)


def _behind(findings: Sequence[Finding], part: str) -> Truths:
    """Return in which draws a part is behind the rounding, by the findings so far."""
    odds = BEHIND / (1 - BEHIND)
    for row, grade in {one.row: one.grade for one in findings if one.part == part}.items():
        odds *= TIMES_LIKELIER[grade] ** _SIGN[row.direction]
    return _luck(part) < odds / (1 + odds)


def _shown(test: str, one: Finding, behind: Truths) -> Truths:
    """Return in which draws a test shows a finding that it may show; what speaks for and against a part never shows at once."""
    import numpy as np

    direction, name = one.row.direction, f"{test} {one.part}"
    luck = np.where(_luck(f"{name} differs") < ONE_SIDE, _luck(f"{name} {one.side}"), _luck(name)) if one.side else _luck(name)
    true, end = (behind, luck) if direction == "for" else (~behind, 1 - luck)
    return end < np.where(true, SHOWS[direction], SHOWS[direction] / TIMES_LIKELIER[one.row.grade]) ** (2 if one.row.twice else 1)
